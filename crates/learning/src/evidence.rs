//! What one child has shown of one skill, and how likely it is at each reach and steadiness.

use children::Reading;

use crate::rate::{Rate, log_beta};

/// Tries of one route.
#[derive(Clone, Debug, PartialEq)]
pub struct Attempt {
    /// The chance that every contact clears and lands, at the places of
    /// [`footfall::grid`].
    pub clears: Vec<f64>,
    /// Contacts that must keep the pattern.
    pub contacts: f64,
    /// Tries.
    pub n: u32,
    /// Good ones; more than `n` count as `n`.
    pub good: u32,
}

/// All of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Evidence {
    /// Tries.
    pub tries: Vec<Attempt>,
    /// Criteria looked at.
    pub checks: u32,
    /// Criteria met; more than were looked at count as all.
    pub met: u32,
    /// Counts of contacts: how many, and whether the pattern broke or the observer stopped.
    pub runs: Vec<(u32, bool)>,
    /// Measured bests, as readings of reach in metres.
    pub readings: Vec<Reading>,
    /// Whether a measurement has shown that the skill is there, or is not.
    pub can: Option<bool>,
}

/// pi is held so far from 0 and 1: no slip of a record makes a child impossible.
const SLIP: f64 = 1e-6;

impl Evidence {
    /// Whether nothing was seen.
    pub fn is_empty(&self) -> bool {
        *self == Evidence::default()
    }

    /// Whether anything tells of steadiness.
    pub(crate) fn of_steady(&self) -> bool {
        self.tries.iter().any(|tried| tried.n > 0) || !self.runs.is_empty()
    }

    /// Whether anything tells of `can`.
    pub(crate) fn of_can(&self) -> bool {
        self.of_steady() || self.checks > 0 || self.can.is_some() || !self.readings.is_empty()
    }

    /// What is shown beyond doubt: a try that came off, a run of the contacts that show it,
    /// a measured best. One of them outweighs a measurement that says otherwise.
    pub(crate) fn shown(&self, shows: f64) -> Option<bool> {
        let good = self.tries.iter().any(|tried| tried.good.min(tried.n) > 0);
        let long = self
            .runs
            .iter()
            .any(|(contacts, _)| f64::from(*contacts) >= shows);
        if good || long || !self.readings.is_empty() {
            Some(true)
        } else {
            self.can
        }
    }
}

/// The likelihood of what was seen, given that the child can, at each reach and steadiness.
#[derive(Debug)]
pub(crate) struct Table {
    /// Steadiness, after the counted contacts.
    pub steady: Rate,
    /// Relative likelihood of the rest, a row of the grid for each value of steadiness.
    pub rows: Vec<Vec<f64>>,
    /// Its mean over steadiness, on the grid.
    pub over_z: Vec<f64>,
    /// log of the likelihood of the same where the child cannot, on the scale of the rows.
    pub cannot: f64,
}

impl Table {
    /// - `rho`: reach at each place of the grid, metres
    /// - `prior`: parameters of the steadiness
    pub fn of(evidence: &Evidence, rho: &[f64], prior: (f64, f64), shows: f64) -> Table {
        let (mut a, mut b) = prior;
        for (contacts, broke) in &evidence.runs {
            a += f64::from(*contacts);
            b += if *broke { 1.0 } else { 0.0 };
        }
        let steady = Rate::beta(a, b);
        let unsure = prior.0 > 0.0 && prior.1 > 0.0;
        // The runs at large: how likely they are over the prior, against a child who cannot
        // and breaks at any count short of what shows the skill, one as likely as another.
        let runs = if unsure {
            log_beta(a, b) - log_beta(prior.0, prior.1)
        } else {
            0.0
        };
        let shows = shows.max(1.0);
        let short = evidence.runs.iter().map(|(contacts, broke)| {
            let left = shows - f64::from(*contacts);
            libm::log(if *broke { 1.0 } else { left.max(1.0) } / shows)
        });
        let mut cannot = short.sum::<f64>() - runs;
        let read: Vec<f64> = rho
            .iter()
            .map(|rho| {
                let squares = evidence.readings.iter().map(|reading| {
                    let off = (rho - reading.reach) / reading.sigma;
                    off * off
                });
                libm::exp(-0.5 * squares.sum::<f64>().min(1400.0))
            })
            .collect();
        let mut rows = vec![read; steady.values.len()];
        for tried in &evidence.tries {
            if tried.n == 0 || tried.clears.len() != rho.len() {
                continue;
            }
            for (row, q) in rows.iter_mut().zip(&steady.values) {
                tried.weigh(row, libm::pow(*q, tried.contacts));
            }
            cannot -= rescale(&mut rows);
        }
        let mut over_z = vec![0.0; rho.len()];
        for (row, weight) in rows.iter().zip(&steady.weights) {
            for (sum, here) in over_z.iter_mut().zip(row) {
                *sum += weight * here;
            }
        }
        Table {
            steady,
            rows,
            over_z,
            cannot,
        }
    }
}

impl Attempt {
    /// Multiplies a row by pi^good (1 - pi)^bad over its greatest value, `keeps` being
    /// q^contacts.
    fn weigh(&self, row: &mut [f64], keeps: f64) {
        let good = self.good.min(self.n);
        let bad = self.n - good;
        /// Powers of numbers down to [`SLIP`] that f64 holds.
        const MANY: u32 = 40;
        let pi = |clears: f64| (clears * keeps).clamp(SLIP, 1.0 - SLIP);
        if good <= MANY && bad <= MANY {
            for (here, clears) in row.iter_mut().zip(&self.clears) {
                let pi = pi(*clears);
                *here *= power(pi, good) * power(1.0 - pi, bad);
            }
        } else {
            let (good, bad) = (f64::from(good), f64::from(bad));
            let n = good + bad;
            let of = |share: f64| {
                if share > 0.0 {
                    share * libm::log(share / n)
                } else {
                    0.0
                }
            };
            let most = of(good) + of(bad);
            for (here, clears) in row.iter_mut().zip(&self.clears) {
                let pi = pi(*clears);
                *here *= libm::exp(good * libm::log(pi) + bad * libm::log1p(-pi) - most);
            }
        }
    }
}

fn power(base: f64, exponent: u32) -> f64 {
    let (mut base, mut left, mut power) = (base, exponent, 1.0);
    while left > 0 {
        if left & 1 == 1 {
            power *= base;
        }
        base *= base;
        left >>= 1;
    }
    power
}

/// Brings the greatest of the rows to 1; returns the log of what it was.
fn rescale(rows: &mut [Vec<f64>]) -> f64 {
    let most = rows.iter().flatten().copied().fold(0.0, f64::max);
    if most > 0.0 && most.is_finite() {
        rows.iter_mut().flatten().for_each(|here| *here /= most);
        libm::log(most)
    } else {
        // What was seen cannot be: it tells nothing.
        rows.iter_mut().flatten().for_each(|here| *here = 1.0);
        0.0
    }
}
