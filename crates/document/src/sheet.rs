//! What every paper of a project shares: its name, language, units, size and type.

use note::Message;
use unit::Units;
use words::{Catalogue, Language};

/// The paper that a project prints on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm.
    A4,
    /// 8 1/2 by 11 in.
    Letter,
}

impl Paper {
    /// Width and height upright, mm.
    pub fn upright(self) -> [f64; 2] {
        match self {
            Paper::A4 => [210.0, 297.0],
            Paper::Letter => [215.9, 279.4],
        }
    }

    /// Left and right margin of the text, mm: both leave a measure of 175.
    pub fn margins(self) -> [f64; 2] {
        match self {
            Paper::A4 => [20.0, 15.0],
            Paper::Letter => [20.0, 20.9],
        }
    }

    /// As printed in a title block.
    pub fn name(self) -> &'static str {
        match self {
            Paper::A4 => "A4",
            Paper::Letter => "Letter",
        }
    }
}

/// Cap heights in mm (ISO 3098 steps, from memory); large type is 1.4 times.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Caps {
    /// Notes.
    pub note: f64,
    /// Figures and names; the body of a report.
    pub name: f64,
    /// Heads.
    pub head: f64,
    /// The title.
    pub title: f64,
}

/// What every paper of a project shares.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet<'a> {
    /// The yard's name.
    pub name: &'a str,
    /// Language of the words.
    pub language: Language,
    /// Unit of the figures.
    pub units: Units,
    /// Paper.
    pub paper: Paper,
    /// The project's date, ISO 8601.
    pub date: &'a str,
    /// Type at 1.4 times.
    pub large: bool,
    /// Bearing of the frame's x axis in degrees clockwise from north, where known.
    pub north: Option<f64>,
    /// Whose map or drawing the survey rests on.
    pub credit: Option<&'a str>,
    /// What is taken for granted until somebody measures it.
    pub assumed: &'a [String],
}

impl Sheet<'_> {
    /// A sentence in the sheet's language and units.
    pub fn say(&self, message: Message) -> String {
        Catalogue::of(self.language).say(&message, self.units)
    }

    /// A sentence without gaps.
    pub fn word(&self, key: &'static str) -> String {
        self.say(Message {
            key,
            facts: Vec::new(),
        })
    }

    /// The sizes of its letters.
    pub fn caps(&self) -> Caps {
        if self.large {
            Caps {
                note: 2.5,
                name: 3.5,
                head: 5.0,
                title: 7.0,
            }
        } else {
            Caps {
                note: 1.8,
                name: 2.5,
                head: 3.5,
                title: 5.0,
            }
        }
    }
}
