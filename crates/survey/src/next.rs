//! Readings worth taking next, by what they do to the covariance.
//!
//! A further distance with row a and sigma s takes Q to Q - Qaᵀ aQ / (s² + aQaᵀ). Where the
//! readings are blind the same works on Q + D² n nᵀ, with the motion n allowed to be D wide.

use std::collections::BTreeMap;

use crate::fit::Fit;
use crate::mirror::{Image, Settled, across};
use crate::model::{Place, apart, plus, scaled};
use crate::network::{Kind, Network, PointId, Reading, Tape};
use crate::report::{ellipse, fine};
use crate::result::{Help, NextReading};
use crate::shape;

/// How many are named.
const NAMED: usize = 3;

/// How far a motion that no reading sees may go (metres): wider than any yard, and still
/// small enough for a millimetre to show in its square.
const WIDE: f64 = 1e3;

/// A point that moves less (metres) is fixed.
const FIXED: f64 = 1.0;

/// Points that are tried as other ends of a reading to a loose point.
const TRIED: usize = 200;

/// Unchecked readings and groups that are minded at once: the worst.
const MINDED: usize = 12;

/// Readings, points and groups that call for help.
pub(crate) struct Wants<'a> {
    pub(crate) network: &'a Network,
    pub(crate) loose: &'a [bool],
    pub(crate) images: &'a [Image],
    /// Numbers of unchecked readings, and by place in the fit.
    pub(crate) unchecked: Vec<(usize, usize)>,
    /// Groups by place in the fit.
    pub(crate) groups: Vec<Vec<usize>>,
    /// A reading of so much redundancy is checked.
    pub(crate) enough: f64,
    /// A group whose w correlate less is told apart.
    pub(crate) alike: f64,
    pub(crate) tape: Tape,
    /// Sigma of the first reading of each taped pair, the lower point first.
    pub(crate) taped: BTreeMap<(PointId, PointId), f64>,
}

/// The taped pairs of a network.
pub(crate) fn taped(network: &Network) -> BTreeMap<(PointId, PointId), f64> {
    let mut taped = BTreeMap::new();
    for reading in &network.readings {
        if let Kind::Distance { from, to } = reading.kind {
            taped.entry(pair(from, to)).or_insert(reading.sigma);
        }
    }
    taped
}

fn pair(a: PointId, b: PointId) -> (PointId, PointId) {
    (a.min(b), a.max(b))
}

type Terms = ([(usize, f64); 6], usize);

struct State<'a> {
    fit: &'a Fit<'a>,
    q: Vec<f64>,
    size: usize,
}

impl State<'_> {
    fn between(&self, a: &Terms, b: &Terms) -> f64 {
        let row = |i: usize| &self.q[i * self.size..(i + 1) * self.size];
        a.0[..a.1]
            .iter()
            .map(|&(i, x)| {
                b.0[..b.1]
                    .iter()
                    .map(|&(j, y)| x * y * row(i)[j])
                    .sum::<f64>()
            })
            .sum()
    }

    /// Covariance of `a` and `b` once the whitened reading `c` is taken as well.
    fn after(&self, a: &Terms, b: &Terms, c: &Terms) -> f64 {
        self.between(a, b) - self.between(a, c) * self.between(b, c) / (1.0 + self.between(c, c))
    }

    fn take(&mut self, c: &Terms) {
        let gain = 1.0 / (1.0 + self.between(c, c));
        let qc: Vec<f64> = (0..self.size)
            .map(|i| {
                c.0[..c.1]
                    .iter()
                    .map(|&(j, y)| y * self.q[i * self.size + j])
                    .sum()
            })
            .collect();
        for (row, x) in self.q.chunks_exact_mut(self.size).zip(&qc) {
            for (q, y) in row.iter_mut().zip(&qc) {
                *q -= gain * x * y;
            }
        }
    }

    /// Long half-axis of a point's ellipse, once `c` is taken as well.
    fn axis(&self, p: PointId, c: Option<&Terms>) -> f64 {
        let unit = |axis: usize| -> Terms {
            let mut terms = [(0, 0.0); 6];
            match self.fit.system.slot(2 * p + axis) {
                Some(slot) => {
                    terms[0] = (slot, 1.0);
                    (terms, 1)
                }
                None => (terms, 0),
            }
        };
        let (x, y) = (unit(0), unit(1));
        let cov =
            |a: &Terms, b: &Terms| c.map_or_else(|| self.between(a, b), |c| self.after(a, b, c));
        ellipse(cov(&x, &x).max(0.0), cov(&x, &y), cov(&y, &y).max(0.0)).a
    }
}

