//! Stepping spots: rings for one foot and broad cells for both, on a winding trail.

use std::f64::consts::PI;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::{Pose, rect};

/// Three rings, two broad cells, two rings, a broad cell.
pub struct Spots;

const LENGTHS: [LengthSpec; 3] = [
    LengthSpec {
        name: "spot",
        least: 0.33,
        most: 0.40,
        default: 0.33,
        step: 0.01,
        says: "length-spot",
    },
    LengthSpec {
        name: "hop",
        least: 0.38,
        most: 0.80,
        default: 0.40,
        step: 0.01,
        says: "length-hop",
    },
    LengthSpec {
        name: "jump",
        least: 0.40,
        most: 1.00,
        default: 0.50,
        step: 0.01,
        says: "length-jump",
    },
];

/// Degrees off the trail's line of each flight: it winds, and no turn is sharp.
const HEADINGS: [f64; 8] = [-6.0, 16.0, 6.0, -14.0, -14.0, 12.0, 14.0, -8.0];

impl Family for Spots {
    fn name(&self) -> &'static str {
        "spots"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["court", "hop", "jump", "leap"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [spot, hop, jump] = taken;
        at_least("hop", hop, spot + look.gap)?;
        at_least("jump", jump, spot + look.gap)?;
        let mut canvas = Canvas::new(look);
        let flights = [hop, hop, hop, jump, jump, jump, hop, jump];
        let mut at = Pose::at(-look.stand, 0.0).at;
        let mut poses = Vec::new();
        for (index, (flight, heading)) in flights.into_iter().zip(HEADINGS).enumerate() {
            let way = Pose {
                at,
                turn: heading.to_radians(),
            };
            at = way.point(flight, 0.0);
            // a spot faces midway between the flight that comes in and the one that goes on
            let on = HEADINGS.get(index + 1).copied().unwrap_or(heading);
            poses.push(Pose {
                at,
                turn: ((heading + on) / 2.0).to_radians(),
            });
        }
        let (calm, cool) = (
            [Part::Plain, Part::HeelBright],
            [Part::Cool, Part::HeelBright],
        );
        let both = [Part::Bright, Part::HeelPlain];
        let first = HEADINGS[0].to_radians();
        let mut trail = vec![
            canvas.start(
                "start",
                Pose {
                    at: Pose::at(-look.stand, 0.0).at,
                    turn: first,
                }
                .ahead(look.stand),
                look.start,
            ),
        ];
        for (index, pose) in poses.iter().enumerate() {
            let id = format!("{}", index + 1);
            trail.push(match index {
                0 | 2 | 5 => canvas.ring(id, *pose, spot, calm),
                1 | 6 => canvas.ring(id, *pose, spot, cool),
                _ => canvas.broad(id, *pose, spot, both),
            });
        }
        canvas.chain(&trail);
        let reach = |by: fn(f64, f64) -> f64| poses.iter().map(|pose| pose.at.y).fold(0.0, by);
        let aside = spot * look.broad / 2.0 + look.sway;
        let end = poses.last().map_or(0.0, |pose| pose.at.x) + spot / 2.0;
        canvas.pebbles(
            Pose::at(0.0, 0.0).at,
            1.05,
            0.63 * PI,
            1.0,
            3,
            Pose::at(0.0, 0.0).at,
        );
        canvas.needs(rect(
            [-look.start / 2.0 - look.behind, end + look.run_out_other],
            [reach(f64::min) - aside, reach(f64::max) + aside],
        ));
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
