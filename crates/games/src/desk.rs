//! TOML tables that know where each value stands, and tell every fault once.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::ops::Range;
use std::sync::Arc;

use note::{Fact, Message, Note, Place, msg};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use note::nearest;

/// Faults of the syntax past this many are not told: they are mostly echoes.
const MOST: usize = 5;

/// A text with the place where it stands.
pub struct At<T> {
    pub value: T,
    pub at: Place,
}

/// One file on the desk, and what was noticed in it.
pub struct Desk {
    pub file: Arc<str>,
    pub notes: Vec<Note>,
    /// Whether faults of the syntax left gaps: then nothing is called missing.
    broken: bool,
}

impl Desk {
    /// The file's table; faults of its syntax are told, and what could be read is read.
    pub fn open<'t>(text: &'t str, file: &str) -> (Desk, Spanned<DeTable<'t>>) {
        let file: Arc<str> = file.into();
        let (table, faults) = DeTable::parse_recoverable(text);
        let mut notes = Vec::new();
        let mut line = None;
        for fault in &faults {
            let span = fault.span().unwrap_or(0..0);
            let this = text
                .bytes()
                .take(span.start)
                .filter(|b| *b == b'\n')
                .count();
            if line.replace(this) != Some(this) && notes.len() < MOST {
                notes.push(
                    Note::error(Place::new(&file, span.start, span.end), msg!("toml-syntax"))
                        .mend(msg!("toml-look-here")),
                );
            }
        }
        let broken = !notes.is_empty();
        let desk = Desk {
            file,
            notes,
            broken,
        };
        (desk, table)
    }

    /// Where a span stands.
    pub fn place(&self, span: Range<usize>) -> Place {
        Place::new(&self.file, span.start, span.end)
    }

    /// Whether a fault of the syntax touches a place: what stands there is a guess.
    fn breaks_at(&self, place: &Place) -> bool {
        self.broken
            && self.notes.iter().any(|note| {
                note.what.key == "toml-syntax"
                    && note
                        .at
                        .as_ref()
                        .is_some_and(|at| at.start <= place.end && place.start <= at.end)
            })
    }

    /// Tells a fault.
    pub fn tell(&mut self, note: Note) {
        self.notes.push(note);
    }
}

/// One table, and which of its keys have been asked for.
pub struct Table<'t> {
    entries: &'t DeTable<'t>,
    at: Place,
    /// What the user calls it.
    name: String,
    known: RefCell<BTreeSet<&'static str>>,
}

