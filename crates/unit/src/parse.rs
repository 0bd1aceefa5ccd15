//! Lengths, angles and areas as people write them.
//!
//! Generous in what is plain (`5.31 m`, `5,31 m`, `531 cm`, `17 ft 5 1/4 in`,
//! `17' 5 1/4"`, `17′ 5¼″`), and a refusal with a way on where two readings are possible.
//!
//! A point always divides. A comma divides too, unless exactly three digits follow one to
//! three others: `1,234` may be grouped. In metres it still divides, as in the reading
//! `23,997 m`, because grouped it would be over a kilometre and no tape is; in any other
//! unit it is refused. So is `5.310 mm`, which is grouped or finer than any tape.

use crate::{FOOT, INCH, LONGEST, Units};

/// Why a text is no length, angle or area.
#[derive(Clone, Debug, PartialEq)]
pub enum LengthFault {
    /// Nothing there.
    Empty,
    /// No number where one was expected: this stands there.
    NotANumber(String),
    /// A unit that is none of ours: m, cm, mm, ft, in (with areas and angles, theirs).
    UnknownUnit(String),
    /// `1.234,5`, `1,234 ft`: points or commas that could group or divide.
    Ambiguous(String),
    /// Units in the wrong order or twice, as in `5 in 2 ft` or `2 m 3 ft`.
    Order,
    /// Inches of 12 or more after feet, or a fraction of 1 or more.
    Carry(String),
    /// Past 10 km, or its square.
    TooLong,
}

/// A length in metres from its text; a bare number is in the project's unit.
///
/// # Errors
/// [`LengthFault`], which says what stands in the way.
pub fn length(text: &str, units: Units) -> Result<f64, LengthFault> {
    let clean = plain(text);
    let clean = clean.trim();
    if clean.is_empty() {
        return Err(LengthFault::Empty);
    }
    let (sign, mut rest) = signed(clean);
    if rest.is_empty() {
        return Err(LengthFault::NotANumber(clean.to_owned()));
    }
    let mut metres = 0.0;
    let mut last: Option<Unit> = None;
    while !rest.is_empty() {
        let digits = digits_of(rest);
        let (value, fraction, after) = number(rest)?;
        let (unit, after) = unit(after)?;
        let unit = match (unit, last) {
            (Some(unit), _) => unit,
            // `17' 5`: what follows feet without a unit is inches.
            (None, Some(Unit::Feet)) => Unit::Inches,
            (None, Some(_)) => return Err(LengthFault::Order),
            (None, None) if units == Units::Metres => Unit::Metres,
            (None, None) => Unit::Feet,
        };
        if could_group(digits, unit) {
            return Err(LengthFault::Ambiguous(digits.to_owned()));
        }
        if let Some(before) = last
            && !(before == Unit::Feet && unit == Unit::Inches)
        {
            return Err(LengthFault::Order);
        }
        if last.is_some() && value + fraction >= 12.0 {
            return Err(LengthFault::Carry(rest.trim().to_owned()));
        }
        metres += (value + fraction) * unit.metres();
        last = Some(unit);
        rest = after.trim_start();
    }
    if metres.is_finite() && metres <= LONGEST {
        Ok(sign * metres)
    } else {
        Err(LengthFault::TooLong)
    }
}

/// Whether the digits before a unit could be meant as thousands.
fn could_group(digits: &str, unit: Unit) -> bool {
    let mark = match unit {
        Unit::Metres => return false,
        Unit::Millimetres => [',', '.'].as_slice(),
        _ => [','].as_slice(),
    };
    digits.split_once(mark).is_some_and(|(left, right)| {
        (1..=3).contains(&left.len()) && !left.starts_with('0') && right.len() == 3
    })
}

/// An angle in radians from degrees (`30`, `30°`, `30 deg`) or `0.5 rad`.
///
/// # Errors
/// [`LengthFault`], as for lengths; [`LengthFault::TooLong`] past 100 turns.
pub fn angle(text: &str) -> Result<f64, LengthFault> {
    let (value, unit) = quantity(text)?;
    let radians = match unit.as_str() {
        "" | "°" | "º" | "deg" | "degree" | "degrees" | "grado" | "grados" => value.to_radians(),
        "rad" | "radian" | "radians" | "radianes" => value,
        _ => return Err(LengthFault::UnknownUnit(unit)),
    };
    if radians.abs() <= 100.0 * std::f64::consts::TAU {
        Ok(radians)
    } else {
        Err(LengthFault::TooLong)
    }
}

