//! Placements held against another program (`oracle/placements.py`, shapely), and against
//! published densities.
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use nest::{Band, Budget, Sheet, check, nest, strip};
use serde_json::Value;

/// Share of the smaller outline's area: what the reference page (7) asks of placements.
const OVERLAP: f64 = 1e-9;

/// Instances' units or metres. Written and read again, a place keeps its digits.
const SAME: f64 = 1e-9;

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

fn list(value: &Value) -> &[Value] {
    value.as_array().expect("a list")
}

#[test]
fn another_program_finds_no_overlap_in_what_is_laid() {
    let stored: Value =
        serde_json::from_str(include_str!("../oracle/placements.json")).expect("figures");
    let cases = common::cases();
    assert_eq!(list(&stored["cases"]).len(), cases.len());
    for (case, stored) in cases.iter().zip(list(&stored["cases"])) {
        let name = case.name;
        let (width, density, sheets) = common::answer(case);
        assert!(
            (width - number(&stored["width"])).abs() <= SAME,
            "{name}: {width}"
        );
        assert_eq!(sheets.len(), list(&stored["sheets"]).len(), "{name}");
        for (laid, stored) in sheets.iter().zip(list(&stored["sheets"])) {
            let stored = list(stored);
            assert_eq!(laid.len(), stored.len(), "{name}");
            for (placement, stored) in laid.iter().zip(stored) {
                let ours = [
                    placement.part as f64,
                    placement.turn,
                    placement.x,
                    placement.y,
                ];
                let same = (0..4).all(|k| (ours[k] - number(&stored[k])).abs() <= SAME);
                assert!(same, "{name}: {ours:?}, not {stored}");
            }
        }
        let theirs = &stored["shapely"];
        assert!(number(&theirs["overlap"]) <= OVERLAP, "{name}: {theirs}");
        assert!(number(&theirs["outside"]) <= OVERLAP, "{name}: {theirs}");
        assert!(
            number(&theirs["nearest"]) >= case.sheet.gap - SAME,
            "{name}: {theirs}"
        );
        assert!(
            (number(&theirs["density"]) - density).abs() <= SAME,
            "{name}: {density}"
        );
        let wanted: usize = case.parts.iter().map(|part| part.count).sum();
        assert_eq!(sheets.iter().map(Vec::len).sum::<usize>(), wanted, "{name}");
    }
}

/// Densities in %, mean of an older metaheuristic, as a paper of 2021 prints them (reference
/// page 7, last column; strips as high as here).
#[test]
fn small_budgets_come_within_five_points_of_an_older_metaheuristic() {
    for (name, steps, published) in [
        ("fu", 20_000, 87.15),
        ("dagli", 12_000, 85.36),
        ("shapes0", 8_000, 63.18),
    ] {
        let instance = common::instance(name);
        let band = Band {
            height: instance.height,
            margin: 0.0,
            gap: 0.0,
        };
        let budget = Budget {
            steps,
            walks: 2,
            seed: 1,
        };
        let found = strip(&instance.parts, &band, &budget);
        let density = 100.0 * found.density;
        assert!(
            density >= published - 5.0,
            "{name}: {density}, published {published}"
        );
        assert!(
            found.length < found.start,
            "{name}: no better than bottom-left"
        );
    }
}

/// Bottom-left lays the twelve parts of fu 37 long (a second sheet at 34); the search finds
/// room for all on one. The best length known is 30.8 (reference page 7).
#[test]
fn the_search_saves_a_sheet() {
    let fu = common::instance("fu");
    let sheet = Sheet {
        width: 34.0,
        height: fu.height,
        margin: 0.0,
        gap: 0.0,
    };
    let found = nest(
        &fu.parts,
        &sheet,
        &Budget {
            steps: 20_000,
            walks: 2,
            seed: 1,
        },
    );
    assert_eq!((found.start, found.sheets.len()), (2, 1));
    assert_eq!(
        check(&fu.parts, &sheet, &found.sheets[0].placements),
        vec![]
    );
}
