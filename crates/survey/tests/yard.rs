//! The L-shaped yard and the braced rectangle.
//!
//! Source: reference figures computed with scipy 1.17.1 `least_squares` from the readings
//! below, sigmas by the tape model at the length meant (a slip does not change them).
//! Tolerance: the last printed digit.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test's helpers fail loudly"
)]

mod common;

use common::{Net, at, ellipse, ledger, near, tape, trusting};
use survey::result::{Slip, Survey};

const Y1: &str = "A-B 23.997 B-C 9.996 C-D 10.002 D-E 8.002 E-F 13.998 F-A 17.999 A-C 25.985 A-D 17.199 \
                  A-E 22.805 B-D 14.145 B-F 30.000 D-F 16.120";

fn y1(readings: &str) -> Net {
    let mut net = Net::new("A B C D E F")
        .distances(readings, tape)
        .walk("A B C D E F");
    let truth: [(f64, f64); 6] = [
        (0., 0.),
        (24., 0.),
        (24., 10.),
        (14., 10.),
        (14., 18.),
        (0., 18.),
    ];
    for reading in &mut net.0.readings {
        let ends: Vec<(f64, f64)> = reading.kind.points().map(|p| truth[p]).collect();
        reading.sigma = tape(libm::hypot(ends[0].0 - ends[1].0, ends[0].1 - ends[1].1));
    }
    net
}

fn suspect(survey: &Survey, number: usize) -> &survey::result::Suspect {
    survey.suspects.get(number).expect("a suspect")
}

#[test]
fn y1_whole() {
    let net = y1(Y1);
    let noted = survey::adjust(&net.0, &ledger());
    let survey = noted.value.expect("an answer");
    assert_eq!(survey.dof, 3);
    near(survey.vtpv, 0.788774, 1e-6, "vtpv");
    near(survey.s0, 0.512762, 1e-6, "s0");
    let area = survey.area.expect("a closed yard");
    near(area.value, 351.921969, 1.5e-6, "area");
    near(area.sigma, 0.100847, 1e-6, "area sigma");
    for (name, x, y, sx, sy) in [
        ("A", 0.0, 0.0, 0.0, 0.0),
        ("B", 23.995253, 0.0, 0.007397, 0.0),
        ("C", 23.991544, 9.995459, 0.005691, 0.004194),
        ("D", 13.990842, 10.001476, 0.005071, 0.007240),
        ("E", 13.994206, 18.003888, 0.010192, 0.007837),
        ("F", -0.004373, 17.999510, 0.009393, 0.006008),
    ] {
        at(&survey, name, x, y, 6e-7);
        let point = survey
            .points
            .iter()
            .find(|p| p.name == name)
            .expect("the point");
        near(point.sx, sx, 6e-7, "sx");
        near(point.sy, sy, 6e-7, "sy");
        assert_eq!((point.fixed, point.loose), (name == "A", false));
    }
    ellipse(&survey, "C", 0.005737, 0.004131, 169.492);
    ellipse(&survey, "D", 0.007429, 0.004790, 107.058);
    ellipse(&survey, "E", 0.011768, 0.005179, 146.174);
    ellipse(&survey, "F", 0.009741, 0.005424, 18.611);
    for (i, (v, w, r, mdb)) in [
        (-0.001747, -0.7063, 0.1006, 0.1016),
        (-0.000541, -0.8440, 0.0228, 0.1161),
        (-0.001296, -0.8440, 0.1311, 0.0484),
        (0.000413, 0.3711, 0.0840, 0.0548),
        (0.000579, 0.3711, 0.0915, 0.0705),
        (0.000511, 0.3540, 0.0545, 0.1093),
        (0.005448, 0.8440, 0.5966, 0.0447),
        (-0.000943, -0.3067, 0.2651, 0.0479),
        (-0.001978, -0.3711, 0.5094, 0.0432),
        (0.001298, 0.5636, 0.1966, 0.0484),
        (-0.000594, -0.0769, 0.6628, 0.0482),
        (-0.000615, -0.2023, 0.2852, 0.0440),
    ]
    .into_iter()
    .enumerate()
    {
        let reading = &survey.readings[i];
        near(reading.v, v, 7e-7, "v");
        // 1e-7 m over the smallest sigma_v, 0.6 mm.
        near(reading.w.expect("checked"), w, 3e-4, "w");
        near(reading.r, r, 6e-5, "r");
        near(reading.mdb.expect("checked"), mdb, 6e-5, "mdb");
    }
    // Y4: three readings at a corner lock each other.
    assert_eq!(survey.groups, [vec![1, 2, 6], vec![3, 4, 8]]);
    assert!(survey.suspects.is_empty() && survey.global_test.passed);
}

