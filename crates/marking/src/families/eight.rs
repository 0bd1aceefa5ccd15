//! The eight: a corridor in a figure of eight whose two straights cross square.
//!
//! In at the foot of the near loop, across, round the far loop, across again and out at the
//! head of the near loop; the rest of the near loop is the way home, where children wait.
//! At the crossing every edge stops short, so that no paint lies over paint.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

use geo::{Coord, coord};

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, named, take_all};
use crate::figure::{Figure, LaneKind};
use crate::look::Look;
use crate::shape::Pose;
use crate::way::{Leg, Way};

/// Once round the far loop.
pub struct Eight;

const LENGTHS: [LengthSpec; 2] = [
    LengthSpec {
        name: "width",
        least: 0.9,
        most: 1.5,
        default: 0.9,
        step: 0.05,
        says: "length-width",
    },
    LengthSpec {
        name: "radius",
        least: 1.25,
        most: 2.5,
        default: 1.25,
        step: 0.25,
        says: "length-radius",
    },
];

/// Metres from the start line to the lane.
const GO: f64 = 0.12;
/// Radians round the far loop.
const LOOP: f64 = 3.0 * FRAC_PI_2;
/// Where the near loop's outer edge begins again, past the way out; radians about its middle.
const HOME: f64 = 0.94 * PI;
/// Metres of the near loop's outer edge that go straight on beside the way out.
const OUT: f64 = 0.45;

impl Family for Eight {
    fn name(&self) -> &'static str {
        "eight-lane"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["gallop", "skip", "run", "walk"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [width, radius] = taken;
        let half = (width + look.stroke) / 2.0;
        let bend = |turn: f64| Leg::Bend { radius, turn };
        // square crossing: from its middle to where a loop begins is one radius
        let across = Leg::Straight(2.0 * radius);
        let way = Way::new(
            Pose::at(GO, 0.0),
            vec![
                bend(FRAC_PI_4),
                across,
                bend(-LOOP),
                across,
                bend(FRAC_PI_4),
            ],
        );
        let long = way.length(0.0);
        let into_crossing = radius * FRAC_PI_4 + radius;
        let near = coord! { x: GO, y: radius };
        let mut canvas = Canvas::new(look);
        // start and stop lie between the edges here
        let breadth = width - 4.0 * look.gap;
        canvas.start_mark(Pose::at(0.0, 0.0), breadth.min(look.start_lane));
        edges(&mut canvas, way.pose(0.0, into_crossing).at, half, radius);
        let before = into_crossing - half - look.chevron / 2.0;
        for along in [before, long / 2.0, long - 2.0 * into_crossing + before] {
            canvas.chevron(Part::Bright, way.pose(0.0, along));
        }
        canvas.lane(LaneKind::Corridor, &way, width);
        let end = way.pose(0.0, long);
        canvas.bar(end.ahead(0.15 + look.roll), 2.0, breadth);

        // the way home is where they wait, clear of the start
        let round = |clear: f64| 2.0 * libm::asin(clear / 2.0 / radius);
        let first = 1.5 * PI - round(look.wait_clear + GO);
        let pebbles = ((first - PI) / round(look.pebble_apart)).floor() + 1.0;
        let door = Pose::at(0.0, 0.0).at;
        canvas.pebbles(near, radius, first, -1.0, pebbles.min(4.0) as u32, door);

        let aside = half + look.stroke / 2.0 + look.sway;
        canvas.needs_round(&way, aside);
        canvas.needs_round(&Way::new(Pose::at(GO, 0.0), vec![bend(2.0 * PI)]), aside);
        canvas.needs_ahead(end, look.run_out_run, aside);
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}

/// The edges round a crossing, half a pitch off the lane's middle.
fn edges(canvas: &mut Canvas, cross: Coord<f64>, half: f64, radius: f64) {
    let look = canvas.look;
    // two edges that meet square stop a piece's gap apart, round end to round end
    let trim = (look.stroke + look.piece_gap) * std::f64::consts::FRAC_1_SQRT_2 - look.stroke / 2.0;
    let straight = Leg::Straight(radius - half - trim);
    let corner = half * std::f64::consts::SQRT_2;
    let from = |x: f64, y: f64, turn: f64| {
        let at = coord! { x: cross.x + x, y: cross.y + y };
        Pose { at, turn }.ahead(trim)
    };
    let bend = |radius: f64, turn: f64| Leg::Bend { radius, turn };
    let (inner, outer) = (radius - half, radius + half);
    let near = coord! { x: cross.x - radius * std::f64::consts::SQRT_2, y: cross.y };
    let behind = Pose {
        at: near,
        turn: HOME,
    };
    let home = Pose {
        at: behind.point(outer, 0.0),
        turn: HOME + FRAC_PI_2,
    };
    for (pose, legs) in [
        (
            from(corner, 0.0, FRAC_PI_4),
            vec![straight, bend(inner, -LOOP), straight],
        ),
        (
            from(0.0, corner, FRAC_PI_4),
            vec![straight, bend(outer, -LOOP), straight],
        ),
        (
            from(-corner, 0.0, 3.0 * FRAC_PI_4),
            vec![straight, bend(inner, LOOP), straight],
        ),
        (
            from(0.0, corner, 3.0 * FRAC_PI_4),
            vec![straight, bend(outer, FRAC_PI_4), Leg::Straight(OUT)],
        ),
        (home, vec![bend(outer, 7.0 * FRAC_PI_4 - HOME), straight]),
    ] {
        canvas.strokes(|_| Part::Cool, &Way::new(pose, legs), 0.0);
    }
}
