//! A path in time: when each foot lands and lifts.

use children::{Side, Skill};
use footfall::{Contact, Flight};
use geo::Coord;

use crate::figures::Model;
use crate::path::{Body, Path, Stop};

/// Seconds and metres: what a stage hands on is rounded to this.
const MILLIONTH: f64 = 1e6;
/// Least time to put the other foot down at the end, seconds: a foot cannot be nowhere.
const SETTLE: f64 = 0.15;
/// Seconds: landings that lie closer are one.
const TOGETHER: f64 = 1e-6;

/// What a print is to the gait.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Stands before the clip begins.
    Start,
    /// A contact of the route.
    Contact,
    /// The foot that closes up in a gallop or slide.
    Closing,
    /// The hop of a skip, on the foot that stepped.
    Hop,
    /// A running step before the route, or out of it.
    Run,
    /// A foot that touches down where it should not.
    Tap,
    /// The foot that comes down beside the other at the end.
    Stand,
}

impl Role {
    /// The word of files.
    pub fn word(self) -> &'static str {
        match self {
            Role::Start => "start",
            Role::Contact => "contact",
            Role::Closing => "closing",
            Role::Hop => "hop",
            Role::Run => "run",
            Role::Tap => "tap",
            Role::Stand => "stand",
        }
    }
}

/// One foot on the ground, from when to when.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Print {
    /// Which foot.
    pub side: Side,
    /// Its middle, metres.
    pub at: Coord<f64>,
    /// Where the toes point, radians from +x anticlockwise.
    pub toes: f64,
    /// The way of travel, the same.
    pub travel: f64,
    /// How far it lies from the line of travel to its own side, metres.
    pub out: f64,
    /// Seconds; 0 at the start.
    pub lands: f64,
    /// Seconds; `None`: it stays until the end.
    pub lifts: Option<f64>,
    /// What it is.
    pub role: Role,
    /// By which flight it was reached, for a contact.
    pub by: Option<Flight>,
    /// Number of the contact that it is or belongs to; 0 before the first.
    pub count: usize,
}

/// A path in time.
#[derive(Clone, Debug, PartialEq)]
pub struct Clip {
    /// The gait's word.
    pub gait: &'static str,
    /// The skill that it serves.
    pub skill: Skill,
    /// The foot that leads, or lands first.
    pub lead: Side,
    /// Who goes.
    pub body: Body,
    /// The early form's name; `None` when it is done well.
    pub early: Option<&'static str>,
    /// Prints in the order in which they land.
    pub prints: Vec<Print>,
    /// Seconds.
    pub end: f64,
}

/// What came down at one moment.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Landing<'a> {
    pub lands: f64,
    pub prints: Vec<&'a Print>,
}

/// The times of one stop.
#[derive(Clone, Copy)]
struct Beat {
    lands: f64,
    /// From contact to contact, all being of its flight.
    interval: f64,
    flight: f64,
    /// Of a cycle of two beats: the first, the second.
    parts: Option<(f64, f64)>,
}

impl Clip {
    /// A path done well. `None` for a path of less than one flight.
    pub fn of(path: &Path, model: &Model) -> Option<Clip> {
        let beats = beats(path, model)?;
        let mut clip = Clip {
            gait: path.gait,
            skill: path.skill,
            lead: path.lead,
            body: path.body,
            early: None,
            prints: Vec::new(),
            end: 0.0,
        };
        let start = path.stops.first()?;
        for side in [Side::Right, Side::Left] {
            let mut print = placed(start, side, start.apart, 0.0);
            print.role = Role::Start;
            print.lifts = Some(leaves_start(path, &beats, side, model));
            clip.prints.push(print);
        }
        let mut count = 0;
        for (at, stop) in path.stops.iter().enumerate().skip(1) {
            count += usize::from(stop.counted);
            let beat = beats.get(at)?;
            let next = beats.get(at + 1);
            for print in stop_prints(path, stop, beat, next, model) {
                clip.prints.push(Print { count, ..print });
            }
        }
        clip.stand(beats.last()?, model);
        clip.sort();
        let last = clip
            .prints
            .iter()
            .map(|print| print.lands)
            .fold(0.0, f64::max);
        clip.end = last + model.ready;
        Some(clip.rounded())
    }

