//! The whole stage: bound, seating, order, games, reasons; and again after a mishap.

use chance::Chance;
use layout::programme::Unsolved;
use ledger::Ledger;
use note::Noted;
use rayon::prelude::*;

use crate::bound::{Bound, bound};
use crate::deal::deal;
use crate::exchange::{Exchanged, exchange, sum};
use crate::figures as fig;
use crate::frame::{Frame, Got, MOST_TARGETS, NEVER};
use crate::millionth;
use crate::programme::{Mishap, Programme, When};
use crate::say;
use crate::schedule::*;
use crate::seats::{FREE, Seats};
use crate::vary;
use crate::why::{MISSED, why};

/// A change of an arranged plan must be worth as much practice, minutes: people have made
/// ready for what was planned.
const WORTH_CHANGING: f64 = 0.1;

/// Further from the bound than this share of it, the seats are exchanged again.
const FAR: f64 = 0.025;

/// What weight the wishes beside practice keep then.
const WISHES_LEFT: f64 = 0.2;

/// Plans the weeks.
///
/// # Errors
/// [`Unsolved`] where the solver fails on its own account.
pub fn plan(programme: &Programme, ledger: &Ledger) -> Result<Noted<Plan>, Unsolved> {
    let frame = Frame::new(programme, &[], ledger);
    arrange(programme, frame, None, ledger)
}

/// A plan that has been made again, and what is otherwise.
#[derive(Clone, Debug, PartialEq)]
pub struct Replan {
    /// The plan, held sessions among it.
    pub plan: Plan,
    /// Outings in which somebody is elsewhere than before.
    pub changes: Vec<Change>,
}

/// An outing of a session that is not as it was planned.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Which session.
    pub when: When,
    /// Number of the outing.
    pub outing: usize,
    /// Whether it is lost as a whole.
    pub lost: bool,
    /// Slots of children (child, slot from 0) that are spent elsewhere, or at the station in
    /// another way.
    pub moved: Vec<(usize, usize)>,
}

/// Plans again what lies ahead. Sessions before `from` stay as they were; those among them
/// that are in `mishaps` as lost gave nothing. What lies ahead is changed only where a
/// mishap empties it or a change is worth it.
///
/// # Errors
/// As [`plan`].
pub fn replan(
    programme: &Programme,
    before: &Plan,
    from: When,
    mishaps: &[Mishap],
    ledger: &Ledger,
) -> Result<Noted<Replan>, Unsolved> {
    let mut frame = Frame::new(programme, mishaps, ledger);
    for sitting in &mut frame.sittings {
        if sitting.when < from && sitting.state == State::Planned {
            sitting.state = State::Held;
        }
    }
    frame.outings.clone_from(&before.outings);
    let plan = arrange(programme, frame, Some(before), ledger)?;
    let changes = changes(before, &plan.value);
    let mut notes = plan.notes;
    notes.extend(say::changed(programme, before, &plan.value, &changes));
    Ok(Noted {
        value: Replan {
            plan: plan.value,
            changes,
        },
        notes,
    })
}

fn arrange(
    programme: &Programme,
    frame: Frame,
    before: Option<&Plan>,
    ledger: &Ledger,
) -> Result<Noted<Plan>, Unsolved> {
    let mut seated: Vec<Seats> = frame
        .outings
        .iter()
        .enumerate()
        .map(|(number, kids)| {
            let mut seats = Seats::new(&frame, kids);
            if let Some(before) = before {
                take_over(&frame, before, number, &mut seats);
            }
            seats
        })
        .collect();
    let (had, spent) = held(&frame, &seated);
    let bound = bound(&frame, &had, &spent, programme.work.rounds)?;
    let effort = Effort {
        programmes: bound.programmes,
        ..Effort::default()
    };
    let least = before.map_or(0.0, |_| WORTH_CHANGING);
    let mut worked: Vec<Exchanged> = seated
        .par_iter_mut()
        .enumerate()
        .map(|(number, seats)| {
            deal(&frame, seats, &bound.aim);
            let chance = Chance::stream(programme.seed, number as u64);
            exchange(&frame, seats, programme.work.exchanges, least, 1.0, chance)
        })
        .collect();
    let far = bound.worth - worth(&frame, &seated) > FAR * bound.worth;
    if far && before.is_none() {
        // Whole groups are hard to come by here: practice goes before what is wished for.
        let again: Vec<Exchanged> = seated
            .par_iter_mut()
            .enumerate()
            .map(|(number, seats)| {
                let chance = Chance::stream(programme.seed, (1 << 16) + number as u64);
                let many = programme.work.exchanges.saturating_mul(2);
                exchange(&frame, seats, many, least, WISHES_LEFT, chance)
            })
            .collect();
        worked.extend(again);
    }
    let mut plan = read(programme, &frame, &seated, before, &bound, ledger);
    plan.effort = worked.iter().fold(effort, |effort, done| Effort {
        tried: effort.tried + done.tried,
        taken: effort.taken + done.taken,
        ..effort
    });
    let notes = say::notes(programme, &plan, ledger);
    Ok(Noted { value: plan, notes })
}

