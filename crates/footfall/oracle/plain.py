"""The footfall model in plain numpy: what a child's feet do on a figure.

Written from the model's page, apart from the Rust rooms and in another manner: routes are
kept by a dictionary of whole prefixes instead of tables, landings on polygons are integrated
by scipy's owens_t. It is the oracle (`figures.py`) and the yardstick of speed (`times.py`).

numpy 2.4.6, scipy 1.17.1, Python 3.
"""

import numpy as np
from scipy.special import log_ndtr, ndtr, owens_t

NINE_IN_TEN = 1.2816
W = 0.10
FLOOR = 0.3
LESS = dict(push=.3, walk=.1, run=.5, jump=.3, hop=.3, leap=.6, mixed=.3, gallop=.5, slide=.3, skip=.3)
LONGEST = 40
TIE = 1e-12
GRID = np.round(np.arange(-200, 201) * 0.02, 10)
GRID_WEIGHTS = np.exp(-GRID**2 / 2) / np.exp(-GRID**2 / 2).sum()
NODES, NODE_WEIGHTS = np.polynomial.legendre.leggauss(32)
RATES = dict(
    walk=[2.1, 2.1, 2.1, 2.1], run=[3.8, 3.7, 3.5, 3.4], jump=[.9, 1.2, 1.5, 1.75],
    hop=[1.6, 1.8, 2.0, 2.2], leap=[1.0, 1.1, 1.2, 1.3], gallop=[1.4, 1.6, 1.8, 1.9],
    slide=[1.4, 1.6, 1.8, 1.9], skip=[1.0, 1.2, 1.4, 1.5],
)
RATES["court"] = RATES["hop"]

# state -> [(state, flight, whose steadiness)]; a state is a foot and, for the leap, how far
# the run-up has come
def _other(flight):
    return {"R": [("L", flight, flight)], "L": [("R", flight, flight)]}

def _same(flight):
    return {"R": [("R", flight, flight)], "L": [("L", flight, flight)]}

GAITS = {
    "walk": _other("walk"), "run": _other("run"), "skip": _other("skip"),
    "hop": _same("hop"), "gallop": _same("gallop"), "slide": _same("slide"),
    "jump": {"B": [("B", "jump", "jump")]},
    "push": {"B": [("B", "push", None)]},
    "court": {
        "R": [("R", "hop", "hop"), ("B", "mixed", "hop")],
        "L": [("L", "hop", "hop"), ("B", "mixed", "hop")],
        "B": [("R", "mixed", "hop"), ("L", "mixed", "hop"), ("B", "jump", "hop")],
    },
    "leap": {
        "R": [("L1", "run", "run")], "L": [("R1", "run", "run")],
        "R1": [("L2", "run", "run")], "L1": [("R2", "run", "run")],
        "R2": [("L3", "leap", "leap")], "L2": [("R3", "leap", "leap")],
        "R3": [("L3", "leap", "leap")], "L3": [("R3", "leap", "leap")],
    },
}
SKILL = dict(court="hop")


def by_age(values, age):
    return float(np.interp(age, [3, 4, 5, 6], values))


def reach(child, flight, z):
    """rho of a flight at z: Normal(m, tau), never under 30 % of m."""
    skills = dict(mixed=["hop", "jump"], push=[child.get("pushes")]).get(flight, [flight])
    m = np.mean([child["skills"][s]["m"] for s in skills])
    tau = np.mean([child["skills"][s]["tau"] for s in skills])
    return np.maximum(m + tau * z, FLOOR * m), m, tau


def landing(cell, sigma):
    """Mass of a Normal(centre, sigma^2) inside the outline."""
    if "radius" in cell:
        return -np.expm1(-cell["radius"] ** 2 / (2 * sigma**2))
    ring = (np.array(cell["outline"]) - np.array(cell["centre"])) / sigma
    mass = 0.0
    for a, b in zip(ring, np.roll(ring, -1, axis=0)):
        along = (b - a) / np.hypot(*(b - a))
        h = a[0] * along[1] - a[1] * along[0]
        s, t = a @ along, b @ along
        if h == 0:
            continue
        piece = lambda u: np.arctan2(u, abs(h)) / (2 * np.pi) - owens_t(abs(h), u / abs(h))
        mass += np.sign(h) * (piece(t) - piece(s))
    return mass


