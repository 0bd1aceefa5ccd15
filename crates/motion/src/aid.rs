//! What carries a child that does not go on its feet alone, in time: wheels by pushes, a
//! walker by frame, step, step.

use children::{Means, Side};
use footfall::Flight;
use geo::Coord;

use crate::clip::{Clip, Print, Role, sign};
use crate::figures::Model;
use crate::path::Path;
use crate::ride::{Adapted, Ride, Stretch, Then, adapted};
use crate::say::{Down, Event};
use crate::track::Key;
use crate::{walker, wheels};

/// A chair or a frame through a clip, and what hands and feet do with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Aid {
    /// Wheels or a walker.
    pub means: Means,
    /// From side to side, metres.
    pub breadth: f64,
    /// Its middle, of wheels the middle of the axle; the first key at 0, the last at the end.
    pub keys: Vec<Key>,
    /// The right hand and the left one, of wheels; a walker's stay on its grips.
    pub hands: Option<[Vec<Key>; 2]>,
    /// Where it stands still, in order.
    pub stands: Vec<Stand>,
    /// Where it comes to each mark of the route, in order.
    pub marks: Vec<Mark>,
    /// Pushes, glides and stops, or frame and steps, in order.
    pub events: Vec<Event>,
}

/// A place where what carries stands still, from when to when.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// Its middle, metres.
    pub at: Coord<f64>,
    /// The way ahead, radians.
    pub toes: f64,
    /// Seconds.
    pub lands: f64,
    /// Seconds; `None`: it stands until the end.
    pub lifts: Option<f64>,
}

/// A mark of the route, come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Its number, from 1.
    pub count: usize,
    /// The aim, metres.
    pub at: Coord<f64>,
    /// The way there, radians.
    pub toes: f64,
    /// Seconds.
    pub lands: f64,
}

/// The words of what an aided child does at a moment, beside those of [`Down`].
pub const MOMENTS: [&str; 7] = [
    "push-R", "push-L", "push-B", "glide", "wait", "still", "frame",
];

/// One push, or one frame, step, step.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Leg {
    /// Number of the mark that it goes to.
    pub count: usize,
    /// Metres along the way.
    pub from: f64,
    /// The same.
    pub to: f64,
    /// How long it is.
    pub stretch: Stretch,
    /// Whether it comes to the mark.
    pub arrives: bool,
    /// What follows it.
    pub then: Then,
    /// How many share the way from mark to mark.
    pub of: usize,
}

/// The clip of a ride. `None` for one of less than one contact, or that goes nowhere.
pub(crate) fn clip(path: &Path, ride: &Ride, model: &Model) -> Option<Clip> {
    let row = adapted(path.skill);
    let legs = legs(ride, &row, model);
    if legs.is_empty() || legs.iter().any(|leg| leg.to <= leg.from) {
        return None;
    }
    let mut clip = Clip::empty(path);
    match ride.means {
        Means::Walker => walker::fill(&mut clip, ride, &row, &legs, model),
        _ => wheels::fill(&mut clip, ride, &row, &legs, model),
    }
    clip.sort();
    Some(clip.rounded())
}

/// The stretches of every contact in order.
fn legs(ride: &Ride, row: &Adapted, model: &Model) -> Vec<Leg> {
    let long = model.beat(Flight::Gallop).unwrap_or(1.0);
    let size = |stretch: &Stretch| match stretch {
        Stretch::Long => long,
        Stretch::Whole | Stretch::Short => 1.0,
    };
    let all: f64 = row.stretches.iter().map(size).sum();
    let of = row.stretches.len();
    let mut legs = Vec::new();
    for (nth, pair) in ride.marks.windows(2).enumerate() {
        let &[start, end] = pair else { continue };
        let mut gone = 0.0;
        for (at, stretch) in row.stretches.iter().enumerate() {
            let from = start + (end - start) * gone / all;
            gone += size(stretch);
            let arrives = at + 1 == of;
            legs.push(Leg {
                count: nth + 1,
                from,
                to: if arrives {
                    end
                } else {
                    start + (end - start) * gone / all
                },
                stretch: *stretch,
                arrives,
                then: if arrives { row.then } else { Then::On },
                of,
            });
        }
    }
    // where the route ends, whoever goes it stops
    if let Some(last) = legs.last_mut() {
        last.then = Then::Still;
    }
    legs
}

