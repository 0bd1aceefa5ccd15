"""pikepdf and pymupdf look into the papers; a browser opens the drawing."""

import subprocess

import pikepdf
import pymupdf
import pytest
from conftest import FLAGS

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
