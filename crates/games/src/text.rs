//! The texts of a game in one language, and how they fall into the lines of a card.

/// Letters of a line on a card.
pub const LETTERS: usize = 32;
/// Lines of a text on a card.
pub const LINES: usize = 2;
/// Lines of the caution.
pub const WATCH_LINES: usize = 3;
/// Letters of a title.
pub const TITLE: usize = 24;
/// Letters of a cue.
pub const CUE: usize = 28;

/// A game in one language. Every text fits [`LINES`] lines of [`LETTERS`] letters, if nothing
/// else is said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Text {
    /// At most [`TITLE`] letters.
    pub title: String,
    /// What stands ready on the figure, and where the children are.
    pub setup: String,
    /// How it goes.
    pub steps: [String; 3],
    /// What an adult says, one of them at a time; at most [`CUE`] letters each.
    pub cues: Vec<String>,
    /// For a child to whom it is out of reach.
    pub easier: String,
    /// For a child to whom it is too easy.
    pub harder: String,
    /// For a child on wheels or with a walker: in the same place, with the same children.
    pub wheels: String,
    /// For a child who sees little.
    pub low_vision: String,
    /// What it has to do with the classroom.
    pub link: String,
    /// What to watch, as acts; [`WATCH_LINES`] lines.
    pub watch: String,
}

impl Text {
    /// What a teacher reads as sentences, in the order of the card: all but title and cues.
    pub fn sentences(&self) -> Vec<&str> {
        let [first, second, third] = &self.steps;
        vec![
            &self.setup,
            first,
            second,
            third,
            &self.easier,
            &self.harder,
            &self.wheels,
            &self.low_vision,
            &self.link,
            &self.watch,
        ]
    }
}

/// A text in lines of at most so many letters, broken at blanks. A word that is longer has a
/// line of its own.
pub fn lines(text: &str, letters: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= letters => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_breaks_at_blanks_by_letters_not_bytes() {
        assert_eq!(lines("ñandú  ñandú ñandú", 11), ["ñandú ñandú", "ñandú"]);
        assert_eq!(lines("a threadbare b", 4), ["a", "threadbare", "b"]);
        assert!(lines(" \n", 4).is_empty());
    }
}
