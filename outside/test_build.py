"""The build pack, recomputed from plan.json and read back from the files: plates hold, parts lie
apart, cutters can read the files, cans suffice, nobody is in two places, paint dries."""

import csv
import datetime
import itertools
import math
import re
import shutil

import ezdxf
import icalendar
import pymupdf
import pytest
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

from conftest import run

# metres: what is rounded to 1e-6 is looked at no closer
SAME = 5e-6
MM = 1000.0


def polygon(rings):
    return Polygon(rings[0], rings[1:])


def figures(plan):
    """The ledger figures that were used, each as a list."""
    listed = lambda value: value if isinstance(value, list) else [value]
    return {one["key"]: listed(one["value"]) for one in plan["sources"]}


@pytest.fixture(scope="session")
def build(plan):
    return plan["build"]


def test_no_piece_falls_out_of_a_plate(build):
    """Islands are held: after cutting, each panel is one piece (shapely)."""
    for stencil in build["stencils"]:
        openings = unary_union([polygon(one["polygon"]) for one in stencil["openings"]])
        for panel in stencil["panels"]:
            left = polygon(panel["plate"]).difference(openings)
            pieces = [left] if left.geom_type == "Polygon" else list(left.geoms)
            # slivers of the rounding are no pieces
            assert sum(piece.area > 1e-8 for piece in pieces) == 1, panel["id"]


def test_parts_lie_apart_on_their_sheets(build):
    """No part overlaps another at 1e-9 of its area, and all lie on the sheet."""
    plates = {p["id"]: polygon(p["plate"]) for s in build["stencils"] for p in s["panels"]}
    laid = set()
    for sheet in build["sheets"]:
        edge = Polygon([(0, 0), (sheet["width"], 0), (sheet["width"], sheet["height"]), (0, sheet["height"])])
        parts = []
        for part in sheet["parts"]:
            shape = affinity.rotate(plates[part["panel"]], part["turn"], origin=(0, 0))
            parts.append(affinity.translate(shape, *part["at"]))
            laid.add(part["panel"])
            assert edge.buffer(SAME).contains(parts[-1]), part
        for one, other in itertools.combinations(parts, 2):
            assert one.intersection(other).area <= 1e-9 * min(one.area, other.area)
        share = sum(part.area for part in parts) / edge.area
        assert share == pytest.approx(sheet["density"], abs=1e-5)
    assert laid == set(plates)


def test_what_is_painted_comes_through_a_plate_or_is_taped(plan, build):
    """Each painted shape once: by a stencil's use, or in the list of what is taped."""
    for marking in plan["markings"]:
        through = [
            number
            for stencil in build["stencils"]
            for use in stencil["uses"]
            if use["marking"] == marking["name"]
            for number in use["paint"]
        ]
        taped = [one["paint"] for one in build["taped"] if one["marking"] == marking["name"]]
        assert sorted(through + taped) == list(range(len(marking["paint"])))


def test_a_plate_in_its_place_covers_the_paint(plan, build):
    """Openings laid as the record says lie within the paint; only ties are missing."""
    markings = {one["name"]: one for one in plan["markings"]}
    for stencil in build["stencils"]:
        openings = unary_union([polygon(one["polygon"]) for one in stencil["openings"]])
        for use in stencil["uses"]:
            assert not use["over"]
            shape = affinity.rotate(openings, use["turn"], origin=(0, 0))
            shape = affinity.translate(shape, *use["at"])
            paint = unary_union([polygon(markings[use["marking"]]["paint"][n]["polygon"]) for n in use["paint"]])
            # ledger: stencil.same, a millimetre
            assert shape.difference(paint.buffer(0.0011)).area < 1e-8
            assert paint.difference(shape.buffer(0.0011)).area <= 0.25 * paint.area


def test_cutters_can_read_the_files(demo, build):
    """ezdxf finds no error, units are millimetres, plates have their size to 0.01 mm."""
    files = sorted((demo / "out" / "cut").glob("*.dxf"))
    sheets = [file for file in files if file.name.startswith("sheet-")]
    assert len(sheets) == len(build["sheets"])
    assert len(files) - len(sheets) == len(build["stencils"])
    plates = {p["id"]: polygon(p["plate"]) for s in build["stencils"] for p in s["panels"]}
    for file in files:
        drawing = ezdxf.readfile(file)
        audit = drawing.audit()
        assert not audit.errors and not audit.fixes, file.name
        assert drawing.units == ezdxf.units.MM
    for file, sheet in zip(sheets, build["sheets"]):
        cuts = ezdxf.readfile(file).modelspace().query('*[layer=="CUT_MM"]')
        spots = [spot for cut in cuts if cut.dxftype() == "LWPOLYLINE" for spot in cut.get_points("xy")]
        parts = []
        for part in sheet["parts"]:
            shape = affinity.rotate(plates[part["panel"]], part["turn"], origin=(0, 0))
            parts.append(affinity.translate(shape, *part["at"]))
        low_x, low_y, high_x, high_y = unary_union(parts).bounds
        xs, ys = zip(*spots)
        assert max(xs) - min(xs) == pytest.approx((high_x - low_x) * MM, abs=0.01)
        assert max(ys) - min(ys) == pytest.approx((high_y - low_y) * MM, abs=0.01)


