//! What the person who sets out should hear.

use note::{Fact, Note, msg};

use crate::question::Question;
use crate::result::SetOut;

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
    let named = |which: &dyn Fn(&crate::KeyPoint) -> bool| -> Vec<String> {
        let points = setout.points.iter().filter(|point| which(point));
        points.map(|point| point.name.clone()).collect()
    };
    let unchecked = named(&|point| point.third.is_none());
    if !unchecked.is_empty() {
        notes.push(
            Note::warning(None, msg!("setout-no-third", points = unchecked))
                .mend(msg!("setout-measure-between")),
        );
    }
    let flat = named(&|point| !point.good);
    if !flat.is_empty() {
        notes.push(
            Note::advice(None, msg!("setout-flat-crossing", points = flat))
                .mend(msg!("setout-take-care")),
        );
    }
    notes
}
