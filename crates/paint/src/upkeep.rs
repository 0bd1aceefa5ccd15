//! How paint wears, when it is refreshed, and what a year of it costs.

use ledger::Ledger;
use marking::Colour;

use crate::cans::cheapest;
use crate::figures::*;
use crate::litres::{of_colour, sizes};
use crate::millionth;
use crate::question::{Job, Wear};
use crate::shop::Shopping;

/// Months of a year.
const YEAR: f64 = 12.0;

/// Share that can be seen after `months`: e^(-months/tau).
pub fn visible(months: f64, tau: f64) -> f64 {
    libm::exp(-months / tau)
}

/// Months until no more than `least` can be seen: -tau ln(least).
pub fn refresh_after(tau: f64, least: f64) -> f64 {
    -tau * libm::log(least)
}

/// What `years` payments of 1, each at a year's end, are worth today: (1-(1+i)^-y)/i.
pub fn annuity(interest: f64, years: f64) -> f64 {
    // Below this the quotient loses its digits, and the payments are worth their number.
    const NO_INTEREST: f64 = 1e-9;
    if interest.abs() < NO_INTEREST {
        return years;
    }
    (1.0 - libm::pow(1.0 + interest, -years)) / interest
}

/// The yearly payment that is worth `cost` today.
pub fn equivalent_annual(cost: f64, interest: f64, years: f64) -> f64 {
    cost / annuity(interest, years)
}

/// One refresh.
#[derive(Clone, Debug, PartialEq)]
pub struct Refresh {
    /// Months after painting.
    pub month: f64,
    /// What its paint costs at today's prices; `None` where no price was named.
    pub cost: Option<f64>,
}

/// Some years of keeping the markings up.
#[derive(Clone, Debug, PartialEq)]
pub struct Upkeep {
    /// Time constant of wear, months.
    pub tau: f64,
    /// Months from painting to refresh, and from one to the next.
    pub every: f64,
    /// Litres of a refresh by colour.
    pub litres: Vec<(Colour, f64)>,
    /// The refreshes within the years.
    pub refreshes: Vec<Refresh>,
    /// Years planned for.
    pub years: u32,
    /// Refreshes paid for in each year, the first first; `None` where no price was named.
    pub by_year: Vec<Option<f64>>,
    /// First painting and refreshes as one equal payment a year; `None` where a colour has no
    /// price. Things that the list has no price for are not in it: see `at_least`.
    pub annual: Option<f64>,
    /// Whether something bought at the start has no price, so that a year costs more.
    pub at_least: bool,
}

/// Years that anyone plans for.
const MOST_YEARS: f64 = 50.0;

/// Refreshes and yearly cost of what was bought, the paint bought anew each time at today's
/// prices. No refresh where the ledger's figures give no time for it.
pub fn upkeep(job: &Job, shopping: &Shopping, wear: Wear, ledger: &Ledger) -> Upkeep {
    let tau = ledger.number(match wear {
        Wear::Feet => TAU_FEET,
        Wear::Wheels => TAU_WHEELS,
    });
    let every = refresh_after(tau, ledger.number(KEEP_LEAST));
    let years = ledger.number(KEEP_YEARS).round().clamp(1.0, MOST_YEARS);
    let interest = ledger.number(INTEREST);
    let coats = ledger.number(KEEP_COATS).max(0.0);
    let litres: Vec<(Colour, f64)> = shopping
        .colours
        .iter()
        .map(|paint| {
            let coat: f64 = of_colour(job, paint.colour)
                .map(|(painted, area)| painted.coat(area, true, ledger))
                .sum();
            (
                paint.colour,
                millionth(coats * coat + ledger.number(LOSS_COLOUR)),
            )
        })
        .collect();
    let cost = litres
        .iter()
        .map(|(colour, need)| {
            cheapest(*need, &sizes(job.system, *colour, &job.prices, ledger))?.cost
        })
        .sum::<Option<f64>>()
        .map(millionth);
    // A month's refresh is the least that anyone would plan.
    let sensible = every.is_finite() && every >= 1.0;
    let refreshes: Vec<Refresh> = (1_u32..)
        .map(|nth| every * f64::from(nth))
        .take_while(|month| sensible && *month < years * YEAR)
        .map(|month| Refresh {
            month: millionth(month),
            cost,
        })
        .collect();
    let in_year = |year: u32| {
        let within = |refresh: &&Refresh| (refresh.month / YEAR) as u32 == year;
        refreshes
            .iter()
            .filter(within)
            .map(|refresh| refresh.cost)
            .sum::<Option<f64>>()
            .map(millionth)
    };
    let paint_known = shopping.colours.iter().all(|paint| {
        paint
            .cover
            .as_ref()
            .is_some_and(|cover| cover.cost.is_some())
    });
    let today = refreshes
        .iter()
        .map(|refresh| {
            let later = libm::pow(1.0 + interest, -refresh.month / YEAR);
            refresh.cost.map(|cost| cost * later)
        })
        .sum::<Option<f64>>()
        .filter(|_| paint_known)
        .map(|refreshes| shopping.total.known + refreshes);
    Upkeep {
        tau,
        every: millionth(every),
        litres,
        years: years as u32,
        by_year: (0..years as u32).map(in_year).collect(),
        refreshes,
        annual: today.map(|today| millionth(equivalent_annual(today, interest, years))),
        at_least: shopping.total.unknown > 0,
    }
}
