"""What tries say of a child: the posterior of z by scipy's quadrature.

Rerun: python3 learn.py > learn.json (numpy 2.4.6, scipy 1.17.1). Straight rows of discs,
one follower each, start first, end last, hopped; the page's priors. m and tau afterwards
are m + tau E[z] and tau sd[z], z ~ N(0, 1) cut at 4, tries Binomial(k; n, pi(z)), pi held
to 1e-6 from 0 and 1.
"""

import json

import numpy as np
from scipy.integrate import quad
from scipy.stats import binom, norm

NINE_IN_TEN, W, FLOOR = 1.2816, 0.10, 0.3
HOP = {4.0: (0.28, 0.09, 0.88, 0.06), 5.0: (0.36, 0.11, 0.93, 0.05)}


def pi(z, years, flights, gap, radius):
    m, tau, q, sigma = HOP[years]
    rho = max(m + tau * z, FLOOR * m)
    inside = 1 - np.exp(-radius**2 / (2 * sigma**2))
    p = q * norm.cdf(NINE_IN_TEN + (rho - gap) / (W * rho)) * inside
    return np.clip(p**flights, 1e-6, 1 - 1e-6)


def posterior(years, rows):
    m, tau, *_ = HOP[years]

    def weight(z):
        like = 1.0
        for flights, gap, radius, n, good in rows:
            like *= binom.pmf(good, n, pi(z, years, flights, gap, radius))
        return norm.pdf(z) * like

    cuts = list(np.linspace(-4, 4, 33)) + [-(1 - FLOOR) * m / tau]
    panels = sorted(c for c in cuts if -4 <= c <= 4)

    def moment(k):
        return sum(
            quad(lambda z: z**k * weight(z), a, b, epsabs=1e-15, epsrel=1e-11)[0]
            for a, b in zip(panels, panels[1:])
        )

    whole = moment(0)
    mean = moment(1) / whole
    sd = np.sqrt(moment(2) / whole - mean**2)
    return m + tau * mean, tau * sd


CASES = [
    (4.0, [(4, 0.30, 0.15, 5, 4)]),
    (4.0, [(4, 0.30, 0.15, 6, 0)]),
    (5.0, [(4, 0.30, 0.15, 10, 3)]),
    (5.0, [(3, 0.35, 0.175, 4, 3), (4, 0.45, 0.15, 8, 2)]),
    (5.0, [(4, 0.55, 0.15, 3, 3)]),
]
if __name__ == "__main__":
    print(json.dumps([
        dict(years=years, rows=rows, m=m, tau=tau)
        for years, rows in CASES
        for m, tau in [posterior(years, rows)]
    ]))
