//! The odds of a route against the route itself.

use children::Side;
use marking::{Lane, LaneKind, Piece};

use super::*;
use crate::gait::Gait;
use crate::odds::{chance_now, grid, odds};
use crate::tread::tread;

fn row(flights: u32, gap: f64, radius: f64) -> Figure {
    chain(
        (0..=flights)
            .map(|i| disc((gap * f64::from(i), 0.0), radius))
            .collect(),
    )
}

/// A lane of one piece that lies straight on paper and bends for the model.
fn lane_of(radius: Option<f64>) -> Figure {
    let piece = Piece {
        length: 6.0,
        radius,
    };
    Figure {
        lanes: vec![Lane {
            kind: LaneKind::Corridor,
            line: LineString::from(vec![(0.0, 0.0), (6.0, 0.0)]),
            width: 0.9,
            pieces: vec![piece],
        }],
        ..figure(Vec::new())
    }
}

/// pi of the kept route is clears q^contacts, whatever q is; the route is the child's own.
#[test]
fn odds_are_those_of_the_route_that_the_child_takes() {
    let (mut child, model) = (child(5.0), model());
    for (gait, contacts, figure) in [
        ("hop", 4.0, row(4, 0.30, 0.15)),
        ("jump", 3.0, row(3, 0.55, 0.20)),
        ("court", 4.0, row(4, 0.30, 0.15)),
        // two running strides, whose steadiness is the run's, and leaps
        ("leap", 2.0, row(4, 0.60, 0.20)),
    ] {
        let gait = Gait::named(gait).expect("a gait");
        let foot = Some(Side::Right);
        let skill = gait.can;
        for steady in [0.93, 0.5] {
            if let Some(ability) = child.skills.get_mut(&skill) {
                ability.steady = steady;
            }
            let footfall = tread(&figure, &child, &gait, foot, &model);
            let odds = odds(&figure, &child, &gait, foot, &model).expect("a route");
            let route = &footfall.routes[odds.route];
            if steady == 0.93 {
                assert!(
                    (odds.contacts - contacts).abs() < 1e-9,
                    "{gait:?} {}",
                    odds.contacts
                );
            }
            assert!(
                (odds.pi(200, steady) - route.pi_0).abs() < 1e-6,
                "{}",
                gait.name
            );
            assert_eq!(
                chance_now(&figure, &child, &gait, foot, &model),
                Some(odds.pi(200, steady))
            );
            assert!(odds.clears.windows(2).all(|pair| pair[0] <= pair[1]));
            assert_eq!(odds.clears.len(), grid().len());
        }
    }
}

/// On a bend a contact counts more than once: pi = W^n q^(sum of powers).
#[test]
fn a_bend_counts_a_contact_more_than_once() {
    let (child, model) = (child(5.0), model());
    let gait = Gait::named("gallop").expect("a gait");
    let of = |radius| odds(&lane_of(radius), &child, &gait, None, &model).expect("a lane");
    let (straight, bent) = (of(None), of(Some(0.4)));
    let footfall = tread(&lane_of(None), &child, &gait, None, &model);
    let n = footfall.routes[straight.route].n as f64;
    assert!((straight.contacts - n).abs() < 1e-9);
    assert!(bent.contacts > straight.contacts + 0.1);
    assert_eq!(straight.clears[0], straight.clears[400]);
}
