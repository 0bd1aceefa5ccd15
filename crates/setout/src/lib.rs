//! Where to hook the tapes so that each marking comes to lie where it was planned.
//!
//! In at the door: the [`Survey`](survey::result::Survey), what a tape cannot cross, and
//! figures in the yard's coordinates. Out of [`setout`]: a [`SetOut`], for every marking the
//! fewest key points that fix it, each from the two survey points whose tapes cross best,
//! with a third tape as check, in the order of one walk. [`judge`] holds what the check
//! tapes read against it: what is off, and which point to redo.
//!
//! # How well a mark lands
//! Two tapes of length L from A and B fix a mark P by H dP = t + U e: H holds the units from
//! base to mark, t what the tapes err, U e what the surveyed bases err along the tapes. So
//! the covariance of P is H⁻¹ (S + U Σ Uᵀ) H⁻ᵀ, S with the tape's variance and, for what is
//! printed in steps, step²/12. Check readings follow by the same law from the same errors:
//! marks that share a base err together. Scale errors of the tape are left out: who sets out
//! with the tape that surveyed has them on both sides.
//!
//! Invariants: no mark is taken from a point that the survey calls loose; no tape crosses
//! what it cannot; who stands at the first base and looks to the second has the mark on the
//! left; printed lengths are whole steps; the same question gives the same bytes. Never
//! here: files, sentences, clocks.

mod barrier;
mod bases;
mod cause;
mod checks;
mod cross;
pub mod figures;
mod finder;
mod hints;
mod judge;
mod keys;
mod normal;
mod question;
mod result;
mod say;
mod setting;
mod spread;
mod walk;

pub use barrier::{Barrier, Obstacle, obstacles};
pub use bases::Bases;
pub use cause::Cause;
pub use checks::{Asked, checks};
pub use cross::{Crossing, axes, crossing};
pub use judge::{Judged, JudgedReading, Reading, Verdict, judge};
pub use question::{Laid, Question, step};
pub use result::*;
pub use setting::setout;
pub use walk::{Order, Stops, walk};

/// To 1e-6, as everything leaves this room; a negative zero becomes zero.
pub(crate) fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6 + 0.0
}
