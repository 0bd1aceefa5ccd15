//! Lanes: a stroked line becomes a middle, a width, and straights and bends.

use geo::{Coord, LineString, coord};
use kurbo::{BezPath, ParamCurve, ParamCurveArclen, ParamCurveDeriv, PathSeg, Point, Vec2};
use marking::Piece;

/// Metres. How far a bend may lie off the arc that stands for it: a chalk line's breadth.
const OFF: f64 = 0.003;
/// Metres. Lengths along a curve are that exact.
const EXACT: f64 = 1e-7;

/// A middle with its pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Middle {
    /// In the way of travel.
    pub line: LineString<f64>,
    /// Straights and bends.
    pub pieces: Vec<Piece>,
    /// Radians of the sharpest corner between two pieces.
    pub sharpest: f64,
    /// Whether the path goes on after a jump: only its first part is the lane.
    pub broken: bool,
}

/// The first part of a path in metres; `None` where it has no length.
pub fn middle(path: &BezPath, flat: f64) -> Option<Middle> {
    let mut first = BezPath::new();
    let mut broken = false;
    for element in path.elements() {
        if matches!(element, kurbo::PathEl::MoveTo(_)) && !first.elements().is_empty() {
            broken = true;
            break;
        }
        first.push(*element);
    }
    let mut runs = Vec::new();
    for segment in first.segments() {
        if segment.arclen(EXACT) > EXACT {
            split(segment, 0, &mut runs);
        }
    }
    let mut pieces: Vec<Run> = Vec::new();
    let mut sharpest = 0.0_f64;
    for run in runs {
        let Some(last) = pieces.last_mut() else {
            pieces.push(run);
            continue;
        };
        let corner = turn(last.out, run.into).abs();
        if last.joins(&run, corner) {
            let whole = last.length + run.length;
            if let (Some(a), Some(b)) = (last.bend, run.bend) {
                last.bend = Some((a * last.length + b * run.length) / whole);
            }
            last.length = whole;
            last.out = run.out;
        } else {
            sharpest = sharpest.max(corner);
            pieces.push(run);
        }
    }
    if pieces.is_empty() {
        return None;
    }
    let mut line = Vec::new();
    kurbo::flatten(&first, flat, |element| match element {
        kurbo::PathEl::MoveTo(at) | kurbo::PathEl::LineTo(at) => line.push(coord(at)),
        kurbo::PathEl::ClosePath => line.extend(line.first().copied()),
        kurbo::PathEl::QuadTo(_, at) | kurbo::PathEl::CurveTo(_, _, at) => line.push(coord(at)),
    });
    line.dedup();
    Some(Middle {
        line: LineString(line),
        pieces: pieces.into_iter().map(Run::piece).collect(),
        sharpest,
        broken,
    })
}

fn coord(at: Point) -> Coord<f64> {
    coord! { x: at.x, y: at.y }
}

/// A piece with the directions at its ends; the bend is a radius, left positive.
#[derive(Clone, Copy)]
struct Run {
    length: f64,
    bend: Option<f64>,
    into: Vec2,
    out: Vec2,
}

impl Run {
    /// Whether the two are one piece.
    fn joins(&self, next: &Run, corner: f64) -> bool {
        const STRAIGHT_ON: f64 = 0.02;
        const SAME: f64 = 0.03;
        corner < STRAIGHT_ON
            && match (self.bend, next.bend) {
                (None, None) => true,
                (Some(a), Some(b)) => (a - b).abs() < SAME * a.abs().max(b.abs()),
                _ => false,
            }
    }

    fn piece(self) -> Piece {
        let millimetre = |value: f64| (value * 1e3).round() / 1e3;
        Piece {
            length: (self.length * 1e6).round() / 1e6,
            radius: self.bend.map(|radius| millimetre(radius.abs())),
        }
    }
}

/// The turn from one direction to the next, radians.
fn turn(from: Vec2, to: Vec2) -> f64 {
    libm::atan2(from.cross(to), from.dot(to))
}

