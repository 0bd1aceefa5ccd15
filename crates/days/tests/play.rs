//! Lights, what to do, and fit hours. Weather invented; the chart's figures are of the
//! weather service and of the health department's chart that the ledger cites.
#![allow(clippy::expect_used, clippy::panic)] // helpers of tests are tests

mod common;

use common::{air, ledger, year};
use days::{
    Bands, FitMonth, Ground, Light, Lights, Measure, Tally, Verdict, advice, fit, fit_hours,
    hot_ground, sessions, slots, thunder_over,
};
use jiff::civil::date;
use weather::{Hour, Stamp};
use words::{Catalogue, Language};

fn hour(change: impl Fn(&mut Hour)) -> Hour {
    let stamp = Stamp {
        date: date(2026, 9, 1),
        hour: 10,
    };
    let mut hour = Hour {
        temperature: Some(20.0),
        humidity: Some(50.0),
        wind: Some(1.0),
        rain: Some(0.0),
        uv: Some(2.0),
        aqi: Some(40.0),
        ..Hour::unknown(stamp)
    };
    change(&mut hour);
    hour
}

fn light(measure: Measure, change: impl Fn(&mut Hour)) -> Option<Light> {
    Lights::of(&hour(change), &Bands::of(&ledger()), &air()).by(measure)
}

#[test]
fn each_light_changes_at_its_band() {
    use Light::{Green, Orange, Red, Yellow};
    let celsius = |f: f64| (f - 32.0) / 1.8;
    // 90 °F and 55 % feel as 97 °F on the printed chart, 90 and 70 as 106, 84 and 40 as 83.
    for (t, r, wanted) in [
        (70.0, 50.0, Green),
        (84.0, 40.0, Yellow),
        (90.0, 55.0, Orange),
        (90.0, 70.0, Red),
    ] {
        let at = |h: &mut Hour| (h.temperature, h.humidity) = (Some(celsius(t)), Some(r));
        assert_eq!(light(Measure::Heat, at), Some(wanted), "{t} {r}");
    }
    // 40 °F in 5 mph feels as 36, 30 in 10 as 21, 20 in 20 as 4, 0 in 15 as -19.
    for (t, v, wanted) in [
        (40.0, 5.0, Green),
        (30.0, 10.0, Yellow),
        (20.0, 20.0, Orange),
        (0.0, 15.0, Red),
    ] {
        let at = |h: &mut Hour| (h.temperature, h.wind) = (Some(celsius(t)), Some(v * 0.447_04));
        assert_eq!(light(Measure::Chill, at), Some(wanted), "{t} {v}");
    }
    for (index, wanted) in [
        (100.0, Green),
        (101.0, Yellow),
        (150.0, Yellow),
        (151.0, Orange),
        (200.0, Orange),
        (201.0, Red),
    ] {
        assert_eq!(
            light(Measure::Air, |h| h.aqi = Some(index)),
            Some(wanted),
            "{index}"
        );
    }
    // Dust is turned into an index where there is none: 40 µg/m³ make 112.
    assert_eq!(
        light(Measure::Air, |h| (h.aqi, h.pm25) = (None, Some(40.0))),
        Some(Yellow)
    );
    for (uv, wanted) in [
        (2.4, Green),
        (2.5, Yellow),
        (7.4, Yellow),
        (7.5, Orange),
        (10.4, Orange),
        (10.5, Red),
    ] {
        assert_eq!(
            light(Measure::Uv, |h| h.uv = Some(uv)),
            Some(wanted),
            "{uv}"
        );
    }
}

