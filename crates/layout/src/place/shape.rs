//! What the programme promises once sets that the ground's shape cannot hold are cut off.

use super::proof::Proofs;
use super::search::{Layout, Progress, Searcher};
use crate::programme::{Ceiling, Choice, Limits, Unsolved};

impl Searcher<'_> {
    /// Holds the best sets of the programme against the ground, best first: each is proven
    /// not to fit and cut off, with its like, until one is not. What the programme then
    /// promises is a bound that knows the ground's shape.
    pub(crate) fn prove(
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
}
