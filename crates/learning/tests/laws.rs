//! Laws: no data no change, order and threads do not matter, the roster's shrinkage.

#![allow(clippy::expect_used)]

use children::{
    Ability, Child, Date, Entry, Expected, Reading, Skill, Trait, counts, expected, roster,
};
use footfall::{Gait, Model, grid};
use learning::{
    Attempt, Because, Case, Check, Evidence, Fit, Learned, Of, Pupil, Run, Shared, Try, What,
    calibration, changes, fit, learn,
};
use ledger::Ledger;
use proptest::prelude::*;

#[allow(dead_code)]
#[path = "../examples/recovery/simulated.rs"]
mod simulated;

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

fn with() -> Fit {
    Fit {
        shared: Shared::of(&ledger()),
        weight: 8.0,
        shows: 3.0,
        floor: 0.3,
    }
}

const DAY: Date = Date {
    year: 2026,
    month: 9,
};

fn model() -> Model {
    Model::of(&ledger())
}

fn entry(id: &str, years: i32) -> Entry {
    Entry::new(id, (2026 - years, 9))
}

fn pupils(entries: &[Entry]) -> Vec<Pupil> {
    let expected = expected(entries, DAY, &ledger()).value;
    expected.into_iter().map(Pupil::new).collect()
}

fn learned(pupils: &[Pupil]) -> Learned {
    let noted = learn(pupils, &model(), &ledger());
    assert!(noted.notes.is_empty(), "{:?}", noted.notes);
    noted.value
}

fn skill(learned: &Learned, at: usize, skill: Skill) -> &Ability {
    &learned.children[at].skills[&skill]
}

/// Tries of three jumps of half a metre.
fn jumped(n: u32, good: u32) -> Try {
    Try {
        figure: simulated::row(3, 0.5, 0.2),
        gait: Gait::named("jump").expect("a gait"),
        foot: None,
        n,
        good,
    }
}

#[test]
fn nothing_seen_changes_nothing() {
    let mut of = pupils(&[entry("a", 3), entry("b", 4), entry("c", 5)]);
    of[0].tries.push(jumped(0, 0));
    let learned = learned(&of);
    for (child, pupil) in learned.children.iter().zip(&of) {
        assert_eq!(*child, pupil.expected.child);
    }
    assert_eq!((learned.told.len(), learned.effects.len()), (0, 0));
    assert_eq!(changes(&learned), []);
}

/// A class of one with a measured best and series: the roster's own figures, but for the
/// share of the site's shift that the roster lets a child give itself. By hand from
/// children.md 2.1 and 2.7: .91 of .65 of the best, the rest the age's; hops .8 and .2.
#[test]
fn a_measured_best_alone_moves_a_child_as_the_roster_does() {
    let mut one = entry("a", 5);
    (one.jump_best, one.hops_right, one.hops_left) = (Some(1.00), Some(2.0), Some(2.0));
    let learned = learned(&pupils(std::slice::from_ref(&one)));
    let child = &learned.children[0];
    let jump = skill(&learned, 0, Skill::Jump);
    let gap = 0.91 * 0.65 * 1.00 + 0.09 * 0.52;
    // z is cut at 4 and laid on a grid
    assert!(
        (jump.m - child.foot - gap).abs() < 2e-5,
        "{}",
        jump.m - child.foot
    );
    let tau = libm::hypot(0.65 * 0.18 * libm::sqrt(0.09), 0.07);
    assert!((jump.tau - tau).abs() < 2e-5, "{}", jump.tau);
    assert_eq!(jump.can, 1.0);
    let hop = skill(&learned, 0, Skill::Hop);
    // Hops start from the age's, moved as far as the jump: .36 x gap/.52, by .11 likewise.
    let (m, tau) = (0.36 * gap / 0.52, 0.11 * gap / 0.52);
    let sigma = 0.11 * libm::sqrt(0.2 / 0.8);
    let (own, read) = (1.0 / (tau * tau), 1.0 / (sigma * sigma));
    assert!(
        (hop.m - (own * m + read * 0.4) / (own + read)).abs() < 5e-5,
        "{}",
        hop.m
    );
    let as_before = roster(&[one], DAY, &ledger()).value;
    for (skill, most) in [(Skill::Jump, 0.005), (Skill::Hop, 0.01)] {
        let (ours, theirs) = (&child.skills[&skill], &as_before[0].skills[&skill]);
        assert!(
            (ours.m - theirs.m).abs() < most,
            "{skill:?} {} {}",
            ours.m,
            theirs.m
        );
        assert!((ours.tau - theirs.tau).abs() < most);
        assert_eq!(ours.can, theirs.can);
    }
}

