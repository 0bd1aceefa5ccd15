//! What is nested, and where it came to lie.

use geo::{Coord, MapCoords, Polygon};

/// The ways a part may be turned. It is never mirrored: a mirrored stencil paints another figure.
#[derive(Clone, Debug, PartialEq)]
pub enum Turns {
    /// Only by these, in degrees counter-clockwise. None given means as it is.
    Listed(Vec<f64>),
    /// By any multiple of this many degrees. Of many multiples an even choice is tried: 72 at
    /// most, and fewer where there are many parts, yet never fewer than four.
    Every(f64),
}

impl Turns {
    /// Degrees in [0, 360), each once, in the order given; of [`Turns::Every`] at most so many.
    pub(crate) fn degrees(&self, most: usize) -> Vec<f64> {
        let turns = match self {
            Turns::Listed(listed) => listed.clone(),
            Turns::Every(step) if step.is_nan() => Vec::new(),
            Turns::Every(step) => {
                let finest = 360.0 / MOST as f64;
                let step = step.abs().max(finest / 10.0);
                let all = libm::ceil(360.0 / step - ROUND) as usize;
                let many = all.min(most).min(MOST);
                (0..many).map(|k| step * (k * all / many) as f64).collect()
            }
        };
        let mut seen = Vec::new();
        for turn in turns {
            let turn = turn.rem_euclid(360.0) % 360.0;
            if turn.is_finite() && !seen.contains(&turn) {
                seen.push(turn);
            }
        }
        if seen.is_empty() {
            seen.push(0.0);
        }
        seen
    }
}

/// Most turns tried of one part: every 5 degrees. More cost memory and gain little.
const MOST: usize = 72;

/// Turns. A step that divides the circle but for rounding divides it.
const ROUND: f64 = 1e-9;

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
    /// Steps of all walks together. At 0 the answer is the bottom-left start,
    /// its last sheet or its strip slid left.
    pub steps: u64,
    /// Walks from seeds of their own, of which the best is kept; they run side by side where
    /// there are threads.
    pub walks: usize,
    /// Seed.
    pub seed: u64,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_are_multiples_each_once() {
        let every = |step: f64, most| Turns::Every(step).degrees(most);
        assert_eq!(every(90.0, 72), [0.0, 90.0, 180.0, 270.0]);
        assert_eq!(every(-90.0, 72), every(90.0, 72));
        assert_eq!(every(100.0, 72), [0.0, 100.0, 200.0, 300.0]);
        assert_eq!(every(5.0, 4), [0.0, 90.0, 180.0, 270.0]);
        assert_eq!(every(0.0, 100).len(), 72);
        assert_eq!(every(f64::NAN, 4), [0.0]);
        assert_eq!(every(f64::INFINITY, 4), [0.0]);
        let listed = Turns::Listed(vec![180.0, -180.0, 540.0, f64::NAN, 0.0]);
        assert_eq!(listed.degrees(1), [180.0, 0.0]);
        assert_eq!(Turns::Listed(Vec::new()).degrees(4), [0.0]);
    }
}