/// Worth of all practice, minutes.
fn worth(frame: &Frame, seated: &[Seats]) -> f64 {
    let mut used = vec![0.0; frame.forms_of.len()];
    let mut all = 0.0;
    for seats in seated {
        for (at, kid) in seats.kids.iter().enumerate() {
            let weeks: Vec<Got> = (0..frame.weeks)
                .map(|week| seats.week(frame, at, week, &mut used))
                .collect();
            all += frame.value(*kid, &sum(&weeks));
        }
    }
    all
}

/// Seats the children as they were, where that may still be.
fn take_over(frame: &Frame, before: &Plan, outing: usize, seats: &mut Seats) {
    for session in before.sessions.iter().filter(|it| it.outing == outing) {
        let sitting = frame.sittings.iter().position(|it| it.when == session.when);
        let Some(sitting) = sitting else { continue };
        let state = frame.sittings[sitting].state;
        if state == State::Lost || session.slots.len() != frame.slots {
            continue;
        }
        for (slot, groups) in session.slots.iter().enumerate() {
            for group in groups {
                for seat in &group.seats {
                    let form = frame.forms.iter().position(|form| {
                        form.station == group.station
                            && form.parts.len() == seat.parts.len()
                            && std::iter::zip(&form.parts, &seat.parts)
                                .all(|(a, b)| frame.acts[a.0].number == b.0)
                    });
                    let kid = seats.kids.iter().position(|kid| *kid == seat.child);
                    let (Some(form), Some(kid)) = (form, kid) else {
                        continue;
                    };
                    if state == State::Held || frame.open(seat.child, form, sitting) {
                        seats.seat(frame, kid, sitting * frame.slots + slot, form as u16);
                    }
                }
            }
        }
    }
}

/// By child the practice held, and the minutes by week and station.
fn held(frame: &Frame, seated: &[Seats]) -> (Vec<Got>, Vec<Vec<f64>>) {
    let stations = frame.forms_of.len();
    let mut had = vec![[0.0; MOST_TARGETS]; frame.kids.len()];
    let mut spent = vec![vec![0.0; stations * frame.weeks]; frame.kids.len()];
    for seats in seated {
        for (at, kid) in seats.kids.iter().enumerate() {
            for (sitting, it) in frame.sittings.iter().enumerate() {
                if it.state != State::Held {
                    continue;
                }
                for slot in sitting * frame.slots..(sitting + 1) * frame.slots {
                    let form = seats.form[at][slot];
                    if form == FREE {
                        continue;
                    }
                    let form = &frame.forms[form as usize];
                    let used = &mut spent[*kid][it.week * stations + form.station];
                    for (act, share) in &form.parts {
                        frame.play(*kid, *act, frame.slot * share, used, &mut had[*kid]);
                    }
                }
            }
        }
    }
    (had, spent)
}

