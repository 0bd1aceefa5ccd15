//! One skill of one class: what is known of each child, and of what they share.

use footfall::grid;
use rayon::prelude::*;

use crate::effects::{Member, Normal, Settled, Shared, settle};
use crate::evidence::{Evidence, Table};
use crate::rate::Rate;

/// A child, before what it has shown counts.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// Number of its age, where it shares that.
    pub age: Option<usize>,
    /// Number of its group, where it shares that.
    pub group: Option<usize>,
    /// Mean reach, metres.
    pub m: f64,
    /// Its spread, metres.
    pub tau: f64,
    /// Probability that the child can.
    pub can: f64,
    /// Mean steadiness.
    pub steady: f64,
    /// What was seen.
    pub evidence: Evidence,
}

/// What does not differ from child to child.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Variances of what is shared.
    pub shared: Shared,
    /// Weight of the priors of `can` and steadiness, observations.
    pub weight: f64,
    /// Contacts that show the skill.
    pub shows: f64,
    /// Least reach, share of its mean.
    pub floor: f64,
}

/// A number that is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub sd: f64,
    /// The middle half.
    pub half: [f64; 2],
    /// The middle nine tenths.
    pub nine_tenths: [f64; 2],
}

impl Band {
    /// The middle of the law whose quantiles these are.
    pub(crate) fn of(mean: f64, sd: f64, quantile: impl Fn(f64) -> f64) -> Band {
        Band {
            mean,
            sd,
            half: [quantile(0.25), quantile(0.75)],
            nine_tenths: [quantile(0.05), quantile(0.95)],
        }
    }

    /// Nothing is unsure.
    pub(crate) fn sure(value: f64) -> Band {
        Band::of(value, 0.0, |_| value)
    }

    /// A normal law.
    pub(crate) fn normal(law: Normal) -> Band {
        /// Upper quartile and upper twentieth of the normal law (DLMF 7.17, scipy 1.17).
        const QUARTILE: f64 = 0.674_489_750_196_081_7;
        const TWENTIETH: f64 = 1.644_853_626_951_472_2;
        let sd = libm::sqrt(law.variance.max(0.0));
        let around = |z: f64| [law.mean - z * sd, law.mean + z * sd];
        Band {
            mean: law.mean,
            sd,
            half: around(QUARTILE),
            nine_tenths: around(TWENTIETH),
        }
    }

    /// `from + by` times it.
    pub fn moved(self, from: f64, by: f64) -> Band {
        let each = |ends: [f64; 2]| ends.map(|end| from + by * end);
        Band {
            mean: from + by * self.mean,
            sd: by * self.sd,
            half: each(self.half),
            nine_tenths: each(self.nine_tenths),
        }
    }
}

/// What is known of a child; reach and steadiness given that it can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Posterior {
    /// z: reach is m + tau z.
    pub z: Band,
    /// Probability that the child can.
    pub can: f64,
    /// The rate at which criteria are met.
    pub form: Band,
    /// Steadiness.
    pub steady: Band,
}

/// What is known after a class: of each case, each age and each group; effects in z.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// In the order of the cases.
    pub cases: Vec<Posterior>,
    /// Each age's effect.
    pub ages: Vec<Band>,
    /// Each group's.
    pub groups: Vec<Band>,
}

/// Fits one skill of a class.
///
/// - `sizes`: how many ages and groups there are
pub fn fit(cases: &[Case], sizes: (usize, usize), with: &Fit) -> Fitted {
    let z: Vec<f64> = grid().collect();
    let tables: Vec<Option<Told>> = cases
        .par_iter()
        .map(|case| (!case.evidence.is_empty()).then(|| Told::of(case, &z, with)))
        .collect();
    let members: Vec<Member> = cases
        .iter()
        .zip(&tables)
        .map(|(case, told)| Member {
            age: case.age,
            group: case.group,
            likelihood: told.as_ref().and_then(|told| told.of_z.as_deref()),
        })
        .collect();
    let Settled {
        ages,
        groups,
        before,
    } = settle(&members, sizes, with.shared, &z);
    let cases = (cases, &tables, before)
        .into_par_iter()
        .map(|(case, told, before)| match told {
            Some(told) => told.posterior(&z, before),
            None => Posterior {
                z: Band::normal(before),
                can: case.can,
                form: beta(case.can, with.weight).told(&[1.0; crate::legendre::N]),
                steady: beta(case.steady, with.weight).told(&[1.0; crate::legendre::N]),
            },
        })
        .collect();
    Fitted {
        cases,
        ages: ages.into_iter().map(Band::normal).collect(),
        groups: groups.into_iter().map(Band::normal).collect(),
    }
}

fn beta(mean: f64, weight: f64) -> Rate {
    Rate::beta(weight * mean, weight * (1.0 - mean))
}

/// What a child with evidence tells.
struct Told {
    table: Table,
    /// Form after the checks.
    form: Rate,
    /// The chance that the child can, by form and measurement alone.
    can: f64,
    /// Relative likelihood of z, can or not; `None` where it says nothing of z.
    of_z: Option<Vec<f64>>,
    cannot: f64,
}

