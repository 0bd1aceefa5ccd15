//! Balance lines: four side by side, from broad to thin, straight and waved by turns.
//!
//! Each is a track of its own; tellers behind its start count from the broadest.

use std::f64::consts::PI;

use geo::coord;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::families::lane::waves;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::{Figure, LaneKind};
use crate::look::Look;
use crate::shape::{Pose, rect};
use crate::way::{Leg, Way};

/// Four lines to tread on.
pub struct BalanceLines;

const LENGTHS: [LengthSpec; 3] = [
    LengthSpec {
        name: "length",
        least: 3.0,
        most: 10.0,
        default: 4.0,
        step: 0.5,
        says: "length-length",
    },
    LengthSpec {
        name: "narrow",
        least: 0.10,
        most: 0.20,
        default: 0.10,
        step: 0.05,
        says: "length-narrow-line",
    },
    LengthSpec {
        name: "wide",
        least: 0.15,
        most: 0.40,
        default: 0.30,
        step: 0.05,
        says: "length-wide-line",
    },
];

/// How many.
const LINES: u32 = 4;
/// Middle to middle, metres: 1.2 between two children side by side, and a wave's bow.
const APART: f64 = 1.5;
/// Metres from the start line to a line's beginning: the go chevron's.
const GO: f64 = 0.5;
/// Metres of straight before a wave and after it.
const LEAD: f64 = 0.4;
/// Radius of a wave's bends, metres.
const RADIUS: f64 = 1.25;

impl Family for BalanceLines {
    fn name(&self) -> &'static str {
        "balance-lines"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["walk", "slide", "gallop"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [length, narrow, wide] = taken;
        at_least("wide", wide, narrow + 0.05)?;
        let mut canvas = Canvas::new(look);
        let stop = GO + length + 0.15;
        let aside = look.start / 2.0 + look.sway;
        let mut ways = Vec::new();
        for number in 0..LINES {
            let y = -APART * f64::from(number);
            let breadth = breadth(narrow, wide, number);
            let way = way(y, length, number % 2 == 1);
            let y = way.pose(0.0, 0.0).at.y;
            canvas.start_mark(Pose::at(0.0, y), look.start);
            canvas.chevron(Part::Bright, Pose::at(GO / 2.0, y));
            canvas.lane(LaneKind::Line, &way, breadth);
            let part = if number % 2 == 0 {
                Part::Cool
            } else {
                Part::Plain
            };
            canvas.strokes_of(|_| part, &way, 0.0, breadth);
            canvas.bar(Pose::at(stop + look.roll, y), 2.0, look.start);
            let apart = look.teller + look.gap;
            for teller in 0..=number {
                let aside = (f64::from(teller) - f64::from(number) / 2.0) * apart;
                let behind = coord! { x: -look.start / 2.0 - 0.12, y: y + aside };
                canvas.dot(Part::Crumb, behind, look.teller);
            }
            ways.push(way);
        }
        canvas.needs_round_all(&ways, aside);
        let last = -APART * f64::from(LINES - 1);
        canvas.needs(rect(
            [
                -look.start / 2.0 - look.behind,
                GO + length + look.run_out_run,
            ],
            [last - aside, aside],
        ));
        let door = Pose::at(-0.1, 0.0).at;
        canvas.pebbles(door, 1.30, 0.60 * PI, 1.0, 4, door);
        let last = coord! { x: door.x, y: last };
        canvas.pebbles(last, 1.30, -0.60 * PI, -1.0, 3, last);
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), LINES))
    }
}

/// From the broadest on, each as much thinner than the one before, to the half centimetre:
/// nobody tapes finer.
fn breadth(narrow: f64, wide: f64, number: u32) -> f64 {
    let share = f64::from(number) / f64::from(LINES - 1);
    let graded = wide * libm::pow(narrow / wide, share);
    if number == 0 || number + 1 == LINES {
        graded
    } else {
        (graded * 200.0).round() / 200.0
    }
}

/// The middle of one line; a wave bows as far to one side of its own line as to the other.
fn way(y: f64, length: f64, waved: bool) -> Way {
    if !waved {
        return Way::new(Pose::at(GO, y), vec![Leg::Straight(length)]);
    }
    let mut legs = vec![Leg::Straight(LEAD)];
    legs.extend(waves(length - 2.0 * LEAD, RADIUS));
    legs.push(Leg::Straight(LEAD));
    let bow = Way::new(Pose::at(0.0, 0.0), legs.clone());
    let reach = bow.line(0.0, 0.0, bow.length(0.0), 0.01);
    let lowest = reach.iter().map(|at| at.y).fold(0.0, f64::min);
    Way::new(Pose::at(GO, y - lowest / 2.0), legs)
}
