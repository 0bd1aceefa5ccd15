//! A calendar file of windows (RFC 5545), for any calendar program.
//!
//! Times are the yard's wall clock ("floating"): who opens the file elsewhere sees the hour
//! that is meant in the yard. Written here: a library was tried and folded the last piece
//! of a line at 76 octets, and it brings a clock and random names into a room that must have
//! neither. The files are read back by another library in `outside/`.

use jiff::civil::{Date, DateTime};

/// One entry; its words are the caller's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// From.
    pub start: DateTime,
    /// To.
    pub end: DateTime,
    /// A line.
    pub summary: String,
    /// More.
    pub description: String,
}

/// The file: CRLF line ends, lines folded at 75 octets, text escaped. `date` is the
/// project's, and stands as the time of making; the same `project` and start give an entry
/// the same identity, so that a new file replaces an old one's entries.
pub fn calendar(project: &str, date: Date, entries: &[Entry]) -> String {
    let mut file = String::new();
    for fixed in [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Chalkyard//days//EN",
        "CALSCALE:GREGORIAN",
        "METHOD:PUBLISH",
    ] {
        line(&mut file, fixed);
    }
    let stamp = written(date.at(0, 0, 0, 0));
    for (at, entry) in entries.iter().enumerate() {
        let start = written(entry.start);
        let before = entries[..at]
            .iter()
            .filter(|other| other.start == entry.start)
            .count();
        let name = slug(project);
        for property in [
            "BEGIN:VEVENT".to_owned(),
            format!("UID:{start}-{before}-{name}@chalkyard.invalid"),
            format!("DTSTAMP:{stamp}Z"),
            format!("DTSTART:{start}"),
            format!("DTEND:{}", written(entry.end)),
            format!("SUMMARY:{}", escaped(&entry.summary)),
            format!("DESCRIPTION:{}", escaped(&entry.description)),
            "END:VEVENT".to_owned(),
        ] {
            line(&mut file, &property);
        }
    }
    line(&mut file, "END:VCALENDAR");
    file
}

/// Octets of a line without its end (RFC 5545, 3.1).
const LONGEST: usize = 75;

/// Adds a line, folded between characters where it is too long.
fn line(file: &mut String, content: &str) {
    let mut octets = 0;
    for c in content.chars() {
        if octets + c.len_utf8() > LONGEST {
            file.push_str("\r\n ");
            octets = 1;
        }
        file.push(c);
        octets += c.len_utf8();
    }
    file.push_str("\r\n");
}

/// As RFC 5545 writes a time.
fn written(time: DateTime) -> String {
    format!(
        "{:04}{:02}{:02}T{:02}{:02}{:02}",
        time.year(),
        time.month(),
        time.day(),
        time.hour(),
        time.minute(),
        time.second()
    )
}

/// Letters, digits and hyphens.
fn slug(name: &str) -> String {
    name.chars()
        .map(|c| {
            if c.is_ascii_alphanumeric() {
                c.to_ascii_lowercase()
            } else {
                '-'
            }
        })
        .collect()
}

/// A text as RFC 5545, 3.3.11, writes it: without the control characters that it must not
/// hold, line ends as one kind.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.replace("\r\n", "\n").chars() {
        match c {
            '\n' => out.push_str("\\n"),
            '\\' | ';' | ',' => out.extend(['\\', c]),
            '\t' => out.push(c),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}
