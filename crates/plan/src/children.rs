//! The `children` key.

use std::collections::BTreeMap;

use children::{Means, Side};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::round::millionth;

/// A child, or `count` children of one age, as the model sees them. Never a name.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Child {
    /// A pseudonymous code, or `age-4` for a count.
    pub id: String,
    /// How many children this stands for.
    pub count: u32,
    /// Years on the project's date.
    pub age: f64,
    /// Metres.
    pub stature: f64,
    /// Foot length, metres.
    pub foot: f64,
    /// Standard deviation of a landing round the aim, metres in each direction.
    pub scatter: f64,
    /// `feet`, `walker`, `wheels` or `held`.
    pub means: String,
    /// `right` or `left`: the side known to be used less.
    pub less_used: Option<String>,
    /// Metres a second.
    pub speeds: Speeds,
    /// By skill.
    pub skills: BTreeMap<String, Ability>,
}

/// Speeds, metres a second.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Speeds {
    /// Walking.
    pub walk: f64,
    /// Running.
    pub run: f64,
}

/// What is known of one skill: the reach is Normal(m, tau).
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Ability {
    /// Mean reach of one comfortable flight, metres.
    pub m: f64,
    /// How unsure the reach is, metres.
    pub tau: f64,
    /// Probability that the child can do the skill recognisably.
    pub can: f64,
    /// Probability that one contact keeps the pattern.
    pub steady: f64,
    /// Ledger keys, or `measured`.
    pub sources: Vec<String>,
}

impl Child {
    /// Copies one child of the children stage.
    pub fn of(child: &children::Child) -> Child {
        Child {
            id: child.name.clone(),
            count: child.count,
            age: millionth(child.age),
            stature: millionth(child.stature),
            foot: millionth(child.foot),
            scatter: millionth(child.scatter),
            means: means(child.means).to_owned(),
            less_used: child.less_used.map(|less| side(less).to_owned()),
            speeds: Speeds {
                walk: millionth(child.speeds.walk),
                run: millionth(child.speeds.run),
            },
            skills: child
                .skills
                .iter()
                .map(|(skill, ability)| {
                    let wire = Ability {
                        m: millionth(ability.m),
                        tau: millionth(ability.tau),
                        can: millionth(ability.can),
                        steady: millionth(ability.steady),
                        sources: ability.sources.clone(),
                    };
                    (skill.word().to_owned(), wire)
                })
                .collect(),
        }
    }
}

/// The word of a side.
pub fn side(side: Side) -> &'static str {
    match side {
        Side::Right => "right",
        Side::Left => "left",
    }
}

fn means(means: Means) -> &'static str {
    match means {
        Means::Feet => "feet",
        Means::Walker => "walker",
        Means::Wheels => "wheels",
        Means::Held => "held",
    }
}
