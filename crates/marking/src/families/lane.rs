//! Lanes that are travelled: straight, in waves, or in legs with round corners; a corridor
//! to stay inside or a line to tread on.

use std::f64::consts::PI;

use geo::coord;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take};
use crate::figure::{Figure, LaneKind};
use crate::look::Look;
use crate::shape::{Pose, rect};
use crate::way::{Leg, Way};

/// How a lane runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Run {
    Straight,
    Wave,
    Zigzag,
}

/// A lane of one run and one kind.
pub struct LaneFamily {
    name: &'static str,
    run: Run,
    kind: LaneKind,
}

/// Straight between two edges.
pub const STRAIGHT_LANE: LaneFamily = LaneFamily {
    name: "straight-lane",
    run: Run::Straight,
    kind: LaneKind::Corridor,
};
/// Waves between two edges.
pub const WAVE_LANE: LaneFamily = LaneFamily {
    name: "wave-lane",
    run: Run::Wave,
    kind: LaneKind::Corridor,
};
/// Legs between two edges.
pub const ZIGZAG_LANE: LaneFamily = LaneFamily {
    name: "zigzag-lane",
    run: Run::Zigzag,
    kind: LaneKind::Corridor,
};
/// A straight line to tread on.
pub const STRAIGHT_LINE: LaneFamily = LaneFamily {
    name: "straight-line",
    run: Run::Straight,
    kind: LaneKind::Line,
};
/// A wave to tread on.
pub const WAVE_LINE: LaneFamily = LaneFamily {
    name: "wave-line",
    run: Run::Wave,
    kind: LaneKind::Line,
};
/// Legs to tread on.
pub const ZIGZAG_LINE: LaneFamily = LaneFamily {
    name: "zigzag-line",
    run: Run::Zigzag,
    kind: LaneKind::Line,
};

const LENGTH: LengthSpec = LengthSpec {
    name: "length",
    least: 3.0,
    most: 12.0,
    default: 6.0,
    step: 0.5,
    says: "length-length",
};
const BENT: LengthSpec = LengthSpec {
    least: 5.0,
    default: 7.0,
    ..LENGTH
};
const LEGS: LengthSpec = LengthSpec {
    default: 8.0,
    ..BENT
};
const WIDTH: LengthSpec = LengthSpec {
    name: "width",
    least: 0.9,
    most: 1.8,
    default: 0.9,
    step: 0.05,
    says: "length-width",
};
const RADIUS: LengthSpec = LengthSpec {
    name: "radius",
    least: 1.25,
    most: 4.0,
    default: 1.25,
    step: 0.25,
    says: "length-radius",
};

const STRAIGHT_WIDE: [LengthSpec; 2] = [LENGTH, WIDTH];
const STRAIGHT_THIN: [LengthSpec; 1] = [LENGTH];
const WAVE_WIDE: [LengthSpec; 3] = [BENT, WIDTH, RADIUS];
const WAVE_THIN: [LengthSpec; 2] = [BENT, RADIUS];
const ZIGZAG_WIDE: [LengthSpec; 3] = [LEGS, WIDTH, RADIUS];
const ZIGZAG_THIN: [LengthSpec; 2] = [LEGS, RADIUS];

/// Metres of straight before the first bend and after the last.
const LEAD: f64 = 0.5;
/// Metres of a line's way that the go chevron takes before the line begins.
const GO: f64 = 0.5;
/// How far a wave would turn from the lane's line, were the length free.
const WAVE: f64 = PI / 6.0;
/// No wave turns farther.
const STEEPEST: f64 = PI / 4.5;
/// The legs' angle off the lane's line.
const SLANT: f64 = 35.0 * PI / 180.0;
/// Metres of straight in a leg, at least.
const LEG: f64 = 0.9;

/// Whole waves along a line, out to the right of it and back.
pub(crate) fn waves(bent: f64, radius: f64) -> Vec<Leg> {
    let bend = |turn: f64| Leg::Bend { radius, turn };
    // one wave of turn t is 4 r sin t long
    let fit = bent / (4.0 * radius);
    let wanted = (fit / libm::sin(WAVE)).round().max(1.0);
    let waves = wanted.max((fit / libm::sin(STEEPEST)).ceil());
    let turn = libm::asin(fit / waves);
    let mut legs = Vec::new();
    for wave in 0..waves as u32 {
        let first = if wave == 0 { -turn } else { -2.0 * turn };
        legs.extend([bend(first), bend(2.0 * turn)]);
    }
    legs.push(bend(-turn));
    legs
}

impl LaneFamily {
    /// Legs of a length measured along the lane's line.
    fn legs(&self, length: f64, radius: f64) -> Result<Vec<Leg>, Fault> {
        let bent = length - 2.0 * LEAD;
        let bend = |turn: f64| Leg::Bend { radius, turn };
        let mut legs = vec![Leg::Straight(LEAD)];
        match self.run {
            Run::Straight => return Ok(vec![Leg::Straight(length)]),
            Run::Wave => {
                legs.extend(waves(bent, radius));
            }
            Run::Zigzag => {
                // a leg and a bend to each side of it: l cos a + 2 r sin a
                let (sin, cos) = libm::sincos(SLANT);
                let shortest = LEG * cos + 2.0 * radius * sin;
                at_least("length", length, 2.0 * shortest + 2.0 * LEAD)?;
                let count = (bent / shortest + 1e-9).floor();
                let leg = (bent / count - 2.0 * radius * sin) / cos;
                let mut side = -1.0;
                for index in 0..count as u32 {
                    legs.push(bend(side * if index == 0 { SLANT } else { 2.0 * SLANT }));
                    legs.push(Leg::Straight(leg));
                    side = -side;
                }
                legs.push(bend(side * SLANT));
            }
        }
        legs.push(Leg::Straight(LEAD));
        Ok(legs)
    }

