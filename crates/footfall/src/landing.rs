//! Where feet come down: the mass of a landing inside a cell, and cells that share ground.

use std::f64::consts::PI;

use geo::{Coord, LineString, Polygon, TriangulateEarcut};
use marking::{Cell, Outline};

use crate::normal::owens_t;

/// A: the mass of an isotropic Normal(centre, sigma²) inside a cell's outline.
///
/// # Method
/// Disc: 1 - exp(-R²/2 sigma²). Polygon: the signed sum, over its edges, of the triangle
/// between aim and edge, each the difference of two right triangles
/// atan(t/h)/2 pi - T(h, t/h), where h is the distance of the edge's line and t the place
/// along it. Holes are taken off.
///
/// # Source
/// Owen 1956 (ledger `OWEN56`).
pub fn landing(cell: &Cell, sigma: f64) -> f64 {
    match &cell.outline {
        Outline::Disc { radius } => -libm::expm1(-radius * radius / (2.0 * sigma * sigma)),
        Outline::Polygon(polygon) => {
            let inside = |ring: &LineString<f64>| ring_mass(ring, cell.centre, sigma).abs();
            let holes: f64 = polygon.interiors().iter().map(inside).sum();
            (inside(polygon.exterior()) - holes).clamp(0.0, 1.0)
        }
    }
}

/// The mass inside a ring, negative when it runs clockwise.
fn ring_mass(ring: &LineString<f64>, aim: Coord<f64>, sigma: f64) -> f64 {
    let right_triangle = |h: f64, t: f64| libm::atan2(t, h) / (2.0 * PI) - owens_t(h, t / h);
    let mut mass = 0.0;
    for edge in ring.lines() {
        let (a, b) = ((edge.start - aim) / sigma, (edge.end - aim) / sigma);
        let along = b - a;
        let length = libm::hypot(along.x, along.y);
        let h = (a.x * b.y - a.y * b.x) / length;
        // An edge on a line through the aim, or of no length, spans no triangle.
        if h == 0.0 || !h.is_finite() {
            continue;
        }
        let place = |p: Coord<f64>| (p.x * along.x + p.y * along.y) / length;
        let size = h.abs();
        mass += h.signum() * (right_triangle(size, place(b)) - right_triangle(size, place(a)));
    }
    mass
}

/// Whether two cells share ground deeper than `depth` metres.
pub(crate) fn overlap(one: &Cell, other: &Cell, depth: f64) -> bool {
    match (&one.outline, &other.outline) {
        (Outline::Disc { radius: a }, Outline::Disc { radius: b }) => {
            let apart = one.centre - other.centre;
            libm::hypot(apart.x, apart.y) < a + b - depth
        }
        (Outline::Disc { radius }, Outline::Polygon(polygon)) => {
            disc_meets(one.centre, *radius, polygon, depth)
        }
        (Outline::Polygon(polygon), Outline::Disc { radius }) => {
            disc_meets(other.centre, *radius, polygon, depth)
        }
        (Outline::Polygon(a), Outline::Polygon(b)) => {
            let (a, b) = (convex_parts(a), convex_parts(b));
            a.iter().any(|a| b.iter().any(|b| parts_meet(a, b, depth)))
        }
    }
}

/// A disc meets an outline whose edge comes nearer than its radius, or that holds it.
fn disc_meets(centre: Coord<f64>, radius: f64, polygon: &Polygon<f64>, depth: f64) -> bool {
    use geo::Contains;
    let rings = std::iter::once(polygon.exterior()).chain(polygon.interiors());
    let nearest = rings
        .flat_map(LineString::lines)
        .map(|edge| {
            let (along, to) = (edge.end - edge.start, centre - edge.start);
            let squared = along.x * along.x + along.y * along.y;
            let t = if squared > 0.0 {
                ((to.x * along.x + to.y * along.y) / squared).clamp(0.0, 1.0)
            } else {
                0.0
            };
            libm::hypot(to.x - t * along.x, to.y - t * along.y)
        })
        .fold(f64::INFINITY, f64::min);
    nearest < radius - depth || polygon.contains(&centre)
}

/// The outline itself where it is convex, else its triangles.
fn convex_parts(polygon: &Polygon<f64>) -> Vec<Vec<Coord<f64>>> {
    use geo::IsConvex;
    if polygon.interiors().is_empty() && polygon.exterior().is_convex() {
        let ring = &polygon.exterior().0;
        return vec![ring[..ring.len().saturating_sub(1)].to_vec()];
    }
    polygon
        .earcut_triangles()
        .into_iter()
        .map(|triangle| triangle.to_array().to_vec())
        .collect()
}

/// Two convex outlines share ground deeper than `depth` unless an edge's line parts them
/// (separating axes).
fn parts_meet(a: &[Coord<f64>], b: &[Coord<f64>], depth: f64) -> bool {
    let span = |part: &[Coord<f64>], x: f64, y: f64| {
        part.iter()
            .map(|p| p.x * x + p.y * y)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
                (low.min(at), high.max(at))
            })
    };
    [a, b].into_iter().all(|part| {
        (0..part.len()).all(|i| {
            let edge = part[(i + 1) % part.len()] - part[i];
            let length = libm::hypot(edge.x, edge.y);
            if length == 0.0 {
                return true;
            }
            let (x, y) = (edge.y / length, -edge.x / length);
            let ((a_low, a_high), (b_low, b_high)) = (span(a, x, y), span(b, x, y));
            (a_high - b_low).min(b_high - a_low) > depth
        })
    })
}
