//! The model against its page, an oracle, brute force and chance itself.

mod brute;
mod lanes;
mod near;
mod odds;
mod oracle;
mod page;
mod play;
mod sizes;
mod stored;

use std::collections::BTreeMap;

use children::{Ability, Child, Means, Skill, Speeds};
use geo::{Coord, LineString, Polygon};
use ledger::{Ledger, by_age};
use marking::{Cell, Figure, Outline, Takes};

use stored::of_cells as figure;

use crate::figures::Model;

fn model() -> Model {
    Model::of(&Ledger::shipped().expect("the shipped ledger reads"))
}

/// A child of the page's priors, metres; foot as the page's worked examples have it.
fn child(years: f64) -> Child {
    let foot = by_age(&[0.156, 0.167, 0.174, 0.185], years);
    let row = |m: [f64; 4], tau: [f64; 4], can: [f64; 4], steady: [f64; 4]| Ability {
        m: by_age(&m, years),
        tau: by_age(&tau, years),
        can: by_age(&can, years),
        steady: by_age(&steady, years),
        sources: Vec::new(),
    };
    let mut skills = BTreeMap::from([
        (
            Skill::Jump,
            row(
                [0.31, 0.41, 0.52, 0.63],
                [0.12; 4],
                [0.9, 0.98, 1.0, 1.0],
                [0.85, 0.92, 0.95, 0.97],
            ),
        ),
        (
            Skill::Hop,
            row(
                [0.21, 0.28, 0.36, 0.43],
                [0.06, 0.09, 0.11, 0.13],
                [0.25, 0.65, 0.9, 0.97],
                [0.8, 0.88, 0.93, 0.95],
            ),
        ),
        (
            Skill::Leap,
            row(
                [0.5, 0.67, 0.8, 0.94],
                [0.13, 0.13, 0.14, 0.15],
                [0.4, 0.65, 0.85, 0.95],
                [0.8, 0.88, 0.93, 0.95],
            ),
        ),
        (
            Skill::Run,
            row(
                [0.52, 0.62, 0.73, 0.85],
                [0.08, 0.08, 0.09, 0.1],
                [0.99, 1.0, 1.0, 1.0],
                [0.97, 0.98, 0.99, 0.99],
            ),
        ),
        (
            Skill::Walk,
            row(
                [0.42, 0.46, 0.49, 0.52],
                [0.05, 0.05, 0.06, 0.06],
                [1.0; 4],
                [0.99, 0.995, 0.995, 0.995],
            ),
        ),
        (
            Skill::Gallop,
            row(
                [0.61, 0.66, 0.7, 0.75],
                [0.09, 0.1, 0.11, 0.11],
                [0.5, 0.8, 0.92, 0.97],
                [0.8, 0.9, 0.94, 0.96],
            ),
        ),
        (
            Skill::Slide,
            row(
                [0.52, 0.56, 0.6, 0.63],
                [0.08, 0.08, 0.09, 0.09],
                [0.3, 0.55, 0.8, 0.92],
                [0.8, 0.88, 0.93, 0.95],
            ),
        ),
        (
            Skill::Skip,
            row(
                [0.51, 0.51, 0.54, 0.58],
                [0.09; 4],
                [0.03, 0.2, 0.5, 0.8],
                [0.6, 0.78, 0.88, 0.94],
            ),
        ),
    ]);
    if let Some(jump) = skills.get_mut(&Skill::Jump) {
        jump.m += foot;
    }
    Child {
        name: format!("age-{years}"),
        count: 1,
        age: years,
        stature: by_age(&[0.955, 1.023, 1.09, 1.155], years),
        foot,
        scatter: by_age(&[0.07, 0.06, 0.05, 0.045], years),
        means: Means::Feet,
        less_used: None,
        speeds: Speeds {
            walk: by_age(&[0.95, 1.0, 1.08, 1.15], years),
            run: by_age(&[2.0, 2.4, 2.7, 3.0], years),
        },
        skills,
    }
}

fn cell(centre: (f64, f64), outline: Outline) -> Cell {
    Cell {
        id: String::new(),
        outline,
        centre: Coord {
            x: centre.0,
            y: centre.1,
        },
        takes: Takes::Either,
        start: false,
        end: false,
        next: None,
        run_up: false,
    }
}

fn disc(centre: (f64, f64), radius: f64) -> Cell {
    cell(centre, Outline::Disc { radius })
}

fn polygon(corners: &[(f64, f64)]) -> Outline {
    Outline::Polygon(Polygon::new(LineString::from(corners.to_vec()), Vec::new()))
}

fn upright(centre: (f64, f64), wide: f64, deep: f64) -> Cell {
    let ((x, y), (w, d)) = (centre, (wide / 2.0, deep / 2.0));
    cell(
        centre,
        polygon(&[
            (x - w, y - d),
            (x + w, y - d),
            (x + w, y + d),
            (x - w, y + d),
        ]),
    )
}

/// One after the other: starts at the first, ends at the last.
fn chain(mut cells: Vec<Cell>) -> Figure {
    let last = cells.len() - 1;
    for (number, cell) in cells.iter_mut().enumerate() {
        cell.start = number == 0;
        cell.end = number == last;
        cell.next = Some(if number == last {
            Vec::new()
        } else {
            vec![number + 1]
        });
    }
    figure(cells)
}

/// Half of the last digit that the page prints.
fn printed(ours: f64, wanted: f64, digits: i32, what: &str) {
    let half = 0.5 * libm::pow(10.0, f64::from(-digits)) + 1e-12;
    assert!(
        (ours - wanted).abs() <= half,
        "{what}: {ours}, not {wanted}"
    );
}
