//! The families, one file each.

pub mod brook;
pub mod court;
pub mod lane;
pub mod pair;
pub mod spots;
