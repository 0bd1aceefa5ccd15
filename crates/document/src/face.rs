//! The one text face of all papers: its files, and how wide a line runs.
//!
//! Atkinson Hyperlegible Next 400 and 700 (SIL OFL 1.1, `fonts/OFL.txt`); the same
//! outlines as TrueType for typesetting and as WOFF2 for drawings that stand alone.
//! Sizes are cap heights in millimetres, as the drawing office says them.

use std::sync::LazyLock;

/// Cap height over em of both weights (the face's own OS/2 table; a test reads it).
pub const CAP: f64 = 0.668;

/// Descent below the baseline over em that a label must keep clear for g, p and y.
pub const TAIL: f64 = 0.2;

/// How heavy a text is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// 400.
    Regular,
    /// 700.
    Bold,
}

/// TrueType files: regular, bold, and the same two for the rest of Latin.
pub const TRUETYPE: [&[u8]; 4] = [
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular-ext.ttf"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold-ext.ttf"),
];

/// The same in WOFF2.
pub const WOFF2: [&[u8]; 4] = [
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular.woff2"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold.woff2"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular-ext.woff2"),
    include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold-ext.woff2"),
];

/// The family's name in files and style sheets.
pub const FAMILY: &str = "Atkinson Hyperlegible Next";

static FACES: LazyLock<Vec<ttf_parser::Face<'static>>> = LazyLock::new(|| {
    TRUETYPE
        .iter()
        .filter_map(|bytes| ttf_parser::Face::parse(bytes, 0).ok())
        .collect()
});

/// Advance of one letter over em; `None` where the face lacks it.
fn advance(letter: char, weight: Weight) -> Option<f64> {
    [weight as usize, weight as usize + 2]
        .into_iter()
        .find_map(|file| {
            let face = FACES.get(file)?;
            let glyph = face.glyph_index(letter)?;
            let units = f64::from(face.units_per_em());
            face.glyph_hor_advance(glyph)
                .map(|advance| f64::from(advance) / units)
        })
}

/// Width in mm of a line at a cap height in mm; kerning, which only narrows it, is left out.
pub fn width(text: &str, cap: f64, weight: Weight) -> f64 {
    text.chars()
        .map(|letter| advance(letter, weight).unwrap_or(0.6))
        .sum::<f64>()
        * cap
        / CAP
}

/// The text with every letter that the face lacks replaced, so that nothing prints as a box.
pub fn printable(text: &str) -> String {
    text.chars()
        .map(|letter| match letter {
            letter if advance(letter, Weight::Regular).is_some() => letter,
            '\n' => '\n',
            '\u{202F}' | '\u{2007}' | '\u{2009}' => '\u{A0}',
            letter if letter.is_whitespace() => ' ',
            '≤' | '<' => '<',
            '≥' => '>',
            '′' => '\'',
            '″' => '"',
            _ => '?',
        })
        .collect()
}

/// Whether the text needs the files for the rest of Latin.
pub fn needs_rest_of_latin(text: &str) -> bool {
    FACES.first().is_some_and(|face| {
        text.chars()
            .any(|letter| face.glyph_index(letter).is_none())
    })
}

/// Breaks a text into lines no wider than `measure` mm; a word wider than that stands alone.
pub fn wrap(text: &str, cap: f64, weight: Weight, measure: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        let joined = lines.last().map(|line| format!("{line} {word}"));
        match (lines.last_mut(), joined) {
            (Some(line), Some(joined)) if width(&joined, cap, weight) <= measure => *line = joined,
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// The text cut with an ellipsis so that it is no wider than `measure` mm.
pub fn fit(text: &str, cap: f64, weight: Weight, measure: f64) -> String {
    if width(text, cap, weight) <= measure {
        return text.to_owned();
    }
    let mut kept = String::new();
    for letter in text.chars() {
        if width(&format!("{kept}{letter}…"), cap, weight) > measure {
            break;
        }
        kept.push(letter);
    }
    format!("{}…", kept.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_four_files_read_and_their_caps_are_the_ones_we_size_by() {
        assert_eq!(FACES.len(), 4);
        for face in FACES.iter() {
            let cap =
                f64::from(face.capital_height().unwrap_or(0)) / f64::from(face.units_per_em());
            assert!((cap - CAP).abs() < 1e-9, "{cap}");
        }
    }

    /// Source: the advance widths in the vendored files, read with fontTools 4.60.
    #[test]
    fn lines_are_as_wide_as_their_letters() {
        let em = width("24.00", CAP, Weight::Regular);
        assert!(
            (em - (0.548 + 0.614 + 0.210 + 2.0 * 0.648)).abs() < 1e-9,
            "{em}"
        );
    }

    #[test]
    fn english_and_spanish_are_whole_and_the_rest_is_never_a_box() {
        let ours = "áéíóúüñ¿¡ÁÉÍÓÚÑ × ° ² ± ½ − — – “ ” ’";
        assert_eq!(printable(ours), ours);
        assert_eq!(printable("Łódź"), "Łódź");
        assert_eq!(printable("庭 ≤ 3"), "? < 3");
    }

    #[test]
    fn wrapping_and_fitting_keep_to_the_measure() {
        let text = "This plan is advice: local codes and licensed people come first.";
        for measure in [20.0, 44.0, 90.0] {
            for line in wrap(text, 1.8, Weight::Regular, measure) {
                assert!(width(&line, 1.8, Weight::Regular) <= measure, "{line}");
            }
            assert!(width(&fit(text, 1.8, Weight::Bold, measure), 1.8, Weight::Bold) <= measure);
        }
    }
}
