//! Windows of a forecast, drying, and the calendar file. Weather invented.
#![allow(clippy::expect_used, clippy::panic)] // helpers of tests are tests

mod common;

use common::{air, fair, job, ledger, limits};
use days::{Entry, Rule, Verdict, Window, calendar, drying, scale, windows};
use jiff::civil::{DateTime, date};
use note::Noted;
use proptest::prelude::*;
use weather::Weather;

fn found(weather: &Weather, hours: usize, coats: usize) -> Noted<Vec<Window>> {
    windows(weather, &limits(), &job(hours, coats), &air(), &ledger())
}

fn day(day: i8, hour: i8) -> DateTime {
    date(2026, 9, day).at(hour, 0, 0, 0)
}

#[test]
fn a_fair_forecast_has_a_window_each_day_it_can_vouch_for() {
    let found = found(&fair(4), 3, 2);
    let spans: Vec<_> = found
        .value
        .iter()
        .map(|w| (w.verdict, w.start, w.end))
        .collect();
    // Of the first day the rain before is not known; of the last, warmth after is not.
    assert_eq!(
        spans,
        [
            (Verdict::Fine, day(2, 8), day(2, 17)),
            (Verdict::Fine, day(3, 8), day(3, 17)),
            (Verdict::Fine, day(4, 8), day(4, 17)),
            (Verdict::Unknown, day(1, 8), day(1, 17)),
        ]
    );
    let [first, _, last, unsure] = &found.value[..] else {
        panic!("{:?}", found.value)
    };
    // Two coats of 3 h, and 2 h between them at 23 °C and 50 %.
    assert_eq!((first.hours, first.needs), (9, 8));
    assert_eq!(first.warm_after, Verdict::Fine);
    assert_eq!(last.warm_after, Verdict::Unknown);
    assert_eq!(unsure.unknown, [Rule::DryBefore]);
    // The night of 14 °C doubles the times: 8 h to walk, two days for children.
    assert_eq!((first.walk, first.children), (day(3, 1), day(4, 17)));
    assert!(first.drying_known && !last.drying_known);
    assert!(found.notes.is_empty(), "{:?}", found.notes);
}

#[test]
fn rain_shuts_a_window_before_and_after_it() {
    let mut weather = fair(4);
    // 13:00 on the second day: nothing for 4 h before it, nor for a day after it.
    weather.rows[36].rain = Some(0.2);
    let spans = |hours| -> Vec<_> {
        let found = found(&weather, hours, 1).value;
        let fine = found.iter().filter(|w| w.verdict == Verdict::Fine);
        fine.map(|w| (w.start, w.end)).collect()
    };
    // A day after 13:00 the ground is dry again from 14:00 on.
    assert_eq!(
        spans(1),
        [(day(3, 13), day(3, 17)), (day(4, 8), day(4, 17))]
    );
    assert_eq!(spans(5), [(day(4, 8), day(4, 17))]);
}

#[test]
fn where_there_is_no_window_the_rule_in_the_way_is_named() {
    let mut weather = fair(3);
    weather
        .rows
        .iter_mut()
        .for_each(|hour| hour.wind = Some(6.0));
    let found = found(&weather, 3, 1);
    assert!(found.value.is_empty());
    let said = format!("{:?}", found.notes);
    assert!(
        said.contains("days-no-window-why") && said.contains(Rule::Wind.word()),
        "{said}"
    );
    // All 9 working hours of three days.
    assert!(said.contains("Count(27)"), "{said}");
}

#[test]
fn ground_by_the_air_is_told() {
    let mut weather = fair(4);
    weather.rows.iter_mut().for_each(|hour| hour.surface = None);
    let found = found(&weather, 3, 1);
    assert_eq!(found.notes[0].what.key, "days-ground-by-air");
}

