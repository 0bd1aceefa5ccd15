//! Orders of work: by priority, then by moving single works, then to the proof.

use chance::Chance;

use super::Problem;
use super::bound::{Chains, bound};
use super::exact::prove;
use super::place::{Placed, Table};

/// How much is looked at. The answer depends on these counts, never on time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Orders that are tried.
    pub tries: usize,
    /// Partial plans that the proof looks at.
    pub nodes: usize,
    /// Seed of the moves.
    pub seed: u64,
}

/// A plan and what is known of how good it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// Start and end of each work, seconds.
    pub when: Vec<(i64, i64)>,
    /// When the last work ends.
    pub end: i64,
    /// No plan ends before.
    pub bound: i64,
    /// Orders that were tried.
    pub tries: usize,
    /// Partial plans that the proof looked at.
    pub nodes: usize,
}

impl Solved {
    /// Whether no plan ends sooner.
    pub fn proven(&self) -> bool {
        self.bound >= self.end
    }
}

/// A plan's worth: its end, then how early everything is.
type Worth = (i64, i128);

/// As short a plan as the limits find. `None` where a work fits into no window that is left,
/// takes more of a resource than there is, or the links go in a circle.
pub fn solve(problem: &Problem, limits: Limits) -> Option<Solved> {
    let fits = |work: usize| {
        let capacity = problem.capacity.iter().enumerate();
        capacity
            .into_iter()
            .all(|(at, all)| problem.need(work, at) <= *all)
    };
    if !(0..problem.works.len()).all(fits) {
        return None;
    }
    let table = Table::new(problem);
    let chains = Chains::new(problem)?;
    let least = bound(problem)?;
    let (mut best, tries) = tried(&table, &chains, least, limits)?;
    let mut solved = Solved {
        end: worth(&best).0,
        when: best.all()?,
        bound: least,
        tries,
        nodes: 0,
    };
    if solved.end > least {
        let proof = prove(&table, &chains, solved.end, limits.nodes);
        solved.nodes = proof.nodes;
        if let Some(better) = proof.better {
            best = better;
            solved.end = worth(&best).0;
            solved.when = best.all()?;
        }
        if proof.whole {
            solved.bound = solved.end;
        }
    }
    Some(solved)
}

fn worth(placed: &Placed) -> Worth {
    let ends = placed.when.iter().flatten().map(|(_, end)| *end);
    let sum = ends.clone().map(i128::from).sum();
    (ends.max().unwrap_or(0), sum)
}

/// Moving single works about in the best order so far.
fn tried(table: &Table, chains: &Chains, least: i64, limits: Limits) -> Option<(Placed, usize)> {
    let many = table.problem.works.len();
    let mut list = by_priority(table, |work| {
        let (start, end) = chains.early[work];
        (std::cmp::Reverse(chains.tails[work] + end - start), work)
    });
    let mut best = table.serial(&list);
    let early = by_priority(table, |work| {
        (std::cmp::Reverse(-chains.early[work].0), work)
    });
    let other = table.serial(&early);
    let better = |a: &Option<Placed>, b: &Option<Placed>| match (a, b) {
        (Some(a), Some(b)) => worth(a) <= worth(b),
        (Some(_), None) => true,
        (None, _) => false,
    };
    if better(&other, &best) {
        (list, best) = (early, other);
    }
    let mut chance = Chance::new(limits.seed);
    let mut tries = 2;
    while tries < limits.tries && many > 1 {
        if best.as_ref().is_some_and(|best| worth(best).0 <= least) {
            break;
        }
        tries += 1;
        let mut next = list.clone();
        for _ in 0..=chance.below(3) {
            move_one(&mut next, table, &mut chance);
        }
        let placed = table.serial(&next);
        if better(&placed, &best) {
            (list, best) = (next, placed);
        }
    }
    Some((best?, tries))
}

/// A list that respects the links, always going on with the best that may come next.
fn by_priority<K: Ord>(table: &Table, key: impl Fn(usize) -> K) -> Vec<usize> {
    let many = table.problem.works.len();
    let mut done = vec![false; many];
    let mut list = Vec::with_capacity(many);
    while list.len() < many {
        let open = (0..many)
            .filter(|work| !done[*work])
            .filter(|work| table.before[*work].iter().all(|link| done[link.from]))
            .min_by_key(|work| key(*work));
        let Some(work) = open else { break };
        done[work] = true;
        list.push(work);
    }
    list
}

/// Moves one work to another place between what goes before it and what comes after.
fn move_one(list: &mut Vec<usize>, table: &Table, chance: &mut Chance) {
    let at = chance.below(list.len());
    let work = list.remove(at);
    let low = list
        .iter()
        .rposition(|other| table.before[work].iter().any(|link| link.from == *other))
        .map_or(0, |found| found + 1);
    let high = list
        .iter()
        .position(|other| table.after[work].iter().any(|link| link.to == *other))
        .unwrap_or(list.len());
    list.insert(low + chance.below(high - low + 1), work);
}
