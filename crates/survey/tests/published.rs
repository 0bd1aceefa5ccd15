//! Published networks, to their printed digits.
//!
//! Inputs from textbooks as collected by Krumm, Geodetic Network Adjustment Examples, rev.
//! 3.5, Stuttgart 2020, and shipped as test inputs of a general adjustment program
//! (`faludiz/gama-deformation`, `tests/gama-local/input/krumm/2D/`; numbers only). Printed
//! answers agree with that program's stored ones (coordinates within 6e-8, s0 to 6 digits)
//! and with a scipy 1.17.1 solver of ours. Tolerance: the last printed digit, and where the
//! rounding of coordinates to 1e-7 m (v by 2e-7) shows beyond it, so much over sigma.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test's helpers fail loudly"
)]

mod common;

use common::{Net, at, ellipse, ledger, near, trusting};
use serde::Deserialize;
use survey::network::Kind;

fn same(sigma: f64) -> impl Fn(f64) -> f64 {
    move |_| sigma
}

/// Strang and Borre 1997, example 10.1.
#[test]
fn n1_a_point_from_three_known() {
    let survey = Net::new("1 2 3 P")
        .known("1", 170.71, 270.71, 0.0)
        .known("2", 100.0, 100.0, 0.0)
        .known("3", 241.42, 100.0, 0.0)
        .distances("1-P 100.01 2-P 100.02 3-P 100.03", same(0.010))
        .adjust(&trusting());
    at(&survey, "P", 170.702925, 170.723357, 6e-7);
    for (reading, (v, r)) in
        survey.readings[6..]
            .iter()
            .zip([(-0.023356, 0.5), (-0.016516, 0.25), (-0.016512, 0.2499)])
    {
        near(reading.v, v, 6e-7, "v");
        near(reading.r, r, 6e-5, "r");
        near(reading.w.expect("checked").abs(), 3.3029, 6e-5, "w");
    }
    assert_eq!(survey.dof, 1);
    near(survey.vtpv, 10.909363, 6e-6, "vtpv");
    near(survey.s0, 3.302932, 6e-7, "s0");
    ellipse(&survey, "P", 0.010001, 0.007071, 179.996);
    let mut strict = trusting();
    strict
        .replace("test.global_alpha", &[0.05])
        .expect("one number");
    assert!(
        !Net::new("1 2 3 P")
            .known("1", 170.71, 270.71, 0.0)
            .known("2", 100.0, 100.0, 0.0)
            .known("3", 241.42, 100.0, 0.0)
            .distances("1-P 100.01 2-P 100.02 3-P 100.03", same(0.010))
            .adjust(&strict)
            .global_test
            .passed
    );
}

/// Strang and Borre 1997, example 12.4: a braced quadrilateral in a free frame.
#[test]
fn n2_free_quadrilateral() {
    let survey = Net::new("1 2 3 P")
        .distances(
            "1-P 100.01 2-P 100.02 3-P 100.03 1-2 184.785 2-3 141.440 1-3 184.805",
            same(0.010),
        )
        .start("1", 170.71, 270.71)
        .start("2", 100.0, 100.0)
        .start("3", 241.42, 100.0)
        .start("P", 170.71, 170.71)
        .free()
        .adjust(&ledger());
    for (name, x, y) in [
        ("1", 170.703203, 270.721332),
        ("2", 99.991212, 99.997140),
        ("3", 241.433319, 99.982998),
        ("P", 170.712266, 170.718530),
    ] {
        at(&survey, name, x, y, 6e-7);
    }
    let v = [
        -0.007197, -0.005088, -0.005090, 0.003895, 0.002108, 0.003896,
    ];
    let r = [0.3743, 0.1871, 0.1872, 0.1096, 0.0321, 0.1097];
    for (reading, (v, r)) in survey.readings.iter().zip(v.into_iter().zip(r)) {
        near(reading.v, v, 6e-7, "v");
        near(reading.r, r, 6e-5, "r");
        near(reading.w.expect("checked").abs(), 1.1764, 6e-5, "w");
    }
    near(survey.vtpv, 1.383829, 2e-6, "vtpv");
    near(survey.s0, 1.176363, 1e-6, "s0");
    for (name, a, b, theta) in [
        ("1", 0.006883, 0.004686, 0.004),
        ("2", 0.006235, 0.005170, 119.320),
        ("3", 0.006236, 0.005170, 60.667),
        ("P", 0.009174, 0.005795, 0.007),
    ] {
        ellipse(&survey, name, a, b, theta);
    }
    assert!(survey.global_test.passed);
}

