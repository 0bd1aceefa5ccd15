//! Whether a figure is well pitched for a child, z by z, and which route the child takes.

use std::ops::Range;

use crate::chance::{Nodes, WEIGHTS};
use crate::figures::Model;

/// Expected good contacts that differ by less are equal: the route kept first is chosen.
const SAME: f64 = 1e-12;
/// pi is judged as it is handed on, rounded to this many parts of 1.
const PARTS: f64 = 1e6;

/// The verdict while routes are held against it.
pub(crate) struct Verdict {
    /// The limits of pi, in parts, with what rounds to them.
    least: f64,
    most: f64,
    /// Places at which some route is done half the time or more.
    half: Vec<bool>,
    /// The well-pitched route with the most expected good contacts, and how many.
    best: Vec<Option<(usize, f64)>>,
    /// Steps of the grid between two places.
    stride: usize,
}

/// Shares of a child's possible selves.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pitch {
    /// Well pitched: h.
    pub well: f64,
    /// Too easy.
    pub easy: f64,
    /// Out of reach.
    pub hard: f64,
}

impl Verdict {
    pub fn new(model: &Model, nodes: &Nodes) -> Verdict {
        let [least, most] = model.well;
        Verdict {
            least: (least * PARTS).round() - 0.5,
            most: (most * PARTS).round() + 0.5,
            half: vec![false; nodes.grid],
            best: vec![None; nodes.grid],
            stride: nodes.stride,
        }
    }

    /// Holds a route against the verdict.
    ///
    /// - `places`: those of the grid at which its chance is wanted; see [`Verdict::wanted`]
    /// - `pi`: its chance there
    /// - `fair`: whether it stretches there and may be well pitched at all
    /// - `good`: its expected good contacts there
    pub fn hold(
        &mut self,
        route: usize,
        places: Range<usize>,
        pi: impl Fn(usize) -> f64,
        fair: impl Fn(usize) -> bool,
        good: impl Fn(usize) -> f64,
    ) {
        for place in places {
            let parts = pi(place) * PARTS;
            if parts < self.least {
                continue;
            }
            self.half[place] = true;
            if parts < self.most && fair(place) {
                let good = good(place);
                if self.best[place].is_none_or(|(_, best)| good > best + SAME) {
                    self.best[place] = Some((route, good));
                }
            }
        }
    }

    /// The least chance that may change the verdict; a part in a million less, so that no last
    /// bit matters.
    pub fn wanted(&self) -> f64 {
        self.least / PARTS * (1.0 - 1e-6)
    }

    /// Whether a route whose chance is nowhere greater than this may change the verdict.
    pub fn heeds(&self, most: f64) -> bool {
        most * PARTS >= self.least
    }

    /// All places of the grid.
    pub fn places(&self) -> Range<usize> {
        0..self.best.len()
    }

    /// The route chosen at a place of the grid.
    pub fn chosen(&self, place: usize) -> Option<usize> {
        self.best[place].map(|(route, _)| route)
    }

    /// The place nearest to z = 0 at which the child is well pitched, the lower of two.
    pub fn nearest(&self) -> Option<usize> {
        let middle = self.best.len() / 2;
        (0..=middle)
            .flat_map(|off| [middle - off, middle + off])
            .find(|place| self.best[*place].is_some())
    }

    /// The shares.
    pub fn pitch(&self) -> Pitch {
        let mut pitch = Pitch::default();
        let weights = WEIGHTS.iter().step_by(self.stride);
        for (place, weight) in weights.enumerate() {
            match (self.best[place], self.half[place]) {
                (Some(_), _) => pitch.well += weight,
                (None, true) => pitch.easy += weight,
                (None, false) => pitch.hard += weight,
            }
        }
        if self.stride > 1 {
            let whole = pitch.well + pitch.easy + pitch.hard;
            for share in [&mut pitch.well, &mut pitch.easy, &mut pitch.hard] {
                *share /= whole;
            }
        }
        pitch
    }
}