/// n children measured exactly and alike move one of their age and group by n/(n + 8) of
/// their distance (children.md 2.7, `site.shrink`).
#[test]
fn the_unmeasured_are_moved_by_the_rosters_share() {
    let case = |reach: Option<f64>| Case {
        age: Some(0),
        group: Some(0),
        m: 0.5,
        tau: 0.1,
        can: 0.9,
        steady: 0.9,
        evidence: Evidence {
            readings: reach
                .map(|reach| Reading {
                    reach,
                    sigma: 0.004,
                })
                .into_iter()
                .collect(),
            ..Evidence::default()
        },
    };
    for n in [1, 4, 8, 24] {
        let mut cases = vec![case(Some(0.6)); n];
        cases.push(case(None));
        let fitted = fit(&cases, (1, 1), &with());
        let wanted = n as f64 / (n as f64 + 8.0);
        let ours = fitted.cases[n].z.mean;
        assert!((ours - wanted).abs() < 2e-3, "{n}: {ours}, not {wanted}");
        let of_both = fitted.ages[0].mean + fitted.groups[0].mean;
        assert!((of_both - ours).abs() < 1e-9);
    }
}

#[test]
fn what_is_shared_reaches_others_of_the_age_and_group_and_no_one_else() {
    let mut rows: Vec<Entry> = (0..6).map(|at| entry(&format!("r{at}"), 4)).collect();
    rows.push(entry("same-age", 4));
    rows.push(entry("same-group", 5));
    rows.push(entry("neither", 5));
    rows.push(entry("wheels", 4));
    for row in &mut rows {
        row.group = Some("red".into());
    }
    rows[6].group = Some("blue".into());
    rows[8].group = Some("blue".into());
    rows[9].means = children::Means::Wheels;
    let expected = expected(&rows, DAY, &ledger()).value;
    let mut of: Vec<Pupil> = expected.into_iter().map(Pupil::new).collect();
    for pupil in of.iter_mut().take(6) {
        pupil.tries.push(jumped(8, 8));
    }
    let learned = learned(&of);
    let moved = |at: usize| {
        let before = &of[at].expected.child.skills[&Skill::Jump];
        (skill(&learned, at, Skill::Jump).m - before.m) / before.tau
    };
    assert!(moved(0) > 0.3, "{}", moved(0));
    for at in [6, 7] {
        assert!(
            moved(at) > 0.01 && moved(at) < 0.3 * moved(0),
            "{at}: {}",
            moved(at)
        );
    }
    // Blue is told of by age alone, and by what the age leaves to the group: a trace.
    assert!(moved(8).abs() < moved(6) / 2.0, "{}", moved(8));
    assert_eq!(moved(9), 0.0);
    let red = learned
        .effects
        .iter()
        .find(|effect| effect.of == Of::Group("red".into()) && effect.skill == Skill::Jump)
        .expect("the group's effect");
    assert_eq!((red.children, red.told_by, red.tries), (7, 6, 48));
    assert!(red.now.mean > 0.0 && red.now.sd < red.prior_sd);
    // Leap was not tried: nothing of it moves.
    for (child, pupil) in learned.children.iter().zip(&of) {
        assert_eq!(
            child.skills[&Skill::Leap],
            pupil.expected.child.skills[&Skill::Leap]
        );
    }
}

/// Beta(8 c, 8 (1 - c)) and k of n checks, by hand; a hop at four is .65.
#[test]
fn checks_and_counts_move_can_and_steadiness_as_beta_does() {
    let mut of = pupils(&[entry("a", 4), entry("b", 4)]);
    of[0].checks.push(Check {
        skill: Skill::Hop,
        n: 10,
        met: 4,
    });
    of[1].runs.push(Run {
        skill: Skill::Hop,
        contacts: 11,
        broke: true,
    });
    of[1].runs.push(Run {
        skill: Skill::Hop,
        contacts: 6,
        broke: false,
    });
    let learned = learned(&of);
    let (checked, counted) = (
        skill(&learned, 0, Skill::Hop),
        skill(&learned, 1, Skill::Hop),
    );
    assert!(
        (checked.can - (8.0 * 0.65 + 4.0) / 18.0).abs() < 1e-6,
        "{}",
        checked.can
    );
    assert_eq!((checked.m, checked.steady), (0.28, 0.88));
    let steady = (8.0 * 0.88 + 17.0) / (8.0 + 18.0);
    assert!((counted.steady - steady).abs() < 1e-6, "{}", counted.steady);
    assert_eq!(counted.can, 1.0);
    let told = changes(&learned);
    let of_a: Vec<_> = told.iter().filter(|change| change.child == "a").collect();
    assert_eq!(of_a.len(), 1);
    assert_eq!(
        (of_a[0].what, &of_a[0].because[..]),
        (What::Can, &[Because::Checks { n: 10, met: 4 }][..])
    );
}