/// A hand or foot so far to its own side of a place, so far ahead of it.
pub(crate) fn beside(
    (at, toes): (Coord<f64>, f64),
    side: Side,
    aside: f64,
    ahead: f64,
) -> Coord<f64> {
    let (sin, cos) = libm::sincos(toes);
    at + Coord { x: -sin, y: cos } * (sign(side) * aside) + Coord { x: cos, y: sin } * ahead
}

/// A print of an aided clip.
pub(crate) fn print(
    (at, toes): (Coord<f64>, f64),
    side: Side,
    out: f64,
    [lands, lifts]: [f64; 2],
    role: Role,
    count: usize,
) -> Print {
    Print {
        side,
        at,
        toes,
        travel: toes,
        out,
        lands,
        lifts: lifts.is_finite().then_some(lifts),
        role,
        by: None,
        count,
    }
}

impl Aid {
    /// When wheels roll and no hand pushes: from, to; seconds. None of a walker.
    pub fn glides(&self) -> Vec<(f64, f64)> {
        let mut glides: Vec<(f64, f64)> = Vec::new();
        let mut since: Option<f64> = None;
        for event in &self.events {
            match event.role {
                Role::Glide => since = Some(event.lands),
                Role::Wait => {}
                _ => glides.extend(since.take().map(|from| (from, event.lands))),
            }
        }
        glides
    }

    /// What is done from when on, in order, the first at 0: a word of [`MOMENTS`] or [`Down`].
    pub fn moments(&self, clip: &Clip) -> Vec<(f64, &'static str)> {
        let mut moments: Vec<(f64, &'static str)> = match self.means {
            Means::Walker => self.steps(clip),
            _ => std::iter::once((0.0, "still"))
                .chain(self.events.iter().map(|event| {
                    let word = match (event.role, event.feet) {
                        (Role::Push | Role::Short, Down::R) => "push-R",
                        (Role::Push | Role::Short, Down::L) => "push-L",
                        (Role::Push | Role::Short, _) => "push-B",
                        (Role::Glide, _) => "glide",
                        (Role::Wait, _) => "wait",
                        _ => "still",
                    };
                    (event.lands, word)
                }))
                .collect(),
        };
        moments.dedup_by(|later, earlier| later.1 == earlier.1);
        moments
    }

    fn steps(&self, clip: &Clip) -> Vec<(f64, &'static str)> {
        let feet = clip.prints.iter();
        let mut times: Vec<f64> = feet
            .flat_map(|print| [Some(print.lands), print.lifts])
            .chain(
                self.stands
                    .iter()
                    .flat_map(|stand| [Some(stand.lands), stand.lifts]),
            )
            .flatten()
            .collect();
        times.sort_by(f64::total_cmp);
        times.dedup();
        let stands = |time: f64| {
            self.stands
                .iter()
                .any(|stand| stand.lands <= time && stand.lifts.is_none_or(|lifts| time < lifts))
        };
        times
            .into_iter()
            .map(|time| {
                let feet = crate::say::down(clip, time);
                (time, if stands(time) { feet.word() } else { "frame" })
            })
            .collect()
    }

    pub(crate) fn rounded(&mut self, round: impl Fn(f64) -> f64) {
        let point = |at: Coord<f64>| Coord {
            x: round(at.x),
            y: round(at.y),
        };
        for stand in &mut self.stands {
            stand.at = point(stand.at);
            stand.toes = round(stand.toes);
            stand.lands = round(stand.lands);
            stand.lifts = stand.lifts.map(&round);
        }
        for mark in &mut self.marks {
            mark.at = point(mark.at);
            mark.toes = round(mark.toes);
            mark.lands = round(mark.lands);
        }
        for event in &mut self.events {
            event.lands = round(event.lands);
        }
    }
}
