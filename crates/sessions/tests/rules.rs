//! Every rule of the room, recomputed from what comes out.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

mod common;

use std::collections::BTreeMap;

use children::{Side, Skill};
use ledger::Ledger;
use sessions::*;

/// Minutes. Practice is handed on to 1e-6, and summed over a few hundred slots here.
const SAME: f64 = 1e-4;

/// What the issue asks: the plan comes this near its bound.
const NEAR: f64 = 0.03;

fn check(n: u64) {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let programme = common::programme(n, &common::case(n));
    let plan = plan(&programme, &ledger).expect("solves").value;
    assert!(
        plan.value <= plan.bound && plan.gap <= NEAR,
        "{n}: {plan:.3?}"
    );
    hold(&programme, &plan);
}

/// The rules, by the words of the room's header.
fn hold(programme: &Programme, plan: &Plan) {
    let staff = programme.week.staff as usize;
    let mut seen = vec![0; programme.children.len()];
    for outing in &plan.outings {
        // CFOC 1.1.1.2 (children.md 5.3): 7 to one at three years, 8 from four; straight
        // between. A child is its share of an adult.
        let share = |child: &usize| 1.0 / (7.0 + (programme.children[*child].age - 3.0).min(1.0));
        let adults: f64 = outing.iter().map(share).sum();
        assert!(adults <= staff as f64 + 1e-9);
        assert!(outing.len() as f64 <= programme.week.yard_area / 7.0);
        outing.iter().for_each(|child| seen[*child] += 1);
    }
    assert!(
        seen.iter().all(|times| *times == 1),
        "each child in one outing"
    );
    let youngest = programme
        .children
        .iter()
        .map(|child| child.age)
        .fold(9.0, f64::min);
    let largest = 14.0 + 2.0 * (youngest - 3.0).clamp(0.0, 1.0);
    let mut minutes: BTreeMap<(usize, u32, usize), f64> = BTreeMap::new();
    let mut got: BTreeMap<(usize, Skill, Option<Side>), f64> = BTreeMap::new();
    for session in &plan.sessions {
        let outing = &plan.outings[session.outing];
        let mut before: BTreeMap<usize, (usize, u32)> = BTreeMap::new();
        for groups in &session.slots {
            let mut here: BTreeMap<usize, (usize, u32)> = BTreeMap::new();
            assert!(groups.len() <= 2 * staff, "two stations to an adult");
            for group in groups {
                let station = &programme.stations[group.station];
                assert_eq!(
                    groups
                        .iter()
                        .filter(|it| it.station == group.station)
                        .count(),
                    1
                );
                let gap = station
                    .activities
                    .iter()
                    .filter(|it| it.word.split(':').next() == Some(&group.gait))
                    .filter(|it| it.alone)
                    .flat_map(|it| &it.plays)
                    .map(|play| play.pass_s)
                    .fold(5.0, f64::max);
                // children.md 5.5: wait = (n/k - 1) t, 15 s at most.
                let line = group.seats.len().div_ceil(station.tracks as usize);
                assert!(
                    (line - 1) as f64 * gap <= 15.0 + 1e-9,
                    "{line} in line, {gap} s"
                );
                // Who is away for the shortest time and finds all others in line, 2 s of the way
                // back (ledger `sessions.dawdle`) not taken.
                let away = group
                    .seats
                    .iter()
                    .flat_map(|seat| seat.parts.iter().map(move |part| (seat.child, part.0)))
                    .flat_map(|(child, activity)| {
                        let plays = station.activities[activity].plays.iter();
                        plays.filter(move |play| play.child == child)
                    })
                    .map(|play| play.pass_s + play.walk_back_s - 2.0)
                    .fold(f64::INFINITY, f64::min);
                assert!(line == 1 || line as f64 * gap - away <= 15.0 + 1e-9);
                assert!(group.seats.len() as f64 <= largest);
                for seat in &group.seats {
                    assert!(outing.contains(&seat.child));
                    // The task changes after 12 minutes (ledger `sessions.task-change`).
                    let stays = match before.get(&seat.child) {
                        Some((station, slots)) if *station == group.station => slots + 1,
                        _ => 1,
                    };
                    assert!(f64::from(stays) * plan.slot_minutes <= 12.0 + 1e-9);
                    let twice = here.insert(seat.child, (group.station, stays));
                    assert!(twice.is_none(), "twice in a slot");
                    let shares: f64 = seat.parts.iter().map(|part| part.1).sum();
                    assert!((shares - 1.0).abs() < 1e-12);
                    for (activity, share) in &seat.parts {
                        let activity = &station.activities[*activity];
                        assert_eq!(activity.word.split(':').next(), Some(group.gait.as_str()));
                        let opens = plan
                            .practice
                            .iter()
                            .find(|it| it.child == seat.child && it.skill == activity.skill)
                            .map_or(Some(1), |it| it.opens);
                        assert!(opens.is_some_and(|week| week <= session.when.week));
                        let play = activity.plays.iter().find(|play| play.child == seat.child);
                        let key = (seat.child, session.when.week, group.station);
                        let used = minutes.entry(key).or_default();
                        let time = share * plan.slot_minutes;
                        let whole = (15.0 - *used).clamp(0.0, time);
                        let half = (30.0 - *used - whole).clamp(0.0, time - whole);
                        *used += time;
                        for (skill, side, e) in &play.expect("it gives the child something").yields
                        {
                            *got.entry((seat.child, *skill, *side)).or_default() +=
                                e * (whole + half / 2.0);
                        }
                    }
                }
            }
            before = here;
        }
    }
    let (mut worth, mut asked) = (0.0, 0.0);
    let mut missed = 0;
    for (number, practice) in plan.practice.iter().enumerate() {
        let key = (practice.child, practice.skill, practice.side);
        let sum = got.get(&key).copied().unwrap_or(0.0);
        assert!(
            (practice.got - sum).abs() < SAME,
            "{key:?}: {} not {sum}",
            practice.got
        );
        assert!((practice.weeks.iter().sum::<f64>() - sum).abs() < SAME);
        let half = practice.target / 2.0;
        worth += 1.25 * sum.min(half) + 0.75 * (sum - half).clamp(0.0, half);
        asked += practice.target;
        // Who misses a target is told, and only those.
        let told = plan.misses.iter().any(|miss| miss.practice == number);
        assert_eq!(told, practice.got < practice.target - 0.01);
        missed += usize::from(told);
    }
    assert_eq!(missed, plan.misses.len());
    assert!((plan.value - worth / asked).abs() < 1e-5);
    assert_eq!(plan.stale.runs, 0);
}

