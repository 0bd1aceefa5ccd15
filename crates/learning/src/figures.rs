//! The ledger figures that this room reads.

ledger::figures! {
    /// Observations that the priors of `can` and steadiness weigh as much as.
    pub WEIGHT = "learning.weight";
    /// Children that the age's figures weigh as much as.
    pub SITE_SHRINK = "site.shrink";
    /// Share of the common effect's variance that is the group's.
    pub GROUP_SHARE = "learning.group-share";
    /// Contacts in a row that show that the skill is there.
    pub SHOWS = "learning.shows";
    /// Tries from which the model's fit is told.
    pub ENOUGH = "learning.enough";
    /// Least reach, share of its mean.
    pub REACH_FLOOR = "footfall.reach-floor";
}
