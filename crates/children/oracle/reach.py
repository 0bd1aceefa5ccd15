"""What a measured best jump and a measured series of hops make of the age's figures, by
another way: the posterior on a grid, no closed form.

    python3 reach.py > reach.json        (numpy 2.x)

The best jump of a child is Normal(age + site, 18 cm); a measured best is it plus an error
whose size gives the retest correlation .91. The comfortable gap is .65 of it, give or take
.07 of the measured best. A mean hop of a series is known likewise with correlation .80.
"""

import json
import sys

import numpy as np


def posterior(mean, sd, seen, retest):
    error = sd * np.sqrt((1 - retest) / retest)
    grid = np.linspace(mean - 10 * sd, mean + 10 * sd, 200_001)
    weight = np.exp(-((grid - mean) ** 2) / (2 * sd**2) - (grid - seen) ** 2 / (2 * error**2))
    weight /= weight.sum()
    middle = (grid * weight).sum()
    return middle, np.sqrt(((grid - middle) ** 2 * weight).sum())


GAP = {3: 0.31, 4: 0.41, 5: 0.52, 6: 0.63}
HOP = {3: (0.21, 0.06), 4: (0.28, 0.09), 5: (0.36, 0.11), 6: (0.43, 0.13)}

cases = []
for age, best, series in [(3, 0.55, 0.80), (4, 0.71, 1.40), (5, 1.10, 1.60), (6, 0.60, 2.60)]:
    site = (best - (0.164 * age - 0.023)) * 1 / 9  # one child measured, n / (n + 8)
    # the gap's own table stands for .65 of the best jump
    middle, sd = posterior(GAP[age] / 0.65 + site, 0.18, best, 0.91)
    m, tau = 0.65 * middle, min(np.hypot(0.65 * sd, 0.07 * best), 0.12)
    hop_m, hop_tau = HOP[age]
    seen = series / 5
    factor = 1 + (seen / hop_m - 1) / 9
    # the jump moves the hop's prior: a child that jumps farther than its class hops farther
    factor *= m / (GAP[age] + 0.65 * site)
    hop, spread = posterior(hop_m * factor, hop_tau * factor, seen, 0.80)
    cases.append(
        {"age": age, "best": best, "series": series, "gap": m, "gap_tau": tau, "hop": hop, "hop_tau": spread}
    )
json.dump({"unit": "m", "cases": cases}, sys.stdout, indent=1)
