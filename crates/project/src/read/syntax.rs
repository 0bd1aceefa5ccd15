//! Faults of TOML's syntax, in the words of people who do not know its name.

use note::{Message, Note, msg};
use toml::de::Error;

use crate::read::files::Source;

/// Lines with a fault past this many are told as a count.
const MOST: usize = 5;

/// Faults after which nothing of the file is sure.
pub const SPILLS: [&str; 3] = ["toml-quote", "toml-list", "toml-braces"];

/// Tells one fault a line. One that spills over, as a quote that never closes, is the last:
/// what the reader says after it is about the spill.
pub fn tell(source: &Source, faults: &[Error], notes: &mut Vec<Note>) {
    let mut places: Vec<(usize, usize, &str)> = faults
        .iter()
        .map(|fault| {
            let span = fault.span().unwrap_or(0..0);
            (span.start, span.end, fault.message())
        })
        .collect();
    places.sort_unstable();
    let mut lines = Vec::new();
    let mut more = 0_usize;
    for (start, end, says) in places {
        let line = line_of(&source.text, start);
        if lines.contains(&line) {
            continue;
        }
        lines.push(line);
        if lines.len() > MOST {
            more += 1;
            continue;
        }
        // What is missing is missed at the end of what stands before it.
        let start = if start == end {
            source.text[..start].trim_end().len()
        } else {
            start
        };
        let (what, mend) = fault(&source.text, start, end, says);
        let spills = SPILLS.contains(&what.key);
        notes.push(Note::error(source.place(start, end), what).mend(mend));
        if spills {
            break;
        }
    }
    if more > 0 {
        notes.push(Note::error(source.whole(), msg!("toml-more", count = more)));
    }
}

/// Whether a fault of this file's syntax is among the notes.
pub fn told(source: &Source, notes: &[Note]) -> bool {
    notes.iter().any(|note| {
        note.what.key.starts_with("toml-")
            && note.at.as_ref().is_some_and(|at| at.file == source.name)
    })
}

/// The number of the line, from 0.
pub fn line_of(text: &str, at: usize) -> usize {
    text.bytes().take(at).filter(|byte| *byte == b'\n').count()
}

/// What the reader's English sentence means: what is wrong, and how to mend it.
fn fault(text: &str, start: usize, end: usize, says: &str) -> (Message, Message) {
    let found = || text.get(start..end).unwrap_or_default().trim();
    let digit = |at: Option<u8>| at.is_some_and(|byte| byte.is_ascii_digit());
    let bytes = text.as_bytes();
    let comma = bytes.get(start) == Some(&b',')
        && start > 0
        && digit(bytes.get(start - 1).copied())
        && digit(bytes.get(start + 1).copied());
    if comma {
        return (msg!("toml-comma"), msg!("toml-comma-mend"));
    }
    let is = |word: &str| says.contains(word);
    if is("duplicate key") {
        (msg!("toml-twice", key = found()), msg!("toml-twice-mend"))
    } else if is("must be quoted") && found().is_empty() {
        (msg!("toml-no-value"), msg!("toml-no-value-mend"))
    } else if is("must be quoted") {
        (msg!("toml-bare", found = found()), msg!("toml-bare-mend"))
    } else if is("key with no value") {
        (msg!("toml-no-equals"), msg!("toml-no-equals-mend"))
    } else if is("quote") || is("basic string") || is("literal string") {
        (msg!("toml-quote"), msg!("toml-quote-mend"))
    } else if is("escape") {
        (msg!("toml-backslash"), msg!("toml-backslash-mend"))
    } else if is("unclosed table") || is("unclosed array table") {
        (msg!("toml-heading"), msg!("toml-heading-mend"))
    } else if is("array") {
        (msg!("toml-list"), msg!("toml-list-mend"))
    } else if is("inline table") {
        (msg!("toml-braces"), msg!("toml-braces-mend"))
    } else if is("date") || is("time") || is("month") || is("day") {
        (msg!("toml-date", found = found()), msg!("toml-date-mend"))
    } else if is("boolean") {
        (msg!("toml-truth", found = found()), msg!("toml-truth-mend"))
    } else if is("leading zero") {
        (msg!("toml-zero"), msg!("toml-zero-mend"))
    } else if is("expected newline") && bytes.get(start) == Some(&b'"') {
        (msg!("toml-inch"), msg!("toml-quote-mend"))
    } else if is("expected newline") {
        (msg!("toml-line"), msg!("toml-line-mend"))
    } else {
        (msg!("toml-syntax"), msg!("toml-look-here"))
    }
}
