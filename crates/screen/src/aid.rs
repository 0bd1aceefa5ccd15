//! What carries a child, drawn from above: wheels with their tracks, a walker's frame.
//!
//! All is in millimetres, the way ahead along +x, y down.

use std::fmt::Write;

use children::{Means, Side};
use geo::Coord;
use motion::{Aid, Clip, Key, Role};

use crate::svg::{Extent, foot, letter, number, spot};

/// Millimetres: a wheel across its tread.
const TREAD: f64 = 34.0;
/// Millimetres from side to side of the seat, and from its back to its front edge.
const SEAT: [f64; 2] = [360.0, 330.0];
/// Millimetres from the axle to the middle of the feet on the rest.
const REST: f64 = 370.0;
/// Millimetres of a frame from front to back.
const FRAME: f64 = 500.0;
/// Metres from the middle of the way to a mark's number, past the half breadth.
const NUMBER: f64 = 0.09;
/// Millimetres of a hand across.
pub const HAND: f64 = 84.0;

/// The word of the means, as pages and sentences have it; `feet` for a clip on feet.
pub fn means(clip: &Clip) -> &'static str {
    match clip.aid.as_ref().map(|aid| aid.means) {
        None => "feet",
        Some(Means::Walker) => "walker",
        Some(_) => "wheels",
    }
}

/// The thing itself, its middle at the origin.
pub fn shape(aid: &Aid, wheel: f64, foot_mm: f64) -> String {
    match aid.means {
        Means::Walker => frame(aid.breadth * 1000.0),
        _ => chair(aid.breadth * 1000.0, wheel * 1000.0, foot_mm),
    }
}

/// Two wheels, the seat between them, and the feet on their rest.
fn chair(breadth: f64, wheel: f64, foot_mm: f64) -> String {
    let mut out = String::new();
    let [across, deep] = SEAT;
    let back = -deep * 0.4;
    let toes = REST + foot_mm * 0.55;
    for side in [-1.0, 1.0] {
        let y = side * (breadth - TREAD) / 2.0;
        _ = write!(
            out,
            "<rect class=\"wheel\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"{}\"/>\
             <path class=\"strut\" d=\"M0 {}V{}M{} {}H{}\"/>",
            number(-wheel / 2.0),
            number(y - TREAD / 2.0),
            number(wheel),
            number(TREAD),
            number(TREAD / 2.0),
            number(side * across / 2.0),
            number(y - side * TREAD / 2.0),
            number(back + deep),
            number(side * across * 0.38),
            number(toes),
        );
    }
    _ = write!(
        out,
        "<rect class=\"seat\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"60\"/>\
         <path class=\"strut\" d=\"M{} {}V{}M{} {}V{}\"/>",
        number(back),
        number(-across / 2.0),
        number(deep),
        number(across),
        number(back),
        number(-across / 2.0),
        number(across / 2.0),
        number(toes),
        number(-across * 0.38),
        number(across * 0.38),
    );
    for (side, y) in [(Side::Left, -1.0), (Side::Right, 1.0)] {
        _ = write!(
            out,
            "<path class=\"rest {}\" transform=\"translate({} {})\" d=\"{}\"/>",
            letter(side),
            number(REST),
            number(y * across * 0.17),
            foot(side, foot_mm)
        );
    }
    out
}

/// A bow open to the rear, its four tips and two grips.
fn frame(breadth: f64) -> String {
    let (half, side) = (FRAME / 2.0, breadth / 2.0 - 20.0);
    let round = 110.0;
    let mut out = format!(
        "<path class=\"bow\" d=\"M{0} {1}H{2}Q{3} {1} {3} {4}V{5}Q{3} {6} {2} {6}H{0}\"/>",
        number(-half),
        number(-side),
        number(half - round),
        number(half),
        number(-side + round),
        number(side - round),
        number(side),
    );
    for y in [-side, side] {
        _ = write!(
            out,
            "<path class=\"grip\" d=\"M{} {}H{}\"/>",
            number(-half * 0.75),
            number(y),
            number(-half * 0.2),
        );
        for x in [-half, half * 0.72] {
            _ = write!(
                out,
                "<circle class=\"tip\" cx=\"{}\" cy=\"{}\" r=\"24\"/>",
                number(x),
                number(y)
            );
        }
    }
    out
}

