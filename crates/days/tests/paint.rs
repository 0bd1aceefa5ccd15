//! Rules of painting: each at its edge, and what is not known never fine. Weather invented.
#![allow(clippy::expect_used, clippy::panic)] // helpers of tests are tests

mod common;

use common::{air, fair, limits, year};
use days::Verdict::{Fine, Not, Unknown};
use days::{Limits, Rule, Verdict, judge, margins};
use proptest::prelude::*;
use weather::{Hour, Weather};

/// The verdict on row 36 (noon of the second day) of four fair days, changed.
fn check(rule: Rule, change: impl Fn(&mut Weather)) -> Verdict {
    let mut weather = fair(4);
    change(&mut weather);
    judge(&weather, &limits(), &air())[36].of(rule)
}

fn now(rule: Rule, change: impl Fn(&mut Hour)) -> Verdict {
    check(rule, |weather| change(&mut weather.rows[36]))
}

#[test]
fn each_rule_holds_up_to_its_edge() {
    for (warm, verdict) in [
        (Some(9.9), Not),
        (Some(10.0), Fine),
        (Some(35.0), Fine),
        (Some(35.1), Not),
        (None, Unknown),
    ] {
        assert_eq!(
            now(Rule::Air, |h| h.temperature = warm),
            verdict,
            "{warm:?}"
        );
        assert_eq!(
            now(Rule::Surface, |h| h.surface = warm.or(Some(20.0))),
            if warm.is_none() { Fine } else { verdict }
        );
    }
    for (dew, verdict) in [(Some(17.0), Fine), (Some(17.1), Not)] {
        let at = |h: &mut Hour| (h.surface, h.dew_point) = (Some(20.0), dew);
        assert_eq!(now(Rule::Dew, at), verdict, "{dew:?}");
    }
    for (damp, verdict) in [(Some(85.0), Fine), (Some(85.1), Not)] {
        assert_eq!(
            now(Rule::Humidity, |h| h.humidity = damp),
            verdict,
            "{damp:?}"
        );
    }
    for (rain, verdict) in [(Some(0.0), Fine), (Some(0.1), Not), (None, Unknown)] {
        assert_eq!(now(Rule::Rain, |h| h.rain = rain), verdict, "{rain:?}");
    }
    for (wind, verdict) in [(Some(4.9), Fine), (Some(5.0), Not), (None, Unknown)] {
        assert_eq!(now(Rule::Wind, |h| h.wind = wind), verdict, "{wind:?}");
    }
}

/// Humidity and dew point follow from each other; of neither, both are unknown.
#[test]
fn one_reading_of_damp_is_enough() {
    for rule in [Rule::Humidity, Rule::Dew] {
        assert_eq!(now(rule, |h| h.humidity = None), Fine);
        assert_eq!(now(rule, |h| h.dew_point = None), Fine);
        assert_eq!(
            now(rule, |h| (h.humidity, h.dew_point) = (None, None)),
            Unknown
        );
    }
}

#[test]
fn rain_is_looked_for_before_and_after() {
    let rain = |rule, row: usize, rain: Option<f64>| check(rule, |w| w.rows[row].rain = rain);
    for (rule, inside, outside) in [
        (Rule::DryBefore, 12, 11),
        (Rule::DryAfter, 40, 41),
        (Rule::DryWanted, 48, 49),
    ] {
        assert_eq!(rain(rule, inside, Some(0.1)), Not, "{rule:?}");
        assert_eq!(rain(rule, inside, None), Unknown, "{rule:?}");
        assert_eq!(rain(rule, outside, Some(0.1)), Fine, "{rule:?}");
    }
    let cold = |row: usize| check(Rule::WarmAfter, |w| w.rows[row].temperature = Some(9.0));
    assert_eq!((cold(60), cold(61)), (Not, Fine));
}

/// Before the first row, after the last and across a gap nothing is known.
#[test]
fn hours_that_are_not_there_are_unknown() {
    let judged = judge(&fair(4), &limits(), &air());
    assert_eq!(
        (
            judged[23].of(Rule::DryBefore),
            judged[24].of(Rule::DryBefore)
        ),
        (Unknown, Fine)
    );
    assert_eq!(
        (judged[91].of(Rule::DryAfter), judged[92].of(Rule::DryAfter)),
        (Fine, Unknown)
    );
    let gap = |weather: &mut Weather| _ = weather.rows.remove(30);
    assert_eq!(check(Rule::DryBefore, gap), Unknown);
    // The first hours of a typical year follow its last.
    let typical = year(|_| ());
    assert_eq!(
        judge(&typical, &limits(), &air())[0].of(Rule::DryBefore),
        Fine
    );
}

#[test]
fn the_ground_is_read_or_stood_for_or_unknown() {
    let weather = {
        let mut weather = fair(2);
        weather.rows[12].surface = None;
        weather.rows[13].surface = Some(9.0);
        weather
    };
    let with = |over| Limits {
        ground_over_air: over,
        ..limits()
    };
    let ground = |over, row: usize| judge(&weather, &with(over), &air())[row].of(Rule::Surface);
    assert_eq!(ground(Some(0.0), 12), Fine);
    assert_eq!(ground(None, 12), Unknown);
    assert_eq!(ground(Some(-15.0), 12), Not);
    // A reading wins over what stands in for it.
    assert_eq!(ground(Some(0.0), 13), Not);
    let margin = margins(&weather, &with(Some(-2.0)), &air());
    assert_eq!((margin[12], margin[13]), (Some(12.0), Some(1.0)));
}

#[test]
fn every_rule_light_and_caution_has_its_words() {
    let keys = [Rule::DEMANDED.as_slice(), &Rule::WANTED].concat();
    let lights = days::Light::ALL.map(days::Light::word);
    let cautions = days::cautions(&common::ledger());
    for language in words::Language::ALL {
        let catalogue = words::Catalogue::of(language);
        for key in keys.iter().map(|rule| rule.word()).chain(lights) {
            assert!(catalogue.has(key), "{key}");
        }
        for caution in &cautions {
            let said = catalogue.say(caution, unit::Units::Metres);
            assert!(!said.contains("days-") && !said.contains("{$"), "{said}");
        }
    }
}

proptest! {
    /// To know less never makes an hour fine, nor a broken rule kept.
    #[test]
    fn to_know_less_never_helps(row in 0usize..96, field in 0usize..6, rain in 0.0..0.2f64, wind in 0.0..8.0f64, warm in 5.0..38.0f64, dew in 0.0..20.0f64) {
        let mut known = fair(4);
        let hour = &mut known.rows[row];
        hour.rain = Some((rain - 0.1).max(0.0));
        hour.wind = Some(wind);
        (hour.temperature, hour.surface) = (Some(warm), Some(warm));
        hour.dew_point = Some(dew.min(warm));
        // The two readings of damp say the same, so that either may stand for both.
        hour.humidity = Some(air().humidity(warm, dew.min(warm)));
        let mut less = known.clone();
        let hour = &mut less.rows[row];
        *[&mut hour.rain, &mut hour.wind, &mut hour.temperature, &mut hour.surface, &mut hour.dew_point, &mut hour.humidity][field] = None;
        let limits = Limits { ground_over_air: None, ..limits() };
        let (known, less) = (judge(&known, &limits, &air()), judge(&less, &limits, &air()));
        for (known, less) in known.iter().zip(&less) {
            let (known, less) = (known.all(&Rule::DEMANDED), less.all(&Rule::DEMANDED));
            prop_assert!(less == known || less != Fine, "{known:?} became {less:?}");
        }
    }
}
