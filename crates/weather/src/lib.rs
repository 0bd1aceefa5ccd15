//! Hourly weather, read from open files, and what follows from an hour of it.
//!
//! In at the door: a file's text to [`read`]: EPW, TMY3 or our own table (see
//! [`columns`]). Out: [`Weather`], its hours in the order of the file, and a note for each
//! slip at its place. [`Air`] turns an hour into dew point, heat index, wind chill and an
//! air quality index.
//!
//! Invariants: what a file does not know is `None`, never a number and never fine; an hour
//! ends at its stamp; a typical year is an order of rows, for its months come from different
//! years. Never here: files, clocks, judgement of what weather is good for.

mod air;
mod cells;
mod epw;
mod faults;
pub mod figures;
mod hour;
mod quantity;
mod read;
mod table;
mod tmy3;

pub use air::{Air, fahrenheit, mph};
pub use hour::{Hour, Site, Span, Stamp, Way, Weather};
pub use quantity::Quantity;
pub use read::{decode, read};
pub use table::columns;
