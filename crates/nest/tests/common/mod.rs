//! Published instances as questions.
#![allow(dead_code, clippy::expect_used, clippy::panic)]

use geo::{LineString, Polygon};
use nest::{Part, Turns};
use serde_json::Value;

pub struct Instance {
    pub name: String,
    pub height: f64,
    pub parts: Vec<Part>,
}

/// Of `tests/instances`: each file names its source.
pub fn instance(name: &str) -> Instance {
    let text = match name {
        "fu" => include_str!("../instances/fu.json"),
        "dagli" => include_str!("../instances/dagli.json"),
        "shapes0" => include_str!("../instances/shapes0.json"),
        "blaz1" => include_str!("../instances/blaz1.json"),
        "swim" => include_str!("../instances/swim.json"),
        _ => panic!("no instance {name}"),
    };
    let stored: Value = serde_json::from_str(text).expect("an instance");
    let number = |value: &Value| value.as_f64().expect("a number");
    let list = |value: &Value| value.as_array().expect("a list").clone();
    let parts = list(&stored["parts"])
        .into_iter()
        .enumerate()
        .map(|(nth, part)| Part {
            name: format!("{name} {nth}"),
            outline: ring(
                &list(&part["outline"])
                    .iter()
                    .map(|at| [number(&at[0]), number(&at[1])])
                    .collect::<Vec<_>>(),
            ),
            count: number(&part["count"]) as usize,
            turns: Turns::Listed(list(&part["turns"]).iter().map(number).collect()),
        });
    Instance {
        name: name.to_owned(),
        height: number(&stored["height"]),
        parts: parts.collect(),
    }
}

pub fn ring(points: &[[f64; 2]]) -> Polygon<f64> {
    let line: Vec<(f64, f64)> = points.iter().map(|&[x, y]| (x, y)).collect();
    Polygon::new(LineString::from(line), Vec::new())
}
