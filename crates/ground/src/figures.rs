//! The ledger figures that this room reads.

ledger::figures! {
    pub STATIONARY = "zone.stationary";
    pub PAIR_LOW_HEIGHT = "zone.pair-low-height";
    pub PAIR_HIGH_GAP = "zone.pair-high-gap";
    pub SLIDE_EXIT_LEAST = "zone.slide-exit-least";
    pub SLIDE_EXIT_MOST = "zone.slide-exit-most";
    pub SWING_FACTOR = "zone.swing-factor";
    pub SWING_SIDES = "zone.swing-sides";
    pub SWING_PIVOT_MOST = "zone.swing-pivot-most";
    pub TYRE_SWING_ADD = "zone.tyre-swing-add";
    pub ROCKER_SEATED = "zone.rocker-seated";
    pub ROCKER_STANDING = "zone.rocker-standing";
    pub ROUNDABOUT = "zone.roundabout";
    pub STRUCTURE_GAP = "zone.structure-gap";
    pub PARALLEL = "zone.parallel";
    pub TOGETHER = "zone.together";
    pub EN_LEAST = "zone.en-least";
    pub EN_KNEE = "zone.en-knee";
    pub EN_SLOPE = "zone.en-slope";
    pub EN_OFFSET = "zone.en-offset";
    pub EN_HEIGHT_MOST = "zone.en-height-most";
    pub EN_SLIDE_EXIT = "zone.en-slide-exit";
    pub EN_ROUNDABOUT = "zone.en-roundabout";
    pub EN_SWING_FACTOR = "zone.en-swing-factor";
    pub EN_SWING_ADD = "zone.en-swing-add";
    pub HARD_EDGE = "margin.hard-edge";
    pub DROP = "margin.drop";
    pub FIXTURE = "margin.fixture";
    pub DRAIN = "margin.drain";
    pub PULL_DEPTH = "door.pull-depth";
    pub PULL_LATCH = "door.pull-latch";
    pub PUSH_DEPTH = "door.push-depth";
    pub PUSH_LATCH = "door.push-latch";
    pub EGRESS_ADD = "door.egress-add";
    pub EGRESS_OUT = "door.egress-out";
    pub PLAY_WIDTH = "route.play-width";
    pub NARROW_WIDTH = "route.narrow-width";
    pub CURE = "surface.cure";
    pub HIDES = "sight.hides";
}
