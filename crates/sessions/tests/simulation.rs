//! The simulated sessions against the plan's averages and against their own laws.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

mod common;

use chance::Chance;
use ledger::Ledger;
use sessions::simulate::{Manner, simulate};
use sessions::turn::{Failing, contact, mean_turn, turn};
use sessions::*;

fn planned(n: u64) -> (Ledger, Programme, Plan) {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let mut programme = common::programme(n, &common::case(n));
    programme.work.exchanges = 40;
    let plan = plan(&programme, &ledger).expect("solves").value;
    (ledger, programme, plan)
}

/// What a turn gives on average, for every way of failing: four standard errors.
#[test]
fn turns_average_to_their_closed_form() {
    const TURNS: u32 = 40_000;
    let play = Play {
        child: 0,
        yields: Vec::new(),
        flights: 6,
        good: 3.2,
        pass_s: 4.5,
        walk_back_s: 7.0,
    };
    let p = contact(6, 3.2);
    for failing in [Failing::GoOn, Failing::GoBack, Failing::Retry] {
        let mut chance = Chance::new(5);
        let mut sums = [[0.0; 2]; 3];
        for _ in 0..TURNS {
            let had = turn(&play, p, failing, 2.0, &mut chance);
            for (sum, value) in sums
                .iter_mut()
                .zip([f64::from(had.good), had.pass_s, had.back_s])
            {
                sum[0] += value;
                sum[1] += value * value;
            }
        }
        let wanted = mean_turn(&play, p, failing, 2.0);
        for (sum, wanted) in sums.into_iter().zip([wanted.0, wanted.1, wanted.2]) {
            let many = f64::from(TURNS);
            let mean = sum[0] / many;
            let error = ((sum[1] / many - mean * mean).max(0.0) / many).sqrt();
            assert!(
                (mean - wanted).abs() <= 4.0 * error + 1e-9,
                "{failing:?}: {mean} {wanted}"
            );
        }
    }
}

/// Seconds on the marking, on the way back and in line are the child's slots.
#[test]
fn seconds_add_up() {
    let (ledger, programme, plan) = planned(5);
    let manner = Manner {
        attendance: 1.0,
        runs: 3,
        ..Manner::usual(&ledger)
    };
    let told = simulate(&programme, &plan, &manner, &ledger);
    let mut slots = vec![0; programme.children.len()];
    let groups = plan
        .sessions
        .iter()
        .flat_map(|it| it.slots.iter().flatten());
    groups
        .flat_map(|it| &it.seats)
        .for_each(|seat| slots[seat.child] += 1);
    for (child, slots) in std::iter::zip(&told.children, slots) {
        let sum = child.active.mean + child.walking.mean + child.waiting.mean;
        let whole = f64::from(slots) * (plan.slot_minutes - manner.settle_s / 60.0);
        assert!((sum - whole).abs() < 1e-6, "{sum} of {whole}");
    }
}

/// In the plan's own manner: contacts, active minutes and waiting come out as the closed form
/// says. What is left beside chance are the ends of slots: at each, a child may start one turn
/// more than the mean, or have its last cut short.
#[test]
fn the_plan_s_averages_come_out() {
    for n in [0, 5, 20] {
        let (ledger, programme, plan) = planned(n);
        let told = simulate(&programme, &plan, &Manner::as_planned(30), &ledger);
        let (mut ours, mut wanted) = ([0.0; 3], [0.0; 3]);
        for child in &told.children {
            let have = [child.contacts.mean, child.active.mean, child.waiting.mean];
            let closed = [
                child.contacts_closed,
                child.active_closed,
                child.waiting_closed,
            ];
            for at in 0..3 {
                ours[at] += have[at];
                wanted[at] += closed[at];
            }
            // One turn of about twenty at each end, both ways.
            assert!(
                (have[0] - closed[0]).abs() <= 0.05 * closed[0] + 4.0 * child.contacts.error(30)
            );
        }
        for at in 0..2 {
            assert!(
                (ours[at] / wanted[at] - 1.0).abs() < 0.02,
                "{n} {at}: {ours:?} {wanted:?}"
            );
        }
        // The first lap, in which all stand in line, is waited for once a slot.
        let slots: usize = plan
            .sessions
            .iter()
            .flat_map(|it| it.slots.iter().flatten())
            .map(|it| it.seats.len())
            .sum();
        assert!(
            (ours[2] - wanted[2]).abs() < slots as f64 * 7.5 / 60.0,
            "{n}: {ours:?} {wanted:?}"
        );
    }
}

/// Nobody waits longer than the limit while all go on to the end, however they dawdle.
#[test]
fn the_limit_holds_as_planned() {
    for n in [0, 7, 13] {
        let (ledger, programme, plan) = planned(n);
        let manner = Manner {
            dawdle_s: 2.0,
            attendance: 0.9,
            ..Manner::as_planned(4)
        };
        let told = simulate(&programme, &plan, &manner, &ledger);
        let longest = told
            .stations
            .iter()
            .map(|it| it.longest)
            .fold(0.0, f64::max);
        assert!(longest <= 15.0 + 1e-6, "{n}: {longest}");
        assert!(told.stations.iter().all(|it| it.over == 0.0));
        assert!(told.stations.iter().map(|it| it.turns).sum::<u64>() > 1000);
    }
}

/// Children who stay away leave shorter lines; who goes back where it fails has more turns.
#[test]
fn manners_matter_as_they_should() {
    let (ledger, programme, plan) = planned(7);
    let base = Manner {
        dawdle_s: 2.0,
        ..Manner::as_planned(10)
    };
    let sum = |manner: &Manner, of: fn(&sessions::simulate::Expected) -> f64| {
        let told = simulate(&programme, &plan, manner, &ledger);
        told.children.iter().map(of).sum::<f64>()
    };
    let away = Manner {
        attendance: 0.6,
        ..base
    };
    let contacts = |it: &sessions::simulate::Expected| it.contacts.mean;
    let waiting = |it: &sessions::simulate::Expected| it.waiting.mean;
    assert!(sum(&away, waiting) < 0.6 * sum(&base, waiting));
    let share = sum(&away, contacts) / sum(&base, contacts);
    assert!(share > 0.6 && share < 0.9, "{share}");
    let settle = Manner {
        settle_s: 60.0,
        ..base
    };
    assert!(sum(&settle, contacts) < sum(&base, contacts));
}
