//! Entries in, children out: against published tables, another reckoning, and the laws.
#![cfg(test)]

use children::{
    Child, Date, Entry, Lms, Means, Override, Sex, Side, Skill, Trait, counts, overridden, roster,
    stature, turning_radius, z_of,
};
use ledger::{Key, Ledger};
use note::{Note, Severity};
use proptest::prelude::*;
use serde_json::Value;

const DAY: Date = Date {
    year: 2026,
    month: 9,
};

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

fn entry(id: &str, years: i32) -> Entry {
    Entry::new(id, (DAY.year - years, DAY.month))
}

fn one(entry: Entry) -> (Child, Vec<Note>) {
    let noted = roster(&[entry], DAY, &ledger());
    let [child] = noted.value.try_into().expect("one child");
    (child, noted.notes)
}

fn at_years(years: f64) -> Child {
    let noted = counts(&[(years, 1)], &ledger());
    let [child] = noted.value.try_into().expect("one age");
    child
}

fn keys(notes: &[Note]) -> Vec<&'static str> {
    notes.iter().map(|note| note.what.key).collect()
}

/// Source: CDC2000, all 148 rows from 24 to 96.5 months and nine percentiles each, as printed
/// (`oracle/stature.json`). Metres: the publisher prints 1e-8 cm and rounds L, M and S to
/// nine digits; the reference page found 1e-6 cm.
#[test]
fn stature_percentiles_are_the_publishers() {
    const PRINTED: f64 = 1e-8;
    let oracle: Value =
        serde_json::from_str(include_str!("../oracle/stature.json")).expect("the oracle reads");
    let z: Vec<f64> = oracle["z"]
        .as_array()
        .expect("z")
        .iter()
        .filter_map(Value::as_f64)
        .collect();
    let rows = oracle["rows"].as_array().expect("rows");
    assert_eq!((rows.len(), z.len()), (148, 9));
    for row in rows {
        let sex = if row[0] == "F" {
            Sex::Female
        } else {
            Sex::Male
        };
        let months = row[1].as_f64().expect("months");
        for (at, z) in z.iter().enumerate() {
            let printed = row[at + 2].as_f64().expect("a percentile") / 100.0;
            let ours = Lms::at(sex, months).stature(*z);
            assert!(
                (ours - printed).abs() <= PRINTED,
                "{sex:?} {months} z {z}: {ours}, not {printed}"
            );
        }
    }
}

/// Source: CDC2000 as the reference page's table 1.1 prints it (P5, P50, P95, cm): between
/// the published half-months. Half the last printed digit.
#[test]
fn stature_between_the_rows_is_the_reference_table() {
    let printed = [
        (36, [88.9, 95.0, 101.6], [87.5, 93.9, 100.5]),
        (42, [92.2, 98.7, 105.5], [90.7, 97.4, 104.3]),
        (48, [95.3, 102.2, 109.2], [93.8, 100.8, 108.1]),
        (54, [98.3, 105.6, 112.9], [96.9, 104.2, 111.9]),
        (60, [101.2, 108.9, 116.5], [100.1, 107.7, 115.8]),
        (66, [104.1, 112.2, 120.0], [103.4, 111.2, 119.7]),
        (72, [107.1, 115.4, 123.6], [106.6, 114.7, 123.6]),
        (84, [113.0, 121.8, 130.7], [112.8, 121.5, 131.0]),
    ];
    for (months, boys, girls) in printed {
        for (sex, row) in [(Sex::Male, boys), (Sex::Female, girls)] {
            for (z, cm) in [-1.644_853_6, 0.0, 1.644_853_6].into_iter().zip(row) {
                let ours = 100.0 * stature(Some(sex), f64::from(months), z);
                assert!(
                    (ours - cm).abs() <= 0.050_1,
                    "{sex:?} {months} z {z}: {ours}, not {cm}"
                );
            }
        }
    }
}

/// Source: SNY77, individual records of 1975-77, mean stature of completed years (so half a
/// year on) and mean foot. Another sample: within 1.2 cm of stature, 0.2 cm of foot.
#[test]
fn an_older_survey_agrees() {
    for (years, tall, foot) in [
        (3.5, 98.4, 15.6),
        (4.5, 105.2, 16.7),
        (5.5, 111.6, 17.4),
        (6.5, 117.9, 18.5),
    ] {
        let ours = 100.0 * stature(None, years * 12.0, 0.0);
        assert!((ours - tall).abs() < 1.2, "{years}: {ours}, not {tall}");
        let child = at_years(years);
        let of_survey = 100.0 * child.foot + 0.154 * (tall - 100.0 * child.stature);
        assert!(
            (of_survey - foot).abs() < 0.2,
            "{years}: {of_survey}, not {foot}"
        );
    }
}

