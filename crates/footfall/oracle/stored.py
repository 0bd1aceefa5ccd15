"""Writes the figures that the Rust tests and the bench read: `python3 stored.py`.

`figures.json`: figures, children and all that comes out, unrounded, from `plain.py`.
`class.json`: 24 children, 12 markings and 8 activities, with the share well pitched of each;
the same set that `times.py` and the bench take the time of.
`owens_t.json`: scipy's Owen's T over a grid, and landing masses of polygons.

numpy 2.4.6, scipy 1.17.1.
"""

import json
import pathlib

import numpy as np
from scipy import integrate
from scipy.special import ndtr, owens_t

from plain import *

HERE = pathlib.Path(__file__).parent
rng = np.random.default_rng(20260901)


def piece(length, radius=None):
    return dict(length=float(length), radius=radius)


def lane(kind, width, line, pieces):
    return dict(kind=kind, width=width, line=[[float(x), float(y)] for x, y in line], pieces=pieces)


def straight(kind, width, length, turn=0.0):
    end = (length * np.cos(turn), length * np.sin(turn))
    return lane(kind, width, [(0, 0), end], [piece(length)])


def bent(kind, width, first, radius, angle, last):
    """A straight, an arc to the left and a straight."""
    steps = np.linspace(0, angle, 25)
    arc = [(first + radius * np.sin(t), radius * (1 - np.cos(t))) for t in steps]
    x, y = arc[-1]
    line = [(0, 0), *arc, (x + last * np.cos(angle), y + last * np.sin(angle))]
    return lane(kind, width, line, [piece(first), piece(radius * angle, radius), piece(last)])


def hub(ring, radius, starts="hub", size=6):
    at = [(ring * np.cos(i * 2 * np.pi / size), ring * np.sin(i * 2 * np.pi / size)) for i in range(size)]
    cells = [cell((0, 0), start=True, end=starts == "all", radius=radius)]
    return figure(cells + [cell(p, start=starts == "all", end=True, radius=radius) for p in at])


def free(count, side, radius):
    """Stones that nowhere overlap, any after any."""
    at = []
    while len(at) < count:
        p = rng.uniform(0, side, 2)
        if all(np.hypot(*(p - o)) > 2 * radius + 0.02 for o in at):
            at.append(p)
    return figure([cell(np.round(p, 6), start=i == 0, end=i > 0, radius=radius) for i, p in enumerate(at)])


def court(gap, both):
    """Single squares and pairs in turn, 8 rows."""
    cells = []
    for i in range(8):
        pair = i in both
        cells.append(cell((gap * i, 0), "both" if pair else "one", i == 0, i >= 3, [i + 1] if i < 7 else [],
                          outline=box(gap * i, 0, .3, .6 if pair else .3)))
    return figure(cells)


def brook(widths):
    cells = []
    for i, w in enumerate(widths):
        cells.append(cell((0.1 * i, -0.085), start=True, next_=[2 * i + 1], radius=.2, run_up=True))
        cells.append(cell((0.1 * i, float(w) + 0.135), end=True, next_=[], radius=.2))
    return figure(cells, family="brook")


def trail(count, stride, across):
    """Left and right footprints in turn, every one an end."""
    cells = []
    for i in range(count):
        y = across / 2 if i % 2 else -across / 2
        cells.append(cell((stride * i, y), "left" if i % 2 else "right", i == 0, i > 0, [i + 1] if i + 1 < count else [],
                          outline=box(stride * i, y, .34, .24)))
    return figure(cells)


def star(ring, radius, facing):
    at = [(ring * np.cos(i * np.pi / 4), ring * np.sin(i * np.pi / 4)) for i in range(8)]
    cells = [cell((0, 0), start=True, end=True, radius=radius)]
    return figure(cells + [cell(p, end=True, next_=[0], radius=radius) for p in at], facing=facing)


def zigzag(count, step, radius):
    return row([(step * i * 0.8, step * 0.6 * (i % 2)) for i in range(count)], radius, ends="every", run_up=True)


