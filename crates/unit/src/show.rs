//! Lengths and areas in the user's unit.
//!
//! Digits and unit marks only; the mark between whole and part is the caller's, since it
//! belongs to the language.

use crate::{FOOT, INCH, Units};

/// How fine feet and inches are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Inches {
    /// Parts of an inch: 1, 2, 4, 8 or 16.
    pub parts: u32,
}

impl Inches {
    /// As a tape in the yard is read.
    pub const QUARTERS: Inches = Inches { parts: 4 };
    /// As a careful reading is written down.
    pub const EIGHTHS: Inches = Inches { parts: 8 };
}

/// A decimal number with a fixed number of places and the language's mark; `-` for what is
/// not finite.
pub fn decimal(value: f64, places: usize, mark: char) -> String {
    if !value.is_finite() {
        return "-".to_owned();
    }
    let text = format!("{:.places$}", value + 0.0);
    let text = if text.trim_start_matches(['-', '0', '.']).is_empty() {
        text.trim_start_matches('-').to_owned()
    } else {
        text
    };
    if mark == '.' {
        text
    } else {
        text.replace('.', &mark.to_string())
    }
}

/// A length with its unit: `5.31 m`, or `17 ft 5 1/4 in`.
pub fn length(metres: f64, units: Units, places: usize, mark: char) -> String {
    match units {
        Units::Metres => format!("{} m", decimal(metres, places, mark)),
        Units::Feet => feet(metres, Inches::QUARTERS),
    }
}

/// A length as a tape was read: metres to the millimetre, feet and inches to the eighth.
pub fn reading(metres: f64, units: Units, mark: char) -> String {
    match units {
        Units::Metres => length(metres, units, 3, mark),
        Units::Feet => feet(metres, Inches::EIGHTHS),
    }
}

/// Feet and inches to the nearest part: `17 ft 5 1/4 in`, `5 1/4 in`, `17 ft`.
pub fn feet(metres: f64, inches: Inches) -> String {
    if !metres.is_finite() {
        return "- ft".to_owned();
    }
    let parts = inches.parts.max(1);
    let total = (metres.abs() / INCH * f64::from(parts)).round() as u64;
    let a_foot = 12 * u64::from(parts);
    let (whole, rest) = (total / a_foot, total % a_foot);
    let (inch, part) = (rest / u64::from(parts), rest % u64::from(parts));
    let sign = if metres < 0.0 && total > 0 { "-" } else { "" };
    let fraction = shortest(part, u64::from(parts));
    match (whole, inch, fraction) {
        (0, 0, None) => "0 in".to_owned(),
        (0, 0, Some(fraction)) => format!("{sign}{fraction} in"),
        (0, inch, None) => format!("{sign}{inch} in"),
        (0, inch, Some(fraction)) => format!("{sign}{inch} {fraction} in"),
        (whole, 0, None) => format!("{sign}{whole} ft"),
        (whole, inch, None) => format!("{sign}{whole} ft {inch} in"),
        (whole, inch, Some(fraction)) => format!("{sign}{whole} ft {inch} {fraction} in"),
    }
}

/// A part in its shortest form, `None` for nothing.
fn shortest(mut top: u64, mut under: u64) -> Option<String> {
    if top == 0 {
        return None;
    }
    while top.is_multiple_of(2) && under.is_multiple_of(2) {
        top /= 2;
        under /= 2;
    }
    Some(format!("{top}/{under}"))
}

/// A small length, such as an uncertainty: `12 mm`, or `1/2 in`.
pub fn small(metres: f64, units: Units) -> String {
    match units {
        Units::Metres => format!("{} mm", decimal((metres * 1000.0).round(), 0, '.')),
        Units::Feet => feet(metres, Inches { parts: 16 }),
    }
}

/// An area with its unit: `351.92 m²`, or `3,788 ft²` without the grouping.
pub fn area(square_metres: f64, units: Units, places: usize, mark: char) -> String {
    match units {
        Units::Metres => format!("{} m²", decimal(square_metres, places, mark)),
        Units::Feet => {
            let square_feet = square_metres / (FOOT * FOOT);
            format!(
                "{} ft²",
                decimal(square_feet, places.saturating_sub(1), mark)
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::parse;

    #[test]
    fn feet_are_shown_as_a_tape_is_read() {
        for (metres, text) in [
            (17.0 * FOOT + 5.25 * INCH, "17 ft 5 1/4 in"),
            (17.0 * FOOT, "17 ft"),
            (5.5 * INCH, "5 1/2 in"),
            (0.25 * INCH, "1/4 in"),
            (11.99 * INCH, "1 ft"),
            (0.0, "0 in"),
            (-0.001, "0 in"),
            (-1.5 * FOOT, "-1 ft 6 in"),
        ] {
            assert_eq!(feet(metres, Inches::QUARTERS), text);
        }
        assert_eq!(length(-0.0001, Units::Metres, 2, '.'), "0.00 m");
        assert_eq!(length(5.314, Units::Metres, 2, ','), "5,31 m");
        assert_eq!(area(351.921_969, Units::Metres, 2, '.'), "351.92 m²");
        assert_eq!(area(351.921_969, Units::Feet, 1, '.'), "3788 ft²");
    }

    proptest! {
        /// Shown and read again, a length is off by half the last step at most.
        #[test]
        fn a_length_survives_the_round_trip(metres in -9_999.0..9_999.0_f64) {
            for (text, units, step) in [
                (length(metres, Units::Metres, 2, '.'), Units::Feet, 0.01),
                (length(metres, Units::Metres, 3, ','), Units::Feet, 0.001),
                (reading(metres, Units::Metres, ','), Units::Metres, 0.001),
                (reading(metres, Units::Feet, '.'), Units::Metres, INCH / 8.0),
                (feet(metres, Inches::QUARTERS), Units::Metres, INCH / 4.0),
                (feet(metres, Inches { parts: 16 }), Units::Feet, INCH / 16.0),
            ] {
                let read = parse::length(&text, units);
                let near = |read: f64| (read - metres).abs() <= step / 2.0 + 1e-9;
                prop_assert!(read.as_ref().is_ok_and(|read| near(*read)), "{}: {:?}", text, read);
            }
        }
    }

    #[test]
    fn what_is_no_number_is_shown_as_a_gap() {
        for odd in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(length(odd, Units::Metres, 2, '.'), "- m");
            assert_eq!(length(odd, Units::Feet, 2, '.'), "- ft");
            assert_eq!(small(odd, Units::Metres), "- mm");
        }
    }

    #[test]
    fn what_is_shown_is_read_again() {
        for step in 0..40_000_u32 {
            let metres = f64::from(step) * 0.25 * INCH;
            let text = feet(metres, Inches::QUARTERS);
            let read = parse::length(&text, Units::Metres);
            assert!(
                read.is_ok_and(|read| (read - metres).abs() < 1e-9),
                "{text}"
            );
        }
    }
}
