//! Distances and crossings that the rules measure; metres.

use geo::{Coord, LineString, Polygon};

use crate::candidate::Pose;

/// A straight between two points.
pub(crate) type Segment = (Coord<f64>, Coord<f64>);

pub(crate) fn length(v: Coord<f64>) -> f64 {
    (v.x * v.x + v.y * v.y).sqrt()
}

pub(crate) fn cross(a: Coord<f64>, b: Coord<f64>) -> f64 {
    a.x * b.y - a.y * b.x
}

/// From a point to a segment.
pub(crate) fn to_segment(p: Coord<f64>, (a, b): Segment) -> f64 {
    let along = b - a;
    let square = along.x * along.x + along.y * along.y;
    if square == 0.0 {
        return length(p - a);
    }
    let t = (((p.x - a.x) * along.x + (p.y - a.y) * along.y) / square).clamp(0.0, 1.0);
    length(p - (a + along * t))
}

/// Whether two segments have a point in common.
pub(crate) fn meet((a, b): Segment, (c, d): Segment) -> bool {
    let (d1, d2) = (cross(b - a, c - a), cross(b - a, d - a));
    let (d3, d4) = (cross(d - c, a - c), cross(d - c, b - c));
    if d1 * d2 < 0.0 && d3 * d4 < 0.0 {
        return true;
    }
    let on = |p: Coord<f64>, (a, b): Segment, side: f64| {
        side == 0.0
            && p.x >= a.x.min(b.x)
            && p.x <= a.x.max(b.x)
            && p.y >= a.y.min(b.y)
            && p.y <= a.y.max(b.y)
    };
    on(c, (a, b), d1) || on(d, (a, b), d2) || on(a, (c, d), d3) || on(b, (c, d), d4)
}

/// Between two segments; 0 where they meet.
pub(crate) fn between(one: Segment, other: Segment) -> f64 {
    if meet(one, other) {
        return 0.0;
    }
    to_segment(one.0, other)
        .min(to_segment(one.1, other))
        .min(to_segment(other.0, one))
        .min(to_segment(other.1, one))
}

/// The edges of all rings of a polygon.
pub(crate) fn edges(polygon: &Polygon<f64>) -> Vec<Segment> {
    let mut edges = line_edges(polygon.exterior());
    for hole in polygon.interiors() {
        edges.extend(line_edges(hole));
    }
    edges
}

/// The straights of a line.
pub(crate) fn line_edges(line: &LineString<f64>) -> Vec<Segment> {
    line.lines().map(|line| (line.start, line.end)).collect()
}

/// Whether a point lies inside by even-odd count of edges.
pub(crate) fn inside(p: Coord<f64>, edges: &[Segment]) -> bool {
    let mut odd = false;
    for (a, b) in edges {
        if (a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x {
            odd = !odd;
        }
    }
    odd
}

/// The least and the greatest corner of the box round some points; infinite, the wrong way
/// round, where there are none.
pub(crate) fn bounds(points: impl IntoIterator<Item = Coord<f64>>) -> (Coord<f64>, Coord<f64>) {
    let all = |x: f64| Coord { x, y: x };
    let start = (all(f64::INFINITY), all(f64::NEG_INFINITY));
    points.into_iter().fold(start, |(low, high), p| {
        let low = Coord {
            x: low.x.min(p.x),
            y: low.y.min(p.y),
        };
        let high = Coord {
            x: high.x.max(p.x),
            y: high.y.max(p.y),
        };
        (low, high)
    })
}

/// Least distance between two sets of segments; infinite where one is empty.
pub(crate) fn apart(one: &[Segment], other: &[Segment]) -> f64 {
    let mut least = f64::INFINITY;
    for a in one {
        let (low, high) = (corner(*a, f64::min), corner(*a, f64::max));
        for b in other {
            let (blow, bhigh) = (corner(*b, f64::min), corner(*b, f64::max));
            let gap_x = (blow.x - high.x).max(low.x - bhigh.x);
            let gap_y = (blow.y - high.y).max(low.y - bhigh.y);
            if gap_x.max(gap_y) < least {
                least = least.min(between(*a, *b));
            }
        }
    }
    least
}

fn corner((a, b): Segment, pick: fn(f64, f64) -> f64) -> Coord<f64> {
    Coord {
        x: pick(a.x, b.x),
        y: pick(a.y, b.y),
    }
}

impl Pose {
    /// A point of the figure's own frame, in the yard.
    pub fn of(&self, p: Coord<f64>) -> Coord<f64> {
        let (sin, cos) = libm::sincos(self.turn);
        let y = if self.mirrored { -p.y } else { p.y };
        Coord {
            x: self.at.x + p.x * cos - y * sin,
            y: self.at.y + p.x * sin + y * cos,
        }
    }

    /// A line of the figure's own frame, in the yard, rounded to 1e-6.
    pub fn of_line(&self, line: &LineString<f64>) -> LineString<f64> {
        LineString::new(line.coords().map(|p| round(self.of(*p))).collect())
    }

    /// A polygon of the figure's own frame, in the yard, rounded to 1e-6, anticlockwise.
    pub fn of_polygon(&self, polygon: &Polygon<f64>) -> Polygon<f64> {
        let ring = |line: &LineString<f64>| {
            let mut line = self.of_line(line);
            if self.mirrored {
                line.0.reverse();
            }
            line
        };
        Polygon::new(
            ring(polygon.exterior()),
            polygon.interiors().iter().map(ring).collect(),
        )
    }
}

/// To 1e-6 m.
pub(crate) fn round(p: Coord<f64>) -> Coord<f64> {
    Coord {
        x: crate::millionth(p.x),
        y: crate::millionth(p.y),
    }
}
