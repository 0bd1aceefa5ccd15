//! Signs: starts, chevrons, bars, numerals, pebbles, strokes, and the place to turn.

use geo::{Coord, Polygon, coord};

use crate::canvas::{Canvas, around, hull};
use crate::colour::Part;
use crate::look::Look;
use crate::shape::{Pose, arc, disc, map, ring, slab, stroke};
use crate::way::Way;

impl Canvas<'_> {
    /// A start half-moon that is no cell: where a lane or a bank begins.
    pub fn start_mark(&mut self, pose: Pose, breadth: f64) {
        self.lay(Part::Bright, pose, |look| half_moon(look, breadth));
    }

    /// A chevron that says go, its point ahead.
    pub fn chevron(&mut self, part: Part, pose: Pose) {
        let half = self.look.chevron / 2.0;
        let line = [
            coord! { x: -half * 0.8, y: half },
            coord! { x: half * 0.2, y: 0.0 },
            coord! { x: -half * 0.8, y: -half },
        ];
        self.lay(part, pose, |look| {
            stroke(&line, look.chevron_stroke, look.flat)
        });
    }

    /// A chevron in an eye that says which way to face; smaller, with bare ground round it.
    pub fn go_in_eye(&mut self, part: Part, pose: Pose) {
        let half = self.look.eye * 0.29;
        let line = [
            coord! { x: -half * 0.5, y: half },
            coord! { x: half * 0.5, y: 0.0 },
            coord! { x: -half * 0.5, y: -half },
        ];
        self.lay(part, pose, |look| {
            stroke(&line, look.chevron_stroke / 2.0, look.flat)
        });
    }

    /// A bar across the way: one roll swaps, two stop.
    pub fn bar(&mut self, pose: Pose, rolls: f64, breadth: f64) {
        let deep = self.look.roll * rolls;
        self.lay(Part::Plain, pose, |look| {
            slab(deep, breadth, deep / 2.0, look.flat)
        });
    }

    /// A dot.
    pub fn dot(&mut self, part: Part, at: Coord<f64>, across: f64) {
        self.lay(part, Pose { at, turn: 0.0 }, |look| {
            disc(Coord::default(), across / 2.0, look.flat)
        });
    }

    /// A short stroke along the pose.
    pub fn ripple(&mut self, pose: Pose, length: f64) {
        let breadth = self.look.ripple[0];
        self.lay(Part::Crumb, pose, |look| {
            slab(length, breadth, breadth / 2.0, look.flat)
        });
    }

    /// Numerals or letters side by side that face the child who arrives, drawn smaller where
    /// they would reach out of their room.
    ///
    /// - `room`: before and behind their middle, and to either side of it, metres
    pub fn numerals(&mut self, numerals: &str, part: Part, pose: Pose, room: [f64; 2]) {
        let look = self.look;
        if look.bare {
            return;
        }
        let glyph = |character: char| look.glyphs.get(&character).into_iter().flatten();
        // a glyph's middle is its origin
        let half = |character: char, of: fn(&Coord<f64>) -> f64| {
            let corners = glyph(character).flat_map(|one| one.exterior().coords());
            corners.map(|at| of(at).abs()).fold(0.0, f64::max)
        };
        let broad = |character: char| 2.0 * half(character, |at| at.x);
        let gap = look.joint;
        let whole: f64 = numerals.chars().map(|one| broad(one) + gap).sum::<f64>() - gap;
        let high = numerals
            .chars()
            .map(|one| half(one, |at| at.y))
            .fold(look.cap / 2.0, f64::max);
        let scale = (room[0] / high).min(2.0 * room[1] / whole).min(1.0);
        let upright = pose.turned(-std::f64::consts::FRAC_PI_2);
        let mut left = -scale * whole / 2.0;
        for character in numerals.chars() {
            let broad = scale * broad(character);
            let own = upright.ahead(left + broad / 2.0);
            for piece in glyph(character) {
                self.lay(part, own, |_| map(piece, |at| at * scale));
            }
            left += broad + scale * gap;
        }
    }

    /// Pebbles to wait on, round `at`, from one angle on, in steps of the pebbles' distance;
    /// `side` 1 goes on anticlockwise, -1 clockwise. The ground from there to `door`, where
    /// the way begins, is needed too.
    pub fn pebbles(
        &mut self,
        at: Coord<f64>,
        radius: f64,
        from: f64,
        side: f64,
        count: u32,
        door: Coord<f64>,
    ) {
        let step = 2.0 * libm::asin((self.look.pebble_apart / 2.0 / radius).min(1.0));
        let mut ground = around(door, self.look.wait_round);
        for pebble in 0..count {
            let (sin, cos) = libm::sincos(from + side * step * f64::from(pebble));
            let spot = coord! { x: at.x + radius * cos, y: at.y + radius * sin };
            self.dot(Part::Crumb, spot, self.look.pebble);
            self.wait.push(spot);
            ground.extend(around(spot, self.look.wait_round));
        }
        if !self.look.bare {
            self.needs(hull(ground));
        }
    }

    /// A roller stroke along a line beside a way, in pieces.
    pub fn strokes(&mut self, part: impl Fn(usize) -> Part, way: &Way, aside: f64) {
        self.strokes_of(part, way, aside, self.look.stroke);
    }

    /// A stroke of a breadth, in pieces.
    pub fn strokes_of(
        &mut self,
        part: impl Fn(usize) -> Part,
        way: &Way,
        aside: f64,
        breadth: f64,
    ) {
        let look = self.look;
        let long = way.length(aside);
        let pieces = ((long + look.piece_gap) / (look.piece + look.piece_gap))
            .round()
            .max(1.0);
        let piece = (long - (pieces - 1.0) * look.piece_gap) / pieces;
        for index in 0..pieces as usize {
            let from = index as f64 * (piece + look.piece_gap);
            // the round ends stand half a stroke past the line
            let (from, to) = (from + breadth / 2.0, from + piece - breadth / 2.0);
            self.lay(part(index), Pose::at(0.0, 0.0), |look| {
                stroke(&way.line(aside, from, to, look.flat), breadth, look.flat)
            });
        }
    }

    /// A place to turn, wheels too, at the end of a way along +x.
    pub fn turning(&mut self, at: Coord<f64>) {
        let across = self.look.turn + 2.0 * self.look.stroke;
        self.turn_ring(Pose { at, turn: 0.0 }, across);
    }
}

/// A start half-moon, its flat side at the origin.
pub(crate) fn half_moon(look: &Look, breadth: f64) -> Polygon<f64> {
    // the flat side's corners are eased, and the back is a half ellipse
    const EASE: f64 = 0.03;
    let (flat, half) = (look.flat, breadth / 2.0);
    let centre = coord! { x: -EASE, y: 0.0 };
    let quarter = std::f64::consts::FRAC_PI_2;
    let mut outline = arc(centre, [half * 0.9, half], quarter, 3.0 * quarter, flat);
    outline.extend(arc(
        coord! { x: -EASE, y: -half + EASE },
        [EASE; 2],
        -quarter,
        0.0,
        flat,
    ));
    outline.extend(arc(
        coord! { x: -EASE, y: half - EASE },
        [EASE; 2],
        0.0,
        quarter,
        flat,
    ));
    outline.dedup_by(|a, b| libm::hypot(a.x - b.x, a.y - b.y) < 1e-9);
    ring(outline)
}
