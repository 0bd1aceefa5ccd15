//! Shapes that hold what they stand for: discs, sectors, rectangles, round offsets.
//!
//! A circle becomes a polygon whose sides touch it from outside: radius / cos(half a
//! step). So a polygon never falls inside the true zone, and its corners stand at most
//! [`OUTSIDE`] beyond it; `SNAP` is added before, for what the grid may take away.

use geo::{Area, Coord, LineString, Polygon};

use crate::grid::{Grid, SNAP};

/// Metres by which a polygon's corner may stand outside the true arc, the grid's
/// `SNAP` apart.
pub const OUTSIDE: f64 = 0.005;

/// A point and the way from it.
pub type Vector = Coord<f64>;

/// Length of a vector, metres.
pub fn length(of: Vector) -> f64 {
    libm::hypot(of.x, of.y)
}

/// The way from one point to another, as a unit; `None` for points within 0.1 mm, of
/// which no tape can tell the direction.
pub fn direction(from: Coord<f64>, to: Coord<f64>) -> Option<Vector> {
    const SAME: f64 = 1e-4;
    let way = to - from;
    let long = length(way);
    (long > SAME && long.is_finite()).then(|| way / long)
}

/// A vector turned left by a right angle.
pub fn left(of: Vector) -> Vector {
    Coord { x: -of.y, y: of.x }
}

/// x of one times y of the other, less the reverse: positive where `b` is left of `a`.
pub fn cross(a: Vector, b: Vector) -> f64 {
    a.x * b.y - a.y * b.x
}

/// The dot product.
pub fn dot(a: Vector, b: Vector) -> f64 {
    a.x * b.x + a.y * b.y
}

fn turned(way: Vector, by: f64) -> Vector {
    let (sin, cos) = libm::sincos(by);
    Coord {
        x: way.x * cos - way.y * sin,
        y: way.x * sin + way.y * cos,
    }
}

/// Corners of the polygon round an arc: from `start` (a unit) left by `sweep` radians.
/// The first and last side leave the arc's ends at right angles to the radius there.
fn arc(centre: Coord<f64>, radius: f64, start: Vector, sweep: f64) -> Vec<Coord<f64>> {
    let radius = radius + SNAP;
    let widest = 2.0 * libm::acos(radius / (radius + OUTSIDE));
    let steps = (sweep / widest).ceil().max(1.0);
    let step = sweep / steps;
    let corner = radius / libm::cos(step / 2.0);
    (0..steps as usize)
        .map(|i| centre + turned(start, (i as f64 + 0.5) * step) * corner)
        .collect()
}

/// The disc round a centre.
pub fn disc(centre: Coord<f64>, radius: f64) -> Polygon<f64> {
    let quarter = std::f64::consts::FRAC_PI_2;
    let (mut corners, mut start) = (Vec::new(), Coord { x: 1.0, y: 0.0 });
    for _ in 0..4 {
        corners.extend(arc(centre, radius, start, quarter));
        start = left(start);
    }
    closed(corners)
}

/// The quarter disc that a leaf sweeps, from the direction `from` to `to`, which is at a
/// right angle to it on either side.
pub fn quarter(centre: Coord<f64>, radius: f64, from: Vector, to: Vector) -> Polygon<f64> {
    let (from, to) = if cross(from, to) > 0.0 {
        (from, to)
    } else {
        (to, from)
    };
    let mut corners = vec![centre, centre + from * (radius + SNAP)];
    corners.extend(arc(centre, radius, from, std::f64::consts::FRAC_PI_2));
    corners.push(centre + to * (radius + SNAP));
    closed(corners)
}

/// A rectangle on the line from `a` along the unit `way`: it begins `before` the start of
/// the line, ends `after` its end at `long`, and lies from `right` to `left` of it.
pub struct Rectangle {
    /// Start of the line.
    pub a: Coord<f64>,
    /// Its direction, a unit.
    pub way: Vector,
    /// From and to along the line, metres.
    pub along: [f64; 2],
    /// From and to across it, metres, left positive.
    pub across: [f64; 2],
}

