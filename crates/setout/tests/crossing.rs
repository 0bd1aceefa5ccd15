//! Two tapes against the reference page, section 2.5 (derived there).
#![allow(clippy::expect_used, clippy::panic, clippy::approx_constant)] // figures as printed

mod common;

use geo::coord;
use setout::{Laid, Question, axes, crossing, setout};
use survey::network::Tape;
use unit::Units;

/// Half the last printed digit.
fn near(ours: f64, printed: f64, digits: i32) -> bool {
    (ours - printed).abs() <= 0.5 * libm::pow(10.0, -f64::from(digits)) + 1e-12
}

/// Case S1, control taken as exact.
#[test]
fn s1_is_the_reference_s() {
    let bases = [coord! { x: 0.0, y: 0.0 }, coord! { x: 23.995253, y: 0.0 }];
    let ours = crossing(bases, coord! { x: 10.0, y: 7.0 }).expect("they cross");
    assert!(near(ours.lengths[0], 12.206556, 6), "{ours:?}");
    assert!(near(ours.lengths[1], 15.648230, 6), "{ours:?}");
    assert!(near(ours.angle_deg, 118.435156, 6), "{ours:?}");
    let covariance = ours.covariance([0.005, 0.005]);
    assert!(near(covariance[0][0].sqrt(), 0.004135, 6), "{covariance:?}");
    assert!(near(covariance[1][1].sqrt(), 0.006896, 6), "{covariance:?}");
    let ellipse = axes(&covariance, 1.0);
    assert!(near(ellipse.a, 0.006908, 6), "{ellipse:?}");
    assert!(near(ellipse.b, 0.004115, 6), "{ellipse:?}");
    assert!(near(ellipse.theta_deg, 94.2096, 4), "{ellipse:?}");
}

/// S1 through the door: the same tapes, printed in steps, and the ellipse of 95 %.
#[test]
fn s1_comes_out_of_the_room_in_whole_steps() {
    let points = [("A", 0.0, 0.0), ("B", 23.995253, 0.0)];
    let survey = common::surveyed(&points, vec![0.0; 16]);
    let figure = common::figure(&[coord! { x: 10.0, y: 7.0 }]);
    for (step, lengths) in [(0.005, [12.205, 15.65]), (1e-6, [12.206556, 15.64823])] {
        let question = Question {
            survey: &survey,
            obstacles: &[],
            laid: &[Laid {
                name: "spot",
                figure: &figure,
            }],
            tape: Tape {
                constant: 0.005,
                per_metre: 0.0,
            },
            units: Units::Metres,
            step,
        };
        let made = setout(&question, &common::ledger());
        let [point] = made.value.points.as_slice() else {
            panic!("{:?}", made.value.points);
        };
        assert_eq!(point.tapes.map(|held| held.length), lengths);
        assert_eq!(point.tapes.map(|held| held.base), [0, 1]);
        assert_eq!(point.third, None);
        if step < 0.001 {
            // 2.447747: root of the chi-square quantile 5.9915 of section 2.4
            assert!(
                near(point.ellipse.a / 5.9915_f64.sqrt(), 0.006908, 6),
                "{point:?}"
            );
            assert!(
                near(point.ellipse.b / 5.9915_f64.sqrt(), 0.004115, 6),
                "{point:?}"
            );
        } else {
            assert!(common::between(point.at, point.lands) < 0.005, "{point:?}");
        }
        let keys: Vec<&str> = made.notes.iter().map(|note| note.what.key).collect();
        assert_eq!(keys, ["setout-no-third"]);
    }
}

/// The table of equal tapes: axes by the angle at the mark, for one sigma.
#[test]
fn tapes_of_equal_sigma_make_the_ellipses_of_the_table() {
    for (angle, larger, smaller, rms) in [
        (15.0, 5.417355, 0.713208, 5.464102),
        (20.0, 4.072066, 0.718015, 4.134884),
        (30.0, 2.732051, 0.732051, 2.828427),
        (45.0, 1.847759, 0.765367, 2.000000),
        (60.0, 1.414214, 0.816497, 1.632993),
        (90.0, 1.000000, 1.000000, 1.414214),
    ] {
        for angle in [angle, 180.0 - angle] {
            let (sin, cos) = libm::sincos(f64::to_radians(angle));
            let bases = [
                coord! { x: 7.0, y: 0.0 },
                coord! { x: 11.0 * cos, y: 11.0 * sin },
            ];
            let ours = crossing(bases, coord! { x: 0.0, y: 0.0 }).expect("they cross");
            let covariance = ours.covariance([1.0, 1.0]);
            let ellipse = axes(&covariance, 1.0);
            assert!(near(ours.angle_deg, angle, 9), "{angle}: {ours:?}");
            assert!(near(ellipse.a, larger, 6), "{angle}: {ellipse:?}");
            assert!(near(ellipse.b, smaller, 6), "{angle}: {ellipse:?}");
            let ours = (covariance[0][0] + covariance[1][1]).sqrt();
            assert!(near(ours, rms, 6), "{angle}: {ours}");
        }
    }
}

#[test]
fn tapes_in_one_line_do_not_cross() {
    let at = coord! { x: 1.0, y: 1.0 };
    for bases in [
        [coord! { x: 0.0, y: 0.0 }, coord! { x: 3.0, y: 3.0 }],
        [coord! { x: 2.0, y: 2.0 }, coord! { x: 3.0, y: 3.0 }],
        [at, coord! { x: 3.0, y: 3.0 }],
    ] {
        assert_eq!(crossing(bases, at), None);
    }
}
