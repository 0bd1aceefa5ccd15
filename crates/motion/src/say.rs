//! A clip in words: keys and facts, for who listens instead of looking.

use children::{Means, Side, Skill};
use note::{Message, msg};

use crate::clip::{Clip, Role};

/// What is on the ground, or comes down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Down {
    /// Nothing: flight.
    Air,
    /// The right foot.
    R,
    /// The left foot.
    L,
    /// Both.
    B,
}

impl Down {
    /// All of them.
    pub const ALL: [Down; 4] = [Down::Air, Down::R, Down::L, Down::B];

    /// The word of sentences.
    pub fn word(self) -> &'static str {
        match self {
            Down::Air => "air",
            Down::R => "R",
            Down::L => "L",
            Down::B => "B",
        }
    }

    fn of(right: bool, left: bool) -> Down {
        match (right, left) {
            (false, false) => Down::Air,
            (true, false) => Down::R,
            (false, true) => Down::L,
            (true, true) => Down::B,
        }
    }
}

/// One landing, for a list of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// Seconds.
    pub lands: f64,
    /// Which feet.
    pub feet: Down,
    /// What it is to the gait.
    pub role: Role,
    /// Number of the contact that it is or belongs to.
    pub count: usize,
    /// Whether both feet were in the air before it.
    pub flown: bool,
}

impl Clip {
    /// Every landing in order; on wheels and with a walker what is done instead.
    pub fn events(&self) -> Vec<Event> {
        if let Some(aid) = &self.aid {
            return aid.events.clone();
        }
        let flights = self.flights();
        self.landings()
            .iter()
            .filter_map(|landing| {
                let first = landing.prints.first()?;
                let has = |side| landing.prints.iter().any(|print| print.side == side);
                let flown = flights
                    .iter()
                    .any(|(_, to)| (to - landing.lands).abs() < 1e-9);
                Some(Event {
                    lands: landing.lands,
                    feet: Down::of(has(Side::Right), has(Side::Left)),
                    role: first.role,
                    count: first.count,
                    flown,
                })
            })
            .collect()
    }
}

/// What is on the ground at a time.
pub fn down(clip: &Clip, time: f64) -> Down {
    Down::of(clip.down(Side::Right, time), clip.down(Side::Left, time))
}

/// The feet as they land, one message each: right, right, left, left. The foot that comes
/// to rest at the end is not said.
pub fn line(clip: &Clip) -> Vec<Message> {
    clip.events()
        .iter()
        .filter(|event| event.role != Role::Stand)
        .map(Event::word)
        .collect()
}

/// What is on the ground or done, as a sentence: a word of [`Down`] or of
/// [`MOMENTS`](crate::MOMENTS).
pub fn moment(word: &str) -> Message {
    msg!("motion-moment", down = word)
}

/// How a skill goes on wheels or with a walker, as a sentence.
pub fn adapts(skill: Skill, means: Means) -> Message {
    let by = match means {
        Means::Walker => "walker",
        _ => "wheels",
    };
    msg!("motion-adapted", means = by, skill = skill.word())
}

impl Event {
    /// Whether a foot lands: not a hand, a frame or a stop.
    fn steps(&self) -> bool {
        !matches!(
            self.role,
            Role::Push | Role::Short | Role::Glide | Role::Wait | Role::Still | Role::Frame
        )
    }

    /// The landing in a word or two, for a list: right, both, push, glide.
    pub fn word(&self) -> Message {
        if self.steps() {
            msg!("motion-foot", foot = self.feet.word())
        } else {
            msg!(
                "motion-ride",
                role = self.role.word(),
                hands = self.feet.word()
            )
        }
    }

    /// The landing as a sentence.
    pub fn message(&self) -> Message {
        if !self.steps() {
            return msg!(
                "motion-rides",
                role = self.role.word(),
                hands = self.feet.word()
            );
        }
        msg!(
            "motion-landing",
            foot = self.feet.word(),
            role = self.role.word(),
            flown = if self.flown { "yes" } else { "no" }
        )
    }
}
