"""Reads the papers that `cargo run --release -p document --example office -- OUT` makes with two
programs that are not ours, and keeps what they found for tests/oracle.rs.

    python3 check_papers.py OUT > papers.csv

The versions are printed into the file. Fails loudly when a paper is not
tagged, has no language, no PDF/UA identifier, a figure without words, a table without heads, or
text that reaches past the paper.
"""

import collections
import pathlib
import sys

import pikepdf
import pymupdf

MM = 25.4 / 72


def tags(element, found, figures):
    """Counts structure elements by type below `element`."""
    kids = element.get("/K")
    if kids is None:
        return
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            kind = str(kid.S)[1:]
            found[kind] += 1
            if kind == "Figure":
                figures.append(str(kid.get("/Alt", "")))
            tags(kid, found, figures)


def paper(path):
    with pikepdf.open(path) as pdf:
        root = pdf.Root
        found, figures = collections.Counter(), []
        tags(root.StructTreeRoot, found, figures)
        with pdf.open_metadata() as meta:
            ua = meta.get("pdfuaid:part")
        told = {
            "language": str(root.Lang),
            "marked": bool(root.MarkInfo.Marked),
            "ua": ua,
            "title": str(pdf.docinfo.get("/Title", "")) or None,
            "tags": dict(sorted(found.items())),
            "figures_with_words": sum(1 for words in figures if words),
        }
    assert told["marked"] and told["ua"] == "1" and told["language"] in ("en", "es"), path
    assert found["H1"] == 1 and told["figures_with_words"] == found["Figure"] > 0, path
    assert found["Table"] == 0 or found["TH"] > 0, path
    document = pymupdf.open(path)
    told["pages_mm"] = [[round(page.rect.width * MM, 3), round(page.rect.height * MM, 3)] for page in document]
    longest = 0.0
    for page in document:
        for block in page.get_text("dict")["blocks"]:
            for line in block.get("lines", []):
                x0, y0, x1, y1 = line["bbox"]
                inside = x0 >= -0.5 and y0 >= -0.5 and x1 <= page.rect.width + 0.5 and y1 <= page.rect.height + 0.5
                assert inside, (path, "".join(span["text"] for span in line["spans"]))
    # the dimension of the first side: the longest level line of 0.18 mm on the drawing
    for drawing in document[0].get_drawings():
        if drawing["type"] != "s" or abs(drawing["width"] * MM - 0.18) > 0.005:
            continue
        for item in drawing["items"]:
            if item[0] == "l" and abs(item[1].y - item[2].y) < 0.5:
                longest = max(longest, abs(item[1].x - item[2].x) * MM)
    told["longest_level_line_mm"] = round(longest, 4)
    return told


def main():
    print(f"# pikepdf {pikepdf.__version__}, {' '.join(pymupdf.__doc__.split())}")
    print("paper,language,ua,pages,first_mm,other_mm,h1,h2,tables,heads,figures,first_side_mm")
    for path in sorted(pathlib.Path(sys.argv[1]).glob("*.pdf")):
        told = paper(path)
        sizes = ["x".join(f"{side:.1f}" for side in page) for page in told["pages_mm"]]
        assert len(set(sizes[1:])) <= 1, path
        count = collections.Counter(told["tags"])
        row = [path.stem, told["language"], told["ua"], len(sizes), sizes[0], sizes[-1]]
        row += [count["H1"], count["H2"], count["Table"], count["TH"], told["figures_with_words"]]
        print(*row, told["longest_level_line_mm"], sep=",")


main()
