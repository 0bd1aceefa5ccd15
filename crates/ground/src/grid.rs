//! Polygon overlay on the grid of the answer.
//!
//! Coordinates are whole micrometres from an origin near the yard, so what is handed on
//! needs no rounding afterwards that could bend a ring over itself. The overlay is the
//! one that `geo` carries; here it runs on its own integers, on one thread.
//!
//! Invariants: every polygon that leaves is valid, outer rings anticlockwise, holes
//! clockwise, no two corners alike in a ring; a corner moves by at most [`SNAP`].

use std::collections::BTreeMap;

use geo::{Coord, LineString, MultiPolygon, Polygon};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{ContourDirection, IntOverlayOptions, Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::core::solver::{Precision, Solver, Strategy};
use i_overlay::i_float::int::point::IntPoint;

/// Grid lines in a metre where the yard allows it: coordinates are kept to 1e-6 m.
const PER_METRE: f64 = 1e6;

/// Metres by which a corner may move on its way onto the grid and through an overlay: a
/// crossing is rounded to the nearest grid point and drawn to an end one line away.
pub const SNAP: f64 = 4e-6;

/// Largest coordinate on the grid: the overlay multiplies differences in 64 bits.
const LARGEST: i64 = (1 << 30) - 1;

/// Metres that shapes may reach beyond the yard.
const BEYOND: f64 = 150.0;

/// A grid over one yard.
#[derive(Clone, Copy, Debug)]
pub struct Grid {
    /// The grid's zero, in micrometres.
    origin: (i64, i64),
    /// Micrometres between grid lines: 1, or 10 for a yard of more than a kilometre.
    step: i64,
}

/// A ring of grid points, not closed.
pub type Ring = Vec<IntPoint>;

impl Grid {
    /// A grid for a yard with these corners; `None` when it is wider than 20 km, or
    /// something in it is not a number.
    pub fn over(corners: impl IntoIterator<Item = Coord<f64>>) -> Option<Grid> {
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for corner in corners {
            if !corner.x.is_finite() || !corner.y.is_finite() {
                return None;
            }
            low = [low[0].min(corner.x), low[1].min(corner.y)];
            high = [high[0].max(corner.x), high[1].max(corner.y)];
        }
        let middle = [0, 1].map(|axis| ((low[axis] + high[axis]) / 2.0).round());
        let reach = (high[0] - low[0]).max(high[1] - low[1]) / 2.0 + BEYOND;
        // past 1e9 m a double no longer tells micrometres apart
        if !(middle[0].abs() < 1e9 && middle[1].abs() < 1e9) {
            return None;
        }
        let fits = |step: f64| reach * PER_METRE / step < LARGEST as f64;
        let step = if fits(1.0) {
            1
        } else if fits(10.0) {
            10
        } else {
            return None;
        };
        let origin = middle.map(|middle| middle as i64 * PER_METRE as i64);
        Some(Grid {
            origin: (origin[0], origin[1]),
            step,
        })
    }

    /// The grid point nearest to a point; far points come to rest on the grid's rim.
    pub fn point(&self, at: Coord<f64>) -> IntPoint {
        let onto = |metres: f64, origin: i64| {
            let lines = ((metres * PER_METRE).round() as i64).saturating_sub(origin);
            let rounded = (lines as f64 / self.step as f64).round() as i64;
            rounded.clamp(-LARGEST, LARGEST) as i32
        };
        IntPoint::new(onto(at.x, self.origin.0), onto(at.y, self.origin.1))
    }

    /// A grid point in metres.
    pub fn metres(&self, at: IntPoint) -> Coord<f64> {
        let off =
            |lines: i32, origin: i64| (i64::from(lines) * self.step + origin) as f64 / PER_METRE;
        Coord {
            x: off(at.x, self.origin.0),
            y: off(at.y, self.origin.1),
        }
    }

    /// Metres in one step of the grid.
    pub fn pitch(&self) -> f64 {
        self.step as f64 / PER_METRE
    }

    /// A point, rounded to the grid.
    pub fn round(&self, at: Coord<f64>) -> Coord<f64> {
        self.metres(self.point(at))
    }

    /// Whether a point lies within the grid's reach.
    pub fn reaches(&self, at: Coord<f64>) -> bool {
        let inside = |metres: f64, origin: i64| {
            (metres - origin as f64 / PER_METRE).abs() < LARGEST as f64 * self.pitch()
        };
        inside(at.x, self.origin.0) && inside(at.y, self.origin.1)
    }

    /// The union of polygons that may overlap.
    pub fn union<'a>(&self, of: impl IntoIterator<Item = &'a Polygon<f64>>) -> MultiPolygon<f64> {
        self.overlay(of, [], OverlayRule::Subject)
    }

    /// What two groups of polygons share; each group may overlap in itself.
    pub fn shared<'a>(
        &self,
        one: impl IntoIterator<Item = &'a Polygon<f64>>,
        other: impl IntoIterator<Item = &'a Polygon<f64>>,
    ) -> MultiPolygon<f64> {
        self.overlay(one, other, OverlayRule::Intersect)
    }

    /// What is left of the first group without the second.
    pub fn minus<'a>(
        &self,
        from: impl IntoIterator<Item = &'a Polygon<f64>>,
        take: impl IntoIterator<Item = &'a Polygon<f64>>,
    ) -> MultiPolygon<f64> {
        self.overlay(from, take, OverlayRule::Difference)
    }

    fn overlay<'a>(
        &self,
        subject: impl IntoIterator<Item = &'a Polygon<f64>>,
        clip: impl IntoIterator<Item = &'a Polygon<f64>>,
        rule: OverlayRule,
    ) -> MultiPolygon<f64> {
        // Collinear corners stay until the end: where rings touch, both have a corner.
        let options = IntOverlayOptions {
            preserve_input_collinear: false,
            output_direction: ContourDirection::CounterClockwise,
            preserve_output_collinear: true,
            min_output_area: 0,
            ogc: true,
        };
        let solver = Solver {
            strategy: Strategy::Auto,
            precision: Precision::HIGH,
            multithreading: None,
        };
        let mut overlay = Overlay::new_custom(256, options, solver);
        for (polygons, kind) in [
            (subject.into_iter().collect::<Vec<_>>(), ShapeType::Subject),
            (clip.into_iter().collect(), ShapeType::Clip),
        ] {
            for polygon in polygons {
                for (ring, anticlockwise) in rings(polygon) {
                    let mut points: Ring = self.ring(ring);
                    if (area2(&points) > 0) != anticlockwise {
                        points.reverse();
                    }
                    overlay.add_contour(&points, kind);
                }
            }
        }
        self.polygons(overlay.overlay(rule, FillRule::NonZero))
    }

    /// A ring on the grid, without its closing point and without repeats.
    pub fn ring(&self, ring: &LineString<f64>) -> Ring {
        let mut points: Ring = ring.coords().map(|&corner| self.point(corner)).collect();
        points.dedup();
        while points.len() > 1 && points.first() == points.last() {
            points.pop();
        }
        points
    }

    fn polygons(&self, shapes: Vec<Vec<Ring>>) -> MultiPolygon<f64> {
        let mut uses: BTreeMap<(i32, i32), usize> = BTreeMap::new();
        for point in shapes.iter().flatten().flatten() {
            *uses.entry((point.x, point.y)).or_default() += 1;
        }
        // The overlay winds a hole the wrong way once in some thousands: wound here.
        let slim = |ring: &Ring, anticlockwise: bool| -> LineString<f64> {
            let shared = |point: &IntPoint| uses.get(&(point.x, point.y)).is_some_and(|&n| n > 1);
            let mut ring = straightened(ring, shared);
            if (area2(&ring) > 0) != anticlockwise {
                ring.reverse();
            }
            let mut line: Vec<_> = ring.iter().map(|&point| self.metres(point)).collect();
            line.extend(line.first().copied());
            LineString(line)
        };
        let polygons = shapes.iter().filter_map(|shape| {
            let (outer, holes) = shape.split_first()?;
            let holes = holes.iter().map(|hole| slim(hole, false));
            Some(Polygon::new(slim(outer, true), holes.collect()))
        });
        MultiPolygon(polygons.collect())
    }
}

