//! Plates that figures are painted through: which shapes share one, and what holds each island.
//!
//! In at the door: figures, in their own frame or in the yard's, and what the builder cuts
//! with. Out of [`stencils`]: for every motif one plate with its ties, panels, registration
//! holes and cut paths, and all the places where it is used; and the shapes that are rolled
//! along chalk lines or taped instead.
//!
//! # Which shapes get a plate
//! A motif is what stands together, a joint apart. One long stroke is rolled along chalk
//! lines, a big solid is taped, and what would take more panels than the ledger's
//! `stencil.panels` is drawn by string; each of these is told with its outline. All else is
//! stencilled. Shapes that can be turned onto one another within `stencil.same` share a plate
//! of their colour: a plate carries wet paint. A mirrored shape shares it only where the
//! builder lets plates be turned over.
//!
//! Invariants: no plate falls apart ([`falls`] proves it on every panel, and what could not
//! be held is a weakness told); ties stand where the rules of the material want them;
//! everything is rounded to 1e-6; the same figures give the same bytes. Never here: files,
//! sentences, clocks.

pub mod figures;
mod holds;
mod island;
mod kerf;
mod material;
mod motif;
mod name;
mod panel;
mod result;
mod same;
mod say;
mod shape;
mod stencils;
mod weak;
mod worth;

pub use holds::falls;
pub use material::{Applied, Material, Numerals, Rules, Setting, Tool, TurnOver};
pub use result::*;
pub use stencils::{Laid, stencils};
