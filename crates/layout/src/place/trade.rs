//! Sets near the best one, packed where they promise most: the search of cramped ground.
//!
//! Up to three figures of the best layout go (of many, two) and up to two come. Of all such
//! sets that may be worth more, a few at a time are packed: those that gain much for the
//! ground they take and whose families have not failed often. The best of those that lie is
//! the new best layout.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use super::search::{FEW, Layout, Progress, Searcher};
use crate::programme::{Ceiling, Unsolved};

/// Sets that are packed side by side; a count of its own, never that of the threads.
const BATCH: usize = 8;

/// Of the free ground: a set that takes so much more of it is held e times less likely to
/// lie. Nobody knows how much that is; half of a batch goes by each of these.
const LIKELY: [f64; 2] = [0.03, 0.08];

/// How much less a set promises for each time that it, or one of its families, failed.
const FADES: f64 = 0.5;

/// Figures to lay until a set is given up, the first time; each time later so many more.
const LAYINGS: usize = 60;

/// A figure laid counts once in a set of so many, and more in a larger one by the square: each
/// other figure casts a shadow, and each two may be pushed out.
const AMONG: usize = 4;

/// Solving for the value of a set takes as long as so many figures laid.
const SOLVING: usize = 8;

/// A set near the best one.
struct Offer {
    set: Vec<usize>,
    /// The families of its figures, as numbers.
    families: Vec<usize>,
    /// Of the free ground.
    share: f64,
    /// No less than Z of it.
    over: f64,
}

/// What has become of sets so far.
#[derive(Default)]
struct Tried {
    values: BTreeMap<Vec<usize>, f64>,
    failed: BTreeMap<Vec<usize>, u32>,
    families: BTreeMap<Vec<usize>, u32>,
}

impl Tried {
    fn times(&self, set: &[usize]) -> u32 {
        self.failed.get(set).copied().unwrap_or(0)
    }

    /// What a set promises over a value.
    fn promise(&self, offer: &Offer, least: f64, likely: f64) -> f64 {
        let worth = self.values.get(&offer.set).unwrap_or(&offer.over);
        let alike = self.families.get(&offer.families).copied().unwrap_or(0);
        let failed = f64::from(self.times(&offer.set) + alike);
        (worth - least) * libm::exp(-offer.share / likely) * libm::pow(FADES, failed)
    }

    fn fails(&mut self, offer: &Offer) {
        *self.failed.entry(offer.set.clone()).or_default() += 1;
        *self.families.entry(offer.families.clone()).or_default() += 1;
    }
}