/// Common practice, no source: the scaling of the reference page 3.2.
#[test]
fn drying_follows_cold_damp_and_sun() {
    let ledger = ledger();
    for (warm, damp, sunny, wanted) in [
        (23.0, 50.0, false, Some(1.0)),
        (12.0, 50.0, false, Some(2.0)),
        (12.0, 80.0, false, Some(3.0)),
        (20.0, 75.0, true, Some(1.0)),
        (20.0, 75.1, true, Some(1.5)),
        (27.0, 50.0, true, Some(0.7)),
        (31.0, 50.0, true, Some(1.0)),
        (9.0, 50.0, false, None),
        (36.0, 50.0, true, None),
    ] {
        assert_eq!(
            scale(warm, damp, sunny, &ledger),
            wanted,
            "{warm} {damp} {sunny}"
        );
    }
    let quick = drying(0.5, &ledger);
    assert_eq!(
        (quick.touch, quick.recoat, quick.walk),
        ((0.25, 0.5), (0.5, 1.0), 2.0)
    );
    // Children wait as long as ever, and longer where it dries slowly.
    assert_eq!(
        (quick.children, quick.wheels, quick.cure),
        (24.0, (48.0, 72.0), (168.0, 336.0))
    );
    assert_eq!(drying(2.0, &ledger).children, 48.0);
}

fn entries() -> Vec<Entry> {
    let odd = "Pintura: 3 h; añil, rojo\\azul\r\ny otra línea\u{7} ";
    vec![
        Entry {
            start: day(2, 8),
            end: day(2, 17),
            summary: odd.repeat(3),
            description: "老虎".repeat(40),
        },
        Entry {
            start: day(2, 8),
            end: day(3, 0),
            summary: String::new(),
            description: String::new(),
        },
    ]
}

/// RFC 5545, 3.1: lines end with CRLF and hold at most 75 octets; 3.3.11: what is escaped;
/// 3.6.1 and 3.8.7.2: each event has its own UID and a DTSTAMP in universal time.
#[test]
fn a_calendar_file_keeps_the_standard() {
    let text = calendar("Tern Street", date(2026, 9, 1), &entries());
    assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
    assert!(text.ends_with("END:VCALENDAR\r\n"));
    let longest = text.split("\r\n").map(str::len).max();
    assert!(longest <= Some(75), "{longest:?}");
    let unfolded = text.replace("\r\n ", "");
    let has = |line: &str| {
        unfolded
            .split("\r\n")
            .filter(|found| *found == line)
            .count()
    };
    assert_eq!(has("DTSTAMP:20260901T000000Z"), 2);
    assert_eq!(
        (has("DTSTART:20260902T080000"), has("DTEND:20260903T000000")),
        (2, 1)
    );
    assert_eq!(
        has("UID:20260902T080000-0-tern-street@chalkyard.invalid"),
        1
    );
    assert_eq!(
        has("UID:20260902T080000-1-tern-street@chalkyard.invalid"),
        1
    );
    let odd = r"Pintura: 3 h\; añil\, rojo\\azul\ny otra línea ".repeat(3);
    assert_eq!(has(&format!("SUMMARY:{odd}")), 1, "{unfolded}");
    assert_eq!(has(&format!("DESCRIPTION:{}", "老虎".repeat(40))), 1);
}

#[test]
fn the_same_windows_give_the_same_bytes() {
    let once = calendar("Tern Street", date(2026, 9, 1), &entries());
    let again = calendar("Tern Street", date(2026, 9, 1), &entries());
    assert_eq!(once, again);
}

/// The text of a property, lines joined and escapes undone (RFC 5545, 3.1 and 3.3.11).
fn read_back(file: &str, key: &str) -> String {
    let joined = file.replace("\r\n ", "");
    let line = joined.split("\r\n").find_map(|line| line.strip_prefix(key));
    let mut escaped = line.expect("the property").chars();
    let mut text = String::new();
    while let Some(c) = escaped.next() {
        text.push(match c {
            '\\' => match escaped.next() {
                Some('n') => '\n',
                other => other.expect("something escaped"),
            },
            c => c,
        });
    }
    text
}

proptest! {
    /// Whatever a project and its words are, the lines are short and the words come back.
    #[test]
    fn any_words_come_back_from_the_file(project in "\\PC{0,90}", words in "[\\PC\n\r\t \\\\;,:ñ\u{3000}\u{7}]{0,300}") {
        let entry = Entry {
            start: day(2, 8),
            end: day(2, 9),
            summary: words.clone(),
            description: String::new(),
        };
        let file = calendar(&project, date(2026, 9, 1), &[entry]);
        prop_assert!(file.split("\r\n").all(|line| line.len() <= 75), "{file}");
        let kept = words.replace("\r\n", "\n");
        let kept: String = kept.chars().filter(|c| !c.is_control() || "\n\t".contains(*c)).collect();
        prop_assert_eq!(read_back(&file, "SUMMARY:"), kept);
    }
}