/// How it is drawn, with lines of this width.
pub fn ink(width: f64) -> String {
    format!(
        ".wheel,.tip{{fill:var(--ink)}}.seat{{fill:var(--panel);stroke:var(--ink);stroke-width:{0}}}\
         .strut,.bow{{fill:none;stroke:var(--ink);stroke-width:{0};stroke-linecap:round}}\
         .bow{{stroke-width:{1}}}.grip{{stroke:var(--ink);stroke-width:{2};stroke-linecap:round}}\
         .rest{{stroke:var(--ink);stroke-width:{0}}}.rest.R{{fill:var(--ink)}}.rest.L{{fill:var(--panel)}}\
         .rolled{{fill:none;stroke:var(--ink);stroke-width:{3}}}\
         .pushed{{fill:none;stroke:var(--ink);stroke-width:{4}}}\
         .hand{{stroke:var(--ink);stroke-width:{1}}}.hand.R{{fill:var(--ink)}}.hand.L{{fill:var(--panel)}}",
        number(width),
        number(width * 2.4),
        number(width * 5.0),
        number(width * 0.8),
        number(width * 4.0),
    )
}

/// Where one wheel rolled between two times, as a path.
fn track(aid: &Aid, side: Side, from: f64, to: f64) -> String {
    let aside = aid.breadth / 2.0 - TREAD / 2000.0;
    let sign = if side == Side::Left { 1.0 } else { -1.0 };
    let mut spots: Vec<[i64; 2]> = Vec::new();
    for key in aid
        .keys
        .iter()
        .filter(|key| key.time >= from - 1e-6 && key.time <= to + 1e-6)
    {
        let (sin, cos) = libm::sincos(key.toes);
        let [x, y] = spot(key.at + Coord { x: -sin, y: cos } * (sign * aside));
        let at = [x.round() as i64, y.round() as i64];
        // a straight track needs its ends alone
        if let [.., a, b] = spots.as_slice()
            && (b[0] - a[0]) * (at[1] - b[1]) == (b[1] - a[1]) * (at[0] - b[0])
        {
            spots.pop();
        }
        if spots.last() != Some(&at) {
            spots.push(at);
        }
    }
    let mut path = String::new();
    for (nth, [x, y]) in spots.iter().enumerate() {
        let pen = if nth == 0 { 'M' } else { 'L' };
        _ = write!(path, "{pen}{x} {y}");
    }
    path
}

/// The whole track of both wheels; none of a walker.
pub fn rolled(clip: &Clip) -> Vec<String> {
    match &clip.aid {
        Some(aid) if aid.means != Means::Walker => [Side::Right, Side::Left]
            .map(|side| track(aid, side, 0.0, clip.end))
            .to_vec(),
        _ => Vec::new(),
    }
}

/// A stretch of a wheel's track under a push.
pub struct Pushed {
    pub side: Side,
    pub path: String,
    pub from: f64,
    pub to: f64,
}

/// Every stretch that was pushed.
pub fn pushed(clip: &Clip) -> Vec<Pushed> {
    let Some(aid) = &clip.aid else {
        return Vec::new();
    };
    clip.prints
        .iter()
        .filter(|print| matches!(print.role, Role::Push | Role::Short))
        .filter_map(|print| {
            let to = print.lifts?;
            Some(Pushed {
                side: print.side,
                path: track(aid, print.side, print.lands, to),
                from: print.lands,
                to,
            })
        })
        .collect()
}

/// Where the number of each mark stands: beside the way, to the left.
pub fn rings(clip: &Clip) -> Vec<(usize, [f64; 2], f64)> {
    let Some(aid) = &clip.aid else {
        return Vec::new();
    };
    let aside = aid.breadth / 2.0 + NUMBER;
    aid.marks
        .iter()
        .map(|mark| {
            let (sin, cos) = libm::sincos(mark.toes);
            let at = mark.at + Coord { x: -sin, y: cos } * aside;
            (mark.count, spot(at), mark.lands)
        })
        .collect()
}

/// All that it and its numbers take on a drawing, millimetres.
pub fn extent(clip: &Clip) -> Option<Extent> {
    let aid = clip.aid.as_ref()?;
    let half = aid.breadth / 2.0;
    let [behind, ahead] = match aid.means {
        Means::Walker => [FRAME / 2000.0; 2],
        _ => [0.27, REST / 1000.0 + 0.15],
    };
    let corners = aid.keys.iter().flat_map(|key: &Key| {
        let (sin, cos) = libm::sincos(key.toes);
        [
            (-behind, half),
            (-behind, -half),
            (ahead, half),
            (ahead, -half),
        ]
        .map(|(x, y)| {
            let at = key.at + Coord { x: cos, y: sin } * x + Coord { x: -sin, y: cos } * y;
            Extent::round(at, 45.0)
        })
    });
    let rings = rings(clip).into_iter().map(|(_, at, _)| Extent {
        low: at.map(|value| value - 70.0),
        high: at.map(|value| value + 70.0),
    });
    corners.chain(rings).reduce(Extent::with)
}
