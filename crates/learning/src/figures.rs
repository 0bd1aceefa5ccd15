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

#[cfg(test)]
mod tests {
    use super::FIGURES;

    #[test]
    fn every_figure_of_this_room_is_in_the_ledger() {
        let ledger = ledger::Ledger::shipped().expect("the shipped ledger reads");
        for key in FIGURES {
            assert!(ledger.figure(key.0).is_some(), "{} is missing", key.0);
        }
    }
}
