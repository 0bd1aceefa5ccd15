//! `audit`: hold a layout that people moved against the rules.

use std::path::Path;

use layout::audit::Check;
use layout::{Candidate, Pose, Surroundings};
use note::{Fact, Message, Note, msg};
use serde_json::json;

use crate::command::Manner;
use crate::outcome::{Fault, Outcome};
use crate::planning::{class, laid};
use crate::survey::walk;
use crate::tell::{Telling, tell_without_project};

/// Judges `layout.toml` item by item; writes nothing.
pub fn audit(dir: &Path, manner: Manner) -> Result<Outcome, Fault> {
    let mut notes = Vec::new();
    let Some(walked) = walk(dir, &mut notes) else {
        tell_without_project(manner, &notes);
        return Ok(Outcome::WrongInput);
    };
    let project = &walked.project;
    let telling = Telling::of(project, manner);
    if project.layout.is_empty() && !note::any_error(&notes) {
        let at = note::Place::whole(&"layout.toml".into());
        notes.push(Note::error(at, msg!("audit-no-layout")).mend(msg!("audit-plan-first")));
    }
    let class = walked
        .yard
        .as_ref()
        .and_then(|yard| class(project, yard, &mut notes));
    let (Some(yard), Some(ground), Some(class)) = (&walked.yard, &walked.ground, class) else {
        telling.notes(&notes);
        telling.json(json!({ "checks": [] }), &notes);
        return Ok(Outcome::WrongInput);
    };
    let candidates: Vec<Candidate> = project
        .layout
        .iter()
        .filter_map(|marking| laid(marking, project, &class, &mut notes))
        .collect();
    telling.notes(&notes);
    if note::any_error(&notes) {
        telling.json(json!({ "checks": [] }), &notes);
        return Ok(Outcome::WrongInput);
    }
    let around = Surroundings::new(yard, ground, &project.ledger);
    let placed: Vec<(&Candidate, Pose)> = candidates
        .iter()
        .filter_map(|one| Some((one, one.locked?)))
        .collect();
    let checks = layout::audit(&placed, &around, &project.ledger);
    let broken = checks
        .iter()
        .filter(|check| check.hard && !check.pass)
        .count();
    let unmet = checks
        .iter()
        .filter(|check| !check.hard && !check.pass)
        .count();
    for check in checks.iter().filter(|check| !check.pass) {
        telling.say(&judged(check, &telling));
    }
    telling.say(&msg!(
        "audit-told",
        checks = checks.len(),
        broken = broken,
        unmet = unmet
    ));
    let rows: Vec<plan::Check> = checks.iter().map(plan::Check::of).collect();
    telling.json(json!({ "checks": rows, "holds": broken == 0 }), &notes);
    Ok(if broken == 0 {
        Outcome::Done
    } else {
        Outcome::DoesNotHold
    })
}

/// A check that does not hold, in a sentence.
pub fn judged(check: &Check, telling: &Telling) -> Message {
    msg!(
        "audit-check",
        marking = check
            .marking
            .clone()
            .unwrap_or_else(|| telling.sentence(&msg!("audit-whole"))),
        rule = telling.sentence(&rule(check.rule)),
        wanted = amount(check.wanted, check.unit),
        actual = amount(check.actual, check.unit),
        hard = if check.hard { "hard" } else { "wanted" },
        unit = check.unit,
    )
}

/// The rule's own sentence.
fn rule(name: &str) -> Message {
    Message {
        key: document::planned::rule_key(name).unwrap_or("audit-whole"),
        facts: Vec::new(),
    }
}

fn amount(value: f64, unit: &str) -> Fact {
    match unit {
        "m" => Fact::Length(value),
        "m2" => Fact::Area(value),
        "1" => Fact::Number(value, u8::from(value.fract() != 0.0) * 2),
        _ => Fact::Number(value, 1),
    }
}
