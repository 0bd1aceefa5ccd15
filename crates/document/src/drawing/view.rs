//! From yard metres to paper millimetres, true to scale.

use geo::{Coord, LineString, Polygon};

use super::hatch::Rings;
use super::scene::Spot;

/// A yard's frame laid on a sheet: x to the right, y up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Paper millimetres for a metre.
    pub mm: f64,
    /// Where the frame's (0, 0) lies on the sheet.
    pub origin: Spot,
}

impl View {
    /// A place of the yard on the sheet.
    pub fn at(&self, place: Coord<f64>) -> Spot {
        [
            self.origin[0] + self.mm * place.x,
            self.origin[1] - self.mm * place.y,
        ]
    }

    /// A line of the yard on the sheet.
    pub fn line(&self, line: &LineString<f64>) -> Vec<Spot> {
        line.coords().map(|&place| self.at(place)).collect()
    }

    /// A ring, without its closing place.
    pub fn ring(&self, ring: &LineString<f64>) -> Vec<Spot> {
        let mut spots = self.line(ring);
        if spots.len() > 1 && spots.first() == spots.last() {
            spots.pop();
        }
        spots
    }

    /// A polygon with its holes.
    pub fn rings(&self, polygon: &Polygon<f64>) -> Rings {
        std::iter::once(polygon.exterior())
            .chain(polygon.interiors())
            .map(|ring| self.ring(ring))
            .filter(|ring| ring.len() > 2)
            .collect()
    }
}

/// Sum of two spots, the second times `share`.
pub fn along(from: Spot, way: Spot, share: f64) -> Spot {
    [from[0] + way[0] * share, from[1] + way[1] * share]
}

/// Distance in mm.
pub fn far(a: Spot, b: Spot) -> f64 {
    libm::hypot(b[0] - a[0], b[1] - a[1])
}

/// The unit way from one spot to another; to the right where they are one.
pub fn way(a: Spot, b: Spot) -> Spot {
    let length = far(a, b);
    if length > 0.0 {
        [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
    } else {
        [1.0, 0.0]
    }
}

/// A quarter turn clockwise on the sheet.
pub fn right_of(way: Spot) -> Spot {
    [-way[1], way[0]]
}

/// A rectangle along the longest side of a ring: the frame of a symbol.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Its middle.
    pub centre: Spot,
    /// The long way.
    pub u: Spot,
    /// The short way, clockwise from the long one.
    pub v: Spot,
    /// Half the long side.
    pub a: f64,
    /// Half the short side.
    pub b: f64,
}

impl Frame {
    /// Round a ring; `None` for fewer than two spots.
    pub fn round(ring: &[Spot]) -> Option<Frame> {
        let (&first, _) = ring.split_first()?;
        let mut longest = (0.0, [1.0, 0.0]);
        for (number, &a) in ring.iter().enumerate() {
            let b = ring[(number + 1) % ring.len()];
            // strictly longer by a hair, so that equal sides do not flip with the last bit
            if far(a, b) > longest.0 + 1e-6 {
                longest = (far(a, b), way(a, b));
            }
        }
        let (u, v) = (longest.1, right_of(longest.1));
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for spot in ring {
            let from = [spot[0] - first[0], spot[1] - first[1]];
            for (axis, way) in [u, v].into_iter().enumerate() {
                let along = from[0] * way[0] + from[1] * way[1];
                low[axis] = low[axis].min(along);
                high[axis] = high[axis].max(along);
            }
        }
        let middle = [(low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0];
        let centre = along(along(first, u, middle[0]), v, middle[1]);
        let (a, b) = ((high[0] - low[0]) / 2.0, (high[1] - low[1]) / 2.0);
        Some(if a >= b {
            Frame { centre, u, v, a, b }
        } else {
            Frame {
                centre,
                u: v,
                v: [-u[0], -u[1]],
                a: b,
                b: a,
            }
        })
    }

    /// A place in shares of the half sides.
    pub fn at(&self, s: f64, t: f64) -> Spot {
        along(along(self.centre, self.u, s * self.a), self.v, t * self.b)
    }

    /// A place in mm from the middle.
    pub fn off(&self, x: f64, y: f64) -> Spot {
        along(along(self.centre, self.u, x), self.v, y)
    }
}
