//! When the paint will dry, and when the yard is fit for play.
//!
//! In at the door: the hours of [`weather`] and the ledger's figures. For the paint, [`judge`]
//! holds each hour against each rule, [`year`] counts a typical year by month, [`windows`]
//! finds where a forecast has room for a job, [`calendar`] writes them as a calendar file. For
//! play, [`Lights`] are go, care, shade or in, [`advice`] what to do, [`fit_hours`] and
//! [`sessions`] what a typical year leaves of a plan.
//!
//! Invariants: what is not known is never fine; a label, a local rule or the hand on the
//! ground wins over any figure here; times are the file's own clock. Never here: files,
//! clocks, sentences.

mod calendar;
mod cautions;
mod drying;
pub mod figures;
mod fit;
mod lights;
mod months;
mod paint;
mod verdict;
mod windows;

pub use calendar::{Entry, calendar};
pub use cautions::cautions;
pub use drying::{Drying, drying, scale};
pub use fit::{FitMonth, Sessions, Slot, fit, fit_hours, sessions, slots};
pub use lights::{Bands, Ground, Light, Lights, Measure, advice, hot_ground, thunder_over};
pub use months::{Month, Run, Year, year};
pub use paint::{Judged, Limits, Rule, judge};
pub use verdict::{Tally, Verdict};
pub use windows::{Job, Window, margins, windows};
