//! The walk against a visibility graph made by brute force: all pairs of corners, every
//! rim looked at, Dijkstra over the lot.

use geo::{Coord, Intersects, MultiPolygon, Polygon};
use i_overlay::i_float::int::point::IntPoint;
use proptest::prelude::*;

use super::{Wide, shortest, turn};
use crate::grid::Grid;
use crate::shapes;

/// Share of the length by which two sums of the same steps may differ.
const SAME: f64 = 1e-9;

struct Rims<'a> {
    ground: &'a MultiPolygon<f64>,
    grid: &'a Grid,
    sides: Vec<[IntPoint; 2]>,
}

impl Rims<'_> {
    fn of<'a>(grid: &'a Grid, ground: &'a MultiPolygon<f64>) -> Rims<'a> {
        let rings = ground
            .0
            .iter()
            .flat_map(|p| std::iter::once(p.exterior()).chain(p.interiors()));
        let sides = rings
            .flat_map(|ring| ring.lines().collect::<Vec<_>>())
            .map(|side| [grid.point(side.start), grid.point(side.end)])
            .collect();
        Rims {
            ground,
            grid,
            sides,
        }
    }

    /// Whether the straight way between two points stays on the ground, rims included.
    fn open(&self, a: IntPoint, b: IntPoint) -> bool {
        let [wide_a, wide_b] = [a, b].map(Wide::from);
        let mut on_way = vec![a, b];
        for side in &self.sides {
            let [p, q] = side.map(Wide::from);
            let across = turn(wide_a, wide_b, p).signum() * turn(wide_a, wide_b, q).signum() < 0
                && turn(p, q, wide_a).signum() * turn(p, q, wide_b).signum() < 0;
            if across {
                return false;
            }
            if turn(wide_a, wide_b, p) == 0 && within(a, b, side[0]) {
                on_way.push(side[0]);
            }
        }
        on_way.sort_by_key(|at| {
            (i64::from(at.x) - i64::from(a.x)).abs() + (i64::from(at.y) - i64::from(a.y)).abs()
        });
        on_way.dedup();
        on_way.windows(2).all(|step| {
            let along_rim = self.sides.iter().any(|&[p, q]| {
                [p, q]
                    .iter()
                    .all(|&end| turn(wide_a, wide_b, end.into()) == 0)
                    && within(p, q, step[0])
                    && within(p, q, step[1])
            });
            let [from, to] = [step[0], step[1]].map(|at| self.grid.metres(at));
            along_rim || self.ground.intersects(&((from + to) / 2.0))
        })
    }

    fn shortest(&self, from: IntPoint, to: IntPoint) -> Option<f64> {
        let mut points = vec![from, to];
        points.extend(self.sides.iter().map(|side| side[0]));
        points.sort_by_key(|at| (at.x, at.y));
        points.dedup();
        let at = |wanted: IntPoint| points.iter().position(|&at| at == wanted).unwrap();
        let (start, goal) = (at(from), at(to));
        let mut walked = vec![f64::INFINITY; points.len()];
        let mut done = vec![false; points.len()];
        walked[start] = 0.0;
        loop {
            let open = (0..points.len()).filter(|&i| !done[i] && walked[i].is_finite());
            let here = open.min_by(|&a, &b| walked[a].total_cmp(&walked[b]))?;
            if here == goal {
                return Some(walked[goal]);
            }
            done[here] = true;
            for next in 0..points.len() {
                if !done[next] && self.open(points[here], points[next]) {
                    let way = self.grid.metres(points[next]) - self.grid.metres(points[here]);
                    walked[next] = walked[next].min(walked[here] + libm::hypot(way.x, way.y));
                }
            }
        }
    }
}

fn within(a: IntPoint, b: IntPoint, at: IntPoint) -> bool {
    (a.x.min(b.x)..=a.x.max(b.x)).contains(&at.x) && (a.y.min(b.y)..=a.y.max(b.y)).contains(&at.y)
}