/// An area in square metres: `12.5 m²`, `12.5 m2`, `12.5 sq m`, `300 ft²`, `300 sq ft`; a
/// bare number is in the square of the project's unit.
///
/// # Errors
/// [`LengthFault`], as for lengths.
pub fn area(text: &str, units: Units) -> Result<f64, LengthFault> {
    let (value, unit) = quantity(text)?;
    let square_metres = match (unit.as_str(), units) {
        ("", Units::Metres) | ("m²" | "m2" | "m^2" | "sq m" | "sqm", _) => value,
        ("", Units::Feet) | ("ft²" | "ft2" | "ft^2" | "sq ft" | "sqft" | "pies²", _) => {
            value * FOOT * FOOT
        }
        _ => return Err(LengthFault::UnknownUnit(unit)),
    };
    if square_metres.abs() <= LONGEST * LONGEST {
        Ok(square_metres)
    } else {
        Err(LengthFault::TooLong)
    }
}

/// A signed number and the word behind it, in small letters and single blanks.
fn quantity(text: &str) -> Result<(f64, String), LengthFault> {
    let clean = plain(text);
    let text = clean.trim();
    if text.is_empty() {
        return Err(LengthFault::Empty);
    }
    let (sign, digits) = signed(text);
    let (value, fraction, rest) = number(digits)?;
    let words: Vec<&str> = rest.split_whitespace().collect();
    let unit = words.join(" ").to_lowercase();
    Ok((
        sign * (value + fraction),
        unit.trim_end_matches('.').to_owned(),
    ))
}

fn signed(text: &str) -> (f64, &str) {
    match text.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(text).trim_start()),
    }
}

/// A plain number with a decimal point or comma.
///
/// # Errors
/// [`LengthFault`], as for lengths.
pub fn plain_number(text: &str) -> Result<f64, LengthFault> {
    let clean = plain(text);
    let text = clean.trim();
    if text.is_empty() {
        return Err(LengthFault::Empty);
    }
    let (sign, digits) = signed(text);
    let (value, fraction, rest) = number(digits)?;
    if rest.trim().is_empty() {
        Ok(sign * (value + fraction))
    } else {
        Err(LengthFault::NotANumber(rest.trim().to_owned()))
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Unit {
    Metres,
    Centimetres,
    Millimetres,
    Feet,
    Inches,
}

impl Unit {
    fn metres(self) -> f64 {
        match self {
            Unit::Metres => 1.0,
            Unit::Centimetres => 0.01,
            Unit::Millimetres => 0.001,
            Unit::Feet => FOOT,
            Unit::Inches => INCH,
        }
    }
}

/// Typographic marks become the typewriter's, and a printed fraction its two numbers.
fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 4);
    for mark in text.chars() {
        match mark {
            '′' | '’' | '‘' | '´' | '`' => out.push('\''),
            '″' | '”' | '“' => out.push('"'),
            '−' | '–' => out.push('-'),
            '\u{a0}' | '\u{202f}' | '\u{2009}' | '\t' => out.push(' '),
            '⁄' => out.push('/'),
            '½' => out.push_str(" 1/2"),
            '¼' => out.push_str(" 1/4"),
            '¾' => out.push_str(" 3/4"),
            '⅛' => out.push_str(" 1/8"),
            '⅜' => out.push_str(" 3/8"),
            '⅝' => out.push_str(" 5/8"),
            '⅞' => out.push_str(" 7/8"),
            other => out.push(other),
        }
    }
    out
}

/// A number, and a fraction behind it or in its place; what is left.
fn number(text: &str) -> Result<(f64, f64, &str), LengthFault> {
    let text = text.trim_start();
    let digits = digits_of(text);
    let rest = &text[digits.len()..];
    if digits.is_empty() {
        return Err(LengthFault::NotANumber(head(text)));
    }
    if let Some((fraction, rest)) = over(digits, rest)? {
        return Ok((0.0, fraction, rest));
    }
    let value = decimal(digits)?;
    let tail = rest.trim_start_matches([' ', '-']);
    let top = digits_of(tail);
    if tail.len() < rest.len()
        && !top.is_empty()
        && let Some((fraction, after)) = over(top, &tail[top.len()..])?
    {
        if fraction >= 1.0 {
            return Err(LengthFault::Carry(head(tail)));
        }
        return Ok((value, fraction, after));
    }
    Ok((value, 0.0, rest))
}

