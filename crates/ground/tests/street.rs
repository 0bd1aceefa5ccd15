//! Tern Street (invented) and small yards: what is told, where walks go, what is seen.
#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic)] // helpers of tests are tests

mod common;

use common::{at, polygon, tern_street, wanted};
use geo::{Area, Distance, Euclidean, Intersects, Point};
use ground::result::{Ground, Why};
use ground::yard::*;
use ground::{Standard, ground, sees};
use ledger::Ledger;
use note::{Fact, Noted};

fn answer(yard: &Yard) -> Noted<Ground> {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    ground(yard, Standard::UsHandbook, &ledger)
}

fn keys(noted: &Noted<Ground>) -> Vec<&'static str> {
    noted.notes.iter().map(|note| note.what.key).collect()
}

fn fixture(name: &str, is: FixtureKind, ring: [f64; 4], height: Option<f64>) -> Fixture {
    let [x, y, w, h] = ring;
    let outline = polygon(&[[x, y], [x + w, y], [x + w, y + h], [x, y + h]]);
    let shape = Footprint::Outline(outline);
    let (name, more) = (name.to_owned(), More::Nothing);
    Fixture {
        name,
        is,
        shape,
        height,
        base: None,
        top: None,
        more,
        at: None,
    }
}

/// An open yard of 30 by 20 m, all sand: no paint, and nothing to tell of it.
fn meadow(fixtures: Vec<Fixture>) -> Yard {
    let boundary = polygon(&[[0.0, 0.0], [30.0, 0.0], [30.0, 20.0], [0.0, 20.0]]);
    Yard {
        edges: vec![Edge {
            line: boundary.exterior().clone(),
            is: EdgeKind::Open,
        }],
        surfaces: vec![surface(boundary.clone(), SurfaceKind::Sand, None)],
        boundary,
        fixtures,
        doors: Vec::new(),
        gates: Vec::new(),
        routes: Vec::new(),
        stands: Vec::new(),
        remarks: Vec::new(),
    }
}

fn surface(outline: geo::Polygon<f64>, is: SurfaceKind, age_days: Option<i64>) -> Surface {
    Surface {
        outline,
        is,
        age_days,
        condition: None,
        at: None,
    }
}

fn door(name: &str, jambs: [[f64; 2]; 2], hinge: Option<usize>, opens_out: bool) -> Door {
    Door {
        name: name.to_owned(),
        jambs: jambs.map(at),
        hinge,
        opens_out,
        at: None,
    }
}

#[test]
fn tern_street_has_its_walks_and_keeps_them_clear() {
    let yard = tern_street();
    let Noted {
        value: ground,
        notes,
    } = answer(&yard);
    assert!(!note::any_error(&notes), "{notes:?}");
    assert!(
        ground.free.unsigned_area() > 60.0,
        "{} m2",
        ground.free.unsigned_area()
    );
    for route in &ground.routes {
        let line = route.line.as_ref().expect("there is a way");
        let straight = Euclidean.distance(Point(line.0[0]), Point(line.0[line.0.len() - 1]));
        assert!(
            route.length >= straight && route.length < 1.4 * straight,
            "{route:?}"
        );
        for fixture in &yard.fixtures {
            let (Footprint::Outline(outline), true) =
                (&fixture.shape, fixture.is != FixtureKind::Drain)
            else {
                continue;
            };
            let apart = Euclidean.distance(line, outline);
            assert!(
                apart >= route.width / 2.0,
                "{apart} m from {}",
                fixture.name
            );
        }
        for free in &ground.free {
            let apart = Euclidean.distance(line, free);
            assert!(
                apart >= route.width / 2.0 - 1e-5,
                "painted {apart} m from the walk"
            );
        }
    }
}

/// A straight walk between two doors that face each other is as long as the yard is wide.
#[test]
fn doors_that_face_each_other_have_a_straight_walk() {
    let mut yard = meadow(Vec::new());
    yard.doors = vec![
        door("west", [[0.0, 10.0], [0.0, 11.0]], Some(0), true),
        door("east", [[30.0, 10.0], [30.0, 11.0]], Some(0), false),
    ];
    yard.routes = vec![wanted("west", "east")];
    let ground = answer(&yard).value;
    assert_eq!(ground.routes[0].length, 30.0);
}

/// Walls 2 m apart let 1.525 m through; 1 m apart they do not, and the note says 1 m.
#[test]
fn a_gap_too_narrow_is_measured() {
    let wall =
        |y: f64, high: f64| fixture("wall", FixtureKind::Building, [14.0, y, 1.0, high], None);
    for (gap, passes) in [(2.0, true), (1.0, false), (0.0, false)] {
        let mut yard = meadow(vec![wall(-0.5, 10.5), wall(10.0 + gap, 11.0 - gap)]);
        yard.doors = vec![
            door("west", [[0.0, 4.0], [0.0, 5.0]], Some(0), true),
            door("east", [[30.0, 4.0], [30.0, 5.0]], Some(0), true),
        ];
        yard.routes = vec![wanted("west", "east")];
        let noted = answer(&yard);
        assert_eq!(noted.value.routes[0].line.is_some(), passes, "gap {gap}");
        let told = noted
            .notes
            .iter()
            .find(|note| note.what.key.starts_with("route-"));
        match told.map(|note| (note.what.key, note.what.facts.last())) {
            None => assert!(passes, "gap {gap}"),
            Some(("route-too-narrow", Some((_, Fact::Length(widest))))) => {
                assert!((0.97..=1.0).contains(widest), "gap {gap}: {widest}");
            }
            Some((key, _)) => assert_eq!((key, gap), ("route-none", 0.0)),
        }
    }
}

