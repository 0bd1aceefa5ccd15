//! Predicted against observed: whether the model's chances are what comes off.

use children::Skill;
use footfall::{Model, grid, odds};
use ledger::Ledger;
use rayon::prelude::*;

use crate::figures::{ENOUGH, WEIGHT};
use crate::learn::{Pupil, millionth};
use crate::rate::{Rate, log_beta};

/// Tries whose predicted chance lies in one tenth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bin {
    /// From this chance on.
    pub from: f64,
    /// To this one.
    pub to: f64,
    /// Tries.
    pub tries: u32,
    /// Good ones.
    pub good: u32,
    /// Children who made them.
    pub children: u32,
    /// Mean predicted chance of those tries.
    pub predicted: f64,
    /// Share that came off.
    pub observed: f64,
    /// The middle nine tenths of what the share behind the observed one can be. Tries of
    /// one child on one figure hang together; they count as [`Bin::independent`] tries.
    pub nine_tenths: [f64; 2],
    /// So many tries of as many children would tell as much.
    pub independent: f64,
}

/// How predictions held, and how they would be mended.
#[derive(Clone, Debug, PartialEq)]
pub struct Calibration {
    /// By chance, those without tries left out.
    pub bins: Vec<Bin>,
    /// All tries.
    pub tries: u32,
    /// All good ones.
    pub good: u32,
    /// Tries that were predicted to come off.
    pub expected: f64,
    /// logit(observed) = shift + slope logit(predicted), with standard errors over children;
    /// 0 and 1 where predictions hold. `None` with fewer tries than `learning.enough`, and
    /// where the tries leave it loose.
    pub line: Option<Line>,
}

/// A line through logits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// At a predicted chance of one half.
    pub shift: f64,
    /// Its standard error.
    pub shift_se: f64,
    /// Under 1 where predictions are too bold.
    pub slope: f64,
    /// Its standard error.
    pub slope_se: f64,
}

/// Tries of one child on one figure, and the chance that age and body gave them.
#[derive(Clone, Copy, Debug)]
struct Batch {
    child: usize,
    predicted: f64,
    /// Correlation of two such tries under the model: they share the child.
    together: f64,
    n: u32,
    good: u32,
}

/// Holds tries against what was predicted before any of them, of one skill or of all.
///
/// `pupils` are as for [`learn`](crate::learn()); the predictions are those of age and body.
pub fn calibration(
    pupils: &[Pupil],
    skill: Option<Skill>,
    model: &Model,
    ledger: &Ledger,
) -> Calibration {
    let weight = ledger.number(WEIGHT);
    let batches: Vec<Batch> = pupils
        .par_iter()
        .enumerate()
        .filter(|(_, pupil)| pupil.expected.child.count == 1)
        .map(|(child, pupil)| of(child, pupil, skill, model, weight))
        .flatten_iter()
        .collect();
    let count = |of: &dyn Fn(&Batch) -> u32| batches.iter().map(of).fold(0, u32::saturating_add);
    let tries = count(&|batch| batch.n);
    let enough = f64::from(tries) >= ledger.number(ENOUGH);
    Calibration {
        bins: bins(&batches),
        tries,
        good: count(&|batch| batch.good),
        expected: millionth(
            batches
                .iter()
                .map(|of| f64::from(of.n) * of.predicted)
                .sum(),
        ),
        line: if enough { line(&batches) } else { None },
    }
}

fn of(child: usize, pupil: &Pupil, skill: Option<Skill>, model: &Model, weight: f64) -> Vec<Batch> {
    let known = &pupil.expected.child;
    let tried = pupil
        .tries
        .iter()
        .filter(|tried| tried.n > 0 && skill.is_none_or(|skill| skill == tried.gait.can));
    tried
        .filter_map(|tried| {
            let ability = known.skills.get(&tried.gait.can)?;
            let odds = odds(&tried.figure, known, &tried.gait, tried.foot, model)?;
            let (a, b) = (weight * ability.steady, weight * (1.0 - ability.steady));
            // E[q^e] of Beta(a, b)
            let keeps = |contacts: f64| {
                if a > 0.0 && b > 0.0 {
                    libm::exp(log_beta(a + contacts, b) - log_beta(a, b))
                } else {
                    libm::pow(ability.steady, contacts)
                }
            };
            let (mut whole, mut clears, mut both) = (0.0, 0.0, 0.0);
            for (z, here) in grid().zip(&odds.clears) {
                let density = libm::exp(-0.5 * z * z);
                whole += density;
                clears += density * here;
                both += density * here * here;
            }
            let predicted = ability.can * keeps(odds.contacts) * clears / whole;
            let two = ability.can * keeps(2.0 * odds.contacts) * both / whole;
            let unsure = predicted * (1.0 - predicted);
            Some(Batch {
                child,
                predicted,
                together: if unsure > 0.0 {
                    ((two - predicted * predicted) / unsure).clamp(0.0, 1.0)
                } else {
                    0.0
                },
                n: tried.n,
                good: tried.good.min(tried.n),
            })
        })
        .collect()
}

