//! A year of 8760 invented hours: read, held against every rule, counted for play.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use days::{Bands, Limits, Rule, fit_hours, judge, year};
use weather::{Air, read};

fn invented() -> String {
    let mut text =
        "month,day,hour,temperature_c,dew_point_c,humidity_percent,wind_m_s,rain_mm\n".to_owned();
    let months = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (month, days) in months.into_iter().enumerate() {
        for day in 1..=days {
            for hour in 1..=24 {
                let warm = 5 + (month * 7 + day * 3 + hour) % 25;
                let wet = (day * hour) % 17 / 16;
                text += &format!("{},{day},{hour},{warm},4.5,60,3.1,{wet}\n", month + 1);
            }
        }
    }
    text
}

fn a_year(criterion: &mut Criterion) {
    let Ok(ledger) = ledger::Ledger::shipped() else {
        return;
    };
    let (air, limits, bands) = (Air::of(&ledger), Limits::of(&ledger), Bands::of(&ledger));
    let text = invented();
    let Some(weather) = read("year.csv", &text).value else {
        return;
    };
    criterion.bench_function("read 8760 hours", |bench| {
        bench.iter(|| read("year.csv", black_box(&text)));
    });
    criterion.bench_function("judge and count 8760 hours", |bench| {
        bench.iter(|| {
            let judged = judge(black_box(&weather), &limits, &air);
            year(&weather, &judged, &Rule::DEMANDED, 9..=17, 4, &air)
        });
    });
    criterion.bench_function("fit hours of a year, every clock hour", |bench| {
        let clock: Vec<u8> = (1..=24).collect();
        bench.iter(|| fit_hours(black_box(&weather), &clock, &bands, &air));
    });
}

criterion_group!(benches, a_year);
criterion_main!(benches);
