//! The reader: every fault of a file at once, each at its place, in both languages.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::BTreeMap;

use games::{SHIPPED, lines, read};
use note::{Note, Severity};
use proptest::prelude::*;
use unit::Units;
use words::{Catalogue, Language, render};

fn said(notes: &[Note], text: &str, language: Language) -> String {
    let files = BTreeMap::from([("games/ducks.toml".into(), text.into())]);
    let catalogue = Catalogue::of(language);
    notes
        .iter()
        .map(|note| render(note, &files, catalogue, Units::Metres, false))
        .collect()
}

const DUCKS: &str = r#"skills = ["jump"]
families = ["brook"]
activity = "jump"
ages = [3, 5]
group = [2, 6]
minutes = 5
who = "station"
link = "story"

[en]
title = "Ducks"
setup = "The ducks wait by the half-moon."
steps = ["One.", "Two.", "Three."]
cues = ["Bend"]
easier = "Step over."
harder = "Jump far."
wheels = "Roll over."
low_vision = "Hold hands."
link = "Say quack."
watch = "Dry ground."
"#;

#[test]
fn a_game_in_one_language_is_a_game_and_speaks_it_in_both() {
    let game = read(DUCKS, "games/ducks.toml", &[]);
    assert_eq!(said(&game.notes, DUCKS, Language::En), "");
    let game = game.value.expect("a game");
    assert_eq!(game.name, "ducks");
    assert_eq!(game.text("es").expect("the English").title, "Ducks");
    assert!(game.equipment.is_empty() && game.after.is_empty() && game.needs.is_empty());
}

#[test]
fn a_users_own_figure_is_a_family() {
    let text = DUCKS.replace("brook", "caterpillar");
    assert!(read(&text, "games/ducks.toml", &[]).value.is_none());
    let own = ["caterpillar".to_owned()];
    let game = read(&text, "games/ducks.toml", &own);
    assert_eq!(game.value.expect("a game").families, own);
}

/// Looked at, every line was meant; `CHALKYARD_BLESS=1` writes them anew.
#[test]
fn every_fault_is_told_once_where_it_stands() {
    let text = DUCKS
        .replace("[\"jump\"]", "[\"jmup\", \"swim\"]")
        .replace("\"brook\"", "\"brok\", \"star\", \"straight-lane\"")
        .replace("ages = [3, 5]", "ages = [5, 3]")
        .replace("group = [2, 6]", "group = [2, 60]")
        .replace("minutes = 5", "minutes = \"five\"")
        .replace("who = \"station\"", "woh = \"station\"")
        .replace("link = \"story\"", "link = \"physics\"")
        .replace("\"Ducks\"", "\"Ducks that cross the wide blue river\"")
        .replace("\"Three.\"", "\"Three.\", \"Four.\"")
        .replace("[\"Bend\"]", "[]")
        .replace("easier = \"Step over.\"\n", "")
        .replace(
            "\"Jump far.\"",
            "\"Jump as far as ever you can and then jump even farther than that.\"",
        );
    let read = read(&text, "games/ducks.toml", &[]);
    assert!(read.value.is_none());
    let found = said(&read.notes, &text, Language::En);
    if std::env::var_os("CHALKYARD_BLESS").is_some() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/wrong.txt");
        std::fs::write(path, &found).expect("written");
        return;
    }
    let expected = include_str!("wrong.txt");
    assert_eq!(found, expected, "\n{found}");
    // The same in Spanish, with a sentence for each.
    let spanish = said(&read.notes, &text, Language::Es);
    assert_eq!(spanish.lines().count(), found.lines().count());
    assert!(!spanish.contains("games-"), "{spanish}");
}

#[test]
fn an_activity_that_no_family_serves_is_told() {
    let text = DUCKS.replace("activity = \"jump\"", "activity = \"skip\"");
    let found = said(
        &read(&text, "games/ducks.toml", &[]).notes,
        &text,
        Language::En,
    );
    assert!(found.contains("nobody does `skip` on `brook`"), "{found}");
    assert!(found.contains("one of these: jump and leap"), "{found}");
}

#[test]
fn a_text_that_is_hard_to_read_is_advice_and_the_game_stands() {
    let text = DUCKS
        .replace(
            "Step over.",
            "Administrators facilitate transitional locomotion",
        )
        .replace("Jump far.", "Considerable anticipatory deceleration")
        .replace(
            "Hold hands.",
            "Auditory accompaniment facilitates orientation",
        )
        .replace("Roll over.", "Deceleration necessitates anticipation");
    let read = read(&text, "games/ducks.toml", &[]);
    assert!(read.value.is_some());
    let [note] = &read.notes[..] else {
        panic!("{:?}", read.notes)
    };
    assert_eq!(note.severity, Severity::Advice);
    let found = said(&read.notes, &text, Language::En);
    assert!(found.contains("read like grade"), "{found}");
}

#[test]
fn a_file_without_a_text_and_one_that_breaks_off_say_so_and_nothing_else() {
    let facts = DUCKS.split("\n[en]").next().expect("the facts");
    let found = said(
        &read(facts, "games/ducks.toml", &[]).notes,
        facts,
        Language::En,
    );
    assert!(found.contains("the game says nothing"), "{found}");
    let broken = DUCKS.replace("minutes = 5", "minutes =");
    let notes = read(&broken, "games/ducks.toml", &[]).notes;
    assert_eq!(notes.len(), 1, "{}", said(&notes, &broken, Language::En));
}

proptest! {
    /// Any slip of the hand in any game: a stretch is struck out, another put in. Never a
    /// panic, and every place lies within the file.
    #[test]
    fn nothing_that_is_written_panics(
        game in 0..SHIPPED.len(),
        cut in 0.0..1.0_f64,
        length in 0..40_usize,
        put in "[\\[\\]\"=#\\n,a-z0-9 é]{0,12}",
    ) {
        let text = SHIPPED[game].1;
        let letters: Vec<char> = text.chars().collect();
        let from = (cut * letters.len() as f64) as usize;
        let to = (from + length).min(letters.len());
        let text: String = letters[..from]
            .iter()
            .copied()
            .chain(put.chars())
            .chain(letters[to..].iter().copied())
            .collect();
        let read = read(&text, "games/ducks.toml", &[]);
        prop_assert_eq!(read.value.is_none(), note::any_error(&read.notes));
        for note in &read.notes {
            let at = note.at.as_ref().expect("a place");
            prop_assert!(at.start <= at.end && at.end <= text.len());
        }
        said(&read.notes, &text, Language::Es);
    }

    /// Breaking loses no word and leaves no line too long but for a word that is.
    #[test]
    fn lines_hold_every_word(text in "[a-zé ]{0,120}", letters in 1..40_usize) {
        let broken = lines(&text, letters);
        prop_assert_eq!(
            broken.join(" "),
            text.split_whitespace().collect::<Vec<_>>().join(" ")
        );
        for line in broken {
            prop_assert!(line.chars().count() <= letters || !line.contains(' '));
        }
    }
}