/// The walk goes round a swing's whole zone, not only round its beam.
#[test]
fn walks_keep_out_of_swing_zones() {
    let beam = Footprint::Beam(at([15.0, 4.0]), at([15.0, 7.0]));
    let more = More::Swing {
        pivot: 2.0,
        seat: Seat::Belt,
        seat_top: None,
    };
    let swing = Fixture {
        shape: beam,
        more,
        ..fixture("swing", FixtureKind::Swing, [0.0; 4], None)
    };
    let mut yard = meadow(vec![swing]);
    yard.doors = vec![
        door("west", [[0.0, 5.0], [0.0, 6.0]], Some(0), true),
        door("east", [[30.0, 5.0], [30.0, 6.0]], Some(0), true),
    ];
    yard.routes = vec![wanted("west", "east")];
    let ground = answer(&yard).value;
    let line = ground.routes[0].line.as_ref().expect("there is a way");
    for zone in ground.blocked.iter().filter(|patch| patch.alone) {
        let apart = Euclidean.distance(line, &zone.polygon);
        assert!(apart >= 1.525 / 2.0 - 1e-5, "{apart}");
    }
    assert!(ground.routes[0].length > 30.0);
}

/// A walk to a fixture ends at it and does not count it as an obstacle.
#[test]
fn a_walk_to_a_table_ends_at_the_table() {
    let mut yard = meadow(vec![fixture(
        "table",
        FixtureKind::Table,
        [20.0, 9.0, 2.0, 2.0],
        None,
    )]);
    yard.doors = vec![door("west", [[0.0, 9.5], [0.0, 10.5]], None, false)];
    yard.routes = vec![wanted("west", "table")];
    let route = &answer(&yard).value.routes[0];
    // 20 m to the table's side, less half the walk's width
    assert!((route.length - (20.0 - 0.7625)).abs() < 0.01, "{route:?}");
}

/// Out: pulled from the yard, 60 in deep, 18 in beyond the latch, and the leaf's quarter.
/// In: pushed, 48 in deep, no swing in the yard. Figures: ADA 404.2.4.
#[test]
fn a_door_has_its_floor_and_its_leaf() {
    for (out, deep, beyond) in [(true, 1.525, 0.455), (false, 1.22, 0.305)] {
        let mut yard = meadow(Vec::new());
        yard.doors = vec![door("hall", [[10.0, 0.0], [11.0, 0.0]], Some(0), out)];
        let ground = answer(&yard).value;
        let of = |why| ground.blocked.iter().filter(move |patch| patch.why == why);
        let holds = |why, x, y| of(why).any(|patch| patch.polygon.intersects(&at([x, y])));
        assert!(holds(Why::DoorFloor, 11.0 + beyond - 0.01, deep - 0.01));
        assert!(!holds(Why::DoorFloor, 11.0 + beyond + 0.01, 0.5));
        assert!(
            !holds(Why::DoorFloor, 9.84, 0.5),
            "beyond the hinge only the way out"
        );
        assert_eq!(of(Why::Swing).count(), usize::from(out));
        let leaf: f64 = of(Why::Swing)
            .map(|patch| patch.polygon.unsigned_area())
            .sum();
        let quarter = std::f64::consts::FRAC_PI_4;
        assert!(!out || (leaf >= quarter && leaf < quarter + 0.01), "{leaf}");
    }
}

/// New asphalt waits 30 days; rubber is not painted; old paint and paving are, and warn;
/// what lies over something else counts alone.
#[test]
fn surfaces_are_judged_and_told() {
    use SurfaceKind::*;
    for (is, age, share, key) in [
        (Asphalt, Some(29), 0.0, Some("surface-too-young")),
        (Asphalt, Some(30), 1.0, None),
        (Concrete, Some(2), 0.0, Some("surface-too-young")),
        (Rubber, Some(2000), 0.0, Some("surface-unless-maker-agrees")),
        (Grass, None, 0.0, None),
        (OldPaint, None, 1.0, Some("surface-test-first")),
        (Paving, None, 1.0, Some("surface-with-care")),
        (Sealer, None, 1.0, Some("surface-ask-maker")),
    ] {
        let mut yard = meadow(Vec::new());
        yard.surfaces.push(surface(yard.boundary.clone(), is, age));
        let noted = answer(&yard);
        let free = noted.value.free.unsigned_area() / 600.0;
        assert!((free - share).abs() < 1e-9, "{is:?} {age:?}: {free}");
        assert_eq!(keys(&noted), Vec::from_iter(key), "{is:?}");
    }
    let mut bare = meadow(Vec::new());
    bare.surfaces.clear();
    assert_eq!(keys(&answer(&bare)), ["surface-assumed"]);
}

