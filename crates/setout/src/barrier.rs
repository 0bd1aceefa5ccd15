//! What no tape can cross.

use geo::{Contains, Coord, Distance, Euclidean, Line, LineString, Point, Polygon};
use ground::yard::{EdgeKind, FixtureKind, Footprint, Yard};

/// Something in the way of tapes.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// As the user spells it; for an edge, its kind.
    pub name: String,
    /// Where it stands.
    pub shape: Barrier,
}

/// Where it stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Barrier {
    /// Ground that it covers.
    Solid(Polygon<f64>),
    /// A wall of no thickness.
    Wall(LineString<f64>),
}

/// What stands in a yard, and the walls, fences and hedges round it, a wall where nothing is
/// told. A tape passes over drains and covers and under beams.
pub fn obstacles(yard: &Yard) -> Vec<Obstacle> {
    let fixtures = yard.fixtures.iter().filter_map(|fixture| {
        let shape = match (&fixture.is, &fixture.shape) {
            (FixtureKind::Drain | FixtureKind::Cover, _) | (_, Footprint::Beam(..)) => return None,
            (_, Footprint::Outline(outline)) => outline.clone(),
            (_, Footprint::Disc { centre, radius }) => ground::shapes::disc(*centre, *radius),
        };
        Some(Obstacle {
            name: fixture.name.clone(),
            shape: Barrier::Solid(shape),
        })
    });
    let edges = ground::edges(yard).into_iter().filter_map(|(is, line)| {
        let name = match is {
            EdgeKind::Wall => "wall",
            EdgeKind::Fence => "fence",
            EdgeKind::Hedge => "hedge",
            EdgeKind::Kerb | EdgeKind::Drop | EdgeKind::Open => return None,
        };
        Some(Obstacle {
            name: name.to_owned(),
            shape: Barrier::Wall(line),
        })
    });
    fixtures.chain(edges).collect()
}

impl Obstacle {
    /// Whether a straight tape would have to give way by more than `slack` metres.
    pub(crate) fn bars(&self, tape: Line<f64>, slack: f64) -> bool {
        match &self.shape {
            Barrier::Solid(polygon) => runs_through(polygon, tape, slack),
            Barrier::Wall(line) => line.lines().any(|wall| crosses(wall, tape, slack)),
        }
    }
}

/// Whether some part of the tape lies deeper inside than `slack`. Depth changes no faster
/// than one goes, so steps may be as long as what is left to `slack`.
fn runs_through(polygon: &Polygon<f64>, tape: Line<f64>, slack: f64) -> bool {
    let way = tape.end - tape.start;
    let long = libm::hypot(way.x, way.y);
    let least = (slack / 4.0).max(1e-3);
    let mut gone = 0.0;
    while gone <= long {
        let here = Point::from(tape.start + way * (gone / long.max(f64::MIN_POSITIVE)));
        let edge = std::iter::once(polygon.exterior())
            .chain(polygon.interiors())
            .map(|ring| Euclidean.distance(&here, ring))
            .fold(f64::INFINITY, f64::min);
        let depth = if polygon.contains(&here) { edge } else { -edge };
        if depth > slack {
            return true;
        }
        gone += (slack - depth).max(least);
    }
    false
}

/// Whether the tape passes from one side of a wall to the other, both ends farther off it
/// than `slack`; up to it or along it, it does not.
fn crosses(wall: Line<f64>, tape: Line<f64>, slack: f64) -> bool {
    let [start, end] = off(wall, tape);
    let [from, to] = off(tape, wall);
    start.min(end) < -slack && start.max(end) > slack && from.min(to) <= 0.0 && from.max(to) >= 0.0
}

/// Metres of another line's ends left of a line.
fn off(line: Line<f64>, other: Line<f64>) -> [f64; 2] {
    let way: Coord<f64> = line.end - line.start;
    let long = libm::hypot(way.x, way.y).max(f64::MIN_POSITIVE);
    [other.start, other.end].map(|at| {
        let to = at - line.start;
        (way.x * to.y - way.y * to.x) / long
    })
}

#[cfg(test)]
mod tests {
    use geo::{coord, polygon};
    use ground::yard::{Edge, Fixture, More};

    use super::*;

    fn tape(from: (f64, f64), to: (f64, f64)) -> Line<f64> {
        Line::new(coord! { x: from.0, y: from.1 }, coord! { x: to.0, y: to.1 })
    }

