"""Areas by colour of the drawings in tests/figures, by svgelements and shapely.

Rerun: python3 areas.py > areas.json   (svgelements 1.9.6, shapely 2; numpy)
svgelements resolves links, styles and transforms and gives points on curves; shapely
buffers strokes and lays shapes over one another. Strokes under a skewed frame are buffered
before the frame is applied, as SVG has it. Dashes are cut here by arc length.
"""
import json
import pathlib
import re

import numpy as np
from shapely.affinity import affine_transform
from shapely.geometry import LineString, Polygon
from shapely.ops import substring, unary_union
from shapely.validation import make_valid
from svgelements import SVG, Close, Line, Move, Path, Shape

FIGURES = pathlib.Path(__file__).parent.parent / "tests" / "figures"
PAINTS = {"#f4f0e4": "chalk", "#f6d964": "straw", "#b4c3f0": "harebell", "#49c0ac": "sedge",
          "#ee967a": "hip", "#7a2233": "madder", "#232b5e": "sloe", "#595959": "ground"}
# metres in one user unit of each drawing, from its width and view box
UNIT = {"shapes": 0.0005, "caterpillar": 0.001, "lily-pond": 0.001, "wind": 0.001}
PIECES = 400


def parts(path):
    """Points of each part of a path, and whether it is closed."""
    out, line, closed = [], [], False
    for seg in path:
        if isinstance(seg, Move):
            if len(line) > 1:
                out.append((line, closed))
            line, closed = [(seg.end.x, seg.end.y)], False
        elif isinstance(seg, Close):
            closed = True
            out.append((line, True))
            line = [(seg.end.x, seg.end.y)] if seg.end else []
        elif isinstance(seg, Line):
            line.append((seg.end.x, seg.end.y))
        else:
            for t in np.linspace(0, 1, PIECES + 1)[1:]:
                at = seg.point(t)
                line.append((at.x, at.y))
    if len(line) > 1:
        out.append((line, False))
    return [(line, closed) for line, closed in out if len(line) > 1]


def filled(path, rule):
    shape = Polygon()
    if rule == "evenodd":
        for line, _ in parts(path):
            if len(line) > 2:
                shape = shape.symmetric_difference(make_valid(Polygon(line)))
        return shape
    # non-zero, of parts that do not cross themselves: add windings
    rings = [Polygon(line) for line, _ in parts(path) if len(line) > 2]
    faces = [(r, 1 if r.exterior.is_ccw else -1) for r in rings]
    pieces = []
    for ring, turn in faces:
        new = []
        left = ring
        for piece, wind in pieces:
            both = piece.intersection(ring)
            if both.area > 0:
                new.append((both, wind + turn))
            new.append((piece.difference(ring), wind))
            left = left.difference(piece)
        new.append((left, turn))
        pieces = new
    return unary_union([piece for piece, wind in pieces if wind != 0])


def stroked(path, width, cap, join, miter, dashes):
    caps = {"butt": "flat", "round": "round", "square": "square"}
    out = []
    for line, closed in parts(path):
        if closed and line[0] != line[-1]:
            line = line + [line[0]]
        line = [p for i, p in enumerate(line) if i == 0 or np.hypot(p[0] - line[i - 1][0], p[1] - line[i - 1][1]) > 1e-9]
        whole = LineString(line)
        runs = [whole]
        if dashes:
            runs, at, on = [], 0.0, 0
            while at < whole.length:
                if on % 2 == 0:
                    runs.append(substring(whole, at, min(at + dashes[on % len(dashes)], whole.length)))
                at += dashes[on % len(dashes)]
                on += 1
        for run in runs:
            if run.length == 0:
                continue
            if closed and not dashes:
                ring = Polygon(run.coords)
                edge = ring.exterior
                out.append(edge.buffer(width / 2, quad_segs=64, join_style="mitre" if join == "miter" else join, mitre_limit=50))
            elif join == "miter":
                # SVG bevels a corner past its limit, where shapely cuts it: corner by corner
                for a, b in zip(run.coords, run.coords[1:]):
                    out.append(LineString([a, b]).buffer(width / 2, cap_style="flat"))
                for a, b, c in zip(run.coords, run.coords[1:], run.coords[2:]):
                    u = np.subtract(b, a) / np.hypot(*np.subtract(b, a))
                    v = np.subtract(c, b) / np.hypot(*np.subtract(c, b))
                    half = (np.pi - abs(np.arctan2(u[0] * v[1] - u[1] * v[0], u @ v))) / 2
                    side = -np.sign(u[0] * v[1] - u[1] * v[0]) or 1
                    n = lambda w: np.array([-w[1], w[0]]) * side * width / 2
                    p, q = np.add(b, n(u)), np.add(b, n(v))
                    corner = [b, p, q]
                    if 1 / np.sin(half) <= miter:
                        m = (n(u) + n(v)) / np.hypot(*(n(u) + n(v)))
                        corner = [b, p, np.add(b, m * width / 2 / np.sin(half)), q]
                    out.append(Polygon(corner).buffer(0))
                if cap != "butt":
                    out.append(run.buffer(width / 2, quad_segs=64, cap_style=caps[cap], join_style="bevel"))
            else:
                out.append(run.buffer(width / 2, quad_segs=64, cap_style=caps[cap], join_style=join))
    return unary_union(out)


def areas(name):
    text = (FIGURES / f"{name}.svg").read_text()
    text = re.sub(r'(<svg[^>]*?) width="[^"]*"\s+height="[^"]*"', r"\1", text, flags=re.S)
    layers = []
    for shape in SVG.parse(__import__("io").StringIO(text), reify=False).elements():
        if not isinstance(shape, Shape):
            continue
        values = shape.values
        names = f'{values.get("id") or ""} {values.get("class") or ""}'
        if re.search(r"\b(cell|lane|wait)-", names) and not re.search(r"\bpaint\b", names):
            continue
        raw = Path(shape)
        frame = raw.transform
        raw = Path(raw)
        raw.transform.reset()
        m = [frame.a, frame.c, frame.b, frame.d, frame.e, frame.f]
        if shape.fill.value is not None:
            rule = values.get("fill-rule", "nonzero")
            layers.append((PAINTS[shape.fill.hex[:7].lower()], affine_transform(filled(raw, rule), m)))
        if shape.stroke.value is not None and float(values.get("stroke-width", 1)) > 0:
            dashes = [float(d) for d in re.split(r"[ ,]+", values.get("stroke-dasharray", "") or "") if d and d != "none"]
            ribbon = stroked(raw, float(values.get("stroke-width", 1)), values.get("stroke-linecap", "butt").replace(" !important", ""),
                             values.get("stroke-linejoin", "miter"), float(values.get("stroke-miterlimit", 4)), dashes)
            layers.append((PAINTS[shape.stroke.hex[:7].lower()], affine_transform(ribbon, m)))
    over, by = Polygon(), {}
    for paint, shape in reversed(layers):
        by.setdefault(paint, []).append(shape.difference(over))
        over = over.union(shape)
    by.pop("ground", None)
    return {paint: round(unary_union(parts).area * UNIT[name] ** 2, 6) for paint, parts in sorted(by.items())}


print(json.dumps({name: areas(name) for name in UNIT}, indent=1))
