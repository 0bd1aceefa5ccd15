//! What a centre writes of a child, before anything is reckoned.

use std::collections::BTreeMap;

use note::Place;

use crate::child::{Means, Side, Skill};
use crate::growth::Sex;

/// One row of the children's file; lengths in metres.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// A pseudonymous code.
    pub id: String,
    /// Year and month of birth.
    pub born: (i32, u8),
    /// Where a centre records it.
    pub sex: Option<Sex>,
    /// The group that it plays with.
    pub group: Option<String>,
    /// Measured height.
    pub height: Option<f64>,
    /// Measured foot length.
    pub foot: Option<f64>,
    /// Best of three standing jumps, toe line to the nearer heel.
    pub jump_best: Option<f64>,
    /// Best of three series of five hops on the right foot; 0 where it cannot yet.
    pub hops_right: Option<f64>,
    /// The same on the left.
    pub hops_left: Option<f64>,
    /// The side known to be used less.
    pub less_used: Option<Side>,
    /// How the child travels.
    pub means: Means,
    /// Where each column's cell stands; `id` stands for the row.
    pub places: BTreeMap<String, Place>,
}

impl Entry {
    /// A child of whom only the code and the birth month are known.
    pub fn new(id: impl Into<String>, born: (i32, u8)) -> Entry {
        Entry {
            id: id.into(),
            born,
            sex: None,
            group: None,
            height: None,
            foot: None,
            jump_best: None,
            hops_right: None,
            hops_left: None,
            less_used: None,
            means: Means::Feet,
            places: BTreeMap::new(),
        }
    }

    /// Where a column's cell stands, or the row.
    pub fn place(&self, column: &str) -> Option<Place> {
        self.places
            .get(column)
            .or_else(|| self.places.get("id"))
            .cloned()
    }
}

/// The day that ages are reckoned on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// Year.
    pub year: i32,
    /// Month, 1 to 12.
    pub month: u8,
}

impl Date {
    /// Months from a birth month to this one. A birth is a month and never a day, so this
    /// is right to half a month either way.
    pub fn months_since(self, born: (i32, u8)) -> i32 {
        (self.year.saturating_sub(born.0)).saturating_mul(12) + i32::from(self.month)
            - i32::from(born.1)
    }
}

/// A figure of one child that people set.
#[derive(Clone, Debug, PartialEq)]
pub struct Override {
    /// The child's code.
    pub child: String,
    /// Which figure.
    pub what: Trait,
    /// Its value: metres, metres a second, or a probability.
    pub value: f64,
    /// Where it stands.
    pub at: Option<Place>,
}

/// What can be set of a child.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Trait {
    /// Mean reach of a skill, metres.
    Reach(Skill),
    /// How unsure that reach is, metres.
    Tau(Skill),
    /// Probability that the child can do the skill.
    Can(Skill),
    /// Probability that one contact keeps the pattern.
    Steady(Skill),
    /// Stature, metres.
    Stature,
    /// Foot length, metres.
    Foot,
    /// Landing scatter, metres.
    Scatter,
    /// Walking speed, metres a second.
    WalkSpeed,
    /// Running speed, metres a second.
    RunSpeed,
}

impl Trait {
    /// The word of files: `m`, `tau`, `can`, `steady`, `stature` ...
    pub fn word(self) -> &'static str {
        match self {
            Trait::Reach(_) => "m",
            Trait::Tau(_) => "tau",
            Trait::Can(_) => "can",
            Trait::Steady(_) => "steady",
            Trait::Stature => "stature",
            Trait::Foot => "foot",
            Trait::Scatter => "scatter",
            Trait::WalkSpeed => "walk_speed",
            Trait::RunSpeed => "run_speed",
        }
    }

    /// The trait of a word, `skill` for those that have one.
    pub fn of_word(word: &str, skill: Option<Skill>) -> Option<Trait> {
        match (word, skill) {
            ("m", Some(skill)) => Some(Trait::Reach(skill)),
            ("tau", Some(skill)) => Some(Trait::Tau(skill)),
            ("can", Some(skill)) => Some(Trait::Can(skill)),
            ("steady", Some(skill)) => Some(Trait::Steady(skill)),
            ("stature", None) => Some(Trait::Stature),
            ("foot", None) => Some(Trait::Foot),
            ("scatter", None) => Some(Trait::Scatter),
            ("walk_speed", None) => Some(Trait::WalkSpeed),
            ("run_speed", None) => Some(Trait::RunSpeed),
            _ => None,
        }
    }

    /// Whether a value can be meant: a probability from 0 to 1, a spread from 0 up, all
    /// else above 0, and nothing over 10 m or 10 m/s.
    pub fn admits(self, value: f64) -> bool {
        match self {
            Trait::Can(_) | Trait::Steady(_) => (0.0..=1.0).contains(&value),
            Trait::Tau(_) | Trait::Scatter => (0.0..=10.0).contains(&value),
            _ => value > 0.0 && value <= 10.0,
        }
    }
}
