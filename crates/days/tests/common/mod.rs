//! Weather for the tests of this room. All of it is invented.
#![allow(dead_code)]

use days::{Job, Limits};
use weather::{Air, Hour, Weather, read};

pub fn ledger() -> ledger::Ledger {
    ledger::Ledger::shipped().expect("the shipped ledger reads")
}

pub fn air() -> Air {
    Air::of(&ledger())
}

pub fn limits() -> Limits {
    Limits::of(&ledger())
}

pub fn job(hours: usize, coats: usize) -> Job {
    Job::of(hours, coats, &ledger())
}

/// Dry, mild, still days from midnight on 1 September: nights of 14 °C, noons of 22 °C.
pub fn fair(days: u8) -> Weather {
    let mut text =
        "time,temperature_c,dew_point_c,humidity_percent,wind_m_s,rain_mm,surface_c\n".to_owned();
    for hour in 1..=u32::from(days) * 24 {
        let clock = hour % 24;
        let warm = 22 - (i64::from(clock) - 12).abs() * 8 / 12;
        let date = 1 + hour / 24;
        text += &format!("2026-09-{date:02} {clock:02}:00,{warm},8,60,2,0,{warm}\n");
    }
    read("fair.csv", &text).value.expect("fair weather")
}

/// A typical year of the same hour, 8760 times, but for what `change` makes of it.
pub fn year(change: impl Fn(&mut Hour)) -> Weather {
    let mut text =
        "month,day,hour,temperature_c,dew_point_c,humidity_percent,wind_m_s,rain_mm\n".to_owned();
    for (month, days) in [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
        .into_iter()
        .enumerate()
    {
        for day in 1..=days {
            for hour in 1..=24 {
                text += &format!("{},{day},{hour},20,8,50,2,0\n", month + 1);
            }
        }
    }
    let mut weather = read("year.csv", &text).value.expect("a year");
    weather.rows.iter_mut().for_each(change);
    weather
}