fn bins(batches: &[Batch]) -> Vec<Bin> {
    const TENTHS: usize = 10;
    (0..TENTHS)
        .filter_map(|tenth| {
            let of = |batch: &&Batch| ((batch.predicted * 10.0) as usize).min(TENTHS - 1) == tenth;
            let here: Vec<&Batch> = batches.iter().filter(of).collect();
            let sum = |of: &dyn Fn(&Batch) -> f64| here.iter().map(|batch| of(batch)).sum::<f64>();
            let tries = sum(&|batch| f64::from(batch.n));
            if tries <= 0.0 {
                return None;
            }
            let good = sum(&|batch| f64::from(batch.good));
            let mut children: Vec<usize> = here.iter().map(|batch| batch.child).collect();
            children.dedup();
            // Kish's design effect, batch by batch.
            let independent = sum(&|batch| {
                let n = f64::from(batch.n);
                n / (1.0 + (n - 1.0) * batch.together)
            });
            let observed = good / tries;
            // Jeffreys' prior, a half of a try either way.
            let (a, b) = (
                observed * independent + 0.5,
                (1.0 - observed) * independent + 0.5,
            );
            let rate = Rate::beta(a, b);
            let told = rate.told(&vec![1.0; rate.values.len()]);
            Some(Bin {
                from: tenth as f64 / 10.0,
                to: (tenth + 1) as f64 / 10.0,
                tries: tries as u32,
                good: good as u32,
                children: children.len() as u32,
                predicted: millionth(sum(&|batch| f64::from(batch.n) * batch.predicted) / tries),
                observed: millionth(observed),
                nine_tenths: told.nine_tenths.map(millionth),
                independent: millionth(independent),
            })
        })
        .collect()
}

/// Logistic regression by Newton's method; standard errors from the children's scores
/// (the sandwich), for tries of one child hang together.
fn line(batches: &[Batch]) -> Option<Line> {
    /// A prediction is held so far from 0 and 1.
    const SLIP: f64 = 1e-6;
    let logit = |batch: &Batch| {
        let p = batch.predicted.clamp(SLIP, 1.0 - SLIP);
        libm::log(p / (1.0 - p))
    };
    let (mut shift, mut slope) = (0.0, 1.0);
    for round in 0..50 {
        let (mut score, mut inner) = ([0.0; 2], [0.0; 3]);
        let mut by_child: Vec<(usize, [f64; 2])> = Vec::new();
        for batch in batches {
            let x = logit(batch);
            let p = 1.0 / (1.0 + libm::exp(-(shift + slope * x)));
            let n = f64::from(batch.n);
            let off = f64::from(batch.good) - n * p;
            let of = [off, off * x];
            let v = n * p * (1.0 - p);
            score = [score[0] + of[0], score[1] + of[1]];
            inner = [inner[0] + v, inner[1] + v * x, inner[2] + v * x * x];
            match by_child.last_mut() {
                Some((child, sum)) if *child == batch.child => {
                    *sum = [sum[0] + of[0], sum[1] + of[1]];
                }
                _ => by_child.push((batch.child, of)),
            }
        }
        let det = inner[0] * inner[2] - inner[1] * inner[1];
        let loose = det <= 1e-9 * inner[0] * inner[2];
        if loose || det.is_nan() {
            return None;
        }
        let solve = |v: [f64; 2]| {
            [
                (inner[2] * v[0] - inner[1] * v[1]) / det,
                (inner[0] * v[1] - inner[1] * v[0]) / det,
            ]
        };
        let step = solve(score);
        if step[0].abs().max(step[1].abs()) < 1e-10 || round == 49 {
            let mut variance = [0.0; 2];
            for (_, score) in &by_child {
                let of = solve(*score);
                variance = [variance[0] + of[0] * of[0], variance[1] + of[1] * of[1]];
            }
            let children = by_child.len() as f64;
            let few = children / (children - 1.0);
            let line = Line {
                shift: millionth(shift),
                shift_se: millionth(libm::sqrt(few * variance[0])),
                slope: millionth(slope),
                slope_se: millionth(libm::sqrt(few * variance[1])),
            };
            let told = [line.shift, line.shift_se, line.slope, line.slope_se];
            return (round < 49 && told.iter().all(|part| part.is_finite())).then_some(line);
        }
        // No step takes a logit past what a try can tell.
        (shift, slope) = (
            shift + step[0].clamp(-2.0, 2.0),
            slope + step[1].clamp(-2.0, 2.0),
        );
    }
    None
}
