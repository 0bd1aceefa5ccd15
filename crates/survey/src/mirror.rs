//! Mirror images: of the whole, and of parts that two points alone hold.
//!
//! Distances cannot tell a part from its image across the line through the two points that
//! hold it. A reading taken from elsewhere can; else the user's rough places; else the
//! order of the boundary, which must not cross itself; else that people tape inside the
//! yard, which is said aloud as an assumption. What is left has two places, and is loose.

use crate::frame::{Frame, nearest_to_start};
use crate::model::{Place, apart, dot, length, minus, plus, scaled, turned, value};
use crate::network::{Kind, Network, PointId, Reading, Walked};
use crate::shape;
use crate::solve::{Pull, System};
use crate::start::{Soft, WILD};

/// Advantage in bounded vTPv by which readings choose between two images, softened
/// readings first (they do not mind sigmas that promise too much), then as they are.
const SOFT_CHOOSE: f64 = 4.0;

/// The same as they are.
const READINGS_CHOOSE: f64 = 12.0;

/// Parts whose images are tried in all combinations; more are tried one by one.
const ALL_COMBINATIONS: usize = 8;

/// Sweeps over parts that are tried one by one.
const SWEEPS: usize = 4;

/// Share by which one image must lie nearer to the rough places than the other.
const CLEARLY_NEARER: f64 = 0.5;

/// How a part with two images was placed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Settled {
    /// By the order of the boundary, or the user's rough places.
    Told,
    /// Because people tape inside the yard.
    Assumed,
    /// By nothing.
    Open,
}

/// A part that readings cannot tell from its image.
#[derive(Clone, Debug)]
pub(crate) struct Image {
    pub(crate) part: Vec<PointId>,
    /// The line runs through them.
    pub(crate) across: [PointId; 2],
    /// Where the part's first point would be.
    pub(crate) other: Place,
    pub(crate) settled: Settled,
}

/// Settles all images, moving `at`. Gives the parts that readings did not settle; images
/// nearer to each other than `one_place` (metres) are one.
pub(crate) fn settle(
    network: &Network,
    frame: &Frame,
    readings: &[&Reading],
    at: &mut Vec<Place>,
    one_place: f64,
) -> Vec<Image> {
    let soft = Soft::new(at.len(), readings, &frame.fixed);
    let near = neighbours(frame, readings, at.len());
    let lone: Vec<_> = (0..at.len())
        .filter_map(|p| Some((vec![p], widest(&near[p], at)?)))
        .collect();
    let yard = Yard {
        network,
        frame,
        readings,
        soft,
        lone: lone.clone(),
    };
    let whole_open = !frame.known_rules && yard.turn_whole(at);
    let mut open: Vec<(Vec<PointId>, [PointId; 2])> = Vec::new();
    let mut candidates: Vec<(Vec<PointId>, [PointId; 2])> = lone;
    // Known points in a line see the rest on either side.
    let known: Vec<PointId> = (0..at.len())
        .filter(|&p| frame.known[p].is_some())
        .collect();
    candidates.extend(cut_off(&known, &near));
    let rest = (0..at.len())
        .filter(|&p| frame.known[p].is_none())
        .collect();
    candidates.extend(widest(&known, at).map(|line| (rest, line)));
    for (part, across) in candidates {
        if part
            .iter()
            .any(|&p| frame.fixed[2 * p] || frame.fixed[2 * p + 1])
        {
            continue;
        }
        let there = yard.flipped(at, &part, across);
        if part.iter().all(|&p| apart(at[p], there[p]) < one_place) {
            continue;
        }
        match yard.readings_choose(at, &there, &part) {
            Some(true) => *at = there,
            Some(false) => {}
            None => open.push((part, across)),
        }
    }
    yard.choose(at, &open, whole_open);
    if whole_open && yard.blame(at).1 {
        *at = yard.mirrored(at);
    }
    open.into_iter()
        .map(|(part, across)| {
            let there = yard.flipped(at, &part, across);
            let settled = yard.settled(at, &there, &part);
            Image {
                other: there[part[0]],
                part,
                across,
                settled,
            }
        })
        .collect()
}

/// Finds the images again after everything has settled.
pub(crate) fn place_others(at: &[Place], images: &mut [Image]) {
    for image in images {
        let [a, b] = image.across;
        if let Some(there) = across(at[image.part[0]], at[a], at[b]) {
            image.other = there;
        }
    }
}

/// A place across the line through two others.
pub(crate) fn across(p: Place, a: Place, b: Place) -> Option<Place> {
    let way = minus(b, a);
    let long = length(way);
    let n = turned(scaled(way, 1.0 / long));
    (long > 0.0).then(|| plus(p, scaled(n, -2.0 * dot(n, minus(p, a)))))
}

