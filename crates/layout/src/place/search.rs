//! Poses for a set, and the best set that has poses.
//!
//! A set is laid figure by figure, the large ones first, each pushed toward one side of the
//! yard until it touches; many orders and sides are tried. Where the best set does not go
//! in, sets that need less ground are asked for, and from the best that went in a search
//! takes figures out and puts others in. Every state of the search is a layout that keeps
//! the hard rules, so it may stop at any time.

use std::collections::BTreeMap;
use std::sync::Arc;

use chance::Chance;
use geo::Coord;
use rayon::prelude::*;

use super::grid::Map;
use super::site::{Laid, Site, Stance};
use crate::candidate::{Candidate, Pose};
use crate::programme::{Ceiling, Choice, Limits, Programme, Unsolved};
use crate::rules::{Setting, Surroundings};

/// How much the search may do, in counts: the same answer on every machine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Work {
    /// Branch-and-bound nodes for the bound.
    pub bound_nodes: u64,
    /// Nodes for each smaller set.
    pub set_nodes: u64,
    /// Orders tried for each set.
    pub orders: usize,
    /// Smaller sets asked for.
    pub sets: usize,
    /// Steps of each chain that exchanges figures.
    pub steps: usize,
    /// Steps without a better layout after which a chain ends.
    pub idle: usize,
    /// In cramped ground: figures laid, in all, while sets near the best are packed.
    pub packing: usize,
    /// Of Z: the proof may end when bound and best set are this near, and the search of
    /// layouts when bound and layout are.
    pub near: f64,
    /// Rounds of improving poses when the set is settled.
    pub polish: usize,
    /// Sets that are held against the ground to prove that they cannot lie.
    pub proofs: usize,
}

impl Default for Work {
    /// A few seconds of one core for a class of twenty; the layouts' value is within a few
    /// hundredths of the bound where the ground does not bind.
    fn default() -> Work {
        Work {
            bound_nodes: 60,
            set_nodes: 8,
            orders: 24,
            sets: 4,
            steps: 300,
            idle: 100,
            packing: 40_000,
            near: 6e-3,
            polish: 1,
            proofs: 40,
        }
    }
}

/// What the search is doing; handed to the caller, who may say stop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Progress {
    /// Proving the bound.
    Bounding,
    /// Trying how a set lies; how many figures it has.
    Laying(usize),
    /// Exchanging figures: the step, of how many, and the value so far.
    Exchanging(usize, usize, f64),
    /// Improving poses: the round, of how many.
    Polishing(usize, usize),
}

/// Of Z: how near a set to lay must come to the best one of its size.
const NEAR_ENOUGH: f64 = 1e-2;

/// Of the free ground: a best set that takes more will hardly lie as it is.
const CRAMPED: f64 = 0.6;

/// A layout of no more figures than these is one of few.
pub(crate) const FEW: usize = 8;

/// Figures of one layout, by number of candidate.
pub(crate) type Layout = BTreeMap<usize, Laid>;

pub(crate) struct Searcher<'a> {
    pub(crate) candidates: &'a [Candidate],
    pub(crate) programme: &'a Programme,
    pub(crate) site: &'a Site,
    pub(crate) free: &'a geo::MultiPolygon<f64>,
    pub(crate) budget: f64,
    pub(crate) seed: u64,
    pub(crate) work: Work,
    pub(crate) go_on: &'a (dyn Fn(Progress) -> bool + Sync),
    /// By candidate and turn.
    pub(crate) stances: Vec<Vec<Stance>>,
    /// Whether the best set would fill the ground: then more turns are tried, mirrored ones
    /// among them, for longer.
    pub(crate) cramped: bool,
    /// Figures that are locked, always laid.
    pub(crate) locked: Layout,
    pub(crate) around: &'a Surroundings<'a>,
}

/// What the search found.
pub(crate) struct Found {
    pub(crate) layout: Layout,
    pub(crate) value: f64,
    pub(crate) first: Choice,
    pub(crate) ceiling: Ceiling,
    pub(crate) stopped: bool,
    /// Sets proven not to fit, and what is then the bound.
    pub(crate) apart: Vec<Vec<usize>>,
    pub(crate) shape_bound: f64,
}