def test_cans_hold_what_is_painted(plan, build):
    """Areas by colour from the polygons; without prices the fullest cans, by trying them all."""
    area = {}
    for marking in plan["markings"]:
        for paint in marking["paint"]:
            area[paint["colour"]] = area.get(paint["colour"], 0.0) + polygon(paint["polygon"]).area
    sizes = [0.75, 1.0, 2.5, 5.0, 10.0]
    for paint in build["paint"]["colours"]:
        assert paint["area"] == pytest.approx(area[paint["colour"]], abs=1e-4)
        bought = sum(can["litres"] * can["count"] for can in paint["cans"])
        assert bought >= paint["need"] - 1e-9
        assert paint["over"] == pytest.approx(bought - paint["need"], abs=1e-5)
        most = [math.ceil(paint["need"] / size) for size in sizes]
        least = min(
            sum(count * size for count, size in zip(counts, sizes))
            for counts in itertools.product(*(range(many + 1) for many in most))
            if sum(count * size for count, size in zip(counts, sizes)) >= paint["need"] - 1e-9
        )
        assert bought == pytest.approx(least, abs=1e-9)
    assert set(area) == {paint["colour"] for paint in build["paint"]["colours"]}


def test_nobody_is_in_two_places(build):
    """People, tasks and days of the crew's plan, and its bound."""
    crew = build["crew"]
    busy = {}
    for task in crew["tasks"]:
        assert task["start_s"] < task["end_s"]
        assert any(low <= task["start_s"] and task["end_s"] <= high for low, high in crew["days"]), task
        for person in task["people"]:
            busy.setdefault(person, []).append((task["start_s"], task["end_s"]))
    for spans in busy.values():
        spans.sort()
        assert all(one[1] <= other[0] for one, other in zip(spans, spans[1:]))
    assert max(task["end_s"] for task in crew["tasks"]) == crew["end_s"] >= crew["bound_s"]


def test_coats_wait_until_the_last_is_dry(plan, build):
    """dry.recoat at 23 degrees: nobody told the crew of other air, so two hours at the latest."""
    hours = figures(plan)["dry.recoat"][1]
    coats = {}
    for task in build["crew"]["tasks"]:
        if task["kind"] == "coat":
            key = (task["marking"], task["colour"], task["stencil"])
            coats.setdefault(key, []).append((task["coat"], task["start_s"], task["end_s"]))
    assert coats
    for (_, _, stencil), rows in coats.items():
        if len({coat for coat, _, _ in rows}) != len(rows):
            continue  # two sets of one token: their coats cannot be told apart here
        rows.sort()
        for (_, _, end), (_, start, _) in zip(rows, rows[1:]):
            assert start - end >= hours * 3600 - 1


def test_forecast_windows_keep_every_rule(demo, plan, build):
    """The forecast read again: air, dew point, wind and rain in each hour of a fine window."""
    figure = figures(plan)
    hours = {}
    with open(demo / "weather" / "forecast.csv") as file:
        for row in csv.DictReader(line for line in file if not line.startswith("#")):
            when = datetime.datetime.fromisoformat(row["time"])
            hours[when] = {key: float(value) for key, value in row.items() if key != "time"}
    (days,) = build["days"]
    fine = [one for one in days["windows"] if one["verdict"] == "fine"]
    assert fine
    hour = datetime.timedelta(hours=1)
    for window in fine:
        at = datetime.datetime.fromisoformat(window["start"]) + hour
        end = datetime.datetime.fromisoformat(window["end"])
        while at <= end:
            now = hours[at]
            assert figure["paint.temp_min"][0] <= now["temperature_c"] <= figure["paint.temp_max"][0]
            assert now["temperature_c"] - now["dew_point_c"] >= figure["paint.dew_margin"][0]
            assert now["wind_m_s"] <= figure["paint.wind_roller"][0]
            before = int(figure["paint.dry_before"][0])
            after = int(figure["paint.rain_free_after"][0])
            for step in range(-before, after + 1):
                assert hours[at + step * hour]["rain_mm"] == 0.0
            at += hour


def test_calendars_are_calendars(demo, build):
    """icalendar (RFC 5545) reads both, with no more than 75 octets a line."""
    for name in ("painting-days.ics", "sessions.ics"):
        raw = (demo / "out" / name).read_bytes()
        assert all(len(line) <= 75 for line in raw.split(b"\r\n"))
        calendar = icalendar.Calendar.from_ical(raw)
        events = list(calendar.walk("VEVENT"))
        assert events and not any(event.errors for event in events)
        assert len({str(event["UID"]) for event in events}) == len(events)
        if name == "painting-days.ics":
            (days,) = build["days"]
            assert len(events) == sum(one["verdict"] == "fine" for one in days["windows"])


@pytest.fixture(scope="session")
def tiled(demo, tmp_path_factory):
    """The demo with its stencils at 1:1, in a folder of its own."""
    folder = tmp_path_factory.mktemp("tiled") / "demo"
    shutil.copytree(demo, folder)
    run("plan", folder, "--tiled", "--quiet")
    return folder / "out" / "cut"


