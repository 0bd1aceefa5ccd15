//! What children of one age and one group share, by expectation propagation.
//!
//! z_i = A_a + G_g + own. What child i's likelihood tells of its z is made normal in such a
//! way that mean and variance of its posterior are right given what all others tell; round
//! by round until nothing moves (Minka 2001, Rasmussen and Williams 2006, 3.6).

use ledger::Ledger;

use crate::figures::{GROUP_SHARE, SITE_SHRINK};
use crate::fit::moments;

/// Variances of what is shared, in shares of the whole spread of children of an age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shared {
    /// Of the age.
    pub age: f64,
    /// Of the group.
    pub group: f64,
}

impl Shared {
    /// Of a project's ledger.
    pub fn of(ledger: &Ledger) -> Shared {
        let whole = 1.0 / (1.0 + ledger.number(SITE_SHRINK).max(0.0));
        let group = ledger.number(GROUP_SHARE).clamp(0.0, 1.0);
        Shared {
            age: whole * (1.0 - group),
            group: whole * group,
        }
    }
}

/// A child of the effects: what it shares, and its likelihood on the grid.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Member<'a> {
    pub age: Option<usize>,
    pub group: Option<usize>,
    /// `None` where the child tells nothing.
    pub likelihood: Option<&'a [f64]>,
}

/// A normal law.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Normal {
    pub mean: f64,
    pub variance: f64,
}

/// What is known after the children: of each effect, and of each child's z before its own
/// likelihood is counted.
#[derive(Debug)]
pub(crate) struct Settled {
    pub ages: Vec<Normal>,
    pub groups: Vec<Normal>,
    pub before: Vec<Normal>,
}

/// A site is settled when a round moves it by no more; in units of the whole spread.
const STILL: f64 = 1e-10;
/// Far more rounds than classes take (about ten); the last is kept.
const ROUNDS: usize = 200;

/// Settles the effects of a class on one skill.
///
/// - `grid`: places of z
pub(crate) fn settle(
    members: &[Member],
    (ages, groups): (usize, usize),
    shared: Shared,
    grid: &[f64],
) -> Settled {
    let size = ages + groups;
    let rows: Vec<Vec<(usize, f64)>> = members
        .iter()
        .map(|member| {
            let age = member.age.map(|age| (age, libm::sqrt(shared.age)));
            let group = member
                .group
                .map(|group| (ages + group, libm::sqrt(shared.group)));
            age.into_iter().chain(group).collect()
        })
        .collect();
    let own: Vec<f64> = rows
        .iter()
        .map(|row| 1.0 - row.iter().map(|(_, share)| share * share).sum::<f64>())
        .collect();
    // What each child tells of its share of the effects: precision, and precision times mean.
    let mut sites = vec![(0.0, 0.0); members.len()];
    let mut settled = solve(&rows, &sites, size);
    let mut pace = 1.0;
    for _ in 0..ROUNDS {
        let mut wanted = sites.clone();
        for ((site, member), (row, own)) in
            wanted.iter_mut().zip(members).zip(rows.iter().zip(&own))
        {
            let (Some(likelihood), false) = (member.likelihood, row.is_empty()) else {
                continue;
            };
            let before = cavity(&settled, row, *site);
            let of_z = Normal {
                mean: before.mean,
                variance: before.variance + own,
            };
            let (mean, variance) = moments(grid, likelihood, of_z);
            if !(variance > 0.0 && mean.is_finite()) {
                continue;
            }
            let precision = 1.0 / variance - 1.0 / of_z.variance;
            let pull = mean / variance - of_z.mean / of_z.variance;
            let spread = 1.0 + precision * own;
            *site = (precision / spread, pull / spread);
        }
        let most = std::iter::zip(&sites, &wanted)
            .map(|(a, b)| (a.0 - b.0).abs().max((a.1 - b.1).abs()))
            .fold(0.0, f64::max);
        if most <= STILL {
            break;
        }
        // A step that leaves no normal law is halved.
        let next = loop {
            let step = |(from, to): (f64, f64)| from + pace * (to - from);
            let next: Vec<(f64, f64)> = std::iter::zip(&sites, &wanted)
                .map(|(a, b)| (step((a.0, b.0)), step((a.1, b.1))))
                .collect();
            let solved = solve(&rows, &next, size);
            if solved.is_some() {
                break Some((next, solved));
            }
            pace /= 2.0;
            if pace < 1e-3 {
                break None;
            }
        };
        let Some((next, solved)) = next else { break };
        (sites, settled) = (next, solved);
        // A parallel sweep can overshoot: from the second round on it goes most of the way.
        pace = pace.min(0.8);
    }
    let effect = |at: usize, share: f64| match &settled {
        Some((mean, cover)) => Normal {
            mean: share * mean[at],
            variance: share * share * cover[at][at],
        },
        None => Normal {
            mean: 0.0,
            variance: share * share,
        },
    };
    Settled {
        ages: (0..ages)
            .map(|at| effect(at, libm::sqrt(shared.age)))
            .collect(),
        groups: (0..groups)
            .map(|at| effect(ages + at, libm::sqrt(shared.group)))
            .collect(),
        before: rows
            .iter()
            .zip(&sites)
            .zip(&own)
            .map(|((row, site), own)| {
                let before = cavity(&settled, row, *site);
                Normal {
                    mean: before.mean,
                    variance: before.variance + own,
                }
            })
            .collect(),
    }
}

