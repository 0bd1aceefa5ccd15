//! The pocket list: what a skill is, what its early and later forms look like, and the one
//! cue for each early form.

use std::sync::OnceLock;

use children::Skill;
use note::Noted;
use toml::de::DeTable;

use crate::desk::{Desk, Table};
use crate::read::{held, short};
use crate::shipped::files;
use crate::text::{CUE, LINES};

/// A skill as an observer and a teacher meet it.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// The skill.
    pub skill: Skill,
    /// Skills that come before it.
    pub after: Vec<Skill>,
    /// Its English.
    pub en: Words,
    /// Its Spanish.
    pub es: Words,
}

impl Page {
    /// Its words in a language, `en` or `es`.
    pub fn words(&self, language: &str) -> &Words {
        match language {
            "es" => &self.es,
            _ => &self.en,
        }
    }
}

/// A page in one language. Texts fit two lines of a card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Words {
    /// What it is.
    pub what: String,
    /// What a beginner looks like.
    pub early: Vec<String>,
    /// What practice makes of it.
    pub later: Vec<String>,
    /// The cue for everyone, one of them at a time.
    pub cue: String,
    /// The cue that answers each early form.
    pub cues: Vec<Cue>,
    /// A first step towards it.
    pub easier: String,
    /// A next step.
    pub harder: String,
}

/// An early form and its cue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cue {
    /// The early form that is seen, by its name in `motion::EARLY`, which says it in words.
    pub form: String,
    /// What an adult says, one cue at a time; at most 28 letters.
    pub say: String,
}

/// Name and text of each file in `cues/`: a skill each, in the order of the skills.
pub(crate) const FILES: &[(&str, &str)] = files!("cues":
    "jump" "hop" "leap" "gallop" "slide" "skip" "run"
);

/// The pages: the six taught skills and the run, in the order of [`Skill::ALL`]. One with a
/// fault would be left out; the tests of this room read them all.
pub fn pages() -> &'static [Page] {
    static PAGES: OnceLock<Vec<Page>> = OnceLock::new();
    PAGES.get_or_init(|| {
        FILES
            .iter()
            .filter_map(|(name, text)| read(name, text).value)
            .collect()
    })
}

/// The page of a skill; none of the walk.
pub fn page(skill: Skill) -> Option<&'static Page> {
    pages().iter().find(|page| page.skill == skill)
}

/// Reads a page.
pub(crate) fn read(name: &str, text: &str) -> Noted<Option<Page>> {
    let (mut desk, root) = Desk::open(text, &format!("cues/{name}.toml"));
    let value = on(root.get_ref(), name, &mut desk).filter(|_| desk.notes.is_empty());
    Noted {
        value,
        notes: desk.notes,
    }
}

fn on(root: &DeTable, name: &str, desk: &mut Desk) -> Option<Page> {
    let table = Table::new(root, note::Place::whole(&desk.file), name);
    let words = Skill::ALL.map(Skill::word);
    let after = table.words("after", &words, false, desk)?;
    let en = table.table("en", desk).and_then(|en| language(en, desk));
    let es = table.table("es", desk).and_then(|es| language(es, desk));
    table.finish(desk);
    Some(Page {
        skill: Skill::of_word(name)?,
        after: after.into_iter().map(|place| Skill::ALL[place]).collect(),
        en: en?,
        es: es?,
    })
}

fn language(table: Table, desk: &mut Desk) -> Option<Words> {
    let two = |table: &Table, key, desk: &mut Desk| {
        let text = table.text(key, desk);
        held(text, key, LINES, desk)
    };
    let list = |key, desk: &mut Desk| -> Option<Vec<String>> {
        let texts = table.texts(key, true, desk)?.value;
        let texts: Vec<Option<String>> = texts
            .into_iter()
            .map(|text| held(Some(text), key, LINES, desk))
            .collect();
        texts.into_iter().collect()
    };
    let what = two(&table, "what", desk);
    let early = list("early", desk);
    let later = list("later", desk);
    let cue = table.text("cue", desk);
    let cue = held(cue, "cue", LINES, desk);
    let mut cues = Vec::new();
    for row in table.tables("cues", desk) {
        let form = row.text("form", desk).map(|form| form.value);
        let say = row.text("say", desk);
        let say = short(say, "say", CUE, desk);
        row.finish(desk);
        if let (Some(form), Some(say)) = (form, say) {
            cues.push(Cue { form, say });
        }
    }
    let easier = two(&table, "easier", desk);
    let harder = two(&table, "harder", desk);
    table.finish(desk);
    Some(Words {
        what: what?,
        early: early?,
        later: later?,
        cue: cue?,
        cues,
        easier: easier?,
        harder: harder?,
    })
}
