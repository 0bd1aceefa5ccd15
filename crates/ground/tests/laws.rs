//! Laws of the room, on the oracle's yards and on hostile ones.
#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic)] // helpers of tests are tests

mod common;

use common::{at, cases, wanted};
use geo::{
    Area, Centroid, Coord, Distance, Euclidean, Geometry, LineString, MapCoords, Point, Polygon,
    Validation,
};
use ground::yard::*;
use ground::{Standard, ground};
use ledger::Ledger;
use proptest::prelude::*;
use std::sync::LazyLock;

static CASES: LazyLock<Vec<common::Case>> = LazyLock::new(cases);
static LEDGER: LazyLock<Ledger> =
    LazyLock::new(|| Ledger::shipped().expect("the shipped ledger reads"));

/// m²: 1e-6 m along the rims of the largest yard.
const RIM: f64 = 5e-4;

fn free(yard: &Yard, standard: Standard) -> f64 {
    ground(yard, standard, &LEDGER).value.free.unsigned_area()
}

fn moved(fixture: &Fixture, by: impl Fn(Coord<f64>) -> Coord<f64>) -> Fixture {
    let shape = match &fixture.shape {
        Footprint::Outline(outline) => Footprint::Outline(outline.map_coords(&by)),
        Footprint::Disc { centre, radius } => Footprint::Disc {
            centre: by(*centre),
            radius: *radius,
        },
        Footprint::Beam(a, b) => Footprint::Beam(by(*a), by(*b)),
    };
    let more = match &fixture.more {
        More::Slide { exit } => More::Slide {
            exit: exit.map(|exit| exit.map(&by)),
        },
        more => more.clone(),
    };
    Fixture {
        shape,
        more,
        ..fixture.clone()
    }
}

fn turned(yard: &Yard, by: f64) -> Yard {
    let (sin, cos) = libm::sincos(by);
    let turn = |at: Coord<f64>| Coord {
        x: at.x * cos - at.y * sin,
        y: at.x * sin + at.y * cos,
    };
    let mut yard = yard.clone();
    yard.boundary = yard.boundary.map_coords(turn);
    yard.edges
        .iter_mut()
        .for_each(|edge| edge.line = edge.line.map_coords(turn));
    yard.surfaces
        .iter_mut()
        .for_each(|s| s.outline = s.outline.map_coords(turn));
    yard.fixtures = yard
        .fixtures
        .iter()
        .map(|fixture| moved(fixture, turn))
        .collect();
    yard.doors
        .iter_mut()
        .for_each(|door| door.jambs = door.jambs.map(turn));
    yard.gates
        .iter_mut()
        .for_each(|gate| gate.posts = gate.posts.map(turn));
    yard
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Another fixture takes ground and gives none. (Doors are left out: a house may tell
    /// on which side of a door the yard lies; and walks, which may find no way any more.)
    #[test]
    fn a_fixture_never_enlarges_free_ground(
        i in 0..500_usize,
        j in 0..500_usize,
        k in 0..40_usize,
    ) {
        let mut yard = CASES[i].yard.clone();
        let standard = CASES[i].standard;
        yard.doors.clear();
        yard.gates.clear();
        let Some(other) = CASES[j].yard.fixtures.get(k) else { return Ok(()) };
        let before = free(&yard, standard);
        let [from, to] = [&CASES[j].yard, &yard].map(|yard| yard.boundary.centroid().unwrap().0);
        yard.fixtures.push(moved(other, |at| at - from + to));
        let after = free(&yard, standard);
        prop_assert!(after <= before + RIM, "{before} m2, and with {other:?} {after}");
    }

    /// The frame is the survey's choice. (Discs are left out: their corners keep to the
    /// frame, within the bound that the oracle checks.)
    #[test]
    fn turning_the_yard_turns_the_answer(i in 0..500_usize, by in -4.0..4.0_f64) {
        let mut yard = CASES[i].yard.clone();
        yard.fixtures.retain(|fixture| {
            !matches!(fixture.shape, Footprint::Disc { .. }) && fixture.is != FixtureKind::TyreSwing
        });
        let [one, other] = [yard.clone(), turned(&yard, by)].map(|yard| {
            ground(&yard, CASES[i].standard, &LEDGER).value
        });
        let [free, blocked] = [
            [&one, &other].map(|ground| ground.free.unsigned_area()),
            [&one, &other].map(|ground| {
                ground.blocked.iter().map(|patch| patch.polygon.unsigned_area()).sum()
            }),
        ];
        prop_assert!((free[0] - free[1]).abs() <= RIM, "{free:?}");
        prop_assert!((blocked[0] - blocked[1]).abs() <= 20.0 * RIM, "{blocked:?}");
    }

    /// Whatever comes in: an answer, valid, with the reason when there is none.
    #[test]
    fn nothing_that_comes_in_breaks_the_room(
        boundary in prop::collection::vec(odd_place(), 0..9),
        fixtures in prop::collection::vec(odd_fixture(), 0..8),
        jambs in prop::collection::vec((odd_place(), odd_place(), prop::option::of(0..3_usize)), 0..4),
        width in odd_number(),
        square in any::<bool>(),
    ) {
        let corners = match square {
            true => vec![at([0.0, 0.0]), at([20.0, 0.0]), at([20.0, 15.0]), at([0.0, 15.0])],
            false => boundary,
        };
        let boundary = Polygon::new(LineString(corners), Vec::new());
        let doors = jambs.iter().enumerate().map(|(i, &(a, b, hinge))| Door {
            name: format!("door{i}"),
            jambs: [a, b],
            hinge,
            opens_out: i % 2 == 0,
            at: None,
        });
        let walk = |from: &str, to: &str| Wanted { width, ..wanted(from, to) };
        let yard = Yard {
            edges: vec![Edge { line: boundary.exterior().clone(), is: EdgeKind::Drop }],
            surfaces: vec![Surface {
                outline: boundary.clone(),
                is: SurfaceKind::Concrete,
                age_days: Some(3),
                condition: Some(Condition::Spalled),
                at: None,
            }],
            remarks: vec![Remark {
                outline: boundary.clone(),
                is: RemarkKind::Slope,
                says: None,
                at: None,
            }],
            boundary,
            fixtures,
            doors: doors.collect(),
            gates: Vec::new(),
            routes: vec![walk("door0", "door1"), walk("f", "door0"), walk("f", "f"), walk("", "x")],
            stands: Vec::new(),
        };
        for standard in [Standard::UsHandbook, Standard::EuropeanNorm] {
            let noted = ground(&yard, standard, &LEDGER);
            let ground = noted.value;
            let faultless = !note::any_error(&noted.notes);
            prop_assert!(ground.free.is_valid(), "{:?}", ground.free);
            for patch in &ground.blocked {
                prop_assert!(patch.polygon.is_valid(), "{patch:?}");
            }
            prop_assert!(!faultless || ground.yard.unsigned_area() > 0.0);
        }
    }
}

fn odd_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 0.1..6.0_f64,
        1 => prop::sample::select(vec![
            0.0, -1.0, 1e-9, 49.0, 1e4, 1e12, 1e300, f64::NAN, f64::INFINITY, f64::NEG_INFINITY,
        ]),
    ]
}

