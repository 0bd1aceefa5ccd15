//! What is asked.

use ledger::Ledger;
use marking::Figure;
use survey::network::Tape;
use survey::result::Survey;
use unit::Units;

use crate::barrier::Obstacle;
use crate::figures::{STEP_INCHES, STEP_METRIC};

/// A yard and what shall be painted in it.
#[derive(Clone, Copy, Debug)]
pub struct Question<'a> {
    /// Points with their covariance.
    pub survey: &'a Survey,
    /// What no tape can cross.
    pub obstacles: &'a [Obstacle],
    /// In the order of the plan.
    pub laid: &'a [Laid<'a>],
    /// How good the tape is.
    pub tape: Tape,
    /// In whose fractions squares are laid.
    pub units: Units,
    /// Printed lengths are multiples of this, metres: see [`step`].
    pub step: f64,
}

/// A figure that already stands in the yard's coordinates.
#[derive(Clone, Copy, Debug)]
pub struct Laid<'a> {
    /// Unique in the plan.
    pub name: &'a str,
    /// The figure.
    pub figure: &'a Figure,
}

/// To what printed lengths are rounded, metres: 5 mm or a quarter inch.
pub fn step(units: Units, ledger: &Ledger) -> f64 {
    ledger.number(match units {
        Units::Metres => STEP_METRIC,
        Units::Feet => STEP_INCHES,
    })
}
