//! Numbers, dates and lists in the manner of a language.

use unit::Units;

use crate::catalogue::Language;

impl Language {
    /// Between whole and part.
    pub fn mark(self) -> char {
        match self {
            Language::En => '.',
            Language::Es => ',',
        }
    }
}

/// A number with a fixed count of decimals; from ten thousand on the thousands stand apart
/// by a narrow no-break blank, which both languages read.
pub fn decimal(value: f64, places: usize, language: Language) -> String {
    let text = unit::show::decimal(value, places, language.mark());
    let (sign, digits) = match text.strip_prefix('-') {
        Some(digits) => ("-", digits),
        None => ("", text.as_str()),
    };
    let whole = digits.find(language.mark()).unwrap_or(digits.len());
    if whole <= 4 {
        return text;
    }
    let mut out = String::from(sign);
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && at < whole && (whole - at).is_multiple_of(3) {
            out.push('\u{202f}');
        }
        out.push(digit);
    }
    out
}

/// A length in the user's unit, metres to two decimals.
pub fn length(metres: f64, units: Units, language: Language) -> String {
    unit::show::length(metres, units, 2, language.mark())
}

/// A length as a tape was read: metres to the millimetre, inches to the eighth.
pub fn reading(metres: f64, units: Units, language: Language) -> String {
    unit::show::reading(metres, units, language.mark())
}

/// An area in the user's unit.
pub fn area(square_metres: f64, units: Units, language: Language) -> String {
    unit::show::area(square_metres, units, 2, language.mark())
}

/// `A`, `A and B`, `A, B and C`.
pub fn list(names: &[String], language: Language) -> String {
    let and = match (language, names.last().map(String::as_str)) {
        (Language::En, _) => "and",
        (Language::Es, Some(last)) if starts_with_i(last) => "e",
        (Language::Es, _) => "y",
    };
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} {and} {last}", first.join(", ")),
    }
}

/// In Spanish `y` becomes `e` before the sound i.
fn starts_with_i(word: &str) -> bool {
    let word = word.to_lowercase();
    let word = word.strip_prefix('h').unwrap_or(&word);
    word.starts_with(['i', 'í']) && !word.starts_with("ie")
}

/// A date: `1 September 2026`, `1 de septiembre de 2026`.
pub fn date(year: i32, month: u8, day: u8, language: Language) -> String {
    const EN: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    const ES: [&str; 12] = [
        "enero",
        "febrero",
        "marzo",
        "abril",
        "mayo",
        "junio",
        "julio",
        "agosto",
        "septiembre",
        "octubre",
        "noviembre",
        "diciembre",
    ];
    let at = usize::from(month.clamp(1, 12)) - 1;
    match language {
        Language::En => format!("{day} {} {year}", EN[at]),
        Language::Es => format!("{day} de {} de {year}", ES[at]),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_the_manner_of_the_language() {
        assert_eq!(decimal(1234.5, 1, Language::En), "1234.5");
        assert_eq!(decimal(12_345.5, 1, Language::En), "12\u{202f}345.5");
        assert_eq!(
            decimal(-1_234_567.0, 0, Language::Es),
            "-1\u{202f}234\u{202f}567"
        );
        assert_eq!(decimal(-0.004, 2, Language::Es), "0,00");
    }

    #[test]
    fn names_are_joined_as_one_says_them() {
        let names = |text: &str| text.split(' ').map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(list(&names("A"), Language::En), "A");
        assert_eq!(list(&names("A B C"), Language::En), "A, B and C");
        assert_eq!(list(&names("A B"), Language::Es), "A y B");
        assert_eq!(list(&names("A hilo"), Language::Es), "A e hilo");
        assert_eq!(list(&names("A hielo"), Language::Es), "A y hielo");
    }
}
