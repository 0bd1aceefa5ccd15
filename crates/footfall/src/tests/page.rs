//! The worked examples of the model's page, to the printed digit.
//!
//! Source: an independent implementation of the same model in numpy and scipy, as the
//! page gives it.

use super::*;
use crate::gait::Gait;
use crate::landing::landing;
use crate::shares::{left_out, shares};
use crate::tread::{Activity, Footfall, class, tread};
use crate::verdict::Pitch;

const YEARS: [f64; 4] = [3.0, 4.0, 5.0, 6.0];

fn treads(figure: &Figure, gait: &str, years: f64) -> Footfall {
    tread(
        figure,
        &child(years),
        &Gait::named(gait).expect("a gait"),
        None,
        &model(),
    )
}

fn p(figure: &Figure, gait: &str, years: f64) -> f64 {
    let footfall = treads(figure, gait, years);
    assert_eq!(footfall.routes.len(), 1, "one route is kept");
    footfall.routes[0].p
}

#[test]
fn f1_four_hops_in_a_row() {
    let cells = || {
        (0..5)
            .map(|i| disc((0.3 * f64::from(i), 0.0), 0.15))
            .collect()
    };
    let row = chain(cells());
    let mut every = chain(cells());
    every.cells.iter_mut().for_each(|cell| cell.end = true);
    let wanted = [
        (0.006177, 0.0, 0.1250, 0.0),
        (0.143340, 0.130765, 0.5287, 0.0071),
        (0.465073, 0.710800, 0.6947, 0.1020),
        (0.660586, 0.801957, 0.5963, 0.2980),
    ];
    for (years, (p, pi_0, well, easy)) in YEARS.into_iter().zip(wanted) {
        let one = treads(&row, "hop", years);
        printed(one.routes[0].p, p, 6, "P");
        printed(one.routes[0].pi_0, pi_0, 6, "pi at 0");
        let pitch = treads(&every, "hop", years).pitch;
        printed(pitch.well, well, 4, "well pitched");
        printed(pitch.easy, easy, 4, "too easy");
        printed(pitch.well + pitch.easy + pitch.hard, 1.0, 5, "the whole");
    }
}

#[test]
fn f2_three_jumps_that_grow() {
    let row = chain(
        [0.0, 0.55, 1.15, 1.80]
            .map(|x| disc((x, 0.0), 0.2))
            .to_vec(),
    );
    for (years, wanted) in YEARS
        .into_iter()
        .zip([0.084266, 0.339261, 0.669648, 0.872034])
    {
        printed(p(&row, "jump", years), wanted, 6, "P");
    }
}

#[test]
fn f3_leaps_after_a_free_run_up() {
    let mut row = chain(
        [(0.0, 0.0), (0.55, 0.0), (0.95, 0.4), (1.5, 0.4)]
            .map(|at| disc(at, 0.2))
            .to_vec(),
    );
    row.cells[0].run_up = true;
    for (years, wanted) in [(4.0, 0.330139), (5.0, 0.638569), (6.0, 0.805621)] {
        printed(p(&row, "leap", years), wanted, 6, "P");
    }
}

#[test]
fn f4_a_court() {
    let square = |x, deep, takes| Cell {
        takes,
        ..upright((x, 0.0), 0.3, deep)
    };
    let court = chain(vec![
        square(0.0, 0.3, Takes::One),
        square(0.35, 0.3, Takes::One),
        square(0.7, 0.6, Takes::Both),
        square(1.05, 0.3, Takes::One),
        square(1.4, 0.6, Takes::Both),
    ]);
    for (years, wanted) in [(4.0, 0.132007), (5.0, 0.438367)] {
        printed(p(&court, "court", years), wanted, 6, "P");
    }
}

#[test]
fn f5_a_jump_star_faces_one_way() {
    for (spot, wanted) in [
        ((0.0, 0.45), 0.939950),
        ((0.45, 0.0), 0.805960),
        ((0.0, -0.45), 0.402459),
    ] {
        let mut star = chain(vec![disc((0.0, 0.0), 0.2), disc(spot, 0.2)]);
        star.facing = Some(std::f64::consts::FRAC_PI_2);
        printed(p(&star, "jump", 5.0), wanted, 6, "P");
    }
}