impl<'t> Table<'t> {
    /// A table under a name.
    pub fn new(entries: &'t DeTable<'t>, at: Place, name: &str) -> Table<'t> {
        Table {
            entries,
            at,
            name: name.to_owned(),
            known: RefCell::default(),
        }
    }

    fn raw(&self, key: &'static str) -> Option<&'t Spanned<DeValue<'t>>> {
        self.known.borrow_mut().insert(key);
        let mut entries = self.entries.iter();
        entries
            .find(|(name, _)| name.get_ref() == key)
            .map(|(_, value)| value)
    }

    /// A key that must be there; one that is not is told once, and not where a key of a near
    /// spelling stands, which [`Table::finish`] tells.
    fn wanted(&self, key: &'static str, desk: &mut Desk) -> Option<&'t Spanned<DeValue<'t>>> {
        if let Some(value) = self.raw(key) {
            return Some(value);
        }
        let known = self.known.borrow();
        let near = self.entries.keys().any(|other| {
            let other = other.get_ref().as_ref();
            !known.contains(other) && nearest(other, [key]).is_some()
        });
        if !near && !desk.broken {
            let what = msg!("key-missing", key = key, table = &self.name);
            desk.tell(Note::error(self.at.clone(), what).mend(msg!("key-add", key = key)));
        }
        None
    }

    /// Tells every key that nobody asked for.
    pub fn finish(self, desk: &mut Desk) {
        let known = self.known.into_inner();
        for key in self.entries.keys() {
            let word = key.get_ref().as_ref();
            if known.contains(word) {
                continue;
            }
            let what = msg!("key-unknown", key = word, table = &self.name);
            let note = Note::error(desk.place(key.span()), what);
            let names: Vec<String> = known.iter().map(|name| (*name).to_owned()).collect();
            desk.tell(match nearest(word, known.iter().copied()) {
                Some(near) => note.mend(msg!("did-you-mean", near = near)),
                None => note.expected(msg!("one-of", names = names)),
            });
        }
    }

    /// A text that must be there.
    pub fn text(&self, key: &'static str, desk: &mut Desk) -> Option<At<String>> {
        let value = self.wanted(key, desk)?;
        text(value, key, "want-text", desk)
    }

    /// A word out of a list; where it stands in the list.
    pub fn word(&self, key: &'static str, words: &[&str], desk: &mut Desk) -> Option<usize> {
        let text = self.text(key, desk)?;
        known(&text, key, words, desk)
    }

    /// Words out of a list, by where they stand in it. None where the key is not there and
    /// need not be.
    pub fn words(
        &self,
        key: &'static str,
        words: &[&str],
        must: bool,
        desk: &mut Desk,
    ) -> Option<Vec<usize>> {
        let texts = self.texts(key, must, desk)?;
        let found: Vec<Option<usize>> = texts
            .value
            .iter()
            .map(|text| known(text, key, words, desk))
            .collect();
        found.into_iter().collect()
    }

    /// A list of texts; empty where it is not there and need not be.
    pub fn texts(
        &self,
        key: &'static str,
        must: bool,
        desk: &mut Desk,
    ) -> Option<At<Vec<At<String>>>> {
        let value = if must {
            self.wanted(key, desk)?
        } else if let Some(value) = self.raw(key) {
            value
        } else {
            return Some(At {
                value: Vec::new(),
                at: self.at.clone(),
            });
        };
        let at = desk.place(value.span());
        let DeValue::Array(items) = value.get_ref() else {
            return wrong(value, key, "want-names", desk);
        };
        let found: Vec<Option<At<String>>> = items
            .iter()
            .map(|item| text(item, key, "want-names", desk))
            .collect();
        let texts: Option<Vec<At<String>>> = found.into_iter().collect();
        let texts = texts?;
        if must && texts.is_empty() {
            desk.tell(Note::error(at, msg!("games-none", key = key)));
            return None;
        }
        Some(At { value: texts, at })
    }

    /// A whole number of the closed range.
    pub fn count(&self, key: &'static str, range: [u32; 2], desk: &mut Desk) -> Option<u32> {
        let value = self.wanted(key, desk)?;
        count(value, key, range, desk)
    }

    /// Least and most, whole numbers of the closed range.
    pub fn span(&self, key: &'static str, range: [u32; 2], desk: &mut Desk) -> Option<[u32; 2]> {
        let value = self.wanted(key, desk)?;
        let at = desk.place(value.span());
        let DeValue::Array(items) = value.get_ref() else {
            return wrong(value, key, "games-want-span", desk);
        };
        let found: Vec<Option<u32>> = items
            .iter()
            .map(|item| count(item, key, range, desk))
            .collect();
        let found: Option<Vec<u32>> = found.into_iter().collect();
        match found?[..] {
            [least, most] if least <= most => Some([least, most]),
            _ => {
                desk.tell(
                    Note::error(at, msg!("games-span", key = key))
                        .expected(msg!("games-want-span")),
                );
                None
            }
        }
    }

    /// A table under a key, where there is one.
    pub fn table(&self, key: &'static str, desk: &mut Desk) -> Option<Table<'t>> {
        let value = self.raw(key)?;
        let at = desk.place(value.span());
        match value.get_ref() {
            DeValue::Table(entries) => Some(Table::new(entries, at, key)),
            _ => wrong(value, key, "want-table", desk),
        }
    }

    /// The tables of `[[key]]`.
    pub fn tables(&self, key: &'static str, desk: &mut Desk) -> Vec<Table<'t>> {
        let Some(value) = self.wanted(key, desk) else {
            return Vec::new();
        };
        let DeValue::Array(items) = value.get_ref() else {
            return wrong(value, key, "want-tables", desk).unwrap_or_default();
        };
        let mut tables = Vec::new();
        for item in items.iter() {
            let at = desk.place(item.span());
            match item.get_ref() {
                DeValue::Table(entries) => tables.push(Table::new(entries, at, key)),
                _ => wrong(item, key, "want-tables", desk).unwrap_or_default(),
            }
        }
        tables
    }

    /// Where the table stands.
    pub fn at(&self) -> Place {
        self.at.clone()
    }
}

/// A text in a list of known words: where it stands there. Another is told.
fn known(text: &At<String>, key: &str, words: &[&str], desk: &mut Desk) -> Option<usize> {
    let found = words.iter().position(|word| *word == text.value);
    if found.is_none() {
        desk.tell(unknown(
            text,
            msg!("word-unknown", word = &text.value, key = key),
            words,
        ));
    }
    found
}

/// What is not among the words, with the nearest of them.
pub fn unknown(text: &At<String>, what: Message, words: &[&str]) -> Note {
    let note = Note::error(text.at.clone(), what);
    let names: Vec<String> = words.iter().map(|word| (*word).to_owned()).collect();
    match nearest(&text.value, words.iter().copied()) {
        Some(near) => note.mend(msg!("did-you-mean", near = near)),
        None => note.expected(msg!("one-of", names = names)),
    }
}

fn text(
    value: &Spanned<DeValue>,
    key: &'static str,
    want: &'static str,
    desk: &mut Desk,
) -> Option<At<String>> {
    match value.get_ref() {
        DeValue::String(text) => Some(At {
            value: text.trim().to_owned(),
            at: desk.place(value.span()),
        }),
        _ => wrong(value, key, want, desk),
    }
}

fn count(
    value: &Spanned<DeValue>,
    key: &'static str,
    range: [u32; 2],
    desk: &mut Desk,
) -> Option<u32> {
    let DeValue::Integer(whole) = value.get_ref() else {
        return wrong(value, key, "want-number", desk);
    };
    let number = u32::from_str_radix(&whole.as_str().replace('_', ""), whole.radix()).ok();
    let found = number.filter(|number| (range[0]..=range[1]).contains(number));
    if found.is_none() {
        let [low, high] = range.map(|end| Fact::Number(f64::from(end), 0));
        desk.tell(
            Note::error(desk.place(value.span()), msg!("number-outside", key = key))
                .expected(msg!("want-between", low = low, high = high)),
        );
    }
    found
}

fn wrong<T>(value: &Spanned<DeValue>, key: &str, want: &'static str, desk: &mut Desk) -> Option<T> {
    let at = desk.place(value.span());
    if desk.breaks_at(&at) {
        return None;
    }
    let found = match value.get_ref() {
        DeValue::String(_) => "found-text",
        DeValue::Integer(_) | DeValue::Float(_) => "found-number",
        DeValue::Boolean(_) => "found-truth",
        DeValue::Datetime(_) => "found-date",
        DeValue::Array(_) => "found-list",
        DeValue::Table(_) => "found-table",
    };
    let want = Message {
        key: want,
        facts: Vec::new(),
    };
    desk.tell(Note::error(at, msg!("value-type", key = key, found = found)).expected(want));
    None
}
