//! A whole set into cramped ground: figures push each other out until all lie.
//!
//! Laying figures one after the other fills such ground only by luck: there are sets that do
//! lie together of which 400 orders do not find how. Here a figure that finds no place takes
//! one all the same and what lay there is laid again; that finds most of them in some hundred
//! layings. After the ejection search for vehicle routing of Y. Nagata and O.
//! Bräysy, Operations Research Letters 37 (2009) 333-338.

use std::collections::BTreeMap;
use std::sync::Arc;

use chance::Chance;
use geo::Coord;

use super::grid::Map;
use super::search::{Layout, Searcher};
use super::site::Stance;

/// Figures that are pushed out together, by place among the loose ones, and how hard they
/// are to lay again.
struct Push {
    hard: f64,
    out: Vec<usize>,
}

impl Searcher<'_> {
    /// Lays all of a set, or tells that it did not come off.
    ///
    /// - `from`: where its figures lie at the start, as far as they do
    /// - `most`: figures to lay until it is given up
    ///
    /// Returns how many were laid on the way, and the layout.
    pub(crate) fn pack(
        &self,
        set: &[usize],
        from: &Layout,
        stream: u64,
        most: usize,
        go_on: &(dyn Fn() -> bool + Sync),
    ) -> (usize, Option<Layout>) {
        let mut chance = Chance::stream(self.seed, (0xAB << 32) | stream);
        let mut layout: Layout = from.clone();
        layout.retain(|number, _| set.contains(number));
        let mut out: Vec<usize> = set
            .iter()
            .copied()
            .filter(|number| !layout.contains_key(number))
            .collect();
        out.sort_by(|a, b| {
            let area = |number: &usize| self.candidates[*number].area;
            area(a).total_cmp(&area(b)).then(self.by_name(*a, *b))
        });
        // How often a figure had to push: what is hard to lay is not pushed out lightly.
        let mut hard: BTreeMap<usize, f64> = set.iter().map(|number| (*number, 1.0)).collect();
        for laid in 0..most {
            let Some(number) = out.pop() else {
                return (laid, Some(layout));
            };
            if !go_on() {
                return (laid, None);
            }
            let loose = self.loose(&layout);
            let pushes = pushes(&loose, &hard, &mut chance);
            let Some((push, stance, place, way)) =
                self.push_in(&layout, number, (&loose, &pushes), &mut chance)
            else {
                out.insert(0, number);
                continue;
            };
            if !push.out.is_empty() {
                *hard.entry(number).or_default() += 1.0;
            }
            for at in &push.out {
                layout.remove(&loose[*at]);
                out.insert(chance.below(out.len() + 1), loose[*at]);
            }
            let place = stance.slide(self.site, place, way, layout.values());
            layout.insert(number, stance.laid(place));
        }
        (most, None)
    }

    /// Where a figure lies with the least pushing, and of such places the one farthest along
    /// some way.
    fn push_in<'s>(
        &'s self,
        layout: &Layout,
        number: usize,
        (loose, pushes): (&[usize], &'s [Push]),
        chance: &mut Chance,
    ) -> Option<(&'s Push, &'s Stance, Coord<f64>, Coord<f64>)> {
        let side = chance.below(12);
        let way = self.way(chance, side);
        let mut best: Option<(usize, f64, &Stance, Coord<f64>)> = None;
        for stance in self.turns_to_try(number, chance) {
            let shadow = |number: &usize| layout[number].shadow(stance);
            let fixed: Vec<Arc<Map>> = self.locked.keys().map(shadow).collect();
            let shadows: Vec<Arc<Map>> = loose.iter().map(shadow).collect();
            let worst = best.as_ref().map_or(pushes.len(), |best| best.0 + 1);
            for (rank, push) in pushes[..worst].iter().enumerate() {
                let staying = shadows.iter().enumerate();
                let staying = staying.filter(|(at, _)| !push.out.contains(at));
                let around: Vec<&Map> = staying
                    .map(|(_, shadow)| shadow.as_ref())
                    .chain(fixed.iter().map(Arc::as_ref))
                    .collect();
                let Some((far, place)) = stance.farthest(&around, way) else {
                    continue;
                };
                if best.as_ref().is_none_or(|it| rank < it.0 || far > it.1) {
                    best = Some((rank, far, stance, place));
                }
                break;
            }
        }
        best.map(|(rank, _, stance, place)| (&pushes[rank], stance, place, way))
    }
}

/// None of the loose figures, each, and each two of them; those that are lightly laid again
/// first.
fn pushes(loose: &[usize], hard: &BTreeMap<usize, f64>, chance: &mut Chance) -> Vec<Push> {
    /// Of a laying: how much chance has a say among figures that are as hard.
    const SAY: f64 = 0.01;
    let mut outs = vec![Vec::new()];
    for one in 0..loose.len() {
        outs.push(vec![one]);
        outs.extend((0..one).map(|other| vec![other, one]));
    }
    let mut pushes: Vec<Push> = outs
        .into_iter()
        .map(|out| {
            let layings = out.iter().map(|at| hard.get(&loose[*at]).unwrap_or(&1.0));
            Push {
                hard: layings.map(|hard| hard + SAY * chance.share()).sum(),
                out,
            }
        })
        .collect();
    pushes.sort_by(|a, b| a.hard.total_cmp(&b.hard));
    pushes
}
