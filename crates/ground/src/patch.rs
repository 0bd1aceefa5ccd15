//! A patch before it is cut to the yard.

use geo::Polygon;
use ledger::Key;

use crate::result::Why;

/// Ground that may not be painted, with its reason; its pieces may overlap.
#[derive(Clone, Debug)]
pub struct Patch {
    /// The ground.
    pub shape: Vec<Polygon<f64>>,
    /// Why.
    pub why: Why,
    /// What it belongs to.
    pub of: String,
    /// The figure that sets its size.
    pub rule: Option<Key>,
    /// Whether no neighbour's zone may share it.
    pub alone: bool,
}

impl Patch {
    /// A patch that others may share.
    pub fn new(shape: Vec<Polygon<f64>>, why: Why, of: &str, rule: Option<Key>) -> Patch {
        Patch {
            shape,
            why,
            of: of.to_owned(),
            rule,
            alone: false,
        }
    }
}
