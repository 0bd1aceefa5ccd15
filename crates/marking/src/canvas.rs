//! A figure in the making: the parts of the look (section 1), laid one by one.

use geo::{Coord, Polygon, coord};

use crate::colour::Part;
use crate::figure::{Cell, Figure, Lane, LaneKind, Outline, Paint, Takes};
use crate::look::Look;
use crate::shape::{Pose, disc, rect, ring, rounded, slab, stroke, together, without};
use crate::way::Way;

/// What a family draws on.
pub struct Canvas<'a> {
    /// Sizes and paints.
    pub look: &'a Look,
    paint: Vec<Paint>,
    /// Cells so far.
    pub cells: Vec<Cell>,
    lanes: Vec<Lane>,
    wait: Vec<Coord<f64>>,
    needs: Vec<Polygon<f64>>,
}

/// Share of a cell's breadth that half its heel bar takes.
#[derive(Clone, Copy)]
struct Heel(f64);

const HEEL_RING: Heel = Heel(0.14);
const HEEL_SQUARE: Heel = Heel(0.186);
const HEEL_BROAD: Heel = Heel(0.195);

impl<'a> Canvas<'a> {
    /// A bare one.
    pub fn new(look: &'a Look) -> Canvas<'a> {
        Canvas {
            look,
            paint: Vec::new(),
            cells: Vec::new(),
            lanes: Vec::new(),
            wait: Vec::new(),
            needs: Vec::new(),
        }
    }

    /// Paints a shape of the part's frame.
    pub fn lay(&mut self, part: Part, pose: Pose, shape: &Polygon<f64>) {
        let colour = self.look.palette.colour(part);
        self.paint.push(Paint {
            colour,
            polygon: pose.polygon(shape),
        });
    }

    /// A band round a bare eye with its three joints, the way along x: one in front, two
    /// behind that cut off the heel bar.
    fn band(
        &mut self,
        pose: Pose,
        parts: [Part; 2],
        outer: &Polygon<f64>,
        inner: Polygon<f64>,
        heel: f64,
    ) {
        const FAR: f64 = 9.0;
        let joint = self.look.joint;
        let cut = [
            inner,
            rect([0.0, FAR], [-joint / 2.0, joint / 2.0]),
            rect([-FAR, 0.0], [heel, heel + joint]),
            rect([-FAR, 0.0], [-heel - joint, -heel]),
        ];
        for piece in without(outer, &cut) {
            // the heel bar is the piece that lies across the way behind
            let bar = piece
                .exterior()
                .coords()
                .all(|at| at.x < 0.0 && at.y.abs() < heel + joint / 2.0);
            self.lay(if bar { parts[1] } else { parts[0] }, pose, &piece);
        }
    }

    /// A ring for one foot.
    pub fn ring(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        across: f64,
        parts: [Part; 2],
    ) -> usize {
        let flat = self.look.flat;
        let (outer, inner) = (
            disc(Coord::default(), across / 2.0, flat),
            disc(Coord::default(), across / 2.0 - self.look.band, flat),
        );
        self.band(pose, parts, &outer, inner, HEEL_RING.0 * across);
        let outline = Outline::Disc {
            radius: across / 2.0,
        };
        self.cell(id, outline, pose.at, Takes::One)
    }

    /// The bands of a rounded square, no cell.
    fn square_band(&mut self, pose: Pose, side: f64, parts: [Part; 2]) {
        let look = self.look;
        let outer = slab(side, side, look.corner, look.flat);
        let eye = side - 2.0 * look.band;
        let inner = slab(eye, eye, look.corner_inner, look.flat);
        self.band(pose, parts, &outer, inner, HEEL_SQUARE.0 * side);
    }

    /// A rounded square for one foot, a numeral in its eye.
    pub fn square(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        side: f64,
        parts: [Part; 2],
        numeral: char,
    ) -> usize {
        self.square_band(pose, side, parts);
        self.numeral(numeral, parts[0], pose);
        let outline =
            Outline::Polygon(pose.polygon(&slab(side, side, self.look.corner, self.look.flat)));
        self.cell(id, outline, pose.at, Takes::One)
    }

    /// Two squares side by side for both feet, the smaller numeral on the left.
    pub fn squares(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        side: f64,
        parts: [Part; 2],
        numerals: [char; 2],
    ) -> usize {
        let apart = side + self.look.gap;
        for (numeral, aside) in numerals.into_iter().zip([apart / 2.0, -apart / 2.0]) {
            let own = Pose {
                at: pose.point(0.0, aside),
                ..pose
            };
            self.square_band(own, side, parts);
            self.numeral(numeral, parts[0], own);
        }
        let whole = slab(side, side + apart, self.look.corner, self.look.flat);
        self.cell(
            id,
            Outline::Polygon(pose.polygon(&whole)),
            pose.at,
            Takes::Both,
        )
    }

    /// A broad cell across the way, for both feet.
    pub fn broad(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        deep: f64,
        parts: [Part; 2],
    ) -> usize {
        let look = self.look;
        let breadth = deep * look.broad;
        let outer = slab(deep, breadth, look.corner_broad, look.flat);
        let inner = slab(
            deep - 2.0 * look.band,
            breadth - 2.0 * look.band,
            look.corner_broad - look.band,
            look.flat,
        );
        self.band(pose, parts, &outer, inner, HEEL_BROAD.0 * breadth);
        self.cell(
            id,
            Outline::Polygon(pose.polygon(&outer)),
            pose.at,
            Takes::Both,
        )
    }

    /// A home for both feet: straight behind, round ahead.
    pub fn home(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        deep: f64,
        breadth: f64,
        parts: [Part; 2],
    ) -> usize {
        let look = self.look;
        let shape = |inset: f64, behind: f64| {
            let (x, y) = (deep / 2.0 - inset, breadth / 2.0 - inset);
            let round = (deep - look.corner - look.gap).min(breadth / 2.0) - inset;
            rounded(
                &[
                    (-x, -y, behind),
                    (x, -y, round),
                    (x, y, round),
                    (-x, y, behind),
                ],
                look.flat,
            )
        };
        let outer = shape(0.0, look.corner);
        self.band(
            pose,
            parts,
            &outer,
            shape(look.band, look.corner_inner),
            HEEL_BROAD.0 * breadth,
        );
        self.cell(
            id,
            Outline::Polygon(pose.polygon(&outer)),
            pose.at,
            Takes::Both,
        )
    }

    /// A start half-moon, its flat side at the pose, and its cell: toes at the flat side.
    pub fn start(&mut self, id: impl Into<String>, pose: Pose, breadth: f64) -> usize {
        let shape = self.half_moon(breadth);
        self.lay(Part::Bright, pose, &shape);
        let centre = pose.point(-self.look.stand, 0.0);
        let start = self.cell(
            id,
            Outline::Polygon(pose.polygon(&shape)),
            centre,
            Takes::Either,
        );
        if let Some(cell) = self.cells.get_mut(start) {
            cell.start = true;
            cell.end = false;
        }
        start
    }

    /// A start half-moon that is no cell: where a lane or a bank begins.
    pub fn start_mark(&mut self, pose: Pose, breadth: f64) {
        let shape = self.half_moon(breadth);
        self.lay(Part::Bright, pose, &shape);
    }

    fn half_moon(&self, breadth: f64) -> Polygon<f64> {
        // the flat side's corners are eased, and the back is a half ellipse
        const EASE: f64 = 0.03;
        let (flat, half) = (self.look.flat, breadth / 2.0);
        let centre = coord! { x: -EASE, y: 0.0 };
        let quarter = std::f64::consts::FRAC_PI_2;
        let mut outline = arc_of(centre, [half * 0.9, half], quarter, 3.0 * quarter, flat);
        outline.extend(arc_of(
            coord! { x: -EASE, y: -half + EASE },
            [EASE; 2],
            -quarter,
            0.0,
            flat,
        ));
        outline.extend(arc_of(
            coord! { x: -EASE, y: half - EASE },
            [EASE; 2],
            0.0,
            quarter,
            flat,
        ));
        outline.dedup_by(|a, b| libm::hypot(a.x - b.x, a.y - b.y) < 1e-9);
        ring(outline)
    }

    /// A chevron that says go, its point ahead.
    pub fn chevron(&mut self, part: Part, pose: Pose) {
        let look = self.look;
        let half = look.chevron / 2.0;
        let line = [
            coord! { x: -half * 0.8, y: half },
            coord! { x: half * 0.2, y: 0.0 },
            coord! { x: -half * 0.8, y: -half },
        ];
        let shape = stroke(&line, look.chevron_stroke, look.flat);
        self.lay(part, pose, &shape);
    }

    /// A bar across the way: one roll swaps, two stop.
    pub fn bar(&mut self, pose: Pose, rolls: f64, breadth: f64) {
        let deep = self.look.roll * rolls;
        let shape = slab(deep, breadth, deep / 2.0, self.look.flat);
        self.lay(Part::Plain, pose, &shape);
    }

    /// A dot.
    pub fn dot(&mut self, part: Part, at: Coord<f64>, across: f64) {
        let shape = disc(Coord::default(), across / 2.0, self.look.flat);
        self.lay(part, Pose { at, turn: 0.0 }, &shape);
    }

    /// A short stroke along the pose.
    pub fn ripple(&mut self, pose: Pose, length: f64) {
        let breadth = self.look.ripple[0];
        let shape = slab(length, breadth, breadth / 2.0, self.look.flat);
        self.lay(Part::Crumb, pose, &shape);
    }

    /// A numeral that faces the child who arrives.
    pub fn numeral(&mut self, numeral: char, part: Part, pose: Pose) {
        let upright = pose.turned(-std::f64::consts::FRAC_PI_2);
        for piece in self.look.glyphs.get(&numeral).into_iter().flatten() {
            self.lay(part, upright, piece);
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
        self.needs.push(hull(ground));
    }

    /// A roller stroke along a line beside a way, in pieces.
    pub fn strokes(&mut self, part: impl Fn(usize) -> Part, way: &Way, aside: f64) {
        let look = self.look;
        let long = way.length(aside);
        let pieces = ((long + look.piece_gap) / (look.piece + look.piece_gap))
            .round()
            .max(1.0);
        let piece = (long - (pieces - 1.0) * look.piece_gap) / pieces;
        for index in 0..pieces as usize {
            let from = index as f64 * (piece + look.piece_gap);
            // the round ends stand half a stroke past the line
            let line = way.line(
                aside,
                from + look.stroke / 2.0,
                from + piece - look.stroke / 2.0,
                look.flat,
            );
            let shape = stroke(&line, look.stroke, look.flat);
            self.lay(part(index), Pose::at(0.0, 0.0), &shape);
        }
    }

    /// A place to turn, wheels too: an open ring round a disc, with one chevron that says
    /// which way back.
    pub fn turning(&mut self, at: Coord<f64>) {
        let look = self.look;
        let radius = (look.turn + look.stroke) / 2.0;
        let open = 0.62 * std::f64::consts::PI;
        for (from, to) in [(0.12, open), (-0.12, -open)] {
            let line = arc_of(at, [radius; 2], from, to, look.flat);
            let shape = stroke(&line, look.stroke, look.flat);
            self.lay(Part::Bright, Pose::at(0.0, 0.0), &shape);
        }
        self.dot(Part::Bright, at, look.pebble);
        let (sin, cos) = libm::sincos(-0.84 * std::f64::consts::PI);
        let back = Pose {
            at: coord! { x: at.x + radius * cos, y: at.y + radius * sin },
            turn: 0.68 * std::f64::consts::PI,
        };
        self.chevron(Part::Bright, back);
    }

    /// A lane that is travelled.
    pub fn lane(&mut self, kind: LaneKind, way: &Way, width: f64) {
        let line = way.line(0.0, 0.0, way.length(0.0), self.look.flat);
        self.lanes.push(Lane {
            kind,
            line: geo::LineString(line),
            width,
            pieces: way.pieces(),
        });
    }

    fn cell(
        &mut self,
        id: impl Into<String>,
        outline: Outline,
        centre: Coord<f64>,
        takes: Takes,
    ) -> usize {
        self.cells.push(Cell {
            id: id.into(),
            outline,
            centre,
            takes,
            start: false,
            end: true,
            next: Some(Vec::new()),
            run_up: false,
        });
        self.cells.len() - 1
    }

    /// A cell that is no painted thing of its own, as along a bank.
    pub fn spot(
        &mut self,
        id: impl Into<String>,
        centre: Coord<f64>,
        radius: f64,
        takes: Takes,
    ) -> usize {
        self.cell(id, Outline::Disc { radius }, centre, takes)
    }

    /// Lets each of these cells follow the one before.
    pub fn chain(&mut self, cells: &[usize]) {
        for pair in cells.windows(2) {
            if let [from, to] = pair
                && let Some(cell) = self.cells.get_mut(*from)
            {
                cell.next = Some(vec![*to]);
            }
        }
    }

    /// Ground that the figure needs in use.
    pub fn needs(&mut self, shape: Polygon<f64>) {
        self.needs.push(shape);
    }

    /// The figure, rounded as it is handed on.
    pub fn figure(self, family: &str, lengths: Vec<(String, f64)>, tracks: u32) -> Figure {
        let envelope = together(&self.needs)
            .into_iter()
            .next()
            .map(|largest| Polygon::new(largest.exterior().clone(), Vec::new()))
            .unwrap_or_else(|| ring(Vec::new()));
        Figure {
            family: family.to_owned(),
            lengths,
            paint: self.paint,
            cells: self.cells,
            facing: None,
            lanes: self.lanes,
            tracks,
            wait: self.wait,
            envelope,
        }
        .rounded()
    }
}

fn arc_of(centre: Coord<f64>, radii: [f64; 2], from: f64, to: f64, flat: f64) -> Vec<Coord<f64>> {
    crate::shape::arc(centre, radii, from, to, flat)
}

/// Eight corners round a spot, none nearer than `radius`.
fn around(spot: Coord<f64>, radius: f64) -> Vec<Coord<f64>> {
    let eighth = std::f64::consts::FRAC_PI_4;
    let out = radius / libm::cos(eighth / 2.0);
    (0..8)
        .map(|corner| {
            let (sin, cos) = libm::sincos(eighth * (f64::from(corner) + 0.5));
            coord! { x: spot.x + out * cos, y: spot.y + out * sin }
        })
        .collect()
}

/// The least convex shape round points.
fn hull(points: Vec<Coord<f64>>) -> Polygon<f64> {
    use geo::ConvexHull;
    geo::MultiPoint::from(points).convex_hull()
}
