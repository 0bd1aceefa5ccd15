//! The bound against the whole linear programme, solved at once by HiGHS (scipy); and what a
//! skill that waits costs.

mod common;

use ledger::Ledger;
use sessions::*;

/// Of the bound: planes and bound stop when they are within 2e-4 of each other, and values
/// are handed on to 1e-6.
const ABOVE: f64 = 3e-4;
const BELOW: f64 = 1e-6;

#[test]
fn the_bound_is_the_optimum_of_the_whole_programme() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let oracle: serde_json::Value =
        serde_json::from_str(include_str!("../oracle/bound.json")).expect("the answers read");
    let answers = oracle["answers"].as_array().expect("answers");
    for answer in answers {
        let n = answer["class"].as_u64().expect("a class");
        let wanted = answer["bound"].as_f64().expect("a bound");
        let mut programme = common::programme(n, &common::case(n));
        programme.work.exchanges = 1;
        let plan = plan(&programme, &ledger).expect("solves").value;
        assert_eq!(
            plan.outings.len() as u64,
            answer["outings"].as_u64().expect("outings")
        );
        let off = plan.bound - wanted;
        assert!(
            off >= -BELOW && off <= ABOVE * wanted,
            "class {n}: {} and {wanted}",
            plan.bound
        );
    }
    assert_eq!(answers.len(), 6);
}

/// A skill that waits can only cost; a week more of waiting never gives.
#[test]
fn waiting_costs() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let mut programme = common::programme(1, &common::case(1));
    programme.work.exchanges = 1;
    // What is known waits for nothing.
    programme
        .children
        .iter_mut()
        .for_each(|child| child.known.clear());
    let mut before = f64::INFINITY;
    for first_week in [1, 3, 5, 7] {
        programme.order = vec![After {
            skill: children::Skill::Jump,
            needs: None,
            first_week,
        }];
        let plan = plan(&programme, &ledger).expect("solves").value;
        // The planes may leave a share of it on either side.
        assert!(
            plan.bound <= before * (1.0 + ABOVE),
            "{first_week}: {} then {before}",
            plan.bound
        );
        before = plan.bound;
        if first_week > programme.weeks {
            let jump = plan
                .practice
                .iter()
                .filter(|it| it.skill == children::Skill::Jump);
            for (at, it) in jump.enumerate() {
                assert_eq!(it.opens, None, "{at}");
            }
            assert!(plan.misses.iter().any(|it| it.why == Why::NeverOpens));
        }
    }
}

/// Skills that need one another in a ring never open, and are told so.
#[test]
fn a_ring_of_needs_opens_nothing() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let mut programme = common::programme(1, &common::case(1));
    programme.work.exchanges = 1;
    let (a, b) = (children::Skill::Hop, children::Skill::Jump);
    programme
        .children
        .iter_mut()
        .for_each(|child| child.known.clear());
    programme.order = [(a, b), (b, a)]
        .map(|(skill, needs)| After {
            skill,
            needs: Some(needs),
            first_week: 1,
        })
        .to_vec();
    let plan = plan(&programme, &ledger).expect("solves").value;
    for practice in plan
        .practice
        .iter()
        .filter(|it| it.skill == a || it.skill == b)
    {
        assert_eq!(practice.opens, None);
        // A court is the hop's; no activity of either is played.
        assert_eq!(practice.got, 0.0);
    }
}
