//! Files of three forms, and every slip at its place. All weather here is invented.
#![allow(clippy::expect_used, clippy::panic)] // helpers of tests are tests

use std::sync::Arc;

use jiff::civil::date;
use note::{Noted, Severity};
use unit::Units;
use weather::{Hour, Span, Way, Weather, decode, read};
use words::{Catalogue, Language, render};

const EPW: &str = "LOCATION,Tern Street,-,INVENTED,none,0,42.10,-75.90,-5.0,250.0\r
DESIGN CONDITIONS,0\r
TYPICAL/EXTREME PERIODS,0\r
GROUND TEMPERATURES,0\r
HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\r
COMMENTS 1,invented for a test\r
COMMENTS 2,none\r
DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\r
1999,2,28,24,0,?,12.5,4.0,56,97000,0,0,300,-0.0,0,0,0,0,0,0,180,3.1,5,5,16,2000,9,999999999,10,0.1,0,88,0.2,0.0,1.0\r
2003,3,1,1,0,?,99.9,99.9,999,97000,0,0,300,9999,0,0,0,0,0,0,180,999,5,5,16,2000,9,999999999,10,0.1,0,88,0.2,999,99\r
2003,3,1,2,0,?,11.0,3.0,58,97000,0,0,300,12,0,0,0,0,0,0,180,2.0,5,5,16,2000,9,999999999\r
";

const TMY3: &str = "700001,\"TERN STREET, INVENTED\",NY,-5.0,42.100,-75.900,250
Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),Dry-bulb (C),Dew-point (C),RHum (%),Wspd (m/s),Lprecip depth (mm),Lprecip quantity (hr)
02/28/1988,24:00,0,12.5,4.0,56,3.1,0,1
03/01/1991,01:00,0,-9900,-9900,-9900,-9900,-9900,-9900
";

/// Notes as a person reads them, without the file's line.
fn told(text: &str) -> Vec<String> {
    let notes = read("w.csv", text).notes;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let files = [(Arc::from("w.csv"), Arc::from(text))].into();
    notes
        .iter()
        .map(|note| {
            let shown = render(
                note,
                &files,
                Catalogue::of(Language::En),
                Units::Metres,
                false,
            );
            let plain = shown.lines().filter(|line| !line.contains(" | "));
            plain.map(str::trim).collect::<Vec<_>>().join(" / ")
        })
        .collect()
}

fn sound(found: Noted<Option<Weather>>) -> Weather {
    assert!(!note::any_error(&found.notes), "{:?}", found.notes);
    found.value.expect("weather")
}

#[test]
fn an_epw_file_is_read() {
    let weather = sound(read("w.epw", EPW));
    assert_eq!(weather.span, Span::TypicalYear);
    assert_eq!(weather.place.name, "Tern Street");
    assert_eq!(weather.place.latitude, Some(42.1));
    assert_eq!(weather.place.longitude, Some(-75.9));
    assert_eq!(weather.place.zone, Some(-5.0));
    assert_eq!(weather.place.elevation, Some(250.0));
    let [first, missing, short] = &weather.rows[..] else {
        panic!("{:?}", weather.rows)
    };
    assert_eq!(
        (first.stamp.date, first.stamp.hour),
        (date(1999, 2, 28), 24)
    );
    assert_eq!(
        (first.temperature, first.dew_point, first.humidity),
        (Some(12.5), Some(4.0), Some(56.0))
    );
    assert_eq!((first.wind, first.rain), (Some(3.1), Some(0.0)));
    assert!(first.sun.is_some_and(|sun| sun.is_sign_positive()));
    assert_eq!(missing, &Hour::unknown(missing.stamp));
    // A file from before the format had rain.
    assert_eq!((short.wind, short.rain), (Some(2.0), None));
    // Months of a typical year come from different years.
    assert!(missing.stamp.follows(first.stamp, Span::TypicalYear));
    assert!(!missing.stamp.follows(first.stamp, Span::Dated));
}

