//! The spiral: a corridor that winds inward round two pegs to a place to turn.
//!
//! Half circles about two pegs half a pitch apart, each half a pitch tighter than the one
//! before, so that the outer edge of one lap is the inner edge of the lap outside it. Where
//! the width is on its steps, every radius is one that a string marked in 25 cm draws.

use std::f64::consts::PI;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::{Figure, LaneKind};
use crate::look::Look;
use crate::shape::Pose;
use crate::way::{Leg, Way};

/// In to a turn disc.
pub struct Spiral;

const LENGTHS: [LengthSpec; 3] = [
    LengthSpec {
        name: "length",
        least: 12.5,
        most: 30.0,
        default: 14.0,
        step: 0.5,
        says: "length-length",
    },
    LengthSpec {
        name: "width",
        least: 0.9,
        most: 1.4,
        default: 0.9,
        step: 0.5,
        says: "length-width",
    },
    LengthSpec {
        name: "radius",
        least: 1.25,
        most: 2.5,
        default: 1.25,
        step: 0.25,
        says: "length-radius-inner",
    },
];

/// Metres from the start line to the lane, and straight into it.
const GO: f64 = 0.12;
const LEAD: f64 = 0.5;
/// The last bend ends here, so that its mouth opens on room to turn.
const LAST: f64 = 2.0 * PI / 3.0;
/// Least radius of the room's wall, metres.
const ROOM: f64 = 0.75;
/// The turn ring, metres across.
const RING: f64 = 1.2;

impl Family for Spiral {
    fn name(&self) -> &'static str {
        "spiral-lane"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["gallop", "skip", "walk"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [length, width, radius] = taken;
        let pitch = width + look.stroke;
        at_least("radius", radius, ROOM + pitch / 2.0)?;
        let inner = radius * LAST + (radius + pitch / 2.0) * PI;
        // a lap and a half, or it is no spiral
        at_least("length", length, LEAD + inner + (radius + pitch) * PI / 2.0)?;

        // from the inside out, until the length is used up
        let mut bends = vec![(radius, LAST)];
        let mut left = length - LEAD - radius * LAST;
        let mut next = radius + pitch / 2.0;
        while left > 1e-9 {
            let turn = PI.min(left / next);
            bends.push((next, turn));
            left -= turn * next;
            next += pitch / 2.0;
        }
        bends.reverse();
        let legs = |wider: f64| {
            let bends = bends.iter().map(move |(radius, turn)| Leg::Bend {
                radius: radius + wider,
                turn: *turn,
            });
            std::iter::once(Leg::Straight(LEAD)).chain(bends)
        };
        let way = Way::new(Pose::at(GO, 0.0), legs(0.0).collect());
        // the outer edge, and on past the mouth the two half circles round the room
        let mut edge: Vec<Leg> = legs(pitch / 2.0).collect();
        edge.pop();
        edge.extend([
            Leg::Bend {
                radius: radius + pitch / 2.0,
                turn: PI,
            },
            Leg::Bend { radius, turn: PI },
            Leg::Bend {
                radius: radius - pitch / 2.0,
                turn: LAST,
            },
        ]);
        let edge = Way::new(Pose::at(GO, -pitch / 2.0), edge);

        let mut canvas = Canvas::new(look);
        canvas.start_mark(Pose::at(0.0, 0.0), look.start_lane);
        canvas.strokes(|_| Part::Cool, &edge, 0.0);
        for share in [0.10, 0.40, 0.70, 0.97] {
            canvas.chevron(Part::Bright, way.pose(0.0, share * length));
        }
        canvas.lane(LaneKind::Corridor, &way, width);
        let end = way.pose(0.0, length);
        // the peg of the last bend, and the frame in which its mouth lies at +x
        let peg = Pose {
            at: end.point(0.0, radius),
            turn: end.turn - PI / 2.0 + (PI - LAST),
        };
        let room = peg.point(0.2 * pitch, 0.2 * (radius - pitch / 2.0));
        let toward = libm::atan2(room.y - end.at.y, room.x - end.at.x);
        canvas.turn_ring(
            Pose {
                at: room,
                turn: toward,
            },
            RING,
        );
        let aside = pitch / 2.0 + look.stroke / 2.0 + look.sway;
        canvas.needs_round(&way, aside);
        canvas.needs_ahead(end, look.run_out_run, width / 2.0 + look.sway);
        let behind = Pose::at(-look.start_lane / 2.0 - look.behind, 0.0);
        canvas.needs_ahead(behind, GO + look.start_lane, aside);
        let door = Pose::at(-0.1, 0.0).at;
        canvas.pebbles(door, 1.30, -0.60 * PI, -1.0, 4, door);
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