fn digits_of(text: &str) -> &str {
    let end = text
        .find(|mark: char| !(mark.is_ascii_digit() || mark == '.' || mark == ','))
        .unwrap_or(text.len());
    &text[..end]
}

/// `top` over what follows a slash in `rest`.
fn over<'a>(top: &str, rest: &'a str) -> Result<Option<(f64, &'a str)>, LengthFault> {
    let Some(after) = rest.strip_prefix('/') else {
        return Ok(None);
    };
    let below = digits_of(after);
    let (top, under) = (decimal(top)?, decimal(below)?);
    if under == 0.0 {
        return Err(LengthFault::NotANumber(head(after)));
    }
    Ok(Some((top / under, &after[below.len()..])))
}

/// Digits with at most one point or comma, which divides.
fn decimal(digits: &str) -> Result<f64, LengthFault> {
    let marks = digits.matches(['.', ',']).count();
    if marks > 1 {
        return Err(LengthFault::Ambiguous(digits.to_owned()));
    }
    digits
        .replace(',', ".")
        .parse()
        .map_err(|_| LengthFault::NotANumber(digits.to_owned()))
}

fn unit(text: &str) -> Result<(Option<Unit>, &str), LengthFault> {
    let text = text.trim_start();
    for (mark, unit) in [
        ("''", Unit::Inches),
        ("\"", Unit::Inches),
        ("'", Unit::Feet),
    ] {
        if let Some(rest) = text.strip_prefix(mark) {
            return Ok((Some(unit), rest));
        }
    }
    let end = text
        .find(|mark: char| !mark.is_alphabetic())
        .unwrap_or(text.len());
    let (word, rest) = text.split_at(end);
    let unit = match word.to_lowercase().as_str() {
        "" => None,
        "m" | "metre" | "metres" | "meter" | "meters" | "metro" | "metros" => Some(Unit::Metres),
        "cm" => Some(Unit::Centimetres),
        "mm" => Some(Unit::Millimetres),
        "ft" | "foot" | "feet" | "pie" | "pies" => Some(Unit::Feet),
        "in" | "inch" | "inches" | "pulg" | "pulgada" | "pulgadas" => Some(Unit::Inches),
        _ => return Err(LengthFault::UnknownUnit(word.to_owned())),
    };
    // An abbreviation may end in a full stop.
    Ok((
        unit,
        if unit.is_some() {
            rest.strip_prefix('.').unwrap_or(rest)
        } else {
            rest
        },
    ))
}

