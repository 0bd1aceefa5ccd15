//! Weighted least squares over readings: damped Gauss-Newton on centred places.

use crate::cholesky::{Factor, Skyline};
use crate::model::{Place, Row, row, value};
use crate::network::{PointId, Reading};

/// Share of its diagonal that a pivot keeps in a network that fixes its unknown. A chain of
/// 400 points in a row keeps 1e-8, rounding leaves 1e-13 where nothing is fixed.
const VANISHING: f64 = 1e-10;

/// Steps shorter than this (metres) end the search: a thousandth of what is handed on.
const SETTLED: f64 = 1e-10;

/// Rounds after which a search that still moves is left: it then creeps along a direction
/// that the readings hardly see, which the tests name afterwards.
const ROUNDS: usize = 300;

/// The unknowns of some readings and the shape of their normal matrix.
pub(crate) struct System<'a> {
    readings: Vec<&'a Reading>,
    /// By 2 · point + axis; `None` for what is held and for points without readings.
    slots: Vec<Option<usize>>,
    first: Vec<usize>,
}

/// How much a residual of many sigmas may pull.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Pull {
    /// As least squares have it.
    Full,
    /// Cost z² / (1 + z²/c²): a wild reading loses its say (Geman and McClure).
    Bounded(f64),
}

impl Pull {
    /// Cost and weight at the standardised residual `z`.
    pub(crate) fn of(self, z: f64) -> (f64, f64) {
        match self {
            Pull::Full => (z * z, 1.0),
            Pull::Bounded(c) => {
                let share = 1.0 / (1.0 + z * z / (c * c));
                (z * z * share, share * share)
            }
        }
    }
}

