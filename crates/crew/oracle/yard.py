"""The made-up yard of tests/common/yard.rs as a project for another solver.

Works, times and waits are made anew here from the rates of practised hands, for four and six
people and air in which paint dries as on the label. Python 3 with ortools (CP-SAT), two workers;
writes yard.json beside itself: the least end (seconds from the first midnight, without the last
half hour of cleaning up) and the bound that was proven.
"""
import json
import pathlib

import ortools
from ortools.sat.python import cp_model

MIN = 60
HOUR = 3600
WASH, TOUCH, RECOAT = 60 * MIN, 60 * MIN, 120 * MIN


def works():
    """(place, seconds, people, resource or None), links (a, b, lag), apart (a, b, lag), last coats."""
    out, links, apart, lasts = [], [], [], {}

    def add(place, minutes, people, resource=None):
        out.append((place, round(minutes * 60), people, resource))
        return len(out) - 1

    def chain(place, swept, points):
        sweep = add(place, swept, 1)
        points = add(place, 4 * points, 2, "tapes")
        links.append((sweep, points, WASH))
        return points

    for nth in range(6):
        ready = chain(nth, 6, 4 + nth)
        coats = []
        for stencil, area, placed in ((nth % 3, 1.0 + 0.3 * nth, 4), ((nth + 1) % 3, 0.4, 2)):
            minutes = 6 * placed + 4 * area + 4 * placed
            first = add(nth, minutes, 2, f"stencil{stencil}")
            second = add(nth, minutes, 2, f"stencil{stencil}")
            links.append((ready, first, 0))
            links.append((first, second, RECOAT))
            lasts.setdefault(nth, []).append(second)
            coats.append((first, second))
        apart += [(a, b, TOUCH) for a in coats[0] for b in coats[1]]
    ready = chain(6, 12, 6)
    mask = add(6, 1.2 * 24, 2)
    first = add(6, 4 * 2.5, 1)
    second = add(6, 4 * 2.5 + 0.3 * 24, 1)
    links += [(ready, mask, 0), (mask, first, 0), (first, second, RECOAT)]
    lasts[6] = [second]
    ready = chain(7, 10, 8)
    first = add(7, 1.5 * 14 + 4 * 1.8, 1)
    second = add(7, 1.5 * 14 + 4 * 1.8, 1)
    links += [(ready, first, 0), (first, second, RECOAT)]
    lasts[7] = [second]
    return out, links, apart, lasts


def solve(people):
    jobs, links, apart, lasts = works()
    # Half an hour of each day is for cleaning up.
    days = [(24 * HOUR * d + 8 * HOUR, 24 * HOUR * d + 17 * HOUR - 30 * MIN) for d in range(3)]
    model = cp_model.CpModel()
    horizon = days[-1][1]
    starts, ends, spans = [], [], []
    for place, seconds, _, _ in jobs:
        start, end = model.new_int_var(0, horizon, ""), model.new_int_var(0, horizon, "")
        spans.append(model.new_interval_var(start, seconds, end, ""))
        starts.append(start)
        ends.append(end)
        inside = []
        for open_, shut in days:
            here = model.new_bool_var("")
            model.add(start >= open_).only_enforce_if(here)
            model.add(end <= shut).only_enforce_if(here)
            inside.append(here)
        model.add_exactly_one(inside)
    for a, b, lag in links:
        model.add(starts[b] >= ends[a] + lag)
    for a, b, lag in apart:
        first = model.new_bool_var("")
        model.add(starts[b] >= ends[a] + lag).only_enforce_if(first)
        model.add(starts[a] >= ends[b] + lag).only_enforce_if(first.negated())
    # The marking by the door (the first) is finished last, with its last colour.
    for to in lasts[0][-1:]:
        for place, coats in lasts.items():
            for other in coats if place else []:
                model.add(starts[to] >= starts[other])
    model.add_cumulative(spans, [job[2] for job in jobs], people)
    for resource in sorted({job[3] for job in jobs if job[3]}):
        model.add_no_overlap([span for span, job in zip(spans, jobs) if job[3] == resource])
    last = model.new_int_var(0, horizon, "")
    model.add_max_equality(last, ends)
    model.minimize(last)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = 90
    status = solver.solve(model)
    assert status in (cp_model.OPTIMAL, cp_model.FEASIBLE), status
    return {
        "people": people,
        "works": len(jobs),
        "end": int(solver.objective_value),
        "bound": int(solver.best_objective_bound),
    }


def main():
    answer = {"ortools": ortools.__version__, "yards": [solve(4), solve(6)]}
    pathlib.Path(__file__).with_name("yard.json").write_text(json.dumps(answer) + "\n")
    print(answer)


if __name__ == "__main__":
    main()
