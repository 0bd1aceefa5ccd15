"""Seconds that plain numpy takes for 24 children x 12 markings x 8 skills: `python3 times.py`.

One core, one pass; the Rust side is `cargo bench -p footfall`. numpy 2.4.6, scipy 1.17.1.
"""

import json
import pathlib
import time

from plain import footfall

data = json.loads((pathlib.Path(__file__).parent / "class.json").read_text())
start = time.perf_counter()
for figure in data["figures"]:
    for gait, foot in data["activities"]:
        for child in data["children"]:
            footfall(figure, child, gait, foot)
print(f"{time.perf_counter() - start:.2f} s")