/// No good try of many: less able, or less far; a good one: able.
#[test]
fn a_good_try_shows_that_a_child_can() {
    let mut of = pupils(&[entry("a", 3), entry("b", 3)]);
    of[0].tries.push(jumped(5, 0));
    of[1].tries.push(jumped(5, 1));
    let learned = learned(&of);
    let before = of[0].expected.child.skills[&Skill::Jump].can;
    assert!(skill(&learned, 0, Skill::Jump).can < before);
    assert_eq!(skill(&learned, 1, Skill::Jump).can, 1.0);
}

/// A measured best of nothing and a try that came off: what was seen to come off wins.
#[test]
fn what_contradicts_itself_is_not_taken_for_nothing() {
    let mut row = entry("a", 4);
    row.jump_best = Some(0.0);
    let mut of = pupils(&[row]);
    assert_eq!(skill(&learned(&of), 0, Skill::Jump).can, 0.0);
    of[0].tries.push(jumped(3, 2));
    assert_eq!(skill(&learned(&of), 0, Skill::Jump).can, 1.0);
}

#[test]
fn a_row_of_many_children_learns_nothing_and_is_told() {
    let ledger = ledger();
    let children = counts(&[(4.5, 8)], &ledger).value;
    let mut of: Vec<Pupil> = children
        .into_iter()
        .map(|child| Pupil::new(Expected::of(child)))
        .collect();
    of[0].tries.push(jumped(8, 8));
    let noted = learn(&of, &model(), &ledger);
    assert_eq!(noted.value.children[0], of[0].expected.child);
    assert_eq!(noted.notes.len(), 1);
    assert_eq!(noted.notes[0].what.key, "learning-of-many");
}

/// A thousand tries of one kind: numbers stay numbers, and surer than before.
#[test]
fn many_tries_and_odd_priors_leave_numbers() {
    let clears: Vec<f64> = grid().map(|z| 0.5 + z / 10.0).collect();
    for (n, good) in [(1000, 0), (1000, 1000), (1000, 500), (1, 5)] {
        for (can, steady, tau) in [
            (0.0, 0.9, 0.1),
            (1.0, 1.0, 0.1),
            (0.5, 0.0, 0.1),
            (0.5, 0.9, 0.0),
        ] {
            let tries = vec![
                Attempt {
                    clears: clears.clone(),
                    contacts: 3.0,
                    n,
                    good
                };
                3
            ];
            let case = Case {
                age: Some(0),
                group: None,
                m: 0.5,
                tau,
                can,
                steady,
                evidence: Evidence {
                    tries,
                    ..Evidence::default()
                },
            };
            let known = fit(&[case], (1, 0), &with()).cases[0];
            let all = [
                known.z.mean,
                known.z.sd,
                known.can,
                known.form.mean,
                known.steady.mean,
            ];
            assert!(
                all.iter().all(|value| value.is_finite()),
                "{n} {good} {can} {steady}: {all:?}"
            );
            assert!((0.0..=1.0).contains(&known.can) && known.z.sd < 4.0);
        }
    }
}

#[test]
fn what_people_set_can_be_set_again_after_learning() {
    let mut of = pupils(&[entry("a", 4)]);
    of[0].tries.push(jumped(6, 6));
    let children = learned(&of).children;
    let set = children::Override {
        child: "a".into(),
        what: Trait::Reach(Skill::Jump),
        value: 0.9,
        at: None,
    };
    let after: Vec<Child> = children::overridden(children, &[set]).value;
    assert_eq!(after[0].skills[&Skill::Jump].m, 0.9);
}

