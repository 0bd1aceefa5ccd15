//! A route as footprints: where the feet come down, which way the toes point, how the one
//! contact leads to the next (look, section 3).
//!
//! Sole and heel are true to scale; right is solid, left open. A solid line is a flight, a
//! dotted one a step on the ground, one line a foot. Contacts are numbered, the start and
//! closing feet are not.

use std::f64::consts::{FRAC_PI_2, PI};

use children::Side;
use footfall::{Contact, Flight, Gait};
use geo::Coord;
use marking::{Cell, Figure, Takes};
use motion::{bisector, outline};

use super::painter::Extent;
use crate::drawing::fixture::circle;
use crate::drawing::mark::slab_of;
use crate::drawing::scene::{Dash, INK, Path, Scene, Spot, Stroke, Text, WHITE, pen};
use crate::drawing::taken::{Slab, Taken, weight};
use crate::drawing::view::{View, along, far, way};

/// A foot on the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foot {
    /// Its middle, metres in the figure's frame.
    pub at: Coord<f64>,
    /// Where the toes point, radians from +x anticlockwise.
    pub toes: f64,
    /// Which foot.
    pub side: Side,
}

/// A contact: what lands together.
#[derive(Clone, Debug, PartialEq)]
pub struct Landing {
    /// The feet that land.
    pub feet: Vec<Foot>,
    /// The foot that closes up behind, on the ground; gallop and slide.
    pub closing: Option<Foot>,
    /// Half the breadth of the cell across the way, metres: the number stands outside.
    pub aside: f64,
}

/// A route to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Trail {
    /// Contacts, the start first.
    pub landings: Vec<Landing>,
    /// Length of a foot, metres.
    pub foot: f64,
    /// Whether feet leave the ground between contacts.
    pub flies: bool,
}

/// A route as the record has it.
#[derive(Clone, Copy, Debug)]
pub struct Told<'a> {
    /// The gait's word.
    pub gait: &'a str,
    /// The cells by id, the start first; empty on a lane.
    pub cells: &'a [String],
    /// The lane's number.
    pub lane: Option<usize>,
    /// A letter each of R, L and B, the start first.
    pub contacts: &'a str,
    /// Length of a foot, metres.
    pub foot: f64,
    /// Metres of one stride, on a lane.
    pub stride: f64,
}

/// The feet of a route on a figure in its own frame. `None` where the route names what the
/// figure has not.
pub fn trail(figure: &Figure, told: &Told) -> Option<Trail> {
    let contacts: Vec<Contact> = told.contacts.chars().filter_map(contact).collect();
    let stops: Vec<(Coord<f64>, Option<&Cell>)> = match told.lane {
        Some(number) => {
            let lane = figure.lanes.get(number)?;
            (0..contacts.len())
                .map(|step| (lane.along(told.stride * step as f64).0, None))
                .collect()
        }
        None => told
            .cells
            .iter()
            .map(|id| {
                figure
                    .cells
                    .iter()
                    .find(|cell| cell.id == *id)
                    .map(|cell| (cell.centre, Some(cell)))
            })
            .collect::<Option<_>>()?,
    };
    if stops.len() != contacts.len() || stops.is_empty() {
        return None;
    }
    let flight =
        Gait::named(told.gait).and_then(|gait| gait.follows.first().map(|follow| follow.flight));
    let spots: Vec<Coord<f64>> = stops.iter().map(|stop| stop.0).collect();
    let heading = |step: usize| match (
        told.lane.and_then(|lane| figure.lanes.get(lane)),
        figure.facing,
    ) {
        (_, Some(facing)) => facing,
        (Some(lane), None) => lane.along(told.stride * step as f64).1,
        (None, None) => bisector(&spots, step),
    };
    let landings = contacts
        .iter()
        .zip(&stops)
        .enumerate()
        .map(|(step, (&contact, &(at, cell)))| {
            landing(contact, at, cell, heading(step), told, flight, step)
        })
        .collect();
    Some(Trail {
        landings,
        foot: told.foot,
        flies: flight != Some(Flight::Walk),
    })
}

fn contact(letter: char) -> Option<Contact> {
    [Contact::R, Contact::L, Contact::B]
        .into_iter()
        .find(|contact| contact.letter() == letter)
}

