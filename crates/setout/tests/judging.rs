//! Mistakes made on purpose, and what is said of them.
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use std::sync::OnceLock;

use common::{Dice, TAPE, Y1, between, meet};
use geo::{Coord, coord};
use note::Noted;
use setout::{Cause, Judged, Laid, Question, Reading, SetOut, Verdict, judge, setout};
use survey::result::Slip;
use unit::Units;

const RUNS: usize = 200;

/// What goes wrong, at which key point or base.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Mistake {
    Nothing,
    WrongSide(usize),
    Swapped(usize),
    Held(usize, usize, f64),
    Misread(usize, f64),
    BaseMoved(usize, f64, f64),
}

/// Four markings of three points in Y1.
fn plan(dice: &mut Dice) -> SetOut {
    let survey = common::taped(|sigma| sigma * dice.normal());
    let figures = [(3.0, 4.0), (9.0, 6.0), (16.0, 4.0), (6.0, 12.0)].map(|(x, y)| {
        common::figure(
            &[(0.0, 0.0), (3.0, 0.5), (1.0, 1.5)].map(|(u, v)| coord! { x: x + u, y: y + v }),
        )
    });
    let laid: Vec<Laid> = ["a", "b", "c", "d"]
        .into_iter()
        .zip(&figures)
        .map(|(name, figure)| Laid { name, figure })
        .collect();
    let question = Question {
        survey: &survey,
        obstacles: &[],
        laid: &laid,
        tape: TAPE,
        units: Units::Metres,
        step: 0.005,
    };
    setout(&question, &common::ledger()).value
}

/// Third tapes and spans as they are read, to the millimetre, after a mistake.
fn read(made: &SetOut, mistake: Mistake, dice: &mut Dice) -> Vec<Reading> {
    let mut corners = Y1.map(|(_, x, y)| coord! { x: x, y: y });
    if let Mistake::BaseMoved(base, x, y) = mistake {
        corners[base] = corners[base] + coord! { x: x, y: y };
    }
    let marks: Vec<Coord<f64>> = made
        .points
        .iter()
        .enumerate()
        .map(|(number, point)| {
            let mut held = point.tapes.map(|held| held.length);
            match mistake {
                Mistake::Swapped(at) if at == number => held.reverse(),
                Mistake::Held(at, tape, by) if at == number => held[tape] += by,
                _ => {}
            }
            let lengths = held.map(|length| length + TAPE.sigma(length) * dice.normal());
            let [a, b] = point.tapes.map(|held| corners[held.base]);
            match mistake {
                Mistake::WrongSide(at) if at == number => meet(b, a, [lengths[1], lengths[0]]),
                _ => meet(a, b, lengths),
            }
        })
        .collect();
    let mut tape = |from: &str, to: &str, a: Coord<f64>, b: Coord<f64>| {
        let long = between(a, b);
        let value = long + TAPE.sigma(long) * dice.normal();
        Reading {
            from: from.to_owned(),
            to: to.to_owned(),
            value: (value * 1000.0).round() / 1000.0,
            at: None,
        }
    };
    let mut readings = Vec::new();
    for (number, point) in made.points.iter().enumerate() {
        let base = point.third.expect("Y1 has six corners").base;
        let mut reading = tape(
            &made.bases.names[base],
            &point.name,
            corners[base],
            marks[number],
        );
        if let Mistake::Misread(at, by) = mistake
            && at == number
        {
            reading.value += by;
        }
        readings.push(reading);
    }
    for marking in &made.markings {
        for span in &marking.spans {
            let [a, b] = span.between;
            let [from, to] = [&made.points[a].name, &made.points[b].name];
            readings.push(tape(from, to, marks[a], marks[b]));
        }
    }
    readings
}

/// Plans, each from its own survey with its own errors.
fn plans() -> &'static [SetOut] {
    static PLANS: OnceLock<Vec<SetOut>> = OnceLock::new();
    PLANS.get_or_init(|| (0..20).map(|seed| plan(&mut Dice::new(seed))).collect())
}

fn judged(
    mistake: impl Fn(&SetOut) -> Mistake,
    run: usize,
) -> (&'static SetOut, Mistake, Noted<Judged>) {
    let mut dice = Dice::new(1000 + run as u64);
    let plans = plans();
    let made = &plans[run % plans.len()];
    let mistake = mistake(made);
    let readings = read(made, mistake, &mut dice);
    (made, mistake, judge(made, &readings, &common::ledger()))
}