/// Ghilani 2010, example 14.5, feet: coordinates in the millions.
#[test]
fn n3_large_coordinates() {
    let survey = Net::new("Badger Bucky Campus Wisconsin")
        .known("Badger", 2410000.0, 390000.0, 0.0)
        .known("Bucky", 2411820.0, 386881.222, 0.0)
        .distances(
            "Badger-Wisconsin 5870.302 Badger-Campus 7297.588 Wisconsin-Campus 3616.434 \
             Wisconsin-Bucky 5742.878 Campus-Bucky 5123.760",
            same(0.010),
        )
        .start("Campus", 2416892.670, 387603.450)
        .start("Wisconsin", 2415776.819, 391043.461)
        .adjust(&trusting());
    at(&survey, "Campus", 2416892.695516, 387603.255128, 6e-7);
    at(&survey, "Wisconsin", 2415776.904378, 391043.294493, 6e-7);
    for (reading, v) in survey.readings[4..]
        .iter()
        .zip([0.054684, -0.079011, 0.036751, -0.061645, 0.063927])
    {
        near(reading.v, v, 6e-7, "v");
    }
    near(survey.s0, 13.590536, 2e-5, "s0");
    for (name, a, b, theta) in [
        ("Campus", 0.272640, 0.098147, 82.379),
        ("Wisconsin", 0.246184, 0.100993, 119.121),
    ] {
        let ours = survey
            .points
            .iter()
            .find(|p| p.name == name)
            .and_then(|p| p.ellipse)
            .expect("an ellipse");
        near(ours.a * survey.s0, a, 2e-6, "a");
        near(ours.b * survey.s0, b, 2e-6, "b");
        near(ours.theta_deg, theta, 6e-4, "theta");
    }
}

/// Benning 2011, example 8-2. The side of the line 1-2 comes from the walk.
#[test]
fn n4_two_points_from_two_known() {
    let survey = Net::new("1 2 3 4")
        .known("1", 0.0, 1000.0, 0.0)
        .known("2", 1000.0, 1000.0, 0.0)
        .distances(
            "1-3 1000.02 1-4 1414.20 2-3 1414.24 2-4 999.98 3-4 1000.00",
            same(0.010),
        )
        .walk("3 4 2 1")
        .adjust(&ledger());
    at(&survey, "3", -0.009585, -0.022601, 6e-7);
    at(&survey, "4", 999.993016, 0.017399, 6e-7);
    let v = [0.002601, -0.003679, -0.003679, 0.002601, 0.002601];
    let r = [0.1429, 0.2857, 0.2857, 0.1429, 0.1429];
    for (reading, (v, r)) in survey.readings[4..].iter().zip(v.into_iter().zip(r)) {
        near(reading.v, v, 6e-7, "v");
        near(reading.r, r, 6e-5, "r");
    }
    near(survey.s0, 0.688242, 2e-6, "s0");
    ellipse(&survey, "3", 0.014142, 0.007559, 153.435);
    ellipse(&survey, "4", 0.014142, 0.007559, 26.565);
}

/// Benning 2011, example 8-8: a reading that almost nothing checks.
#[test]
fn n5_an_unchecked_reading() {
    let survey = Net::new("1 2 3 4 5 6")
        .known("1", 3000.0, 2000.0, 0.0)
        .known("2", 1000.0, 2000.0, 0.0)
        .known("3", 3000.0, 2100.0, 0.0)
        .known("4", 1000.0, 2100.0, 0.0)
        .known("5", 2000.0, 1000.0, 0.0)
        .distances("6-1 1000 6-2 1000 6-3 1005 6-4 1005 6-5 1000", |_| 0.020)
        .adjust(&ledger());
    at(&survey, "6", 2000.0, 1999.997573, 6e-7);
    let v = [0.0, 0.0, -0.012196, -0.012196, -0.002427];
    let w = [0.0, 0.0, -0.7082, -0.7082, -0.8709];
    let r = [0.7488, 0.7488, 0.7415, 0.7415, 0.0194];
    for (i, reading) in survey.readings[10..].iter().enumerate() {
        near(reading.v, v[i], 6e-7, "v");
        near(reading.w.expect("checked"), w[i], 6e-5, "w");
        near(reading.r, r[i], 6e-5, "r");
    }
    near(survey.s0, 0.502821, 1e-6, "s0");
}

