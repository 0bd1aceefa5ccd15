//! What a shape is called, and what its name says it is.
//!
//! `cell-3-both-start`: the kind, the name, then words in any order. The name is the first
//! part after the kind; a word that stands alone (`cell-start`) is name and word at once.

use marking::Takes;

/// What a shape means; all else is paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Feet land here.
    Cell,
    /// One travels along it.
    Lane,
    /// One waits here.
    Wait,
}

/// The words that may follow a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// What a cell takes.
    Takes(Takes),
    /// A route may start here.
    Start,
    /// A route may end here.
    End,
    /// Free ground for two running strides lies before it.
    RunUp,
    /// A lane to stay inside.
    Corridor,
    /// A lane to tread on.
    Line,
    /// The shape is painted too.
    Paint,
}

/// The words of a cell and of a lane, as they are written.
pub const CELL_WORDS: [(&str, Word); 9] = [
    ("start", Word::Start),
    ("end", Word::End),
    ("one", Word::Takes(Takes::One)),
    ("both", Word::Takes(Takes::Both)),
    ("either", Word::Takes(Takes::Either)),
    ("left", Word::Takes(Takes::Left)),
    ("right", Word::Takes(Takes::Right)),
    ("runup", Word::RunUp),
    ("paint", Word::Paint),
];
/// As [`CELL_WORDS`].
pub const LANE_WORDS: [(&str, Word); 3] = [
    ("corridor", Word::Corridor),
    ("line", Word::Line),
    ("paint", Word::Paint),
];
const WAIT_WORDS: [(&str, Word); 1] = [("paint", Word::Paint)];

/// A shape's own name, read.
#[derive(Clone, Debug, PartialEq)]
pub struct Meaning {
    /// What it is.
    pub kind: Kind,
    /// Its name, without kind and words.
    pub name: String,
    /// What the words say.
    pub words: Vec<Word>,
    /// Words that nobody knows.
    pub odd: Vec<String>,
}

impl Kind {
    fn of(text: &str) -> Option<(Kind, &str)> {
        [
            ("cell-", Kind::Cell),
            ("lane-", Kind::Lane),
            ("wait-", Kind::Wait),
        ]
        .into_iter()
        .find_map(|(begin, kind)| {
            let (head, rest) = text.split_at_checked(begin.len())?;
            head.eq_ignore_ascii_case(begin).then_some((kind, rest))
        })
    }

    /// The words that it knows.
    pub fn words(self) -> &'static [(&'static str, Word)] {
        match self {
            Kind::Cell => &CELL_WORDS,
            Kind::Lane => &LANE_WORDS,
            Kind::Wait => &WAIT_WORDS,
        }
    }
}

/// What an `id` and a `class` say. The id goes before the class; words of other classes
/// count too, so that `id="cell-3" class="both start"` is `cell-3-both-start`.
pub fn meaning(id: Option<&str>, class: Option<&str>) -> Option<Meaning> {
    let id = id.map(plain);
    let classes: Vec<String> = class
        .unwrap_or_default()
        .split_whitespace()
        .map(plain)
        .collect();
    let named = id.iter().chain(&classes).find_map(|text| Kind::of(text));
    let (kind, rest) = named?;
    let known = kind.words();
    let word = |text: &str| {
        let found = known
            .iter()
            .find(|(word, _)| text.eq_ignore_ascii_case(word));
        found.map(|(_, word)| *word)
    };
    let mut parts = rest.split(['-', '_']).filter(|part| !part.is_empty());
    let name = parts.next().unwrap_or_default().to_owned();
    let mut words: Vec<Word> = word(&name).into_iter().collect();
    let mut odd = Vec::new();
    for part in parts {
        match word(part) {
            Some(word) => words.push(word),
            // a number behind the words is how drawing programs tell copies apart
            None if part.bytes().all(|byte| byte.is_ascii_digit()) => {}
            None => odd.push(part.to_owned()),
        }
    }
    words.extend(classes.iter().filter_map(|class| word(class)));
    Some(Meaning {
        kind,
        name,
        words,
        odd,
    })
}

/// Some drawing programs write `_x2D_` for a sign that an XML name may not hold everywhere.
fn plain(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("_x") {
        let (before, code) = rest.split_at(at);
        out.push_str(before);
        let sign = code
            .get(2..)
            .and_then(|code| code.split_once('_'))
            .filter(|(hex, _)| (2..=4).contains(&hex.len()))
            .and_then(|(hex, after)| {
                let sign = char::from_u32(u32::from_str_radix(hex, 16).ok()?)?;
                Some((sign, after))
            });
        match sign {
            Some((sign, after)) => {
                out.push(sign);
                rest = after;
            }
            None => {
                out.push_str("_x");
                rest = code.get(2..).unwrap_or_default();
            }
        }
    }
    out.push_str(rest);
    out
}

impl Meaning {
    /// What it takes, if a word says so.
    pub fn takes(&self) -> Option<Takes> {
        self.words.iter().find_map(|word| match word {
            Word::Takes(takes) => Some(*takes),
            _ => None,
        })
    }

    /// Whether a word stands there.
    pub fn says(&self, word: Word) -> bool {
        self.words.contains(&word)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_read_with_their_words() {
        let read = |id, class| meaning(id, class).expect("a meaning");
        let three = read(Some("cell-3-both-start"), None);
        assert_eq!((three.kind, three.name.as_str()), (Kind::Cell, "3"));
        assert_eq!(three.words, [Word::Takes(Takes::Both), Word::Start]);
        assert_eq!(read(Some("cell-3"), Some("both start")), three);
        assert_eq!(read(Some("x7"), Some("red cell-3-both-start")), three);
        assert_eq!(read(Some("cell_x2D_3-both-start"), None), three);
        assert_eq!(read(Some("Cell-3-Both-Start"), None), three);
        let home = read(Some("cell-home-end-2"), None);
        assert_eq!((home.name.as_str(), home.says(Word::End)), ("home", true));
        assert!(home.odd.is_empty());
        assert!(read(Some("cell-start"), None).says(Word::Start));
        assert_eq!(read(Some("cell-1-botth"), None).odd, ["botth"]);
        assert!(meaning(Some("cellar"), Some("lane")).is_none());
        assert!(meaning(None, None).is_none());
    }
}
