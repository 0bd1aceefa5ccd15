//! Outlines: rounded corners, discs, strokes, and what is left when joints are cut.
//!
//! Arcs become polygons whose corners lie on the arc; no side lies farther off it than the
//! `flat` that is handed in.

use geo::{BooleanOps, Coord, LineString, MultiPolygon, Polygon, Winding, coord};

/// A place and a turn: where a part's own frame lies, x along the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Origin, metres.
    pub at: Coord<f64>,
    /// Radians from +x anticlockwise.
    pub turn: f64,
}

impl Pose {
    /// At a place, along +x.
    pub fn at(x: f64, y: f64) -> Pose {
        Pose {
            at: coord! { x: x, y: y },
            turn: 0.0,
        }
    }

    /// The same place, turned.
    pub fn turned(self, turn: f64) -> Pose {
        Pose {
            turn: self.turn + turn,
            ..self
        }
    }

    /// So far along its own way.
    pub fn ahead(self, by: f64) -> Pose {
        Pose {
            at: self.point(by, 0.0),
            ..self
        }
    }

    /// A point of the part's frame.
    pub fn point(self, x: f64, y: f64) -> Coord<f64> {
        let (sin, cos) = libm::sincos(self.turn);
        coord! { x: self.at.x + x * cos - y * sin, y: self.at.y + x * sin + y * cos }
    }

    /// A shape of the part's frame.
    pub fn polygon(self, polygon: &Polygon<f64>) -> Polygon<f64> {
        map(polygon, |at| self.point(at.x, at.y))
    }
}

/// A polygon with every corner moved.
pub fn map(polygon: &Polygon<f64>, by: impl Fn(Coord<f64>) -> Coord<f64>) -> Polygon<f64> {
    let ring = |ring: &LineString<f64>| LineString(ring.coords().map(|at| by(*at)).collect());
    Polygon::new(
        ring(polygon.exterior()),
        polygon.interiors().iter().map(ring).collect(),
    )
}

/// A polygon round `corners`, anticlockwise.
pub fn ring(corners: Vec<Coord<f64>>) -> Polygon<f64> {
    let mut ring = LineString(corners);
    ring.close();
    ring.make_ccw_winding();
    Polygon::new(ring, Vec::new())
}

/// Points of an arc of an ellipse, both ends among them; angles in radians.
pub fn arc(centre: Coord<f64>, radii: [f64; 2], from: f64, to: f64, flat: f64) -> Vec<Coord<f64>> {
    let widest = radii[0].max(radii[1]);
    let step = 2.0 * libm::acos((1.0 - flat / widest).clamp(0.0, 1.0));
    let steps = ((to - from).abs() / step).ceil().max(1.0);
    (0..=steps as usize)
        .map(|at| {
            let (sin, cos) = libm::sincos(from + (to - from) * at as f64 / steps);
            coord! { x: centre.x + radii[0] * cos, y: centre.y + radii[1] * sin }
        })
        .collect()
}

/// A disc.
pub fn disc(centre: Coord<f64>, radius: f64, flat: f64) -> Polygon<f64> {
    let mut round = arc(centre, [radius; 2], 0.0, std::f64::consts::TAU, flat);
    round.pop();
    ring(round)
}

/// A polygon of corners `(x, y, radius)`, each rounded to its radius.
pub fn rounded(corners: &[(f64, f64, f64)], flat: f64) -> Polygon<f64> {
    let count = corners.len();
    let at = |index: usize| {
        let (x, y, _) = corners[index % count];
        coord! { x: x, y: y }
    };
    let mut outline = Vec::new();
    for (index, (_, _, radius)) in corners.iter().enumerate() {
        let (before, corner, after) = (at(index + count - 1), at(index), at(index + 1));
        let (into, out) = (unit(before - corner), unit(after - corner));
        let half = libm::acos((into.x * out.x + into.y * out.y).clamp(-1.0, 1.0)) / 2.0;
        if *radius <= 0.0 || half <= 0.0 {
            outline.push(corner);
            continue;
        }
        let centre = corner + unit(into + out) * (radius / libm::sin(half));
        let touch = radius / libm::tan(half);
        let (first, last) = (
            corner + into * touch - centre,
            corner + out * touch - centre,
        );
        let from = libm::atan2(first.y, first.x);
        let mut sweep = libm::atan2(last.y, last.x) - from;
        if sweep > std::f64::consts::PI {
            sweep -= std::f64::consts::TAU;
        } else if sweep < -std::f64::consts::PI {
            sweep += std::f64::consts::TAU;
        }
        outline.extend(arc(centre, [*radius; 2], from, from + sweep, flat));
    }
    ring(outline)
}

