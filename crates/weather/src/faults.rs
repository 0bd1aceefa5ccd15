//! What is told of a file: each slip at its place, and of many alike the first few and a count.

use std::collections::BTreeMap;
use std::sync::Arc;

use note::{Fact, Note, Place, msg};

use crate::cells::Cell;
use crate::hour::Hour;
use crate::quantity::Column;

/// So many slips of one kind in one column are told one by one; a broken column of a year
/// would else be 8760 notes from one slip.
const ALIKE: u64 = 5;

/// The slips of one file.
pub(crate) struct Faults {
    file: Arc<str>,
    notes: Vec<Note>,
    alike: BTreeMap<(&'static str, &'static str), (u64, Place)>,
}

impl Faults {
    pub(crate) fn new(file: &str) -> Faults {
        Faults {
            file: file.into(),
            notes: Vec::new(),
            alike: BTreeMap::new(),
        }
    }

    pub(crate) fn name(&self) -> &str {
        &self.file
    }

    pub(crate) fn whole(&self) -> Place {
        Place::whole(&self.file)
    }

    pub(crate) fn at(&self, cell: &Cell) -> Place {
        let bytes = cell.bytes();
        Place::new(&self.file, bytes.start, bytes.end)
    }

    pub(crate) fn line(&self, start: usize, line: &str) -> Place {
        Place::new(&self.file, start, start + line.len())
    }

    /// Tells a slip that stands alone.
    pub(crate) fn tell(&mut self, note: Note) {
        self.notes.push(note);
    }

    /// Tells a slip of a kind that a whole column may have.
    pub(crate) fn tell_like(&mut self, column: &'static str, note: Note) {
        let place = note.at.clone().unwrap_or_else(|| self.whole());
        let (count, last) = self
            .alike
            .entry((note.what.key, column))
            .or_insert((0, place.clone()));
        *count += 1;
        *last = place;
        if *count <= ALIKE {
            self.notes.push(note);
        }
    }

    /// Reads a cell into an hour; what the file calls missing, and what cannot be, is
    /// unknown.
    pub(crate) fn fill(&mut self, hour: &mut Hour, column: &Column, cell: &Cell) {
        let value = self.number(column, cell);
        column.quantity.set(hour, value);
    }

    fn number(&mut self, column: &Column, cell: &Cell) -> Option<f64> {
        if is_nothing(cell.text) {
            return None;
        }
        // A comma in a cell can only be a decimal one: marks have been split at.
        let value = cell.text.replacen(',', ".", 1).parse().ok();
        let value = value.filter(|v: &f64| v.is_finite());
        let Some(value) = value else {
            let note = Note::error(
                self.at(cell),
                msg!(
                    "weather-number",
                    column = column.name,
                    found = cell.text.to_owned()
                ),
            )
            .mend(msg!("weather-number-mend"));
            self.tell_like(column.name, note);
            return None;
        };
        if column.is_missing(value) {
            return None;
        }
        let (least, most) = column.quantity.believed();
        let value = value * column.times + column.plus;
        if (least..=most).contains(&value) {
            // A night's sun of -0 is 0.
            return Some(value + 0.0);
        }
        let note = Note::warning(
            self.at(cell),
            msg!(
                "weather-impossible",
                column = column.name,
                found = cell.text.to_owned()
            ),
        )
        .expected(msg!(
            "want-between",
            low = Fact::Number((least - column.plus) / column.times, 0),
            high = Fact::Number((most - column.plus) / column.times, 0)
        ))
        .mend(msg!("weather-impossible-mend"));
        self.tell_like(column.name, note);
        None
    }

    /// All that was told, each kind that was cut short with its count, in the order of the file.
    pub(crate) fn finish(mut self) -> Vec<Note> {
        for ((_, column), (count, last)) in &self.alike {
            if *count > ALIKE {
                self.notes.push(Note::advice(
                    last.clone(),
                    msg!("weather-alike", column = *column, count = count - ALIKE),
                ));
            }
        }
        self.notes.sort_by(|a, b| a.at.cmp(&b.at));
        self.notes
    }
}

/// How people and programs write that there is no value.
fn is_nothing(text: &str) -> bool {
    ["", "-", "na", "n/a", "nan", "null", "none"]
        .iter()
        .any(|nothing| text.eq_ignore_ascii_case(nothing))
}
