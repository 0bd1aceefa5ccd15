//! What a shop sells: `paint = { "0.75 L" = 14, "2.5 L" = 35 }`.

use note::{Note, msg};

use crate::read::table::{self, Desk, Table};

/// One size on sale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Package {
    /// Litres, metres or kilograms, to 1e-6 (litres to 1e-9: a quart is exact).
    pub size: f64,
    /// In the project's currency.
    pub price: f64,
}

/// What a package holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// Litres.
    Volume,
    /// Metres.
    Length,
    /// Kilograms.
    Mass,
}

/// The dearest thing on a shopping list, in any currency.
pub const DEAREST: f64 = 1e9;

/// US gallon, litres: 231 cubic inches of 25.4 mm. Exact by definition.
const GALLON: f64 = 3.785_411_784;
/// Avoirdupois pound, kilograms. Exact by definition.
const POUND: f64 = 0.453_592_37;

/// The packages of a key, smallest first.
pub fn packages(table: &Table, key: &'static str, of: Of, desk: &mut Desk) -> Vec<Package> {
    let Some(sold) = table.table(key, desk) else {
        return Vec::new();
    };
    let mut packages = Vec::new();
    for (name, value) in sold.all(desk) {
        let found = size(&name.value, of, desk);
        if found.is_none() {
            let want = match of {
                Of::Volume => msg!("package-want-volume"),
                Of::Length => msg!("package-want-length"),
                Of::Mass => msg!("package-want-mass"),
            };
            desk.notes.push(
                Note::error(name.at, msg!("package-size", found = &name.value)).expected(want),
            );
        }
        let price = table::number(value.get_ref()).filter(|price| (0.0..=DEAREST).contains(price));
        if price.is_none() {
            let at = table::place(desk.source, value.span());
            desk.notes.push(
                Note::error(at, msg!("package-price", package = name.value))
                    .expected(msg!("want-number")),
            );
        }
        packages.extend(
            found
                .zip(price)
                .map(|(size, price)| Package { size, price }),
        );
    }
    packages.sort_by(|a, b| a.size.total_cmp(&b.size));
    packages
}

/// A size above zero.
fn size(text: &str, of: Of, desk: &Desk) -> Option<f64> {
    if of == Of::Length {
        let metres = unit::parse::length(text, desk.units)
            .ok()
            .filter(|metres| *metres > 0.0)?;
        return Some((metres * 1e6).round() / 1e6);
    }
    let text = text.trim();
    let split = text.find(|mark: char| mark.is_alphabetic())?;
    let number = unit::parse::plain_number(text[..split].trim()).ok()?;
    let (one, places) = match (of, text[split..].trim()) {
        (Of::Volume, "L" | "l") => (1.0, 1e9),
        (Of::Volume, "ml" | "mL") => (0.001, 1e9),
        (Of::Volume, "gal") => (GALLON, 1e9),
        (Of::Volume, "qt") => (GALLON / 4.0, 1e9),
        (Of::Mass, "kg") => (1.0, 1e6),
        (Of::Mass, "g") => (0.001, 1e6),
        (Of::Mass, "lb") => (POUND, 1e6),
        (Of::Mass, "oz") => (POUND / 16.0, 1e6),
        _ => return None,
    };
    let size = (number * one * places).round() / places;
    (size > 0.0 && size <= 1e6).then_some(size)
}
