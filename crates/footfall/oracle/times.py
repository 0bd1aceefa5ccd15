"""The time that plain numpy takes for 24 children x 12 markings x 8 skills: `python3 times.py`.

One core, one pass; the Rust side is `cargo bench -p footfall`. numpy 2.4.6, scipy 1.17.1.
"""

import json
import pathlib
import time

from plain import footfall

data = json.loads((pathlib.Path(__file__).parent / "class.json").read_text())
wall, busy = time.perf_counter(), time.process_time()
for figure in data["figures"]:
    for gait, foot in data["activities"]:
        for child in data["children"]:
            footfall(figure, child, gait, foot)
print(f"{time.process_time() - busy:.2f} s of one core, {time.perf_counter() - wall:.2f} s on the wall")
