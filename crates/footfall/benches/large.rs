//! A figure of 200 cells and 24 children: a field of spots, one whose rows are not straight,
//! and a row of squares, in each gait that is at home there.

use criterion::{Criterion, criterion_group, criterion_main};
use footfall::{Activity, Gait, Model, class};
use geo::Coord;
use marking::{Cell, Figure, Outline, Takes};

// Only its children are asked for here.
#[allow(dead_code)]
#[path = "../src/tests/stored.rs"]
mod stored;

fn cell(number: usize, centre: Coord<f64>, ends: [bool; 2], next: Option<Vec<usize>>) -> Cell {
    Cell {
        id: number.to_string(),
        outline: Outline::Disc { radius: 0.16 },
        centre,
        takes: Takes::Either,
        start: ends[0],
        end: ends[1],
        next,
        run_up: false,
    }
}

/// Ten rows of twenty, any spot after any other: in along one side, out along the other.
///
/// - `off`: metres by which a spot lies off its row and column, at most
fn field(off: f64) -> Figure {
    let spot = |number: usize| {
        let (column, row) = (number % 20, number / 20);
        // Rows are shifted a little, as spots are that a hand has painted.
        let centre = Coord {
            x: 0.42 * column as f64 + 0.11 * (row % 3) as f64 + off * share(number * 7),
            y: 0.42 * row as f64 + off * share(number * 11 + 3),
        };
        cell(number, centre, [column == 0, column == 19], None)
    };
    stored::of_cells((0..200).map(spot).collect())
}

/// From -1 to 1, hither and thither.
fn share(number: usize) -> f64 {
    let turns = number as f64 * 0.618_033_988_749_895;
    2.0 * (turns - turns.floor()) - 1.0
}

/// Two hundred in a row, one after the other.
fn row() -> Figure {
    let spot = |number: usize| {
        let centre = Coord {
            x: 0.38 * number as f64,
            y: 0.0,
        };
        let next = (number < 199).then_some(number + 1).into_iter().collect();
        cell(number, centre, [number == 0, number == 199], Some(next))
    };
    stored::of_cells((0..200).map(spot).collect())
}

fn large(criterion: &mut Criterion) {
    let (Some(stored), Ok(ledger)) = (stored::StoredClass::read(), ledger::Ledger::shipped())
    else {
        return;
    };
    let model = Model::of(&ledger);
    let children = stored.children();
    let mut group = criterion.benchmark_group(format!("200 cells, {} children", children.len()));
    group.sample_size(10);
    for (name, figure) in [
        ("field", field(0.0)),
        ("crooked field", field(0.05)),
        ("row", row()),
    ] {
        for gait in ["jump", "hop", "leap", "skip"] {
            let Some(named) = Gait::named(gait) else {
                continue;
            };
            let activity = Activity {
                gait: named,
                foot: footfall::sided(named.skill).then_some(children::Side::Right),
            };
            group.bench_function(format!("{name}, {gait}"), |bench| {
                bench.iter(|| {
                    class(
                        std::slice::from_ref(&figure),
                        &children,
                        std::slice::from_ref(&activity),
                        &model,
                    )
                });
            });
        }
    }
}

criterion_group!(benches, large);
criterion_main!(benches);
