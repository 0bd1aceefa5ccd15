//! A typical year by month. The real files are counted in `outside/`; here the year is invented.
#![allow(clippy::expect_used, clippy::panic)] // helpers of tests are tests

mod common;

use common::{air, limits, year};
use days::{Rule, Run, Tally, judge};

fn counted(change: impl Fn(&mut weather::Hour), rules: &[Rule], work: usize) -> days::Year {
    let weather = year(change);
    let judged = judge(&weather, &limits(), &air());
    days::year(&weather, &judged, rules, 9..=17, work, &air())
}

#[test]
fn a_year_is_counted_by_month_clock_hour_and_day() {
    // Cold but for April's afternoons; one of them is wet at 15:00, rain of another unknown.
    let found = counted(
        |hour| {
            let (month, day) = (hour.stamp.date.month(), hour.stamp.date.day());
            if month != 4 || hour.stamp.hour < 13 {
                hour.temperature = Some(5.0);
            }
            if (month, day, hour.stamp.hour) == (4, 10, 15) {
                hour.rain = Some(1.0);
            }
            if (month, day) == (4, 11) {
                hour.rain = None;
            }
        },
        &[Rule::Air, Rule::Rain],
        3,
    );
    let april = &found.months[3];
    // 13:00 to 17:00 are five hours of thirty days; one wet, five unknown.
    assert_eq!(
        april.hours,
        Tally {
            fine: 144,
            unknown: 5,
            not: 121
        }
    );
    assert_eq!(
        april.clock[14],
        Tally {
            fine: 28,
            unknown: 1,
            not: 1
        }
    );
    assert_eq!(
        april.clock[23],
        Tally {
            fine: 29,
            unknown: 1,
            not: 0
        }
    );
    // 10 April has runs of two hours, 11 April none that is sure.
    assert_eq!(april.days, 28);
    assert_eq!(found.best(), [4]);
    assert_eq!(found.hours.hours(), 8760);
    // 13:00 to 24:00.
    let first = (31 + 28 + 31) * 24 + 12;
    assert_eq!(found.longest, Some(Run { first, hours: 12 }));
    assert_eq!(found.humidity, Some(50.0));
}

#[test]
fn a_run_goes_over_midnight_but_a_working_day_does_not() {
    let found = counted(|_| (), &Rule::DEMANDED, 9);
    assert_eq!(
        found.longest,
        Some(Run {
            first: 0,
            hours: 8760
        })
    );
    assert_eq!(found.months[1].days, 28);
    assert_eq!(counted(|_| (), &Rule::DEMANDED, 10).months[1].days, 0);
    assert_eq!(found.temperature, Some(20.0));
    assert_eq!(found.best(), [1, 3, 5, 7, 8, 10, 12, 4, 6, 9, 11, 2]);
}

#[test]
fn a_year_without_fine_hours_says_so() {
    let found = counted(|hour| hour.rain = None, &Rule::DEMANDED, 1);
    assert_eq!((found.longest, found.best()), (None, Vec::new()));
    assert_eq!(
        found.hours,
        Tally {
            fine: 0,
            unknown: 8760,
            not: 0
        }
    );
    assert_eq!(found.hours.share(), Some(0.0));
}
