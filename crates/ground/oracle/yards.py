"""500 yards with what stands in them, and what shapely leaves of their ground.

The rules are written here a second time, from the standards' figures, with shapely's
polygons in place of the room's own overlay; no code is shared. Of each yard three areas
are kept, in m2:

  free   with the room's arcs (sides that touch the true circle from outside), drawn here;
  most   with arcs as fine as 2e-6 m: no more may be left free;
  least  with every zone 5.02 mm wider than the true one: no less may be left free.

Run again with `python3 yards.py`; it writes yards.json beside itself. The yards are
invented. Made with Python 3, shapely 2.2.0 (GEOS 3.14.1), seed 20. Coordinates are whole
millimetres, so that both sides read the same yard.
"""

import json
import math
import random
from pathlib import Path

import shapely
from shapely.geometry import LineString, MultiPoint, Point, Polygon
from shapely.ops import unary_union

FT, INCH = 0.3048, 0.0254
OUTSIDE, SNAP = 0.005, 4e-6
EQUIPMENT = ["slide", "swing", "tyre-swing", "climber", "seesaw", "rocker", "roundabout"]
STANDING = ["house", "tree", "post", "lamp", "bench", "table", "shed", "building", "planter",
            "sandpit"]
DRAINS = ["drain", "cover", "hydrant"]


# --- shapes, with the room's arcs ("tangent"), fine arcs ("fine") or wide ones ("wide")

def arc(c, r, start, sweep):
    """Corners of the polygon that touches the arc from outside."""
    r += SNAP
    n = max(1, math.ceil(sweep / (2 * math.acos(r / (r + OUTSIDE)))))
    step = sweep / n
    far = r / math.cos(step / 2)
    return [(c[0] + far * math.cos(start + (i + .5) * step),
             c[1] + far * math.sin(start + (i + .5) * step)) for i in range(n)]


def disc(c, r, mode):
    if mode != "tangent":
        return Point(c).buffer(r + (0.00502 if mode == "wide" else 0), quad_segs=512)
    return Polygon([p for q in range(4) for p in arc(c, r, q * math.pi / 2, math.pi / 2)])


def capsule(a, b, r):
    if a == b:
        return disc(a, r, "tangent")
    t = math.atan2(b[1] - a[1], b[0] - a[0])
    return Polygon(arc(a, r, t + math.pi / 2, math.pi) + arc(b, r, t - math.pi / 2, math.pi))


def grown(ring, r, mode):
    """All ground within r of a ring (inside included), a line or a point."""
    body = Point(ring[0]) if len(ring) == 1 else LineString(ring) if len(ring) == 2 else Polygon(ring)
    if mode != "tangent":
        return body.buffer(r + (0.00502 if mode == "wide" else 0), quad_segs=512)
    if len(ring) == 1:
        return disc(ring[0], r, mode)
    if len(ring) == 2:
        return capsule(ring[0], ring[1], r)
    if not body.exterior.is_ccw:
        ring = ring[::-1]
    n, parts = len(ring), [body]
    for i in range(n):
        before, at, after = ring[i - 1], ring[i], ring[(i + 1) % n]
        t0 = math.atan2(at[1] - before[1], at[0] - before[0])
        t1 = math.atan2(after[1] - at[1], after[0] - at[0])
        out = lambda p, t: (p[0] + (r + SNAP) * math.sin(t), p[1] - (r + SNAP) * math.cos(t))
        parts.append(Polygon([at, out(at, t1), out(after, t1), after]))
        turn = math.remainder(t1 - t0, 2 * math.pi)
        if turn > 0:
            parts.append(Polygon([at, out(at, t0), *arc(at, r, t0 - math.pi / 2, turn), out(at, t1)]))
    return unary_union(parts)


def strip(a, b, along, across, mode):
    """A rectangle on the line a to b: from and to along it, right and left of it."""
    d = math.hypot(b[0] - a[0], b[1] - a[1])
    w = ((b[0] - a[0]) / d, (b[1] - a[1]) / d)
    s = {"tangent": SNAP, "fine": 0, "wide": 0.00502}[mode]
    at = lambda u, v: (a[0] + w[0] * u - w[1] * v, a[1] + w[1] * u + w[0] * v)
    (u0, u1), (v0, v1) = along, across
    return Polygon([at(u0 - s, v0 - s), at(u1 + s, v0 - s), at(u1 + s, v1 + s), at(u0 - s, v1 + s)])


