//! One walk past all key points with little tape moving.
//!
//! Each stop may be served from one of several sets of bases. What it costs to go from one
//! stop to the next is the way on foot, the way that tapes' ends are carried, and a fixed
//! cost for each end that is moved. Wanted is the order of the stops and the choice of a set
//! at each: a travelling salesman's path whose towns have several gates.
//!
//! # Method
//! Up to a dozen stops, all orders and all choices at once (Held and Karp's recursion over
//! the stops that have been seen). Beyond that: exact choice of the sets for a given order
//! (dynamic programming), local search over the order for given sets (reversals, and up to
//! three stops moved elsewhere, either way round), in turn until neither helps; the path is
//! cut in three places, its middle parts swapped, and the search repeated. Last, each run of
//! stops that follow one another is put in its best order, as a dozen would be. The numbers
//! behind the cuts are a fixed sequence.

use geo::Coord;

use crate::keys::between;

/// Where one has to go and what may be hooked to there.
#[derive(Clone, Debug, PartialEq)]
pub struct Stops {
    /// Metres.
    pub at: Vec<Coord<f64>>,
    /// For each stop the sets of bases that serve it, at least one; at most three bases in
    /// a set.
    pub sets: Vec<Vec<Vec<usize>>>,
    /// Where the bases are, metres.
    pub bases: Vec<Coord<f64>>,
    /// What moving an end costs besides the way, metres.
    pub moving: f64,
}

/// An order of the stops with a set for each.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Stops in the order of the walk.
    pub stops: Vec<usize>,
    /// Number of the set that serves each stop, by stop.
    pub sets: Vec<usize>,
    /// What it costs, metres.
    pub cost: f64,
}

/// A gain smaller than this is rounding, metres.
const GAIN: f64 = 1e-9;

/// Walks of so many stops are found exactly.
const EXACT: usize = 12;

/// Of longer walks, so many stops that follow one another are put in their best order.
const RUN: usize = 8;

/// Cuts of the path.
const CUTS: usize = 480;

impl Stops {
    /// What it costs to carry the tapes' ends from one set of bases to another, metres: the
    /// cheapest way to hand the ends over. Where the sets differ in number, ends that are not
    /// needed stay.
    pub fn handing(&self, from: &[usize], to: &[usize]) -> f64 {
        let (few, many) = if from.len() <= to.len() {
            (from, to)
        } else {
            (to, from)
        };
        let pay = |a: usize, b: usize| match (self.bases.get(a), self.bases.get(b)) {
            (Some(a_at), Some(b_at)) if a != b => self.moving + between(*a_at, *b_at),
            _ => 0.0,
        };
        cheapest(few, many, &pay)
    }

    /// What it costs to go from one stop to the next, metres.
    pub fn going(&self, from: (usize, usize), to: (usize, usize)) -> f64 {
        let set = |(stop, set): (usize, usize)| {
            self.sets
                .get(stop)
                .and_then(|sets| sets.get(set))
                .map_or(&[][..], Vec::as_slice)
        };
        between(self.at[from.0], self.at[to.0]) + self.handing(set(from), set(to))
    }
}

/// The cheapest matching of all of `few` with some of `many`.
fn cheapest(few: &[usize], many: &[usize], pay: &impl Fn(usize, usize) -> f64) -> f64 {
    let Some((first, rest)) = few.split_first() else {
        return 0.0;
    };
    (0..many.len())
        .map(|at| {
            let mut left = many.to_vec();
            let taken = left.remove(at);
            pay(*first, taken) + cheapest(rest, &left, pay)
        })
        .fold(f64::INFINITY, f64::min)
}

