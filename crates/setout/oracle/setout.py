"""Which two tapes, which third, and how well: worked out by another program.

Written from the trade's own law, not from ours: a mark is the numerical root of its two
tape equations; how it moves with each base and each tape is taken by central differences of
that root; covariances follow by matrix products. Every pair of bases is tried and the one of
the least mean squared distance wins; every third tape is tried and the one that shows the
smallest slip wins. Questions and answers go to setout.json; the Rust test reads only the
figures. All yards are invented.

Rerun: python3 setout.py   (made with Python 3, numpy and scipy as stored)
"""

import itertools
import json
import math
import pathlib

import numpy as np
import scipy
from scipy.optimize import fsolve
from scipy.stats import chi2

CONSTANT, PER_METRE = 0.003, 0.0003
ANGLE_MIN, TIMES, LEAST, LONG = 30.0, 3.0, 0.010, 30.0


def tape(length):
    return math.hypot(CONSTANT, PER_METRE * length)


def root(a, b, la, lb, near):
    return fsolve(lambda p: [np.linalg.norm(p - a) - la, np.linalg.norm(p - b) - lb], near, xtol=1e-12)


def jacobian(bases, i, j, mark):
    """d mark / d (all base coordinates, both tapes)."""
    lengths = [np.linalg.norm(mark - bases[k]) for k in (i, j)]
    n = bases.size
    out = np.zeros((2, n + 2))
    for column in range(n + 2):
        ends = []
        for sign in (1, -1):
            moved, held = bases.copy(), list(lengths)
            if column < n:
                moved.reshape(-1)[column] += sign * 1e-4
            else:
                held[column - n] += sign * 1e-4
            ends.append(root(moved[i], moved[j], *held, mark))
        out[:, column] = (ends[0] - ends[1]) / 2e-4
    return out, lengths


def reading(jp, jq, way, cov):
    """Variance of way . (q - p)."""
    row = way @ (jq - jp)
    return row @ cov @ row


def solve(bases, sigma, mark):
    n = len(bases)
    best = None
    for i, j in itertools.combinations(range(n), 2):
        u, v = mark - bases[i], mark - bases[j]
        if max(np.linalg.norm(u), np.linalg.norm(v)) > LONG:
            continue
        angle = math.degrees(math.acos(np.clip(u @ v / np.linalg.norm(u) / np.linalg.norm(v), -1, 1)))
        if not ANGLE_MIN <= angle <= 180 - ANGLE_MIN:
            continue
        jac, lengths = jacobian(bases, i, j, mark)
        cov = scipy.linalg.block_diag(sigma, np.diag([tape(x) ** 2 for x in lengths]))
        spread = jac @ cov @ jac.T
        if best is None or np.trace(spread) < best[0]:
            best = (np.trace(spread), i, j, angle, jac, cov, spread)
    if best is None:
        return None
    _, i, j, angle, jac, cov, spread = best
    values, vectors = np.linalg.eigh(spread)
    times = math.sqrt(chi2.ppf(0.95, 2))
    theta = math.degrees(math.atan2(vectors[1, 1], vectors[0, 1])) % 180
    third = None
    for k in set(range(n)) - {i, j}:
        way = mark - bases[k]
        long = np.linalg.norm(way)
        if long > LONG:
            continue
        way = way / long
        still = np.zeros_like(jac)
        still[:, 2 * k : 2 * k + 2] = np.eye(2)
        s = math.sqrt(reading(still, jac, way, cov) + tape(long) ** 2)
        limit = max(TIMES * s, LEAST)
        shows = np.abs(way @ jac[:, -2:])
        finds = limit / shows.min()
        if third is None or finds < third["finds"]:
            third = {"base": k, "length": long, "sigma": s, "limit": limit, "finds": finds}
    (a, b), (x, y) = bases[j] - bases[i], mark - bases[i]
    left = a * y - b * x > 0
    return {
        "pair": [i, j] if left else [j, i],
        "angle": angle,
        "ellipse": [times * math.sqrt(values[1]), times * math.sqrt(values[0]), theta],
        "third": third,
    }, jac


def between(bases, sigma, marks, jacs):
    """Predicted deviation of a reading between two marks, and of the turn, degrees."""
    n = bases.size
    lengths = []
    wide = []
    for number, (mark, (answer, jac)) in enumerate(zip(marks, jacs)):
        i, j = sorted(answer["pair"])
        lengths += [tape(np.linalg.norm(mark - bases[k])) ** 2 for k in (i, j)]
        row = np.zeros((2, n + 4))
        row[:, :n] = jac[:, :n]
        row[:, n + 2 * number : n + 2 * number + 2] = jac[:, n:]
        wide.append(row)
    cov = scipy.linalg.block_diag(sigma, np.diag(lengths))
    way = marks[1] - marks[0]
    long = np.linalg.norm(way)
    way = way / long
    span = math.sqrt(reading(wide[0], wide[1], way, cov) + tape(long) ** 2)
    turn = math.sqrt(reading(wide[0], wide[1], np.array([-way[1], way[0]]), cov)) / long
    return {"span": [long, span], "turn": [math.degrees(math.atan2(way[1], way[0])), math.degrees(turn)]}


def main():
    rng = np.random.default_rng(20)
    cases = []
    short = lambda values: [float(f"{value:.9g}") for value in values]
    while len(cases) < 40:
        n = int(rng.integers(3, 8))
        bases = np.round(rng.uniform([0, 0], [26, 18], (n, 2)), 3)
        shape = rng.normal(0, 0.004, (2 * n, 2 * n)) / math.sqrt(n)
        sigma = np.array(short((shape @ shape.T).reshape(-1))).reshape(2 * n, 2 * n)
        marks = np.round(rng.uniform([3, 3], [22, 15], (2, 2)), 3)
        if np.linalg.norm(marks[0] - marks[1]) < 1 or min(
            np.linalg.norm(mark - base) for mark in marks for base in bases
        ) < 0.3:
            continue
        found = [solve(bases, sigma, mark) for mark in marks]
        if any(one is None for one in found):
            continue
        cases.append(
            {
                "bases": bases.tolist(),
                "covariance": sigma.reshape(-1).tolist(),
                "marks": marks.tolist(),
                "answers": [one[0] for one in found],
                **between(bases, sigma, marks, found),
            }
        )
    out = {"numpy": np.__version__, "scipy": scipy.__version__, "cases": cases}
    text = json.dumps(out, indent=None, separators=(",", ":"))
    pathlib.Path(__file__).with_name("setout.json").write_text(text.replace('{"bases"', '\n{"bases"') + "\n")


main()
