//! 500 invented yards against shapely (`oracle/yards.py`, shapely 2.2.0, GEOS 3.14.1),
//! which applies the rules a second time with its own polygons.
#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic)] // helpers of tests are tests

mod common;

use common::{Case, cases};
use geo::{Area, Validation, Winding};
use ground::result::Ground;
use ground::{SLIVER, ground};
use ledger::Ledger;

/// m²: what rounding corners to 1e-6 m can make of the rims of the largest yard, 1e-6 m
/// times some 500 m of rim.
const RIM: f64 = 5e-4;

fn answers() -> Vec<(Case, Ground)> {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let answer = |case: Case| {
        let ground = ground(&case.yard, case.standard, &ledger).value;
        (case, ground)
    };
    cases().into_iter().map(answer).collect()
}

#[test]
fn shapely_leaves_the_same_ground_free() {
    let mut worst = 0.0_f64;
    for (i, (case, ground)) in answers().iter().enumerate() {
        let ours = ground.free.unsigned_area();
        let yard = ground.yard.unsigned_area();
        let off = (ours - case.free).abs() / yard;
        worst = worst.max(off);
        assert!(
            off <= 1e-6,
            "yard {i}: {ours} m2 free, shapely {}",
            case.free
        );
        // arcs: never more than with the true ones, never less than the bound allows
        assert!(
            ours <= case.most + RIM,
            "yard {i}: {ours} m2 free, at most {}",
            case.most
        );
        assert!(
            ours >= case.least - RIM,
            "yard {i}: {ours} m2 free, at least {}",
            case.least
        );
    }
    println!("largest difference {worst:.2e} of the yard");
}

#[test]
fn every_polygon_is_valid_and_turns_the_right_way() {
    for (i, (_, ground)) in answers().iter().enumerate() {
        let blocked = ground.blocked.iter().map(|patch| &patch.polygon);
        for polygon in ground.free.iter().chain(blocked).chain([&ground.yard]) {
            if let Err(fault) = polygon.check_validation() {
                panic!("yard {i}: {fault} of {polygon:?}");
            }
            assert!(polygon.exterior().is_ccw(), "yard {i}: {polygon:?}");
            assert!(
                polygon.interiors().iter().all(|hole| hole.is_cw()),
                "yard {i}: {polygon:?}"
            );
            for corner in polygon.exterior().coords() {
                for metres in [corner.x, corner.y] {
                    assert_eq!(metres, (metres * 1e6).round() / 1e6, "yard {i}");
                }
            }
        }
    }
}

#[test]
fn free_and_blocked_cover_the_yard_and_do_not_meet() {
    use geo::{BooleanOps, unary_union};
    for (i, (_, ground)) in answers().iter().enumerate() {
        let blocked = unary_union(ground.blocked.iter().map(|patch| &patch.polygon));
        let free = ground.free.unsigned_area();
        let sum = free + blocked.unsigned_area() + ground.slivers.1;
        let yard = ground.yard.unsigned_area();
        assert!((sum - yard).abs() <= RIM, "yard {i}: {sum} of {yard}");
        let both = ground.free.intersection(&blocked).unsigned_area();
        assert!(both <= RIM, "yard {i}: {both} m2 free and blocked");
        assert!(
            ground
                .free
                .iter()
                .all(|piece| piece.unsigned_area() >= SLIVER),
            "yard {i}"
        );
        for patch in &ground.blocked {
            assert!(!patch.of.is_empty(), "yard {i}: {patch:?}");
        }
    }
}