fn landing(
    contact: Contact,
    at: Coord<f64>,
    cell: Option<&Cell>,
    toes: f64,
    told: &Told,
    flight: Option<Flight>,
    step: usize,
) -> Landing {
    let (sin, cos) = libm::sincos(toes);
    let left = Coord { x: -sin, y: cos };
    let ahead = Coord { x: cos, y: sin };
    let breadth = cell.map_or(0.0, |cell| cell.across(toes));
    let foot = |side: Side, aside: f64, behind: f64| {
        let sign = if side == Side::Left { 1.0 } else { -1.0 };
        Foot {
            at: at + left * (sign * aside) - ahead * behind,
            toes,
            side,
        }
    };
    // feet stand half a foot's length apart, or one in each of a pair of squares
    let apart = match cell {
        Some(cell) if cell.takes == Takes::Both && breadth > 0.62 => breadth / 4.0 + 0.0125,
        _ => told.foot * 0.3,
    };
    let start = step == 0;
    let sides = |contact: Contact| match (contact, start) {
        // who stands at the start stands on both feet, unless the gait runs up
        (Contact::B, _) | (_, true) => vec![Side::Right, Side::Left],
        (Contact::R, _) => vec![Side::Right],
        (Contact::L, _) => vec![Side::Left],
    };
    let feet = sides(contact);
    let both = feet.len() > 1;
    // on a lane the feet keep to their own side of its middle
    let single = if told.lane.is_some() {
        told.foot * 0.3
    } else {
        0.0
    };
    let closing = match (flight, contact.side(), start) {
        (Some(Flight::Gallop | Flight::Slide), Some(lead), false) => {
            let other = if lead == Side::Right {
                Side::Left
            } else {
                Side::Right
            };
            let behind = if flight == Some(Flight::Gallop) {
                told.foot * 0.5
            } else {
                0.0
            };
            Some(foot(other, told.foot * 0.3, behind))
        }
        _ => None,
    };
    let single = if closing.is_some() {
        told.foot * 0.3
    } else {
        single
    };
    Landing {
        feet: feet
            .into_iter()
            .map(|side| foot(side, if both { apart } else { single }, 0.0))
            .collect(),
        closing,
        aside: (breadth / 2.0).max(told.foot * 0.55),
    }
}

impl Foot {
    /// A ring of [`outline`] on the sheet.
    fn ring(&self, shape: &[Coord<f64>], length: f64, view: &View) -> Vec<Spot> {
        let (sin, cos) = libm::sincos(self.toes);
        shape
            .iter()
            .map(|at| {
                let (x, y) = (at.x * length, at.y * length);
                view.at(Coord {
                    x: self.at.x + x * cos - y * sin,
                    y: self.at.y + x * sin + y * cos,
                })
            })
            .collect()
    }

    /// A place before or behind its middle on the sheet, in shares of its length.
    fn end(&self, share: f64, length: f64, view: &View) -> Spot {
        let (sin, cos) = libm::sincos(self.toes);
        view.at(Coord {
            x: self.at.x + share * length * cos,
            y: self.at.y + share * length * sin,
        })
    }

    fn draw(&self, scene: &mut Scene, taken: &mut Taken, length: f64, view: &View) {
        let rings = outline(self.side).map(|ring| self.ring(&ring, length, view));
        let mut path = Path::default();
        for ring in &rings {
            path.add_ring(ring);
            taken.ground(&vec![ring.clone()], weight::HARD);
            taken.ring(ring, weight::HARD);
        }
        let halo = Stroke {
            width: 0.9,
            colour: WHITE,
            dash: Dash::Solid,
        };
        scene.stroke(path.clone(), halo);
        let fill = if self.side == Side::Right { INK } else { WHITE };
        scene.shape(path, fill, Stroke::solid(pen::ZONE));
    }
}

impl Trail {
    /// The ground that the feet take, metres.
    pub fn extent(&self) -> Option<Extent> {
        let feet = self
            .landings
            .iter()
            .flat_map(|one| one.feet.iter().chain(&one.closing));
        feet.map(|foot| {
            let reach = self.foot / 2.0;
            Extent {
                low: [foot.at.x - reach, foot.at.y - reach],
                high: [foot.at.x + reach, foot.at.y + reach],
            }
        })
        .reduce(Extent::with)
    }

    /// Draws lines, feet and, where `numbered`, the contacts' numbers.
    pub fn draw(
        &self,
        scene: &mut Scene,
        taken: &mut Taken,
        view: &View,
        cap: f64,
        numbered: bool,
    ) {
        let mut lines: Vec<(Vec<Spot>, bool)> = Vec::new();
        for pair in self.landings.windows(2) {
            let [from, to] = pair else { continue };
            for (a, b, bulge) in flights(from, to) {
                lines.push((self.curve(&a, &b, bulge, view), self.flies));
            }
            if let (Some(closing), Some(before)) = (to.closing, from.closing.or(other(from, to))) {
                lines.push((self.curve(&before, &closing, 0.0, view), false));
            }
        }
        for (line, _) in &lines {
            scene.stroke(
                Path::line(line),
                Stroke {
                    width: 1.1,
                    colour: WHITE,
                    dash: Dash::Solid,
                },
            );
            taken.line(line, weight::HARD);
        }
        for one in &self.landings {
            for foot in one.feet.iter().chain(&one.closing) {
                foot.draw(scene, taken, self.foot, view);
            }
        }
        for (line, flies) in &lines {
            let dash = if *flies { Dash::Solid } else { Dash::Dots };
            scene.stroke(Path::line(line), Stroke::dashed(pen::ELLIPSE, dash));
            if let ([.., before, tip], true) = (line.as_slice(), *flies) {
                arrow(scene, *tip, way(*before, *tip));
            }
        }
        if numbered {
            self.numbers(scene, taken, view, cap);
        }
    }