#[test]
fn area_sigma_is_the_same_in_any_datum() {
    let free = y1(Y1).free().adjust(&ledger()).area.expect("a closed yard");
    near(free.value, 351.921969, 3e-6, "area");
    near(free.sigma, 0.100847, 1e-6, "area sigma");
}

#[test]
fn y2_a_tenth_too_much() {
    let misread = Y1.replace("A-D 17.199", "A-D 17.299");
    let whole = y1(&misread).adjust(&trusting());
    near(whole.vtpv, 80.259601, 2e-5, "vtpv");
    near(whole.global_test.limit, 16.2662, 6e-5, "limit at 0.1 %");
    assert!(!whole.global_test.passed);
    let survey = y1(&misread).adjust(&ledger());
    let ad = &survey.readings[7];
    near(ad.w.expect("checked").abs(), 8.9198, 6e-5, "w as it stood");
    near(ad.r, 0.2637, 6e-5, "r as it stood");
    assert!(ad.set_aside);
    assert_eq!(survey.suspects.len(), 1);
    assert_eq!(suspect(&survey, 0).readings, [7]);
    near(suspect(&survey, 0).should_read, 17.195, 6e-4, "should read");
    assert_eq!(suspect(&survey, 0).guess, Some(Slip::Tenths(1)));
    assert_eq!(survey.dof, 2);
    near(survey.vtpv, 0.694709, 1e-6, "vtpv");
    near(survey.s0, 0.589368, 1e-6, "s0");
    at(&survey, "D", 13.989279, 9.999168, 6e-7);
    assert!(survey.global_test.passed);
}

#[test]
fn y3_a_whole_metre_too_much() {
    let misread = Y1.replace("B-F 30.000", "B-F 31.000");
    near(
        y1(&misread).adjust(&trusting()).vtpv,
        7384.996,
        6e-4,
        "vtpv",
    );
    let survey = y1(&misread).adjust(&ledger());
    assert_eq!(suspect(&survey, 0).readings, [10]);
    near(
        survey.readings[10].w.expect("checked").abs(),
        85.9312,
        6e-5,
        "w",
    );
    near(survey.readings[10].r, 0.6640, 6e-5, "r");
    near(
        suspect(&survey, 0).should_read,
        29.9995,
        2e-3,
        "should read",
    );
    assert_eq!(suspect(&survey, 0).guess, Some(Slip::WholeMetres(1)));
}

#[test]
fn y4_a_slip_in_a_locked_group_is_named_but_not_located() {
    let survey = y1(&Y1.replace("A-C 25.985", "A-C 26.485")).adjust(&ledger());
    let suspect = suspect(&survey, 0);
    let mut group = suspect.readings.clone();
    group.sort_unstable();
    assert_eq!(group, [1, 2, 6]);
    assert!(!suspect.set_aside && survey.readings.iter().all(|r| !r.set_aside));
    assert!(!survey.global_test.passed);
}

const Y5: &str = "A-B 12.003 B-C 7.996 C-D 12.002 D-A 8.004 A-C 14.424 B-D 14.421";

#[test]
fn y5_one_quadrilateral_never_tells_which() {
    let net = |readings: &str| {
        Net::new("A B C D")
            .distances(readings, |_| 0.005)
            .walk("A B C D")
    };
    let good = net(Y5).adjust(&ledger());
    assert_eq!(good.dof, 1);
    near(good.vtpv, 0.127399, 1e-6, "vtpv");
    for reading in &good.readings {
        near(reading.w.expect("checked").abs(), 0.3569, 1e-4, "w");
        assert_eq!(reading.tau, None);
    }
    at(&good, "C", 12.006225, 7.995504, 6e-7);
    at(&good, "D", 0.004970, 8.003504, 6e-7);
    let area = good.area.expect("a closed yard");
    near(area.value, 96.008112, 1.1e-6, "area");
    near(area.sigma, 0.038636, 1e-6, "area sigma");
    let bad = net(&Y5.replace("14.424", "14.524")).adjust(&ledger());
    near(bad.vtpv, 93.342246, 2e-4, "vtpv");
    assert!(!bad.global_test.passed);
    assert_eq!(suspect(&bad, 0).readings.len(), 6);
    assert!(!suspect(&bad, 0).set_aside);
}

