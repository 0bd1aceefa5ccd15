//! The practice in seeing: clips whose truth is known, a criterion at a time.

use chance::Chance;
use children::{Child, Side, Skill, counts};
use footfall::Gait;
use ledger::Ledger;
use motion::{Clip, Model, Path};

use crate::criteria::criteria;
use crate::faults::{Fault, faults};
use crate::measure;

/// Years of the model children.
const AGES: [u32; 4] = [3, 4, 5, 6];
/// More faults at once are a tangle, not a child.
const MOST: u32 = 3;

/// A clip to be marked.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// The skill that the clip is an attempt at.
    pub skill: Skill,
    /// Who goes: the model child's age, years.
    pub age: u32,
    /// The foot that leads, or lands first.
    pub lead: Side,
    /// What feet do.
    pub clip: Clip,
    /// What was done to it; empty where it is done well.
    pub faults: Vec<Fault>,
    /// The truth: for each of the skill's [`criteria`], whether it is met.
    pub met: Vec<bool>,
}

/// A practice of `n` clips, a seed's own.
///
/// Skills come in shuffled turns, never one twice in a row where there are two or more, and
/// never the same faults twice in a row of a skill. Faults are drawn so that the criteria of
/// a skill are each met about half the time: then chance agrees least and kappa tells most.
///
/// A set of faults is used only where feet could do it and what the footfalls show is what was
/// done: where one fault hides another, no observer could see it. Skills without criteria give no clip.
pub fn clips(seed: u64, n: usize, skills: &[Skill], ledger: &Ledger) -> Vec<Shown> {
    let model = Model::of(ledger);
    let mut chance = Chance::stream(seed, 0x0c0_045e);
    let mut pools: Vec<Pool> = skills
        .iter()
        .map(|skill| Pool::of(*skill, &model, ledger))
        .filter(|pool| !pool.all.is_empty())
        .collect();
    let mut shown: Vec<Shown> = Vec::new();
    let mut turn: Vec<usize> = Vec::new();
    while shown.len() < n && !pools.is_empty() {
        let last = shown.last().map(|one| one.skill);
        if turn.is_empty() {
            turn = shuffled(pools.len(), &mut chance);
            // the next is taken from the end
            let again = |at: Option<&usize>| {
                at.and_then(|at| pools.get(*at)).map(|pool| pool.skill) == last
            };
            if turn.len() > 1 && again(turn.last()) {
                turn.reverse();
            }
        }
        let Some(pool) = turn.pop().and_then(|at| pools.get_mut(at)) else {
            break;
        };
        shown.push(pool.draw(&mut chance));
    }
    shown
}

fn shuffled(many: usize, chance: &mut Chance) -> Vec<usize> {
    let mut all: Vec<usize> = (0..many).collect();
    for at in (1..many).rev() {
        all.swap(at, chance.below(at + 1));
    }
    all
}

/// Every clip that may be shown of a skill, and what has been shown.
struct Pool {
    skill: Skill,
    all: Vec<Shown>,
    /// By criterion, how much oftener it was met than not.
    surplus: Vec<i64>,
    last: Option<Vec<bool>>,
}

impl Pool {
    fn of(skill: Skill, model: &Model, ledger: &Ledger) -> Pool {
        let known = criteria(skill);
        let mut all = Vec::new();
        let gait = Gait::named(skill.word()).filter(|_| !known.is_empty());
        let sets = sets(&faults(skill));
        for age in AGES {
            let children: Vec<Child> = counts(&[(f64::from(age), 1)], ledger).value;
            for lead in [Side::Right, Side::Left] {
                let (Some(gait), Some(child)) = (gait, children.first()) else {
                    continue;
                };
                let path = Path::free(&gait, lead, child, model);
                let Some(well) = path.and_then(|path| Clip::of(&path, model)) else {
                    continue;
                };
                for set in &sets {
                    let clip = set
                        .iter()
                        .fold(well.clone(), |clip, fault| fault.of(&clip, model));
                    let met: Vec<bool> = known
                        .iter()
                        .map(|row| !set.iter().any(|fault| fault.breaks.contains(&row.name)))
                        .collect();
                    if measure::sound(&clip) && measure::met(&clip, ledger) == met {
                        all.push(Shown {
                            skill,
                            age,
                            lead,
                            clip,
                            faults: set.clone(),
                            met,
                        });
                    }
                }
            }
        }
        Pool {
            skill,
            all,
            surplus: vec![0; known.len()],
            last: None,
        }
    }

