//! Twin tracks: two lines that mirror one another, for two children in time.
//!
//! Between them a row of beats, as far apart along the lines as a length says: at each
//! beat the two are level. Every fourth is a bar.

use std::f64::consts::{FRAC_PI_2, PI};

use geo::coord;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::families::lane::waves;
use crate::family::{Family, Fault, LengthSpec, named, take_all};
use crate::figure::{Figure, LaneKind};
use crate::look::Look;
use crate::shape::{Pose, rect};
use crate::way::{Leg, Way};

/// Two lines and their beats.
pub struct TwinTracks;

const LENGTHS: [LengthSpec; 4] = [
    LengthSpec {
        name: "length",
        least: 4.0,
        most: 10.0,
        default: 6.0,
        step: 0.5,
        says: "length-length",
    },
    LengthSpec {
        name: "beat",
        least: 0.40,
        most: 0.90,
        default: 0.60,
        step: 0.01,
        says: "length-beat",
    },
    LengthSpec {
        name: "apart",
        least: 1.20,
        most: 2.00,
        default: 1.30,
        step: 0.05,
        says: "length-apart",
    },
    LengthSpec {
        name: "radius",
        least: 1.25,
        most: 4.0,
        default: 1.75,
        step: 0.25,
        says: "length-radius",
    },
];

/// Metres from the start line to the lines' beginning: the go chevrons'.
const GO: f64 = 0.5;
/// Metres of straight before the waves and after them.
const LEAD: f64 = 0.5;
/// Beats to a bar.
const BAR: u32 = 4;

impl Family for TwinTracks {
    fn name(&self) -> &'static str {
        "twin-tracks"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["gallop", "slide", "skip", "walk"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [length, beat, apart, radius] = taken;
        let mut canvas = Canvas::new(look);
        let stop = GO + length + 0.15;
        let mut widest: f64 = 0.0;
        for side in [1.0, -1.0] {
            let y = side * apart / 2.0;
            canvas.start_mark(Pose::at(0.0, y), look.start);
            canvas.chevron(Part::Bright, Pose::at(GO / 2.0, y));
            // the waves bow outward, away from one another
            let way = way(y, length, radius, side);
            let turns = |piece: usize| {
                if piece.is_multiple_of(2) {
                    Part::Cool
                } else {
                    Part::Plain
                }
            };
            canvas.strokes(turns, &way, 0.0);
            canvas.lane(LaneKind::Line, &way, look.stroke);
            canvas.bar(Pose::at(stop + look.roll, y), 2.0, look.start);
            let line = way.line(0.0, 0.0, way.length(0.0), 0.01);
            widest = line.iter().map(|at| at.y.abs()).fold(widest, f64::max);
            let door = Pose::at(0.0, y).at;
            canvas.pebbles(door, 1.05, side * 0.63 * PI, side, 3, door);
        }
        let beats = way(0.0, length, radius, 1.0);
        let count = (beats.length(0.0) / beat + 1e-9).floor() as u32;
        for number in 1..=count {
            let x = beats.pose(0.0, f64::from(number) * beat).at.x;
            if number % BAR == 0 {
                let across = Pose::at(x, 0.0).turned(FRAC_PI_2);
                canvas.ripple(across, look.ripple[2]);
            } else {
                canvas.dot(Part::Crumb, coord! { x: x, y: 0.0 }, look.teller);
            }
        }
        let aside = widest + look.start / 2.0 + look.sway;
        let behind = -look.start / 2.0 - look.behind;
        canvas.needs(rect([behind, stop + 2.0 * look.roll], [-aside, aside]));
        let aside = apart / 2.0 + look.start / 2.0 + look.sway;
        canvas.needs(rect(
            [behind, GO + length + look.run_out_run],
            [-aside, aside],
        ));
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 2))
    }
}

/// One line, its waves bowing to the side.
fn way(y: f64, length: f64, radius: f64, side: f64) -> Way {
    let mut legs = vec![Leg::Straight(LEAD)];
    legs.extend(
        waves(length - 2.0 * LEAD, radius)
            .into_iter()
            .map(|leg| match leg {
                // a wave goes out to the right of its line first
                Leg::Bend { radius, turn } => Leg::Bend {
                    radius,
                    turn: -side * turn,
                },
                straight => straight,
            }),
    );
    legs.push(Leg::Straight(LEAD));
    Way::new(Pose::at(GO, y), legs)
}
