//! Tape readings become coordinates with their uncertainty.
//!
//! In at the door: a [`network::Network`] of readings, in metres. Out: a
//! [`result::Survey`] by [`adjust`], with notes for the person who taped.
//!
//! Promises: the same readings give the same bytes on every machine; no coordinates need
//! to be given to start from; every figure follows from the rounded coordinates.
//! Never here: files, units of the user's, sentences, what the points stand for.

mod adjust;
mod check;
mod cholesky;
pub mod figures;
mod fit;
mod frame;
pub mod limits;
mod mirror;
mod model;
pub mod network;
mod next;
mod report;
pub mod result;
mod say;
mod shape;
pub mod slip;
mod snoop;
mod solve;
mod start;

pub use adjust::adjust;
pub use report::axes;
