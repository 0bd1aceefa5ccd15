//! `check`: read everything, say what is wrong or missing.

use std::path::Path;

use note::msg;
use serde_json::json;

use crate::command::Manner;
use crate::outcome::{Fault, Outcome};
use crate::survey::walk;
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
    telling.notes(&notes);
    let wrong = note::any_error(&notes);
    let holds = walked
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
    telling.json(json!({ "sound": !wrong, "holds": holds }), &notes);
    Ok(match (wrong, holds) {
        (true, _) => Outcome::WrongInput,
        (false, false) => Outcome::DoesNotHold,
        (false, true) => Outcome::Done,
    })
}
