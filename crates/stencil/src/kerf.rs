//! Where the tool runs.

use geo::{Coord, LineString, MultiPolygon, Polygon};

use crate::material::Rules;
use crate::result::Opening;
use crate::shape::{bounds, grown, rect, rings, settled};

/// Where the tool's middle runs: half a kerf into the waste, which lies within an opening
/// or a hole and outside the plate.
pub(crate) fn cuts(
    plate: &Polygon<f64>,
    openings: &[Opening],
    holes: &[Coord<f64>],
    rules: &Rules,
) -> Vec<LineString<f64>> {
    let half = rules.kerf / 2.0;
    let mut cuts = Vec::new();
    for opening in openings {
        let inset = grown(&MultiPolygon(vec![opening.polygon.clone()]), -half);
        cuts.extend(inset.iter().flat_map(rings).cloned());
    }
    // a tool as broad as the hole makes it by going down and up
    let radius = rules.hole / 2.0 - half;
    if radius > 0.0 {
        cuts.extend(holes.iter().map(|hole| circle(*hole, radius)));
    }
    let outside = bounds([plate]).map(|room| {
        let by = Coord { x: half, y: half };
        rect(room.min() - by, room.max() + by).exterior().clone()
    });
    cuts.extend(outside);
    cuts.into_iter()
        .map(|ring| LineString(ring.coords().map(|at| settled(*at)).collect()))
        .collect()
}

/// A small hole as a polygon: 24 sides, at 3 mm 0.03 mm off the arc at most.
fn circle(at: Coord<f64>, radius: f64) -> LineString<f64> {
    const SIDES: u32 = 24;
    let mut ring: Vec<Coord<f64>> = (0..SIDES)
        .map(|side| {
            let turn = std::f64::consts::TAU * f64::from(side) / f64::from(SIDES);
            let (sin, cos) = libm::sincos(turn);
            at + Coord { x: cos, y: sin } * radius
        })
        .collect();
    ring.extend(ring.first().copied());
    LineString(ring)
}
