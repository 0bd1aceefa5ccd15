//! The ledger figures that this room reads.

ledger::figures! {
    /// CIEDE2000 from which a colour is told to be no paint.
    pub COLOUR_FAR = "drawn.colour-far";
    /// Least breadth of a spot for a foot, metres.
    pub SPOT_LEAST = "drawn.spot-least";
    /// Least long side of a spot for both feet, metres.
    pub SPOT_BOTH = "drawn.spot-both";
    /// Widest gap that anybody clears, metres.
    pub GAP_MOST = "drawn.gap-most";
    /// From this width on a lane is a corridor, metres.
    pub CORRIDOR = "drawn.corridor";
    /// Least radius of a lane's bend, metres.
    pub BEND = "drawn.bend";
    /// A piece of paint thinner than this is a slip of the pen, metres.
    pub SLIVER = "drawn.sliver";
    /// How far a figure may be drawn larger or smaller.
    pub STRETCH = "drawn.stretch";
    /// Least and greatest side that a figure is expected to have, metres.
    pub SIZE = "drawn.size";
    /// Flattening of curves, metres.
    pub FLAT = "look.flat";
    /// Least opening and web, metres.
    pub LEAST = "look.least";
    /// Bare ground between two cells, metres.
    pub GAP = "look.gap";
    /// Beside cells and lanes, metres.
    pub SWAY = "envelope.sway";
    /// Behind a start, metres.
    pub BEHIND = "envelope.behind";
    /// Round a waiting spot, metres.
    pub WAIT_ROUND = "envelope.wait";
    /// Free ground before a leap, metres.
    pub RUN_UP = "envelope.run-up";
    /// Run-out after a lane, metres.
    pub RUN_OUT_RUN = "layout.run-out-run";
    /// Run-out after all else, metres.
    pub RUN_OUT_OTHER = "layout.run-out-other";
    /// A lane in single file, metres.
    pub LANE_SINGLE = "layout.lane-single";
}
