//! Thirty random networks of all kinds of readings, in all frames, against scipy 1.17.1
//! (`oracle/networks.py`, with numerical derivatives).
//!
//! Tolerances: places 2e-7 m (ours are rounded to 1e-7, the oracle's search ends within
//! 1e-8); figures of the covariance 1e-6 of themselves or what numerical derivatives carry.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test's helpers fail loudly"
)]

mod common;

use common::{Net, near, trusting};
use serde::Deserialize;
use survey::network::Kind;

#[derive(Deserialize)]
struct Oracle {
    networks: Vec<Stored>,
}

#[derive(Deserialize)]
struct Stored {
    frame: String,
    readings: Vec<(String, Vec<usize>, f64, f64)>,
    start: Vec<[f64; 2]>,
    places: Vec<[f64; 2]>,
    sigmas: Vec<[f64; 2]>,
    v: Vec<f64>,
    r: Vec<f64>,
    w: Vec<f64>,
    vtpv: f64,
}

fn kind(word: &str, ids: &[usize]) -> Kind {
    match (word, ids) {
        ("distance", &[from, to]) => Kind::Distance { from, to },
        ("along", &[from, to, point]) => Kind::Along { from, to, point },
        ("left", &[from, to, point]) => Kind::Left { from, to, point },
        ("square", &[at, from, to]) => Kind::Square { at, from, to },
        ("known-x", &[point]) => Kind::KnownX { point },
        ("known-y", &[point]) => Kind::KnownY { point },
        _ => panic!("{word} of {ids:?}"),
    }
}

#[test]
fn scipy_says_the_same() {
    let oracle: Oracle = serde_json::from_str(include_str!("../oracle/networks.json"))
        .expect("the stored figures read");
    assert_eq!(oracle.networks.len(), 30);
    for (number, stored) in oracle.networks.iter().enumerate() {
        let names: Vec<String> = (0..stored.places.len()).map(|i| format!("P{i}")).collect();
        let mut net = Net::new(&names.join(" "));
        for (word, ids, value, sigma) in &stored.readings {
            net = net.read(kind(word, ids), *value, *sigma);
        }
        if stored.frame == "free" {
            net = net.free();
            for (name, place) in names.iter().zip(&stored.start) {
                net = net.start(name, place[0], place[1]);
            }
        }
        let survey = net.adjust(&trusting());
        let what = |figure: &str| format!("network {number} ({}): {figure}", stored.frame);
        near(
            survey.vtpv,
            stored.vtpv,
            1e-6 * (1.0 + stored.vtpv),
            &what("vtpv"),
        );
        for (p, point) in survey.points.iter().enumerate() {
            near(
                point.x,
                stored.places[p][0],
                2e-7,
                &what(&format!("x of {p}")),
            );
            near(
                point.y,
                stored.places[p][1],
                2e-7,
                &what(&format!("y of {p}")),
            );
            if !point.fixed {
                near(
                    point.sx,
                    stored.sigmas[p][0],
                    2e-8,
                    &what(&format!("sx of {p}")),
                );
                near(
                    point.sy,
                    stored.sigmas[p][1],
                    2e-8,
                    &what(&format!("sy of {p}")),
                );
            }
        }
        for (i, reading) in survey.readings.iter().enumerate() {
            // An offset from a line of 2 m to a point 30 m off turns 1e-7 into fifteen times that.
            let rounding = if matches!(reading.kind, Kind::Distance { .. }) {
                4e-7
            } else {
                2e-6
            };
            near(
                reading.v,
                stored.v[i],
                rounding,
                &what(&format!("v of {i}")),
            );
            near(reading.r, stored.r[i], 1e-5, &what(&format!("r of {i}")));
            // The same over sigma_v.
            let sigma_v = reading.sigma * reading.r.sqrt();
            if reading.r > 1e-3 {
                near(
                    reading.w.expect("checked"),
                    stored.w[i],
                    1e-4 + rounding / sigma_v,
                    &what(&format!("w of {i}")),
                );
            }
        }
    }
}
