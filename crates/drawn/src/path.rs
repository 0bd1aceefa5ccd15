//! Geometry of SVG elements, in the units in which they are written.

use kurbo::{Arc, BezPath, Circle, Ellipse, Point, Shape as _, SvgArc, Vec2};
use svgtypes::{PathParser, PathSegment, PointsParser};

/// How near a curve of an element's own comes to its circle, as a share of its radius.
const ROUND: f64 = 1e-6;

/// The drawing's own units: what is smaller than this has no size.
pub const DOT: f64 = 1e-9;

/// Path data up to its first fault, as SVG has it drawn, and whether there is a fault.
pub fn data(text: &str) -> (BezPath, bool) {
    let mut path = BezPath::new();
    // where the pen is, where the part began, and the handle that a smooth curve mirrors
    let (mut pen, mut begun) = (Point::ZERO, Point::ZERO);
    let (mut cubic, mut quadratic) = (None, None);
    for segment in PathParser::from(text) {
        let Ok(segment) = segment else {
            return (path, true);
        };
        let from = pen;
        let to = |abs: bool, x: f64, y: f64| {
            let own = Point::new(x, y);
            if abs { own } else { from + own.to_vec2() }
        };
        if path.elements().is_empty() && !matches!(segment, PathSegment::MoveTo { .. }) {
            return (path, true);
        }
        // after a closed part a new one begins where the last did
        let closed = matches!(path.elements().last(), Some(kurbo::PathEl::ClosePath));
        let goes_on = !matches!(
            segment,
            PathSegment::MoveTo { .. } | PathSegment::ClosePath { .. }
        );
        if closed && goes_on {
            path.move_to(begun);
        }
        let (last_cubic, last_quadratic) = (cubic.take(), quadratic.take());
        let mirrored = |handle: Option<Point>| handle.map_or(from, |at| from + (from - at));
        match segment {
            PathSegment::MoveTo { abs, x, y } => {
                pen = to(abs, x, y);
                begun = pen;
                path.move_to(pen);
            }
            PathSegment::LineTo { abs, x, y } => pen = to(abs, x, y),
            PathSegment::HorizontalLineTo { abs, x } => pen.x = if abs { x } else { from.x + x },
            PathSegment::VerticalLineTo { abs, y } => pen.y = if abs { y } else { from.y + y },
            PathSegment::CurveTo {
                abs,
                x1,
                y1,
                x2,
                y2,
                x,
                y,
            } => {
                cubic = Some(to(abs, x2, y2));
                pen = to(abs, x, y);
                path.curve_to(to(abs, x1, y1), to(abs, x2, y2), pen);
            }
            PathSegment::SmoothCurveTo { abs, x2, y2, x, y } => {
                cubic = Some(to(abs, x2, y2));
                pen = to(abs, x, y);
                path.curve_to(mirrored(last_cubic), to(abs, x2, y2), pen);
            }
            PathSegment::Quadratic { abs, x1, y1, x, y } => {
                quadratic = Some(to(abs, x1, y1));
                pen = to(abs, x, y);
                path.quad_to(to(abs, x1, y1), pen);
            }
            PathSegment::SmoothQuadratic { abs, x, y } => {
                let handle = mirrored(last_quadratic);
                quadratic = Some(handle);
                pen = to(abs, x, y);
                path.quad_to(handle, pen);
            }
            PathSegment::EllipticalArc {
                abs,
                rx,
                ry,
                x_axis_rotation,
                large_arc,
                sweep,
                x,
                y,
            } => {
                pen = to(abs, x, y);
                arc(
                    &mut path,
                    &SvgArc {
                        from,
                        to: pen,
                        radii: Vec2::new(rx.abs(), ry.abs()),
                        x_rotation: x_axis_rotation.to_radians(),
                        large_arc,
                        sweep,
                    },
                );
            }
            PathSegment::ClosePath { .. } => {
                pen = begun;
                if !closed {
                    path.close_path();
                }
            }
        }
        if let PathSegment::LineTo { .. }
        | PathSegment::HorizontalLineTo { .. }
        | PathSegment::VerticalLineTo { .. } = segment
        {
            path.line_to(pen);
        }
    }
    (path, false)
}

