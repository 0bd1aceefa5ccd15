//! What long ways share: the ground beside and beyond them, and a place to turn.

use geo::Coord;

use crate::canvas::{Canvas, around, hull};
use crate::colour::Part;
use crate::shape::{Pose, arc, rect, stroke};
use crate::way::Way;

impl Canvas<'_> {
    /// Ground to either side of a way that bends round on itself: all between its bends too.
    pub(crate) fn needs_round(&mut self, way: &Way, half: f64) {
        self.needs_round_all(std::slice::from_ref(way), half);
    }

    /// Ground to either side of ways, and all between them.
    pub(crate) fn needs_round_all(&mut self, ways: &[Way], half: f64) {
        /// Metres. An envelope need not follow a bend as closely as paint does.
        const COARSE: f64 = 0.01;
        if self.look.bare {
            return;
        }
        let round: Vec<Coord<f64>> = ways
            .iter()
            .flat_map(|way| way.line(0.0, 0.0, way.length(0.0), COARSE))
            .flat_map(|at| around(at, half))
            .collect();
        self.needs(hull(round));
    }

    /// Ground to run out on, straight ahead.
    pub(crate) fn needs_ahead(&mut self, pose: Pose, long: f64, half: f64) {
        /// A bend's last side lies this far, radians, off the way it ends in; its strip
        /// reaches farther at one corner.
        const OFF: f64 = 0.05;
        let long = long + half * OFF;
        self.needs(pose.polygon(&rect([-half, long], [-half, half])));
    }

    /// A place to turn: an open ring round a disc, open to the child who comes along the
    /// pose, with one chevron that says which way back.
    pub(crate) fn turn_ring(&mut self, pose: Pose, across: f64) {
        use std::f64::consts::PI;
        let look = self.look;
        let radius = (across - look.stroke) / 2.0;
        let open = 0.62 * PI;
        for (from, to) in [(0.12, open), (-0.12, -open)] {
            self.lay(Part::Bright, pose, |look| {
                let line = arc(Coord::default(), [radius; 2], from, to, look.flat);
                stroke(&line, look.stroke, look.flat)
            });
        }
        self.dot(Part::Bright, pose.at, look.pebble);
        let (sin, cos) = libm::sincos(-0.84 * PI);
        let back = Pose {
            at: pose.point(radius * cos, radius * sin),
            turn: pose.turn + 0.68 * PI,
        };
        self.chevron(Part::Bright, back);
    }
}
