//! A note beside the line that it points at.
//!
//! ```text
//! survey.toml:41:7 error: C to F is 4.20 m here and 4.62 m on line 18
//!   41 | C-F = "4.20 m"
//!      |       ^^^^^^^^
//!   expected: readings within 0.02 m of each other
//!   mend: measure C to F again and keep the reading you trust
//! ```

use std::collections::BTreeMap;
use std::fmt::Write;
use std::sync::Arc;

use note::{Message, Note, Place, Severity};
use unit::Units;

use crate::catalogue::Catalogue;

/// The files that were read, by the name that places carry.
pub type Sheaf = BTreeMap<Arc<str>, Arc<str>>;

/// The terminal's colours; without them nothing is lost, since words say it too.
struct Ink {
    severity: &'static str,
    frame: &'static str,
    off: &'static str,
}

impl Ink {
    fn of(severity: Severity, colour: bool) -> Ink {
        if !colour {
            return Ink {
                severity: "",
                frame: "",
                off: "",
            };
        }
        Ink {
            severity: match severity {
                Severity::Error => "\x1b[1;31m",
                Severity::Warning => "\x1b[1;33m",
                Severity::Advice => "\x1b[1;36m",
            },
            frame: "\x1b[34m",
            off: "\x1b[0m",
        }
    }
}

/// A note as text, with a line feed at its end; `colour` for a terminal that shows it.
pub fn render(
    note: &Note,
    files: &Sheaf,
    catalogue: &Catalogue,
    units: Units,
    colour: bool,
) -> String {
    let mut out = String::new();
    let ink = Ink::of(note.severity, colour);
    let severity = catalogue.word(match note.severity {
        Severity::Error => "severity-error",
        Severity::Warning => "severity-warning",
        Severity::Advice => "severity-advice",
    });
    if let Some(at) = &note.at {
        match spot(at, files) {
            Some(spot) => _ = write!(out, "{}:{}:{} ", at.file, spot.line, spot.column),
            None => _ = write!(out, "{} ", at.file),
        }
    }
    let what = catalogue.say(&note.what, units);
    _ = writeln!(out, "{}{severity}{}: {what}", ink.severity, ink.off);
    for (nth, at) in note.at.iter().chain(&note.also).enumerate() {
        // A second file is named before its line.
        if nth > 0 && note.at.as_ref().is_some_and(|first| first.file != at.file) {
            _ = writeln!(out, "  {}:", at.file);
        }
        point(&mut out, at, files, &ink);
    }
    for (label, message) in [
        ("label-expected", &note.expected),
        ("label-mend", &note.mend),
    ] {
        line(&mut out, label, message.as_ref(), catalogue, units);
    }
    out
}

fn line(
    out: &mut String,
    label: &'static str,
    message: Option<&Message>,
    catalogue: &Catalogue,
    units: Units,
) {
    if let Some(message) = message {
        _ = writeln!(
            out,
            "  {}: {}",
            catalogue.word(label),
            catalogue.say(message, units)
        );
    }
}

struct Spot<'a> {
    /// From 1.
    line: usize,
    /// From 1, in characters.
    column: usize,
    text: &'a str,
    /// Characters of the line before and under the finger.
    before: usize,
    under: usize,
}

fn spot<'a>(at: &Place, files: &'a Sheaf) -> Option<Spot<'a>> {
    let text: &'a str = files.get(&at.file)?;
    if text.is_empty() {
        return None;
    }
    let start = floor(text, at.start);
    let end = floor(text, at.end).max(start);
    let first = text[..start].rfind('\n').map_or(0, |feed| feed + 1);
    let last = text[start..]
        .find('\n')
        .map_or(text.len(), |feed| start + feed);
    let before = text[first..start].chars().count();
    Some(Spot {
        line: text[..start].matches('\n').count() + 1,
        column: before + 1,
        text: text[first..last].trim_end_matches('\r'),
        before,
        under: text[start..end.min(last)]
            .trim_end_matches('\r')
            .chars()
            .count(),
    })
}

/// The nearest start of a character at or before `at`.
fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// Past this many characters a line is cut, so that the finger stays in sight.
const WIDTH: usize = 96;

fn point(out: &mut String, at: &Place, files: &Sheaf, ink: &Ink) {
    let Some(spot) = spot(at, files) else { return };
    let skip = if spot.before + spot.under > WIDTH {
        spot.before.saturating_sub(WIDTH / 2)
    } else {
        0
    };
    let shown: String = spot.text.chars().skip(skip).take(WIDTH).collect();
    let shown = shown.replace('\t', " ");
    let number = spot.line.to_string();
    let gutter = " ".repeat(number.len());
    let Ink {
        severity,
        frame,
        off,
    } = ink;
    _ = writeln!(out, "  {frame}{number} |{off} {}", shown.trim_end());
    let reach = WIDTH.saturating_sub(spot.before - skip).max(1);
    let finger = "^".repeat(spot.under.clamp(1, reach));
    _ = writeln!(
        out,
        "  {frame}{gutter} |{off} {}{severity}{finger}{off}",
        " ".repeat(spot.before - skip)
    );
}

#[cfg(test)]
mod tests {
    use note::msg;

    use super::*;
    use crate::Language;

    #[test]
    fn a_note_points_at_its_line() {
        let file: Arc<str> = "tape.csv".into();
        let text = "from,to,reading\r\nA,B,ocho\r\n";
        let files = Sheaf::from([(Arc::clone(&file), Arc::from(text))]);
        let note = Note::error(Place::new(&file, 21, 25), msg!("nothing-says-this"));
        let shown = render(
            &note,
            &files,
            Catalogue::of(Language::En),
            Units::Metres,
            false,
        );
        assert_eq!(
            shown,
            "tape.csv:2:5 error: nothing-says-this\n  2 | A,B,ocho\n    |     ^^^^\n"
        );
    }

    #[test]
    fn any_place_of_any_text_can_be_pointed_at() {
        let file: Arc<str> = "a".into();
        let catalogue = Catalogue::of(Language::Es);
        for text in ["", "\n", "é", "ab\ncdé\n", &"x".repeat(400)] {
            let files = Sheaf::from([(Arc::clone(&file), Arc::from(text))]);
            for start in 0..text.len() + 3 {
                for end in [start, start + 1, start + 500] {
                    let note = Note::warning(Place::new(&file, start, end), msg!("k"));
                    assert!(!render(&note, &files, catalogue, Units::Feet, true).is_empty());
                }
            }
        }
    }
}
