//! The linear programme over child-minutes, and the integer choice of the set.
//!
//! Exactly the programme of LAYOUT: this file is the only one that knows its rows. Children
//! with equal targets and equal yields are merged, which is exact: the programme is concave
//! in each child's minutes and knows no names, so an optimum treats equals equally.
//!
//! Invariants: candidates are solved in the order of their names and children in the order
//! of what they ask, so that the answer does not know the order of the input.

mod bound;
mod cuts;
mod deal;

use std::collections::BTreeMap;

use ledger::Ledger;

use crate::candidate::Candidate;
use crate::figures as fig;
use crate::millionth;
use crate::week::{Target, Time};

pub(crate) use cuts::Ceiling;

/// All that the choice knows.
#[derive(Clone, Copy, Debug)]
pub struct Question<'a> {
    /// How many children each child stands for.
    pub counts: &'a [u32],
    /// T_isf.
    pub targets: &'a [Target],
    /// What could be painted.
    pub candidates: &'a [Candidate],
    /// M, A and the outings.
    pub time: Time,
    /// Money, in the project's currency.
    pub budget: f64,
    /// Area of the free ground, m².
    pub free_area: f64,
}

/// The programme with its figures read and its symmetries merged.
#[derive(Clone, Debug)]
pub struct Programme {
    /// Merged children.
    pub(crate) groups: Vec<Group>,
    /// For each child, its group.
    pub(crate) group_of: Vec<usize>,
    /// Candidates by name.
    pub(crate) items: Vec<Item>,
    pub(crate) each: f64,
    pub(crate) budget: f64,
    pub(crate) free_area: f64,
    /// Station minutes of one child's place: M x outings.
    places: f64,
    /// Sum of all targets, times counts.
    asked: f64,
    stale: f64,
    stale_worth: f64,
    worth: [f64; 2],
}

/// Children who ask and get the same.
#[derive(Clone, Debug)]
pub(crate) struct Group {
    pub(crate) count: f64,
    /// T by slot, minutes; a slot is a skill and a foot.
    pub(crate) targets: Vec<(Slot, f64)>,
}

pub(crate) type Slot = (children::Skill, Option<children::Side>);

/// A candidate as the programme sees it.
#[derive(Clone, Debug)]
pub(crate) struct Item {
    /// Its number in the question.
    pub(crate) number: usize,
    pub(crate) cost: f64,
    pub(crate) area: f64,
    pub(crate) locked: bool,
    pub(crate) refused: bool,
    /// Family and group, as a number: one of each at most.
    pub(crate) rival: usize,
    /// G: children who share it.
    pub(crate) places: f64,
    /// By group of children, its activities: word and (slot, e).
    pub(crate) acts: Vec<Vec<Act>>,
}

impl Group {
    fn slot(&self, what: Slot) -> Option<usize> {
        self.targets.iter().position(|target| target.0 == what)
    }
}

#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Act {
    pub(crate) word: String,
    pub(crate) yields: Vec<(Slot, f64)>,
}

/// Minutes dealt out and what they are worth.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Dealt {
    /// Z.
    pub value: f64,
    /// u, by child, candidate, activity and stretch (1 or 2); zeros left out.
    pub minutes: Vec<Minutes>,
    /// v1 + v2, by child, skill and foot.
    pub practice: Vec<Practice>,
}

/// Minutes a week of one child on one activity.
#[derive(Clone, Debug, PartialEq)]
pub struct Minutes {
    /// Number of the child.
    pub child: usize,
    /// Number of the candidate.
    pub candidate: usize,
    /// As `hop:R`.
    pub activity: String,
    /// 1, or 2 for the second stretch.
    pub stretch: u8,
    /// Minutes.
    pub minutes: f64,
}

/// Practice of one child, in minutes of full practice, and what was asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Practice {
    /// The target it answers.
    pub target: Target,
    /// v of the first half of the target, minutes.
    pub first: f64,
    /// v of the second half.
    pub second: f64,
}