fn read(
    programme: &Programme,
    frame: &Frame,
    seated: &[Seats],
    before: Option<&Plan>,
    bound: &Bound,
    ledger: &Ledger,
) -> Plan {
    let mut sessions = Vec::new();
    for (number, sitting) in frame.sittings.iter().enumerate() {
        for (outing, seats) in seated.iter().enumerate() {
            let taken = sitting.state != State::Lost;
            let slots = number * frame.slots..(number + 1) * frame.slots;
            sessions.push(Session {
                when: sitting.when,
                outing,
                state: sitting.state,
                slots: slots
                    .filter(|_| taken)
                    .map(|slot| vary::groups(programme, frame, seats, slot))
                    .collect(),
            });
        }
    }
    if let Some(before) = before {
        keep_games(before, &mut sessions);
    }
    vary::games(programme, ledger.number(fig::LEVEL_VISITS), &mut sessions);
    let stations = frame.forms_of.len();
    let mut used = vec![0.0; stations];
    let mut weeks_of: Vec<Vec<Got>> =
        vec![vec![[0.0; MOST_TARGETS]; frame.weeks]; frame.kids.len()];
    let mut stale = Stale::default();
    for seats in seated {
        stale.pairs += vary::pairs(frame, seats);
        stale.alone += seats.count.iter().flatten().filter(|it| **it == 1).count() as u32;
        for (at, kid) in seats.kids.iter().enumerate() {
            for (week, got) in weeks_of[*kid].iter_mut().enumerate() {
                *got = seats.week(frame, at, week, &mut used);
                let over = used.iter().map(|used| (used - frame.stale).max(0.0));
                stale.minutes += over.sum::<f64>();
            }
            let runs = (0..frame.all_slots()).filter(|slot| !seats.changes(frame, at, *slot));
            stale.runs += runs.count() as u32;
        }
    }
    stale.minutes = millionth(stale.minutes);
    let mut practice = Vec::new();
    let mut misses = Vec::new();
    let mut worth = 0.0;
    for (number, kid) in frame.kids.iter().enumerate() {
        let total = sum(&weeks_of[number]);
        worth += frame.value(number, &total);
        for (target, want) in kid.targets.iter().enumerate() {
            let got = total[target];
            if got < want.minutes - MISSED {
                misses.push(Miss {
                    practice: practice.len(),
                    share: millionth(got / want.minutes),
                    why: why(frame, number, target, bound),
                });
            }
            practice.push(Practice {
                child: number,
                skill: want.skill,
                side: want.side,
                target: millionth(want.minutes),
                got: millionth(got),
                weeks: weeks_of[number]
                    .iter()
                    .map(|week| millionth(week[target]))
                    .collect(),
                opens: (want.opens != NEVER).then_some(want.opens),
            });
        }
    }
    let share = |worth: f64| {
        if frame.asked > 0.0 {
            worth / frame.asked
        } else {
            0.0
        }
    };
    let value = millionth(share(worth));
    let bound = millionth(share(bound.worth)).max(value);
    Plan {
        slot_minutes: millionth(frame.slot),
        slots: frame.slots as u32,
        outings: frame.outings.clone(),
        sessions,
        practice,
        value,
        bound,
        gap: if bound > 0.0 {
            (bound - value) / bound
        } else {
            0.0
        },
        misses,
        stale,
        effort: Effort::default(),
    }
}

/// Games of the sessions that were held stay as they were.
fn keep_games(before: &Plan, sessions: &mut [Session]) {
    for session in sessions.iter_mut().filter(|it| it.state == State::Held) {
        let key = (session.when, session.outing);
        if let Some(old) = before
            .sessions
            .iter()
            .find(|it| (it.when, it.outing) == key)
        {
            session.slots.clone_from(&old.slots);
        }
    }
}

fn changes(before: &Plan, after: &Plan) -> Vec<Change> {
    let mut changes = Vec::new();
    for (old, new) in std::iter::zip(&before.sessions, &after.sessions) {
        let lost = new.state == State::Lost;
        let mut moved = Vec::new();
        for child in &after.outings[new.outing] {
            for slot in 0..after.slots as usize {
                let at = |session| {
                    let session: &Session = session;
                    let groups = session.slots.get(slot)?;
                    groups.iter().find_map(|group| {
                        let seat = group.seats.iter().find(|seat| seat.child == *child)?;
                        Some((group.station, &seat.parts))
                    })
                };
                if at(old) != at(new) {
                    moved.push((*child, slot));
                }
            }
        }
        if !moved.is_empty() || lost && old.state != State::Lost {
            changes.push(Change {
                when: new.when,
                outing: new.outing,
                lost,
                moved,
            });
        }
    }
    changes
}
