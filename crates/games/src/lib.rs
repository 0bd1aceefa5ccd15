//! Games for painted markings, written by us: one file a game, in English and Spanish.
//!
//! The shipped games lie in `games/*.toml`, what a skill looks like and the one cue for each
//! early form in `cues/*.toml`; both are part of the program ([`shipped`], [`pages`]). A
//! project may bring games of its own by the same format: [`read`]. `docs/games.md` says how
//! to write one.
//!
//! Invariants: a game refers to families, activities and skills that the house has; its
//! texts fit a card ([`LETTERS`] a line); what comes before what is a graph without a ring
//! ([`order`]); nothing here reads a file, and no child has a name. A game never sends a
//! child out: who misses goes on playing.

mod cue;
mod desk;
mod figures;
mod form;
mod game;
mod order;
mod read;
pub mod reading;
mod shipped;
mod suits;
mod text;

pub use cue::{Cue, Page, Words, page, pages};
pub use figures::FIGURES;
pub use form::{Form, form_for};
pub use game::{Before, Equipment, Game, Link, Who};
pub use order::{Missing, Node, Progress, order, ready};
pub use read::read;
pub use shipped::{SHIPPED, shipped};
pub use suits::{Available, Hindrance, Offered, suits};
pub use text::{CUE, LETTERS, LINES, TITLE, Text, WATCH_LINES, lines};
