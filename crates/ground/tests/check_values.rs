//! The handbook's and the norm's own figures, measured on the answer.
//!
//! Sources: CPSC325 (clear zones, feet), EN1176-1 (falling space), as restated in the
//! project's reference with their check values; 1 ft = 0.3048 m exactly.
#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic)] // helpers of tests are tests

use geo::{BoundingRect, Coord, LineString, Polygon};
use ground::result::{Blocked, Ground, Why};
use ground::shapes::OUTSIDE;
use ground::yard::*;
use ground::{Standard, ground};
use ledger::Ledger;

const FOOT: f64 = 0.3048;
/// Metres by which a zone may be larger: the grid's step and twice its snap.
const SAME: f64 = 1.1e-5;

fn at(x: f64, y: f64) -> Coord<f64> {
    Coord { x, y }
}

fn rectangle(x: f64, y: f64, wide: f64, high: f64) -> Polygon<f64> {
    let ring = vec![
        at(x, y),
        at(x + wide, y),
        at(x + wide, y + high),
        at(x, y + high),
    ];
    Polygon::new(LineString(ring), Vec::new())
}

fn fixture(is: FixtureKind, shape: Footprint, more: More, height: Option<f64>) -> Fixture {
    let name = "it".to_owned();
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

/// A yard of 60 by 60 m round the origin with one fixture in it.
fn answer(standard: Standard, fixture: Fixture) -> Ground {
    let yard = Yard {
        boundary: rectangle(-30.0, -30.0, 60.0, 60.0),
        edges: Vec::new(),
        surfaces: Vec::new(),
        fixtures: vec![fixture],
        doors: Vec::new(),
        gates: Vec::new(),
        routes: Vec::new(),
        stands: Vec::new(),
        remarks: Vec::new(),
    };
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    ground(&yard, standard, &ledger).value
}

fn zones(ground: &Ground) -> impl Iterator<Item = &Blocked> {
    ground
        .blocked
        .iter()
        .filter(|patch| patch.why == Why::ClearZone)
}

/// Low x, low y, high x, high y of a patch.
fn extent(patch: &Blocked) -> [f64; 4] {
    let rect = patch.polygon.bounding_rect().expect("a patch has corners");
    [rect.min().x, rect.min().y, rect.max().x, rect.max().y]
}

fn check(patch: &Blocked, wanted: [f64; 4], slack: f64) {
    let found = extent(patch);
    for (i, (found, wanted)) in found.into_iter().zip(wanted).enumerate() {
        let over = if i < 2 {
            wanted - found
        } else {
            found - wanted
        };
        assert!(
            (0.0..=slack).contains(&over),
            "side {i}: {found}, not {wanted} of {patch:?}"
        );
    }
}

fn swing(pivot: f64, seat: Seat, seat_top: Option<f64>) -> Fixture {
    let beam = Footprint::Beam(at(-1.5, 0.0), at(1.5, 0.0));
    fixture(
        FixtureKind::Swing,
        beam,
        More::Swing {
            pivot,
            seat,
            seat_top,
        },
        None,
    )
}

/// Belt seat, pivot 8 ft: 16 ft = 4.8768 m each way (zone.swing-factor).
#[test]
fn a_belt_swing_clears_twice_its_pivot_each_way() {
    let ground = answer(Standard::UsHandbook, swing(8.0 * FOOT, Seat::Belt, None));
    let path = zones(&ground)
        .find(|zone| zone.alone)
        .expect("a swing has a path");
    check(path, [-1.5, -4.8768, 1.5, 4.8768], SAME);
    // 6 ft at each side (zone.swing-sides)
    let sides = zones(&ground)
        .map(extent)
        .fold(0.0_f64, |far, side| far.max(side[2]));
    assert!((0.0..=SAME).contains(&(sides - 1.5 - 1.8288)), "{sides}");
}

/// Bucket seat, pivot 8 ft, seat top 1.5 ft: 13 ft = 3.9624 m each way.
#[test]
fn a_bucket_swing_clears_twice_from_pivot_to_seat() {
    let it = swing(8.0 * FOOT, Seat::Bucket, Some(1.5 * FOOT));
    let ground = answer(Standard::UsHandbook, it);
    let path = zones(&ground)
        .find(|zone| zone.alone)
        .expect("a swing has a path");
    check(path, [-1.5, -3.9624, 1.5, 3.9624], SAME);
}

/// Slide 4 ft high: exit 6 ft; 7 ft: 7 ft; 9 ft: 8 ft (zone.slide-exit-least, -most).
#[test]
fn a_slide_clears_its_height_between_six_and_eight_feet() {
    for (height, wanted) in [(4.0, 6.0), (6.0, 6.0), (7.0, 7.0), (8.0, 8.0), (9.0, 8.0)] {
        let exit = Some([at(2.0, 0.0), at(2.0, 0.5)]);
        let it = fixture(
            FixtureKind::Slide,
            Footprint::Outline(rectangle(0.0, 0.0, 2.0, 0.5)),
            More::Slide { exit },
            Some(height * FOOT),
        );
        let ground = answer(Standard::UsHandbook, it);
        let exit = zones(&ground)
            .find(|zone| zone.alone)
            .expect("a slide has an exit");
        check(exit, [2.0, 0.0, 2.0 + wanted * FOOT, 0.5], SAME);
        let round = zones(&ground).last().expect("and a zone all round");
        let six = 6.0 * FOOT;
        check(round, [-six, -six, 2.0 + six, 0.5 + six], OUTSIDE + SAME);
    }
}

/// Tyre swing, members 5 ft: 11 ft = 3.3528 m radius (zone.tyre-swing-add).
#[test]
fn a_tyre_swing_clears_its_members_and_six_feet() {
    let it = fixture(
        FixtureKind::TyreSwing,
        Footprint::Disc {
            centre: at(0.0, 0.0),
            radius: 0.2,
        },
        More::TyreSwing {
            members: 5.0 * FOOT,
        },
        None,
    );
    let ground = answer(Standard::UsHandbook, it);
    let disc = zones(&ground)
        .find(|zone| zone.alone)
        .expect("a tyre swing has a path");
    check(disc, [-3.3528, -3.3528, 3.3528, 3.3528], OUTSIDE + SAME);
}

/// Climber, seesaw, seated rocker and roundabout 6 ft; standing rocker 7 ft; what no
/// rule covers 8 ft, the widest that is drawn round anything still.
#[test]
fn what_stands_still_clears_six_feet_all_round() {
    let rocker = |standing| More::Rocker { standing };
    for (kind, more, feet) in [
        (FixtureKind::Climber, More::Nothing, 6.0),
        (FixtureKind::Seesaw, More::Nothing, 6.0),
        (FixtureKind::Rocker, rocker(false), 6.0),
        (FixtureKind::Rocker, rocker(true), 7.0),
        (FixtureKind::Roundabout, More::Nothing, 6.0),
        (FixtureKind::Other, More::Nothing, 8.0),
    ] {
        let outline = Footprint::Outline(rectangle(0.0, 0.0, 2.0, 1.0));
        let ground = answer(Standard::UsHandbook, fixture(kind, outline, more, None));
        let reach = feet * FOOT;
        let zone = zones(&ground).next().expect("equipment has a zone");
        check(
            zone,
            [-reach, -reach, 2.0 + reach, 1.0 + reach],
            OUTSIDE + SAME,
        );
    }
}

/// Falling space x(y): EN1176-1's table, exact values (zone.en-*).
#[test]
fn the_falling_space_follows_the_norm() {
    for (height, wanted) in [
        (0.6, 1.5),
        (1.0, 1.5),
        (1.5, 1.5),
        (2.0, 1.833_333_333),
        (2.5, 2.166_666_667),
        (3.0, 2.5),
    ] {
        let outline = Footprint::Outline(rectangle(0.0, 0.0, 2.0, 1.0));
        let it = fixture(FixtureKind::Climber, outline, More::Nothing, Some(height));
        let ground = answer(Standard::EuropeanNorm, it);
        let zone = zones(&ground).next().expect("a climber has a zone");
        check(
            zone,
            [-wanted, -wanted, 2.0 + wanted, 1.0 + wanted],
            OUTSIDE + SAME,
        );
    }
}

/// A height that is not told takes the norm's highest fall: 2.5 m; one over 3 m is told.
#[test]
fn unknown_heights_err_to_safety_and_high_ones_are_told() {
    let outline = || Footprint::Outline(rectangle(0.0, 0.0, 2.0, 1.0));
    let unknown = fixture(FixtureKind::Climber, outline(), More::Nothing, None);
    let ground = answer(Standard::EuropeanNorm, unknown);
    let zone = zones(&ground).next().expect("a climber has a zone");
    check(zone, [-2.5, -2.5, 4.5, 3.5], OUTSIDE + SAME);
}