fn head(text: &str) -> String {
    text.trim().chars().take(12).collect()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn lengths_are_read_as_people_write_them() {
        let yard = 17.0 * FOOT + 5.25 * INCH;
        for (text, metres) in [
            ("5.31", 5.31),
            ("5.31 m", 5.31),
            ("5,31 m", 5.31),
            ("  5,31 ", 5.31),
            ("531 cm", 5.31),
            ("5310mm", 5.31),
            ("17 ft 5 1/4 in", yard),
            ("17' 5 1/4\"", yard),
            ("17’ 5¼”", yard),
            ("17′ 5 ¼″", yard),
            ("17 ft 5-1/4 in.", yard),
            ("17ft5.25in", yard),
            ("17' 5.25", yard),
            ("17' 5 1/4''", yard),
            ("209 1/4 in", 209.25 * INCH),
            ("1/2 in", 0.5 * INCH),
            ("-0.40 m", -0.4),
            ("−0.40", -0.4),
            (".5 m", 0.5),
            ("23,997", 23.997),
            ("1,234 m", 1.234),
            ("17.125 ft", 17.125 * FOOT),
            ("0,125 ft", 0.125 * FOOT),
            ("17ft", 17.0 * FOOT),
            ("5 1/4 in", 5.25 * INCH),
            ("+ 5.31\u{a0}m", 5.31),
            ("17 pies 5 pulg.", 17.0 * FOOT + 5.0 * INCH),
        ] {
            let read = length(text, Units::Metres);
            assert!(
                read.as_ref()
                    .is_ok_and(|read| (read - metres).abs() < 1e-12),
                "{text}: {read:?}"
            );
        }
        assert_eq!(length("17.5", Units::Feet), Ok(17.5 * FOOT));
        assert_eq!(length("5.31 m", Units::Feet), Ok(5.31));
    }

    #[test]
    fn what_could_be_two_lengths_is_refused() {
        let fault = |text: &str| length(text, Units::Metres).expect_err(text);
        assert_eq!(fault(""), LengthFault::Empty);
        assert_eq!(
            fault("1.234,5"),
            LengthFault::Ambiguous("1.234,5".to_owned())
        );
        for (text, digits) in [
            ("1,234.5", "1,234.5"),
            ("1,234 ft", "1,234"),
            ("5,310 mm", "5,310"),
            ("5.310 mm", "5.310"),
            ("17 ft 1,234 in", "1,234"),
        ] {
            assert_eq!(fault(text), LengthFault::Ambiguous(digits.to_owned()));
        }
        assert_eq!(
            length("1,234", Units::Feet),
            Err(LengthFault::Ambiguous("1,234".to_owned()))
        );
        assert_eq!(fault("-"), LengthFault::NotANumber("-".to_owned()));
        assert_eq!(fault("NaN"), LengthFault::NotANumber("NaN".to_owned()));
        assert_eq!(
            fault("5 yards"),
            LengthFault::UnknownUnit("yards".to_owned())
        );
        assert_eq!(fault("5 in 2 ft"), LengthFault::Order);
        assert_eq!(fault("2 m 3"), LengthFault::Order);
        assert_eq!(fault("17 ft 14 in"), LengthFault::Carry("14 in".to_owned()));
        assert_eq!(fault("5 3/2 in"), LengthFault::Carry("3/2 in".to_owned()));
        assert_eq!(fault("1/0 in"), LengthFault::NotANumber("0 in".to_owned()));
        assert_eq!(
            fault("twelve"),
            LengthFault::NotANumber("twelve".to_owned())
        );
        assert_eq!(fault("99999999 m"), LengthFault::TooLong);
        assert_eq!(fault("1e5"), LengthFault::UnknownUnit("e".to_owned()));
        assert_eq!(fault("."), LengthFault::NotANumber(".".to_owned()));
    }

    #[test]
    fn angles_and_areas_are_read_with_their_units() {
        let same = |a: Result<f64, LengthFault>, b: f64| a.is_ok_and(|a| (a - b).abs() < 1e-12);
        let quarter = std::f64::consts::FRAC_PI_2;
        for text in ["90", "90°", "90 deg", "90 degrees", "90,0 grados"] {
            assert!(same(angle(text), quarter), "{text}");
        }
        assert!(same(angle("-1.5 rad"), -1.5));
        assert_eq!(
            angle("90 gon"),
            Err(LengthFault::UnknownUnit("gon".to_owned()))
        );
        assert_eq!(angle("99999"), Err(LengthFault::TooLong));
        for text in ["12.5", "12,5 m²", "12.5 m2", "12.5  sq  m."] {
            assert!(same(area(text, Units::Metres), 12.5), "{text}");
        }
        assert!(same(area("100", Units::Feet), 100.0 * 144.0 * INCH * INCH));
        assert!(same(area("12.5 m²", Units::Feet), 12.5));
        assert_eq!(area("", Units::Feet), Err(LengthFault::Empty));
        assert_eq!(
            area("12 m", Units::Feet),
            Err(LengthFault::UnknownUnit("m".to_owned()))
        );
    }

    proptest! {
        /// Whatever the bytes, an answer or a fault; and an answer is within bounds.
        #[test]
        fn no_text_is_too_odd(text in "[-+0-9.,/ '\"′″¼½¾mftincé]{0,14}|.*") {
            for units in [Units::Metres, Units::Feet] {
                if let Ok(metres) = length(&text, units) {
                    prop_assert!(metres.abs() <= LONGEST);
                }
                if let Ok(area) = area(&text, units) {
                    prop_assert!(area.is_finite());
                }
            }
            if let Ok(angle) = angle(&text) {
                prop_assert!(angle.is_finite());
            }
        }

        /// A millimetre reading is the same however it is written.
        #[test]
        fn one_length_has_many_spellings(mm in 0_u32..9_999_999) {
            let metres = f64::from(mm) / 1000.0;
            let (whole, part) = (mm / 1000, mm % 1000);
            for text in [
                format!("{whole}.{part:03}"),
                format!("{whole},{part:03} m"),
                format!("{mm} mm"),
                format!("{}.{} cm", mm / 10, mm % 10),
                format!(" {whole}.{part:03}m "),
            ] {
                let read = length(&text, Units::Metres);
                prop_assert!(read.as_ref().is_ok_and(|read| (read - metres).abs() < 1e-9), "{}: {:?}", text, read);
            }
        }
    }
}
