//! Taking the folder in.

pub mod about;
pub mod building;
mod cells;
mod checks;
mod class;
mod figures;
pub mod files;
#[cfg(test)]
mod format;
pub mod layout;
pub mod lost;
pub(crate) mod names;
mod network;
mod overrides;
pub mod package;
pub mod programme;
pub mod seen;
pub mod skies;
pub mod surveyed;
mod syntax;
mod table;
mod tape;
pub mod trials;

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use children::{Entry, Override};
use drawn::Drawn;
use games::Game;
use ledger::Ledger;
use marking::{Family, Ground};
use note::{Note, Noted, Place, msg};
use survey::network::Network;
use words::Sheaf;

use crate::read::about::About;
use crate::read::class::Class;
use crate::read::files::Source;
use crate::read::layout::{Layout, Makers, Marking};
use crate::read::lost::Lost;
use crate::read::programme::Programme;
use crate::read::seen::Seen;
use crate::read::skies::Sky;
use crate::read::surveyed::Surveyed;
use crate::read::trials::Trial;

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
    /// The children, by code. Empty where there is no `children.csv`: then
    /// [`Programme::ages`] counts.
    pub children: Vec<Entry>,
    /// What people set for a child.
    pub overrides: Vec<Override>,
    /// What the centre means to do.
    pub programme: Programme,
    /// The user's own figures by name: those that can be used.
    pub figures: BTreeMap<String, Drawn>,
    /// Where markings lie, as the planner or people left them.
    pub layout: Vec<Marking>,
    /// Tries that were seen.
    pub trials: Vec<Trial>,
    /// What check tapes read at the set-out.
    pub checks: Vec<setout::Reading>,
    /// Looks at skills, and counted contacts.
    pub seen: Vec<Seen>,
    /// Sessions that fell out, and markings that cannot be used.
    pub lost: Vec<Lost>,
    /// Games of the user's own.
    pub games: Vec<Game>,
    /// Hourly weather, by file.
    pub skies: Vec<Sky>,
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
                Note::error(
                    whole("project.toml"),
                    msg!("file-missing", file = "project.toml"),
                )
                .mend(msg!("folder-new")),
            );
        }
        return Noted { value: None, notes };
    };
    let about = about::about(&about, &mut ledger, &mut notes);
    let before = notes.len();
    let taped = match load("tape.csv", &mut notes) {
        Some(source) => tape::tape(&source, tape::COLUMNS.1, about.units, &ledger, &mut notes),
        // A file that is not there holds no points; one that cannot be read may hold any.
        None => tape::Tape {
            sound: notes.len() == before,
            ..tape::Tape::default()
        },
    };
    let surveyed = match load("survey.toml", &mut notes) {
        Some(source) => surveyed::surveyed(&source, about.units, &ledger, &mut notes),
        None => {
            if !note::any_error(&notes) {
                notes.push(
                    Note::error(
                        whole("survey.toml"),
                        msg!("file-missing", file = "survey.toml"),
                    )
                    .mend(msg!("file-survey")),
                );
            }
            let nothing = Source::new("survey.toml", "");
            let surveyed = surveyed::surveyed(&nothing, about.units, &ledger, &mut Vec::new());
            Surveyed {
                broken: true,
                ..surveyed
            }
        }
    };
    names::check(&taped, &surveyed, &mut notes);
    let network = network::network(&taped, &surveyed, &ledger, &mut notes);
    let drawings = figures_of(dir, &mut load, &mut notes);
    let families: Vec<String> = drawings.keys().cloned().collect();
    let class = load("children.csv", &mut notes)
        .map(|source| class::class(&source, about.units, &mut notes));
    let before = notes.len();
    let programme = match load("programme.toml", &mut notes) {
        Some(source) => programme::programme(&source, about.units, &ledger, &families, &mut notes),
        None => Programme::usual(about.units, &ledger),
    };
    let counted = !note::any_error(&notes[before..]);
    let (children, codes) = match class {
        Some(Class { entries, codes }) if codes.as_ref().is_none_or(|codes| !codes.is_empty()) => {
            (entries, codes)
        }
        _ => {
            let codes = programme
                .ages
                .iter()
                .map(|(age, _)| format!("age-{age}"))
                .collect();
            (Vec::new(), counted.then_some(codes))
        }
    };
    if let (false, Some(ages)) = (children.is_empty(), &programme.ages_at) {
        notes.push(Note::warning(ages.clone(), msg!("ages-and-class")).mend(msg!("ages-out")));
    }
    let codes = codes.as_deref();
    let overrides = load("overrides.toml", &mut notes).map_or_else(Vec::new, |source| {
        overrides::overrides(&source, about.units, codes, &mut notes)
    });
    let ground = programme.palette.unwrap_or(Ground::Asphalt);
    let figures: BTreeMap<String, Drawn> = drawings
        .iter()
        .filter_map(|(name, source)| {
            let read = drawn::read(name, &source.name, &source.text, ground, &ledger);
            Some((name.clone(), read.pour(&mut notes)?))
        })
        .collect();
    let makers = Makers {
        figures: &families,
        drawn: &figures,
        ground,
        ledger: &ledger,
    };
    let laid = match load("layout.toml", &mut notes) {
        Some(source) => layout::layout(&source, about.units, makers, &mut notes),
        None => Layout {
            markings: Vec::new(),
            names: Some(Vec::new()),
        },
    };
    let of = trials::Known {
        children: codes,
        named: laid.names.as_deref(),
        markings: &laid.markings,
        makers,
    };
    let trials = load("trials.csv", &mut notes).map_or_else(Vec::new, |source| {
        trials::trials(&source, about.units, of, &mut notes)
    });
    let checks = load("checks.csv", &mut notes).map_or_else(Vec::new, |source| {
        checks::checks(&source, about.units, &ledger, &mut notes)
    });
    let seen = load("seen.csv", &mut notes)
        .map_or_else(Vec::new, |source| seen::seen(&source, codes, &mut notes));
    let lost = load("lost.csv", &mut notes).map_or_else(Vec::new, |source| {
        lost::lost(&source, laid.names.as_deref(), &mut notes)
    });
    let layout = laid.markings;
    let games = own_games(dir, &mut load, &families, &mut notes);
    let skies = skies::skies(dir, &mut files, &mut notes);
    drop_echoes(&mut notes, &files);
    sort(&mut notes);
    let project = Project {
        about,
        ledger,
        network,
        surveyed,
        children,
        overrides,
        programme,
        figures,
        layout,
        trials,
        checks,
        seen,
        lost,
        skies,
        games,
        files,
    };
    Noted {
        value: Some(project),
        notes,
    }
}