#[test]
fn what_is_not_known_is_no_green_light() {
    let bands = Bands::of(&ledger());
    let overall = |change: &dyn Fn(&mut Hour)| {
        Lights::of(&hour(change), &bands, &air()).overall(&Measure::ALL)
    };
    assert_eq!(overall(&|_| ()), Some(Light::Green));
    assert_eq!(overall(&|h| h.uv = None), None);
    assert_eq!(overall(&|h| h.temperature = None), None);
    // A yellow light with something unknown might be a red one.
    assert_eq!(overall(&|h| (h.uv, h.aqi) = (None, Some(120.0))), None);
    // What is known keeps the children in.
    assert_eq!(
        overall(&|h| (h.uv, h.aqi) = (None, Some(220.0))),
        Some(Light::Red)
    );
    // At 10 °C and below no humidity makes heat; above 50 °F no wind makes a chill.
    assert_eq!(
        light(Measure::Heat, |h| (h.temperature, h.humidity) =
            (Some(10.0), None)),
        Some(Light::Green)
    );
    assert_eq!(
        light(Measure::Heat, |h| (h.temperature, h.humidity) =
            (Some(30.0), None)),
        None
    );
    assert_eq!(
        light(Measure::Chill, |h| (h.temperature, h.wind) =
            (Some(11.0), None)),
        Some(Light::Green)
    );
    assert_eq!(
        light(Measure::Chill, |h| (h.temperature, h.wind) =
            (Some(5.0), None)),
        None
    );
}

fn keys(change: impl Fn(&mut Hour), ledger: &ledger::Ledger) -> Vec<&'static str> {
    let bands = Bands::of(ledger);
    let lights = Lights::of(&hour(change), &bands, &air());
    let say = advice(&lights, &Measure::ALL, &bands, ledger);
    for message in &say {
        for language in Language::ALL {
            let text = Catalogue::of(language).say(message, unit::Units::Metres);
            assert!(!text.contains(message.key), "{text}");
        }
    }
    let (always, first) = (&say[say.len() - 3..], &say[..say.len() - 3]);
    let key = |message: &note::Message| message.key;
    assert_eq!(
        always.iter().map(key).collect::<Vec<_>>(),
        ["days-do-thunder", "days-do-hand", "days-do-local"]
    );
    first.iter().map(key).collect()
}

#[test]
fn what_to_do_is_said_for_the_light_and_its_cause() {
    let ledger = ledger();
    assert_eq!(keys(|_| (), &ledger), ["days-do-green"]);
    assert_eq!(
        keys(|h| h.uv = Some(5.0), &ledger),
        ["days-do-yellow", "days-do-uv"]
    );
    assert_eq!(
        keys(|h| h.temperature = Some(-5.0), &ledger),
        ["days-do-yellow", "days-do-chill"]
    );
    assert_eq!(
        keys(|h| h.aqi = Some(160.0), &ledger),
        ["days-do-orange", "days-do-air"]
    );
    assert_eq!(
        keys(|h| h.temperature = Some(40.0), &ledger),
        ["days-do-red", "days-do-heat"]
    );
    assert_eq!(keys(|h| h.uv = None, &ledger), ["days-do-unknown"]);
}

#[test]
fn a_local_rule_wins() {
    let mut ledger = ledger();
    ledger.replace("play.orange_out", &[1.0]).expect("a figure");
    assert_eq!(
        keys(|h| h.aqi = Some(160.0), &ledger),
        ["days-do-orange-out", "days-do-air"]
    );
    // Some states go in above 150.
    ledger
        .replace("play.air", &[100.0, 150.0, 150.0])
        .expect("a figure");
    assert_eq!(
        keys(|h| h.aqi = Some(160.0), &ledger),
        ["days-do-red", "days-do-air"]
    );
}

#[test]
fn ground_and_thunder_have_their_figures() {
    let ledger = ledger();
    assert_eq!(hot_ground(43.9, &ledger), Ground::Bearable);
    assert_eq!(hot_ground(44.0, &ledger), Ground::Hurts);
    assert_eq!(hot_ground(55.0, &ledger), Ground::Burns);
    let last = date(2026, 9, 1).at(23, 45, 0, 0);
    assert_eq!(
        thunder_over(last, &ledger),
        Some(date(2026, 9, 2).at(0, 15, 0, 0))
    );
}

