//! What stands on every page about painting days.

use ledger::Ledger;
use note::{Fact, Message, msg};

use crate::figures;

/// The usual cautions, in plain sentences.
pub fn cautions(ledger: &Ledger) -> Vec<Message> {
    let count = |key| ledger.number(key).round().max(0.0) as u64;
    let number = |key| Fact::Number(ledger.number(key), 0);
    vec![
        msg!("days-caution-label"),
        msg!(
            "days-caution-ground",
            margin = number(figures::DEW_MARGIN),
            hot = number(figures::SURFACE_HOT)
        ),
        msg!("days-caution-damp"),
        msg!(
            "days-caution-skin",
            pain = number(figures::SKIN_PAIN),
            burn = number(figures::SKIN_BURN),
            seconds = count(figures::HAND)
        ),
        msg!("days-caution-closed", hours = count(figures::CHILDREN)),
        msg!("days-caution-typical"),
    ]
}
