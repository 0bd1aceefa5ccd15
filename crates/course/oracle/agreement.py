"""Agreement of observers as another program has it.

Kappa with its standard error and Fleiss' kappa from statsmodels 0.15.0 (BSD-3), the exact
McNemar test from the same, Wilson's interval from its proportion_confint; AC1's standard error by the
delta method on the multinomial law with numerical derivatives, which knows nothing of the
printed formula.

Rerun: python3 agreement.py > agreement.json
"""

import json

import numpy as np
from statsmodels.stats.contingency_tables import mcnemar
from statsmodels.stats.inter_rater import cohens_kappa, fleiss_kappa
from statsmodels.stats.proportion import proportion_confint


def ac1(shares):
    p = np.asarray(shares).reshape(2, 2)
    p = p / p.sum()
    mean = (p.sum(0) + p.sum(1)) / 2
    chance = (mean * (1 - mean)).sum()
    return (np.trace(p) - chance) / (1 - chance)


def delta(figure, table):
    counts = np.asarray(table, float).ravel()
    n = counts.sum()
    p = counts / n
    step = 1e-5
    slope = np.array(
        [(figure(p + step * e) - figure(p - step * e)) / (2 * step) for e in np.eye(len(p))]
    )
    return float(np.sqrt(((p * slope**2).sum() - (p * slope).sum() ** 2) / n))


rng = np.random.default_rng(1971)
tables = [[40, 9, 6, 45], [80, 10, 5, 5], [25, 35, 5, 35], [20, 5, 10, 15], [18, 3, 2, 20], [3, 1, 2, 34]]
tables += rng.integers(1, 60, (12, 4)).tolist()
out = {"tables": [], "square": [], "fleiss": [], "mcnemar": [], "wilson": []}
for table in tables:
    square = np.reshape(table, (2, 2))
    kappa = cohens_kappa(square)
    out["tables"].append([table, kappa.kappa, kappa.std_kappa, ac1(table), delta(ac1, table)])
squares = [[[53, 5, 2], [11, 14, 5], [1, 6, 3]], rng.integers(0, 30, (4, 4)).tolist(), rng.integers(1, 9, (5, 5)).tolist()]
for square in squares:
    kappa = cohens_kappa(np.array(square))
    out["square"].append([square, kappa.kappa, kappa.std_kappa])
for subjects, observers, classes in [(10, 14, 5), (30, 6, 5), (25, 2, 2), (8, 3, 2)]:
    counts = rng.multinomial(observers, rng.dirichlet(np.ones(classes)), subjects)
    out["fleiss"].append([counts.tolist(), fleiss_kappa(counts)])
for better, worse in [(9, 2), (0, 0), (5, 5), (1, 7), (12, 0), (40, 25), (300, 350)]:
    # the tables' other cells tell nothing
    p = mcnemar([[4, better], [worse, 0]], exact=True).pvalue if better + worse else 1.0
    out["mcnemar"].append([better, worse, float(p)])
for met, of in [(7, 12), (0, 9), (9, 9), (85, 100), (1, 2)]:
    out["wilson"].append([met, of, *map(float, proportion_confint(met, of, method="wilson"))])
print(json.dumps(out, default=float))
