//! The families, one file each.

pub mod balance;
pub mod brook;
pub mod court;
pub mod eight;
pub mod labyrinth;
pub mod lane;
pub mod pair;
pub mod prints;
pub mod spiral;
pub mod spots;
pub mod twin;
