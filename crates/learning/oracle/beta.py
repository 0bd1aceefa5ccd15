"""Quantiles of Beta laws.

Rerun: python3 beta.py > beta.json (scipy 1.17.1).
"""

import json

from scipy.stats import beta

LAWS = [(8 * p, 8 * (1 - p)) for p in (0.03, 0.2, 0.25, 0.5, 0.65, 0.8, 0.88, 0.93, 0.98, 0.995)]
LAWS += [(8 * 0.93 + x, 8 * 0.07 + b) for x, b in [(5, 0), (11, 1), (40, 3), (300, 20), (3000, 90)]]
LAWS += [(0.24 + x, 7.76 + n - x) for x, n in [(0, 5), (3, 5), (12, 15), (60, 60)]]
LAWS += [(0.5, 2.5), (1.5, 1.5), (2.5, 0.5), (1.2, 4.8)]
print(json.dumps([[a, b, *beta.ppf([0.05, 0.25, 0.75, 0.95], a, b)] for a, b in LAWS]))
