//! Footprints: sole and heel, painted where a foot lands.

use geo::{Coord, Polygon, coord};

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::shape::{Pose, ring};

/// Which foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Foot {
    Left,
    Right,
}

impl Foot {
    /// The side of the way that it falls on: 1 left, -1 right.
    pub(crate) fn side(self) -> f64 {
        match self {
            Foot::Left => 1.0,
            Foot::Right => -1.0,
        }
    }

    pub(crate) fn other(self) -> Foot {
        match self {
            Foot::Left => Foot::Right,
            Foot::Right => Foot::Left,
        }
    }
}

/// A corner, then cubic arcs: two handles and the place where each ends.
type Curve = [f64; 2];

/// The look's print (`gallop.svg`), a right foot 220 mm long, toes along +x, y to the left.
const SOLE: [Curve; 13] = [
    [-11.0, 27.5],
    [13.2, 36.3],
    [44.0, 47.3],
    [74.8, 39.6],
    [99.0, 33.0],
    [111.1, 15.4],
    [110.0, -1.1],
    [107.8, -24.2],
    [81.4, -45.1],
    [44.0, -44.0],
    [19.8, -42.9],
    [2.2, -34.1],
    [-11.0, -29.7],
];
const HEEL: [Curve; 13] = [
    [-27.5, -28.6],
    [-44.0, -34.1],
    [-63.8, -36.3],
    [-81.4, -29.7],
    [-100.1, -22.0],
    [-110.0, -11.0],
    [-110.0, 0.0],
    [-110.0, 13.2],
    [-99.0, 25.3],
    [-81.4, 29.7],
    [-63.8, 34.1],
    [-44.0, 31.9],
    [-27.5, 26.4],
];
/// Millimetres: half the drawn print, and the web between its sole and its heel.
const HALF: f64 = 110.0;
const WEB: f64 = 16.5;
/// Points of one arc: at 22 cm a side lies under half a millimetre off it.
const POINTS: u32 = 8;

impl Canvas<'_> {
    /// A print whose middle is at the pose, toes ahead. The web between sole and heel keeps
    /// its width in a shorter print, for the stencil's sake.
    pub(crate) fn print(&mut self, part: Part, pose: Pose, foot: Foot, long: f64) {
        let web = WEB / 1000.0;
        let scale = (long - web) / (2.0 * HALF - WEB);
        let mirror = -foot.side();
        let sole = || {
            outline(&SOLE, |x, y| {
                coord! { x: long / 2.0 - (HALF - x) * scale, y: mirror * y * scale }
            })
        };
        let heel = || {
            outline(&HEEL, |x, y| {
                coord! { x: (HALF + x) * scale - long / 2.0, y: mirror * y * scale }
            })
        };
        self.lay(part, pose, |_| sole());
        self.lay(part, pose, |_| heel());
    }
}

fn outline(curves: &[Curve; 13], at: impl Fn(f64, f64) -> Coord<f64>) -> Polygon<f64> {
    let mut points = vec![at(curves[0][0], curves[0][1])];
    for arc in 0..4 {
        let [from, out, into, to] = [0, 1, 2, 3].map(|by| curves[3 * arc + by]);
        for point in 1..=POINTS {
            let t = f64::from(point) / f64::from(POINTS);
            let s = 1.0 - t;
            let axis = |a: usize| {
                s * s * s * from[a]
                    + 3.0 * s * s * t * out[a]
                    + 3.0 * s * t * t * into[a]
                    + t * t * t * to[a]
            };
            points.push(at(axis(0), axis(1)));
        }
    }
    ring(points)
}
