//! Poses for a set, and the best set that has poses.
//!
//! A set is laid figure by figure, the large ones first, each pushed toward one side of the
//! yard until it touches; many orders and sides are tried. Where the best set does not go
//! in, sets that need less ground are asked for, and from the best that went in a search
//! takes figures out and puts others in. Every state of the search is a layout that keeps
//! the hard rules, so it may stop at any time.

use std::collections::BTreeMap;

use chance::Chance;
use geo::Coord;
use rayon::prelude::*;

use super::proof::Proofs;
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

/// In cramped ground chains go on so many times as long.
const LONGER: usize = 4;

/// Of the value of the programme's own choice: a layout that misses no more than this is
/// worth as much, and chains wait so many times less for a better one.
const SETTLED: f64 = 1e-3;
const SHORTER: usize = 5;

/// Chains of the exchange; a count of its own, never that of the threads.
const CHAINS: u64 = 4;

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

    fn area(&self, set: &[usize]) -> f64 {
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
        // What lies is worth what the programme would choose: it has looked further than
        // exchanges will.
        let settled = best.0 >= first.value * (1.0 - SETTLED);
        if best.0 < enough && go_on(Progress::Exchanging(0, self.work.steps, best.0)) {
            let chains: Vec<(f64, Layout)> = (0..CHAINS)
                .into_par_iter()
                .map(|chain| {
                    let idle = self.idle(settled);
                    self.exchange(chain, &best, (enough, idle), (&ceiling, &wanted), go_on)
                })
                .collect::<Result<_, Unsolved>>()?;
            for chain in chains {
                if chain.0 > best.0 {
                    best = chain;
                }
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

    /// Holds the best sets of the programme against the ground, best first: each is proven
    /// not to fit and cut off, with its like, until one is not. What the programme then
    /// promises is a bound that knows the ground's shape.
    fn prove(
        &self,
        first: &Choice,
        ceiling: &Ceiling,
        best: &mut (f64, Layout),
        go_on: &(dyn Fn(Progress) -> bool + Sync),
    ) -> Result<(Vec<Vec<usize>>, f64), Unsolved> {
        /// Boxes that all proofs together may look at.
        const BOXES: u64 = 800_000_000;
        /// Of Z: nearer than this to its bound a set need not be chosen.
        const NEAR: f64 = 2e-3;
        let mut limits = Limits {
            near: NEAR,
            ..Limits::default()
        };
        let mut choice = first.clone();
        let near = |bound: f64, best: f64| best >= bound * (1.0 - self.work.near);
        if !self.cramped || near(choice.bound, best.0) {
            return Ok((limits.apart, choice.bound));
        }
        let Some(mut proofs) = Proofs::new(self.candidates, self.free, &self.locked) else {
            return Ok((limits.apart, choice.bound));
        };
        let (mut bound, mut work, mut known) = (choice.bound, BOXES, ceiling.clone());
        let hears = || go_on(Progress::Bounding);
        for round in 0..self.work.proofs {
            if !hears() {
                break;
            }
            let set: Vec<usize> = choice
                .chosen
                .iter()
                .copied()
                .filter(|k| !self.locked.contains_key(k))
                .collect();
            let Some(least) = proofs.least_apart(&set, &mut work, &hears) else {
                let laid = self.lay(&choice.chosen, 0xF0 + round as u64, go_on);
                let value = self.programme.value(&self.numbers(&laid))?;
                if value > best.0 && self.reached(&laid) {
                    *best = (value, laid);
                }
                break;
            };
            for row in self.alike(&least, &mut proofs, &mut work, &hears) {
                if !limits.apart.contains(&row) {
                    limits.apart.push(row);
                }
            }
            let nodes = self.work.set_nodes;
            (choice, known) = self
                .programme
                .choose_under(&limits, nodes, &known, &hears)?;
            bound = bound.min(choice.bound);
            if near(bound, best.0) {
                break;
            }
        }
        Ok((limits.apart, bound.max(best.0)))
    }

    /// A set that is proven apart, and those like it: what holds for a figure mostly holds
    /// for its family at other lengths, and needs no proof of its own.
    fn alike(
        &self,
        least: &[usize],
        proofs: &mut Proofs,
        work: &mut u64,
        go_on: &dyn Fn() -> bool,
    ) -> Vec<Vec<usize>> {
        /// Rows that one proof may bring.
        const ROWS: usize = 60;
        let mut rows = vec![least.to_vec()];
        let mut at = 0;
        while let Some(row) = rows.get(at).cloned().filter(|_| rows.len() < ROWS) {
            for (member, old) in row.iter().enumerate() {
                for (other, new) in self.candidates.iter().enumerate() {
                    let open = !new.refused && new.locked.is_none() && !row.contains(&other);
                    if !open || new.family != self.candidates[*old].family {
                        continue;
                    }
                    let mut like = row.clone();
                    like[member] = other;
                    like.sort_unstable();
                    if !rows.contains(&like) && go_on() && proofs.apart(&like, work) {
                        rows.push(like);
                    }
                }
            }
            at += 1;
        }
        rows
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

    fn numbers(&self, layout: &Layout) -> Vec<usize> {
        layout.keys().copied().collect()
    }

    /// As much of a set as goes in, over many orders: the whole set, else the most worth of
    /// it by area.
    fn lay(&self, set: &[usize], stream: u64, go_on: &(dyn Fn(Progress) -> bool + Sync)) -> Layout {
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

    fn by_name(&self, a: usize, b: usize) -> std::cmp::Ordering {
        self.candidates[a].name.cmp(&self.candidates[b].name)
    }

    /// A side of the yard to push toward: the walls' own first, then any.
    fn way(&self, chance: &mut Chance, at: usize) -> Coord<f64> {
        let walls = self.site.turns.iter().take(8).collect::<Vec<_>>();
        let turn = match walls.get(at % 12) {
            Some(turn) => **turn + 0.03,
            None => chance.share() * 2.0 * std::f64::consts::PI,
        };
        let (sin, cos) = libm::sincos(turn);
        Coord { x: cos, y: sin }
    }

    /// The pose that lies farthest along `way`, whole figure counted; turns along the walls
    /// and some of the others.
    fn insert(
        &self,
        layout: &Layout,
        number: usize,
        way: Coord<f64>,
        chance: &mut Chance,
    ) -> Option<Laid> {
        /// Share of the other turns that are tried.
        const FAN: f64 = 0.35;
        let along = |p: &Coord<f64>| p.x * way.x + p.y * way.y;
        let mut best: Option<(f64, &Stance, Coord<f64>)> = None;
        for (at, stance) in self.stances[number].iter().enumerate() {
            let tried = at < 8 || chance.share() <= FAN;
            if !tried {
                continue;
            }
            let room = stance.room(layout.values());
            let Some(place) = room.farthest(way) else {
                continue;
            };
            let tail = stance
                .pieces
                .iter()
                .flatten()
                .map(along)
                .fold(f64::INFINITY, f64::min);
            let score = along(&place) + tail;
            if best.as_ref().is_none_or(|best| score > best.0 + 1e-9) {
                best = Some((score, stance, place));
            }
        }
        let (_, stance, place) = best?;
        Some(stance.laid(stance.slide(self.site, place, way, layout.values())))
    }

    /// Steps without a better layout after which a chain ends.
    fn idle(&self, settled: bool) -> usize {
        match (self.cramped, settled) {
            (true, _) => self.work.idle * LONGER,
            (false, true) => self.work.idle / SHORTER,
            (false, false) => self.work.idle,
        }
    }

    /// One chain of exchanges: some figures out, others in, the better kept, now and then a
    /// slightly worse one.
    fn exchange(
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
        let longer = if self.cramped { LONGER } else { 1 };
        let steps = self.work.steps * longer;
        for step in 0..steps {
            if best.0 >= enough
                || idle >= patience
                || !go_on(Progress::Exchanging(step, steps, best.0))
            {
                break;
            }
            idle += 1;
            let mut layout = here.1.clone();
            let mut open: Vec<usize> = layout
                .keys()
                .copied()
                .filter(|k| !self.locked.contains_key(k))
                .collect();
            open.sort_by(|a, b| self.by_name(*a, *b));
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
        let rival = layout.keys().any(|k| {
            let old = &self.candidates[*k];
            (&old.family, &old.group) == (&new.family, &new.group)
        });
        !rival && spent + new.cost <= self.budget + 1e-9
    }
}
