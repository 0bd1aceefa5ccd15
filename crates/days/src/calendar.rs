//! A calendar file of windows (RFC 5545), for any calendar program.
//!
//! Times are the yard's wall clock ("floating"): who opens the file elsewhere sees the hour
//! that is meant in the yard. The library would put in the clock's time and a random name
//! where an event lacks them; ours never lacks them, so the same windows give the same bytes.

use icalendar::{Calendar, Component, Event, Property};
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
    let mut calendar = Calendar::empty();
    for (key, value) in [
        ("VERSION", "2.0"),
        ("PRODID", "-//Chalkyard//days//EN"),
        ("CALSCALE", "GREGORIAN"),
        ("METHOD", "PUBLISH"),
    ] {
        calendar.append_property(Property::new(key, value));
    }
    let stamp = written(date.at(0, 0, 0, 0));
    for (at, entry) in entries.iter().enumerate() {
        let start = written(entry.start);
        let before = entries[..at]
            .iter()
            .filter(|other| other.start == entry.start)
            .count();
        let mut event = Event::new();
        event
            .uid(&format!(
                "{start}-{before}-{}@chalkyard.invalid",
                slug(project)
            ))
            .add_property("DTSTAMP", format!("{stamp}Z"))
            .add_property("DTSTART", start)
            .add_property("DTEND", written(entry.end))
            .summary(&plain(&entry.summary))
            .description(&plain(&entry.description));
        calendar.push(event.done());
    }
    format!("{calendar}")
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

/// Without the control characters that a text must not hold; line ends as one kind.
fn plain(text: &str) -> String {
    text.replace("\r\n", "\n")
        .chars()
        .filter(|c| !c.is_control() || matches!(c, '\n' | '\t'))
        .collect()
}
