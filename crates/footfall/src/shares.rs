//! What a class makes of its figures: the shares, and who is left out.

use children::{Child, Skill};

use crate::figures::Model;
use crate::tread::Footfall;
use crate::verdict::Pitch;

/// The shares of a class on one figure in one activity: the mean over its children, a count
/// that often. Nobody, nothing.
///
/// - `footfalls`: one for each child, in their order
pub fn shares(footfalls: &[Footfall], children: &[Child]) -> Pitch {
    let heads: f64 = children.iter().map(|child| f64::from(child.count)).sum();
    let mut mean = Pitch::default();
    for (footfall, child) in footfalls.iter().zip(children) {
        let share = f64::from(child.count) / heads.max(1.0);
        mean.well += share * footfall.pitch.well;
        mean.easy += share * footfall.pitch.easy;
        mean.hard += share * footfall.pitch.hard;
    }
    mean
}

/// The numbers of the children for whom no figure of a skill is well pitched with at least
/// the ledger's chance.
///
/// - `class`: by figure, activity and child, as [`class`](crate::class) gives it
pub fn left_out(
    class: &[Vec<Vec<Footfall>>],
    skill: Skill,
    children: &[Child],
    model: &Model,
) -> Vec<usize> {
    let served = |child: usize| {
        let footfalls = class.iter().flatten().filter_map(|row| row.get(child));
        footfalls
            .filter(|footfall| footfall.skill == skill)
            .any(|footfall| footfall.pitch.well >= model.left_out)
    };
    (0..children.len())
        .filter(|child| !served(*child))
        .collect()
}
