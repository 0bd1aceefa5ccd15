//! What a reading should say at given places, and how it changes when points move.

use crate::network::{Kind, PointId};

/// Places of all points, metres.
pub(crate) type Place = [f64; 2];

/// Derivatives of one reading by the coordinates of the points it touches.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Row {
    terms: [(PointId, Place); 3],
    count: usize,
}

impl Row {
    pub(crate) fn terms(&self) -> &[(PointId, Place)] {
        &self.terms[..self.count]
    }
}

impl Kind {
    /// The points that the reading touches, each once.
    pub fn points(self) -> impl Iterator<Item = PointId> {
        let (points, count) = match self {
            Kind::Distance { from, to } => ([from, to, to], 2),
            Kind::Along { from, to, point } | Kind::Left { from, to, point } => {
                ([from, to, point], 3)
            }
            Kind::Square { at, from, to } => ([at, from, to], 3),
            Kind::KnownX { point } | Kind::KnownY { point } => ([point, point, point], 1),
        };
        points.into_iter().take(count)
    }

    /// Whether it ties a point to the frame instead of to another point.
    pub fn is_known(self) -> bool {
        matches!(self, Kind::KnownX { .. } | Kind::KnownY { .. })
    }
}

pub(crate) fn minus(a: Place, b: Place) -> Place {
    [a[0] - b[0], a[1] - b[1]]
}

pub(crate) fn dot(a: Place, b: Place) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

/// Twice the signed area between `a` and `b`: positive where `b` lies to the left of `a`.
pub(crate) fn cross(a: Place, b: Place) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

/// A quarter turn anticlockwise.
pub(crate) fn turned(a: Place) -> Place {
    [-a[1], a[0]]
}

pub(crate) fn scaled(a: Place, by: f64) -> Place {
    [a[0] * by, a[1] * by]
}

pub(crate) fn plus(a: Place, b: Place) -> Place {
    [a[0] + b[0], a[1] + b[1]]
}

pub(crate) fn length(a: Place) -> f64 {
    libm::hypot(a[0], a[1])
}

pub(crate) fn apart(a: Place, b: Place) -> f64 {
    length(minus(a, b))
}

/// Two points nearer than this (metres) have no direction: any will do, and damping
/// takes the solver away from there.
const NO_DIRECTION: f64 = 1e-9;

/// Unit vector from `a` to `b`, and its length.
fn direction(a: Place, b: Place) -> (Place, f64) {
    let way = minus(b, a);
    let long = length(way);
    if long < NO_DIRECTION {
        ([1.0, 0.0], NO_DIRECTION)
    } else {
        (scaled(way, 1.0 / long), long)
    }
}

/// What the reading should be: metres, radians for a square.
pub(crate) fn value(kind: Kind, at: &[Place]) -> f64 {
    match kind {
        Kind::Distance { from, to } => apart(at[from], at[to]),
        Kind::Along { from, to, point } => {
            dot(direction(at[from], at[to]).0, minus(at[point], at[from]))
        }
        Kind::Left { from, to, point } => {
            cross(direction(at[from], at[to]).0, minus(at[point], at[from]))
        }
        Kind::Square {
            at: corner,
            from,
            to,
        } => {
            let (a, b) = (minus(at[from], at[corner]), minus(at[to], at[corner]));
            libm::atan2(cross(a, b).abs(), dot(a, b))
        }
        Kind::KnownX { point } => at[point][0],
        Kind::KnownY { point } => at[point][1],
    }
}

/// Derivatives of [`value`].
pub(crate) fn row(kind: Kind, at: &[Place]) -> Row {
    const NONE: (PointId, Place) = (0, [0.0, 0.0]);
    match kind {
        Kind::Distance { from, to } => {
            let (u, _) = direction(at[from], at[to]);
            Row {
                terms: [(from, scaled(u, -1.0)), (to, u), NONE],
                count: 2,
            }
        }
        // Moving `to` sideways turns the line about `from`: what is along gains the offset's
        // share, what is left loses the share along.
        Kind::Along { from, to, point } => {
            let (u, long) = direction(at[from], at[to]);
            let n = turned(u);
            let turn = scaled(n, dot(n, minus(at[point], at[from])) / long);
            Row {
                terms: [(from, scaled(plus(u, turn), -1.0)), (to, turn), (point, u)],
                count: 3,
            }
        }
        Kind::Left { from, to, point } => {
            let (u, long) = direction(at[from], at[to]);
            let n = turned(u);
            let turn = scaled(n, -dot(u, minus(at[point], at[from])) / long);
            Row {
                terms: [(from, scaled(plus(n, turn), -1.0)), (to, turn), (point, n)],
                count: 3,
            }
        }
        Kind::Square {
            at: corner,
            from,
            to,
        } => {
            let (a, long_a) = direction(at[corner], at[from]);
            let (b, long_b) = direction(at[corner], at[to]);
            let sign = if cross(a, b) < 0.0 { -1.0 } else { 1.0 };
            let (da, db) = (
                scaled(turned(a), -sign / long_a),
                scaled(turned(b), sign / long_b),
            );
            Row {
                terms: [(corner, scaled(plus(da, db), -1.0)), (from, da), (to, db)],
                count: 3,
            }
        }
        Kind::KnownX { point } => Row {
            terms: [(point, [1.0, 0.0]), NONE, NONE],
            count: 1,
        },
        Kind::KnownY { point } => Row {
            terms: [(point, [0.0, 1.0]), NONE, NONE],
            count: 1,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The derivatives against central differences (step 1e-6 m, so 1e-8 is what they carry).
    #[test]
    fn derivatives_are_those_of_the_values() {
        let at = [[0.3, -0.2], [7.1, 1.9], [2.4, 5.5]];
        for kind in [
            Kind::Distance { from: 0, to: 1 },
            Kind::Along {
                from: 0,
                to: 1,
                point: 2,
            },
            Kind::Left {
                from: 1,
                to: 0,
                point: 2,
            },
            Kind::Square {
                at: 0,
                from: 1,
                to: 2,
            },
            Kind::Square {
                at: 2,
                from: 1,
                to: 0,
            },
            Kind::KnownX { point: 1 },
            Kind::KnownY { point: 2 },
        ] {
            let mut wanted = [[0.0; 2]; 3];
            for &(point, d) in row(kind, &at).terms() {
                wanted[point] = plus(wanted[point], d);
            }
            for point in 0..3 {
                for axis in 0..2 {
                    let mut there = at;
                    there[point][axis] += 1e-6;
                    let up = value(kind, &there);
                    there[point][axis] -= 2e-6;
                    let slope = (up - value(kind, &there)) / 2e-6;
                    assert!(
                        (slope - wanted[point][axis]).abs() < 1e-8,
                        "{kind:?} by {point}, {axis}"
                    );
                }
            }
        }
    }
}
