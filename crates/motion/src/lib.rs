//! Footfalls in time: a route on a figure, or a skill on free ground, as a clip.
//!
//! In at the door: a [`Path`] (what lands where, by which flight) and the [`Model`] that a
//! ledger makes. Out: a [`Clip`], every print with the time when its foot lands and lifts.
//! A [`Clip`] is changed into an early form by a row of [`EARLY`]: lists of edits, so a new
//! form is a new row. [`Track`] says where a foot is at any time, also in the air, and
//! [`line()`] and [`moment`] put a clip into words.
//!
//! Invariants: a print lands before it lifts and no foot is in two places; flights are what
//! the prints leave, never stored beside them; the contacts of a clip done well are the
//! route's, and come at the ledger's rate. Absent: files, languages, screens.

mod clip;
mod early;
mod figures;
mod foot;
mod path;
mod say;
mod track;

pub use clip::{Clip, Print, Role};
pub use early::{EARLY, Early, Edit, Scope, Which, early};
pub use figures::{FIGURES, Model};
pub use foot::outline;
pub use path::{Body, Path, Stop, Way, bisector};
pub use say::{Down, Event, down, line, moment};
pub use track::{Key, Track};

#[cfg(test)]
mod tests;
