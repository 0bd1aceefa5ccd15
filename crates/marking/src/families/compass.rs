//! The compass of turns: jump to a quarter that is called and turn to it, or go round by
//! quarter turns.

use std::f64::consts::{FRAC_PI_2, PI};

use geo::coord;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::families::grid::wait_aslant;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::{Pose, arc, stroke};

/// A middle and a ring of eight cells, each facing outward; those at the quarters are of
/// another colour. Tellers on the rim count the quarter turns from ahead: none, one to
/// either side, two behind.
pub struct Compass;

const LENGTHS: [LengthSpec; 2] = [
    LengthSpec {
        name: "out",
        least: 0.54,
        most: 0.95,
        default: 0.55,
        step: 0.01,
        says: "length-out",
    },
    LengthSpec {
        name: "ring",
        least: 0.36,
        most: 0.42,
        default: 0.36,
        step: 0.01,
        says: "length-ring",
    },
];

/// Eighths from ahead, anticlockwise.
const EIGHTHS: [&str; 8] = [
    "ahead",
    "ahead-left",
    "left",
    "behind-left",
    "behind",
    "behind-right",
    "right",
    "ahead-right",
];

impl Family for Compass {
    fn name(&self) -> &'static str {
        "compass"
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
        let [out, ring] = taken;
        // two neighbours of eight stand .765 of the radius apart
        let apart = 2.0 * libm::sin(PI / 8.0);
        at_least("out", out, (ring + look.gap) / apart)?;
        let mut canvas = Canvas::new(look);
        let middle = canvas.ring(
            "middle",
            Pose::at(0.0, 0.0),
            ring,
            [Part::Bright, Part::HeelPlain],
        );
        canvas.either(middle);
        canvas.begin(middle);
        canvas.go_in_eye(Part::Plain, Pose::at(0.0, 0.0));
        let mut cells = Vec::new();
        for (number, name) in (0_u32..).zip(EIGHTHS) {
            let parts = if number % 2 == 0 {
                [Part::Cool, Part::HeelBright]
            } else {
                [Part::Plain, Part::HeelBright]
            };
            let pose = Pose::at(0.0, 0.0).turned(f64::from(number) * PI / 4.0);
            let cell = canvas.ring(name, pose.ahead(out), ring, parts);
            cells.push(canvas.either(cell));
        }
        canvas.follow(middle, cells.clone());
        for (place, cell) in cells.iter().enumerate() {
            let beside = [(place + 1) % 8, (place + 7) % 8];
            let next = beside.into_iter().filter_map(|beside| cells.get(beside));
            canvas.follow(
                *cell,
                std::iter::once(middle).chain(next.copied()).collect(),
            );
        }
        rim(&mut canvas, out + ring / 2.0);
        canvas.needs_about();
        let corner = out * libm::cos(PI / 4.0);
        wait_aslant(&mut canvas, coord! { x: -corner, y: corner });
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}

/// The rim outside the cells, open at each quarter for its mark: a chevron ahead, tellers
/// at the others.
fn rim(canvas: &mut Canvas, inside: f64) {
    /// An arc that a string draws, in steps of this, metres.
    const STRING: f64 = 0.25;
    let look = canvas.look;
    let clear = inside + look.gap + look.stroke / 2.0;
    let radius = (clear / STRING - 1e-9).ceil() * STRING;
    let teller = look.teller + look.gap;
    // half the breadth of a mark, as an angle, with room to the strokes' round ends
    let open = |turns: u32| {
        let half = match turns {
            0 => (look.chevron + look.chevron_stroke) / 2.0,
            some => (f64::from(some) * teller - look.gap) / 2.0,
        };
        (half + look.gap + look.stroke / 2.0) / radius
    };
    let middle = Pose::at(0.0, 0.0);
    for (turns, next, quarter) in [(0, 1, 0.0), (1, 2, 1.0), (2, 1, 2.0), (1, 0, 3.0)] {
        let from = quarter * FRAC_PI_2;
        canvas.lay(Part::Plain, middle, |look| {
            let (from, to) = (from + open(turns), from + FRAC_PI_2 - open(next));
            let line = arc(middle.at, [radius; 2], from, to, look.flat);
            stroke(&line, look.stroke, look.flat)
        });
        let mark = middle.turned(from).ahead(radius);
        if turns == 0 {
            canvas.chevron(Part::Plain, mark.ahead(0.3 * look.chevron));
        }
        for count in 0..turns {
            let aside = f64::from(count) - f64::from(turns - 1) / 2.0;
            canvas.dot(Part::Plain, mark.point(0.0, aside * teller), look.teller);
        }
    }
}
