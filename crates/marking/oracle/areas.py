"""Paint areas by another way: shapely's buffers and closed forms for the parts, fontTools
and a winding count for the glyphs. Nothing of the program is used but its sizes.

    python3 areas.py > areas.json     (shapely 2.x, fontTools 4.x)

Areas are of true arcs (256 sides a quarter); the program's polygons lie up to 0.5 mm inside
theirs.
"""

import json
import math
import sys
from pathlib import Path

from fontTools.pens.basePen import BasePen
from fontTools.ttLib import TTFont
from shapely.affinity import scale, translate
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import polygonize, unary_union

BAND, JOINT, GAP, STROKE = 0.075, 0.02, 0.05, 0.10
SIDES = 256


def disc(radius):
    return Point(0, 0).buffer(radius, SIDES)


def slab(length, breadth, corner):
    corner = min(corner, length / 2, breadth / 2)
    core = box(-length / 2 + corner, -breadth / 2 + corner, length / 2 - corner, breadth / 2 - corner)
    if core.area == 0:
        core = LineString([core.bounds[:2], core.bounds[2:]])
    return core.buffer(corner, SIDES)


def band(outer, inner, heel):
    """A band with a joint in front and two behind: what is painted, and its heel bar."""
    joints = unary_union(
        [box(0, -JOINT / 2, 9, JOINT / 2), box(-9, heel, 0, heel + JOINT), box(-9, -heel - JOINT, 0, -heel)]
    )
    paint = outer.difference(inner).difference(joints)
    bar = paint.intersection(box(-9, -heel, 0, heel))
    return paint.area - bar.area, bar.area


def ring(across):
    return band(disc(across / 2), disc(across / 2 - BAND), 0.14 * across)


def broad(deep):
    breadth = 1.5 * deep
    return band(slab(deep, breadth, 0.165), slab(deep - 2 * BAND, breadth - 2 * BAND, 0.09), 0.195 * breadth)


def square(side):
    return band(slab(side, side, 0.09), slab(side - 2 * BAND, side - 2 * BAND, 0.02), 0.186 * side)


def half_moon(breadth):
    half = breadth / 2
    back = scale(disc(1), half * 0.9, half).intersection(box(-9, -9, 0, 9))
    front = slab(0.06, breadth, 0.03).intersection(box(0, -9, 9, 9))
    return back.area + front.area


def stroke(line, breadth):
    return LineString(line).buffer(breadth / 2, SIDES).area


CHEVRON = stroke([(-0.112, 0.14), (0.028, 0), (-0.112, -0.14)], 0.08)
PEBBLE, TELLER = math.pi * 0.11**2, math.pi * 0.045**2
STOP = lambda breadth: slab(0.2, breadth, 0.1).area


def strokes(long):
    """Roller strokes of about 1.10 with round ends, 0.10 apart, along a line of this length."""
    pieces = max(1, round((long + 0.1) / 1.2))
    piece = (long - (pieces - 1) * 0.1) / pieces
    return pieces * (STROKE * (piece - STROKE) + math.pi * STROKE**2 / 4)


TURN = 2 * (STROKE * 0.8 * (0.62 * math.pi - 0.12) + math.pi * STROKE**2 / 4)


def families():
    start = half_moon(0.56)
    spots = {"straw": start, "chalk": 3 * PEBBLE, "harebell": 0}
    for colour in ["chalk", "harebell", "chalk", "straw", "straw", "chalk", "harebell", "straw"]:
        body, heel = broad(0.33) if colour == "straw" else ring(0.33)
        spots[colour] += body
        spots["chalk" if colour == "straw" else "straw"] += heel
    pair = {"straw": 2 * start + 4 * broad(0.36)[1], "chalk": 6 * PEBBLE + 2 * broad(0.36)[0], "harebell": 2 * broad(0.36)[0]}
    lean = math.atan2(0.3, 3.6)
    brook = {
        "sedge": 2 * strokes(3.6 / math.cos(lean)),
        "straw": 3 * start,
        # six tellers; one, two and three ripples, long and short in turn
        "chalk": 6 * TELLER + 3 * PEBBLE + 4 * slab(0.16, 0.05, 0.025).area + 2 * slab(0.24, 0.05, 0.025).area,
    }
    straight = {
        "harebell": 2 * strokes(6),
        "straw": half_moon(0.9) + 4 * CHEVRON + PEBBLE + TURN,
        "chalk": STOP(0.9) + 4 * PEBBLE,
    }
    # a wave of 7 m: two waves of radius 1.25 whose bends sum to 8 turns
    turn = math.asin(6 / (4 * 1.25 * 2))
    edges = 0
    for side in (0.5, -0.5):
        # down, up, down, up, down: half of the bends are left ones, tighter on the left
        left, right = 4 * turn, 4 * turn
        edges += strokes(1 + left * (1.25 - side) + right * (1.25 + side))
    wave = dict(straight, harebell=edges)
    return {"spots": spots, "pair": pair, "brook": brook, "straight-lane": straight, "wave-lane": wave}


class Contours(BasePen):
    """A glyph's contours as points, 64 to a curve."""

    def __init__(self, glyphs):
        super().__init__(glyphs)
        self.contours = []

    def _moveTo(self, at):
        self.contours.append([at])

    def _lineTo(self, at):
        self.contours[-1].append(at)

    def _curveToOne(self, b, c, d):
        a = self.contours[-1][-1]
        for step in range(1, 65):
            t, s = step / 64, 1 - step / 64
            self.contours[-1].append(
                tuple(s**3 * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t**3 * d[k] for k in (0, 1))
            )


def winding(at, contours):
    count = 0
    for contour in contours:
        for (x0, y0), (x1, y1) in zip(contour, contour[1:] + contour[:1]):
            side = (x1 - x0) * (at.y - y0) - (at.x - x0) * (y1 - y0)
            if y0 <= at.y < y1 and side > 0:
                count += 1
            if y1 <= at.y < y0 and side < 0:
                count -= 1
    return count


def glyphs(cap):
    font = TTFont(Path(__file__).parent.parent / "fonts" / "Lexend-SemiBold.ttf")
    per = cap / font["OS/2"].sCapHeight
    outlines, names, areas = font.getGlyphSet(), font.getBestCmap(), {}
    for character in "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ":
        pen = Contours(outlines)
        outlines[names[ord(character)]].draw(pen)
        contours = [c[:-1] if c[0] == c[-1] else c for c in pen.contours]
        lines = unary_union([LineString(c + c[:1]) for c in contours])
        faces = [f for f in polygonize(lines) if winding(f.representative_point(), contours) != 0]
        areas[character] = sum(f.area for f in faces) * per * per
    return areas


json.dump({"unit": "m2", "families": families(), "glyphs": glyphs(0.15)}, sys.stdout, indent=1)
