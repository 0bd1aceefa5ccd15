//! Placements held against the question: overlaps, gaps, edges.
//!
//! Nothing of the no-fit polygons is used here. Outlines are laid as a cutter would lay them,
//! pieces clipped against pieces (Sutherland and Hodgman 1974) and distances measured from edge
//! to edge.

use geo::{BoundingRect, Distance, Euclidean, LineString, Polygon};

use crate::convex::{self, Point};
use crate::part::{Part, Placement};
use crate::sheet::Sheet;

/// Share of a sheet's longer side, or of the smaller part's area. Outlines laid in doubles are
/// right to some 1e-15; four orders are left for corners met at a slant.
const SLACK: f64 = 1e-11;

/// What is wrong with placements.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// Two placements, by index, overlap by this share of the smaller outline's area.
    Overlap(usize, usize, f64),
    /// Two placements are nearer than the gap: their distance.
    Near(usize, usize, f64),
    /// A placement reaches into the margin or past the sheet, by this much.
    Outside(usize, f64),
    /// A placement names a part that there is not.
    Unknown(usize),
}

/// All faults of the placements of one sheet. Outlines count as filled.
pub fn check(parts: &[Part], sheet: &Sheet, placements: &[Placement]) -> Vec<Fault> {
    let mut faults = Vec::new();
    let slack = SLACK * sheet.width.max(sheet.height);
    let mut laid: Vec<(usize, Polygon<f64>, Vec<Vec<Point>>)> = Vec::new();
    for (nth, placement) in placements.iter().enumerate() {
        let Some(part) = parts.get(placement.part) else {
            faults.push(Fault::Unknown(nth));
            continue;
        };
        let filled = Polygon::new(part.outline.exterior().clone(), Vec::new());
        let outline = placement.lay(&filled);
        if let Some(out) = outside(sheet, &outline).filter(|out| *out > slack) {
            faults.push(Fault::Outside(nth, out));
        }
        let pieces = convex::ring(&outline).map(|ring| convex::pieces(&ring));
        laid.push((nth, outline, pieces.unwrap_or_default()));
    }
    for (k, a) in laid.iter().enumerate() {
        for b in &laid[k + 1..] {
            if apart(&a.1, &b.1, sheet.gap) {
                continue;
            }
            let overlap = common_area(&a.2, &b.2) / total(&a.2).min(total(&b.2));
            if overlap > SLACK {
                faults.push(Fault::Overlap(a.0, b.0, overlap));
                continue;
            }
            let line = |polygon: &Polygon<f64>| -> LineString<f64> { polygon.exterior().clone() };
            let distance = Euclidean.distance(&line(&a.1), &line(&b.1));
            if distance < sheet.gap - slack {
                faults.push(Fault::Near(a.0, b.0, distance));
            }
        }
    }
    faults
}

/// How far an outline reaches past the sheet less its margin.
fn outside(sheet: &Sheet, outline: &Polygon<f64>) -> Option<f64> {
    let rect = outline.bounding_rect()?;
    let past = [
        sheet.margin - rect.min().x,
        sheet.margin - rect.min().y,
        rect.max().x - (sheet.width - sheet.margin),
        rect.max().y - (sheet.height - sheet.margin),
    ];
    Some(past.into_iter().fold(f64::NEG_INFINITY, f64::max))
}

/// Whether the boxes alone are a gap apart.
fn apart(a: &Polygon<f64>, b: &Polygon<f64>, gap: f64) -> bool {
    let (Some(a), Some(b)) = (a.bounding_rect(), b.bounding_rect()) else {
        return true;
    };
    let far = |low: f64, high: f64| low - high > gap;
    far(b.min().x, a.max().x)
        || far(a.min().x, b.max().x)
        || far(b.min().y, a.max().y)
        || far(a.min().y, b.max().y)
}

fn total(pieces: &[Vec<Point>]) -> f64 {
    pieces.iter().map(|piece| convex::area(piece)).sum()
}

fn common_area(a: &[Vec<Point>], b: &[Vec<Point>]) -> f64 {
    let pairs = a.iter().flat_map(|p| b.iter().map(move |q| (p, q)));
    pairs
        .map(|(p, q)| convex::area(&clipped(p, q)).max(0.0))
        .sum()
}

/// What of a convex ring lies in another.
fn clipped(ring: &[Point], by: &[Point]) -> Vec<Point> {
    let mut left = ring.to_vec();
    for k in 0..by.len() {
        let (from, to) = (by[k], by[(k + 1) % by.len()]);
        let side =
            |p: Point| (to[0] - from[0]) * (p[1] - from[1]) - (to[1] - from[1]) * (p[0] - from[0]);
        let mut kept = Vec::with_capacity(left.len() + 1);
        for (nth, &p) in left.iter().enumerate() {
            let q = left[(nth + 1) % left.len()];
            let (at_p, at_q) = (side(p), side(q));
            if at_p >= 0.0 {
                kept.push(p);
            }
            if (at_p > 0.0 && at_q < 0.0) || (at_p < 0.0 && at_q > 0.0) {
                let share = at_p / (at_p - at_q);
                kept.push([p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]);
            }
        }
        left = kept;
    }
    left
}