def takes(cell, foot):
    return foot in dict(one="RL", both="B", either="RLB", left="L", right="R")[cell["takes"]]


def turn_and_facing(figure, before, here, there):
    """cos phi, k and the distance of one contact."""
    c = [np.array(figure["cells"][i]["centre"]) if i is not None else None for i in (before, here, there)]
    d = c[2] - c[1]
    length = np.hypot(*d)
    cos_phi = 1.0
    if before is not None:
        e = c[1] - c[0]
        cos_phi = (d @ e) / (length * np.hypot(*e))
    cos_alpha = None
    if figure["facing"] is not None:
        cos_alpha = np.cos(np.arctan2(d[1], d[0]) - figure["facing"])
    return cos_phi, cos_alpha, length


def contact(figure, child, flight, steady, before, here, there, z, log=False):
    """p of one contact at z, or its logarithm."""
    cos_phi, cos_alpha, d = turn_and_facing(figure, before, here, there)
    k = 1.0
    if cos_alpha is not None and flight != "slide":
        k = 0.75 + 0.25 * cos_alpha - 0.05 * (1 - cos_alpha**2)
    rho, _, _ = reach(child, flight, z)
    r = rho * (1 - LESS[flight] * (1 - cos_phi) / 2) * k
    q = child["skills"][steady or child["pushes"]]["steady"]
    a = figure["landing"][there]
    x = NINE_IN_TEN + (r - d) / (W * rho)
    return np.log(q) + log_ndtr(x) + np.log(a) if log else q * ndtr(x) * a


def followers(figure, gait, foot, before, here, state):
    """Cells and states that may come next."""
    cells = figure["cells"]
    nexts = cells[here].get("next")
    nexts = range(len(cells)) if nexts is None else nexts
    for there in nexts:
        if there == here or there == before:
            continue
        if gait == "slide" and figure["facing"] is not None:
            cos_alpha = turn_and_facing(figure, before, here, there)[1]
            if abs(cos_alpha) > 0.5 + 1e-9:
                continue
        if gait == "push" and before is not None:
            # an arc of .75 m that touches both displacements within half of each
            cos_phi = turn_and_facing(figure, before, here, there)[0]
            half = np.tan(np.arccos(np.clip(cos_phi, -1, 1)) / 2)
            sides = [np.hypot(*np.subtract(cells[a]["centre"], cells[b]["centre"])) for a, b in ((before, here), (here, there))]
            if 0.75 * half > min(sides) / 2 + 1e-9:
                continue
        for then, flight, steady in GAITS[gait].get(state, []):
            if gait != "push" and not takes(cells[there], then[0]):
                continue
            if foot and gait in ("hop", "court", "gallop", "slide") and then[0] not in (foot, "B"):
                continue
            if foot and gait == "leap" and then[-1] == "3" and state[-1] != "3" and then[0] != foot:
                continue
            yield there, then, flight, steady


def routes(figure, child, gait, foot):
    """The most likely route at z = 0 of each start cell and n."""
    kept = []
    order = dict(R=0, L=1, B=2)
    memo = {}

    def log_p(flight, steady, before, here, there):
        key = (flight, steady, before, here, there)
        if key not in memo:
            memo[key] = float(contact(figure, child, flight, steady, before, here, there, 0.0, log=True))
        return memo[key]

    for start, cell in enumerate(figure["cells"]):
        if not cell["start"]:
            continue
        states = [s for s in GAITS[gait] if len(s) == 1 and (gait == "push" or takes(cell, s[0]))]
        if gait == "leap" and cell.get("run_up"):
            states = [s + "2" for s in states]
        if foot and gait in ("hop", "court", "gallop", "slide"):
            states = [s for s in states if s[0] in (foot, "B")]
        # (before, here, state) -> (log p, [(order of foot, cell)], contacts)
        front = {(None, start, s): (0.0, [(order[s[0]], start)], []) for s in states}
        for n in range(1, LONGEST + 1):
            found = {}
            for (before, here, state), (log, path, contacts) in front.items():
                for there, then, flight, steady in followers(figure, gait, foot, before, here, state):
                    total = log + log_p(flight, steady, before, here, there)
                    if total == -np.inf:
                        continue
                    new = (total, path + [(order[then[0]], there)],
                           contacts + [(flight, steady, before, here, there, then[0])])
                    old = found.get((here, there, then))
                    if old is None or total > old[0] + TIE or (total > old[0] - TIE and new[1] < old[1]):
                        found[here, there, then] = new
            front = found
            done = [v for (_, here, state), v in front.items()
                    if figure["cells"][here]["end"] and (gait != "leap" or state[-1] == "3")]
            if done:
                best = max(v[0] for v in done)
                log, path, contacts = min((v for v in done if v[0] >= best - TIE), key=lambda v: v[1])
                kept.append(dict(n=n, cells=[c for _, c in path], contacts=["RLB"[o] for o, _ in path],
                                 steps=contacts))
    return kept


