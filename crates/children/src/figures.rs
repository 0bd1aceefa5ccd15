//! The ledger figures that this room reads.

use ledger::Key;

use crate::child::Skill;

ledger::figures! {
    /// Median stature, metres; stands for the growth table where it is cited.
    pub STATURE = "children.stature";
    /// Foot from stature: slope, and intercept in metres.
    pub FOOT = "children.foot";
    /// Metres off that line.
    pub FOOT_SD = "children.foot-sd";
    /// Landing scatter, metres.
    pub SCATTER = "children.scatter";
    /// Youngest age, years.
    pub YEARS_LEAST = "children.years-least";
    /// Oldest age, years.
    pub YEARS_MOST = "children.years-most";
    /// Standard deviations past which a measured value is doubted.
    pub FAR = "children.far";
    /// Comfortable jump, toe to heel.
    pub JUMP_M = "reach.jump.m";
    /// Its standard deviation.
    pub JUMP_TAU = "reach.jump.tau";
    /// Comfortable hop.
    pub HOP_M = "reach.hop.m";
    /// Its standard deviation.
    pub HOP_TAU = "reach.hop.tau";
    /// Comfortable leap.
    pub LEAP_M = "reach.leap.m";
    /// Its standard deviation.
    pub LEAP_TAU = "reach.leap.tau";
    /// Running step.
    pub RUN_M = "reach.run.m";
    /// Its standard deviation.
    pub RUN_TAU = "reach.run.tau";
    /// Walking step.
    pub WALK_M = "reach.walk.m";
    /// Its standard deviation.
    pub WALK_TAU = "reach.walk.tau";
    /// Gallop, lead to lead.
    pub GALLOP_M = "reach.gallop.m";
    /// Its standard deviation.
    pub GALLOP_TAU = "reach.gallop.tau";
    /// Slide, lead to lead.
    pub SLIDE_M = "reach.slide.m";
    /// Its standard deviation.
    pub SLIDE_TAU = "reach.slide.tau";
    /// Skip, one step-hop.
    pub SKIP_M = "reach.skip.m";
    /// Its standard deviation.
    pub SKIP_TAU = "reach.skip.tau";
    /// Share who walk.
    pub WALK_CAN = "can.walk";
    /// Share who run.
    pub RUN_CAN = "can.run";
    /// Share who jump.
    pub JUMP_CAN = "can.jump";
    /// Share who gallop.
    pub GALLOP_CAN = "can.gallop";
    /// Share who leap.
    pub LEAP_CAN = "can.leap";
    /// Share who hop.
    pub HOP_CAN = "can.hop";
    /// Share who slide.
    pub SLIDE_CAN = "can.slide";
    /// Share who skip.
    pub SKIP_CAN = "can.skip";
    /// One contact keeps the walk.
    pub WALK_STEADY = "steady.walk";
    /// One contact keeps the run.
    pub RUN_STEADY = "steady.run";
    /// One contact keeps the jumps.
    pub JUMP_STEADY = "steady.jump";
    /// One contact keeps the hops.
    pub HOP_STEADY = "steady.hop";
    /// One contact keeps the leaps.
    pub LEAP_STEADY = "steady.leap";
    /// One contact keeps the gallop.
    pub GALLOP_STEADY = "steady.gallop";
    /// One contact keeps the slide.
    pub SLIDE_STEADY = "steady.slide";
    /// One contact keeps the skip.
    pub SKIP_STEADY = "steady.skip";
    /// Walking speed, metres a second.
    pub WALK_SPEED = "children.walk-speed";
    /// Running speed, metres a second.
    pub RUN_SPEED = "children.run-speed";
    /// Best jump by age: slope in metres a year, intercept in metres.
    pub JUMP_BEST = "jump.best";
    /// Its standard deviation, metres.
    pub JUMP_BEST_SD = "jump.best-sd";
    /// Comfortable share of the best jump.
    pub JUMP_COMFORT = "jump.comfort";
    /// How much that share differs from child to child.
    pub JUMP_COMFORT_SD = "jump.comfort-sd";
    /// Retest correlation of the best jump.
    pub JUMP_RETEST = "jump.retest";
    /// No child jumps farther, metres.
    pub JUMP_ABSURD = "jump.absurd";
    /// Hops in a measured series.
    pub HOPS_COUNT = "hops.count";
    /// Comfortable share of the mean hop of a series.
    pub HOPS_COMFORT = "hops.comfort";
    /// Retest correlation of a series.
    pub HOPS_RETEST = "hops.retest";
    /// No child gets farther in a series, metres.
    pub HOPS_ABSURD = "hops.absurd";
    /// Under this share of the other side a side is the less used.
    pub HOPS_SIDE = "hops.side";
    /// Children that the age's figures weigh as much as.
    pub SITE_SHRINK = "site.shrink";
    /// One push of the wheels, metres.
    pub PUSH_M = "push.m";
    /// Its standard deviation over its mean.
    pub PUSH_CV = "push.cv";
    /// Share who can do an adapted form.
    pub PUSH_CAN = "push.can";
    /// One push keeps the adapted form.
    pub PUSH_STEADY = "push.steady";
    /// Adapted jump, in pushes.
    pub PUSH_JUMP = "push.form.jump";
    /// Adapted hop, in pushes.
    pub PUSH_HOP = "push.form.hop";
    /// Adapted leap, in pushes.
    pub PUSH_LEAP = "push.form.leap";
    /// Adapted gallop, in pushes.
    pub PUSH_GALLOP = "push.form.gallop";
    /// Adapted slide, in pushes.
    pub PUSH_SLIDE = "push.form.slide";
    /// Adapted skip, in pushes.
    pub PUSH_SKIP = "push.form.skip";
    /// Adapted run, in pushes.
    pub PUSH_RUN = "push.form.run";
    /// Travel at ease, in pushes.
    pub PUSH_WALK = "push.form.walk";
    /// Reach with a walker over reach on wheels.
    pub PUSH_WALKER = "push.walker";
    /// Speed at ease over walking speed.
    pub PUSH_WALK_SPEED = "push.walk-speed";
    /// Quick speed over running speed.
    pub PUSH_RUN_SPEED = "push.run-speed";
    /// Turning radius on wheels, metres.
    pub PUSH_TURN = "push.turn";
    /// Reach of a held child over the age's.
    pub HELD_REACH = "held.reach";
    /// Share of held children who can do the easier form.
    pub HELD_CAN = "held.can";
}

