//! Planes above the value of a set, from prices.
//!
//! Give one group a price for its minutes (mu) and for each half of each target (pi).
//! Whatever the set x, the group's worth is then at most
//!
//!   M mu + sum (T/2) pi + sum over k of x_k F_k(mu, pi),
//!
//! with F_k the most that figure k alone earns at these prices: practice there is worth
//! 1.25 - pi or .75 - pi, never more than half a target each, and its minutes cost mu. So
//! any prices prove something; the best prices at a given x come from a small linear
//! programme. That no figure gives a group more of a skill than its target is what makes
//! these planes tight; plain links u <= 15 x leave the bound several times looser.
//!
//! Where stations run full, a price sigma_k on the time of each joins mu, and the plane
//! spans all groups.

use std::collections::BTreeMap;

use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, Variable};
use rayon::prelude::*;

use super::{Act, Group, Programme, Unsolved, unsolved};

/// sum of theta over `groups` <= start + sum of slope_k x_k, in minutes.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cut {
    pub(super) groups: Vec<usize>,
    pub(super) start: f64,
    pub(super) slope: Vec<f64>,
    /// What it was proven by, where it is of one group.
    prices: Option<Prices>,
}

impl Cut {
    /// The plane's height over `x`.
    pub(super) fn at(&self, x: &[f64]) -> f64 {
        self.start
            + std::iter::zip(&self.slope, x)
                .map(|(slope, x)| slope * x)
                .sum::<f64>()
    }
}

/// Planes above the value of any set: what a set is worth at most, without solving for it.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Ceiling {
    /// By group its planes: start and slope by number of candidate.
    planes: Vec<Vec<(f64, Vec<f64>)>>,
    /// By group: every target met.
    most: Vec<f64>,
    asked: f64,
    /// All planes as the search knows them.
    pub(super) pool: Vec<Cut>,
}

impl Ceiling {
    pub(super) fn new(programme: &Programme, pool: Vec<Cut>, most: Vec<f64>) -> Ceiling {
        let mut planes = vec![Vec::new(); most.len()];
        for cut in &pool {
            let [group] = cut.groups[..] else { continue };
            let mut slope = vec![0.0; programme.items.len()];
            for (item, steep) in programme.items.iter().zip(&cut.slope) {
                slope[item.number] = *steep;
            }
            planes[group].push((cut.start, slope));
        }
        Ceiling {
            planes,
            most,
            asked: programme.asked,
            pool,
        }
    }

    /// No less than Z of the set.
    pub(crate) fn over(&self, set: &[usize]) -> f64 {
        let groups = std::iter::zip(&self.planes, &self.most).map(|(planes, most)| {
            let heights = planes
                .iter()
                .map(|(start, slope)| start + set.iter().map(|at| slope[*at]).sum::<f64>());
            heights.fold(*most, f64::min)
        });
        if self.asked > 0.0 {
            groups.sum::<f64>() / self.asked
        } else {
            0.0
        }
    }
}

/// Prices of one group, each at least 0.
#[derive(Clone, Debug, PartialEq)]
struct Prices {
    /// Of a minute.
    time: f64,
    /// Of the halves of the targets, by slot in the group's order.
    halves: Vec<[f64; 2]>,
    /// Of practice on figures whose activities serve several skills, by item and slot.
    mixed: BTreeMap<usize, Vec<f64>>,
}

/// x below this is not there.
const GONE: f64 = 1e-9;

impl Programme {
    /// The best plane of one group over `x`, stations taken as endless.
    pub(super) fn cut(&self, group: usize, x: &[f64]) -> Result<Cut, Unsolved> {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let there: Vec<usize> = (0..x.len()).filter(|at| x[*at] > GONE).collect();
        let prices = self.price_rows(&mut problem, group, 1.0, &there, x, &[]);
        let solution = solved(&problem)?;
        Ok(self.plane(group, prices.read(&solution)))
    }

    /// The plane of one group that its prices prove.
    fn plane(&self, group: usize, mut prices: Prices) -> Cut {
        let mut cut = Cut {
            groups: vec![group],
            start: 0.0,
            slope: vec![0.0; self.items.len()],
            prices: None,
        };
        let sigma = vec![0.0; self.items.len()];
        self.add_plane(&mut cut, group, &mut prices, &sigma);
        cut.prices = Some(prices);
        cut
    }