def random_figure():
    count = int(rng.integers(2, 7))
    cells = []
    for i in range(count):
        at = np.round(rng.uniform(0, 1.2, 2), 6)
        takes_ = str(rng.choice(["one", "both", "either", "either", "left", "right"]))
        next_ = None if rng.random() < .5 else sorted(int(n) for n in rng.choice(count, rng.integers(0, count), False))
        shape = dict(radius=float(np.round(rng.uniform(.1, .25), 3)))
        if rng.random() < .4:
            w, d = np.round(rng.uniform(.25, .5, 2), 3)
            shape = dict(outline=np.round(box(*at, w, d), 6))
        cells.append(cell(at, takes_, bool(rng.random() < .6), bool(rng.random() < .7), next_, run_up=bool(rng.random() < .4), **shape))
    return figure(cells, facing=None if rng.random() < .6 else float(np.round(rng.uniform(0, 6.28), 3)))


def plain_out(out):
    return dict(
        routes=[dict(n=r["n"], cells=r["cells"], contacts="".join(r["contacts"]), p=r["p"], pi_0=r["pi_0"],
                     length=r["length"]) for r in out["routes"]],
        well=out["well"], easy=out["easy"], hard=out["hard"], chosen=out["chosen"],
        good_contacts=[dict(skill=s, foot=f, contacts=c) for (s, f), c in sorted(out["good_contacts"].items(), key=str)],
        pass_s=out["pass_s"], walk_back_s=out["walk_back_s"],
        practice=[dict(skill=s, foot=f, full=full, e=share_of_practice(out, (s, f), full))
                  for s, f in sorted(out["curve"], key=str) for full in (0.5, 2.0, 6.0)])


def case(name, fig, kid, gait, foot=None):
    return dict(name=name, figure=fig, child=kid, gait=gait, foot=foot, out=plain_out(footfall(fig, kid, gait, foot)))


def the_class():
    """24 children, 12 markings, 8 activities."""
    kids = [child(float(np.round(a, 3)), stature=float(np.round(by_age([.955, 1.023, 1.09, 1.155], a) * s, 3)))
            for a, s in zip(np.linspace(3.0, 6.2, 24), np.tile([1.0, .96, 1.04], 8))]
    figures = [
        row([(.3 * i, 0) for i in range(7)], .15, ends="every"), zigzag(8, .45, .17),
        row([(x, 0) for x in (0, .45, .95, 1.5, 2.1)], .2, ends="every", run_up=True),
        brook(np.linspace(.2, .75, 24)), court(.4, (2, 4, 7)), hub(.35, .15), hub(.55, .175, starts="all"),
        free(9, 1.6, .175), trail(12, .45, .2), star(.45, .175, np.pi / 2),
        figure(lanes=[straight("corridor", .9, 9.0), straight("line", .1, 6.0)]),
        figure(lanes=[bent("corridor", .9, 3.0, 1.5, np.pi, 4.0), bent("line", .08, 2.0, 1.0, np.pi / 2, 2.0)]),
    ]
    activities = [("jump", None), ("hop", "R"), ("leap", "R"), ("gallop", "R"), ("slide", "L"), ("skip", None),
                  ("run", None), ("court", "L")]
    return kids, figures, activities


