//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Sweeping and washing, min/m².
    pub SWEEP = "work.sweep";
    /// Priming, min/m².
    pub PRIME = "work.prime";
    /// A key point, min.
    pub SETOUT = "work.setout";
    /// Placing a stencil, min.
    pub PLACE = "work.place";
    /// Rolling a coat, min/m².
    pub ROLL = "work.roll";
    /// Cutting in an edge, min/m.
    pub EDGE = "work.edge";
    /// Lifting a stencil, min.
    pub LIFT = "work.lift";
    /// Masking a line, min/m.
    pub MASK = "work.mask";
    /// Pulling tape, min/m.
    pub PULL = "work.pull";
    /// Cleaning up, min.
    pub CLEAN = "work.clean";
    /// How much longer volunteers take at first.
    pub NEW_HANDS = "work.new_hands";
    /// For how long, min.
    pub NEW_FOR = "work.new_for";
    /// People who sweep.
    pub HANDS_SWEEP = "hands.sweep";
    /// People who prime.
    pub HANDS_PRIME = "hands.prime";
    /// People who set out.
    pub HANDS_SETOUT = "hands.setout";
    /// People at a stencil.
    pub HANDS_STENCIL = "hands.stencil";
    /// People who mask.
    pub HANDS_MASK = "hands.mask";
    /// People who fill without a stencil.
    pub HANDS_FILL = "hands.fill";
    /// People who clean up.
    pub HANDS_CLEAN = "hands.clean";
    /// Washed ground, min.
    pub DRY_WASH = "dry.wash";
    /// Room that work takes round a marking, metres.
    pub BESIDE = "crew.beside";
    /// Distance that walkers keep from wet paint, metres.
    pub BODY = "crew.body";
    /// Step of the search for ways, metres.
    pub GRID = "crew.grid";
    /// Orders tried.
    pub TRIES = "crew.tries";
    /// Partial plans looked at.
    pub NODES = "crew.nodes";
    /// Days added at most.
    pub MORE_DAYS = "crew.more_days";
}
