//! The list in `docs/games.md` is what the games say today. `CHALKYARD_BLESS=1` writes it
//! anew: `CHALKYARD_BLESS=1 cargo test --release -p games --test page`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fmt::Write;
use std::path::Path;

use children::Skill;
use games::{Game, pages, shipped};
use note::{Message, msg};
use unit::Units;
use words::{Catalogue, Language};

/// What follows is the program's; what stands before it is written by hand.
const MARK: &str = "<!-- The list below is made by the program. -->\n";

fn say(language: Language, message: &Message) -> String {
    Catalogue::of(language).say(message, Units::Metres)
}

fn family(name: &str) -> String {
    say(Language::En, &msg!("page-family", family = name)).to_lowercase()
}

fn heading(skill: Skill) -> String {
    let word = say(Language::En, &msg!("page-gait", gait = skill.word()));
    let mut letters = word.chars();
    letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .chain(letters)
        .collect()
}

fn row(game: &Game) -> String {
    let joined = |names: Vec<String>| match names.len() {
        0 => "none".to_owned(),
        _ => names.join(", "),
    };
    let families = game.families.iter().map(|name| family(name)).collect();
    let things = game
        .equipment
        .iter()
        .map(|thing| say(Language::En, &msg!("games-equipment", thing = thing.word())))
        .collect();
    let title = |text: &Option<games::Text>| text.as_ref().expect("a text").title.clone();
    let after: Vec<String> = game
        .after
        .iter()
        .map(|other| {
            let mut games = shipped().iter();
            let other = games.find(|game| game.name == other.name);
            title(&other.expect("a game").en)
        })
        .collect();
    format!(
        "| {} ({}) | [`{}`](../crates/games/games/{}.toml) | {} | {}-{} | {}-{} | {} | {} | {} | {} |\n",
        title(&game.en),
        title(&game.es),
        game.name,
        game.name,
        joined(families),
        game.ages[0],
        game.ages[1],
        game.group[0],
        game.group[1],
        game.minutes,
        joined(things),
        say(Language::En, &msg!("games-link", link = game.link.word())),
        joined(after),
    )
}

fn list() -> String {
    let mut out = String::new();
    _ = write!(out, "\n## The {} games\n", shipped().len());
    for skill in [&Skill::TAUGHT[..], &[Skill::Run, Skill::Walk]].concat() {
        let word = heading(skill);
        _ = write!(
            out,
            "\n### {word}\n\n| game | file | on | years | children | minutes | needs | classroom | after |\n\
             |---|---|---|---|---|---|---|---|---|\n"
        );
        for game in shipped().iter().filter(|game| game.skills[0] == skill) {
            out += &row(game);
        }
    }
    out += "\n## The pocket list\n\nOne cue at a time: say it, wait for three tries, then look again.\n";
    for page in pages() {
        let word = heading(page.skill);
        _ = write!(
            out,
            "\n### {word}\n\n{} For everyone: “{}” (“{}”)\n\n| seen | say | digan |\n|---|---|---|\n",
            page.en.what, page.en.cue, page.es.cue
        );
        for (en, es) in page.en.cues.iter().zip(&page.es.cues) {
            let early = motion::EARLY
                .iter()
                .find(|early| early.skill == page.skill && early.name == en.form)
                .expect("an early form");
            let seen = Catalogue::of(Language::En).word(early.says);
            _ = writeln!(out, "| {seen} | {} | {} |", en.say, es.say);
        }
        _ = write!(
            out,
            "\nBegins: {} Later: {} Easier: {} Harder: {}\n",
            page.en.early.join(" "),
            page.en.later.join(" "),
            page.en.easier,
            page.en.harder
        );
    }
    out
}

#[test]
fn the_list_of_games_is_what_the_games_say() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/games.md");
    let page = std::fs::read_to_string(&path).expect("docs/games.md");
    let (by_hand, kept) = page.split_once(MARK).expect("the mark of the list");
    let made = list();
    if std::env::var_os("CHALKYARD_BLESS").is_some() {
        std::fs::write(&path, format!("{by_hand}{MARK}{made}")).expect("written");
        return;
    }
    assert!(kept == made, "docs/games.md is not what the games say");
}

/// The example that the page shows is one that the reader takes.
#[test]
fn the_example_of_the_page_is_a_game() {
    let page = include_str!("../../../docs/games.md");
    let example = page
        .split("```toml\n")
        .nth(1)
        .and_then(|rest| rest.split("```").next());
    let game = games::read(example.expect("an example"), "games/bridge.toml", &[]);
    assert!(game.notes.is_empty(), "{:?}", game.notes);
    assert!(game.value.is_some());
}
