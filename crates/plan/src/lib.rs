//! plan.json: the open record of a whole plan.
//!
//! The types here are the wire: plain, documented, versioned, in metres, seconds and
//! degrees. Stages know nothing of them; the `of` functions copy a stage's answer over
//! and round it. The JSON Schema in `schema/plan.schema.json` is made from these types.
//!
//! Invariants: no clock time, no absolute path, no name of a child; the same plan gives
//! the same text on every machine, whatever the number of threads.

mod build;
mod children;
mod footfall;
mod ground;
mod layout;
mod learned;
mod markings;
mod round;
mod sources;
mod survey;
mod teach;

use std::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use build::{
    Build, Can, ColourPaint, Crew, CutLaid, CutPanel, CutSheet, Days, KeyPoint, Month, Opening,
    SetOut, Shopping, Span, Stencil, Tape, Taped, Task, Thing, Third, Upkeep, Use, Waited, Window,
};
pub use children::{Ability, Child, Speeds};
pub use footfall::{Footfall, Good, Route as Way};
pub use ground::{Blocked, Ground, Position, Ring, Route};
pub use layout::{AtBudget, Candidate, Check, Layout};
pub use learned::{Band, Change, Effect, Learned, Told};
pub use markings::{Cell, Laid, Lane, Marking, Paint, Words};
pub use round::{millionth, round_to, tenth_of_a_micron};
pub use sources::Source;
pub use survey::{Ellipse, Point, Reading, Survey, Suspect};
pub use teach::{Spread, Teach};

/// The format's name and version.
pub const FORMAT: &str = "chalkyard-plan/1";

/// A whole plan. Every stage adds its own key.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Plan {
    /// `chalkyard-plan/1`.
    pub format: String,
    /// The program's version.
    pub program: String,
    /// The project's name.
    pub project: String,
    /// The seed of every random choice.
    pub seed: u64,
    /// The taped yard.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub survey: Option<Survey>,
    /// What may be painted, and why the rest may not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground: Option<Ground>,
    /// Who will play.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub children: Option<Vec<Child>>,
    /// What the class has shown by bests, tries and checks; left out where nothing was seen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub learned: Option<Learned>,
    /// The figures, where they lie.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub markings: Option<Vec<Marking>>,
    /// What each child's feet do on each marking.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub footfall: Option<Vec<Footfall>>,
    /// The choice, with every input that it rests on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layout: Option<Layout>,
    /// The rules, held against the layout.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub audit: Option<Vec<Check>>,
    /// What the people who build need.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub build: Option<Build>,
    /// The weeks of play.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub teach: Option<Teach>,
    /// The ledger figures that were used.
    pub sources: Vec<Source>,
}

impl Plan {
    /// An empty plan of a project.
    pub fn new(project: &str, seed: u64) -> Plan {
        Plan {
            format: FORMAT.to_owned(),
            program: env!("CARGO_PKG_VERSION").to_owned(),
            project: project.to_owned(),
            seed,
            survey: None,
            ground: None,
            children: None,
            learned: None,
            markings: None,
            footfall: None,
            layout: None,
            audit: None,
            build: None,
            teach: None,
            sources: Vec::new(),
        }
    }

    /// The text of plan.json, with a line feed at its end.
    ///
    /// # Errors
    /// [`Unwritable`] where a number is not finite: a stage's fault, never the user's.
    pub fn to_json(&self) -> Result<String, Unwritable> {
        let value = serde_json::to_value(self).map_err(|fault| Unwritable(fault.to_string()))?;
        let mut text = lines::pretty(&value);
        text.push('\n');
        Ok(text)
    }

    /// A plan from its text.
    ///
    /// # Errors
    /// [`Unwritable`] with the place and what was expected.
    pub fn from_json(text: &str) -> Result<Plan, Unwritable> {
        serde_json::from_str(text).map_err(|fault| Unwritable(fault.to_string()))
    }
}

/// Why a plan could not be written or read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unwritable(pub String);

impl fmt::Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Unwritable {}

/// The JSON Schema of [`Plan`], as kept in `schema/plan.schema.json`.
pub fn schema() -> String {
    let value = schemars::schema_for!(Plan).to_value();
    let mut text = serde_json::to_string_pretty(&value).unwrap_or_default();
    text.push('\n');
    text
}

mod lines;
