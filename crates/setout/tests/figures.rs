//! Key points of every family, and what stands in the way of tapes.
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use common::{TAPE, between};
use geo::{Coord, coord, polygon};
use marking::{Figure, Ground, Look, Palette, families};
use setout::{Barrier, Feature, Laid, Obstacle, Question, Role, SetOut, setout, step};
use survey::result::Survey;
use unit::Units;

fn asked(
    survey: &Survey,
    obstacles: &[Obstacle],
    laid: &[Laid],
    units: Units,
) -> note::Noted<SetOut> {
    let ledger = common::ledger();
    let question = Question {
        survey,
        obstacles,
        laid,
        tape: TAPE,
        units,
        step: step(units, &ledger),
    };
    setout(&question, &ledger)
}

/// Every family at its own lengths, in the middle of Y1, turned and mirrored.
fn placed() -> Vec<(String, Figure)> {
    let ledger = common::ledger();
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        &ledger,
    );
    families()
        .iter()
        .filter_map(|family| {
            let figure = family.make(&family.defaults(), &look).ok()?;
            let at = coord! { x: 5.0, y: 5.0 };
            let name = family.name().replace('_', "-");
            Some((name, figure.placed(at, 0.4, family.can_mirror())))
        })
        .collect()
}

/// Three points at most; the second far from the first; the third off their line; each is a
/// place of the figure; printed lengths are whole steps to the point from its own base; no
/// looser pair than the ledger allows; who looks along the bases has the point on the left.
#[test]
fn every_family_is_fixed_by_three_points_at_most() {
    let survey = common::taped(|_| 0.0);
    let figures = placed();
    assert!(figures.len() > 15, "only {} families", figures.len());
    let laid: Vec<Laid> = figures
        .iter()
        .map(|(name, figure)| Laid { name, figure })
        .collect();
    for units in [Units::Metres, Units::Feet] {
        let made = asked(&survey, &[], &laid, units);
        let ours = &made.value;
        assert_eq!(made.notes, [], "nothing to tell of an open yard");
        assert_eq!(ours.unreached, []);
        for marking in &ours.markings {
            let points: Vec<_> = marking.points.iter().map(|&at| &ours.points[at]).collect();
            let roles: Vec<Role> = points.iter().map(|point| point.role).collect();
            let all = [Role::Origin, Role::Direction, Role::Check];
            assert_eq!(roles, all[..roles.len()], "{}", marking.name);
            assert_eq!(marking.spans.len(), roles.len() * (roles.len() - 1) / 2);
            assert_eq!(
                marking.turn_deg.is_some(),
                roles.len() > 1,
                "{}",
                marking.name
            );
            if roles.len() > 1 {
                let long = between(points[0].at, points[1].at);
                assert!(long >= 0.3, "{}", marking.name);
                let chalk = marking.chalk.as_ref().expect("a line");
                assert!((chalk.length - long).abs() <= ours.step / 2.0 + 1e-6);
            }
            for (nth, point) in points.iter().enumerate() {
                assert_eq!(point.name, format!("{}-{}", marking.name, nth + 1));
                let [a, b] = point.tapes.map(|held| ours.bases.at[held.base]);
                let side = (b.x - a.x) * (point.at.y - a.y) - (b.y - a.y) * (point.at.x - a.x);
                assert!(side > 0.0, "{}", point.name);
                for held in point.tapes {
                    let steps = held.length / ours.step;
                    assert!((steps - steps.round()).abs() < 1e-3, "{}", held.length);
                    let long = between(ours.bases.at[held.base], point.at);
                    assert!((long - held.length).abs() <= ours.step / 2.0 + 1e-6);
                }
                assert!((30.0..=150.0).contains(&point.angle_deg));
                assert!(
                    point.ellipse.a < 0.05,
                    "{}: {:?}",
                    point.name,
                    point.ellipse
                );
                let third = point.third.expect("Y1 has six corners");
                assert!(third.limit >= 0.01 && third.limit < 0.06, "{third:?}");
            }
        }
        let mut walked: Vec<usize> = ours.walk.iter().map(|stop| stop.point).collect();
        walked.sort_unstable();
        assert_eq!(walked, (0..ours.points.len()).collect::<Vec<_>>());
        println!(
            "{} points, {} moves, {} m walked, {} m carried",
            ours.points.len(),
            ours.walk.iter().map(|stop| stop.moves.len()).sum::<usize>(),
            ours.walked,
            ours.carried
        );
        for point in &ours.points {
            println!("{point:?}");
        }
        for marking in &ours.markings {
            println!("{marking:?}");
        }
    }
}