    /// Puts the free foot down beside the other when the last contact is past.
    fn stand(&mut self, beat: &Beat, model: &Model) {
        let staying: Vec<Print> = self
            .prints
            .iter()
            .filter(|print| print.lifts.is_none())
            .copied()
            .collect();
        let [last] = staying.as_slice() else { return };
        let settle = match beat.parts {
            Some((_, short)) => short,
            None => (beat.interval - beat.flight) / 2.0,
        };
        let side = opposite(last.side);
        let beside = 2.0 * model.beside * self.body.foot;
        let (sin, cos) = libm::sincos(last.toes);
        let sign = sign(side);
        self.prints.push(Print {
            side,
            at: last.at + Coord { x: -sin, y: cos } * (sign * beside),
            out: beside - last.out,
            lands: last.lands + settle.max(SETTLE),
            lifts: None,
            role: Role::Stand,
            by: None,
            ..*last
        });
    }

    /// Prints in the order in which they land, the right foot first.
    pub(crate) fn sort(&mut self) {
        self.prints.sort_by(|one, other| {
            (one.lands.total_cmp(&other.lands)).then(one.side.cmp(&other.side))
        });
    }

    pub(crate) fn rounded(mut self) -> Clip {
        let round = |value: f64| (value * MILLIONTH).round() / MILLIONTH;
        for print in &mut self.prints {
            print.at = Coord {
                x: round(print.at.x),
                y: round(print.at.y),
            };
            print.toes = round(print.toes);
            print.travel = round(print.travel);
            print.out = round(print.out);
            print.lands = round(print.lands);
            print.lifts = print.lifts.map(round);
        }
        self.end = round(self.end);
        self
    }

    /// What landed together, in order; the start is not a landing.
    pub(crate) fn landings(&self) -> Vec<Landing<'_>> {
        let mut landings: Vec<Landing> = Vec::new();
        for print in self.prints.iter().filter(|print| print.role != Role::Start) {
            match landings.last_mut() {
                Some(last) if print.lands - last.lands <= TOGETHER => last.prints.push(print),
                _ => landings.push(Landing {
                    lands: print.lands,
                    prints: vec![print],
                }),
            }
        }
        landings
    }

    /// The contacts in order, without start, closing feet and hops; both feet of one contact
    /// may land one after the other.
    pub fn contacts(&self) -> Vec<Contact> {
        let most = self
            .prints
            .iter()
            .map(|print| print.count)
            .max()
            .unwrap_or(0);
        (1..=most)
            .filter_map(|count| {
                let mut sides = self
                    .prints
                    .iter()
                    .filter(|print| print.count == count && print.role == Role::Contact)
                    .map(|print| print.side);
                match (sides.next()?, sides.next()) {
                    (_, Some(_)) => Some(Contact::B),
                    (Side::Right, None) => Some(Contact::R),
                    (Side::Left, None) => Some(Contact::L),
                }
            })
            .collect()
    }

    /// Whether a foot is on the ground at a time; it is when it lands, it is not when it lifts.
    pub fn down(&self, side: Side, time: f64) -> bool {
        self.prints.iter().any(|print| {
            print.side == side
                && print.lands <= time
                && print.lifts.is_none_or(|lifts| time < lifts)
        })
    }

    /// When no foot is on the ground: from, to; seconds.
    pub fn flights(&self) -> Vec<(f64, f64)> {
        let mut flights = Vec::new();
        let mut ground = 0.0_f64;
        for print in &self.prints {
            if print.lands > ground + TOGETHER {
                flights.push((ground, print.lands));
            }
            ground = ground.max(print.lifts.unwrap_or(self.end));
        }
        flights
    }
}

/// +1 for the left foot: y grows to the left.
pub(crate) fn sign(side: Side) -> f64 {
    if side == Side::Left { 1.0 } else { -1.0 }
}

pub(crate) fn opposite(side: Side) -> Side {
    match side {
        Side::Right => Side::Left,
        Side::Left => Side::Right,
    }
}

/// When every stop lands. The time on the ground between two flights is half the one's and
/// half the other's, so that like flights follow at their own interval.
fn beats(path: &Path, model: &Model) -> Option<Vec<Beat>> {
    let mut beats: Vec<Beat> = vec![Beat {
        lands: 0.0,
        interval: 0.0,
        flight: 0.0,
        parts: None,
    }];
    let mut stops = path.stops.iter().skip(1).peekable();
    stops.peek()?;
    for stop in stops {
        let kind = stop.flight?;
        let interval = model.interval(kind, path.rate, path.body.age);
        let flight = model.flight(kind, path.rate, path.body.age);
        let parts = model
            .beat(kind)
            .map(|ratio| (interval * ratio / (1.0 + ratio), interval / (1.0 + ratio)));
        let ground = (interval - flight) / 2.0;
        let lands = match (beats.as_slice(), parts) {
            ([_], Some((_, short))) => model.ready + short,
            ([_], None) => model.ready + ground + flight.max(0.0),
            ([.., last], _) => last.lands + (last.interval - last.flight) / 2.0 + ground + flight,
            ([], _) => return None,
        };
        beats.push(Beat {
            lands,
            interval,
            flight,
            parts,
        });
    }
    Some(beats)
}

