//! Convex pieces of an outline, and sums of convex polygons.
//!
//! Rings here are open (the first point is not repeated) and run counter-clockwise.

use geo::{ConvexHull, CoordsIter, MultiPoint, Polygon, TriangulateEarcut};

/// x, y.
pub(crate) type Point = [f64; 2];

/// Relative. A triangulation that misses the outline's area by more is of an outline that
/// crosses itself: rounding leaves some 1e-14.
const SAME_AREA: f64 = 1e-9;

/// The open ring of an outline without repeated points, counter-clockwise. `None` for fewer
/// than three points, for anything not finite and for what encloses nothing.
pub(crate) fn ring(outline: &Polygon<f64>) -> Option<Vec<Point>> {
    let mut ring: Vec<Point> = Vec::new();
    for at in outline.exterior().coords() {
        if !(at.x.is_finite() && at.y.is_finite()) {
            return None;
        }
        if ring.last() != Some(&[at.x, at.y]) {
            ring.push([at.x, at.y]);
        }
    }
    while ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    let area = area(&ring);
    if ring.len() < 3 || area == 0.0 || !area.is_finite() {
        return None;
    }
    if area < 0.0 {
        ring.reverse();
    }
    Some(ring)
}

/// Signed: above 0 for a counter-clockwise ring.
pub(crate) fn area(ring: &[Point]) -> f64 {
    let Some(&from) = ring.first() else {
        return 0.0;
    };
    let twice: f64 = ring
        .windows(2)
        .map(|pair| turn(from, pair[0], pair[1]))
        .sum();
    twice / 2.0
}

/// Twice the area of the triangle a, b, c: above 0 for a turn to the left.
pub(crate) fn turn(a: Point, b: Point, c: Point) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Convex rings that together cover what the ring encloses, and no more: triangles, joined over
/// every diagonal that may go (Hertel and Mehlhorn 1983, at most four times the fewest).
/// A ring that crosses itself has no inside to cut: it gets its convex hull, which errs to safety.
pub(crate) fn pieces(ring: &[Point]) -> Vec<Vec<Point>> {
    let line = ring
        .iter()
        .map(|&[x, y]| geo::coord! { x: x, y: y })
        .collect();
    let cut = Polygon::new(line, Vec::new()).earcut_triangles_raw();
    let corner = |index: usize| cut.vertices[index];
    let mut loops: Vec<Vec<usize>> = Vec::new();
    let mut covered = 0.0;
    for triangle in cut.triangle_indices.chunks_exact(3) {
        let mut triangle = [triangle[0], triangle[1], triangle[2]];
        let twice = turn(
            corner(triangle[0]),
            corner(triangle[1]),
            corner(triangle[2]),
        );
        if twice < 0.0 {
            triangle.swap(1, 2);
        }
        if twice != 0.0 {
            covered += twice.abs() / 2.0;
            loops.push(triangle.to_vec());
        }
    }
    let whole = area(ring);
    if (covered - whole).abs() > SAME_AREA * whole {
        return vec![hull(ring)];
    }
    let mut first = 0;
    while first < loops.len() {
        let joined = (first + 1..loops.len()).find_map(|second| {
            let joined = join(&loops[first], &loops[second])?;
            let points: Vec<Point> = joined.iter().map(|&index| corner(index)).collect();
            is_convex(&points).then_some((second, joined))
        });
        match joined {
            Some((second, joined)) => {
                loops[first] = joined;
                loops.remove(second);
            }
            None => first += 1,
        }
    }
    let ring_of = |indices: &Vec<usize>| {
        let points: Vec<Point> = indices.iter().map(|&index| corner(index)).collect();
        hull(&points)
    };
    loops.iter().map(ring_of).collect()
}

/// Two loops as one, without the edge they share.
fn join(a: &[usize], b: &[usize]) -> Option<Vec<usize>> {
    for start in 0..a.len() {
        let (from, to) = (a[start], a[(start + 1) % a.len()]);
        let Some(back) = (0..b.len()).find(|&k| b[k] == to && b[(k + 1) % b.len()] == from) else {
            continue;
        };
        // a from `to` round to `from`, then b from after `from` round to before `to`
        let mut joined: Vec<usize> = (0..a.len()).map(|k| a[(start + 1 + k) % a.len()]).collect();
        joined.extend((2..b.len()).map(|k| b[(back + k) % b.len()]));
        return Some(joined);
    }
    None
}

