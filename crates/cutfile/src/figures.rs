//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Side of the square that shows the scale, metres.
    pub SQUARE = "cut.square";
    /// Reach of a printer on A4, metres.
    pub A4 = "tile.a4";
    /// Reach of a printer on letter, metres.
    pub LETTER = "tile.letter";
    /// Overlap of two pages, metres.
    pub OVERLAP = "tile.overlap";
}