#[test]
fn rain_heat_and_cold_make_an_hour_unfit() {
    let of = |change: &dyn Fn(&mut Hour)| fit(&hour(change), &Bands::of(&ledger()), &air());
    assert_eq!(of(&|_| ()), Verdict::Fine);
    // A typical year knows neither dust nor UV.
    assert_eq!(of(&|h| (h.uv, h.aqi) = (None, None)), Verdict::Fine);
    assert_eq!(of(&|h| h.rain = Some(0.3)), Verdict::Not);
    assert_eq!(of(&|h| h.rain = None), Verdict::Unknown);
    assert_eq!(of(&|h| h.temperature = Some(38.0)), Verdict::Not);
    // Cold needs coats, not walls, until the wind chill is under 15 °F.
    assert_eq!(of(&|h| h.temperature = Some(-5.0)), Verdict::Fine);
    assert_eq!(of(&|h| h.temperature = Some(-20.0)), Verdict::Not);
}

/// July is hot from 14:00 to 17:00 and wet at 10:00 on ten days; February's rain is unknown.
fn summer() -> weather::Weather {
    year(|hour| {
        let stamp = hour.stamp;
        if stamp.month() == 7 && (14..=17).contains(&stamp.hour) {
            hour.temperature = Some(38.0);
        }
        if stamp.month() == 7 && stamp.hour == 10 && stamp.date.day() <= 10 {
            hour.rain = Some(1.0);
        }
        if stamp.month() == 2 {
            hour.rain = None;
        }
    })
}

fn months(clock: &[u8]) -> Vec<FitMonth> {
    fit_hours(&summer(), clock, &Bands::of(&ledger()), &air())
}

#[test]
fn fit_hours_are_counted_by_month() {
    let found = months(&[10, 15]);
    let july = &found[6];
    assert_eq!(
        (
            july.heat_from(Light::Orange),
            july.chill_from(Light::Yellow)
        ),
        (31, 0)
    );
    assert_eq!(
        (july.wet, july.rain_unknown, july.light_unknown),
        (10, 0, 0)
    );
    assert_eq!(
        july.fit,
        Tally {
            fine: 21,
            unknown: 0,
            not: 41
        }
    );
    assert_eq!(
        found[1].fit,
        Tally {
            fine: 0,
            unknown: 56,
            not: 0
        }
    );
    assert_eq!(found[4].fit.share(), Some(1.0));
}

/// By hand: 20 sessions of July at 10:00 and 15:00, of which 21 of 62 hours are fit, and
/// 10 of May, all fit: 20 × 21/62 + 10; 20 × 41/21 = 39.05 more make up for it.
#[test]
fn a_plan_loses_what_the_weather_takes() {
    const ROUNDING: f64 = 1e-12;
    let found = sessions(&[(7, 20.0), (5, 10.0)], &months(&[10, 15]));
    assert_eq!((found.planned, found.spare), (30.0, Some(40)));
    assert!((found.expected - (20.0 * 21.0 / 62.0 + 10.0)).abs() <= ROUNDING);
    // What is unknown cannot be made up for.
    assert_eq!(sessions(&[(2, 3.0)], &months(&[10])).spare, None);
    assert_eq!(sessions(&[], &months(&[10])).spare, Some(0));
}

#[test]
fn the_best_time_of_day_comes_first() {
    let found = slots(&summer(), &[7], 9..=17, 2, &Bands::of(&ledger()), &air());
    let order: Vec<(u8, usize)> = found
        .iter()
        .map(|slot| (slot.first, slot.fit.fine))
        .collect();
    assert_eq!(
        order,
        [
            (11, 62),
            (12, 62),
            (9, 52),
            (10, 52),
            (13, 31),
            (14, 0),
            (15, 0),
            (16, 0)
        ]
    );
    assert!(slots(&summer(), &[7], 9..=9, 2, &Bands::of(&ledger()), &air()).is_empty());
}
