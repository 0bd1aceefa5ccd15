//! The inverse: the free lengths of a family that suit as many children as possible.

use children::Child;
use marking::Figure;
use rayon::prelude::*;

use crate::contact::landings;
use crate::figures::Model;
use crate::tread::{Activity, pitch};
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
    let mut found = best_of(even(ranges), &share);
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
    pupils
        .par_iter()
        .map(|pupil| {
            let landings = landings(&ways, pupil.child);
            let mut mean = Pitch::default();
            for activity in activities {
                let pitch = pitch(&ways, pupil.child, activity, &landings, model);
                let part = 1.0 / activities.len() as f64;
                mean.well += part * pitch.well;
                mean.easy += part * pitch.easy;
                mean.hard += part * pitch.hard;
            }
            mean
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

/// An even grid, the smallest lengths first.
fn even(ranges: &[Range]) -> Vec<Vec<f64>> {
    let free = ranges
        .iter()
        .filter(|range| range.most > range.least)
        .count()
        .max(1);
    let mut places = PLACES;
    while places > 2 && (places as f64 - 1.0) > libm::pow(FIRST as f64, 1.0 / free as f64) {
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

fn millimetre(length: f64, range: &Range) -> f64 {
    ((length * 1000.0).round() / 1000.0).clamp(range.least, range.most)
}
