//! What must hold whatever the yard.
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use common::{Dice, TAPE};
use geo::{Coord, coord};
use proptest::prelude::*;
use setout::{Laid, Question, SetOut, Verdict, checks, judge, setout};
use survey::result::Survey;
use unit::Units;

fn asked(survey: &Survey, figures: &[Vec<Coord<f64>>]) -> SetOut {
    let figures: Vec<_> = figures
        .iter()
        .map(|places| common::figure(places))
        .collect();
    let names = ["a", "b", "c", "d"];
    let laid: Vec<Laid> = names
        .into_iter()
        .zip(&figures)
        .map(|(name, figure)| Laid { name, figure })
        .collect();
    let question = Question {
        survey,
        obstacles: &[],
        laid: &laid,
        tape: TAPE,
        units: Units::Feet,
        step: 0.00635,
    };
    setout(&question, &common::ledger()).value
}

/// A yard of some points that err together, in a frame turned and moved: points, marks and
/// covariance alike.
fn yard(seed: u64, turn: f64, by: Coord<f64>) -> (Survey, Vec<Vec<Coord<f64>>>) {
    let mut dice = Dice::new(seed);
    let (sin, cos) = libm::sincos(turn);
    let moved = |at: Coord<f64>| {
        coord! {
            x: by.x + at.x * cos - at.y * sin,
            y: by.y + at.x * sin + at.y * cos
        }
    };
    let count = 4 + dice.below(5);
    let names: Vec<String> = (0..count).map(|point| format!("P{point}")).collect();
    let points: Vec<(&str, f64, f64)> = names
        .iter()
        .map(|name| {
            let at = moved(coord! { x: dice.within(0.0, 25.0), y: dice.within(0.0, 15.0) });
            (name.as_str(), at.x, at.y)
        })
        .collect();
    // errors as sums of a few shared ones
    let shared: Vec<Vec<Coord<f64>>> = (0..5)
        .map(|_| {
            let error =
                |dice: &mut Dice| coord! { x: 0.003 * dice.normal(), y: 0.003 * dice.normal() };
            (0..count)
                .map(|_| {
                    let e = error(&mut dice);
                    coord! { x: e.x * cos - e.y * sin, y: e.x * sin + e.y * cos }
                })
                .collect()
        })
        .collect();
    let part = |error: &[Coord<f64>], at: usize| {
        let e = error[at / 2];
        if at.is_multiple_of(2) { e.x } else { e.y }
    };
    let size = 2 * count;
    let covariance = (0..size * size)
        .map(|at| {
            shared
                .iter()
                .map(|error| part(error, at / size) * part(error, at % size))
                .sum()
        })
        .collect();
    let figures = (0..1 + dice.below(4))
        .map(|_| {
            let at = coord! { x: dice.within(2.0, 20.0), y: dice.within(2.0, 10.0) };
            (0..1 + dice.below(4))
                .map(|_| moved(at + coord! { x: dice.within(0.0, 4.0), y: dice.within(0.0, 3.0) }))
                .collect()
        })
        .collect();
    (common::surveyed(&points, covariance), figures)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// The frame is our choice, the ground is the yard's: turned and moved, everything is
    /// taped from the same points over the same lengths in the same order.
    #[test]
    fn tapes_do_not_know_the_frame(seed: u64, turn in -3.0..3.0_f64, x in -50.0..50.0_f64, y in -50.0..50.0_f64) {
        let (survey, figures) = yard(seed, 0.0, coord! { x: 0.0, y: 0.0 });
        let ours = asked(&survey, &figures);
        let (survey, figures) = yard(seed, turn, coord! { x: x, y: y });
        let theirs = asked(&survey, &figures);
        prop_assert_eq!(ours.points.len(), theirs.points.len());
        for (a, b) in ours.points.iter().zip(&theirs.points) {
            prop_assert_eq!(&a.name, &b.name);
            prop_assert_eq!(a.tapes.map(|held| held.base), b.tapes.map(|held| held.base));
            prop_assert_eq!(a.third.map(|third| third.base), b.third.map(|third| third.base));
            for (a, b) in a.tapes.iter().zip(&b.tapes) {
                prop_assert!((a.length - b.length).abs() < 1e-6);
            }
            prop_assert!((a.ellipse.a - b.ellipse.a).abs() < 3e-6);
            prop_assert!((a.ellipse.b - b.ellipse.b).abs() < 3e-6);
        }
    }

    /// What the sheet asks for and reads as printed leaves nothing in doubt; every key point
    /// with a third tape is checked, and each reading is asked for once.
    #[test]
    fn readings_as_printed_hold(seed: u64) {
        let (survey, figures) = yard(seed, 0.3, coord! { x: 1.0, y: 2.0 });
        let made = asked(&survey, &figures);
        let readings: Vec<setout::Reading> = checks(&made)
            .into_iter()
            .map(|asked| setout::Reading {
                from: asked.from,
                to: asked.to,
                value: asked.length,
                at: None,
            })
            .collect();
        let mut pairs: Vec<[&String; 2]> = readings.iter().map(|r| [&r.from, &r.to]).collect();
        pairs.sort_unstable();
        pairs.dedup();
        prop_assert_eq!(pairs.len(), readings.len());
        let spans: usize = made.markings.iter().map(|marking| marking.spans.len()).sum();
        let thirds = made.points.iter().filter(|point| point.third.is_some()).count();
        prop_assert_eq!(readings.len(), spans + thirds);
        let judged = judge(&made, &readings, &common::ledger());
        for (point, verdict) in made.points.iter().zip(&judged.value.points) {
            if point.third.is_some() {
                prop_assert_eq!(verdict, &Verdict::Holds);
            }
        }
        for reading in &judged.value.readings {
            prop_assert!(reading.off.abs() < 1e-6);
        }
    }

    /// Odd input is answered, not fallen over.
    #[test]
    fn odd_yards_are_answered(seed: u64, odd in prop::sample::select(vec![f64::NAN, f64::INFINITY, 0.0, -1.0, 1e300])) {
        let (mut survey, mut figures) = yard(seed, 0.0, coord! { x: 0.0, y: 0.0 });
        let mut dice = Dice::new(seed);
        let at = dice.below(survey.points.len());
        survey.points[at].x = odd;
        survey.covariance.values.truncate(dice.below(60));
        figures[0][0].y = odd;
        let made = asked(&survey, &figures);
        for point in &made.points {
            prop_assert!(point.at.x.is_finite() && point.at.y.is_finite());
        }
    }
}
