//! Taking the folder in.

pub mod about;
mod cells;
mod figures;
pub mod files;
mod network;
pub mod surveyed;
mod table;
mod tape;

use std::path::Path;
use std::sync::Arc;

use ledger::Ledger;
use note::{Note, Noted, Place, msg};
use survey::network::Network;
use words::Sheaf;

use crate::read::about::About;
use crate::read::files::Source;
use crate::read::surveyed::Surveyed;

pub use table::At;

/// A project folder, read.
#[derive(Debug)]
pub struct Project {
    /// What `project.toml` says.
    pub about: About,
    /// The ledger with the project's own figures.
    pub ledger: Ledger,
    /// The readings.
    pub network: Option<Network>,
    /// What stands where, names not yet resolved.
    pub surveyed: Surveyed,
    /// The files that were read, for notes that point into them.
    pub files: Sheaf,
}

/// Reads a project folder. The value is there whenever `project.toml` is, with all that
/// could be read; the rim goes on only where no note is an error.
pub fn read(dir: &Path) -> Noted<Option<Project>> {
    let mut notes = Vec::new();
    let mut ledger = match Ledger::shipped() {
        Ok(ledger) => ledger,
        Err(why) => {
            notes.push(Note::error(None, msg!("ledger-broken", why = why)));
            return Noted { value: None, notes };
        }
    };
    let mut files = Sheaf::new();
    let mut load = |name: &str, notes: &mut Vec<Note>| -> Option<Source> {
        let source = files::load(dir, name, notes)?;
        files.insert(Arc::clone(&source.name), Arc::clone(&source.text));
        Some(source)
    };
    let whole = |name: &str| Place::whole(&Arc::from(name));
    let Some(about) = load("project.toml", &mut notes) else {
        if notes.is_empty() {
            notes.push(
                Note::error(whole("project.toml"), msg!("file-missing", file = "project.toml"))
                    .mend(msg!("folder-new")),
            );
        }
        return Noted { value: None, notes };
    };
    let about = about::about(&about, &mut ledger, &mut notes);
    let taped = match load("tape.csv", &mut notes) {
        Some(source) => tape::tape(&source, about.units, &mut notes),
        None => Vec::new(),
    };
    let surveyed = match load("survey.toml", &mut notes) {
        Some(source) => surveyed::surveyed(&source, about.units, &ledger, &mut notes),
        None => {
            if !note::any_error(&notes) {
                notes.push(
                    Note::error(whole("survey.toml"), msg!("file-missing", file = "survey.toml"))
                        .mend(msg!("file-survey")),
                );
            }
            surveyed::surveyed(&Source::new("survey.toml", "boundary = []"), about.units, &ledger, &mut Vec::new())
        }
    };
    let network = network::network(&taped, &surveyed, &ledger, &mut notes);
    sort(&mut notes);
    Noted { value: Some(Project { about, ledger, network, surveyed, files }), notes }
}

/// In the order in which a person meets the files; within a file by place.
pub fn sort(notes: &mut [Note]) {
    const ORDER: [&str; 8] = [
        "project.toml",
        "tape.csv",
        "survey.toml",
        "children.csv",
        "overrides.toml",
        "programme.toml",
        "layout.toml",
        "trials.csv",
    ];
    notes.sort_by_key(|note| {
        let at = note.at.as_ref();
        let file = at.map_or(ORDER.len() + 1, |at| {
            ORDER.iter().position(|name| *name == &*at.file).unwrap_or(ORDER.len())
        });
        (file, at.map(|at| (Arc::clone(&at.file), at.start)))
    });
}
