//! The inverse: the free lengths of a family that suit as many children as possible.

use std::collections::BTreeMap;

use children::Child;
use marking::Figure;
use rayon::prelude::*;

use crate::contact::{Masses, landings};
use crate::figures::Model;
use crate::judged::pitch;
use crate::tread::Activity;
use crate::verdict::Pitch;
use crate::ways::Ways;

/// Figures of the first, even grid, at most.
const FIRST: usize = 400;
/// Places of the first grid along one length, at most.
const PLACES: usize = 33;
/// The search ends at steps of this, metres: no brush is finer.
const FINEST: f64 = 0.001;
/// The best places of the first grid that are refined.
const KEPT: usize = 3;
/// Shares nearer than this are equal, and the smaller lengths win.
const SAME: f64 = 1e-9;

/// The least and greatest of a free length, metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
}

/// A child, and how much it needs this figure.
#[derive(Clone, Copy, Debug)]
pub struct Pupil<'a> {
    /// The child.
    pub child: &'a Child,
    /// Its need; a count of children comes on top.
    pub weight: f64,
}

/// The lengths found.
#[derive(Clone, Debug, PartialEq)]
pub struct Sized {
    /// Metres, in the order of the ranges.
    pub lengths: Vec<f64>,
    /// The weighted share that is well pitched: mean over children and activities.
    pub share: f64,
    /// For each child the shares, as a mean over the activities.
    pub pitches: Vec<Pitch>,
}

/// The free lengths at which most children, weighted, are well pitched.
///
/// # Method
/// An even grid over the ranges, then from its best places steps along one length or two
/// at once, halved when none helps. Not proven to be the best: h may have several hills.
/// Lengths on a step of 1 mm; among equals the smallest win; the same on any number of
/// threads.
///
/// - `family`: the figure at these lengths, `None` where they make none
///
/// `None` when no lengths make a figure, or nobody weighs anything.
pub fn size(
    family: impl Fn(&[f64]) -> Option<Figure> + Sync,
    ranges: &[Range],
    pupils: &[Pupil],
    activities: &[Activity],
    model: &Model,
) -> Option<Sized> {
    let whole: f64 = pupils.iter().map(weight).sum();
    let fair = ranges
        .iter()
        .all(|range| range.least <= range.most && range.most.is_finite());
    let somebody = whole > 0.0;
    if !somebody || activities.is_empty() || !fair {
        return None;
    }
    let share = |lengths: &[f64]| -> Option<f64> {
        let pitches = pitches(&family(lengths)?, pupils, activities, model);
        let well = pupils
            .iter()
            .zip(&pitches)
            .map(|(pupil, pitch)| weight(pupil) * pitch.well);
        Some(well.sum::<f64>() / whole)
    };
    let mut found = best_of(even(ranges, FIRST), &share);
    found.truncate(KEPT);
    let widest = ranges
        .iter()
        .map(|range| range.most - range.least)
        .fold(0.0, f64::max);
    let mut best: Option<(Vec<f64>, f64)> = None;
    for (mut lengths, mut reached) in found {
        let mut step = widest / 8.0;
        while step >= FINEST {
            match best_of(around(&lengths, ranges, step), &share)
                .into_iter()
                .next()
            {
                Some((better, more)) if more > reached + SAME => {
                    (lengths, reached) = (better, more)
                }
                _ => step /= 2.0,
            }
        }
        if best.as_ref().is_none_or(|(_, most)| reached > most + SAME) {
            best = Some((lengths, reached));
        }
    }
    let (lengths, share) = best?;
    let pitches = pitches(&family(&lengths)?, pupils, activities, model);
    Some(Sized {
        lengths,
        share,
        pitches,
    })
}

fn weight(pupil: &Pupil) -> f64 {
    let weight = pupil.weight * f64::from(pupil.child.count);
    if weight.is_finite() {
        weight.max(0.0)
    } else {
        0.0
    }
}

/// Each child's shares on a figure.
fn pitches(
    figure: &Figure,
    pupils: &[Pupil],
    activities: &[Activity],
    model: &Model,
) -> Vec<Pitch> {
    let ways = Ways::of(figure, model);
    let pitch = |pupil: &Pupil| {
        let landings = landings(&ways, pupil.child);
        mean_pitch(&ways, pupil.child, &landings, activities, model, 1)
    };
    pupils.par_iter().map(pitch).collect()
}

/// One child's shares, as a mean over the activities.
fn mean_pitch(
    ways: &Ways,
    child: &Child,
    landings: &[f64],
    activities: &[Activity],
    model: &Model,
    stride: usize,
) -> Pitch {
    let mut mean = Pitch::default();
    for activity in activities {
        let pitch = pitch(ways, child, activity, landings, model, stride);
        let part = 1.0 / activities.len() as f64;
        mean.well += part * pitch.well;
        mean.easy += part * pitch.easy;
        mean.hard += part * pitch.hard;
    }
    mean
}

