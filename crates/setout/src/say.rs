//! What the person who sets out should hear.

use std::collections::BTreeSet;

use note::{Fact, Message, Note, msg};

use crate::cause::Cause;
use crate::judge::{Judged, Reading, Verdict};
use crate::question::Question;
use crate::result::{KeyPoint, SetOut};

pub(crate) fn notes(question: &Question, setout: &SetOut, angle_min: f64) -> Vec<Note> {
    let mut notes = Vec::new();
    let loose: Vec<String> = question
        .survey
        .points
        .iter()
        .filter(|point| point.loose)
        .map(|point| point.name.clone())
        .collect();
    if !loose.is_empty() && !question.laid.is_empty() {
        let count = loose.len();
        notes.push(
            Note::advice(
                None,
                msg!("setout-loose-left-out", points = loose, count = count),
            )
            .mend(msg!("setout-tape-them-again", count = count)),
        );
    }
    for (number, marking) in setout.markings.iter().enumerate() {
        let missing = setout
            .unreached
            .iter()
            .filter(|unreached| unreached.marking == number)
            .count();
        if missing > 0 {
            notes.push(
                Note::warning(
                    None,
                    msg!(
                        "setout-unreached",
                        marking = &marking.name,
                        count = missing,
                        found = marking.points.len()
                    ),
                )
                .expected(msg!(
                    "setout-two-bases",
                    least = Fact::Number(angle_min, 0),
                    most = Fact::Number(180.0 - angle_min, 0)
                ))
                .mend(msg!("setout-survey-another")),
            );
        }
    }
    let unchecked = named(setout, |_, point| point.third.is_none());
    if !unchecked.is_empty() {
        notes.push(
            Note::warning(None, msg!("setout-no-third", points = unchecked))
                .mend(msg!("setout-measure-between")),
        );
    }
    let flat = named(setout, |_, point| !point.good);
    if !flat.is_empty() {
        notes.push(
            Note::advice(None, msg!("setout-flat-crossing", points = flat))
                .mend(msg!("setout-take-care")),
        );
    }
    notes
}

/// What is off, point by point, and then what cannot be said.
pub(crate) fn judged(
    setout: &SetOut,
    readings: &[Reading],
    judged: &Judged,
    notes: &mut Vec<Note>,
) {
    let place = |number: usize| readings.get(number).and_then(|reading| reading.at.clone());
    for &base in &judged.bases {
        let points: Vec<String> = named(setout, |point, _| {
            judged.points.get(point) == Some(&Verdict::Base(base))
        });
        let count = points.len();
        notes.push(
            Note::warning(
                None,
                msg!(
                    "setout-base-doubtful",
                    base = &setout.bases.names[base],
                    points = points,
                    count = count
                ),
            )
            .mend(msg!(
                "setout-look-at-base",
                base = &setout.bases.names[base]
            )),
        );
    }
    let mut told = BTreeSet::new();
    for (number, verdict) in judged.points.iter().enumerate() {
        let Some(point) = setout.points.get(number) else {
            continue;
        };
        match verdict {
            Verdict::Redo { causes } => {
                let off = judged.readings.iter().filter(|judged| {
                    let ends = readings.get(judged.number);
                    !judged.holds
                        && ends.is_some_and(|r| r.from == point.name || r.to == point.name)
                });
                let worst = off.max_by(|a, b| a.off.abs().total_cmp(&b.off.abs()));
                let mut note = Note::warning(
                    worst.and_then(|worst| place(worst.number)),
                    msg!(
                        "setout-redo",
                        point = &point.name,
                        off = Fact::Length(worst.map_or(0.0, |worst| worst.off.abs()))
                    ),
                )
                .mend(redo(setout, number));
                note.expected = causes.first().map(|cause| why(setout, number, cause));
                notes.push(note);
            }
            // between two key points it is one reading still
            Verdict::MeasureAgain { reading, causes } if told.insert(*reading) => {
                let found = judged.readings.iter().find(|one| one.number == *reading);
                let (Some(read), Some(found)) = (readings.get(*reading), found) else {
                    continue;
                };
                let other = if read.from == point.name {
                    &read.to
                } else {
                    &read.from
                };
                let mut note = Note::warning(
                    place(*reading),
                    msg!(
                        "setout-reading-off",
                        point = &point.name,
                        other = other,
                        reads = Fact::Length(read.value),
                        should = Fact::Length(found.should),
                        limit = Fact::Length(found.limit)
                    ),
                )
                .mend(msg!("setout-again-then-redo", point = &point.name));
                note.expected = causes.first().map(|cause| why(setout, number, cause));
                notes.push(note);
            }
            Verdict::MeasureAgain { .. }
            | Verdict::Unchecked
            | Verdict::Holds
            | Verdict::Base(_) => {}
        }
    }
    let unchecked = named(setout, |point, _| {
        judged.points.get(point) == Some(&Verdict::Unchecked)
    });
    if !unchecked.is_empty() {
        let count = unchecked.len();
        notes.push(
            Note::warning(
                None,
                msg!("setout-unchecked", points = unchecked, count = count),
            )
            .mend(msg!("setout-measure-third")),
        );
    }
}

fn named(setout: &SetOut, which: impl Fn(usize, &KeyPoint) -> bool) -> Vec<String> {
    setout
        .points
        .iter()
        .enumerate()
        .filter(|(number, point)| which(*number, point))
        .map(|(_, point)| point.name.clone())
        .collect()
}

fn redo(setout: &SetOut, number: usize) -> Message {
    let point = &setout.points[number];
    let [a, b] = point.tapes;
    msg!(
        "setout-hold-again",
        a = &setout.bases.names[a.base],
        first = Fact::Length(a.length),
        b = &setout.bases.names[b.base],
        second = Fact::Length(b.length)
    )
}

fn why(setout: &SetOut, number: usize, cause: &Cause) -> Message {
    let tapes = setout.points[number].tapes;
    let [a, b] = tapes.map(|held| setout.bases.names[held.base].as_str());
    match cause {
        Cause::WrongSide => msg!("setout-wrong-side", a = a, b = b),
        Cause::Swapped => msg!("setout-swapped", a = a, b = b),
        Cause::Held { tape, at, .. } => msg!(
            "setout-held-wrong",
            base = if *tape == 0 { a } else { b },
            at = Fact::Length(*at),
            wanted = Fact::Length(tapes[*tape].length)
        ),
    }
}
