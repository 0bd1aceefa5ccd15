//! Mistakes that people make, and what they are told: one file a mistake in `wrong/`.
//!
//! A file says in its first lines what somebody did, then holds the files that differ from
//! the sound yard in `wrong/base`, then what the house says. `== tape.csv` gives a file in
//! whole; marks behind the name change it: `[append]` to the base's, `[absent]`, `[bom]`,
//! `[crlf]`, `[utf-16]`, `[latin-1]`, and `\t` stands for a tabulator. `== says` is the
//! rest of the file. `CHALKYARD_BLESS=1` writes what the house says now: read it before
//! it is kept.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;
use std::path::{Path, PathBuf};

use note::{Note, any_error};
use unit::Units;
use words::{Catalogue, Language, Sheaf};

const WRONG: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/wrong");

struct Case {
    story: String,
    files: BTreeMap<String, Option<Vec<u8>>>,
    says: String,
}

fn case(text: &str) -> Case {
    let (story, rest) = text.split_once("\n== ").expect("a story, then files");
    let mut files = BTreeMap::new();
    let mut says = String::new();
    for part in rest.split("\n== ") {
        let (head, body) = part.split_once('\n').unwrap_or((part, ""));
        if head == "says" {
            body.clone_into(&mut says);
            break;
        }
        let (name, marks) = head.split_once(' ').unwrap_or((head, ""));
        files.insert(name.to_owned(), bytes(name, marks, body));
    }
    Case {
        story: story.to_owned(),
        files,
        says,
    }
}

fn bytes(name: &str, marks: &str, body: &str) -> Option<Vec<u8>> {
    let marked = |mark: &str| marks.contains(&format!("[{mark}]"));
    let mut text = body.replace("\\t", "\t");
    if !text.is_empty() {
        text.push('\n');
    }
    if marked("append") {
        let base = fs::read_to_string(format!("{WRONG}/base/{name}")).expect("a file of the base");
        text = format!("{base}{text}");
    }
    if marked("crlf") {
        text = text.replace('\n', "\r\n");
    }
    if marked("bom") {
        text.insert(0, '\u{feff}');
    }
    if marked("absent") {
        None
    } else if marked("utf-16") {
        let units = std::iter::once(0xfeff).chain(text.encode_utf16());
        Some(units.flat_map(u16::to_le_bytes).collect())
    } else if marked("latin-1") {
        Some(
            text.chars()
                .map(|mark| u8::try_from(u32::from(mark)).expect("latin-1"))
                .collect(),
        )
    } else {
        Some(text.into_bytes())
    }
}

/// A folder with the base's files and the case's.
fn folder(files: &BTreeMap<String, Option<Vec<u8>>>) -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    for name in ["project.toml", "tape.csv", "survey.toml"] {
        let base = fs::read(format!("{WRONG}/base/{name}")).expect("a file of the base");
        if let Some(bytes) = files.get(name).cloned().unwrap_or(Some(base)) {
            fs::write(dir.path().join(name), bytes).expect("a file");
        }
    }
    for (name, bytes) in files {
        if let Some(bytes) = bytes {
            let path = dir.path().join(name);
            fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            fs::write(path, bytes).expect("a file");
        }
    }
    dir
}

/// Reads the folder and walks as far as its faults allow: what `check` shows, in the
/// project's own language.
fn told(dir: &Path) -> (Vec<Note>, Sheaf, Units, Language) {
    let read = project::read(dir);
    let mut notes = read.notes;
    let Some(project) = read.value else {
        return (notes, Sheaf::new(), Units::Metres, Language::En);
    };
    if let (false, Some(network)) = (any_error(&notes), &project.network) {
        let survey = survey::adjust(network, &project.ledger).pour(&mut notes);
        if let (false, Some(survey)) = (any_error(&notes), survey) {
            project::yard(&project, &survey).pour(&mut notes);
        }
    }
    if let (false, Some(date)) = (any_error(&notes), project.about.date) {
        let date = children::Date {
            year: i32::from(date.year()),
            month: date.month().unsigned_abs(),
        };
        children::roster(&project.children, date, &project.ledger).pour(&mut notes);
    }
    let about = &project.about;
    (notes, project.files, about.units, about.language)
}

fn listing(dir: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut files: Vec<_> = fs::read_dir(dir)
        .expect("a folder")
        .map(|entry| entry.expect("an entry").path())
        .map(|path| (path.clone(), fs::read(&path).unwrap_or_default()))
        .collect();
    files.sort();
    files
}

fn cases() -> Vec<PathBuf> {
    let mut cases: Vec<PathBuf> = fs::read_dir(WRONG)
        .expect("the folder of mistakes")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "txt"))
        .collect();
    cases.sort();
    cases
}

#[test]
fn every_mistake_is_told_in_its_place_and_nothing_is_written() {
    let bless = std::env::var_os("CHALKYARD_BLESS").is_some();
    let mut differ = String::new();
    for path in cases() {
        let text = fs::read_to_string(&path).expect("a case");
        let case = case(&text);
        assert!(
            !case.story.trim().is_empty(),
            "{} tells no story",
            path.display()
        );
        let dir = folder(&case.files);
        let before = listing(dir.path());
        let (notes, files, units, language) = told(dir.path());
        assert_eq!(
            listing(dir.path()),
            before,
            "{}: something was written",
            path.display()
        );
        let mut says = String::new();
        for note in &notes {
            says += &words::render(note, &files, Catalogue::of(language), units, false);
        }
        if bless {
            let kept = text.split("\n== says\n").next().unwrap_or(&text).trim_end();
            fs::write(&path, format!("{kept}\n== says\n{says}")).expect("a case");
        } else if says != case.says {
            _ = write!(
                differ,
                "\n{}: the house says\n{says}\nnot\n{}",
                path.display(),
                case.says
            );
        }
    }
    assert!(differ.is_empty(), "{differ}");
}

#[test]
fn there_are_sixty_mistakes_and_each_is_told() {
    let cases = cases();
    assert!(cases.len() >= 60, "only {}", cases.len());
    for path in cases {
        let case = case(&fs::read_to_string(&path).expect("a case"));
        let dir = folder(&case.files);
        let (notes, ..) = told(dir.path());
        assert!(!notes.is_empty(), "{} is not noticed", path.display());
        for note in &notes {
            for message in [Some(&note.what), note.expected.as_ref(), note.mend.as_ref()]
                .into_iter()
                .flatten()
            {
                for language in Language::ALL {
                    let words = Catalogue::of(language);
                    assert!(
                        words.has(message.key),
                        "{}: {} in {language:?}",
                        path.display(),
                        message.key
                    );
                    let says = words.say(message, Units::Metres);
                    // What a sentence asks for and does not get stays in braces.
                    assert!(!says.contains("{$"), "{}: {says}", path.display());
                }
            }
        }
    }
}

#[test]
fn the_base_is_sound() {
    let dir = folder(&BTreeMap::new());
    let (notes, ..) = told(dir.path());
    assert_eq!(notes, []);
}
