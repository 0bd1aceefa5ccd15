//! The brook: two banks that part, so that each child picks its own width.
//!
//! x runs along the water from the narrow end, y across it. The clear width is between
//! the inner edges of the banks.

use std::f64::consts::PI;

use geo::coord;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::{Figure, Takes};
use crate::look::Look;
use crate::shape::{Pose, ring};
use crate::way::{Leg, Way};

/// Crossed anywhere, by jump or by leap.
pub struct Brook;

const LENGTHS: [LengthSpec; 3] = [
    LengthSpec {
        name: "narrow",
        least: 0.10,
        most: 0.50,
        default: 0.15,
        step: 0.01,
        says: "length-narrow",
    },
    LengthSpec {
        name: "wide",
        least: 0.30,
        most: 1.20,
        default: 0.75,
        step: 0.01,
        says: "length-wide",
    },
    LengthSpec {
        name: "length",
        least: 2.40,
        most: 6.00,
        default: 3.60,
        step: 0.10,
        says: "length-length",
    },
];

impl Family for Brook {
    fn name(&self) -> &'static str {
        "brook"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["jump", "leap"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [narrow, wide, length] = taken;
        at_least("wide", wide, narrow + 0.10)?;
        let mut canvas = Canvas::new(look);
        let water = |x: f64| narrow + (wide - narrow) * x / length;
        let lean = libm::atan2((wide - narrow) / 2.0, length);
        // a bank's inner edge is the water's edge: its middle lies half a stroke outside
        let outside = look.stroke / 2.0 / libm::cos(lean);
        for side in [1.0, -1.0] {
            let from = Pose {
                at: coord! { x: 0.0, y: side * (narrow / 2.0 + outside) },
                turn: side * lean,
            };
            let bank = Way::new(from, vec![Leg::Straight(length / libm::cos(lean))]);
            canvas.strokes(|_| Part::Water, &bank, 0.0);
        }
        let tracks = (length / look.brook_start_apart + 1e-9).floor().max(1.0);
        for track in 0..tracks as u32 {
            let x = length * (f64::from(track) + 0.5) / tracks;
            // behind the bank's outer edge, square to the way across
            let edge = -water(x) / 2.0 - look.stroke / libm::cos(lean);
            let flat = edge - look.gap - libm::tan(lean) * look.start / 2.0;
            canvas.start_mark(
                Pose {
                    at: coord! { x: x, y: flat },
                    turn: std::f64::consts::FRAC_PI_2,
                },
                look.start,
            );
            let behind = flat - look.start / 2.0 - 0.12;
            let apart = look.teller + look.gap;
            for teller in 0..=track {
                let aside = (f64::from(teller) - f64::from(track) / 2.0) * apart;
                canvas.dot(Part::Crumb, coord! { x: x + aside, y: behind }, look.teller);
            }
        }
        ripples(&mut canvas, length, tracks, water);
        let count = ((length - 2.0 * look.brook_spot) / look.brook_every + 1e-9).floor() as u32;
        for place in 0..=count {
            let x = look.brook_spot + f64::from(place) * look.brook_every;
            let half = water(x) / 2.0;
            let near = canvas.spot(
                format!("near{place}"),
                coord! { x: x, y: -half - look.brook_stand },
                look.brook_start_spot,
                Takes::Either,
            );
            let far = canvas.spot(
                format!("far{place}"),
                coord! { x: x, y: half + look.brook_land },
                look.brook_spot,
                Takes::Either,
            );
            canvas.chain(&[near, far]);
            if let Some(cell) = canvas.cells.get_mut(near) {
                (cell.start, cell.end, cell.run_up) = (true, false, true);
            }
        }
        let (first, last) = (-look.sway, length + look.sway);
        // a child's own breadth to each side, where the banks are nearer
        let lean_aside = libm::tan(lean) * look.sway;
        let near = |x: f64| -water(x) / 2.0 - look.brook_stand - look.run_up - lean_aside;
        let far = |x: f64| water(x) / 2.0 + look.brook_land + look.run_out_other + lean_aside;
        canvas.needs(ring(vec![
            coord! { x: first, y: near(first) },
            coord! { x: last, y: near(last) },
            coord! { x: last, y: far(last) },
            coord! { x: first, y: far(first) },
        ]));
        // beside the run-up, at the narrow end where the youngest cross
        let beside = coord! { x: first - look.wait_clear, y: -narrow / 2.0 - 0.5 };
        let door = coord! { x: first, y: beside.y - 0.4 };
        let radius = 1.6;
        canvas.pebbles(
            coord! { x: beside.x + radius, y: beside.y },
            radius,
            PI,
            1.0,
            3,
            door,
        );
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), tracks as u32))
    }
}

/// Short strokes in the water, between the crossings: one, then two, then three staggered
/// rows as it widens.
fn ripples(canvas: &mut Canvas, length: f64, tracks: f64, water: impl Fn(f64) -> f64) {
    let look = canvas.look;
    let [breadth, least, most] = look.ripple;
    // landings reach over the water from both banks, and crumbs keep off them
    let over_near = look.brook_start_spot - look.brook_stand;
    let over_far = look.brook_spot - look.brook_land;
    let row = 0.17;
    for between in 1..=tracks as u32 {
        let last = f64::from(between) == tracks;
        let x = length * f64::from(between) / tracks - if last { 0.22 } else { 0.0 };
        // the water is narrowest at the ripples' upstream end
        let clear = water(x - 0.06 - most / 2.0) - over_near - over_far - breadth - look.gap;
        if clear < 0.0 {
            continue;
        }
        let rows = (clear / row).floor().min(2.0).min(f64::from(between - 1)) as u32;
        for index in 0..=rows {
            let y = (over_near - over_far) / 2.0 + (f64::from(index) - f64::from(rows) / 2.0) * row;
            let even = index % 2 == 0;
            let shift = if even { 0.06 } else { -0.06 };
            canvas.ripple(Pose::at(x + shift, y), if even { least } else { most });
        }
    }
}
