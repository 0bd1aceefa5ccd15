//! A path in time: when each foot lands and lifts.

use children::{Side, Skill};
use footfall::{Contact, Flight};
use geo::Coord;

use crate::aid::{self, Aid};
use crate::beats::{Beat, beats, leaves_start, placed, stop_prints};
use crate::figures::Model;
use crate::path::{Body, Path};

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
    /// A step with a walker before the one that comes to the mark.
    Step,
    /// A push of the wheels, from when a hand takes the rim until it lets go.
    Push,
    /// The short push of a long and a short one.
    Short,
    /// Nothing: the wheels roll and no hand pushes.
    Glide,
    /// Nothing: the wheels roll on until the next push is due.
    Wait,
    /// Hands that hold the wheels still, or a walker's child that stands still.
    Still,
    /// A walker's frame, set down.
    Frame,
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
            Role::Step => "step",
            Role::Push => "push",
            Role::Short => "short",
            Role::Glide => "glide",
            Role::Wait => "wait",
            Role::Still => "still",
            Role::Frame => "frame",
        }
    }
}

/// One foot on the ground, from when to when; on wheels one hand on its rim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Print {
    /// Which foot, or hand.
    pub side: Side,
    /// Its middle, metres; a hand's where it takes the rim.
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
    /// What carries a child that does not go on its feet alone.
    pub aid: Option<Aid>,
    /// Seconds.
    pub end: f64,
}

/// What came down at one moment.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Landing<'a> {
    pub lands: f64,
    pub prints: Vec<&'a Print>,
}

impl Clip {
    /// Who goes, and nothing yet of how.
    pub(crate) fn empty(path: &Path) -> Clip {
        Clip {
            gait: path.gait,
            skill: path.skill,
            lead: path.lead,
            body: path.body,
            early: None,
            prints: Vec::new(),
            aid: None,
            end: 0.0,
        }
    }

    /// A path done well. `None` for a path of less than one flight.
    pub fn of(path: &Path, model: &Model) -> Option<Clip> {
        if let Some(ride) = &path.ride {
            return aid::clip(path, ride, model);
        }
        let beats = beats(path, model)?;
        let mut clip = Clip::empty(path);
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
        if let Some(aid) = &mut self.aid {
            aid.rounded(round);
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
    /// may land one after the other. What carries comes to each as both feet do.
    pub fn contacts(&self) -> Vec<Contact> {
        if let Some(aid) = &self.aid {
            return aid.marks.iter().map(|_| Contact::B).collect();
        }
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

    /// When no foot is on the ground, or wheels roll and no hand pushes: from, to; seconds.
    pub fn flights(&self) -> Vec<(f64, f64)> {
        if let Some(aid) = &self.aid {
            return aid.glides();
        }
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
