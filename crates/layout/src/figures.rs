//! The ledger figures that this room reads.

use children::Skill;
use ledger::Key;

ledger::figures! {
    /// Good contacts a minute that count as full practice.
    pub PAR_JUMP = "layout.par.jump";
    /// The same for the hop.
    pub PAR_HOP = "layout.par.hop";
    /// The same for the leap.
    pub PAR_LEAP = "layout.par.leap";
    /// The same for the gallop.
    pub PAR_GALLOP = "layout.par.gallop";
    /// The same for the slide.
    pub PAR_SLIDE = "layout.par.slide";
    /// The same for the skip.
    pub PAR_SKIP = "layout.par.skip";
    /// Time between two children let go on one track.
    pub RELEASE = "layout.release";
    /// Children that share one track.
    pub TRACK_CHILDREN = "layout.track-children";
    /// Minutes of a session that are not for stations.
    pub WARM_UP = "layout.warm-up";
    /// Children out with one member of staff.
    pub RATIO = "layout.ratio";
    /// Yard for each child who is out.
    pub AREA_PER_CHILD = "layout.area-per-child";
    /// Below it a skill is no target.
    pub CAN_LEAST = "layout.can-least";
    /// The less used side's share of a target.
    pub LESS_USED = "layout.less-used";
    /// Minutes before a figure grows stale.
    pub STALE = "layout.stale";
    /// Worth of a minute in the second stretch.
    pub STALE_WORTH = "layout.stale-worth";
    /// Worth of the first half of a target.
    pub FIRST_HALF = "layout.first-half";
    /// Worth of the second half.
    pub SECOND_HALF = "layout.second-half";
    /// Least run-out after a run.
    pub RUN_OUT_RUN = "layout.run-out-run";
    /// Least run-out after all else.
    pub RUN_OUT_OTHER = "layout.run-out-other";
    /// Run-out wanted.
    pub RUN_OUT_WANTED = "layout.run-out-wanted";
    /// From a waiting spot to a lane.
    pub WAIT_CLEAR = "layout.wait-clear";
    /// Lane width in single file.
    pub LANE_SINGLE = "layout.lane-single";
    /// From a quiet figure to a fast lane.
    pub CALM = "layout.calm";
    /// Turn off the walls that still reads as square, degrees.
    pub SQUARE = "layout.square";
    /// Paint of a standing figure to a hard edge.
    pub MARGIN_STILL = "layout.margin-still";
    /// A travel lane to a hard edge.
    pub MARGIN_LANE = "layout.margin-lane";
    /// A landing to a hard edge.
    pub MARGIN_LANDING = "layout.margin-landing";
    /// A landing to a drain.
    pub DRAIN_LANDING = "layout.drain-landing";
    /// The wheeled way to a station.
    pub WHEELS_WAY = "layout.wheels-way";
    /// Paint against ground.
    pub CONTRAST = "layout.contrast";
    /// Middle of the envelopes off the middle of the free ground.
    pub BALANCE = "layout.balance";
    /// Waiting spots to doors and gates.
    pub GATE_CLEAR = "layout.gate-clear";
}

/// The par of a taught skill; `None` for run and walk, which are no targets.
pub fn par(skill: Skill) -> Option<Key> {
    match skill {
        Skill::Jump => Some(PAR_JUMP),
        Skill::Hop => Some(PAR_HOP),
        Skill::Leap => Some(PAR_LEAP),
        Skill::Gallop => Some(PAR_GALLOP),
        Skill::Slide => Some(PAR_SLIDE),
        Skill::Skip => Some(PAR_SKIP),
        Skill::Run | Skill::Walk => None,
    }
}

/// Whether the two feet have targets of their own.
pub fn sided(skill: Skill) -> bool {
    matches!(
        skill,
        Skill::Hop | Skill::Leap | Skill::Gallop | Skill::Slide
    )
}
