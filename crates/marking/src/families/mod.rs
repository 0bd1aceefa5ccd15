//! The families, one file each.

pub mod balance;
pub mod brook;
pub mod compass;
pub mod court;
pub mod eight;
pub mod fields;
pub mod grid;
pub mod labyrinth;
pub mod lane;
pub mod letter_court;
pub mod number_court;
pub mod number_line;
pub mod pair;
pub mod prints;
pub mod ring_sets;
pub mod spiral;
pub mod spots;
pub mod star;
pub mod twin;
