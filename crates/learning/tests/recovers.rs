//! Simulated classes recover their truths: the small version of `examples/recovery`, whose
//! 400 classes are in `docs/learning.md`.

#![allow(clippy::expect_used)]

use children::Skill;
use footfall::Model;
use learning::learn;
use ledger::Ledger;

#[allow(dead_code)]
#[path = "../examples/recovery/recovered.rs"]
mod recovered;
#[path = "../examples/recovery/simulated.rs"]
mod simulated;

use recovered::Recovered;

/// Children of one class share effects and of one age the figures; still 40 classes of 24 hold
/// a share to about two points (one standard error), so five points off is a fault.
#[test]
fn intervals_hold_the_truth_as_often_as_they_say() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let model = Model::of(&ledger);
    for skill in [Skill::Hop, Skill::Jump] {
        let mut recovered = Recovered::default();
        for seed in 1000..1040 {
            let (pupils, truths) = simulated::class(skill, seed, &model, &ledger);
            let learned = learn(&pupils, &model, &ledger).value;
            recovered.hold(skill, &pupils, &truths, &learned);
        }
        for (what, covered) in [
            ("reach", recovered.shown),
            ("unseen reach", recovered.unseen),
            ("steadiness", recovered.steady),
        ] {
            let few = if what == "unseen reach" { 10.0 } else { 5.0 };
            let [half, nine] = covered.shares();
            assert!(covered.of > 100, "{skill:?} {what}: {covered:?}");
            assert!((half - 50.0).abs() < few, "{skill:?} {what}: half {half}");
            assert!(
                (nine - 90.0).abs() < few,
                "{skill:?} {what}: nine tenths {nine}"
            );
        }
        // Tries teach: four tenths of the error go, and the unseen are none the worse.
        let [shown, unseen] = recovered.left();
        assert!(shown < 0.65 && unseen < 1.05, "{skill:?} {shown} {unseen}");
        // Among those said to be able with 99 in 100 or so, as many are.
        let (of, yes, sum) = recovered.can[9];
        assert!(
            (f64::from(yes) - sum).abs() < 0.02 * f64::from(of),
            "{yes} of {of}, said {sum}"
        );
    }
}
