//! The `layout` and `audit` keys.

use std::collections::BTreeMap;

use children::{Child, Skill};
use layout::plan::{Plan as Laid, Reason};
use layout::{Candidate as Could, Check as Held, Task, Worth};
use ledger::{Key, Ledger};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::footfall::letter;
use crate::round::millionth;

/// Every input of the choice, and the answer: enough to solve it again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Layout {
    /// Weeks that the programme runs.
    pub weeks: u32,
    /// Station minutes a week of each child.
    #[serde(rename = "M")]
    pub station_minutes: f64,
    /// Children out together.
    #[serde(rename = "A")]
    pub out_together: u32,
    /// Outings that the class needs; station and yard time are M times this.
    pub outings: u32,
    /// Of the skills.
    pub weights: BTreeMap<String, f64>,
    /// Minutes a week of full practice wanted, by child, skill and foot.
    pub targets: Vec<Target>,
    /// Good contacts a minute that count as full practice, at 3, 4, 5 and 6 years.
    pub par: BTreeMap<String, Vec<f64>>,
    /// In the project's currency.
    pub budget: f64,
    /// Area of the free ground, m².
    pub free_area: f64,
    /// What could be painted.
    pub candidates: Vec<Candidate>,
    /// Names of the candidates that were placed.
    pub chosen: Vec<String>,
    /// Minutes a week by child, candidate, activity and stretch.
    pub minutes: Vec<Minutes>,
    /// Practice by child, skill and foot.
    pub practice: Vec<Practice>,
    /// Z at the markings that were placed.
    pub value: f64,
    /// No choice can do better.
    pub bound: f64,
    /// (bound - value) / bound.
    pub gap: f64,
    /// What the shape of the ground says beyond its area.
    pub shape: Shape,
    /// Value and bound of the choice at other budgets, its ground known by area; may be empty.
    pub curve: Vec<AtBudget>,
    /// Whether the search was stopped before its work was done.
    pub stopped: bool,
    /// What a little more of each would change.
    pub binds: Vec<Binds>,
    /// Why each other candidate is not there.
    pub left_out: Vec<LeftOut>,
    /// Wanted terms that are not met, by rule: how many of how many.
    pub terms: BTreeMap<String, Term>,
}

/// The bound again, with a row more for each set that the ground's shape rules out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Shape {
    /// Sets of candidates that are proven to have no place together, whatever their poses: the
    /// row of a set of n is that its x add up to n - 1 at most. May be empty.
    pub apart: Vec<Vec<String>>,
    /// No choice under these rows can do better; at most the bound.
    pub bound: f64,
    /// (bound - value) / bound, of this bound.
    pub gap: f64,
}

/// What the choice would be worth at a budget.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct AtBudget {
    /// In the project's currency.
    pub budget: f64,
    /// Z of the best set found.
    pub value: f64,
    /// No set can do better.
    pub bound: f64,
}

/// Minutes a week of one child, one skill and one foot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Target {
    /// The child's id.
    pub child: String,
    /// The skill.
    pub skill: String,
    /// `R` or `L`; null for a skill without sides.
    pub foot: Option<String>,
    /// Minutes.
    pub minutes: f64,
}

/// A family at fixed lengths for one group.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Candidate {
    /// Unique among the candidates.
    pub name: String,
    /// The family.
    pub family: String,
    /// The part of the class that it is sized for.
    pub group: String,
    /// Lengths, metres.
    pub lengths: BTreeMap<String, f64>,
    /// Children side by side.
    pub tracks: u32,
    /// In the project's currency.
    pub cost: f64,
    /// Area of the envelope, m².
    pub area: f64,
    /// Whether it must be chosen.
    pub locked: bool,
    /// Whether it must not.
    pub refused: bool,
    /// Practice a minute; zeros left out.
    pub e: Vec<Yield>,
}

/// Expected practice of one child on one activity.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Yield {
    /// The child's id.
    pub child: String,
    /// `skill`, `skill:R` or `skill:L`.
    pub activity: String,
    /// The skill that is practised.
    pub skill: String,
    /// `R` or `L`; null for a skill without sides.
    pub foot: Option<String>,
    /// The share of a full minute's practice.
    pub e: f64,
}

/// Minutes dealt out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Minutes {
    /// The child's id.
    pub child: String,
    /// The candidate's name.
    pub candidate: String,
    /// The activity.
    pub activity: String,
    /// 1, or 2 for the second stretch, which counts half.
    pub stretch: u8,
    /// Minutes a week.
    pub minutes: f64,
}

/// Practice that a child gets.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Practice {
    /// The child's id.
    pub child: String,
    /// The skill.
    pub skill: String,
    /// `R` or `L`; null for a skill without sides.
    pub foot: Option<String>,
    /// Of the first half of the target, minutes.
    pub first: f64,
    /// Of the second half, minutes.
    pub second: f64,
    /// The whole target, minutes.
    pub target: f64,
}

/// The change for a little more.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Binds {
    /// `money`, `ground`, `time` or `staff`.
    pub of: String,
    /// How much more: currency, m², minutes a session, members of staff.
    pub more: f64,
    /// Change of Z's bound.
    pub change: f64,
}

/// A candidate that was not placed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LeftOut {
    /// Its name.
    pub candidate: String,
    /// `refused`, `no-gain`, `same-family`, `money`, `ground`, `no-place` or `outdone`.
    pub why: String,
    /// The one that stands in its way, for `same-family`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by: Option<String>,
}

/// A wanted term.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Term {
    /// Checks of it that do not hold.
    pub unmet: usize,
    /// All of them.
    pub of: usize,
}

