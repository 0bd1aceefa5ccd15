//! The inverse against a plain scan of the lengths.

use super::*;
use crate::gait::Gait;
use crate::size::{Range, size_for};
use crate::tread::{Activity, tread};

/// Sizing looks at every fifth place of the grid of z: a share may be so far off.
const COARSE: f64 = 0.02;

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

/// The lengths for one group.
fn sized(
    family: impl Fn(&[f64]) -> Option<Figure> + Sync,
    ranges: &[Range],
    children: &[Child],
    weights: &[f64],
    activity: &Activity,
) -> Option<Vec<f64>> {
    let pupils: Vec<&Child> = children.iter().collect();
    let crowd = weights.iter().copied().enumerate().collect();
    let own = std::slice::from_ref(activity);
    let mut sized = size_for(family, ranges, &pupils, &[crowd], own, &model());
    sized.pop().expect("one group")
}

const GAP: Range = Range {
    least: 0.2,
    most: 0.7,
    step: 0.01,
};

/// Of 51 figures all are looked at: none of the scan is better.
#[test]
fn of_few_figures_the_best_is_found() {
    let children: Vec<Child> = [3.4, 4.0, 4.6, 5.2, 5.9].map(child).to_vec();
    for weights in [
        [1.0; 5],
        [4.0, 1.0, 1.0, 0.0, 0.0],
        [0.0, 0.0, 0.0, 1.0, 3.0],
    ] {
        let hop = activity("hop");
        let family = |lengths: &[f64]| Some(row(lengths[0]));
        let lengths = sized(family, &[GAP], &children, &weights, &hop).expect("lengths");
        let reached = share(&row(lengths[0]), &children, &weights, &hop);
        for gap in GAP.lengths() {
            let scanned = share(&row(gap), &children, &weights, &hop);
            assert!(
                reached >= scanned - COARSE,
                "{lengths:?} {reached}, but {gap} {scanned}"
            );
        }
        let again = sized(family, &[GAP], &children, &weights, &hop);
        assert_eq!(Some(lengths), again);
    }
}

#[test]
fn single_and_double_gaps_are_sized_apart() {
    let children: Vec<Child> = [4.2, 5.0, 5.7].map(child).to_vec();
    let range = Range {
        least: 0.26,
        most: 0.66,
        step: 0.01,
    };
    let family =
        |lengths: &[f64]| (lengths[1] >= lengths[0]).then(|| court(lengths[0], lengths[1]));
    let hopped = activity("court");
    let lengths = sized(family, &[range; 2], &children, &[1.0; 3], &hopped).expect("lengths");
    let share = |lengths: &[f64]| {
        let court = court(lengths[0], lengths[1]);
        share(&court, &children, &[1.0; 3], &hopped)
    };
    let reached = share(&lengths);
    for single in range.lengths().into_iter().step_by(2) {
        for double in range.lengths().into_iter().step_by(2) {
            if double < single {
                continue;
            }
            let scanned = share(&[single, double]);
            assert!(
                reached >= scanned - COARSE,
                "{lengths:?} {reached}, but {single} {double} {scanned}"
            );
        }
    }
}

#[test]
fn a_range_is_walked_in_its_own_steps_and_to_its_end() {
    let lengths = |least, most, step| Range { least, most, step }.lengths();
    assert_eq!(lengths(0.9, 1.4, 0.25), [0.9, 1.15, 1.4]);
    assert_eq!(lengths(0.9, 1.4, 0.5), [0.9, 1.4]);
    assert_eq!(lengths(0.9, 1.3, 0.25), [0.9, 1.15, 1.3]);
    // .38 + .1 and .1 + .1 + .1 are no round numbers in binary
    assert_eq!(lengths(0.38, 0.41, 0.01), [0.38, 0.39, 0.40, 0.41]);
    assert_eq!(lengths(0.1, 0.4, 0.1), [0.1, 0.2, 0.3, 0.4]);
    assert_eq!(lengths(0.5, 0.5, 0.01), [0.5]);
    for none in [
        lengths(0.7, 0.2, 0.01),
        lengths(0.2, 0.7, 0.0),
        lengths(0.2, 20_000.0, 0.01),
        lengths(0.2, f64::INFINITY, 0.01),
        lengths(0.2, f64::NAN, 0.01),
    ] {
        assert_eq!(none, Vec::<f64>::new());
    }
}

/// Of a length in coarse steps and one in fine ones, each keeps to its own.
#[test]
fn what_is_found_is_on_the_steps() {
    let children: Vec<Child> = [3.6, 4.4, 5.1].map(child).to_vec();
    let coarse = Range {
        least: 0.27,
        most: 0.61,
        step: 0.05,
    };
    let fine = Range { least: 0.26, ..GAP };
    let family = |lengths: &[f64]| Some(court(lengths[0], lengths[1]));
    let asked = std::sync::Mutex::new(Vec::new());
    let heard = |lengths: &[f64]| {
        asked.lock().expect("no panic").push(lengths.to_vec());
        family(lengths)
    };
    let court = activity("court");
    sized(heard, &[coarse, fine], &children, &[1.0; 3], &court).expect("lengths");
    let asked = asked.into_inner().expect("no panic");
    assert!(asked.len() > 50, "{}", asked.len());
    for lengths in asked {
        assert!(coarse.lengths().contains(&lengths[0]), "{lengths:?}");
        assert!(fine.lengths().contains(&lengths[1]), "{lengths:?}");
    }
}

/// Of lengths that suit nobody any better the smallest are found, wherever the first grid fell.
#[test]
fn among_equals_the_smallest_lengths_win() {
    let children: Vec<Child> = [3.6, 4.4, 5.1].map(child).to_vec();
    let family = |lengths: &[f64]| (lengths[0] >= 0.33).then(|| row(0.4));
    let ranges = [Range { step: 0.001, ..GAP }; 2];
    let found = sized(family, &ranges, &children, &[1.0; 3], &activity("hop"));
    assert_eq!(found, Some(vec![0.33, 0.2]));
}

#[test]
fn a_family_without_figures_has_no_size() {
    let one = [child(5.0)];
    let hop = activity("hop");
    let family = |lengths: &[f64]| Some(row(lengths[0]));
    assert_eq!(sized(|_| None, &[GAP], &one, &[1.0], &hop), None);
    assert_eq!(sized(family, &[GAP], &one, &[0.0], &hop), None);
    let upside_down = Range {
        least: 0.7,
        most: 0.2,
        ..GAP
    };
    assert_eq!(sized(family, &[upside_down], &one, &[1.0], &hop), None);
}
