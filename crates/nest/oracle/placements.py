"""Holds stored placements against shapely: overlaps, gaps, what lies outside, density.

Rerun: cargo run -p nest --example placements --release > crates/nest/oracle/placements.json,
then python3 placements.py (made with Python 3.11; the version of shapely is stored). Outlines
are turned and moved by shapely too. The Rust test reads only the figures, and checks that
the room still lays the same parts in the same places.
"""

import itertools
import json
import pathlib

import shapely
from shapely.affinity import rotate, translate
from shapely.geometry import Polygon, box


def main():
    path = pathlib.Path(__file__).with_name("placements.json")
    data = json.loads(path.read_text())
    for case in data["cases"]:
        parts = [Polygon(ring) for ring in case["parts"]]
        assert all(part.is_valid for part in parts)
        margin, width, height = case["margin"], case["width"], case["height"]
        free = box(margin, margin, width - margin, height - margin)
        overlap = outside = area = 0.0
        nearest = None
        for sheet in case["sheets"]:
            laid = [
                translate(rotate(parts[part], turn, origin=(0, 0)), x, y)
                for part, turn, x, y in sheet
            ]
            area += sum(part.area for part in laid)
            outside = max([outside] + [part.difference(free).area / part.area for part in laid])
            for a, b in itertools.combinations(laid, 2):
                overlap = max(overlap, a.intersection(b).area / min(a.area, b.area))
                between = a.distance(b)
                nearest = between if nearest is None else min(nearest, between)
        density = area / (width * height * len(case["sheets"]))
        case["shapely"] = dict(overlap=overlap, outside=outside, nearest=nearest, density=density)
        print(case["name"], len(case["sheets"]), case["shapely"], case["density"])
    data["made_with"] = f"shapely {shapely.__version__}"
    path.write_text(json.dumps(data) + "\n")


if __name__ == "__main__":
    main()