/// What the search may look at, beyond the question.
#[derive(Clone, Debug, Default)]
pub struct Limits {
    /// Sets that cannot lie together, as numbers of candidates: at least one stays out.
    pub apart: Vec<Vec<usize>>,
    /// Money, where it differs from the question's.
    pub budget: Option<f64>,
    /// Ground, where it differs, m².
    pub area: Option<f64>,
    /// Of Z: the search may end when bound and value are this near each other.
    pub near: f64,
    /// Sets that are known to be good, as numbers of candidates: the search begins with the
    /// best of them that is allowed.
    pub known: Vec<Vec<usize>>,
}

/// The best set and the proof.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// Numbers of the candidates, ascending.
    pub chosen: Vec<usize>,
    /// Z of the chosen set.
    pub value: f64,
    /// No set can do better: at least `value`.
    pub bound: f64,
    /// Whether the bound was met: nothing is left to search.
    pub proven: bool,
    /// Branch-and-bound nodes that were solved.
    pub nodes: u64,
}

/// The solver gave up; its own words, for a report to us. The question has no such fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unsolved(pub String);

/// Minutes; less is the solver's dust (its rows hold to 1e-7).
const DUST: f64 = 5e-7;

impl Programme {
    /// Reads a question. Yields, costs and areas are rounded to 1e-6 first, as plan.json
    /// shows them, so that the plan can be recomputed from itself.
    pub fn new(question: &Question, ledger: &Ledger) -> Programme {
        let (groups, group_of, acts) = merge(question);
        let mut order: Vec<usize> = (0..question.candidates.len()).collect();
        order.sort_by(|a, b| {
            question.candidates[*a]
                .name
                .cmp(&question.candidates[*b].name)
        });
        let mut rivals = BTreeMap::new();
        let share = ledger.number(fig::TRACK_CHILDREN);
        let items = order
            .into_iter()
            .map(|number| {
                let candidate = &question.candidates[number];
                let next = rivals.len();
                Item {
                    number,
                    cost: millionth(candidate.cost),
                    area: millionth(candidate.area),
                    locked: candidate.locked.is_some(),
                    refused: candidate.refused && candidate.locked.is_none(),
                    rival: *rivals
                        .entry((&candidate.family, &candidate.group))
                        .or_insert(next),
                    places: share * f64::from(candidate.figure.tracks),
                    acts: acts
                        .iter()
                        .map(|of_group| of_group[number].clone())
                        .collect(),
                }
            })
            .collect();
        Programme {
            asked: groups
                .iter()
                .map(|g| g.count * g.targets.iter().map(|t| t.1).sum::<f64>())
                .sum(),
            groups,
            group_of,
            items,
            each: question.time.each,
            budget: millionth(question.budget),
            free_area: millionth(question.free_area),
            places: question.time.each * f64::from(question.time.outings),
            stale: ledger.number(fig::STALE),
            stale_worth: ledger.number(fig::STALE_WORTH),
            worth: [
                ledger.number(fig::FIRST_HALF),
                ledger.number(fig::SECOND_HALF),
            ],
        }
    }

    /// Z of a placed set, and who spends which minutes where.
    ///
    /// # Errors
    /// [`Unsolved`] where the solver fails on its own account.
    pub fn deal(&self, question: &Question, placed: &[usize]) -> Result<Dealt, Unsolved> {
        let set = self.members(placed);
        let parts = self.solve_fixed(&set)?;
        let mut dealt = Dealt {
            value: parts.iter().map(|part| part.worth).sum::<f64>(),
            ..Dealt::default()
        };
        dealt.value = if self.asked > 0.0 {
            dealt.value / self.asked
        } else {
            0.0
        };
        for (child, group) in self.group_of.iter().enumerate() {
            let Some(part) = parts.get(*group) else {
                continue;
            };
            for minutes in &part.minutes {
                dealt.minutes.push(Minutes {
                    child,
                    ..minutes.clone()
                });
            }
            for target in question
                .targets
                .iter()
                .filter(|target| target.child == child)
            {
                let slot = (target.skill, target.side);
                let got = part.practice.get(&slot).copied().unwrap_or_default();
                dealt.practice.push(Practice {
                    target: *target,
                    first: got[0],
                    second: got[1],
                });
            }
        }
        Ok(dealt)
    }

    /// Z of a set alone.
    ///
    /// # Errors
    /// As [`Programme::deal`].
    pub fn value(&self, placed: &[usize]) -> Result<f64, Unsolved> {
        let parts = self.solve_fixed(&self.members(placed))?;
        let worth: f64 = parts.iter().map(|part| part.worth).sum();
        Ok(if self.asked > 0.0 {
            worth / self.asked
        } else {
            0.0
        })
    }

