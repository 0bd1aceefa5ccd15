//! What lands where: a route on a figure, or a gait on free ground, stop by stop.

use std::f64::consts::FRAC_PI_2;

use children::{Child, Side, Skill};
use footfall::{Contact, Flight, Follow, Gait, Stand};
use geo::Coord;
use marking::{Cell, Figure, Takes};

use crate::figures::Model;
use crate::ride::{Ride, adapted};

/// Metres across the way from which a cell for both feet is a pair of squares.
const PAIR: f64 = 0.62;
/// Metres: half the gap that parts a pair of squares, shared by both.
const PAIR_GAP: f64 = 0.0125;

/// What a clip needs of a child.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Years.
    pub age: f64,
    /// Metres.
    pub stature: f64,
    /// Length of a foot, metres.
    pub foot: f64,
}

impl From<&Child> for Body {
    fn from(child: &Child) -> Body {
        Body {
            age: child.age,
            stature: child.stature,
            foot: child.foot,
        }
    }
}

/// One place where a foot, or both feet, land.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stop {
    /// The aim, metres.
    pub at: Coord<f64>,
    /// What lands.
    pub contact: Contact,
    /// By which flight; `None` where the route starts.
    pub flight: Option<Flight>,
    /// The way of travel, radians from +x anticlockwise.
    pub travel: f64,
    /// Where the toes point, the same.
    pub toes: f64,
    /// Of each foot from the aim, where both are down; metres.
    pub apart: f64,
    /// Whether it is a contact of the route, and not a step before or after it.
    pub counted: bool,
}

/// A gait's stops in order, the start first.
#[derive(Clone, Debug, PartialEq)]
pub struct Path {
    /// The gait's word.
    pub gait: &'static str,
    /// The skill that it serves.
    pub skill: Skill,
    /// Whose contacts a second it has.
    pub rate: Skill,
    /// The foot that leads, or lands first.
    pub lead: Side,
    /// Who goes.
    pub body: Body,
    /// The stops.
    pub stops: Vec<Stop>,
    /// Whether there is no cell to land on, so that each foot keeps to its own side.
    pub open: bool,
    /// How wheels or a walker cover it; `None` on feet.
    pub ride: Option<Ride>,
}

/// A kept route, as footfall and the record of a plan have it.
#[derive(Clone, Copy, Debug)]
pub struct Way<'a> {
    /// The gait.
    pub gait: &'a Gait,
    /// Numbers of the cells, the start first; empty on a lane.
    pub cells: &'a [usize],
    /// Number of the lane, where it runs along one.
    pub lane: Option<usize>,
    /// What stands and lands, the start first.
    pub contacts: &'a [Contact],
}

impl Path {
    /// A route on a figure. `None` where the route names what the figure has not, or where
    /// the child's gait does not allow its contacts.
    ///
    /// On cells a foot lands on the aim; on a lane it keeps to its own side of the middle.
    /// A start with free ground before it gets the run-up that the gait asks for. Wheels and a
    /// walker go the same way by pushes.
    pub fn on(figure: &Figure, way: &Way, child: &Child, model: &Model) -> Option<Path> {
        let gait = &way.gait.by(child.means);
        let first = way.cells.first().and_then(|cell| figure.cells.get(*cell));
        let run_up = first.is_some_and(|cell| cell.run_up);
        let follows = follows(gait, way.contacts, run_up)?;
        let lane = match way.lane {
            Some(number) => Some(figure.lanes.get(number)?),
            None => None,
        };
        let mut places: Vec<(Coord<f64>, Option<f64>, Option<&Cell>)> = Vec::new();
        let mut metres = Vec::new();
        match lane {
            Some(lane) => {
                let mut along = 0.0;
                for step in 0..way.contacts.len() {
                    if let Some(follow) = step.checked_sub(1).and_then(|at| follows.get(at)) {
                        along += stride(follow, child, model)?;
                    }
                    metres.push(along);
                    let (at, travel) = lane.along(along);
                    places.push((at, Some(travel), None));
                }
            }
            None => {
                for cell in way.cells {
                    let cell = figure.cells.get(*cell)?;
                    places.push((cell.centre, None, Some(cell)));
                }
            }
        }
        if places.len() != way.contacts.len() {
            return None;
        }
        let lead = lead(way.contacts)?;
        let spots: Vec<Coord<f64>> = places.iter().map(|place| place.0).collect();
        let body = Body::from(child);
        let mut stops: Vec<Stop> = Vec::new();
        for (step, (at, travel, cell)) in places.iter().enumerate() {
            let travel = travel.unwrap_or_else(|| bisector(&spots, step));
            // wheels face the way they roll
            let facing = figure.facing.filter(|_| !gait.wheels);
            let toes = facing.unwrap_or_else(|| toes(gait, lead, travel));
            stops.push(Stop {
                at: *at,
                contact: *way.contacts.get(step)?,
                flight: step
                    .checked_sub(1)
                    .and_then(|at| follows.get(at))
                    .map(|f| f.flight),
                travel,
                toes,
                apart: cell.map_or(model.beside * body.foot, |cell| {
                    apart(cell, toes, &body, model)
                }),
                counted: step > 0,
            });
        }
        if run_up && gait.free_run_up > 0 {
            run_in(&mut stops, gait.free_run_up, child, model);
        }
        let ride = gait.wheels.then(|| match lane {
            Some(lane) => Ride::along(child, lane, &metres),
            None => Ride::through(child, &stops, model.feet.wheels_turn),
        });
        Some(Path {
            gait: gait.name,
            skill: gait.skill,
            rate: gait.rate,
            lead,
            body,
            stops,
            open: lane.is_some(),
            ride,
        })
    }

