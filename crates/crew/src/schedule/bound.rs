//! What no plan can beat.
//!
//! Chains: each work as early as its links and the windows allow. Hands: what a set of works
//! takes of a resource cannot be done before the windows hold it, and after the last of them
//! its own chain still goes on. Works of which no two fit beside each other count as one
//! resource of their own.

use std::collections::BTreeMap;

use super::{Problem, Wait};

/// A time before which no plan ends. `None` where the links go in a circle or a work fits
/// into no window.
pub fn bound(problem: &Problem) -> Option<i64> {
    let chains = Chains::new(problem)?;
    let mut least = chains.end();
    for (resource, capacity) in problem.capacity.iter().enumerate() {
        let all: Vec<(usize, f64)> = (0..problem.works.len())
            .map(|work| (work, f64::from(problem.need(work, resource))))
            .filter(|(_, need)| *need > 0.0)
            .collect();
        least = least.max(chains.hands(&all, f64::from(*capacity)));
        let alone: Vec<(usize, f64)> = all
            .iter()
            .filter(|(_, need)| *need * 2.0 > f64::from(*capacity))
            .map(|(work, _)| (*work, 1.0))
            .collect();
        least = least.max(chains.hands(&alone, 1.0));
    }
    Some(least)
}

/// The earliest that everything could be, and what must still follow.
pub(crate) struct Chains<'a> {
    problem: &'a Problem<'a>,
    order: Vec<usize>,
    /// Earliest start and end of each work by links and windows alone.
    pub early: Vec<(i64, i64)>,
    /// Least time from a work's end to the end of all.
    pub tails: Vec<i64>,
}

impl<'a> Chains<'a> {
    pub fn new(problem: &'a Problem<'a>) -> Option<Chains<'a>> {
        let order = problem.order()?;
        let mut chains = Chains {
            problem,
            early: vec![(0, 0); order.len()],
            tails: vec![0; order.len()],
            order,
        };
        chains.early = chains.pass(None)?;
        let (dries, works) = (problem.drying.fastest(), problem.pace.fastest());
        let quick = |seconds: i64, scale: f64| (seconds as f64 * scale).floor() as i64;
        for &work in chains.order.iter().rev() {
            for link in problem.links.iter().filter(|link| link.to == work) {
                if let Wait::Dry(seconds) = link.wait {
                    let tail = quick(seconds, dries)
                        + quick(problem.works[work].seconds, works)
                        + chains.tails[work];
                    chains.tails[link.from] = chains.tails[link.from].max(tail);
                }
            }
        }
        Some(chains)
    }

    fn end(&self) -> i64 {
        self.early.iter().map(|(_, end)| *end).max().unwrap_or(0)
    }

    /// All works as early as links and windows allow, one of them ending no sooner than told.
    fn pass(&self, late: Option<(usize, i64)>) -> Option<Vec<(i64, i64)>> {
        let problem = self.problem;
        let first = problem.windows.first().map_or(0, |(open, _)| *open);
        let mut early = vec![(0, 0); self.order.len()];
        for &work in &self.order {
            let mut from = first;
            for link in problem.links.iter().filter(|link| link.to == work) {
                let (start, end) = early[link.from];
                from = from.max(problem.allowed(link.wait, start, end));
            }
            let start = problem.in_window(work, from)?;
            let mut end = problem.end(work, start);
            if let Some((_, told)) = late.filter(|(late, _)| *late == work) {
                end = end.max(told);
            }
            early[work] = (start, end);
        }
        Some(early)
    }

    /// The end of all if one work ends no sooner than told.
    fn end_after(&self, work: usize, told: i64) -> i64 {
        let pass = self.pass(Some((work, told)));
        pass.map_or(i64::MAX, |early| {
            early.iter().map(|(_, end)| *end).max().unwrap_or(0)
        })
    }

    /// The best bound by what sets of works take of `capacity`.
    fn hands(&self, works: &[(usize, f64)], capacity: f64) -> i64 {
        if works.is_empty() || capacity <= 0.0 {
            return i64::MIN;
        }
        let mut heads: Vec<i64> = works.iter().map(|(work, _)| self.early[*work].0).collect();
        heads.sort_unstable();
        heads.dedup();
        let mut known: BTreeMap<(usize, i64), i64> = BTreeMap::new();
        let mut best = i64::MIN;
        for head in heads {
            let mut set: Vec<(usize, f64)> = works
                .iter()
                .filter(|(work, _)| self.early[*work].0 >= head)
                .copied()
                .collect();
            set.sort_by_key(|(work, _)| (std::cmp::Reverse(self.tails[*work]), *work));
            let mut energy = 0.0;
            for many in 1..=set.len() {
                let (work, need) = set[many - 1];
                energy += need * self.problem.works[work].seconds as f64;
                let tail = self.tails[work];
                let more = set.get(many).map(|(next, _)| self.tails[*next]);
                if more == Some(tail) {
                    continue;
                }
                let done = filled(self.problem, head, energy / capacity);
                // One of the set is the last: whichever it is, its chain goes on from there.
                let mut least = i64::MAX;
                for &(last, _) in &set[..many] {
                    let end = *known
                        .entry((last, done))
                        .or_insert_with(|| self.end_after(last, done));
                    least = least.min(end);
                    if least <= best {
                        break;
                    }
                }
                best = best.max(least);
            }
        }
        best
    }
}

/// When so many seconds of work, done one after another from `from` on, are done.
pub(crate) fn filled(problem: &Problem, from: i64, seconds: f64) -> i64 {
    // Sums of shares are off by less than this.
    const HAIR: f64 = 1e-3;
    let mut left = seconds - HAIR;
    let mut last = from;
    for (open, shut) in &problem.windows {
        let start = from.max(*open);
        if start >= *shut {
            continue;
        }
        let room = problem.pace.between(start, *shut);
        if left <= room {
            return problem.pace.done(start, left.max(0.0));
        }
        left -= room;
        last = *shut;
    }
    last
}
