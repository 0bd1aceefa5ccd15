//! The families of cells hold a class of each age: there are lengths at which a good share
//! of it is well pitched in something that the family is meant for.
//!
//! `cargo test --release -p footfall --test cell_families -- --nocapture` prints the shares
//! and how long the largest figures take.
#![cfg(test)]

use std::time::Instant;

use children::{Child, Side, counts};
use footfall::{Activity, Gait, Model, Range, size_for, tread};
use ledger::Ledger;
use marking::{Figure, Ground, Look, Palette, family};

const FAMILIES: [&str; 7] = [
    "ring-sets",
    "star",
    "number-line",
    "number-court",
    "letter-court",
    "fields",
    "compass",
];

fn activity(gait: &Gait) -> Activity {
    Activity {
        gait: *gait,
        foot: sized_foot(gait),
    }
}

/// One foot stands for both: no default tells them apart.
fn sized_foot(gait: &Gait) -> Option<Side> {
    footfall::sided(gait.skill).then_some(Side::Right)
}

/// A share of a class, well pitched at the lengths that suit it best.
struct Best {
    gait: &'static str,
    well: f64,
    lengths: Vec<f64>,
}

fn best(name: &str, years: f64, look: &Look, ledger: &Ledger) -> Vec<Best> {
    let family = family(name).expect("a family");
    let children = counts(&[(years, 10)], ledger).value;
    let child: &Child = &children[0];
    let model = Model::of(ledger);
    let ranges: Vec<Range> = family.lengths().iter().take(2).map(Range::from).collect();
    let make = |lengths: &[f64]| -> Option<Figure> {
        let mut all = family.defaults();
        all.iter_mut()
            .zip(lengths)
            .for_each(|(have, given)| *have = *given);
        family.make(&all, look).ok()
    };
    let gaits = family
        .activities()
        .iter()
        .filter_map(|gait| Gait::named(gait));
    gaits
        .map(|gait| {
            let activity = activity(&gait);
            let crowd = vec![(0, 1.0)];
            let lengths = size_for(make, &ranges, &[child], &[crowd], &[activity], &model)
                .into_iter()
                .next()
                .flatten()
                .expect("some lengths make a figure");
            let figure = make(&lengths).expect("they make it again");
            let pitch = tread(&figure, child, &gait, activity.foot, &model).pitch;
            Best {
                gait: gait.name,
                well: pitch.well,
                lengths,
            }
        })
        .collect()
}

#[test]
fn every_family_of_cells_suits_each_age_at_some_lengths() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let words: Vec<String> = ["sun", "cat", "hen", "map", "pot", "rug", "fin", "bed"]
        .map(str::to_owned)
        .to_vec();
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        &ledger,
    )
    .lettered(&words, 1);
    for name in FAMILIES {
        for (years, wanted) in [(3.5, 0.5), (4.5, 0.6), (5.5, 0.6)] {
            let found = best(name, years, &look, &ledger);
            for one in &found {
                println!(
                    "{name} {years} {}: {:.3} at {:.2?}",
                    one.gait, one.well, one.lengths
                );
            }
            let most = found.iter().map(|one| one.well).fold(0.0, f64::max);
            assert!(most >= wanted, "{name} at {years}: {most:.3}");
        }
    }
}

/// Counted on the largest court: a route's search must stay a small part of a plan.
#[test]
fn the_largest_court_is_gone_over_in_milliseconds() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let model = Model::of(&ledger);
    let pangram: Vec<String> = "the quick brown fox jumps over a lazy dog"
        .split(' ')
        .map(str::to_owned)
        .collect();
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    let look = Look::of(palette, &ledger).lettered(&pangram, 1);
    let children = counts(&[(4.5, 1)], &ledger).value;
    for name in FAMILIES {
        let family = family(name).expect("a family");
        let before = Instant::now();
        let figure = family.make(&family.defaults(), &look).expect("a figure");
        let made = before.elapsed();
        let edges: usize = figure
            .cells
            .iter()
            .flat_map(|cell| &cell.next)
            .map(Vec::len)
            .sum();
        for gait in family
            .activities()
            .iter()
            .filter_map(|gait| Gait::named(gait))
        {
            let before = Instant::now();
            let footfall = tread(&figure, &children[0], &gait, sized_foot(&gait), &model);
            println!(
                "{name} {}: {} cells, {edges} ways on, {} routes, made in {made:.1?}, gone over in {:.1?}, envelope {:.1} m2",
                gait.name,
                figure.cells.len(),
                footfall.routes.len(),
                before.elapsed(),
                geo::Area::unsigned_area(&figure.envelope),
            );
            // a route for each number of flights, from the one start
            assert!(
                footfall.routes.len() <= 40,
                "{name}: {}",
                footfall.routes.len()
            );
        }
        assert!(edges <= 150, "{name}: {edges} ways on");
    }
}

/// What the planner asks of a figure is what a plan records of it, but for the routes.
#[test]
fn turns_are_what_footfalls_are() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let model = Model::of(&ledger);
    let ages = [(3.2, 1), (4.1, 1), (5.0, 1), (5.8, 1)];
    let class = children::counts(&ages, &ledger).value;
    let ground = Ground::Asphalt;
    let look = Look::of(Palette { ground }, &ledger);
    let mut well = 0.0;
    for family in marking::families() {
        let figure = family
            .make(&family.defaults(), &look)
            .expect("the defaults make a figure");
        let activities: Vec<Activity> = family
            .activities()
            .iter()
            .filter_map(|name| Gait::named(name))
            .map(|gait| Activity {
                foot: footfall::sided(gait.skill).then_some(children::Side::Left),
                gait,
            })
            .collect();
        let turns = footfall::turns(&figure, &class, &activities, &model);
        let whole = footfall::class(std::slice::from_ref(&figure), &class, &activities, &model);
        for (turns, whole) in std::iter::zip(&turns, whole.iter().flatten()) {
            assert_eq!(turns.len(), whole.len());
            for (turn, whole) in std::iter::zip(turns, whole) {
                let recorded = footfall::Turn {
                    pitch: whole.pitch,
                    pass_s: whole.pass_s,
                    walk_back_s: whole.walk_back_s,
                    curves: whole.curves.clone(),
                };
                assert_eq!(*turn, recorded, "{}", family.name());
                well += turn.pitch.well;
            }
        }
    }
    assert!(well > 10.0, "{well}");
}
