//! What a child's feet do on a figure: routes, their chances, and whom a figure suits.
//!
//! In at the door: a [`marking::Figure`], a [`children::Child`], a [`Gait`] and the [`Model`]
//! that a ledger makes. Out: [`Footfall`], all that a plan records. One contact is
//! `contact`, a cell's landing mass `landing`, the ways over a figure's cells `ways`, every turn
//! on them `net`, those of a large figure that matter to a child `near`, what a gait may do
//! there `moves`, when a route may be where `reach`, the kept routes `routes`, their chances
//! over z `chance`, the verdict `verdict`, the routes held against it `judged`, lanes `lane`,
//! what tries are judged by `odds`.
//!
//! Invariants: nothing is looked up by family but the one rule that water parts the
//! banks of a brook; a gait is a row of [`GAITS`]; the answer does not depend on the number of
//! threads. A prediction is never a fact about a child: the shares say how unsure it is.
//! Absent: files, sentences, clocks, chance of the random kind.

mod chance;
mod contact;
mod figures;
mod gait;
mod judged;
mod landing;
mod lane;
mod moves;
mod near;
mod net;
mod normal;
mod odds;
mod reach;
mod routes;
mod shares;
mod size;
mod tread;
mod verdict;
mod ways;

pub use figures::{FIGURES, Model};
pub use gait::{Contact, Flight, Follow, GAITS, Gait, Leads, Reach, Stand, sided};
pub use landing::landing;
pub use normal::gauss_legendre;
pub use odds::{Odds, chance_now, grid, odds};
pub use shares::{left_out, shares};
pub use size::{Crowd, Range, size_for};
pub use tread::{Activity, Curve, Footfall, Good, Route, Turn, class, tread, turns};
pub use verdict::Pitch;

#[cfg(test)]
mod tests;
