//! A route drawn as footprints: feet true to scale, right solid, left open, toes ahead.

use super::scene::{Dash, INK, Path, Scene, Spot, Stroke, Text, WHITE, pen};
use super::view::{along, far};

/// One contact on paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// Where the foot, or the middle of both, comes down, mm.
    pub at: Spot,
    /// `R`, `L` or `B`.
    pub foot: char,
}

/// How a route is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Manner {
    /// A foot's length on paper, mm.
    pub foot: f64,
    /// Cap height of the numbers, mm.
    pub cap: f64,
    /// Which way the toes show where nothing is travelled yet, a unit vector.
    pub ahead: Spot,
    /// Whether the numbers stand under the feet: for the second of two routes.
    pub below: bool,
}

/// Half of what a foot is off the middle where both come down, as a share of its length.
const ASTRIDE: f64 = 0.36;

/// Draws the flights as lines and the contacts as prints, numbered from 1 after the start.
pub fn draw(scene: &mut Scene, contacts: &[Contact], manner: &Manner) {
    let ways: Vec<Spot> = (0..contacts.len())
        .map(|at| way_at(contacts, at, manner.ahead))
        .collect();
    for pair in contacts.windows(2) {
        flight(scene, pair[0], pair[1], manner);
    }
    for (number, (contact, way)) in contacts.iter().zip(&ways).enumerate() {
        for (at, right) in feet(*contact, *way, manner) {
            print(scene, at, *way, right, manner.foot);
        }
        if number > 0 {
            let side = if manner.below { 1.0 } else { -1.0 };
            let off = manner.foot * 0.62 + manner.cap * 1.4;
            let at = along(
                contact.at,
                [-way[1] * side, way[0] * side],
                -off * signed(*way),
            );
            numbered(scene, at, number, manner.cap);
        }
    }
}

/// Numbers stand above their feet, whichever way the route runs.
fn signed(way: Spot) -> f64 {
    if way[0] < 0.0 { 1.0 } else { -1.0 }
}

/// The way of travel at a contact: on to the next, or on from the last.
fn way_at(contacts: &[Contact], at: usize, ahead: Spot) -> Spot {
    let (from, to) = if at + 1 < contacts.len() {
        (at, at + 1)
    } else {
        (at.saturating_sub(1), at)
    };
    let (from, to) = (contacts[from].at, contacts[to].at);
    let span = far(from, to);
    if span > 1e-6 {
        [(to[0] - from[0]) / span, (to[1] - from[1]) / span]
    } else {
        ahead
    }
}

/// Where the feet of a contact stand, and whether each is the right one.
fn feet(contact: Contact, way: Spot, manner: &Manner) -> Vec<(Spot, bool)> {
    // On paper y runs down: the right hand of the way is (-y, x).
    let right = [-way[1], way[0]];
    let off = ASTRIDE * manner.foot;
    match contact.foot {
        'R' => vec![(contact.at, true)],
        'L' => vec![(contact.at, false)],
        _ => vec![
            (along(contact.at, right, off), true),
            (along(contact.at, right, -off), false),
        ],
    }
}

/// Sole and heel, with a white halo.
fn print(scene: &mut Scene, at: Spot, way: Spot, right: bool, foot: f64) {
    let side = [-way[1], way[0]];
    let sole = oval(
        along(at, way, 0.17 * foot),
        way,
        side,
        [0.32 * foot, 0.19 * foot],
    );
    let heel = oval(
        along(at, way, -0.33 * foot),
        way,
        side,
        [0.15 * foot, 0.14 * foot],
    );
    for part in [&sole, &heel] {
        let halo = Stroke {
            colour: WHITE,
            ..Stroke::solid(pen::WALL)
        };
        scene.stroke(Path::ring(part), halo);
        let fill = if right { INK } else { WHITE };
        scene.shape(Path::ring(part), fill, Stroke::solid(pen::ZONE));
    }
}

fn oval(middle: Spot, way: Spot, side: Spot, half: [f64; 2]) -> Vec<Spot> {
    const STEPS: usize = 20;
    (0..STEPS)
        .map(|step| {
            let (sin, cos) = libm::sincos(step as f64 / STEPS as f64 * std::f64::consts::TAU);
            along(along(middle, way, cos * half[0]), side, sin * half[1])
        })
        .collect()
}

/// One line a foot: two for a jump, one for a hop or a leap, a fork between.
fn flight(scene: &mut Scene, from: Contact, to: Contact, manner: &Manner) {
    let span = far(from.at, to.at);
    if span < 1e-6 {
        return;
    }
    let way = [
        (to.at[0] - from.at[0]) / span,
        (to.at[1] - from.at[1]) / span,
    ];
    let ends = |contact: Contact| feet(contact, way, manner);
    let (starts, stops) = (ends(from), ends(to));
    let pairs: Vec<(Spot, Spot)> = match (starts.as_slice(), stops.as_slice()) {
        ([(a, _), (b, _)], [(c, _), (d, _)]) => vec![(*a, *c), (*b, *d)],
        ([(a, _)], both) => both.iter().map(|(b, _)| (*a, *b)).collect(),
        (both, [(b, _)]) => both.iter().map(|(a, _)| (*a, *b)).collect(),
        _ => Vec::new(),
    };
    for (a, b) in pairs {
        let halo = Stroke {
            colour: WHITE,
            ..Stroke::solid(pen::FENCE + 0.5)
        };
        scene.stroke(Path::line(&[a, b]), halo);
        scene.stroke(
            Path::line(&[a, b]),
            Stroke::dashed(pen::ELLIPSE, Dash::Solid),
        );
    }
}

/// A contact's number in a ring.
fn numbered(scene: &mut Scene, at: Spot, number: usize, cap: f64) {
    scene.shape(
        Path::circle(at, cap * 1.05),
        WHITE,
        Stroke::solid(pen::THIN),
    );
    scene.text(
        Text::new(number.to_string(), [at[0], at[1] + cap * 0.42], cap * 0.85)
            .bold()
            .middle(),
    );
}
