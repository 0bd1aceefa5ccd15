//! The shipped games and pages: complete, within the house's means, and as the folders hold
//! them.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use children::Skill;
use games::reading::{self, GRADE, Tongue};
use games::{Form, Link, SHIPPED, Text, Who, pages, read, shipped};
use note::Note;
use unit::Units;
use words::{Catalogue, Language, render};

fn said(notes: &[Note], file: &str, text: &str) -> String {
    let files = BTreeMap::from([(file.into(), text.into())]);
    notes
        .iter()
        .map(|note| {
            let catalogue = Catalogue::of(Language::En);
            render(note, &files, catalogue, Units::Metres, false)
        })
        .collect()
}

#[test]
fn every_file_of_the_folder_is_shipped_and_has_nothing_to_tell() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("games");
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .expect("the folder of games")
        .map(|entry| entry.expect("an entry").path())
        .map(|path| path.file_stem().expect("a name").to_string_lossy().into())
        .collect();
    names.sort();
    let listed: Vec<&str> = SHIPPED.iter().map(|(name, _)| *name).collect();
    assert_eq!(names, listed, "games/ and the list in src/shipped.rs");
    let mut faults = String::new();
    for (name, text) in SHIPPED {
        let file = format!("games/{name}.toml");
        let read = read(text, &file, &[]);
        faults += &said(&read.notes, &file, text);
    }
    assert!(faults.is_empty(), "{faults}");
    assert_eq!(shipped().len(), SHIPPED.len());
}

/// The issue's own numbers: at least 44 games, five a taught skill, one a family; both
/// languages; a title of its own.
#[test]
fn every_skill_and_every_family_has_its_games_in_both_languages() {
    let games = shipped();
    assert!(games.len() >= 44, "{} games", games.len());
    for skill in Skill::TAUGHT {
        let of = games.iter().filter(|game| game.skills[0] == skill).count();
        assert!(of >= 5, "{}: {of}", skill.word());
    }
    for family in marking::families() {
        assert!(
            games
                .iter()
                .any(|g| g.families.iter().any(|f| f == family.name())),
            "no game on {}",
            family.name()
        );
    }
    for language in [
        |g: &games::Game| g.en.clone(),
        |g: &games::Game| g.es.clone(),
    ] {
        let titles: BTreeSet<String> = games
            .iter()
            .map(|game| language(game).expect("the language").title)
            .collect();
        assert_eq!(titles.len(), games.len(), "two games of one title");
    }
    for link in Link::ALL {
        assert!(games.iter().any(|game| game.link == *link), "{link:?}");
    }
    for who in Who::ALL {
        assert!(games.iter().any(|game| game.who == *who), "{who:?}");
    }
}

/// A game trains what its feet do: `court` is hops and jumps, all else is the skill of that
/// name.
#[test]
fn a_game_trains_what_its_feet_do() {
    for game in shipped() {
        let trains: Vec<&str> = game.skills.iter().map(|skill| skill.word()).collect();
        match game.activity.as_str() {
            "court" => assert_eq!(trains, ["hop", "jump"], "{}", game.name),
            skill => assert_eq!(trains[0], skill, "{}", game.name),
        }
    }
}

/// No two games, and no two forms of one, say the same.
#[test]
fn nothing_is_said_twice() {
    for tongue in ["en", "es"] {
        let mut seen: BTreeMap<String, String> = BTreeMap::new();
        for game in shipped() {
            let text = game.text(tongue).expect("a text");
            for sentence in text.sentences() {
                if let Some(other) = seen.insert(sentence.to_lowercase(), game.name.clone()) {
                    panic!("{} and {other}: {sentence}", game.name);
                }
            }
            for form in Form::ALL.into_iter().filter(|form| *form != Form::AsIs) {
                assert!(form.of(text).is_some());
            }
        }
    }
}

