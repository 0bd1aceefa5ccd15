//! The number court: one to nine in three rows, jumped in any order that is called.

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::families::grid::{AROUND, Grid};
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::Pose;

/// A start and nine squares.
pub struct NumberCourt;

/// What courts of squares leave free.
pub const LENGTHS: [LengthSpec; 2] = [
    LengthSpec {
        name: "step",
        least: 0.41,
        most: 0.75,
        default: 0.42,
        step: 0.01,
        says: "length-step",
    },
    LengthSpec {
        name: "square",
        least: 0.36,
        most: 0.42,
        default: 0.36,
        step: 0.01,
        says: "length-square",
    },
];

const GRID: Grid = Grid {
    columns: 3,
    rows: 3,
};

impl Family for NumberCourt {
    fn name(&self) -> &'static str {
        "number-court"
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
        let [step, side] = taken;
        at_least("step", step, side + look.gap)?;
        let mut canvas = Canvas::new(look);
        let start = canvas.start("start", Pose::at(0.0, 0.0), look.start);
        canvas.begin(start);
        let middles = GRID.middles(&canvas, step, side);
        let cells: Vec<usize> = (1..)
            .zip(&middles)
            .map(|(number, pose)| {
                // odd and even take turns, as on a board
                let parts = if number % 2 == 1 {
                    [Part::Plain, Part::HeelBright]
                } else {
                    [Part::Cool, Part::HeelBright]
                };
                let numeral = char::from_digit(number, 10).unwrap_or_default();
                let cell = canvas.square(number.to_string(), *pose, side, parts, numeral);
                canvas.either(cell)
            })
            .collect();
        GRID.roam(&mut canvas, start, &cells, AROUND);
        GRID.surround(&mut canvas, &middles);
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
