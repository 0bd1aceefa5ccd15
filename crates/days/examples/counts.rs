//! What a file of hourly weather holds, as JSON: the counts that other programs check.
//!
//! `cargo run --release -p days --example counts -- FILE`

use std::process::ExitCode;

use days::{Bands, Limits, Rule, Verdict, fit_hours, judge, year};
use serde_json::{Value, json};
use weather::{Air, Span, Weather, decode, fahrenheit, read};

fn main() -> ExitCode {
    let Some(path) = std::env::args().nth(1) else {
        eprintln!("usage: counts FILE");
        return ExitCode::from(2);
    };
    let bytes = match std::fs::read(&path) {
        Ok(bytes) => bytes,
        Err(fault) => {
            eprintln!("{path}: {fault}");
            return ExitCode::from(2);
        }
    };
    let Ok(ledger) = ledger::Ledger::shipped() else {
        return ExitCode::from(3);
    };
    let found = read(&path, &decode(&bytes));
    for note in &found.notes {
        eprintln!("{}: {:?}", note.severity, note.what);
    }
    let Some(weather) = found.value else {
        return ExitCode::from(2);
    };
    println!("{:#}", counts(&weather, &ledger));
    ExitCode::SUCCESS
}

fn counts(weather: &Weather, ledger: &ledger::Ledger) -> Value {
    let air = Air::of(ledger);
    let judged = judge(weather, &Limits::of(ledger), &air);
    let count = |rules: &[Rule], verdict: Verdict| {
        judged
            .iter()
            .filter(|hour| hour.all(rules) == verdict)
            .count()
    };
    let fine = |rules: &[Rule]| count(rules, Verdict::Fine);
    let three = [Rule::Air, Rule::Humidity, Rule::Dew];
    let dry = [Rule::Air, Rule::Humidity, Rule::Dew, Rule::Rain];
    let by_month = year(weather, &judged, &three, 9..=17, 1, &air);
    let demanded = year(weather, &judged, &Rule::DEMANDED, 9..=17, 4, &air);
    let bands = Bands::of(ledger);
    let play = |clock: &[u8]| -> Value {
        let months = fit_hours(weather, clock, &bands, &air);
        let of = |figure: &dyn Fn(&days::FitMonth) -> usize| -> Vec<usize> {
            months.iter().map(figure).collect()
        };
        json!({
            "heat_90": of(&|m| m.heat_from(days::Light::Orange)),
            "chill_32": of(&|m| m.chill_from(days::Light::Yellow)),
            "wet": of(&|m| m.wet),
            "rain_unknown": of(&|m| m.rain_unknown),
            "fit": of(&|m| m.fit.fine),
            "hours": of(&|m| m.fit.hours()),
        })
    };
    let heat_from = |band: f64| {
        let hot = |hour: &&weather::Hour| {
            let index =
                || Some(air.heat_index(fahrenheit(hour.temperature?), air.humidity_of(hour)?));
            index().is_some_and(|index| index >= band)
        };
        weather.rows.iter().filter(hot).count()
    };
    let known = |value: &dyn Fn(&weather::Hour) -> Option<f64>| {
        weather
            .rows
            .iter()
            .filter(|hour| value(hour).is_some())
            .count()
    };
    json!({
        "place": weather.place.name,
        "span": match weather.span { Span::TypicalYear => "typical", Span::Dated => "dated" },
        "rows": weather.rows.len(),
        "known": {
            "temperature": known(&|hour| hour.temperature),
            "dew_point": known(&|hour| hour.dew_point),
            "humidity": known(&|hour| hour.humidity),
            "wind": known(&|hour| hour.wind),
            "rain": known(&|hour| hour.rain),
            "sun": known(&|hour| hour.sun),
        },
        "air": fine(&[Rule::Air]),
        "humidity": fine(&[Rule::Humidity]),
        "dew": fine(&[Rule::Dew]),
        "three": fine(&three),
        "three_dry": {
            "fine": fine(&dry),
            "unknown": count(&dry, Verdict::Unknown),
        },
        "demanded": {
            "fine": fine(&Rule::DEMANDED),
            "unknown": count(&Rule::DEMANDED, Verdict::Unknown),
            "not": count(&Rule::DEMANDED, Verdict::Not),
            "days_with_4_h": demanded.months.iter().map(|m| m.days).collect::<Vec<_>>(),
            "best": demanded.best(),
        },
        "months": by_month.months.iter().map(|m| m.hours.fine).collect::<Vec<_>>(),
        "longest": by_month.longest.map(|run| run.hours),
        "mean_temperature": by_month.temperature,
        "mean_humidity": by_month.humidity,
        "heat_80": heat_from(80.0),
        "heat_90": heat_from(90.0),
        "heat_100": heat_from(100.0),
        "morning": play(&[10, 11]),
        "afternoon": play(&[15, 16]),
    })
}
