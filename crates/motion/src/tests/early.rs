//! Early forms differ where their rows say, and nowhere else.

use std::collections::BTreeSet;

use super::*;
use crate::{EARLY, Early, Edit, Print, Role, early, figures, line};

/// A clip long enough for every row.
fn pairs(mut check: impl FnMut(&Early, &Clip, &Clip, &Model)) {
    every(|clip, model| {
        for row in early(clip.skill) {
            check(row, clip, &row.of(clip, model), model);
        }
    });
}

#[test]
fn every_early_form_is_a_sound_clip() {
    pairs(|_, _, form, model| sound(form, model));
}

#[test]
fn every_taught_skill_has_early_forms_with_names_of_their_own() {
    let names: BTreeSet<(Skill, &str)> = EARLY.iter().map(|row| (row.skill, row.name)).collect();
    assert_eq!(names.len(), EARLY.len());
    for skill in Skill::TAUGHT {
        assert!(early(skill).count() >= 2, "{}", skill.word());
    }
}

fn meant(row: &Early, print: &Print, clip: &Clip) -> bool {
    row.edits.iter().any(|(scope, _)| scope.holds(print, clip))
}

/// A print that no row means keeps its foot, place and facing; its landing moves only by
/// the pauses that the row says.
#[test]
fn what_no_row_means_stays_as_it_was() {
    pairs(|row, well, form, model| {
        let told = format!("{} {}", row.skill.word(), row.name);
        let pauses: Vec<f64> = row
            .edits
            .iter()
            .flat_map(|(scope, edit)| match edit {
                Edit::Pause(key) => well
                    .prints
                    .iter()
                    .filter(|print| scope.holds(print, well))
                    .map(|print| (print.lands, model.size(*key)))
                    .collect::<Vec<_>>(),
                _ => Vec::new(),
            })
            .map(|(lands, _)| lands)
            .collect();
        let pause = row
            .edits
            .iter()
            .find_map(|(_, edit)| match edit {
                Edit::Pause(key) => Some(model.size(*key)),
                _ => None,
            })
            .unwrap_or(0.0);
        let late = |lands: f64| pauses.iter().filter(|at| **at <= lands).count() as f64 * pause;
        let mut kept = 0;
        for print in well.prints.iter().filter(|print| !meant(row, print, well)) {
            let same = form.prints.iter().any(|other| {
                let place = other.side == print.side
                    && other.role == print.role
                    && other.count == print.count
                    && other.at == print.at
                    && other.toes == print.toes;
                // where a foot must wait until the other is down, it also lands after it
                let waits = row.edits.iter().any(|(_, edit)| *edit == Edit::Step);
                let time = (other.lands - print.lands - late(print.lands)).abs() < ROUNDED
                    || (waits && other.lands > print.lands);
                place && time
            });
            assert!(same, "{told}: {print:?} is not in\n{:#?}", form.prints);
            kept += 1;
        }
        assert!(kept > 0, "{told}");
        assert_ne!(well.prints, form.prints, "{told} changes nothing");
    });
}

fn feet(clip: &Clip) -> String {
    line(clip)
        .iter()
        .filter_map(|message| match message.facts.first() {
            Some((_, note::Fact::Text(text))) => Some(text.clone()),
            _ => None,
        })
        .collect::<Vec<_>>()
        .join("")
}

fn form(skill: Skill, name: &str) -> (Clip, Clip) {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let well = free(skill, Side::Right, 5.0, &model);
    let row = early(skill).find(|row| row.name == name).expect("a row");
    let form = row.of(&well, &model);
    (well, form)
}

/// The sequences of children.md 4, and what the early forms make of them.
#[test]
fn feet_land_in_the_order_of_the_skill() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    for (skill, begins) in [
        (Skill::Walk, "RLRL"),
        (Skill::Run, "RLRL"),
        (Skill::Jump, "BBB"),
        (Skill::Hop, "RRRR"),
        (Skill::Leap, "RLRL"),
        (Skill::Gallop, "RLRL"),
        (Skill::Slide, "RLRL"),
        (Skill::Skip, "RRLLRRLL"),
    ] {
        let line = feet(&free(skill, Side::Right, 5.0, &model));
        assert!(line.starts_with(begins), "{}: {line}", skill.word());
    }
    let (_, changes) = form(Skill::Gallop, "lead-changes");
    assert!(feet(&changes).starts_with("RLRLRLRL"), "{}", feet(&changes));
    let leads = changes.contacts();
    assert!(leads.contains(&footfall::Contact::L) && leads.contains(&footfall::Contact::R));
    let (_, sided) = form(Skill::Skip, "one-sided");
    assert!(feet(&sided).starts_with("RRLRRL"), "{}", feet(&sided));
    let (_, taps) = form(Skill::Hop, "taps");
    assert!(feet(&taps).starts_with("RLRRLR"), "{}", feet(&taps));
    let (_, changes) = form(Skill::Hop, "changes-foot");
    assert!(feet(&changes).starts_with("RRLL"), "{}", feet(&changes));
    let (_, apart) = form(Skill::Jump, "one-after-the-other");
    assert!(feet(&apart).starts_with("RLRL"), "{}", feet(&apart));
}

