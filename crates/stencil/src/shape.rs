//! Measures and moves of outlines that the other files share.

use geo::algorithm::buffer::{BufferStyle, LineJoin};
use geo::{
    Area, BoundingRect, Buffer, Coord, Distance, Euclidean, LineString, MultiPolygon, Polygon, Rect,
};

/// Radians: a side of a rounded corner. On the 15 mm that buffers here come to, its middle
/// lies 0.02 mm off the arc.
const SIDE: f64 = 0.1;

/// Shapes grown by so many metres, or shrunk where negative; corners round.
pub(crate) fn grown(shapes: &MultiPolygon<f64>, by: f64) -> MultiPolygon<f64> {
    if by == 0.0 {
        return shapes.clone();
    }
    shapes.buffer_with_style(BufferStyle::new(by).line_join(LineJoin::Round(SIDE)))
}

/// The same with corners of few sides, for measures that need no more.
pub(crate) fn roughly_grown(shapes: &MultiPolygon<f64>, by: f64) -> MultiPolygon<f64> {
    /// Radians: at 43 mm the middle of a side lies 0.35 mm off the arc.
    const SIDE: f64 = 0.255;
    shapes.buffer_with_style(BufferStyle::new(by).line_join(LineJoin::Round(SIDE)))
}

/// To 1e-6, as everything leaves this room; a negative zero becomes zero.
pub(crate) fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6 + 0.0
}

/// A place to 1e-6 m.
pub(crate) fn settled(at: Coord<f64>) -> Coord<f64> {
    Coord {
        x: millionth(at.x),
        y: millionth(at.y),
    }
}

/// A polygon with every corner moved; corners that fall on one place are one.
pub(crate) fn moved(polygon: &Polygon<f64>, by: impl Fn(Coord<f64>) -> Coord<f64>) -> Polygon<f64> {
    let ring = |ring: &LineString<f64>| {
        let mut corners: Vec<Coord<f64>> = ring.coords().map(|at| by(*at)).collect();
        corners.dedup();
        LineString(corners)
    };
    let mut moved = Polygon::new(
        ring(polygon.exterior()),
        polygon.interiors().iter().map(ring).collect(),
    );
    use geo::Winding;
    moved.exterior_mut(LineString::make_ccw_winding);
    moved.interiors_mut(|rings| rings.iter_mut().for_each(LineString::make_cw_winding));
    moved
}

/// A place mirrored across x if asked, then turned.
pub(crate) fn turned(at: Coord<f64>, turn: f64, over: bool) -> Coord<f64> {
    let (sin, cos) = libm::sincos(turn);
    let y = if over { -at.y } else { at.y };
    Coord {
        x: at.x * cos - y * sin,
        y: at.x * sin + y * cos,
    }
}

/// All rings of a polygon.
pub(crate) fn rings(polygon: &Polygon<f64>) -> impl Iterator<Item = &LineString<f64>> {
    std::iter::once(polygon.exterior()).chain(polygon.interiors())
}

/// Metres of its outline, holes too.
pub(crate) fn outline(polygon: &Polygon<f64>) -> f64 {
    let side = |side: geo::Line<f64>| libm::hypot(side.dx(), side.dy());
    rings(polygon).flat_map(|ring| ring.lines().map(side)).sum()
}

/// An upright rectangle.
pub(crate) fn rect(low: Coord<f64>, high: Coord<f64>) -> Polygon<f64> {
    Rect::new(low, high).to_polygon()
}

/// The box of some polygons; `None` without corners.
pub(crate) fn bounds<'a>(shapes: impl IntoIterator<Item = &'a Polygon<f64>>) -> Option<Rect<f64>> {
    shapes
        .into_iter()
        .filter_map(|shape| shape.bounding_rect())
        .reduce(|a, b| {
            Rect::new(
                Coord {
                    x: a.min().x.min(b.min().x),
                    y: a.min().y.min(b.min().y),
                },
                Coord {
                    x: a.max().x.max(b.max().x),
                    y: a.max().y.max(b.max().y),
                },
            )
        })
}

/// Metres between two polygons, where it is `near` at most.
pub(crate) fn apart(a: &Polygon<f64>, b: &Polygon<f64>, near: f64) -> Option<f64> {
    let (p, q) = (a.bounding_rect()?, b.bounding_rect()?);
    let x = (p.min().x - q.max().x).max(q.min().x - p.max().x);
    let y = (p.min().y - q.max().y).max(q.min().y - p.max().y);
    if x.max(y) > near {
        return None;
    }
    let apart = Euclidean.distance(a, b);
    (apart <= near).then_some(apart)
}

/// Length and breadth of the strip that has a shape's area and outline: of a stroke, straight
/// or bent, its own but for its ends. A shape rounder than any strip is as long as broad.
pub(crate) fn strip(shape: &Polygon<f64>) -> [f64; 2] {
    let (area, half) = (shape.unsigned_area(), outline(shape) / 2.0);
    let root = (half * half - 4.0 * area).max(0.0).sqrt();
    [(half + root) / 2.0, (half - root) / 2.0]
}

/// Metres from a place to the nearest side of these rings.
pub(crate) fn off(at: Coord<f64>, sides: &[[Coord<f64>; 2]]) -> f64 {
    let square = sides.iter().map(|[from, to]| {
        let way = *to - *from;
        let long = way.x * way.x + way.y * way.y;
        let share = if long > 0.0 {
            (((at.x - from.x) * way.x + (at.y - from.y) * way.y) / long).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let foot = *from + way * share;
        (at.x - foot.x) * (at.x - foot.x) + (at.y - foot.y) * (at.y - foot.y)
    });
    square.fold(f64::INFINITY, f64::min).sqrt()
}

/// The sides of polygons.
pub(crate) fn sides<'a>(
    shapes: impl IntoIterator<Item = &'a Polygon<f64>>,
) -> Vec<[Coord<f64>; 2]> {
    shapes
        .into_iter()
        .flat_map(|shape| rings(shape).flat_map(|ring| ring.lines().map(|l| [l.start, l.end])))
        .collect()
}

/// The rectangle of least area round points: its turn (0 to a right angle) and its area.
pub(crate) fn snug(points: &[Coord<f64>]) -> Option<(f64, f64)> {
    use geo::ConvexHull;
    let hull = geo::MultiPoint::from(points.to_vec()).convex_hull();
    let area = |turn: f64| {
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for at in hull.exterior().coords() {
            let at = turned(*at, -turn, false);
            for (axis, value) in [at.x, at.y].into_iter().enumerate() {
                low[axis] = low[axis].min(value);
                high[axis] = high[axis].max(value);
            }
        }
        (high[0] - low[0]) * (high[1] - low[1])
    };
    hull.exterior()
        .lines()
        .map(|side| {
            let turn = libm::atan2(side.dy(), side.dx());
            let quarter = std::f64::consts::FRAC_PI_2;
            let turn = turn - (turn / quarter).floor() * quarter;
            (turn, area(turn))
        })
        .min_by(|a, b| a.1.total_cmp(&b.1))
}
