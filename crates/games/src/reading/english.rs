//! Syllables of an English word: vowel groups, mended by rules and a list.
//!
//! English spelling does not say how many there are: the rules catch the silent e, endings and
//! the vowels that part; [`KNOWN`] holds words of our games and common ones that no rule
//! catches.

/// Words that the rules miss, with their syllables as said.
const KNOWN: &[(&str, u32)] = &[
    ("area", 3),
    ("idea", 3),
    ("quiet", 2),
    ("people", 2),
    ("rhythm", 2),
    ("poem", 2),
    ("science", 2),
    ("someone", 2),
    ("forehead", 2),
    ("useful", 2),
    ("useless", 2),
    ("joey", 2),
    ("cafe", 2),
    ("tired", 2),
    ("tyre", 2),
    ("drawer", 1),
];

/// Endings that are said by themselves, and as how many syllables.
const ENDINGS: &[(&str, u32)] = &[
    ("fully", 2),
    ("ness", 1),
    ("less", 1),
    ("ment", 1),
    ("ments", 1),
    ("ful", 1),
    ("ly", 1),
    ("'s", 0),
    ("n't", 0),
    ("'ll", 0),
    ("'re", 0),
    ("'ve", 0),
    ("'d", 0),
];

/// First parts of compounds whose e is silent, and their syllables.
const FIRSTS: &[(&str, u32)] = &[
    ("some", 1),
    ("side", 1),
    ("base", 1),
    ("safe", 1),
    ("every", 2),
];

/// Letters that part, where no ending of [`JOINED`] holds them.
const PARTED: &[&str] = &[
    "ia", "io", "iu", "eo", "ua", "uo", "ii", "ao", "yer", "yi", "yo", "ya", "ient", "creat",
];

/// Where vowels that mostly part belong together.
const JOINED: &[&str] = &[
    "tio", "sio", "cio", "gio", "cia", "tia", "sia", "qua", "gua", "quo", "geo", "iage", "tient",
    "cient", "creatu",
];

/// Bytes of the longest word that is taken apart.
const LONGEST: usize = 64;

/// Syllables of a word of small letters.
pub fn syllables(word: &str) -> u32 {
    let known = |word: &str| KNOWN.iter().find(|(known, _)| *known == word);
    if let Some((_, count)) = known(word).or_else(|| known(word.strip_suffix('s')?)) {
        return *count;
    }
    by_rules(word)
}

fn by_rules(word: &str) -> u32 {
    // What is longer is no word, and would be taken apart too deep.
    let parts = word.len() <= LONGEST;
    for (first, count) in FIRSTS.iter().filter(|_| parts) {
        if let Some(rest) = word.strip_prefix(first)
            && rest.len() > 1
            && rest.starts_with(|c| !vowel(c))
            && rest.contains(vowel)
        {
            return count + syllables(rest);
        }
    }
    for (ending, count) in ENDINGS.iter().filter(|_| parts) {
        if let Some(stem) = word.strip_suffix(ending)
            && (stem.chars().count() > 3 || *count == 0)
            && stem.contains(vowel)
        {
            return syllables(stem) + count;
        }
    }
    let letters: Vec<char> = word.chars().collect();
    let mut count = 0_u32;
    let mut inside = false;
    for (place, letter) in letters.iter().enumerate() {
        // A y before a vowel at the start is a consonant: yard, yellow.
        let is = vowel(*letter) && !(*letter == 'y' && place == 0 && letters.len() > 1);
        count += u32::from(is && !inside);
        inside = is;
    }
    count += parted(word);
    count = count.saturating_sub(u32::from(silent_end(word)));
    count.max(1)
}

fn vowel(letter: char) -> bool {
    "aeiouy".contains(letter)
}

/// Vowels side by side that are said apart.
fn parted(word: &str) -> u32 {
    let times = |part: &str| word.matches(part).count();
    let pairs = PARTED.iter().filter(|pair| word.contains(**pair));
    let pairs = pairs.map(|pair| {
        let joined = JOINED.iter().filter(|joined| joined.contains(pair));
        let joined: usize = joined.map(|joined| times(joined)).sum();
        // A y at the start is a consonant.
        let first = usize::from(pair.starts_with('y') && word.starts_with(pair));
        times(pair).saturating_sub(joined + first) as u32
    });
    // Going, seeing; easier, happiest.
    let ing = word
        .strip_suffix("ing")
        .or_else(|| word.strip_suffix("ings"))
        .is_some_and(|stem| stem.ends_with(|c| "aeou".contains(c)) && !stem.ends_with("qu"));
    let more = ["ier", "iest", "iers"]
        .iter()
        .find_map(|ending| word.strip_suffix(ending))
        .is_some_and(|stem| stem.contains(vowel));
    pairs.sum::<u32>() + u32::from(ing) + u32::from(more)
}

/// Whether the last e, es or ed is not said.
fn silent_end(word: &str) -> bool {
    let stem = |ending| word.strip_suffix(ending);
    // Little, circles, tumbled, metre: the l or r is said with it.
    let l = |stem: &str| {
        let mut back = stem.chars().rev();
        back.next().is_some_and(|last| {
            "lr".contains(last) && back.next().is_some_and(|c| !vowel(c) && c != last)
        })
    };
    let said = |stem: &str| !stem.contains(vowel) || stem.ends_with(vowel);
    if let Some(stem) = stem("ed") {
        return !said(stem) && !l(stem) && !stem.ends_with(['t', 'd']);
    }
    if let Some(stem) = stem("es") {
        let hissed = stem.ends_with(['s', 'x', 'z', 'c', 'g'])
            || stem.ends_with("ch")
            || stem.ends_with("sh");
        return !said(stem) && !l(stem) && !hissed;
    }
    stem("e").is_some_and(|stem| !said(stem) && !l(stem))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_holds_only_what_no_rule_catches() {
        let idle: Vec<&str> = KNOWN
            .iter()
            .filter(|(word, count)| by_rules(word) == *count)
            .map(|(word, _)| *word)
            .collect();
        assert!(idle.is_empty(), "{idle:?}");
    }

    #[test]
    fn a_word_of_any_length_is_counted() {
        assert!(syllables(&"ly".repeat(1 << 20)) > 0);
        assert!(syllables(&"some".repeat(1 << 20)) > 0);
    }
}