fn is_convex(ring: &[Point]) -> bool {
    let many = ring.len();
    (0..many).all(|k| turn(ring[k], ring[(k + 1) % many], ring[(k + 2) % many]) >= 0.0)
}

/// The convex hull, without points on its edges.
pub(crate) fn hull(points: &[Point]) -> Vec<Point> {
    let points: MultiPoint<f64> = points
        .iter()
        .map(|&[x, y]| geo::point! { x: x, y: y })
        .collect();
    let mut ring: Vec<Point> = points
        .convex_hull()
        .exterior_coords_iter()
        .map(|at| [at.x, at.y])
        .collect();
    ring.pop();
    ring
}

/// The Minkowski sum of a and of b turned half round: where b's origin may not lie, seen from
/// a's. Each corner is one corner of a less one of b, so that it is rounded once.
pub(crate) fn difference(a: &[Point], b: &[Point]) -> Vec<Point> {
    let b: Vec<Point> = b.iter().map(|&[x, y]| [-x, -y]).collect();
    let lowest = |ring: &[Point]| {
        let below = |&i: &usize, &j: &usize| {
            ring[i][1]
                .total_cmp(&ring[j][1])
                .then(ring[i][0].total_cmp(&ring[j][0]))
        };
        (0..ring.len()).min_by(below).unwrap_or(0)
    };
    let (from_a, from_b) = (lowest(a), lowest(&b));
    let (mut i, mut j) = (0, 0);
    let mut sum = Vec::with_capacity(a.len() + b.len());
    while i < a.len() || j < b.len() {
        let (p, q) = (a[(from_a + i) % a.len()], b[(from_b + j) % b.len()]);
        sum.push([p[0] + q[0], p[1] + q[1]]);
        let (p2, q2) = (a[(from_a + i + 1) % a.len()], b[(from_b + j + 1) % b.len()]);
        let (u, v) = ([p2[0] - p[0], p2[1] - p[1]], [q2[0] - q[0], q2[1] - q[1]]);
        let left = u[0] * v[1] - u[1] * v[0];
        let (step_a, step_b) = (i < a.len(), j < b.len());
        // the edge that comes first by direction; both where they are parallel
        if step_a && (!step_b || left >= 0.0) {
            i += 1;
        }
        if step_b && (!step_a || left <= 0.0) {
            j += 1;
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use geo::polygon;

    #[test]
    fn pieces_are_convex_and_cover_a_plus() {
        let plus = polygon![
            (x: 0., y: 0.), (x: 2., y: 0.), (x: 2., y: -2.), (x: 4., y: -2.),
            (x: 4., y: 0.), (x: 6., y: 0.), (x: 6., y: 2.), (x: 4., y: 2.),
            (x: 4., y: 4.), (x: 2., y: 4.), (x: 2., y: 2.), (x: 0., y: 2.),
        ];
        let ring = ring(&plus).unwrap();
        let pieces = pieces(&ring);
        assert!(pieces.len() <= 5, "{pieces:?}");
        assert!(pieces.iter().all(|piece| is_convex(piece)));
        let covered: f64 = pieces.iter().map(|piece| area(piece)).sum();
        assert!((covered - 20.0).abs() < 1e-12, "{covered}");
    }

    /// Area of A + B of two convex rings: A + B + 2 V(A, B); for a square of side s and a
    /// triangle, the mixed term is the triangle's width and height times s.
    #[test]
    fn the_sum_of_a_square_and_a_triangle_has_the_mixed_area() {
        let square = [[0.0, 0.0], [2.0, 0.0], [2.0, 2.0], [0.0, 2.0]];
        let triangle = [[1.0, 1.0], [4.0, 1.0], [2.0, 5.0]];
        let sum = difference(&square, &triangle);
        assert!((area(&sum) - (4.0 + 6.0 + 2.0 * 3.0 + 2.0 * 4.0)).abs() < 1e-12);
    }

    #[test]
    fn what_crosses_itself_is_covered_by_its_hull() {
        let bow = polygon![(x: 0., y: 0.), (x: 4., y: 4.), (x: 4., y: 0.), (x: 0., y: 3.)];
        let ring = ring(&bow).unwrap();
        let pieces = pieces(&ring);
        let covered: f64 = pieces.iter().map(|piece| area(piece)).sum();
        assert!(covered >= 13.9, "{covered}");
    }
}
