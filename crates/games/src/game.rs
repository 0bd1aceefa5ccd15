//! A game: its facts, and its texts by language.

use children::Skill;

use crate::text::Text;

/// A game on one or more families of markings.
#[derive(Clone, Debug, PartialEq)]
pub struct Game {
    /// Its name in files: the file's name without its ending.
    pub name: String,
    /// The skills that it trains, the main one first.
    pub skills: Vec<Skill>,
    /// The families that it can be played on, the best first.
    pub families: Vec<String>,
    /// What feet do there, as families name it: a skill, or `court`.
    pub activity: String,
    /// Years, youngest and oldest.
    pub ages: [u32; 2],
    /// Children at one figure, least and most.
    pub group: [u32; 2],
    /// Minutes before it has had its time.
    pub minutes: u32,
    /// What is needed beside the figure; often nothing.
    pub equipment: Vec<Equipment>,
    /// Whether it is a station or takes the whole group.
    pub who: Who,
    /// What it has to do with the classroom.
    pub link: Link,
    /// Skills that come before, beside those that its own skills ask for.
    pub needs: Vec<Skill>,
    /// Games that come before it.
    pub after: Vec<Before>,
    /// Its English.
    pub en: Option<Text>,
    /// Its Spanish.
    pub es: Option<Text>,
}

impl Game {
    /// Its texts in a language, `en` or `es`; in the other where it has not that one.
    pub fn text(&self, language: &str) -> Option<&Text> {
        let (first, second) = match language {
            "es" => (&self.es, &self.en),
            _ => (&self.en, &self.es),
        };
        first.as_ref().or(second.as_ref())
    }
}

/// A game that comes before, and where the file says so.
#[derive(Clone, Debug, PartialEq)]
pub struct Before {
    /// The name.
    pub name: String,
    /// Where.
    pub at: note::Place,
}

/// An enumeration that files name by words.
macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($(#[$of:meta])* $variant:ident = $word:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $name { $($(#[$of])* $variant,)* }

        impl $name {
            /// All of them.
            pub const ALL: &[$name] = &[$($name::$variant),*];
            /// Their words in files, in the same order.
            pub const WORDS: &[&str] = &[$($word),*];

            /// Its word in files.
            pub fn word(self) -> &'static str {
                match self { $($name::$variant => $word,)* }
            }
        }
    };
}

words! {
    /// Simple things; nothing that is bought for a game.
    Equipment {
        /// A bell, or two spoons.
        Bell = "bell",
        /// Beanbags, or knotted socks.
        Beanbag = "beanbag",
        /// Cards of paper with a letter, a number, a colour, a shape or a picture.
        Cards = "cards",
        /// Pavement chalk.
        Chalk = "chalk",
        /// A die with large dots.
        Die = "die",
        /// A drum, or an upturned pail.
        Drum = "drum",
        /// Leaves, or scraps of paper.
        Leaves = "leaves",
        /// A light scarf.
        Scarf = "scarf",
        /// A soft toy.
        Toy = "toy",
    }
}

words! {
    /// Who plays at once.
    Who {
        /// A group at one figure, beside others.
        Station = "station",
        /// Everybody.
        Whole = "whole",
    }
}

words! {
    /// What a game has to do with the classroom.
    Link {
        /// Letters and words.
        Letters = "letters",
        /// Counting and numbers.
        Numbers = "numbers",
        /// Colours.
        Colours = "colours",
        /// Shapes and directions.
        Shapes = "shapes",
        /// Beats and patterns.
        Rhythm = "rhythm",
        /// A song of our own.
        Song = "song",
        /// A story, an animal, something of the world.
        Story = "story",
    }
}
