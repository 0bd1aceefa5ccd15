//! What tries say of a child, against scipy.

use children::Side;
use serde_json::Value;

use super::*;
use crate::gait::Gait;
use crate::learn::{Try, chance_now, chances, learn};
use crate::tread::tread;

fn row(flights: u64, gap: f64, radius: f64) -> Figure {
    chain(
        (0..=flights)
            .map(|i| disc((gap * i as f64, 0.0), radius))
            .collect(),
    )
}

fn hop() -> Gait {
    Gait::named("hop").expect("a gait")
}

/// Source: `oracle/learn.py`, scipy's quadrature of prior and binomial. The grid of .02 and
/// the rounding to 1e-6 m are all that parts them.
#[test]
fn reach_after_tries_is_scipys_posterior() {
    let stored: Value =
        serde_json::from_str(include_str!("../../oracle/learn.json")).expect("the figures read");
    let cases = stored.as_array().expect("cases");
    assert!(cases.len() >= 5);
    for case in cases {
        let number = |value: &Value| value.as_f64().expect("a number");
        let count = |value: &Value| value.as_u64().expect("a count");
        let child = child(number(&case["years"]));
        let rows = case["rows"].as_array().expect("rows");
        let figures: Vec<Figure> = rows
            .iter()
            .map(|of| row(count(&of[0]), number(&of[1]), number(&of[2])))
            .collect();
        let tries: Vec<Try> = std::iter::zip(&figures, rows)
            .map(|(figure, of)| Try {
                figure,
                gait: hop(),
                foot: Some(Side::Right),
                n: count(&of[3]) as u32,
                good: count(&of[4]) as u32,
            })
            .collect();
        let learned = learn(&child, &tries, &model());
        let ability = &learned.skills[&Skill::Hop];
        assert!(
            (ability.m - number(&case["m"])).abs() < 2e-6,
            "{case} {}",
            ability.m
        );
        assert!(
            (ability.tau - number(&case["tau"])).abs() < 2e-6,
            "{case} {}",
            ability.tau
        );
        assert_eq!(learned.skills[&Skill::Jump], child.skills[&Skill::Jump]);
    }
}

#[test]
fn the_chance_at_0_is_that_of_the_route_and_no_try_teaches_nothing() {
    let (child, model) = (child(5.0), model());
    let figure = row(4, 0.30, 0.15);
    let right = Some(Side::Right);
    let now = chance_now(&figure, &child, &hop(), right, &model).expect("a route");
    let footfall = tread(&figure, &child, &hop(), right, &model);
    let over = chances(&figure, &child, &hop(), right, &model).expect("a route");
    assert!((footfall.routes[over.route].pi_0 - now).abs() < 1e-6);
    assert!(
        over.over_z
            .windows(2)
            .all(|pair| pair[0].1 <= pair[1].1 && pair[0].0 < pair[1].0)
    );
    assert_eq!(learn(&child, &[], &model), child);
    let none = Try {
        figure: &figure,
        gait: hop(),
        foot: right,
        n: 0,
        good: 0,
    };
    assert_eq!(learn(&child, &[none], &model), child);
}
