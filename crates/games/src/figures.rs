//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Share of a group that is well pitched, from which a game suits it.
    pub WELL = "games.well";
}
