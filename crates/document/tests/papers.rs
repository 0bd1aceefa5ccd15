//! The papers of an invented yard, in every language, unit and paper.

#![allow(clippy::expect_used)]

mod common;

use document::drawing::scene::{Item, Rect, Text};
use document::drawing::yard::Plan;
use document::sheet::{Paper, Sheet};
use document::{plan_sheet, survey_report, tape_sheet};
use ground::result::Ground;
use ground::yard::Yard;
use ledger::Ledger;
use survey::result::Survey;
use unit::Units;
use words::Language;

struct Case {
    ledger: Ledger,
    yard: Yard,
    survey: Survey,
    ground: Ground,
}

fn case() -> Case {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let survey = survey::adjust(&common::network(true), &ledger)
        .value
        .expect("a survey");
    let yard = common::yard(&survey);
    let ground = ground::ground(&yard, ground::Standard::UsHandbook, &ledger).value;
    Case {
        ledger,
        yard,
        survey,
        ground,
    }
}

fn sheets() -> Vec<Sheet<'static>> {
    let mut all = Vec::new();
    for language in [Language::En, Language::Es] {
        for (units, paper) in [(Units::Metres, Paper::A4), (Units::Feet, Paper::Letter)] {
            for large in [false, true] {
                all.push(Sheet {
                    name: "Tern Street",
                    language,
                    units,
                    paper,
                    date: "2026-09-01",
                    large,
                    north: Some(38.0),
                    credit: None,
                    assumed: &[],
                });
            }
        }
    }
    all
}

fn texts(items: &[Item]) -> Vec<&Text> {
    items
        .iter()
        .filter_map(|item| {
            if let Item::Text(text) = item {
                Some(text)
            } else {
                None
            }
        })
        .collect()
}

/// The upright rectangle round a text's letters.
fn ground_of(text: &Text) -> Rect {
    let slab = document::drawing::mark::slab_of(text, -0.1);
    let (sin, cos) = libm::sincos(slab.turn.to_radians());
    let (sin, cos) = (sin.abs(), cos.abs());
    let half = [
        slab.half[0] * cos + slab.half[1] * sin,
        slab.half[0] * sin + slab.half[1] * cos,
    ];
    Rect {
        x: slab.centre[0] - half[0],
        y: slab.centre[1] - half[1],
        w: 2.0 * half[0],
        h: 2.0 * half[1],
    }
}

fn labels_are_apart(drawn: &plan_sheet::Drawn, case: &str) {
    let all: Vec<(Rect, &str)> = texts(&drawn.scene.items)
        .into_iter()
        .map(|text| (ground_of(text), text.words.as_str()))
        .collect();
    let [w, h] = drawn.layout.size;
    for (number, (rect, words)) in all.iter().enumerate() {
        let within = rect.x >= 0.0 && rect.y >= 0.0 && rect.x + rect.w <= w && rect.y + rect.h <= h;
        assert!(within, "{words} is off the sheet, {case}");
        for (other, theirs) in &all[number + 1..] {
            assert!(!rect.meets(other), "{words} lies on {theirs}, {case}");
        }
    }
}

/// Yards that are tiny, long, oblique, many-cornered or crowded still get a sheet.
#[test]
fn odd_yards_get_a_sheet_too() {
    use geo::{Coord, LineString, Polygon};
    use ground::yard::{
        Edge, EdgeKind, Fixture, FixtureKind, Footprint, More, Surface, SurfaceKind,
    };
    let ledger = Ledger::shipped().expect("the ledger reads");
    let around = |count: usize, a: f64, b: f64, turn: f64| -> Vec<(f64, f64)> {
        (0..count)
            .map(|n| {
                let (sin, cos) =
                    libm::sincos(core::f64::consts::TAU * n as f64 / count as f64 + turn);
                (a * cos, b * sin)
            })
            .collect()
    };
    let shapes = [
        vec![(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0)],
        vec![(0.0, 0.0), (60.0, 0.0), (60.0, 4.0), (0.0, 4.0)],
        vec![
            (1000.0, 2000.0),
            (1017.0, 2009.0),
            (1011.0, 2021.0),
            (993.0, 2012.0),
        ],
        around(24, 14.0, 9.0, 0.3),
        around(3, 12.0, 12.0, 1.0),
        around(60, 160.0, 90.0, 0.1),
    ];
    for (number, shape) in shapes.iter().enumerate() {
        let ring: Vec<Coord<f64>> = shape.iter().map(|&(x, y)| Coord { x, y }).collect();
        let middle = ring
            .iter()
            .fold(Coord { x: 0.0, y: 0.0 }, |sum, &c| sum + c)
            / ring.len() as f64;
        let edges = (0..ring.len())
            .map(|n| Edge {
                line: LineString::new(vec![ring[n], ring[(n + 1) % ring.len()]]),
                is: [
                    EdgeKind::Wall,
                    EdgeKind::Fence,
                    EdgeKind::Drop,
                    EdgeKind::Kerb,
                    EdgeKind::Open,
                    EdgeKind::Hedge,
                ][n % 6],
            })
            .collect();
        let kinds = [
            FixtureKind::Post,
            FixtureKind::Lamp,
            FixtureKind::Tree,
            FixtureKind::Cover,
            FixtureKind::Hydrant,
            FixtureKind::Table,
        ];
        let fixtures = kinds
            .iter()
            .enumerate()
            .map(|(n, &is)| Fixture {
                name: format!("a thing with a long name {n}"),
                is,
                shape: Footprint::Disc {
                    centre: middle
                        + Coord {
                            x: 0.3 * n as f64 - 0.8,
                            y: 0.2 * (n % 2) as f64,
                        },
                    radius: 0.08,
                },
                height: None,
                base: None,
                top: None,
                more: More::Nothing,
                at: None,
            })
            .collect();
        let boundary = Polygon::new(LineString::new(ring.clone()), Vec::new());
        let surface = Surface {
            outline: boundary.clone(),
            is: SurfaceKind::Asphalt,
            age_days: None,
            condition: None,
            at: None,
        };
        let yard = Yard {
            boundary,
            edges,
            surfaces: vec![surface],
            fixtures,
            doors: Vec::new(),
            gates: Vec::new(),
            routes: Vec::new(),
            stands: vec![middle],
            remarks: Vec::new(),
        };
        let ground = ground::ground(&yard, ground::Standard::EuropeanNorm, &ledger).value;
        let plan = Plan {
            yard: &yard,
            ground: &ground,
            survey: None,
        };
        for sheet in sheets() {
            let drawn = plan_sheet::draw(&sheet, &plan, &ledger);
            labels_are_apart(&drawn, &format!("yard {number}, {sheet:?}"));
            for corner in &ring {
                let [x, y] = drawn.layout.view.at(*corner);
                assert!(
                    x >= 0.0 && y >= 0.0 && x <= drawn.layout.size[0] && y <= drawn.layout.size[1]
                );
            }
        }
        let sheet = &sheets()[0];
        assert!(
            survey_report::survey_report(sheet, &plan, &[], &ledger).is_ok(),
            "yard {number}"
        );
    }
}