/// How long both feet share the ground in a cycle of two beats.
fn shared(beat: &Beat, model: &Model) -> f64 {
    match beat.parts {
        Some((_, short)) => model
            .both_down
            .min((short - beat.flight).max(0.0) / 2.0)
            .min(short / 2.0),
        None => 0.0,
    }
}

/// When a foot leaves the start: the one that is not needed at once, the other as it pushes
/// off.
fn leaves_start(path: &Path, beats: &[Beat], side: Side, model: &Model) -> f64 {
    let (Some(start), Some(next), Some(beat)) =
        (path.stops.first(), path.stops.get(1), beats.get(1))
    else {
        return model.ready;
    };
    let pushes = match next.flight {
        // the leading foot steps out, the other pushes
        Some(Flight::Gallop | Flight::Slide) => next.contact.side() != Some(side),
        _ => start.contact.side().is_none_or(|stands| stands == side),
    };
    match next.flight {
        _ if !pushes => model.ready,
        Some(Flight::Skip) => beat.lands + shared(beat, model),
        _ => beat.lands - beat.flight,
    }
}

/// The prints of one stop, with the times when they lift for the next.
fn stop_prints(
    path: &Path,
    stop: &Stop,
    beat: &Beat,
    next: Option<&Beat>,
    model: &Model,
) -> Vec<Print> {
    let beside = model.beside * path.body.foot;
    let aside = match stop.flight {
        Some(Flight::Gallop | Flight::Slide) => beside,
        // a hop goes along the middle
        Some(Flight::Hop) => 0.0,
        _ if !path.open => 0.0,
        Some(Flight::Walk) => model.beside_walk,
        _ => beside,
    };
    let role = if stop.counted {
        Role::Contact
    } else {
        Role::Run
    };
    let lifts = next.map(|next| next.lands - next.flight);
    let landed = |side: Side, aside: f64, ahead: f64| Print {
        lands: beat.lands,
        lifts,
        role,
        by: stop.flight,
        ..placed(stop, side, aside, ahead)
    };
    let Some(side) = stop.contact.side() else {
        return [Side::Right, Side::Left]
            .map(|side| landed(side, stop.apart, 0.0))
            .to_vec();
    };
    let (long, _) = beat.parts.unwrap_or((0.0, 0.0));
    let second = beat.lands + long;
    match stop.flight {
        Some(Flight::Gallop | Flight::Slide) => {
            let behind = match stop.flight {
                Some(Flight::Gallop) => -model.closing * path.body.foot,
                _ => 0.0,
            };
            let lead = Print {
                lifts: next.map(|_| second + shared(beat, model)),
                ..landed(side, aside, 0.0)
            };
            let closing = Print {
                lands: second,
                role: Role::Closing,
                by: None,
                ..landed(opposite(side), aside, behind)
            };
            vec![lead, closing]
        }
        Some(Flight::Skip) => {
            let half = model.skip_hop * path.body.stature / 2.0;
            let step = Print {
                lifts: Some(second - beat.flight),
                ..landed(side, aside, -half)
            };
            let hop = Print {
                lands: second,
                lifts: next.map(|next| next.lands + shared(next, model)),
                role: Role::Hop,
                by: None,
                ..landed(side, aside, half)
            };
            vec![step, hop]
        }
        _ => vec![landed(side, aside, 0.0)],
    }
}

/// A foot at a stop: so far to its own side, so far ahead of the aim.
fn placed(stop: &Stop, side: Side, aside: f64, ahead: f64) -> Print {
    let (sin, cos) = libm::sincos(stop.toes);
    Print {
        side,
        at: stop.at
            + Coord { x: -sin, y: cos } * (sign(side) * aside)
            + Coord { x: cos, y: sin } * ahead,
        toes: stop.toes,
        travel: stop.travel,
        out: aside,
        lands: 0.0,
        lifts: None,
        role: Role::Contact,
        by: None,
        count: 0,
    }
}