def quadrature(child, flights):
    """Nodes and weights over z, cut at +-4 and at each kink, renormalised."""
    cuts = list(np.linspace(-4, 4, 17))
    for flight in flights:
        _, m, tau = reach(child, flight, 0.0)
        if tau > 0 and -4 < -(1 - FLOOR) * m / tau < 4:
            cuts.append(-(1 - FLOOR) * m / tau)
    cuts = sorted(set(cuts))
    z, w = [], []
    for a, b in zip(cuts, cuts[1:]):
        z.append((a + b) / 2 + (b - a) / 2 * NODES)
        w.append((b - a) / 2 * NODE_WEIGHTS)
    z, w = np.concatenate(z), np.concatenate(w)
    w = w * np.exp(-z * z / 2)
    return z, w / w.sum()


def overlap(figure, here, there):
    """Two discs, or two upright convex outlines, that share ground."""
    if figure["family"] == "brook":
        return False  # water parts the banks
    a, b = figure["cells"][here], figure["cells"][there]
    if "radius" in a and "radius" in b:
        return np.hypot(*(np.array(a["centre"]) - b["centre"])) < a["radius"] + b["radius"] - 1e-5
    if "radius" in a or "radius" in b:
        disc, other = (a, b) if "radius" in a else (b, a)
        ring, c = np.array(other["outline"]), np.array(disc["centre"])
        far, inside = np.inf, True
        for p, q in zip(ring, np.roll(ring, -1, axis=0)):
            e = q - p
            t = np.clip((c - p) @ e / (e @ e), 0, 1)
            far = min(far, np.hypot(*(p + t * e - c)))
            inside &= (e[0] * (c - p)[1] - e[1] * (c - p)[0]) > 0
        return inside or far < disc["radius"] - 1e-5
    rings = [np.array(a["outline"]), np.array(b["outline"])]
    for ring in rings:
        for p, q in zip(ring, np.roll(ring, -1, axis=0)):
            out = np.array([q[1] - p[1], p[0] - q[0]]) / np.hypot(*(q - p))
            spans = [r @ out for r in rings]
            if min(spans[0].max() - spans[1].min(), spans[1].max() - spans[0].min()) <= 1e-5:
                return False
    return True


def practice(gait, flight, foot):
    """Shares of a contact: [(skill, foot, share)]; the run-up is no practice."""
    if gait == "leap" and flight == "run":
        return []
    if flight == "push":
        flight = SKILL.get(gait, gait)
    sided = flight in ("hop", "leap", "gallop", "slide")
    if sided and foot == "B":
        return [((flight, "R"), .5), ((flight, "L"), .5)]
    if flight == "mixed":
        halves = [(("hop", foot), .5)] if foot != "B" else [(("hop", "R"), .25), (("hop", "L"), .25)]
        return [(("jump", None), .5)] + halves
    return [((flight, foot if sided else None), 1.0)]


def on_line(line, along):
    """The point of a line at a distance along it."""
    line = np.array(line)
    at = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    return np.array([np.interp(along, at, line[:, 0]), np.interp(along, at, line[:, 1])])


