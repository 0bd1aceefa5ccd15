//! Convex pieces, their Minkowski sums, and when two figures touch.
//!
//! A figure moved by t meets an obstacle exactly when t lies in the sum of the obstacle and
//! the figure turned inside out. For convex pieces that sum is convex again, so "does it
//! fit" is one look at a few half-planes: exact, for any t, with no grid in it.

use geo::Area;
use geo::{ConvexHull, Coord, Polygon, TriangulateEarcut};

/// A convex ring, anticlockwise, not closed; two corners make a segment.
pub(crate) type Ring = Vec<Coord<f64>>;

/// Metres that pieces are kept apart, so that a plan's rounding never makes them overlap.
pub(crate) const GAP: f64 = 1e-4;

/// A hull that covers at most this much more than its polygon stands for it.
const HULL_WASTE: f64 = 0.02;

/// A polygon as convex pieces that cover it: its hull where that wastes little, else
/// triangles, joined as long as they stay convex (after Hertel and Mehlhorn).
pub(crate) fn pieces(polygon: &Polygon<f64>) -> Vec<Ring> {
    let hull = polygon.convex_hull();
    let area = polygon.unsigned_area();
    if hull.unsigned_area() <= area * (1.0 + HULL_WASTE) {
        return vec![open(&hull)];
    }
    parts(polygon)
}

/// A polygon as convex pieces that cover it and nothing more.
pub(crate) fn parts(polygon: &Polygon<f64>) -> Vec<Ring> {
    let mut pieces: Vec<Ring> = polygon
        .earcut_triangles_iter()
        .map(|triangle| open(&triangle.to_polygon().convex_hull()))
        .collect();
    let mut one = 0;
    while one < pieces.len() {
        let joined = (one + 1..pieces.len())
            .find_map(|other| Some((other, join(&pieces[one], &pieces[other])?)));
        match joined {
            Some((other, ring)) => {
                pieces[one] = ring;
                pieces.remove(other);
            }
            None => one += 1,
        }
    }
    pieces
}

/// Two convex rings that share an edge as one, where that is convex too.
fn join(a: &Ring, b: &Ring) -> Option<Ring> {
    let (here, there) = (0..a.len()).find_map(|i| {
        let (from, to) = (a[i], a[(i + 1) % a.len()]);
        let there = (0..b.len()).find(|j| b[*j] == to && b[(j + 1) % b.len()] == from)?;
        Some((i, there))
    })?;
    let mut ring: Ring = (1..=a.len()).map(|k| a[(here + k) % a.len()]).collect();
    ring.extend((2..b.len()).map(|k| b[(there + k) % b.len()]));
    let many = ring.len();
    let turns = |k: usize| {
        let (p, q, r) = (ring[k], ring[(k + 1) % many], ring[(k + 2) % many]);
        (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x)
    };
    (0..many).all(|k| turns(k) >= 0.0).then_some(ring)
}

/// The corners of a polygon's outer ring, the last not repeated.
pub(crate) fn open(polygon: &Polygon<f64>) -> Ring {
    let mut ring: Ring = polygon.exterior().coords().copied().collect();
    ring.pop();
    ring
}

/// Half-planes n . p <= c, n of length 1; the inside of a convex ring.
#[derive(Clone, Debug)]
pub(crate) struct Halves {
    sides: Vec<(Coord<f64>, f64)>,
    pub(crate) low: Coord<f64>,
    pub(crate) high: Coord<f64>,
}

impl Halves {
    /// Whether p lies outside by more than [`GAP`].
    pub(crate) fn clear_of(&self, p: Coord<f64>) -> bool {
        p.x < self.low.x - GAP
            || p.x > self.high.x + GAP
            || p.y < self.low.y - GAP
            || p.y > self.high.y + GAP
            || self
                .sides
                .iter()
                .any(|(n, c)| n.x * p.x + n.y * p.y > c + GAP)
    }

    /// How deep p lies inside; negative or 0 outside.
    pub(crate) fn depth(&self, p: Coord<f64>) -> f64 {
        self.sides
            .iter()
            .map(|(n, c)| c - n.x * p.x - n.y * p.y)
            .fold(f64::INFINITY, f64::min)
    }

    /// The places deeper inside than `by`; `None` where the box of the ring shows that there
    /// are none.
    pub(crate) fn within(mut self, by: f64) -> Option<Halves> {
        let inward = Coord { x: by, y: by };
        (self.low, self.high) = (self.low + inward, self.high - inward);
        for side in &mut self.sides {
            side.1 -= by;
        }
        (self.low.x <= self.high.x && self.low.y <= self.high.y).then_some(self)
    }

