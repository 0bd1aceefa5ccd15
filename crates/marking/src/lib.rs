//! Families of painted figures as pure generators.

mod figure;

pub use figure::{Cell, Colour, Figure, Lane, LaneKind, Outline, Paint, Piece, Takes};