#[derive(Deserialize)]
struct Stored {
    points: Vec<StoredPoint>,
    readings: Vec<(String, String, f64, f64)>,
}

#[derive(Deserialize)]
struct StoredPoint {
    name: String,
    x: f64,
    y: f64,
    fixed: bool,
}

fn stored(text: &str) -> Net {
    let stored: Stored = serde_json::from_str(text).expect("the stored network reads");
    let names: Vec<&str> = stored.points.iter().map(|p| p.name.as_str()).collect();
    let mut net = Net::new(&names.join(" "));
    for point in &stored.points {
        net = if point.fixed {
            net.known(&point.name, point.x, point.y, 0.0)
        } else {
            net.start(&point.name, point.x, point.y)
        };
    }
    for (from, to, value, sigma) in &stored.readings {
        let kind = Kind::Distance {
            from: net.id(from),
            to: net.id(to),
        };
        net = net.read(kind, *value, *sigma);
    }
    net
}

fn number_of(net: &Net, from: &str, to: &str) -> usize {
    let wanted = Kind::Distance {
        from: net.id(from),
        to: net.id(to),
    };
    net.0
        .readings
        .iter()
        .position(|r| r.kind == wanted)
        .expect("the reading")
}

/// Hoepke 1980, example 35.5: a free network with a blunder.
#[test]
fn n6_free_network_and_the_search_for_slips() {
    let mut net = stored(include_str!("data/n6.json")).free();
    let whole = net.adjust(&trusting());
    assert_eq!(whole.dof, 14);
    near(whole.vtpv, 343.644117, 2e-4, "vtpv");
    near(whole.s0, 4.954393, 2e-6, "s0");
    at(&whole, "20", 3579041.404217, 5707194.403921, 6e-7);
    at(&whole, "1059", 3576852.960630, 5706633.576380, 6e-7);
    let worst = number_of(&net, "1087", "20");
    let reading = &whole.readings[worst];
    near(reading.w.expect("checked").abs(), 12.5459, 6e-5, "w");
    near(reading.r, 0.5875, 6e-5, "r");
    near(reading.v, 0.009617, 6e-7, "v");
    near(
        reading.reading + reading.v / reading.r,
        3466.738368,
        2e-6,
        "should read",
    );
    near(reading.tau.expect("14 degrees").abs(), 2.5323, 6e-5, "tau");
    let most = whole
        .readings
        .iter()
        .filter_map(|r| r.w)
        .fold(0.0_f64, |m, w| m.max(w.abs()));
    assert_eq!(most, reading.w.expect("checked").abs());
    assert!(
        reading.tau.expect("tau").abs() < survey::limits::tau_limit(0.05, 27, 14).expect("a limit")
    );

    net.0.readings.remove(worst);
    let second = net.adjust(&trusting());
    assert_eq!(second.dof, 13);
    near(second.vtpv, 186.244577, 2e-4, "vtpv");
    near(second.s0, 3.785037, 2e-6, "s0");
    near(
        second.readings[number_of(&net, "1087", "1011")]
            .w
            .expect("checked")
            .abs(),
        9.0181,
        2e-4,
        "w",
    );
}

/// Weiss et al. 2010: sigmas that are only relative.
#[test]
fn n7_relative_weights_and_tau() {
    let net = stored(include_str!("data/n7.json"));
    let whole = net.adjust(&ledger());
    assert_eq!(whole.dof, 14);
    near(whole.s0, 0.01368896, 6e-9, "s0");
    at(&whole, "4", 3299.964382, 9100.828858, 6e-7);
    at(&whole, "6", 3080.318424, 9775.894329, 6e-7);
    let worst = number_of(&net, "1", "4");
    near(
        whole.readings[worst].tau.expect("14 degrees"),
        -3.146365,
        2e-5,
        "tau",
    );
    near(whole.readings[worst].v, -0.029956, 6e-7, "v");
    assert!(3.146365 > survey::limits::tau_limit(0.05, 24, 14).expect("a limit"));
    // The next largest, by far not as large.
    near(
        whole.readings[number_of(&net, "2", "6")]
            .tau
            .expect("14 degrees")
            .abs(),
        2.287753,
        2e-5,
        "tau",
    );
}

/// Without any start N6 is found from its 27 distances alone: the same residuals.
#[test]
fn n6_needs_no_start() {
    let mut net = stored(include_str!("data/n6.json")).free();
    net.0.start.clear();
    let whole = net.adjust(&trusting());
    near(whole.vtpv, 343.644117, 2e-2, "vtpv");
}
