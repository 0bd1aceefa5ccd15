//! What holds for every question.
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use common::{instance, ring};
use nest::{Band, Budget, Part, Sheet, Strip, Turns, Why, check, nest, strip};
use proptest::prelude::*;

fn budget(steps: u64) -> Budget {
    Budget {
        steps,
        walks: 2,
        seed: 7,
    }
}

fn rectangle(width: f64, height: f64, count: usize) -> Part {
    let outline = ring(&[[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]]);
    Part {
        name: "rectangle".to_owned(),
        outline,
        count,
        turns: Turns::Listed(vec![0.0, 90.0]),
    }
}

/// The strip as a sheet of the length it says it needs.
fn sheet_of(strip: &Strip, band: &Band) -> Sheet {
    Sheet {
        width: strip.length,
        height: band.height,
        margin: band.margin,
        gap: band.gap,
    }
}

#[test]
fn parts_that_fill_a_sheet_to_the_last_bit_fit() {
    // 0.6 is no double: two of them and a gap of 0.005 just make 1.205
    let sheet = Sheet {
        width: 1.205,
        height: 1.205,
        margin: 0.0,
        gap: 0.005,
    };
    let found = nest(&[rectangle(0.6, 0.6, 4)], &sheet, &budget(0));
    assert_eq!((found.sheets.len(), found.left.len()), (1, 0));
    assert_eq!(
        check(
            &[rectangle(0.6, 0.6, 4)],
            &sheet,
            &found.sheets[0].placements
        ),
        vec![]
    );
}

#[test]
fn what_has_no_place_is_listed_with_its_reason() {
    let sheet = Sheet {
        width: 2.0,
        height: 1.0,
        margin: 0.1,
        gap: 0.0,
    };
    let line = ring(&[[0.0, 0.0], [1.0, 0.0], [2.0, 0.0]]);
    let nought = ring(&[[0.0, 0.0], [f64::NAN, 0.0], [2.0, 1.0]]);
    let odd = |outline| Part {
        name: "odd".to_owned(),
        outline,
        count: 2,
        turns: Turns::Every(90.0),
    };
    let parts = [
        rectangle(1.0, 0.9, 3),
        odd(line),
        odd(nought),
        rectangle(1.7, 0.3, 2),
    ];
    let found = nest(&parts, &sheet, &budget(200));
    let why: Vec<_> = found
        .left
        .iter()
        .map(|left| (left.part, left.count, left.why))
        .collect();
    let wanted = [
        (0, 3, Why::TooLarge),
        (1, 2, Why::Unsound),
        (2, 2, Why::Unsound),
    ];
    assert_eq!(why, wanted);
    assert_eq!(
        found
            .sheets
            .iter()
            .map(|laid| laid.placements.len())
            .sum::<usize>(),
        2
    );
    let none = Sheet {
        width: f64::NAN,
        height: 1.0,
        margin: 0.0,
        gap: 0.0,
    };
    assert_eq!(nest(&parts, &none, &budget(10)).left.len(), 4);
}

#[test]
fn the_answer_does_not_know_the_threads() {
    let fu = instance("fu");
    let band = Band {
        height: fu.height,
        margin: 0.0,
        gap: 0.0,
    };
    let on = |threads| {
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .expect("threads");
        pool.install(|| strip(&fu.parts, &band, &budget(600)))
    };
    assert_eq!(on(1), on(3));
}

/// A star of `points` spikes, never convex beyond three.
fn any_part() -> impl Strategy<Value = Part> {
    let corner = prop::collection::vec(0.2_f64..1.0, 3..9);
    (
        corner,
        1_usize..4,
        prop::sample::select(vec![0.0, 30.0, 90.0, 180.0]),
    )
        .prop_map(|(radii, count, step)| {
            let many = radii.len() as f64;
            let at = |(k, radius): (usize, &f64)| {
                let (sin, cos) = libm::sincos(std::f64::consts::TAU * k as f64 / many);
                [radius * cos, radius * sin]
            };
            let points: Vec<_> = radii.iter().enumerate().map(at).collect();
            let turns = if step == 0.0 {
                Turns::Listed(vec![0.0])
            } else {
                Turns::Every(step)
            };
            Part {
                name: "star".to_owned(),
                outline: ring(&points),
                count,
                turns,
            }
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn nothing_overlaps_nothing_is_lost_and_bottom_left_is_never_better(
        parts in prop::collection::vec(any_part(), 1..5),
        gap in prop::sample::select(vec![0.0, 0.05, 0.3]),
        margin in prop::sample::select(vec![0.0, 0.1]),
    ) {
        let wanted: usize = parts.iter().map(|part| part.count).sum();
        let sheet = Sheet { width: 3.5, height: 2.5, margin, gap };
        let start = nest(&parts, &sheet, &budget(0));
        let found = nest(&parts, &sheet, &budget(300));
        let mut laid = std::collections::BTreeSet::new();
        for sheet_laid in &found.sheets {
            prop_assert_eq!(check(&parts, &sheet, &sheet_laid.placements), vec![]);
            laid.extend(sheet_laid.placements.iter().map(|placed| (placed.part, placed.copy)));
        }
        prop_assert_eq!(laid.len(), wanted);
        let last = |found: &nest::Nesting| found.sheets.last().map_or(0.0, |laid| laid.used);
        prop_assert!(found.sheets.len() <= start.sheets.len());
        prop_assert!(found.sheets.len() < start.sheets.len() || last(&found) <= last(&start));

        let band = Band { height: 2.5, margin, gap };
        let start = strip(&parts, &band, &budget(0));
        let found = strip(&parts, &band, &budget(300));
        prop_assert_eq!(check(&parts, &sheet_of(&found, &band), &found.placements), vec![]);
        prop_assert_eq!(found.placements.len(), wanted);
        prop_assert!(found.length <= start.length);
        prop_assert!(start.length <= start.start);
    }
}
