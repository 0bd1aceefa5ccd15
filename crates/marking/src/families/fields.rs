//! Fields of shape and colour: three shapes in three colours, jumped or leapt between as
//! they are called.

use geo::Polygon;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::families::grid::{AROUND, Grid};
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::{Pose, disc, rounded, slab};

/// A start and nine fields: every shape in every colour once, and no shape and no colour
/// twice in a row or a column.
pub struct Fields;

const LENGTHS: [LengthSpec; 2] = [
    LengthSpec {
        name: "step",
        least: 0.50,
        most: 1.10,
        default: 0.58,
        step: 0.01,
        says: "length-step",
    },
    LengthSpec {
        name: "field",
        least: 0.36,
        most: 0.44,
        default: 0.38,
        step: 0.01,
        says: "length-field",
    },
];

const GRID: Grid = Grid {
    columns: 3,
    rows: 3,
};

/// A field's shape; what it shows is its outline, never its colour alone.
#[derive(Clone, Copy)]
enum Shape {
    Circle,
    Square,
    Triangle,
}

const SHAPES: [(Shape, &str); 3] = [
    (Shape::Circle, "circle"),
    (Shape::Square, "square"),
    (Shape::Triangle, "triangle"),
];

/// Breadth of the square and of the circle in the triangle over the round field's.
const SQUARE: f64 = 0.95;
const TRIANGLE: f64 = 0.92;

impl Shape {
    /// The shape with its eye's middle at the origin, `inset` inside its outer edge.
    fn outline(self, look: &Look, across: f64, inset: f64) -> Polygon<f64> {
        let corner = if inset > 0.0 {
            look.corner_inner
        } else {
            look.corner
        };
        match self {
            Shape::Circle => disc(geo::Coord::default(), across / 2.0 - inset, look.flat),
            Shape::Square => {
                let side = SQUARE * across - 2.0 * inset;
                slab(side, side, corner, look.flat)
            }
            Shape::Triangle => {
                // equal sides, its point ahead; the inner circle's radius says how large
                let inner = TRIANGLE * across / 2.0 - inset;
                let half = inner * libm::sqrt(3.0);
                rounded(
                    &[
                        (-inner, -half, corner),
                        (2.0 * inner, 0.0, corner),
                        (-inner, half, corner),
                    ],
                    look.flat,
                )
            }
        }
    }
}

impl Family for Fields {
    fn name(&self) -> &'static str {
        "fields"
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
        let [step, across] = taken;
        // a triangle's base is the broadest that stands in a column or row
        let broadest = TRIANGLE * across * libm::sqrt(3.0) - 2.0 * look.corner * 0.73;
        at_least("step", step, (broadest + across) / 2.0 + look.gap)?;
        let mut canvas = Canvas::new(look);
        let start = canvas.start("start", Pose::at(0.0, 0.0), look.start);
        canvas.begin(start);
        let middles = GRID.middles(&canvas, step, across);
        let colours = [
            ("plain", [Part::Plain, Part::HeelBright]),
            ("bright", [Part::Bright, Part::HeelPlain]),
            ("cool", [Part::Cool, Part::HeelBright]),
        ];
        let cells: Vec<usize> = (0..GRID.cells())
            .zip(&middles)
            .map(|(number, pose)| {
                let (row, column) = (number / 3, number % 3);
                let (shape, name) = SHAPES[(row + column) % 3];
                let (colour, parts) = colours[(2 * row + column) % 3];
                let outer = shape.outline(look, across, 0.0);
                let inner = || shape.outline(look, across, look.band);
                let cell = canvas.field(format!("{colour}-{name}"), *pose, parts, &outer, inner);
                canvas.either(cell)
            })
            .collect();
        GRID.roam(&mut canvas, start, &cells, AROUND);
        GRID.surround(&mut canvas, &middles);
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
