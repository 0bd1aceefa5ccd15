//! The best set and its proof: branch and cut over x alone.
//!
//! The master knows x and, for each group, a height theta under the planes of [`super::cuts`].
//! Nodes are taken best bound first; at each, planes are added until the master's point is
//! under all of them, then it branches on the x nearest a half. So the bound of the search
//! is the best height of the nodes that are left, at every moment.

use std::cmp::Ordering;
use std::collections::{BTreeMap, BinaryHeap};
use std::rc::Rc;

use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, SolveOutcome, Variable};
use rayon::prelude::*;

use super::cuts::{Ceiling, Cut};
use super::{Choice, Limits, Programme, Unsolved, unsolved};

/// Of Z: a plane that cuts off less is not worth its row, and a node that promises less is
/// left alone. A tenth of what value and bound are compared to.
const NEAR: f64 = 1e-7;

/// x this near a whole number is one.
const WHOLE: f64 = 1e-6;

/// Of what the answer may miss: less is not worth a plane.
const FEW: f64 = 0.05;

/// Of what the answer may miss: so many rounds of planes at the root that gain less end it.
const TAIL: (f64, u32) = (0.05, 4);

/// Rounds of planes at the root, and at every other node.
const ROUNDS: (usize, usize) = (60, 1);

/// A set is rounded from each of the first nodes, and from every so many later.
const ROUNDED: (u64, u64) = (40, 16);

struct Node {
    /// Height that the parent's master left, minutes.
    height: f64,
    serial: u64,
    /// The parent's master and what to settle in it.
    parent: Rc<Solution>,
    settle: (usize, f64),
}

impl PartialEq for Node {
    fn eq(&self, other: &Node) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Node {}
impl PartialOrd for Node {
    fn partial_cmp(&self, other: &Node) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Node {
    /// Highest first; of equals the younger, which lies deeper.
    fn cmp(&self, other: &Node) -> Ordering {
        self.height
            .total_cmp(&other.height)
            .then(self.serial.cmp(&other.serial))
    }
}

struct Search<'a> {
    programme: &'a Programme,
    rows: Vec<(Vec<(usize, f64)>, f64)>,
    x: Vec<Variable>,
    theta: Vec<Variable>,
    pool: Vec<Cut>,
    /// Minutes of worth by which the answer may miss the best.
    near: f64,
    values: BTreeMap<Vec<usize>, f64>,
    best: (f64, Vec<usize>),
}

impl Programme {
    /// The best set within the limits, by branch and cut over at most `nodes` nodes; `go_on`
    /// is asked at each and may say no. The bound is proven however early it stops; with no
    /// nodes it is all that is looked for.
    ///
    /// # Errors
    /// [`Unsolved`] where the solver fails on its own account.
    pub fn choose(
        &self,
        limits: &Limits,
        nodes: u64,
        go_on: &dyn Fn() -> bool,
    ) -> Result<Choice, Unsolved> {
        Ok(self
            .choose_under(limits, nodes, &Ceiling::default(), go_on)?
            .0)
    }

    /// The same, with the planes that the search went by; those of an earlier search of
    /// this programme hold under any limits and save finding them again.
    pub(crate) fn choose_under(
        &self,
        limits: &Limits,
        nodes: u64,
        known: &Ceiling,
        go_on: &dyn Fn() -> bool,
    ) -> Result<(Choice, Ceiling), Unsolved> {
        let locked: Vec<usize> = (0..self.items.len())
            .filter(|at| self.items[*at].locked)
            .collect();
        let mut search = Search {
            programme: self,
            rows: self.set_rows(limits),
            x: Vec::new(),
            theta: Vec::new(),
            pool: known.pool.clone(),
            near: limits.near.max(0.0) * self.asked,
            values: BTreeMap::new(),
            best: (0.0, locked.clone()),
        };
        search.try_set(locked)?;
        for known in &limits.known {
            let known = self.members(known);
            if search.allowed(&known) {
                search.try_set(known)?;
            }
        }
        let choice = if self.asked == 0.0 {
            search.answer(0.0, true, 0)
        } else {
            search.run(nodes, go_on)?
        };
        let most = self.groups.iter().map(|group| search.most(group)).collect();
        Ok((
            choice,
            Ceiling::new(self, std::mem::take(&mut search.pool), most),
        ))
    }

