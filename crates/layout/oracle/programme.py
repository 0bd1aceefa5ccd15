"""The programme of LAYOUT, solved by another program.

Written from the page alone: every row stands as it is printed there, children are not
merged, a child that stands for n is written n times. Makes random small questions, solves
each with scipy's HiGHS and stores question and answers in programme.json; the Rust test
reads only the figures.

Rerun: python3 programme.py   (made with Python 3.11, numpy and scipy as stored; HiGHS inside)
"""

import json
import math
import pathlib

import numpy as np
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix

SIDED = {"hop", "leap", "gallop", "slide"}
SKILLS = ["jump", "hop", "leap", "gallop", "slide", "skip"]


def question(rng, number):
    children = int(rng.integers(1, 6))
    candidates = int(rng.integers(3, 11))
    counts = [int(rng.integers(1, 4)) for _ in range(children)]
    can = [[round(float(rng.choice([0.1, rng.uniform(0.2, 1)])), 6) for _ in SKILLS] for _ in range(children)]
    less_used = [str(rng.choice(["", "right", "left"])) for _ in range(children)]
    weights = [round(float(rng.choice([0, rng.uniform(0.5, 2)], p=[0.15, 0.85])), 3) for _ in SKILLS]
    rows = []
    for name in range(candidates):
        skills = rng.choice(len(SKILLS), size=int(rng.integers(1, 4)), replace=False)
        e = []
        for skill in sorted(skills):
            word = SKILLS[skill]
            feet = ["R", "L"] if word in SIDED else [None]
            for foot in feet:
                for child in range(children):
                    if rng.random() < 0.2:
                        continue
                    activity = word if foot is None else f"{word}:{foot}"
                    e.append(dict(child=child, activity=activity, skill=word, foot=foot,
                                  e=round(float(rng.uniform(0.02, 1)), 6)))
                    # a court gives some practice of another skill too
                    if word == "hop" and rng.random() < 0.3:
                        e.append(dict(child=child, activity=activity, skill="jump", foot=None,
                                      e=round(float(rng.uniform(0.02, 0.5)), 6)))
        rows.append(dict(name=f"c{name}", family=f"f{int(rng.integers(0, candidates))}",
                         group=str(rng.choice(["all", "young"])), tracks=int(rng.integers(1, 3)),
                         cost=round(float(rng.uniform(20, 90)), 2), area=round(float(rng.uniform(4, 40)), 3),
                         locked=False, refused=bool(rng.random() < 0.08), e=e))
    free = [row for row in rows if not row["refused"]]
    if free and rng.random() < 0.4:
        free[int(rng.integers(0, len(free)))]["locked"] = True
    money = sum(row["cost"] for row in rows)
    ground = sum(row["area"] for row in rows)
    kind = ["money", "ground", "time"][number % 3]
    return dict(
        counts=counts, can=can, less_used=less_used, weights=weights, candidates=rows,
        sessions=int(rng.integers(1, 5)), minutes=int(rng.integers(14, 45)) if kind != "time" else 14,
        staff=int(rng.integers(1, 3)), yard_area=round(float(rng.uniform(20, 300)), 3),
        budget=round(money * (0.35 if kind == "money" else 1.0), 2),
        free_area=round(ground * (0.35 if kind == "ground" else 1.0), 3),
    )