    fn corridor(&self, canvas: &mut Canvas, way: &Way, width: f64) {
        let look = canvas.look;
        let edge = (width + look.stroke) / 2.0;
        for side in [1.0, -1.0] {
            canvas.strokes(|_| Part::Cool, way, side * edge);
        }
        let long = way.length(0.0);
        for share in [0.16, 0.5, 0.84] {
            canvas.chevron(Part::Bright, way.pose(0.0, long * share));
        }
        canvas.lane(LaneKind::Corridor, way, width);
    }

    fn line(&self, canvas: &mut Canvas, way: &Way) {
        let look = canvas.look;
        canvas.chevron(Part::Bright, Pose::at(GO / 2.0, 0.0));
        // two colours take turns: the lead foot changes with them
        canvas.strokes(
            |piece| {
                if piece % 2 == 0 {
                    Part::Cool
                } else {
                    Part::Plain
                }
            },
            way,
            0.0,
        );
        canvas.lane(LaneKind::Line, way, look.stroke);
    }
}

impl Family for LaneFamily {
    fn name(&self) -> &'static str {
        self.name
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        match (self.run, self.kind) {
            (Run::Straight, LaneKind::Corridor) => &STRAIGHT_WIDE,
            (Run::Straight, LaneKind::Line) => &STRAIGHT_THIN,
            (Run::Wave, LaneKind::Corridor) => &WAVE_WIDE,
            (Run::Wave, LaneKind::Line) => &WAVE_THIN,
            (Run::Zigzag, LaneKind::Corridor) => &ZIGZAG_WIDE,
            (Run::Zigzag, LaneKind::Line) => &ZIGZAG_THIN,
        }
    }

    fn activities(&self) -> &'static [&'static str] {
        match (self.run, self.kind) {
            (Run::Straight, LaneKind::Corridor) => &["run", "gallop", "slide", "skip"],
            (_, LaneKind::Corridor) => &["gallop", "skip", "run", "walk"],
            (Run::Straight, LaneKind::Line) => &["walk", "gallop", "slide", "hop"],
            (_, LaneKind::Line) => &["walk", "gallop", "slide"],
        }
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let specs = self.lengths();
        let kept = named(specs, take(specs, lengths)?);
        let of = |name: &str| {
            kept.iter()
                .find(|(own, _)| own == name)
                .map(|(_, length)| *length)
        };
        let length = of(LENGTH.name).unwrap_or(LENGTH.default);
        let width = of(WIDTH.name).unwrap_or(look.stroke);
        let radius = of(RADIUS.name).unwrap_or(RADIUS.default);
        let mut canvas = Canvas::new(look);
        let legs = self.legs(length, radius)?;
        let (begin, start, stop_wide) = match self.kind {
            LaneKind::Corridor => (0.12, look.start_lane, width),
            LaneKind::Line => (GO, look.start, look.start),
        };
        let way = Way::new(Pose::at(begin, 0.0), legs);
        canvas.start_mark(Pose::at(0.0, 0.0), start);
        match self.kind {
            LaneKind::Corridor => self.corridor(&mut canvas, &way, width),
            LaneKind::Line => self.line(&mut canvas, &way),
        }
        let last = way.pose(0.0, way.length(0.0)).at;
        let stop = last.x + 0.15 + look.roll;
        canvas.bar(Pose::at(stop, last.y), 2.0, stop_wide);
        let end = stop + look.roll;
        if self.kind == LaneKind::Corridor {
            let radius = look.turn / 2.0 + look.stroke;
            let at = coord! { x: end + 0.35 + radius, y: last.y };
            canvas.turning(at);
            let round = radius + look.gap;
            canvas.needs(rect(
                [at.x - round - 0.35, at.x + round],
                [at.y - round, at.y + round],
            ));
        }
        let middle = way.line(0.0, 0.0, way.length(0.0), 0.01);
        let reach = |by: fn(f64, f64) -> f64| middle.iter().map(|at| at.y).fold(0.0, by);
        let aside = (width / 2.0 + look.stroke).max(start / 2.0) + look.sway;
        canvas.pebbles(
            Pose::at(-0.1, 0.0).at,
            1.30,
            0.60 * PI,
            1.0,
            4,
            Pose::at(-0.1, 0.0).at,
        );
        canvas.needs(rect(
            [-start / 2.0 - look.behind, end],
            [reach(f64::min) - aside, reach(f64::max) + aside],
        ));
        canvas.needs(rect(
            [end - aside, end + look.run_out_run],
            [last.y - aside, last.y + aside],
        ));
        Ok(canvas.figure(self.name, kept, 1))
    }
}
