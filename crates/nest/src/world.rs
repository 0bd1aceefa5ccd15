//! The parts ready for the search: poses, no-fit polygons, tolerance.

use std::ops::Range;
use std::sync::OnceLock;

use crate::convex::{self, Point};
use crate::fit::Fit;
use crate::part::{Part, sine_and_cosine};
use crate::simple::simpler;

/// Share of the largest length in the question. Two parts that overlap by no more only touch:
/// sums of doubles of that size are good to some 1e-15, and a crack this deep along a part is far
/// below 1e-9 of its area.
const TOUCH: f64 = 1e-12;

/// Poses aimed at, all parts together. Each two may need a no-fit polygon of some kilobytes: 100
/// MB then.
const POSES: usize = 160;
/// Turns that a part keeps however many parts there are.
const LEAST: usize = 4;

/// A part in one of its turns, about the part's origin.
#[derive(Debug)]
pub(crate) struct Pose {
    pub(crate) part: usize,
    pub(crate) turn: f64,
    pub(crate) low: Point,
    pub(crate) high: Point,
    pieces: Vec<Vec<Point>>,
}

impl Pose {
    pub(crate) fn size(&self, axis: usize) -> f64 {
        self.high[axis] - self.low[axis]
    }
}

/// Where a copy lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spot {
    pub(crate) pose: usize,
    pub(crate) at: Point,
}

/// The rectangle that parts must lie in.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Room {
    pub(crate) low: Point,
    pub(crate) high: Point,
}

/// All that does not change while parts are moved.
#[derive(Debug)]
pub(crate) struct World {
    pub(crate) poses: Vec<Pose>,
    /// Poses of each part; none for an unsound outline.
    pub(crate) of_part: Vec<Range<usize>>,
    /// Area inside the outline of each part.
    pub(crate) areas: Vec<f64>,
    pub(crate) gap: f64,
    pub(crate) touch: f64,
    fits: Vec<OnceLock<Fit>>,
}

impl World {
    /// `extent` is the largest length of the sheet.
    pub(crate) fn new(parts: &[Part], gap: f64, extent: f64) -> World {
        let mut poses = Vec::new();
        let mut of_part = Vec::new();
        let mut areas = Vec::new();
        let mut largest = if extent.is_finite() { extent } else { 0.0 };
        let most = (POSES / parts.len().max(1)).max(LEAST);
        for (part, wanted) in parts.iter().enumerate() {
            let first = poses.len();
            let ring = convex::ring(&wanted.outline).unwrap_or_default();
            areas.push(convex::area(&ring));
            if !ring.is_empty() {
                let pieces = convex::pieces(&simpler(&ring));
                poses.extend(
                    wanted
                        .turns
                        .degrees(most)
                        .into_iter()
                        .map(|turn| pose(part, turn, &pieces)),
                );
            }
            of_part.push(first..poses.len());
        }
        for pose in &poses {
            largest = largest.max(pose.size(0)).max(pose.size(1));
        }
        let many = poses.len();
        World {
            poses,
            of_part,
            areas,
            gap: if gap > 0.0 { gap } else { 0.0 },
            touch: TOUCH * largest,
            fits: (0..many * many).map(|_| OnceLock::new()).collect(),
        }
    }

    /// Where pose b may not lie, seen from pose a.
    pub(crate) fn fit(&self, a: usize, b: usize) -> &Fit {
        let made = || Fit::new(&self.poses[a].pieces, &self.poses[b].pieces, self.gap);
        self.fits[a * self.poses.len() + b].get_or_init(made)
    }

    /// How deep two spots overlap; 0 where they only touch.
    pub(crate) fn depth(&self, a: Spot, b: Spot) -> f64 {
        let (p, q) = (&self.poses[a.pose], &self.poses[b.pose]);
        for axis in 0..2 {
            let from = b.at[axis] - a.at[axis];
            if from >= p.high[axis] - q.low[axis] + self.gap
                || -from >= q.high[axis] - p.low[axis] + self.gap
            {
                return 0.0;
            }
        }
        let depth = self
            .fit(a.pose, b.pose)
            .depth([b.at[0] - a.at[0], b.at[1] - a.at[1]]);
        if depth > self.touch { depth } else { 0.0 }
    }

    /// Where a pose's origin may lie so that it is in the room. A pose that fills the room to
    /// within the touch fits.
    pub(crate) fn range(&self, pose: usize, room: &Room) -> Option<Room> {
        let pose = &self.poses[pose];
        let mut range = *room;
        for axis in 0..2 {
            range.low[axis] -= pose.low[axis];
            range.high[axis] -= pose.high[axis];
            let spare = range.high[axis] - range.low[axis];
            if spare.is_nan() || spare < -self.touch {
                return None;
            }
            range.high[axis] = range.high[axis].max(range.low[axis]);
        }
        Some(range)
    }

    /// Whether any turn of the part lies in the room.
    pub(crate) fn fits_in(&self, part: usize, room: &Room) -> bool {
        self.of_part[part]
            .clone()
            .any(|pose| self.range(pose, room).is_some())
    }

    /// How far right a spot reaches.
    pub(crate) fn right(&self, spot: Spot) -> f64 {
        spot.at[0] + self.poses[spot.pose].high[0]
    }
}

fn pose(part: usize, turn: f64, pieces: &[Vec<Point>]) -> Pose {
    let (sin, cos) = sine_and_cosine(turn);
    let turned = |&[x, y]: &Point| [x * cos - y * sin, x * sin + y * cos];
    let pieces: Vec<Vec<Point>> = pieces
        .iter()
        .map(|piece| piece.iter().map(turned).collect())
        .collect();
    let mut low = [f64::INFINITY; 2];
    let mut high = [f64::NEG_INFINITY; 2];
    for p in pieces.iter().flatten() {
        for axis in 0..2 {
            low[axis] = low[axis].min(p[axis]);
            high[axis] = high[axis].max(p[axis]);
        }
    }
    Pose {
        part,
        turn,
        low,
        high,
        pieces,
    }
}