impl<'a> Searcher<'a> {
    /// Looks how each candidate may stand on the bare ground; a turn at which it covers the
    /// same shape as at an earlier one is left out.
    ///
    /// - `usual`: the stances of uncramped ground by candidate, where they are known
    pub(crate) fn stances(
        candidates: &[Candidate],
        site: &Site,
        around: &Surroundings,
        cramped: bool,
        usual: Option<Vec<Vec<Stance>>>,
    ) -> Vec<Vec<Stance>> {
        let known = usual.is_some();
        let mut usual = usual.unwrap_or_default();
        usual.resize_with(candidates.len(), Vec::new);
        let usual: Vec<(usize, Vec<Stance>)> = usual.into_iter().enumerate().collect();
        usual
            .into_par_iter()
            .map(|(number, usual)| {
                let candidate = &candidates[number];
                let still = Pose {
                    at: Coord { x: 0.0, y: 0.0 },
                    turn: 0.0,
                    mirrored: false,
                };
                if candidate.refused
                    || candidate.locked.is_some()
                    || !around.runs_out(&Setting::new(candidate, still))
                {
                    return Vec::new();
                }
                let mut usual = usual.into_iter().peekable();
                let mut stances: Vec<Stance> = Vec::new();
                for which in 0..site.turns(cramped) {
                    for mirrored in [false, true] {
                        if mirrored && !(cramped && candidate.mirrors) {
                            continue;
                        }
                        if known && !mirrored && which < site.turns(false) {
                            stances
                                .extend(usual.next_if(|stance| stance.turn == site.turns[which]));
                            continue;
                        }
                        let turned = site
                            .turned((number, candidate), which, mirrored)
                            .filter(|turned| !stances.iter().any(|it| turned.covers_as(it)));
                        stances.extend(turned.and_then(|turned| site.stance(turned)));
                    }
                }
                stances
            })
            .collect()
    }

    /// The bound, and the best layout found.
    pub(crate) fn run(&mut self) -> Result<Found, Unsolved> {
        let stopped = std::sync::atomic::AtomicBool::new(false);
        let heard = self.go_on;
        let go_on = |progress: Progress| {
            let go = !stopped.load(std::sync::atomic::Ordering::Relaxed) && heard(progress);
            if !go {
                stopped.store(true, std::sync::atomic::Ordering::Relaxed);
            }
            go
        };
        // The proof is a little nearer than the search asks, so that a layout of the best set
        // ends the search.
        let enough = Limits {
            near: self.work.near * 0.7,
            ..Limits::default()
        };
        let (programme, nodes) = (self.programme, self.work.bound_nodes);
        let (candidates, site, around) = (self.candidates, self.site, self.around);
        // The proof waits for itself now and then; the usual stances are looked for meanwhile.
        let (bounded, stances) = rayon::join(
            || {
                let bounding = || go_on(Progress::Bounding);
                programme.choose_under(&enough, nodes, &Ceiling::default(), &bounding)
            },
            || Searcher::stances(candidates, site, around, false, None),
        );
        let (first, ceiling) = bounded?;
        self.cramped = self.area(&first.chosen) > CRAMPED * self.programme.free_area;
        self.stances = if self.cramped {
            Searcher::stances(candidates, site, around, true, Some(stances))
        } else {
            stances
        };
        let mut found = self.search(first, ceiling, &go_on)?;
        found.stopped = stopped.into_inner();
        Ok(found)
    }

    pub(crate) fn area(&self, set: &[usize]) -> f64 {
        set.iter().map(|k| self.candidates[*k].area).sum()
    }