/// Source: CN03, pooled medians of the best jump by half-year, times the comfortable share
/// (practice); LIFE's German median at 6.0 years is 101 cm. Well inside the spread of 12.
#[test]
fn the_jump_is_the_norms_times_the_comfortable_share() {
    let medians = [
        (3.25, 49.0),
        (3.75, 59.0),
        (4.25, 69.0),
        (4.75, 77.0),
        (5.25, 85.0),
        (5.75, 92.0),
        (6.0, 101.0),
    ];
    for (years, best) in medians {
        let child = at_years(years);
        let gap = 100.0 * (child.skills[&Skill::Jump].m - child.foot);
        assert!(
            (gap - 0.65 * best).abs() < 3.5,
            "{years}: {gap}, not {}",
            0.65 * best
        );
    }
}

/// The model page's table, at the years it prints and between them.
#[test]
fn priors_are_the_tables_linear_in_age_and_held_outside() {
    let table = [
        (
            Skill::Hop,
            [0.21, 0.28, 0.36, 0.43],
            [0.06, 0.09, 0.11, 0.13],
            [0.25, 0.65, 0.90, 0.97],
        ),
        (
            Skill::Leap,
            [0.50, 0.67, 0.80, 0.94],
            [0.13, 0.13, 0.14, 0.15],
            [0.40, 0.65, 0.85, 0.95],
        ),
        (
            Skill::Run,
            [0.52, 0.62, 0.73, 0.85],
            [0.08, 0.08, 0.09, 0.10],
            [0.99, 1.0, 1.0, 1.0],
        ),
        (
            Skill::Gallop,
            [0.61, 0.66, 0.70, 0.75],
            [0.09, 0.10, 0.11, 0.11],
            [0.50, 0.80, 0.92, 0.97],
        ),
        (
            Skill::Slide,
            [0.52, 0.56, 0.60, 0.63],
            [0.08, 0.08, 0.09, 0.09],
            [0.30, 0.55, 0.80, 0.92],
        ),
        (
            Skill::Skip,
            [0.51, 0.51, 0.54, 0.58],
            [0.09; 4],
            [0.03, 0.20, 0.50, 0.80],
        ),
        (
            Skill::Walk,
            [0.42, 0.46, 0.49, 0.52],
            [0.05, 0.05, 0.06, 0.06],
            [1.0; 4],
        ),
    ];
    for (skill, m, tau, can) in table {
        for at in 0..4 {
            let ability = &at_years(3.0 + at as f64).skills[&skill];
            assert_eq!(
                (ability.m, ability.tau, ability.can),
                (m[at], tau[at], can[at]),
                "{skill:?} {at}"
            );
        }
        let between = &at_years(4.25).skills[&skill];
        assert!(
            (between.m - (0.75 * m[1] + 0.25 * m[2])).abs() <= 1e-6,
            "{skill:?}"
        );
        assert_eq!(at_years(2.0).skills[&skill].m, m[0]);
        assert_eq!(at_years(7.0).skills[&skill].can, can[3]);
    }
    let five = at_years(5.0);
    assert_eq!(
        five.skills[&Skill::Jump].m,
        ((0.52 + five.foot) * 1e6).round() / 1e6
    );
    assert_eq!(
        (five.scatter, five.speeds.walk, five.speeds.run),
        (0.05, 1.07, 2.6)
    );
    assert_eq!(five.skills[&Skill::Skip].steady, 0.88);
}

/// Against a posterior reckoned on a grid (`oracle/reach.py`). Metres; both round to 1e-6,
/// and the grid's step is finer.
#[test]
fn measured_jumps_and_hops_move_the_reach_as_bayes_has_it() {
    const SAME: f64 = 3e-6;
    let oracle: Value =
        serde_json::from_str(include_str!("../oracle/reach.json")).expect("the oracle reads");
    let cases = oracle["cases"].as_array().expect("cases");
    assert_eq!(cases.len(), 4);
    for case in cases {
        let of = |key: &str| case[key].as_f64().expect("a number");
        let mut entry = entry("tern", of("age") as i32);
        entry.jump_best = Some(of("best"));
        (entry.hops_right, entry.hops_left) = (Some(of("series")), Some(of("series")));
        let (child, _) = one(entry);
        let (jump, hop) = (&child.skills[&Skill::Jump], &child.skills[&Skill::Hop]);
        for (ours, key) in [
            (jump.m - child.foot, "gap"),
            (jump.tau, "gap_tau"),
            (hop.m, "hop"),
            (hop.tau, "hop_tau"),
        ] {
            assert!(
                (ours - of(key)).abs() <= SAME,
                "{} {key}: {ours}, not {}",
                of("age"),
                of(key)
            );
        }
        assert_eq!((jump.can, hop.can), (1.0, 1.0));
        assert!(jump.sources.iter().any(|source| source == "measured"));
    }
}

