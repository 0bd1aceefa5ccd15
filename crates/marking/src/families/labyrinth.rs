//! The labyrinth: one way in, round every ring once, to a place to turn at the heart.
//!
//! Rings a pitch apart are walked to and fro between the two sides of one straight wall.
//! From ring to ring the way turns about the end of the wall between them, through a bend
//! of half a pitch; nobody can go wrong. Where the width is on its steps, every radius is
//! one that a string marked in 25 cm draws.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use geo::{Coord, coord};

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::{Figure, LaneKind};
use crate::look::Look;
use crate::shape::Pose;
use crate::way::{Leg, Way};

/// As many rings as lie between the heart and the outermost.
pub struct Labyrinth;

const LENGTHS: [LengthSpec; 2] = [
    LengthSpec {
        name: "radius",
        least: 2.5,
        most: 4.5,
        default: 2.5,
        step: 0.25,
        says: "length-radius-outer",
    },
    LengthSpec {
        name: "width",
        least: 0.9,
        most: 1.4,
        default: 0.9,
        step: 0.25,
        says: "length-width",
    },
];

/// Metres from the start line to the lane, and straight into it.
const GO: f64 = 0.12;
const LEAD: f64 = 0.7;
/// Least radius of the innermost ring's middle less half a pitch: the heart's wall, metres.
const HEART: f64 = 1.0;
/// The turn ring, metres across.
const RING: f64 = 1.2;

/// What the drawing works from: rings about `heart`, the straight wall along -x from it.
struct Plan {
    heart: Coord<f64>,
    pitch: f64,
    /// Radius of the outermost ring's middle.
    outermost: f64,
    rings: u32,
}

impl Plan {
    /// Radius of a ring's middle, the outermost 0.
    fn ring(&self, number: u32) -> f64 {
        self.outermost - f64::from(number) * self.pitch
    }

    /// Radius of the wall inside a ring.
    fn wall(&self, number: u32) -> f64 {
        self.ring(number) - self.pitch / 2.0
    }

    /// Radians from the straight wall to where the wall inside a ring ends and lets one
    /// through.
    fn gate(&self, number: u32) -> f64 {
        let wall = self.wall(number);
        if number + 1 < self.rings {
            // a pitch off the straight wall
            libm::asin(self.pitch / wall)
        } else {
            // a pitch from the straight wall's end, which stands on this circle
            2.0 * libm::asin(self.pitch / 2.0 / wall)
        }
    }

    /// Radians from the straight wall at which the way in joins the outermost ring, by a
    /// bend of half a pitch.
    fn mouth(&self) -> f64 {
        libm::asin(self.pitch / (self.outermost + self.pitch / 2.0))
    }

    /// The way from the end of the lead to the heart.
    fn legs(&self) -> Vec<Leg> {
        let tight = self.pitch / 2.0;
        let bend = |radius: f64, turn: f64| Leg::Bend { radius, turn };
        let mut legs = vec![Leg::Straight(LEAD), bend(tight, self.mouth() - FRAC_PI_2)];
        // the first ring goes anticlockwise
        let (mut begun, mut side) = (self.mouth(), 1.0);
        for number in 0..self.rings {
            let gate = self.gate(number);
            legs.push(bend(self.ring(number), side * (TAU - begun - gate)));
            let heart = number + 1 == self.rings;
            legs.push(bend(tight, side * if heart { FRAC_PI_2 } else { PI }));
            (begun, side) = (gate, -side);
        }
        legs
    }

    /// Round a circle from one angle past the straight wall to another, anticlockwise.
    fn arc(&self, radius: f64, from: f64, to: f64) -> Way {
        let (sin, cos) = libm::sincos(PI + from);
        let at = coord! { x: self.heart.x + radius * cos, y: self.heart.y + radius * sin };
        let turn = PI + from + FRAC_PI_2;
        Way::new(
            Pose { at, turn },
            vec![Leg::Bend {
                radius,
                turn: to - from,
            }],
        )
    }

