//! A game's file becomes a game, with every fault of it told at once.

use children::Skill;
use note::{Fact, Note, Noted, msg};
use toml::de::DeTable;

use crate::desk::{At, Desk, Table, unknown};
use crate::game::{Before, Equipment, Game, Link, Who};
use crate::reading::{self, GRADE};
use crate::text::{CUE, LETTERS, LINES, TITLE, Text, WATCH_LINES, lines};

/// Years of the children that the house is for.
const AGES: [u32; 2] = [3, 6];
/// More children than this at one figure wait.
const GROUP: [u32; 2] = [1, 30];
/// Minutes of one game: past half an hour nobody plays it.
const MINUTES: [u32; 2] = [1, 30];

/// Reads a game.
///
/// - `text`: what the file holds, TOML
/// - `file`: its name as the user knows it, `games/frogs.toml`; without folder and ending it
///   is the game's name
/// - `own`: names of the user's own figures, which count as families
///
/// `None` where a fault keeps it from being a game. A game in one language only is a game; a
/// text that is harder to read than [`GRADE`] is told as advice.
pub fn read(text: &str, file: &str, own: &[String]) -> Noted<Option<Game>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let (mut desk, root) = Desk::open(text, file);
    let name = stem(file).to_owned();
    let value = game(root.get_ref(), name, own, &mut desk);
    let value = value.filter(|_| !note::any_error(&desk.notes));
    desk.notes.sort_by(|a, b| a.at.cmp(&b.at));
    Noted {
        value,
        notes: desk.notes,
    }
}

fn stem(file: &str) -> &str {
    let name = file.rsplit(['/', '\\']).next().unwrap_or(file);
    name.strip_suffix(".toml").unwrap_or(name)
}

fn game(root: &DeTable, name: String, own: &[String], desk: &mut Desk) -> Option<Game> {
    let table = Table::new(root, note::Place::whole(&desk.file), &desk.file.clone());
    let words = Skill::ALL.map(Skill::word);
    let skill = |places: Vec<usize>| -> Vec<Skill> {
        places.into_iter().map(|place| Skill::ALL[place]).collect()
    };
    let skills = table.words("skills", &words, true, desk).map(skill);
    let families = families(&table, own, desk);
    let activity = table.text("activity", desk);
    if let (Some(families), Some(activity)) = (&families, &activity) {
        serves(families, activity, desk);
    }
    let ages = table.span("ages", AGES, desk);
    let group = table.span("group", GROUP, desk);
    let minutes = table.count("minutes", MINUTES, desk);
    let equipment = table.words("equipment", Equipment::WORDS, false, desk);
    let who = table.word("who", Who::WORDS, desk);
    let kind = table.word("link", Link::WORDS, desk);
    let needs = table.words("needs", &words, false, desk).map(skill);
    let after = table.texts("after", false, desk).map(|list| {
        let before = |game: At<String>| Before {
            name: game.value,
            at: game.at,
        };
        list.value.into_iter().map(before).collect()
    });
    let en = table.table("en", desk);
    let es = table.table("es", desk);
    if en.is_none() && es.is_none() {
        desk.tell(Note::error(table.at(), msg!("games-no-text")).mend(msg!("games-no-text-mend")));
    }
    let en = en.and_then(|en| texts(en, reading::Tongue::English, desk));
    let es = es.and_then(|es| texts(es, reading::Tongue::Spanish, desk));
    table.finish(desk);
    Some(Game {
        name,
        skills: skills?,
        families: families?.into_iter().map(|family| family.value).collect(),
        activity: activity?.value,
        ages: ages?,
        group: group?,
        minutes: minutes?,
        equipment: equipment?
            .into_iter()
            .map(|place| Equipment::ALL[place])
            .collect(),
        who: Who::ALL[who?],
        link: Link::ALL[kind?],
        needs: needs?,
        after: after?,
        en,
        es,
    })
}

fn families(table: &Table, own: &[String], desk: &mut Desk) -> Option<Vec<At<String>>> {
    let texts = table.texts("families", true, desk)?.value;
    let known: Vec<&str> = marking::families()
        .iter()
        .map(|family| family.name())
        .chain(own.iter().map(String::as_str))
        .collect();
    let mut all = true;
    for text in &texts {
        if !known.contains(&text.value.as_str()) {
            let what = msg!("games-family", family = &text.value);
            desk.tell(unknown(text, what, &known));
            all = false;
        }
    }
    all.then_some(texts)
}

