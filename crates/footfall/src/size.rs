//! The inverse: the free lengths of a family that suit as many children as possible.

use std::collections::BTreeMap;

use children::Child;
use marking::{Figure, LengthSpec};
use rayon::prelude::*;

use crate::contact::Masses;
use crate::figures::Model;
use crate::judged::pitch;
use crate::tread::Activity;
use crate::ways::Ways;

/// Where the ranges hold no more figures than this, all of them are held.
const ALL: usize = 100;
/// Else so many at most in a first grid.
const FIRST: usize = 25;
/// The best places of the first grid that are refined.
const STARTS: usize = 3;
/// Every fifth place of the grid of z.
const COARSE: usize = 5;
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
/// Lengths keep to their steps. Where the ranges hold at most 100 figures, all are held, and
/// the lengths found are the best. Else a grid of at most 25, even over the ranges, and from
/// its three best places steps along one length or two at once, halved when none helps, down
/// to one: not proven to be the best, for h may have several hills. A figure's shares serve
/// every group, and it is dropped as soon as the pupils left could not bring it past the best;
/// z is looked at in steps of .1, but for a pupil alone in all of its places, for there no
/// mean over pupils evens out what lies between. Among equals the smallest lengths win; the
/// same on any number of threads.
///
/// - `family`: the figure at these lengths, `None` where they make none; its paint and
///   envelope are not looked at
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
    let mut held = Held {
        family,
        counts: grid.iter().map(Vec::len).collect(),
        grid,
        pupils,
        activities,
        model,
        masses: pupils.iter().map(|_| Masses::default()).collect(),
        known: BTreeMap::new(),
    };
    crowds
        .iter()
        .map(|crowd| {
            let place = held.best(crowd)?;
            Some(held.lengths(&place))
        })
        .collect()
}

/// Figures of a family that were held against pupils.
struct Held<'a, F> {
    family: F,
    /// The lengths of each range, and how many.
    grid: Vec<Vec<f64>>,
    counts: Vec<usize>,
    pupils: &'a [&'a Child],
    activities: &'a [Activity],
    model: &'a Model,
    masses: Vec<Masses>,
    /// Of each figure h for every pupil, NaN where it was not asked for; `None` where there
    /// is no figure.
    known: BTreeMap<Place, Option<Vec<f64>>>,
}

impl<F: Fn(&[f64]) -> Option<Figure> + Sync> Held<'_, F> {
    fn lengths(&self, place: &Place) -> Vec<f64> {
        std::iter::zip(&self.grid, place)
            .map(|(lengths, number)| lengths[*number])
            .collect()
    }

    /// The place that suits a group best.
    fn best(&mut self, crowd: &Crowd) -> Option<Place> {
        let crowd: Crowd = crowd.iter().filter(|one| one.1 > 0.0).copied().collect();
        if crowd.is_empty() {
            return None;
        }
        let strides = strides(&self.counts);
        let first = even(&self.counts, &strides);
        let shares = self.shares(&first, &crowd, f64::NEG_INFINITY);
        let mut starts: Vec<(&Place, f64)> = std::iter::zip(&first, shares)
            .filter_map(|(place, share)| Some((place, share?)))
            .collect();
        // Those of equal share come smallest first, and the sort is stable.
        starts.sort_by(|(_, a), (_, b)| (b / SAME).round().total_cmp(&(a / SAME).round()));
        let mut best: Option<(Place, f64)> = None;
        for (place, reached) in starts.into_iter().take(STARTS) {
            let (mut place, mut reached) = (place.clone(), reached);
            let mut steps = halved(&strides);
            loop {
                let tries = around(&place, &self.counts, &steps);
                // what equals the best is asked for too: it may be smaller
                let told = self.shares(&tries, &crowd, reached - 2.0 * SAME);
                let mut better: Option<(&Place, f64)> = None;
                for (tried, share) in std::iter::zip(&tries, told) {
                    let (than, before) = better.unwrap_or((&place, reached));
                    let passes = |share: &f64| {
                        *share > before + SAME || *share > before - SAME && tried < than
                    };
                    if let Some(share) = share.filter(passes) {
                        better = Some((tried, share));
                    }
                }
                match better {
                    Some((there, more)) => (place, reached) = (there.clone(), more),
                    None if steps.iter().all(|step| *step == 1) => break,
                    None => steps = halved(&steps),
                }
            }
            let passes = |(than, before): &(Place, f64)| {
                reached > before + SAME || reached > before - SAME && place < *than
            };
            if best.as_ref().is_none_or(passes) {
                best = Some((place, reached));
            }
        }
        best.map(|(place, _)| place)
    }

    /// The weighted share of a group that is well pitched at each place; `None` where there is
    /// no figure, or none that could pass `bar`.
    fn shares(&mut self, tries: &[Place], crowd: &Crowd, bar: f64) -> Vec<Option<f64>> {
        let told: Vec<Option<Vec<f64>>> = tries
            .par_iter()
            .map(|place| self.held(place, crowd, bar))
            .collect();
        let whole: f64 = crowd.iter().map(|one| one.1).sum();
        std::iter::zip(tries, told)
            .map(|(place, told)| {
                let share = told.as_ref().map(|shares| {
                    let well = crowd.iter().map(|(at, weight)| weight * shares[*at]);
                    well.sum::<f64>() / whole
                });
                self.known.insert(place.clone(), told);
                share.filter(|share| !share.is_nan())
            })
            .collect()
    }

    /// What is known of a figure once it is held against a group: all of it, or as much as
    /// shows that it cannot pass `bar`.
    fn held(&self, place: &Place, crowd: &Crowd, bar: f64) -> Option<Vec<f64>> {
        let mut shares = match self.known.get(place) {
            Some(known) => known.clone()?,
            None => vec![f64::NAN; self.pupils.len()],
        };
        if crowd.iter().all(|(at, _)| !shares[*at].is_nan()) {
            return Some(shares);
        }
        let figure = (self.family)(&self.lengths(place))?;
        let ways = Ways::of(&figure, self.model);
        // a pupil that is not held yet may be well pitched at every z
        let may = |(at, weight): &(usize, f64)| match shares[*at] {
            share if share.is_nan() => *weight,
            share => weight * share,
        };
        let mut most: f64 = crowd.iter().map(may).sum();
        let wanted = bar * crowd.iter().map(|one| one.1).sum::<f64>();
        for (at, weight) in crowd {
            if most <= wanted {
                break;
            }
            if shares[*at].is_nan() {
                shares[*at] = self.well(&ways, *at);
                most -= weight * (1.0 - shares[*at]);
            }
        }
        Some(shares)
    }

    /// One pupil's h, as a mean over the activities.
    fn well(&self, ways: &Ways, at: usize) -> f64 {
        let child = self.pupils[at];
        let landings = self.masses[at].landings(ways, child);
        let stride = if self.pupils.len() > 1 { COARSE } else { 1 };
        let each = self
            .activities
            .iter()
            .map(|activity| pitch(ways, child, activity, &landings, self.model, stride).well);
        each.sum::<f64>() / self.activities.len() as f64
    }
}

/// Of each range every how many steps the first grid looks: all, where it may, and else
/// coarser where most places are.
fn strides(counts: &[usize]) -> Vec<usize> {
    let mut strides = vec![1; counts.len()];
    if counts.iter().product::<usize>() <= ALL {
        return strides;
    }
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
