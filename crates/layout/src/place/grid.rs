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
        between(
            (from - self.low.x) / self.step,
            (to - self.low.x) / self.step,
            self.columns,
        )
    }

    /// Rows that a box spans, as a half-open range.
    fn rows_between(&self, from: f64, to: f64) -> (usize, usize) {
        between(
            (from - self.low.y) / self.step,
            (to - self.low.y) / self.step,
            self.rows,
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

    /// All places.
    pub(crate) fn all(&self) -> Map {
        let mut map = self.none();
        for row in 0..self.rows {
            map.set(row, 0, self.columns, true);
        }
        map
    }

    /// No place.
    pub(crate) fn none(&self) -> Map {
        let words = self.columns.div_ceil(64);
        Map {
            words,
            bits: vec![0; words * self.rows],
        }
    }

    /// Takes out, or puts in, the places that lie in a convex body.
    pub(crate) fn mark(&self, map: &mut Map, body: &Halves, on: bool) {
        let gap = super::convex::GAP;
        let (first, last) = self.rows_between(body.low.y - gap, body.high.y + gap);
        let mut stretch = body.stretches();
        for row in first..last {
            if let Some((from, to)) = stretch.at(self.low.y + self.step * row as f64) {
                let (from, to) = self.between(from, to);
                map.set(row, from, to, on);
            }
        }
    }
}

/// The whole numbers from `from` to `to`, ends included, of those under `many`; half-open.
fn between(from: f64, to: f64, many: usize) -> (usize, usize) {
    // A cast cuts toward 0 and holds what is out of range; a library call for each row of
    // each body would cost more than all else.
    let down = from as usize;
    let first = down + usize::from((down as f64) < from);
    let last = if to < 0.0 {
        0
    } else {
        (to as usize).saturating_add(1)
    };
    (first.min(many), last.min(many))
}

impl Map {
    /// Places that are in this map and in none of the others.
    pub(crate) fn without<'a>(&self, others: impl Iterator<Item = &'a Map>) -> Map {
        let mut left = self.clone();
        for other in others {
            for (bits, gone) in left.bits.iter_mut().zip(&other.bits) {
                *bits &= !gone;
            }
        }
        left
    }

    /// Puts in, or takes out, the places of a row from one column up to another.
    pub(crate) fn set(&mut self, row: usize, from: usize, to: usize, on: bool) {
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

    /// The row, and the columns of the first and the last of its places that are in this map
    /// and in none of the others; rows without any are left out.
    pub(crate) fn ends<'a>(
        &'a self,
        others: &'a [&Map],
    ) -> impl Iterator<Item = (usize, [usize; 2])> + 'a {
        let rows = self.bits.len() / self.words.max(1);
        (0..rows).filter_map(move |row| {
            let line = row * self.words..(row + 1) * self.words;
            let left = |at: usize| {
                let gone = others.iter().fold(0, |gone, other| gone | other.bits[at]);
                self.bits[at] & !gone
            };
            let bits = |at: usize| Some((at - line.start, left(at))).filter(|(_, bits)| *bits != 0);
            let (first, low) = line.clone().find_map(bits)?;
            let (last, high) = line.clone().rev().find_map(bits)?;
            let low = first * 64 + low.trailing_zeros() as usize;
            let high = last * 64 + 63 - high.leading_zeros() as usize;
            Some((row, [low, high]))
        })
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