    /// Rows that say which sets are allowed: (item, factor) summed, at most.
    fn set_rows(&self, limits: &Limits) -> Vec<(Vec<(usize, f64)>, f64)> {
        let open: Vec<usize> = (0..self.items.len())
            .filter(|at| !self.items[*at].refused)
            .collect();
        // What is locked is painted already or promised: it stands even where it alone
        // breaks the purse or the ground, and then nothing else is added.
        let purse = |of: fn(&super::Item) -> f64, most: f64| {
            let spent = open
                .iter()
                .filter(|at| self.items[**at].locked)
                .map(|at| of(&self.items[*at]));
            (
                open.iter().map(|at| (*at, of(&self.items[*at]))).collect(),
                most.max(spent.sum()),
            )
        };
        let mut rows: Vec<(Vec<(usize, f64)>, f64)> = vec![
            purse(|item| item.cost, limits.budget.unwrap_or(self.budget)),
            purse(|item| item.area, limits.area.unwrap_or(self.free_area)),
        ];
        let mut rivals: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        for at in &open {
            rivals.entry(self.items[*at].rival).or_default().push(*at);
        }
        for same in rivals.into_values().filter(|same| same.len() > 1) {
            let locked = same.iter().filter(|at| self.items[**at].locked).count();
            rows.push((
                same.into_iter().map(|at| (at, 1.0)).collect(),
                locked.max(1) as f64,
            ));
        }
        for apart in &limits.apart {
            let members = self.members(apart);
            let most = members.len() as f64 - 1.0;
            rows.push((members.into_iter().map(|at| (at, 1.0)).collect(), most));
        }
        rows
    }
}

impl Search<'_> {
    fn run(&mut self, nodes: u64, go_on: &dyn Fn() -> bool) -> Result<Choice, Unsolved> {
        let near = NEAR * self.programme.asked;
        let top = self.top();
        let Some(root) = self.root(nodes > 0, go_on)? else {
            // The locked are allowed by themselves, so only cuts between them can fail.
            return Ok(self.answer(self.best.0, true, 0));
        };
        if nodes == 0 {
            return Ok(self.answer(root.objective().min(top), false, 1));
        }
        self.improve(go_on)?;
        let mut heap = BinaryHeap::new();
        let (mut done, mut serial) = (1, 0);
        let mut height = root.objective().min(top);
        self.branch(root, &mut heap, &mut serial)?;
        loop {
            let Some(node) = heap.pop() else {
                return Ok(self.answer(self.best.0, true, done));
            };
            height = height.min(node.height);
            if node.height <= self.best.0 + near.max(self.near) {
                let proven = node.height <= self.best.0 + near;
                return Ok(self.answer(node.height.max(self.best.0), proven, done));
            }
            if done >= nodes || !go_on() {
                // The planes know more by now of what may be better.
                self.improve(go_on)?;
                return Ok(self.answer(height, false, done));
            }
            done += 1;
            let fixed = node
                .parent
                .as_ref()
                .clone()
                .fix_var(self.x[node.settle.0], node.settle.1);
            let Some(mut master) = lp(fixed)? else {
                continue;
            };
            let mut over = false;
            for _ in 0..ROUNDS.1 {
                if master.objective() <= self.best.0 + near {
                    over = true;
                    break;
                }
                let cuts = self.planes(&master)?;
                if cuts.is_empty() {
                    break;
                }
                for cut in &cuts {
                    let row = self.row(cut);
                    let Some(next) = lp(master.add_constraint(row, ComparisonOp::Le, cut.start))?
                    else {
                        return Err(Unsolved("a plane left no point under it".to_owned()));
                    };
                    master = next;
                }
                self.pool.extend(cuts);
            }
            if !over {
                self.branch(master, &mut heap, &mut serial)?;
            }
        }
    }

