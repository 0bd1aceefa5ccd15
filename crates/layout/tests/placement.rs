//! Layouts against another geometry library, and the laws of a placement.

mod common;

use std::sync::atomic::{AtomicUsize, Ordering};

use common::{Motion, STILL, WORK, cases, oblong, world};
use geo::coord;
use layout::{Pose, Progress, Surroundings, Task, Work, audit, plan};
use ledger::Ledger;
use serde_json::Value;

/// Source: `oracle/placement.py`, shapely's intersections and differences on the envelopes
/// that this planner stored. The planner must still lay them so, to the micrometre.
#[test]
fn shapely_finds_no_overlap_in_what_is_laid() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let stored: Value =
        serde_json::from_str(include_str!("../oracle/placement.json")).expect("the figures read");
    for (case, (scale, sizes)) in cases().into_iter().enumerate() {
        let world = world(STILL, scale, &sizes);
        let plan = world.plan(&ledger);
        let case = &stored["cases"][case];
        let envelopes = case["envelopes"].as_array().expect("envelopes");
        assert_eq!(envelopes.len(), plan.placed.len());
        for (placed, stored) in std::iter::zip(&plan.placed, envelopes) {
            let Pose { at, turn, mirrored } = placed.pose;
            let laid = world.candidates[placed.candidate]
                .figure
                .placed(at, turn, mirrored)
                .envelope;
            for (p, stored) in
                std::iter::zip(laid.exterior().coords(), stored.as_array().expect("a ring"))
            {
                assert!((p.x - stored[0].as_f64().expect("x")).abs() < 1e-6);
                assert!((p.y - stored[1].as_f64().expect("y")).abs() < 1e-6);
            }
        }
        // m2, of envelopes of several square metres.
        assert!(case["shapely"]["overlap"].as_f64().expect("a figure") <= 1e-9);
        assert!(case["shapely"]["outside"].as_f64().expect("a figure") <= 1e-9);
        assert!(
            plan.checks
                .iter()
                .all(|check| !check.rule.contains("ground") || check.pass)
        );
        assert!(
            plan.checks
                .iter()
                .all(|check| check.rule != "envelopes-apart" || check.pass)
        );
        assert!(plan.dealt.value <= plan.bound && plan.proven);
        let shape = &plan.shape;
        assert!(plan.dealt.value <= shape.bound && shape.bound <= plan.bound);
        let laid = |k: &usize| plan.placed.iter().any(|placed| placed.candidate == *k);
        for apart in &shape.apart {
            assert!(!apart.iter().all(laid), "{apart:?} lie together");
        }
    }
}

/// Source: Z. Moroń, O rozkładach prostokątów na kwadraty, Przegląd Matematyczno-Fizyczny 3
/// (1925): squares of 18, 15, 14, 10, 9, 8, 7, 4 and 1 fill 33 x 32, in one way but for
/// turning it over. The seven large ones are laid here, each a little smaller. Figures that
/// are pushed to a side one after the other leave one over; figures that push each other out
/// find the way.
#[test]
fn cramped_figures_find_the_squared_rectangle() {
    /// Metres of a unit, and of what each square lacks.
    const UNIT: f64 = 0.7;
    const LESS: f64 = 0.3;
    let ledger = Ledger::shipped().expect("the ledger reads");
    let squares = [18.0, 15.0, 14.0, 10.0, 9.0, 8.0, 7.0].map(|side| side * UNIT - LESS);
    let mut world = oblong(
        (33.0 * UNIT, 32.0 * UNIT),
        &squares.map(|side| (side, side)),
    );
    // Time for all of them.
    world.sessions = 6;
    let many = |packing: usize| {
        let work = Work { packing, ..WORK };
        world.plan_by(work, &ledger).placed.len()
    };
    assert!(many(0) < squares.len());
    assert_eq!(many(4_000), squares.len());
}

