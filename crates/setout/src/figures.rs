//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Tapes that cross at less do not fix a mark, degrees.
    pub ANGLE_MIN = "setout.angle_min";
    /// Tapes that cross at this or more cross well, degrees.
    pub ANGLE_GOOD = "setout.angle_good";
    /// Standard deviations that a check reading may be off.
    pub CHECK_TIMES = "setout.check_times";
    /// No check reading is doubted for less, metres.
    pub CHECK_MIN = "setout.check_min";
    /// Share of marks that land within the ellipse stated.
    pub LEVEL = "setout.level";
    /// Step of printed lengths in metres.
    pub STEP_METRIC = "setout.step_metric";
    /// Step of printed lengths in feet and inches, in metres.
    pub STEP_INCHES = "setout.step_inches";
    /// Length of the tapes at hand, metres.
    pub TAPE_LONG = "setout.tape_long";
    /// What a tape may give way sideways, metres.
    pub SLACK = "setout.slack";
    /// Pairs of tapes this much wider than the best serve as well.
    pub NEAR_BEST = "setout.near_best";
    /// Moving a tape's end costs as much as walking this far, metres.
    pub MOVE = "setout.move";
    /// Least distance between key points, metres.
    pub APART = "setout.apart";
    /// Least distance of a check point from the line of the other two, metres.
    pub OFF_LINE = "setout.off_line";
    /// Unit of a 3-4-5 triangle in metres.
    pub SQUARE_METRIC = "setout.square_metric";
    /// Unit of a 3-4-5 triangle in feet, in metres.
    pub SQUARE_FEET = "setout.square_feet";
    /// What the hook or end ring of a tape takes.
    pub HOOKS = "slip.hook";
}