/// Tells each family that does not serve the activity. A user's own figure says nothing of
/// what it is for: that is computed from its cells, and anything may be meant.
fn serves(families: &[At<String>], activity: &At<String>, desk: &mut Desk) {
    for family in families {
        let Some(of) = marking::family(&family.value) else {
            continue;
        };
        if !of.activities().contains(&activity.value.as_str()) {
            let names: Vec<String> = of.activities().iter().map(|a| (*a).to_owned()).collect();
            let what = msg!(
                "games-activity",
                family = &family.value,
                activity = &activity.value
            );
            desk.tell(
                Note::error(activity.at.clone(), what)
                    .also(family.at.clone())
                    .expected(msg!("one-of", names = names)),
            );
        }
    }
}

fn texts(table: Table, tongue: reading::Tongue, desk: &mut Desk) -> Option<Text> {
    let two = |key, desk: &mut Desk| {
        let text = table.text(key, desk);
        held(text, key, LINES, desk)
    };
    let title = table.text("title", desk);
    let title = short(title, "title", TITLE, desk);
    let setup = two("setup", desk);
    let steps = steps(&table, desk);
    let cues = cues(&table, desk);
    let easier = two("easier", desk);
    let harder = two("harder", desk);
    let wheels = two("wheels", desk);
    let low_vision = two("low_vision", desk);
    let link = two("link", desk);
    let watch = table.text("watch", desk);
    let watch = held(watch, "watch", WATCH_LINES, desk);
    let at = table.at();
    table.finish(desk);
    let text = Text {
        title: title?,
        setup: setup?,
        steps: steps?,
        cues: cues?,
        easier: easier?,
        harder: harder?,
        wheels: wheels?,
        low_vision: low_vision?,
        link: link?,
        watch: watch?,
    };
    let grade = reading::grade(&text.sentences(), tongue);
    if grade > GRADE {
        desk.tell(
            Note::advice(at, msg!("games-grade", grade = Fact::Number(grade, 1)))
                .expected(msg!("games-grade-most", most = Fact::Number(GRADE, 0)))
                .mend(msg!("games-grade-mend")),
        );
    }
    Some(text)
}

fn steps(table: &Table, desk: &mut Desk) -> Option<[String; 3]> {
    let list = table.texts("steps", true, desk)?;
    let (at, found) = (list.at, list.value.len());
    let held: Vec<Option<String>> = list
        .value
        .into_iter()
        .map(|step| held(Some(step), "steps", LINES, desk))
        .collect();
    if found != 3 {
        desk.tell(Note::error(at, msg!("games-steps", found = found)));
    }
    let held: Option<Vec<String>> = held.into_iter().collect();
    held?.try_into().ok()
}

fn cues(table: &Table, desk: &mut Desk) -> Option<Vec<String>> {
    let list = table.texts("cues", true, desk)?;
    let cues: Vec<Option<String>> = list
        .value
        .into_iter()
        .map(|cue| short(Some(cue), "cues", CUE, desk))
        .collect();
    cues.into_iter().collect()
}

/// A text of so many lines of a card.
pub fn held(
    text: Option<At<String>>,
    key: &'static str,
    most: usize,
    desk: &mut Desk,
) -> Option<String> {
    let text = filled(text?, key, desk)?;
    let found = lines(&text.value, LETTERS);
    let wide = found.iter().any(|line| line.chars().count() > LETTERS);
    if found.len() > most || wide {
        desk.tell(
            Note::error(text.at, msg!("games-lines", key = key, found = found.len()))
                .expected(msg!("games-lines-most", most = most, letters = LETTERS)),
        );
        return None;
    }
    Some(text.value)
}

/// A text of so many letters.
pub fn short(
    text: Option<At<String>>,
    key: &'static str,
    most: usize,
    desk: &mut Desk,
) -> Option<String> {
    let text = filled(text?, key, desk)?;
    let found = text.value.chars().count();
    if found > most {
        desk.tell(
            Note::error(text.at, msg!("games-letters", key = key, found = found))
                .expected(msg!("games-letters-most", most = most)),
        );
        return None;
    }
    Some(text.value)
}

fn filled(text: At<String>, key: &'static str, desk: &mut Desk) -> Option<At<String>> {
    if text.value.is_empty() {
        desk.tell(Note::error(text.at, msg!("games-none", key = key)));
        return None;
    }
    Some(text)
}