impl Rectangle {
    /// As a polygon, grown by `SNAP`.
    pub fn polygon(&self) -> Polygon<f64> {
        let side = left(self.way);
        let at = |along: f64, across: f64| self.a + self.way * along + side * across;
        let ([begin, end], [right, far]) = (self.along, self.across);
        let (begin, end, right, far) = (begin - SNAP, end + SNAP, right - SNAP, far + SNAP);
        closed(vec![
            at(begin, right),
            at(end, right),
            at(end, far),
            at(begin, far),
        ])
    }
}

/// All ground within `radius` of a ring, a line of two points or a point: the offset with
/// round corners. What a ring encloses belongs to it: nobody paints inside a footprint.
pub fn grown(grid: &Grid, ring: &[Coord<f64>], radius: f64) -> Vec<Polygon<f64>> {
    let mut corners = ring.to_vec();
    corners.dedup_by(|a, b| direction(*a, *b).is_none());
    while corners.len() > 1
        && corners
            .first()
            .zip(corners.last())
            .is_some_and(|(a, b)| direction(*a, *b).is_none())
    {
        corners.pop();
    }
    if corners.len() > 2 && closed(corners.clone()).signed_area() < 0.0 {
        corners.reverse();
    }
    match corners.as_slice() {
        [] => Vec::new(),
        [centre] => vec![disc(*centre, radius)],
        _ => round_the(grid, &corners, radius),
    }
}

/// A corner of an anticlockwise ring with the outward normals of its sides.
struct Corner {
    at: Coord<f64>,
    next: Coord<f64>,
    before: Vector,
    after: Vector,
    /// Radians that the ring turns left here.
    turns: f64,
}

fn round_the(grid: &Grid, ring: &[Coord<f64>], radius: f64) -> Vec<Polygon<f64>> {
    let count = ring.len();
    let normal = |i: usize| {
        direction(ring[i % count], ring[(i + 1) % count]).map_or(Coord::zero(), |way| -left(way))
    };
    let corners: Vec<Corner> = (0..count)
        .map(|i| {
            let (before, after) = (normal(i + count - 1), normal(i));
            let (sine, cosine) = (cross(before, after), dot(before, after));
            // a line's end turns right about: the sign of a zero must not decide the side
            let back = sine.abs() < 1e-12 && cosine < 0.0;
            let turns = if back {
                std::f64::consts::PI
            } else {
                libm::atan2(sine, cosine)
            };
            Corner {
                at: ring[i],
                next: ring[(i + 1) % count],
                before,
                after,
                turns,
            }
        })
        .collect();
    let once_round: f64 = corners.iter().map(|corner| corner.turns).sum();
    let convex = corners.iter().all(|corner| corner.turns >= 0.0) && once_round < 7.0;
    if convex {
        let rim = corners.iter().filter(|corner| corner.turns > 0.0);
        return vec![closed(
            rim.flat_map(|corner| arc(corner.at, radius, corner.before, corner.turns))
                .collect(),
        )];
    }
    let out = radius + SNAP;
    let mut pieces = vec![closed(ring.to_vec())];
    for corner in &corners {
        let Corner {
            at,
            next,
            before,
            after,
            turns,
        } = *corner;
        pieces.push(closed(vec![at, at + after * out, next + after * out, next]));
        if turns > 0.0 {
            let mut wedge = vec![at, at + before * out];
            wedge.extend(arc(at, radius, before, turns));
            wedge.push(at + after * out);
            pieces.push(closed(wedge));
        }
    }
    grid.union(&pieces).0
}

/// All ground within `radius` of a line.
pub fn along(grid: &Grid, line: &[Coord<f64>], radius: f64) -> Vec<Polygon<f64>> {
    match line {
        [only] => vec![disc(*only, radius)],
        _ => line
            .windows(2)
            .flat_map(|side| grown(grid, side, radius))
            .collect(),
    }
}

/// A polygon of these corners.
pub fn closed(corners: Vec<Coord<f64>>) -> Polygon<f64> {
    Polygon::new(LineString(corners), Vec::new())
}