/// Eight measured children weigh as much as the age's figures: n/(n+8) is a half.
#[test]
fn a_class_is_moved_halfway_by_eight_measured_children() {
    let ledger = ledger();
    let mut entries: Vec<Entry> = (0..8).map(|at| entry(&format!("m{at}"), 4)).collect();
    for entry in &mut entries {
        entry.jump_best = Some(0.164 * 4.0 - 0.023 + 0.20);
        entry.height = Some(stature(None, 48.0, 1.0));
    }
    entries.push(entry("new", 5));
    let children = roster(&entries, DAY, &ledger).value;
    let new = children.last().expect("nine children");
    let gap = new.skills[&Skill::Jump].m - new.foot;
    assert!((gap - (0.52 + 0.65 * 0.10)).abs() <= 2e-6, "{gap}");
    assert_eq!(new.skills[&Skill::Jump].tau, 0.12);
    // half of one standard deviation each: z of both sexes is only nearly 1 on the mean
    let z = z_of(None, 60.0, new.stature);
    assert!((z - 0.5).abs() < 0.01, "{z}");
    assert!((new.skills[&Skill::Hop].m - 0.36 * gap / 0.52).abs() <= 2e-6);
    assert!(
        new.skills[&Skill::Hop]
            .sources
            .iter()
            .any(|source| source == "site.shrink")
    );
    assert_eq!(new.skills[&Skill::Leap].m, 0.80);
}

#[test]
fn a_measured_height_scales_what_is_a_share_of_stature() {
    let mut tall = entry("heron", 5);
    tall.height = Some(1.15);
    tall.foot = Some(0.18);
    let (child, notes) = one(tall);
    assert!(notes.is_empty(), "{notes:?}");
    let factor = 1.15 / stature(None, 60.0, 0.0);
    for (skill, m) in [
        (Skill::Walk, 0.49),
        (Skill::Gallop, 0.70),
        (Skill::Slide, 0.60),
        (Skill::Skip, 0.54),
    ] {
        assert!(
            (child.skills[&skill].m - m * factor).abs() <= 1e-6,
            "{skill:?}"
        );
    }
    assert_eq!((child.stature, child.foot), (1.15, 0.18));
    assert_eq!(child.skills[&Skill::Jump].m, 0.70);
}

#[test]
fn ages_are_whole_months_and_sex_only_sets_the_default_height() {
    let mut entry = Entry::new("wren", (2023, 6));
    let (unknown, _) = one(entry.clone());
    assert_eq!(unknown.age, 3.25);
    entry.sex = Some(Sex::Male);
    let (boy, _) = one(entry.clone());
    entry.sex = Some(Sex::Female);
    let (girl, _) = one(entry);
    assert!(girl.stature < unknown.stature && unknown.stature < boy.stature);
    assert!((unknown.stature - (girl.stature + boy.stature) / 2.0).abs() <= 1e-6);
    assert_eq!(girl.skills[&Skill::Hop], boy.skills[&Skill::Hop]);
}

#[test]
fn a_side_that_lags_is_noticed_and_what_people_wrote_is_kept() {
    let mut lags = entry("stint", 4);
    (lags.hops_right, lags.hops_left) = (Some(1.60), Some(1.21));
    let (child, notes) = one(lags.clone());
    assert_eq!(
        (child.less_used, keys(&notes)),
        (Some(Side::Left), vec!["child-left-less-used"])
    );
    lags.less_used = Some(Side::Right);
    let (child, notes) = one(lags.clone());
    assert_eq!((child.less_used, notes), (Some(Side::Right), Vec::new()));
    (lags.less_used, lags.hops_left) = (None, Some(1.50));
    assert_eq!(one(lags).0.less_used, None);
}

