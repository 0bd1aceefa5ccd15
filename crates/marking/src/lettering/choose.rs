//! Which letters get a cell.

use crate::letters::ALPHABET;

/// Letters by use in English and Spanish together, the most used first (from memory; only
/// spare cells hang on it).
const BY_USE: [char; 27] = [
    'E', 'A', 'O', 'S', 'N', 'R', 'I', 'L', 'T', 'D', 'U', 'C', 'M', 'P', 'B', 'G', 'H', 'F', 'V',
    'Y', 'Q', 'J', 'Z', 'K', 'X', 'W', 'Ñ',
];

/// The letters of words, in the order of the alphabet, `most` at most.
///
/// Where there are more, the letter goes whose loss costs the fewest words, and with it
/// those words; then again. Among equals the one that stands in the fewest places, then
/// the last of the alphabet.
pub(super) fn chosen(words: &[&Vec<char>], most: usize) -> Vec<char> {
    let mut alive: Vec<&Vec<char>> = words.to_vec();
    let mut kept: Vec<char> = ALPHABET
        .into_iter()
        .filter(|letter| words.iter().any(|word| word.contains(letter)))
        .collect();
    while kept.len() > most {
        let cost = |letter: char| {
            let own = alive.iter().filter(|word| word.contains(&letter));
            let places = alive.iter().flat_map(|word| word.iter());
            (own.count(), places.filter(|one| **one == letter).count())
        };
        // the last of equals: the alphabet is gone through from its end
        let Some(lost) = kept
            .iter()
            .rev()
            .copied()
            .min_by_key(|letter| cost(*letter))
        else {
            break;
        };
        kept.retain(|letter| *letter != lost);
        alive.retain(|word| !word.contains(&lost));
    }
    kept
}

/// So many letters of common use that are not kept yet, in the order of the alphabet.
pub(super) fn spare(kept: &[char], count: usize) -> Vec<char> {
    let mut spare: Vec<char> = BY_USE
        .into_iter()
        .filter(|letter| !kept.contains(letter))
        .take(count)
        .collect();
    spare.sort_by_key(|letter| ALPHABET.iter().position(|one| one == letter));
    spare
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kept(words: &[&str], most: usize) -> String {
        let words: Vec<Vec<char>> = words.iter().map(|word| word.chars().collect()).collect();
        chosen(&words.iter().collect::<Vec<_>>(), most)
            .into_iter()
            .collect()
    }

    #[test]
    fn letters_go_by_the_words_they_cost() {
        assert_eq!(kept(&["CAT", "SUN"], 9), "ACNSTU");
        // Z costs one word, each other letter two or more
        assert_eq!(kept(&["ZOO", "TO", "TOT", "OTT"], 2), "OT");
        // X goes and takes XYZ with it, so that Y and Z go next, before any of CAT
        assert_eq!(kept(&["CAT", "TAC", "XYZ"], 3), "ACT");
        assert_eq!(kept(&["SOL", "LOS", "ÑU"], 3), "LOS");
        assert_eq!(kept(&[], 5), "");
    }

    #[test]
    fn spare_letters_are_common_ones() {
        assert_eq!(spare(&['A', 'E'], 3), ['N', 'O', 'S']);
        assert_eq!(spare(&[], 27).len(), 27);
        assert_eq!(spare(&ALPHABET, 4), []);
    }

    #[test]
    fn use_ranks_the_whole_alphabet() {
        let mut ranked = BY_USE;
        ranked.sort_unstable();
        let mut alphabet = ALPHABET;
        alphabet.sort_unstable();
        assert_eq!(ranked, alphabet);
    }
}
