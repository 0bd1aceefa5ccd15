//! Chains of exchanges, where the ground leaves room: some figures out, others in.

use std::collections::BTreeMap;

use chance::Chance;
use rayon::prelude::*;

use super::search::{Layout, Progress, Searcher};
use crate::programme::{Ceiling, Unsolved};

/// Of the value of the programme's own choice: a layout that misses no more than this is
/// worth as much, and chains wait so many times less for a better one.
const SETTLED: f64 = 1e-3;
const SHORTER: usize = 5;

/// Chains; a count of its own, never that of the threads.
const CHAINS: u64 = 4;

impl Searcher<'_> {
    /// The best layout of all chains from `best`.
    ///
    /// - `enough`, `chosen`: the value that ends the search, and that of the programme's choice
    /// - `wanted`: by candidate, how many of the programme's sets had it
    pub(crate) fn exchange(
        &self,
        best: (f64, Layout),
        (enough, chosen): (f64, f64),
        (ceiling, wanted): (&Ceiling, &BTreeMap<usize, f64>),
        go_on: &(dyn Fn(Progress) -> bool + Sync),
    ) -> Result<(f64, Layout), Unsolved> {
        // What lies is worth what the programme would choose: it has looked further than
        // exchanges will.
        let settled = best.0 >= chosen * (1.0 - SETTLED);
        let idle = if settled {
            self.work.idle / SHORTER
        } else {
            self.work.idle
        };
        let chains: Vec<(f64, Layout)> = (0..CHAINS)
            .into_par_iter()
            .map(|chain| self.chain(chain, &best, (enough, idle), (ceiling, wanted), go_on))
            .collect::<Result<_, Unsolved>>()?;
        Ok(chains.into_iter().fold(
            best,
            |best, chain| if chain.0 > best.0 { chain } else { best },
        ))
    }

    /// One chain of exchanges: some figures out, others in, the better kept, now and then a
    /// slightly worse one.
    fn chain(
        &self,
        chain: u64,
        start: &(f64, Layout),
        (enough, patience): (f64, usize),
        (ceiling, wanted): (&Ceiling, &BTreeMap<usize, f64>),
        go_on: &(dyn Fn(Progress) -> bool + Sync),
    ) -> Result<(f64, Layout), Unsolved> {
        let mut chance = Chance::stream(self.seed, 0xE0 + chain);
        let mut values: BTreeMap<Vec<usize>, f64> = BTreeMap::new();
        let mut best = start.clone();
        let mut here = start.clone();
        let mut idle = 0;
        let steps = self.work.steps;
        for step in 0..steps {
            if best.0 >= enough
                || idle >= patience
                || !go_on(Progress::Exchanging(step, steps, best.0))
            {
                break;
            }
            idle += 1;
            let mut layout = here.1.clone();
            let mut open = self.loose(&layout);
            let out = 1 + chance.below(3);
            let mut gone = Vec::new();
            // Neighbours go together, so that what they leave is one piece of ground.
            if !open.is_empty() {
                let middle = layout[&open[chance.below(open.len())]].pose.at;
                let from = |k: &usize| crate::geometry::length(layout[k].pose.at - middle);
                open.sort_by(|a, b| from(a).total_cmp(&from(b)));
                gone.extend(open.iter().take(out).copied());
                for number in &gone {
                    layout.remove(number);
                }
            }
            let mut with = self.numbers(&layout);
            let bare = ceiling.over(&with);
            let mut order: Vec<(f64, usize)> = (0..self.candidates.len())
                .filter(|k| !layout.contains_key(k) && !self.stances[*k].is_empty())
                .map(|k| {
                    // What the planes let it add to what stands, by the ground it takes.
                    with.push(k);
                    let adds = (ceiling.over(&with) - bare) / self.candidates[k].area.max(1.0);
                    with.pop();
                    let pull = adds * adds * (1.0 + wanted.get(&k).copied().unwrap_or(0.0));
                    // The exponential race: a figure comes early in proportion to its pull.
                    (-libm::log(1.0 - chance.share()) / pull.max(1e-12), k)
                })
                .collect();
            order.sort_by(|a, b| a.0.total_cmp(&b.0).then(self.by_name(a.1, b.1)));
            let way = self.way(&mut chance, step);
            let mut failed = 0;
            for (_, number) in order {
                /// Figures that may fail to go in before a step gives up.
                const PATIENCE: usize = 6;
                if failed >= PATIENCE {
                    break;
                }
                if !self.affords(&layout, number) {
                    continue;
                }
                /// Share of figures that are pushed to a side of their own.
                const OWN: f64 = 0.4;
                let way = if chance.share() < OWN {
                    let side = chance.below(12);
                    self.way(&mut chance, side)
                } else {
                    way
                };
                match self.insert(&layout, number, way, &mut chance) {
                    Some(laid) => drop(layout.insert(number, laid)),
                    None => failed += 1,
                }
            }
            let numbers = self.numbers(&layout);
            /// Of Z: how much worse may be kept at the start of a chain.
            const WARM: f64 = 0.01;
            let cold = 1.0 - step as f64 / steps as f64;
            let least = here.0 - WARM * cold * chance.share();
            // What the planes hold down need not be solved for.
            if ceiling.over(&numbers) <= least {
                continue;
            }
            let value = match values.get(&numbers) {
                Some(value) => *value,
                None => {
                    let value = self.programme.value(&numbers)?;
                    values.insert(numbers, value);
                    value
                }
            };
            if value > least {
                here = (value, layout);
                if here.0 > best.0 + 1e-12 && self.reached(&here.1) {
                    idle = 0;
                    best = here.clone();
                }
            }
        }
        Ok(best)
    }

    /// Whether the purse and the rule of one family a group let a figure in.
    fn affords(&self, layout: &Layout, number: usize) -> bool {
        let new = &self.candidates[number];
        let spent: f64 = layout.keys().map(|k| self.candidates[*k].cost).sum();
        let rival = layout.keys().any(|k| self.rivals(*k, number));
        !rival && spent + new.cost <= self.budget + 1e-9
    }
}