/// What pays: the same yard taped in six ways.
#[test]
fn more_readings_of_the_right_kind_pay() {
    let inner = |net: Net, name: &str, x: f64, y: f64, to: &str| {
        let corner = |n: char| match n {
            'A' => (0.0, 0.0),
            'B' => (24.0, 0.0),
            'C' => (24.0, 10.0),
            'D' => (14.0, 10.0),
            'E' => (14.0, 18.0),
            'F' => (0.0, 18.0),
            _ => (7.0, 9.0),
        };
        to.chars().fold(net, |net, n| {
            let (cx, cy) = corner(n);
            let length = libm::hypot(cx - x, cy - y);
            net.distances(&format!("{name}-{n} {length}"), tape)
        })
    };
    let new = || Net::new("A B C D E F M N").walk("A B C D E F");
    let sides = "A-B 24 B-C 10 C-D 10 D-E 8 E-F 14 F-A 18";
    let length = |a: (f64, f64), b: (f64, f64)| libm::hypot(a.0 - b.0, a.1 - b.1);
    let diagonals = format!(
        "A-C {} A-D {} A-E {} B-D {} B-F {} D-F {}",
        length((0., 0.), (24., 10.)),
        length((0., 0.), (14., 10.)),
        length((0., 0.), (14., 18.)),
        length((24., 0.), (14., 10.)),
        length((24., 0.), (0., 18.)),
        length((14., 10.), (0., 18.)),
    );
    let plans = [
        (
            new().distances(sides, tape).distances(&diagonals, tape),
            12,
            3,
            0.0228,
            116.0,
            11.8,
        ),
        (
            inner(
                new().distances(sides, tape).distances(&diagonals, tape),
                "M",
                7.0,
                9.0,
                "ABCDEF",
            ),
            18,
            7,
            0.0236,
            114.0,
            11.3,
        ),
        (
            inner(
                inner(new().distances(sides, tape), "M", 7.0, 9.0, "ABCDEF"),
                "N",
                13.0,
                5.0,
                "ABCDEFM",
            ),
            19,
            6,
            0.0226,
            117.0,
            13.5,
        ),
        (
            inner(
                inner(
                    new().distances(sides, tape).distances(&diagonals, tape),
                    "M",
                    7.0,
                    9.0,
                    "ABCDEF",
                ),
                "N",
                13.0,
                5.0,
                "ABCDEFM",
            ),
            25,
            12,
            0.0538,
            76.0,
            10.1,
        ),
        (
            new()
                .distances(sides, tape)
                .distances(sides, tape)
                .distances(&diagonals, tape),
            18,
            9,
            0.2037,
            48.0,
            9.9,
        ),
        (
            new()
                .distances(sides, tape)
                .distances(sides, tape)
                .distances(&diagonals, tape)
                .distances(&diagonals, tape),
            24,
            15,
            0.5114,
            44.0,
            8.3,
        ),
    ];
    for (i, (mut net, n, dof, r, mdb, axis)) in plans.into_iter().enumerate() {
        // Marks that a plan does not use are no points of it.
        let touched = net
            .0
            .readings
            .iter()
            .flat_map(|r| r.kind.points())
            .max()
            .expect("readings");
        net.0.points.truncate(touched + 1);
        let survey = net.adjust(&ledger());
        assert_eq!((survey.readings.len(), survey.dof), (n, dof), "plan {i}");
        let least = survey.readings.iter().map(|r| r.r).fold(1.0, f64::min);
        let worst = survey
            .readings
            .iter()
            .filter_map(|r| r.mdb)
            .fold(0.0, f64::max);
        let longest = survey
            .points
            .iter()
            .filter_map(|p| p.ellipse)
            .map(|e| e.a)
            .fold(0.0, f64::max);
        near(least, r, 2e-4, &format!("plan {i}: r"));
        near(worst * 1000.0, mdb, 0.6, &format!("plan {i}: mdb"));
        near(longest * 1000.0, axis, 0.06, &format!("plan {i}: axis"));
    }
}
