"""ezdxf, svgelements and shapely read the cut files back: a folder with `sheet-01.dxf`, `.svg`,
`-r12-mm.dxf`, one of each for every stencil, and `stencils.json`, the geometry that they show.

The folder is `CHALKYARD_CUT`, or the one that the room's own example writes."""

import json
import math
import os
import pathlib
import subprocess

import ezdxf
import pytest
from ezdxf.lldxf.encoding import decode_dxf_unicode
from shapely import Point, Polygon, box, line_merge, unary_union
from shapely.affinity import rotate, translate
from svgelements import SVG, Path

ROOT = pathlib.Path(__file__).resolve().parent.parent
# millimetres: what is read back may lie so far off
BACK = 0.01
# millimetres: how flat the house draws arcs, ledger `look.flat`; files have the arc itself
FLAT = 0.5
CUT = "CUT_MM"
SCALE = "SCALE_100_MM_NEVER_CUT"
SHEET = "SHEET_MM_NEVER_CUT"
MARK = "MARK_MM_NEVER_CUT"


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    if given := os.environ.get("CHALKYARD_CUT"):
        return pathlib.Path(given)
    folder = tmp_path_factory.mktemp("cut")
    subprocess.run(
        ["cargo", "run", "-q", "--release", "-p", "cutfile", "--example", "cut", "--", folder],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    return folder


@pytest.fixture(scope="module")
def record(folder):
    return json.loads((folder / "stencils.json").read_text())


@pytest.fixture(scope="module")
def drawings(folder):
    """Every DXF, read without repair."""
    found = {path.name: ezdxf.readfile(path) for path in sorted(folder.glob("*.dxf"))}
    assert found
    return found


def cut_lines(drawing):
    """The closed cuts of a drawing: corners with bulges."""
    found = []
    for entity in drawing.modelspace():
        if entity.dxf.layer != CUT:
            continue
        if entity.dxftype() == "LWPOLYLINE":
            assert entity.closed
            found.append([(x, y, bulge) for x, y, bulge in entity.get_points("xyb")])
        else:
            assert entity.dxftype() == "POLYLINE" and entity.is_closed
            points = [(v.dxf.location.x, v.dxf.location.y, v.dxf.bulge) for v in entity.vertices]
            found.append(points)
    return found


def expected(record, number):
    """The cuts of a sheet, millimetres, in the order of the file."""
    # the strip at the foot: the square and 20 mm on either side
    foot = 140.0
    for part in record["sheets"][number]["parts"]:
        panel = record["stencils"][part["stencil"]]["panels"][part["panel"]]
        turn = math.radians(part["turn"])
        for ring in panel["cuts"]:
            yield [
                (
                    1000 * (part["x"] + x * math.cos(turn) - y * math.sin(turn)),
                    1000 * (part["y"] + x * math.sin(turn) + y * math.cos(turn)) + foot,
                )
                for x, y in ring[:-1]
            ]


def test_the_audit_finds_nothing(drawings):
    for name, drawing in drawings.items():
        audit = drawing.audit()
        assert not audit.errors and not audit.fixes, name


def test_units_are_millimetres_wherever_they_can_be_said(drawings):
    for name, drawing in drawings.items():
        old = name.endswith("-r12-mm.dxf")
        assert drawing.dxfversion == ("AC1009" if old else "AC1015"), name
        if not old:
            assert drawing.units == ezdxf.units.MM, name
            assert drawing.header["$MEASUREMENT"] == 1, name
        layers = {entity.dxf.layer for entity in drawing.modelspace()}
        assert layers and all("MM" in layer for layer in layers), name
        texts = drawing.modelspace().query("TEXT")
        words = [decode_dxf_unicode(text.dxf.text) for text in texts]
        assert any("mm" in word for word in words), name
        square = [e for e in drawing.modelspace() if e.dxf.layer == SCALE and e.dxftype() != "TEXT"]
        assert len(square) == 1
        points = square[0].get_points("xy") if not old else square[0].points()
        shape = Polygon([(p[0], p[1]) for p in points])
        assert shape.bounds[2] - shape.bounds[0] == pytest.approx(100, abs=BACK)
        assert shape.area == pytest.approx(100 * 100, abs=1)


def test_only_closed_lines_are_cut(drawings):
    for name, drawing in drawings.items():
        assert cut_lines(drawing), name
        for entity in drawing.modelspace():
            assert entity.dxf.layer in {CUT, SCALE, SHEET, MARK}, name
            if entity.dxftype() == "TEXT":
                assert entity.dxf.layer in {SCALE, MARK}, name


def test_letters_of_both_languages_come_back(drawings, folder):
    if os.environ.get("CHALKYARD_CUT"):
        pytest.skip("the example's own words")
    for name, drawing in drawings.items():
        texts = drawing.modelspace().query("TEXT")
        words = {decode_dxf_unicode(text.dxf.text) for text in texts}
        assert "Este lado arriba, mañana también" in words, name


def test_dxf_reads_back_within_a_hundredth_of_a_millimetre(drawings, record):
    for number in range(len(record["sheets"])):
        wanted = list(expected(record, number))
        for ending in (".dxf", "-r12-mm.dxf"):
            ours = cut_lines(drawings[f"sheet-{number + 1:02}{ending}"])
            assert len(ours) == len(wanted)
            for ring, corners in zip(ours, wanted):
                assert len(ring) == len(corners)
                for (x, y, _), (a, b) in zip(ring, corners):
                    assert math.hypot(x - a, y - b) <= BACK


def arc(a, b, bulge, steps=16):
    """Points of a bulged side by ezdxf's own reckoning."""
    centre, start, end, radius = ezdxf.math.bulge_to_arc(a, b, bulge)
    if bulge < 0:
        start, end = end, start
    sweep = 4 * math.atan(bulge)
    for step in range(1, steps):
        angle = start + sweep * step / steps
        yield (centre.x + radius * math.cos(angle), centre.y + radius * math.sin(angle))


def flattened(ring):
    points = []
    for (x, y, bulge), (u, v, _) in zip(ring, ring[1:] + ring[:1]):
        points.append((x, y))
        if bulge:
            points.extend(arc((x, y), (u, v), bulge))
    return Polygon(points)


def test_arcs_stay_with_the_polygons_that_they_were_found_in(drawings, record):
    """An arc leaves its polygon by no more than the house draws arcs flat."""
    for number in range(len(record["sheets"])):
        ours = cut_lines(drawings[f"sheet-{number + 1:02}.dxf"])
        for ring, corners in zip(ours, expected(record, number)):
            shape, plain = flattened(ring), Polygon(corners)
            assert shape.is_valid
            assert shape.exterior.hausdorff_distance(plain.exterior) <= FLAT + BACK


def test_discs_are_cut_as_circles(drawings, record):
    """A pebble of 22 cm and a teller of 9 cm: within 0.05 mm of the circle all round. The tool
    runs half a kerf inside."""
    found, kerf = 0, 1000 * record["kerf"]
    for stencil in record["stencils"]:
        if stencil["motif"] != "disc":
            continue
        found += 1
        for ending in (".dxf", "-r12-mm.dxf"):
            ring = cut_lines(drawings[stencil["file"] + ending])[0]
            shape = flattened(ring)
            radius = math.sqrt(shape.area / math.pi)
            for x, y in shape.exterior.coords:
                off = Point(x, y).distance(shape.centroid) - radius
                assert abs(off) <= 0.05, (stencil["id"], off)
            across = 2 * radius + kerf
            assert min(abs(across - 220), abs(across - 90)) < 0.1
    assert found >= 2


def svg_paths(path):
    """The cut paths of an SVG in millimetres, y up."""
    drawing = SVG.parse(path, ppi=25.4)
    high = float(drawing.values["attributes"]["height"].removesuffix("mm"))
    groups = [group for group in drawing.select(lambda e: getattr(e, "id", None) == CUT)]
    assert groups
    return [e for e in groups[0] if isinstance(e, Path)], high


def test_svg_reads_back_within_a_hundredth_of_a_millimetre(folder, record):
    for number in range(len(record["sheets"])):
        # at 25.4 dots an inch a unit is a millimetre
        paths, high = svg_paths(folder / f"sheet-{number + 1:02}.svg")
        wanted = list(expected(record, number))
        assert len(paths) == len(wanted)
        for path, corners in zip(paths, wanted):
            ends = [(segment.end.x, high - segment.end.y) for segment in path if segment.end]
            # the first is the move, and the last comes home
            assert len(ends) - len(corners) in (1, 2) or len(ends) == len(corners)
            for (x, y), (a, b) in zip(ends, corners):
                assert math.hypot(x - a, y - b) <= BACK


def test_svg_says_millimetres(folder):
    for path in folder.glob("*.svg"):
        attributes = SVG.parse(path).values["attributes"]
        width, height = attributes["width"], attributes["height"]
        assert width.endswith("mm") and height.endswith("mm")
        seen = [float(v) for v in attributes["viewBox"].split()]
        assert seen == [0, 0, float(width[:-2]), float(height[:-2])]


def test_svg_and_dxf_cut_the_same_arcs(folder, drawings, record):
    for number in range(min(3, len(record["sheets"]))):
        paths, high = svg_paths(folder / f"sheet-{number + 1:02}.svg")
        for path, ring in zip(paths, cut_lines(drawings[f"sheet-{number + 1:02}.dxf"])):
            edge = flattened(ring).exterior
            for share in (0.05, 0.31, 0.5, 0.77, 0.93):
                at = path.point(share)
                # sides of ezdxf's arcs are flat to about 0.005 mm here
                assert edge.distance(Point(at.x, high - at.y)) <= 0.02


def sheet_after_cutting(plate, openings):
    return Polygon(plate[0], plate[1:]).difference(
        unary_union([Polygon(one[0], one[1:]).buffer(0.0005) for one in openings])
    )


def test_no_plate_falls_apart(record):
    """What is left of each plate and panel is one piece, for shapely too."""
    for stencil in record["stencils"]:
        for one in [stencil, *stencil["panels"]]:
            left = sheet_after_cutting(one["plate"], one["openings"])
            assert left.geom_type == "Polygon", stencil["id"]
            assert left.area > 0


def test_eyes_are_held_by_the_rules_of_ties(record):
    """building.md, section 5 (common practice): along an island's edge a tie every 300 mm at
    the most, two at least, three where its longest side passes 300 mm. A joint of 22 mm and
    less is a tie; shapely finds the islands and the ties anew."""
    eyes = 0
    for stencil in record["stencils"]:
        openings = unary_union([Polygon(one[0], one[1:]) for one in stencil["openings"]])
        closed = openings.buffer(0.011)
        for part in getattr(closed, "geoms", [closed]):
            for ring in part.interiors:
                edge = Polygon(ring).buffer(0.011).exterior
                # the edge runs along the paint to 0.1 mm; what is farther off lies in a tie
                bare = edge.difference(openings.buffer(0.0006))
                runs = line_merge(bare) if bare.geom_type != "LineString" else bare
                runs = [run for run in getattr(runs, "geoms", [runs]) if run.length > 0.004]
                places = sorted(edge.project(run.interpolate(0.5, normalized=True)) for run in runs)
                x, y, u, v = edge.bounds
                # ground behind one neck is a tongue: up to 8 times as long as that is broad
                if len(places) == 1 and max(u - x, v - y) <= 8 * runs[0].length:
                    continue
                assert len(places) >= (3 if max(u - x, v - y) > 0.3 else 2), stencil["id"]
                gaps = [b - a for a, b in zip(places, places[1:])]
                gaps.append(places[0] + edge.length - places[-1])
                # a run may begin in the middle of a tie, half of its width off
                assert max(gaps) <= 0.3 + 0.011, (stencil["id"], gaps)
                eyes += 1
    assert eyes


def test_panels_together_open_what_the_stencil_opens(record):
    for stencil in record["stencils"]:
        whole = unary_union([Polygon(one[0], one[1:]) for one in stencil["openings"]])
        parts = [one for panel in stencil["panels"] for one in panel["openings"]]
        through = unary_union([Polygon(one[0], one[1:]) for one in parts])
        assert whole.symmetric_difference(through).area < 1e-7, stencil["id"]


def test_names_sort_and_are_plain(folder, record):
    names = [stencil["file"] for stencil in record["stencils"]]
    assert names == sorted(names)
    for path in folder.iterdir():
        assert path.name.isascii() and " " not in path.name
    for name in names:
        for ending in (".dxf", ".svg", "-r12-mm.dxf"):
            assert (folder / (name + ending)).exists(), name


def test_parts_lie_on_their_sheet(record):
    """Turned and moved as the files draw them, no part lies on another or off the sheet."""
    for sheet in record["sheets"]:
        board = box(0, 0, sheet["width"], sheet["height"])
        placed = []
        for part in sheet["parts"]:
            panel = record["stencils"][part["stencil"]]["panels"][part["panel"]]
            shape = rotate(Polygon(panel["plate"][0]), part["turn"], origin=(0, 0))
            placed.append(translate(shape, part["x"], part["y"]))
        assert all(board.buffer(1e-6).contains(one) for one in placed)
        assert unary_union(placed).area == pytest.approx(sum(one.area for one in placed), abs=1e-9)