    /// Planes of another programme over the same candidates as planes of this one: prices
    /// prove something whatever the targets and the time are.
    pub(crate) fn taken_over(&self, known: &Ceiling) -> Ceiling {
        let fits = |cut: &Cut| {
            let group = self.groups.get(*cut.groups.first()?)?;
            let prices = cut.prices.as_ref()?;
            (cut.slope.len() == self.items.len()
                && prices.halves.len() == group.targets.len()
                && prices
                    .mixed
                    .values()
                    .all(|of| of.len() == group.targets.len()))
            .then(|| (cut.groups[0], prices.clone()))
        };
        let pool: Vec<Cut> = known
            .pool
            .iter()
            .filter_map(fits)
            .collect::<Vec<_>>()
            .into_par_iter()
            .map(|(group, prices)| self.plane(group, prices))
            .collect();
        Ceiling {
            pool,
            ..Ceiling::default()
        }
    }

    /// The best plane of all groups together over a settled x, stations priced.
    pub(super) fn cut_of_all(&self, x: &[f64]) -> Result<Cut, Unsolved> {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let there: Vec<usize> = (0..x.len()).filter(|at| x[*at] > GONE).collect();
        let stations: Vec<Option<Variable>> = (0..x.len())
            .map(|at| {
                let item = &self.items[at];
                let full = x[at] > GONE && !self.roomy(item);
                full.then(|| {
                    problem.add_var(item.places * self.places * x[at], (0.0, f64::INFINITY))
                })
            })
            .collect();
        let all: Vec<PriceRows> = (0..self.groups.len())
            .map(|group| {
                let count = self.groups[group].count;
                self.price_rows(&mut problem, group, count, &there, x, &stations)
            })
            .collect();
        let solution = solved(&problem)?;
        let sigma: Vec<f64> = stations
            .iter()
            .map(|price| price.map_or(0.0, |price| solution.var_value(price).max(0.0)))
            .collect();
        let slope = (0..x.len())
            .map(|at| sigma[at] * self.items[at].places * self.places)
            .collect();
        let mut cut = Cut {
            groups: (0..self.groups.len()).collect(),
            start: 0.0,
            slope,
            prices: None,
        };
        for (group, prices) in all.iter().enumerate() {
            self.add_plane(&mut cut, group, &mut prices.read(&solution), &sigma);
        }
        Ok(cut)
    }

    /// Adds the plane of one group at its prices, for all its children.
    fn add_plane(&self, cut: &mut Cut, number: usize, prices: &mut Prices, sigma: &[f64]) {
        let group = &self.groups[number];
        let halves: f64 = std::iter::zip(&group.targets, &prices.halves)
            .map(|((_, minutes), price)| minutes / 2.0 * (price[0] + price[1]))
            .sum();
        cut.start += group.count * (self.each * prices.time + halves);
        for (at, item) in self.items.iter().enumerate() {
            let acts = &item.acts[number];
            if !acts.is_empty() {
                let time = prices.time + sigma[at];
                let earns = if acts.iter().any(|act| act.yields.len() > 1) {
                    self.earns_mixed((group, at), acts, time, prices)
                } else {
                    self.earns(group, acts, time, &prices.halves)
                };
                cut.slope[at] += group.count * earns;
            }
        }
    }

    /// F: the most that one child of the group earns on one figure, at the price `time` of a
    /// minute and `halves` of the targets, where each activity serves one skill.
    fn earns(&self, group: &Group, acts: &[Act], time: f64, halves: &[[f64; 2]]) -> f64 {
        // One skill an activity: half a target asks (T/2)/e fresh minutes and pays d a
        // minute. Fresh minutes go first to what pays best; stale ones last half as well.
        let mut jobs: Vec<(f64, f64)> = Vec::new();
        for (slot, (what, minutes)) in group.targets.iter().enumerate() {
            let e = acts
                .iter()
                .flat_map(|act| &act.yields)
                .filter(|gift| gift.0 == *what);
            let e = e.map(|gift| gift.1).fold(0.0, f64::max);
            if e > 0.0 {
                for (worth, price) in std::iter::zip(self.worth, halves[slot]) {
                    jobs.push(((worth - price) * e, minutes / 2.0 / e));
                }
            }
        }
        jobs.sort_by(|a, b| b.0.total_cmp(&a.0));
        let (mut fresh, mut stale, mut sum) = (self.stale, self.stale * self.stale_worth, 0.0);
        for (pays, mut asks) in jobs {
            if pays > time {
                let taken = asks.min(fresh);
                fresh -= taken;
                asks -= taken;
                sum += taken * (pays - time);
            }
            if fresh <= 0.0 && pays * self.stale_worth > time {
                let taken = asks.min(stale);
                stale -= taken;
                sum += taken * (pays - time / self.stale_worth);
            }
        }
        sum
    }

