"""What tries, checks, counts and measured bests tell of a class: quadrature over all at once.

Rerun: python3 learned.py > learned.json (numpy 2.4.6, scipy 1.17.1). Nothing here is made
normal: each child's likelihood is summed over q (Gauss-Jacobi), over can or cannot, and
over its own z; the effects of two ages and two groups are a grid of four dimensions. Straight
rows of discs, one follower each, start first, end last, hopped on one foot.
"""

import json

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from scipy.special import betainc, betaln, ndtr, roots_jacobi
from scipy.stats import beta as beta_law

NINE_IN_TEN, W, FLOOR, WEIGHT, SHOWS = 1.2816, 0.10, 0.3, 8.0, 3
SIGMA = {4: 0.06, 5: 0.05}
HOP = {4: (0.28, 0.09, 0.65, 0.88), 5: (0.36, 0.11, 0.90, 0.93)}
SHARED = 1 / 9
S_AGE = S_GROUP = np.sqrt(SHARED / 2)
Z = np.linspace(-4, 4, 1601)
DZ = np.full(len(Z), Z[1] - Z[0])
DZ[[0, -1]] /= 2
Q = 160


def own(child):
    return 1 - S_AGE**2 - (S_GROUP**2 if child["group"] else 0)


def reach(z, m, tau):
    return np.maximum(m + tau * z, FLOOR * m)


def clears(child, gap, radius, flights):
    rho = reach(Z, child["m"], child["tau"])
    inside = 1 - np.exp(-(radius**2) / (2 * SIGMA[child["years"]] ** 2))
    return (ndtr(NINE_IN_TEN + (rho - gap) / (W * rho)) * inside) ** flights


def beta_nodes(a, b):
    """Nodes on (0, 1) and weights, summing to 1, of Beta(a, b)."""
    x, w = roots_jacobi(Q, b - 1, a - 1)
    return (1 + x) / 2, w / w.sum()


def tables(child):
    """For each q: likelihood over Z given that the child can, and of the same if it cannot."""
    a, b = prior_of_q(child)
    a0, b0 = a, b
    cannot = 1.0
    shown = child["read"] is not None
    for contacts, broke in child["runs"]:
        a, b = a + contacts, b + broke
        if contacts >= SHOWS:
            shown = True
        cannot *= (1 if broke else max(SHOWS - contacts, 1)) / SHOWS
    q, w = beta_nodes(a, b)
    like = np.full((Q, len(Z)), np.exp(betaln(a, b) - betaln(a0, b0)))
    if child["read"] is not None:
        y, sigma = child["read"]
        rho = reach(Z, child["m"], child["tau"])
        like = like * np.exp(-0.5 * ((rho - y) / sigma) ** 2)
    for flights, gap, radius, n, good in child["rows"]:
        pi = np.clip(q[:, None] ** flights * clears(child, gap, radius, flights), 1e-6, 1 - 1e-6)
        like = like * pi**good * (1 - pi) ** (n - good)
        shown = shown or good > 0
    n, met = child["checks"]
    fa, fb = WEIGHT * child["can"] + met, WEIGHT * (1 - child["can"]) + n - met
    can = 1.0 if shown else fa / (fa + fb)
    return q, w, like, (0.0 if shown else cannot), (fa, fb), can, (a, b)


def quantile(z, mass, share):
    """By a spline through the running sum, each place's own mass lying around it."""
    run = np.cumsum(mass) - mass / 2
    spline = CubicSpline(z, run / mass.sum())
    return brentq(lambda x: spline(x) - share, z[0], z[-1])


def normal(x, mean, variance):
    return np.exp(-0.5 * (x - mean) ** 2 / variance) / np.sqrt(2 * np.pi * variance)