def quarter(hinge, r, closed, opened, mode):
    """What a leaf sweeps; closed and opened are units at a right angle."""
    if closed[0] * opened[1] - closed[1] * opened[0] < 0:
        closed, opened = opened, closed
    t = math.atan2(closed[1], closed[0])
    far = lambda w, r: (hinge[0] + w[0] * r, hinge[1] + w[1] * r)
    if mode == "tangent":
        rim = [far(closed, r + SNAP), *arc(hinge, r, t, math.pi / 2), far(opened, r + SNAP)]
        return Polygon([hinge, *rim])
    rim = [(hinge[0] + r * math.cos(t + i * math.pi / 4096),
            hinge[1] + r * math.sin(t + i * math.pi / 4096)) for i in range(2049)]
    sector = Polygon([hinge, *rim])
    return sector.buffer(0.00502, quad_segs=64) if mode == "wide" else sector


# --- the rules

def x_of(y):
    """EN1176-1: falling space from the free height of fall."""
    return 1.5 if y <= 1.5 else 2 * y / 3 + 0.5


def middle(f):
    c = {1: Point, 2: LineString}.get(len(f["ring"]), Polygon)(f["ring"] if len(f["ring"]) > 1 else f["ring"][0])
    return (c.centroid.x, c.centroid.y)


def around(f, r, mode):
    return grown(f["ring"], f.get("radius", 0) + r, mode)


def beam(ring):
    if len(ring) == 2:
        return ring
    if len(ring) == 1:
        return None
    sides = [(ring[i], ring[(i + 1) % len(ring)]) for i in range(len(ring))]
    a, b = max(sides, key=lambda s: math.dist(*s))
    d = math.dist(a, b)
    w = ((b[0] - a[0]) / d, (b[1] - a[1]) / d)
    u = [(p[0] - a[0]) * w[0] + (p[1] - a[1]) * w[1] for p in ring]
    v = [(p[1] - a[1]) * w[0] - (p[0] - a[0]) * w[1] for p in ring]
    mid = (max(v) + min(v)) / 2
    at = lambda s: (a[0] + w[0] * s - w[1] * mid, a[1] + w[1] * s + w[0] * mid)
    return [at(min(u)), at(max(u))]


def zone(f, us, mode):
    kind, h = f["kind"], f.get("height")
    all_round = 6 * FT if us else x_of(3.0 if h is None else h)
    if kind == "slide":
        if us:
            ahead = min(max(8 * FT if h is None else h, 6 * FT), 8 * FT)
        else:
            ahead = max(all_round, 2.0)
        if "exit" not in f:
            return [around(f, max(ahead, all_round), mode)]
        p, q = f["exit"]
        m = middle(f)
        out = (q[0] - p[0]) * (m[1] - p[1]) - (q[1] - p[1]) * (m[0] - p[0]) < 0
        across = (0, ahead) if out else (-ahead, 0)
        wide = math.dist(p, q)
        return [strip(p, q, (-all_round, wide + all_round), across, mode), around(f, all_round, mode)]
    if kind == "swing":
        hangs = f["pivot"] - f.get("seat_top", 0)
        each = 2 * hangs if us else max(2 * hangs, 0.867 * hangs + 2.25)
        ends = beam(f["ring"])
        if ends is None:
            return [around(f, max(each, all_round), mode)]
        long = math.dist(*ends)
        return [strip(*ends, (-all_round, long + all_round), (-each, each), mode),
                around(f, all_round, mode)]
    if kind == "tyre-swing":
        m = f["members"]
        r = m + 6 * FT if us else max(m + 6 * FT, 0.867 * m + 2.25)
        return [disc(middle(f), r, mode), around(f, all_round, mode)]
    if kind == "rocker" and us and f.get("standing"):
        return [around(f, 7 * FT, mode)]
    if kind == "roundabout" and not us:
        return [around(f, max(2.0, all_round), mode)]
    if kind in EQUIPMENT:
        return [around(f, all_round, mode)]
    if kind == "other":
        return [around(f, 8 * FT if us else 2.5, mode)]
    return [around(f, 0.3 if kind in DRAINS else 0.5, mode)]