#[test]
fn a_hop_or_jump_that_does_not_come_off_is_no_skill_yet() {
    let mut not_yet = entry("knot", 3);
    not_yet.jump_best = Some(0.0);
    (not_yet.hops_right, not_yet.hops_left) = (Some(0.0), Some(0.0));
    let (child, notes) = one(not_yet);
    assert!(notes.is_empty(), "{notes:?}");
    assert_eq!(
        (
            child.skills[&Skill::Jump].can,
            child.skills[&Skill::Hop].can
        ),
        (0.0, 0.0)
    );
    assert_eq!(child.skills[&Skill::Hop].m, 0.21);
}

#[test]
fn children_by_other_means_have_a_gait_of_pushes() {
    let ledger = ledger();
    let with = |means| {
        let mut entry = entry("rail", 4);
        entry.means = means;
        one(entry)
    };
    let (wheels, notes) = with(Means::Wheels);
    assert_eq!(keys(&notes), ["child-own-means"]);
    let push = wheels.skills[&Skill::Slide].m;
    assert_eq!((push, wheels.skills[&Skill::Jump].m), (0.65, 1.30));
    assert!(wheels.skills[&Skill::Leap].m > push && wheels.skills[&Skill::Hop].m < push);
    assert_eq!(turning_radius(Means::Wheels, &ledger), Some(0.75));
    assert_eq!(turning_radius(Means::Feet, &ledger), None);
    let (walker, _) = with(Means::Walker);
    assert!(walker.skills[&Skill::Slide].m < push && walker.speeds.run < 2.3);
    let (held, _) = with(Means::Held);
    let feet = at_years(4.0);
    for skill in Skill::ALL {
        assert!(held.skills[&skill].m < feet.skills[&skill].m, "{skill:?}");
        assert!(
            held.skills[&skill].can >= feet.skills[&skill].can,
            "{skill:?}"
        );
    }
}

#[test]
fn what_cannot_be_is_said_and_left_out() {
    let ledger = ledger();
    let check = |set: &dyn Fn(&mut Entry), severity: Severity, key: &str| {
        let mut entry = entry("gull", 4);
        set(&mut entry);
        let noted = roster(&[entry], DAY, &ledger);
        assert_eq!(keys(&noted.notes), [key]);
        assert_eq!(noted.notes[0].severity, severity, "{key}");
        assert!(
            noted.notes[0].expected.is_some() || noted.notes[0].mend.is_some(),
            "{key}"
        );
    };
    check(
        &|entry| entry.born = (2018, 1),
        Severity::Error,
        "child-age-outside",
    );
    check(
        &|entry| entry.born = (2025, 1),
        Severity::Error,
        "child-age-outside",
    );
    check(
        &|entry| entry.born = (2027, 1),
        Severity::Error,
        "child-born-later",
    );
    check(
        &|entry| entry.height = Some(10.2),
        Severity::Error,
        "child-measure-impossible",
    );
    check(
        &|entry| entry.height = Some(0.80),
        Severity::Warning,
        "child-measure-far",
    );
    check(
        &|entry| entry.foot = Some(0.165 * 10.0),
        Severity::Error,
        "child-measure-impossible",
    );
    check(
        &|entry| entry.foot = Some(0.12),
        Severity::Warning,
        "child-measure-far",
    );
    check(
        &|entry| entry.jump_best = Some(7.1),
        Severity::Error,
        "child-measure-impossible",
    );
    check(
        &|entry| entry.jump_best = Some(1.6),
        Severity::Warning,
        "child-measure-far",
    );
    check(
        &|entry| entry.jump_best = Some(-0.1),
        Severity::Error,
        "child-measure-impossible",
    );
    check(
        &|entry| entry.hops_right = Some(f64::NAN),
        Severity::Error,
        "child-measure-impossible",
    );
    check(
        &|entry| entry.hops_left = Some(4.0),
        Severity::Warning,
        "child-measure-far",
    );
}