    fn search(
        &self,
        first: Choice,
        mut ceiling: Ceiling,
        go_on: &(dyn Fn(Progress) -> bool + Sync),
    ) -> Result<Found, Unsolved> {
        let nowhere: Vec<Vec<usize>> = (0..self.candidates.len())
            .filter(|at| self.stances[*at].is_empty() && self.candidates[*at].locked.is_none())
            .map(|at| vec![at])
            .collect();
        let mut limits = Limits {
            apart: nowhere,
            near: NEAR_ENOUGH,
            ..Limits::default()
        };
        let mut wanted: BTreeMap<usize, f64> = BTreeMap::new();
        let mut best = (
            self.programme.value(&self.numbers(&self.locked))?,
            self.locked.clone(),
        );
        let mut choice = first.clone();
        for round in 0..=self.work.sets {
            if round > 0
                || choice
                    .chosen
                    .iter()
                    .any(|k| limits.apart.contains(&vec![*k]))
            {
                let nodes = self.work.set_nodes;
                let bounding = || go_on(Progress::Bounding);
                (choice, ceiling) = self
                    .programme
                    .choose_under(&limits, nodes, &ceiling, &bounding)?;
            }
            for number in &choice.chosen {
                *wanted.entry(*number).or_default() += 1.0;
            }
            if choice.value <= best.0 || !go_on(Progress::Laying(choice.chosen.len())) {
                break;
            }
            let laid = self.lay(&choice.chosen, round as u64, go_on);
            let whole = laid.len() == choice.chosen.len();
            let value = self.programme.value(&self.numbers(&laid))?;
            let asked = self.area(&choice.chosen);
            let went = self.area(&self.numbers(&laid));
            if value > best.0 && self.reached(&laid) {
                best = (value, laid);
            }
            if whole {
                break;
            }
            limits.apart.push(choice.chosen.clone());
            limits.area = Some((asked + went) / 2.0);
        }
        let enough = first.bound * (1.0 - self.work.near);
        if best.0 < enough && go_on(Progress::Exchanging(0, self.work.steps, best.0)) {
            // Exchanges are quick with many figures, and lead astray with few.
            if !self.cramped || self.loose(&best.1).len() > FEW {
                let known = (&ceiling, &wanted);
                best = self.exchange(best, (enough, first.value), known, go_on)?;
            }
            if self.cramped {
                best = self.trade(best, enough, &ceiling, go_on)?;
            }
        }
        let (apart, shape_bound) = self.prove(&first, &ceiling, &mut best, go_on)?;
        Ok(Found {
            value: best.0,
            layout: best.1,
            first,
            ceiling,
            stopped: false,
            apart,
            shape_bound,
        })
    }

    /// Whether a figure has somewhere to lie among the others as they lie.
    pub(crate) fn fits(&self, layout: &Layout, number: usize) -> bool {
        self.stances[number]
            .iter()
            .any(|stance| stance.room(layout.values()).count() > 0)
    }

    /// Whether the layout keeps the rule of the wheeled way.
    pub(crate) fn reached(&self, layout: &Layout) -> bool {
        let settings: Vec<Setting> = layout
            .iter()
            .map(|(number, laid)| Setting::new(&self.candidates[*number], laid.pose))
            .collect();
        self.around
            .wheels_reach(&settings.iter().collect::<Vec<_>>())
    }

    pub(crate) fn numbers(&self, layout: &Layout) -> Vec<usize> {
        layout.keys().copied().collect()
    }

    /// The figures of a layout that are not locked, by name.
    pub(crate) fn loose(&self, layout: &Layout) -> Vec<usize> {
        let numbers = layout.keys().copied();
        let mut loose: Vec<usize> = numbers.filter(|k| !self.locked.contains_key(k)).collect();
        loose.sort_by(|a, b| self.by_name(*a, *b));
        loose
    }

    /// Whether two figures are of one family for one group: only one of them may be chosen.
    pub(crate) fn rivals(&self, one: usize, other: usize) -> bool {
        let (one, other) = (&self.candidates[one], &self.candidates[other]);
        (&one.family, &one.group) == (&other.family, &other.group)
    }

