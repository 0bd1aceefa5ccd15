"""scipy adjusts the yard again, from the readings in plan.json alone."""

import math

import numpy as np
import pytest
from scipy import stats
from scipy.optimize import least_squares


def observed(kind, names, at):
    """What the coordinates `at` say that a reading should be (degrees for a square)."""
    place = [np.array(at[name]) for name in names]
    if kind == "distance":
        return math.dist(*place)
    if kind in ("along", "left"):
        start, end, point = place
        way = (end - start) / np.linalg.norm(end - start)
        arm = point - start
        return arm @ way if kind == "along" else way[0] * arm[1] - way[1] * arm[0]
    if kind == "square":
        corner, one, other = place
        a, b = one - corner, other - corner
        return math.degrees(math.atan2(abs(a[0] * b[1] - a[1] * b[0]), a @ b))
    return place[0][0 if kind == "known-x" else 1]


class Network:
    def __init__(self, survey):
        self.survey = survey
        self.kept = [r for r in survey["readings"] if not r["set_aside"]]
        datum = survey["datum"]
        self.unknown = []
        for name in survey["points"]:
            if datum["kind"] == "line" and name == datum["origin"]:
                continue
            self.unknown.append((name, 0))
            if datum["kind"] == "line" and name == datum["towards"]:
                continue
            self.unknown.append((name, 1))

    def at(self, values):
        places = {name: [p["x"], p["y"]] for name, p in self.survey["points"].items()}
        for (name, axis), value in zip(self.unknown, values):
            places[name][axis] = value
        return places

    def residuals(self, values):
        places = self.at(values)
        return np.array(
            [
                (observed(r["kind"], r["points"], places) - r["reading"]) / r["sigma"]
                for r in self.kept
            ]
        )

    def solve(self):
        start = np.array(
            [self.survey["points"][n]["x" if a == 0 else "y"] for n, a in self.unknown]
        )
        rng = np.random.default_rng(1)
        return least_squares(
            self.residuals,
            start + rng.normal(0, 0.02, len(start)),
            xtol=1e-15,
            ftol=1e-15,
            gtol=1e-12,
        )


@pytest.fixture(scope="module")
def network(plan):
    return Network(plan["survey"])


@pytest.fixture(scope="module")
def answer(network):
    return network.solve()


def test_coordinates_are_those_of_scipy(network, answer):
    for (name, axis), value in zip(network.unknown, answer.x):
        ours = network.survey["points"][name]["x" if axis == 0 else "y"]
        assert ours == pytest.approx(value, abs=5e-7), name


def test_the_weighted_sum_of_squares_and_its_test(network, answer):
    survey = network.survey
    assert survey["vtpv"] == pytest.approx(2 * answer.cost, rel=1e-4)
    assert survey["dof"] == len(network.kept) - len(network.unknown)
    test = survey["global_test"]
    assert test["limit"] == pytest.approx(stats.chi2.ppf(1 - test["alpha"], survey["dof"]), abs=1e-5)
    assert test["passed"] == (survey["vtpv"] <= test["limit"])


def test_the_covariance_is_the_inverse_of_the_normal_matrix(network, answer):
    inverse = np.linalg.inv(answer.jac.T @ answer.jac)
    where = {key: at for at, key in enumerate(network.unknown)}
    for name, point in network.survey["points"].items():
        for axis, key in enumerate(("sx", "sy")):
            at = where.get((name, axis))
            wanted = 0.0 if at is None else math.sqrt(inverse[at, at])
            assert point[key] == pytest.approx(wanted, rel=2e-3, abs=2e-6), (name, key)


def test_the_area_and_its_sigma(network):
    survey = network.survey
    ring = [[survey["points"][n]["x"], survey["points"][n]["y"]] for n in survey["boundary"]]
    xs, ys = np.array(ring).T
    area = 0.5 * np.sum(xs * np.roll(ys, -1) - np.roll(xs, -1) * ys)
    assert survey["area"]["value"] == pytest.approx(area, abs=2e-6)
    order = survey["covariance"]["order"]
    rows = np.array(survey["covariance"]["rows"])
    slope = np.zeros(2 * len(order))
    for at, name in enumerate(survey["boundary"]):
        if name not in order:
            continue
        column = 2 * order.index(name)
        slope[column] = (ys[(at + 1) % len(ys)] - ys[at - 1]) / 2
        slope[column + 1] = (xs[at - 1] - xs[(at + 1) % len(xs)]) / 2
    assert survey["area"]["sigma"] == pytest.approx(math.sqrt(slope @ rows @ slope), abs=2e-6)


def test_the_misread_diagonal_is_found(plan):
    (suspect,) = [s for s in plan["survey"]["suspects"] if s["set_aside"]]
    assert suspect["points"] == ["A", "D"]
    assert suspect["guess"]["slip"] == "tenths"
    assert suspect["should_read"] == pytest.approx(17.199, abs=0.01)