def solve(q, fixed=None):
    """Z, or with the set `fixed` placed."""
    station = q["sessions"] * (q["minutes"] - 8)
    out = min(8 * q["staff"], math.floor(q["yard_area"] / 7))
    people = [kind for kind, count in enumerate(q["counts"]) for _ in range(count)]
    outings = math.ceil(len(people) / out)
    targets = {}
    for i, kind in enumerate(people):
        pull = [w * (c if c >= 0.2 else 0) for w, c in zip(q["weights"], q["can"][kind])]
        if sum(pull) == 0:
            continue
        for skill, p in zip(SKILLS, pull):
            t = station * p / sum(pull)
            if t == 0:
                continue
            if skill in SIDED:
                share = {"": (0.5, 0.5), "right": (0.6, 0.4), "left": (0.4, 0.6)}[q["less_used"][kind]]
                targets[i, skill, "R"] = round(t * share[0], 6)
                targets[i, skill, "L"] = round(t * share[1], 6)
            else:
                targets[i, skill, None] = round(t, 6)
    asked = sum(targets.values())
    if asked == 0:
        return 0.0, []
    names = {}
    low, high, worth, whole = [], [], [], []

    def var(key, lo, hi, value=0.0, integer=0):
        names[key] = len(low)
        low.append(lo), high.append(hi), worth.append(value), whole.append(integer)

    for k, row in enumerate(q["candidates"]):
        lo = 1 if row["locked"] else 0
        hi = 0 if row["refused"] else 1
        if fixed is not None:
            lo = hi = int(k in fixed)
        var(("x", k), lo, hi, integer=1)
    acts = {}
    for k, row in enumerate(q["candidates"]):
        for gift in row["e"]:
            for i, kind in enumerate(people):
                if kind == gift["child"]:
                    acts.setdefault((i, k, gift["activity"]), []).append((gift["skill"], gift["foot"], gift["e"]))
    for key in acts:
        for b in (1, 2):
            var(("u", *key, b), 0, np.inf)
    for key, t in targets.items():
        var(("v", *key, 1), 0, t / 2, 1.25 / asked)
        var(("v", *key, 2), 0, t / 2, 0.75 / asked)
    rows, limits = [], []

    def le(row, limit):
        rows.append(row), limits.append(limit)

    for (i, skill, foot) in targets:
        row = {("v", i, skill, foot, 1): 1.0, ("v", i, skill, foot, 2): 1.0}
        for key, gifts in acts.items():
            if key[0] == i:
                for s, f, e in gifts:
                    if (s, f) == (skill, foot):
                        row[("u", *key, 1)] = row.get(("u", *key, 1), 0) - e
                        row[("u", *key, 2)] = row.get(("u", *key, 2), 0) - 0.5 * e
        le(row, 0)
    for i in range(len(people)):
        for k in range(len(q["candidates"])):
            for b in (1, 2):
                row = {("u", *key, b): 1.0 for key in acts if key[:2] == (i, k)}
                row[("x", k)] = -15.0
                le(row, 0)
        le({("u", *key, b): 1.0 for key in acts if key[0] == i for b in (1, 2)}, station)
    for k, c in enumerate(q["candidates"]):
        row = {("u", *key, b): 1.0 for key in acts if key[1] == k for b in (1, 2)}
        row[("x", k)] = -4.0 * c["tracks"] * station * outings
        le(row, 0)
    le({("u", *key, b): 1.0 for key in acts for b in (1, 2)}, station * out * outings)
    if fixed is None:
        le({("x", k): c["cost"] for k, c in enumerate(q["candidates"])}, q["budget"])
        le({("x", k): c["area"] for k, c in enumerate(q["candidates"])}, q["free_area"])
        same = {}
        for k, c in enumerate(q["candidates"]):
            same.setdefault((c["family"], c["group"]), {})[("x", k)] = 1.0
        for row in same.values():
            le(row, 1)
    matrix = lil_matrix((len(rows), len(low)))
    for r, row in enumerate(rows):
        for key, value in row.items():
            matrix[r, names[key]] = value
    answer = milp(-np.array(worth), integrality=whole, bounds=Bounds(low, high),
                  constraints=LinearConstraint(matrix.tocsr(), -np.inf, limits),
                  options=dict(mip_rel_gap=0))
    assert answer.status in (0, 2), answer.message
    if answer.status == 2:
        return None, []
    chosen = [k for k in range(len(q["candidates"])) if answer.x[names["x", k]] > 0.5]
    return -answer.fun, chosen


def main():
    rng = np.random.default_rng(20260901)
    cases = []
    while len(cases) < 30:
        q = question(rng, len(cases))
        best, chosen = solve(q)
        if best is None:
            continue
        some = sorted(int(k) for k in rng.choice(len(q["candidates"]), size=len(q["candidates"]) // 2, replace=False))
        value, _ = solve(q, some)
        cases.append(dict(question=q, bound=round(best, 9), chosen=chosen, placed=some, value=round(value, 9)))
    path = pathlib.Path(__file__).with_name("programme.json")
    path.write_text(json.dumps(dict(made_with=f"scipy {scipy.__version__}", cases=cases)) + "\n")
    print(len(cases), "cases,", sum(bool(c["chosen"]) for c in cases), "with a choice,",
          round(np.mean([c["bound"] for c in cases]), 3), "mean bound")


if __name__ == "__main__":
    main()