#[test]
fn a_tmy3_file_is_read() {
    let weather = sound(read("w.csv", TMY3));
    assert_eq!(weather.span, Span::TypicalYear);
    assert_eq!(weather.place.name, "TERN STREET, INVENTED");
    assert_eq!(weather.place.zone, Some(-5.0));
    let [first, missing] = &weather.rows[..] else {
        panic!("{:?}", weather.rows)
    };
    assert_eq!(
        (first.stamp.date, first.stamp.hour),
        (date(1988, 2, 28), 24)
    );
    assert_eq!(
        (first.temperature, first.wind, first.rain, first.sun),
        (Some(12.5), Some(3.1), Some(0.0), Some(0.0))
    );
    assert_eq!(missing.rain, None);
    assert_eq!(missing.temperature, None);
}

#[test]
fn our_table_is_read_in_any_order_and_unit() {
    let text = "\u{feff}# invented
rain_in;temperature_f;time;wind_mph;humidity_percent;note
0,1;50;2026-09-01 23:00;10;NA;a comment
;-40;2026-09-02T00:00;;80;
0;212;2026-09-02 01:00;0;80;too hot
";
    let weather = read("w.csv", text).value.expect("weather");
    assert_eq!(weather.span, Span::Dated);
    let [first, midnight, hot] = &weather.rows[..] else {
        panic!("{:?}", weather.rows)
    };
    const ROUNDING: f64 = 1e-12;
    let is =
        |found: Option<f64>, wanted: f64| found.is_some_and(|v| (v - wanted).abs() <= ROUNDING);
    assert!(is(first.temperature, 10.0) && is(first.rain, 2.54) && is(first.wind, 4.4704));
    assert_eq!(first.humidity, None);
    // Midnight is the end of its day.
    assert_eq!(
        (midnight.stamp.date, midnight.stamp.hour),
        (date(2026, 9, 1), 24)
    );
    assert!(is(midnight.temperature, -40.0));
    assert_eq!(midnight.rain, None);
    // What cannot be is unknown, and told.
    assert_eq!(hot.temperature, None);
    assert_eq!(
        told(text).last().map_or("", String::as_str),
        "w.csv:5:3 warning: temperature_f cannot be 212: it is taken as unknown / expected: a number \
         from -130 to 140 / mend: look whether the unit is right, or whether this is the file's code \
         for a missing value"
    );
}

#[test]
fn a_table_may_be_a_typical_year() {
    let weather = read(
        "w.csv",
        "month,day,hour,temperature_c\n2,28,24,5\n3,1,1,6\n",
    );
    let weather = weather.value.expect("weather");
    assert_eq!(weather.span, Span::TypicalYear);
    assert!(
        weather.rows[1]
            .stamp
            .follows(weather.rows[0].stamp, weather.span)
    );
}

