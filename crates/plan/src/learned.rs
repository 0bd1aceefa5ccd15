//! The `learned` key.

use learning::{Because, Of};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::round::millionth;

/// What the class has shown, and what it tells.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Learned {
    /// By child and skill.
    pub told: Vec<Told>,
    /// What ages and groups have in common, by skill.
    pub effects: Vec<Effect>,
    /// Figures that changed by as much as a page would show, and because of what.
    pub changes: Vec<Change>,
}

/// One skill of one child before and after.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Told {
    /// The child's code.
    pub child: String,
    /// Completed years.
    pub years: u32,
    /// The group; empty where there are none.
    pub group: String,
    /// The skill.
    pub skill: String,
    /// Tries seen.
    pub tries: u32,
    /// Those that came off.
    pub good: u32,
    /// Measured bests.
    pub measured: u32,
    /// Criteria looked at.
    pub checks: u32,
    /// Criteria met.
    pub met: u32,
    /// Reach as age and body have it: mean and standard deviation, metres.
    pub prior: [f64; 2],
    /// Steadiness and `can` as age has them.
    pub prior_steady_can: [f64; 2],
    /// Reach now, metres, given that the child can.
    pub reach: Band,
    /// Steadiness now, given that the child can.
    pub steady: Band,
    /// The rate at which criteria are met.
    pub form: Band,
    /// The probability that the child can, now.
    pub can: f64,
}

/// A number that is not known.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Band {
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub sd: f64,
    /// The 50 % interval.
    pub half: [f64; 2],
    /// The 90 % interval.
    pub nine_tenths: [f64; 2],
}

/// What children of an age or a group have in common.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Effect {
    /// The skill.
    pub skill: String,
    /// Completed years, where it is an age's.
    pub age: Option<u32>,
    /// The group, where it is a group's; empty for a class without groups.
    pub group: Option<String>,
    /// Children who share it.
    pub children: u32,
    /// Those who have shown something.
    pub told_by: u32,
    /// Their tries.
    pub tries: u32,
    /// Standard deviation before, metres of reach; the mean was 0.
    pub prior_sd: f64,
    /// What is known now, metres of reach.
    pub now: Band,
}

/// One figure of a child that changed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Change {
    /// The child's code.
    pub child: String,
    /// The skill.
    pub skill: String,
    /// `m`, `tau`, `can` or `steady`.
    pub what: String,
    /// Before.
    pub before: f64,
    /// After.
    pub after: f64,
    /// `measured`, `tries`, `checks`, `counts`, `jump` (the hop follows it), `others`.
    pub because: Vec<String>,
}

impl Learned {
    /// Copies what was learned; `None` where nothing was seen.
    pub fn of(learned: &learning::Learned) -> Option<Learned> {
        if learned.told.is_empty() {
            return None;
        }
        Some(Learned {
            told: learned.told.iter().map(told).collect(),
            effects: learned.effects.iter().map(effect).collect(),
            changes: learning::changes(learned).iter().map(change).collect(),
        })
    }
}

fn band(band: &learning::Band) -> Band {
    Band {
        mean: millionth(band.mean),
        sd: millionth(band.sd),
        half: band.half.map(millionth),
        nine_tenths: band.nine_tenths.map(millionth),
    }
}

fn told(one: &learning::Told) -> Told {
    Told {
        child: one.child.clone(),
        years: one.years,
        group: one.group.clone(),
        skill: one.skill.word().to_owned(),
        tries: one.seen.tries,
        good: one.seen.good,
        measured: one.seen.measured,
        checks: one.seen.checks,
        met: one.seen.met,
        prior: [one.prior.m, one.prior.tau].map(millionth),
        prior_steady_can: [one.prior.steady, one.prior.can].map(millionth),
        reach: band(&one.reach),
        steady: band(&one.steady),
        form: band(&one.form),
        can: millionth(one.posterior.can),
    }
}

fn effect(one: &learning::Effect) -> Effect {
    let (age, group) = match &one.of {
        Of::Age(years) => (Some(*years), None),
        Of::Group(name) => (None, Some(name.clone())),
    };
    Effect {
        skill: one.skill.word().to_owned(),
        age,
        group,
        children: one.children,
        told_by: one.told_by,
        tries: one.tries,
        prior_sd: millionth(one.prior_sd),
        now: band(&one.now),
    }
}

fn change(one: &learning::Change) -> Change {
    Change {
        child: one.child.clone(),
        skill: one.skill.word().to_owned(),
        what: match one.what {
            learning::What::Reach => "m",
            learning::What::Unsure => "tau",
            learning::What::Can => "can",
            learning::What::Steady => "steady",
        }
        .to_owned(),
        before: millionth(one.before),
        after: millionth(one.after),
        because: one
            .because
            .iter()
            .map(|why| because(why).to_owned())
            .collect(),
    }
}

fn because(why: &Because) -> &'static str {
    match why {
        Because::Measured => "measured",
        Because::Tries { .. } => "tries",
        Because::Checks { .. } => "checks",
        Because::Counts { .. } => "counts",
        Because::Jump => "jump",
        Because::Others { .. } => "others",
    }
}