impl Searcher<'_> {
    /// The best layout that is found from `best` on; ends early at a value of `enough`.
    pub(crate) fn trade(
        &self,
        mut best: (f64, Layout),
        enough: f64,
        ceiling: &Ceiling,
        go_on: &(dyn Fn(Progress) -> bool + Sync),
    ) -> Result<(f64, Layout), Unsolved> {
        let mut tried = Tried::default();
        let mut offers = self.offers(&best, ceiling);
        let (mut spent, mut stream) = (0, 0);
        while spent < self.work.packing && best.0 < enough {
            let (least, here) = (best.0, &best.1);
            let hears = || go_on(Progress::Exchanging(spent, self.work.packing, least));
            if !hears() {
                break;
            }
            let lists = LIKELY.map(|likely| ranked(&offers, &tried, least, likely));
            let first = lists.iter().flat_map(|list| list.iter().take(BATCH / 2));
            let unknown: BTreeSet<&Vec<usize>> = first
                .map(|offer| &offer.set)
                .filter(|set| !tried.values.contains_key(*set))
                .collect();
            if !unknown.is_empty() {
                let unknown: Vec<Vec<usize>> = unknown.into_iter().cloned().collect();
                let values: Vec<f64> = unknown
                    .par_iter()
                    .map(|set| self.programme.value(set))
                    .collect::<Result<_, Unsolved>>()?;
                spent += SOLVING * unknown.len();
                tried.values.extend(std::iter::zip(unknown, values));
                continue;
            }
            let batch = batch(&lists, &tried);
            if batch.is_empty() {
                break;
            }
            let packed: Vec<(usize, Option<Layout>)> = batch
                .par_iter()
                .enumerate()
                .map(|(nth, offer)| {
                    let times = tried.times(&offer.set) as usize;
                    // Every other time from bare ground: what lies may be in the way.
                    let from = if times.is_multiple_of(2) {
                        here
                    } else {
                        &self.locked
                    };
                    let most = LAYINGS * (1 + times);
                    self.pack(&offer.set, from, stream + nth as u64, most, &hears)
                })
                .collect();
            stream += batch.len() as u64;
            let mut found: Option<(f64, Layout)> = None;
            for (offer, (layings, layout)) in std::iter::zip(batch, packed) {
                spent += layings * offer.set.len().pow(2) / AMONG.pow(2);
                let value = tried.values.get(&offer.set).copied().unwrap_or(0.0);
                match layout.filter(|layout| self.reached(layout)) {
                    Some(layout) if found.as_ref().is_none_or(|found| value > found.0) => {
                        found = Some((value, layout));
                    }
                    Some(_) => {}
                    None => tried.fails(offer),
                }
            }
            if let Some(found) = found {
                best = found;
                offers = self.offers(&best, ceiling);
            }
        }
        Ok(best)
    }

    /// Sets near the best one that the planes let be worth more, in an order that the
    /// candidates' numbers have no part in.
    fn offers(&self, best: &(f64, Layout), ceiling: &Ceiling) -> Vec<Offer> {
        let loose = self.loose(&best.1);
        let mut others: Vec<usize> = (0..self.candidates.len())
            .filter(|k| !best.1.contains_key(k) && !self.stances[*k].is_empty())
            .collect();
        others.sort_by(|a, b| self.by_name(*a, *b));
        // Of many figures there are too many threes.
        let most = if loose.len() > FEW { 2 } else { 3 };
        let mut outs = vec![Vec::new()];
        for one in loose {
            let with = outs.iter().filter(|out| out.len() < most);
            let with = with.map(|out| [&out[..], &[one]].concat());
            outs.extend(with.collect::<Vec<_>>());
        }
        let lists: Vec<Vec<Offer>> = outs
            .par_iter()
            .map(|out| {
                let staying: Vec<usize> = best
                    .1
                    .keys()
                    .copied()
                    .filter(|k| !out.contains(k))
                    .collect();
                let offer = |new: &[usize]| {
                    let mut set = [&staying[..], new].concat();
                    set.sort_unstable();
                    self.offer(set, best.0, ceiling)
                };
                let mut offers = Vec::new();
                for (at, one) in others.iter().enumerate() {
                    offers.extend(offer(&[*one]));
                    offers.extend(
                        others[..at]
                            .iter()
                            .filter_map(|other| offer(&[*other, *one])),
                    );
                }
                offers
            })
            .collect();
        lists.into_iter().flatten().collect()
    }

    /// A set as an offer, where purse, ground and rivals let it be and it may be worth more
    /// than `least`.
    fn offer(&self, set: Vec<usize>, least: f64, ceiling: &Ceiling) -> Option<Offer> {
        let cost: f64 = set.iter().map(|k| self.candidates[*k].cost).sum();
        let share = self.area(&set) / self.programme.free_area;
        if cost > self.budget + 1e-9 || share > 1.0 {
            return None;
        }
        let mut pairs = set.iter().enumerate();
        let rivals = pairs.any(|(at, one)| set[..at].iter().any(|it| self.rivals(*one, *it)));
        let over = ceiling.over(&set);
        if rivals || over <= least {
            return None;
        }
        let first = |number: &usize| {
            let family = &self.candidates[*number].family;
            self.candidates.iter().position(|it| it.family == *family)
        };
        let mut families: Vec<usize> = set.iter().filter_map(first).collect();
        families.sort_unstable();
        Some(Offer {
            over,
            families,
            share,
            set,
        })
    }
}

/// Offers that promise more than a value, the most promising first.
fn ranked<'o>(offers: &'o [Offer], tried: &Tried, least: f64, likely: f64) -> Vec<&'o Offer> {
    let mut ranked: Vec<(f64, &Offer)> = offers
        .iter()
        .map(|offer| (tried.promise(offer, least, likely), offer))
        .filter(|(promise, _)| *promise > 0.0)
        .collect();
    ranked.sort_by(|a, b| b.0.total_cmp(&a.0));
    ranked.into_iter().map(|(_, offer)| offer).collect()
}

/// The first offers of each list whose value is known, one of the same families.
fn batch<'o>(lists: &[Vec<&'o Offer>], tried: &Tried) -> Vec<&'o Offer> {
    let mut batch: Vec<&Offer> = Vec::new();
    for (nth, list) in lists.iter().enumerate() {
        let most = BATCH * (nth + 1) / lists.len();
        for offer in list {
            if batch.len() >= most {
                break;
            }
            let alike = batch.iter().any(|it| it.families == offer.families);
            if !alike && tried.values.contains_key(&offer.set) {
                batch.push(offer);
            }
        }
    }
    batch
}