/// Mostly on a lattice, where corners repeat and lie in line.
fn odd_place() -> impl Strategy<Value = Coord<f64>> {
    let even = (0..6_i32, 0..6_i32).prop_map(|(x, y)| at([f64::from(x) * 4.0, f64::from(y) * 3.0]));
    let any = (-5.0..25.0_f64, -5.0..20.0_f64).prop_map(|(x, y)| at([x, y]));
    let odd = (odd_number(), odd_number()).prop_map(|(x, y)| at([x, y]));
    prop_oneof![6 => even, 4 => any, 1 => odd]
}

fn odd_fixture() -> impl Strategy<Value = Fixture> {
    use FixtureKind::*;
    let kind = prop::sample::select(vec![
        Slide, Swing, TyreSwing, Climber, Seesaw, Rocker, Roundabout, House, Tree, Building,
        Sandpit, Drain, Hydrant, Other,
    ]);
    let shape = prop_oneof![
        prop::collection::vec(odd_place(), 0..7)
            .prop_map(|ring| { Footprint::Outline(Polygon::new(LineString(ring), Vec::new())) }),
        (odd_place(), odd_number()).prop_map(|(centre, radius)| Footprint::Disc { centre, radius }),
        (odd_place(), odd_place()).prop_map(|(a, b)| Footprint::Beam(a, b)),
    ];
    let more = prop_oneof![
        Just(More::Nothing),
        (odd_place(), odd_place()).prop_map(|(a, b)| More::Slide { exit: Some([a, b]) }),
        (odd_number(), prop::option::of(odd_number())).prop_map(|(pivot, seat_top)| {
            More::Swing {
                pivot,
                seat: Seat::Bucket,
                seat_top,
            }
        }),
        odd_number().prop_map(|members| More::TyreSwing { members }),
        any::<bool>().prop_map(|standing| More::Rocker { standing }),
    ];
    (kind, shape, more, prop::option::of(odd_number())).prop_map(|(is, shape, more, height)| {
        let (base, top) = (None, height);
        Fixture {
            name: "f".to_owned(),
            is,
            shape,
            height,
            base,
            top,
            more,
            at: None,
        }
    })
}

/// No arc falls short: every piece of free ground keeps the true distance from what stands
/// still in it, measured, and not only at sampled points.
#[test]
fn free_ground_keeps_the_true_distance() {
    let foot = 0.3048;
    for (i, case) in CASES.iter().enumerate() {
        let ground = ground(&case.yard, case.standard, &LEDGER).value;
        for fixture in &case.yard.fixtures {
            let norm = match fixture.height.unwrap_or(3.0) {
                low if low <= 1.5 => 1.5,
                high => 2.0 / 3.0 * high + 0.5,
            };
            let us = case.standard == Standard::UsHandbook;
            let wanted = match fixture.is {
                FixtureKind::Climber | FixtureKind::Seesaw | FixtureKind::Slide => {
                    if us {
                        6.0 * foot
                    } else {
                        norm
                    }
                }
                FixtureKind::Roundabout => {
                    if us {
                        6.0 * foot
                    } else {
                        norm.max(2.0)
                    }
                }
                FixtureKind::Drain | FixtureKind::Cover | FixtureKind::Hydrant => 0.3,
                FixtureKind::Tree | FixtureKind::Bench | FixtureKind::Shed => 0.5,
                FixtureKind::Other => {
                    if us {
                        8.0 * foot
                    } else {
                        2.5
                    }
                }
                _ => continue,
            };
            let (body, radius) = match &fixture.shape {
                Footprint::Outline(outline) => (Geometry::Polygon(outline.clone()), 0.0),
                Footprint::Disc { centre, radius } => (Geometry::Point(Point(*centre)), *radius),
                Footprint::Beam(a, b) => (Geometry::LineString(LineString(vec![*a, *b])), 0.0),
            };
            for piece in &ground.free {
                let found = Euclidean.distance(&Geometry::Polygon(piece.clone()), &body) - radius;
                assert!(
                    found >= wanted - 1e-9,
                    "yard {i}: {found} m from {fixture:?}"
                );
            }
        }
    }
}
