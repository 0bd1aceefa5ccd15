//! Agreement against published numbers and another program (`oracle/agreement.py`).
#![allow(clippy::expect_used)]

use course::{
    Band, Table, ac1, agreement, band, fleiss, kappa, kappa_of, mcnemar, pairs_needed, wilson,
};
use serde_json::Value;

/// Half of the last digit that the reference pages print.
const PRINTED: f64 = 0.000_000_5;
/// Of another program's figures, which it stores in full.
const STORED: f64 = 1e-12;
/// AC1's standard error there is from numerical slopes with steps of 1e-5.
const SLOPES: f64 = 1e-8;

fn table([both, first, second, neither]: [u32; 4]) -> Table {
    Table {
        both,
        first,
        second,
        neither,
    }
}

#[track_caller]
fn near(ours: f64, theirs: f64, within: f64, what: &str) {
    assert!(
        (ours - theirs).abs() <= within,
        "{what}: {ours}, not {theirs}"
    );
}

/// programme.md 3.1: derived there by a program of its own.
#[test]
fn three_tables_show_why_kappa_does_not_stand_alone() {
    for (cells, agree, kappa_, ac1_) in [
        ([40, 9, 6, 45], 0.85, 0.699_519, 0.700_748),
        ([80, 10, 5, 5], 0.85, 0.318_182, 0.808_000),
        ([25, 35, 5, 35], 0.60, 0.259_259, 0.207_921),
    ] {
        let table = table(cells);
        near(
            agreement(&table).expect("pairs").value,
            agree,
            1e-12,
            "agreement",
        );
        near(
            kappa(&table).expect("two classes").value,
            kappa_,
            PRINTED,
            "kappa",
        );
        near(ac1(&table).expect("pairs").value, ac1_, PRINTED, "AC1");
    }
}

/// programme.md 3.1: pairs for a half-width, by share of yes and kappa.
#[test]
fn pairs_needed_are_the_printed_ones() {
    for (kappa, half, pairs) in [
        (0.6, 0.15, [110, 132, 220]),
        (0.6, 0.10, [246, 296, 494]),
        (0.8, 0.15, [62, 74, 125]),
        (0.8, 0.10, [139, 167, 281]),
    ] {
        for (yes, wanted) in [0.5, 0.3, 0.15].into_iter().zip(pairs) {
            assert_eq!(
                pairs_needed(kappa, yes, half),
                Some(wanted),
                "{kappa} {half} {yes}"
            );
        }
    }
    for (kappa, yes, half) in [
        (0.6, 0.0, 0.1),
        (0.6, 0.5, 0.0),
        (-0.9, 0.2, 0.1),
        (0.6, f64::NAN, 0.1),
    ] {
        assert_eq!(pairs_needed(kappa, yes, half), None, "{kappa} {yes} {half}");
    }
}

/// Cohen's small table and the 3 x 3 table of Fleiss, Cohen and Everitt 1969 (paper prints .429
/// and an error of .076: memory; programme.md 10).
#[test]
fn the_papers_of_kappa_and_its_variance_are_met() {
    let small = kappa(&table([20, 5, 10, 15])).expect("two classes");
    near(small.value, 0.4, 1e-12, "kappa");
    near(small.se, 0.126_996, PRINTED, "standard error");
    let rows = |rows: [[f64; 3]; 3]| rows.map(|row| row.to_vec()).to_vec();
    let paper = kappa_of(&rows([
        [53.0, 5.0, 2.0],
        [11.0, 14.0, 5.0],
        [1.0, 6.0, 3.0],
    ]));
    let paper = paper.expect("three classes");
    near(paper.value, 0.428_571, PRINTED, "kappa");
    near(paper.se, 0.0760, 0.000_05, "standard error");
}

/// Fleiss 1971: 30 patients, 6 psychiatrists, 5 diagnoses. The rows are the paper's, as
/// statsmodels' own tests ship them; kappa and z from programme.md 10.
#[test]
fn fleiss_1971_is_met() {
    let rows = |text: &str| -> Vec<Vec<u32>> {
        text.split('/')
            .map(|row| {
                row.split_whitespace()
                    .map(|n| n.parse().expect("a count"))
                    .collect()
            })
            .collect()
    };
    let patients = fleiss(&rows(DIAGNOSES)).expect("a sound table");
    near(patients.value, 0.430_244_5, 0.000_000_05, "kappa");
    near(patients.z, 17.651_83, 0.000_005, "z");
    let ten = "0 0 0 0 14/0 2 6 4 2/0 0 3 5 6/0 3 9 2 0/2 2 8 1 1/7 7 0 0 0/3 2 6 3 0/2 5 3 2 2/6 5 2 1 0/0 2 2 3 7";
    near(
        fleiss(&rows(ten)).expect("a sound table").value,
        0.209_931,
        PRINTED,
        "ten subjects",
    );
    for odd in ["1 2/3 1", "1 0/0 1", "3 0/3 0", "2 1/3"] {
        assert_eq!(fleiss(&rows(odd)), None, "{odd}");
    }
    assert_eq!(fleiss(&[]), None);
}