impl Told {
    fn of(case: &Case, z: &[f64], with: &Fit) -> Told {
        let evidence = &case.evidence;
        let rho: Vec<f64> = z
            .iter()
            .map(|z| (case.m + case.tau * z).max(with.floor * case.m))
            .collect();
        let prior = |mean: f64| (with.weight * mean, with.weight * (1.0 - mean));
        let table = Table::of(evidence, &rho, prior(case.steady), with.shows);
        let met = evidence.met.min(evidence.checks);
        let (a, b) = prior(case.can);
        let (a, b) = (a + f64::from(met), b + f64::from(evidence.checks - met));
        let mean = if a + b > 0.0 { a / (a + b) } else { case.can };
        let shown = evidence.shown(with.shows);
        let can = match shown {
            Some(true) => 1.0,
            Some(false) => 0.0,
            None => mean,
        };
        let cannot = (1.0 - can) * libm::exp(table.cannot.min(700.0));
        let of_z: Vec<f64> = table
            .over_z
            .iter()
            .map(|here| can * here + cannot)
            .collect();
        let level = of_z.first().copied().unwrap_or(0.0);
        let flat = of_z.iter().all(|here| *here == level);
        Told {
            table,
            form: Rate::beta(a, b),
            can,
            of_z: (!flat).then_some(of_z),
            cannot,
        }
    }

    fn posterior(&self, z: &[f64], before: Normal) -> Posterior {
        let table = &self.table;
        let weights = densities(z, before);
        let whole = whole(&weights);
        let likely = std::iter::zip(&weights, &table.over_z)
            .map(|(weight, here)| weight * here)
            .sum::<f64>()
            / whole;
        let can = if self.can >= 1.0 {
            1.0
        } else {
            self.can * likely / (self.can * likely + self.cannot)
        };
        let of_steady: Vec<f64> = table
            .rows
            .iter()
            .map(|row| {
                std::iter::zip(row, &weights)
                    .map(|(here, w)| here * w)
                    .sum()
            })
            .collect();
        let of_form: Vec<f64> = self
            .form
            .values
            .iter()
            .map(|form| {
                // f where the child can, 1 - f where it cannot, each over its mean.
                let (yes, no) = (self.form_mean(), 1.0 - self.form_mean());
                let part = |share: f64, of: f64, mean: f64| {
                    if mean > 0.0 { share * of / mean } else { share }
                };
                part(can, *form, yes) + part(1.0 - can, 1.0 - form, no)
            })
            .collect();
        Posterior {
            z: if self.of_z.is_none() {
                Band::normal(before)
            } else {
                on_grid(z, &table.over_z, &weights)
            },
            can,
            form: self.form.told(&of_form),
            steady: table.steady.told(&of_steady),
        }
    }

    fn form_mean(&self) -> f64 {
        std::iter::zip(&self.form.values, &self.form.weights)
            .map(|(value, weight)| value * weight)
            .sum()
    }
}

/// The trapezoid rule's weights of a normal law on the grid, up to a factor.
fn densities(z: &[f64], law: Normal) -> Vec<f64> {
    let last = z.len().saturating_sub(1);
    z.iter()
        .enumerate()
        .map(|(place, z)| {
            let off = z - law.mean;
            let density = libm::exp(-0.5 * off * off / law.variance);
            if place == 0 || place == last {
                density / 2.0
            } else {
                density
            }
        })
        .collect()
}

fn whole(weights: &[f64]) -> f64 {
    weights.iter().sum()
}

/// Mean and variance of a normal law times a likelihood.
pub(crate) fn moments(z: &[f64], likelihood: &[f64], law: Normal) -> (f64, f64) {
    let (mut whole, mut first, mut second) = (0.0, 0.0, 0.0);
    for ((z, weight), here) in z.iter().zip(densities(z, law)).zip(likelihood) {
        let mass = weight * here;
        whole += mass;
        first += mass * z;
        second += mass * z * z;
    }
    let mean = first / whole;
    (mean, second / whole - mean * mean)
}

/// What is known of z after a likelihood on the grid.
fn on_grid(z: &[f64], likelihood: &[f64], weights: &[f64]) -> Band {
    let mass: Vec<f64> = std::iter::zip(weights, likelihood)
        .map(|(w, l)| w * l)
        .collect();
    let whole = whole(&mass);
    let mean = std::iter::zip(z, &mass)
        .map(|(z, mass)| z * mass)
        .sum::<f64>()
        / whole;
    let square = |(z, mass): (&f64, &f64)| (z - mean) * (z - mean) * mass;
    let variance = std::iter::zip(z, &mass).map(square).sum::<f64>() / whole;
    Band::of(mean, libm::sqrt(variance), |share| {
        // Each place stands for the half step on either side of it: the sum up to half of a
        // place's own mass lies on the place.
        let wanted = share * whole;
        let (mut sum, mut before) = (0.0, None);
        for (z, mass) in z.iter().zip(&mass) {
            let here = sum + mass / 2.0;
            if here >= wanted {
                return match before {
                    Some((low, at)) if here > low => at + (z - at) * (wanted - low) / (here - low),
                    _ => *z,
                };
            }
            before = Some((here, *z));
            sum += mass;
        }
        z.last().copied().unwrap_or(f64::NAN)
    })
}