/// A short walk past all stops: the shortest of all up to twelve.
pub fn walk(stops: &Stops) -> Order {
    let count = stops.at.len();
    let search = Search::new(stops);
    if count <= EXACT {
        let all: Vec<usize> = (0..count).collect();
        return search.order(search.best(&all, None, None).0);
    }
    let start = search.settle(search.nearest(0));
    let mut dice = Dice(0x9e37_79b9_7f4a_7c15);
    let (mut here, mut best) = (start.clone(), start);
    for _ in 0..CUTS {
        let mut sets = here.sets.clone();
        for _ in 0..=dice.below(count) {
            let stop = dice.below(count);
            sets[stop] = dice.below(search.sets[stop]);
        }
        let mut path = cut(&here.stops, &mut dice);
        search.shorten(&mut path, &sets);
        let found = search.settle(path);
        if found.cost <= here.cost * NO_WORSE {
            here = found;
            if here.cost < best.cost - GAIN {
                best = here.clone();
            }
        } else if dice.below(count) == 0 {
            here = best.clone();
        }
    }
    search.order(search.in_runs(best))
}

/// A path longer than the one before by no more than this is gone on from: a shorter one may
/// lie behind it.
const NO_WORSE: f64 = 1.03;

/// Swaps two neighbouring parts of the path, or turns one of them round as well.
fn cut(stops: &[usize], dice: &mut Dice) -> Vec<usize> {
    let mut at = [0; 3].map(|_: usize| dice.below(stops.len() + 1));
    at.sort_unstable();
    let [a, b, c] = at;
    let mut path = stops[..a].to_vec();
    path.extend(&stops[b..c]);
    match dice.below(2) {
        0 => path.extend(&stops[a..b]),
        _ => path.extend(stops[a..b].iter().rev()),
    }
    path.extend(&stops[c..]);
    path
}

/// A fixed sequence of numbers (xorshift64).
struct Dice(u64);

impl Dice {
    fn below(&mut self, top: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % top.max(1) as u64) as usize
    }
}

/// All costs, once.
struct Search {
    /// Sets of each stop.
    sets: Vec<usize>,
    /// Sets of the stop that has most.
    most: usize,
    /// From stop and set to stop and set.
    costs: Vec<f64>,
}

impl Search {
    fn new(stops: &Stops) -> Search {
        let sets: Vec<usize> = stops
            .at
            .iter()
            .enumerate()
            .map(|(at, _)| stops.sets.get(at).map_or(1, |sets| sets.len().max(1)))
            .collect();
        let most = sets.iter().copied().max().unwrap_or(1);
        let wide = sets.len() * most;
        let mut costs = vec![0.0; wide * wide];
        for from in 0..wide {
            for to in 0..wide {
                let [a, b] = [from, to].map(|node| (node / most, node % most));
                if a.0 != b.0 && a.1 < sets[a.0] && b.1 < sets[b.0] {
                    costs[from * wide + to] = stops.going(a, b);
                }
            }
        }
        Search { sets, most, costs }
    }

    fn going(&self, from: (usize, usize), to: (usize, usize)) -> f64 {
        let wide = self.sets.len() * self.most;
        self.costs[(from.0 * self.most + from.1) * wide + to.0 * self.most + to.1]
    }

    /// A path of stops and sets as it is handed on.
    fn order(&self, path: Vec<(usize, usize)>) -> Order {
        let mut sets = vec![0; self.sets.len()];
        for (stop, set) in &path {
            sets[*stop] = *set;
        }
        Order {
            cost: path.windows(2).map(|two| self.going(two[0], two[1])).sum(),
            stops: path.into_iter().map(|(stop, _)| stop).collect(),
            sets,
        }
    }