def posterior(children, ages, groups):
    told = [tables(child) for child in children]
    mixed = [
        can * (w @ like) + (1 - can) * cannot for q, w, like, cannot, _, can, _ in told
    ]
    steps = np.linspace(-5.5, 5.5, 45)
    prior = normal(steps, 0, 1)
    prior /= prior.sum()
    names = [("age", age) for age in ages] + [("group", group) for group in groups]
    share = {"age": S_AGE, "group": S_GROUP}
    axes = np.meshgrid(*[steps] * len(names), indexing="ij")
    joint = np.ones_like(axes[0])
    for at in range(len(names)):
        shape = [1] * len(names)
        shape[at] = -1
        joint = joint * prior.reshape(shape)

    def total(child):
        e = np.zeros_like(axes[0])
        for at, (kind, name) in enumerate(names):
            if child[kind if kind == "group" else "years"] == name:
                e = e + share[kind] * axes[at]
        return e

    fine = np.linspace(-2.8, 2.8, 561)
    factors = []
    for child, like in zip(children, mixed):
        kernel = normal(Z[None, :], fine[:, None], own(child))
        spline = CubicSpline(fine, kernel @ (like * DZ))
        factors.append(spline(total(child)))
    for factor in factors:
        joint = joint * factor
    joint /= joint.sum()
    effects = []
    for at, (kind, name) in enumerate(names):
        mass = joint.sum(axis=tuple(i for i in range(len(names)) if i != at))
        mean = mass @ steps
        effects.append(
            dict(
                kind=kind,
                name=name,
                mean=share[kind] * mean,
                sd=share[kind] * np.sqrt(mass @ (steps - mean) ** 2),
            )
        )
    answers = []
    for child, (q, w, like, cannot, (fa, fb), can, (a, b)), factor in zip(children, told, factors):
        # what all others tell of this child's share of the effects
        others = (joint / factor).ravel()
        e = total(child).ravel()
        mass, edges = np.histogram(e, bins=2801, range=(-2.8, 2.8), weights=others)
        middle = np.histogram(e, bins=2801, range=(-2.8, 2.8), weights=others * e)[0]
        kept = mass > 0
        mass, middle = mass[kept], middle[kept] / mass[kept]
        before = mass @ normal(Z[None, :], middle[:, None], own(child)) * DZ
        before /= before.sum()
        given = before * (w @ like)
        z_mean = given @ Z / given.sum()
        likely = given.sum()
        yes = can * likely / (can * likely + (1 - can) * cannot)
        of_q = w * (like @ before)
        of_q /= of_q.sum()

        def q_below(x):
            # the running integral, on a panel of its own from 0 to x
            t, v = np.polynomial.legendre.leggauss(120)
            at = x * (1 + t) / 2
            pdf = beta_law.pdf(at, a, b)
            table = np.ones((len(at), len(Z)))
            if child["read"] is not None:
                y, sigma = child["read"]
                table = table * np.exp(
                    -0.5 * ((reach(Z, child["m"], child["tau"]) - y) / sigma) ** 2
                )
            for flights, gap, radius, n, good in child["rows"]:
                pi = np.clip(
                    at[:, None] ** flights * clears(child, gap, radius, flights), 1e-6, 1 - 1e-6
                )
                table = table * pi**good * (1 - pi) ** (n - good)
            return x / 2 * (v * pdf) @ (table @ before)

        q_whole = w @ (like @ before) / np.exp(betaln(a, b) - betaln(*prior_of_q(child)))
        q_at = [
            brentq(lambda x: q_below(x) / q_whole - share, 0.2, 1 - 1e-9, xtol=1e-9)
            for share in (0.05, 0.25, 0.75)
        ]
        form = [
            brentq(
                lambda x: yes * betainc(fa + 1, fb, x) + (1 - yes) * betainc(fa, fb + 1, x) - share,
                0,
                1,
            )
            for share in (0.05, 0.25, 0.75, 0.95)
        ]
        answers.append(
            dict(
                z=z_mean,
                sd=np.sqrt(given @ (Z - z_mean) ** 2 / given.sum()),
                z_at=[quantile(Z, given, share) for share in (0.05, 0.25, 0.75, 0.95)],
                can=yes,
                q=of_q @ q,
                q_sd=np.sqrt(of_q @ (q - of_q @ q) ** 2),
                q_at=q_at,
                form=yes * (fa + 1) / (fa + fb + 1) + (1 - yes) * fa / (fa + fb + 1),
                form_at=form,
            )
        )
    return answers, effects


def prior_of_q(child):
    return WEIGHT * child["steady"], WEIGHT * (1 - child["steady"])


def child(years, group, rows=(), checks=(0, 0), runs=(), read=None):
    m, tau, can, steady = HOP[years]
    return dict(years=years, group=group, m=m, tau=tau, can=can, steady=steady,
                rows=list(rows), checks=list(checks), runs=list(runs), read=read)


CLASSES = {
    "alone": ([4], [], [child(4, None, [(4, 0.30, 0.15, 5, 4)])]),
    "alone, nothing came off": ([4], [], [child(4, None, [(4, 0.30, 0.15, 6, 0)])]),
    "alone, all kinds": ([5], [], [child(5, None, [(3, 0.35, 0.175, 4, 3), (4, 0.45, 0.15, 8, 2)],
                                         (10, 7), [(6, 1), (9, 1), (5, 0)], (0.40, 0.07))]),
    "alone, breaks at once": ([4], [], [child(4, None, (), (5, 1), [(1, 1), (0, 1), (2, 0)])]),
    "alone, sixty tries": ([5], [], [child(5, None, [(4, 0.40, 0.15, 60, 27)])]),
    "two ages, two groups": ([4, 5], ["blue", "red"], [
        child(4, "red", [(4, 0.30, 0.15, 6, 5), (3, 0.40, 0.15, 6, 4)]),
        child(4, "red", [(4, 0.30, 0.15, 6, 4)], (5, 4)),
        child(4, "red", read=(0.41, 0.05)),
        child(4, "blue", [(4, 0.30, 0.15, 8, 0)]),
        child(4, "blue", [(2, 0.30, 0.15, 5, 2)], (5, 3), [(4, 1)]),
        child(5, "red", [(5, 0.45, 0.15, 10, 6)]),
        child(5, "red", [(5, 0.40, 0.15, 10, 7)], (5, 5), [(11, 1)]),
        child(5, "blue", [(4, 0.35, 0.15, 10, 2)]),
        child(5, "blue"),
        child(4, "red"),
    ]),
}

if __name__ == "__main__":
    out = []
    for name, (ages, groups, children) in CLASSES.items():
        answers, effects = posterior(children, ages, groups)
        out.append(dict(name=name, ages=ages, groups=groups, children=children,
                        answers=answers, effects=effects))
    print(json.dumps(out, indent=1))