fn rectangle(x: f64, y: f64, wide: f64, high: f64, turn: f64) -> Polygon<f64> {
    let (sin, cos) = libm::sincos(turn);
    let at = |u: f64, v: f64| Coord {
        x: x + u * cos - v * sin,
        y: y + u * sin + v * cos,
    };
    shapes::closed(vec![
        at(0.0, 0.0),
        at(wide, 0.0),
        at(wide, high),
        at(0.0, high),
    ])
}

/// Half lie askew, half on a lattice, where corners meet and sides run on.
fn obstacle() -> impl Strategy<Value = Polygon<f64>> {
    prop_oneof![
        (0.0..18.0, 0.0..13.0, 0.3..5.0, 0.3..5.0, 0.0..6.3)
            .prop_map(|(x, y, w, h, turn)| rectangle(x, y, w, h, turn)),
        (0..18_u8, 0..13_u8, 1..6_u8, 1..6_u8)
            .prop_map(|(x, y, w, h)| { rectangle(x.into(), y.into(), w.into(), h.into(), 0.0) }),
    ]
}

fn spot() -> impl Strategy<Value = Coord<f64>> {
    prop_oneof![
        (0.0..20.0, 0.0..15.0).prop_map(|(x, y)| Coord { x, y }),
        (0..=20_u8, 0..=15_u8).prop_map(|(x, y)| Coord {
            x: x.into(),
            y: y.into()
        }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]
    #[test]
    fn no_walk_is_shorter_than_ours(
        obstacles in prop::collection::vec(obstacle(), 0..14),
        from in spot(),
        to in spot(),
    ) {
        let yard = rectangle(0.0, 0.0, 20.0, 15.0, 0.0);
        let grid = Grid::over(yard.exterior().coords().copied()).unwrap();
        let ground = grid.minus([&yard], &obstacles);
        let ends = [from, to].map(|at| grid.round(at));
        let inside = ends.iter().all(|end| ground.intersects(end));
        let ours = shortest(&grid, &ground, from, to);
        if !inside {
            prop_assert!(ours.is_none(), "{ours:?}");
            return Ok(());
        }
        let rims = Rims::of(&grid, &ground);
        let best = rims.shortest(grid.point(from), grid.point(to));
        let long = ours.as_ref().map(|walk| {
            walk.windows(2).map(|step| shapes::length(step[1] - step[0])).sum::<f64>()
        });
        match (long, best) {
            (None, None) => {}
            // Where rims touch in a corner, brute force slips through a gap of no width.
            (Some(long), Some(best)) if corners_touch(&ground) => {
                prop_assert!(long >= best * (1.0 - SAME), "{long}, shorter than {best}");
            }
            (Some(long), Some(best)) => {
                prop_assert!((long - best).abs() <= SAME * best.max(1.0), "{long}, not {best}");
            }
            (None, Some(_)) => prop_assert!(corners_touch(&ground), "{best:?}"),
            (Some(_), None) => prop_assert!(false, "{ours:?} where there is no way"),
        }
        for step in ours.iter().flat_map(|walk| walk.windows(2)) {
            prop_assert!(rims.open(grid.point(step[0]), grid.point(step[1])), "{step:?}");
        }
    }
}

fn corners_touch(ground: &MultiPolygon<f64>) -> bool {
    let corners: Vec<_> = ground
        .0
        .iter()
        .flat_map(|p| std::iter::once(p.exterior()).chain(p.interiors()))
        .flat_map(|ring| ring.0[1..].to_vec())
        .collect();
    (1..corners.len()).any(|i| corners[..i].contains(&corners[i]))
}

/// Round one square the walk bends at one corner: two sides of a known triangle.
#[test]
fn a_walk_round_a_square_bends_at_its_corner() {
    let yard = rectangle(0.0, 0.0, 10.0, 10.0, 0.0);
    let grid = Grid::over(yard.exterior().coords().copied()).unwrap();
    let ground = grid.minus([&yard], &[rectangle(4.0, 4.0, 2.0, 4.0, 0.0)]);
    let at = |x, y| Coord { x, y };
    let walk = shortest(&grid, &ground, at(1.0, 5.0), at(9.0, 5.0)).unwrap();
    assert_eq!(
        walk,
        [at(1.0, 5.0), at(4.0, 4.0), at(6.0, 4.0), at(9.0, 5.0)]
    );
}