    /// No set gives a group more than every target met.
    fn most(&self, group: &super::Group) -> f64 {
        let worth = (self.programme.worth[0] + self.programme.worth[1]) / 2.0;
        worth * group.count * group.targets.iter().map(|target| target.1).sum::<f64>()
    }

    /// Every target of all met, minutes.
    fn top(&self) -> f64 {
        let groups = self.programme.groups.iter();
        groups.map(|group| self.most(group)).sum()
    }

    /// The master at the root, its planes added round by round. Planes that the point has
    /// left behind are dropped from the master, not from the pool.
    ///
    /// - `sets`: whether sets are looked for on the way
    fn root(&mut self, sets: bool, go_on: &dyn Fn() -> bool) -> Result<Option<Solution>, Unsolved> {
        let mut live: Vec<Cut> = Vec::new();
        let (mut before, mut idle) = (f64::INFINITY, 0);
        let top = self.top();
        for round in 0.. {
            let mut problem = Problem::new(OptimizationDirection::Maximize);
            self.x = self
                .programme
                .items
                .iter()
                .map(|item| {
                    let low = if item.locked { 1.0 } else { 0.0 };
                    let high = if item.refused { 0.0 } else { 1.0 };
                    problem.add_var(0.0, (low, high))
                })
                .collect();
            self.theta = self
                .programme
                .groups
                .iter()
                .map(|group| problem.add_var(1.0, (0.0, self.most(group))))
                .collect();
            for (row, most) in &self.rows {
                let row: Vec<_> = row
                    .iter()
                    .map(|(at, factor)| (self.x[*at], *factor))
                    .collect();
                problem.add_constraint(row, ComparisonOp::Le, *most);
            }
            for cut in &live {
                problem.add_constraint(self.row(cut), ComparisonOp::Le, cut.start);
            }
            let Some(master) = lp(problem.solve())? else {
                return Ok(None);
            };
            if sets {
                self.round_down(&master)?;
            }
            let height = master.objective();
            // Under no more planes than a few, every target may seem met: that is no end.
            let gains =
                height >= top - NEAR * self.programme.asked || before - height > self.near * TAIL.0;
            idle = if gains { 0 } else { idle + 1 };
            before = height;
            let near = height <= self.best.0 + self.near || idle >= TAIL.1;
            if self.near > 0.0 && near || round >= ROUNDS.0 || !go_on() {
                return Ok(Some(master));
            }
            let x = self.point(&master);
            let cuts = self.planes(&master)?;
            if cuts.is_empty() {
                return Ok(Some(master));
            }
            let slack = 1e-3 * self.programme.asked;
            live.retain(|cut| cut.at(&x) - self.height(cut, &master) <= slack);
            live.extend(cuts.iter().cloned());
            self.pool.extend(cuts);
        }
        Ok(None)
    }

    fn row(&self, cut: &Cut) -> Vec<(Variable, f64)> {
        // Dust in a slope would stretch the coefficients of a row past what the solver
        // likes; leaving a positive one out would lower the plane, so it is raised instead.
        let dust = 1e-6 * self.programme.asked / self.programme.groups.len().max(1) as f64 * 1e-3;
        let mut row: Vec<_> = cut
            .groups
            .iter()
            .map(|group| (self.theta[*group], 1.0))
            .collect();
        row.extend(
            std::iter::zip(&self.x, &cut.slope)
                .filter(|(_, slope)| **slope > 0.0)
                .map(|(x, slope)| (*x, -slope.max(dust))),
        );
        row
    }

    fn point(&self, master: &Solution) -> Vec<f64> {
        self.x
            .iter()
            .map(|x| master.var_value(*x).clamp(0.0, 1.0))
            .collect()
    }