    /// The same where one activity serves several skills: the sum at prices of practice on
    /// this figure, whatever these are; good ones are looked for where none are known.
    fn earns_mixed(
        &self,
        (group, item): (&Group, usize),
        acts: &[Act],
        time: f64,
        prices: &mut Prices,
    ) -> f64 {
        let mixed = Mixed::new(self, group, acts, time, &prices.halves);
        let of_practice = prices
            .mixed
            .entry(item)
            .or_insert_with(|| mixed.practice_prices(group.targets.len()));
        mixed.sum(of_practice)
    }

    /// Variables and rows of one group's best prices over `x`.
    fn price_rows(
        &self,
        problem: &mut Problem,
        number: usize,
        count: f64,
        there: &[usize],
        x: &[f64],
        stations: &[Option<Variable>],
    ) -> PriceRows {
        let group = &self.groups[number];
        let time = problem.add_var(count * self.each, (0.0, f64::INFINITY));
        let halves: Vec<[Variable; 2]> = group
            .targets
            .iter()
            .map(|(_, minutes)| {
                self.worth
                    .map(|worth| problem.add_var(count * minutes / 2.0, (0.0, worth)))
            })
            .collect();
        let mut mixed = Vec::new();
        for at in there {
            let acts = &self.items[*at].acts[number];
            let weight = count * x[*at];
            let mut practice: Vec<Option<Variable>> = vec![None; group.targets.len()];
            for (slot, (what, minutes)) in group.targets.iter().enumerate() {
                if served(acts, *what) {
                    let price = problem.add_var(0.0, (0.0, f64::INFINITY));
                    practice[slot] = Some(price);
                    for (worth, half) in std::iter::zip(self.worth, halves[slot]) {
                        let over = problem.add_var(weight * minutes / 2.0, (0.0, f64::INFINITY));
                        let row = [(over, 1.0), (price, 1.0), (half, 1.0)];
                        problem.add_constraint(row, ComparisonOp::Ge, worth);
                    }
                }
            }
            if acts.is_empty() {
                continue;
            }
            for worth in [1.0, self.stale_worth] {
                let over = problem.add_var(weight * self.stale, (0.0, f64::INFINITY));
                for act in acts {
                    let mut row = vec![(over, 1.0), (time, 1.0)];
                    row.extend(
                        stations
                            .get(*at)
                            .copied()
                            .flatten()
                            .map(|price| (price, 1.0)),
                    );
                    row.extend(gifts(group, act, &practice).map(|(price, e)| (price, -worth * e)));
                    problem.add_constraint(row, ComparisonOp::Ge, 0.0);
                }
            }
            if acts.iter().any(|act| act.yields.len() > 1) {
                mixed.push((*at, practice));
            }
        }
        PriceRows {
            time,
            halves,
            mixed,
        }
    }
}

/// One figure whose activities serve several skills, at the prices of one group.
struct Mixed {
    /// Of each skill that is served: its slot, what its halves are worth over their prices,
    /// and the minutes of a half.
    slots: Vec<(usize, [f64; 2], f64)>,
    /// Of each activity what it gives, in the order of the slots.
    gives: Vec<Vec<f64>>,
    time: f64,
    stretches: [f64; 2],
    stale: f64,
}

impl Mixed {
    fn new(
        programme: &Programme,
        group: &Group,
        acts: &[Act],
        time: f64,
        halves: &[[f64; 2]],
    ) -> Mixed {
        let slots: Vec<(usize, [f64; 2], f64)> = std::iter::zip(&group.targets, halves)
            .enumerate()
            .filter(|(_, ((what, _), _))| served(acts, *what))
            .map(|(slot, ((_, minutes), half))| {
                let [first, second] = programme.worth;
                (slot, [first - half[0], second - half[1]], minutes / 2.0)
            })
            .collect();
        let gives = |act: &Act| {
            let gift = |slot: usize| {
                let mut gifts = act
                    .yields
                    .iter()
                    .filter(|gift| gift.0 == group.targets[slot].0);
                gifts.next().map_or(0.0, |gift| gift.1)
            };
            slots.iter().map(|(slot, ..)| gift(*slot)).collect()
        };
        Mixed {
            gives: acts.iter().map(gives).collect(),
            slots,
            time,
            stretches: [1.0, programme.stale_worth],
            stale: programme.stale,
        }
    }

