//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Constant part of a tape reading's sigma.
    pub TAPE_CONSTANT = "tape.sigma_const";
    /// Part of a tape reading's sigma that grows with its length.
    pub TAPE_PER_METRE = "tape.sigma_per_m";
    /// Share of good readings that the test of one reading would doubt.
    pub W_ALPHA = "test.w_alpha";
    /// Share of blunders of the smallest size found that the test finds.
    pub POWER = "test.power";
    /// Share of good surveys that the global test would doubt.
    pub GLOBAL_ALPHA = "test.global_alpha";
    /// A reading of less redundancy is called unchecked.
    pub UNCHECKED = "test.r_unchecked";
    /// Readings whose w correlate more cannot be told apart.
    pub ALIKE = "test.w_alike";
    /// A point whose ellipse is longer is called weak.
    pub WEAK_AXIS = "survey.weak_axis";
    /// What the hook or end ring of a tape takes.
    pub HOOKS = "slip.hook";
}
