//! What is wrong or worth knowing, where in the user's files, and how to mend it.
//!
//! A note is facts, not words: the catalogue in `words` holds the sentence of each
//! key in each language. A stage hands its notes on beside its value ([`Noted`]) and
//! never prints them.
//!
//! Invariants: a note names one cause once; a [`Place`] is a byte range of a file that
//! was read; this room knows no file system, no language and no unit of the user's.

mod near;

pub use near::{is_slip, nearest};

use std::fmt;
use std::sync::Arc;

/// How much a note matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The answer could not be made: the rim writes nothing.
    Error,
    /// The answer stands, but a person should look.
    Warning,
    /// Worth knowing.
    Advice,
}

/// A byte range of a file that was read: where a finger would point.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// The file's name as the user knows it, relative to the project folder.
    pub file: Arc<str>,
    /// First byte.
    pub start: usize,
    /// One past the last byte; equal to `start` where something is missing.
    pub end: usize,
}

impl Place {
    /// The range `start..end` of `file`.
    pub fn new(file: &Arc<str>, start: usize, end: usize) -> Place {
        Place {
            file: Arc::clone(file),
            start,
            end: end.max(start),
        }
    }

    /// The very start of a file: for what is wrong with the whole of it.
    pub fn whole(file: &Arc<str>) -> Place {
        Place::new(file, 0, 0)
    }
}

/// One fact that fills a gap of a sentence. The rim shows it in the user's units.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact {
    /// A name or text as the user wrote it.
    Text(String),
    /// A count: the catalogue chooses the plural by it.
    Count(u64),
    /// A plain number and the decimals to show.
    Number(f64, u8),
    /// Metres; shown in the user's unit.
    Length(f64),
    /// Square metres; shown in the user's unit.
    Area(f64),
    /// Names, joined in the way of the language.
    Names(Vec<String>),
}

impl From<&str> for Fact {
    fn from(text: &str) -> Fact {
        Fact::Text(text.to_owned())
    }
}
impl From<&Arc<str>> for Fact {
    fn from(text: &Arc<str>) -> Fact {
        Fact::Text(text.to_string())
    }
}
impl From<String> for Fact {
    fn from(text: String) -> Fact {
        Fact::Text(text)
    }
}
impl From<&String> for Fact {
    fn from(text: &String) -> Fact {
        Fact::Text(text.clone())
    }
}
impl From<usize> for Fact {
    fn from(count: usize) -> Fact {
        Fact::Count(count as u64)
    }
}
impl From<u64> for Fact {
    fn from(count: u64) -> Fact {
        Fact::Count(count)
    }
}
impl From<Vec<String>> for Fact {
    fn from(names: Vec<String>) -> Fact {
        Fact::Names(names)
    }
}

/// A sentence of the catalogue and the facts that fill it.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    /// The key in the catalogue, in kebab-case.
    pub key: &'static str,
    /// Facts by the name of the gap.
    pub facts: Vec<(&'static str, Fact)>,
}

/// `msg!("key")` or `msg!("key", name = fact, ...)`; a fact is anything with `Into<Fact>`.
#[macro_export]
macro_rules! msg {
    ($key:expr $(, $name:ident = $fact:expr)* $(,)?) => {
        $crate::Message {
            key: $key,
            facts: vec![$((stringify!($name), $crate::Fact::from($fact))),*],
        }
    };
}

/// One thing to tell.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// How much it matters.
    pub severity: Severity,
    /// Where; `None` only where no file could say otherwise.
    pub at: Option<Place>,
    /// Other places that belong to it.
    pub also: Vec<Place>,
    /// What is wrong.
    pub what: Message,
    /// What was expected.
    pub expected: Option<Message>,
    /// How to mend it.
    pub mend: Option<Message>,
}

impl Note {
    /// An error at a place.
    pub fn error(at: impl Into<Option<Place>>, what: Message) -> Note {
        Note::new(Severity::Error, at, what)
    }

    /// A warning at a place.
    pub fn warning(at: impl Into<Option<Place>>, what: Message) -> Note {
        Note::new(Severity::Warning, at, what)
    }

    /// Something worth knowing.
    pub fn advice(at: impl Into<Option<Place>>, what: Message) -> Note {
        Note::new(Severity::Advice, at, what)
    }

    fn new(severity: Severity, at: impl Into<Option<Place>>, what: Message) -> Note {
        Note {
            severity,
            at: at.into(),
            also: Vec::new(),
            what,
            expected: None,
            mend: None,
        }
    }

    /// Says what was expected instead.
    pub fn expected(mut self, expected: Message) -> Note {
        self.expected = Some(expected);
        self
    }

    /// Says how to mend it.
    pub fn mend(mut self, mend: Message) -> Note {
        self.mend = Some(mend);
        self
    }

    /// Points at another place that belongs to it.
    pub fn also(mut self, place: impl Into<Option<Place>>) -> Note {
        self.also.extend(place.into());
        self
    }
}

/// A stage's value and what it noticed.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted<T> {
    /// The value.
    pub value: T,
    /// What was noticed on the way, in the order of the user's files where there is one.
    pub notes: Vec<Note>,
}

impl<T> Noted<T> {
    /// A value with nothing to tell.
    pub fn quiet(value: T) -> Noted<T> {
        Noted {
            value,
            notes: Vec::new(),
        }
    }

    /// Takes the value and pours the notes into `into`.
    pub fn pour(self, into: &mut Vec<Note>) -> T {
        into.extend(self.notes);
        self.value
    }
}

/// Whether any of the notes stops the answer.
pub fn any_error(notes: &[Note]) -> bool {
    notes.iter().any(|note| note.severity == Severity::Error)
}

impl fmt::Display for Severity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Severity::Error => "error",
            Severity::Warning => "warning",
            Severity::Advice => "advice",
        })
    }
}