#[test]
fn what_people_set_for_a_child_wins() {
    let set = |child: &str, what, value| Override {
        child: child.into(),
        what,
        value,
        at: None,
    };
    let children = || roster(&[entry("gull", 4), entry("tern", 5)], DAY, &ledger()).value;
    let before = children();
    let noted = overridden(
        children(),
        &[
            set("gull", Trait::Reach(Skill::Hop), 0.41),
            set("gull", Trait::Can(Skill::Skip), 0.6),
            set("tern", Trait::Foot, 0.19),
            set("nobody", Trait::Foot, 0.19),
            set("tern", Trait::Can(Skill::Hop), 1.2),
            set("tern", Trait::Reach(Skill::Hop), 0.0),
        ],
    );
    assert_eq!(
        keys(&noted.notes),
        [
            "child-unknown",
            "child-figure-outside",
            "child-figure-outside"
        ]
    );
    let [gull, tern] = noted.value.try_into().expect("two children");
    assert_eq!(
        (gull.skills[&Skill::Hop].m, gull.skills[&Skill::Skip].can),
        (0.41, 0.6)
    );
    assert!(
        gull.skills[&Skill::Hop]
            .sources
            .iter()
            .any(|source| source == "set")
    );
    let longer = tern.foot - before[1].foot;
    assert!(
        (tern.skills[&Skill::Jump].m - before[1].skills[&Skill::Jump].m - longer).abs() <= 1e-6
    );
    assert_eq!(tern.skills[&Skill::Hop], before[1].skills[&Skill::Hop]);
}

#[test]
fn a_projects_own_figures_are_the_ones_used_and_cited() {
    let mut ledger = ledger();
    ledger
        .replace("reach.hop.m", &[0.3, 0.3, 0.3, 0.3])
        .expect("four numbers");
    let child = counts(&[(4.0, 9)], &ledger).value.remove(0);
    assert_eq!(
        (
            child.name.as_str(),
            child.count,
            child.skills[&Skill::Hop].m
        ),
        ("age-4", 9, 0.3)
    );
    for source in child.skills.values().flat_map(|ability| &ability.sources) {
        assert!(ledger.figure(source).is_some(), "{source}");
        assert!(
            ledger.cited().any(|figure| figure.key == *source),
            "{source} is not cited"
        );
    }
    assert!(
        ledger
            .cited()
            .any(|figure| figure.key == "children.stature")
    );
    assert!(ledger.number(Key("children.scatter")) > 0.0);
}

#[test]
fn counts_add_up_and_a_wrong_age_is_said() {
    let noted = counts(
        &[(3.0, 8), (4.5, 0), (4.0, 10), (3.0, 2), (9.0, 1)],
        &ledger(),
    );
    let named: Vec<(&str, u32)> = noted
        .value
        .iter()
        .map(|child| (child.name.as_str(), child.count))
        .collect();
    assert_eq!(named, [("age-3", 10), ("age-4", 10)]);
    assert_eq!(keys(&noted.notes), ["child-age-outside"]);
}

proptest! {
    /// The two directions of the growth table undo one another.
    #[test]
    fn z_and_stature_are_inverse(female: bool, months in 20.0..100.0f64, z in -4.0..4.0f64) {
        let sex = if female { Sex::Female } else { Sex::Male };
        let there = Lms::at(sex, months).stature(z);
        prop_assert!((Lms::at(sex, months).z(there) - z).abs() < 1e-9);
    }

    /// Whatever is written, nobody gets an ability that is none.
    #[test]
    fn abilities_are_probabilities_and_lengths(
        months in 0i32..110, height in proptest::option::of(-1.0..3.0f64), foot in proptest::option::of(-1.0..1.0f64),
        jump in proptest::option::of(-1.0..4.0f64), right in proptest::option::of(-1.0..9.0f64),
        left in proptest::option::of(-1.0..9.0f64), means in 0usize..4, sex in 0usize..3,
    ) {
        let mut entry = Entry::new("x", (2026 - months / 12, 9));
        (entry.height, entry.foot, entry.jump_best) = (height, foot, jump);
        (entry.hops_right, entry.hops_left) = (right, left);
        entry.means = [Means::Feet, Means::Walker, Means::Wheels, Means::Held][means];
        entry.sex = [None, Some(Sex::Female), Some(Sex::Male)][sex];
        for child in roster(&[entry], DAY, &ledger()).value {
            prop_assert!(child.stature > 0.4 && child.foot > 0.05);
            for ability in child.skills.values() {
                prop_assert!(ability.m > 0.0 && ability.m < 3.0 && ability.tau > 0.0);
                prop_assert!((0.0..=1.0).contains(&ability.can) && (0.0..=1.0).contains(&ability.steady));
            }
        }
    }

    /// A child that jumped farther is never planned for less.
    #[test]
    fn a_farther_jump_is_a_farther_reach(near in 0.2..1.2f64, more in 0.01..0.3f64) {
        let reach = |best: f64| {
            let mut entry = entry("x", 5);
            entry.jump_best = Some(best);
            one(entry).0.skills[&Skill::Jump].m
        };
        prop_assert!(reach(near) < reach(near + more));
    }
}
