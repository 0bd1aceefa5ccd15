//! How fast paint dries in which air: the figures of the days room.

use days::figures::{TEMP_MAX, TEMP_MIN};
use ledger::Ledger;

use crate::question::{Light, Spell};
use crate::schedule::Clock;

/// How many times as long as at 23 °C and 50 % paint takes to dry. Where it is too cold or
/// too hot to paint at all, it dries as at the nearest temperature that is not.
fn scale(spell: &Spell, ledger: &Ledger) -> f64 {
    let (low, high) = (ledger.number(TEMP_MIN), ledger.number(TEMP_MAX));
    let temperature = spell.temperature.max(low).min(high);
    let sunny = spell.light == Light::Sun;
    days::scale(temperature, spell.humidity, sunny, ledger).unwrap_or(1.0)
}

/// The clock that paint dries by.
pub fn drying(air: &[Spell], ledger: &Ledger) -> Clock {
    let spells: Vec<(i64, f64)> = air
        .iter()
        .map(|spell| (spell.from_s, scale(spell, ledger)))
        .collect();
    Clock::new(&spells)
}

/// Seconds that a coat takes at 23 °C and 50 %, the latest of what the ledger has.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Times {
    /// To the touch.
    pub touch: i64,
    /// For the next coat.
    pub recoat: i64,
    /// For feet.
    pub foot: i64,
    /// For children.
    pub children: i64,
    /// For wheels.
    pub wheels: i64,
}

impl Times {
    pub(crate) fn of(ledger: &Ledger) -> Times {
        let seconds = |hours: f64| (hours * 3600.0).ceil() as i64;
        let drying = days::drying(1.0, ledger);
        Times {
            touch: seconds(drying.touch.1),
            recoat: seconds(drying.recoat.1),
            foot: seconds(drying.walk),
            children: seconds(drying.children),
            wheels: seconds(drying.wheels.1),
        }
    }
}
