//! `build.paint`: litres, cans, the shopping list, the years.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::round::millionth;

/// All that is bought.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Shopping {
    /// Paint by colour.
    pub colours: Vec<ColourPaint>,
    /// Litres of primer and the cans for it; null where no surface wants any.
    pub primer: Option<Primer>,
    /// The rest of the list.
    pub things: Vec<Thing>,
    /// Sum of what has a price, in the project's currency.
    pub known: f64,
    /// Lines without a price: where there are any, `known` is the least that it costs.
    pub unknown: usize,
    /// What keeping the paint up costs.
    pub upkeep: Upkeep,
}

/// Paint of one colour. Litres and square metres.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ColourPaint {
    /// The colour.
    pub colour: String,
    /// Painted area.
    pub area: f64,
    /// Litres of each coat, with what is lost on tray and tools.
    pub coats: Vec<f64>,
    /// Kept for touching up.
    pub reserve: f64,
    /// All that is needed.
    pub need: f64,
    /// The cheapest cans that hold it; empty where no can is known.
    pub cans: Vec<Can>,
    /// What is left over.
    pub over: f64,
}

/// Primer. Litres and square metres.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Primer {
    /// Primed area.
    pub area: f64,
    /// What is needed.
    pub need: f64,
    /// The cheapest cans that hold it.
    pub cans: Vec<Can>,
}

/// So many cans of one size.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Can {
    /// Litres.
    pub litres: f64,
    /// How many.
    pub count: u32,
    /// Of one; null where nobody named it.
    pub price: Option<f64>,
}

/// A line of the shopping list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Thing {
    /// As `masking-tape`.
    pub item: String,
    /// Whole units to have.
    pub count: u32,
    /// `piece`, `pair`, `roll`, `bag`, `metre` or `litre`.
    pub unit: String,
    /// Of a unit; null where nobody named it.
    pub price: Option<f64>,
    /// The ledger figures that the count follows from.
    pub rules: Vec<String>,
}

/// Some years of keeping the markings up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Upkeep {
    /// Months from painting to refresh, and from one to the next.
    pub every_months: f64,
    /// Refreshes paid for in each year, the first first; null where no price was named.
    pub by_year: Vec<Option<f64>>,
    /// First painting and refreshes as one equal payment a year.
    pub annual: Option<f64>,
}

impl Shopping {
    /// Copies the paint stage's answers.
    pub fn of(shopping: &paint::Shopping, upkeep: &paint::Upkeep) -> Shopping {
        Shopping {
            colours: shopping
                .colours
                .iter()
                .map(|paint| ColourPaint {
                    colour: paint.colour.word().to_owned(),
                    area: millionth(paint.area),
                    coats: paint.coats.iter().copied().map(millionth).collect(),
                    reserve: millionth(paint.reserve),
                    need: millionth(paint.need),
                    cans: cans(paint.cover.as_ref()),
                    over: millionth(paint.over),
                })
                .collect(),
            primer: shopping.primer.as_ref().map(|primer| Primer {
                area: millionth(primer.area),
                need: millionth(primer.litres),
                cans: cans(primer.cover.as_ref()),
            }),
            things: shopping
                .lines
                .iter()
                .map(|line| Thing {
                    item: line.item.word().to_owned(),
                    count: line.count,
                    unit: line.unit.word().to_owned(),
                    price: line.price.map(millionth),
                    rules: line.rules.iter().map(|key| key.0.to_owned()).collect(),
                })
                .collect(),
            known: millionth(shopping.total.known),
            unknown: shopping.total.unknown,
            upkeep: Upkeep {
                every_months: millionth(upkeep.every),
                by_year: upkeep
                    .by_year
                    .iter()
                    .map(|cost| cost.map(millionth))
                    .collect(),
                annual: upkeep.annual.map(millionth),
            },
        }
    }
}

fn cans(cover: Option<&paint::Cover>) -> Vec<Can> {
    let cans = cover.into_iter().flat_map(|cover| &cover.cans);
    cans.map(|cans| Can {
        litres: millionth(cans.size.litres),
        count: cans.count,
        price: cans.size.price.map(millionth),
    })
    .collect()
}