    fn walls(&self, canvas: &mut Canvas) {
        let look = canvas.look;
        let cool = |_| Part::Cool;
        // a wall that ends in a gate has its round end's middle there; one that meets the
        // straight wall stops a piece's gap short of it
        let (past, short) = (look.stroke / 2.0, look.stroke / 2.0 + look.piece_gap);
        let outer = self.outermost + self.pitch / 2.0;
        let mouth = libm::asin(self.pitch / outer);
        let whole = self.arc(outer, mouth - past / outer, TAU - short / outer);
        canvas.strokes(cool, &whole, 0.0);
        for number in 0..self.rings {
            let (wall, gate) = (self.wall(number), self.gate(number));
            // the heart's wall stands off the straight wall's end as the others off its side
            let (gate, foot) = (gate - past / wall, short / wall);
            let way = if number % 2 == 0 {
                self.arc(wall, foot, TAU - gate)
            } else {
                self.arc(wall, gate, TAU - foot)
            };
            canvas.strokes(cool, &way, 0.0);
        }
        let first = self.heart.x - self.wall(self.rings - 1) + past;
        let straight = Way::new(Pose::at(GO, self.heart.y), vec![Leg::Straight(first - GO)]);
        canvas.strokes(cool, &straight, 0.0);
        // the right side of the way in, up to the end of the outer wall
        let end = LEAD - past - look.piece_gap;
        let beside = Way::new(Pose::at(GO, -self.pitch / 2.0), vec![Leg::Straight(end)]);
        canvas.strokes(cool, &beside, 0.0);
    }
}

impl Family for Labyrinth {
    fn name(&self) -> &'static str {
        "labyrinth-lane"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["walk", "gallop"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [radius, width] = taken;
        let pitch = width + look.stroke;
        let innermost = HEART + pitch / 2.0;
        // of one ring nobody makes a labyrinth
        at_least("radius", radius, innermost + pitch)?;
        let rings = ((radius - innermost) / pitch + 1e-9).floor() + 1.0;
        let deep = {
            let outer = radius + pitch / 2.0;
            libm::sqrt(outer * outer - pitch * pitch)
        };
        let plan = Plan {
            heart: coord! { x: GO + LEAD + deep, y: pitch / 2.0 },
            pitch,
            outermost: radius,
            rings: rings as u32,
        };
        let way = Way::new(Pose::at(GO, 0.0), plan.legs());
        let long = way.length(0.0);
        let mut canvas = Canvas::new(look);
        canvas.start_mark(Pose::at(0.0, 0.0), look.start_lane);
        plan.walls(&mut canvas);
        canvas.chevron(Part::Bright, way.pose(0.0, LEAD / 2.0));
        // on each ring one, where it is half gone
        let mut passed = 0.0;
        for leg in plan.legs() {
            let own = Way::new(Pose::at(0.0, 0.0), vec![leg]).length(0.0);
            if matches!(leg, Leg::Bend { radius, .. } if radius > pitch) {
                canvas.chevron(Part::Bright, way.pose(0.0, passed + own / 2.0));
            }
            passed += own;
        }
        canvas.lane(LaneKind::Corridor, &way, width);
        let end = way.pose(0.0, long);
        let toward = libm::atan2(plan.heart.y - end.at.y, plan.heart.x - end.at.x);
        canvas.turn_ring(
            Pose {
                at: plan.heart,
                turn: toward,
            },
            RING,
        );
        let aside = pitch / 2.0 + look.stroke / 2.0 + look.sway;
        canvas.needs_round(&way, aside);
        canvas.needs_round(&plan.arc(radius, 0.0, TAU), aside);
        canvas.needs_ahead(end, look.run_out_run, width / 2.0 + look.sway);
        let behind = Pose::at(-look.start_lane / 2.0 - look.behind, 0.0);
        canvas.needs_ahead(behind, GO + look.start_lane + LEAD, aside);
        let door = Pose::at(-0.1, 0.0).at;
        canvas.pebbles(door, 1.30, 0.60 * PI, 1.0, 4, door);
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
