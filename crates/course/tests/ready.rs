//! Who may observe, by programme.md 3.1: agreement of at least 80 % and kappa of at least .60, two
//! in a row.
#![allow(clippy::expect_used)]

use course::{Missing, Rule, Table, drifted, gain, ready};
use ledger::Ledger;
use proptest::prelude::*;

fn rule() -> Rule {
    Rule::of(&Ledger::shipped().expect("the shipped ledger reads"))
}

fn table(both: u32, first: u32, second: u32, neither: u32) -> Table {
    Table {
        both,
        first,
        second,
        neither,
    }
}

// 85 %, kappa .70
fn good() -> Table {
    table(17, 3, 3, 17)
}
// 75 %, kappa .50
fn weak() -> Table {
    table(15, 5, 5, 15)
}
// 88 %, kappa .22: agreement alone
fn lopsided() -> Table {
    table(34, 3, 2, 1)
}

#[test]
fn two_good_rounds_in_a_row_are_asked() {
    let rule = rule();
    assert_eq!((rule.agreement, rule.kappa, rule.in_row), (0.8, 0.6, 2));
    for (rounds, is, missing) in [
        (vec![], false, 2),
        (vec![good()], false, 1),
        (vec![good(), good()], true, 0),
        (vec![good(), weak(), good()], false, 1),
        (vec![good(), good(), weak()], false, 2),
        (vec![weak(), good(), good()], true, 0),
        (vec![good(), lopsided()], false, 2),
    ] {
        let told = ready(&rounds, &rule);
        assert_eq!(told.ready, is, "{rounds:?}");
        let left = told.missing.iter().find_map(|missing| match missing {
            Missing::Rounds(left) => Some(*left),
            _ => None,
        });
        assert_eq!(left.unwrap_or(0), missing, "{rounds:?}");
        assert_eq!(told.missing.is_empty(), is);
    }
}

#[test]
fn what_is_missing_is_named() {
    let told = ready(&[weak()], &rule());
    assert!(matches!(
        told.missing.as_slice(),
        [
            Missing::Rounds(2),
            Missing::Agreement { .. },
            Missing::Kappa { .. }
        ]
    ));
    let told = ready(&[lopsided()], &rule());
    assert!(matches!(
        told.missing.as_slice(),
        [Missing::Rounds(2), Missing::Kappa { .. }]
    ));
    let told = ready(&[table(20, 0, 0, 0)], &rule());
    assert!(matches!(
        told.missing.as_slice(),
        [Missing::Rounds(2), Missing::Alike]
    ));
    // 80 pairs of kappa .70 and half yes: (1.96 / .15)² V with V = .85 × .15 × 4 = .51, 88 pairs
    let told = ready(&[weak(), good(), good()], &rule());
    assert_eq!(told.more_pairs, 8);
}

#[test]
fn the_last_forty_pairs_tell_of_drift() {
    let rule = rule();
    let of = |table: Table| {
        [
            (table.both, (true, true)),
            (table.first, (true, false)),
            (table.second, (false, true)),
            (table.neither, (false, false)),
        ]
        .into_iter()
        .flat_map(|(many, pair)| (0..many).map(move |_| pair))
        .collect::<Vec<_>>()
    };
    let (sound, gone) = (of(good()), of(weak()));
    assert_eq!(drifted(&sound, 40, &rule), Some(false));
    assert_eq!(
        drifted(&[sound.clone(), gone.clone()].concat(), 40, &rule),
        Some(true)
    );
    assert_eq!(
        drifted(&[gone, sound.clone()].concat(), 40, &rule),
        Some(false)
    );
    assert_eq!(drifted(&sound[1..], 40, &rule), None);
}

#[test]
fn the_smaller_gain_is_claimed() {
    assert_eq!(gain(40.0, 70.0, Some(25.0)).claim, 30.0);
    assert_eq!(gain(40.0, 70.0, Some(55.0)).claim, 15.0);
    assert_eq!(gain(40.0, 70.0, None).claim, 30.0);
}

proptest! {
    /// Whoever observes changes places with the truth: agreement and kappa are the same.
    #[test]
    fn agreement_does_not_know_who_is_first(a in 0..500_u32, b in 0..500_u32, c in 0..500_u32, d in 0..500_u32) {
        let (one, other) = (table(a, b, c, d), table(d, c, b, a));
        for figure in [course::agreement, course::kappa, course::ac1] {
            match (figure(&one), figure(&other)) {
                (Some(one), Some(other)) => {
                    prop_assert!((one.value - other.value).abs() < 1e-9);
                    prop_assert!((one.se - other.se).abs() < 1e-9);
                    prop_assert!(one.low <= one.value + 1e-12 && one.value <= one.high + 1e-12);
                    prop_assert!(one.low >= -1.0 && one.high <= 1.0);
                }
                (one, other) => prop_assert_eq!(one, other),
            }
        }
    }
}
