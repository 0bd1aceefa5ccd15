//! A child, or a number of children of one age, as the model sees them.

use std::collections::BTreeMap;

/// The skills of the model: the six that are taught, and run and walk that come along.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Skill {
    Jump,
    Hop,
    Leap,
    Gallop,
    Slide,
    Skip,
    Run,
    Walk,
}

impl Skill {
    /// All of them, the taught ones first.
    pub const ALL: [Skill; 8] = [
        Skill::Jump,
        Skill::Hop,
        Skill::Leap,
        Skill::Gallop,
        Skill::Slide,
        Skill::Skip,
        Skill::Run,
        Skill::Walk,
    ];

    /// The six that are taught.
    pub const TAUGHT: [Skill; 6] = [
        Skill::Jump,
        Skill::Hop,
        Skill::Leap,
        Skill::Gallop,
        Skill::Slide,
        Skill::Skip,
    ];

    /// The word of files and ledger keys.
    pub fn word(self) -> &'static str {
        match self {
            Skill::Jump => "jump",
            Skill::Hop => "hop",
            Skill::Leap => "leap",
            Skill::Gallop => "gallop",
            Skill::Slide => "slide",
            Skill::Skip => "skip",
            Skill::Run => "run",
            Skill::Walk => "walk",
        }
    }

    /// The skill of a word.
    pub fn of_word(word: &str) -> Option<Skill> {
        Skill::ALL.into_iter().find(|skill| skill.word() == word)
    }
}

/// A foot, or the side that leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Side {
    Right,
    Left,
}

/// How a child travels.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Means {
    Feet,
    Walker,
    Wheels,
    Held,
}

/// What is known of one skill of a child. The reach is Normal(m, tau), never under the
/// ledger's share of m.
#[derive(Clone, Debug, PartialEq)]
pub struct Ability {
    /// Mean reach of one comfortable flight, centre to centre, metres.
    pub m: f64,
    /// How unsure the reach is, metres.
    pub tau: f64,
    /// Probability that the child can do the skill recognisably.
    pub can: f64,
    /// Probability that one contact keeps the pattern.
    pub steady: f64,
    /// Ledger keys, or `measured`, that these rest on.
    pub sources: Vec<String>,
}

/// A child, or `count` children of one age.
#[derive(Clone, Debug, PartialEq)]
pub struct Child {
    /// A pseudonymous code, or `age-4` for a count.
    pub name: String,
    /// How many children this stands for; counts that often in every sum.
    pub count: u32,
    /// Years on the project's date.
    pub age: f64,
    /// Metres.
    pub stature: f64,
    /// Foot length, metres.
    pub foot: f64,
    /// Standard deviation of a landing round the aim, metres in each direction.
    pub scatter: f64,
    /// How the child travels.
    pub means: Means,
    /// The side known to be used less.
    pub less_used: Option<Side>,
    /// Walking and running speed, metres a second.
    pub speeds: Speeds,
    /// Every skill of the model.
    pub skills: BTreeMap<Skill, Ability>,
}

/// Speeds, metres a second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Speeds {
    /// Walking.
    pub walk: f64,
    /// Running.
    pub run: f64,
}
