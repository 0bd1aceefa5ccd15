"""The whole linear programme over child-minutes at once, week by week, by HiGHS.

Written from the words of src/bound.rs and of the layout's programme, not from the code: no
prices, no phases. Reads JSON lines (`cargo run --release -p sessions --example dump -- 0 3 8
14 20 | python oracle/bound.py > oracle/bound.json`).
"""

import json
import math
import sys

import numpy as np
import scipy
from scipy.optimize import linprog
from scipy.sparse import lil_matrix

ORDER = [("slide", "gallop"), ("skip", "gallop"), ("skip", "hop")]
LEAD = 2


def opens(child, skill, taught):
    """First week of a skill, from 1."""
    if skill in child["known"]:
        return 1
    week = 1
    for later, needs in ORDER:
        if later == skill and needs in taught and needs not in child["known"]:
            week = max(week, opens(child, needs, taught) + LEAD)
    return week


def ratio(age):
    return 7 if age <= 3 else 8 if age >= 4 else 7 + (age - 3)


def group_most(age):
    return 14 if age <= 3 else 16 if age >= 4 else 14 + 2 * (age - 3)


def outings(children, staff, area):
    ages = sorted(child["age"] for child in children)
    for parts in range(1, len(ages) + 1):
        groups = [ages[part::parts] for part in range(parts)]
        if all(sum(1 / ratio(a) for a in g) <= staff + 1e-9 and len(g) <= area // 7 for g in groups):
            return parts
    return 0


def solve(case):
    children, weeks = case["children"], case["weeks"]
    station_time = case["sessions"] * (case["minutes"] - 8)
    turns = outings(children, case["staff"], 400)
    most = math.floor(group_most(min(child["age"] for child in children)))
    targets = {(i, s, f): minutes * weeks for i, s, f, minutes in case["targets"]}
    taught = [{s for (j, s, _) in targets if j == i} for i in range(len(children))]
    columns, cost = [], []
    rows, limits = [], []

    def column(worth):
        columns.append(None)
        cost.append(-worth)
        return len(columns) - 1

    def row(entries, limit):
        rows.append(entries)
        limits.append(limit)

    practice = {}
    for key, minutes in targets.items():
        halves = [column(1.25), column(0.75)]
        for half in halves:
            row([(half, 1)], minutes / 2)
        practice[key] = [(half, 1) for half in halves]
    time = {}
    sight = {}
    use = {}
    for k, station in enumerate(case["stations"]):
        for activity in station["activities"]:
            gait = activity["word"].split(":")[0]
            plays = [
                play
                for other in station["activities"]
                if other["word"].split(":")[0] == gait
                for play in other["plays"]
            ]
            gap = max([5] + [play["pass"] for play in plays]) if activity["alone"] else 5
            away = min([play["pass"] + max(play["back"] - 2, 0) for play in plays], default=math.inf)
            track = min(math.floor(15 / gap + 1e-9) + 1, math.floor(min((15 + away) / gap, 99) + 1e-9))
            places = min(max(track, 1) * station["tracks"], most)
            for play in activity["plays"]:
                i = play["child"]
                gifts = [(s, f, e) for s, f, e in play["yields"] if (i, s, f) in targets and e > 0]
                if not gifts:
                    continue
                for week in range(opens(children[i], activity["skill"], taught[i]), weeks + 1):
                    for stretch, worth in ((0, 1.0), (1, 0.5)):
                        u = column(0)
                        time.setdefault((i, week), []).append((u, 1))
                        use.setdefault((i, k, week, stretch), []).append((u, 1))
                        sight.setdefault((k, week), []).append((u, 1 / places))
                        for s, f, e in gifts:
                            practice[i, s, f].append((u, -e * worth))
    for entries in practice.values():
        row(entries, 0)
    for entries in time.values():
        row(entries, station_time)
    for entries in use.values():
        row(entries, 15)
    for (k, week), entries in sight.items():
        row(entries, station_time * turns)
    for week in range(1, weeks + 1):
        entries = [entry for (k, w), some in sight.items() if w == week for entry in some]
        row(entries, station_time * turns * 2 * case["staff"])
    matrix = lil_matrix((len(rows), len(columns)))
    for at, entries in enumerate(rows):
        for column_at, factor in entries:
            matrix[at, column_at] += factor
    answer = linprog(cost, A_ub=matrix.tocsr(), b_ub=np.array(limits), method="highs")
    assert answer.status == 0, answer.message
    return {"class": case["class"], "outings": turns, "bound": -answer.fun / sum(targets.values())}


if __name__ == "__main__":
    answers = [solve(json.loads(line)) for line in sys.stdin]
    print(json.dumps({"scipy": scipy.__version__, "answers": answers}, indent=1))
