//! Branch and bound over works in the order of their starts.

use std::collections::BTreeMap;

use super::bound::{Chains, filled};
use super::place::{Placed, Table};

/// What the proof came to.
pub(crate) struct Proof {
    /// A better plan than was known.
    pub better: Option<Placed>,
    /// Whether every plan was looked at or cut for a reason.
    pub whole: bool,
    /// Partial plans looked at.
    pub nodes: usize,
}

/// Plans for one set of works that are remembered.
const OF_ONE_SET: usize = 8;

/// Sets of works that are remembered.
const SETS: usize = 200_000;

/// Looks for a plan that ends before `end`.
pub(crate) fn prove(table: &Table, chains: &Chains, end: i64, nodes: usize) -> Proof {
    let many = table.problem.works.len();
    let mut search = Search {
        table,
        chains,
        placed: Placed::none(many),
        end,
        better: None,
        left: nodes,
        known: BTreeMap::new(),
    };
    let whole = search.go(i64::MIN);
    Proof {
        better: search.better,
        whole,
        nodes: nodes - search.left,
    }
}

/// A plan for a set of works: the last start, and each end with the time it lingers to.
type Known = (i64, Vec<(i64, i64)>);

struct Search<'a> {
    table: &'a Table<'a>,
    chains: &'a Chains<'a>,
    placed: Placed,
    end: i64,
    better: Option<Placed>,
    left: usize,
    known: BTreeMap<Vec<u64>, Vec<Known>>,
}

impl Search<'_> {
    /// All that can follow what is placed, nothing starting before `now`; whether it was
    /// looked at to the end.
    fn go(&mut self, now: i64) -> bool {
        let many = self.placed.when.len();
        if self.placed.works.len() == many {
            let ends = self.placed.when.iter().flatten().map(|(_, end)| *end);
            let end = ends.max().unwrap_or(0);
            if end < self.end {
                self.end = end;
                self.better = Some(self.placed.clone());
            }
            return true;
        }
        if self.left == 0 {
            return false;
        }
        self.left -= 1;
        if self.beaten(now) {
            return true;
        }
        let Some(next) = self.next(now) else {
            return true;
        };
        let mut whole = true;
        for (start, end, _, work) in next {
            // A better plan may have been found since.
            if end + self.chains.tails[work] >= self.end {
                continue;
            }
            self.placed.put(work, start, end);
            whole &= self.go(start);
            self.placed.take_back();
            if self.left == 0 {
                return false;
            }
        }
        whole
    }

    /// Works that may come next, the earliest first; `None` where what is left cannot end
    /// sooner than the best plan.
    fn next(&self, now: i64) -> Option<Vec<(i64, i64, i64, usize)>> {
        let problem = self.table.problem;
        let mut next = Vec::new();
        let mut first = i64::MAX;
        for work in 0..self.placed.when.len() {
            let open = self.placed.when[work].is_none()
                && self.table.before[work]
                    .iter()
                    .all(|link| self.placed.when[link.from].is_some());
            if !open {
                continue;
            }
            // No window left: nor will there be later.
            let start = self.table.earliest(work, &self.placed, now)?;
            let end = problem.end(work, start);
            if end + self.chains.tails[work] >= self.end {
                return None;
            }
            // What is done and dry by then might as well have been first.
            first = first.min(problem.drying.after(end, self.table.lingers[work]));
            next.push((start, end, -self.chains.tails[work], work));
        }
        if self.too_few_hands(now) {
            return None;
        }
        next.retain(|(start, end, _, _)| *start < first || start == end);
        next.sort_unstable_by_key(|(start, _, tail, work)| (*start, *tail, *work));
        Some(next)
    }

    /// Whether some resource cannot do what is left before the best plan's end.
    fn too_few_hands(&self, now: i64) -> bool {
        let problem = self.table.problem;
        let first = problem.windows.first().map_or(0, |(open, _)| *open);
        let now = now.max(first);
        let capacity = problem.capacity.iter().enumerate();
        capacity.into_iter().any(|(resource, capacity)| {
            let energy: f64 = (0..problem.works.len())
                .map(|work| {
                    let seconds = match self.placed.when[work] {
                        Some((_, end)) if end > now => problem.pace.between(now, end),
                        Some(_) => 0.0,
                        None => problem.works[work].seconds as f64,
                    };
                    f64::from(problem.need(work, resource)) * seconds
                })
                .sum();
            *capacity > 0 && filled(problem, now, energy / f64::from(*capacity)) >= self.end
        })
    }

    /// Whether the same works were placed before and nothing of it was later; if not, this
    /// plan is remembered.
    fn beaten(&mut self, now: i64) -> bool {
        let problem = self.table.problem;
        let many = self.placed.when.len();
        let mut set = vec![0_u64; many.div_ceil(64)];
        for &work in &self.placed.works {
            set[work / 64] |= 1 << (work % 64);
        }
        let here: Vec<(i64, i64)> = (0..many)
            .map(|work| {
                let end = self.placed.when[work].map_or(i64::MIN, |(_, end)| end);
                let lingers = match self.placed.when[work] {
                    Some(_) => problem.drying.after(end, self.table.lingers[work]),
                    None => i64::MIN,
                };
                (end, lingers)
            })
            .collect();
        let no_later = |known: &Known| {
            known.0 <= now
                && known
                    .1
                    .iter()
                    .zip(&here)
                    .all(|(known, here)| known.0 <= here.0 || known.1 <= now)
        };
        if let Some(known) = self.known.get_mut(&set) {
            if known.iter().any(no_later) {
                return true;
            }
            if known.len() < OF_ONE_SET {
                known.push((now, here));
            }
        } else if self.known.len() < SETS {
            self.known.insert(set, vec![(now, here)]);
        }
        false
    }
}
