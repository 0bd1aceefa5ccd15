//! The inverse: the free lengths of a family that suit as many children as possible.

use std::collections::BTreeMap;

use children::Child;
use marking::{Figure, LengthSpec};
use rayon::prelude::*;

use crate::contact::Masses;
use crate::figures::Model;
use crate::tread::{Activity, pitch};
use crate::ways::Ways;

/// Figures of the first grid, at most; where the ranges hold no more, it holds them all.
const FIRST: usize = 100;
/// The best places of the first grid that are refined.
const STARTS: usize = 2;
/// Every fifth place of the grid of z.
const STRIDE: usize = 5;
/// Shares nearer than this are equal, and the smaller lengths win.
const SAME: f64 = 1e-9;

/// A free length that is looked for, metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
    /// Finest difference that is worth painting.
    pub step: f64,
}

impl From<&LengthSpec> for Range {
    fn from(spec: &LengthSpec) -> Range {
        Range {
            least: spec.least,
            most: spec.most,
            step: spec.step,
        }
    }
}

impl Range {
    /// The lengths that are looked at: steps from the least on, and the greatest. None, where
    /// the range is none or has a million steps: ten kilometres by the centimetre.
    pub fn lengths(&self) -> Vec<f64> {
        /// Of a step: a last one that is this short is the greatest itself.
        const SLACK: f64 = 1e-6;
        const MANY: f64 = 1e6;
        let steps = (self.most - self.least) / self.step;
        if self.step <= 0.0 || !(0.0..MANY).contains(&steps) {
            return Vec::new();
        }
        let whole = (0..(steps - SLACK).ceil() as usize)
            .map(|step| millionth(self.least + step as f64 * self.step));
        whole.chain(std::iter::once(self.most)).collect()
    }
}

/// A group of children that a figure is sized for: numbers of pupils, and what each weighs
/// there.
pub type Crowd = Vec<(usize, f64)>;

/// A figure of the grid: for each range the number of its length.
type Place = Vec<usize>;

/// The free lengths at which most children of a group, weighted, are well pitched, in the
/// mean over the activities: for each of several groups of one class.
///
/// # Method
/// Lengths keep to their steps. First a grid of at most 100 figures, even over the ranges;
/// where the ranges hold no more figures than that, it is all of them, and the lengths found
/// are the best. Else, from the two best places of a group, steps along one length or two
/// at once, halved when none helps, down to one: not proven to be the best, for h may have
/// several hills. Each figure is held once against every pupil and its shares serve all
/// groups; z is looked at in steps of .1. Among equals the smallest lengths win; the same on
/// any number of threads.
///
/// - `family`: the figure at these lengths, `None` where they make none
///
/// `None` for a group where no lengths make a figure, or nobody weighs anything.
pub fn size_for(
    family: impl Fn(&[f64]) -> Option<Figure> + Sync,
    ranges: &[Range],
    pupils: &[&Child],
    crowds: &[Crowd],
    activities: &[Activity],
    model: &Model,
) -> Vec<Option<Vec<f64>>> {
    let grid: Vec<Vec<f64>> = ranges.iter().map(Range::lengths).collect();
    if activities.is_empty() || grid.iter().any(Vec::is_empty) {
        return vec![None; crowds.len()];
    }
    let lengths = |place: &Place| -> Vec<f64> {
        std::iter::zip(&grid, place)
            .map(|(lengths, number)| lengths[*number])
            .collect()
    };
    let counts: Vec<usize> = grid.iter().map(Vec::len).collect();
    let mut known: BTreeMap<Place, Option<Vec<f64>>> = BTreeMap::new();
    let masses: Vec<Masses> = pupils.iter().map(|_| Masses::default()).collect();
    let mut ask = |tries: &[Place], who: &[usize]| {
        // A pupil that was not asked for is NaN, and asked for when a group wants it.
        let wanted: Vec<(&Place, Vec<usize>)> = tries
            .iter()
            .filter_map(|place| {
                let missing = match known.get(place) {
                    None => who.to_vec(),
                    Some(None) => Vec::new(),
                    Some(Some(shares)) => who
                        .iter()
                        .copied()
                        .filter(|at| shares[*at].is_nan())
                        .collect(),
                };
                (!missing.is_empty()).then_some((place, missing))
            })
            .collect();
        let told: Vec<Option<Vec<(usize, f64)>>> = wanted
            .par_iter()
            .map(|(place, missing)| {
                let figure = family(&lengths(place))?;
                let ways = Ways::of(&figure, model);
                let share = |at: &usize| {
                    let landings = masses[*at].landings(&ways, pupils[*at]);
                    (*at, well(&ways, pupils[*at], &landings, activities, model))
                };
                Some(missing.iter().map(share).collect())
            })
            .collect();
        for ((place, _), told) in wanted.into_iter().zip(told) {
            match told {
                None => drop(known.insert(place.clone(), None)),
                Some(told) => {
                    let shares = known.entry(place.clone()).or_insert(None);
                    let shares = shares.get_or_insert_with(|| vec![f64::NAN; pupils.len()]);
                    for (at, share) in told {
                        shares[at] = share;
                    }
                }
            }
        }
        tries
            .iter()
            .map(|place| known.get(place).cloned().flatten())
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
    let strides = strides(&counts);
    let first = even(&counts, &strides);
    let shares = ask(&first, &everyone);
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
            let mut starts: Vec<(&Place, f64)> = std::iter::zip(&first, &shares)
                .filter_map(|(place, shares)| Some((place, of(shares.as_ref()?))))
                .collect();
            if who.is_empty() {
                return None;
            }
            // Those of equal share come smallest first, and the sort is stable.
            starts.sort_by(|(_, a), (_, b)| (b / SAME).round().total_cmp(&(a / SAME).round()));
            let mut best: Option<(Place, f64)> = None;
            for (place, reached) in starts.into_iter().take(STARTS) {
                let (mut place, mut reached) = (place.clone(), reached);
                let mut steps = halved(&strides);
                loop {
                    let tries = around(&place, &counts, &steps);
                    let told = ask(&tries, &who);
                    let mut better: Option<(&Place, f64)> = None;
                    for (tried, shares) in std::iter::zip(&tries, &told) {
                        let Some(share) = shares.as_ref().map(of) else {
                            continue;
                        };
                        if share > better.map_or(reached, |better| better.1) + SAME {
                            better = Some((tried, share));
                        }
                    }
                    match better {
                        Some((there, more)) => (place, reached) = (there.clone(), more),
                        None if steps.iter().all(|step| *step == 1) => break,
                        None => steps = halved(&steps),
                    }
                }
                if best.as_ref().is_none_or(|(_, most)| reached > most + SAME) {
                    best = Some((place, reached));
                }
            }
            best.map(|(place, _)| lengths(&place))
        })
        .collect()
}