impl Project {
    /// The family of a name: one of the house's, or a figure of the user's own.
    pub fn family(&self, name: &str) -> Option<&dyn Family> {
        match marking::family(name) {
            Some(family) => Some(family),
            None => self.figures.get(name).map(|own| own as &dyn Family),
        }
    }
}

/// The user's own figures, `figures/*.svg`, by the name before the dot. One that is called
/// like a family of the house is told: neither could be meant then.
fn figures_of(
    dir: &Path,
    load: &mut impl FnMut(&str, &mut Vec<Note>) -> Option<Source>,
    notes: &mut Vec<Note>,
) -> BTreeMap<String, Source> {
    let entries = std::fs::read_dir(dir.join("figures")).into_iter().flatten();
    let mut files: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .collect();
    files.sort();
    let mut figures = BTreeMap::new();
    for file in files {
        let Some(name) = file.strip_suffix(".svg") else {
            continue;
        };
        let path = format!("figures/{file}");
        let at = Place::whole(&Arc::from(path.as_str()));
        if !tape::is_name(name) {
            notes.push(
                Note::error(at, msg!("figure-name", name = name)).expected(msg!("want-name")),
            );
        } else if marking::family(name).is_some() {
            notes.push(
                Note::error(at, msg!("figure-like-family", name = name))
                    .mend(msg!("figure-rename")),
            );
        } else if let Some(source) = load(&path, notes) {
            figures.insert(name.to_owned(), source);
        }
    }
    figures
}

/// The user's own games, `games/*.toml`. One that is called like a game of the house is told.
fn own_games(
    dir: &Path,
    load: &mut impl FnMut(&str, &mut Vec<Note>) -> Option<Source>,
    figures: &[String],
    notes: &mut Vec<Note>,
) -> Vec<Game> {
    let entries = std::fs::read_dir(dir.join("games")).into_iter().flatten();
    let mut files: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|file| file.ends_with(".toml"))
        .collect();
    files.sort();
    files
        .into_iter()
        .filter_map(|file| {
            let source = load(&format!("games/{file}"), notes)?;
            let game = games::read(&source.text, &source.name, figures).pour(notes)?;
            if games::shipped().iter().any(|one| one.name == game.name) {
                let what = msg!("game-like-ours", name = &game.name);
                notes.push(Note::error(source.whole(), what).mend(msg!("figure-rename")));
                return None;
            }
            Some(game)
        })
        .collect()
}

/// What stands on a line whose syntax is at fault is no more than its echo; so is all that
/// follows a fault that spills over.
fn drop_echoes(notes: &mut Vec<Note>, files: &Sheaf) {
    let line = |at: &Place| {
        files
            .get(&at.file)
            .map(|text| (Arc::clone(&at.file), syntax::line_of(text, at.start)))
    };
    let of_syntax =
        |note: &Note| note.what.key.starts_with("toml-") || note.what.key.starts_with("quote-");
    let faulty: Vec<_> = notes
        .iter()
        .filter(|note| of_syntax(note))
        .filter_map(|note| line(note.at.as_ref()?))
        .collect();
    let spilt: Vec<_> = notes
        .iter()
        .filter(|note| syntax::SPILLS.contains(&note.what.key))
        .filter_map(|note| note.at.clone())
        .collect();
    notes.retain(|note| {
        let Some(at) = note.at.as_ref().filter(|_| !of_syntax(note)) else {
            return true;
        };
        let echo = line(at).is_some_and(|line| faulty.contains(&line));
        !echo
            && !spilt
                .iter()
                .any(|spill| spill.file == at.file && spill.start <= at.start)
    });
}

/// In the order in which a person meets the files; within a file by place.
pub fn sort(notes: &mut [Note]) {
    const ORDER: [&str; 11] = [
        "project.toml",
        "tape.csv",
        "survey.toml",
        "children.csv",
        "overrides.toml",
        "programme.toml",
        "layout.toml",
        "trials.csv",
        "seen.csv",
        "checks.csv",
        "lost.csv",
    ];
    notes.sort_by_key(|note| {
        let at = note.at.as_ref();
        let file = at.map_or(ORDER.len() + 1, |at| {
            ORDER
                .iter()
                .position(|name| *name == &*at.file)
                .unwrap_or(ORDER.len())
        });
        (file, at.map(|at| (Arc::clone(&at.file), at.start)))
    });
}