/// The share of runs in which the verdict is right.
fn share(mistake: impl Fn(&SetOut) -> Mistake, right: impl Fn(&SetOut, &Judged) -> bool) -> f64 {
    let hits = (0..RUNS)
        .filter(|&run| {
            let (made, _, judged) = judged(&mistake, run);
            right(made, &judged.value)
        })
        .count();
    hits as f64 / RUNS as f64
}

/// A limit of three sigmas doubts 0.27 of 100 good readings; the 10 mm below which none is
/// doubted and the rounding only spare some.
#[test]
fn good_work_is_left_in_peace() {
    let (mut off, mut all) = (0, 0);
    for run in 0..RUNS {
        let (_, _, judged) = judged(|_| Mistake::Nothing, run);
        off += judged
            .value
            .readings
            .iter()
            .filter(|one| !one.holds)
            .count();
        all += judged.value.readings.len();
    }
    let share = off as f64 / all as f64;
    println!("{off} of {all} good readings doubted");
    // 4800 readings, hanging together in groups: six standard deviations of a count of 13
    assert!(
        share < 0.0027 + 6.0 * 13.0_f64.sqrt() / all as f64,
        "{share}"
    );
}

/// Each mistake is found at its place, by its kind.
#[test]
fn mistakes_are_found_and_named() {
    let redo = |judged: &Judged, point: usize, cause: &dyn Fn(&Cause) -> bool| matches!(&judged.points[point], Verdict::Redo { causes } if causes.iter().any(cause));
    let wrong_side = share(
        |_| Mistake::WrongSide(4),
        |_, judged| redo(judged, 4, &|cause| *cause == Cause::WrongSide),
    );
    let swapped = share(
        |_| Mistake::Swapped(4),
        |_, judged| redo(judged, 4, &|cause| *cause == Cause::Swapped),
    );
    let metre = share(
        |_| Mistake::Held(2, 0, 1.0),
        |_, judged| {
            redo(judged, 2, &|cause| {
                matches!(
                    cause,
                    Cause::Held {
                        tape: 0,
                        slip: Some(Slip::WholeMetres(1)),
                        ..
                    }
                )
            })
        },
    );
    let small = share(
        |_| Mistake::Held(10, 1, 0.15),
        |made, judged| {
            let wanted = made.points[10].tapes[1].length + 0.15;
            redo(
                judged,
                10,
                &|cause| matches!(cause, Cause::Held { tape: 1, at, .. } if (at - wanted).abs() < 0.06),
            )
        },
    );
    let misread = share(
        |_| Mistake::Misread(5, 0.1),
        |_, judged| matches!(judged.points[5], Verdict::MeasureAgain { reading: 5, .. }),
    );
    let busiest = |made: &SetOut| {
        let uses = |base: usize| {
            let on = |point: &&setout::KeyPoint| point.tapes.iter().any(|held| held.base == base);
            made.points.iter().filter(on).count()
        };
        (0..made.bases.len())
            .max_by_key(|&base| uses(base))
            .expect("bases")
    };
    let base = share(
        |made| Mistake::BaseMoved(busiest(made), 0.2, -0.15),
        |made, judged| judged.bases == [busiest(made)],
    );
    let found = [
        ("wrong side", wrong_side, 0.97),
        ("swapped", swapped, 0.97),
        ("a metre", metre, 0.95),
        ("15 cm", small, 0.95),
        ("misread", misread, 0.95),
        ("base", base, 0.95),
    ];
    for (what, share, _) in found {
        println!("{what}: {share}");
    }
    for (what, share, least) in found {
        assert!(share >= least, "{what}: {share}");
    }
}

/// Nobody is blamed for a neighbour's mistake.
#[test]
fn the_other_points_hold() {
    let (mut blamed, mut all) = (0, 0);
    for run in 0..RUNS {
        let (made, _, judged) = judged(|_| Mistake::Held(2, 0, 1.0), run);
        for point in (0..made.points.len()).filter(|&point| point != 2) {
            blamed += usize::from(judged.value.points[point] != Verdict::Holds);
            all += 1;
        }
    }
    println!("{blamed} of {all} blamed");
    assert!(
        f64::from(blamed as u32) < 0.02 * f64::from(all),
        "{blamed} of {all}"
    );
}

