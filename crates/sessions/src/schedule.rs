//! What comes out: who is where in every slot, and what it gives.

use children::{Side, Skill};

use crate::programme::When;

/// The programme over its weeks.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Minutes of a slot.
    pub slot_minutes: f64,
    /// Slots of a session.
    pub slots: u32,
    /// The parts of the class that go out one after the other; numbers of children.
    pub outings: Vec<Vec<usize>>,
    /// By time, then outing.
    pub sessions: Vec<Session>,
    /// Practice by child, skill and side, in the order of the targets.
    pub practice: Vec<Practice>,
    /// Z: worth of the practice, first halves of targets before second ones, over all
    /// targets. The layout's Z where no skill waits and no session is lost.
    pub value: f64,
    /// No plan with these outings' number, slots and openings is worth more.
    pub bound: f64,
    /// (bound - value) / bound; 0 where the bound is 0.
    pub gap: f64,
    /// Targets that are not met in full, and why.
    pub misses: Vec<Miss>,
    /// What was done against staleness.
    pub stale: Stale,
    /// What the search did.
    pub effort: Effort,
}

/// One outing of one session.
#[derive(Clone, Debug, PartialEq)]
pub struct Session {
    /// Which.
    pub when: When,
    /// Number of the outing.
    pub outing: usize,
    /// Whether it will be, was, or is not.
    pub state: State,
    /// By slot, the groups; empty where the session is lost.
    pub slots: Vec<Vec<Group>>,
}

/// What became of a session.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// It lies ahead.
    Planned,
    /// It took place as it stands here.
    Held,
    /// It does not take place.
    Lost,
}

/// Children at one station in one slot. Who is in no group of a slot plays freely.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Number of the station.
    pub station: usize,
    /// The gait that all of them play in: an activity's word before the colon.
    pub gait: String,
    /// Number of the game among the station's; `None` where it has none for the gait that
    /// all are ready for.
    pub game: Option<usize>,
    /// The children, ascending.
    pub seats: Vec<Seat>,
}

/// A child in a group, with its own foot.
#[derive(Clone, Debug, PartialEq)]
pub struct Seat {
    /// Number of the child.
    pub child: usize,
    /// Activities one after the other: number at the station and share of the slot. Two
    /// where both feet get half each.
    pub parts: Vec<(usize, f64)>,
}

/// Practice of one target over the programme, minutes.
#[derive(Clone, Debug, PartialEq)]
pub struct Practice {
    /// Number of the child.
    pub child: usize,
    /// The skill.
    pub skill: Skill,
    /// The foot.
    pub side: Option<Side>,
    /// Wanted: the week's target times the weeks.
    pub target: f64,
    /// Planned.
    pub got: f64,
    /// Planned by week.
    pub weeks: Vec<f64>,
    /// First week in which the skill is open to the child; `None` for never.
    pub opens: Option<u32>,
}

/// A target that is not met in full.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Miss {
    /// Number in [`Plan::practice`].
    pub practice: usize,
    /// Share of the target that is planned.
    pub share: f64,
    /// Why not more.
    pub why: Why,
}

/// Why a target is not met; each holds by arithmetic, not by guess.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// The session has no time for stations, or the child cannot be out.
    NoTime,
    /// No station gives this child practice of it.
    NoStation,
    /// The skill never opens within the weeks.
    NeverOpens,
    /// With all its time from the week the skill opens the child would miss it, with all
    /// weeks it would not.
    OpensLate,
    /// With all its time the child would miss it: too few stations serve it before they grow
    /// stale, or too little a minute.
    Stations,
    /// Sessions fell out, and with them it could have been met.
    Lost,
    /// The stations that serve it are full.
    Full,
    /// The child's minutes are worth more at its other targets.
    Time,
}

/// What was done against staleness.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stale {
    /// Child minutes beyond a week's first stretch on one figure, which count less.
    pub minutes: f64,
    /// Slots of children who stay at a station past the time after which the task should
    /// change: none are planned.
    pub runs: u32,
    /// Times that a child goes from one to another of the same two stations in two sessions
    /// running.
    pub pairs: u32,
    /// Children who are alone at a station.
    pub alone: u32,
}

/// What the search did.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Effort {
    /// Linear programmes solved for the bound.
    pub programmes: u32,
    /// Exchanges tried.
    pub tried: u64,
    /// Exchanges taken.
    pub taken: u64,
}
