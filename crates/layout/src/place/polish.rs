//! Better poses for a settled set: each figure in turn takes the pose that leaves least of
//! the wanted terms unmet, the others standing still.

use super::search::{Layout, Progress, Searcher};
use super::site::{Laid, Stance};
use crate::rules::{Setting, Surroundings};

/// Places looked at for each turn.
const PLACES: usize = 40;

/// A pose is exchanged only for one that is better by this much of the penalty.
const BETTER: f64 = 1e-6;

impl Searcher<'_> {
    /// Improves the poses of all figures that are not locked.
    pub(crate) fn polish(&self, layout: &mut Layout, around: &Surroundings) {
        for round in 0..self.work.polish {
            let mut moved = false;
            let mut order: Vec<usize> = layout
                .keys()
                .copied()
                .filter(|k| !self.locked.contains_key(k))
                .collect();
            order.sort_by(|a, b| self.candidates[*a].name.cmp(&self.candidates[*b].name));
            for number in order {
                if !(self.go_on)(Progress::Polishing(round, self.work.polish)) {
                    return;
                }
                let others: Vec<Setting> = layout
                    .iter()
                    .filter(|(k, _)| **k != number)
                    .map(|(k, laid)| Setting::new(&self.candidates[*k], laid.pose))
                    .collect();
                let others: Vec<&Setting> = others.iter().collect();
                let penalty = |laid: &Laid| {
                    around.penalty(&Setting::new(&self.candidates[number], laid.pose), &others)
                };
                let Some(now) = layout.get(&number).map(&penalty) else {
                    continue;
                };
                let found = self.best_pose(layout, number, &penalty);
                if let Some((_, laid)) = found.filter(|found| found.0 < now - BETTER) {
                    let before = layout.insert(number, laid);
                    moved = true;
                    if let Some(before) = before.filter(|_| !self.reached(layout)) {
                        layout.insert(number, before);
                    }
                }
            }
            if !moved {
                return;
            }
        }
    }

    fn best_pose(
        &self,
        layout: &Layout,
        number: usize,
        penalty: &(dyn Fn(&Laid) -> f64 + Sync),
    ) -> Option<(f64, Laid)> {
        use rayon::prelude::*;
        let candidate = &self.candidates[number];
        let others = || {
            layout
                .iter()
                .filter(|(k, _)| **k != number)
                .map(|(_, laid)| laid)
        };
        // Turns that the packing had no use for, because they cover what another covers, may
        // show children another side or face.
        let known = |turn: f64, mirrored: bool| {
            let mut stances = self.stances[number].iter();
            stances.any(|stance| stance.turn == turn && stance.mirrored == mirrored)
        };
        let unpacked: Vec<Stance> = (0..2 * self.site.turns(self.cramped))
            .into_par_iter()
            .map(|at| (at / 2, at % 2 == 1))
            .filter(|(which, mirrored)| {
                (candidate.mirrors || !mirrored) && !known(self.site.turns[*which], *mirrored)
            })
            .filter_map(|(which, mirrored)| {
                let turned = self.site.turned((number, candidate), which, mirrored)?;
                self.site.stance(turned)
            })
            .collect();
        let stances: Vec<&Stance> = self.stances[number].iter().chain(&unpacked).collect();
        let best: Vec<Option<(f64, Laid)>> = stances
            .par_iter()
            .map(|stance| {
                let room = stance.room(others());
                let stride = room.count().div_ceil(PLACES).max(1);
                let mut best: Option<(f64, Laid)> = None;
                for place in room.places().step_by(stride) {
                    let laid = stance.laid(place);
                    let score = penalty(&laid);
                    if best.as_ref().is_none_or(|best| score < best.0) {
                        best = Some((score, laid));
                    }
                }
                best
            })
            .collect();
        best.into_iter()
            .flatten()
            .reduce(|a, b| if b.0 < a.0 { b } else { a })
    }
}