    #[test]
    fn a_tape_may_run_along_a_shed_or_from_its_corner_but_not_through() {
        let shed = Obstacle {
            name: "shed".to_owned(),
            shape: Barrier::Solid(polygon![
                (x: 2.0, y: 0.0), (x: 4.0, y: 0.0), (x: 4.0, y: 2.0), (x: 2.0, y: 2.0)
            ]),
        };
        for (from, to, barred) in [
            ((0.0, 1.0), (6.0, 1.0), true),
            ((0.0, 0.0), (6.0, 0.0), false),
            ((0.0, 0.015), (6.0, 0.015), false),
            ((0.0, 0.03), (6.0, 0.03), true),
            ((2.0, 2.0), (0.0, 5.0), false),
            ((2.0, 2.0), (5.0, 0.5), true),
            ((3.0, 1.0), (9.0, 9.0), true),
            ((0.0, 1.9), (2.3, 2.2), false),
            ((5.0, 5.0), (5.0, 5.0), false),
        ] {
            assert_eq!(
                shed.bars(tape(from, to), 0.02),
                barred,
                "{from:?} to {to:?}"
            );
        }
    }

    #[test]
    fn a_wall_is_not_crossed_but_touched() {
        let wall = Obstacle {
            name: "wall".to_owned(),
            shape: Barrier::Wall(LineString::from(vec![(0.0, 0.0), (5.0, 0.0), (5.0, 5.0)])),
        };
        for (from, to, barred) in [
            ((1.0, 1.0), (1.0, -1.0), true),
            ((1.0, 1.0), (1.0, 0.0), false),
            ((1.0, 1.0), (6.0, 1.0), true),
            ((6.0, 1.0), (6.0, -1.0), false),
            ((0.0, 0.0), (5.0, 0.0), false),
        ] {
            assert_eq!(
                wall.bars(tape(from, to), 0.02),
                barred,
                "{from:?} to {to:?}"
            );
        }
    }

    #[test]
    fn a_tape_passes_over_drains_and_under_beams() {
        let outline = || {
            Footprint::Outline(polygon![
                (x: 1.0, y: 1.0), (x: 2.0, y: 1.0), (x: 2.0, y: 2.0), (x: 1.0, y: 2.0)
            ])
        };
        let beam = Footprint::Beam(coord! { x: 1.0, y: 1.0 }, coord! { x: 4.0, y: 1.0 });
        let disc = Footprint::Disc {
            centre: coord! { x: 5.0, y: 5.0 },
            radius: 0.3,
        };
        let fixtures = [
            ("grate", FixtureKind::Drain, outline()),
            ("swing", FixtureKind::Swing, beam),
            ("oak", FixtureKind::Tree, disc),
            ("bench", FixtureKind::Bench, outline()),
        ]
        .map(|(name, is, shape)| Fixture {
            name: name.to_owned(),
            is,
            shape,
            height: None,
            base: None,
            top: None,
            more: More::Nothing,
            at: None,
        });
        let side = |is: EdgeKind, from: (f64, f64), to: (f64, f64)| Edge {
            line: LineString::from(vec![from, to]),
            is,
        };
        let yard = Yard {
            boundary: polygon![(x: 0.0, y: 0.0), (x: 9.0, y: 0.0), (x: 9.0, y: 9.0)],
            edges: vec![
                side(EdgeKind::Kerb, (9.0, 0.0), (9.0, 9.0)),
                side(EdgeKind::Hedge, (9.0, 9.0), (0.0, 0.0)),
            ],
            surfaces: Vec::new(),
            fixtures: fixtures.to_vec(),
            doors: Vec::new(),
            gates: Vec::new(),
            routes: Vec::new(),
            stands: Vec::new(),
            remarks: Vec::new(),
        };
        let names: Vec<String> = obstacles(&yard).into_iter().map(|one| one.name).collect();
        assert_eq!(names, ["oak", "bench", "hedge", "wall"]);
        // the side that nobody speaks of
        assert!(obstacles(&yard)[3].bars(tape((3.0, 1.0), (3.0, -1.0)), 0.02));
        let oak = &obstacles(&yard)[0];
        assert!(oak.bars(tape((4.0, 5.0), (6.0, 5.0)), 0.02));
        assert!(
            oak.bars(tape((5.0, 5.0), (6.0, 5.0)), 0.02),
            "from the middle of a trunk"
        );
        assert!(!oak.bars(tape((4.0, 5.5), (6.0, 5.5)), 0.02));
    }
}