    fn numbers_where(&self, which: impl Fn(usize) -> bool) -> Vec<usize> {
        let mut numbers: Vec<usize> = (0..self.items.len())
            .filter(|at| which(*at))
            .map(|at| self.items[at].number)
            .collect();
        numbers.sort_unstable();
        numbers
    }

    fn members(&self, numbers: &[usize]) -> Vec<usize> {
        (0..self.items.len())
            .filter(|at| numbers.contains(&self.items[*at].number))
            .collect()
    }

    /// Whether a station's time can never run out, whatever the children do.
    fn roomy(&self, item: &Item) -> bool {
        let most = self.each.min(2.0 * self.stale);
        let all: f64 = std::iter::zip(&self.groups, &item.acts)
            .filter(|(_, acts)| !acts.is_empty())
            .map(|(group, _)| group.count * most)
            .sum();
        all <= item.places * self.places
    }
}

pub(crate) fn unsolved(fault: microlp::Error) -> Unsolved {
    Unsolved(fault.to_string())
}

/// Groups of equals, the group of each child, and by group and candidate the activities.
#[allow(clippy::type_complexity)]
fn merge(question: &Question) -> (Vec<Group>, Vec<usize>, Vec<Vec<Vec<Act>>>) {
    let children = question.counts.len();
    let mut asks: Vec<Vec<(Slot, f64)>> = vec![Vec::new(); children];
    for target in question.targets {
        if let Some(ask) = asks.get_mut(target.child) {
            ask.push(((target.skill, target.side), target.minutes));
        }
    }
    let mut gets = vec![
        vec![BTreeMap::<String, Vec<(Slot, f64)>>::new(); question.candidates.len()];
        children
    ];
    for (number, candidate) in question.candidates.iter().enumerate() {
        for gift in &candidate.yields {
            let slot = (gift.skill, gift.side);
            let e = millionth(gift.e);
            let asked = asks
                .get(gift.child)
                .is_some_and(|ask| ask.iter().any(|a| a.0 == slot));
            if e > 0.0 && asked {
                gets[gift.child][number]
                    .entry(gift.activity.clone())
                    .or_default()
                    .push((slot, e));
            }
        }
    }
    let mut names: Vec<usize> = (0..question.candidates.len()).collect();
    names.sort_by(|a, b| {
        question.candidates[*a]
            .name
            .cmp(&question.candidates[*b].name)
    });
    let mut found: BTreeMap<Vec<u8>, Vec<usize>> = BTreeMap::new();
    for child in 0..children {
        asks[child].sort_by_key(|ask| ask.0);
        let mut key = Vec::new();
        for (slot, minutes) in &asks[child] {
            key.extend([slot.0 as u8, slot.1.map_or(0, |side| 1 + side as u8)]);
            key.extend(minutes.to_bits().to_be_bytes());
        }
        for number in &names {
            key.push(0xff);
            for (word, yields) in &mut gets[child][*number] {
                yields.sort_by_key(|gift| gift.0);
                key.extend(word.as_bytes());
                for (slot, e) in yields {
                    key.extend([0xfe, slot.0 as u8, slot.1.map_or(0, |side| 1 + side as u8)]);
                    key.extend(e.to_bits().to_be_bytes());
                }
            }
        }
        found.entry(key).or_default().push(child);
    }
    let mut groups = Vec::new();
    let mut acts = Vec::new();
    let mut group_of = vec![0; children];
    for members in found.into_values() {
        let Some(&first) = members.first() else {
            continue;
        };
        for member in &members {
            group_of[*member] = groups.len();
        }
        groups.push(Group {
            count: members
                .iter()
                .map(|member| f64::from(question.counts[*member]))
                .sum(),
            targets: std::mem::take(&mut asks[first]),
        });
        acts.push(
            std::mem::take(&mut gets[first])
                .into_iter()
                .map(|words| {
                    words
                        .into_iter()
                        .map(|(word, yields)| Act { word, yields })
                        .collect()
                })
                .collect(),
        );
    }
    (groups, group_of, acts)
}
