//! Which markings, where: the choice, its bound, its audit.
//!
//! Candidates come in, each with what a minute on it gives to each child; out come the
//! chosen ones with their poses, the minutes that the children spend there, the value, and
//! a bound that no choice can pass. [`programme`] chooses, `place` lays, `rules` judges, [`mod@plan`] joins them:
//! the planner's own work and what people moved, by the same rules.
//!
//! Invariants: the bound is never below the value; the same question and seed give the
//! same answer whatever the number of threads; what is locked is never moved. This room
//! knows no file and no clock: a search is limited by counts and stopped from outside.

pub mod audit;
mod candidate;
pub mod candidates;
pub mod cost;
pub mod figures;
mod geometry;
mod place;
pub mod plan;
pub mod programme;
mod reach;
mod rules;
pub mod week;

pub use audit::{Check, audit};
pub use candidate::{Candidate, Pose, Yield};
pub use place::{Progress, Work};
pub use plan::{Placed, Plan, Shape, Task, Worth, curve, curve_from, plan};
pub use rules::Surroundings;

/// To 1e-6, as everything leaves this room; a negative zero becomes zero.
pub(crate) fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6 + 0.0
}
