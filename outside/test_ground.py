"""shapely takes the blocked patches from the yard again."""

import pytest
from shapely.geometry import Polygon
from shapely.ops import unary_union


def shape(rings):
    return Polygon(rings[0], rings[1:])


@pytest.fixture(scope="module")
def ground(plan):
    return plan["ground"]


def test_free_is_the_yard_less_all_that_is_blocked(ground):
    yard = shape(ground["yard"])
    blocked = unary_union([shape(patch["polygon"]).buffer(0) for patch in ground["blocked"]])
    free = unary_union([shape(rings) for rings in ground["free"]])
    wanted = yard.difference(blocked)
    assert free.area == pytest.approx(wanted.area, rel=1e-6)
    assert free.symmetric_difference(wanted).area < 1e-3
    assert ground["free_area"] == pytest.approx(free.area, rel=1e-6)


def test_every_polygon_is_valid_and_turns_the_right_way(ground):
    for rings in [ground["yard"], *ground["free"], *[p["polygon"] for p in ground["blocked"]]]:
        polygon = shape(rings)
        assert polygon.is_valid
        assert polygon.exterior.is_ccw
        assert not any(hole.is_ccw for hole in polygon.interiors)


def test_every_patch_says_why_and_every_rule_its_source(ground, plan):
    figures = {figure["key"] for figure in plan["sources"]}
    for patch in ground["blocked"]:
        assert patch["why"] and patch["of"]
        if patch["rule"]:
            assert patch["rule"] in figures
            assert patch["source"]


def test_routes_stay_inside_and_keep_their_width(ground):
    yard = shape(ground["yard"])
    for route in ground["routes"]:
        assert route["line"], f"no way from {route['from']} to {route['to']}"
        from shapely.geometry import LineString

        line = LineString(route["line"])
        assert line.length == pytest.approx(route["length"], abs=1e-5)
        assert yard.buffer(1e-6).contains(line)
