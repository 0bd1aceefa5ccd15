//! Lanes by hand, from the page's formulas.

use children::Side;
use marking::{Lane, LaneKind, Piece};

use super::*;
use crate::gait::Gait;
use crate::tread::{Footfall, tread};

fn lane(kind: LaneKind, width: f64, pieces: Vec<Piece>) -> Lane {
    let length: f64 = pieces.iter().map(|piece| piece.length).sum();
    Lane {
        kind,
        line: LineString::from(vec![(0.0, 0.0), (length, 0.0)]),
        width,
        pieces,
    }
}

fn straight(kind: LaneKind, width: f64, length: f64) -> Lane {
    lane(
        kind,
        width,
        vec![Piece {
            length,
            radius: None,
        }],
    )
}

fn treads(lane: Lane, child: &Child, gait: &str, foot: Option<Side>) -> Footfall {
    let figure = Figure {
        lanes: vec![lane],
        ..figure(Vec::new())
    };
    tread(
        &figure,
        child,
        &Gait::named(gait).expect("a gait"),
        foot,
        &model(),
    )
}

/// P(|X| < half) for X ~ Normal(0, sigma²), by the error function.
fn within(half: f64, sigma: f64) -> f64 {
    libm::erf(half / sigma / std::f64::consts::SQRT_2)
}

#[test]
fn a_child_goes_as_many_whole_strides_as_there_are_and_may_stop_at_any() {
    let child = child(5.0);
    // 0.8 x .70 m = .56 m: 17 gallops in 9.6 m, and 10 in exactly 5.6 m.
    for (length, strides) in [(9.6, 17), (5.6, 10), (0.55, 0)] {
        let footfall = treads(
            straight(LaneKind::Corridor, 0.9, length),
            &child,
            "gallop",
            Some(Side::Left),
        );
        assert_eq!(footfall.routes.len(), strides);
        for (number, route) in footfall.routes.iter().enumerate() {
            assert_eq!((route.n, route.lane), (number + 1, Some(0)));
            assert!(
                route
                    .contacts
                    .iter()
                    .all(|contact| contact.side() == Some(Side::Left))
            );
            let pi = libm::pow(0.94, route.n as f64);
            assert!((route.pi_0 - pi).abs() < 1e-6, "{} not {pi}", route.pi_0);
            assert!((route.p - 0.92 * pi).abs() < 1e-6);
        }
    }
    // .94^2 = .88 to .94^11 = .51 are well pitched; the longest gives the most contacts.
    let footfall = treads(
        straight(LaneKind::Corridor, 0.9, 9.6),
        &child,
        "gallop",
        Some(Side::Left),
    );
    assert_eq!(footfall.pitch.well, 1.0);
    assert_eq!(
        footfall.chosen.map(|route| footfall.routes[route].n),
        Some(11)
    );
    let good: f64 = (1..=11).map(|n| libm::pow(0.94, f64::from(n))).sum();
    assert!((footfall.good_contacts[0].contacts - good).abs() < 1e-6);
    assert!((footfall.pass_s.expect("a time") - 11.0 / 1.8).abs() < 1e-6);
    assert!((footfall.walk_back_s.expect("a time") - (11.0 * 0.56 / 1.08 + 2.0)).abs() < 1e-6);
}

#[test]
fn a_foot_stays_in_a_corridor_and_on_a_line() {
    let child = child(4.0);
    let (half_foot, sigma) = (0.065 * 1.023 / 2.0, 0.06 / 2.0);
    for (kind, width, half) in [
        (LaneKind::Corridor, 0.15, 0.075 - half_foot),
        (LaneKind::Corridor, 0.06, 0.0),
        (LaneKind::Line, 0.05, 0.025 + half_foot),
    ] {
        let footfall = treads(straight(kind, width, 4.0), &child, "walk", None);
        let wanted = 0.995 * within(half, sigma);
        assert!(
            (footfall.routes[0].pi_0 - wanted).abs() < 1e-6,
            "{kind:?} {width}"
        );
    }
}

