//! Ring sets: rings in twos and threes. Two abreast are jumped; in a three one ring leads,
//! to be hopped, and two follow.

use std::f64::consts::PI;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::{Pose, rect};

/// A two, a three, a two, a three.
pub struct RingSets;

const LENGTHS: [LengthSpec; 3] = [
    LengthSpec {
        name: "within",
        least: 0.40,
        most: 0.80,
        default: 0.42,
        step: 0.01,
        says: "length-within",
    },
    LengthSpec {
        name: "between",
        least: 0.40,
        most: 1.00,
        default: 0.52,
        step: 0.01,
        says: "length-between",
    },
    LengthSpec {
        name: "ring",
        least: 0.35,
        most: 0.40,
        default: 0.35,
        step: 0.01,
        says: "length-ring",
    },
];

impl Family for RingSets {
    fn name(&self) -> &'static str {
        "ring-sets"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["court", "jump"]
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [within, between, ring] = taken;
        at_least("within", within, ring + look.gap)?;
        // a set reads as one where it stands no wider than the sets are apart
        at_least("between", between, within)?;
        let mut canvas = Canvas::new(look);
        let mut x = -look.stand;
        let mut on = |by: f64| {
            x += by;
            Pose::at(x, 0.0)
        };
        let two = [Part::Plain, Part::HeelWarm];
        let three = [Part::Warm, Part::HeelBright];
        let mut trail = vec![canvas.start("start", Pose::at(0.0, 0.0), look.start)];
        for set in 0..4 {
            let name = char::from(b'a' + set);
            if set % 2 == 0 {
                trail.push(canvas.rings(format!("{name}"), on(between), ring, two));
                continue;
            }
            let lead = canvas.ring(format!("{name}1"), on(between), ring, three);
            // one foot, or both feet close together
            trail.push(canvas.either(lead));
            trail.push(canvas.rings(format!("{name}2"), on(within), ring, three));
        }
        canvas.chain(&trail);
        canvas.begin(0);
        let start = Pose::at(0.0, 0.0).at;
        canvas.pebbles(start, 1.05, 0.63 * PI, 1.0, 3, start);
        let aside = ring + look.gap / 2.0 + look.sway;
        canvas.needs(rect(
            [
                -look.start / 2.0 - look.behind,
                x + ring / 2.0 + look.run_out_other,
            ],
            [-aside, aside],
        ));
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