/// A group of children that a figure is sized for: numbers of pupils, and what each weighs
/// there.
pub type Crowd = Vec<(usize, f64)>;

/// The free lengths that suit each of several groups of one class, to the centimetre: what
/// a planner asks for, family by family.
///
/// # Method
/// As [`size`], but each figure is held once against every pupil and its shares serve all
/// groups; z is looked at in steps of .1, the first grid has at most 100 figures, and the
/// two best places of a group are refined. `None` for a group where no lengths make a
/// figure, or nobody weighs anything.
pub fn size_for(
    family: impl Fn(&[f64]) -> Option<Figure> + Sync,
    ranges: &[Range],
    pupils: &[&Child],
    crowds: &[Crowd],
    activities: &[Activity],
    model: &Model,
) -> Vec<Option<Vec<f64>>> {
    /// Every fifth place of the grid of z.
    const STRIDE: usize = 5;
    /// Figures of the first grid, at most.
    const FEW: usize = 100;
    const STARTS: usize = 2;
    /// Nobody tapes finer, metres.
    const TAPED: f64 = 0.01;
    let fair = ranges
        .iter()
        .all(|range| range.least <= range.most && range.most.is_finite());
    if activities.is_empty() || !fair {
        return vec![None; crowds.len()];
    }
    let mut known: BTreeMap<Vec<i64>, Option<Vec<f64>>> = BTreeMap::new();
    let masses: Vec<Masses> = pupils.iter().map(|_| Masses::default()).collect();
    let name = |lengths: &[f64]| -> Vec<i64> {
        lengths
            .iter()
            .map(|length| (length * 1000.0).round() as i64)
            .collect()
    };
    let mut ask = |tries: &[Vec<f64>], who: &[usize]| {
        // A pupil that was not asked for is NaN, and asked for when a group wants it.
        let wanted: Vec<(Vec<i64>, &Vec<f64>, Vec<usize>)> = tries
            .iter()
            .filter_map(|lengths| {
                let key = name(lengths);
                let missing = match known.get(&key) {
                    None => who.to_vec(),
                    Some(None) => Vec::new(),
                    Some(Some(shares)) => who
                        .iter()
                        .copied()
                        .filter(|at| shares[*at].is_nan())
                        .collect(),
                };
                (!missing.is_empty()).then_some((key, lengths, missing))
            })
            .collect();
        let told: Vec<Option<Vec<(usize, f64)>>> = wanted
            .par_iter()
            .map(|(_, lengths, missing)| {
                let figure = family(lengths)?;
                let ways = Ways::of(&figure, model);
                let share = |at: &usize| {
                    let landings = masses[*at].landings(&ways, pupils[*at]);
                    let pitch =
                        mean_pitch(&ways, pupils[*at], &landings, activities, model, STRIDE);
                    (*at, pitch.well)
                };
                Some(missing.iter().map(share).collect())
            })
            .collect();
        for ((key, ..), told) in wanted.into_iter().zip(told) {
            match told {
                None => drop(known.insert(key, None)),
                Some(told) => {
                    let shares = known.entry(key).or_insert(None);
                    let shares = shares.get_or_insert_with(|| vec![f64::NAN; pupils.len()]);
                    for (at, share) in told {
                        shares[at] = share;
                    }
                }
            }
        }
        tries
            .iter()
            .map(|lengths| known.get(&name(lengths)).cloned().flatten())
            .collect::<Vec<Option<Vec<f64>>>>()
    };
    let everyone: Vec<usize> = (0..pupils.len())
        .filter(|at| {
            crowds
                .iter()
                .flatten()
                .any(|one| one.0 == *at && one.1 > 0.0)
        })
        .collect();
    let first = taped(even(ranges, FEW), ranges, TAPED);
    let shares = ask(&first, &everyone);
    let places = libm::pow(FEW as f64, 1.0 / ranges.len().max(1) as f64).min(PLACES as f64);
    let widest = ranges
        .iter()
        .map(|range| range.most - range.least)
        .fold(0.0, f64::max);
    crowds
        .iter()
        .map(|crowd| {
            let who: Vec<usize> = crowd
                .iter()
                .filter(|one| one.1 > 0.0)
                .map(|one| one.0)
                .collect();
            let whole: f64 = crowd.iter().map(|one| one.1.max(0.0)).sum();
            let of = |shares: &Vec<f64>| {
                let well = crowd.iter().filter(|one| one.1 > 0.0);
                well.map(|(at, weight)| weight * shares[*at]).sum::<f64>() / whole
            };
            let mut starts: Vec<(&Vec<f64>, f64)> = std::iter::zip(&first, &shares)
                .filter_map(|(lengths, shares)| Some((lengths, of(shares.as_ref()?))))
                .collect();
            if who.is_empty() {
                return None;
            }
            // Those of equal share come smallest first, and the sort is stable.
            starts.sort_by(|(_, a), (_, b)| (b / SAME).round().total_cmp(&(a / SAME).round()));
            let mut best: Option<(Vec<f64>, f64)> = None;
            for (lengths, reached) in starts.into_iter().take(STARTS) {
                let (mut lengths, mut reached) = (lengths.clone(), reached);
                let mut step = widest / places / 2.0;
                while step >= TAPED / 2.0 {
                    let tries = taped(around(&lengths, ranges, step.max(TAPED)), ranges, TAPED);
                    let told = ask(&tries, &who);
                    let mut better: Option<(&Vec<f64>, f64)> = None;
                    for (lengths, shares) in std::iter::zip(&tries, &told) {
                        let Some(share) = shares.as_ref().map(of) else {
                            continue;
                        };
                        if share > better.map_or(reached, |better| better.1) + SAME {
                            better = Some((lengths, share));
                        }
                    }
                    match better {
                        Some((there, more)) => (lengths, reached) = (there.clone(), more),
                        None => step /= 2.0,
                    }
                }
                if best.as_ref().is_none_or(|(_, most)| reached > most + SAME) {
                    best = Some((lengths, reached));
                }
            }
            best.map(|best| best.0)
        })
        .collect()
}

