//! Pages for screens: moving footfalls that a trainer shows and a teacher steps through.
//!
//! In at the door: [`motion::Clip`]s. Out: text. [`strip`] is a still drawing for paper,
//! [`animated`] a drawing that moves by style sheet alone, [`skills_page`], [`plan_page`]
//! and [`course_page`] are pages that stand alone: script, style and face are in them, and they ask the network
//! for nothing.
//!
//! Invariants: only feet move, and only when asked; where less motion is wanted, numbered
//! prints stand in their stead. Wheels and a walker are shown as fully as feet are. State is said by word and shape, never by colour alone.
//! Every sentence comes from the catalogue. Absent: files, clocks, typesetting.

mod aid;
mod animated;
mod data;
mod face;
mod page;
mod plan;
mod player;
mod skills;
mod strip;
mod svg;
mod training;

pub use animated::animated;
pub use plan::{Going, Shown, plan_page};
pub use skills::skills_page;
pub use strip::strip;
pub use training::{Course, SkillText, course_page};

use note::Message;
use unit::Units;
use words::Catalogue;

/// The catalogue and the unit in which a page speaks.
#[derive(Clone, Copy)]
pub struct Tongue<'a> {
    /// Every sentence.
    pub catalogue: &'a Catalogue,
    /// The reader's unit.
    pub units: Units,
}

impl Tongue<'_> {
    pub(crate) fn say(&self, message: &Message) -> String {
        self.catalogue.say(message, self.units)
    }

    pub(crate) fn word(&self, key: &'static str) -> String {
        self.catalogue.word(key)
    }

    /// The feet of a clip in the order in which they land.
    pub(crate) fn line(&self, clip: &motion::Clip) -> String {
        let feet: Vec<String> = motion::line(clip)
            .iter()
            .map(|foot| self.say(foot))
            .collect();
        feet.join(", ")
    }
}
