//! Places to start from, found from the readings alone.
//!
//! Points are placed one after another from a well-shaped pair, each where its readings to
//! placed points cross. Where they cross twice, both drafts live on until later readings
//! choose ([`grow`]). What only hangs together as a whole is posed as stiff bodies from
//! many random poses ([`hang`]). What then does not fit is tried elsewhere ([`repair`]). All of it on soft readings, whose bounded pull keeps a
//! misread tape from choosing.

mod grow;
mod hang;
mod loci;
mod repair;

use crate::limits::global_limit;
use crate::model::{Place, apart, value};
use crate::network::{Kind, Network, PointId, Reading};
use crate::solve::{Pull, System};

/// Past so many soft sigmas a reading loses its say.
pub(crate) const WILD: Pull = Pull::Bounded(4.0);

/// A draft's places drift while it grows: so much of a middling distance is forgiven.
const DRIFT: f64 = 2e-3;

/// The same for angles, radians.
const DRIFT_ANGLE: f64 = 1e-2;

/// Drafts that live at once: six undecided mirrors, all combinations.
const DRAFTS: usize = 64;

/// A later draft must cost so much less than an earlier one: the user's rough places go
/// first, and they also settle mirrors.
const CLEARLY: f64 = 0.5;

/// Share of good surveys whose places get a second look for nothing.
const MISFIT: f64 = 0.01;

/// Pairs from which growth is tried before the best draft is taken as it is.
const SEEDS: usize = 8;

/// The readings, softened, with what growth needs to know of them.
pub(crate) struct Soft<'a> {
    pub(crate) points: usize,
    pub(crate) readings: Vec<Reading>,
    /// Numbers of the readings that touch each point.
    pub(crate) touching: Vec<Vec<usize>>,
    /// Coordinates that known readings hold, by 2 · point + axis.
    pub(crate) held: &'a [bool],
}

/// Places of some points that fit each other.
#[derive(Clone, Debug)]
pub(crate) struct Draft {
    pub(crate) at: Vec<Place>,
    pub(crate) cost: f64,
}