/// The readings that help most, the best first: what fixes loose points, then what checks
/// the unchecked and separates groups.
pub(crate) fn next(fit: &Fit, wants: &Wants) -> Vec<NextReading> {
    let size = fit.system.size();
    let mut q = fit.q.clone();
    for motion in &fit.blind {
        let most = motion.iter().fold(0.0_f64, |most, m| most.max(m.abs()));
        for (row, x) in q.chunks_exact_mut(size.max(1)).zip(motion) {
            for (q, y) in row.iter_mut().zip(motion) {
                *q += WIDE * WIDE * (x / most) * (y / most);
            }
        }
    }
    let mut state = State { fit, q, size };
    let mut named = Vec::new();
    while named.len() < NAMED {
        let Some((next, terms)) = wants
            .fixes(&state, &named)
            .or_else(|| wants.checks(&state, &named))
        else {
            break;
        };
        state.take(&terms);
        named.push(next);
    }
    named
}

impl Wants<'_> {
    fn terms(&self, state: &State, from: PointId, to: PointId) -> Option<Terms> {
        let long = apart(state.fit.at[from], state.fit.at[to]);
        let kind = Kind::Distance { from, to };
        let taped = self.taped.get(&pair(from, to));
        let sigma = taped.copied().unwrap_or_else(|| self.tape.sigma(long));
        (long > 0.0).then(|| state.fit.terms(kind, sigma))
    }

    /// The reading that fixes most of what is loose.
    fn fixes(&self, state: &State, named: &[NextReading]) -> Option<(NextReading, Terms)> {
        let told = |p: PointId| named.iter().any(|n| n.helps == Help::Fixes(p));
        let points = self.network.points.len();
        let wide: Vec<PointId> = (0..points)
            .filter(|&p| self.loose[p] && state.axis(p, None) > FIXED)
            .take(TRIED)
            .collect();
        let mut best: Option<((usize, f64), NextReading, Terms)> = None;
        for &p in &wide {
            for q in (0..points)
                .filter(|&q| q != p && !(wide.contains(&q) && q < p))
                .take(TRIED)
            {
                if self.taped.contains_key(&pair(p, q)) {
                    continue;
                }
                let Some(terms) = self.terms(state, p, q) else {
                    continue;
                };
                let axes = wide.iter().map(|&w| state.axis(w, Some(&terms)));
                let still = axes.filter(|&a| a > FIXED).count();
                let axis = state.axis(p, Some(&terms));
                let key = (still, axis);
                if best.as_ref().is_none_or(|(least, ..)| key < *least) {
                    let next = NextReading {
                        from: p,
                        to: q,
                        helps: Help::Fixes(p),
                        before: f64::INFINITY,
                        after: if axis > FIXED {
                            f64::INFINITY
                        } else {
                            fine(axis)
                        },
                    };
                    best = Some((key, next, terms));
                }
            }
        }
        if let Some((_, next, terms)) = best {
            return Some((next, terms));
        }
        let image = self
            .images
            .iter()
            .find(|i| i.settled == Settled::Open && !told(i.part[0]));
        let (p, other, barred) = match image {
            Some(image) => (image.part[0], image.other, image.part.clone()),
            None => self.half_fixed(state, named)?,
        };
        // Of a point with two places: the reading by which these differ most.
        let tells = |q: PointId| {
            (apart(state.fit.at[q], state.fit.at[p]) - apart(state.fit.at[q], other)).abs()
        };
        let q = (0..points)
            .filter(|q| *q != p && !self.loose[*q] && !barred.contains(q))
            .max_by(|a, b| tells(*a).total_cmp(&tells(*b)).then(b.cmp(a)))?;
        let terms = self.terms(state, p, q)?;
        let (helps, before) = (Help::Fixes(p), f64::INFINITY);
        let after = fine(state.axis(p, Some(&terms)));
        Some((
            NextReading {
                from: p,
                to: q,
                helps,
                before,
                after,
            },
            terms,
        ))
    }

    /// A point that one named reading gives a second place to, where that is, and the points
    /// it is then taped to.
    fn half_fixed(
        &self,
        state: &State,
        named: &[NextReading],
    ) -> Option<(PointId, Place, Vec<PointId>)> {
        named.iter().find_map(|next| {
            let p = next.from;
            let others = |pairs: &mut dyn Iterator<Item = (PointId, PointId)>| -> Vec<PointId> {
                let of_p =
                    |(a, b): (PointId, PointId)| (a == p).then_some(b).or((b == p).then_some(a));
                pairs.filter_map(of_p).collect()
            };
            let mut ends = others(&mut self.taped.keys().copied());
            ends.extend(others(&mut named.iter().map(|n| (n.from, n.to))));
            let by_tape = |r: &&Reading| {
                r.kind.points().any(|q| q == p) && !matches!(r.kind, Kind::Distance { .. })
            };
            match (next.helps, ends.as_slice()) {
                (Help::Fixes(_), &[a, b]) if !self.network.readings.iter().any(|r| by_tape(&r)) => {
                    let at = &state.fit.at;
                    Some((p, across(at[p], at[a], at[b])?, ends))
                }
                _ => None,
            }
        })
    }

    /// The reading that gives most to unchecked readings and locked groups.
    fn checks(&self, state: &State, named: &[NextReading]) -> Option<(NextReading, Terms)> {
        let of = |place: usize| {
            let reading = state.fit.system.readings()[place];
            state.fit.terms(reading.kind, reading.sigma)
        };
        let spare = |terms: &Terms| 1.0 - state.between(terms, terms);
        let mut unchecked: Vec<(usize, Terms)> = self
            .unchecked
            .iter()
            .map(|&(n, place)| (n, of(place)))
            .collect();
        unchecked.retain(|(_, terms)| spare(terms) < self.enough);
        unchecked.sort_by(|a, b| spare(&a.1).total_cmp(&spare(&b.1)));
        unchecked.truncate(MINDED);
        let members = |group: &Vec<usize>| {
            group
                .iter()
                .take(MINDED / 2)
                .map(|&place| of(place))
                .collect()
        };
        let alike = |group: &[Terms], c: Option<&Terms>| {
            let cov = |a: &Terms, b: &Terms| {
                c.map_or_else(|| state.between(a, b), |c| state.after(a, b, c))
            };
            let spare: Vec<f64> = group.iter().map(|a| (1.0 - cov(a, a)).max(1e-9)).collect();
            let mut most = 0.0_f64;
            for (i, a) in group.iter().enumerate() {
                for (j, b) in group[..i].iter().enumerate() {
                    most = most.max(cov(a, b).abs() / (spare[i] * spare[j]).sqrt());
                }
            }
            most.min(1.0)
        };
        let groups: Vec<(usize, Vec<Terms>)> = (self.groups.iter().map(members).enumerate())
            .filter(|(_, group): &(usize, Vec<Terms>)| alike(group, None) > self.alike)
            .take(MINDED)
            .collect();
        let before_r: Vec<f64> = unchecked
            .iter()
            .map(|(_, t)| 1.0 - state.between(t, t))
            .collect();
        let before_g: Vec<f64> = groups.iter().map(|(_, g)| alike(g, None)).collect();
        let mut best: Option<(f64, NextReading, Terms)> = None;
        for (from, to) in self.pairs(state, named) {
            let Some(terms) = self.terms(state, from, to) else {
                continue;
            };
            let gains_r: Vec<f64> = unchecked
                .iter()
                .zip(&before_r)
                .map(|((_, t), before)| 1.0 - state.after(t, t, &terms) - before)
                .collect();
            let gains_g: Vec<f64> = groups
                .iter()
                .zip(&before_g)
                .map(|((_, g), before)| before - alike(g, Some(&terms)))
                .collect();
            let total: f64 = gains_r.iter().chain(&gains_g).sum();
            if best.as_ref().is_some_and(|(most, ..)| total <= *most) {
                continue;
            }
            let top = |gains: &[f64]| {
                (0..gains.len())
                    .reduce(|a, b| if gains[b] > gains[a] { b } else { a })
                    .map(|i| (gains[i], i))
            };
            let (helps, before, after) = match (top(&gains_r), top(&gains_g)) {
                (Some((r, i)), g) if g.is_none_or(|(g, _)| r >= g) => {
                    (Help::Checks(unchecked[i].0), before_r[i], before_r[i] + r)
                }
                (_, Some((g, i))) => (Help::Separates(groups[i].0), before_g[i], before_g[i] - g),
                _ => continue,
            };
            let next = NextReading {
                from,
                to,
                helps,
                before: fine(before),
                after: fine(after),
            };
            best = Some((total, next, terms));
        }
        best.filter(|(total, ..)| *total > 1e-3)
            .map(|(_, next, terms)| (next, terms))
    }

    /// Pairs that a tape can join: both fixed, and between corners along or inside the
    /// boundary. A pair already named is not named again.
    fn pairs(&self, state: &State, named: &[NextReading]) -> Vec<(PointId, PointId)> {
        let at: &[Place] = &state.fit.at;
        let ring: Vec<Place> = self.network.boundary.iter().map(|&p| at[p]).collect();
        let simple = ring.len() >= 3 && shape::crossings(&ring).is_empty();
        let points = self.network.points.len();
        let mut pairs = Vec::new();
        for a in (0..points).filter(|&p| !self.loose[p]) {
            for b in (a + 1..points).filter(|&p| !self.loose[p]) {
                let said = |n: &NextReading| (n.from, n.to) == (a, b) || (n.from, n.to) == (b, a);
                if named.iter().any(said) {
                    continue;
                }
                let taped = || self.taped.contains_key(&(a, b));
                if !simple || sees(&ring, at[a], at[b]) || taped() {
                    pairs.push((a, b));
                }
            }
        }
        pairs
    }
}

/// Whether the straight way between two places stays inside the ring: it crosses no side,
/// and its middle is inside.
fn sees(ring: &[Place], a: Place, b: Place) -> bool {
    let crosses =
        (0..ring.len()).any(|i| shape::crosses(a, b, ring[i], ring[(i + 1) % ring.len()]));
    !crosses && shape::inside(ring, scaled(plus(a, b), 0.5))
}