/// Each text with all that is told of it.
#[test]
fn every_slip_is_told_at_its_place() {
    let missing = |of: usize, columns: &[&str]| -> Vec<String> {
        columns
            .iter()
            .map(|column| {
                format!(
                    "w.csv:1:1 advice: {column} is not known in {of} of {of} hours; what needs it stays \
                     unknown there"
                )
            })
            .collect()
    };
    let rest = |of| missing(of, &["humidity_percent", "wind_m_s", "rain_mm"]);
    let table =
        "a first row that names the columns: time,temperature_c,dew_point_c,wind_m_s,rain_mm";
    for (text, wanted) in [
        (
            "time,temperature_c\n2026-09-01 09:00,warm\n2026-09-01 10:00,12\n2026-09-01 11:00,12\n",
            [
                missing(1, &[]),
                vec!["w.csv:1:1 advice: temperature_c is not known in 1 of 3 hours; what needs it stays unknown there".to_owned()],
                rest(3),
                vec![
                    "w.csv:2:18 error: `warm` under temperature_c is no number / mend: correct it, or leave the cell empty: an empty cell is unknown".to_owned(),
                ],
            ]
            .concat(),
        ),
        (
            "time,temperature_c\n2026-09-01 09:00,12\n2026-09-01 12:00,12\n",
            [
                rest(2),
                vec!["w.csv:3:1 warning: 09-01 12:00 does not follow 09-01 09:00 by one hour / mend: put the hours in order, each once; what needs hours that are lacking stays unknown".to_owned()],
            ]
            .concat(),
        ),
        (
            "time,temprature_c,rain_mm,rain_in,mood\n",
            vec![
                "w.csv:1:6 error: `temprature_c` is not a column of this table / mend: did you mean `temperature_c`?".to_owned(),
                "w.csv:1:27 error: the column `rain_in` stands twice".to_owned(),
                format!("w.csv:1:35 error: `mood` is not a column of this table / expected: one of these: {}", list()),
            ],
        ),
        (
            "rain_mm\n",
            vec![
                format!("w.csv:1:1 error: there is no column `time` / expected: {table}"),
                format!("w.csv:1:1 error: there is no column `temperature_c` / expected: {table}"),
            ],
        ),
        (
            "time,hour,temperature_c\n",
            vec!["w.csv:1:1 error: this table has a time, and a month, day or hour besides / mend: keep `time` for real dates; keep `month`, `day` and `hour` for a typical year".to_owned()],
        ),
        (
            "",
            vec![format!("w.csv error: w.csv is empty / expected: {table}")],
        ),
        (
            "time,temperature_c\n2026-02-30 09:00,1\n2026-02-03 09:30,1\n2026-02-03T09:00Z,1\n2026-02-03,1\n2026-02-03 09:00,1,2\n",
            vec![
                "w.csv:2:1 error: `2026-02-30 09:00` is no hour of a day / expected: a full hour on the yard's own clock, as 2026-09-01 09:00, without a time zone".to_owned(),
                "w.csv:3:1 error: `2026-02-03 09:30` is not a full hour / expected: a full hour on the yard's own clock, as 2026-09-01 09:00, without a time zone".to_owned(),
                "w.csv:4:1 error: `2026-02-03T09:00Z` is no hour of a day / expected: a full hour on the yard's own clock, as 2026-09-01 09:00, without a time zone".to_owned(),
                "w.csv:5:1 error: `2026-02-03` is no hour of a day / expected: a full hour on the yard's own clock, as 2026-09-01 09:00, without a time zone".to_owned(),
                "w.csv:6:20 error: this row has 3 cells under 2 columns".to_owned(),
            ],
        ),
        (
            "time,temperature_c\n",
            vec!["w.csv:1:1 error: no hour of weather could be read / mend: give a row for each hour".to_owned()],
        ),
        (
            "LOCATION,x\n1999,1,1,1\n",
            vec!["w.csv:1:1 error: the line DATA PERIODS that ends the header is missing / mend: get the file again, and change nothing in its first lines".to_owned()],
        ),
        (
            "LOCATION,x\nDATA PERIODS\n1999,1,1,1,0\n1999,13,1,25,0,,,,,,,,,,,,,,,,,,\n",
            vec![
                not_a_year(2),
                "w.csv:3:1 error: this row has 5 cells; 22 are needed / mend: get the file again: part of it may be lost".to_owned(),
                "w.csv:4:1 error: `1999,13,1,25` is no hour of a day / expected: year, month, day and an hour from 1 to 24".to_owned(),
            ],
        ),
        (
            "1,x\nDate (MM/DD/YYYY),Time (HH:MM),Dry-bulb (C),Dew-point (C),RHum (%),GHI (W/m^2)\n",
            vec!["w.csv:2:1 error: there is no column `Wspd (m/s)` / mend: get the file again, and change nothing in its first lines".to_owned()],
        ),
        (
            "1,x\nDate (MM/DD/YYYY),Time (HH:MM),Dry-bulb (C),Dew-point (C),RHum (%),GHI (W/m^2),Wspd (m/s)\n31/12/1988,24:00,1,1,1,1,1\n12/31/1988,24:30,1,1,1,1,1\n",
            vec![
                not_a_year(2),
                "w.csv:3:1 error: `31/12/1988` is no hour of a day / expected: a date as 07/31/1988 and an hour from 01:00 to 24:00".to_owned(),
                "w.csv:4:12 error: `24:30` is no hour of a day / expected: a date as 07/31/1988 and an hour from 01:00 to 24:00".to_owned(),
            ],
        ),
    ] {
        assert_eq!(told(text), wanted, "{text}");
    }
}