/// 6 ft if both play surfaces are at most 30 in high, else 9 ft (CPSC325).
#[test]
fn neighbours_keep_six_or_nine_feet() {
    let climber =
        |x: f64, height| fixture("climber", FixtureKind::Climber, [x, 8.0, 2.0, 2.0], height);
    for (gap, heights, told) in [
        (1.9, [Some(0.7), Some(0.76)], false),
        (1.8, [Some(0.7), Some(0.76)], true),
        (1.9, [Some(0.7), Some(0.77)], true),
        (2.8, [Some(1.5), Some(2.0)], false),
        (2.7, [None, Some(0.5)], true),
    ] {
        let yard = meadow(vec![
            climber(8.0, heights[0]),
            climber(10.0 + gap, heights[1]),
        ]);
        let found = keys(&answer(&yard)).contains(&"equipment-too-near");
        assert_eq!(found, told, "{gap} m, {heights:?}");
    }
}

/// A climber's zone in a slide's exit is told; parallel slides may share.
#[test]
fn exits_are_not_shared_but_by_parallel_slides() {
    let slide = |y: f64| {
        let exit = Some([at([12.0, y]), at([12.0, y + 0.5])]);
        let more = More::Slide { exit };
        Fixture {
            more,
            ..fixture("slide", FixtureKind::Slide, [9.0, y, 3.0, 0.5], Some(1.2))
        }
    };
    let climber = fixture(
        "climber",
        FixtureKind::Climber,
        [15.5, 8.0, 2.0, 2.0],
        Some(1.0),
    );
    assert!(keys(&answer(&meadow(vec![slide(9.0), climber]))).contains(&"zones-overlap"));
    let side_by_side = meadow(vec![slide(9.0), slide(10.0)]);
    assert!(!keys(&answer(&side_by_side)).contains(&"zones-overlap"));
}

#[test]
fn a_shed_in_a_zone_and_a_fence_through_one_are_told() {
    let climber = fixture(
        "climber",
        FixtureKind::Climber,
        [1.0, 8.0, 2.0, 2.0],
        Some(1.0),
    );
    let shed = fixture("shed", FixtureKind::Shed, [4.0, 8.0, 2.0, 2.0], Some(2.0));
    let mut yard = meadow(vec![climber, shed]);
    assert_eq!(keys(&answer(&yard)), ["zone-obstructed"]);
    yard.edges[0].is = EdgeKind::Fence;
    assert_eq!(
        keys(&answer(&yard)),
        ["zone-obstructed", "zone-cut-by-edge"]
    );
}

#[test]
fn staff_see_over_a_bench_but_not_through_a_shed_or_a_wall() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let box_of = |is, height| fixture("box", is, [10.0, 5.0, 2.0, 2.0], height);
    let (west, east) = (at([5.0, 6.0]), at([20.0, 6.0]));
    for (is, height, seen) in [
        (FixtureKind::Shed, None, false),
        (FixtureKind::Shed, Some(1.0), true),
        (FixtureKind::Climber, Some(1.01), false),
        (FixtureKind::Bench, None, true),
        (FixtureKind::Swing, Some(2.4), true),
    ] {
        let yard = meadow(vec![box_of(is, height)]);
        assert_eq!(sees(&yard, west, east, &ledger), seen, "{is:?} {height:?}");
        assert!(
            sees(&yard, west, at([9.9, 6.0]), &ledger),
            "{is:?}: before it"
        );
        assert!(
            sees(&yard, west, at([20.0, 15.0]), &ledger),
            "{is:?}: past it"
        );
    }
    // round the inner corner of an L of walls
    let mut yard = meadow(Vec::new());
    yard.edges.clear();
    yard.boundary = polygon(&[
        [0.0, 0.0],
        [20.0, 0.0],
        [20.0, 8.0],
        [8.0, 8.0],
        [8.0, 20.0],
        [0.0, 20.0],
    ]);
    assert!(!sees(&yard, at([4.0, 19.0]), at([19.0, 4.0]), &ledger));
    assert!(sees(&yard, at([4.0, 19.0]), at([4.0, 1.0]), &ledger));
}

#[test]
fn a_boundary_that_crosses_itself_is_told_and_nothing_is_made() {
    let mut yard = meadow(Vec::new());
    yard.boundary = polygon(&[[0.0, 0.0], [30.0, 20.0], [30.0, 0.0], [0.0, 18.0]]);
    let noted = answer(&yard);
    assert_eq!(keys(&noted), ["yard-crosses-itself"]);
    assert!(note::any_error(&noted.notes) && noted.value.free.0.is_empty());
}

#[test]
fn the_answer_is_the_same_twice() {
    let yard = tern_street();
    assert_eq!(answer(&yard), answer(&yard));
}