/// Following the walk, three tapes are where each point wants them.
#[test]
fn who_carries_the_tapes_as_told_has_them_where_they_are_wanted() {
    let survey = common::taped(|_| 0.0);
    let figures = placed();
    let laid: Vec<Laid> = figures
        .iter()
        .map(|(name, figure)| Laid { name, figure })
        .collect();
    let made = asked(&survey, &[], &laid, Units::Metres).value;
    let mut ends = [None; 3];
    let mut carried = 0.0;
    for stop in &made.walk {
        for moved in &stop.moves {
            assert_eq!(
                ends[moved.tape], moved.from,
                "the tape is where it was left"
            );
            if let Some(from) = moved.from {
                carried += between(made.bases.at[from], made.bases.at[moved.to]);
            }
            ends[moved.tape] = Some(moved.to);
        }
        let point = &made.points[stop.point];
        let third = point.third.expect("Y1 has six corners").base;
        for base in point.tapes.iter().map(|held| held.base).chain([third]) {
            assert!(ends.contains(&Some(base)), "{}", point.name);
        }
    }
    assert!((carried - made.carried).abs() < 1e-5);
}

fn one(at: Coord<f64>) -> Figure {
    common::figure(&[at])
}

#[test]
fn no_tape_is_hooked_to_a_loose_point() {
    let mut survey = common::taped(|_| 0.0);
    let figure = one(coord! { x: 11.0, y: 8.0 });
    let laid = [Laid {
        name: "spot",
        figure: &figure,
    }];
    let before = asked(&survey, &[], &laid, Units::Metres).value;
    let best = before.points[0].tapes.map(|held| held.base);
    let named = best.map(|base| before.bases.names[base].clone());
    for point in &mut survey.points {
        point.loose = named.contains(&point.name);
    }
    let made = asked(&survey, &[], &laid, Units::Metres);
    assert_eq!(made.value.bases.names.len(), 4);
    assert!(
        named
            .iter()
            .all(|name| !made.value.bases.names.contains(name))
    );
    assert_eq!(made.value.points.len(), 1);
    let keys: Vec<&str> = made.notes.iter().map(|note| note.what.key).collect();
    assert!(keys.contains(&"setout-loose-left-out"), "{keys:?}");
}

#[test]
fn a_tape_goes_round_a_shed_by_another_corner() {
    let survey = common::taped(|_| 0.0);
    let figure = one(coord! { x: 11.0, y: 8.0 });
    let laid = [Laid {
        name: "spot",
        figure: &figure,
    }];
    let free = asked(&survey, &[], &laid, Units::Metres).value;
    let point = &free.points[0];
    assert_eq!(point.barred, []);
    assert_eq!(point.instead.len(), 2);
    for instead in &point.instead {
        assert!(
            instead
                .tapes
                .iter()
                .all(|held| held.base != instead.without)
        );
        assert!(point.tapes.iter().any(|held| held.base == instead.without));
    }
    // a shed on the way of the first tape
    let base = point.tapes[0].base;
    let middle = (free.bases.at[base] + point.at) * 0.5;
    let shed = Obstacle {
        name: "shed".to_owned(),
        shape: Barrier::Solid(polygon![
            (x: middle.x - 0.3, y: middle.y - 0.3), (x: middle.x + 0.3, y: middle.y - 0.3),
            (x: middle.x + 0.3, y: middle.y + 0.3), (x: middle.x - 0.3, y: middle.y + 0.3)
        ]),
    };
    let made = asked(&survey, &[shed], &laid, Units::Metres).value;
    let other = &made.points[0];
    assert!(other.tapes.iter().all(|held| held.base != base));
    assert!(
        other
            .barred
            .iter()
            .any(|barred| barred.base == base && barred.by == "shed")
    );
    assert!(other.third.is_none_or(|third| third.base != base));
}

/// A yard of two corners that see the mark at a flat angle.
#[test]
fn a_mark_that_no_two_tapes_fix_is_told() {
    let points = [("A", 0.0, 0.0), ("B", 20.0, 0.0)];
    let survey = common::surveyed(&points, vec![0.0; 16]);
    let figure = one(coord! { x: 10.0, y: 1.0 });
    let laid = [Laid {
        name: "spot",
        figure: &figure,
    }];
    let made = asked(&survey, &[], &laid, Units::Metres);
    assert!(made.value.points.is_empty());
    assert_eq!(made.value.unreached.len(), 1);
    assert_eq!(
        made.value.unreached[0].feature,
        Feature::Cell("0".to_owned())
    );
    let keys: Vec<&str> = made.notes.iter().map(|note| note.what.key).collect();
    assert_eq!(keys, ["setout-unreached"]);
}

#[test]
fn an_empty_plan_is_an_empty_set_out() {
    let survey = common::taped(|_| 0.0);
    let made = asked(&survey, &[], &[], Units::Metres);
    assert!(made.value.points.is_empty() && made.value.walk.is_empty());
    assert_eq!(made.notes, []);
}