    /// As much of a set as goes in, over many orders: the whole set, else the most worth of
    /// it by area.
    pub(crate) fn lay(
        &self,
        set: &[usize],
        stream: u64,
        go_on: &(dyn Fn(Progress) -> bool + Sync),
    ) -> Layout {
        let todo: Vec<usize> = set
            .iter()
            .copied()
            .filter(|k| !self.locked.contains_key(k))
            .collect();
        /// Orders tried side by side before a look at whether one went in.
        const STRIDE: usize = 8;
        let mut best = (0.0, self.locked.clone());
        for start in (0..self.work.orders).step_by(STRIDE) {
            if !go_on(Progress::Laying(set.len())) {
                break;
            }
            let tries: Vec<Layout> = (start..self.work.orders.min(start + STRIDE))
                .into_par_iter()
                .map(|at| {
                    let mut chance = Chance::stream(self.seed, (stream << 32) | at as u64);
                    let mut layout = self.locked.clone();
                    let way = self.way(&mut chance, at);
                    let mut order = todo.clone();
                    let noise: BTreeMap<usize, f64> = order
                        .iter()
                        .map(|k| {
                            (
                                *k,
                                self.candidates[*k].area
                                    * (1.0 + 0.8 * chance.share() * (at > 3) as u8 as f64),
                            )
                        })
                        .collect();
                    order.sort_by(|a, b| noise[b].total_cmp(&noise[a]).then(self.by_name(*a, *b)));
                    for number in order {
                        if let Some(laid) = self.insert(&layout, number, way, &mut chance) {
                            layout.insert(number, laid);
                        }
                    }
                    layout
                })
                .collect();
            for layout in tries {
                let area: f64 = layout.keys().map(|k| self.candidates[*k].area).sum();
                if area > best.0 {
                    best = (area, layout);
                }
            }
            if best.1.len() == set.len().max(self.locked.len()) {
                break;
            }
        }
        best.1
    }

    pub(crate) fn by_name(&self, a: usize, b: usize) -> std::cmp::Ordering {
        self.candidates[a].name.cmp(&self.candidates[b].name)
    }

    /// A side of the yard to push toward: the walls' own first, then any.
    pub(crate) fn way(&self, chance: &mut Chance, at: usize) -> Coord<f64> {
        let walls = self.site.turns.iter().take(8).collect::<Vec<_>>();
        let turn = match walls.get(at % 12) {
            Some(turn) => **turn + 0.03,
            None => chance.share() * 2.0 * std::f64::consts::PI,
        };
        let (sin, cos) = libm::sincos(turn);
        Coord { x: cos, y: sin }
    }

    /// The turns of a figure that a try looks at: those along the walls, and some of the others.
    pub(crate) fn turns_to_try<'s, 'c>(
        &'s self,
        number: usize,
        chance: &'c mut Chance,
    ) -> impl Iterator<Item = &'s Stance> + use<'s, 'c, 'a> {
        /// Turns that every try looks at, and the share of the others.
        const ALWAYS: usize = 8;
        const FAN: f64 = 0.35;
        let stances = self.stances[number].iter().enumerate();
        stances
            .filter(move |(at, _)| *at < ALWAYS || chance.share() <= FAN)
            .map(|(_, stance)| stance)
    }

    /// The pose that lies farthest along `way`, whole figure counted.
    pub(crate) fn insert(
        &self,
        layout: &Layout,
        number: usize,
        way: Coord<f64>,
        chance: &mut Chance,
    ) -> Option<Laid> {
        let mut best: Option<(f64, &Stance, Coord<f64>)> = None;
        for stance in self.turns_to_try(number, chance) {
            let shadows: Vec<Arc<Map>> = layout.values().map(|laid| laid.shadow(stance)).collect();
            let shadows: Vec<&Map> = shadows.iter().map(Arc::as_ref).collect();
            let Some((far, place)) = stance.farthest(&shadows, way) else {
                continue;
            };
            if best.as_ref().is_none_or(|best| far > best.0 + 1e-9) {
                best = Some((far, stance, place));
            }
        }
        let (_, stance, place) = best?;
        Some(stance.laid(stance.slide(self.site, place, way, layout.values())))
    }
}