/// All thirty generated classes, in three lots so that they run side by side.
#[test]
fn rules_and_bound_hold_in_the_first_ten_classes() {
    (0..10).for_each(check);
}

#[test]
fn rules_and_bound_hold_in_the_second_ten_classes() {
    (10..20).for_each(check);
}

#[test]
fn rules_and_bound_hold_in_the_third_ten_classes() {
    (20..30).for_each(check);
}

/// Gallop before slide, hop and gallop before skip (children.md 2.6): nobody comes to the
/// later without having practised the earlier, where a station serves it.
#[test]
fn new_skills_come_when_what_they_need_has_been_practised() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let mut seen = 0;
    for n in [5, 6, 13] {
        let programme = common::programme(n, &common::case(n));
        let plan = plan(&programme, &ledger).expect("solves").value;
        for rule in usual_order() {
            let needs = rule.needs.expect("the usual order has needs");
            for (child, pupil) in programme.children.iter().enumerate() {
                if pupil.known.contains(&rule.skill) || pupil.known.contains(&needs) {
                    continue;
                }
                let first = |skill: Skill| {
                    let of = plan.practice.iter();
                    of.filter(|it| it.child == child && it.skill == skill)
                        .filter_map(|it| it.weeks.iter().position(|got| *got > 0.0))
                        .min()
                };
                let served = programme
                    .stations
                    .iter()
                    .flat_map(|station| &station.activities)
                    .filter(|activity| activity.skill == needs)
                    .any(|activity| activity.plays.iter().any(|play| play.child == child));
                if let (true, Some(later)) = (served, first(rule.skill)) {
                    let sooner = first(needs);
                    assert!(
                        sooner.is_some_and(|week| week < later),
                        "{n}: {child} {rule:?}"
                    );
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 20, "only {seen} children came to a skill that waits");
}

/// Games: no level before three visits to the one below (ledger `sessions.level-visits`),
/// and none over and over while another is open.
#[test]
fn games_change_and_climb() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let programme = common::programme(4, &common::case(4));
    let plan = plan(&programme, &ledger).expect("solves").value;
    let mut visits: BTreeMap<(usize, usize, String, u8), u32> = BTreeMap::new();
    let mut highest = 0;
    for group in plan
        .sessions
        .iter()
        .flat_map(|it| it.slots.iter().flatten())
    {
        let game = group.game.expect("every gait has games of level 1");
        let game = &programme.stations[group.station].games[game];
        assert_eq!(game.gait, group.gait);
        highest = highest.max(game.level);
        for seat in &group.seats {
            let key = |level| (seat.child, group.station, game.gait.clone(), level);
            if game.level > 1 {
                assert!(visits.get(&key(game.level - 1)).copied().unwrap_or(0) >= 3);
            }
            *visits.entry(key(game.level)).or_default() += 1;
        }
    }
    assert!(highest > 1, "nobody climbed");
}

#[test]
fn the_same_programme_gives_the_same_plan_on_any_threads() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let mut programme = common::programme(2, &common::case(2));
    programme.work.exchanges = 20;
    let many = plan(&programme, &ledger).expect("solves");
    let pool = rayon::ThreadPoolBuilder::new()
        .num_threads(1)
        .build()
        .expect("a thread");
    let one = pool.install(|| plan(&programme, &ledger)).expect("solves");
    assert_eq!(many, one);
    let told = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .expect("threads");
        let manner = Manner {
            runs: 5,
            ..Manner::usual(&ledger)
        };
        pool.install(|| simulate(&programme, &one.value, &manner, &ledger))
    };
    assert_eq!(told(1), told(3));
}
