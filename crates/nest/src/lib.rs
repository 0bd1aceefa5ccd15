//! Parts on sheets and strips, as close as a counted search gets them.
//!
//! In at the door: [`Part`]s, a [`Sheet`] or a [`Band`], a [`Budget`] of steps. Out of
//! [`nest`] and [`strip`]: a [`Placement`] for each copy, or its name in `left` with the reason.
//! [`check`] holds placements against the question by other geometry than found them.
//!
//! # How
//! Parts first go bottom-left, large ones first. Then the sheet is made shorter than the parts
//! allow and they are talked apart again (guided local search), as often as the steps last.
//! Where a part may lie beside another is their no-fit polygon, kept as convex pieces in
//! doubles; the gap is a circle summed to it, by its outer polygon.
//!
//! # Why not a collision library
//! jagua-rs 1.1.0 (MPL-2.0) was looked at first. It keeps coordinates in single precision
//! and counts touching as a collision: at 2.44 m a step is 0.2 µm, parts that fill a sheet
//! exactly do not fit (the published instances are stretched by 0.01 % for it), an overlap of
//! 1e-9 of a part cannot be told, and turns come from the machine's sine. For a few kinds of
//! parts in a few turns no-fit polygons cost one look-up a pair, exactly.
//!
//! Outlines of more than 24 corners are drawn simpler first, outward only, by at most half a
//! per cent of their area.
//!
//! Invariants: no two parts overlap, none is outside its margin, to 1e-12 of the largest
//! length; gaps are kept, at corners up to 1 % more; the answer is never behind its
//! bottom-left start; the same question gives the same bytes on any number of threads. A part
//! is never mirrored and never dropped in silence. Unit-free: lengths come back in the unit
//! they came in. Never here: files, sentences, clocks.

mod check;
mod convex;
mod fit;
mod part;
mod search;
mod sheet;
mod simple;
mod start;
mod strip;
mod world;

pub use check::{Fault, check};
pub use part::{Budget, Left, Part, Placement, Turns, Why};
pub use sheet::{Laid, Nesting, Sheet, nest};
pub use strip::{Band, Strip, strip};