    /// A gait straight ahead (+x) on free ground, at the child's own stride. `None` where the
    /// gait does not say by itself what comes next (a court's), or the child lacks a skill
    /// of it.
    ///
    /// A gait with a run-up shows it, its flight, and one running step out of it.
    ///
    /// Wheels and a walker go it by pushes, and then `lead` is the hand that pushes alone, or
    /// the foot that steps first.
    pub fn free(gait: &Gait, lead: Side, child: &Child, model: &Model) -> Option<Path> {
        let gait = &gait.by(child.means);
        let (start, contacts) = contacts(gait, lead, child, model)?;
        let follows = follows_from(gait, start, &contacts)?;
        let body = Body::from(child);
        let toes = toes(gait, lead, 0.0);
        let stop = |x: f64, contact: Contact, flight: Option<Flight>| Stop {
            at: Coord { x, y: 0.0 },
            contact,
            flight,
            travel: 0.0,
            toes,
            apart: model.beside * body.foot,
            counted: flight.is_some(),
        };
        let mut x = 0.0;
        let mut stops = vec![stop(x, start.contact, None)];
        for follow in &follows {
            x += stride(follow, child, model)?;
            stops.push(stop(x, follow.then.contact, Some(follow.flight)));
        }
        if gait.done > 0
            && let Some(last) = stops.last().copied()
        {
            x += stride(&run_after(last.contact)?, child, model)?;
            let contact = other(last.contact);
            stops.push(Stop {
                counted: false,
                ..stop(x, contact, Some(Flight::Run))
            });
        }
        Some(Path {
            gait: gait.name,
            skill: gait.skill,
            rate: gait.rate,
            lead,
            body,
            ride: gait.wheels.then(|| Ride::straight(child, &stops)),
            stops,
            open: true,
        })
    }
}

/// The state in which a free path starts, and its contacts after it.
fn contacts(
    gait: &Gait,
    lead: Side,
    child: &Child,
    model: &Model,
) -> Option<(Stand, Vec<Contact>)> {
    let own = [Contact::R, Contact::L, Contact::B];
    for contact in own {
        let start = Stand { contact, phase: 0 };
        let Some(first) = gait.follows.iter().find(|follow| follow.after == start) else {
            continue;
        };
        let most = if gait.done > 0 {
            usize::from(gait.done)
        } else {
            let flights = (model.path / stride(first, child, model)?).floor();
            // an adapted form may take more than one push a contact
            let each = if gait.wheels {
                adapted(gait.skill).stretches.len()
            } else {
                1
            };
            let [least, most] = model.path_flights.map(|flights| flights.div_ceil(each));
            flights.clamp(least as f64, most.max(least) as f64) as usize
        };
        let (mut state, mut path) = (start, Vec::new());
        while path.len() < most {
            let mut next = gait.follows.iter().filter(|follow| follow.after == state);
            let (Some(follow), None) = (next.next(), next.next()) else {
                return None;
            };
            state = follow.then;
            path.push(state.contact);
        }
        // the leading foot is the first to land, after a run-up the first to land from it
        let landing = if gait.done > 0 {
            path.last()
        } else {
            path.first()
        };
        if landing
            .and_then(|contact| contact.side())
            .is_none_or(|side| side == lead)
        {
            return Some((start, path));
        }
    }
    None
}