    /// The stretches of lines y = const that are not clear.
    pub(crate) fn stretches(&self) -> Stretches {
        let mut stretches = Stretches {
            box_x: (self.low.x - GAP, self.high.x + GAP),
            low: Chain::default(),
            high: Chain::default(),
            flat: (self.low.y - GAP, self.high.y + GAP),
        };
        for (n, c) in &self.sides {
            let line = ((c + GAP) / n.x, n.y / n.x);
            if n.x > 0.0 {
                stretches.high.lines.push(line);
            } else if n.x < 0.0 {
                stretches.low.lines.push(line);
            } else {
                let y = (c + GAP) / n.y;
                if n.y > 0.0 {
                    stretches.flat.1 = stretches.flat.1.min(y);
                } else {
                    stretches.flat.0 = stretches.flat.0.max(y);
                }
            }
        }
        // The ring runs up on the right and down on the left.
        stretches.low.lines.reverse();
        stretches
    }
}

/// A convex body as the lines x = a - b y that hold it on either side.
pub(crate) struct Stretches {
    box_x: (f64, f64),
    low: Chain,
    high: Chain,
    flat: (f64, f64),
}

/// Lines x = a - b y along one side of a convex body from below, and the one that holds it
/// at the last y asked for.
#[derive(Default)]
struct Chain {
    lines: Vec<(f64, f64)>,
    here: usize,
}

impl Chain {
    /// Where the side lies at y. Up a convex side the line that holds it only moves on, so
    /// the others need not be looked at.
    ///
    /// - `beyond`: whether one x holds the body more closely than another
    fn at(&mut self, y: f64, beyond: fn(f64, f64) -> bool) -> Option<f64> {
        let x = |line: &(f64, f64)| line.0 - line.1 * y;
        let mut held = x(self.lines.get(self.here)?);
        while let Some(next) = self.lines.get(self.here + 1).map(x) {
            if beyond(held, next) {
                break;
            }
            (held, self.here) = (next, self.here + 1);
        }
        Some(held)
    }
}

impl Stretches {
    /// The stretch at y; `None` where all is clear. Each y is at least the one before.
    pub(crate) fn at(&mut self, y: f64) -> Option<(f64, f64)> {
        if y < self.flat.0 || y > self.flat.1 {
            return None;
        }
        /// Metres: two sides that are one but for the last bit must not hide a third.
        const SAME: f64 = 1e-9;
        let low = self.low.at(y, |held, next| held > next + SAME);
        let high = self.high.at(y, |held, next| held < next - SAME);
        let low = low.map_or(self.box_x.0, |low| low.max(self.box_x.0));
        let high = high.map_or(self.box_x.1, |high| high.min(self.box_x.1));
        (low <= high).then_some((low, high))
    }
}

/// Where a figure `piece` meets `obstacle` when it is moved by t: obstacle + (-piece).
pub(crate) fn meets(obstacle: &[Coord<f64>], piece: &[Coord<f64>]) -> Halves {
    let inside_out: Ring = piece.iter().map(|p| -*p).collect();
    let ring = sum(obstacle, &inside_out);
    let mut sides = Vec::with_capacity(ring.len());
    for (a, b) in pairs(&ring) {
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let length = (dx * dx + dy * dy).sqrt();
        // An edge shorter than a thousandth of the gap tells nothing of its direction.
        if length > 1e-7 {
            let n = Coord {
                x: dy / length,
                y: -dx / length,
            };
            sides.push((n, n.x * a.x + n.y * a.y));
        }
    }
    let fold = |of: fn(&Coord<f64>) -> f64, pick: fn(f64, f64) -> f64, start: f64| {
        ring.iter().map(of).fold(start, pick)
    };
    Halves {
        sides,
        low: Coord {
            x: fold(|p| p.x, f64::min, f64::INFINITY),
            y: fold(|p| p.y, f64::min, f64::INFINITY),
        },
        high: Coord {
            x: fold(|p| p.x, f64::max, f64::NEG_INFINITY),
            y: fold(|p| p.y, f64::max, f64::NEG_INFINITY),
        },
    }
}

/// Minkowski sum of two convex rings: their edges, in order of direction.
fn sum(a: &[Coord<f64>], b: &[Coord<f64>]) -> Ring {
    let lowest = |ring: &[Coord<f64>]| {
        (0..ring.len())
            .min_by(|i, j| {
                (ring[*i].y, ring[*i].x)
                    .partial_cmp(&(ring[*j].y, ring[*j].x))
                    .unwrap_or(std::cmp::Ordering::Equal)
            })
            .unwrap_or(0)
    };
    let (start_a, start_b) = (lowest(a), lowest(b));
    let (mut i, mut j) = (0, 0);
    let mut ring = Vec::with_capacity(a.len() + b.len());
    while i < a.len() || j < b.len() {
        let (p, q) = (a[(start_a + i) % a.len()], b[(start_b + j) % b.len()]);
        ring.push(p + q);
        let (edge_a, edge_b) = (
            a[(start_a + i + 1) % a.len()] - p,
            b[(start_b + j + 1) % b.len()] - q,
        );
        let cross = edge_a.x * edge_b.y - edge_a.y * edge_b.x;
        if i >= a.len() {
            j += 1;
        } else if j >= b.len() {
            i += 1;
        } else if cross > 0.0 || (cross == 0.0 && !opposite(edge_a, edge_b)) {
            i += 1;
            if cross == 0.0 {
                j += 1;
            }
        } else if cross < 0.0 {
            j += 1;
        } else if edge_a.y > 0.0 || (edge_a.y == 0.0 && edge_a.x > 0.0) {
            i += 1;
        } else {
            j += 1;
        }
    }
    ring
}

