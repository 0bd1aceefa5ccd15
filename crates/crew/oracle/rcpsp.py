"""Exact answers for small projects, by another solver.

Python 3 with ortools (CP-SAT), one worker, version in the answers. Writes rcpsp.json beside itself:
- random: 60 small projects with resources, links with lags, works that must not meet (with a lag
  either way) and windows of work; the least end, proven;
- j301_1: PSPLIB's first project of 30 works (Kolisch and Sprecher 1997, EJOR 96:205-216), its
  numbers as in that library's file; its known optimum is 43.
"""
import json
import pathlib
import random

import ortools
from ortools.sat.python import cp_model


def solve(case):
    model = cp_model.CpModel()
    horizon = case["windows"][-1][1]
    starts, ends, spans = [], [], []
    for at, work in enumerate(case["works"]):
        start = model.new_int_var(0, horizon, f"s{at}")
        end = model.new_int_var(0, horizon, f"e{at}")
        spans.append(model.new_interval_var(start, work["seconds"], end, f"i{at}"))
        starts.append(start)
        ends.append(end)
        inside = []
        for open_, shut in case["windows"]:
            here = model.new_bool_var("")
            model.add(start >= open_).only_enforce_if(here)
            model.add(end <= shut).only_enforce_if(here)
            inside.append(here)
        model.add_exactly_one(inside)
    for a, b, lag in case["links"]:
        model.add(starts[b] >= ends[a] + lag)
    for a, b in case["begun"]:
        model.add(starts[b] >= starts[a])
    for a, b, after_a, after_b in case["apart"]:
        first = model.new_bool_var("")
        model.add(starts[b] >= ends[a] + after_a).only_enforce_if(first)
        model.add(starts[a] >= ends[b] + after_b).only_enforce_if(first.negated())
    for r, capacity in enumerate(case["capacity"]):
        model.add_cumulative(spans, [work["needs"][r] for work in case["works"]], capacity)
    last = model.new_int_var(0, horizon, "end")
    model.add_max_equality(last, ends)
    model.minimize(last)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = 60
    status = solver.solve(model)
    assert status in (cp_model.OPTIMAL, cp_model.INFEASIBLE), status
    return int(solver.objective_value) if status == cp_model.OPTIMAL else None


def draw(dice):
    many = dice.randint(4, 11)
    resources = dice.randint(1, 3)
    capacity = [dice.randint(1, 4) for _ in range(resources)]
    works = [
        {
            "seconds": dice.randint(1, 9),
            "needs": [dice.randint(0, c) if dice.random() < 0.7 else 0 for c in capacity],
        }
        for _ in range(many)
    ]
    links = [
        [a, b, dice.choice([0, 0, 2, 5])]
        for a in range(many)
        for b in range(a + 1, many)
        if dice.random() < 0.18
    ]
    begun = [[a, many - 1] for a in range(many - 1) if dice.random() < 0.1]
    apart = [
        [a, b, dice.choice([0, 3, 6]), dice.choice([0, 3, 6])]
        for a in range(many)
        for b in range(a + 1, many)
        if dice.random() < 0.12
    ]
    if dice.random() < 0.5:
        windows = [[0, 1000]]
    else:
        day = dice.randint(12, 20)
        windows = [[day * 2 * k, day * 2 * k + day] for k in range(12)]
    return {
        "works": works,
        "capacity": capacity,
        "links": links,
        "begun": begun,
        "apart": apart,
        "windows": windows,
    }


# job: duration, needs of the four resources, successors; 1 and 32 begin and end and take nothing.
J301_1 = """
2 8 4 0 0 0 : 6 11 15
3 4 10 0 0 0 : 7 8 13
4 6 0 0 0 3 : 5 9 10
5 3 3 0 0 0 : 20
6 8 0 0 0 8 : 30
7 5 4 0 0 0 : 27
8 9 0 1 0 0 : 12 19 27
9 2 6 0 0 0 : 14
10 7 0 0 0 1 : 16 25
11 9 0 5 0 0 : 20 26
12 2 0 7 0 0 : 14
13 6 4 0 0 0 : 17 18
14 3 0 8 0 0 : 17
15 9 3 0 0 0 : 25
16 10 0 0 0 5 : 21 22
17 6 0 0 0 8 : 22
18 5 0 0 0 7 : 20 22
19 3 0 1 0 0 : 24 29
20 7 0 10 0 0 : 23 25
21 2 0 0 0 6 : 28
22 7 2 0 0 0 : 23
23 2 3 0 0 0 : 24
24 3 0 9 0 0 : 30
25 3 4 0 0 0 : 30
26 7 0 0 4 0 : 31
27 8 0 0 0 7 : 28
28 3 0 8 0 0 : 31
29 7 0 7 0 0 :
30 2 0 7 0 0 :
31 2 0 0 2 0 :
"""


def j301_1():
    works, links = [], []
    for line in J301_1.split("\n"):
        if line:
            head, tail = line.split(":")
            job, seconds, *needs = map(int, head.split())
            works.append({"seconds": seconds, "needs": needs})
            links += [[job - 2, int(to) - 2, 0] for to in tail.split()]
    return {
        "works": works,
        "capacity": [12, 13, 4, 12],
        "links": links,
        "begun": [],
        "apart": [],
        "windows": [[0, 1000]],
    }


def main():
    dice = random.Random(20260901)
    cases = []
    while len(cases) < 60:
        case = draw(dice)
        case["end"] = solve(case)
        cases.append(case)
    psplib = j301_1()
    psplib["end"] = solve(psplib)
    answer = {"ortools": ortools.__version__, "random": cases, "j301_1": psplib}
    text = json.dumps(answer).replace('{"works"', '\n{"works"')
    pathlib.Path(__file__).with_name("rcpsp.json").write_text(text + "\n")
    print(psplib["end"], sum(case["end"] is None for case in cases))


if __name__ == "__main__":
    main()
