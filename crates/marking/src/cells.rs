//! Cells: a band round a bare eye, with joints that tie the stencil and show the way.

use geo::{Coord, Polygon};

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::figure::{Outline, Takes};
use crate::shape::{Pose, disc, rect, rounded, slab, without};
use crate::signs::half_moon;

/// Share of a cell's breadth that half its heel bar takes.
#[derive(Clone, Copy)]
struct Heel(f64);

const HEEL_RING: Heel = Heel(0.14);
const HEEL_SQUARE: Heel = Heel(0.186);
const HEEL_BROAD: Heel = Heel(0.195);
/// Of an eye's breadth.
const HEEL_FIELD: Heel = Heel(0.33);

impl Canvas<'_> {
    /// A band round a bare eye with its three joints, the way along x: one in front, two
    /// behind that cut off the heel bar.
    ///
    /// - `outlines`: outer and inner
    pub(crate) fn band(
        &mut self,
        pose: Pose,
        parts: [Part; 2],
        outlines: impl FnOnce() -> [Polygon<f64>; 2],
        heel: f64,
    ) {
        const FAR: f64 = 9.0;
        if self.look.bare {
            return;
        }
        let [outer, inner] = outlines();
        let joint = self.look.joint;
        let cut = [
            inner,
            rect([0.0, FAR], [-joint / 2.0, joint / 2.0]),
            rect([-FAR, 0.0], [heel, heel + joint]),
            rect([-FAR, 0.0], [-heel - joint, -heel]),
        ];
        for piece in without(&outer, &cut) {
            // the heel bar is the piece that lies across the way behind
            let bar = piece
                .exterior()
                .coords()
                .all(|at| at.x < 0.0 && at.y.abs() < heel + joint / 2.0);
            self.lay(if bar { parts[1] } else { parts[0] }, pose, |_| piece);
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
        self.ring_band(pose, across, parts);
        let outline = Outline::Disc {
            radius: across / 2.0,
        };
        self.cell(id, outline, pose.at, Takes::One)
    }

    /// The bands of a ring, no cell.
    fn ring_band(&mut self, pose: Pose, across: f64, parts: [Part; 2]) {
        let look = self.look;
        let round = |radius: f64| disc(Coord::default(), radius, look.flat);
        let outlines = || [across / 2.0, across / 2.0 - look.band].map(round);
        self.band(pose, parts, outlines, HEEL_RING.0 * across);
    }

    /// The bands of a rounded square, no cell.
    fn square_band(&mut self, pose: Pose, side: f64, parts: [Part; 2]) {
        let look = self.look;
        let eye = side - 2.0 * look.band;
        let outlines = || {
            [(side, look.corner), (eye, look.corner_inner)]
                .map(|(side, corner)| slab(side, side, corner, look.flat))
        };
        self.band(pose, parts, outlines, HEEL_SQUARE.0 * side);
    }

    /// Numerals in an eye, with the stencil's web to the band all round.
    ///
    /// - `cell`: the cell's depth and breadth, metres
    pub(crate) fn numbered(&mut self, numerals: &str, part: Part, pose: Pose, cell: [f64; 2]) {
        let look = self.look;
        let room = cell.map(|size| size / 2.0 - look.band - look.web - look.flat);
        self.numerals(numerals, part, pose, room);
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
        self.numbered(numeral.encode_utf8(&mut [0; 4]), parts[0], pose, [side; 2]);
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
            self.numbered(numeral.encode_utf8(&mut [0; 4]), parts[0], own, [side; 2]);
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
        self.oval(id, pose, [deep, deep * self.look.broad], parts)
    }

    /// A broad cell of its own depth and breadth, for both feet.
    pub fn oval(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        [deep, breadth]: [f64; 2],
        parts: [Part; 2],
    ) -> usize {
        let look = self.look;
        let outer = slab(deep, breadth, look.corner_broad, look.flat);
        let inner = || {
            slab(
                deep - 2.0 * look.band,
                breadth - 2.0 * look.band,
                look.corner_broad - look.band,
                look.flat,
            )
        };
        let outlines = || [outer.clone(), inner()];
        self.band(pose, parts, outlines, HEEL_BROAD.0 * breadth);
        self.cell(
            id,
            Outline::Polygon(pose.polygon(&outer)),
            pose.at,
            Takes::Both,
        )
    }

    /// Two rings side by side, one for each foot.
    pub fn rings(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        across: f64,
        parts: [Part; 2],
    ) -> usize {
        let look = self.look;
        let apart = across + look.gap;
        for aside in [apart / 2.0, -apart / 2.0] {
            let own = Pose {
                at: pose.point(0.0, aside),
                ..pose
            };
            self.ring_band(own, across, parts);
        }
        let whole = slab(across, across + apart, across / 2.0, look.flat);
        self.cell(
            id,
            Outline::Polygon(pose.polygon(&whole)),
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
        let outlines = || [outer.clone(), shape(look.band, look.corner_inner)];
        self.band(pose, parts, outlines, HEEL_BROAD.0 * breadth);
        self.cell(
            id,
            Outline::Polygon(pose.polygon(&outer)),
            pose.at,
            Takes::Both,
        )
    }

    /// A field of any shape for one foot or both: a band between its outlines.
    pub fn field(
        &mut self,
        id: impl Into<String>,
        pose: Pose,
        parts: [Part; 2],
        outer: &Polygon<f64>,
        inner: impl FnOnce() -> Polygon<f64>,
    ) -> usize {
        // a heel bar as long as an eye is broad at the least
        let heel = self.look.eye * HEEL_FIELD.0;
        self.band(pose, parts, || [outer.clone(), inner()], heel);
        self.cell(
            id,
            Outline::Polygon(pose.polygon(outer)),
            pose.at,
            Takes::Both,
        )
    }

    /// A start half-moon, its flat side at the pose, and its cell: toes at the flat side.
    pub fn start(&mut self, id: impl Into<String>, pose: Pose, breadth: f64) -> usize {
        let shape = half_moon(self.look, breadth);
        self.lay(Part::Bright, pose, |_| shape.clone());
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
}
