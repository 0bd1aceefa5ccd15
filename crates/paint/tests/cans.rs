//! Cans against full enumeration and the table of made-up prices.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

use paint::{Cover, Size, cheapest};
use proptest::prelude::*;

fn shelf(sizes: &[(f64, f64)]) -> Vec<Size> {
    sizes
        .iter()
        .map(|(litres, price)| Size {
            litres: *litres,
            price: Some(*price),
        })
        .collect()
}

fn bought(cover: &Cover) -> Vec<(f64, u32)> {
    cover
        .cans
        .iter()
        .map(|cans| (cans.size.litres, cans.count))
        .collect()
}

fn check(need: f64, sizes: &[(f64, f64)], wanted: &[(f64, u32)], cost: f64) {
    let cover = cheapest(need, &shelf(sizes)).expect("cans are sold");
    assert_eq!(bought(&cover), wanted, "for {need} L");
    assert_eq!(cover.cost, Some(cost), "for {need} L");
    assert!(cover.proven);
}

/// Made-up prices; counts and costs by full enumeration, written down before this program.
#[test]
fn the_table_of_cans_comes_out() {
    let metric = [(0.75, 14.0), (1.0, 17.0), (2.5, 35.0), (5.0, 59.0)];
    check(0.4, &metric, &[(0.75, 1)], 14.0);
    check(1.472, &metric, &[(0.75, 2)], 28.0);
    check(2.2, &metric, &[(2.5, 1)], 35.0); // not the smaller 3 x 0.75 L at 42
    check(3.7, &metric, &[(5.0, 1)], 59.0);
    check(5.6, &metric, &[(0.75, 1), (5.0, 1)], 73.0);
    check(9.1, &metric, &[(5.0, 2)], 118.0);
    const QUART: f64 = 0.946353;
    const GALLON: f64 = 3.785412;
    let us = [(QUART, 18.0), (GALLON, 46.0), (18.927059, 190.0)];
    check(0.4, &us, &[(QUART, 1)], 18.0);
    check(1.472, &us, &[(QUART, 2)], 36.0);
    check(3.7, &us, &[(GALLON, 1)], 46.0);
    check(5.6, &us, &[(QUART, 2), (GALLON, 1)], 82.0);
    check(9.1, &us, &[(QUART, 2), (GALLON, 2)], 128.0);
}

/// oracle/cans.py: 1,000 random shelves and needs, every combination looked at in whole
/// millionths. A fifth has one price a litre and a fifth prices in
/// fives, so that what is left over, or the fewest cans, decides.
#[test]
fn a_thousand_shelves_agree_with_full_enumeration() {
    let text = include_str!("../oracle/cans.json");
    let cases: Vec<serde_json::Value> = serde_json::from_str(text).expect("the answers read");
    assert_eq!(cases.len(), 1000);
    let whole = |value: &serde_json::Value| value.as_i64().expect("a whole number");
    let mut several = 0;
    for (nth, case) in cases.iter().enumerate() {
        let sizes: Vec<(f64, f64)> = case["shelf"]
            .as_array()
            .expect("a shelf")
            .iter()
            .map(|row| (whole(&row[0]) as f64 / 1e6, whole(&row[1]) as f64 / 1e6))
            .collect();
        let need = whole(&case["need"]);
        let cover = cheapest(need as f64 / 1e6, &shelf(&sizes)).expect("cans are sold");
        let millionths = |value: f64| (value * 1e6).round() as i64;
        let count: u32 = cover.cans.iter().map(|cans| cans.count).sum();
        let ours = (
            millionths(cover.cost.expect("a price")),
            millionths(cover.litres) - need,
            i64::from(count),
        );
        let wanted = (
            whole(&case["price"]),
            whole(&case["over"]),
            whole(&case["cans"]),
        );
        assert_eq!(ours, wanted, "case {nth}");
        assert!(cover.proven);
        several += usize::from(cover.cans.len() > 1);
    }
    assert!(several > 200, "only {several} covers mix sizes");
}

#[test]
fn without_prices_the_least_is_left_over_and_the_cost_is_unknown() {
    let sizes: Vec<Size> = [0.75, 1.0, 2.5, 5.0, 10.0]
        .into_iter()
        .map(|litres| Size {
            litres,
            price: None,
        })
        .collect();
    let cover = cheapest(5.6, &sizes).expect("cans are sold");
    assert_eq!(bought(&cover), [(0.75, 1), (5.0, 1)]);
    assert_eq!(cover.cost, None);
    let cover = cheapest(10.0, &sizes).expect("cans are sold");
    assert_eq!(
        bought(&cover),
        [(10.0, 1)],
        "fewest cans of what leaves nothing"
    );
}

#[test]
fn what_is_no_shelf_and_no_need_gives_nothing() {
    let good = shelf(&[(1.0, 10.0)]);
    assert_eq!(cheapest(1.0, &[]), None);
    assert_eq!(cheapest(f64::NAN, &good), None);
    assert_eq!(cheapest(-1.0, &good), None);
    assert_eq!(cheapest(1e12, &good), None);
    assert_eq!(cheapest(1.0, &shelf(&[(0.0, 1.0), (f64::NAN, 1.0)])), None);
    assert_eq!(
        cheapest(0.0, &good).map(|cover| cover.cans),
        Some(Vec::new())
    );
}

proptest! {
    /// Whatever is asked, the cans hold it; one more litre never costs less; a can taken
    /// off leaves too little.
    #[test]
    fn cans_hold_what_is_needed_and_none_is_idle(
        need in 0.0..40.0_f64,
        more in 0.0..5.0_f64,
        sizes in proptest::collection::vec((0.1..12.0_f64, 0.5..150.0_f64), 1..6),
    ) {
        // Sizes and prices as shops have them: centilitres, cents.
        let cent = |value: f64| (value * 100.0).round() / 100.0;
        let sizes: Vec<(f64, f64)> = sizes.into_iter().map(|(l, p)| (cent(l), cent(p))).collect();
        let cover = cheapest(need, &shelf(&sizes)).expect("cans are sold");
        prop_assert!(cover.litres >= need - 1e-6);
        let dearer = cheapest(need + more, &shelf(&sizes)).expect("cans are sold");
        prop_assert!(dearer.cost >= cover.cost);
        for cans in &cover.cans {
            prop_assert!(cover.litres - cans.size.litres < need);
        }
    }
}
