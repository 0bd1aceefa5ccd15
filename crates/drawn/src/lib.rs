//! A user's own figure: an SVG by a stated convention becomes a family like any other.
//!
//! Millimetres; a shape whose id or class begins with `cell-`, `lane-` or `wait-` carries
//! that meaning, all else is paint. The page `docs/figures.md` says how an artist draws one.
//!
//! Text in, a [`Drawn`] and its notes out: any text, and never a panic. A drawn figure has
//! one free length: how far its cells lie apart, or how long its lane is. The cells keep
//! their own size, for a foot does not grow with the gap; what is painted at a cell moves
//! with it, strokes keep their breadth, and all other paint is drawn larger or smaller.
//!
//! Invariants: no two painted shapes overlap, the one on top wins; curves lie within
//! `look.flat` of their polygons; everything lies inside the envelope; coordinates are
//! rounded to 1e-6 m. The figure's frame is the drawing's own, y up, its origin at the
//! first start. This room knows no file system and no child.

mod advice;
mod colour;
mod family;
mod figures;
mod ground;
mod lane;
mod name;
mod order;
mod outline;
mod page;
mod path;
mod pen;
mod read;
mod style;
mod svg;

pub use colour::difference;
pub use family::Drawn;
pub use figures::FIGURES;
pub use name::{CELL_WORDS, LANE_WORDS};
pub use read::read;