#[test]
fn readings_that_cannot_be_used_are_told_all_at_once() {
    let made = plan(&mut Dice::new(1));
    let reading = |from: &str, to: &str, value: f64| Reading {
        from: from.to_owned(),
        to: to.to_owned(),
        value,
        at: None,
    };
    let odd = [
        reading("a-1", "nowhere", 3.0),
        reading("a-1", "a-1", 3.0),
        reading("a-1", "A", -3.0),
        reading("a-1", "A", f64::NAN),
        reading("x", "y", 1.0),
    ];
    let judged = judge(&made, &odd, &common::ledger());
    let keys: Vec<&str> = judged.notes.iter().map(|note| note.what.key).collect();
    assert_eq!(
        keys,
        [
            "setout-name-unknown",
            "setout-to-itself",
            "setout-reading-impossible",
            "setout-reading-impossible",
            "setout-name-unknown",
            "setout-name-unknown",
            "setout-unchecked",
        ]
    );
    assert!(judged.value.readings.is_empty());
    assert!(
        judged
            .value
            .points
            .iter()
            .all(|verdict| *verdict == Verdict::Unchecked)
    );
}

/// One check alone cannot say whether it was misread or the point is wrong; twice can.
#[test]
fn a_reading_that_stays_off_when_taken_again_condemns_the_point() {
    let made = plan(&mut Dice::new(1));
    let third = made.points[0].third.expect("Y1 has six corners");
    let off = Reading {
        from: "a-1".to_owned(),
        to: made.bases.names[third.base].clone(),
        value: third.length + 0.2,
        at: None,
    };
    let once = judge(&made, std::slice::from_ref(&off), &common::ledger()).value;
    assert!(
        matches!(once.points[0], Verdict::MeasureAgain { reading: 0, .. }),
        "{once:?}"
    );
    let twice = judge(&made, &[off.clone(), off], &common::ledger()).value;
    assert!(matches!(twice.points[0], Verdict::Redo { .. }), "{twice:?}");
}

/// A tape between two key points concerns both and is told once.
#[test]
fn one_misread_tape_is_one_note() {
    let made = plan(&mut Dice::new(1));
    let mut readings: Vec<Reading> = setout::checks(&made)
        .into_iter()
        .map(|asked| Reading {
            from: asked.from,
            to: asked.to,
            value: asked.length,
            at: None,
        })
        .collect();
    let span = readings
        .iter_mut()
        .find(|reading| reading.from.starts_with("a-"))
        .expect("a tape between two key points");
    span.value += 0.1;
    let judged = judge(&made, &readings, &common::ledger());
    let keys: Vec<&str> = judged.notes.iter().map(|note| note.what.key).collect();
    assert_eq!(keys, ["setout-reading-off"]);
}

/// Every note of this file's mistakes, in both languages: no gap is left open.
#[test]
fn notes_read_as_sentences() {
    let mut notes = Vec::new();
    for mistake in [
        Mistake::WrongSide(4),
        Mistake::Swapped(4),
        Mistake::Held(2, 0, 1.0),
        Mistake::Misread(5, 0.1),
        Mistake::BaseMoved(0, 0.2, -0.15),
    ] {
        notes.extend(judged(|_| mistake, 0).2.notes);
    }
    let odd = [
        ("a-1", "nowhere", 3.0),
        ("a-1", "a-1", 3.0),
        ("a-1", "A", -3.0),
    ]
    .map(|(from, to, value)| Reading {
        from: from.to_owned(),
        to: to.to_owned(),
        value,
        at: None,
    });
    notes.extend(judge(&plan(&mut Dice::new(1)), &odd, &common::ledger()).notes);
    let mut survey = common::taped(|_| 0.0);
    survey.points[0].loose = true;
    let figure = common::figure(&[coord! { x: 12.0, y: 1.0 }, coord! { x: 200.0, y: 1.0 }]);
    let question = Question {
        survey: &survey,
        obstacles: &[],
        laid: &[Laid {
            name: "far",
            figure: &figure,
        }],
        tape: TAPE,
        units: Units::Feet,
        step: 0.00635,
    };
    notes.extend(setout(&question, &common::ledger()).notes);
    let mut small = survey.clone();
    small.points.truncate(3);
    small.covariance.order.truncate(3);
    notes.extend(
        setout(
            &Question {
                survey: &small,
                ..question
            },
            &common::ledger(),
        )
        .notes,
    );
    let mut keys: Vec<&str> = notes.iter().map(|note| note.what.key).collect();
    keys.sort_unstable();
    keys.dedup();
    assert!(keys.len() >= 8, "{keys:?}");
    for language in words::Language::ALL {
        let catalogue = words::Catalogue::of(language);
        for note in &notes {
            for message in [Some(&note.what), note.expected.as_ref(), note.mend.as_ref()]
                .into_iter()
                .flatten()
            {
                let said = catalogue.say(message, Units::Metres);
                println!("{said}");
                assert!(
                    !said.contains(['{', '$']) && !said.contains(message.key),
                    "{said}"
                );
            }
        }
    }
}
