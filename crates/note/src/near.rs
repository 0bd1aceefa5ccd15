//! The nearest right spelling.

/// The known word nearest to `word`, if it is near enough to be meant.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let lower = word.to_lowercase();
    let allowed = match lower.chars().count() {
        0..=1 => 0,
        2..=3 => 1,
        4..=6 => 2,
        _ => 3,
    };
    known
        .into_iter()
        .map(|known| {
            (
                strsim::damerau_levenshtein(&lower, &known.to_lowercase()),
                known,
            )
        })
        .filter(|(steps, _)| *steps <= allowed)
        .min_by_key(|(steps, known)| (*steps, *known))
        .map(|(_, known)| known)
}

/// Whether one word is the other but for a slip of the pen: so near that it is told once.
pub fn is_slip(word: &str, meant: &str) -> bool {
    let steps = strsim::damerau_levenshtein(&word.to_lowercase(), &meant.to_lowercase());
    let allowed = match meant.chars().count() {
        0..=2 => 0,
        3..=5 => 1,
        _ => 2,
    };
    steps <= allowed
}

#[cfg(test)]
mod tests {
    use super::{is_slip, nearest};

    #[test]
    fn a_slip_is_nearer_than_another_word() {
        assert!(is_slip("lft", "left") && is_slip("redaing", "reading") && is_slip("Name", "name"));
        assert!(!is_slip("date", "name") && !is_slip("to", "from"));
    }

    #[test]
    fn a_slip_of_a_letter_or_two_is_understood() {
        let known = ["boundary", "walked", "origin", "towards"];
        assert_eq!(nearest("boundry", known), Some("boundary"));
        assert_eq!(nearest("toward", known), Some("towards"));
        assert_eq!(nearest("Origin", known), Some("origin"));
        assert_eq!(nearest("price", known), None);
        assert_eq!(nearest("a1", ["A1", "A2"]), Some("A1"));
    }
}