def footprint(f, mode):
    if len(f["ring"]) > 2:
        return [Polygon(f["ring"])]
    return [disc(f["ring"][0], f["radius"], mode)] if f.get("radius") else []


def sides_of(yard, ground):
    """Unit ways into the yard from an opening: the side with more ground before it."""
    def find(a, b):
        d = math.dist(a, b)
        w = ((b[0] - a[0]) / d, (b[1] - a[1]) / d)
        m = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        houses = [g for f in yard["fixtures"] if f["kind"] in ("building", "shed", "house")
                  for g in footprint(f, "tangent")]
        def open_(s):
            points = [Point(m[0] + s[0] * o, m[1] + s[1] * o) for o in (.1, .2, .4, .8)]
            return sum(ground.intersects(p) and not any(h.intersects(p) for h in houses) for p in points)
        left, right = (-w[1], w[0]), (w[1], -w[0])
        l, r = open_(left), open_(right)
        return [left] if l > r else [right] if r > l else [left, right]
    return find


def opening(o, sides, mode):
    a, b = o["jambs"]
    wide = math.dist(a, b)
    pulled, hinge = o["pulled"], o.get("hinge")
    deep, beyond = (1.525, 0.455) if pulled else (1.22, 0.305)
    before, after = {0: (0, beyond), 1: (beyond, 0)}.get(hinge, (beyond, beyond))
    shapes = []
    for s in sides(a, b):
        on_left = (b[0] - a[0]) * s[1] - (b[1] - a[1]) * s[0] > 0
        ahead = lambda d: (0, d) if on_left else (-d, 0)
        shapes += [strip(a, b, (-before, wide + after), ahead(deep), mode),
                   strip(a, b, (-.15, wide + .15), ahead(2.0), mode)]
        if pulled:
            for h in [0, 1] if hinge is None else [hinge]:
                at, latch = (a, b) if h == 0 else (b, a)
                closed = ((latch[0] - at[0]) / wide, (latch[1] - at[1]) / wide)
                shapes.append(quarter(at, wide, closed, s, mode))
    return shapes


def free(yard, mode):
    ground = Polygon(yard["outer"], [yard["hole"]] if yard["hole"] else [])
    us = yard["standard"] == "us"
    taken = []
    for f in yard["fixtures"]:
        taken += footprint(f, mode) + zone(f, us, mode)
    for ring, kinds in ((yard["outer"], yard["edges"]), (yard["hole"] or [], [])):
        for i in range(len(ring)):
            kind = kinds[i] if kinds else "wall"
            if kind != "open":
                ends = [ring[i], ring[(i + 1) % len(ring)]]
                taken.append(grown(ends, 1.5 if kind == "drop" else 0.5, mode))
    taken += [Polygon(s) for s in yard["blocked"]]
    sides = sides_of(yard, ground)
    for o in yard["openings"]:
        taken += opening(o, sides, mode)
    left = ground.difference(unary_union(taken))
    parts = getattr(left, "geoms", [left])
    return sum(p.area for p in parts if p.area >= 1e-4)


# --- invented yards

def mm(p):
    return (round(p[0] * 1000) / 1000, round(p[1] * 1000) / 1000)


def turned(points, t, at):
    c, s = math.cos(t), math.sin(t)
    return [mm((at[0] + x * c - y * s, at[1] + x * s + y * c)) for x, y in points]


