//! The room against an oracle; its laws are in `tests`.

mod oracle;

use footfall::grid;
use ledger::Ledger;

use crate::effects::Shared;
use crate::fit::Fit;

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

fn with() -> Fit {
    Fit {
        shared: Shared::of(&ledger()),
        weight: 8.0,
        shows: 3.0,
        floor: 0.3,
    }
}