/// What is read for one skill.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// Mean reach by age; of the jump, the gap.
    pub m: Key,
    /// Its standard deviation by age.
    pub tau: Key,
    /// Share who can, by age.
    pub can: Key,
    /// One contact keeps the pattern, by age.
    pub steady: Key,
    /// The adapted form in pushes.
    pub pushes: Key,
    /// Whether the reach is a share of stature, and so follows a measured height.
    pub by_stature: bool,
}

/// The figures of a skill.
pub fn row(skill: Skill) -> Row {
    let (m, tau, can, steady, pushes, by_stature) = match skill {
        Skill::Jump => (JUMP_M, JUMP_TAU, JUMP_CAN, JUMP_STEADY, PUSH_JUMP, false),
        Skill::Hop => (HOP_M, HOP_TAU, HOP_CAN, HOP_STEADY, PUSH_HOP, false),
        Skill::Leap => (LEAP_M, LEAP_TAU, LEAP_CAN, LEAP_STEADY, PUSH_LEAP, false),
        Skill::Gallop => (
            GALLOP_M,
            GALLOP_TAU,
            GALLOP_CAN,
            GALLOP_STEADY,
            PUSH_GALLOP,
            true,
        ),
        Skill::Slide => (
            SLIDE_M,
            SLIDE_TAU,
            SLIDE_CAN,
            SLIDE_STEADY,
            PUSH_SLIDE,
            true,
        ),
        Skill::Skip => (SKIP_M, SKIP_TAU, SKIP_CAN, SKIP_STEADY, PUSH_SKIP, true),
        Skill::Run => (RUN_M, RUN_TAU, RUN_CAN, RUN_STEADY, PUSH_RUN, false),
        Skill::Walk => (WALK_M, WALK_TAU, WALK_CAN, WALK_STEADY, PUSH_WALK, true),
    };
    Row {
        m,
        tau,
        can,
        steady,
        pushes,
        by_stature,
    }
}