impl<'a> System<'a> {
    /// `held` by 2 · point + axis; readings may touch any of the points.
    pub(crate) fn new(readings: Vec<&'a Reading>, held: &[bool]) -> System<'a> {
        let order = band_order(&readings, held.len() / 2);
        let mut slots = vec![None; held.len()];
        let mut count = 0;
        for point in order {
            for coordinate in [2 * point, 2 * point + 1] {
                if !held[coordinate] {
                    slots[coordinate] = Some(count);
                    count += 1;
                }
            }
        }
        let mut first: Vec<usize> = (0..count).collect();
        for reading in &readings {
            let touched = || {
                reading
                    .kind
                    .points()
                    .flat_map(|p| [2 * p, 2 * p + 1])
                    .filter_map(|c| slots[c])
            };
            if let Some(low) = touched().min() {
                for slot in touched() {
                    first[slot] = first[slot].min(low);
                }
            }
        }
        System {
            readings,
            slots,
            first,
        }
    }

    /// Slot of a coordinate (2 · point + axis).
    pub(crate) fn slot(&self, coordinate: usize) -> Option<usize> {
        self.slots[coordinate]
    }

    pub(crate) fn size(&self) -> usize {
        self.first.len()
    }

    pub(crate) fn readings(&self) -> &[&'a Reading] {
        &self.readings
    }

    /// Slots and derivatives over sigma.
    pub(crate) fn weighted(&self, row: &Row, sigma: f64) -> ([(usize, f64); 6], usize) {
        let mut out = [(0, 0.0); 6];
        let mut count = 0;
        for &(point, d) in row.terms() {
            for (axis, d) in d.into_iter().enumerate() {
                if let Some(slot) = self.slots[2 * point + axis] {
                    out[count] = (slot, d / sigma);
                    count += 1;
                }
            }
        }
        (out, count)
    }

    pub(crate) fn cost(&self, at: &[Place], pull: Pull) -> f64 {
        self.readings
            .iter()
            .map(|r| pull.of((value(r.kind, at) - r.value) / r.sigma).0)
            .sum()
    }

    /// Normal matrix and right side at `at`.
    pub(crate) fn normal(&self, at: &[Place], pull: Pull) -> (Skyline, Vec<f64>) {
        let mut matrix = Skyline::zeros(self.first.clone());
        let mut right = vec![0.0; self.size()];
        for reading in &self.readings {
            let z = (value(reading.kind, at) - reading.value) / reading.sigma;
            let (_, weight) = pull.of(z);
            let (terms, count) = self.weighted(&row(reading.kind, at), reading.sigma);
            for &(i, a) in &terms[..count] {
                right[i] -= weight * a * z;
                for &(j, b) in &terms[..count] {
                    if j <= i {
                        matrix.add(i, j, weight * a * b);
                    }
                }
            }
        }
        (matrix, right)
    }

    /// Moves `at` to the nearest minimum and gives its cost. Levenberg's damping keeps every
    /// step downhill, from however poor a start.
    pub(crate) fn settle(&self, at: &mut Vec<Place>, pull: Pull, rounds: usize) -> f64 {
        let mut cost = self.cost(at, pull);
        let mut damping = 1e-4;
        for _ in 0..rounds.min(ROUNDS) {
            let (matrix, right) = self.normal(at, pull);
            let mut moved = false;
            while damping < 1e12 {
                let mut damped = matrix.clone();
                for i in 0..self.size() {
                    damped.add(i, i, damping * matrix.diagonal(i));
                }
                let mut step = right.clone();
                damped.factor(1e-14).solve(&mut step);
                let there = self.stepped(at, &step);
                let cost_there = self.cost(&there, pull);
                let longest = step.iter().fold(0.0, |long: f64, s| long.max(s.abs()));
                if cost_there <= cost {
                    *at = there;
                    cost = cost_there;
                    damping = if damping < 1e-9 { 0.0 } else { damping * 0.1 };
                    moved = longest > SETTLED;
                    break;
                }
                // Uphill by rounding alone: this is the bottom.
                if longest < SETTLED {
                    break;
                }
                damping = if damping == 0.0 { 1e-8 } else { damping * 10.0 };
            }
            if !moved {
                break;
            }
        }
        cost
    }

    fn stepped(&self, at: &[Place], step: &[f64]) -> Vec<Place> {
        let along = |coordinate: usize| self.slots[coordinate].map_or(0.0, |slot| step[slot]);
        at.iter()
            .enumerate()
            .map(|(p, a)| [a[0] + along(2 * p), a[1] + along(2 * p + 1)])
            .collect()
    }

    /// The factored normal matrix at `at`, with the directions that no reading sees.
    pub(crate) fn rank(&self, at: &[Place]) -> (Factor, Vec<Vec<f64>>) {
        let (matrix, _) = self.normal(at, Pull::Full);
        let factor = matrix.factor(VANISHING);
        let blind = factor.blind(&matrix);
        (factor, blind)
    }
}

/// Points in the order of Cuthill and McKee, reversed: neighbours get near numbers and the
/// normal matrix stays close to its diagonal. Points without readings are left out.
fn band_order(readings: &[&Reading], points: usize) -> Vec<PointId> {
    let mut near = vec![Vec::new(); points];
    let mut read = vec![false; points];
    for reading in readings {
        for a in reading.kind.points() {
            read[a] = true;
            near[a].extend(reading.kind.points().filter(|&b| b != a));
        }
    }
    for list in &mut near {
        list.sort_unstable();
        list.dedup();
    }
    let mut starts: Vec<PointId> = (0..points).filter(|&p| read[p]).collect();
    starts.sort_by_key(|&p| (near[p].len(), p));
    let mut seen = vec![false; points];
    let mut order = Vec::new();
    for start in starts {
        if seen[start] {
            continue;
        }
        seen[start] = true;
        let mut next = order.len();
        order.push(start);
        while let Some(&point) = order.get(next) {
            next += 1;
            let mut around: Vec<PointId> =
                near[point].iter().copied().filter(|&p| !seen[p]).collect();
            around.sort_by_key(|&p| (near[p].len(), p));
            for p in around {
                seen[p] = true;
                order.push(p);
            }
        }
    }
    order.reverse();
    order
}