/// The gait's lines along a route's contacts, the start first.
fn follows(gait: &Gait, contacts: &[Contact], run_up: bool) -> Option<Vec<&'static Follow>> {
    let (first, rest) = contacts.split_first()?;
    let phase = if run_up { gait.free_run_up } else { 0 };
    let start = Stand {
        contact: *first,
        phase,
    };
    follows_from(gait, start, rest)
}

fn follows_from(gait: &Gait, start: Stand, rest: &[Contact]) -> Option<Vec<&'static Follow>> {
    let mut state = start;
    let mut found = Vec::new();
    for contact in rest {
        let lines: &'static [Follow] = gait.follows;
        let follow = lines
            .iter()
            .find(|follow| follow.after == state && follow.then.contact == *contact)?;
        state = follow.then;
        found.push(follow);
    }
    Some(found)
}

/// The leading foot of a route: the first single foot that lands, else stands.
fn lead(contacts: &[Contact]) -> Option<Side> {
    let (first, rest) = contacts.split_first()?;
    let side = rest.iter().find_map(|contact| contact.side());
    Some(side.or(first.side()).unwrap_or(Side::Right))
}

/// Where the toes point: along the way, across it where the gait goes sideways.
fn toes(gait: &Gait, lead: Side, travel: f64) -> f64 {
    match (gait.across, lead) {
        (false, _) => travel,
        (true, Side::Right) => travel + FRAC_PI_2,
        (true, Side::Left) => travel - FRAC_PI_2,
    }
}

/// The child's own stride, metres.
fn stride(follow: &Follow, child: &Child, model: &Model) -> Option<f64> {
    Some(model.feet.stride * follow.reach(child)?.m)
}

/// A running step out of a contact.
fn run_after(contact: Contact) -> Option<Follow> {
    let run = Gait::named("run")?;
    run.follows
        .iter()
        .find(|follow| follow.after.contact == contact)
        .copied()
}

fn other(contact: Contact) -> Contact {
    match contact {
        Contact::R => Contact::L,
        Contact::L => Contact::R,
        Contact::B => Contact::B,
    }
}

/// Puts running steps on the free ground before the first stop, in its way of travel.
fn run_in(stops: &mut Vec<Stop>, flights: u8, child: &Child, model: &Model) {
    for _ in 0..flights {
        let Some(first) = stops.first().copied() else {
            return;
        };
        let Some(stride) =
            run_after(other(first.contact)).and_then(|run| stride(&run, child, model))
        else {
            return;
        };
        let (sin, cos) = libm::sincos(first.travel);
        if let Some(landing) = stops.first_mut() {
            landing.flight = Some(Flight::Run);
        }
        let before = Stop {
            at: first.at - Coord { x: cos, y: sin } * stride,
            contact: other(first.contact),
            flight: None,
            counted: false,
            ..first
        };
        stops.insert(0, before);
    }
}

/// Half the distance between both feet on a cell: one in each of a pair of squares, else
/// beside each other.
fn apart(cell: &Cell, toes: f64, body: &Body, model: &Model) -> f64 {
    let breadth = cell.across(toes);
    if cell.takes == Takes::Both && breadth > PAIR {
        breadth / 4.0 + PAIR_GAP
    } else {
        model.beside * body.foot
    }
}

/// The way at a stop, radians from +x: halfway between the way in and the way out; along the
/// only one at an end.
pub fn bisector(spots: &[Coord<f64>], step: usize) -> f64 {
    let unit = |from: Option<usize>, to: usize| {
        let (a, b) = (spots.get(from?)?, spots.get(to)?);
        let length = libm::hypot(b.x - a.x, b.y - a.y);
        (length > 0.0).then(|| (*b - *a) / length)
    };
    let ways = [unit(step.checked_sub(1), step), unit(Some(step), step + 1)];
    let sum = ways
        .into_iter()
        .flatten()
        .fold(Coord { x: 0.0, y: 0.0 }, |sum, way| sum + way);
    libm::atan2(sum.y, sum.x)
}
