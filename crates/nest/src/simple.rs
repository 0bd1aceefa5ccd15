//! Fewer corners for outlines that have many: curves cut into short edges.
//!
//! Room is only ever added, so what keeps clear of the simpler outline keeps clear of the
//! true one. The box round the outline stays: what just fits in a sheet still does.

use crate::convex::{Point, area, turn};

/// Outlines of up to this many corners stay as they are. The work for a pair of parts grows with
/// the square of their hollow corners.
const KEPT: usize = 24;

/// Share of the outline's area that may be added in all.
const ADDED: f64 = 0.005;

/// One corner less, and the area that it costs.
struct Change {
    added: f64,
    /// Corner that goes, or the first of two that one takes the place of.
    at: usize,
    instead: Option<Point>,
}

/// The outline with hollows filled and blunt corners drawn to a point, the smallest first, down to
/// 24 corners or until half a per cent of its area was added.
pub(crate) fn simpler(ring: &[Point]) -> Vec<Point> {
    let mut ring = ring.to_vec();
    let mut spare = ADDED * area(&ring);
    while ring.len() > KEPT {
        let mut changes: Vec<Change> = (0..ring.len())
            .filter_map(|at| change(&ring, at))
            .filter(|change| change.added <= spare)
            .collect();
        changes.sort_by(|a, b| a.added.total_cmp(&b.added));
        let Some(change) = changes.into_iter().find(|change| is_clear(&ring, change)) else {
            break;
        };
        spare -= change.added;
        match change.instead {
            None => {
                ring.remove(change.at);
            }
            Some(tip) => {
                let next = (change.at + 1) % ring.len();
                ring[change.at] = tip;
                ring.remove(next);
            }
        }
    }
    ring
}

/// Corners before, at, after and one further.
fn four(ring: &[Point], at: usize) -> [Point; 4] {
    let many = ring.len();
    [many - 1, 0, 1, 2].map(|k| ring[(at + k) % many])
}

fn change(ring: &[Point], at: usize) -> Option<Change> {
    let [a, b, c, d] = four(ring, at);
    let (here, next) = (turn(a, b, c), turn(b, c, d));
    if here <= 0.0 {
        return Some(Change {
            added: -here / 2.0,
            at,
            instead: None,
        });
    }
    // two corners to the left: the edges before and after meet outside, unless they turn too far
    let (u, v) = ([b[0] - a[0], b[1] - a[1]], [d[0] - c[0], d[1] - c[1]]);
    let sine = u[0] * v[1] - u[1] * v[0];
    if next <= 0.0 || sine <= 0.0 {
        return None;
    }
    let along = ((c[0] - a[0]) * v[1] - (c[1] - a[1]) * v[0]) / sine;
    let tip = [a[0] + along * u[0], a[1] + along * u[1]];
    let inside = (0..2).all(|axis| {
        let values = ring.iter().map(|p| p[axis]);
        let (low, high) = values.fold((tip[axis], tip[axis]), |(low, high), value| {
            (value.min(low), value.max(high))
        });
        low < tip[axis] && tip[axis] < high
    });
    inside.then(|| Change {
        added: turn(b, tip, c) / 2.0,
        at,
        instead: Some(tip),
    })
}

/// Whether nothing else of the outline comes into the triangle that is added.
fn is_clear(ring: &[Point], change: &Change) -> bool {
    let many = ring.len();
    let [a, b, c, _] = four(ring, change.at);
    let (triangle, own) = match change.instead {
        None => ([a, c, b], [many - 1, 0, 1]),
        Some(tip) => ([b, tip, c], [0, 0, 1]),
    };
    let own = own.map(|k| (change.at + k) % many);
    // an edge that crosses a triangle without a corner in it must cross two of its sides
    let crosses = |p: Point, q: Point| {
        (0..3).any(|k| {
            let (r, s) = (triangle[k], triangle[(k + 1) % 3]);
            let apart = turn(p, q, r) * turn(p, q, s) > 0.0 || turn(r, s, p) * turn(r, s, q) > 0.0;
            !apart
        })
    };
    (0..many).all(|k| {
        let next = (k + 1) % many;
        own.contains(&k) || own.contains(&next) || !crosses(ring[k], ring[next])
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A disc with a bite, 150 corners: many hollow, more round.
    fn bitten() -> Vec<Point> {
        let on = |middle: f64, radius: f64, from: f64, to: f64, many: usize| {
            (0..many).map(move |k| {
                let angle = from + (to - from) * k as f64 / (many - 1) as f64;
                let (sin, cos) = libm::sincos(angle.to_radians());
                [middle + radius * cos, radius * sin]
            })
        };
        on(0.0, 1.0, 40.0, 320.0, 90)
            .chain(on(1.0, 0.7, 260.0, 100.0, 60))
            .collect()
    }

    #[test]
    fn a_curved_outline_loses_corners_and_only_gains_room() {
        let ring = bitten();
        let simple = simpler(&ring);
        assert!(simple.len() <= 50, "{}", simple.len());
        let (before, after) = (area(&ring), area(&simple));
        assert!(
            before <= after && after <= before * (1.0 + ADDED),
            "{before} {after}"
        );
        // no true corner lies outside by more than rounding: right of no edge of a piece near by
        let pieces = crate::convex::pieces(&simple);
        let holds = |p: &Point, piece: &Vec<Point>| {
            (0..piece.len()).all(|k| turn(piece[k], piece[(k + 1) % piece.len()], *p) >= -1e-12)
        };
        assert!(
            ring.iter()
                .all(|p| pieces.iter().any(|piece| holds(p, piece)))
        );
    }

    #[test]
    fn few_corners_and_the_box_stay() {
        let square = [
            [0.0, 0.0],
            [1.0, 0.0],
            [1.0, 1.0],
            [0.5, 0.999_999],
            [0.0, 1.0],
        ];
        assert_eq!(simpler(&square), square);
        let ring = bitten();
        let extremes = |ring: &[Point]| ring.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min);
        assert_eq!(extremes(&ring), extremes(&simpler(&ring)));
    }
}
