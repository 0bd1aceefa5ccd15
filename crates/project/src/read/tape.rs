//! `tape.csv`: one reading a row, as called out in the yard.

use ledger::Ledger;
use note::{Fact, Note, Place, msg};
use unit::Units;

use crate::read::cells::{self, Row};
use crate::read::figures as fig;
use crate::read::files::Source;
use crate::read::table::{At, no_length};

/// One row.
#[derive(Clone, Debug, PartialEq)]
pub struct Taped {
    /// One end.
    pub from: At<String>,
    /// The other.
    pub to: At<String>,
    /// Metres.
    pub reading: At<f64>,
    /// Its own standard deviation, metres.
    pub sigma: Option<f64>,
    /// In the words of whoever wrote it down.
    pub note: Option<String>,
    /// The row.
    pub at: Place,
}

/// The file.
#[derive(Clone, Debug, Default)]
pub struct Tape {
    /// Rows that could be read.
    pub rows: Vec<Taped>,
    /// Rows that name their points and have no reading yet.
    pub blank: Vec<[At<String>; 2]>,
    /// Every point that a row names, whether the row could be read or not.
    pub named: Vec<At<String>>,
    /// Whether the table could be read.
    pub sound: bool,
}

/// What `tape.csv` must have, and what it may have.
pub const COLUMNS: (&[&str], &[&str]) = (&["from", "to", "reading"], &["sigma", "note"]);

/// Reads `tape.csv`, or readings of its form with other columns that may be there; rows that
/// cannot be read are told and left out. Rows without a reading are still to be taped: all of
/// them are one warning.
pub fn tape(
    source: &Source,
    may: &[&'static str],
    units: Units,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> Tape {
    let Some(cells) = cells::read(source, COLUMNS.0, may, notes) else {
        return Tape::default();
    };
    let longest = ledger.number(fig::LONGEST);
    if cells.rows.is_empty() {
        notes.push(
            Note::warning(source.whole(), msg!("tape-no-rows", file = &source.name))
                .mend(msg!("tape-print-sheet")),
        );
    }
    let mut tape = Tape {
        sound: true,
        ..Tape::default()
    };
    for row in &cells.rows {
        let before = notes.len();
        tape.named.extend(
            ["from", "to"]
                .into_iter()
                .filter_map(|end| row.get(end).cloned()),
        );
        let from = row.need("from", notes).and_then(|cell| name(cell, notes));
        let to = row.need("to", notes).and_then(|cell| name(cell, notes));
        let reading = row.get("reading").and_then(|cell| {
            split_decimal(row, cell, cells.mark, notes)?;
            above_zero(cell, "reading", units, notes)
        });
        let sigma = row
            .get("sigma")
            .and_then(|cell| above_zero(cell, "sigma", units, notes));
        if let (Some(from), Some(to)) = (&from, &to)
            && from.value == to.value
        {
            notes.push(Note::error(
                row.at.clone(),
                msg!("tape-same-ends", point = &from.value),
            ));
        }
        if notes.len() > before {
            continue;
        }
        if let (Some(from), Some(to)) = (from, to) {
            let Some(reading) = reading else {
                tape.blank.push([from, to]);
                continue;
            };
            tape.rows.push(Taped {
                from,
                to,
                reading,
                sigma: sigma.map(|sigma| sigma.value),
                note: row.get("note").map(|note| note.value.clone()),
                at: row.at.clone(),
            });
        }
    }
    let long: Vec<&Taped> = tape
        .rows
        .iter()
        .filter(|row| row.reading.value > longest)
        .collect();
    if let Some(first) = long.first() {
        let what = msg!(
            "tape-long",
            count = long.len(),
            reading = Fact::Length(first.reading.value)
        );
        notes.push(Note::warning(first.reading.at.clone(), what).mend(msg!("tape-long-mend")));
    }
    if let Some([from, to]) = tape.blank.first() {
        let at = Place::new(&from.at.file, from.at.start, to.at.end.max(from.at.end));
        notes.push(
            Note::warning(at, msg!("tape-blank", count = tape.blank.len())).mend(msg!("tape-fill")),
        );
    }
    tape
}

/// `23,997` where commas part the cells falls apart into 23 and 997. A cell of bare digits
/// after a reading of bare digits is taken for that.
fn split_decimal(row: &Row, reading: &At<String>, mark: char, notes: &mut Vec<Note>) -> Option<()> {
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let next = row
        .after(reading)
        .filter(|next| digits(&next.value) && digits(&reading.value) && mark == ',');
    let Some(next) = next else { return Some(()) };
    let whole = Place::new(&reading.at.file, reading.at.start, next.at.end);
    let what = msg!(
        "row-decimal-split",
        whole = &reading.value,
        part = &next.value
    );
    notes.push(Note::error(whole, what).mend(msg!("row-decimal-comma")));
    None
}

/// A name as FORMATS says: a letter, then letters, digits, `_` and `-`.
pub fn is_name(text: &str) -> bool {
    let mut marks = text.bytes();
    marks
        .next()
        .is_some_and(|first| first.is_ascii_alphabetic())
        && marks.all(|mark| mark.is_ascii_alphanumeric() || mark == b'_' || mark == b'-')
}

/// The nearest name that a file can use.
fn as_name(text: &str) -> String {
    let plain = |mark: char| {
        if mark.is_ascii_alphanumeric() || mark == '_' {
            mark
        } else {
            '-'
        }
    };
    let name: String = text.trim().chars().map(plain).collect();
    if name.starts_with(|first: char| first.is_ascii_alphabetic()) {
        name
    } else {
        format!("P{name}")
    }
}

/// The name in a cell; a text that is no name is told.
pub fn name(cell: &At<String>, notes: &mut Vec<Note>) -> Option<At<String>> {
    if is_name(&cell.value) {
        return Some(cell.clone());
    }
    notes.push(
        Note::error(cell.at.clone(), msg!("name-odd", name = &cell.value))
            .expected(msg!("want-name"))
            .mend(msg!("name-as", name = as_name(&cell.value))),
    );
    None
}

/// The length in a cell, above zero.
pub fn above_zero(
    cell: &At<String>,
    column: &str,
    units: Units,
    notes: &mut Vec<Note>,
) -> Option<At<f64>> {
    match unit::parse::length(&cell.value, units) {
        Ok(value) if value > 0.0 => Some(At {
            value,
            at: cell.at.clone(),
        }),
        Ok(_) => {
            notes.push(
                Note::error(cell.at.clone(), msg!("length-not-positive", key = column))
                    .expected(msg!("want-positive-length"))
                    .mend(msg!("cell-leave-empty")),
            );
            None
        }
        Err(fault) => {
            notes.push(no_length(&fault, cell.at.clone()));
            None
        }
    }
}