def yard(rng, i):
    at, t = (rng.uniform(-50, 50), rng.uniform(-50, 50)), rng.uniform(0, 2 * math.pi)
    w, h = rng.uniform(12, 45), rng.uniform(10, 40)
    hole = None
    if i % 3 == 0:
        hull = MultiPoint([(rng.uniform(0, w), rng.uniform(0, h)) for _ in range(24)]).convex_hull
        outer = turned(list(shapely.geometry.polygon.orient(hull).exterior.coords)[:-1], t, at)
    elif i % 3 == 1:
        u, v = w * rng.uniform(.35, .7), h * rng.uniform(.35, .7)
        outer = turned([(0, 0), (w, 0), (w, v), (u, v), (u, h), (0, h)], t, at)
    else:
        a, b = w * rng.uniform(.25, .4), h * rng.uniform(.25, .4)
        outer = turned([(0, 0), (w, 0), (w, h), (0, h)], t, at)
        hole = turned([(a, b), (w - a, b), (w - a, h - b), (a, h - b)], t, at)
    def place():
        return turned([(rng.uniform(-.02, 1.02) * w, rng.uniform(-.02, 1.02) * h)], t, at)[0]
    fixtures = [fixture(rng, place()) for _ in range(rng.randrange(0, 41) if i % 5 else rng.randrange(0, 6))]
    edges = [rng.choice(["wall", "wall", "fence", "hedge", "kerb", "drop", "open"]) for _ in outer]
    openings = []
    for _ in range(rng.randrange(0, 4)):
        k = rng.randrange(len(outer))
        a, b = outer[k], outer[(k + 1) % len(outer)]
        d, wide = math.dist(a, b), rng.uniform(.8, 1.8)
        if d < wide + 1:
            continue
        s = rng.uniform(.5, d - wide - .5)
        jambs = [mm((a[0] + (b[0] - a[0]) * q / d, a[1] + (b[1] - a[1]) * q / d)) for q in (s, s + wide)]
        o = {"jambs": jambs if rng.random() < .5 else jambs[::-1], "pulled": rng.random() < .5}
        if rng.random() < .7:
            o["hinge"] = rng.randrange(2)
        openings.append(o)
    blocked = [turned([(0, 0), (3, 0), (3, 2), (0, 2)], rng.uniform(0, 6), place())
               for _ in range(rng.randrange(0, 3))]
    return {"standard": rng.choice(["us", "en"]), "outer": outer, "hole": hole, "edges": edges,
            "fixtures": fixtures, "openings": openings, "blocked": blocked}


def fixture(rng, at):
    kind = rng.choice(EQUIPMENT * 2 + STANDING + DRAINS + ["other"])
    f, t = {"kind": kind}, rng.uniform(0, 2 * math.pi)
    w, h = rng.uniform(.4, 3), rng.uniform(.3, 2)
    box = turned([(0, 0), (w, 0), (w, h), (0, h)], t, at)
    ell = turned([(0, 0), (w, 0), (w, h / 2), (w / 2, h / 2), (w / 2, h), (0, h)], t, at)
    if kind in ("tree", "post", "lamp", "tyre-swing", "roundabout", *DRAINS):
        f["ring"], f["radius"] = [at], round(rng.uniform(.05, .9), 3)
    elif kind in ("swing", "seesaw"):
        f["ring"] = turned([(0, 0), (rng.uniform(1, 4), 0)], t, at) if rng.random() < .7 else box
    else:
        f["ring"] = box if rng.random() < .7 else ell
    if rng.random() < .7:
        f["height"] = round(rng.uniform(.2, 2.9), 3)
    if kind == "slide" and rng.random() < .8:
        f["ring"], f["exit"] = box, [box[1], box[2]] if rng.random() < .5 else [box[2], box[1]]
    if kind == "swing":
        f["pivot"] = round(rng.uniform(1.2, 2.4), 3)
        if rng.random() < .4:
            f["seat_top"] = round(rng.uniform(.3, .6), 3)
    if kind == "tyre-swing":
        f["members"] = round(rng.uniform(.8, 2), 3)
    if kind == "rocker":
        f["standing"] = rng.random() < .4
    return f


def main():
    rng = random.Random(20)
    lines = []
    for i in range(500):
        y = yard(rng, i)
        for key, mode in (("free", "tangent"), ("most", "fine"), ("least", "wide")):
            y[key] = round(free(y, mode), 9)
        lines.append(json.dumps(y, separators=(",", ":")))
    Path(__file__).with_name("yards.json").write_text("[\n" + ",\n".join(lines) + "\n]\n")


if __name__ == "__main__":
    main()