    /// One of those that keep the criteria best balanced, not like the last.
    fn draw(&mut self, chance: &mut Chance) -> Shown {
        let after = |shown: &Shown| -> i64 {
            self.surplus
                .iter()
                .zip(&shown.met)
                .map(|(surplus, met)| {
                    let next = surplus + if *met { 1 } else { -1 };
                    next * next
                })
                .sum()
        };
        let fresh = |shown: &&Shown| self.last.as_ref() != Some(&shown.met);
        let least = self.all.iter().filter(fresh).map(after).min();
        let best: Vec<&Shown> = self
            .all
            .iter()
            .filter(fresh)
            .filter(|shown| Some(after(shown)) == least)
            .collect();
        // a skill with one clip only repeats it
        let drawn = match best.get(chance.below(best.len())) {
            Some(shown) => (*shown).clone(),
            None => self.all[chance.below(self.all.len())].clone(),
        };
        for (surplus, met) in self.surplus.iter_mut().zip(&drawn.met) {
            *surplus += if *met { 1 } else { -1 };
        }
        self.last = Some(drawn.met.clone());
        drawn
    }
}

/// Every set of at most [`MOST`] faults, the empty one first, in the order of the faults.
fn sets(faults: &[Fault]) -> Vec<Vec<Fault>> {
    let many = faults.len().min(16) as u32;
    (0..1_u32 << many)
        .filter(|bits| bits.count_ones() <= MOST)
        .map(|bits| {
            faults
                .iter()
                .enumerate()
                .filter(|(at, _)| bits & (1 << at) != 0)
                .map(|(_, fault)| *fault)
                .collect()
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ledger() -> Ledger {
        Ledger::shipped().expect("the shipped ledger reads")
    }

    /// Each single fault, and none, shows at every age and on both sides what it says.
    #[test]
    fn every_fault_shows_what_it_says() {
        let ledger = ledger();
        let model = Model::of(&ledger);
        let (mut seen, mut wrong) = (0, Vec::new());
        for skill in Skill::ALL {
            let known = criteria(skill);
            for age in AGES {
                let children = counts(&[(f64::from(age), 1)], &ledger).value;
                for lead in [Side::Right, Side::Left] {
                    let gait = Gait::named(skill.word()).expect("a gait");
                    let path = Path::free(&gait, lead, &children[0], &model);
                    let Some(well) = path.and_then(|path| Clip::of(&path, &model)) else {
                        continue;
                    };
                    let told = |clip: &Clip| -> Vec<&str> {
                        let met = measure::met(clip, &ledger);
                        assert_eq!(met.len(), known.len());
                        let rows = known.iter().zip(met);
                        rows.filter(|(_, met)| !met)
                            .map(|(row, _)| row.name)
                            .collect()
                    };
                    let mut hold = |clip: &Clip, name: &str, wanted: &[&str]| {
                        let told = told(clip);
                        if told != wanted {
                            wrong.push(format!(
                                "{} at {age} {lead:?}, {name}: {told:?}, not {wanted:?}",
                                skill.word()
                            ));
                        }
                        seen += 1;
                    };
                    hold(&well, "well", &[]);
                    for fault in faults(skill) {
                        hold(&fault.of(&well, &model), fault.form.name, fault.breaks);
                    }
                }
            }
        }
        assert_eq!(wrong, Vec::<String>::new());
        assert!(seen > 150, "{seen}");
    }

    /// Every fault may be shown alone, at every age that does the skill and on both sides.
    #[test]
    fn no_fault_is_left_out() {
        let ledger = ledger();
        let model = Model::of(&ledger);
        for skill in Skill::ALL {
            let pool = Pool::of(skill, &model, &ledger);
            let alone = |many: usize| pool.all.iter().filter(move |one| one.faults.len() == many);
            for fault in faults(skill) {
                let shown = alone(1).filter(|one| one.faults == [fault]);
                let told = format!("{} {}", skill.word(), fault.form.name);
                assert_eq!(shown.count(), alone(0).count(), "{told}");
            }
            assert!(
                skill == Skill::Walk || alone(0).count() >= 4,
                "{}",
                skill.word()
            );
        }
    }

    /// A foot is in one place at a time, lands before it lifts, and ends on the ground.
    #[test]
    fn every_clip_is_sound() {
        for shown in clips(11, 300, &Skill::ALL, &ledger()) {
            let told = format!(
                "{} {:?}",
                shown.skill.word(),
                shown
                    .faults
                    .iter()
                    .map(|fault| fault.form.name)
                    .collect::<Vec<_>>()
            );
            let clip = &shown.clip;
            let mut last = 0.0;
            for print in &clip.prints {
                assert!(print.lands >= last && print.lands <= clip.end, "{told}");
                last = print.lands;
            }
            for side in [Side::Right, Side::Left] {
                let own: Vec<_> = clip
                    .prints
                    .iter()
                    .filter(|print| print.side == side)
                    .collect();
                for pair in own.windows(2) {
                    let lifts = pair[0].lifts.expect("it lands again");
                    assert!(
                        pair[0].lands < lifts && lifts <= pair[1].lands,
                        "{told} {side:?}"
                    );
                }
            }
            assert!(
                clip.prints.iter().any(|print| print.lifts.is_none()),
                "{told}"
            );
        }
    }

    #[test]
    fn every_criterion_can_fail_and_every_early_form_is_practised() {
        for row in crate::CRITERIA {
            let all = faults(row.skill);
            assert!(
                all.iter().any(|fault| fault.breaks.contains(&row.name)),
                "nothing breaks {}",
                row.name
            );
        }
        for row in motion::EARLY {
            let all = faults(row.skill);
            assert!(
                all.iter().any(|fault| fault.form.name == row.name),
                "{}",
                row.name
            );
        }
        for fault in crate::faults::all() {
            for name in fault.breaks {
                assert!(
                    criteria(fault.skill()).iter().any(|row| row.name == *name),
                    "{name}"
                );
            }
        }
    }

    /// In any practice each criterion that comes five times or more is met in 30 to 70 %.
    #[test]
    fn a_practice_is_balanced_and_never_alike_in_a_row() {
        let ledger = ledger();
        for (seed, n, skills) in [
            (1, 48, Skill::ALL.to_vec()),
            (2, 24, vec![Skill::Gallop, Skill::Skip]),
            (3, 10, vec![Skill::Leap]),
        ] {
            let all = clips(seed, n, &skills, &ledger);
            assert_eq!(all.len(), n);
            for pair in all.windows(2) {
                assert_ne!((pair[0].skill, &pair[0].met), (pair[1].skill, &pair[1].met));
                assert!(skills.len() == 1 || pair[0].skill != pair[1].skill);
            }
            for row in crate::CRITERIA {
                let at = criteria(row.skill).iter().position(|known| *known == row);
                let met: Vec<bool> = all
                    .iter()
                    .filter(|shown| shown.skill == row.skill)
                    .map(|shown| shown.met[at.expect("known")])
                    .collect();
                let share = met.iter().filter(|met| **met).count() as f64 / met.len() as f64;
                assert!(
                    met.len() < 5 || (0.3..=0.7).contains(&share),
                    "{} {met:?}",
                    row.name
                );
            }
        }
    }

    #[test]
    fn a_seed_gives_the_same_clips_and_another_seed_others() {
        let ledger = ledger();
        let of = |seed| clips(seed, 12, &Skill::TAUGHT, &ledger);
        assert_eq!(of(7), of(7));
        assert_ne!(of(7), of(8));
        assert!(clips(1, 5, &[Skill::Walk], &ledger).is_empty());
        assert!(clips(1, 5, &[], &ledger).is_empty());
    }
}
