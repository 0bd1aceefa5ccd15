//! A child as age and body have it, with what was measured of its skills beside.

use std::collections::BTreeMap;

use crate::child::{Child, Skill};

/// A child before what it has shown counts.
#[derive(Clone, Debug, PartialEq)]
pub struct Expected {
    /// As age and body have it.
    pub child: Child,
    /// The group that it plays with.
    pub group: Option<String>,
    /// What was measured, as readings of comfortable reach.
    pub readings: BTreeMap<Skill, Reading>,
    /// Skills that a measurement has shown to be there, or not to be there.
    pub cans: BTreeMap<Skill, bool>,
}

impl Expected {
    /// A child of whom nothing was measured.
    pub fn of(child: Child) -> Expected {
        Expected {
            child,
            group: None,
            readings: BTreeMap::new(),
            cans: BTreeMap::new(),
        }
    }
}

/// A reading of comfortable reach: Normal(the child's reach, sigma).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Metres, centre to centre.
    pub reach: f64,
    /// Its standard deviation, metres.
    pub sigma: f64,
}

impl Reading {
    /// The reading that turns one normal into the other; each is mean and standard deviation.
    ///
    /// A reading always makes surer: an end that is hardly narrower than the beginning is
    /// taken as a fiftieth narrower. `None` where nothing was unsure.
    pub fn between((m, tau): (f64, f64), (after, narrower): (f64, f64)) -> Option<Reading> {
        const HARDLY: f64 = 0.98;
        let share = (narrower / tau).min(HARDLY);
        let weight = 1.0 - share * share;
        let sigma = share * tau / libm::sqrt(weight);
        let known = tau > 0.0 && sigma > 0.0;
        known.then(|| Reading {
            reach: m + (after - m) / weight,
            sigma,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The law of two normals: precisions add, means weigh by them.
    #[test]
    fn a_reading_turns_one_normal_into_the_other() {
        for (before, after) in [((0.5, 0.12), (0.61, 0.06)), ((0.3, 0.1), (0.2, 0.04))] {
            let reading = Reading::between(before, after).expect("a reading");
            let (own, of) = (
                1.0 / (before.1 * before.1),
                1.0 / (reading.sigma * reading.sigma),
            );
            let m = (own * before.0 + of * reading.reach) / (own + of);
            assert!((m - after.0).abs() < 1e-12);
            assert!((1.0 / (own + of) - after.1 * after.1).abs() < 1e-12);
        }
        assert_eq!(Reading::between((0.5, 0.0), (0.5, 0.0)), None);
    }
}