/// The whole across the x axis.
fn mirrored(at: &[Place]) -> Vec<Place> {
    at.iter().map(|p| [p[0], -p[1]]).collect()
}

struct Yard<'a> {
    network: &'a Network,
    frame: &'a Frame,
    readings: &'a [&'a Reading],
    soft: Soft<'a>,
    /// Single points, each with the two that hold it.
    lone: Vec<(Vec<PointId>, [PointId; 2])>,
}

impl Yard<'_> {
    /// The whole across the x axis. A lone point that is taped to one side of a line, as a
    /// drain by an offset, goes back to its side: it says where it is, not how the yard lies.
    fn mirrored(&self, at: &[Place]) -> Vec<Place> {
        let mut there = mirrored(at);
        for (part, line) in &self.lone {
            let signed =
                |r: &&Reading| matches!(r.kind, Kind::Left { point, .. } if part.contains(&point));
            if !self.readings.iter().any(signed) {
                continue;
            }
            let back = self.flipped(&there, part, *line);
            if self.readings_choose(&there, &back, part) == Some(true) {
                there = back;
            }
        }
        there
    }

    /// Mirrors the whole where offsets or rough places want it; whether they are silent.
    fn turn_whole(&self, at: &mut Vec<Place>) -> bool {
        let there = self.mirrored(at);
        let bounded = |at: &[Place]| self.readings.iter().map(|r| one(r, at)).sum::<f64>();
        let gain = bounded(at) - bounded(&there);
        if gain.abs() > READINGS_CHOOSE {
            if gain > 0.0 {
                *at = there;
            }
            return false;
        }
        let (here, image) = (self.misfit(at), self.misfit(&there));
        if here.max(image) > 0.0 && here.min(image) < CLEARLY_NEARER * here.max(image) {
            if image < here {
                *at = there;
            }
            return false;
        }
        true
    }

    /// Places beside the rough ones: as they are where known coordinates rule, else after
    /// the best shift and turn.
    fn beside_start(&self, at: &[Place]) -> Vec<Place> {
        let mut fitted = at.to_vec();
        if !self.frame.known_rules {
            nearest_to_start(self.network, &mut fitted, &vec![false; at.len()]);
        }
        fitted
    }

    /// Sum of squares to the rough places.
    fn misfit(&self, at: &[Place]) -> f64 {
        let fitted = self.beside_start(at);
        let rough = self.network.start.iter().filter(|(p, _)| **p < at.len());
        rough
            .map(|(&p, &s)| apart(fitted[p], s))
            .map(|d| d * d)
            .sum()
    }

    /// Whether the readings of a part want its image; `None` where they do not care.
    fn readings_choose(&self, at: &[Place], there: &[Place], part: &[PointId]) -> Option<bool> {
        let touching = |&n: &usize| self.readings[n].kind.points().any(|p| part.contains(&p));
        let touching: Vec<usize> = (0..self.readings.len()).filter(touching).collect();
        let gain: f64 = touching
            .iter()
            .map(|&n| self.soft.cost(n, at) - self.soft.cost(n, there))
            .sum();
        if gain.abs() > SOFT_CHOOSE {
            return Some(gain > 0.0);
        }
        let (at, there) = (self.eased(at, part), self.eased(there, part));
        let gain: f64 = touching
            .iter()
            .map(|&n| one(self.readings[n], &at) - one(self.readings[n], &there))
            .sum();
        (gain.abs() > READINGS_CHOOSE).then_some(gain > 0.0)
    }

    /// A lone point settled among its readings as they are.
    fn eased(&self, at: &[Place], part: &[PointId]) -> Vec<Place> {
        let mut there = at.to_vec();
        if let [p] = *part {
            let own = self.soft.touching[p]
                .iter()
                .map(|&n| self.readings[n])
                .collect();
            settle_alone(own, p, &mut there, Pull::Full);
        }
        there
    }

    /// `at` with a part across its line; a lone point is then settled among its readings.
    fn flipped(&self, at: &[Place], part: &[PointId], line: [PointId; 2]) -> Vec<Place> {
        let mut there = at.to_vec();
        for &p in part {
            match across(at[p], at[line[0]], at[line[1]]) {
                Some(place) => there[p] = place,
                None => return there,
            }
        }
        if let [p] = *part {
            let own = self.soft.touching[p]
                .iter()
                .map(|&n| &self.soft.readings[n])
                .collect();
            settle_alone(own, p, &mut there, WILD);
        }
        there
    }

    fn ring(&self, at: &[Place]) -> Vec<Place> {
        self.network.boundary.iter().map(|&p| at[p]).collect()
    }

    /// What speaks against these places: crossings of the boundary, whether it runs the
    /// wrong way round, and how many tapes and points lie outside.
    fn blame(&self, at: &[Place]) -> (usize, bool, usize) {
        let ring = self.ring(at);
        if ring.len() < 3 {
            return (0, false, 0);
        }
        let left = shape::signed_area(&ring) > 0.0;
        let wrong = left != (self.network.walked == Walked::Anticlockwise);
        (
            shape::crossings(&ring).len(),
            wrong,
            self.outside(&ring, at),
        )
    }

    fn outside(&self, ring: &[Place], at: &[Place]) -> usize {
        let corner: Vec<bool> = (0..at.len())
            .map(|p| self.network.boundary.contains(&p))
            .collect();
        let points = (0..at.len())
            .filter(|&p| !corner[p] && !shape::inside(ring, at[p]))
            .count();
        let n = ring.len();
        let is_side = |a: PointId, b: PointId| {
            let b_at = &self.network.boundary;
            (0..n).any(|i| {
                (b_at[i], b_at[(i + 1) % n]) == (a, b) || (b_at[i], b_at[(i + 1) % n]) == (b, a)
            })
        };
        let tapes = self.readings.iter().filter(|r| match r.kind {
            Kind::Distance { from, to } if corner[from] && corner[to] && !is_side(from, to) => {
                !shape::inside(ring, scaled(plus(at[from], at[to]), 0.5))
            }
            _ => false,
        });
        points + tapes.count()
    }

    /// How bad these places are, to be compared. While the whole may still be mirrored the
    /// way round says nothing.
    fn badness(&self, at: &[Place], whole_open: bool) -> (usize, bool, f64, usize) {
        let (crossings, wrong, outside) = self.blame(at);
        let rough = if whole_open {
            self.misfit(at).min(self.misfit(&self.mirrored(at)))
        } else {
            self.misfit(at)
        };
        (
            crossings,
            wrong && !whole_open,
            (rough * 1e6).round(),
            outside,
        )
    }

    /// The best combination of images.
    fn choose(&self, at: &mut Vec<Place>, open: &[(Vec<PointId>, [PointId; 2])], whole_open: bool) {
        let better = |a: &(usize, bool, f64, usize), b: &(usize, bool, f64, usize)| {
            (a.0, a.1)
                .cmp(&(b.0, b.1))
                .then(a.2.total_cmp(&b.2))
                .then(a.3.cmp(&b.3))
                .is_lt()
        };
        let mut best = self.badness(at, whole_open);
        if open.len() <= ALL_COMBINATIONS {
            let mut there = at.clone();
            // Gray's order: one image changes at a time.
            for step in 1_usize..1 << open.len() {
                let (part, across) = &open[step.trailing_zeros() as usize];
                there = self.flipped(&there, part, *across);
                let badness = self.badness(&there, whole_open);
                if better(&badness, &best) {
                    best = badness;
                    *at = there.clone();
                }
            }
            return;
        }
        for _ in 0..SWEEPS {
            let mut moved = false;
            for (part, across) in open {
                let there = self.flipped(at, part, *across);
                let badness = self.badness(&there, whole_open);
                if better(&badness, &best) {
                    best = badness;
                    *at = there;
                    moved = true;
                }
            }
            if !moved {
                break;
            }
        }
    }

    fn settled(&self, at: &[Place], there: &[Place], part: &[PointId]) -> Settled {
        let rough = |at: &[Place]| {
            let fitted = self.beside_start(at);
            part.iter()
                .filter_map(|p| self.network.start.get(p).map(|s| apart(fitted[*p], *s)))
                .fold((0, 0.0), |(n, sum), d| (n + 1, sum + d))
        };
        let ((n, here), (_, image)) = (rough(at), rough(there));
        let (ours, theirs) = (self.blame(at), self.blame(there));
        if (n > 0 && here < CLEARLY_NEARER * image) || (ours.0, ours.1) < (theirs.0, theirs.1) {
            Settled::Told
        } else if ours.2 < theirs.2 {
            Settled::Assumed
        } else {
            Settled::Open
        }
    }
}

