//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Longest time at one station, minutes.
    pub SLOT_MOST = "sessions.slot-most";
    /// No child stays longer at one station in a session, minutes.
    pub TASK_CHANGE = "sessions.task-change";
    /// Children to one adult, by age.
    pub RATIO = "sessions.ratio";
    /// Largest group, by age.
    pub GROUP_MOST = "sessions.group-most";
    /// Stations that one adult keeps in sight.
    pub STATIONS_PER_ADULT = "sessions.stations-per-adult";
    /// Nobody waits longer, seconds.
    pub WAIT_MOST = "sessions.wait-most";
    /// Weeks of a skill before one that needs it.
    pub LEAD = "sessions.lead";
    /// Visits to games of one level before the next.
    pub LEVEL_VISITS = "sessions.level-visits";
    /// Chance that a child takes part in a session.
    pub ATTENDANCE = "sessions.attendance";
    /// Until all move after a change, seconds.
    pub SETTLE = "sessions.settle";
    /// Mean of what varies in the way back, seconds.
    pub DAWDLE = "sessions.dawdle";
    /// Jump and hop trails shorter than this hold one child at a time, metres.
    pub ALONE_BELOW = "sessions.alone-below";
    /// Between two starts on one track, seconds.
    pub RELEASE = "layout.release";
    /// Children that the layout reckons to a track.
    pub TRACK_CHILDREN = "layout.track-children";
    /// Warm-up and cool-down, minutes.
    pub WARM_UP = "layout.warm-up";
    /// Yard for each child out, m².
    pub AREA_PER_CHILD = "layout.area-per-child";
    /// Minutes a week before a figure grows stale.
    pub STALE = "layout.stale";
    /// Worth of a minute in the second stretch.
    pub STALE_WORTH = "layout.stale-worth";
    /// Worth of the first half of a target.
    pub FIRST_HALF = "layout.first-half";
    /// Worth of the second half.
    pub SECOND_HALF = "layout.second-half";
}
