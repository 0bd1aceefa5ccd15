//! The direction star: jumps ahead, aslant, sideways and back, and the face stays ahead.

use geo::{Coord, coord};

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::families::grid::wait_aslant;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::look::Look;
use crate::shape::Pose;

/// A middle to start from and a spot in each direction, as far out as that direction is
/// easy. Aslant back there is none: as near as a child can jump that way it would lie on
/// the spots beside it.
pub struct Star;

const LENGTHS: [LengthSpec; 2] = [
    LengthSpec {
        name: "ahead",
        least: 0.45,
        most: 1.10,
        default: 0.60,
        step: 0.01,
        says: "length-ahead",
    },
    LengthSpec {
        name: "spot",
        least: 0.33,
        most: 0.38,
        default: 0.33,
        step: 0.01,
        says: "length-star-spot",
    },
];

/// Breadth of a spot over its depth: a little broader than deep, so that two feet land.
const BREADTH: f64 = 1.2;

/// Depth of the middle over that of a spot.
const MIDDLE: f64 = 1.1;

/// The unit at these degrees off the facing.
fn way(off: f64) -> Coord<f64> {
    let (sin, cos) = libm::sincos(off.to_radians());
    coord! { x: cos, y: sin }
}

/// What is left of a jump's reach at these degrees off the facing: .7 sideways, half back.
fn ease(off: f64, look: &Look) -> f64 {
    let (way, [plain, along, across]) = (way(off), look.facing);
    plain + along * way.x - across * way.y * way.y
}

/// How near two broad cells of one facing may lie. Their outlines are two half discs that
/// stand apart, across the way.
struct Nearest {
    /// Middle to middle, one behind the other, but for the gap.
    deep: f64,
    /// How much more that is side by side.
    wider: f64,
    gap: f64,
}

impl Nearest {
    /// As far out along a way as asked, or farther where others leave no room.
    fn out(&self, way: Coord<f64>, asked: f64, others: &[Coord<f64>]) -> Coord<f64> {
        /// Metres: finer than is painted.
        const STEP: f64 = 0.005;
        let room = |at: Coord<f64>| {
            others.iter().all(|other| {
                let (x, y) = ((at.x - other.x).abs(), (at.y - other.y).abs());
                libm::hypot(x, (y - self.wider).max(0.0)) >= self.deep + self.gap
            })
        };
        (0..400)
            .map(|step| way * (asked + STEP * f64::from(step)))
            .find(|at| room(*at))
            .unwrap_or(way * asked)
    }
}

impl Family for Star {
    fn name(&self) -> &'static str {
        "star"
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
        let [ahead, deep] = taken;
        let (broad, middle) = (deep * BREADTH, deep * MIDDLE);
        at_least("ahead", ahead, (deep + middle) / 2.0 + look.gap)?;
        let mut canvas = Canvas::new(look);
        let start = canvas.oval(
            "middle",
            Pose::at(0.0, 0.0),
            [middle, middle * BREADTH],
            [Part::Bright, Part::HeelPlain],
        );
        canvas.either(start);
        canvas.begin(start);
        canvas.go_in_eye(Part::Plain, Pose::at(0.0, 0.0));
        let size = |one: f64, other: f64| Nearest {
            deep: (one + other) / 2.0,
            wider: (one + other) / 2.0 * (BREADTH - 1.0),
            gap: look.gap,
        };
        let asked = |off: f64| ahead * ease(off, look);
        let straight = |off: f64| size(deep, middle).out(way(off), asked(off), &[Coord::default()]);
        let [front, left, right, back] = [0.0, 90.0, -90.0, 180.0].map(straight);
        let between =
            |off: f64, side: Coord<f64>| size(deep, deep).out(way(off), asked(off), &[front, side]);
        let plain = [Part::Plain, Part::HeelBright];
        let cool = [Part::Cool, Part::HeelBright];
        let spots: Vec<usize> = [
            ("left", left, plain),
            ("aslant-left", between(45.0, left), cool),
            ("ahead", front, plain),
            ("aslant-right", between(-45.0, right), cool),
            ("right", right, plain),
            ("back", back, cool),
        ]
        .into_iter()
        .map(|(name, at, parts)| {
            let spot = canvas.oval(name, Pose { at, turn: 0.0 }, [deep, broad], parts);
            canvas.either(spot)
        })
        .collect();
        canvas.follow(start, spots.clone());
        if let [fan @ .., _back] = spots.as_slice() {
            for (place, spot) in fan.iter().enumerate() {
                let beside = [place.checked_sub(1), Some(place + 1)];
                let beside = beside.into_iter().flatten();
                let next = beside.filter_map(|beside| fan.get(beside).copied());
                canvas.follow(*spot, std::iter::once(start).chain(next).collect());
            }
        }
        canvas.needs_about();
        wait_aslant(&mut canvas, coord! { x: -0.2, y: 0.2 });
        let mut figure = canvas.figure(self.name(), named(&LENGTHS, &taken), 1);
        figure.facing = Some(0.0);
        Ok(figure)
    }
}
