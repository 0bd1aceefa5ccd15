"""Plates with random slots and rings: what falls out of each, by shapely.

Run: python holds.py > holds.json. Written with shapely 2.2.0, numpy 2.4.6."""

import json
import math

import numpy
import shapely
from shapely import LineString, Point, Polygon, unary_union

# as much as the room widens openings first, metres
SLIT = 0.0005

chance = numpy.random.default_rng(5)


def rounded(polygon):
    return [[[round(x, 6), round(y, 6)] for x, y in ring.coords] for ring in (polygon.exterior, *polygon.interiors)]


def cases():
    for number in range(80):
        wide, high = (round(float(v), 3) for v in chance.uniform(0.3, 1.2, 2))
        plate = Polygon([(0, 0), (wide, 0), (wide, high), (0, high)])
        openings = []
        for _ in range(int(chance.integers(1, 7))):
            x, y = (float(v) for v in chance.uniform(0.05, 0.95, 2) * [wide, high])
            size = float(chance.uniform(0.04, 0.2))
            kind = int(chance.integers(0, 4))
            if kind == 0:  # a band, whole: its eye falls out
                shape = Point(x, y).buffer(size).difference(Point(x, y).buffer(0.6 * size))
            elif kind == 1:  # a band with a joint
                turn = float(chance.uniform(0, 2 * math.pi))
                far = (x + math.cos(turn), y + math.sin(turn))
                slit = LineString([(x, y), far]).buffer(0.01, cap_style="flat")
                shape = Point(x, y).buffer(size).difference(Point(x, y).buffer(0.6 * size)).difference(slit)
            else:  # a slot, that may cut the plate through
                turn = float(chance.uniform(0, math.pi))
                long = float(chance.uniform(0.05, 0.8))
                to = (x + long * math.cos(turn), y + long * math.sin(turn))
                shape = LineString([(x, y), to]).buffer(0.02, cap_style="flat")
            openings.append(Polygon(*(lambda r: (r[0], r[1:]))(rounded(shape))))
        # openings of a plate keep off one another
        apart = []
        for one in openings:
            if all(one.distance(other) > 0.003 for other in apart):
                apart.append(one)
        left = plate.difference(unary_union([one.buffer(SLIT, quad_segs=16) for one in apart]))
        parts = sorted((part.area for part in getattr(left, "geoms", [left])), reverse=True)
        # a part that is all but nothing is a matter of corners
        if min(parts) < 1e-5:
            continue
        yield {
            "plate": rounded(plate),
            "openings": [rounded(one) for one in apart],
            "falls": parts[1:],
        }


print(json.dumps({"shapely": shapely.__version__, "cases": list(cases())}))