/// Mean and covariance of the effects, row by row; `None` where there is no normal law.
type Solved = Option<(Vec<f64>, Vec<Vec<f64>>)>;

/// What the sites leave of the effects, each with a prior of one.
fn solve(rows: &[Vec<(usize, f64)>], sites: &[(f64, f64)], size: usize) -> Solved {
    let mut precision = vec![vec![0.0; size]; size];
    for (at, row) in precision.iter_mut().enumerate() {
        row[at] = 1.0;
    }
    let mut pull = vec![0.0; size];
    for (row, site) in rows.iter().zip(sites) {
        for (one, share) in row {
            pull[*one] += share * site.1;
            for (other, of_other) in row {
                precision[*one][*other] += site.0 * share * of_other;
            }
        }
    }
    let cover = inverse(&precision)?;
    let mean = cover
        .iter()
        .map(|row| row.iter().zip(&pull).map(|(a, b)| a * b).sum())
        .collect();
    Some((mean, cover))
}

/// The inverse of a symmetric matrix by its Cholesky factor; `None` where it is not
/// positive definite.
fn inverse(matrix: &[Vec<f64>]) -> Option<Vec<Vec<f64>>> {
    let size = matrix.len();
    let mut factor = vec![vec![0.0; size]; size];
    for i in 0..size {
        for j in 0..=i {
            let done: f64 = (0..j).map(|k| factor[i][k] * factor[j][k]).sum();
            let left = matrix[i][j] - done;
            factor[i][j] = match i == j {
                true if left > 0.0 => libm::sqrt(left),
                true => return None,
                false => left / factor[j][j],
            };
        }
    }
    // Symmetric: a column is a row.
    let column = |of: usize| {
        let mut x = vec![0.0; size];
        for i in 0..size {
            let done: f64 = (0..i).map(|k| factor[i][k] * x[k]).sum();
            x[i] = (if i == of { 1.0 } else { 0.0 } - done) / factor[i][i];
        }
        for i in (0..size).rev() {
            let done: f64 = (i + 1..size).map(|k| factor[k][i] * x[k]).sum();
            x[i] = (x[i] - done) / factor[i][i];
        }
        x
    };
    Some((0..size).map(column).collect())
}

/// A child's share of the effects as all others tell it.
fn cavity(settled: &Solved, row: &[(usize, f64)], site: (f64, f64)) -> Normal {
    let Some((mean, cover)) = settled else {
        return Normal {
            mean: 0.0,
            variance: row.iter().map(|(_, share)| share * share).sum(),
        };
    };
    let (mut at, mut spread) = (0.0, 0.0);
    for (one, share) in row {
        at += share * mean[*one];
        for (other, of_other) in row {
            spread += share * of_other * cover[*one][*other];
        }
    }
    if spread <= 0.0 {
        return Normal {
            mean: at,
            variance: 0.0,
        };
    }
    // While sites still move, one can be as sure as all together.
    const LEAST: f64 = 1e-6;
    let variance = 1.0 / (1.0 / spread - site.0).max(LEAST);
    Normal {
        mean: variance * (at / spread - site.1),
        variance,
    }
}
