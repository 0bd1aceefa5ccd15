//! The windows of a forecast as a calendar file.
//!
//! `cargo run --release -p days --example windows -- FILE HOURS COATS DATE [en|es]`

use std::process::ExitCode;

use days::{Entry, Job, Limits, calendar, cautions, windows};
use unit::Units;
use weather::{Air, decode, read};
use words::{Catalogue, Language};

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [file, hours, coats, date, rest @ ..] = words.as_slice() else {
        eprintln!("usage: windows FILE HOURS COATS DATE [en|es]");
        return ExitCode::from(2);
    };
    let (Ok(hours), Ok(coats), Ok(date), Ok(bytes)) = (
        hours.parse(),
        coats.parse(),
        date.parse(),
        std::fs::read(file),
    ) else {
        eprintln!("a file, two whole numbers and a date as 2026-09-01 are wanted");
        return ExitCode::from(2);
    };
    let Ok(ledger) = ledger::Ledger::shipped() else {
        return ExitCode::from(3);
    };
    let language = match rest.first().map(String::as_str) {
        Some("es") => Language::Es,
        _ => Language::En,
    };
    let catalogue = Catalogue::of(language);
    let Some(weather) = read(file, &decode(&bytes)).value else {
        return ExitCode::from(2);
    };
    let found = windows(
        &weather,
        &Limits::of(&ledger),
        &Job::of(hours, coats, &ledger),
        &Air::of(&ledger),
        &ledger,
    );
    for note in &found.notes {
        eprintln!("{}", catalogue.say(&note.what, Units::Metres));
    }
    let say: Vec<String> = cautions(&ledger)
        .iter()
        .map(|caution| catalogue.say(caution, Units::Metres))
        .collect();
    let entries: Vec<Entry> = found
        .value
        .iter()
        .filter(|window| window.verdict == days::Verdict::Fine)
        .map(|window| Entry {
            start: window.start,
            end: window.end,
            summary: format!(
                "{} h; {} ({})",
                window.needs,
                catalogue.word("days-fine"),
                window.hours
            ),
            description: say.join("\n"),
        })
        .collect();
    print!("{}", calendar("Tern Street", date, &entries));
    ExitCode::SUCCESS
}