impl<'a> Soft<'a> {
    pub(crate) fn new(points: usize, readings: &[&Reading], held: &'a [bool]) -> Soft<'a> {
        let mut lengths: Vec<f64> = readings
            .iter()
            .filter(|r| matches!(r.kind, Kind::Distance { .. }))
            .map(|r| r.value)
            .collect();
        lengths.sort_by(f64::total_cmp);
        let drift = DRIFT * lengths.get(lengths.len() / 2).copied().unwrap_or(1.0);
        let readings: Vec<Reading> = readings
            .iter()
            .map(|r| {
                let drift = if matches!(r.kind, Kind::Square { .. }) {
                    DRIFT_ANGLE
                } else {
                    drift
                };
                Reading {
                    sigma: libm::hypot(3.0 * r.sigma, drift),
                    at: None,
                    ..(*r).clone()
                }
            })
            .collect();
        let mut touching = vec![Vec::new(); points];
        for (number, reading) in readings.iter().enumerate() {
            for point in reading.kind.points() {
                touching[point].push(number);
            }
        }
        Soft {
            points,
            readings,
            touching,
            held,
        }
    }

    /// Whether all points of a reading are in `placed`.
    pub(crate) fn complete(&self, number: usize, placed: &[bool]) -> bool {
        self.readings[number].kind.points().all(|p| placed[p])
    }

    /// Readings that see only `placed` points.
    pub(crate) fn within(&self, placed: &[bool]) -> Vec<&Reading> {
        (0..self.readings.len())
            .filter(|&i| self.complete(i, placed))
            .map(|i| &self.readings[i])
            .collect()
    }

    /// Settles a draft among its own readings.
    pub(crate) fn refine(&self, draft: &mut Draft, placed: &[bool], rounds: usize) {
        draft.cost =
            System::new(self.within(placed), self.held).settle(&mut draft.at, WILD, rounds);
    }

    /// Bounded cost of one reading.
    pub(crate) fn cost(&self, number: usize, at: &[Place]) -> f64 {
        let reading = &self.readings[number];
        let z = (value(reading.kind, at) - reading.value) / reading.sigma;
        z * z / (1.0 + z * z / 16.0)
    }
}

/// Rough places for all points, in the frame of the known coordinates if `known` has
/// places, else in any frame. The mirror image is not settled.
pub(crate) fn find(
    network: &Network,
    readings: &[&Reading],
    known: &[Option<Place>],
    held: &[bool],
) -> Vec<Place> {
    let points = network.points.len();
    let soft = Soft::new(points, readings, held);
    let mut best: Option<(usize, Draft)> = None;
    let mut offer = |seeded: Vec<Option<Place>>| {
        let (placed, draft) = finished(&soft, seeded);
        let count = placed.iter().filter(|p| **p).count();
        let better = best.as_ref().is_none_or(|(most, found)| {
            count > *most || (count == *most && draft.cost < found.cost - CLEARLY)
        });
        let fits = draft.cost <= 2.0 + 0.1 * readings.len() as f64;
        if better {
            best = Some((count, draft));
        }
        fits
    };
    if network.start.len() >= 2 {
        let mut seeded = known.to_vec();
        for (&point, &place) in &network.start {
            if point < points && seeded[point].is_none() {
                seeded[point] = Some(place);
            }
        }
        offer(seeded);
    }
    if known.iter().flatten().count() >= 2 {
        offer(known.to_vec());
    } else {
        for (a, b, long) in seeds(&soft).into_iter().take(SEEDS) {
            let mut seeded = vec![None; points];
            seeded[a] = Some([0.0, 0.0]);
            seeded[b] = Some([long, 0.0]);
            if offer(seeded) {
                break;
            }
        }
    }
    let mut at = best.map_or_else(|| vec![[0.0, 0.0]; points], |(_, draft)| draft.at);
    let spare = readings.len().saturating_sub(2 * points.saturating_sub(1));
    repair::repair(&soft, readings, global_limit(MISFIT, spare.max(1)), &mut at);
    at
}

/// Grows a draft from its seed until every point has a place.
fn finished(soft: &Soft, seeded: Vec<Option<Place>>) -> (Vec<bool>, Draft) {
    let mut placed: Vec<bool> = seeded.iter().map(Option::is_some).collect();
    let at = seeded
        .into_iter()
        .map(|place| place.unwrap_or([0.0, 0.0]))
        .collect();
    let mut drafts = vec![Draft { at, cost: 0.0 }];
    loop {
        grow::grow(soft, &mut drafts, &mut placed);
        if !hang::hang(soft, &mut drafts, &mut placed) {
            break;
        }
    }
    let fixed = placed.clone();
    for draft in &mut drafts {
        soft.refine(draft, &placed, 60);
    }
    drafts.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    let mut draft = drafts.swap_remove(0);
    hang::dangle(soft, &mut draft.at, &mut placed);
    (fixed, draft)
}

/// Pairs to start from, the best first: many points that cross well from both.
fn seeds(soft: &Soft) -> Vec<(PointId, PointId, f64)> {
    let mut near: Vec<Vec<(PointId, f64)>> = vec![Vec::new(); soft.points];
    let mut lines: Vec<(PointId, PointId, f64)> = Vec::new();
    for reading in &soft.readings {
        match reading.kind {
            Kind::Distance { from, to } => {
                near[from].push((to, reading.value));
                near[to].push((from, reading.value));
            }
            Kind::Along { from, to, .. } | Kind::Left { from, to, .. } => {
                lines.push((from, to, reading.value.abs()));
            }
            _ => {}
        }
    }
    for list in &mut near {
        list.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        list.dedup_by_key(|(p, _)| *p);
    }
    let mut scored: Vec<(f64, PointId, PointId, f64)> = Vec::new();
    for a in 0..soft.points {
        for &(b, long) in near[a].iter().filter(|(b, _)| *b > a) {
            let mut score = 0.0;
            for &(c, to_a) in &near[a] {
                if let Ok(found) = near[b].binary_search_by_key(&c, |(p, _)| *p) {
                    let to_b = near[b][found].1;
                    let cosine = (to_a * to_a + to_b * to_b - long * long) / (2.0 * to_a * to_b);
                    score += (1.0 - cosine * cosine).max(0.0).sqrt();
                }
            }
            let pair = |f: PointId, t: PointId| (f.min(t), f.max(t)) == (a, b);
            score += 0.5 * lines.iter().filter(|(f, t, _)| pair(*f, *t)).count() as f64;
            scored.push((score, a, b, long));
        }
    }
    // A line nobody taped: its length is found later, a start is as long as what lies on it.
    for &(a, b, _) in &lines {
        if near[a].iter().all(|(p, _)| *p != b) {
            let on = lines.iter().filter(|(f, t, _)| (*f, *t) == (a, b));
            let (count, far) = on.fold((0, 1.0), |(n, far): (usize, f64), l| (n + 1, far.max(l.2)));
            scored.push((0.4 * count as f64, a, b, far));
        }
    }
    scored.sort_by(|x, y| y.0.total_cmp(&x.0).then((x.1, x.2).cmp(&(y.1, y.2))));
    scored.dedup_by_key(|s| (s.1, s.2));
    scored
        .into_iter()
        .map(|(_, a, b, long)| (a, b, long))
        .collect()
}

/// A length typical of the placed points: their mean distance from their centre.
pub(crate) fn spread(at: &[Place], placed: &[bool]) -> (Place, f64) {
    let inside = || at.iter().zip(placed).filter(|(_, p)| **p).map(|(a, _)| *a);
    let count = inside().count().max(1) as f64;
    let sum = inside().fold([0.0, 0.0], |s, a| [s[0] + a[0], s[1] + a[1]]);
    let centre = [sum[0] / count, sum[1] / count];
    (
        centre,
        inside().map(|a| apart(a, centre)).sum::<f64>() / count,
    )
}
