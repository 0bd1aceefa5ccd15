//! What is asked: children with targets, stations with games, weeks.

use children::{Side, Skill};
pub use layout::week::{Target, Week};

/// All that the plan of the weeks knows.
#[derive(Clone, Debug, PartialEq)]
pub struct Programme {
    /// How many weeks.
    pub weeks: u32,
    /// What each week holds: sessions, minutes, staff, yard.
    pub week: Week,
    /// The roster.
    pub children: Vec<Pupil>,
    /// Minutes **a week** by child, skill and side (T of the layout). Over the programme a
    /// child should get `weeks` times as much.
    pub targets: Vec<Target>,
    /// The markings that are painted.
    pub stations: Vec<Station>,
    /// Which skill waits for which; [`usual_order`] where nobody says otherwise.
    pub order: Vec<After>,
    /// Seed of the search and of the simulation.
    pub seed: u64,
    /// How much to search.
    pub work: Work,
}

/// A child of the roster.
#[derive(Clone, Debug, PartialEq)]
pub struct Pupil {
    /// Pseudonymous code.
    pub code: String,
    /// Years.
    pub age: f64,
    /// Skills that are there already: they wait for nothing, and what needs them need not wait.
    pub known: Vec<Skill>,
}

/// A painted marking with what is played on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Station {
    /// The marking's name.
    pub name: String,
    /// Children who can be under way side by side.
    pub tracks: u32,
    /// What can be practised on it.
    pub activities: Vec<Activity>,
    /// Games for it.
    pub games: Vec<Game>,
}

/// A gait on a station, with the foot that leads.
#[derive(Clone, Debug, PartialEq)]
pub struct Activity {
    /// As `hop:R`, `jump`, `court:L`.
    pub word: String,
    /// The skill that it serves first; a child to whom it is not open stays away.
    pub skill: Skill,
    /// The leading foot.
    pub side: Option<Side>,
    /// Whether only one child may be on a track at a time (short jump and hop trails, ledger
    /// `sessions.alone-below`); else the next starts when the release has passed. Both feet
    /// of a gait alike.
    pub alone: bool,
    /// Of each child whom it pitches well.
    pub plays: Vec<Play>,
}

/// What one child does in an activity.
#[derive(Clone, Debug, PartialEq)]
pub struct Play {
    /// Number of the child.
    pub child: usize,
    /// e: practice minutes a minute, by skill and side.
    pub yields: Vec<(Skill, Option<Side>, f64)>,
    /// Flights of the chosen route.
    pub flights: u32,
    /// Expected good contacts of one pass along it, all skills together.
    pub good: f64,
    /// Seconds of a pass.
    pub pass_s: f64,
    /// Seconds to walk back into line.
    pub walk_back_s: f64,
}

/// A game, by a name that means nothing here.
#[derive(Clone, Debug, PartialEq)]
pub struct Game {
    /// Its name.
    pub name: String,
    /// The gait it is played in: the part of an activity's word before the colon.
    pub gait: String,
    /// 1 the first.
    pub level: u8,
    /// Games, at any station, that each child has played before.
    pub after: Vec<String>,
}

/// A skill that comes after another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct After {
    /// The later.
    pub skill: Skill,
    /// The earlier; `None` for a skill that waits for a week alone.
    pub needs: Option<Skill>,
    /// No sooner than this week, from 1.
    pub first_week: u32,
}

/// Gallop before slide and skip, hop before skip. Source: textbook consensus, from memory
/// (children.md 2.6).
pub fn usual_order() -> Vec<After> {
    [
        (Skill::Slide, Skill::Gallop),
        (Skill::Skip, Skill::Gallop),
        (Skill::Skip, Skill::Hop),
    ]
    .map(|(skill, needs)| After {
        skill,
        needs: Some(needs),
        first_week: 1,
    })
    .to_vec()
}

/// How much is searched; counts, so that the answer does not know the machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Work {
    /// Rounds of prices for the bound.
    pub rounds: u32,
    /// Random exchanges for each child and slot.
    pub exchanges: u32,
}

impl Default for Work {
    fn default() -> Work {
        Work {
            rounds: 40,
            exchanges: 600,
        }
    }
}

/// A session of the programme; both from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct When {
    /// The week.
    pub week: u32,
    /// The session of the week.
    pub session: u32,
}

/// What went otherwise than planned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mishap {
    /// A session that will not take place, or did not.
    Lost(When),
    /// A marking that cannot be used.
    Broken {
        /// Number of the station.
        station: usize,
        /// From this session on.
        from: When,
        /// Through this one; `None` to the end.
        through: Option<When>,
    },
}