fn any_evidence() -> impl Strategy<Value = Evidence> {
    let tries = prop::collection::vec((0.0..1.0f64, 1u32..6, 1u32..12, 0.0..1.0f64), 0..3);
    let runs = prop::collection::vec((0u32..12, any::<bool>()), 0..2);
    (tries, 0u32..10, 0.0..1.0f64, runs).prop_map(|(tries, checks, met, runs)| Evidence {
        tries: tries
            .into_iter()
            .map(|(level, contacts, n, good)| Attempt {
                clears: grid()
                    .map(|z| 1.0 / (1.0 + libm::exp(4.0 * (level - 0.5) - 2.0 * z)))
                    .collect(),
                contacts: f64::from(contacts),
                n,
                good: (good * f64::from(n + 1)) as u32,
            })
            .collect(),
        checks,
        met: (met * f64::from(checks + 1)) as u32,
        runs,
        readings: Vec::new(),
        can: None,
    })
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 48,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Who stands first in the file, and how many threads there are, changes nothing; one
    /// good try more never makes a child's reach shorter.
    #[test]
    fn order_does_not_matter_and_good_tries_lengthen(
        evidence in prop::collection::vec(any_evidence(), 2..7),
    ) {
        let cases: Vec<Case> = evidence
            .into_iter()
            .enumerate()
            .map(|(at, evidence)| Case {
                age: Some(at % 2),
                group: Some(at % 3 % 2),
                m: 0.5,
                tau: 0.1,
                can: 0.7,
                steady: 0.9,
                evidence,
            })
            .collect();
        let fitted = fit(&cases, (2, 2), &with());
        let back: Vec<Case> = cases.iter().rev().cloned().collect();
        let turned = fit(&back, (2, 2), &with());
        for (one, other) in fitted.cases.iter().zip(turned.cases.iter().rev()) {
            prop_assert!((one.z.mean - other.z.mean).abs() < 1e-8);
            prop_assert!((one.can - other.can).abs() < 1e-8);
        }
        let alone = rayon::ThreadPoolBuilder::new().num_threads(1).build().expect("a pool");
        prop_assert_eq!(&alone.install(|| fit(&cases, (2, 2), &with())), &fitted);
        // Where steadiness is sure: else a good try of what is hard by its contacts can tell
        // of steadiness what other tries had told of reach.
        for case in cases {
            let mut sure = Case {
                steady: 1.0,
                ..case
            };
            // a run that broke would make it unsure again
            sure.evidence.runs.clear();
            let mut better = sure.clone();
            if let Some(tried) = better.evidence.tries.first_mut()
                && tried.good > 0
                && tried.good < tried.n
            {
                tried.good += 1;
                let [before, after] = [sure, better].map(|case| fit(&[case], (2, 2), &with()).cases[0]);
                prop_assert!(after.z.mean >= before.z.mean - 1e-9);
            }
        }
    }
}

/// Tries drawn from the model itself come off as it says: the line is that of no fault within
/// three standard errors, and four of five bins hold their mean prediction.
#[test]
fn predictions_that_hold_are_told_to_hold() {
    let (ledger, model) = (ledger(), model());
    let mut pupils = Vec::new();
    for seed in 2000..2030 {
        pupils.extend(simulated::class(Skill::Hop, seed, &model, &ledger).0);
    }
    let told = calibration(&pupils, Some(Skill::Hop), &model, &ledger);
    let tries: u32 = pupils
        .iter()
        .flat_map(|pupil| &pupil.tries)
        .map(|tried| tried.n)
        .sum();
    assert_eq!(
        (
            told.tries,
            told.bins.iter().map(|bin| bin.tries).sum::<u32>()
        ),
        (tries, tries)
    );
    let line = told.line.expect("a line");
    assert!(line.shift.abs() < 3.0 * line.shift_se, "{line:?}");
    assert!((line.slope - 1.0).abs() < 3.0 * line.slope_se, "{line:?}");
    assert!(line.slope_se < 0.2 && line.slope_se > 0.01, "{line:?}");
    let held = told.bins.iter().filter(|bin| {
        assert!(bin.independent <= f64::from(bin.tries) && bin.from <= bin.predicted);
        (bin.nine_tenths[0]..=bin.nine_tenths[1]).contains(&bin.predicted)
    });
    assert!(5 * held.count() >= 4 * told.bins.len(), "{:?}", told.bins);
    // Children who are all better than their age: told as a shift up.
    for tried in pupils.iter_mut().flat_map(|pupil| &mut pupil.tries) {
        tried.good = (tried.good + 2).min(tried.n);
    }
    let told = calibration(&pupils, Some(Skill::Hop), &model, &ledger);
    let line = told.line.expect("a line");
    assert!(line.shift > 3.0 * line.shift_se, "{line:?}");
    assert_eq!(
        calibration(&pupils, Some(Skill::Leap), &model, &ledger).tries,
        0
    );
}
