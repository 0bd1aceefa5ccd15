//! Syllables of a Spanish word: as many as it has nuclei, by the rules of the orthography.
//!
//! A strong vowel (a, e, o) is a nucleus, and so is a weak one (i, u) with an accent. Any
//! other weak vowel leans on a nucleus beside it; two that have none make one together, but
//! two of the same part. The u
//! of que, qui, gue, gui is silent; y is a vowel where none follows; h parts nothing.

/// Syllables of a word of small letters.
pub fn syllables(word: &str) -> u32 {
    let letters: Vec<char> = word.chars().filter(|letter| *letter != 'h').collect();
    let mut count = 0;
    // Weak vowels in a row, and whether a nucleus stood right before them.
    let (mut weak, mut leans) = (0_u32, false);
    let mut nucleus = false;
    for (place, letter) in letters.iter().enumerate() {
        let before = place.checked_sub(1).map(|place| letters[place]);
        let after = letters.get(place + 1).copied();
        match sound(before, *letter, after) {
            Sound::Strong => {
                count += 1;
                (weak, nucleus) = (0, true);
            }
            Sound::Weak => {
                if before == Some(*letter) {
                    count += u32::from(!leans);
                    (weak, nucleus) = (0, false);
                }
                if weak == 0 {
                    leans = nucleus;
                }
                weak += 1;
                nucleus = false;
            }
            Sound::Silent => {}
            Sound::Consonant => {
                count += u32::from(weak > 0 && !leans);
                (weak, nucleus) = (0, false);
            }
        }
    }
    count += u32::from(weak > 0 && !leans);
    count.max(1)
}

enum Sound {
    Strong,
    Weak,
    Silent,
    Consonant,
}

fn sound(before: Option<char>, letter: char, after: Option<char>) -> Sound {
    match letter {
        'a' | 'e' | 'o' | 'á' | 'é' | 'ó' | 'í' | 'ú' => Sound::Strong,
        'u' if matches!(before, Some('q' | 'g'))
            && matches!(after, Some('e' | 'é' | 'i' | 'í')) =>
        {
            Sound::Silent
        }
        'i' | 'u' | 'ü' => Sound::Weak,
        'y' if !after.is_some_and(|next| "aeiouáéíóúü".contains(next)) => Sound::Weak,
        _ => Sound::Consonant,
    }
}

#[cfg(test)]
mod tests {
    use super::syllables;

    /// Source: the rules of diphthong and hiatus, Real Academia Española, Ortografía de la
    /// lengua española 2010; the words from memory of its examples and of ours.
    #[test]
    fn diphthongs_and_hiatuses_fall_as_the_orthography_says() {
        for (word, parts) in [
            ("a-é-re-o", 4),
            ("rí-o", 2),
            ("ciu-dad", 2),
            ("cui-da-do", 3),
            ("hé-ro-e", 3),
            ("a-ho-ra", 3),
            ("pa-ís", 2),
            ("gui-ta-rra", 3),
            ("pin-güi-no", 3),
            ("que-so", 2),
            ("U-ru-guay", 3),
            ("y", 1),
            ("hoy", 1),
            ("pla-ya", 2),
            ("bú-ho", 2),
            ("ca-í-da", 3),
            ("es-ta-ción", 3),
            ("pie", 1),
            ("a-huma-do", 3),
            ("lim-piáis", 2),
            ("chi-i-ta", 3),
        ] {
            assert_eq!(
                syllables(&word.replace('-', "").to_lowercase()),
                parts,
                "{word}"
            );
        }
    }
}