#[test]
fn forms_without_flight_have_none() {
    for (skill, name) in [
        (Skill::Run, "shuffles"),
        (Skill::Slide, "drags"),
        (Skill::Jump, "steps-over"),
    ] {
        let (well, form) = form(skill, name);
        assert!(!well.flights().is_empty());
        assert!(
            form.flights().is_empty(),
            "{name} flies: {:?}",
            form.flights()
        );
    }
    // a big step: only the running steps fly
    let (well, step) = form(Skill::Leap, "big-step");
    assert_eq!(step.flights().len(), well.flights().len() - 1);
}

/// In a slide the closing foot comes to the leading one; where feet cross, it passes.
#[test]
fn crossed_feet_are_crossed() {
    let (well, crossed) = form(Skill::Slide, "crosses");
    let ahead = |clip: &Clip, count: usize| {
        let x = |role: Role| {
            let print = clip
                .prints
                .iter()
                .find(|p| p.role == role && p.count == count);
            print.map(|print| print.at.x).expect("a print")
        };
        x(Role::Closing) - x(Role::Contact)
    };
    assert!(ahead(&well, 1) < 0.0 && ahead(&crossed, 1) > 0.0);
}

/// A row of this test's own.
fn done(skill: Skill, edits: &'static [(crate::Scope, Edit)]) -> (Clip, Clip) {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let well = free(skill, Side::Right, 5.0, &model);
    let row = Early {
        skill,
        name: "own",
        check: "-",
        says: "-",
        edits,
    };
    let form = row.of(&well, &model);
    sound(&form, &model);
    (well, form)
}

const LEFT_JUMPS: crate::Scope = crate::Scope {
    roles: &[Role::Start, Role::Contact],
    which: crate::Which::Other,
    by: None,
    counts: (0, 1, usize::MAX),
};
const HOPS: crate::Scope = crate::Scope {
    roles: &[Role::Contact],
    which: crate::Which::Any,
    by: None,
    counts: (2, 1, usize::MAX),
};
const LANDED: crate::Scope = crate::Scope {
    roles: &[Role::Contact],
    which: crate::Which::Lead,
    by: None,
    counts: (0, 1, usize::MAX),
};

#[test]
fn a_foot_that_lifts_earlier_lands_as_it_did() {
    let (well, form) = done(Skill::Jump, &[(LEFT_JUMPS, Edit::Lift(figures::LATE))]);
    for (before, after) in well.prints.iter().zip(&form.prints) {
        assert_eq!((before.lands, before.at), (after.lands, after.at));
        let earlier = before.lifts.zip(after.lifts).map(|(a, b)| a - b);
        let meant = before.side == Side::Left && before.lifts.is_some();
        assert_eq!(
            meant,
            earlier.is_some_and(|by| by > 0.1),
            "{before:?} {after:?}"
        );
    }
}

/// The figure of the key, 0.6, is the share of the way that is missing.
#[test]
fn a_shorter_flight_moves_all_that_follows() {
    let (well, form) = done(Skill::Hop, &[(HOPS, Edit::Short(figures::BEHIND))]);
    let places = |clip: &Clip| -> Vec<f64> {
        let contacts = clip
            .prints
            .iter()
            .filter(|print| print.role == Role::Contact);
        contacts.map(|print| print.at.x).collect()
    };
    let (long, short) = (places(&well), places(&form));
    assert!(long.len() > 3 && long.len() == short.len());
    for (long, short) in long.windows(2).zip(short.windows(2)) {
        let ratio = (short[1] - short[0]) / (long[1] - long[0]);
        assert!((ratio - 0.4).abs() < 1e-4, "{ratio}");
    }
}

#[test]
fn who_steps_on_steps_once_at_the_end() {
    let (well, form) = done(
        Skill::Jump,
        &[(LANDED, Edit::StepOn(figures::TAP_TIME, figures::PAST))],
    );
    assert_eq!(form.prints.len(), well.prints.len() + 1);
    let last = form.prints.last().expect("a print");
    assert_eq!(
        (last.role, last.side, last.lifts),
        (Role::Run, Side::Right, None)
    );
    assert!(form.end > last.lands && form.end >= well.end);
}