fn not_a_year(hours: usize) -> String {
    format!(
        "w.csv:1:1 warning: this file has {hours} hours, which is not a year / expected: 8760 hours (8784 \
         with 29 February) / mend: get the file again, and change nothing in its first lines"
    )
}

fn list() -> String {
    let names: Vec<&str> = weather::columns();
    let (last, others) = names.split_last().expect("columns");
    format!("{} and {last}", others.join(", "))
}

#[test]
fn a_broken_column_of_a_year_is_told_in_a_few_notes() {
    let mut text = "time,temperature_c\n".to_owned();
    for hour in 0..20 {
        text += &format!("2026-09-01 {hour:02}:00,x\n");
    }
    let found = read("w.csv", &text);
    let errors = found.notes.iter().filter(|n| n.severity == Severity::Error);
    assert_eq!(errors.count(), 5);
    let last = told(&text).pop().expect("a note");
    assert_eq!(
        last,
        "w.csv:21:18 advice: 15 more cells of temperature_c are like the ones above; this is the last"
    );
}

#[test]
fn bytes_of_before_utf8_are_text_too() {
    assert_eq!(decode(b"LOCATION,S\xe3o"), "LOCATION,São");
    assert_eq!(decode("LOCATION,São".as_bytes()), "LOCATION,São");
}

#[test]
fn a_walk_through_the_hours_stops_at_a_gap_and_crosses_the_turn_of_a_typical_year() {
    let year = "month,day,hour,rain_mm,temperature_c\n1,1,1,1,1\n1,1,2,2,1\n12,31,24,3,1\n";
    let weather = read("w.csv", year).value.expect("weather");
    let rain = |at, way| -> Vec<f64> { weather.walk(at, way).filter_map(|h| h.rain).collect() };
    assert_eq!(rain(0, Way::Back), [3.0]);
    assert_eq!(rain(2, Way::On), [1.0, 2.0]);
    assert_eq!(rain(1, Way::On), [0.0; 0]);
    assert_eq!(weather.walk(9, Way::On).count(), 0);
}

#[test]
fn a_year_without_a_drop_is_doubted() {
    let year = |rain: &dyn Fn(usize) -> &'static str| {
        let mut text =
            "month,day,hour,temperature_c,humidity_percent,wind_m_s,rain_mm\n".to_owned();
        for (month, days) in [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
            .into_iter()
            .enumerate()
        {
            for (day, hour) in (1..=days).flat_map(|day| (1..=24).map(move |hour| (day, hour))) {
                text += &format!("{},{day},{hour},9,50,1,{}\n", month + 1, rain(day * hour));
            }
        }
        told(&text)
    };
    let doubt = "w.csv:1:1 warning: no hour of this year has rain: it may not have been measured / mend: compare \
                 with what people know of the place; if it does rain there, take the rain column as unknown: \
                 leave its cells empty";
    assert_eq!(year(&|_| "0"), [doubt]);
    assert!(year(&|at| if at == 744 { "0.1" } else { "0" }).is_empty());
    let unknown = year(&|_| "");
    assert!(
        unknown.len() == 1 && unknown[0].contains("rain_mm is not known in 8760"),
        "{unknown:?}"
    );
}

proptest::proptest! {
    /// Whatever stands in a file, reading ends with weather or with an error that says why.
    #[test]
    fn no_text_is_too_odd(head in "(LOCATION,|1,x\nDate \\(MM/DD/YYYY\\),Time \\(HH:MM\\)|time,temperature_c|month,day,hour,aqi)?", body in "[\\PC\n,;\"0-9é.:/-]{0,200}") {
        let found = read("w.csv", &format!("{head}{body}"));
        proptest::prop_assert!(found.value.is_some() || note::any_error(&found.notes));
        for note in &found.notes {
            let at = note.at.as_ref().expect("a place");
            proptest::prop_assert!(at.end <= head.len() + body.len());
        }
    }
}
