//! Continuous poses on irregular ground.
//!
//! `convex` says exactly when two figures touch, `grid` finds places fast, `site` joins
//! both. `search` lays the programme's sets; from there `exchange` goes on where there is
//! room, and `trade` in cramped ground, where `pack` lays its sets. `proof` shows what can
//! never lie together and `shape` what that takes from the bound; `polish` improves poses by
//! the wanted terms.

pub(crate) mod convex;
mod exchange;
mod grid;
mod pack;
mod polish;
pub(crate) mod proof;
pub(crate) mod search;
mod shape;
pub(crate) mod site;
mod trade;

pub use search::{Progress, Work};
