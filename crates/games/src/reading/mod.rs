//! How hard a text is to read, by the school year that its formula names.
//!
//! English by Kincaid, Spanish by Crawford: both name a year of school, both from the words of
//! a sentence and the syllables of a word. A formula sees only lengths: it does not know
//! whether a text is clear, only that it is not long-winded.

mod english;
mod spanish;

/// The year of school that the house's texts for teachers and parents stay at or under.
pub const GRADE: f64 = 6.0;

/// A language with a formula.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tongue {
    /// English.
    English,
    /// Spanish.
    Spanish,
}

/// What the formulas are made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Stretches with a word in them that end at `.`, `!`, `?`, `…` or with a text.
    pub sentences: u32,
    /// Stretches between blanks with a letter or digit in them: `step-hop` is one word.
    pub words: u32,
    /// Syllables of all words; a digit counts as one.
    pub syllables: u32,
}

/// Counts texts; each text ends a sentence.
pub fn counts(texts: &[&str], tongue: Tongue) -> Counts {
    let mut counts = Counts::default();
    for text in texts {
        let mut open = false;
        for token in text.split_whitespace() {
            if token.contains(char::is_alphanumeric) {
                counts.words += 1;
                counts.syllables += syllables(token, tongue);
                open = true;
            }
            let shown = token.trim_end_matches(|c: char| !c.is_alphanumeric() && !ends(c));
            if open && shown.ends_with(ends) {
                counts.sentences += 1;
                open = false;
            }
        }
        counts.sentences += u32::from(open);
    }
    counts
}

fn ends(letter: char) -> bool {
    matches!(letter, '.' | '!' | '?' | '…')
}

/// Syllables of a word as it is said; at least one for a word with letters.
pub fn syllables(word: &str, tongue: Tongue) -> u32 {
    let lower = word.to_lowercase().replace('’', "'");
    lower
        .split(|c: char| !c.is_alphanumeric() && c != '\'')
        .map(|part| {
            let digits = part.chars().filter(|c| c.is_ascii_digit()).count() as u32;
            let letters: String = part.chars().filter(|c| !c.is_ascii_digit()).collect();
            let letters = letters.trim_matches('\'');
            let said = match tongue {
                _ if letters.is_empty() => 0,
                Tongue::English => english::syllables(letters),
                Tongue::Spanish => spanish::syllables(letters),
            };
            digits + said
        })
        .sum()
}

/// The year of school of texts, by the formula of their language; 0 where there is no word.
pub fn grade(texts: &[&str], tongue: Tongue) -> f64 {
    let counts = counts(texts, tongue);
    match tongue {
        Tongue::English => kincaid(counts),
        Tongue::Spanish => crawford(counts),
    }
}

/// Flesch-Kincaid grade level, English.
///
/// # Source
/// Kincaid, Fishburne, Rogers, Chissom 1975, Naval Technical Training Command research branch
/// report 8-75. Seen in textstat 0.7.13.
pub fn kincaid(counts: Counts) -> f64 {
    means(counts).map_or(0.0, |[words, syllables]| {
        0.39 * words + 11.8 * syllables - 15.59
    })
}

/// Crawford's grade level, Spanish; made on readers of grades 1 to 6.
///
/// # Source
/// Crawford 1984, Fórmula y gráfico para determinar la comprensibilidad de textos de nivel
/// primario en castellano, Lectura y Vida 5(4). Coefficients as in textstat 0.7.13; the
/// reference from memory.
pub fn crawford(counts: Counts) -> f64 {
    means(counts).map_or(0.0, |[words, syllables]| {
        -0.205 * 100.0 / words + 0.049 * 100.0 * syllables - 3.407
    })
}

/// Fernández Huerta's reading ease, Spanish: 70 to 80 is the sixth year, 80 to 90 the fifth,
/// more is easier. A second opinion beside [`crawford`].
///
/// # Source
/// Fernández Huerta 1959, Medidas sencillas de lecturabilidad, Consigna 214, in the form with
/// words a sentence and syllables a word. Seen in textstat 0.7.13.
pub fn fernandez_huerta(counts: Counts) -> f64 {
    means(counts).map_or(0.0, |[words, syllables]| {
        206.84 - 60.0 * syllables - 1.02 * words
    })
}

/// Words a sentence and syllables a word.
fn means(counts: Counts) -> Option<[f64; 2]> {
    let Counts {
        sentences,
        words,
        syllables,
    } = counts;
    (words > 0 && sentences > 0).then(|| {
        [
            f64::from(words) / f64::from(sentences),
            f64::from(syllables) / f64::from(words),
        ]
    })
}