def test_tiled_pages_make_the_plate_again(tiled, build):
    """Every line to cut is printed at its place within 0.1 mm, and nothing else is: each page's
    lines are read by PyMuPDF and laid where building.md's rule of section 5 puts the page."""
    reach, over, near = (190.0, 277.0), 10.0, 0.1
    point = 25.4 / 72
    for stencil in build["stencils"][::7]:
        (file,) = tiled.glob(f"stencil-{stencil['id']}-*1to1.pdf")
        (panel,) = stencil["panels"]
        plate = polygon(panel["plate"])
        low_x, low_y, high_x, high_y = plate.bounds
        size = ((high_x - low_x) * MM, (high_y - low_y) * MM)
        counts = lambda reach: [max(1, math.ceil((s - over) / (p - over) - 1e-9)) for s, p in zip(size, reach)]
        upright, lying = counts(reach), counts(reach[::-1])
        turned = lying[0] * lying[1] < upright[0] * upright[1]
        (columns, rows), (w, h) = (lying, reach[::-1]) if turned else (upright, reach)
        openings = [polygon(one["polygon"]) for one in stencil["openings"]]
        holes = [Point(at).buffer(0.003, quad_segs=32) for at in panel["holes"]]
        wanted = unary_union([shape.boundary for shape in [plate, *openings, *holes]])
        wanted = affinity.scale(affinity.translate(wanted, -low_x, -low_y), MM, MM, origin=(0, 0))
        document = pymupdf.open(file)
        assert len(document) == 1 + columns * rows, stencil["id"]
        printed = []
        for number, page in enumerate(itertools.islice(document, 1, None)):
            row, column = divmod(number, columns)
            left = (page.rect.width * point - w) / 2
            top = (page.rect.height * point - h) / 2
            x0, y1 = column * (w - over), size[1] - row * (h - over)
            for drawing in page.get_drawings():
                # the pen of lines to cut, 0.35 mm; bars, marks and folds are thinner
                if drawing.get("width") is None or abs(drawing["width"] * point - 0.35) > 0.02:
                    continue
                place = lambda at: (x0 + at.x * point - left, y1 - (at.y * point - top))
                for item in drawing["items"]:
                    if item[0] == "l":
                        printed.append(LineString([place(at) for at in item[1:3]]))
                    elif item[0] in ("qu", "re"):
                        # three sides of a rectangle are read as four: the fourth is not printed
                        quad = item[1] if item[0] == "qu" else item[1].quad
                        round_it = [place(at) for at in (quad.ul, quad.ll, quad.lr, quad.ur, quad.ul)]
                        sides = [LineString(side) for side in zip(round_it, round_it[1:])]
                        printed.extend(side for side in sides if wanted.buffer(near).contains(side))
                    else:
                        pytest.fail(f"a {item[0]} among straight lines")
        printed = unary_union(printed)
        assert printed.difference(wanted.buffer(near)).length < 0.5, stencil["id"]
        assert wanted.difference(printed.buffer(near)).length < 0.5, stencil["id"]


def test_a_crew_can_lay_the_marks_from_the_paper_alone(demo, plan, build):
    """Only the printed sheet and the surveyed points: two tapes crossed with the mark on the left
    of who looks from the first to the second give the plan's marks, and the printed check holds."""
    pages = pymupdf.open(demo / "out" / "set-out.pdf")
    words = "\n".join(page.get_text() for page in pages).replace("\u00a0\u00a0", " ")
    points = {name: (point["x"], point["y"]) for name, point in plan["survey"]["points"].items()}
    row = re.compile(
        r"\n(?P<mark>[\w-]+-\d+)\n[^\d\n][^\n]*(?:\n[^\n]*)??\n(?P<a>\w+) (?P<ra>[\d.]+)\n"
        r"(?P<b>\w+) (?P<rb>[\d.]+)\n(?P<c>\w+) (?P<rc>[\d.]+)\nat most (?P<limit>\d+) mm off"
    )
    planned = {point["name"]: point["at"] for point in build["setout"]["points"]}
    laid = {}
    for found in row.finditer(words):
        (ax, ay), (bx, by) = points[found["a"]], points[found["b"]]
        ra, rb = float(found["ra"]), float(found["rb"])
        span = math.hypot(bx - ax, by - ay)
        along = (ra**2 - rb**2 + span**2) / (2 * span)
        off = math.sqrt(ra**2 - along**2)
        ux, uy = (bx - ax) / span, (by - ay) / span
        mark = (ax + along * ux - off * uy, ay + along * uy + off * ux)
        laid[found["mark"]] = mark
        check = math.hypot(mark[0] - points[found["c"]][0], mark[1] - points[found["c"]][1])
        assert abs(check - float(found["rc"])) * MM <= int(found["limit"])
    assert set(laid) == set(planned)
    for name, (x, y) in laid.items():
        # lengths are printed to 5 mm; tapes that cross at 30 degrees double what is rounded off
        assert math.hypot(x - planned[name][0], y - planned[name][1]) < 0.01, name