const DIAGNOSES: &str = include_str!("../oracle/fleiss_1971.txt");

#[test]
fn another_program_finds_the_same() {
    let stored: Value =
        serde_json::from_str(include_str!("../oracle/agreement.json")).expect("the stored figures");
    let rows = |key: &str| stored[key].as_array().expect("rows").clone();
    let number = |value: &Value| value.as_f64().expect("a number");
    let cells = |value: &Value| -> Vec<f64> {
        value
            .as_array()
            .expect("a row")
            .iter()
            .map(number)
            .collect()
    };
    for row in rows("tables") {
        let c = cells(&row[0]);
        let table = table([0, 1, 2, 3].map(|at| c[at] as u32));
        let (kappa, ac1) = (kappa(&table).expect("kappa"), ac1(&table).expect("AC1"));
        near(kappa.value, number(&row[1]), STORED, "kappa");
        near(kappa.se, number(&row[2]), STORED, "its error");
        near(ac1.value, number(&row[3]), STORED, "AC1");
        near(ac1.se, number(&row[4]), SLOPES, "its error");
    }
    for row in rows("square") {
        let counts: Vec<Vec<f64>> = row[0].as_array().expect("rows").iter().map(cells).collect();
        let ours = kappa_of(&counts).expect("kappa");
        near(ours.value, number(&row[1]), STORED, "kappa");
        near(ours.se, number(&row[2]), STORED, "its error");
    }
    for row in rows("fleiss") {
        let counts: Vec<Vec<u32>> = row[0]
            .as_array()
            .expect("rows")
            .iter()
            .map(|row| cells(row).iter().map(|n| *n as u32).collect())
            .collect();
        near(
            fleiss(&counts).expect("kappa").value,
            number(&row[1]),
            STORED,
            "Fleiss",
        );
    }
    for row in rows("mcnemar") {
        let (better, worse) = (number(&row[0]) as u32, number(&row[1]) as u32);
        near(mcnemar(better, worse), number(&row[2]), 1e-11, "McNemar");
    }
    for row in rows("wilson") {
        let (low, high) = wilson(number(&row[0]), number(&row[1]));
        near(low, number(&row[2]), STORED, "Wilson");
        near(high, number(&row[3]), STORED, "Wilson");
    }
}

/// programme.md 1.4 and 10.
#[test]
fn small_checks_of_the_reference_hold() {
    near(mcnemar(9, 2), 0.065_430, PRINTED, "9 improved, 2 worsened");
    let (low, high) = wilson(7.0, 12.0);
    near(low, 0.319_511, PRINTED, "7 of 12");
    near(high, 0.806_740, PRINTED, "7 of 12");
    near(wilson(0.0, 9.0).1, 0.299_145, PRINTED, "0 of 9");
}

/// All agree: kappa is 1, but a few marks do not make it certain.
#[test]
fn agreement_without_a_miss_is_not_certainty() {
    let few = kappa(&table([5, 0, 0, 5])).expect("two classes");
    let many = kappa(&table([500, 0, 0, 500])).expect("two classes");
    assert_eq!((few.value, few.se, few.high), (1.0, 0.0, 1.0));
    assert!(few.low < 0.5 && many.low > 0.99, "{few:?} {many:?}");
    assert_eq!(kappa(&table([12, 0, 0, 0])), None);
    assert!(ac1(&table([12, 0, 0, 0])).is_some_and(|ac1| ac1.value == 1.0 && ac1.low < 1.0));
    assert_eq!(agreement(&Table::default()), None);
    assert_eq!(ac1(&Table::default()), None);
}

#[test]
fn bands_are_fleisss() {
    let bounds = [0.40, 0.75];
    let bands = [0.39, 0.40, 0.75, 0.76].map(|kappa| band(kappa, &bounds));
    assert_eq!(bands, [Band::Poor, Band::Good, Band::Good, Band::Excellent]);
}