#[test]
fn no_label_lies_on_another_or_off_the_sheet() {
    let case = case();
    let plan = Plan {
        yard: &case.yard,
        ground: &case.ground,
        survey: Some(&case.survey),
    };
    for sheet in sheets() {
        let drawn = plan_sheet::draw(&sheet, &plan, &case.ledger);
        labels_are_apart(&drawn, &format!("{sheet:?}"));
    }
}

/// Every length of the yard stands on the sheet once, at its corner's own place.
#[test]
fn every_side_is_dimensioned_and_the_plan_is_true_to_scale() {
    let case = case();
    let plan = Plan {
        yard: &case.yard,
        ground: &case.ground,
        survey: Some(&case.survey),
    };
    for sheet in sheets() {
        let drawn = plan_sheet::draw(&sheet, &plan, &case.ledger);
        let words: Vec<&str> = texts(&drawn.scene.items)
            .into_iter()
            .map(|text| text.words.as_str())
            .collect();
        let ring: Vec<_> = case.yard.boundary.exterior().coords().copied().collect();
        for side in ring.windows(2) {
            let metres = libm::hypot(side[1].x - side[0].x, side[1].y - side[0].y);
            let figure = document::measure::dimension(metres, &sheet);
            assert!(
                words.contains(&figure.as_str()),
                "{figure} is missing, {sheet:?}"
            );
            let (a, b) = (drawn.layout.view.at(side[0]), drawn.layout.view.at(side[1]));
            let paper = libm::hypot(b[0] - a[0], b[1] - a[1]);
            assert!((paper * f64::from(drawn.layout.scale.0) - metres * 1000.0).abs() < 1e-6);
        }
    }
}

#[test]
fn every_word_of_the_papers_is_in_the_catalogue() {
    let case = case();
    let plan = Plan {
        yard: &case.yard,
        ground: &case.ground,
        survey: Some(&case.survey),
    };
    for sheet in sheets() {
        let drawn = plan_sheet::draw(&sheet, &plan, &case.ledger);
        for text in texts(&drawn.scene.items) {
            assert!(
                !text.words.contains("doc-") && !text.words.contains("{$"),
                "{}",
                text.words
            );
        }
    }
}

#[test]
fn papers_are_set_without_a_warning_and_twice_alike() {
    let case = case();
    let plan = Plan {
        yard: &case.yard,
        ground: &case.ground,
        survey: Some(&case.survey),
    };
    let network = common::network(true);
    for sheet in sheets() {
        let report = survey_report::survey_report(&sheet, &plan, &[], &case.ledger).expect("sets");
        assert!(report.starts_with(b"%PDF-"));
        assert_eq!(
            report,
            survey_report::survey_report(&sheet, &plan, &[], &case.ledger).expect("sets")
        );
        let tape = tape_sheet::tape_sheet(&sheet, &network, Some(&case.survey), &case.ledger)
            .expect("sets");
        assert_eq!(
            tape,
            tape_sheet::tape_sheet(&sheet, &network, Some(&case.survey), &case.ledger)
                .expect("sets")
        );
    }
}

#[test]
fn names_that_try_to_be_code_stay_names() {
    let case = case();
    let plan = Plan {
        yard: &case.yard,
        ground: &case.ground,
        survey: Some(&case.survey),
    };
    let mut sheet = sheets().remove(0);
    for name in [
        "#panic(\"x\")",
        "a \" b \\ c",
        "庭 ≤ 3",
        "",
        "A very long name of a yard that no title block was ever made to hold in one line",
    ] {
        sheet.name = name;
        assert!(
            survey_report::survey_report(&sheet, &plan, &[], &case.ledger).is_ok(),
            "{name}"
        );
    }
}
