//! Wear, refresh and yearly cost against the published formulas' check values.

use std::collections::BTreeMap;

use ledger::Ledger;
use marking::Colour;
use paint::{
    CanSystem, Job, Painted, Prices, Shade, Surface, Wear, annuity, equivalent_annual,
    refresh_after, shop, upkeep, visible,
};

fn check(ours: f64, printed: f64, half: f64) {
    assert!((ours - printed).abs() <= half, "{ours}, not {printed}");
}

/// Time constants are common practice; the months follow: -tau ln 0.7.
/// Tolerance: half the last printed digit.
#[test]
fn a_refresh_is_due_at_seventy_in_a_hundred() {
    check(refresh_after(36.0, 0.7), 12.84, 0.005);
    check(refresh_after(18.0, 0.7), 6.42, 0.005);
    check(visible(refresh_after(36.0, 0.7), 36.0), 0.7, 1e-12);
    check(visible(0.0, 36.0), 1.0, 0.0);
}

/// Capital recovery: i 3 %, y 3 gives 2.828611, as any table of annuities prints it
/// (2.8286); 2,100 is then 742.41 a year.
#[test]
fn a_cost_spread_over_years() {
    check(annuity(0.03, 3.0), 2.828_611, 5e-7);
    check(equivalent_annual(2_100.0, 0.03, 3.0), 742.41, 0.005);
    check(annuity(0.0, 4.0), 4.0, 0.0);
    check(annuity(1e-8, 4.0), 4.0, 1e-6);
}

/// By hand: one colour, refreshes at 12.84 k months below 72, each one can of 1 L at 17.
#[test]
fn years_of_upkeep_are_paid_when_they_come() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let mut job = Job {
        painted: vec![Painted {
            name: "square1".to_owned(),
            areas: vec![(Colour::Chalk, 3.2)],
            masked: 8.0,
            stencilled: 0,
            key_points: 4,
            surfaces: vec![(Surface::Dense, 1.0)],
        }],
        shade: Shade::Grey,
        coats: BTreeMap::new(),
        system: CanSystem::Metric,
        prices: Prices {
            cans: vec![(1.0, 17.0)],
            ..Prices::default()
        },
        people: 2,
        days: 1,
        swept: 10.0,
        roped: 0.0,
        doors: 1,
    };
    let shopping = shop(&job, &ledger).value;
    let kept = upkeep(&job, &shopping, Wear::Feet, &ledger);
    assert_eq!(kept.years, 6);
    assert_eq!(kept.refreshes.len(), 5);
    check(kept.litres[0].1, 3.2 / 6.5 * 1.1 + 0.1, 1e-6);
    assert_eq!(
        kept.by_year,
        [0.0, 17.0, 17.0, 17.0, 17.0, 17.0].map(Some),
        "months 12.84, 25.68, 38.52, 51.36, 64.20"
    );
    let worth: f64 = (1..=5)
        .map(|nth| 17.0 / libm::pow(1.03, 12.840_298 * f64::from(nth) / 12.0))
        .sum();
    let annual = kept.annual.expect("paint has a price");
    check(annual, (34.0 + worth) / 5.417_191, 1e-4);
    assert!(kept.at_least, "the rest of the list has none");
    job.prices.cans.clear();
    let shopping = shop(&job, &ledger).value;
    let kept = upkeep(&job, &shopping, Wear::Wheels, &ledger);
    assert_eq!(kept.refreshes.len(), 11);
    assert_eq!(kept.annual, None);
    assert_eq!(kept.by_year[0], None);
}
