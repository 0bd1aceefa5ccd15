//! What of a sheet is taken, so that no label lies on another or on a line that matters.
//!
//! The sheet is a grid of half-millimetre cells, each with the weight of the heaviest thing
//! in it. A label asks what a place would cost and takes the cheapest of those it is offered.

use super::hatch::Rings;
use super::scene::{Rect, Spot};

/// Side of a cell, mm: half a note's cap height is not seen as touching.
const CELL: f64 = 0.5;

/// What a cell holds, by how much a label over it would hurt.
pub mod weight {
    /// Another label, the title block: never.
    pub const NEVER: u16 = 10_000;
    /// Walls, survey points, fixtures: hardly.
    pub const HARD: u16 = 400;
    /// Dimension lines, zone edges.
    pub const LINE: u16 = 110;
    /// A hatch: a plate over it is right.
    pub const HATCH: u16 = 3;
}

/// The grid.
#[derive(Clone, Debug)]
pub struct Taken {
    columns: usize,
    rows: usize,
    cells: Vec<u16>,
}

/// A rectangle that may be turned: its middle, half its sides, degrees clockwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slab {
    /// Middle.
    pub centre: Spot,
    /// Half the sides.
    pub half: Spot,
    /// Degrees clockwise on the sheet.
    pub turn: f64,
}

impl Slab {
    /// A level one.
    pub fn level(rect: Rect) -> Slab {
        Slab {
            centre: rect.centre(),
            half: [rect.w / 2.0, rect.h / 2.0],
            turn: 0.0,
        }
    }

    fn spots(&self) -> impl Iterator<Item = Spot> + '_ {
        let (sin, cos) = libm::sincos(self.turn.to_radians());
        let count = |half: f64| (half / CELL).ceil().max(1.0) as i64;
        let (nx, ny) = (count(self.half[0]), count(self.half[1]));
        (-nx..=nx).flat_map(move |i| {
            (-ny..=ny).map(move |j| {
                let u = self.half[0] * i as f64 / nx as f64;
                let v = self.half[1] * j as f64 / ny as f64;
                [
                    self.centre[0] + u * cos - v * sin,
                    self.centre[1] + u * sin + v * cos,
                ]
            })
        })
    }
}

impl Taken {
    /// An empty sheet of this size in mm.
    pub fn new(width: f64, height: f64) -> Taken {
        let columns = (width / CELL).ceil().max(1.0) as usize;
        let rows = (height / CELL).ceil().max(1.0) as usize;
        Taken {
            columns,
            rows,
            cells: vec![0; columns * rows],
        }
    }

    fn cell(&self, spot: Spot) -> Option<usize> {
        let (x, y) = (spot[0] / CELL, spot[1] / CELL);
        (x >= 0.0 && y >= 0.0 && x < self.columns as f64 && y < self.rows as f64)
            .then(|| y as usize * self.columns + x as usize)
    }

    fn mark(&mut self, spot: Spot, weight: u16) {
        if let Some(cell) = self.cell(spot) {
            self.cells[cell] = self.cells[cell].max(weight);
        }
    }

    /// A line through all spots.
    pub fn line(&mut self, spots: &[Spot], weight: u16) {
        for pair in spots.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            let steps = (libm::hypot(b[0] - a[0], b[1] - a[1]) / (CELL / 2.0))
                .ceil()
                .max(1.0) as usize;
            for step in 0..=steps {
                let share = step as f64 / steps as f64;
                self.mark(
                    [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])],
                    weight,
                );
            }
        }
    }

    /// The closed line round a ring.
    pub fn ring(&mut self, ring: &[Spot], weight: u16) {
        self.line(ring, weight);
        if let [first, .., last] = ring {
            self.line(&[*last, *first], weight);
        }
    }

    /// All ground of a polygon.
    pub fn ground(&mut self, rings: &Rings, weight: u16) {
        let Some(bounds) = Rect::round(rings.iter().flatten().copied()) else {
            return;
        };
        let mut y = bounds.y;
        while y <= bounds.y + bounds.h {
            let mut x = bounds.x;
            while x <= bounds.x + bounds.w {
                if inside(rings, [x, y]) {
                    self.mark([x, y], weight);
                }
                x += CELL;
            }
            y += CELL;
        }
    }

    /// A rectangle.
    pub fn slab(&mut self, slab: &Slab, weight: u16) {
        for spot in slab.spots() {
            self.mark(spot, weight);
        }
    }

    /// What a label there would cost: the mean weight of what it covers. Off the sheet is
    /// never, and so is any cell that says so.
    pub fn cost(&self, slab: &Slab) -> f64 {
        let (mut sum, mut count) = (0.0, 0.0);
        for spot in slab.spots() {
            let weight = self
                .cell(spot)
                .map_or(weight::NEVER, |cell| self.cells[cell]);
            if weight == weight::NEVER {
                return f64::INFINITY;
            }
            sum += f64::from(weight);
            count += 1.0;
        }
        sum / count
    }
}

/// Whether a spot lies in a polygon, by the even-odd rule.
pub fn inside(rings: &Rings, spot: Spot) -> bool {
    let mut within = false;
    for ring in rings {
        for (number, a) in ring.iter().enumerate() {
            let b = ring[(number + 1) % ring.len()];
            if (a[1] > spot[1]) != (b[1] > spot[1])
                && spot[0] < a[0] + (spot[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
            {
                within = !within;
            }
        }
    }
    within
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_label_finds_the_free_place_and_never_lies_on_another() {
        let mut taken = Taken::new(60.0, 40.0);
        let slab = |x: f64, y: f64| Slab {
            centre: [x, y],
            half: [8.0, 2.0],
            turn: 0.0,
        };
        taken.slab(&slab(20.0, 20.0), weight::NEVER);
        assert_eq!(taken.cost(&slab(22.0, 21.0)), f64::INFINITY);
        assert_eq!(taken.cost(&slab(20.0, 26.0)), 0.0);
        assert_eq!(taken.cost(&slab(5.0, 30.0)), f64::INFINITY, "off the sheet");
        taken.line(&[[0.0, 30.0], [60.0, 30.0]], weight::LINE);
        let across = taken.cost(&slab(40.0, 30.0));
        assert!(across > 0.0 && across < f64::from(weight::LINE));
    }

    #[test]
    fn a_turned_slab_takes_the_ground_it_lies_on() {
        let mut taken = Taken::new(60.0, 60.0);
        taken.slab(
            &Slab {
                centre: [30.0, 30.0],
                half: [15.0, 1.0],
                turn: 90.0,
            },
            weight::NEVER,
        );
        let probe = |x: f64, y: f64| {
            taken.cost(&Slab {
                centre: [x, y],
                half: [0.5, 0.5],
                turn: 0.0,
            })
        };
        assert_eq!(probe(30.0, 18.0), f64::INFINITY);
        assert_eq!(probe(18.0, 30.0), 0.0);
    }
}
