//! The whole folder: every file of it, read together.

#![allow(clippy::expect_used)]

use std::fs;
use std::path::Path;

use children::{Skill, Trait};
use project::read::trials::On;

const DEMO: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo");

fn keys(notes: &[note::Note]) -> Vec<&'static str> {
    notes.iter().map(|note| note.what.key).collect()
}

#[test]
fn the_demo_is_read_to_its_last_file() {
    let read = project::read(Path::new(DEMO));
    assert!(!note::any_error(&read.notes), "{:?}", read.notes);
    let project = read.value.expect("a project");
    assert_eq!(project.children.len(), 18);
    let programme = &project.programme;
    assert_eq!(
        (
            programme.sessions_a_week,
            programme.minutes,
            programme.weeks,
            programme.staff
        ),
        (3, 30.0, 8, 2)
    );
    assert_eq!(programme.words, ["cat", "map", "red", "sun"]);
    assert!(project.overrides.is_empty() && project.trials.is_empty() && programme.ages.is_empty());
    // The next room takes the children as they are.
    let date = project.about.date.expect("a date");
    let date = children::Date {
        year: i32::from(date.year()),
        month: date.month().unsigned_abs(),
    };
    let class = children::roster(&project.children, date, &project.ledger);
    assert!(!note::any_error(&class.notes), "{:?}", class.notes);
    assert_eq!(class.value.len(), 18);
}

/// The demo with every file that people may add.
fn full() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    for entry in fs::read_dir(DEMO).expect("the demo") {
        let path = entry.expect("an entry").path();
        if path.is_file() {
            fs::copy(&path, dir.path().join(path.file_name().expect("a name"))).expect("copied");
        }
    }
    fs::create_dir_all(dir.path().join("figures")).expect("a folder");
    let write = |name: &str, text: &str| fs::write(dir.path().join(name), text).expect("a file");
    write(
        "figures/fish.svg",
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 1500 1000' data-for='jump'>\n\
         <circle id='cell-1-start' class='paint' cx='300' cy='300' r='200' fill='#F4F0E4'/>\n\
         <circle id='cell-2-both' class='paint' cx='900' cy='300' r='200' fill='#F6D964'/>\n\
         <circle id='wait-1' class='paint' cx='300' cy='800' r='110' fill='#F4F0E4'/>\n</svg>\n",
    );
    write("figures/notes.txt", "not a figure");
    write(
        "overrides.toml",
        "[wren]\nfoot = \"15.5 cm\"\n[wren.hop]\ncan = 0.9\n",
    );
    write(
        "layout.toml",
        "[[marking]]\nname = \"fish1\"\nfamily = \"fish\"\nat = [4, 5]\nlocked = true\n\
         [marking.lengths]\nflight = 0.7\n\n\
         [[marking]]\nname = \"brook1\"\nfamily = \"brook\"\nat = [7.2, 4.1]\nturn = 30\n[marking.lengths]\nnarrow = 0.20\n",
    );
    write(
        "trials.csv",
        "child,marking,activity,n,good\nwren,brook1,jump,5,4\nlark,fish1,,3,3\n",
    );
    write("notes.md", "a file of somebody's own is left alone");
    dir
}

#[test]
fn files_know_of_one_another() {
    let dir = full();
    let read = project::read(dir.path());
    assert!(!note::any_error(&read.notes), "{:?}", read.notes);
    let project = read.value.expect("a project");
    let set: Vec<(&str, Trait)> = project
        .overrides
        .iter()
        .map(|set| (set.child.as_str(), set.what))
        .collect();
    assert_eq!(
        set,
        [("wren", Trait::Foot), ("wren", Trait::Can(Skill::Hop))]
    );
    assert_eq!(project.figures.keys().collect::<Vec<_>>(), ["fish"]);
    let markings: Vec<(&str, bool)> = project
        .layout
        .iter()
        .map(|marking| (marking.name.as_str(), marking.locked))
        .collect();
    assert_eq!(markings, [("fish1", true), ("brook1", false)]);
    assert_eq!(project.trials[1].on, On::Marking("fish1".to_owned()));
}

#[test]
fn faults_of_every_file_come_at_once_and_in_order() {
    let dir = full();
    let spoil = |name: &str, from: &str, to: &str| {
        let path = dir.path().join(name);
        let text = fs::read_to_string(&path).expect("a file");
        assert!(text.contains(from), "{name} holds no {from}");
        fs::write(path, text.replacen(from, to, 1)).expect("a file");
    };
    spoil("trials.csv", "lark", "lrak");
    spoil("layout.toml", "\"brook\"", "\"crook\"");
    spoil("programme.toml", "palette", "pallete");
    spoil("overrides.toml", "foot", "feet");
    spoil("children.csv", "2023-06", "2023-06-01");
    spoil("survey.toml", "walked", "walkd");
    spoil("tape.csv", "23.996", "many");
    spoil("project.toml", "\"a4\"", "\"A5\"");
    let read = project::read(dir.path());
    let errors: Vec<(String, &str)> = read
        .notes
        .iter()
        .filter(|note| note.severity == note::Severity::Error)
        .map(|note| {
            (
                note.at.as_ref().expect("a place").file.to_string(),
                note.what.key,
            )
        })
        .collect();
    let wanted = [
        ("project.toml", "word-unknown"),
        ("tape.csv", "length-no-number"),
        ("survey.toml", "key-unknown"),
        ("children.csv", "child-born-day"),
        ("overrides.toml", "key-unknown"),
        ("programme.toml", "key-unknown"),
        ("layout.toml", "family-unknown"),
        ("trials.csv", "child-nobody"),
    ];
    let wanted: Vec<(String, &str)> = wanted.map(|(file, key)| (file.to_owned(), key)).to_vec();
    assert_eq!(errors, wanted, "{:?}", keys(&read.notes));
}
