//! The ledger figures that a plan rests on.

use ledger::Ledger;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One figure that was used.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Source {
    /// Its key in the ledger.
    pub key: String,
    /// One number, or one for each of 3, 4, 5 and 6 years, or a list that `what` explains.
    pub value: Vec<f64>,
    /// The unit; `1` for a pure number.
    pub unit: String,
    /// What it is.
    pub what: String,
    /// The cited work, `-` for none.
    pub source: String,
    /// `published`, `common practice` or `from memory`; `the project` where it was replaced.
    pub standing: String,
}

impl Source {
    /// Every figure that the ledger has been asked for.
    pub fn cited(ledger: &Ledger) -> Vec<Source> {
        ledger
            .cited()
            .map(|figure| Source {
                key: figure.key.clone(),
                value: figure.values.clone(),
                unit: figure.unit.clone(),
                what: figure.what.clone(),
                source: figure.source.clone(),
                standing: if figure.replaced {
                    "the project"
                } else {
                    figure.standing.words()
                }
                .to_owned(),
            })
            .collect()
    }
}
