//! What the measured children of a site tell about the others.
//!
//! The age's figures are moved toward the site's mean with weight n / (n + 8), n the
//! children measured (children.md 2.7, common practice, no source).

use ledger::Ledger;

use crate::figures::{HOP_M, HOPS_COMFORT, HOPS_COUNT, JUMP_BEST, SITE_SHRINK};
use crate::growth::{Sex, z_of};

/// What is known of one child before the site is reckoned; doubtful values are out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Months since birth.
    pub months: f64,
    /// Where it is recorded.
    pub sex: Option<Sex>,
    /// Metres.
    pub height: Option<f64>,
    /// Metres.
    pub foot: Option<f64>,
    /// Best jump, metres.
    pub jump: Option<f64>,
    /// Length of a series of hops, right and left, metres.
    pub hops: [Option<f64>; 2],
}

/// How a site differs from the age's figures, shrunk; `None` where nobody was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Site {
    /// Standard deviations of stature.
    pub stature: Option<f64>,
    /// Metres of best jump.
    pub jump: Option<f64>,
    /// Factor on the hop.
    pub hop: Option<f64>,
}

impl Measured {
    /// Years.
    pub fn age(&self) -> f64 {
        self.months / 12.0
    }

    /// The comfortable hop that the series tell of: the mean of the sides that can.
    pub fn hop(&self, ledger: &Ledger) -> Option<f64> {
        let sides: Vec<f64> = self
            .hops
            .into_iter()
            .flatten()
            .filter(|side| *side > 0.0)
            .collect();
        let mean = mean(&sides)?;
        Some(ledger.number(HOPS_COMFORT) * mean / ledger.number(HOPS_COUNT))
    }
}

/// Best jump that an age expects, metres.
pub fn best_jump(age: f64, ledger: &Ledger) -> f64 {
    match ledger.list(JUMP_BEST) {
        [slope, intercept] => slope * age + intercept,
        _ => f64::NAN,
    }
}

impl Site {
    /// A site where nobody was measured.
    pub const NOBODY: Site = Site {
        stature: None,
        jump: None,
        hop: None,
    };

    /// Of the children measured.
    pub fn of(measured: &[Measured], ledger: &Ledger) -> Site {
        let shrunk = |offsets: Vec<f64>| {
            let n = offsets.len() as f64;
            mean(&offsets).map(|mean| mean * n / (n + ledger.number(SITE_SHRINK)))
        };
        let stature = measured
            .iter()
            .filter_map(|child| Some(z_of(child.sex, child.months, child.height?)))
            .collect();
        let jump = measured
            .iter()
            .filter_map(|child| {
                let best = child.jump.filter(|best| *best > 0.0)?;
                Some(best - best_jump(child.age(), ledger))
            })
            .collect();
        let hop = measured
            .iter()
            .filter_map(|child| Some(child.hop(ledger)? / ledger.at_age(HOP_M, child.age()) - 1.0))
            .collect();
        Site {
            stature: shrunk(stature),
            jump: shrunk(jump),
            hop: shrunk(hop).map(|hop| 1.0 + hop),
        }
    }
}

fn mean(values: &[f64]) -> Option<f64> {
    (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
}