/// One child's h, as a mean over the activities.
fn well(
    ways: &Ways,
    child: &Child,
    landings: &[f64],
    activities: &[Activity],
    model: &Model,
) -> f64 {
    let each = activities
        .iter()
        .map(|activity| pitch(ways, child, activity, landings, model, STRIDE).well);
    each.sum::<f64>() / activities.len() as f64
}

/// Of each range every how many steps the first grid looks: all, where it may, and else
/// coarser where most places are.
fn strides(counts: &[usize]) -> Vec<usize> {
    let mut strides = vec![1; counts.len()];
    loop {
        let places = std::iter::zip(counts, &strides)
            .map(|(count, stride)| (count - 1).div_ceil(*stride) + 1);
        let few = places.clone().product::<usize>() <= FIRST;
        match places.enumerate().max_by_key(|(_, places)| *places) {
            // of more than its two ends there is something to leave out
            Some((widest, places)) if !few && places > 2 => strides[widest] += 1,
            _ => return strides,
        }
    }
}

/// Every so many steps of each range, and its last: the smallest lengths first.
fn even(counts: &[usize], strides: &[usize]) -> Vec<Place> {
    let mut places = vec![Place::new()];
    for (count, stride) in std::iter::zip(counts, strides) {
        let last = count - 1;
        let along = (0..last).step_by(*stride).chain(std::iter::once(last));
        places = places
            .into_iter()
            .flat_map(|head| {
                along.clone().map(move |number| {
                    let mut place = head.clone();
                    place.push(number);
                    place
                })
            })
            .collect();
    }
    places
}

/// Half of as many steps, one at the least.
fn halved(steps: &[usize]) -> Vec<usize> {
    steps.iter().map(|step| step.div_ceil(2)).collect()
}

/// So many steps along one length, or along two at once, the smallest lengths first.
fn around(place: &Place, counts: &[usize], steps: &[usize]) -> Vec<Place> {
    let mut tries: Vec<Place> = Vec::new();
    let moved = |moves: &[(usize, bool)]| {
        let mut moved = place.clone();
        for &(which, on) in moves {
            moved[which] = if on {
                (moved[which] + steps[which]).min(counts[which] - 1)
            } else {
                moved[which].saturating_sub(steps[which])
            };
        }
        moved
    };
    for i in 0..place.len() {
        for a in [false, true] {
            tries.push(moved(&[(i, a)]));
            for j in i + 1..place.len() {
                for b in [false, true] {
                    tries.push(moved(&[(i, a), (j, b)]));
                }
            }
        }
    }
    tries.retain(|tried| tried != place);
    tries.sort_unstable();
    tries.dedup();
    tries
}

fn millionth(length: f64) -> f64 {
    (length * 1e6).round() / 1e6
}
