//! The brook: two banks that part, so that each child picks its own width.
//!
//! x runs along the water from the narrow end, y across it. The clear width is between
//! the inner edges of the banks.

use geo::coord;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take};
use crate::figure::{Figure, Takes};
use crate::look::Look;
use crate::shape::{Pose, rect};
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
        let taken = take(&LENGTHS, lengths)?;
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
                look.brook_spot,
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
        let across = wide / 2.0 + look.stroke;
        canvas.needs(rect(
            [-look.sway, length + look.sway],
            [
                -across - look.run_up - look.behind,
                across + look.run_out_other,
            ],
        ));
        let first = coord! { x: -look.wait_clear - look.sway, y: -narrow / 2.0 - look.run_up };
        canvas.pebbles(
            coord! { x: first.x + 2.0, y: first.y },
            2.0,
            std::f64::consts::PI,
            -1.0,
            3,
        );
        Ok(canvas.figure(self.name(), named(&LENGTHS, taken), tracks as u32))
    }
}

/// Short strokes in the water, between the crossings: one where it is narrow, more in
/// staggered rows where it widens.
fn ripples(canvas: &mut Canvas, length: f64, tracks: f64, water: impl Fn(f64) -> f64) {
    let [breadth, least, most] = canvas.look.ripple;
    // a landing reaches this far over the water; between rows a ripple's breadth twice
    let row = 0.17;
    for between in 1..=tracks as u32 {
        let x = length * f64::from(between) / tracks
            - if f64::from(between) < tracks {
                0.0
            } else {
                0.22
            };
        let clear = water(x) - 2.0 * (breadth + 0.05);
        if clear < 0.0 {
            continue;
        }
        let rows = (clear / row).floor().min(3.0) as u32;
        for index in 0..=rows {
            let y = (f64::from(index) - f64::from(rows) / 2.0) * row;
            let even = index % 2 == 0;
            let shift = if even { 0.06 } else { -0.06 };
            canvas.ripple(Pose::at(x + shift, y), if even { least } else { most });
        }
    }
}
