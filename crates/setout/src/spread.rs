//! How the errors of bases and tapes spread to marks and to readings between any two points.

use geo::Coord;

use crate::bases::Bases;
use crate::cross::{Crossing, Square};

/// What moves a point: shares of the bases' errors, and errors of its own tapes.
#[derive(Clone, Debug)]
pub(crate) struct Spread {
    /// A base, and how its error moves the point.
    on: Vec<(usize, Square)>,
    /// The mark's number and the covariance that its own tapes give it.
    own: Option<(usize, Square)>,
}

impl Spread {
    /// A base.
    pub(crate) fn base(base: usize) -> Spread {
        Spread {
            on: vec![(base, [[1.0, 0.0], [0.0, 1.0]])],
            own: None,
        }
    }

    /// A place that nothing moves.
    pub(crate) fn still() -> Spread {
        Spread {
            on: Vec::new(),
            own: None,
        }
    }

    /// A mark, held by two tapes to two bases; `sigmas` of its tapes, metres.
    pub(crate) fn mark(
        number: usize,
        bases: [usize; 2],
        crossing: &Crossing,
        sigmas: [f64; 2],
    ) -> Spread {
        let share = |tape: usize| {
            let (unit, [x, y]) = (crossing.units[tape], crossing.inverse);
            [
                [x[tape] * unit.x, x[tape] * unit.y],
                [y[tape] * unit.x, y[tape] * unit.y],
            ]
        };
        Spread {
            on: vec![(bases[0], share(0)), (bases[1], share(1))],
            own: Some((number, crossing.covariance(sigmas))),
        }
    }

    /// Covariance of this point (rows) and another (columns), m².
    pub(crate) fn with(&self, other: &Spread, bases: &Bases) -> Square {
        let mut sum = [[0.0; 2]; 2];
        for (i, a) in &self.on {
            for (j, b) in &other.on {
                let c = bases.block(*i, *j);
                for (row, a) in a.iter().enumerate() {
                    for (column, b) in b.iter().enumerate() {
                        sum[row][column] += a[0] * (c[0][0] * b[0] + c[0][1] * b[1])
                            + a[1] * (c[1][0] * b[0] + c[1][1] * b[1]);
                    }
                }
            }
        }
        if let (Some((me, own)), Some((you, _))) = (self.own, other.own)
            && me == you
        {
            for row in 0..2 {
                for column in 0..2 {
                    sum[row][column] += own[row][column];
                }
            }
        }
        sum
    }
}

/// A straight line between two points whose length is read.
pub(crate) struct Ray<'a> {
    pub(crate) ends: [&'a Spread; 2],
    /// Unit from the first end to the second.
    pub(crate) way: Coord<f64>,
}

impl Ray<'_> {
    /// Covariance of what two rays truly measure, m²; without the reading's own error.
    pub(crate) fn with(&self, other: &Ray, bases: &Bases) -> f64 {
        let mut sum = 0.0;
        for (me, mine) in self.ends.iter().zip([-1.0, 1.0]) {
            for (you, yours) in other.ends.iter().zip([-1.0, 1.0]) {
                let [[xx, xy], [yx, yy]] = me.with(you, bases);
                let (a, b) = (self.way, other.way);
                sum += mine * yours * (a.x * (xx * b.x + xy * b.y) + a.y * (yx * b.x + yy * b.y));
            }
        }
        sum
    }
}