    fn height(&self, cut: &Cut, master: &Solution) -> f64 {
        cut.groups
            .iter()
            .map(|group| master.var_value(self.theta[*group]))
            .sum()
    }

    /// Planes that the master's point lies above: known ones first, else the best new ones.
    fn planes(&mut self, master: &Solution) -> Result<Vec<Cut>, Unsolved> {
        let x = self.point(master);
        // Where the answer may miss the best, planes that hold a point that is not a set
        // down by much less than that are not looked for.
        let whole = x.iter().all(|x| (x - x.round()).abs() <= WHOLE);
        let least = if whole { 0.0 } else { self.near * FEW };
        let near =
            (NEAR * self.programme.asked).max(least) / self.programme.groups.len().max(1) as f64;
        let mut known: BTreeMap<&[usize], (f64, usize)> = BTreeMap::new();
        for (at, cut) in self.pool.iter().enumerate() {
            let over = self.height(cut, master) - cut.at(&x);
            if over > near {
                let worst = known.entry(&cut.groups).or_insert((over, at));
                if over > worst.0 {
                    *worst = (over, at);
                }
            }
        }
        if !known.is_empty() {
            return Ok(known
                .into_values()
                .map(|(_, at)| self.pool[at].clone())
                .collect());
        }
        let cuts: Vec<Cut> = (0..self.programme.groups.len())
            .into_par_iter()
            .map(|group| self.programme.cut(group, &x))
            .collect::<Result<_, Unsolved>>()?;
        let cuts: Vec<Cut> = cuts
            .into_iter()
            .filter(|cut| self.height(cut, master) - cut.at(&x) > near)
            .collect();
        if !cuts.is_empty() || !whole {
            return Ok(cuts);
        }
        // A whole point under all planes is a set: its true worth may be less only where
        // stations run full.
        let set: Vec<usize> = (0..x.len()).filter(|at| x[*at] > 0.5).collect();
        let worth = self.try_set(set)?;
        if master.objective() - worth <= NEAR * self.programme.asked {
            return Ok(Vec::new());
        }
        let cut = self
            .programme
            .cut_of_all(&x.iter().map(|x| x.round()).collect::<Vec<_>>())?;
        Ok(if self.height(&cut, master) - cut.at(&x) > near {
            vec![cut]
        } else {
            Vec::new()
        })
    }

    /// Two nodes, the x nearest a half settled each way; none below a whole point.
    fn branch(
        &mut self,
        master: Solution,
        heap: &mut BinaryHeap<Node>,
        serial: &mut u64,
    ) -> Result<(), Unsolved> {
        let x = self.point(&master);
        let off = |at: &usize| (x[*at] - x[*at].round()).abs();
        let widest = (0..x.len()).max_by(|a, b| off(a).total_cmp(&off(b)).then(b.cmp(a)));
        let Some(at) = widest.filter(|at| off(at) > WHOLE) else {
            let set = (0..x.len()).filter(|at| x[*at] > 0.5).collect();
            self.try_set(set)?;
            return Ok(());
        };
        if *serial < ROUNDED.0 || serial.is_multiple_of(ROUNDED.1) {
            self.round_down(&master)?;
        }
        let height = master.objective();
        let parent = Rc::new(master);
        for value in [0.0, 1.0] {
            *serial += 1;
            heap.push(Node {
                height,
                serial: *serial,
                parent: Rc::clone(&parent),
                settle: (at, value),
            });
        }
        Ok(())
    }

    /// A set from a fractional point: the fullest x first, as long as the rows allow; then
    /// what the point left out, by what it would add.
    fn round_down(&mut self, master: &Solution) -> Result<(), Unsolved> {
        let x = self.point(master);
        let items = &self.programme.items;
        let mut order: Vec<usize> = (0..x.len()).filter(|at| !items[*at].refused).collect();
        order.sort_by(|a, b| {
            let first = |at: &usize| if items[*at].locked { 2.0 } else { x[*at] };
            first(b).total_cmp(&first(a)).then(a.cmp(b))
        });
        let mut set: Vec<usize> = Vec::new();
        for at in order {
            set.push(at);
            if !items[at].locked && (x[at] <= 0.01 || !self.allowed(&set)) {
                set.pop();
            }
        }
        set.sort_unstable();
        // What the planes hold down need not be solved for.
        if self.allowed(&set) && self.over(&set) > self.best.0 {
            self.try_set(set)?;
        }
        Ok(())
    }

