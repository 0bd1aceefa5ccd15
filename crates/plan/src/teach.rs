//! The `teach` key.

use children::Skill;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::footfall::letter;
use crate::round::millionth;

/// The weeks of play.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Teach {
    /// Weeks.
    pub weeks: u32,
    /// Minutes of a slot.
    pub slot_minutes: f64,
    /// Slots of a session.
    pub slots: u32,
    /// Children one by one; where only ages are counted, those of one age are numbered.
    pub children: Vec<String>,
    /// Children who go out together, by outing.
    pub outings: Vec<Vec<String>>,
    /// By time, then outing.
    pub sessions: Vec<Session>,
    /// Practice by child, skill and foot over the programme.
    pub practice: Vec<Trained>,
    /// Share of the practice wanted, first halves of targets weighing more, as `layout.value`.
    pub value: f64,
    /// No plan of these slots and outings can do better.
    pub bound: f64,
    /// (bound - value) / bound.
    pub gap: f64,
    /// Games that this yard and class can play.
    pub games: Vec<String>,
    /// What a session will be like, by simulation.
    pub forecast: Forecast,
}

/// One outing of one session.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Session {
    /// From 1.
    pub week: u32,
    /// Of the week, from 1.
    pub session: u32,
    /// From 0.
    pub outing: usize,
    /// By slot, the groups. Who is in none plays freely.
    pub slots: Vec<Vec<Group>>,
}

/// Children at one station in one slot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Group {
    /// The marking.
    pub marking: String,
    /// The gait that all of them play in.
    pub gait: String,
    /// The game; null where none is known for it.
    pub game: Option<String>,
    /// The children.
    pub children: Vec<Seat>,
}

/// A child in a group.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Seat {
    /// The child.
    pub child: String,
    /// Activities one after the other, as `hop:R`, and their shares of the slot.
    pub parts: Vec<(String, f64)>,
}

/// Practice of one target, minutes over the programme.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Trained {
    /// The child.
    pub child: String,
    /// The skill.
    pub skill: String,
    /// `R` or `L`; null where the skill has no sides.
    pub foot: Option<String>,
    /// Wanted.
    pub target: f64,
    /// Planned.
    pub got: f64,
    /// Why not more: `no-time`, `no-station`, `never-opens`, `opens-late`, `stations`, `lost`,
    /// `full`, `time`; null where the target is met.
    pub why: Option<String>,
}

/// A mean and a standard deviation over simulated sessions.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Spread {
    /// The mean.
    pub mean: f64,
    /// The standard deviation.
    pub sd: f64,
}

/// What simulated sessions showed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Forecast {
    /// Simulated programmes.
    pub runs: u32,
    /// By child, in the order of `children`, over the whole programme.
    pub children: Vec<Foreseen>,
    /// By station.
    pub stations: Vec<Waiting>,
}

/// What one child will meet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Foreseen {
    /// Good contacts.
    pub contacts: Spread,
    /// Minutes on the move on a figure.
    pub active: Spread,
    /// Minutes of waiting.
    pub waiting: Spread,
}

/// Waiting at a station, seconds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Waiting {
    /// The marking.
    pub marking: String,
    /// Mean wait for a turn.
    pub mean: f64,
    /// The longest.
    pub longest: f64,
}

impl Teach {
    /// Copies the weeks of play; `codes` are the children one by one, `games` what can be
    /// played.
    pub fn of(
        programme: &sessions::Programme,
        plan: &sessions::Plan,
        forecast: &sessions::Forecast,
        codes: &[String],
        games: &[String],
    ) -> Teach {
        let code = |number: usize| codes.get(number).cloned().unwrap_or_default();
        let group = |group: &sessions::Group| {
            let station = programme.stations.get(group.station);
            let word = |number: usize| {
                let activity = station.and_then(|station| station.activities.get(number));
                activity.map_or_else(String::new, |activity| activity.word.clone())
            };
            Group {
                marking: station.map_or_else(String::new, |station| station.name.clone()),
                gait: group.gait.clone(),
                game: group
                    .game
                    .and_then(|game| Some(station?.games.get(game)?.name.clone())),
                children: group
                    .seats
                    .iter()
                    .map(|seat| Seat {
                        child: code(seat.child),
                        parts: seat
                            .parts
                            .iter()
                            .map(|(activity, share)| (word(*activity), millionth(*share)))
                            .collect(),
                    })
                    .collect(),
            }
        };
        let spread = |spread: &sessions::simulate::Spread| Spread {
            mean: millionth(spread.mean),
            sd: millionth(spread.sd),
        };
        Teach {
            weeks: programme.weeks,
            slot_minutes: millionth(plan.slot_minutes),
            slots: plan.slots,
            children: codes.to_vec(),
            outings: plan
                .outings
                .iter()
                .map(|outing| outing.iter().map(|child| code(*child)).collect())
                .collect(),
            sessions: plan
                .sessions
                .iter()
                .map(|session| Session {
                    week: session.when.week,
                    session: session.when.session,
                    outing: session.outing,
                    slots: session
                        .slots
                        .iter()
                        .map(|slot| slot.iter().map(group).collect())
                        .collect(),
                })
                .collect(),
            practice: plan
                .practice
                .iter()
                .enumerate()
                .map(|(number, practice)| Trained {
                    child: code(practice.child),
                    skill: Skill::word(practice.skill).to_owned(),
                    foot: practice.side.map(letter),
                    target: millionth(practice.target),
                    got: millionth(practice.got),
                    why: plan
                        .misses
                        .iter()
                        .find(|miss| miss.practice == number)
                        .map(|miss| why(miss.why).to_owned()),
                })
                .collect(),
            value: millionth(plan.value),
            bound: millionth(plan.bound),
            gap: millionth(plan.gap),
            games: games.to_vec(),
            forecast: Forecast {
                runs: forecast.runs,
                children: forecast
                    .children
                    .iter()
                    .map(|child| Foreseen {
                        contacts: spread(&child.contacts),
                        active: spread(&child.active),
                        waiting: spread(&child.waiting),
                    })
                    .collect(),
                stations: programme
                    .stations
                    .iter()
                    .zip(&forecast.stations)
                    .map(|(station, waiting)| Waiting {
                        marking: station.name.clone(),
                        mean: millionth(waiting.mean),
                        longest: millionth(waiting.longest),
                    })
                    .collect(),
            },
        }
    }
}

fn why(why: sessions::Why) -> &'static str {
    match why {
        sessions::Why::NoTime => "no-time",
        sessions::Why::NoStation => "no-station",
        sessions::Why::NeverOpens => "never-opens",
        sessions::Why::OpensLate => "opens-late",
        sessions::Why::Stations => "stations",
        sessions::Why::Lost => "lost",
        sessions::Why::Full => "full",
        sessions::Why::Time => "time",
    }
}
