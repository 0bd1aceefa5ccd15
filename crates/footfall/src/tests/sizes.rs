//! The inverse against a plain scan of the lengths.

use super::*;
use crate::gait::Gait;
use crate::size::{Pupil, Range, size};
use crate::tread::{Activity, tread};

/// Metres between the places of the scan.
const SCAN: f64 = 0.01;

fn row(gap: f64) -> Figure {
    let mut row = chain(
        (0..6)
            .map(|i| disc((gap * f64::from(i), 0.0), 0.125))
            .collect(),
    );
    row.cells
        .iter_mut()
        .skip(1)
        .for_each(|cell| cell.end = true);
    row
}

/// Single squares and pairs in turn, each gap of its own length.
fn court(single: f64, double: f64) -> Figure {
    let mut x = 0.0;
    let cells = (0..6)
        .map(|row| {
            let pair = row % 3 == 2;
            x += match row {
                0 => 0.0,
                _ if pair || row % 3 == 0 => double,
                _ => single,
            };
            let takes = if pair { Takes::Both } else { Takes::One };
            Cell {
                takes,
                ..upright((x, 0.0), 0.25, if pair { 0.6 } else { 0.25 })
            }
        })
        .collect();
    let mut court = chain(cells);
    court
        .cells
        .iter_mut()
        .skip(2)
        .for_each(|cell| cell.end = true);
    court
}

fn share(figure: &Figure, children: &[Child], weights: &[f64], activity: &Activity) -> f64 {
    let model = model();
    let well = children.iter().zip(weights).map(|(child, weight)| {
        weight
            * tread(figure, child, &activity.gait, activity.foot, &model)
                .pitch
                .well
    });
    well.sum::<f64>() / weights.iter().sum::<f64>()
}

fn activity(gait: &str) -> Activity {
    Activity {
        gait: Gait::named(gait).expect("a gait"),
        foot: None,
    }
}

#[test]
fn the_best_gap_is_at_least_as_good_as_any_of_a_scan() {
    let children: Vec<Child> = [3.4, 4.0, 4.6, 5.2, 5.9].map(child).to_vec();
    let model = model();
    for weights in [
        [1.0; 5],
        [4.0, 1.0, 1.0, 0.0, 0.0],
        [0.0, 0.0, 0.0, 1.0, 3.0],
    ] {
        let pupils: Vec<Pupil> = children
            .iter()
            .zip(weights)
            .map(|(child, weight)| Pupil { child, weight })
            .collect();
        let hop = activity("hop");
        let range = [Range {
            least: 0.2,
            most: 0.7,
        }];
        let sized = size(
            |lengths| Some(row(lengths[0])),
            &range,
            &pupils,
            &[hop],
            &model,
        )
        .expect("lengths");
        assert!(
            (sized.share - share(&row(sized.lengths[0]), &children, &weights, &hop)).abs() < 1e-5
        );
        for step in 0..=50 {
            let gap = 0.2 + SCAN * f64::from(step);
            let scanned = share(&row(gap), &children, &weights, &hop);
            assert!(
                sized.share >= scanned - 1e-5,
                "{:?} {}, but {gap} {scanned}",
                sized.lengths,
                sized.share
            );
        }
        let again = size(
            |lengths| Some(row(lengths[0])),
            &range,
            &pupils,
            &[hop],
            &model,
        );
        assert_eq!(Some(sized), again);
    }
}

#[test]
fn single_and_double_gaps_are_sized_apart() {
    let children: Vec<Child> = [4.2, 5.0, 5.7].map(child).to_vec();
    let pupils: Vec<Pupil> = children
        .iter()
        .map(|child| Pupil { child, weight: 1.0 })
        .collect();
    let model = model();
    let range = Range {
        least: 0.26,
        most: 0.66,
    };
    let family =
        |lengths: &[f64]| (lengths[1] >= lengths[0]).then(|| court(lengths[0], lengths[1]));
    let sized = size(
        family,
        &[range, range],
        &pupils,
        &[activity("court")],
        &model,
    )
    .expect("lengths");
    for a in 0..=20 {
        for b in a..=20 {
            let (single, double) = (0.26 + 0.02 * f64::from(a), 0.26 + 0.02 * f64::from(b));
            let scanned = share(
                &court(single, double),
                &children,
                &[1.0; 3],
                &activity("court"),
            );
            assert!(
                sized.share >= scanned - 1e-4,
                "{:?} {}, but {single} {double} {scanned}",
                sized.lengths,
                sized.share
            );
        }
    }
}

#[test]
fn a_family_without_figures_has_no_size() {
    let one = child(5.0);
    let pupils = [Pupil {
        child: &one,
        weight: 1.0,
    }];
    let range = [Range {
        least: 0.2,
        most: 0.7,
    }];
    assert_eq!(
        size(|_| None, &range, &pupils, &[activity("hop")], &model()),
        None
    );
    let nobody = [Pupil {
        child: &one,
        weight: 0.0,
    }];
    assert_eq!(
        size(
            |l| Some(row(l[0])),
            &range,
            &nobody,
            &[activity("hop")],
            &model()
        ),
        None
    );
    let upside_down = [Range {
        least: 0.7,
        most: 0.2,
    }];
    assert_eq!(
        size(
            |l| Some(row(l[0])),
            &upside_down,
            &pupils,
            &[activity("hop")],
            &model()
        ),
        None
    );
}
