//! What the plan has to tell.

use ledger::Ledger;
use note::Note;

use crate::plan::Change;
use crate::programme::Programme;
use crate::schedule::Plan;

pub(crate) fn notes(_: &Programme, _: &Plan, _: &Ledger) -> Vec<Note> {
    Vec::new()
}
pub(crate) fn changed(_: &Programme, _: &Plan, _: &Plan, _: &[Change]) -> Vec<Note> {
    Vec::new()
}