/// One rule held against one marking, or against the whole layout.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Check {
    /// The rule.
    pub rule: String,
    /// The marking's name; null for the whole layout.
    pub marking: Option<String>,
    /// `m`, `m2`, `deg`, `points` or `1`.
    pub unit: String,
    /// What is wanted.
    pub wanted: f64,
    /// What is.
    pub actual: f64,
    /// Whether it must hold.
    pub hard: bool,
    /// Whether it holds.
    pub pass: bool,
    /// The ledger figure that says what is wanted.
    pub source: Option<String>,
}

impl Layout {
    /// Copies the answer of the layout stage and the question that it answers.
    pub fn of(
        weeks: u32,
        weights: &BTreeMap<Skill, f64>,
        children: &[Child],
        task: &Task,
        laid: &Laid,
        curve: &[Worth],
        ledger: &Ledger,
    ) -> Layout {
        let question = &task.question;
        let child = |at: usize| {
            children
                .get(at)
                .map_or_else(String::new, |child| child.name.clone())
        };
        let named = |at: usize| {
            question
                .candidates
                .get(at)
                .map_or_else(String::new, |candidate| candidate.name.clone())
        };
        let mut terms: BTreeMap<String, Term> = BTreeMap::new();
        for check in laid.checks.iter().filter(|check| !check.hard) {
            let term = terms
                .entry(check.rule.to_owned())
                .or_insert(Term { unmet: 0, of: 0 });
            term.of += 1;
            term.unmet += usize::from(!check.pass);
        }
        Layout {
            weeks,
            station_minutes: question.time.each,
            out_together: question.time.out,
            outings: question.time.outings,
            weights: weights
                .iter()
                .map(|(skill, weight)| (skill.word().to_owned(), *weight))
                .collect(),
            targets: question
                .targets
                .iter()
                .map(|target| Target {
                    child: child(target.child),
                    skill: target.skill.word().to_owned(),
                    foot: target.side.map(letter),
                    minutes: target.minutes,
                })
                .collect(),
            par: PAR
                .iter()
                .map(|(skill, key)| ((*skill).to_owned(), ledger.list(*key).to_vec()))
                .collect(),
            budget: question.budget,
            free_area: question.free_area,
            candidates: question
                .candidates
                .iter()
                .map(|could| candidate(could, children))
                .collect(),
            chosen: laid
                .placed
                .iter()
                .map(|placed| named(placed.candidate))
                .collect(),
            minutes: laid
                .dealt
                .minutes
                .iter()
                .map(|dealt| Minutes {
                    child: child(dealt.child),
                    candidate: named(dealt.candidate),
                    activity: dealt.activity.clone(),
                    stretch: dealt.stretch,
                    minutes: millionth(dealt.minutes),
                })
                .collect(),
            practice: laid
                .dealt
                .practice
                .iter()
                .map(|practice| Practice {
                    child: child(practice.target.child),
                    skill: practice.target.skill.word().to_owned(),
                    foot: practice.target.side.map(letter),
                    first: millionth(practice.first),
                    second: millionth(practice.second),
                    target: practice.target.minutes,
                })
                .collect(),
            value: laid.dealt.value,
            bound: laid.bound,
            gap: laid.gap,
            shape: Shape {
                apart: laid
                    .shape
                    .apart
                    .iter()
                    .map(|set| set.iter().map(|at| named(*at)).collect())
                    .collect(),
                bound: laid.shape.bound,
                gap: laid.shape.gap,
            },
            curve: curve
                .iter()
                .map(|worth| AtBudget {
                    budget: millionth(worth.budget),
                    value: millionth(worth.value),
                    bound: millionth(worth.bound),
                })
                .collect(),
            stopped: laid.stopped,
            binds: laid
                .binds
                .iter()
                .map(|binds| Binds {
                    of: binds.of.to_owned(),
                    more: binds.more,
                    change: millionth(binds.change),
                })
                .collect(),
            left_out: laid
                .left_out
                .iter()
                .map(|left| LeftOut {
                    candidate: named(left.candidate),
                    why: left.why.word().to_owned(),
                    by: match left.why {
                        Reason::SameFamily(other) => Some(named(other)),
                        _ => None,
                    },
                })
                .collect(),
            terms,
        }
    }
}

const PAR: [(&str, Key); 6] = [
    ("jump", layout::figures::PAR_JUMP),
    ("hop", layout::figures::PAR_HOP),
    ("leap", layout::figures::PAR_LEAP),
    ("gallop", layout::figures::PAR_GALLOP),
    ("slide", layout::figures::PAR_SLIDE),
    ("skip", layout::figures::PAR_SKIP),
];

fn candidate(could: &Could, children: &[Child]) -> Candidate {
    Candidate {
        name: could.name.clone(),
        family: could.family.clone(),
        group: could.group.clone(),
        lengths: could
            .figure
            .lengths
            .iter()
            .map(|(name, metres)| (name.clone(), millionth(*metres)))
            .collect(),
        tracks: could.figure.tracks,
        cost: could.cost,
        area: could.area,
        locked: could.locked.is_some(),
        refused: could.refused,
        e: could
            .yields
            .iter()
            .filter(|gift| gift.e > 0.0)
            .map(|gift| Yield {
                child: children
                    .get(gift.child)
                    .map_or_else(String::new, |child| child.name.clone()),
                activity: gift.activity.clone(),
                skill: gift.skill.word().to_owned(),
                foot: gift.side.map(letter),
                e: gift.e,
            })
            .collect(),
    }
}

impl Check {
    /// Copies one check.
    pub fn of(held: &Held) -> Check {
        Check {
            rule: held.rule.to_owned(),
            marking: held.marking.clone(),
            unit: held.unit.to_owned(),
            wanted: millionth(held.wanted),
            actual: millionth(held.actual),
            hard: held.hard,
            pass: held.pass,
            source: held.source.map(str::to_owned),
        }
    }
}
