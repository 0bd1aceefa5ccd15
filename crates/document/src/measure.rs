//! Lengths and areas as a drawing and a table show them.

use unit::show::{Inches, feet};
use unit::{FOOT, INCH, Units};
use words::number::decimal;

use crate::sheet::Sheet;

/// A length on a drawing: metres to two decimals, or feet and inches to a quarter.
pub fn dimension(metres: f64, sheet: &Sheet) -> String {
    match sheet.units {
        Units::Metres => plain(metres, 2, sheet),
        Units::Feet => feet(metres, Inches::QUARTERS),
    }
}

/// A reading: metres to the millimetre, or feet and inches to an eighth.
pub fn reading(metres: f64, sheet: &Sheet) -> String {
    match sheet.units {
        Units::Metres => plain(metres, 3, sheet),
        Units::Feet => feet(metres, Inches::EIGHTHS),
    }
}

/// A coordinate: metres, or decimal feet, so that columns stand under each other.
pub fn coordinate(metres: f64, sheet: &Sheet) -> String {
    match sheet.units {
        Units::Metres => plain(metres, 3, sheet),
        Units::Feet => plain(metres / FOOT, 2, sheet),
    }
}

/// A small length, as an error is: millimetres, or inches; without its unit.
pub fn small(metres: f64, sheet: &Sheet) -> String {
    match sheet.units {
        Units::Metres => plain(metres * 1000.0, 1, sheet),
        Units::Feet => plain(metres / INCH, 2, sheet),
    }
}

/// The unit of [`small`].
pub fn small_unit(units: Units) -> &'static str {
    match units {
        Units::Metres => "mm",
        Units::Feet => "in",
    }
}

/// The unit of [`dimension`] and [`coordinate`].
pub fn unit(units: Units) -> &'static str {
    match units {
        Units::Metres => "m",
        Units::Feet => "ft",
    }
}

/// A length with its unit.
pub fn length(metres: f64, sheet: &Sheet) -> String {
    match sheet.units {
        Units::Metres => format!("{} m", dimension(metres, sheet)),
        Units::Feet => dimension(metres, sheet),
    }
}

/// An area with its unit: m² to two decimals, ft² to one.
pub fn area(square_metres: f64, sheet: &Sheet) -> String {
    format!(
        "{} {}²",
        area_figure(square_metres, sheet),
        unit(sheet.units)
    )
}

/// An area without its unit.
pub fn area_figure(square_metres: f64, sheet: &Sheet) -> String {
    match sheet.units {
        Units::Metres => plain(square_metres, 2, sheet),
        Units::Feet => plain(square_metres / (FOOT * FOOT), 1, sheet),
    }
}

/// Half the width of the 95 % interval over its standard deviation (normal quantile at
/// 0.975; building.md 2.4 prints 1.959964, recomputed with scipy).
pub const HALF_95: f64 = 1.959_963_984_540_054;

/// Half-axis of a 95 % ellipse over the standard one: the root of chi-square(0.95, 2),
/// which is -2 ln 0.05 exactly; building.md 2.4 prints 5.9915.
pub fn ellipse_95() -> f64 {
    libm::sqrt(-2.0 * libm::log(0.05))
}

/// An area and half its 95 % interval, with the unit.
pub fn area_and_doubt(value: f64, sigma: f64, sheet: &Sheet) -> String {
    format!(
        "{} ± {}",
        area_figure(value, sheet),
        area(sigma * HALF_95, sheet)
    )
}

/// A number with so many decimals in the manner of the language, with a true minus sign.
pub fn plain(value: f64, decimals: usize, sheet: &Sheet) -> String {
    decimal(value, decimals, sheet.language).replace('-', "−")
}

#[cfg(test)]
mod tests {
    use words::Language;

    use super::*;
    use crate::sheet::Paper;

    fn sheet(units: Units, language: Language) -> Sheet<'static> {
        Sheet {
            name: "Tern Street",
            language,
            units,
            paper: Paper::A4,
            date: "2026-09-01",
            large: false,
            north: None,
            credit: None,
            assumed: &[],
        }
    }

    #[test]
    fn figures_read_as_people_write_them() {
        let (m, ft) = (
            sheet(Units::Metres, Language::En),
            sheet(Units::Feet, Language::En),
        );
        let es = sheet(Units::Metres, Language::Es);
        assert_eq!(dimension(5.3149, &m), "5.31");
        assert_eq!(dimension(5.3149, &es), "5,31");
        assert_eq!(dimension(5.3149, &ft), "17 ft 5 1/4 in");
        assert_eq!(plain(-1.25, 1, &m), "−1.2");
        assert_eq!(plain(-0.001, 2, &m), "0.00");
    }

    /// Source: building.md 2.4, chi-square 95 % at two degrees of freedom, 5.9915.
    #[test]
    fn the_ellipse_factor_is_the_tables() {
        assert!((ellipse_95() * ellipse_95() - 5.9915).abs() < 5e-5);
    }

    /// Source: building.md 2.3, Y1: area 351.921969, sigma 0.100847.
    #[test]
    fn the_yards_area_carries_its_doubt() {
        let m = sheet(Units::Metres, Language::En);
        assert_eq!(
            area_and_doubt(351.921_969, 0.100_847, &m),
            "351.92 ± 0.20 m²"
        );
    }
}
