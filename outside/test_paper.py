"""pikepdf and pymupdf look into the papers; a browser opens the drawing."""

import json
import math
import re
import subprocess
from xml.etree import ElementTree

import pikepdf
import pymupdf
import pytest
from conftest import FLAGS, ROOT, run

A4 = (595.276, 841.89)


@pytest.fixture(scope="module")
def papers(demo):
    found = sorted((demo / "out").glob("*.pdf"))
    assert found
    return found


def test_papers_are_tagged_titled_and_say_their_language(papers):
    for path in papers:
        with pikepdf.open(path) as pdf:
            assert pdf.Root.MarkInfo.Marked, path.name
            assert pdf.Root.Lang == "en", path.name
            assert pdf.Root.StructTreeRoot.K is not None
            with pdf.open_metadata() as meta:
                assert meta.get("dc:title"), path.name
                assert meta.get("pdfuaid:part") == "1", path.name


def test_pages_are_a4(papers):
    for path in papers:
        for page in pymupdf.open(path):
            size = sorted((page.rect.width, page.rect.height))
            assert size == pytest.approx(sorted(A4), abs=0.01), path.name


def test_every_figure_has_its_words(papers):
    def figures(node):
        if isinstance(node, pikepdf.Array):
            for item in node:
                yield from figures(item)
        elif isinstance(node, pikepdf.Dictionary):
            if node.get("/S") == "/Figure":
                yield node
            if "/K" in node:
                yield from figures(node["/K"])

    for path in papers:
        with pikepdf.open(path) as pdf:
            for figure in figures(pdf.Root.StructTreeRoot.K):
                assert str(figure.get("/Alt", "")).strip(), path.name


def test_the_drawing_opens_in_a_browser(demo, browser, tmp_path):
    shot = tmp_path / "yard.png"
    subprocess.run(
        [
            browser,
            "--headless",
            *FLAGS,
            f"--user-data-dir={tmp_path / 'profile'}",
            "--window-size=1400,1000",
            f"--screenshot={shot}",
            (demo / "out" / "yard.svg").as_uri(),
        ],
        check=True,
        capture_output=True,
        timeout=120,
    )
    picture = pymupdf.Pixmap(str(shot))
    dark = sum(1 for value in picture.samples[::997] if value < 128)
    assert dark > 50, "the picture is blank"


def test_every_marking_of_a_full_plan_sheet_is_numbered_and_listed(tmp_path):
    """The real school's ground with forty children has more markings than one column holds."""
    folder = tmp_path / "school"
    outline = ROOT / "crates" / "project" / "real" / "school-yard.geojson"
    words = ["--name", "School yard", "--units", "ft", "--paper", "letter", "--yes"]
    run("new", folder, "--outline", outline, *words)
    for name, old, new in [
        ("programme.toml", r"(?m)^# ages = .*", "ages = { 3 = 12, 4 = 16, 5 = 12 }"),
        ("project.toml", r"(?m)^(paper.*)$", r"\1\nbudget = 400"),
    ]:
        text = (folder / name).read_text()
        changed = re.sub(old, new, text, count=1)
        assert changed != text
        (folder / name).write_text(changed)
    run("plan", folder)
    many = len(json.loads((folder / "out" / "plan.json").read_text())["markings"])
    assert many > 9
    svg = ElementTree.parse(folder / "out" / "plan.svg")
    numbers = {}
    for text in svg.iter("{http://www.w3.org/2000/svg}text"):
        if text.get("fill") == "#FFFFFF" and (text.text or "").isdigit():
            at = float(text.get("x")), float(text.get("y")), float(text.get("font-size"))
            numbers.setdefault(int(text.text), []).append(at)
    assert sorted(numbers) == list(range(1, many + 1))
    for number, places in numbers.items():
        assert len({size for *_, size in places}) == 2, f"{number} is drawn and listed"
        assert len(places) == 2
    # a disc is 1.84 capitals wide, a capital some .67 of the type: none covers another
    drawn = [max(places, key=lambda place: place[2]) for places in numbers.values()]
    for at, (x, y, size) in enumerate(drawn):
        for u, v, _ in drawn[:at]:
            assert math.hypot(x - u, y - v) > 1.84 * 0.67 * size