#[test]
fn a_bend_costs_steadiness_from_the_grip_on() {
    let child = child(5.0);
    let bend = |radius| {
        let pieces = vec![
            Piece {
                length: 0.6,
                radius: None,
            },
            Piece {
                length: 4.0,
                radius: Some(radius),
            },
        ];
        treads(lane(LaneKind::Corridor, 0.9, pieces), &child, "run", None)
    };
    // Stride .584 m, 3.5 a second: v = 2.044 m/s. The first contact is on the straight.
    let tight = libm::pow(0.99, 2.044 * 2.044 / (2.45 * 1.0));
    assert!((bend(1.0).routes[0].pi_0 - 0.99).abs() < 1e-6);
    assert!((bend(1.0).routes[2].pi_0 - 0.99 * tight * tight).abs() < 1e-6);
    assert!((bend(3.0).routes[2].pi_0 - 0.99 * 0.99 * 0.99).abs() < 1e-6);
}

#[test]
fn leaps_on_a_lane_follow_two_running_strides_and_land_on_the_foot_asked() {
    let child = child(6.0);
    for foot in [Side::Right, Side::Left] {
        let footfall = treads(
            straight(LaneKind::Corridor, 0.9, 5.0),
            &child,
            "leap",
            Some(foot),
        );
        // .68 + .68, then .752 each: four leaps end within 5 m.
        let flights: Vec<usize> = footfall.routes.iter().map(|route| route.n).collect();
        assert_eq!(flights, [3, 4, 5, 6]);
        assert_eq!(footfall.routes[0].contacts[3].side(), Some(foot));
    }
    // A court does not say what comes next without its squares.
    assert!(
        treads(
            straight(LaneKind::Corridor, 0.9, 5.0),
            &child,
            "court",
            None
        )
        .routes
        .is_empty()
    );
}

#[test]
fn wheels_need_their_breadth_and_their_turn() {
    let child = Child {
        means: Means::Wheels,
        ..child(5.0)
    };
    let wide = treads(straight(LaneKind::Corridor, 0.9, 4.0), &child, "hop", None);
    assert!((wide.routes[0].pi_0 - 0.93 * within(0.125, 0.025)).abs() < 1e-6);
    // Pushes stand in for the hop, and for either foot.
    let wide = treads(straight(LaneKind::Corridor, 0.9, 12.0), &child, "hop", None);
    let feet: Vec<_> = wide
        .curves
        .iter()
        .map(|curve| (curve.skill, curve.foot))
        .collect();
    assert_eq!(
        feet,
        [
            (Skill::Hop, Some(Side::Right)),
            (Skill::Hop, Some(Side::Left))
        ]
    );
    let narrow = treads(straight(LaneKind::Corridor, 0.6, 4.0), &child, "hop", None);
    assert!(narrow.routes.iter().all(|route| route.p == 0.0));
    let bend = |radius| {
        let pieces = vec![
            Piece {
                length: 1.0,
                radius: None,
            },
            Piece {
                length: 3.0,
                radius: Some(radius),
            },
        ];
        treads(
            lane(LaneKind::Corridor, 0.9, pieces),
            &child,
            "gallop",
            None,
        )
        .routes
        .len()
    };
    assert_eq!((bend(0.8), bend(0.6)), (7, 1));
}

#[test]
fn wheels_do_not_turn_on_a_spot() {
    let child = Child {
        means: Means::Walker,
        ..child(5.0)
    };
    let corner = |turn: f64| {
        let mut cells = vec![disc((0.0, 0.0), 0.3), disc((0.8, 0.0), 0.3)];
        cells.push(disc(
            (0.8 + 0.8 * libm::cos(turn), 0.8 * libm::sin(turn)),
            0.3,
        ));
        let takes = [Takes::Left, Takes::One, Takes::Both];
        cells
            .iter_mut()
            .zip(takes)
            .for_each(|(cell, takes)| cell.takes = takes);
        tread(
            &chain(cells),
            &child,
            &Gait::named("jump").expect("a gait"),
            None,
            &model(),
        )
        .routes
        .len()
    };
    // .75 tan(phi/2) <= .4 up to 56.1 degrees.
    assert_eq!(
        (corner(f64::to_radians(55.0)), corner(f64::to_radians(57.0))),
        (1, 0)
    );
}
