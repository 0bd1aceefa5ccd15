//! The ways that matter to a child against all ways.

use proptest::prelude::*;

use super::*;
use crate::contact::landings;
use crate::gait::{GAITS, Gait};
use crate::tread::go;
use crate::ways::Ways;
use children::Side;

/// What may hang on the last bits: nothing that is handed on.
const SAME: f64 = 1e-9;

/// Everything told, and only what matters told, come to the same.
fn check(figure: &Figure, child: &Child, gait: &Gait, foot: Option<Side>, longest: usize) {
    let mut model = model();
    model.longest = longest;
    let by = |many: usize| {
        let ways = Ways::told_up_to(many, figure, &model);
        go(&ways, child, gait, foot, &landings(&ways, child), &model)
    };
    let (all, near) = (by(usize::MAX), by(0));
    assert_eq!(all.routes.len(), near.routes.len());
    for (all, near) in all.routes.iter().zip(&near.routes) {
        assert_eq!(
            (&all.cells, &all.contacts),
            (&near.cells, &near.contacts),
            "{gait:?}"
        );
        assert!((all.p - near.p).abs() < SAME && (all.pi_0 - near.pi_0).abs() < SAME);
    }
    let (all, near) = ((all.pitch, all.chosen), (near.pitch, near.chosen));
    assert_eq!(all.1, near.1);
    assert!((all.0.well - near.0.well).abs() < SAME && (all.0.hard - near.0.hard).abs() < SAME);
}

/// Spots from 30 cm to 2 m apart, most of them open to all others. No two ways are as long
/// but for a last bit, so that no tie hangs on one.
fn any_field() -> impl Strategy<Value = Figure> {
    let spot = |count: usize| {
        let next = prop::option::weighted(0.2, prop::collection::vec(0..count, 0..count));
        let takes = prop_oneof![
            5 => Just(Takes::Either),
            1 => Just(Takes::One),
            1 => Just(Takes::Both),
            1 => Just(Takes::Left),
        ];
        let kind = (0.12..0.25, any::<[bool; 3]>());
        ((0.0..3.0, 0.0..2.0), kind, takes, next).prop_map(
            |(at, (radius, [start, end, run_up]), takes, next)| Cell {
                takes,
                next,
                start,
                end,
                run_up,
                ..disc(at, radius)
            },
        )
    };
    (3..12usize)
        .prop_flat_map(move |count| {
            let facing = prop::option::weighted(0.3, 0.0..std::f64::consts::TAU);
            (prop::collection::vec(spot(count), count), facing)
        })
        .prop_map(|(cells, facing)| Figure {
            facing,
            ..figure(cells)
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, ..ProptestConfig::default() })]

    #[test]
    fn the_ways_that_matter_are_enough(
        field in any_field(),
        years in 3.0..6.5,
        gait in 0..GAITS.len(),
        (side, wheels) in (0..3usize, prop::bool::weighted(0.15)),
        longest in prop_oneof![Just(6usize), Just(15), Just(40)],
    ) {
        let mut child = child(years);
        if wheels {
            child.means = Means::Wheels;
        }
        let sides = [None, Some(Side::Right), Some(Side::Left)];
        check(&field, &child, &GAITS[gait], sides[side], longest);
    }
}

/// The bench's field, smaller: on a grid routes tie, and the ties must be the same.
#[test]
fn ties_on_a_grid_are_the_same() {
    let spot = |number: usize| {
        let (column, row) = (number % 6, number / 6);
        Cell {
            start: column == 0,
            end: column == 5,
            ..disc((0.5 * column as f64, 0.5 * row as f64), 0.16)
        }
    };
    let field = figure((0..24).map(spot).collect());
    for years in [3.5, 4.5, 5.5] {
        for gait in GAITS {
            check(&field, &child(years), &gait, Some(Side::Right), 12);
        }
    }
}
