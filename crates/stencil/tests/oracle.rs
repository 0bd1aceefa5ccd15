//! What falls out of a plate, against shapely 2.2.0 (`oracle/holds.py`, `oracle/holds.json`).
#![cfg(test)]

use geo::{Area, LineString, Polygon};
use serde_json::Value;
use stencil::falls;

/// Square metres: corners of widened openings are rounded in other steps.
const NEAR: f64 = 2e-6;

fn polygon(rings: &Value) -> Polygon<f64> {
    let ring = |ring: &Value| -> LineString<f64> {
        let places = ring.as_array().expect("places").iter();
        let number = |value: &Value| value.as_f64().expect("a number");
        places
            .map(|at| (number(&at[0]), number(&at[1])))
            .collect::<Vec<_>>()
            .into()
    };
    let mut rings = rings.as_array().expect("rings").iter().map(ring);
    let outer = rings.next().expect("an outline");
    Polygon::new(outer, rings.collect())
}

#[test]
fn what_falls_out_is_what_shapely_says() {
    let text = include_str!("../oracle/holds.json");
    let record: Value = serde_json::from_str(text).expect("the record reads");
    let cases = record["cases"].as_array().expect("cases");
    assert!(cases.len() > 60);
    let mut loose = 0;
    for (number, case) in cases.iter().enumerate() {
        let openings = case["openings"].as_array().expect("openings");
        let openings: Vec<Polygon<f64>> = openings.iter().map(polygon).collect();
        let ours: Vec<f64> = falls(&polygon(&case["plate"]), &openings)
            .iter()
            .map(Area::unsigned_area)
            .collect();
        let theirs = case["falls"].as_array().expect("areas").iter();
        let theirs: Vec<f64> = theirs.filter_map(Value::as_f64).collect();
        assert_eq!(
            ours.len(),
            theirs.len(),
            "case {number}: {ours:?}, {theirs:?}"
        );
        for (a, b) in ours.iter().zip(&theirs) {
            assert!((a - b).abs() <= NEAR, "case {number}: {a} and {b}");
        }
        loose += ours.len();
    }
    assert!(loose > 20, "cases where much falls out");
}
