"""Holds stored layouts against shapely: overlaps and what lies outside the free ground.

Rerun: cargo run -p layout --example placements > placement.json, then python3 placement.py
(made with Python 3.11; the version of shapely is stored). The Rust test reads only the
figures, and checks that the planner still lays the same envelopes.
"""

import itertools
import json
import pathlib

import shapely
from shapely.geometry import Polygon
from shapely.ops import unary_union


def main():
    path = pathlib.Path(__file__).with_name("placement.json")
    data = json.loads(path.read_text())
    for case in data["cases"]:
        free = unary_union([Polygon(p[0], p[1:]) for p in case["free"]])
        laid = [Polygon(ring) for ring in case["envelopes"]]
        assert all(p.is_valid for p in laid)
        overlap = max([a.intersection(b).area for a, b in itertools.combinations(laid, 2)], default=0.0)
        outside = max([p.difference(free).area for p in laid], default=0.0)
        filled = sum(p.area for p in laid) / free.area
        case["shapely"] = dict(overlap=overlap, outside=outside, filled=round(filled, 4))
        print(len(laid), "laid, overlap", overlap, "outside", outside, "filled", round(filled, 3),
              "value", case["value"], "bound", case["bound"])
    data["made_with"] = f"shapely {shapely.__version__}"
    path.write_text(json.dumps(data) + "\n")


if __name__ == "__main__":
    main()