def cases():
    kids = [child(a) for a in (3.0, 4.4, 5.0, 6.0)]
    out = []
    for kid in kids:
        tag = f"{kid['age']:g} y"
        for gait, foot in (("hop", None), ("hop", "L"), ("jump", None), ("leap", "L"), ("court", None), ("skip", None)):
            out.append(case(f"hub, {gait} {foot}, {tag}", hub(.35, .15), kid, gait, foot))
            out.append(case(f"zigzag, {gait} {foot}, {tag}", zigzag(7, .42, .17), kid, gait, foot))
        for foot in (None, "R", "L"):
            out.append(case(f"court {foot}, {tag}", court(.38, (2, 4, 6)), kid, "court", foot))
            out.append(case(f"leaps on a row {foot}, {tag}", row([(.62 * i, 0) for i in range(7)], .2, ends="every"), kid, "leap", foot))
        for gait in ("jump", "leap"):
            out.append(case(f"brook, {gait}, {tag}", brook(np.linspace(.15, .7, 7)), kid, gait, "R"))
        out.append(case(f"star, {tag}", star(.42, .18, 1.2), kid, "jump"))
        out.append(case(f"star sideways, {tag}", star(.52, .18, np.pi / 2), kid, "slide", "R"))
        out.append(case(f"trail, {tag}", trail(11, .44, .2), kid, "walk"))
        lanes = [straight("corridor", .5, 7.3), bent("line", .1, 2.0, .8, np.pi / 2, 3.0), straight("corridor", .12, 5.0, .7)]
        for gait, foot in (("walk", None), ("run", None), ("hop", "L"), ("gallop", "R"), ("leap", "R"), ("skip", None), ("jump", None), ("slide", "L")):
            out.append(case(f"lanes, {gait} {foot}, {tag}", figure(lanes=lanes, facing=0.1 if gait == "slide" else None), kid, gait, foot))
        wheeled = dict(kid, means="wheels")
        out.append(case(f"wheels on a lane, {tag}", figure(lanes=[bent("corridor", .95, 2.0, 1.2, np.pi, 3.0)]), wheeled, "gallop", "R"))
        out.append(case(f"wheels on a row, {tag}", zigzag(6, .5, .3), wheeled, "jump"))
    for i in range(60):
        gait = ["hop", "jump", "court", "leap", "walk", "skip", "slide", "gallop"][i % 8]
        foot = [None, "R", "L"][i % 3] if gait in ("hop", "court", "leap", "slide", "gallop") else None
        out.append(case(f"drawn {i}, {gait}", random_figure(), child(float(np.round(rng.uniform(3, 6.3), 3))), gait, foot))
    return out


def shared(polygon, sigma):
    """Mass of Normal(0, sigma^2) inside a simple polygon, by the divergence theorem and
    adaptive quadrature: another way than Owen's."""
    total = 0.0
    for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1]):
        f = lambda t: ndtr((x0 + t * (x1 - x0)) / sigma) * np.exp(-((y0 + t * (y1 - y0)) / sigma) ** 2 / 2) / np.sqrt(2 * np.pi) * (y1 - y0) / sigma
        total += integrate.quad(f, 0, 1, epsabs=1e-13, epsrel=1e-13, limit=200)[0]
    return total


def tables():
    grid = [dict(h=h, a=a, t=float(owens_t(h, a))) for h in (0, 1e-9, .01, .1, .3, .7, 1, 1.6, 2.5, 4, 6, 9, 12)
            for a in (0, 1e-7, .05, .2, .5, .9, .999999, 1, 1.0001, 1.7, 3, 8, 40, 1e4, 1e9, -.4, -2.2)]
    masses = []
    for _ in range(60):
        count = int(rng.integers(3, 10))
        angles = np.sort(rng.uniform(0, 2 * np.pi, count))
        if np.max(np.diff(np.append(angles, angles[0] + 2 * np.pi))) > 3.0:
            continue
        far = rng.uniform(.05, .4, count)
        off = rng.uniform(-.15, .15, 2) * (rng.random() < .6)
        corners = [[float(f * np.cos(t) + off[0]), float(f * np.sin(t) + off[1])] for f, t in zip(far, angles)]
        sigma = float(rng.uniform(.03, .09))
        masses.append(dict(corners=corners, sigma=sigma, mass=float(shared(corners, sigma))))
    return dict(owens_t=grid, masses=masses)


if __name__ == "__main__":
    write = lambda name, data: (HERE / name).write_text(json.dumps(data, separators=(",", ":"), default=float) + "\n")
    write("owens_t.json", tables())
    write("figures.json", cases())
    kids, figures, activities = the_class()
    well = [[[footfall(f, k, g, s)["well"] for k in kids] for g, s in activities] for f in figures]
    write("class.json", dict(children=kids, figures=figures, activities=activities, well=well))
