//! Geometry of SVG elements, in the units in which they are written.

use kurbo::{Arc, BezPath, Circle, Ellipse, Point, Shape as _, Vec2};
use svgtypes::{PointsParser, SimplePathSegment, SimplifyingPathParser};

/// A coordinate past this, in the drawing's own units, is a slip: no yard is a hundred
/// kilometres wide.
const FAR: f64 = 1e8;

/// How near a curve of an element's own comes to its circle, as a share of its radius.
const ROUND: f64 = 1e-6;

/// Path data up to its first fault, as SVG has it drawn; the fault's place is how far the
/// good part of it reaches, or `None` where there is no fault.
pub fn data(text: &str) -> (BezPath, bool) {
    let mut path = BezPath::new();
    for segment in SimplifyingPathParser::from(text) {
        let Ok(segment) = segment else {
            return (path, true);
        };
        let open = !path.elements().is_empty();
        match segment {
            SimplePathSegment::MoveTo { x, y } => path.move_to((x, y)),
            _ if !open => return (path, true),
            SimplePathSegment::LineTo { x, y } => path.line_to((x, y)),
            SimplePathSegment::CurveTo {
                x1,
                y1,
                x2,
                y2,
                x,
                y,
            } => path.curve_to((x1, y1), (x2, y2), (x, y)),
            SimplePathSegment::Quadratic { x1, y1, x, y } => path.quad_to((x1, y1), (x, y)),
            SimplePathSegment::ClosePath => path.close_path(),
        }
    }
    (path, false)
}

/// Whether every point can be reckoned with.
pub fn sane(path: &BezPath) -> bool {
    let near = |at: &Point| at.x.abs() <= FAR && at.y.abs() <= FAR;
    path.elements().iter().all(|element| match element {
        kurbo::PathEl::MoveTo(at) | kurbo::PathEl::LineTo(at) => near(at),
        kurbo::PathEl::QuadTo(a, b) => near(a) && near(b),
        kurbo::PathEl::CurveTo(a, b, c) => near(a) && near(b) && near(c),
        kurbo::PathEl::ClosePath => true,
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
    if rx <= 0.0 || ry <= 0.0 {
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
