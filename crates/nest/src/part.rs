//! What is nested, and where it came to lie.

use geo::{Coord, MapCoords, Polygon};

/// The ways a part may be turned. It is never mirrored: a mirrored stencil paints another figure.
#[derive(Clone, Debug, PartialEq)]
pub enum Turns {
    /// Only by these, in degrees counter-clockwise. None given means as it is.
    Listed(Vec<f64>),
    /// By any multiple of this many degrees; at most 72 turns are tried.
    Every(f64),
}

impl Turns {
    /// Most turns of [`Turns::Every`]: every 5 degrees. More cost memory and gain little.
    pub const MOST: usize = 72;

    /// Degrees in [0, 360), each once, in the order given.
    pub fn degrees(&self) -> Vec<f64> {
        let mut turns = match self {
            Turns::Listed(listed) => listed.clone(),
            Turns::Every(step) => {
                let many = libm::round(360.0 / step.abs());
                let many = if many >= 1.0 { many as usize } else { 1 };
                let many = many.min(Turns::MOST);
                (0..many).map(|k| 360.0 * k as f64 / many as f64).collect()
            }
        };
        turns.retain(|turn| turn.is_finite());
        let mut seen = Vec::new();
        for turn in turns {
            let turn = turn.rem_euclid(360.0) % 360.0;
            if !seen.contains(&turn) {
                seen.push(turn);
            }
        }
        if seen.is_empty() {
            seen.push(0.0);
        }
        seen
    }
}

/// A part and how many are wanted of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// For the reader only.
    pub name: String,
    /// In any unit, one for the whole question. Holes are filled: nothing is nested in them.
    /// An outline that crosses itself takes the room of its convex hull.
    pub outline: Polygon<f64>,
    /// How many.
    pub count: usize,
    /// How it may be turned.
    pub turns: Turns,
}

/// Where one copy of a part lies: its outline turned about the outline's origin, then moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// Index of the part.
    pub part: usize,
    /// Which of its copies, from 0.
    pub copy: usize,
    /// Degrees counter-clockwise.
    pub turn: f64,
    /// Then moved by this much,
    pub x: f64,
    /// and this much.
    pub y: f64,
}

impl Placement {
    /// An outline laid so, holes and all.
    pub fn lay(&self, outline: &Polygon<f64>) -> Polygon<f64> {
        let (sin, cos) = sine_and_cosine(self.turn);
        outline.map_coords(|at| Coord {
            x: at.x * cos - at.y * sin + self.x,
            y: at.x * sin + at.y * cos + self.y,
        })
    }
}

/// Of degrees; whole for quarter turns, so that right angles stay right.
pub(crate) fn sine_and_cosine(degrees: f64) -> (f64, f64) {
    match degrees {
        0.0 => (0.0, 1.0),
        90.0 => (1.0, 0.0),
        180.0 => (0.0, -1.0),
        270.0 => (-1.0, 0.0),
        _ => libm::sincos(degrees.to_radians()),
    }
}

/// A part, or some copies of it, that did not get a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Left {
    /// Index of the part.
    pub part: usize,
    /// How many copies of it.
    pub count: usize,
    /// Why.
    pub why: Why,
}

/// Why a part got no place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// Its outline encloses nothing, or has a coordinate that is no number.
    Unsound,
    /// None of its turns fits in an empty sheet or strip.
    TooLarge,
}

/// How much work the search may do. Steps are counted, never timed: one is a new place looked for,
/// for one part. The result depends on all three figures, and on nothing of the machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Budget {
    /// Steps of all walks together. At 0 the bottom-left start is the answer.
    pub steps: u64,
    /// Walks from seeds of their own, of which the best is kept; they run side by side where
    /// there are threads.
    pub walks: usize,
    /// Seed.
    pub seed: u64,
}