/// Straights and arcs that stand for a segment.
fn split(segment: PathSeg, deep: u32, out: &mut Vec<Run>) {
    /// Halvings of one segment: 64 arcs stand for any curve that a pen draws.
    const DEEPEST: u32 = 6;
    /// Places at which the fit is looked at.
    const LOOKS: u32 = 16;
    let (from, to) = (segment.start(), segment.end());
    let at = |share: f64| segment.eval(share);
    let (into, leaving) = (heading(segment, 0.0), heading(segment, 1.0));
    let run = |bend| Run {
        length: segment.arclen(EXACT),
        bend,
        into,
        out: leaving,
    };
    if matches!(segment, PathSeg::Line(_)) {
        return out.push(run(None));
    }
    let inner = || (1..LOOKS).map(|look| at(f64::from(look) / f64::from(LOOKS)));
    let chord = to - from;
    let off = |point: Point| match chord.hypot() {
        0.0 => (point - from).hypot(),
        long => (chord.cross(point - from) / long).abs(),
    };
    let ahead = |way: Vec2| way.dot(chord) > 0.0;
    if inner().all(|point| off(point) < OFF) && ahead(into) && ahead(leaving) {
        return out.push(run(None));
    }
    let middle = at(0.5);
    let bend = circle(from, middle, to);
    if let Some((centre, radius)) = bend {
        let near = inner().all(|point| ((point - centre).hypot() - radius).abs() < OFF);
        let left = (middle - from).cross(to - middle).signum();
        if near || deep == DEEPEST {
            return out.push(run(Some(left * radius)));
        }
    }
    if deep == DEEPEST {
        return out.push(run(None));
    }
    split(segment.subsegment(0.0..0.5), deep + 1, out);
    split(segment.subsegment(0.5..1.0), deep + 1, out);
}

/// The direction of travel at a place of a segment; where the handle has no length, a
/// little way along.
fn heading(segment: PathSeg, share: f64) -> Vec2 {
    let way = match segment {
        PathSeg::Line(line) => line.p1 - line.p0,
        PathSeg::Quad(curve) => curve.deriv().eval(share).to_vec2(),
        PathSeg::Cubic(curve) => curve.deriv().eval(share).to_vec2(),
    };
    if way.hypot() > EXACT {
        return way;
    }
    const LITTLE: f64 = 0.01;
    if share < 0.5 {
        segment.eval(LITTLE) - segment.start()
    } else {
        segment.end() - segment.eval(1.0 - LITTLE)
    }
}

/// The circle through three points.
fn circle(a: Point, b: Point, c: Point) -> Option<(Point, f64)> {
    let (u, v) = (b - a, c - a);
    let twice = 2.0 * u.cross(v);
    if twice.abs() < EXACT {
        return None;
    }
    let (uu, vv) = (u.hypot2(), v.hypot2());
    let off = Vec2::new(v.y * uu - u.y * vv, u.x * vv - v.x * uu) / twice;
    Some((a + off, off.hypot()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(data: &str) -> Middle {
        let (path, broken) = crate::path::data(data);
        assert!(!broken);
        middle(&path, 0.000_3).expect("a lane")
    }

    /// Arcs are found again from the Beziers that SVG's arcs become.
    #[test]
    fn arcs_and_straights_are_found_again() {
        use std::f64::consts::PI;
        let wave = of("M0 0 h2 a1.5 1.5 0 0 1 1.5 1.5 v1 a2 2 0 0 0 2 2");
        let found: Vec<(f64, Option<f64>)> = wave
            .pieces
            .iter()
            .map(|piece| (piece.length, piece.radius))
            .collect();
        let wanted = [
            (2.0, None),
            (0.75 * PI, Some(1.5)),
            (1.0, None),
            (PI, Some(2.0)),
        ];
        assert_eq!(found.len(), wanted.len(), "{found:?}");
        for ((length, radius), (want, bend)) in found.into_iter().zip(wanted) {
            assert!((length - want).abs() < 1e-3, "{length}, not {want}");
            assert_eq!(radius, bend);
        }
        assert!(wave.sharpest < 0.01);
    }

    #[test]
    fn a_full_turn_is_one_bend_and_a_corner_is_told() {
        let round = of("M1 0 a1 1 0 0 1 -2 0 a1 1 0 0 1 2 0");
        assert_eq!(round.pieces.len(), 1, "{:?}", round.pieces);
        let corner = of("M0 0 L2 0 L2 2");
        assert_eq!(corner.pieces.len(), 2);
        assert!((corner.sharpest - std::f64::consts::FRAC_PI_2).abs() < 1e-9);
    }

    #[test]
    fn a_free_curve_becomes_arcs_near_it() {
        let free = of("M0 0 C2 0 2 2 4 1");
        assert!(
            free.pieces.len() > 1 && free.pieces.len() < 20,
            "{:?}",
            free.pieces
        );
        let line: f64 = free
            .line
            .lines()
            .map(|side| libm::hypot(side.dx(), side.dy()))
            .sum();
        let pieces: f64 = free.pieces.iter().map(|piece| piece.length).sum();
        assert!((line - pieces).abs() < 0.001 * pieces);
    }
}
