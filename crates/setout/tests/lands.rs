//! Do marks land where it is said, as often as it is said?
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use common::{Dice, TAPE, Y1, between, meet};
use geo::{Coord, coord};
use setout::{Laid, Question, SetOut, setout};
use survey::result::{Ellipse, Survey};
use unit::Units;

/// Surveys, each with its own readings, marks and tape errors.
const RUNS: usize = 2000;

/// Printed steps in metres: 5 mm, a quarter inch, and as fine as can be.
const STEPS: [f64; 3] = [0.005, 0.00635, 1e-6];

/// 95 of 100 runs, and three standard deviations of such a share.
const RATE: (f64, f64) = (0.95, 0.0147);

fn inside(ellipse: Ellipse, off: Coord<f64>) -> bool {
    let (sin, cos) = libm::sincos(ellipse.theta_deg.to_radians());
    let [u, v] = [off.x * cos + off.y * sin, off.y * cos - off.x * sin];
    let [u, v] = [u / ellipse.a, v / ellipse.b];
    u * u + v * v <= 1.0
}

fn asked(survey: &Survey, places: &[Coord<f64>], step: f64, ledger: &ledger::Ledger) -> SetOut {
    let figure = common::figure(places);
    let question = Question {
        survey,
        obstacles: &[],
        laid: &[Laid {
            name: "m",
            figure: &figure,
        }],
        tape: TAPE,
        units: Units::Metres,
        step,
    };
    setout(&question, ledger).value
}

/// A place inside Y1.
fn place(dice: &mut Dice) -> Coord<f64> {
    loop {
        let at = coord! { x: dice.within(0.5, 23.5), y: dice.within(0.5, 17.5) };
        if at.x < 13.5 || at.y < 9.5 {
            return at;
        }
    }
}

/// From the tape readings on: somebody tapes Y1, the survey is adjusted, a mark is planned
/// in its frame and set out from the true corners with tape errors. Truth and frame share A
/// and the way to B; there the mark is held against the plan. What the third tape and the
/// tape between two marks then read is held against their limits, set to 95 of 100.
#[test]
fn marks_and_checks_are_as_good_as_predicted() {
    let ledger =
        common::ledger_with(&[("setout.check_times", 1.959964), ("setout.check_min", 0.0)]);
    let corners = Y1.map(|(_, x, y)| coord! { x: x, y: y });
    let mut dice = Dice::new(7);
    let mut hits = [[0; 4]; STEPS.len()];
    for _ in 0..RUNS {
        let survey = common::taped(|sigma| sigma * dice.normal());
        let mut places = [place(&mut dice); 2];
        while between(places[0], places[1]) < 0.5 {
            places[1] = place(&mut dice);
        }
        for (step, hits) in STEPS.into_iter().zip(&mut hits) {
            let made = asked(&survey, &places, step, &ledger);
            assert_eq!(made.points.len(), 2, "Y1 holds every place");
            let truth: Vec<Coord<f64>> = made
                .points
                .iter()
                .map(|point| {
                    let [a, b] = point.tapes;
                    let lengths = point
                        .tapes
                        .map(|held| held.length + TAPE.sigma(held.length) * dice.normal());
                    meet(corners[a.base], corners[b.base], lengths)
                })
                .collect();
            let mut read = |a: Coord<f64>, b: Coord<f64>| {
                let long = between(a, b);
                ((long + TAPE.sigma(long) * dice.normal()) / step).round() * step
            };
            let point = &made.points[0];
            let third = point.third.expect("Y1 has a third corner");
            let off = read(corners[third.base], truth[0]) - third.length;
            let marking = &made.markings[0];
            let span = marking.spans[0];
            let way = truth[1] - truth[0];
            let turn = libm::atan2(way.y, way.x).to_degrees() - marking.turn_deg.expect("a line");
            let turn = turn - 360.0 * (turn / 360.0).round();
            let sigma = marking.turn_sigma_deg.expect("a line");
            let held = [
                inside(point.ellipse, truth[0] - point.at),
                off.abs() <= third.limit,
                (read(truth[0], truth[1]) - span.length).abs() <= span.limit,
                turn.abs() <= 1.959964 * sigma,
            ];
            for (hits, held) in hits.iter_mut().zip(held) {
                *hits += usize::from(held);
            }
        }
    }
    for (step, hits) in STEPS.into_iter().zip(hits) {
        for (what, hits) in ["mark", "third", "span", "turn"].into_iter().zip(hits) {
            let share = hits as f64 / RUNS as f64;
            println!("step {step}: {what} {share}");
            assert!(
                (share - RATE.0).abs() <= RATE.1,
                "step {step}: {what} {share}"
            );
        }
    }
}
