//! `tape.csv`: one reading a row, as called out in the yard.

use note::{Note, Place, msg};
use unit::Units;

use crate::read::cells;
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

/// Reads the rows; those that cannot be read are told and left out.
pub fn tape(source: &Source, units: Units, notes: &mut Vec<Note>) -> Vec<Taped> {
    let columns = (&["from", "to", "reading"], &["sigma", "note"]);
    let Some(cells) = cells::read(source, columns.0, columns.1, notes) else { return Vec::new() };
    if cells.rows.is_empty() {
        notes.push(
            Note::warning(source.whole(), msg!("tape-no-rows", file = &source.name))
                .mend(msg!("tape-print-sheet")),
        );
    }
    let mut taped = Vec::new();
    for row in &cells.rows {
        let before = notes.len();
        let from = row.need("from", notes).and_then(|cell| name(cell, notes));
        let to = row.need("to", notes).and_then(|cell| name(cell, notes));
        let reading = row.need("reading", notes).and_then(|cell| above_zero(cell, units, notes));
        let sigma = row.get("sigma").and_then(|cell| above_zero(cell, units, notes));
        if let (Some(from), Some(to)) = (&from, &to)
            && from.value == to.value
        {
            notes.push(Note::error(row.at.clone(), msg!("tape-same-ends", point = &from.value)));
        }
        if notes.len() > before {
            continue;
        }
        if let (Some(from), Some(to), Some(reading)) = (from, to, reading) {
            taped.push(Taped {
                from,
                to,
                reading,
                sigma: sigma.map(|sigma| sigma.value),
                note: row.get("note").map(|note| note.value.clone()),
                at: row.at.clone(),
            });
        }
    }
    taped
}

/// A name as FORMATS says: a letter, then letters, digits, `_` and `-`.
pub fn is_name(text: &str) -> bool {
    let mut marks = text.bytes();
    marks.next().is_some_and(|first| first.is_ascii_alphabetic())
        && marks.all(|mark| mark.is_ascii_alphanumeric() || mark == b'_' || mark == b'-')
}

/// The name in a cell; a text that is no name is told.
pub fn name(cell: &At<String>, notes: &mut Vec<Note>) -> Option<At<String>> {
    if is_name(&cell.value) {
        return Some(cell.clone());
    }
    notes.push(
        Note::error(cell.at.clone(), msg!("name-odd", name = &cell.value)).expected(msg!("want-name")),
    );
    None
}

/// The length in a cell, above zero.
pub fn above_zero(cell: &At<String>, units: Units, notes: &mut Vec<Note>) -> Option<At<f64>> {
    match unit::parse::length(&cell.value, units) {
        Ok(value) if value > 0.0 => Some(At { value, at: cell.at.clone() }),
        Ok(_) => {
            notes.push(
                Note::error(cell.at.clone(), msg!("tape-not-positive"))
                    .expected(msg!("want-positive-length"))
                    .mend(msg!("tape-leave-out")),
            );
            None
        }
        Err(fault) => {
            notes.push(no_length(&fault, cell.at.clone()));
            None
        }
    }
}
