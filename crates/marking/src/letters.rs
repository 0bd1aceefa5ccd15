//! A word as the letters that cells of a court can hold.
//!
//! One alphabet serves English and Spanish: A to Z and Ñ. A letter's accent is dropped
//! (*pájaro* is PAJARO, *pingüino* PINGUINO); the tilde of Ñ makes a letter of its own and
//! stays. Ligatures and letters that are written as two in print fall apart (*ß* is SS).
//! Hyphens, apostrophes and spaces are stepped over. A double letter stays double: it is a
//! jump on the spot.

use unicode_normalization::UnicodeNormalization;

/// The letters of a court, in the order of the Spanish alphabet.
pub const ALPHABET: [char; 27] = [
    'A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J', 'K', 'L', 'M', 'N', 'Ñ', 'O', 'P', 'Q', 'R',
    'S', 'T', 'U', 'V', 'W', 'X', 'Y', 'Z',
];

/// The letters of a word.
///
/// # Errors
/// The first character, as written, that no letter of the alphabet stands for.
pub fn letters(word: &str) -> Result<Vec<char>, char> {
    const TILDE: char = '\u{303}';
    let mut letters = Vec::new();
    // composed first, so that a fault names what was written and not half of it
    for written in word.nfc() {
        if written.is_whitespace() || matches!(written, '-' | '\'' | '’' | '‐' | '·') {
            continue;
        }
        let mut plain: Vec<char> = written.to_uppercase().nfd().collect();
        let tilde = plain == ['N', TILDE];
        plain.retain(|part| !is_mark(*part));
        match plain.as_slice() {
            ['N'] if tilde => letters.push('Ñ'),
            ['Æ'] => letters.extend(['A', 'E']),
            ['Œ'] => letters.extend(['O', 'E']),
            ['Ø'] => letters.push('O'),
            ['Ł'] => letters.push('L'),
            ['Đ'] | ['Ð'] => letters.push('D'),
            [] if is_mark(written) => {}
            [_, ..] if plain.iter().all(char::is_ascii_uppercase) => letters.extend(plain),
            _ => return Err(written),
        }
    }
    Ok(letters)
}

/// A combining mark of the Latin script.
fn is_mark(part: char) -> bool {
    ('\u{300}'..='\u{36f}').contains(&part)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(word: &str, wanted: &str) {
        let ours = letters(word).map(|letters| letters.into_iter().collect::<String>());
        assert_eq!(ours, Ok(wanted.to_owned()), "{word}");
    }

    #[test]
    fn accents_fold_and_the_tilde_of_n_stays() {
        check("cat", "CAT");
        check("niño", "NIÑO");
        // the same, as a keyboard that writes marks apart leaves it
        check("nin\u{303}o", "NIÑO");
        check("NIÑO", "NIÑO");
        check("pájaro", "PAJARO");
        check("pingüino", "PINGUINO");
        check("façade", "FACADE");
        check("straße", "STRASSE");
        check("œuf", "OEUF");
        check("O'Brien", "OBRIEN");
        check("sol-y-mar", "SOLYMAR");
        // a tilde elsewhere is an accent
        check("mãe", "MAE");
        check("", "");
    }

    #[test]
    fn double_letters_stay_double() {
        check("ball", "BALL");
        check("llave", "LLAVE");
        check("perro", "PERRO");
    }

    #[test]
    fn what_no_letter_stands_for_is_named() {
        for (word, odd) in [
            ("cat1", '1'),
            ("кот", 'к'),
            ("sun!", '!'),
            ("日", '日'),
            ("ñ5", '5'),
        ] {
            assert_eq!(letters(word), Err(odd), "{word}");
        }
    }

    #[test]
    fn the_alphabet_is_what_words_are_made_of() {
        for letter in ALPHABET {
            assert_eq!(letters(&letter.to_string()), Ok(vec![letter]));
            assert_eq!(
                letters(&letter.to_lowercase().to_string()),
                Ok(vec![letter])
            );
        }
    }
}
