//! What no plan can beat.
//!
//! Chains: each work as early as its links and the windows allow. Turns: works of a place that
//! keep each other off until they have dried take their times and the gaps between them, in
//! whatever order. Hands: what a set of works takes of a resource cannot be done before the
//! windows hold it, and after the last of them its own chain and its place's turns still go
//! on. Works of which no two fit beside each other count as one resource of their own.

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
    turns: Vec<Turns>,
}

/// Works of one place of which every two are so far apart, whichever comes first.
struct Turns {
    works: Vec<usize>,
    gap: i64,
}

impl<'a> Chains<'a> {
    pub fn new(problem: &'a Problem<'a>) -> Option<Chains<'a>> {
        let order = problem.order()?;
        let mut chains = Chains {
            problem,
            early: vec![(0, 0); order.len()],
            tails: vec![0; order.len()],
            turns: Vec::new(),
            order,
        };
        chains.early = chains.pass(None)?;
        let (dries, works) = (problem.drying.fastest(), problem.pace.fastest());
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
        chains.turns = chains.all_turns();
        Some(chains)
    }

    fn end(&self) -> i64 {
        self.last(&self.early)
    }

    /// No plan ends before, if no work is earlier than told.
    fn last(&self, early: &[(i64, i64)]) -> i64 {
        let chains = early.iter().map(|(_, end)| *end).max().unwrap_or(0);
        let turns = self.turns.iter().map(|turns| self.taken(turns, early));
        turns.fold(chains, i64::max)
    }

    /// Works by place that keep each other off. Numbers from the last down: coats, which wait
    /// for one another, come after what goes before them.
    fn all_turns(&self) -> Vec<Turns> {
        let problem = self.problem;
        let apart = self.apart();
        let mut places: Vec<usize> = problem.works.iter().filter_map(|work| work.place).collect();
        places.sort_unstable();
        places.dedup();
        let of = |place: usize| {
            let mut works: Vec<usize> = Vec::new();
            let mut gap = i64::MAX;
            for work in (0..problem.works.len())
                .rev()
                .filter(|work| problem.works[*work].place == Some(place))
            {
                let off =
                    |other: &usize| apart.get(&(*other.min(&work), *other.max(&work))).copied();
                let Some(least) = works.iter().map(off).min() else {
                    works.push(work);
                    continue;
                };
                if let Some(least) = least.filter(|least| *least > 0) {
                    works.push(work);
                    gap = gap.min(least);
                }
            }
            Turns { works, gap }
        };
        let turns = places.into_iter().map(of);
        turns.filter(|turns| turns.works.len() > 1).collect()
    }

    /// The least time between two works, the smaller number first, where they never meet.
    fn apart(&self) -> BTreeMap<(usize, usize), i64> {
        let problem = self.problem;
        let dries = problem.drying.fastest();
        let mut apart: BTreeMap<(usize, usize), i64> = BTreeMap::new();
        let mut keep = |a: usize, b: usize, gap: i64| {
            let known = apart.entry((a.min(b), a.max(b))).or_insert(gap);
            *known = gap.max(*known);
        };
        for pair in &problem.apart {
            let [a, b] = pair.works;
            keep(a, b, quick(pair.dry[0].min(pair.dry[1]), dries));
        }
        // The longest way from each end to each later start.
        let many = self.order.len();
        for &from in &self.order {
            let mut far: Vec<Option<i64>> = vec![None; many];
            for &at in &self.order {
                let gone = match far[at] {
                    _ if at == from => Some(0),
                    Some(far) => {
                        Some(far + quick(problem.works[at].seconds, problem.pace.fastest()))
                    }
                    None => None,
                };
                let Some(gone) = gone else { continue };
                for link in problem.links.iter().filter(|link| link.from == at) {
                    if let Wait::Dry(seconds) = link.wait {
                        far[link.to] = far[link.to].max(Some(gone + quick(seconds, dries)));
                    }
                }
            }
            for (to, far) in far.into_iter().enumerate() {
                if let Some(far) = far {
                    keep(from, to, far);
                }
            }
        }
        apart
    }

    /// When works that take turns can all be done, and what follows the last of them.
    fn taken(&self, turns: &Turns, early: &[(i64, i64)]) -> i64 {
        let problem = self.problem;
        let mut heads: Vec<i64> = turns.works.iter().map(|work| early[*work].0).collect();
        heads.sort_unstable();
        heads.dedup();
        let of = |head: i64| {
            let set = || {
                turns
                    .works
                    .iter()
                    .copied()
                    .filter(|work| early[*work].0 >= head)
            };
            let seconds: i64 = set().map(|work| problem.works[work].seconds).sum();
            let gaps = (set().count() as i64 - 1) * turns.gap;
            let told = filled(problem, head, seconds as f64)
                .max(head + quick(seconds, problem.pace.fastest()) + gaps);
            set()
                .map(|work| self.lands(work, told) + self.tails[work])
                .min()
        };
        heads.into_iter().filter_map(of).max().unwrap_or(0)
    }

    /// The first time from `told` on at which a work can end within a window.
    fn lands(&self, work: usize, told: i64) -> i64 {
        let problem = self.problem;
        problem
            .windows
            .iter()
            .map(|(open, shut)| (told.max(problem.end(work, *open)), *shut))
            .find(|(end, shut)| end <= shut)
            .map_or(told, |(end, _)| end)
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
            if let Some((_, told)) = late.filter(|late| late.0 == work && late.1 > end) {
                end = self.lands(work, told);
            }
            early[work] = (start, end);
        }
        Some(early)
    }

    /// The end of all if one work ends no sooner than told.
    fn end_after(&self, work: usize, told: i64) -> i64 {
        let pass = self.pass(Some((work, told)));
        pass.map_or(i64::MAX, |early| self.last(&early))
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

/// Whole seconds that something takes at least.
fn quick(seconds: i64, fastest: f64) -> i64 {
    (seconds as f64 * fastest).floor() as i64
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
