//! How long rolled marking paint takes.

use ledger::Ledger;

use crate::figures::{self, array};

/// Times from the end of a coat, in hours; pairs are soonest and latest. The tin's label
/// wins.
#[derive(Clone, Debug, PartialEq)]
pub struct Drying {
    /// Against 23 °C and 50 % humidity.
    pub scale: f64,
    /// Dry to the touch.
    pub touch: (f64, f64),
    /// Ready for the next coat.
    pub recoat: (f64, f64),
    /// An adult may step on it.
    pub walk: f64,
    /// Children may play on it; never shortened by warm weather.
    pub children: f64,
    /// Wheels may roll on it; never shortened.
    pub wheels: (f64, f64),
    /// Fully hard; never shortened.
    pub cure: (f64, f64),
}

/// How many times as long as at 23 °C and 50 % drying takes, by °C, % and sun. `None`
/// outside the temperatures for painting: nothing is known there.
pub fn scale(temperature: f64, humidity: f64, sunny: bool, ledger: &Ledger) -> Option<f64> {
    let low = ledger.number(figures::TEMP_MIN);
    let high = ledger.number(figures::TEMP_MAX);
    if !(low..=high).contains(&temperature) {
        return None;
    }
    let [from, to, slow] = array(ledger, figures::COOL);
    let [damp, slower] = array(ledger, figures::DAMP);
    let [warm, hot, fast] = array(ledger, figures::SUNNY);
    let mut scale = 1.0;
    if (from..=to).contains(&temperature) {
        scale *= slow;
    }
    if humidity > damp {
        scale *= slower;
    }
    if sunny && (warm..=hot).contains(&temperature) {
        scale *= fast;
    }
    Some(scale)
}

/// The times at a scale.
pub fn drying(scale: f64, ledger: &Ledger) -> Drying {
    let pair = |key, scale: f64| {
        let [soonest, latest] = array(ledger, key);
        (soonest * scale, latest * scale)
    };
    let longer = scale.max(1.0);
    let (cure, cured) = pair(figures::CURE, 24.0 * longer);
    Drying {
        scale,
        touch: pair(figures::TOUCH, scale),
        recoat: pair(figures::RECOAT, scale),
        walk: ledger.number(figures::WALK) * scale,
        children: ledger.number(figures::CHILDREN) * longer,
        wheels: pair(figures::WHEELS, longer),
        cure: (cure, cured),
    }
}