fn opposite(a: Coord<f64>, b: Coord<f64>) -> bool {
    a.x * b.x + a.y * b.y < 0.0
}

/// Each corner and the next, round the ring.
pub(crate) fn pairs(ring: &[Coord<f64>]) -> impl Iterator<Item = (Coord<f64>, Coord<f64>)> + '_ {
    ring.iter()
        .copied()
        .zip(ring.iter().copied().cycle().skip(1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use geo::{Intersects, LineString, MultiPoint, Translate, coord};
    use proptest::prelude::*;

    /// Hulls of a few points, flat ones among them.
    fn any_hull() -> impl Strategy<Value = Polygon<f64>> {
        prop::collection::vec((-30_i32..30, -30_i32..30), 3..12).prop_filter_map("flat", |points| {
            let points: Vec<_> = points
                .iter()
                .map(|(x, y)| (f64::from(*x) / 10.0, f64::from(*y) / 10.0))
                .collect();
            let hull = MultiPoint::from(points).convex_hull();
            (hull.unsigned_area() > 0.05).then_some(hull)
        })
    }

    fn shifted(polygon: &Polygon<f64>, by: Coord<f64>) -> Polygon<f64> {
        polygon.translate(by.x, by.y)
    }

    proptest! {
        /// Against geo: where the sum says clear the moved figure meets nothing, and where
        /// it lies deep they do meet.
        #[test]
        fn clear_places_are_those_where_nothing_meets(
            one in any_hull(), other in any_hull(), x in -80_i32..80, y in -80_i32..80,
        ) {
            let by = coord! { x: f64::from(x) / 10.0, y: f64::from(y) / 10.0 };
            let body = meets(&open(&one), &open(&other));
            let moved = shifted(&other, by);
            if body.clear_of(by) {
                prop_assert!(!one.intersects(&moved));
            } else if body.depth(by) > GAP {
                prop_assert!(one.intersects(&moved));
            }
        }

        /// The same for a wall, which is a piece of two corners.
        #[test]
        fn a_wall_is_met_where_geo_says(figure in any_hull(), a in (-30_i32..30, -30_i32..30), b in (-30_i32..30, -30_i32..30)) {
            prop_assume!(a != b);
            let corner = |(x, y): (i32, i32)| coord! { x: f64::from(x) / 10.0 + 0.05, y: f64::from(y) / 10.0 };
            let wall = [corner(a), corner(b)];
            let body = meets(&wall, &open(&figure));
            let origin = coord! { x: 0.0, y: 0.0 };
            let line = LineString::new(wall.to_vec());
            if body.clear_of(origin) {
                prop_assert!(!figure.intersects(&line));
            } else if body.depth(origin) > GAP {
                prop_assert!(figure.intersects(&line));
            }
        }

        /// A side walked once, from below, holds what all half-planes together hold.
        #[test]
        fn stretches_are_where_places_are_not_clear(one in any_hull(), other in any_hull()) {
            let body = meets(&open(&one), &open(&other));
            let mut stretches = body.stretches();
            for row in -400..400 {
                let y = f64::from(row) * 0.05;
                let stretch = stretches.at(y);
                for column in -40..40 {
                    let x = f64::from(column) * 0.5;
                    let held = stretch.is_some_and(|(low, high)| low <= x && x <= high);
                    let at = coord! { x: x, y: y };
                    // on the rim itself the last bits decide
                    if (body.depth(at) + GAP).abs() > 1e-6 {
                        prop_assert_eq!(held, !body.clear_of(at), "{:?}", at);
                    }
                }
            }
        }

        /// Pieces cover their polygon and waste little.
        #[test]
        fn pieces_cover_an_l(w in 1_u32..9, h in 1_u32..9) {
            let (w, h) = (f64::from(w), f64::from(h));
            let corners = vec![(0.0, 0.0), (w + 1.0, 0.0), (w + 1.0, 1.0), (1.0, 1.0), (1.0, h + 1.0), (0.0, h + 1.0)];
            let shape = Polygon::new(LineString::from(corners), Vec::new());
            let whole: f64 = pieces(&shape)
                .iter()
                .map(|ring| Polygon::new(LineString::new(ring.clone()), Vec::new()).unsigned_area())
                .sum();
            prop_assert!(whole >= shape.unsigned_area() - 1e-9);
            prop_assert!(whole <= shape.unsigned_area() * (1.0 + HULL_WASTE) + 1e-9);
        }
    }
}
