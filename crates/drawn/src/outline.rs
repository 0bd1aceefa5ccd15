//! Outlines: paths and strokes become clean polygons, and the paint on top wins.

use geo::{Area, BooleanOps, Buffer, Coord, LineString, MultiPolygon, Polygon, coord};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::float::simplify::SimplifyShape;
use kurbo::{Affine, BezPath, Cap, Join, PathEl, Shape as _, Stroke, StrokeOpts};

use crate::svg::largest;

/// How a path is stroked, in its own units.
#[derive(Clone, Debug, PartialEq)]
pub struct Ribbon {
    /// Breadth.
    pub width: f64,
    /// Ends.
    pub cap: Cap,
    /// Corners.
    pub join: Join,
    /// How long a pointed corner may be.
    pub miter: f64,
    /// Dashes and gaps.
    pub dashes: Vec<f64>,
    /// Where along the first it begins.
    pub dash_offset: f64,
}

/// Square metres: below this a ring is nothing but rounding of the overlay's grid.
const NOTHING: f64 = 1e-10;

/// The lines of a path in metres, none farther than `flat` off its curves.
pub fn lines(path: &BezPath, to: Affine, flat: f64) -> Vec<(Vec<Coord<f64>>, bool)> {
    let mut out: Vec<(Vec<Coord<f64>>, bool)> = Vec::new();
    let moved = to * path.clone();
    let mut put = |at: kurbo::Point, first: bool| {
        let at = coord! { x: at.x, y: at.y };
        match out.last_mut() {
            Some((line, false)) if !first => {
                if line.last() != Some(&at) {
                    line.push(at);
                }
            }
            _ => out.push((vec![at], false)),
        }
        true
    };
    let mut ends: Vec<usize> = Vec::new();
    let mut count = 0;
    kurbo::flatten(moved, flat, |element| {
        match element {
            PathEl::MoveTo(at) => {
                put(at, true);
                count += 1;
            }
            PathEl::LineTo(at) => {
                put(at, false);
            }
            PathEl::ClosePath => ends.push(count),
            // a flattened path has no curves left
            PathEl::QuadTo(_, at) | PathEl::CurveTo(_, _, at) => {
                put(at, false);
            }
        };
    });
    for end in ends {
        if let Some(one) = end.checked_sub(1).and_then(|end| out.get_mut(end)) {
            one.1 = true;
        }
    }
    out
}

/// What a path fills.
pub fn filled(path: &BezPath, to: Affine, rule: FillRule, flat: f64) -> MultiPolygon<f64> {
    let rings = lines(path, to, flat).into_iter().map(|(line, _)| line);
    clean(rings, rule)
}

/// What a stroke covers. Strokes turn as their path does under a skewed frame, so they are
/// made in the path's own units.
pub fn stroked(path: &BezPath, to: Affine, ribbon: &Ribbon, flat: f64) -> MultiPolygon<f64> {
    /// Dashes along one path past which they are a texture, not a shape.
    const DASHES: f64 = 2_000.0;
    /// A corner so pointed is a needle.
    const NEEDLE: f64 = 100.0;
    let tolerance = flat / 2.0 / largest(to);
    if !(tolerance.is_finite() && tolerance > 0.0 && ribbon.width > 0.0) {
        return MultiPolygon(Vec::new());
    }
    let mut style = Stroke::new(ribbon.width)
        .with_caps(ribbon.cap)
        .with_join(ribbon.join)
        .with_miter_limit(ribbon.miter.min(NEEDLE));
    let period: f64 = ribbon.dashes.iter().sum();
    let long = path.perimeter(tolerance);
    if period > 0.0 && long / period * (ribbon.dashes.len() as f64) < DASHES {
        style = style.with_dashes(ribbon.dash_offset, &ribbon.dashes);
    }
    let outline = kurbo::stroke(
        path.elements().iter().copied(),
        &style,
        &StrokeOpts::default(),
        tolerance,
    );
    let finite = outline.elements().iter().all(|element| match element {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => p.is_finite(),
        PathEl::QuadTo(p, q) => p.is_finite() && q.is_finite(),
        PathEl::CurveTo(p, q, r) => p.is_finite() && q.is_finite() && r.is_finite(),
        PathEl::ClosePath => true,
    });
    if !finite {
        return MultiPolygon(Vec::new());
    }
    filled(&outline, to, FillRule::NonZero, flat / 2.0)
}

