//! The hop-and-jump court: squares for one foot, pairs of squares for both, and a home.

use std::f64::consts::PI;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::{Pose, rect};

/// Start, 1, 2, 3 and 4, 5, 6 and 7, 8, home.
pub struct Court;

const LENGTHS: [LengthSpec; 3] = [
    LengthSpec {
        name: "cell",
        least: 0.33,
        most: 0.40,
        default: 0.35,
        step: 0.01,
        says: "length-cell",
    },
    LengthSpec {
        name: "single",
        least: 0.38,
        most: 0.80,
        default: 0.40,
        step: 0.01,
        says: "length-single",
    },
    LengthSpec {
        name: "double",
        least: 0.38,
        most: 0.90,
        default: 0.42,
        step: 0.01,
        says: "length-double",
    },
];

impl Family for Court {
    fn name(&self) -> &'static str {
        "court"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["court", "hop"]
    }

    fn can_mirror(&self) -> bool {
        false
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [side, single, double] = taken;
        at_least("single", single, side + look.gap)?;
        at_least("double", double, side + look.gap)?;
        let mut canvas = Canvas::new(look);
        let mut x = -look.stand;
        let mut on = |by: f64| {
            x += by;
            Pose::at(x, 0.0)
        };
        let (one, both) = (
            [Part::Plain, Part::HeelWarm],
            [Part::Bright, Part::HeelWarm],
        );
        let breadth = 2.0 * side + look.gap;
        let deep = side + look.gap;
        let trail = [
            canvas.start("start", Pose::at(0.0, 0.0), look.start),
            canvas.square("1", on(single), side, one, '1'),
            canvas.square("2", on(single), side, one, '2'),
            canvas.squares("3-4", on(double), side, both, ['3', '4']),
            canvas.square("5", on(double), side, one, '5'),
            canvas.squares("6-7", on(double), side, both, ['6', '7']),
            canvas.square("8", on(double), side, one, '8'),
            // the home is deeper than a square, and its near edge keeps its distance
            canvas.home(
                "home",
                on(double + look.gap / 2.0),
                deep,
                breadth,
                [Part::Warm, Part::HeelBright],
            ),
        ];
        canvas.chain(&trail);
        let end = x + deep / 2.0;
        let aside = breadth / 2.0 + look.sway;
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
            [-aside, aside],
        ));
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
