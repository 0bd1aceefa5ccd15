//! Whatever is in the files, the house answers: no bytes make it fall over, and what it
//! says points into the files.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

use std::fs;
use std::path::Path;

use note::any_error;
use proptest::prelude::*;
use unit::Units;
use words::{Catalogue, Language, Sheaf, render};

/// The demo's files, as seeds: they hold every kind of table.
const FILES: [(&str, &str); 8] = [
    ("project.toml", include_str!("../../../demo/project.toml")),
    ("tape.csv", include_str!("../../../demo/tape.csv")),
    ("survey.toml", include_str!("../../../demo/survey.toml")),
    ("children.csv", include_str!("../../../demo/children.csv")),
    (
        "programme.toml",
        include_str!("../../../demo/programme.toml"),
    ),
    (
        "layout.toml",
        "[[marking]]\nname = \"one\"\nfamily = \"brook\"\nat = [7.2, \"4,1 m\"]\nturn = 30\n[marking.lengths]\nnarrow = 0.2\nwide = 0.75\nlength = 3\n",
    ),
    (
        "overrides.toml",
        "[wren]\nfoot = \"15 cm\"\n[wren.hop]\nm = \"32 cm\"\ncan = 0.9\n",
    ),
    (
        "trials.csv",
        "child,marking,activity,n,good\nwren,one,jump,5,4\n",
    ),
];

/// What a slip of the hand, the editor or the disk does to a file.
#[derive(Clone, Debug)]
enum Slip {
    /// A byte becomes another.
    Change(u8),
    /// A stretch goes.
    Cut(usize),
    /// A stretch stands twice.
    Double(usize),
    /// Something is typed in.
    Type(&'static str),
}

/// Leans to the marks that the formats live on, and to odd numbers and letters.
const TYPED: [&str; 24] = [
    "\"",
    "'",
    ",",
    ";",
    "\n",
    "\r",
    "#",
    "[",
    "]",
    "[[",
    "]]",
    "=",
    "{",
    "}",
    "\u{feff}",
    "\t",
    "é",
    "′",
    "-",
    "1e999",
    "NaN",
    "99999999999999999999",
    "0",
    "\u{0}",
];

fn any_slip() -> impl Strategy<Value = Slip> {
    prop_oneof![
        any::<u8>().prop_map(Slip::Change),
        (1_usize..60).prop_map(Slip::Cut),
        (1_usize..60).prop_map(Slip::Double),
        (0..TYPED.len()).prop_map(|at| Slip::Type(TYPED[at])),
    ]
}

fn slipped(bytes: &mut Vec<u8>, at: usize, slip: &Slip) {
    let at = at % (bytes.len() + 1);
    let end = |length: usize| (at + length).min(bytes.len());
    match slip {
        Slip::Change(byte) => {
            if let Some(found) = bytes.get_mut(at) {
                *found = *byte;
            }
        }
        Slip::Cut(length) => {
            let end = end(*length);
            bytes.drain(at..end);
        }
        Slip::Double(length) => {
            let again = bytes[at..end(*length)].to_vec();
            bytes.splice(at..at, again);
        }
        Slip::Type(text) => {
            bytes.splice(at..at, text.bytes());
        }
    }
}

/// Reads the folder, goes on where nothing is wrong, and shows all that was told.
fn told(dir: &Path) -> Result<String, TestCaseError> {
    let read = project::read(dir);
    let mut notes = read.notes;
    let mut files = Sheaf::new();
    let mut units = Units::Metres;
    if let Some(project) = read.value {
        if let (false, Some(network)) = (any_error(&notes), &project.network) {
            let survey = survey::adjust(network, &project.ledger).pour(&mut notes);
            if let (false, Some(survey)) = (any_error(&notes), survey) {
                project::yard(&project, &survey).pour(&mut notes);
            }
        }
        units = project.about.units;
        files = project.files;
    }
    let mut says = String::new();
    for note in &notes {
        for at in note.at.iter().chain(&note.also) {
            if let Some(text) = files.get(&at.file) {
                prop_assert!(
                    at.start <= at.end && at.end <= text.len(),
                    "{:?} is not in the file",
                    at
                );
            }
        }
        for language in Language::ALL {
            says += &render(note, &files, Catalogue::of(language), units, false);
        }
    }
    Ok(says)
}

fn folder(files: &[(&str, Vec<u8>)]) -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    for (name, bytes) in files {
        fs::write(dir.path().join(name), bytes).expect("a file");
    }
    dir
}

fn sound() -> Vec<(&'static str, Vec<u8>)> {
    FILES
        .iter()
        .map(|(name, text)| (*name, text.as_bytes().to_vec()))
        .collect()
}

#[test]
fn the_seeds_are_sound() {
    let dir = folder(&sound());
    let read = project::read(dir.path());
    assert!(!any_error(&read.notes), "{:?}", read.notes);
}

proptest! {
    /// A few slips in any of the files: an answer, the same each time.
    #[test]
    fn slips_are_told_and_never_trip(
        slips in proptest::collection::vec((0..FILES.len(), any::<usize>(), any_slip()), 1..6)
    ) {
        let mut files = sound();
        for (file, at, slip) in &slips {
            slipped(&mut files[*file].1, *at, slip);
        }
        let dir = folder(&files);
        let once = told(dir.path())?;
        prop_assert_eq!(once, told(dir.path())?);
    }

    /// Bytes of no sense at all.
    #[test]
    fn noise_is_told_and_never_trips(noise in proptest::collection::vec(any::<u8>(), 0..200), file in 0..FILES.len()) {
        let mut files = sound();
        files[file].1 = noise;
        told(folder(&files).path())?;
    }

    /// Texts in the shape of the formats.
    #[test]
    fn lookalikes_are_told_and_never_trip(text in "([a-c]{1,3}|[=,;\\[\\]\"'{}#]|[0-9.,]{1,4}|\n| ){0,60}", file in 0..FILES.len()) {
        let mut files = sound();
        files[file].1 = text.into_bytes();
        told(folder(&files).path())?;
    }
}
