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
        .map(|known| (strsim::damerau_levenshtein(&lower, known), known))
        .filter(|(steps, _)| *steps <= allowed)
        .min()
        .map(|(_, known)| known)
}
