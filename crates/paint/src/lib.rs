//! Paint and what else is bought: litres, cans, a shopping list, and the yearly upkeep.
//!
//! In at the door: a [`Job`], what is painted in which colour on which ground, who paints on
//! how many days, and the prices that the project knows. Out of [`shop`]: a [`Shopping`],
//! for each colour the litres of each coat and the cheapest cans that hold them, for each
//! thing its quantity with the ledger figure it follows from, and the total. Out of
//! [`upkeep`]: when to refresh and what a year costs.
//!
//! Litres of a coat: area / rate of the ground, the rate 1.3 times that of the first coat
//! from the second on, times 1 + loss; and a little for each colour.
//!
//! Invariants: the cans hold what is needed and no cheaper ones do, unless they say that
//! this is not proven; a price that nobody named is unknown and stays so, and a total with
//! an unknown in it says "at least". Never here: files, sentences, a price of our own.
//!
//! The room `layout` weighs figures by a rougher rule, one rate and one loss for all coats,
//! and by prices of its own; what is bought follows from this room alone.

mod cans;
pub mod figures;
mod item;
mod litres;
mod question;
mod say;
mod shop;
mod upkeep;

pub use cans::{Cans, Cover, Size, cheapest};
pub use item::{Item, Unit};
pub use litres::{ColourPaint, coats, film};
pub use question::{CanSystem, Job, Painted, Prices, Shade, Surface, Wear};
pub use shop::{Line, Primer, Shopping, Total, shop};
pub use upkeep::{Refresh, Upkeep, annuity, equivalent_annual, refresh_after, upkeep, visible};

/// To 1e-6, as everything leaves this room; a negative zero becomes zero.
pub(crate) fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6 + 0.0
}