/// A rectangle with rounded corners, its middle at the origin.
pub fn slab(length: f64, breadth: f64, corner: f64, flat: f64) -> Polygon<f64> {
    let (x, y) = (length / 2.0, breadth / 2.0);
    let corner = corner.min(x).min(y);
    rounded(
        &[
            (-x, -y, corner),
            (x, -y, corner),
            (x, y, corner),
            (-x, y, corner),
        ],
        flat,
    )
}

/// An upright rectangle from corner to corner.
pub fn rect(x: [f64; 2], y: [f64; 2]) -> Polygon<f64> {
    ring(vec![
        coord! { x: x[0], y: y[0] },
        coord! { x: x[1], y: y[0] },
        coord! { x: x[1], y: y[1] },
        coord! { x: x[0], y: y[1] },
    ])
}

/// A roller stroke along a line: round ends, outer sides of its bends round too.
pub fn stroke(line: &[Coord<f64>], breadth: f64, flat: f64) -> Polygon<f64> {
    let half = breadth / 2.0;
    let mut outline = side(line, half, flat);
    let back: Vec<Coord<f64>> = line.iter().rev().copied().collect();
    if let [.., last, end] = line {
        outline.extend(cap(*last, *end, half, flat));
    }
    outline.extend(side(&back, half, flat));
    if let [.., last, end] = back.as_slice() {
        outline.extend(cap(*last, *end, half, flat));
    }
    ring(outline)
}

/// The right side of a line, `half` off it.
fn side(line: &[Coord<f64>], half: f64, flat: f64) -> Vec<Coord<f64>> {
    let right = |way: Coord<f64>| coord! { x: way.y, y: -way.x };
    let mut points = Vec::new();
    for (index, corner) in line.iter().enumerate() {
        let into = index
            .checked_sub(1)
            .and_then(|before| line.get(before))
            .map(|from| unit(*corner - *from));
        let out = line.get(index + 1).map(|to| unit(*to - *corner));
        match (into, out) {
            (Some(into), Some(out)) => {
                let turn = libm::atan2(
                    into.x * out.y - into.y * out.x,
                    into.x * out.x + into.y * out.y,
                );
                // a bend this small is part of a curve: its sides meet in a point
                const CURVE: f64 = 0.3;
                if turn > CURVE {
                    let from = libm::atan2(right(into).y, right(into).x);
                    points.extend(arc(*corner, [half; 2], from, from + turn, flat));
                } else {
                    let middle = unit(right(into) + right(out));
                    points.push(*corner + middle * (half / libm::cos(turn / 2.0)));
                }
            }
            (Some(way), None) | (None, Some(way)) => points.push(*corner + right(way) * half),
            (None, None) => {}
        }
    }
    points
}

/// The round end of a stroke, its two ends left out.
fn cap(before: Coord<f64>, end: Coord<f64>, half: f64, flat: f64) -> Vec<Coord<f64>> {
    let way = unit(end - before);
    let from = libm::atan2(-way.x, way.y);
    let mut round = arc(end, [half; 2], from, from + std::f64::consts::PI, flat);
    round.pop();
    round.into_iter().skip(1).collect()
}

/// What is left of a shape without the others, largest first.
pub fn without(shape: &Polygon<f64>, cut: &[Polygon<f64>]) -> Vec<Polygon<f64>> {
    // shapes that overlap are no multipolygon: they become one first
    sorted(shape.difference(&geo::unary_union(cut)))
}

/// Shapes as one, largest first.
pub fn together(shapes: &[Polygon<f64>]) -> Vec<Polygon<f64>> {
    sorted(geo::unary_union(shapes))
}

fn sorted(shapes: MultiPolygon<f64>) -> Vec<Polygon<f64>> {
    use geo::Area;
    let mut shapes = shapes.0;
    shapes.sort_by(|a, b| b.unsigned_area().total_cmp(&a.unsigned_area()));
    shapes
}

/// A vector of length 1; of none, itself.
pub fn unit(way: Coord<f64>) -> Coord<f64> {
    let length = libm::hypot(way.x, way.y);
    if length > 0.0 { way / length } else { way }
}
