//! A point taped to one side of a line says where it is, not how the yard lies: the order
//! of the boundary decides that.
#![allow(clippy::expect_used, reason = "a test's helpers fail loudly")]

use std::collections::BTreeMap;

use ledger::Ledger;
use survey::network::{Datum, Kind, Network, Reading, Tape, Walked};
use survey::result::Survey;

/// Metres. A tape reads to 1e-3, and the figures below are rounded to it.
const NEAR: f64 = 0.01;

/// Four corners, 12 m by 8 m, every side and diagonal taped, and points taped by offsets
/// from A to B.
fn survey(walked: Walked, offsets: &[(f64, f64)]) -> Survey {
    let tape = Tape {
        constant: 0.003,
        per_metre: 0.0003,
    };
    let reading = |kind, value: f64| Reading {
        kind,
        value,
        sigma: tape.sigma(value.abs()),
        at: None,
    };
    let sides = [
        (0, 1, 12.0),
        (1, 2, 8.001),
        (2, 3, 11.998),
        (3, 0, 8.0),
        (0, 2, 14.422),
        (1, 3, 14.421),
    ];
    let mut readings: Vec<Reading> = sides
        .into_iter()
        .map(|(from, to, value)| reading(Kind::Distance { from, to }, value))
        .collect();
    let mut points: Vec<String> = ["A", "B", "C", "D"].map(str::to_owned).to_vec();
    for (along, left) in offsets {
        let point = points.len();
        points.push(format!("M{point}"));
        readings.push(reading(
            Kind::Along {
                from: 0,
                to: 1,
                point,
            },
            *along,
        ));
        readings.push(reading(
            Kind::Left {
                from: 0,
                to: 1,
                point,
            },
            *left,
        ));
    }
    let network = Network {
        points,
        readings,
        datum: Datum::Line {
            origin: 0,
            towards: 1,
        },
        boundary: vec![0, 1, 2, 3],
        walked,
        start: BTreeMap::new(),
        at: None,
    };
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    survey::adjust(&network, &ledger).value.expect("a survey")
}

#[test]
fn an_offset_does_not_turn_the_yard_over() {
    let many: Vec<(f64, f64)> = (0..9)
        .map(|n| (f64::from(n) + 1.5, f64::from(n) - 3.25))
        .collect();
    for (walked, y) in [(Walked::Anticlockwise, 8.0), (Walked::Clockwise, -8.0)] {
        for offsets in [
            &[(5.0, 4.0)][..],
            &[(5.0, -4.0)],
            &[(5.0, 4.0), (9.0, 0.5)],
            &many,
        ] {
            let survey = survey(walked, offsets);
            for corner in [2, 3] {
                let at = &survey.points[corner];
                assert!(
                    (at.y - y).abs() < NEAR,
                    "{walked:?}, {offsets:?}: {} at {}",
                    at.name,
                    at.y
                );
            }
            for (point, (along, left)) in survey.points[4..].iter().zip(offsets) {
                let off = libm::hypot(point.x - along, point.y - left);
                assert!(
                    off < NEAR && !point.loose,
                    "{walked:?}, {offsets:?}: {point:?}"
                );
            }
        }
    }
}
