//! `check`: read everything, say what is wrong or missing.

use std::path::Path;

use note::{Note, Place, msg};
use serde_json::{Value, json};
use setout::{Judged, SetOut, Verdict};

use crate::command::Manner;
use crate::outcome::{Fault, Outcome};
use crate::setting::{laid_out, set_out};
use crate::survey::{Surveyed, walk};
use crate::tell::{Telling, tell_without_project};

/// Reads the folder, walks as far as it goes, and writes nothing.
pub fn check(dir: &Path, manner: Manner) -> Result<Outcome, Fault> {
    let mut notes = Vec::new();
    let walked = walk(dir, &mut notes);
    let Some(walked) = walked else {
        tell_without_project(manner, &notes);
        return Ok(Outcome::WrongInput);
    };
    let telling = Telling::of(&walked.project, manner);
    let checked = if note::any_error(&notes) {
        None
    } else {
        checked(&walked, &mut notes)
    };
    telling.notes(&notes);
    let wrong = note::any_error(&notes);
    let stands = checked.as_ref().is_none_or(|checked| checked.off() == 0);
    let holds = stands
        && walked
            .survey
            .as_ref()
            .is_none_or(|survey| survey.global_test.passed);
    let errors = notes
        .iter()
        .filter(|note| note.severity == note::Severity::Error)
        .count();
    let others = notes.len() - errors;
    telling.say(&if wrong {
        msg!("check-wrong", errors = errors, others = others)
    } else {
        msg!("check-sound", others = others)
    });
    if let Some(checked) = &checked {
        telling.say(&msg!(
            "check-setout",
            readings = checked.judged.readings.len(),
            off = checked.off(),
        ));
    }
    let setout = checked.map(|checked| checked.answer(&walked.project.checks));
    telling.json(
        json!({ "sound": !wrong, "holds": holds, "setout": setout }),
        &notes,
    );
    Ok(match (wrong, holds) {
        (true, _) => Outcome::WrongInput,
        (false, false) => Outcome::DoesNotHold,
        (false, true) => Outcome::Done,
    })
}

/// A set-out with what its check tapes read.
struct Checked {
    setout: SetOut,
    judged: Judged,
}

/// What `checks.csv` says of the layout, where there is one.
fn checked(walked: &Surveyed, notes: &mut Vec<Note>) -> Option<Checked> {
    let project = &walked.project;
    if project.checks.is_empty() {
        return None;
    }
    if project.layout.is_empty() {
        let at = Place::whole(&"checks.csv".into());
        notes.push(Note::error(at, msg!("checks-no-layout")).mend(msg!("audit-plan-first")));
        return None;
    }
    let figures = laid_out(project, notes);
    let laid: Vec<_> = project
        .layout
        .iter()
        .map(|marking| marking.name.as_str())
        .zip(&figures)
        .collect();
    if note::any_error(notes) {
        return None;
    }
    // `plan` has told what is weak about the set-out itself.
    let setout = set_out(walked, &laid, &mut Vec::new())?;
    let judged = setout::judge(&setout, &project.checks, &project.ledger).pour(notes);
    Some(Checked { setout, judged })
}

impl Checked {
    /// Readings that do not hold.
    fn off(&self) -> usize {
        let readings = self.judged.readings.iter();
        readings.filter(|reading| !reading.holds).count()
    }

    /// For programs.
    fn answer(&self, given: &[setout::Reading]) -> Value {
        let readings = self.judged.readings.iter().filter_map(|reading| {
            let row = given.get(reading.number)?;
            Some(json!({
                "from": row.from, "to": row.to, "reading": row.value,
                "should_read": reading.should, "off": reading.off,
                "limit": reading.limit, "holds": reading.holds,
            }))
        });
        let points = self.setout.points.iter().zip(&self.judged.points);
        let points = points.map(|(point, verdict)| {
            let verdict = match verdict {
                Verdict::Unchecked => "unchecked",
                Verdict::Holds => "holds",
                Verdict::MeasureAgain { .. } => "measure-again",
                Verdict::Redo { .. } => "redo",
                Verdict::Base(_) => "base",
            };
            json!({ "point": point.name, "verdict": verdict })
        });
        json!({ "readings": readings.collect::<Vec<_>>(), "points": points.collect::<Vec<_>>() })
    }
}
