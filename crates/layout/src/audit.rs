//! The rules held against a layout, item by item: the planner's, or one that people moved.

use ledger::Ledger;

use crate::candidate::{Candidate, Pose};
use crate::millionth;
use crate::rules::{Finding, Setting, Surroundings};

/// One rule held against one marking, or against the whole layout.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// In kebab-case, as `envelopes-apart`.
    pub rule: &'static str,
    /// The marking's name; `None` for the whole layout.
    pub marking: Option<String>,
    /// `m`, `m2`, `deg`, `points` or `1`.
    pub unit: &'static str,
    /// What is wanted.
    pub wanted: f64,
    /// What is. A distance past what is wanted is not measured further.
    pub actual: f64,
    /// Whether it must hold.
    pub hard: bool,
    /// Whether it holds.
    pub pass: bool,
    /// The ledger figure that says what is wanted.
    pub source: Option<&'static str>,
}

/// Holds every rule against every marking of a layout, in the order given; last come the
/// rules of the whole.
pub fn audit(placed: &[(&Candidate, Pose)], around: &Surroundings, ledger: &Ledger) -> Vec<Check> {
    let settings: Vec<Setting> = placed
        .iter()
        .map(|(candidate, pose)| Setting::new(candidate, *pose))
        .collect();
    let mut checks = Vec::new();
    for at in 0..placed.len() {
        checks.extend(checks_of(at, placed, &settings, around, ledger));
    }
    let all: Vec<&Setting> = settings.iter().collect();
    checks.extend(
        around
            .whole(&all)
            .into_iter()
            .map(|finding| check(finding, None, ledger)),
    );
    checks
}

/// The rules of one marking alone, the others standing still: for a marking that is moved.
pub fn audit_one(
    at: usize,
    placed: &[(&Candidate, Pose)],
    around: &Surroundings,
    ledger: &Ledger,
) -> Vec<Check> {
    let settings: Vec<Setting> = placed
        .iter()
        .map(|(candidate, pose)| Setting::new(candidate, *pose))
        .collect();
    checks_of(at, placed, &settings, around, ledger)
}

fn checks_of(
    at: usize,
    placed: &[(&Candidate, Pose)],
    settings: &[Setting],
    around: &Surroundings,
    ledger: &Ledger,
) -> Vec<Check> {
    let (Some((candidate, pose)), Some(me)) = (placed.get(at), settings.get(at)) else {
        return Vec::new();
    };
    let others: Vec<&Setting> = settings
        .iter()
        .enumerate()
        .filter(|(other, _)| *other != at)
        .map(|(_, it)| it)
        .collect();
    let figure = candidate.figure.placed(pose.at, pose.turn, pose.mirrored);
    let paint: Vec<_> = figure.paint.iter().map(|paint| &paint.polygon).collect();
    let mut found = around.hard(me, &others, &figure.envelope, &paint);
    found.extend(around.wanted(me, &others, usize::MAX));
    found.extend(around.contrast(candidate, *pose));
    found
        .into_iter()
        .map(|finding| check(finding, Some(&candidate.name), ledger))
        .collect()
}

fn check(finding: Finding, marking: Option<&String>, ledger: &Ledger) -> Check {
    if let Some(key) = finding.source {
        ledger.cite(key);
    }
    Check {
        rule: finding.rule,
        marking: marking.cloned(),
        unit: finding.unit,
        wanted: millionth(finding.wanted),
        actual: millionth(finding.actual),
        hard: finding.hard,
        pass: finding.pass,
        source: finding.source.map(|key| key.0),
    }
}
