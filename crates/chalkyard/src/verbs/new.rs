//! `new`: a project folder, from a few questions or from nothing.

use std::io::{BufRead, IsTerminal, Write};

use note::{Note, msg};
use project::new::{Answers, new_folder};
use project::{Paper, from_outline};
use serde_json::json;
use unit::Units;
use words::{Language, Sheaf};

use crate::command::{self, Manner, New, Tongue, Unit};
use crate::outcome::{Fault, Outcome};
use crate::tell::Telling;

/// Corners of a yard where nobody says how many.
const CORNERS: usize = 4;

/// Asks what was not said, where somebody is there to answer, and writes a fresh folder.
/// A folder that has files of ours already is left alone.
pub fn new(asked: &New, manner: Manner) -> Result<Outcome, Fault> {
    let ask = std::io::stdin().is_terminal() && !asked.yes && !manner.quiet && !manner.json;
    let folder = asked.dir.file_name().map_or("yard".to_owned(), |name| {
        name.to_string_lossy().into_owned()
    });
    let name = match &asked.name {
        Some(name) => name.clone(),
        None if ask => answer("The centre's name", &folder)?,
        None => folder,
    };
    let language = match asked.language {
        Some(Tongue::Es) => Language::Es,
        Some(Tongue::En) => Language::En,
        None if ask && answer("Language of the papers, en or es", "en")? == "es" => Language::Es,
        None => Language::En,
    };
    let units = match asked.units {
        Some(Unit::Ft) => Units::Feet,
        Some(Unit::M) => Units::Metres,
        None if ask && answer("Lengths in m or ft", "m")? == "ft" => Units::Feet,
        None => Units::Metres,
    };
    let paper = match asked.paper {
        Some(command::Paper::Letter) => Paper::Letter,
        Some(command::Paper::A4) => Paper::A4,
        None if units == Units::Feet => Paper::Letter,
        None => Paper::A4,
    };
    let corners = match asked.corners {
        Some(corners) => corners,
        None if ask && asked.outline.is_none() => {
            answer("Corners of the yard", &CORNERS.to_string())?
                .parse()
                .unwrap_or(CORNERS)
        }
        None => CORNERS,
    };
    let mut files = Sheaf::new();
    let mut notes = Vec::new();
    let ledger = crate::shipped()?;
    let traced = asked.outline.as_ref().and_then(|path| {
        let shown = path.display().to_string();
        match std::fs::read_to_string(path) {
            Ok(text) => {
                let shown: std::sync::Arc<str> = shown.into();
                files.insert(std::sync::Arc::clone(&shown), text.as_str().into());
                from_outline(&shown, &text, &ledger, language).pour(&mut notes)
            }
            Err(why) => {
                notes.push(Note::error(
                    None,
                    msg!("file-unreadable", file = shown, why = why.to_string()),
                ));
                None
            }
        }
    });
    let telling = Telling {
        manner,
        language,
        units,
        files: &files,
    };
    let answers = Answers {
        name,
        units,
        language,
        paper,
        currency: "USD".to_owned(),
        date: None,
        corners,
        traced: traced.map(|traced| traced.survey),
    };
    let outputs = if note::any_error(&notes) {
        None
    } else {
        new_folder(&answers, &ledger).pour(&mut notes)
    };
    telling.notes(&notes);
    let Some(outputs) = outputs else {
        telling.json(json!({ "written": [] }), &notes);
        return Ok(Outcome::WrongInput);
    };
    if let Err(fault) = project::write::write_new(&asked.dir, &outputs) {
        let note = fault.note();
        telling.notes(std::slice::from_ref(&note));
        telling.json(json!({ "written": [] }), &[note]);
        return Ok(Outcome::WrongInput);
    }
    for output in &outputs {
        telling.say(&msg!("told-written", file = &output.path));
    }
    telling.say(&msg!(
        "new-told-next",
        dir = asked.dir.display().to_string()
    ));
    let written: Vec<&str> = outputs.iter().map(|output| output.path.as_str()).collect();
    telling.json(json!({ "written": written }), &notes);
    Ok(Outcome::Done)
}

/// Asks on the terminal; an empty answer is the usual one.
fn answer(question: &str, usual: &str) -> Result<String, Fault> {
    print!("{question} [{usual}]: ");
    let broken = |why: std::io::Error| Fault(why.to_string());
    std::io::stdout().flush().map_err(broken)?;
    let mut line = String::new();
    std::io::stdin()
        .lock()
        .read_line(&mut line)
        .map_err(broken)?;
    let line = line.trim();
    Ok(if line.is_empty() {
        usual.to_owned()
    } else {
        line.to_owned()
    })
}
