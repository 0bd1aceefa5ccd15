//! Lengths, angles and areas as people write them and as the house keeps them.
//!
//! Inside, a length is metres, an angle radians, an area square metres. Feet and inches
//! live only in [`parse`] and [`show`].

pub mod parse;
pub mod show;

/// The unit that a project writes and reads lengths in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Units {
    /// Metres.
    Metres,
    /// Feet and inches.
    Feet,
}

/// The international foot in metres, exact (ledger `unit.foot`).
pub const FOOT: f64 = 0.3048;

/// The inch in metres, exact.
pub const INCH: f64 = 0.0254;

/// No yard is wider (metres): a longer reading is a slip.
pub const LONGEST: f64 = 10_000.0;