    /// No less than the worth of a set, by the planes.
    fn over(&self, set: &[usize]) -> f64 {
        let groups = self.programme.groups.iter();
        let mut most: Vec<f64> = groups.map(|group| self.most(group)).collect();
        for cut in &self.pool {
            if let [group] = cut.groups[..] {
                let height = cut.start + set.iter().map(|at| cut.slope[*at]).sum::<f64>();
                most[group] = most[group].min(height);
            }
        }
        most.iter().sum()
    }

    /// Sets that differ from the best one by a figure put in or exchanged, the most promising
    /// first, as long as one is better.
    fn improve(&mut self, go_on: &dyn Fn() -> bool) -> Result<(), Unsolved> {
        /// Sets that are solved for without finding a better one.
        const PATIENCE: usize = 10;
        let items = &self.programme.items;
        loop {
            let (before, from) = self.best.clone();
            let mut offers: Vec<(f64, Vec<usize>)> = Vec::new();
            for out in std::iter::once(None).chain(from.iter().copied().map(Some)) {
                if out.is_some_and(|at| items[at].locked) {
                    continue;
                }
                for into in (0..items.len()).filter(|at| !items[*at].refused && !from.contains(at))
                {
                    let mut set: Vec<usize> =
                        from.iter().copied().filter(|at| Some(*at) != out).collect();
                    set.push(into);
                    set.sort_unstable();
                    if self.allowed(&set) {
                        let most = self.over(&set);
                        if most > before && !self.values.contains_key(&set) {
                            offers.push((most, set));
                        }
                    }
                }
            }
            offers.sort_by(|a, b| b.0.total_cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
            for (_, set) in offers.into_iter().take(PATIENCE) {
                if !go_on() {
                    return Ok(());
                }
                self.try_set(set)?;
                if self.best.0 > before {
                    break;
                }
            }
            if self.best.0 <= before {
                return Ok(());
            }
        }
    }

    fn allowed(&self, set: &[usize]) -> bool {
        self.rows.iter().all(|(row, most)| {
            let sum: f64 = row
                .iter()
                .filter(|(at, _)| set.contains(at))
                .map(|(_, factor)| factor)
                .sum();
            sum <= most + 1e-9
        })
    }

    /// The worth of a set, remembered; the best one is kept.
    fn try_set(&mut self, set: Vec<usize>) -> Result<f64, Unsolved> {
        if let Some(worth) = self.values.get(&set) {
            return Ok(*worth);
        }
        let parts = self.programme.solve_fixed(&set)?;
        let worth: f64 = parts.iter().map(|part| part.worth).sum();
        if worth > self.best.0 && self.allowed(&set) {
            self.best = (worth, set.clone());
        }
        self.values.insert(set, worth);
        Ok(worth)
    }

    fn answer(&self, height: f64, proven: bool, nodes: u64) -> Choice {
        let asked = self.programme.asked;
        let share = |worth: f64| if asked > 0.0 { worth / asked } else { 0.0 };
        Choice {
            chosen: self.programme.numbers_where(|at| self.best.1.contains(&at)),
            value: share(self.best.0),
            bound: share(height.max(self.best.0)),
            proven,
            nodes,
        }
    }
}

/// `None` where the rows leave no point.
fn lp(outcome: Result<SolveOutcome, microlp::Error>) -> Result<Option<Solution>, Unsolved> {
    match outcome {
        Ok(outcome) => Ok(outcome.into_solution().ok()),
        Err(microlp::Error::Infeasible) => Ok(None),
        Err(fault) => Err(unsolved(fault)),
    }
}
