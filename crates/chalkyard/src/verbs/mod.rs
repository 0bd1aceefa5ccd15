//! The verbs, one file each.

pub mod audit;
pub mod check;
pub mod new;
pub mod plan;
pub mod sources;
pub mod survey;
