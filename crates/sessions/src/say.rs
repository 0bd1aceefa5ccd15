//! What the plan has to tell.

use std::collections::BTreeMap;

use ledger::Ledger;
use note::{Fact, Note, msg};

use crate::figures as fig;
use crate::plan::Change;
use crate::programme::Programme;
use crate::schedule::{Plan, State, Why};

/// Plans are meant to come this near their bound.
const NEAR: f64 = 0.03;

/// Less of a target than this is worth a warning: the first half is what counts more.
const HALF: f64 = 0.5;

pub(crate) fn notes(programme: &Programme, plan: &Plan, ledger: &Ledger) -> Vec<Note> {
    let mut notes = Vec::new();
    if plan.slots == 0 {
        let warm_up = ledger.number(fig::WARM_UP);
        notes.push(
            Note::warning(
                None,
                msg!("sessions-no-time", minutes = Fact::Number(warm_up, 0)),
            )
            .mend(msg!("sessions-longer")),
        );
        return notes;
    }
    if plan.outings.is_empty() && !programme.children.is_empty() {
        notes.push(
            Note::warning(None, msg!("sessions-nobody-out")).mend(msg!("sessions-more-staff")),
        );
        return notes;
    }
    if plan.outings.len() > 1 {
        notes.push(Note::advice(
            None,
            msg!("sessions-outings", count = plan.outings.len()),
        ));
    }
    notes.extend(missed(programme, plan));
    notes.extend(too_soon(programme, plan));
    if plan.gap > NEAR {
        notes.push(Note::advice(
            None,
            msg!("sessions-gap", percent = Fact::Number(100.0 * plan.gap, 1)),
        ));
    }
    if plan.stale.pairs > 0 {
        notes.push(Note::advice(
            None,
            msg!("sessions-pairs", count = u64::from(plan.stale.pairs)),
        ));
    }
    notes
}

/// One note for each skill and reason: a warning where somebody gets less than half.
fn missed(programme: &Programme, plan: &Plan) -> Vec<Note> {
    let mut causes: BTreeMap<(Why, children::Skill), (Vec<usize>, f64)> = BTreeMap::new();
    for miss in &plan.misses {
        let practice = &plan.practice[miss.practice];
        let cause = causes
            .entry((miss.why, practice.skill))
            .or_insert((Vec::new(), 1.0));
        if cause.0.last() != Some(&practice.child) {
            cause.0.push(practice.child);
        }
        cause.1 = cause.1.min(miss.share);
    }
    causes
        .into_iter()
        .map(|((why, skill), (children, least))| {
            let codes = children
                .iter()
                .map(|child| programme.children[*child].code.clone());
            let (what, mend) = match why {
                Why::NoTime => ("sessions-miss-no-time", "sessions-more-staff"),
                Why::NoStation => ("sessions-miss-no-station", "sessions-add-figure"),
                Why::NeverOpens => ("sessions-miss-never-opens", "sessions-more-weeks"),
                Why::OpensLate => ("sessions-miss-opens-late", "sessions-more-weeks"),
                Why::Stations => ("sessions-miss-stations", "sessions-add-figure"),
                Why::Lost => ("sessions-miss-lost", "sessions-make-up"),
                Why::Full => ("sessions-miss-full", "sessions-second-track"),
                Why::Time => ("sessions-miss-time", "sessions-longer"),
            };
            let message = msg!(
                what,
                skill = skill.word(),
                children = few(codes),
                count = children.len(),
                percent = Fact::Number(100.0 * least, 0)
            );
            if least < HALF {
                Note::warning(None, message).mend(msg!(mend))
            } else {
                Note::advice(None, message).mend(msg!(mend))
            }
        })
        .collect()
}

/// Children who come to a skill before they have practised what it needs.
fn too_soon(programme: &Programme, plan: &Plan) -> Vec<Note> {
    let mut early: BTreeMap<(children::Skill, children::Skill), Vec<usize>> = BTreeMap::new();
    for rule in &programme.order {
        let Some(needs) = rule.needs else { continue };
        for (child, pupil) in programme.children.iter().enumerate() {
            let first = |skill: children::Skill| {
                let of = plan.practice.iter();
                let of = of.filter(|it| it.child == child && it.skill == skill);
                of.filter_map(|it| it.weeks.iter().position(|got| *got > 0.0))
                    .min()
            };
            let asked = plan
                .practice
                .iter()
                .any(|it| it.child == child && it.skill == needs);
            let waived = pupil.known.contains(&rule.skill) || pupil.known.contains(&needs);
            let Some(begins) = first(rule.skill).filter(|_| asked && !waived) else {
                continue;
            };
            if first(needs).is_none_or(|needed| needed >= begins) {
                early.entry((rule.skill, needs)).or_default().push(child);
            }
        }
    }
    early
        .into_iter()
        .map(|((skill, needs), children)| {
            let codes = children
                .iter()
                .map(|child| programme.children[*child].code.clone());
            Note::warning(
                None,
                msg!(
                    "sessions-too-soon",
                    skill = skill.word(),
                    needs = needs.word(),
                    children = few(codes)
                ),
            )
            .mend(msg!("sessions-play-before"))
        })
        .collect()
}

/// What a new plan has changed, in one sentence.
pub(crate) fn changed(
    programme: &Programme,
    before: &Plan,
    after: &Plan,
    changes: &[Change],
) -> Vec<Note> {
    let mut notes = Vec::new();
    let ahead = |plan: &Plan| {
        let planned = plan.sessions.iter().filter(|it| it.state == State::Planned);
        planned.count()
    };
    let lost = changes.iter().filter(|change| change.lost).count();
    let moved = changes.iter().filter(|change| !change.lost).count();
    notes.push(Note::advice(
        None,
        msg!(
            "sessions-changed",
            lost = lost,
            moved = moved,
            ahead = ahead(after),
            value = Fact::Number(100.0 * after.value, 1),
            before = Fact::Number(100.0 * before.value, 1)
        ),
    ));
    let losers: Vec<String> = std::iter::zip(&before.practice, &after.practice)
        .filter(|(old, new)| old.got >= HALF * old.target && new.got < HALF * new.target)
        .map(|(old, _)| programme.children[old.child].code.clone())
        .fold(Vec::new(), |mut codes, code| {
            if !codes.contains(&code) {
                codes.push(code);
            }
            codes
        });
    if !losers.is_empty() {
        notes.push(
            Note::warning(
                None,
                msg!("sessions-fell-behind", children = few(losers.into_iter())),
            )
            .mend(msg!("sessions-make-up")),
        );
    }
    notes
}

/// A note names so many children; the plan itself names all.
const NAMED: usize = 6;

/// The first of some codes, and how many more there are.
fn few(codes: impl Iterator<Item = String>) -> Vec<String> {
    let mut codes: Vec<String> = codes.collect();
    if codes.len() > NAMED + 1 {
        let more = codes.len() - NAMED;
        codes.truncate(NAMED);
        codes.push(format!("+{more}"));
    }
    codes
}
