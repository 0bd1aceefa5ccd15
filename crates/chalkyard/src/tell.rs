//! What was noticed, told on the terminal or as JSON.

use std::io::{IsTerminal, Write};

use note::{Note, Severity};
use project::Project;
use serde_json::{Value, json};
use unit::Units;
use words::{Catalogue, Language, Sheaf, render};

use crate::command::Manner;

/// To whom, in which language and units.
pub struct Telling<'a> {
    /// How to talk.
    pub manner: Manner,
    /// The project's language.
    pub language: Language,
    /// The project's units.
    pub units: Units,
    /// The files that notes point into.
    pub files: &'a Sheaf,
}

/// A line on the standard output. Who closes it early, as `head` does, has heard enough.
pub fn print(line: &str) {
    let _ = writeln!(std::io::stdout(), "{line}");
}

/// Tells the notes of a folder that is no project, or whose files matter no more.
pub fn tell_without_project(manner: Manner, notes: &[Note]) {
    let files = Sheaf::new();
    let telling = Telling {
        manner,
        language: Language::En,
        units: Units::Metres,
        files: &files,
    };
    telling.notes(notes);
    telling.json(json!({ "written": [] }), notes);
}

impl<'a> Telling<'a> {
    /// In the manner of a project.
    pub fn of(project: &'a Project, manner: Manner) -> Telling<'a> {
        Telling {
            manner,
            language: project.about.language,
            units: project.about.units,
            files: &project.files,
        }
    }

    /// Tells notes: errors always, the rest unless quiet was asked for. As JSON nothing is
    /// told here: the verb puts the notes into its answer.
    pub fn notes(&self, notes: &[Note]) {
        if self.manner.json {
            return;
        }
        let catalogue = Catalogue::of(self.language);
        let colour = std::io::stderr().is_terminal() && std::env::var_os("NO_COLOR").is_none();
        for note in notes {
            if note.severity == Severity::Error || !self.manner.quiet {
                let text = render(note, self.files, catalogue, self.units, colour);
                let _ = writeln!(std::io::stderr(), "{text}");
            }
        }
    }

    /// A sentence on the terminal, unless quiet or JSON was asked for.
    pub fn say(&self, message: &note::Message) {
        if !self.manner.quiet && !self.manner.json {
            print(&self.sentence(message));
        }
    }

    /// A sentence as text.
    pub fn sentence(&self, message: &note::Message) -> String {
        Catalogue::of(self.language).say(message, self.units)
    }

    /// The verb's answer for programs.
    pub fn json(&self, mut answer: Value, notes: &[Note]) {
        if self.manner.json {
            answer["notes"] = notes.iter().map(|note| self.note(note)).collect();
            print(&format!("{answer:#}"));
        }
    }

    fn note(&self, note: &Note) -> Value {
        let at = |place: &note::Place| json!({ "file": &*place.file, "start": place.start, "end": place.end });
        json!({
            "severity": note.severity.to_string(),
            "key": note.what.key,
            "what": self.sentence(&note.what),
            "expected": note.expected.as_ref().map(|message| self.sentence(message)),
            "mend": note.mend.as_ref().map(|message| self.sentence(message)),
            "at": note.at.as_ref().map(at),
            "also": note.also.iter().map(at).collect::<Vec<_>>(),
        })
    }
}
