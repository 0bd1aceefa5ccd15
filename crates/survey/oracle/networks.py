"""Random networks of every kind of reading, adjusted by scipy, for tests/oracle.rs.

Run: python3 networks.py > networks.json     (numpy 2.x, scipy 1.17.1)

Each network lies in one of three frames: a line, a free one nearest to a start, known points
with sigmas. The residuals and the covariance come from scipy.optimize.least_squares with
numerical derivatives (3-point), so neither our derivatives nor our solver takes part. A free
frame is made from any minimal one by a best fit to the start (Kabsch) and its covariance by
the pseudo-inverse of the normal matrix bordered with the constraints at the start.
"""

import json
import sys

import numpy as np
from scipy.optimize import least_squares

rng = np.random.default_rng(20260901)


def predict(kind, ids, x):
    if kind == "distance":
        return np.hypot(*(x[ids[1]] - x[ids[0]]))
    if kind in ("along", "left"):
        f, t, p = (x[i] for i in ids)
        u = (t - f) / np.hypot(*(t - f))
        d = p - f
        return u @ d if kind == "along" else u[0] * d[1] - u[1] * d[0]
    if kind == "square":
        c, f, t = (x[i] for i in ids)
        a, b = f - c, t - c
        return np.arctan2(abs(a[0] * b[1] - a[1] * b[0]), a @ b)
    return x[ids[0]][0 if kind == "known-x" else 1]


def network(number):
    n = int(rng.integers(4, 13))
    while True:
        truth = rng.uniform([0, 0], [30, 20], (n, 2))
        gaps = np.hypot(*(truth[:, None] - truth[None]).transpose(2, 0, 1)) + 1e3 * np.eye(n)
        if gaps.min() > 2.0:
            break
    frame = ["line", "free", "known"][number % 3]
    rows = [("distance", [0, 1])]
    for p in range(2, n):
        others = rng.permutation(p)[: min(p, 4)]
        rows += [("distance", [p, int(q)]) for q in others]
        if p == 2:
            rows += [("left", [0, 1, 2]), ("along", [0, 1, 2])]
        if p > 3 and rng.random() < 0.4:
            rows += [("left", [0, 1, p])]
        if p > 3 and rng.random() < 0.4:
            rows += [("along", [p - 1, p - 2, p])]
        if p > 3 and rng.random() < 0.4:
            rows += [("square", [p, p - 1, p - 2])]
    rows += [rows[i] for i in rng.permutation(len(rows))[:3]]
    if frame == "known":
        for p in range(3):
            rows += [("known-x", [p]), ("known-y", [p])]
    rows = [r for r in rows if r[0] != "square" or 0.3 < predict(*r, truth) < 2.8]
    readings = []
    for kind, ids in rows:
        value = predict(kind, ids, truth)
        sigma = 0.02 if kind == "square" else float(np.hypot(0.003, 0.0003 * abs(value)))
        if kind.startswith("known"):
            sigma = 0.01
        readings.append((kind, ids, float(value + sigma * rng.normal()), sigma))
    start = truth + rng.normal(0, 0.3, truth.shape)

    sigma = np.array([r[3] for r in readings])

    def residuals(flat):
        x = flat.reshape(n, 2)
        return (np.array([predict(k, i, x) for k, i, _, _ in readings]) - [r[2] for r in readings]) / sigma

    def solve(free, x0):
        def part(z):
            flat = x0.copy()
            flat[free] = z
            return residuals(flat)

        found = least_squares(part, x0[free], jac="3-point", method="trf", xtol=1e-15, ftol=1e-15, gtol=1e-15, x_scale=1.0)
        flat = x0.copy()
        flat[free] = found.x
        return flat

    if frame == "known":
        flat = solve(np.arange(2 * n), truth.ravel().copy())
    else:
        d = truth[1] - truth[0]
        u = d / np.hypot(*d)
        local = np.stack([(truth - truth[0]) @ u, (truth - truth[0]) @ [-u[1], u[0]]], axis=1)
        local[0] = 0
        local[1, 1] = 0
        free = np.array([2] + list(range(4, 2 * n)))
        flat = solve(free, local.ravel().copy())
    x = flat.reshape(n, 2)
    if frame == "free":
        a, b = x - x.mean(0), start - start.mean(0)
        turn = np.arctan2((a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]).sum(), (a * b).sum())
        c, s = np.cos(turn), np.sin(turn)
        x = a @ np.array([[c, s], [-s, c]]) + start.mean(0)
        flat = x.ravel()

    # Numerical derivatives once more, at the answer.
    step = 1e-5
    jac = np.stack(
        [(residuals(flat + step * e) - residuals(flat - step * e)) / (2 * step) for e in np.eye(2 * n)], axis=1
    )
    normal = jac.T @ jac
    if frame == "known":
        cov = np.linalg.inv(normal)
    elif frame == "line":
        cov = np.zeros((2 * n, 2 * n))
        cov[np.ix_(free, free)] = np.linalg.inv(normal[np.ix_(free, free)])
    else:
        s0 = start - start.mean(0)
        g = np.zeros((2 * n, 3))
        g[0::2, 0] = 1
        g[1::2, 1] = 1
        g[0::2, 2] = -s0[:, 1]
        g[1::2, 2] = s0[:, 0]
        bordered = np.block([[normal, g * 1e3], [g.T * 1e3, np.zeros((3, 3))]])
        cov = np.linalg.inv(bordered)[: 2 * n, : 2 * n]
    z = residuals(flat)
    r = 1 - np.einsum("ij,jk,ik->i", jac, cov, jac)
    return {
        "frame": frame,
        "readings": [[k, i, v, s] for k, i, v, s in readings],
        "start": start.tolist(),
        "places": x.tolist(),
        "sigmas": np.sqrt(np.maximum(np.diag(cov), 0)).reshape(n, 2).tolist(),
        "v": (z * sigma).tolist(),
        "r": r.tolist(),
        "w": (z / np.sqrt(np.maximum(r, 1e-12))).tolist(),
        "vtpv": float(z @ z),
    }


json.dump({"made_by": "networks.py, scipy 1.17.1", "networks": [network(i) for i in range(30)]}, sys.stdout)