/// Teacher texts at grade 6 or easier, each game by itself; in Spanish by two formulas.
#[test]
fn every_game_reads_at_grade_six_or_easier() {
    let mut hard = Vec::new();
    let mut worst = [f64::MIN, f64::MIN, f64::MAX];
    for game in shipped() {
        let en = game.en.as_ref().map(Text::sentences).expect("English");
        let es = game.es.as_ref().map(Text::sentences).expect("Spanish");
        let grades = [
            reading::grade(&en, Tongue::English),
            reading::grade(&es, Tongue::Spanish),
        ];
        let ease = reading::fernandez_huerta(reading::counts(&es, Tongue::Spanish));
        // 70 and more is the sixth school year or easier, by the table of that formula.
        if grades.iter().any(|grade| *grade > GRADE) || ease < 70.0 {
            hard.push((game.name.as_str(), grades, ease));
        }
        worst = [
            worst[0].max(grades[0]),
            worst[1].max(grades[1]),
            worst[2].min(ease),
        ];
    }
    assert!(hard.is_empty(), "harder than grade {GRADE}: {hard:#?}");
    println!(
        "hardest: English {:.1}, Spanish {:.1}, ease {:.0}",
        worst[0], worst[1], worst[2]
    );
}

/// Nobody is out: no game sends a child away, names a loser or lets children race.
#[test]
fn no_game_sends_a_child_out() {
    let words = [
        " loser",
        " lose ",
        "winner",
        " race ",
        "fastest",
        "is out",
        "tag ",
        "perdedor",
        "pierde ",
        "ganador",
        "gana ",
        "carrera",
        "eliminad",
        "queda fuera del juego",
        "el más rápido",
    ];
    for (name, text) in SHIPPED {
        let lower = text.to_lowercase();
        for word in words {
            assert!(!lower.contains(word), "{name} says {word:?}");
        }
    }
}

/// What paint and speed come to: a game with flight speaks of a dry ground, and every game of
/// how many are on the figure, of the way they all go, or of room.
#[test]
fn every_caution_speaks_of_the_ground_and_of_room() {
    let tongues = [
        (
            "en",
            "dry,wet,slip",
            "one ,two ,three ,four ,empty,clear,apart,nobody,outside,half way,start only,go when",
        ),
        (
            "es",
            "sec,mojad,resbal",
            "un niño,uno ,una ,dos ,tres ,cuatro ,vacío,libre,nadie,fuera,un comprador",
        ),
    ];
    for game in shipped() {
        for (tongue, ground, room) in tongues {
            let watch = game.text(tongue).expect("a text").watch.to_lowercase();
            let says = |words: &str| words.split(',').any(|word| watch.contains(word));
            assert!(
                game.activity == "walk" || says(ground),
                "{}: {watch}",
                game.name
            );
            assert!(says(room), "{}: {watch}", game.name);
        }
    }
}

#[test]
fn every_page_reads_and_answers_every_early_form_once_in_both_languages() {
    let skills: Vec<Skill> = pages().iter().map(|page| page.skill).collect();
    assert_eq!(skills[..6], Skill::TAUGHT);
    assert_eq!(skills[6..], [Skill::Run]);
    for page in pages() {
        let early: Vec<&str> = motion::EARLY
            .iter()
            .filter(|early| early.skill == page.skill)
            .map(|early| early.name)
            .collect();
        for words in [&page.en, &page.es] {
            let cued: Vec<&str> = words.cues.iter().map(|cue| cue.form.as_str()).collect();
            assert_eq!(cued, early, "{}", page.skill.word());
        }
        for (tongue, words) in [(Tongue::English, &page.en), (Tongue::Spanish, &page.es)] {
            let mut texts = vec![words.what.as_str(), &words.easier, &words.harder];
            texts.extend(words.early.iter().chain(&words.later).map(String::as_str));
            let grade = reading::grade(&texts, tongue);
            assert!(grade <= GRADE, "{} {tongue:?}: {grade}", page.skill.word());
        }
    }
}
