//! What a figure costs in outline: its paint by the litre and its masking tape.
//!
//! Whole cans, primer, grit and tools belong to the shopping list of the build; here each
//! figure carries its own share, so that figures can be weighed against each other.

use std::collections::BTreeMap;

use geo::{Area, Euclidean, Length};
use ledger::Ledger;
use marking::{Colour, Figure, Ground};

use crate::millionth;

/// The figures of the ledger that costs rest on.
mod fig {
    ledger::figures! {
        pub COATS = "paint.coats";
        pub RATE_ASPHALT = "paint.rate_asphalt";
        pub RATE_CONCRETE = "paint.rate_concrete";
        pub LOSS = "paint.loss_stencil";
        pub LOSS_COLOUR = "paint.loss_colour";
        pub TAPE_OVER = "tape.over";
        pub PRICE_PAINT = "price.paint";
        pub PRICE_TAPE = "price.tape";
    }
}

/// Litres of each colour: area x coats / rate x (1 + loss), and a little for each colour.
pub fn litres(figure: &Figure, ground: Ground, ledger: &Ledger) -> BTreeMap<Colour, f64> {
    let rate = ledger.number(match ground {
        Ground::Asphalt => fig::RATE_ASPHALT,
        Ground::Concrete => fig::RATE_CONCRETE,
    });
    let a_square_metre = ledger.number(fig::COATS) / rate * (1.0 + ledger.number(fig::LOSS));
    let mut areas: BTreeMap<Colour, f64> = BTreeMap::new();
    for paint in &figure.paint {
        *areas.entry(paint.colour).or_default() += paint.polygon.unsigned_area();
    }
    let spare = ledger.number(fig::LOSS_COLOUR);
    areas
        .into_iter()
        .map(|(colour, area)| (colour, millionth(area * a_square_metre + spare)))
        .collect()
}

/// Metres of masking tape.
pub fn tape(figure: &Figure, ledger: &Ledger) -> f64 {
    let rings = figure.paint.iter().flat_map(|paint| {
        std::iter::once(paint.polygon.exterior()).chain(paint.polygon.interiors())
    });
    let outline: f64 = rings.map(|ring| Euclidean.length(ring)).sum();
    millionth(outline * ledger.number(fig::TAPE_OVER))
}

/// What a litre of paint and a metre of tape cost, in the project's currency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// A litre of paint.
    pub paint: f64,
    /// A metre of masking tape.
    pub tape: f64,
}

impl Prices {
    /// The ledger's, where the project names none.
    pub fn usual(ledger: &Ledger) -> Prices {
        Prices {
            paint: ledger.number(fig::PRICE_PAINT),
            tape: ledger.number(fig::PRICE_TAPE),
        }
    }
}

/// What a figure costs, in the project's currency.
pub fn cost(figure: &Figure, ground: Ground, prices: Prices, ledger: &Ledger) -> f64 {
    let paint: f64 = litres(figure, ground, ledger).values().sum();
    millionth(paint * prices.paint + tape(figure, ledger) * prices.tape)
}

#[cfg(test)]
mod tests {
    use geo::polygon;
    use marking::Paint;

    use super::*;

    /// building.md 3.1 (practice): 3.2 m², 2 coats, 5 m²/L, 15 % loss -> 1.472 L.
    #[test]
    fn the_litres_are_those_of_the_worked_check() {
        let mut ledger = Ledger::shipped().expect("the shipped ledger reads");
        ledger
            .replace("paint.loss_stencil", &[0.15])
            .expect("one number");
        ledger
            .replace("paint.loss_colour", &[0.0])
            .expect("one number");
        let square =
            polygon![(x: 0.0, y: 0.0), (x: 3.2, y: 0.0), (x: 3.2, y: 1.0), (x: 0.0, y: 1.0)];
        let figure = Figure {
            family: "drawn".to_owned(),
            lengths: Vec::new(),
            paint: vec![Paint {
                colour: Colour::Chalk,
                polygon: square.clone(),
            }],
            cells: Vec::new(),
            facing: None,
            lanes: Vec::new(),
            tracks: 1,
            wait: Vec::new(),
            envelope: square,
        };
        let litres = litres(&figure, Ground::Asphalt, &ledger);
        assert_eq!(litres.get(&Colour::Chalk), Some(&1.472));
        assert!((tape(&figure, &ledger) - 8.4 * 1.1).abs() < 1e-9);
    }
}