/// Rings that may cross themselves and one another as simple polygons with holes.
pub fn clean(rings: impl Iterator<Item = Vec<Coord<f64>>>, rule: FillRule) -> MultiPolygon<f64> {
    let rings: Vec<Vec<[f64; 2]>> = rings
        .filter(|ring| ring.len() > 2)
        .map(|ring| ring.into_iter().map(|at| [at.x, at.y]).collect())
        .collect();
    if rings.is_empty() {
        return MultiPolygon(Vec::new());
    }
    let ring = |corners: Vec<[f64; 2]>| {
        let mut ring = LineString(
            corners
                .into_iter()
                .map(|[x, y]| coord! { x: x, y: y })
                .collect(),
        );
        ring.close();
        ring
    };
    let shapes = rings.simplify_shape(rule).into_iter().filter_map(|rings| {
        let mut rings = rings.into_iter().map(ring);
        let outer = rings.next()?;
        Some(Polygon::new(outer, rings.collect()))
    });
    MultiPolygon(
        shapes
            .filter(|shape| shape.unsigned_area() > NOTHING)
            .collect(),
    )
}

/// What of each layer is seen, the last on top; layers of one ink come together.
///
/// Pieces thinner than `sliver` are left out. Returns the ink's pieces in the order of the
/// inks, and how many slivers there were; those thinner than `flat` come from curves that
/// were flattened apart and are nobody's slip.
pub fn seen<T: Copy + Ord>(
    layers: &[(T, &MultiPolygon<f64>)],
    sliver: f64,
    flat: f64,
) -> (Vec<(T, Polygon<f64>)>, usize) {
    let mut over = MultiPolygon(Vec::new());
    let mut by_ink: std::collections::BTreeMap<T, Vec<Polygon<f64>>> = Default::default();
    for (ink, shape) in layers.iter().rev() {
        let left = if over.0.is_empty() {
            (*shape).clone()
        } else {
            shape.difference(&over)
        };
        by_ink.entry(*ink).or_default().extend(left.0);
        over = over.union(*shape);
    }
    let mut pieces = Vec::new();
    let mut slivers = 0;
    for (ink, parts) in by_ink {
        for piece in geo::unary_union(&parts) {
            let piece = without_pinholes(without_spikes(piece), sliver);
            if piece.buffer(-sliver / 2.0).0.is_empty() {
                slivers += usize::from(!piece.buffer(-flat / 2.0).0.is_empty());
            } else {
                pieces.push((ink, piece));
            }
        }
    }
    (pieces, slivers)
}

/// A union leaves needles where an edge went out and came back on itself: their points go.
fn without_spikes(piece: Polygon<f64>) -> Polygon<f64> {
    /// Metres. Ten times the rounding of what is handed on, a tenth of a hair.
    const THIN: f64 = 1e-5;
    let needle = |a: Coord<f64>, b: Coord<f64>, c: Coord<f64>| {
        let (to, on) = (b - a, c - b);
        let long = libm::hypot(to.x, to.y).max(libm::hypot(on.x, on.y));
        let back = to.x * on.x + to.y * on.y <= 0.0;
        back && (to.x * on.y - to.y * on.x).abs() <= THIN * long
    };
    let blunt = |ring: LineString<f64>| {
        let mut corners = ring.0;
        corners.pop();
        let mut kept: Vec<Coord<f64>> = Vec::with_capacity(corners.len());
        for at in corners {
            while let [.., a, b] = kept[..]
                && needle(a, b, at)
            {
                kept.pop();
            }
            kept.push(at);
        }
        // the same over the seam
        while let [first, second, .., before, last] = kept[..] {
            if needle(before, last, first) {
                kept.pop();
            } else if needle(last, first, second) {
                kept.remove(0);
            } else {
                break;
            }
        }
        let mut ring = LineString(kept);
        ring.close();
        ring
    };
    let (outer, holes) = piece.into_inner();
    let holes = holes.into_iter().map(blunt).filter(|hole| hole.0.len() > 3);
    Polygon::new(blunt(outer), holes.collect())
}

/// A hole that no pen could have meant is filled.
fn without_pinholes(piece: Polygon<f64>, sliver: f64) -> Polygon<f64> {
    let (outer, holes) = piece.into_inner();
    let meant = |hole: &LineString<f64>| {
        let hole = Polygon::new(hole.clone(), Vec::new());
        !hole.buffer(-sliver / 2.0).0.is_empty()
    };
    Polygon::new(outer, holes.into_iter().filter(meant).collect())
}

/// Where a shape is narrower than a brush: the pieces that no brush of this breadth gets
/// into, corners excepted.
pub fn narrow(shape: &Polygon<f64>, least: f64) -> Vec<Polygon<f64>> {
    // a corner of 45 degrees is 1.6 radii off the brush; sharper ones are rounded on the ground
    const CORNER: f64 = 2.7;
    let brush = least / 2.0;
    let reached = shape.buffer(-brush).buffer(brush * CORNER);
    let missed = shape.difference(&reached);
    missed
        .0
        .into_iter()
        .filter(|piece| piece.unsigned_area() > least * least)
        .collect()
}
