//! How much paint of each colour, coat by coat, and the cans for it.

use std::collections::BTreeMap;

use ledger::Ledger;
use marking::{Colour, Ground};

use crate::cans::{Cover, Size, cheapest};
use crate::figures::*;
use crate::millionth;
use crate::question::{CanSystem, Job, Painted, Prices, Shade, Surface};

/// Most coats that anyone gives.
const MOST_COATS: u32 = 10;

/// The paint of one colour.
#[derive(Clone, Debug, PartialEq)]
pub struct ColourPaint {
    /// The colour.
    pub colour: Colour,
    /// Painted area, m².
    pub area: f64,
    /// Litres of each coat, the first first: on the ground and lost on stencil, tray and
    /// roller.
    pub coats: Vec<f64>,
    /// Litres lost whatever the area.
    pub spare: f64,
    /// Litres kept for touching up.
    pub reserve: f64,
    /// Coats, spare and reserve together, litres.
    pub need: f64,
    /// What to buy; `None` where no can is sold.
    pub cover: Option<Cover>,
    /// What is bought beyond the need, litres.
    pub over: f64,
}

/// Litres of one coat: area / rate x (1 + loss).
pub fn film(area: f64, rate: f64, loss: f64) -> f64 {
    area / rate * (1.0 + loss)
}

/// Coats of a colour: two; three for straw, and for a light paint on black ground. A light
/// paint is one that can be seen on asphalt.
pub fn coats(colour: Colour, shade: Shade, ledger: &Ledger) -> u32 {
    let light = || {
        let asphalt = ledger.number(Ground::Asphalt.key());
        ledger.number(colour.key()) > asphalt && marking::seen(colour, asphalt, ledger)
    };
    let more = colour == Colour::Straw || (shade == Shade::Black && light());
    whole_coats(ledger.number(if more { COATS_MORE } else { COATS }))
}

fn whole_coats(coats: f64) -> u32 {
    coats.round().clamp(1.0, f64::from(MOST_COATS)) as u32
}

impl Painted {
    /// Each surface with its share of the marking. Where none is named it is worn asphalt,
    /// which drinks most: paint left over is a smaller harm than a marking half done.
    pub(crate) fn shares(&self) -> Vec<(Surface, f64)> {
        if !self.says_its_surface() {
            return vec![(Surface::Worn, 1.0)];
        }
        let all: f64 = self.fit_shares().map(|(_, share)| share).sum();
        self.fit_shares()
            .map(|(surface, share)| (surface, share / all))
            .collect()
    }

    /// Whether any surface has a share of the marking.
    pub(crate) fn says_its_surface(&self) -> bool {
        self.fit_shares().next().is_some()
    }

    fn fit_shares(&self) -> impl Iterator<Item = (Surface, f64)> + '_ {
        self.surfaces
            .iter()
            .copied()
            .filter(|(_, share)| share.is_finite() && *share > 0.0)
    }

    /// Share of the paint that is lost.
    fn loss(&self, ledger: &Ledger) -> f64 {
        ledger.number(if self.stencilled > 0 {
            LOSS_STENCIL
        } else {
            LOSS_FILLED
        })
    }

    /// Litres of one coat on an area of this marking; `on_paint` from the second coat on.
    pub(crate) fn coat(&self, area: f64, on_paint: bool, ledger: &Ledger) -> f64 {
        let again = if on_paint {
            ledger.number(SECOND_COAT)
        } else {
            1.0
        };
        let loss = self.loss(ledger);
        self.shares()
            .into_iter()
            .map(|(surface, share)| film(area * share, ledger.number(surface.rate()) * again, loss))
            .sum()
    }
}

/// Areas by colour, all markings; what is no area is left out.
pub(crate) fn areas(job: &Job) -> BTreeMap<Colour, f64> {
    let mut areas: BTreeMap<Colour, f64> = BTreeMap::new();
    for painted in &job.painted {
        for (colour, area) in &painted.areas {
            if area.is_finite() && *area > 0.0 {
                *areas.entry(*colour).or_default() += area;
            }
        }
    }
    areas
}

/// The paint of each colour, in the order of the colours.
pub(crate) fn paints(job: &Job, ledger: &Ledger) -> Vec<ColourPaint> {
    areas(job)
        .into_iter()
        .map(|(colour, area)| {
            let count = match job.coats.get(&colour) {
                Some(chosen) => (*chosen).clamp(1, MOST_COATS),
                None => coats(colour, job.shade, ledger),
            };
            let coat = |nth: u32| {
                millionth(
                    of_colour(job, colour)
                        .map(|(painted, area)| painted.coat(area, nth > 0, ledger))
                        .sum(),
                )
            };
            let coats: Vec<f64> = (0..count).map(coat).collect();
            let spare = ledger.number(LOSS_COLOUR);
            let net: f64 = coats.iter().sum::<f64>() + spare;
            let reserve = millionth(net * ledger.number(RESERVE));
            let need = millionth(net + reserve);
            let cover = cheapest(need, &sizes(job.system, colour, &job.prices, ledger));
            ColourPaint {
                over: cover
                    .as_ref()
                    .map_or(0.0, |cover| millionth(cover.litres - need)),
                colour,
                area: millionth(area),
                coats,
                spare,
                reserve,
                need,
                cover,
            }
        })
        .collect()
}

/// The markings that have a colour, with its area on each.
pub(crate) fn of_colour(job: &Job, colour: Colour) -> impl Iterator<Item = (&Painted, f64)> + '_ {
    job.painted.iter().flat_map(move |painted| {
        painted
            .areas
            .iter()
            .filter(move |(has, area)| *has == colour && area.is_finite() && *area > 0.0)
            .map(move |(_, area)| (painted, *area))
    })
}

/// The cans in which a colour is sold.
pub(crate) fn sizes(
    system: CanSystem,
    colour: Colour,
    prices: &Prices,
    ledger: &Ledger,
) -> Vec<Size> {
    let named = prices.colours.get(&colour).unwrap_or(&prices.cans);
    on_the_shelf(system, named, ledger)
}

/// The ledger's sizes and those that a price names.
pub(crate) fn on_the_shelf(system: CanSystem, named: &[(f64, f64)], ledger: &Ledger) -> Vec<Size> {
    let listed = ledger.list(match system {
        CanSystem::Us => CAN_US,
        CanSystem::Metric => CAN_METRIC,
    });
    let mut sizes: Vec<Size> = named
        .iter()
        .map(|(litres, price)| Size {
            litres: *litres,
            price: Some(*price),
        })
        .collect();
    for litres in listed {
        if sizes
            .iter()
            .all(|size| (size.litres - litres).abs() >= SAME)
        {
            sizes.push(Size {
                litres: *litres,
                price: None,
            });
        }
    }
    sizes
}

/// Litres. Cans closer than this are one size: a price list prints 0.946 for a quart.
const SAME: f64 = 0.001;
