//! Which children at which station when, over the weeks; and what a session will be like.
//!
//! In at the door: a [`Programme`], the children with their weekly targets (T of the layout),
//! the painted stations with what each child's feet do there, games, and which skill waits
//! for which. Out of [`plan()`]: a [`Plan`], for every session and slot the groups with their
//! station, activity and game; the practice of every target by week; its worth, a bound that
//! no plan can pass, and why each target that is missed is missed. [`replan`] goes on after
//! a rained-out day or a broken marking. [`simulate()`] plays the sessions turn by turn and
//! tells contacts, active minutes and waiting with their spread; [`queue`] holds the closed
//! forms that it must agree with.
//!
//! # What is maximised
//! Z of the layout, on whole slots and whole groups: the sum over targets of 1.25 for each
//! minute of practice in the first half and .75 in the second, over all targets, where a
//! target is the week's times the weeks. In a week the first 15 minutes of a child on one
//! figure count whole, the next 15 half, the rest not; the first in time are the first.
//!
//! Rules that always hold: no more children at a station than start within the longest wait,
//! in line and in the round, while all go on to the end;
//! no more out than ratio and yard allow, else the class goes in outings; no more stations
//! at once than the staff keep in sight; no child stays at a station past the time after
//! which the task should change; no child in a skill that has not opened to it; no session
//! that is lost and no station that is broken is used.
//!
//! Invariants: the value is never above the bound; the same programme and seed give the same
//! plan whatever the number of threads. Never here: files, sentences, clocks, names.

mod bound;
mod deal;
mod exchange;
pub mod figures;
mod frame;
mod plan;
mod play;
mod programme;
pub mod queue;
mod say;
mod schedule;
mod seats;
pub mod simulate;
pub mod turn;
mod vary;
mod why;

pub use layout::programme::Unsolved;
pub use plan::{Change, Replan, plan, replan};
pub use programme::*;
pub use schedule::*;
pub use simulate::{Forecast, Manner, simulate};

/// To 1e-6, as everything leaves this room; a negative zero becomes zero.
pub(crate) fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6 + 0.0
}
