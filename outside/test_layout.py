"""scipy solves the choice again, and shapely lays it again, from plan.json alone."""

import itertools

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix
from shapely.geometry import Polygon
from shapely.ops import unary_union

FIRST, SECOND, STALE, STALE_WORTH, TRACK = 1.25, 0.75, 15.0, 0.5, 4


def shape(rings):
    return Polygon(rings[0], rings[1:])


class Choice:
    """The programme of LAYOUT, row by row."""

    def __init__(self, plan):
        layout = plan["layout"]
        self.layout = layout
        self.counts = {child["id"]: child["count"] for child in plan["children"]}
        self.candidates = layout["candidates"]
        self.index = {}
        acts = {}
        for at, candidate in enumerate(self.candidates):
            for gift in candidate["e"]:
                acts.setdefault((gift["child"], at, gift["activity"]), []).append(gift)
        self.acts = acts
        names = [("x", at) for at in range(len(self.candidates))]
        names += [("u", *key, b) for key in acts for b in (1, 2)]
        self.targets = {
            (t["child"], t["skill"], t["foot"]): t["minutes"] for t in layout["targets"]
        }
        names += [("v", *key, p) for key in self.targets for p in (1, 2)]
        self.index = {name: at for at, name in enumerate(names)}

    def solve(self, fixed=None, apart=()):
        layout, index = self.layout, self.index
        size = len(index)
        rows, highs = [], []

        def row(terms, high):
            rows.append(terms)
            highs.append(high)

        total = sum(self.counts[c] * m for (c, _, _), m in self.targets.items())
        cost = np.zeros(size)
        upper = np.full(size, np.inf)
        lower = np.zeros(size)
        whole = np.zeros(size)
        for at, candidate in enumerate(self.candidates):
            upper[index["x", at]] = 1
            whole[index["x", at]] = 1
            if candidate["locked"]:
                lower[index["x", at]] = 1
            if candidate["refused"]:
                upper[index["x", at]] = 0
            if fixed is not None:
                value = 1.0 if candidate["name"] in fixed else 0.0
                lower[index["x", at]] = upper[index["x", at]] = value
        for key, minutes in self.targets.items():
            count = self.counts[key[0]]
            for p, worth in ((1, FIRST), (2, SECOND)):
                cost[index["v", *key, p]] = -worth * count / total
                upper[index["v", *key, p]] = minutes / 2
            terms = {index["v", *key, 1]: 1.0, index["v", *key, 2]: 1.0}
            for (child, at, activity), gifts in self.acts.items():
                if child != key[0]:
                    continue
                for gift in gifts:
                    if (gift["skill"], gift["foot"]) == key[1:]:
                        for b, share in ((1, 1.0), (2, STALE_WORTH)):
                            name = index["u", child, at, activity, b]
                            terms[name] = terms.get(name, 0.0) - gift["e"] * share
            row(terms, 0.0)
        by_figure, by_child, by_station = {}, {}, {}
        yard = {}
        for child, at, activity in self.acts:
            for b in (1, 2):
                name = index["u", child, at, activity, b]
                by_figure.setdefault((child, at, b), {})[name] = 1.0
                by_child.setdefault(child, {})[name] = 1.0
                by_station.setdefault(at, {})[name] = float(self.counts[child])
                yard[name] = float(self.counts[child])
        for (_, at, _), terms in by_figure.items():
            row({**terms, index["x", at]: -STALE}, 0.0)
        for terms in by_child.values():
            row(terms, layout["M"])
        for at, terms in by_station.items():
            room = TRACK * self.candidates[at]["tracks"] * layout["M"] * layout["outings"]
            row({**terms, index["x", at]: -room}, 0.0)
        row(yard, layout["M"] * layout["A"] * layout["outings"])
        money = {index["x", at]: c["cost"] for at, c in enumerate(self.candidates)}
        row(money, layout["budget"])
        ground = {index["x", at]: c["area"] for at, c in enumerate(self.candidates)}
        row(ground, layout["free_area"])
        for (_, group) in itertools.groupby(
            sorted(range(len(self.candidates)), key=self.kin), key=self.kin
        ):
            rivals = list(group)
            if len(rivals) > 1:
                row({index["x", at]: 1.0 for at in rivals}, 1.0)
        at_of = {c["name"]: at for at, c in enumerate(self.candidates)}
        for names in apart:
            row({index["x", at_of[name]]: 1.0 for name in names}, len(names) - 1.0)
        matrix = lil_matrix((len(rows), size))
        for at, terms in enumerate(rows):
            for column, value in terms.items():
                matrix[at, column] = value
        answer = milp(
            cost,
            constraints=LinearConstraint(matrix.tocsr(), ub=np.array(highs)),
            bounds=Bounds(lower, upper),
            integrality=whole,
            options={"mip_rel_gap": 1e-9, "time_limit": 240},
        )
        assert answer.x is not None, answer.message
        return -answer.fun, -(answer.mip_dual_bound or answer.fun)

    def kin(self, at):
        return self.candidates[at]["family"], self.candidates[at]["group"]


