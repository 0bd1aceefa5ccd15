//! How fast paint dries in which air.

use ledger::Ledger;

use crate::figures::*;
use crate::question::{Light, Spell};
use crate::schedule::Clock;

/// How many times as long as at 23 °C and 50 % paint takes to dry: longer in the cool and in
/// the damp, less in warm sun. Outside what the figures name it counts as neither.
fn scale(spell: &Spell, ledger: &Ledger) -> f64 {
    let mut scale = 1.0;
    if spell.temperature <= ledger.number(COOL_BELOW) {
        scale *= ledger.number(COOL);
    }
    if spell.humidity > ledger.number(DAMP_ABOVE) {
        scale *= ledger.number(DAMP);
    }
    if let [least, most] = ledger.list(SUN_BETWEEN)
        && spell.light == Light::Sun
        && (*least..=*most).contains(&spell.temperature)
    {
        scale *= ledger.number(SUN);
    }
    scale
}

/// The clock that paint dries by.
pub fn drying(air: &[Spell], ledger: &Ledger) -> Clock {
    let spells: Vec<(i64, f64)> = air
        .iter()
        .map(|spell| (spell.from_s, scale(spell, ledger)))
        .collect();
    Clock::new(&spells)
}