#[test]
fn f6_a_hub_and_its_ring() {
    let mut cells = vec![Cell {
        start: true,
        ..disc((0.0, 0.0), 0.15)
    }];
    cells.extend((0..6).map(|i| {
        let turn = f64::from(i) * std::f64::consts::FRAC_PI_3;
        Cell {
            end: true,
            ..disc((0.35 * libm::cos(turn), 0.35 * libm::sin(turn)), 0.15)
        }
    }));
    let footfall = treads(&figure(cells), "hop", 5.0);
    assert_eq!(footfall.routes.len(), 40);
    for (route, wanted) in footfall
        .routes
        .iter()
        .zip([0.547766, 0.297170, 0.264730, 0.237308])
    {
        printed(route.p, wanted, 6, "P");
    }
}

/// Crossings of a brook with these widths, 1 m apart: toes at the near bank, heels 5 cm past
/// the far one.
fn brook(widths: &[f64], foot: f64) -> Figure {
    let mut cells = Vec::new();
    for (number, width) in widths.iter().enumerate() {
        let x = number as f64;
        let over = Some(vec![2 * number + 1]);
        cells.push(Cell {
            start: true,
            next: over,
            ..disc((x, -foot / 2.0), 0.2)
        });
        cells.push(Cell {
            end: true,
            next: Some(Vec::new()),
            ..disc((x, width + 0.05 + foot / 2.0), 0.2)
        });
    }
    Figure {
        family: "brook".into(),
        ..figure(cells)
    }
}

#[test]
fn f7_a_brook() {
    let wanted = [
        (0.599285, 0.211441, 0.9418, 0.0),
        (0.852439, 0.521248, 0.9501, 0.0428),
        (0.944021, 0.809830, 0.8692, 0.1304),
        (0.969629, 0.940906, 0.5972, 0.4028),
    ];
    for (years, (narrow, wide, well, easy)) in YEARS.into_iter().zip(wanted) {
        let foot = child(years).foot;
        printed(
            p(&brook(&[0.2], foot), "jump", years),
            narrow,
            6,
            "P at .20",
        );
        printed(p(&brook(&[0.4], foot), "jump", years), wide, 6, "P at .40");
        let pitch = treads(&brook(&[0.1, 0.2, 0.3, 0.4, 0.5, 0.6], foot), "jump", years).pitch;
        printed(pitch.well, well, 4, "well pitched");
        printed(pitch.easy, easy, 4, "too easy");
    }
}

#[test]
fn landing_masses() {
    let sigma = 0.08;
    let at = |centre, corners: &[(f64, f64)]| cell(centre, polygon(corners));
    let l = [
        (-0.2, -0.2),
        (0.2, -0.2),
        (0.2, 0.0),
        (0.0, 0.0),
        (0.0, 0.2),
        (-0.2, 0.2),
    ];
    for (cell, wanted) in [
        (disc((0.0, 0.0), 0.175), 0.908606),
        (upright((0.0, 0.0), 0.35, 0.35), 0.943412),
        (
            at((0.0, 0.0), &[(0.0, 0.2), (-0.15, -0.1), (0.15, -0.1)]),
            0.635582,
        ),
        (at((-0.05, -0.05), &l), 0.868132),
        (at((0.0, 0.0), &l), 0.731487),
    ] {
        printed(landing(&cell, sigma), wanted, 6, "A");
    }
}

/// The page's shares of F1, for a class of two counts; the 3-year-olds are left out.
#[test]
fn a_class_is_counted_by_its_heads() {
    let mut row = chain(
        (0..5)
            .map(|i| disc((0.3 * f64::from(i), 0.0), 0.15))
            .collect(),
    );
    row.cells.iter_mut().for_each(|cell| cell.end = true);
    let children = [
        Child {
            count: 3,
            ..child(3.0)
        },
        Child {
            count: 1,
            ..child(5.0)
        },
    ];
    let activity = Activity {
        gait: Gait::named("hop").expect("a gait"),
        foot: None,
    };
    let all = class(&[row], &children, &[activity], &model());
    let pitch = shares(&all[0][0], &children);
    printed(pitch.well, (3.0 * 0.1250 + 0.6947) / 4.0, 4, "well pitched");
    printed(pitch.easy, 0.1020 / 4.0, 4, "too easy");
    assert_eq!(left_out(&all, Skill::Hop, &children, &model()), [0]);
    assert_eq!(left_out(&all, Skill::Skip, &children, &model()), [0, 1]);
    assert_eq!(shares(&[], &[]), Pitch::default());
}