/// A ring without the corners that lie straight between their neighbours and that no
/// other ring touches.
fn straightened(ring: &Ring, shared: impl Fn(&IntPoint) -> bool) -> Ring {
    let mut kept: Ring = Vec::with_capacity(ring.len());
    for (i, point) in ring.iter().enumerate() {
        let before = kept
            .last()
            .copied()
            .unwrap_or(ring[(i + ring.len() - 1) % ring.len()]);
        let after = ring[(i + 1) % ring.len()];
        if shared(point) || turn(before, *point, after) != 0 {
            kept.push(*point);
        }
    }
    if kept.len() < 3 { ring.clone() } else { kept }
}

/// The outer ring (anticlockwise: true) and the holes (false).
fn rings(polygon: &Polygon<f64>) -> impl Iterator<Item = (&LineString<f64>, bool)> {
    std::iter::once((polygon.exterior(), true))
        .chain(polygon.interiors().iter().map(|hole| (hole, false)))
}

/// Twice the signed area, in grid steps squared.
fn area2(ring: &Ring) -> i128 {
    (0..ring.len())
        .map(|i| {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            i128::from(a.x) * i128::from(b.y) - i128::from(b.x) * i128::from(a.y)
        })
        .sum()
}

/// Positive where the way a, b, c turns left; exact.
pub fn turn(a: IntPoint, b: IntPoint, c: IntPoint) -> i128 {
    let [ax, ay, bx, by, cx, cy] = [a.x, a.y, b.x, b.y, c.x, c.y].map(i128::from);
    (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
}