def lane_routes(figure, child, gait, foot):
    """Every n up to N on each lane; p does not depend on z."""
    kept = []
    table = GAITS[gait]
    if any(len(v) != 1 for v in table.values()):
        return kept
    for lane in figure["lanes"]:
        state = "B" if "B" in table else "R"
        if foot and gait in ("hop", "gallop", "slide"):
            state = foot
        if gait == "leap" and foot:
            # the third landing is the first leap's: start on the other foot
            state = "L" if foot == "R" else "R"
        sd = child["scatter"] / 2
        half_foot = (0.65 if gait == "push" else 0.065 * child["stature"]) / 2
        half = lane["width"] / 2 - half_foot if lane["kind"] == "corridor" else lane["width"] / 2 + half_foot
        wide = max(0.0, 2 * ndtr(half / sd) - 1) if half > 0 else 0.0
        length = sum(p["length"] for p in lane["pieces"])
        along, pi, contacts, ps, total = 0.0, 1.0, [state[0]], [], 0.0
        while True:
            state, flight, steady = table[state][0]
            stride = 0.8 * reach(child, flight, 0.0)[1]
            along += stride
            if along > length + 1e-9 or stride <= 0:
                break
            at, radius = along, None
            for piece in lane["pieces"]:
                radius = piece["radius"]
                if at <= piece["length"] + 1e-9:
                    break
                at -= piece["length"]
            if gait == "push" and radius and radius < 0.75:
                break
            if gait == "slide" and figure["facing"] is not None:
                by = on_line(lane["line"], along) - on_line(lane["line"], along - stride)
                if abs(np.cos(np.arctan2(by[1], by[0]) - figure["facing"])) > 0.5 + 1e-9:
                    break
            q = child["skills"][steady or child["pushes"]]["steady"]
            if radius:
                v = stride * by_age(RATES[child["pushes"] if flight == "push" else flight], child["age"])
                q = q ** max(1.0, v * v / (2.45 * radius))
            pi *= q * wide
            ps.append((pi, flight, state[0]))
            contacts.append(state[0])
            total += stride
            if gait != "leap" or state[-1] == "3":
                kept.append(dict(n=len(ps), cells=[], contacts=list(contacts), lane=list(ps), length=total))
    return kept


def footfall(figure, child, gait, foot=None):
    """All that comes out for one figure, child and gait."""
    skill = SKILL.get(gait, gait)
    figure = dict(figure, landing=[landing(c, child["scatter"]) for c in figure["cells"]])
    wheels = child.get("means", "feet") in ("wheels", "walker")
    asked, gait = gait, "push" if wheels else gait
    can = child["skills"][skill]["can"]
    child = dict(child, pushes=skill)  # a push stands in for the skill, and has its figures
    kept = routes(figure, child, gait, foot) + lane_routes(figure, child, gait, foot)
    flights = sorted({step[0] for r in kept if "steps" in r for step in r["steps"]})
    z, w = quadrature(child, flights)
    some_half = np.zeros(len(GRID), bool)
    best = np.full(len(GRID), -1.0)
    chosen = np.full(len(GRID), -1)
    credits = []
    for number, route in enumerate(kept):
        if "steps" in route:
            at = lambda zz: [contact(figure, child, f, s, b, h, t, zz) for f, s, b, h, t, _ in route["steps"]]
            route["p"] = can * float(w @ np.prod(at(z), axis=0))
            route["pi_0"] = float(np.prod(at(0.0)))
            partial = np.cumprod(at(GRID), axis=0)
            d = np.array([turn_and_facing(figure, b, h, t)[2] for _, _, b, h, t, _ in route["steps"]])
            stretch = np.mean([dd / reach(child, f, GRID)[0] for dd, (f, *_) in zip(d, route["steps"])], axis=0)
            fair = (stretch >= 0.6 - TIE) & (not any(overlap(figure, h, t) for _, _, _, h, t, _ in route["steps"]))
            landed = [(f, foot_) for f, _, _, _, _, foot_ in route["steps"]]
            route["length"] = float(d.sum())
        else:
            partial = np.array([p for p, _, _ in route["lane"]])[:, None] * np.ones(len(GRID))
            route["p"], route["pi_0"] = can * partial[-1, 0], partial[-1, 0]
            fair = np.ones(len(GRID), bool)
            landed = [(f, foot_) for _, f, foot_ in route["lane"]]
        pi = np.round(partial[-1], 6)
        some_half |= pi >= 0.5
        well = fair & (pi >= 0.5) & (pi <= 0.9)
        credit = {}
        for j, (flight, foot_) in enumerate(landed):
            for what, share in practice(asked, flight, foot_):
                credit[what] = credit.get(what, 0.0) + share * partial[j]
        total = sum(credit.values())
        better = well & (total > best + TIE)
        best[better] = total[better]
        chosen[better] = number
        credits.append(credit)
    well = chosen >= 0
    hard = ~well & ~some_half
    easy = ~well & some_half
    out = dict(routes=kept, well=float(GRID_WEIGHTS[well].sum()), easy=float(GRID_WEIGHTS[easy].sum()),
               hard=float(GRID_WEIGHTS[hard].sum()), chosen=None, good_contacts={}, pass_s=None, walk_back_s=None,
               curve={})
    middle = len(GRID) // 2
    if well[middle]:
        out["chosen"] = int(chosen[middle])
        out["good_contacts"] = {k: float(v[middle]) for k, v in credits[chosen[middle]].items()}
    if well.any():
        at = min(np.flatnonzero(well), key=lambda i: (abs(i - middle), i))
        route = kept[chosen[at]]
        out["pass_s"] = route["n"] / by_age(RATES[asked], child["age"])
        out["walk_back_s"] = route["length"] / child["walk_speed"] + 2.0
        for i in np.flatnonzero(well):
            for what, values in credits[chosen[i]].items():
                out["curve"].setdefault(what, np.zeros(len(GRID)))[i] = values[i]
    return out


