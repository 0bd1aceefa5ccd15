//! Two short trails side by side: two children wait, start and land together.

use std::f64::consts::PI;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::{Pose, rect};

/// A start and two broad cells, twice.
pub struct Pair;

const LENGTHS: [LengthSpec; 3] = [
    LengthSpec {
        name: "jump",
        least: 0.40,
        most: 1.00,
        default: 0.55,
        step: 0.01,
        says: "length-jump",
    },
    LengthSpec {
        name: "spot",
        least: 0.35,
        most: 0.40,
        default: 0.36,
        step: 0.01,
        says: "length-spot",
    },
    LengthSpec {
        name: "apart",
        least: 1.20,
        most: 2.00,
        default: 1.30,
        step: 0.05,
        says: "length-apart",
    },
];

impl Family for Pair {
    fn name(&self) -> &'static str {
        "pair"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["jump"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [jump, spot, apart] = taken;
        at_least("jump", jump, spot + look.gap)?;
        let mut canvas = Canvas::new(look);
        let end = 2.0 * jump - look.stand + spot / 2.0;
        for (name, side) in [("a", 1.0), ("b", -1.0)] {
            let y = side * apart / 2.0;
            let on = |jumps: f64| Pose::at(jumps * jump - look.stand, y);
            let trail = [
                canvas.start(format!("{name}0"), Pose::at(0.0, y), look.start),
                canvas.broad(
                    format!("{name}1"),
                    on(1.0),
                    spot,
                    [Part::Plain, Part::HeelBright],
                ),
                canvas.broad(
                    format!("{name}2"),
                    on(2.0),
                    spot,
                    [Part::Cool, Part::HeelBright],
                ),
            ];
            canvas.chain(&trail);
            let (from, way) = if side > 0.0 {
                (0.63 * PI, 1.0)
            } else {
                (-0.63 * PI, -1.0)
            };
            canvas.pebbles(Pose::at(0.0, y).at, 1.05, from, way, 3, Pose::at(0.0, y).at);
        }
        let aside = apart / 2.0 + spot * look.broad / 2.0 + look.sway;
        canvas.needs(rect(
            [-look.start / 2.0 - look.behind, end + look.run_out_other],
            [-aside, aside],
        ));
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 2))
    }
}