    /// The best order of some stops, fifteen at most, with their sets, between what comes
    /// before and after; and what it costs with the steps from and to those.
    fn best(
        &self,
        part: &[usize],
        before: Option<(usize, usize)>,
        after: Option<(usize, usize)>,
    ) -> (Vec<(usize, usize)>, f64) {
        let nodes: Vec<(usize, (usize, usize))> = part
            .iter()
            .enumerate()
            .flat_map(|(bit, &stop)| (0..self.sets[stop]).map(move |set| (1 << bit, (stop, set))))
            .collect();
        let step = |from: Option<(usize, usize)>, to: Option<(usize, usize)>| match (from, to) {
            (Some(from), Some(to)) => self.going(from, to),
            _ => 0.0,
        };
        let wide = nodes.len();
        let all = (1usize << part.len()) - 1;
        // by stops seen and the node that one stands on: the cost, and the node before
        let mut table = vec![(f64::INFINITY, usize::MAX); (all + 1) * wide];
        for (at, &(bit, node)) in nodes.iter().enumerate() {
            table[bit * wide + at].0 = step(before, Some(node));
        }
        for seen in 1..all {
            for (here, &(_, node)) in nodes.iter().enumerate() {
                let (so_far, _) = table[seen * wide + here];
                if so_far.is_finite() {
                    for (next, &(bit, onward)) in nodes.iter().enumerate() {
                        if seen & bit == 0 {
                            let total = so_far + self.going(node, onward);
                            let place = &mut table[(seen | bit) * wide + next];
                            if total < place.0 - GAIN {
                                *place = (total, here);
                            }
                        }
                    }
                }
            }
        }
        let mut last = (usize::MAX, f64::INFINITY);
        for (at, &(_, node)) in nodes.iter().enumerate() {
            let total = table[all * wide + at].0 + step(Some(node), after);
            if total < last.1 - GAIN {
                last = (at, total);
            }
        }
        let (mut here, cost) = last;
        let (mut seen, mut path) = (all, Vec::with_capacity(part.len()));
        while let Some(&(bit, node)) = nodes.get(here) {
            path.push(node);
            here = table[seen * wide + here].1;
            seen ^= bit;
        }
        path.reverse();
        (path, cost)
    }

    /// Each run of neighbours in its best order, again and again until none gets shorter.
    fn in_runs(&self, order: Order) -> Vec<(usize, usize)> {
        let mut path: Vec<(usize, usize)> = order
            .stops
            .iter()
            .map(|&stop| (stop, order.sets[stop]))
            .collect();
        let mut any = true;
        while any {
            any = false;
            for from in 0..=path.len().saturating_sub(RUN) {
                let to = (from + RUN).min(path.len());
                let before = from.checked_sub(1).map(|at| path[at]);
                let after = path.get(to).copied();
                let now: f64 = before
                    .iter()
                    .chain(&path[from..to])
                    .chain(&after)
                    .collect::<Vec<_>>()
                    .windows(2)
                    .map(|two| self.going(*two[0], *two[1]))
                    .sum();
                let part: Vec<usize> = path[from..to].iter().map(|node| node.0).collect();
                let (found, cost) = self.best(&part, before, after);
                if cost < now - GAIN && found.len() == part.len() {
                    path[from..to].copy_from_slice(&found);
                    any = true;
                }
            }
        }
        path
    }

    /// Always on to the stop that costs least, each by its first set.
    fn nearest(&self, start: usize) -> Vec<usize> {
        let mut left: Vec<usize> = (0..self.sets.len()).filter(|&stop| stop != start).collect();
        let mut path = vec![start];
        let mut here = start;
        while !left.is_empty() {
            let next = (0..left.len())
                .min_by(|&a, &b| {
                    self.going((here, 0), (left[a], 0))
                        .total_cmp(&self.going((here, 0), (left[b], 0)))
                })
                .unwrap_or(0);
            here = left.remove(next);
            path.push(here);
        }
        path
    }

    /// Both searches in turn until neither helps.
    fn settle(&self, mut path: Vec<usize>) -> Order {
        let (mut sets, mut cost) = self.choose(&path);
        loop {
            self.shorten(&mut path, &sets);
            let (chosen, found) = self.choose(&path);
            let done = found >= cost - GAIN;
            (sets, cost) = (chosen, found);
            if done {
                return Order {
                    stops: path,
                    sets,
                    cost,
                };
            }
        }
    }