fn one(reading: &Reading, at: &[Place]) -> f64 {
    let z = (value(reading.kind, at) - reading.value) / reading.sigma;
    WILD.of(z).0
}

/// Moves one point to where its readings are content, the others standing still.
fn settle_alone(own: Vec<&Reading>, p: PointId, at: &mut Vec<Place>, pull: Pull) {
    let mut held = vec![true; 2 * at.len()];
    held[2 * p] = false;
    held[2 * p + 1] = false;
    System::new(own, &held).settle(at, pull, 40);
}

/// Points that share a reading with each point, in order. Known points are one body: the
/// frame ties each to all others.
fn neighbours(frame: &Frame, readings: &[&Reading], points: usize) -> Vec<Vec<PointId>> {
    let mut near = vec![Vec::new(); points];
    for reading in readings {
        for a in reading.kind.points() {
            near[a].extend(reading.kind.points().filter(|&b| b != a));
        }
    }
    let known: Vec<PointId> = (0..points).filter(|&p| frame.known[p].is_some()).collect();
    for &a in &known {
        near[a].extend(known.iter().copied().filter(|&b| b != a));
    }
    for list in &mut near {
        list.sort_unstable();
        list.dedup();
    }
    near
}

/// The two of some points that lie farthest apart.
fn widest(points: &[PointId], at: &[Place]) -> Option<[PointId; 2]> {
    let first = *points.first()?;
    let far_from = |p: PointId| {
        points.iter().copied().fold(p, |far, q| {
            if apart(at[p], at[q]) > apart(at[p], at[far]) {
                q
            } else {
                far
            }
        })
    };
    let a = far_from(first);
    let b = far_from(a);
    (a != b).then_some([a, b])
}

