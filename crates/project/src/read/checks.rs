//! `checks.csv`: what the check tapes read at the set-out.

use ledger::Ledger;
use note::Note;
use setout::Reading;
use unit::Units;

use crate::read::files::Source;
use crate::read::tape;

/// Reads the rows, in the form of `tape.csv`; those that cannot be read are told and left out.
pub fn checks(
    source: &Source,
    units: Units,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> Vec<Reading> {
    tape::tape(source, &["note"], units, ledger, notes)
        .rows
        .into_iter()
        .map(|row| Reading {
            from: row.from.value,
            to: row.to.value,
            value: row.reading.value,
            at: Some(row.at),
        })
        .collect()
}
