//! The yard as a polygon: area, which way round, whether it crosses itself.

use crate::model::{Place, cross, minus};
use crate::network::PointId;
use crate::result::Measured;

/// Signed area in m², positive for anticlockwise. Counted from the first corner: far from
/// the origin nothing is lost.
pub(crate) fn signed_area(ring: &[Place]) -> f64 {
    let Some(&first) = ring.first() else {
        return 0.0;
    };
    let from_first = |i: usize| minus(ring[i % ring.len()], first);
    0.5 * (0..ring.len())
        .map(|i| cross(from_first(i), from_first(i + 1)))
        .sum::<f64>()
}

/// Area of an anticlockwise boundary and its standard deviation by J C Jᵀ;
/// `covariance(a, b)` of coordinates 2 · point + axis.
pub(crate) fn area(
    at: &[Place],
    boundary: &[PointId],
    covariance: impl Fn(usize, usize) -> f64,
) -> Measured {
    let ring: Vec<Place> = boundary.iter().map(|&p| at[p]).collect();
    let n = ring.len();
    let slopes: Vec<(usize, f64)> = (0..n)
        .flat_map(|i| {
            let d = minus(ring[(i + 1) % n], ring[(i + n - 1) % n]);
            [
                (2 * boundary[i], 0.5 * d[1]),
                (2 * boundary[i] + 1, -0.5 * d[0]),
            ]
        })
        .collect();
    let variance: f64 = slopes
        .iter()
        .map(|&(a, x)| {
            slopes
                .iter()
                .map(|&(b, y)| x * y * covariance(a, b))
                .sum::<f64>()
        })
        .sum();
    Measured {
        value: signed_area(&ring),
        sigma: variance.max(0.0).sqrt(),
    }
}

/// Pairs of sides (by their first corner) that meet where they should not.
pub(crate) fn crossings(ring: &[Place]) -> Vec<(usize, usize)> {
    let n = ring.len();
    let side = |i: usize| (ring[i], ring[(i + 1) % n]);
    let mut found = Vec::new();
    for i in 0..n {
        for j in i + 1..n {
            let neighbours = j == i + 1 || (i == 0 && j == n - 1);
            let ((a, b), (c, d)) = (side(i), side(j));
            let meets = if neighbours {
                // They share a corner; only folding back on each other is wrong.
                let (corner, p, q) = if j == i + 1 { (b, a, d) } else { (a, b, c) };
                n > 2 && folded(corner, p, q)
            } else {
                meet(a, b, c, d)
            };
            if meets {
                found.push((i, j));
            }
        }
    }
    found
}

/// Whether the ways from `corner` to `p` and to `q` are one way.
fn folded(corner: Place, p: Place, q: Place) -> bool {
    let (a, b) = (minus(p, corner), minus(q, corner));
    cross(a, b) == 0.0 && a[0] * b[0] + a[1] * b[1] >= 0.0
}

/// Whether two segments cross at a place inside both.
pub(crate) fn crosses(a: Place, b: Place, c: Place, d: Place) -> bool {
    let side = |p: Place, q: Place, r: Place| cross(minus(q, p), minus(r, p));
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// Whether two segments share a place.
fn meet(a: Place, b: Place, c: Place, d: Place) -> bool {
    let side = |p: Place, q: Place, r: Place| cross(minus(q, p), minus(r, p));
    if crosses(a, b, c, d) {
        return true;
    }
    let (c_side, d_side) = (side(a, b, c), side(a, b, d));
    let (a_side, b_side) = (side(c, d, a), side(c, d, b));
    let on = |p: Place, q: Place, r: Place, s: f64| {
        s == 0.0
            && (p[0].min(q[0])..=p[0].max(q[0])).contains(&r[0])
            && (p[1].min(q[1])..=p[1].max(q[1])).contains(&r[1])
    };
    on(a, b, c, c_side) || on(a, b, d, d_side) || on(c, d, a, a_side) || on(c, d, b, b_side)
}

/// Whether a place lies inside the ring (on it: either).
pub(crate) fn inside(ring: &[Place], p: Place) -> bool {
    let mut inside = false;
    for i in 0..ring.len() {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        if (a[1] > p[1]) != (b[1] > p[1]) {
            let rises = b[1] > a[1];
            if (cross(minus(b, a), minus(p, a)) > 0.0) == rises {
                inside = !inside;
            }
        }
    }
    inside
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: reference page 2.5, J C Jᵀ with independent 10 mm coordinates.
    #[test]
    fn a_rectangle_of_20_by_12_is_known_to_0_233_square_metres() {
        let at = [[0.0, 0.0], [20.0, 0.0], [20.0, 12.0], [0.0, 12.0]];
        let area = area(&at, &[0, 1, 2, 3], |a, b| if a == b { 1e-4 } else { 0.0 });
        assert_eq!(area.value, 240.0);
        assert!((area.sigma - 0.233238).abs() < 5e-7);
    }

    #[test]
    fn a_bow_tie_crosses_itself_and_a_yard_does_not() {
        let yard = [[0.0, 0.0], [4.0, 0.0], [4.0, 2.0], [2.0, 1.0], [0.0, 2.0]];
        assert!(crossings(&yard).is_empty());
        assert!(inside(&yard, [1.0, 1.0]) && !inside(&yard, [2.0, 1.5]));
        let tie = [[0.0, 0.0], [4.0, 2.0], [4.0, 0.0], [0.0, 2.0]];
        assert_eq!(crossings(&tie), [(0, 2)]);
    }
}