/// The lengths that make a figure, the best share first, the smaller lengths among equals.
fn best_of(
    tries: Vec<Vec<f64>>,
    share: &(impl Fn(&[f64]) -> Option<f64> + Sync),
) -> Vec<(Vec<f64>, f64)> {
    let mut found: Vec<(Vec<f64>, f64)> = tries
        .into_par_iter()
        .filter_map(|lengths| share(&lengths).map(|s| (lengths, s)))
        .collect();
    // The tries come smallest first, and the sort is stable.
    found.sort_by(|(_, a), (_, b)| (b / SAME).round().total_cmp(&(a / SAME).round()));
    found
}

/// An even grid of at most so many figures, the smallest lengths first.
fn even(ranges: &[Range], figures: usize) -> Vec<Vec<f64>> {
    let free = ranges
        .iter()
        .filter(|range| range.most > range.least)
        .count()
        .max(1);
    let mut places = PLACES;
    while places > 2 && (places as f64 - 1.0) > libm::pow(figures as f64, 1.0 / free as f64) {
        places -= 1;
    }
    let mut tries = vec![Vec::new()];
    for range in ranges {
        let steps = if range.most > range.least {
            places - 1
        } else {
            0
        };
        let along = |step: usize| match steps {
            0 => range.least,
            _ => millimetre(
                range.least + (range.most - range.least) * step as f64 / steps as f64,
                range,
            ),
        };
        tries = tries
            .into_iter()
            .flat_map(|head: Vec<f64>| {
                (0..=steps).map(move |step| {
                    let mut lengths = head.clone();
                    lengths.push(along(step));
                    lengths
                })
            })
            .collect();
    }
    tries
}

/// One step along one length, or along two at once, the smallest lengths first.
fn around(lengths: &[f64], ranges: &[Range], step: f64) -> Vec<Vec<f64>> {
    let mut tries: Vec<Vec<f64>> = Vec::new();
    let moved = |moves: &[(usize, f64)]| {
        let mut moved = lengths.to_vec();
        for &(which, by) in moves {
            moved[which] = millimetre(lengths[which] + by, &ranges[which]);
        }
        moved
    };
    for i in 0..lengths.len() {
        for a in [-step, step] {
            tries.push(moved(&[(i, a)]));
            for j in i + 1..lengths.len() {
                for b in [-step, step] {
                    tries.push(moved(&[(i, a), (j, b)]));
                }
            }
        }
    }
    tries.retain(|tried| tried != lengths);
    tries.sort_by(|a, b| a.partial_cmp(b).unwrap_or(std::cmp::Ordering::Equal));
    tries.dedup();
    tries
}

/// Lengths on a coarser step, each once.
fn taped(mut tries: Vec<Vec<f64>>, ranges: &[Range], step: f64) -> Vec<Vec<f64>> {
    for lengths in &mut tries {
        for (length, range) in lengths.iter_mut().zip(ranges) {
            *length = ((*length / step).round() * step).clamp(range.least, range.most);
            *length = millimetre(*length, range);
        }
    }
    tries.dedup();
    tries
}

fn millimetre(length: f64, range: &Range) -> f64 {
    ((length * 1000.0).round() / 1000.0).clamp(range.least, range.most)
}
