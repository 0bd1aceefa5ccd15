//! Footfalls in time: a route on a figure, or a skill on free ground, as a clip.
//!
//! In at the door: a [`Path`] (what lands where, by which flight) and the [`Model`] that a
//! ledger makes. Out: a [`Clip`], every print with the time when its foot lands and lifts.
//! A [`Clip`] is changed into an early form by a row of [`EARLY`] or [`COURT`]: lists of edits,
//! so a new form is a new row. A child on wheels or with a walker goes by [`ADAPTED`]: its clip
//! has an [`Aid`], and its prints are hands on the rims, or feet between the frame's. [`Track`] says where a foot is at any time, also in the air, and
//! [`line()`] and [`moment`] put a clip into words.
//!
//! Invariants: a print lands before it lifts and no foot is in two places; flights are what
//! the prints leave, never stored beside them; the contacts of a clip done well are the
//! route's, and come at the ledger's rate. Absent: files, languages, screens.

mod aid;
mod beats;
mod clip;
mod early;
mod edits;
mod figures;
mod foot;
mod forms;
mod path;
mod ride;
mod say;
mod track;
mod walker;
mod wheels;

pub use aid::{Aid, MOMENTS, Mark, Stand};
pub use clip::{Clip, Print, Role};
pub use early::{Early, Edit, Scope, Which, early, forms};
pub use figures::{FIGURES, Model};
pub use foot::outline;
pub use forms::{COURT, EARLY};
pub use path::{Body, Path, Stop, Way, bisector};
pub use ride::{ADAPTED, Adapted, Ride, Stretch, Then, adapted};
pub use say::{Down, Event, adapts, down, line, moment};
pub use track::{Key, Track};

#[cfg(test)]
mod tests;
