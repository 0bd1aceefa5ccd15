//! The order in which markings are introduced to children: the easiest first, and none before
//! the skills that its own builds on.

use children::Skill;

/// A painted marking, as far as its order needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Painted {
    /// Its name in the plan.
    pub name: String,
    /// The skill that it mainly trains.
    pub skill: Skill,
    /// Share of the children for whom it is well pitched, 0 to 1.
    pub well_pitched: f64,
}

/// A marking in its turn.
#[derive(Clone, Debug, PartialEq)]
pub struct Introduced {
    /// Its number in the list given.
    pub marking: usize,
    /// Skills that ought to come before and that no marking of the yard trains: they are
    /// practised on open ground first.
    pub first: Vec<Skill>,
}

/// Skills, each with one that comes before it.
///
/// # Source
/// children.md 2.6, textbook consensus from memory: gallop before slide and skip, a steady hop
/// before the skip, run before the leap.
pub const NEEDS: [(Skill, Skill); 4] = [
    (Skill::Slide, Skill::Gallop),
    (Skill::Skip, Skill::Gallop),
    (Skill::Skip, Skill::Hop),
    (Skill::Leap, Skill::Run),
];

/// The skills right before a skill.
pub fn needs(skill: Skill) -> impl Iterator<Item = Skill> {
    NEEDS
        .iter()
        .filter(move |(own, _)| *own == skill)
        .map(|(_, before)| *before)
}

/// Every marking in its turn. Next comes, of those whose earlier skills have had a marking (or
/// have none in the yard), the one that is well pitched for most; of equals the one that
/// stands first in the list. A share that is no number counts as 0.
pub fn introduce(markings: &[Painted]) -> Vec<Introduced> {
    let here = |skill: Skill| markings.iter().any(|marking| marking.skill == skill);
    let mut left: Vec<usize> = (0..markings.len()).collect();
    let mut known: Vec<Skill> = Vec::new();
    let mut order = Vec::new();
    while !left.is_empty() {
        let share = |at: usize| {
            let share = markings.get(at).map_or(0.0, |marking| marking.well_pitched);
            if share.is_nan() { 0.0 } else { share }
        };
        let open = |at: &usize| {
            markings.get(*at).is_some_and(|marking| {
                needs(marking.skill).all(|skill| known.contains(&skill) || !here(skill))
            })
        };
        let next = left
            .iter()
            .enumerate()
            .filter(|(_, at)| open(at))
            // of equals the first: the search keeps the last, so it goes backwards
            .rev()
            .max_by(|(_, one), (_, other)| share(**one).total_cmp(&share(**other)))
            .map(|(place, _)| place);
        // NEEDS has no ring, so something is always open
        let at = left.remove(next.unwrap_or(0));
        let Some(marking) = markings.get(at) else {
            continue;
        };
        let first = needs(marking.skill)
            .filter(|skill| !here(*skill) && !known.contains(skill))
            .collect();
        if !known.contains(&marking.skill) {
            known.push(marking.skill);
        }
        order.push(Introduced { marking: at, first });
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    fn painted(name: &str, skill: Skill, well_pitched: f64) -> Painted {
        Painted {
            name: name.into(),
            skill,
            well_pitched,
        }
    }

    #[test]
    fn the_easiest_comes_first_but_never_before_what_it_builds_on() {
        let yard = [
            painted("wave", Skill::Skip, 0.9),
            painted("line", Skill::Slide, 0.6),
            painted("trail", Skill::Gallop, 0.4),
            painted("dots", Skill::Hop, 0.3),
            painted("brook", Skill::Leap, 0.7),
            painted("court", Skill::Jump, 0.7),
        ];
        let order: Vec<&str> = introduce(&yard)
            .iter()
            .map(|turn| yard[turn.marking].name.as_str())
            .collect();
        assert_eq!(order, ["brook", "court", "trail", "line", "dots", "wave"]);
        assert_eq!(introduce(&yard)[0].first, [Skill::Run], "no run lane here");
        assert!(introduce(&[]).is_empty());
    }

    #[test]
    fn every_marking_has_one_turn_whatever_the_shares() {
        let yard = [
            painted("a", Skill::Skip, f64::NAN),
            painted("b", Skill::Skip, 2.0),
            painted("c", Skill::Hop, -1.0),
        ];
        let mut turns: Vec<usize> = introduce(&yard).iter().map(|turn| turn.marking).collect();
        assert_eq!(turns, [2, 1, 0]);
        turns.sort_unstable();
        assert_eq!(turns, [0, 1, 2]);
    }
}
