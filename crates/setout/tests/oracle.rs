//! Choice of tapes and all predicted errors against `oracle/setout.py` (numpy and scipy:
//! numerical roots, central differences, matrix products).
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use geo::coord;
use serde_json::Value;
use setout::{Laid, Question, setout};
use unit::Units;

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

fn numbers(value: &Value) -> Vec<f64> {
    value
        .as_array()
        .expect("a list")
        .iter()
        .map(number)
        .collect()
}

/// Metres and degrees: figures are handed on to 1e-6, differences are good to 1e-8.
#[track_caller]
fn same(ours: f64, theirs: &Value, what: &str) {
    let theirs = number(theirs);
    assert!(
        (ours - theirs).abs() <= 2e-6 * theirs.abs().max(1.0),
        "{what}: {ours}, not {theirs}"
    );
}

#[test]
fn another_program_chooses_and_predicts_the_same() {
    let text = include_str!("../oracle/setout.json");
    let stored: Value = serde_json::from_str(text).expect("the stored figures");
    // the best tapes, whatever the walk; lengths as they are
    let ledger = common::ledger_with(&[("setout.near_best", 1.0)]);
    let cases = stored["cases"].as_array().expect("cases");
    assert_eq!(cases.len(), 40);
    for (nth, case) in cases.iter().enumerate() {
        let places = |key: &str| -> Vec<Vec<f64>> {
            case[key]
                .as_array()
                .expect("places")
                .iter()
                .map(numbers)
                .collect()
        };
        let bases = places("bases");
        let names: Vec<String> = (0..bases.len()).map(|base| format!("P{base}")).collect();
        let points: Vec<(&str, f64, f64)> = names
            .iter()
            .zip(&bases)
            .map(|(name, at)| (name.as_str(), at[0], at[1]))
            .collect();
        let survey = common::surveyed(&points, numbers(&case["covariance"]));
        let marks: Vec<_> = places("marks")
            .iter()
            .map(|at| coord! { x: at[0], y: at[1] })
            .collect();
        let figure = common::figure(&marks);
        let question = Question {
            survey: &survey,
            obstacles: &[],
            laid: &[Laid {
                name: "m",
                figure: &figure,
            }],
            tape: common::TAPE,
            units: Units::Metres,
            step: 1e-7,
        };
        let made = setout(&question, &ledger).value;
        assert_eq!(made.points.len(), 2, "case {nth}");
        for (point, answer) in made
            .points
            .iter()
            .zip(case["answers"].as_array().expect("two"))
        {
            let pair = point.tapes.map(|held| held.base as f64).to_vec();
            assert_eq!(pair, numbers(&answer["pair"]), "case {nth}");
            same(point.angle_deg, &answer["angle"], "angle");
            same(point.ellipse.a, &answer["ellipse"][0], "a");
            same(point.ellipse.b, &answer["ellipse"][1], "b");
            // the turn of a nearly round ellipse is loose
            let round = 1e-4 / (point.ellipse.a / point.ellipse.b - 1.0);
            let turn = (point.ellipse.theta_deg - number(&answer["ellipse"][2]) + 90.0)
                .rem_euclid(180.0)
                - 90.0;
            assert!(
                turn.abs() <= round.max(1e-3),
                "case {nth}: turn off by {turn}"
            );
            match point.third {
                Some(third) => {
                    let theirs = &answer["third"];
                    assert_eq!(third.base as f64, number(&theirs["base"]), "case {nth}");
                    same(third.length, &theirs["length"], "length");
                    same(third.sigma, &theirs["sigma"], "sigma");
                    same(third.limit, &theirs["limit"], "limit");
                    same(third.finds, &theirs["finds"], "finds");
                }
                None => assert!(answer["third"].is_null(), "case {nth}"),
            }
        }
        let marking = &made.markings[0];
        same(marking.spans[0].length, &case["span"][0], "span");
        same(marking.spans[0].sigma, &case["span"][1], "span's sigma");
        same(marking.turn_deg.expect("a line"), &case["turn"][0], "turn");
        same(
            marking.turn_sigma_deg.expect("a line"),
            &case["turn"][1],
            "turn's sigma",
        );
    }
}
