//! Continuous poses on irregular ground.
//!
//! `convex` says exactly when two figures touch, `grid` finds places fast, `site` joins
//! both, `search` lays sets, `polish` improves poses by the wanted terms,
//! `proof` shows what can never lie together.

pub(crate) mod convex;
mod grid;
mod polish;
pub(crate) mod proof;
pub(crate) mod search;
pub(crate) mod site;

pub use search::{Progress, Work};