    /// The best sets for an order, by stop, and what it costs.
    fn choose(&self, path: &[usize]) -> (Vec<usize>, f64) {
        let mut sets = vec![0; self.sets.len()];
        let Some((&first, rest)) = path.split_first() else {
            return (sets, 0.0);
        };
        let mut costs = vec![0.0; self.sets[first]];
        let mut came = Vec::with_capacity(rest.len());
        let mut here = first;
        for &next in rest {
            let mut from = vec![0; self.sets[next]];
            let mut onward = vec![f64::INFINITY; self.sets[next]];
            for (to, least) in onward.iter_mut().enumerate() {
                for (set, cost) in costs.iter().enumerate() {
                    let total = cost + self.going((here, set), (next, to));
                    if total < *least - GAIN {
                        (*least, from[to]) = (total, set);
                    }
                }
            }
            (costs, here) = (onward, next);
            came.push(from);
        }
        let mut set = 0;
        for (at, cost) in costs.iter().enumerate() {
            if *cost < costs[set] - GAIN {
                set = at;
            }
        }
        let total = costs[set];
        for (at, stop) in path.iter().enumerate().rev() {
            sets[*stop] = set;
            if at > 0 {
                set = came[at - 1][set];
            }
        }
        (sets, total)
    }

    /// Local search over the order, the sets being given.
    fn shorten(&self, path: &mut [usize], sets: &[usize]) {
        while self.turn_round(path, sets) || self.move_elsewhere(path, sets) {}
    }

    /// What the step between two neighbours costs; nothing past the path's ends.
    fn step(&self, from: Option<usize>, to: Option<usize>, sets: &[usize]) -> f64 {
        match (from, to) {
            (Some(a), Some(b)) => self.going((a, sets[a]), (b, sets[b])),
            _ => 0.0,
        }
    }

    /// Turns parts of the path round where that is shorter; whether any was.
    fn turn_round(&self, path: &mut [usize], sets: &[usize]) -> bool {
        let mut any = false;
        for i in 0..path.len() {
            let before = i.checked_sub(1).map(|at| path[at]);
            for j in i + 1..path.len() {
                let after = path.get(j + 1).copied();
                let (first, last) = (Some(path[i]), Some(path[j]));
                let now = self.step(before, first, sets) + self.step(last, after, sets);
                let then = self.step(before, last, sets) + self.step(first, after, sets);
                if then < now - GAIN {
                    path[i..=j].reverse();
                    any = true;
                }
            }
        }
        any
    }

    /// Moves up to three neighbours elsewhere, either way round, where that is shorter;
    /// whether any were.
    fn move_elsewhere(&self, path: &mut [usize], sets: &[usize]) -> bool {
        let mut any = false;
        for long in 1..=3.min(path.len().saturating_sub(1)) {
            for i in 0..=path.len() - long {
                if let Some((at, reversed)) = self.better_place(path, i, long, sets) {
                    if reversed {
                        path[i..i + long].reverse();
                    }
                    if at < i {
                        path[at..i + long].rotate_right(long);
                    } else {
                        path[i..at + long].rotate_left(long);
                    }
                    any = true;
                }
            }
        }
        any
    }

    /// Where a part of the path would stand better: before this stop of the rest, and
    /// whether the other way round.
    fn better_place(
        &self,
        path: &[usize],
        i: usize,
        long: usize,
        sets: &[usize],
    ) -> Option<(usize, bool)> {
        let rest = |at: usize| path.get(if at < i { at } else { at + long }).copied();
        let (first, last) = (path.get(i).copied(), path.get(i + long - 1).copied());
        let before = i.checked_sub(1).and_then(rest);
        let after = rest(i);
        let freed = self.step(before, first, sets) + self.step(last, after, sets)
            - self.step(before, after, sets);
        (0..=path.len() - long)
            .filter(|&at| at != i)
            .find_map(|at| {
                let (left, right) = (at.checked_sub(1).and_then(rest), rest(at));
                let open = self.step(left, right, sets);
                [(first, last, false), (last, first, true)]
                    .into_iter()
                    .find(|&(a, b, _)| {
                        self.step(left, a, sets) + self.step(b, right, sets) - open < freed - GAIN
                    })
                    .map(|(_, _, reversed)| (at, reversed))
            })
    }
}
