//! Stencils and sheets as files for a cutter, and the tiling of 1:1 pages.
//!
//! In at the door: the [`Stencils`](stencil::Stencils), the [`Sheet`]s that they were laid
//! on, and the words to write on them. Out: bytes, one file a sheet and one a stencil, as DXF
//! ([`dxf`]) and as SVG 1.1 ([`svg`]), all in millimetres at 1:1.
//!
//! # Why our own DXF writer
//! The crate `dxf` 0.6.2 (MIT) was tried: it writes the hour of saving and a random GUID into
//! each file, so that no two are alike; its R2000 files need seven repairs by the audit of
//! ezdxf 1.4.5 (table heads with handle 0); it drops every LWPOLYLINE of an R12 file without a
//! word, and ezdxf does not open that file. It brings 50 packages, an image library among
//! them. What a cutter needs is a few entities of a format that has not changed since 1999.
//!
//! # What is said of units
//! `$INSUNITS` 4 and `$MEASUREMENT` 1 (R2000; R12 has no units), `MM` in each layer's name, a
//! text, and a square of 100 mm on a layer of its own to be measured.
//!
//! Invariants: the same values give the same bytes; no time, no random handle; layers `CUT`,
//! `MARK` and `SHEET` never mix, so that a cutter cannot cut a letter. Never here: files,
//! clocks, sentences.

pub mod figures;

mod curve;
mod drawing;
mod dxf;
mod files;
mod frame;
mod svg;
mod tiles;

pub use curve::{Corner, arcs};
pub use drawing::{Drawing, Layer, Mark, Placed, Sheet, Texts, sheet_drawing, stencil_drawing};
pub use dxf::{Version, dxf};
pub use files::{CutFile, files};
pub use svg::svg;
pub use tiles::{Page, Tile, Tiling, tiles};
