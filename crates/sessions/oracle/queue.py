"""Waits at a track, by other ways than src/queue.rs.

Closed forms: the chain of the finite-source M/D/1 by its eigenvector; the exponential one by
its birth-death balance. And a plain event simulation with random lines, for the mean waits of
mixed children who go back where a contact fails. `python oracle/queue.py > oracle/queue.json`
"""

import heapq
import json
import math

import numpy as np
import scipy
from scipy.stats import binom


def fixed(n, gap, out):
    back = 1 - math.exp(-gap / out)
    step = np.zeros((n, n))
    for left in range(n):
        starts = max(left, 1)
        for came in range(n - starts + 1):
            step[left, starts - 1 + came] += binom.pmf(came, n - starts, back)
    values, vectors = np.linalg.eig(step.T)
    shares = np.real(vectors[:, np.argmin(abs(values - 1))])
    shares /= shares.sum()
    return n * (gap + shares[0] * out / n) - gap - out


def by_chance(n, gap, out):
    weights = [1.0]
    for inside in range(1, n + 1):
        weights.append(weights[-1] * (n - inside + 1) / out * gap)
    shares = np.array(weights) / sum(weights)
    rate = (1 - shares[0]) / gap
    return n / rate - out - gap


def simulated(seed, kids, seconds, gap, alone, dawdle):
    """kids: (flights, p, pass, walk back). Mean wait and good contacts a minute."""
    rng = np.random.default_rng(seed)
    queue = [(0.0, i, i) for i in range(len(kids))]
    order = len(kids)
    free, waits, good = 0.0, [], 0
    while queue:
        ready, _, who = heapq.heappop(queue)
        start = max(ready, free)
        if start >= seconds:
            break
        waits.append(start - ready)
        flights, p, length, back = kids[who]
        fails = np.flatnonzero(rng.random(flights) >= p)
        came = int(fails[0]) if fails.size else flights
        share = min(came + 1, flights) / flights
        good += came
        busy = length * share
        away = busy + (back - dawdle) * share + rng.exponential(dawdle)
        free = start + (max(gap, busy) if alone else gap)
        heapq.heappush(queue, (start + away, order, who))
        order += 1
    return np.mean(waits), good / (seconds / 60)


def arriving(seed, rate, gap, many):
    """Children who come by chance to one track: mean wait."""
    rng = np.random.default_rng(seed)
    wait, total = 0.0, 0.0
    for between in rng.exponential(1 / rate, many):
        total += wait
        wait = max(0.0, wait + gap - between)
    return total / many


if __name__ == "__main__":
    closed = [
        {"n": n, "gap": gap, "out": out, "fixed": fixed(n, gap, out), "by_chance": by_chance(n, gap, out)}
        for n, gap, out in [(2, 5, 6), (4, 5, 6), (4, 5, 15), (4, 5, 40), (6, 4, 12), (12, 5, 30), (3, 8, 2)]
    ]
    kids = [(6, 0.9, 4.5, 6.5), (6, 0.8, 4.5, 7.0), (5, 0.95, 6.0, 8.0), (8, 0.7, 7.0, 5.0)]
    mixed = []
    for alone in (False, True):
        runs = np.array([simulated(seed, kids, 20000, 5, alone, 2.0) for seed in range(200)])
        mean, error = runs.mean(axis=0), runs.std(axis=0, ddof=1) / math.sqrt(len(runs))
        mixed.append({"alone": alone, "wait": mean[0], "wait_error": error[0], "good": mean[1], "good_error": error[1]})
    opens = []
    for rate, gap in [(0.05, 5), (0.1, 5), (0.16, 5)]:
        runs = np.array([arriving(seed, rate, gap, 100000) for seed in range(20)])
        opens.append({"rate": rate, "gap": gap, "wait": runs.mean(), "error": runs.std(ddof=1) / math.sqrt(20)})
    print(json.dumps({"numpy": np.__version__, "scipy": scipy.__version__, "closed": closed, "kids": kids, "mixed": mixed, "open": opens}, indent=1))
