//! Families of painted figures as pure generators.
//!
//! *An eye is landed on, a stroke leads, a solid is stood on, a crumb decorates.* A family
//! takes lengths and a [`Look`] and returns a [`Figure`]: paint, cells, lanes, waiting
//! spots and the ground that it needs in use. It knows no child, no yard and no file.
//!
//! Invariants: no two painted shapes overlap; no paint and no web between paints is
//! narrower than the stencil's least; everything lies inside the envelope; coordinates are
//! rounded to 1e-6 m. One battery of tests (`tests/battery.rs`) holds every family to it.

mod canvas;
mod cells;
mod colour;
mod course;
mod families;
mod family;
mod figure;
mod figures;
mod glyph;
pub mod lettering;
mod letters;
mod look;
mod print;
mod shape;
mod signs;
mod way;

pub use colour::{Contrast, Ground, Palette, Part, contrast, seen};
pub use families::letter_court::CourtLetters;
pub use family::{Family, Fault, LengthSpec, families, family, named, take};
pub use figure::{Cell, Colour, Figure, Lane, LaneKind, Outline, Paint, Piece, Takes};
pub use figures::FIGURES;
pub use glyph::glyph;
pub use letters::{ALPHABET, letters};
pub use look::Look;