def share_of_practice(out, what, full):
    """Mean over z of well pitched x min(1, c / full)."""
    return float(GRID_WEIGHTS @ np.minimum(1.0, out["curve"].get(what, np.zeros(len(GRID))) / full))


# ---- children: the priors of the model's page, metres -----------------------------------
MEANS = dict(
    jump=([.31, .41, .52, .63], [.12] * 4), hop=([.21, .28, .36, .43], [.06, .09, .11, .13]),
    leap=([.50, .67, .80, .94], [.13, .13, .14, .15]), run=([.52, .62, .73, .85], [.08, .08, .09, .10]),
    walk=([.42, .46, .49, .52], [.05, .05, .06, .06]), gallop=([.61, .66, .70, .75], [.09, .10, .11, .11]),
    slide=([.52, .56, .60, .63], [.08, .08, .09, .09]), skip=([.51, .51, .54, .58], [.09] * 4),
)
CAN = dict(run=[.99, 1, 1, 1], jump=[.90, .98, 1, 1], gallop=[.50, .80, .92, .97], leap=[.40, .65, .85, .95],
           hop=[.25, .65, .90, .97], slide=[.30, .55, .80, .92], skip=[.03, .20, .50, .80], walk=[1, 1, 1, 1])
STEADY = dict(walk=[.99, .995, .995, .995], run=[.97, .98, .99, .99], jump=[.85, .92, .95, .97],
              hop=[.80, .88, .93, .95], leap=[.80, .88, .93, .95], gallop=[.80, .90, .94, .96],
              slide=[.80, .88, .93, .95], skip=[.60, .78, .88, .94])


def child(age, foot=None, stature=None, means="feet"):
    stature = stature or by_age([.955, 1.023, 1.09, 1.155], age)
    foot = foot or by_age([.156, .167, .174, .185], age)
    skills = {}
    for skill, (m, tau) in MEANS.items():
        skills[skill] = dict(m=by_age(m, age) + (foot if skill == "jump" else 0.0), tau=by_age(tau, age),
                             can=by_age(CAN[skill], age), steady=by_age(STEADY[skill], age))
    return dict(age=age, means=means, stature=stature, foot=foot, scatter=by_age([.07, .06, .05, .045], age), skills=skills,
                walk_speed=by_age([.95, 1.0, 1.08, 1.15], age))


# ---- figures --------------------------------------------------------------------------
def cell(centre, takes_="either", start=False, end=False, next_=None, radius=None, outline=None, run_up=False):
    c = dict(centre=[float(v) for v in centre], takes=takes_, start=start, end=end, next=next_, run_up=run_up)
    if outline is None:
        c["radius"] = radius
    else:
        c["outline"] = [[float(x), float(y)] for x, y in outline]
    return c


def box(x, y, wide, deep):
    return [(x - wide / 2, y - deep / 2), (x + wide / 2, y - deep / 2),
            (x + wide / 2, y + deep / 2), (x - wide / 2, y + deep / 2)]


def figure(cells=(), lanes=(), facing=None, family="drawn"):
    return dict(family=family, facing=facing, cells=list(cells), lanes=list(lanes))


def row(points, radius, takes_="either", ends="last", run_up=False):
    last = len(points) - 1
    return figure(cells=[
        cell(p, takes_, i == 0, i == last or ends == "every", [i + 1] if i < last else [], radius, run_up=run_up and i == 0)
        for i, p in enumerate(points)])
