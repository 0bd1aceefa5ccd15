//! Who does what when: the painting days, wet paint and the way out.
//!
//! In at the door: a [`Job`], markings with their paint and their ground, people, stencils,
//! the hours of the days and the air. Out of [`crew`]: a [`Plan`], each task with its
//! people, its time and what it waits for, what is wet when, when children may come back,
//! and a bound that no plan can beat.
//!
//! [`schedule`] is the solver and knows nothing of paint; `tasks` makes works of a job;
//! `ways` sees to it that nobody is painted in.
//!
//! Invariants: no person, tape set or stencil is in two places at once; a coat waits for the
//! one before it to dry; nobody works beside wet paint that is not theirs, nor where the way
//! to a door is closed by it; every task lies within the hours of a day. The same job gives
//! the same bytes: searches end by counts. Never here: files, sentences, clocks.

mod air;
pub mod figures;
mod plan;
mod question;
mod result;
mod say;
pub mod schedule;
mod staff;
mod tasks;
mod ways;

pub use air::drying;
pub use plan::crew;
pub use question::{Door, Hands, Job, Light, Marking, Piece, Spell, Stencil, Way, Window};
pub use result::{Day, Kind, Load, Part, Plan, Step, Task, Waited, Wet, Why};
