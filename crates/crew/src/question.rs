//! What is to be painted, where, by whom, and in which hours and air.

use geo::{Coord, Polygon};
use marking::Colour;

/// How a piece is painted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// Through a stencil.
    Stencil {
        /// Its number among [`Job::stencils`].
        stencil: usize,
        /// How often it is laid down for one coat.
        placed: u32,
    },
    /// Between lines of masking tape.
    Masked {
        /// Metres of tape.
        length: f64,
    },
    /// Within an edge that is cut in with a brush.
    Free {
        /// Metres of edge.
        edge: f64,
    },
}

/// All of a marking that has one colour.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// The colour.
    pub colour: Colour,
    /// Painted area, m².
    pub area: f64,
    /// How many coats.
    pub coats: u32,
    /// How it is painted.
    pub way: Way,
}

/// A marking as work.
#[derive(Clone, Debug, PartialEq)]
pub struct Marking {
    /// Its name.
    pub name: String,
    /// Round all its paint, metres: what is wet, and what people work beside.
    pub outline: Polygon<f64>,
    /// Ground to sweep and wash, m².
    pub swept: f64,
    /// Ground to prime, m².
    pub primed: f64,
    /// Key points to set out.
    pub key_points: u32,
    /// Its colours.
    pub pieces: Vec<Piece>,
}

/// A stencil.
#[derive(Clone, Debug, PartialEq)]
pub struct Stencil {
    /// Its name.
    pub name: String,
    /// How many were cut.
    pub copies: u32,
}

/// Hours in which there is work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Window {
    /// Seconds from the first midnight.
    pub from_s: i64,
    /// Seconds from the first midnight.
    pub to_s: i64,
}

/// What the sun does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Light {
    Sun,
    Shade,
}

/// Air from some time on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spell {
    /// Seconds from the first midnight.
    pub from_s: i64,
    /// °C.
    pub temperature: f64,
    /// Relative humidity, %.
    pub humidity: f64,
    /// Sun or shade.
    pub light: Light,
}

/// How practised the crew is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hands {
    /// Volunteers, who are slower at first.
    New,
    /// People who have done it before.
    Practised,
}

/// A door or gate that one leaves by.
#[derive(Clone, Debug, PartialEq)]
pub struct Door {
    /// Its name.
    pub name: String,
    /// Its middle, metres.
    pub at: Coord<f64>,
}

/// All that is painted at once, and by whom.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// The markings.
    pub markings: Vec<Marking>,
    /// The stencils.
    pub stencils: Vec<Stencil>,
    /// People who come.
    pub people: u32,
    /// How practised they are.
    pub hands: Hands,
    /// Sets of measuring tapes to set out with.
    pub tapes: u32,
    /// Hours of each day, in order.
    pub windows: Vec<Window>,
    /// The air, each spell until the next one begins, nights too: paint that is wet at
    /// evening dries in the night's air. None: 23 °C, 50 %, shade.
    pub air: Vec<Spell>,
    /// Ways out of the yard.
    pub doors: Vec<Door>,
    /// Ground that one may walk on; unknown: ways are not looked at.
    pub ground: Option<Polygon<f64>>,
    /// When children come back, seconds from the first midnight.
    pub children_s: Option<i64>,
    /// Seed of the search.
    pub seed: u64,
}
