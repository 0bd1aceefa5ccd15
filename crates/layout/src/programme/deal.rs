//! The minutes of a placed set: the linear programme with x settled.

use std::collections::BTreeMap;

use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, Variable};
use rayon::prelude::*;

use super::{DUST, Minutes, Programme, Slot, Unsolved, unsolved};
use crate::millionth;

/// One group's share of a solution, for each of its children.
pub(super) struct Part {
    /// Worth of the whole group, minutes.
    pub(super) worth: f64,
    /// Children number 0; the group's are filled in by the caller.
    pub(super) minutes: Vec<Minutes>,
    pub(super) practice: BTreeMap<Slot, [f64; 2]>,
}

/// Which variable is what.
#[derive(Default)]
struct Rows {
    /// (item, activity, stretch, u)
    minutes: Vec<(usize, usize, u8, Variable)>,
    practice: Vec<(Slot, [Variable; 2])>,
}

impl Programme {
    /// The parts of all groups with the items of `set` placed.
    ///
    /// Only the stations tie the groups together. Where each group's own best leaves every
    /// station time, it is the best of all; else the whole programme is solved.
    pub(super) fn solve_fixed(&self, set: &[usize]) -> Result<Vec<Part>, Unsolved> {
        let each: Vec<Vec<Part>> = (0..self.groups.len())
            .into_par_iter()
            .map(|group| self.solve_groups(&[group], set))
            .collect::<Result<_, Unsolved>>()?;
        let mut parts: Vec<Part> = each.into_iter().flatten().collect();
        let over = set.iter().any(|at| {
            let item = &self.items[*at];
            let spent: f64 = std::iter::zip(&parts, &self.groups)
                .map(|(part, group)| {
                    let minutes = part.minutes.iter().filter(|m| m.candidate == item.number);
                    group.count * minutes.map(|m| m.minutes).sum::<f64>()
                })
                .sum();
            spent > item.places * self.places + DUST
        });
        if over {
            let all: Vec<usize> = (0..self.groups.len()).collect();
            parts = self.solve_groups(&all, set)?;
        }
        Ok(parts)
    }

    fn solve_groups(&self, groups: &[usize], set: &[usize]) -> Result<Vec<Part>, Unsolved> {
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let rows = self.rows(&mut problem, groups, set);
        if rows.iter().all(|part| part.practice.is_empty()) {
            let none = || Part {
                worth: 0.0,
                minutes: Vec::new(),
                practice: BTreeMap::new(),
            };
            return Ok(groups.iter().map(|_| none()).collect());
        }
        let solution = problem
            .solve()
            .map_err(unsolved)?
            .into_solution()
            .map_err(|_| {
                Unsolved("a linear programme without limits was interrupted".to_owned())
            })?;
        Ok(std::iter::zip(groups, &rows)
            .map(|(group, part)| self.read(*group, part, &solution))
            .collect())
    }

    fn rows(&self, problem: &mut Problem, groups: &[usize], set: &[usize]) -> Vec<Rows> {
        let mut station: Vec<Vec<(Variable, f64)>> = vec![Vec::new(); set.len()];
        let mut all = Vec::new();
        for number in groups {
            let group = &self.groups[*number];
            let mut rows = Rows::default();
            let mut practice: BTreeMap<Slot, Vec<(Variable, f64)>> = BTreeMap::new();
            let mut time = Vec::new();
            for (column, at) in set.iter().enumerate() {
                let acts = &self.items[*at].acts[*number];
                for stretch in [1_u8, 2] {
                    let worth = if stretch == 1 { 1.0 } else { self.stale_worth };
                    let mut fresh = Vec::new();
                    for (act, what) in acts.iter().enumerate() {
                        let u = problem.add_var(0.0, (0.0, self.stale));
                        rows.minutes.push((*at, act, stretch, u));
                        for (slot, e) in &what.yields {
                            practice.entry(*slot).or_default().push((u, -e * worth));
                        }
                        fresh.push((u, 1.0));
                        time.push((u, 1.0));
                        station[column].push((u, group.count));
                    }
                    if fresh.len() > 1 {
                        problem.add_constraint(fresh, ComparisonOp::Le, self.stale);
                    }
                }
            }
            for (slot, minutes) in &group.targets {
                let Some(mut row) = practice.remove(slot) else {
                    continue;
                };
                let halves = self
                    .worth
                    .map(|worth| problem.add_var(worth * group.count, (0.0, minutes / 2.0)));
                row.extend(halves.map(|half| (half, 1.0)));
                problem.add_constraint(row, ComparisonOp::Le, 0.0);
                rows.practice.push((*slot, halves));
            }
            if !time.is_empty() {
                problem.add_constraint(time, ComparisonOp::Le, self.each);
            }
            all.push(rows);
        }
        // The row "sum of u <= M A x outings" is left out: outings are class / A rounded up,
        // so the rows of a child's time imply it. Where nobody can be out, places is zero
        // and the rows of the stations say so.
        for (column, at) in set.iter().enumerate() {
            let item = &self.items[*at];
            let row = std::mem::take(&mut station[column]);
            if !row.is_empty() && !self.roomy(item) && (groups.len() > 1 || self.groups.len() == 1)
            {
                problem.add_constraint(row, ComparisonOp::Le, item.places * self.places);
            }
        }
        all
    }

    fn read(&self, group: usize, rows: &Rows, solution: &Solution) -> Part {
        let minutes = rows
            .minutes
            .iter()
            .filter_map(|(at, act, stretch, u)| {
                let item = self.items.get(*at)?;
                let minutes = solution.var_value(*u);
                (minutes > DUST).then(|| Minutes {
                    child: 0,
                    candidate: item.number,
                    activity: item.acts[group][*act].word.clone(),
                    stretch: *stretch,
                    minutes: millionth(minutes),
                })
            })
            .collect();
        let practice: BTreeMap<Slot, [f64; 2]> = rows
            .practice
            .iter()
            .map(|(slot, halves)| (*slot, halves.map(|half| solution.var_value(half))))
            .collect();
        let worth: f64 = practice
            .values()
            .map(|got| got[0] * self.worth[0] + got[1] * self.worth[1])
            .sum();
        Part {
            worth: worth * self.groups[group].count,
            minutes,
            practice,
        }
    }
}