    /// From the toes of one foot to the heel of another, bent aside by a share of its length.
    fn curve(&self, from: &Foot, to: &Foot, bulge: f64, view: &View) -> Vec<Spot> {
        let (start, end) = (view.at(from.at), view.at(to.at));
        let straight = way(start, end);
        // leave the foot by the end that is nearer to the goal
        let near = |foot: &Foot, goal: Spot, out: f64| {
            let ends = [
                foot.end(0.5 + out, self.foot, view),
                foot.end(-0.5 - out, self.foot, view),
            ];
            let across = [
                along(view.at(foot.at), straight, 0.25 * self.foot * view.mm),
                along(view.at(foot.at), straight, -0.25 * self.foot * view.mm),
            ];
            ends.into_iter()
                .chain(across)
                .min_by(|a, b| far(*a, goal).total_cmp(&far(*b, goal)))
                .unwrap_or(goal)
        };
        let (a, b) = (near(from, end, 0.04), near(to, start, 0.06));
        let aside = [straight[1], -straight[0]];
        let length = far(a, b);
        let knee = along(
            along(a, [b[0] - a[0], b[1] - a[1]], 0.5),
            aside,
            bulge * length * 2.0,
        );
        (0..=16)
            .map(|step| {
                let t = f64::from(step) / 16.0;
                let mix = |axis: usize| {
                    (1.0 - t) * (1.0 - t) * a[axis]
                        + 2.0 * t * (1.0 - t) * knee[axis]
                        + t * t * b[axis]
                };
                [mix(0), mix(1)]
            })
            .collect()
    }

    fn numbers(&self, scene: &mut Scene, taken: &mut Taken, view: &View, cap: f64) {
        let radius = cap * 1.15;
        for (number, one) in self.landings.iter().enumerate().skip(1) {
            let count = one.feet.len().max(1) as f64;
            let sum = one
                .feet
                .iter()
                .fold(Coord { x: 0.0, y: 0.0 }, |sum, foot| sum + foot.at);
            let at = view.at(sum / count);
            let first = one.aside * view.mm + radius + 0.6;
            let toes = one.feet.first().map_or(0.0, |foot| foot.toes);
            let mut best: Option<(f64, Spot)> = None;
            for ring in 0..7 {
                for side in 0..16 {
                    let turn = toes + FRAC_PI_2 + f64::from(side) * PI / 8.0;
                    let (sin, cos) = libm::sincos(turn);
                    let spot = along(at, [cos, -sin], first + f64::from(ring) * 1.4);
                    let square = Slab {
                        centre: spot,
                        half: [radius + 0.2; 2],
                        turn: 0.0,
                    };
                    // rather to the left of the way, then to its right, then anywhere
                    let off = [
                        0.0, 3.0, 6.0, 9.0, 8.0, 9.0, 6.0, 3.0, 1.5, 3.0, 6.0, 9.0, 8.0, 9.0, 6.0,
                        3.0,
                    ];
                    let cost = taken.cost(&square)
                        + f64::from(ring) * 1.2
                        + off.get(side as usize).copied().unwrap_or(9.0);
                    if cost.is_finite() && best.as_ref().is_none_or(|(least, _)| cost < *least) {
                        best = Some((cost, spot));
                    }
                }
            }
            let Some((_, spot)) = best else { continue };
            scene.shape(Path::circle(spot, radius), WHITE, Stroke::solid(pen::ZONE));
            let text = Text::new(
                number.to_string(),
                [spot[0], spot[1] + cap * 0.42],
                cap * 0.84,
            )
            .bold()
            .middle();
            taken.slab(&slab_of(&text, 0.2), weight::NEVER);
            taken.ground(&vec![circle(spot, radius + 0.3, 16)], weight::NEVER);
            scene.text(text);
        }
    }
}

/// The lines of one flight: from which foot to which, and how far each bends to its left.
fn flights(from: &Landing, to: &Landing) -> Vec<(Foot, Foot, f64)> {
    const BEND: f64 = 0.16;
    let bend = |side: Side| if side == Side::Left { BEND } else { -BEND };
    let of =
        |landing: &Landing, side: Side| landing.feet.iter().find(|foot| foot.side == side).copied();
    match (from.feet.as_slice(), to.feet.as_slice()) {
        ([_, _], [one]) => of(from, one.side)
            .map(|foot| (foot, *one, bend(one.side)))
            .into_iter()
            .collect(),
        ([one], [other]) => vec![(*one, *other, bend(other.side))],
        ([one], both) => both
            .iter()
            .map(|foot| (*one, *foot, bend(foot.side)))
            .collect(),
        (_, both) => both
            .iter()
            .filter_map(|foot| Some((of(from, foot.side)?, *foot, bend(foot.side))))
            .collect(),
    }
}

/// The foot that did not lead, of a start on both.
fn other(from: &Landing, to: &Landing) -> Option<Foot> {
    let lead = to.feet.first()?.side;
    from.feet.iter().find(|foot| foot.side != lead).copied()
}

fn arrow(scene: &mut Scene, tip: Spot, to: Spot) {
    let side = [-to[1], to[0]];
    let back = along(tip, to, -1.1);
    scene.stroke(
        Path::line(&[along(back, side, 0.6), tip, along(back, side, -0.6)]),
        Stroke::solid(pen::ELLIPSE),
    );
}