    /// What the figure earns at most, by prices of practice: true of any that are not
    /// negative.
    fn sum(&self, prices: &[f64]) -> f64 {
        let price = |slot: usize| prices.get(slot).copied().unwrap_or(0.0);
        let practice = self.slots.iter().map(|(slot, pays, minutes)| {
            let over = |pays: f64| (pays - price(*slot)).max(0.0);
            minutes * (over(pays[0]) + over(pays[1]))
        });
        let best = self
            .gives
            .iter()
            .map(|gives| self.paid(gives, prices))
            .fold(0.0, f64::max);
        let time = self
            .stretches
            .iter()
            .map(|worth| (worth * best - self.time).max(0.0));
        practice.sum::<f64>() + self.stale * time.sum::<f64>()
    }

    fn paid(&self, gives: &[f64], prices: &[f64]) -> f64 {
        std::iter::zip(&self.slots, gives)
            .map(|((slot, ..), e)| e * prices.get(*slot).copied().unwrap_or(0.0))
            .sum()
    }

    /// Prices of practice that hold the sum down: along the ray of what practice pays, then
    /// skill by skill where the sum bends.
    fn practice_prices(&self, slots: usize) -> Vec<f64> {
        /// Steps along the ray, and rounds over the skills.
        const STEPS: u32 = 8;
        const ROUNDS: usize = 2;
        let along = |step: u32| {
            let mut prices = vec![0.0; slots];
            for (slot, pays, _) in &self.slots {
                let pays = pays[0].max(pays[1]).max(0.0);
                prices[*slot] = pays * f64::from(step) / f64::from(STEPS);
            }
            prices
        };
        let mut best = (f64::INFINITY, Vec::new());
        for step in 0..=STEPS {
            let prices = along(step);
            let sum = self.sum(&prices);
            if sum < best.0 {
                best = (sum, prices);
            }
        }
        let (mut sum, mut prices) = best;
        for _ in 0..ROUNDS {
            for (place, (slot, pays, _)) in self.slots.iter().enumerate() {
                let mut bends = vec![0.0, pays[0], pays[1]];
                for gives in self.gives.iter().filter(|gives| gives[place] > 0.0) {
                    let others = self.paid(gives, &prices) - gives[place] * prices[*slot];
                    bends.extend(
                        self.stretches
                            .iter()
                            .map(|worth| (self.time / worth - others) / gives[place]),
                    );
                }
                for bend in bends {
                    let before = prices[*slot];
                    prices[*slot] = if bend.is_finite() {
                        bend.max(0.0)
                    } else {
                        before
                    };
                    let now = self.sum(&prices);
                    if now < sum {
                        sum = now;
                    } else {
                        prices[*slot] = before;
                    }
                }
            }
        }
        prices
    }
}

struct PriceRows {
    time: Variable,
    halves: Vec<[Variable; 2]>,
    /// Of practice, by item and slot.
    mixed: Vec<(usize, Vec<Option<Variable>>)>,
}

impl PriceRows {
    fn read(&self, solution: &Solution) -> Prices {
        let price = |of: Variable| solution.var_value(of).max(0.0);
        Prices {
            time: price(self.time),
            halves: self.halves.iter().map(|pair| pair.map(price)).collect(),
            mixed: self
                .mixed
                .iter()
                .map(|(item, of)| (*item, read(of, solution)))
                .collect(),
        }
    }
}

fn read(prices: &[Option<Variable>], solution: &Solution) -> Vec<f64> {
    let price = |of: Variable| solution.var_value(of).max(0.0);
    prices.iter().map(|of| of.map_or(0.0, price)).collect()
}

/// Whether one of the activities practises a skill.
fn served(acts: &[Act], what: super::Slot) -> bool {
    let mut all = acts.iter().flat_map(|act| &act.yields);
    all.any(|gift| gift.0 == what)
}

/// The prices of what an activity gives, with e.
fn gifts<'a>(
    group: &'a Group,
    act: &'a Act,
    practice: &'a [Option<Variable>],
) -> impl Iterator<Item = (Variable, f64)> + 'a {
    act.yields
        .iter()
        .filter_map(|(what, e)| Some((practice[group.slot(*what)?]?, *e)))
}

fn solved(problem: &Problem) -> Result<Solution, Unsolved> {
    problem
        .solve()
        .map_err(unsolved)?
        .into_solution()
        .map_err(|_| Unsolved("a linear programme without limits was interrupted".to_owned()))
}
