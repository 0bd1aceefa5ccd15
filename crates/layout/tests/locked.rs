//! What is locked and too much, the hard rules of what the planner lays, and value against
//! budget.

mod common;

use common::{Motion, STILL, WORK, cases, world};
use geo::coord;
use layout::{Pose, Task, Worth, curve};
use ledger::Ledger;

const ORIGIN: Pose = Pose {
    at: coord! { x: 1.0, y: 1.0 },
    turn: 0.0,
    mirrored: false,
};

#[test]
fn locked_markings_that_pass_purse_or_ground_are_told() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let (scale, sizes) = cases().remove(0);
    let mut world = world(STILL, scale, &sizes);
    let keys = |world: &common::World| -> Vec<String> {
        let plan = world.plan(&ledger);
        plan.notes
            .iter()
            .map(|note| note.what.key.to_string())
            .collect()
    };
    assert!(keys(&world).is_empty());
    world.candidates[0].locked = Some(ORIGIN);
    world.budget = world.candidates[0].cost - 1.0;
    assert_eq!(keys(&world), ["layout-locked-over-budget"]);
    world.budget = 1e9;
    world.candidates[0].area = 1e5;
    assert_eq!(keys(&world), ["layout-locked-over-ground"]);
}

/// The search lays no figure whose run-out leaves its envelope, and where wheels get
/// anywhere they get to a marking.
#[test]
fn the_planner_keeps_its_hard_rules() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    for turn in [0.0, 0.7] {
        let motion = Motion { turn, ..STILL };
        for (scale, sizes) in cases() {
            let plan = world(motion, scale, &sizes).plan(&ledger);
            for check in plan.checks.iter().filter(|check| check.hard) {
                assert!(check.pass, "{check:?}");
            }
        }
    }
}

/// Each point of the curve against the choice at that budget, which is proven.
#[test]
fn the_curve_rises_and_holds_the_choice_between_value_and_bound() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let (scale, sizes) = cases().remove(0);
    let world = world(STILL, scale, &sizes);
    let task = Task {
        question: world.question(&ledger),
        week: world.week(),
        yard: &world.yard,
        ground: &world.ground,
        seed: 7,
        work: WORK,
    };
    let points = curve(&task, &[200.0, 0.0, 90.0, 140.0, f64::NAN], &ledger).expect("it solves");
    let budgets: Vec<f64> = points.iter().map(|point| point.budget).collect();
    assert_eq!(budgets, [0.0, 90.0, 140.0, 200.0]);
    assert_eq!(points[0].value, 0.0);
    assert!(points[1].value > 0.0);
    for pair in points.windows(2) {
        assert!(pair[0].value <= pair[1].value && pair[0].bound <= pair[1].bound);
    }
    for Worth {
        budget,
        value,
        bound,
    } in points
    {
        let question = layout::programme::Question {
            budget,
            ..world.question(&ledger)
        };
        let best = layout::programme::Programme::new(&question, &ledger)
            .choose(&layout::programme::Limits::default(), 10_000, &|| true)
            .expect("it solves");
        assert!(best.proven && value <= best.value + 2e-6 && best.value <= bound + 2e-6);
    }
}
