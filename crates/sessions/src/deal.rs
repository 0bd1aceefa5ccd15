//! The first seating, slot by slot: whoever is furthest behind what the bound's prices
//! would give goes first, so that practice is spread over the weeks.

use crate::frame::{Frame, Got, MOST_TARGETS};
use crate::schedule::State;
use crate::seats::{FREE, Seats};

/// Behind by more than this many times is as far behind.
const FAR: f64 = 3.0;

/// Weight of practice that the prices do not ask for.
const UNASKED: f64 = 0.05;

/// Fills the planned slots that are not filled yet.
pub(crate) fn deal(frame: &Frame, seats: &mut Seats, aim: &[Got]) {
    let stations = frame.forms_of.len();
    let per_week = frame.sittings.len() / frame.weeks.max(1);
    let mut got = vec![[0.0; MOST_TARGETS]; seats.kids.len()];
    let mut used = vec![vec![0.0; stations]; seats.kids.len()];
    for (number, sitting) in frame.sittings.iter().enumerate() {
        if number % per_week == 0 {
            used.iter_mut().for_each(|used| used.fill(0.0));
        }
        if sitting.state == State::Lost {
            continue;
        }
        for slot in number * frame.slots..(number + 1) * frame.slots {
            if sitting.state == State::Planned {
                let wishes = wishes(frame, seats, number, slot, aim, &got, &used);
                fill(frame, seats, slot, &wishes);
            }
            for kid in 0..seats.kids.len() {
                let form = seats.form[kid][slot];
                if form == FREE {
                    continue;
                }
                let form = &frame.forms[form as usize];
                for (act, share) in &form.parts {
                    let minutes = frame.slot * share;
                    let used = &mut used[kid][form.station];
                    frame.play(seats.kids[kid], *act, minutes, used, &mut got[kid]);
                }
            }
        }
    }
}

/// By child and form, how much it is wanted in a slot; 0 where it may not be.
fn wishes(
    frame: &Frame,
    seats: &Seats,
    sitting: usize,
    slot: usize,
    aim: &[Got],
    got: &[Got],
    used: &[Vec<f64>],
) -> Vec<Vec<f64>> {
    let all = frame.all_slots() as f64;
    let per_week = frame.sittings.len() / frame.weeks.max(1);
    let mut wishes = vec![vec![0.0; frame.forms.len()]; seats.kids.len()];
    for (at, kid) in seats.kids.iter().enumerate() {
        let wants = &frame.kids[*kid].targets;
        for (number, form) in frame.forms.iter().enumerate() {
            if !frame.open(*kid, number, sitting) {
                continue;
            }
            let mut more = got[at];
            let mut spent = used[at][form.station];
            for (act, share) in &form.parts {
                frame.play(*kid, *act, frame.slot * share, &mut spent, &mut more);
            }
            for (target, want) in wants.iter().enumerate() {
                let step = more[target] - got[at][target];
                if step <= 0.0 {
                    continue;
                }
                let opens = (want.opens.saturating_sub(1) as usize * per_week * frame.slots) as f64;
                let along = ((slot + 1) as f64 - opens) / (all - opens).max(1.0);
                let due = aim[*kid][target] * along.clamp(0.0, 1.0);
                let behind = (due / (got[at][target] + step / 2.0)).min(FAR);
                wishes[at][number] += step * behind.max(UNASKED);
            }
        }
    }
    wishes
}

/// Opens stations, the most wanted first, and seats those who want them most.
fn fill(frame: &Frame, seats: &mut Seats, slot: usize, wishes: &[Vec<f64>]) {
    // The form of a gait that a child wants most, where it wants one.
    let wish = |kid: usize, gait: usize| -> (f64, usize) {
        let forms = frame.gaits[gait].forms.iter();
        forms.fold((0.0, 0), |best, form| {
            let wish = wishes[kid][*form];
            if wish > best.0 { (wish, *form) } else { best }
        })
    };
    let may = |seats: &mut Seats, kid: usize, gait: usize| {
        let (wish, form) = wish(kid, gait);
        if wish <= 0.0 || seats.form[kid][slot] != FREE {
            return false;
        }
        seats.form[kid][slot] = form as u16;
        let may = seats.changes(frame, kid, slot);
        seats.form[kid][slot] = FREE;
        may
    };
    while seats.open[slot] < frame.at_once {
        let mut best: Option<(f64, usize, Vec<usize>)> = None;
        for (number, gait) in frame.gaits.iter().enumerate() {
            if seats.count[slot][gait.station] > 0 {
                continue;
            }
            let mut keen: Vec<usize> = (0..seats.kids.len())
                .filter(|kid| may(seats, *kid, number))
                .collect();
            keen.sort_by(|a, b| {
                let (a_wish, b_wish) = (wish(*a, number).0, wish(*b, number).0);
                b_wish.total_cmp(&a_wish).then(a.cmp(b))
            });
            keen.truncate(gait.places);
            let sum: f64 = keen.iter().map(|kid| wish(*kid, number).0).sum();
            if !keen.is_empty() && best.as_ref().is_none_or(|best| sum > best.0) {
                best = Some((sum, number, keen));
            }
        }
        let Some((_, gait, keen)) = best else {
            break;
        };
        for kid in keen {
            seats.seat(frame, kid, slot, wish(kid, gait).1 as u16);
        }
    }
    for kid in 0..seats.kids.len() {
        let mut best = (0.0, 0);
        for station in 0..frame.forms_of.len() {
            let played = seats.played[slot][station];
            if played == FREE {
                continue;
            }
            let gait = played as usize;
            let room = usize::from(seats.count[slot][station]) < frame.gaits[gait].places;
            let wish = wish(kid, gait);
            if room && wish.0 > best.0 && may(seats, kid, gait) {
                best = wish;
            }
        }
        if best.0 > 0.0 {
            seats.seat(frame, kid, slot, best.1 as u16);
        }
    }
}
