//! Doors and gates: the leaf's swing, the clear floor before it, the way out.

use geo::{Coord, Intersects, Polygon};
use ledger::Ledger;
use note::{Note, Place, msg};

use crate::body::Body;
use crate::figures::{EGRESS_ADD, EGRESS_OUT, PULL_DEPTH, PULL_LATCH, PUSH_DEPTH, PUSH_LATCH};
use crate::patch::Patch;
use crate::result::Why;
use crate::shapes::{self, Rectangle, Vector};
use crate::yard::{FixtureKind, Yard};

/// A door or a gate with the yard's side found.
#[derive(Clone, Debug)]
pub struct Opening<'a> {
    /// As the user spells it.
    pub name: &'a str,
    /// Both jambs.
    pub jambs: [Coord<f64>; 2],
    /// From the first jamb to the second, a unit.
    pub way: Vector,
    /// Into the yard, a unit; both ways where the survey does not tell them apart.
    pub inward: Vec<Vector>,
    hinge: Option<usize>,
    /// Whether the leaf comes into the yard, so that one in the yard pulls it.
    pulled: bool,
}

impl Opening<'_> {
    /// Between the jambs.
    pub fn middle(&self) -> Coord<f64> {
        (self.jambs[0] + self.jambs[1]) / 2.0
    }

    fn width(&self) -> f64 {
        shapes::length(self.jambs[1] - self.jambs[0])
    }
}

/// The doors and gates of a yard.
pub fn openings<'a>(yard: &'a Yard, bodies: &[Body], notes: &mut Vec<Note>) -> Vec<Opening<'a>> {
    let doors = yard
        .doors
        .iter()
        .map(|door| (&door.name, door.jambs, door.hinge, door.opens_out, &door.at));
    let gates = yard
        .gates
        .iter()
        .map(|gate| (&gate.name, gate.posts, gate.hinge, gate.opens_in, &gate.at));
    let mut found = Vec::new();
    for (name, jambs, hinge, pulled, at) in doors.chain(gates) {
        let Some(way) = shapes::direction(jambs[0], jambs[1]) else {
            notes.push(Note::warning(
                at.clone(),
                msg!("door-no-width", door = name),
            ));
            continue;
        };
        let middle = (jambs[0] + jambs[1]) / 2.0;
        let inward = inward(yard, bodies, middle, way);
        if inward.len() != 1 {
            notes.push(side_unclear(name, at));
        }
        found.push(Opening {
            name,
            jambs,
            way,
            inward,
            hinge,
            pulled,
        });
    }
    found
}

fn side_unclear(name: &str, at: &Option<Place>) -> Note {
    Note::warning(at.clone(), msg!("door-side-unclear", door = name)).mend(msg!("door-put-on-wall"))
}

/// The side with more of the yard before it; both where neither has more.
fn inward(yard: &Yard, bodies: &[Body], middle: Coord<f64>, way: Vector) -> Vec<Vector> {
    let houses: Vec<Polygon<f64>> = bodies
        .iter()
        .filter(|body| {
            let kind = body.fixture.is;
            matches!(
                kind,
                FixtureKind::Building | FixtureKind::Shed | FixtureKind::House
            )
        })
        .flat_map(Body::footprint)
        .collect();
    // metres out, from past the tapes' error to a step before the door
    let open = |side: Vector| {
        [0.1, 0.2, 0.4, 0.8]
            .into_iter()
            .map(|out| middle + side * out)
            .filter(|at| yard.boundary.intersects(at))
            .filter(|at| !houses.iter().any(|house| house.intersects(at)))
            .count()
    };
    let side = shapes::left(way);
    match open(side).cmp(&open(-side)) {
        std::cmp::Ordering::Greater => vec![side],
        std::cmp::Ordering::Less => vec![-side],
        std::cmp::Ordering::Equal => vec![side, -side],
    }
}

/// Swings, clear floors and ways out.
pub fn patches(openings: &[Opening], ledger: &Ledger) -> Vec<Patch> {
    let mut swings = Vec::new();
    let mut floors = Vec::new();
    for opening in openings {
        for &inward in &opening.inward {
            swings.extend(swing(opening, inward));
            floors.extend(clear_floor(opening, inward, ledger));
        }
    }
    swings.append(&mut floors);
    swings
}

/// The quarter disc of a leaf that comes into the yard. Where nobody says where the hinge
/// is, both are taken.
fn swing(opening: &Opening, inward: Vector) -> Option<Patch> {
    if !opening.pulled {
        return None;
    }
    let leaf = |hinge: usize| {
        let [at, latch] = match hinge {
            0 => [opening.jambs[0], opening.jambs[1]],
            _ => [opening.jambs[1], opening.jambs[0]],
        };
        let closed = (latch - at) / opening.width();
        shapes::quarter(at, opening.width(), closed, inward)
    };
    let shape = match opening.hinge {
        Some(hinge) => vec![leaf(hinge)],
        None => vec![leaf(0), leaf(1)],
    };
    Some(Patch::new(shape, Why::Swing, opening.name, None))
}

/// The floor to stand on while opening, with room beyond the latch (beyond both jambs
/// where the latch is not known), and the way out before it.
fn clear_floor(opening: &Opening, inward: Vector, ledger: &Ledger) -> [Patch; 2] {
    let (depth, latch) = match opening.pulled {
        true => (PULL_DEPTH, PULL_LATCH),
        false => (PUSH_DEPTH, PUSH_LATCH),
    };
    let beyond = ledger.number(latch);
    let [before, after] = match opening.hinge {
        Some(0) => [0.0, beyond],
        Some(_) => [beyond, 0.0],
        None => [beyond, beyond],
    };
    let wide = opening.width();
    let on_left = shapes::cross(opening.way, inward) > 0.0;
    let ahead = |metres: f64| {
        if on_left {
            [0.0, metres]
        } else {
            [-metres, 0.0]
        }
    };
    let strip = |along: [f64; 2], depth: f64| {
        Rectangle {
            a: opening.jambs[0],
            way: opening.way,
            along,
            across: ahead(depth),
        }
        .polygon()
    };
    let spare = ledger.number(EGRESS_ADD) / 2.0;
    let floor = strip([-before, wide + after], ledger.number(depth));
    let way_out = strip([-spare, wide + spare], ledger.number(EGRESS_OUT));
    [
        Patch::new(vec![floor], Why::DoorFloor, opening.name, Some(depth)),
        Patch::new(
            vec![way_out],
            Why::DoorFloor,
            opening.name,
            Some(EGRESS_OUT),
        ),
    ]
}