/// An elliptical arc as curves; a line where it has no radius.
fn arc(path: &mut BezPath, arc: &SvgArc) {
    /// Past this no arc is reckoned: the shape is told to be too far away.
    const FAR: f64 = 1e12;
    let near = [arc.from, arc.to, arc.radii.to_point()]
        .iter()
        .all(|at| at.x.abs() < FAR && at.y.abs() < FAR);
    let round = arc.radii.x > DOT && arc.radii.y > DOT;
    match (near && round).then(|| Arc::from_svg_arc(arc)).flatten() {
        Some(round) => {
            let tolerance = ROUND * round.radii.x.max(round.radii.y);
            round.to_cubic_beziers(tolerance, |a, b, c| path.curve_to(a, b, c));
            // the last curve ends where the pen is, to the bit
            if let Some(kurbo::PathEl::CurveTo(_, _, end)) = path.elements_mut().last_mut() {
                *end = arc.to;
            }
        }
        None => path.line_to(arc.to),
    }
}

/// The farthest coordinate of a path; not finite where one is not.
pub fn farthest(path: &BezPath) -> f64 {
    let far = |at: Point| at.x.abs().max(at.y.abs());
    // a maximum passes over what is no number, a sum does not
    let of = |element: &kurbo::PathEl| match *element {
        kurbo::PathEl::MoveTo(at) | kurbo::PathEl::LineTo(at) => far(at) + 0.0 * (at.x + at.y),
        kurbo::PathEl::QuadTo(a, b) => far(a).max(far(b)) + 0.0 * (a.x + a.y + b.x + b.y),
        kurbo::PathEl::CurveTo(a, b, c) => {
            far(a).max(far(b)).max(far(c)) + 0.0 * (a.x + a.y + b.x + b.y + c.x + c.y)
        }
        kurbo::PathEl::ClosePath => 0.0,
    };
    let all = path.elements().iter().map(of);
    all.fold(0.0, |most: f64, one| {
        if one <= most || most.is_nan() {
            most
        } else {
            one
        }
    })
}

/// The points of a polygon or polyline.
pub fn points(text: &str, close: bool) -> BezPath {
    let mut path = BezPath::new();
    for (x, y) in PointsParser::from(text) {
        if path.elements().is_empty() {
            path.move_to((x, y));
        } else {
            path.line_to((x, y));
        }
    }
    if close && !path.elements().is_empty() {
        path.close_path();
    }
    path
}

/// A straight line.
pub fn line(from: Point, to: Point) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    path
}

/// An ellipse, or a circle where both radii are the same.
pub fn ellipse(centre: Point, rx: f64, ry: f64) -> BezPath {
    let tolerance = ROUND * rx.max(ry);
    if rx == ry {
        Circle::new(centre, rx).to_path(tolerance)
    } else {
        Ellipse::new(centre, Vec2::new(rx, ry), 0.0).to_path(tolerance)
    }
}

/// A rectangle with corners of two radii.
pub fn rect(x: f64, y: f64, width: f64, height: f64, rx: f64, ry: f64) -> BezPath {
    let (rx, ry) = (rx.min(width / 2.0), ry.min(height / 2.0));
    if rx <= DOT || ry <= DOT {
        return kurbo::Rect::new(x, y, x + width, y + height).to_path(ROUND);
    }
    let (right, low) = (x + width, y + height);
    let quarter = std::f64::consts::FRAC_PI_2;
    let mut path = BezPath::new();
    let corners = [
        (right - rx, y + ry, -quarter),
        (right - rx, low - ry, 0.0),
        (x + rx, low - ry, quarter),
        (x + rx, y + ry, 2.0 * quarter),
    ];
    path.move_to((x + rx, y));
    for (cx, cy, from) in corners {
        let arc = Arc::new((cx, cy), (rx, ry), from, quarter, 0.0);
        let (sin, cos) = libm::sincos(from);
        path.line_to((cx + rx * cos, cy + ry * sin));
        arc.to_cubic_beziers(ROUND * rx.max(ry), |a, b, c| path.curve_to(a, b, c));
    }
    path.close_path();
    path
}
