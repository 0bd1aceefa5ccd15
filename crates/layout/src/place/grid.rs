//! A grid of places, one bit each: where a figure's origin may lie.

use geo::Coord;

use super::convex::Halves;
use crate::geometry::Segment;

/// The grid's corner, step and size.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Grid {
    pub(crate) low: Coord<f64>,
    pub(crate) step: f64,
    pub(crate) columns: usize,
    pub(crate) rows: usize,
}

/// One bit a place.
#[derive(Clone, Debug)]
pub(crate) struct Map {
    words: usize,
    bits: Vec<u64>,
}

impl Grid {
    /// A grid over a box with at most `places` places and no step under `finest` metres.
    pub(crate) fn over(low: Coord<f64>, high: Coord<f64>, places: f64, finest: f64) -> Grid {
        let (width, height) = ((high.x - low.x).max(finest), (high.y - low.y).max(finest));
        let step = (width * height / places)
            .sqrt()
            .max(finest)
            .max(width.max(height) / 4000.0);
        let many = |length: f64| (length / step).floor() as usize + 1;
        Grid {
            low,
            step,
            columns: many(width),
            rows: many(height),
        }
    }

    pub(crate) fn place(&self, row: usize, column: usize) -> Coord<f64> {
        Coord {
            x: self.low.x + self.step * column as f64,
            y: self.low.y + self.step * row as f64,
        }
    }

    /// Columns of the places between two x, ends included; as a half-open range.
    fn between(&self, from: f64, to: f64) -> (usize, usize) {
        let first = ((from - self.low.x) / self.step).ceil().max(0.0);
        let last = ((to - self.low.x) / self.step).floor() + 1.0;
        (
            first.min(self.columns as f64) as usize,
            last.clamp(0.0, self.columns as f64) as usize,
        )
    }

    /// Rows that a box spans, as a half-open range.
    fn rows_between(&self, from: f64, to: f64) -> (usize, usize) {
        let first = ((from - self.low.y) / self.step).ceil().max(0.0);
        let last = ((to - self.low.y) / self.step).floor() + 1.0;
        (
            first.min(self.rows as f64) as usize,
            last.clamp(0.0, self.rows as f64) as usize,
        )
    }

    /// All places p for which p + `of` lies inside the edges by even-odd count.
    pub(crate) fn inside(&self, edges: &[Segment], of: Coord<f64>) -> Map {
        let mut map = Map {
            words: self.columns.div_ceil(64),
            bits: Vec::new(),
        };
        map.bits = vec![0; map.words * self.rows];
        let mut xs = Vec::new();
        for row in 0..self.rows {
            let y = self.low.y + self.step * row as f64 + of.y;
            xs.clear();
            for (a, b) in edges {
                if (a.y > y) != (b.y > y) {
                    xs.push((b.x - a.x) * (y - a.y) / (b.y - a.y) + a.x - of.x);
                }
            }
            xs.sort_by(f64::total_cmp);
            for pair in xs.chunks_exact(2) {
                let (from, to) = self.between(pair[0], pair[1]);
                map.set(row, from, to, true);
            }
        }
        map
    }

    /// Takes out the places that lie in a convex body.
    pub(crate) fn take_out(&self, map: &mut Map, body: &Halves) {
        let (first, last) = self.rows_between(
            body.low.y - super::convex::GAP,
            body.high.y + super::convex::GAP,
        );
        for row in first..last {
            if let Some((from, to)) = body.stretch(self.low.y + self.step * row as f64) {
                let (from, to) = self.between(from, to);
                map.set(row, from, to, false);
            }
        }
    }
}

impl Map {
    fn set(&mut self, row: usize, from: usize, to: usize, on: bool) {
        if from >= to {
            return;
        }
        let line = &mut self.bits[row * self.words..(row + 1) * self.words];
        let (first, last) = (from / 64, (to - 1) / 64);
        for (word, bits) in line.iter_mut().enumerate().take(last + 1).skip(first) {
            let mut mask = !0_u64;
            if word == first {
                mask &= !0 << (from % 64);
            }
            if word == last {
                mask &= !0 >> (63 - (to - 1) % 64);
            }
            if on {
                *bits |= mask;
            } else {
                *bits &= !mask;
            }
        }
    }

    /// How many places are left.
    pub(crate) fn count(&self) -> usize {
        self.bits
            .iter()
            .map(|bits| bits.count_ones() as usize)
            .sum()
    }

    /// Row and column of the places that are left.
    pub(crate) fn places(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let words = self.words.max(1);
        self.bits
            .iter()
            .enumerate()
            .filter(|(_, bits)| **bits != 0)
            .flat_map(move |(at, bits)| {
                let (row, word) = (at / words, at % words);
                (0..64)
                    .filter(move |bit| bits >> bit & 1 == 1)
                    .map(move |bit| (row, word * 64 + bit))
            })
    }
}