@pytest.fixture(scope="module")
def choice(plan):
    return Choice(plan)


def test_the_value_is_that_of_scipy(choice):
    value, _ = choice.solve(fixed=set(choice.layout["chosen"]))
    assert choice.layout["value"] == pytest.approx(value, abs=1e-6)


def test_the_bound_holds_and_is_the_best_where_it_was_proven(choice):
    best, bound = choice.solve()
    layout = choice.layout
    assert layout["bound"] >= best - 1e-6
    assert layout["bound"] >= layout["value"] - 1e-9
    assert layout["gap"] == pytest.approx(
        (layout["bound"] - layout["value"]) / layout["bound"], abs=1e-6
    )
    assert layout["gap"] <= 0.03


def test_the_bound_by_shape_holds_under_the_rows_that_are_recorded(choice):
    layout = choice.layout
    shape = layout["shape"]
    best, _ = choice.solve(apart=shape["apart"])
    assert shape["bound"] >= best - 1e-6
    assert layout["value"] - 1e-9 <= shape["bound"] <= layout["bound"] + 1e-9
    assert shape["gap"] == pytest.approx(
        (shape["bound"] - layout["value"]) / shape["bound"], abs=1e-6
    )
    for names in shape["apart"]:
        assert not set(names) <= set(layout["chosen"]), names


def test_nothing_overlaps_and_all_lies_on_free_ground(plan):
    free = unary_union([shape(rings) for rings in plan["ground"]["free"]])
    markings = plan["markings"]
    for marking in markings:
        envelope = shape(marking["envelope"])
        assert envelope.difference(free).area < 1e-6, marking["name"]
        for paint in marking["paint"]:
            assert shape(paint["polygon"]).difference(envelope).area < 1e-6
    for one, other in itertools.combinations(markings, 2):
        overlap = shape(one["envelope"]).intersection(shape(other["envelope"])).area
        assert overlap < 1e-6, (one["name"], other["name"])
    for marking in markings:
        paints = [shape(paint["polygon"]) for paint in marking["paint"]]
        for one, other in itertools.combinations(paints, 2):
            assert one.intersection(other).area < 1e-9


def test_every_candidate_that_is_not_there_has_a_reason(choice):
    layout = choice.layout
    told = {left["candidate"] for left in layout["left_out"]}
    assert told | set(layout["chosen"]) == {c["name"] for c in layout["candidates"]}


def test_the_budget_is_kept(choice):
    layout = choice.layout
    cost = {c["name"]: c["cost"] for c in layout["candidates"]}
    assert sum(cost[name] for name in layout["chosen"]) <= layout["budget"] + 1e-6


def test_every_hard_rule_of_the_audit_holds(plan):
    broken = [check for check in plan["audit"] if check["hard"] and not check["pass"]]
    assert not broken
