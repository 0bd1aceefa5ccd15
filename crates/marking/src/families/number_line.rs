//! The number line: nought to ten, one jump a number.

use std::f64::consts::PI;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::{Pose, rect};

/// Eleven broad cells. A child stands on nought, so that three jumps end on three; a jump
/// may pass over one number.
pub struct NumberLine;

const LENGTHS: [LengthSpec; 2] = [
    LengthSpec {
        name: "step",
        least: 0.39,
        most: 0.65,
        default: 0.40,
        step: 0.01,
        says: "length-step",
    },
    LengthSpec {
        name: "cell",
        least: 0.34,
        most: 0.40,
        default: 0.35,
        step: 0.01,
        says: "length-numbered",
    },
];

const LAST: usize = 10;

impl Family for NumberLine {
    fn name(&self) -> &'static str {
        "number-line"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["jump", "hop"]
    }

    fn can_mirror(&self) -> bool {
        false
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [step, deep] = taken;
        at_least("step", step, deep + look.gap)?;
        let mut canvas = Canvas::new(look);
        for number in 0..=LAST {
            // fives stand out, so that seven is seen as five and two
            let parts = if number % 5 == 0 {
                [Part::Bright, Part::HeelPlain]
            } else {
                [Part::Plain, Part::HeelBright]
            };
            let pose = Pose::at(number as f64 * step, 0.0);
            let cell = canvas.broad(number.to_string(), pose, deep, parts);
            // an eye's corners are round: a third of each is no room for a ten
            let straight = deep * look.broad - look.corner_broad * 2.0 / 3.0;
            canvas.numbered(&number.to_string(), parts[0], pose, [deep, straight]);
            canvas.either(cell);
            canvas.follow(cell, (number + 1..=(number + 2).min(LAST)).collect());
        }
        canvas.begin(0);
        // the start's half-moon would be a number too many: a chevron says go instead
        let behind = -deep / 2.0 - look.gap - look.chevron * 0.1 - look.chevron_stroke / 2.0;
        canvas.chevron(Part::Bright, Pose::at(behind - 0.02, 0.0));
        let door = Pose::at(behind, 0.0).at;
        canvas.pebbles(door, 1.05, 0.63 * PI, 1.0, 3, door);
        let aside = deep * look.broad / 2.0 + look.sway;
        canvas.needs(rect(
            [
                behind - look.chevron - look.behind,
                LAST as f64 * step + deep / 2.0 + look.run_out_other,
            ],
            [-aside, aside],
        ));
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
