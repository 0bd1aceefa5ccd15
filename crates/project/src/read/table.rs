//! TOML tables that know where each value stands, and tell every fault once.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::ops::Range;

use note::{Message, Note, Place, msg};
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use toml::value::Datetime;
use unit::Units;
use unit::parse::LengthFault;

use crate::read::files::Source;
use crate::read::syntax;
use note::{is_slip, nearest};

/// A value with the place where it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct At<T> {
    /// The value.
    pub value: T,
    /// Where.
    pub at: Place,
}

/// Notes, and what turns texts into values.
pub struct Desk<'a> {
    /// The file.
    pub source: &'a Source,
    /// A bare number's unit.
    pub units: Units,
    /// What was noticed.
    pub notes: &'a mut Vec<Note>,
}

/// The whole file as a table, and whether faults of its syntax left gaps in it. Those
/// faults are told; what could be read is read.
pub fn parse<'a>(source: &'a Source, notes: &mut Vec<Note>) -> (Spanned<DeTable<'a>>, bool) {
    let (table, faults) = DeTable::parse_recoverable(&source.text);
    let before = notes.len();
    syntax::tell(source, &faults, notes);
    (table, notes.len() > before)
}

/// One table, and which of its keys have been asked for.
pub struct Table<'t> {
    entries: &'t DeTable<'t>,
    /// The table's heading, or its whole.
    pub at: Place,
    /// What the user calls it: `offset`, `fixture`, or the file's name.
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
        self.entries
            .iter()
            .find(|(name, _)| name.get_ref() == key)
            .map(|(_, value)| value)
    }

    /// A key's value as it stands.
    pub fn value(&self, key: &'static str) -> Option<&'t DeValue<'t>> {
        self.raw(key).map(Spanned::get_ref)
    }

    /// Whether the key stands there.
    pub fn has(&self, key: &'static str) -> bool {
        self.raw(key).is_some()
    }

    /// Where the key's value stands, or the table.
    pub fn place(&self, key: &'static str, desk: &Desk) -> Place {
        self.raw(key)
            .map_or_else(|| self.at.clone(), |value| place(desk.source, value.span()))
    }

    /// Tells that a key is missing; not where a fault of the syntax may have swallowed it.
    pub fn missing(&self, key: &str, desk: &mut Desk) {
        // Nor where it is there under a near name: that is told as an unknown key.
        let known = self.known.borrow();
        let near = self.entries.keys().any(|other| {
            !known.contains(other.get_ref().as_ref()) && is_slip(other.get_ref(), key)
        });
        if near || syntax::told(desk.source, desk.notes) {
            return;
        }
        desk.notes.push(
            Note::error(
                self.at.clone(),
                msg!("key-missing", key = key, table = &self.name),
            )
            .mend(msg!("key-add", key = key)),
        );
    }

    /// Tells every key that nobody asked for.
    pub fn finish(self, desk: &mut Desk) {
        let known = self.known.into_inner();
        #[cfg(test)]
        crate::read::format::heard(&desk.source.name, known.iter().copied());
        for key in self.entries.keys() {
            if known.contains(key.get_ref().as_ref()) {
                continue;
            }
            let note = Note::error(
                place(desk.source, key.span()),
                msg!(
                    "key-unknown",
                    key = key.get_ref().to_string(),
                    table = &self.name
                ),
            );
            let names: Vec<String> = known.iter().map(|name| (*name).to_owned()).collect();
            desk.notes
                .push(match nearest(key.get_ref(), known.iter().copied()) {
                    Some(near) => note.mend(msg!("did-you-mean", near = near)),
                    None if names.is_empty() => note,
                    None => note.expected(msg!("one-of", names = names)),
                });
        }
    }

    /// Every key with its value, for tables whose keys are the user's.
    pub fn all(&self, desk: &Desk) -> Vec<(At<String>, &'t Spanned<DeValue<'t>>)> {
        let mut all: Vec<_> = self
            .entries
            .iter()
            .map(|(key, value)| {
                let at = place(desk.source, key.span());
                (
                    At {
                        value: key.get_ref().to_string(),
                        at,
                    },
                    value,
                )
            })
            .collect();
        all.sort_by(|a, b| a.0.at.cmp(&b.0.at));
        all
    }

    /// A text.
    pub fn text(&self, key: &'static str, desk: &mut Desk) -> Option<At<String>> {
        let value = self.raw(key)?;
        let at = place(desk.source, value.span());
        match value.get_ref() {
            DeValue::String(text) => Some(At {
                value: text.to_string(),
                at,
            }),
            other => wrong(other, at, key, "want-text", desk),
        }
    }

    /// A word out of a list.
    pub fn word<T: Copy>(
        &self,
        key: &'static str,
        words: &[(&str, T)],
        desk: &mut Desk,
    ) -> Option<At<T>> {
        let text = self.text(key, desk)?;
        if let Some((_, value)) = words.iter().find(|(word, _)| *word == text.value) {
            return Some(At {
                value: *value,
                at: text.at,
            });
        }
        desk.notes
            .push(not_a_word(&text, key, words.iter().map(|(word, _)| *word)));
        None
    }

    /// A length, metres.
    pub fn length(&self, key: &'static str, desk: &mut Desk) -> Option<At<f64>> {
        let value = self.raw(key)?;
        length(value, key, desk)
    }

    /// A length above zero, metres.
    pub fn width(&self, key: &'static str, desk: &mut Desk) -> Option<At<f64>> {
        let read = self.length(key, desk)?;
        if read.value > 0.0 {
            return Some(read);
        }
        desk.notes.push(
            Note::error(read.at, msg!("length-not-positive", key = key))
                .expected(msg!("want-positive-length")),
        );
        None
    }

    /// A plain number.
    pub fn number(&self, key: &'static str, desk: &mut Desk) -> Option<At<f64>> {
        let value = self.raw(key)?;
        let at = place(desk.source, value.span());
        match number(value.get_ref()) {
            Some(value) if value.is_finite() => Some(At { value, at }),
            _ => wrong(value.get_ref(), at, key, "want-number", desk),
        }
    }

    /// A number of the closed range, both ends in.
    pub fn within(&self, key: &'static str, range: (f64, f64), desk: &mut Desk) -> Option<At<f64>> {
        let read = self.number(key, desk)?;
        if (range.0..=range.1).contains(&read.value) {
            return Some(read);
        }
        desk.notes.push(
            Note::error(read.at, msg!("number-outside", key = key)).expected(msg!(
                "want-between",
                low = note::Fact::Number(range.0, decimals(range.0)),
                high = note::Fact::Number(range.1, decimals(range.1)),
            )),
        );
        None
    }

    /// A whole number of the closed range.
    pub fn count(&self, key: &'static str, range: (u32, u32), desk: &mut Desk) -> Option<At<u32>> {
        let read = self.within(key, (f64::from(range.0), f64::from(range.1)), desk)?;
        if read.value.fract() == 0.0 {
            return Some(At {
                value: read.value as u32,
                at: read.at,
            });
        }
        desk.notes
            .push(Note::error(read.at, msg!("number-not-whole", key = key)));
        None
    }

    /// Yes or no.
    pub fn truth(&self, key: &'static str, desk: &mut Desk) -> Option<At<bool>> {
        let value = self.raw(key)?;
        let at = place(desk.source, value.span());
        match value.get_ref() {
            DeValue::Boolean(truth) => Some(At { value: *truth, at }),
            other => wrong(other, at, key, "want-truth", desk),
        }
    }

    /// A date without a clock time.
    pub fn date(&self, key: &'static str, desk: &mut Desk) -> Option<At<jiff::civil::Date>> {
        let value = self.raw(key)?;
        let at = place(desk.source, value.span());
        let found = match value.get_ref() {
            DeValue::Datetime(Datetime {
                date: Some(date),
                time: None,
                ..
            }) => {
                let parts = (
                    i16::try_from(date.year),
                    i8::try_from(date.month),
                    i8::try_from(date.day),
                );
                match parts {
                    (Ok(year), Ok(month), Ok(day)) => jiff::civil::Date::new(year, month, day).ok(),
                    _ => None,
                }
            }
            DeValue::String(text) => text.trim().parse().ok(),
            _ => None,
        };
        match (found, value.get_ref()) {
            (Some(value), _) => Some(At { value, at }),
            (None, DeValue::String(text)) => {
                desk.notes.push(
                    Note::error(at, msg!("date-odd", found = text.to_string()))
                        .expected(msg!("want-date")),
                );
                None
            }
            (None, other) => wrong(other, at, key, "want-date", desk),
        }
    }

    /// A list of names.
    pub fn names(&self, key: &'static str, desk: &mut Desk) -> Option<At<Vec<At<String>>>> {
        let value = self.raw(key)?;
        let at = place(desk.source, value.span());
        let DeValue::Array(items) = value.get_ref() else {
            return wrong(value.get_ref(), at, key, "want-names", desk);
        };
        let mut names = Vec::new();
        for item in items.iter() {
            let at = place(desk.source, item.span());
            match item.get_ref() {
                DeValue::String(name) => names.push(At {
                    value: name.to_string(),
                    at,
                }),
                other => wrong(other, at, key, "want-names", desk)?,
            }
        }
        Some(At { value: names, at })
    }

    /// A list of as many names as wanted.
    pub fn names_of<const N: usize>(
        &self,
        key: &'static str,
        desk: &mut Desk,
    ) -> Option<[At<String>; N]> {
        let names = self.names(key, desk)?;
        let found = names.value.len();
        match <[At<String>; N]>::try_from(names.value) {
            Ok(names) => Some(names),
            Err(_) => {
                desk.notes.push(Note::error(
                    names.at,
                    msg!("names-count", key = key, wanted = N, found = found),
                ));
                None
            }
        }
    }

    /// Two lengths, metres.
    pub fn pair(&self, key: &'static str, desk: &mut Desk) -> Option<At<[f64; 2]>> {
        let value = self.raw(key)?;
        pair(value, key, desk)
    }

    /// A table under a key.
    pub fn table(&self, key: &'static str, desk: &mut Desk) -> Option<Table<'t>> {
        let value = self.raw(key)?;
        let at = place(desk.source, value.span());
        match value.get_ref() {
            DeValue::Table(entries) => Some(Table::new(entries, at, key)),
            other => wrong(other, at, key, "want-table", desk),
        }
    }

    /// The tables of `[[key]]`.
    pub fn tables(&self, key: &'static str, desk: &mut Desk) -> Vec<Table<'t>> {
        let Some(value) = self.raw(key) else {
            return Vec::new();
        };
        let at = place(desk.source, value.span());
        match value.get_ref() {
            DeValue::Array(items) => items
                .iter()
                .filter_map(|item| {
                    let at = place(desk.source, item.span());
                    match item.get_ref() {
                        DeValue::Table(entries) => Some(Table::new(entries, at, key)),
                        other => wrong(other, at, key, "want-tables", desk),
                    }
                })
                .collect(),
            other => wrong(other, at, key, "want-tables", desk).unwrap_or_default(),
        }
    }
}

/// Where a span of a file stands.
pub fn place(source: &Source, span: Range<usize>) -> Place {
    source.place(span.start, span.end)
}

/// A number of either kind.
pub fn number(value: &DeValue) -> Option<f64> {
    match value {
        DeValue::Integer(whole) => {
            i64::from_str_radix(&whole.as_str().replace('_', ""), whole.radix())
                .ok()
                .map(|n| n as f64)
        }
        DeValue::Float(float) => float.as_str().replace('_', "").parse().ok(),
        _ => None,
    }
}

/// A length as a number in the project's unit or as a text with its own, metres.
pub fn length(value: &Spanned<DeValue>, key: &str, desk: &mut Desk) -> Option<At<f64>> {
    let at = place(desk.source, value.span());
    let read = match value.get_ref() {
        DeValue::String(text) => unit::parse::length(text, desk.units),
        other => match number(other) {
            Some(number) if number.is_finite() => {
                let metres = number
                    * if desk.units == Units::Feet {
                        unit::FOOT
                    } else {
                        1.0
                    };
                if metres.abs() <= unit::LONGEST {
                    Ok(metres)
                } else {
                    Err(LengthFault::TooLong)
                }
            }
            _ => return wrong(other, at, key, "want-length", desk),
        },
    };
    match read {
        Ok(value) => Some(At { value, at }),
        Err(fault) => {
            desk.notes.push(no_length(&fault, at));
            None
        }
    }
}

/// Two lengths in a list, metres.
pub fn pair(value: &Spanned<DeValue>, key: &str, desk: &mut Desk) -> Option<At<[f64; 2]>> {
    let at = place(desk.source, value.span());
    match value.get_ref() {
        DeValue::Array(items) if items.iter().len() == 2 => {
            let mut lengths = items.iter().filter_map(|item| length(item, key, desk));
            match (lengths.next(), lengths.next()) {
                (Some(x), Some(y)) => Some(At {
                    value: [x.value, y.value],
                    at,
                }),
                _ => None,
            }
        }
        other => wrong(other, at, key, "want-pair", desk),
    }
}

fn wrong<T>(
    found: &DeValue,
    at: Place,
    key: &str,
    want: &'static str,
    desk: &mut Desk,
) -> Option<T> {
    let found = match found {
        DeValue::String(_) => "found-text",
        DeValue::Integer(_) | DeValue::Float(_) => "found-number",
        DeValue::Boolean(_) => "found-truth",
        DeValue::Datetime(_) => "found-date",
        DeValue::Array(_) => "found-list",
        DeValue::Table(_) => "found-table",
    };
    desk.notes.push(
        Note::error(at, msg!("value-type", key = key, found = found)).expected(Message {
            key: want,
            facts: Vec::new(),
        }),
    );
    None
}

/// What is wrong with a length, and how to write it.
pub fn no_length(fault: &LengthFault, at: Place) -> Note {
    let what = match fault {
        LengthFault::Empty => msg!("length-empty"),
        LengthFault::NotANumber(found) => msg!("length-no-number", found = found),
        LengthFault::UnknownUnit(found) => msg!("length-unit", found = found),
        LengthFault::Ambiguous(found) => msg!("length-ambiguous", found = found),
        LengthFault::Order => msg!("length-order"),
        LengthFault::Carry(found) => msg!("length-carry", found = found),
        LengthFault::TooLong => msg!("length-too-long"),
    };
    let note = Note::error(at, what).expected(msg!("want-length"));
    match fault {
        LengthFault::TooLong => note.mend(msg!("length-say-unit")),
        _ => note,
    }
}

/// A word that is not of the list.
pub fn not_a_word<'a>(
    found: &At<String>,
    key: &str,
    words: impl Iterator<Item = &'a str> + Clone,
) -> Note {
    let note = Note::error(
        found.at.clone(),
        msg!("word-unknown", word = &found.value, key = key),
    );
    let note = match nearest(&found.value, words.clone()) {
        Some(near) => note.mend(msg!("did-you-mean", near = near)),
        None => note,
    };
    note.expected(msg!(
        "one-of",
        names = words.map(str::to_owned).collect::<Vec<_>>()
    ))
}

fn decimals(value: f64) -> u8 {
    if value.fract() == 0.0 { 0 } else { 2 }
}
