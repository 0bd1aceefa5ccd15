//! Published instances as questions.
#![allow(dead_code, clippy::expect_used, clippy::panic)]

use geo::{LineString, Polygon};
use nest::{Band, Budget, Part, Placement, Sheet, Turns, nest, strip};
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

/// One question and how long to search; `length` open for a strip.
pub struct Case {
    pub name: &'static str,
    pub parts: Vec<Part>,
    pub sheet: Sheet,
    pub strip: bool,
    pub budget: Budget,
}

/// A band of a circle's ring from 0 to 250 degrees, 48 corners. Invented, as are the two below.
fn bow() -> Polygon<f64> {
    let on = |radius: f64, from: f64, to: f64| {
        (0..24).map(move |k| {
            let angle = from + (to - from) * f64::from(k) / 23.0;
            let (sin, cos) = libm::sincos(angle.to_radians());
            [radius * cos, radius * sin]
        })
    };
    ring(
        &on(0.30, 0.0, 250.0)
            .chain(on(0.18, 250.0, 0.0))
            .collect::<Vec<_>>(),
    )
}

/// The stored questions: the published instances, and invented plates on sheets of 1.2 m with gap
/// and margin, in metres.
pub fn cases() -> Vec<Case> {
    let budget = |steps| Budget {
        steps,
        walks: 2,
        seed: 1,
    };
    let steps = [
        ("fu", 4000),
        ("dagli", 2000),
        ("shapes0", 2000),
        ("blaz1", 2000),
        ("swim", 400),
    ];
    let published = steps.into_iter().map(|(name, steps)| {
        let instance = instance(name);
        let sheet = Sheet {
            width: 0.0,
            height: instance.height,
            margin: 0.0,
            gap: 0.0,
        };
        Case {
            name,
            parts: instance.parts,
            sheet,
            strip: true,
            budget: budget(steps),
        }
    });
    let plate = |name: &str, outline, count, turns| Part {
        name: name.to_owned(),
        outline,
        count,
        turns,
    };
    let arrow = ring(&[
        [0.0, 0.1],
        [0.35, 0.1],
        [0.35, 0.0],
        [0.6, 0.2],
        [0.35, 0.4],
        [0.35, 0.3],
        [0.0, 0.3],
    ]);
    let court = ring(&[
        [0.0, 0.0],
        [0.45, 0.0],
        [0.45, 0.15],
        [0.15, 0.15],
        [0.15, 0.5],
        [0.0, 0.5],
    ]);
    let plates = vec![
        plate("bow", bow(), 4, Turns::Every(30.0)),
        plate("arrow", arrow, 7, Turns::Every(45.0)),
        plate("corner", court, 9, Turns::Every(90.0)),
    ];
    let sheet = Sheet {
        width: 1.2,
        height: 1.2,
        margin: 0.01,
        gap: 0.005,
    };
    let sheets = Case {
        name: "plates",
        parts: plates,
        sheet,
        strip: false,
        budget: budget(6000),
    };
    published.chain([sheets]).collect()
}

/// What the room answers to a case: the width used (the strip's length), density, and the
/// placements by sheet.
pub fn answer(case: &Case) -> (f64, f64, Vec<Vec<Placement>>) {
    let Sheet {
        width,
        height,
        margin,
        gap,
    } = case.sheet;
    if case.strip {
        let found = strip(
            &case.parts,
            &Band {
                height,
                margin,
                gap,
            },
            &case.budget,
        );
        (found.length, found.density, vec![found.placements])
    } else {
        let found = nest(&case.parts, &case.sheet, &case.budget);
        (
            width,
            found.density,
            found
                .sheets
                .into_iter()
                .map(|laid| laid.placements)
                .collect(),
        )
    }
}
