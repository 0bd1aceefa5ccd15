"""Dew points by the ASHRAE formulas, as psychrolib has them.

psychrolib 2.5.0, Python 3. Below freezing it gives the frost point, another thing: the grid
keeps to dew points of 0 C and more.
"""

import json
import pathlib

import psychrolib

psychrolib.SetUnitSystem(psychrolib.SI)
rows = []
for temperature in range(0, 46):
    for humidity in range(10, 101, 5):
        dew = psychrolib.GetTDewPointFromRelHum(temperature, humidity / 100)
        if dew >= 0:
            rows.append([temperature, humidity, round(dew, 6)])
# The table of the reference page, 10 C and 50 % with it.
for temperature, humidity in [(10, 50), (10, 85), (16, 71), (20, 85), (25, 60), (30, 40), (30, 70), (35, 80), (40, 20)]:
    dew = psychrolib.GetTDewPointFromRelHum(temperature, humidity / 100)
    rows.append([temperature, humidity, round(dew, 6)])
text = ",\n".join(json.dumps(row) for row in rows)
path = pathlib.Path(__file__).with_name("dew.json")
path.write_text(f'{{"psychrolib": "{psychrolib.__dict__.get("__version__", "2.5.0")}", "rows": [\n{text}\n]}}\n')