/// Parts of more than one point that two points alone hold, with these two.
pub(crate) fn cut_off(
    known: &[PointId],
    near: &[Vec<PointId>],
) -> Vec<(Vec<PointId>, [PointId; 2])> {
    let mut found = Vec::new();
    for u in 0..near.len() {
        for v in cuts(near, u) {
            if v > u {
                found.extend(
                    parts(known, near, u, v)
                        .into_iter()
                        .map(|part| (part, [u, v])),
                );
            }
        }
    }
    found
}

/// The pieces that are left without `u` and `v`, of more than one point and held by both;
/// not the piece that carries the frame, or else the largest.
fn parts(known: &[PointId], near: &[Vec<PointId>], u: PointId, v: PointId) -> Vec<Vec<PointId>> {
    let mut seen = vec![false; near.len()];
    seen[u] = true;
    seen[v] = true;
    let mut pieces: Vec<Vec<PointId>> = Vec::new();
    for &start in near[u].iter() {
        if seen[start] {
            continue;
        }
        seen[start] = true;
        let mut piece = vec![start];
        let mut next = 0;
        while let Some(&p) = piece.get(next) {
            next += 1;
            for &q in &near[p] {
                if !seen[q] {
                    seen[q] = true;
                    piece.push(q);
                }
            }
        }
        piece.sort_unstable();
        if piece.iter().any(|p| near[v].contains(p)) {
            pieces.push(piece);
        }
    }
    let anchored = |piece: &Vec<PointId>| piece.iter().any(|p| known.contains(p));
    let carries = if !known.is_empty() {
        pieces.iter().position(anchored)
    } else {
        (0..pieces.len()).rev().max_by_key(|&i| pieces[i].len())
    };
    if let Some(main) = carries {
        pieces.remove(main);
    }
    pieces.retain(|piece| piece.len() > 1);
    pieces
}

/// Points that would cut the rest in two if `u` were gone (Tarjan's low points, without
/// recursion: a long chain must not exhaust the stack).
fn cuts(near: &[Vec<PointId>], u: PointId) -> Vec<PointId> {
    let n = near.len();
    let (mut order, mut low) = (vec![0; n], vec![0; n]);
    let mut cuts = vec![false; n];
    let mut clock = 0;
    for root in (0..n).filter(|&p| p != u) {
        if order[root] != 0 {
            continue;
        }
        clock += 1;
        (order[root], low[root]) = (clock, clock);
        let mut branches = 0;
        // Point, the one it was reached from, the next neighbour to look at.
        let mut path = vec![(root, u, 0)];
        while let Some(&mut (p, from, ref mut next)) = path.last_mut() {
            if let Some(&q) = near[p].get(*next) {
                *next += 1;
                if q == u || q == from {
                    continue;
                }
                if order[q] == 0 {
                    clock += 1;
                    (order[q], low[q]) = (clock, clock);
                    branches += usize::from(p == root);
                    path.push((q, p, 0));
                } else {
                    low[p] = low[p].min(order[q]);
                }
            } else {
                path.pop();
                if p != root {
                    low[from] = low[from].min(low[p]);
                    if from != root && low[p] >= order[from] {
                        cuts[from] = true;
                    }
                }
            }
        }
        cuts[root] = branches > 1;
    }
    (0..n).filter(|&p| cuts[p]).collect()
}