#[test]
fn threads_do_not_change_the_answer() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let (scale, sizes) = cases().remove(1);
    let world = world(STILL, scale, &sizes);
    let with = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .expect("a pool");
        pool.install(|| world.plan(&ledger))
    };
    let one = with(1);
    assert_eq!(one, with(2));
    assert_eq!(one, with(8));
}

#[test]
fn a_stop_is_told_and_what_was_found_stands() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let (scale, sizes) = cases().remove(1);
    let world = world(STILL, scale, &sizes);
    let task = Task {
        question: world.question(&ledger),
        week: world.week(),
        yard: &world.yard,
        ground: &world.ground,
        seed: 7,
        work: WORK,
    };
    let heard = AtomicUsize::new(0);
    let until_laying = |progress: Progress| {
        heard.fetch_add(1, Ordering::Relaxed);
        !matches!(progress, Progress::Exchanging(..))
    };
    let plan = plan(&task, &ledger, &until_laying).expect("it solves");
    assert!(plan.stopped && heard.into_inner() > 0);
    assert!(!plan.placed.is_empty() && plan.dealt.value > 0.0);
    assert!(plan.bound >= plan.dealt.value);
    assert!(
        plan.checks
            .iter()
            .all(|check| check.rule != "envelopes-apart" || check.pass)
    );
}

/// What is locked stays where it is, though it lies badly; the audit says so.
#[test]
fn a_locked_marking_is_not_moved() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let (scale, sizes) = cases().remove(0);
    let mut world = world(STILL, scale, &sizes);
    let pose = Pose {
        at: coord! { x: 0.1, y: 0.2 },
        turn: 0.2,
        mirrored: false,
    };
    world.candidates[3].locked = Some(pose);
    let plan = world.plan(&ledger);
    let kept = plan
        .placed
        .iter()
        .find(|placed| placed.candidate == 3)
        .expect("it is there");
    assert_eq!(kept.pose, pose);
    let told = plan.checks.iter().any(|check| {
        check.rule == "envelope-on-ground"
            && check.marking.as_deref() == Some("figure03")
            && !check.pass
    });
    assert!(told, "the audit did not say that it leaves the ground");
}

/// Where the yard lies and how it is turned is the survey's choice: no rule knows it.
#[test]
fn the_audit_does_not_know_where_the_yard_lies() {
    /// Metres, degrees, m²: poses and paint are rounded to 1e-6.
    const SAME: f64 = 1e-4;
    let ledger = Ledger::shipped().expect("the ledger reads");
    let (scale, sizes) = cases().remove(0);
    let still = world(STILL, scale, &sizes);
    let poses: Vec<(usize, (f64, f64), f64)> = vec![
        (0, (1.0, 1.0), 0.1),
        (1, (6.0, 1.5), 0.0),
        (2, (1.2, 6.0), 0.4),
        (3, (5.5, 1.0), 0.3),
    ];
    let checks = |motion: Motion| {
        let world = world(motion, scale, &sizes);
        let around = Surroundings::new(&world.yard, &world.ground, &ledger);
        let placed: Vec<_> = poses
            .iter()
            .map(|(k, at, turn)| {
                let pose = Pose {
                    at: motion.of(*at),
                    turn: turn + motion.turn,
                    mirrored: false,
                };
                (&still.candidates[*k], pose)
            })
            .collect();
        audit(&placed, &around, &ledger)
    };
    let before = checks(STILL);
    assert!(before.iter().any(|check| !check.pass) && before.len() > 20);
    let after = checks(Motion {
        turn: 1.1,
        by: coord! { x: 310.0, y: -75.0 },
    });
    assert_eq!(before.len(), after.len());
    for (one, other) in std::iter::zip(&before, &after) {
        assert_eq!((one.rule, one.pass), (other.rule, other.pass));
        assert!(
            (one.actual - other.actual).abs() < SAME,
            "{one:?} and {other:?}"
        );
    }
}
