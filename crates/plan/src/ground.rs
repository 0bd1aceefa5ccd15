//! The `ground` key.

use geo::{LineString, Polygon};
use ledger::Ledger;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::round::millionth;

/// x and y in metres, in the survey's frame.
pub type Position = [f64; 2];

/// A ring: the last position repeats the first. A polygon is an outer ring,
/// anticlockwise, and then its holes, clockwise.
pub type Ring = Vec<Position>;

/// What may be painted, and why the rest may not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Ground {
    /// The whole yard: one polygon.
    pub yard: Vec<Ring>,
    /// What may be painted: polygons.
    pub free: Vec<Vec<Ring>>,
    /// Area of `free`, m².
    pub free_area: f64,
    /// What may not.
    pub blocked: Vec<Blocked>,
    /// Walks kept open.
    pub routes: Vec<Route>,
    /// Slivers under 1 cm² that were dropped.
    pub slivers: u64,
}

/// A patch that may not be painted.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Blocked {
    /// The patch.
    pub polygon: Vec<Ring>,
    /// `footprint`, `clear-zone`, `surface`, `edge-margin`, `fixture-margin`, `drain`,
    /// `swing`, `door-floor`, `route` or `remark`.
    pub why: String,
    /// The named thing that it belongs to.
    pub of: String,
    /// The ledger figure that sets its size.
    pub rule: Option<String>,
    /// The work that the figure is taken from, `-` for none.
    pub source: Option<String>,
    /// Whether no other equipment's zone may share it.
    pub alone: bool,
}

/// A walk kept open.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Route {
    /// From this door, gate or fixture.
    pub from: String,
    /// To that one.
    pub to: String,
    /// Clear width, metres.
    pub width: f64,
    /// The middle of the walk; null where there is no way at that width.
    pub line: Option<Vec<Position>>,
    /// Metres along it.
    pub length: f64,
}

impl Ground {
    /// Copies the answer of the ground stage.
    pub fn of(ground: &ground::result::Ground, ledger: &Ledger) -> Ground {
        use geo::Area;
        Ground {
            yard: polygon(&ground.yard),
            free: ground.free.0.iter().map(polygon).collect(),
            free_area: millionth(ground.free.unsigned_area()),
            blocked: ground
                .blocked
                .iter()
                .map(|patch| Blocked {
                    polygon: polygon(&patch.polygon),
                    why: patch.why.word().to_owned(),
                    of: patch.of.clone(),
                    rule: patch.rule.map(|key| key.0.to_owned()),
                    source: patch
                        .rule
                        .and_then(|key| ledger.figure(key.0))
                        .map(|figure| figure.source.clone()),
                    alone: patch.alone,
                })
                .collect(),
            routes: ground
                .routes
                .iter()
                .map(|route| Route {
                    from: route.from.clone(),
                    to: route.to.clone(),
                    width: millionth(route.width),
                    line: route.line.as_ref().map(line),
                    length: millionth(route.length),
                })
                .collect(),
            slivers: ground.slivers.0 as u64,
        }
    }
}

/// A polygon's rings.
pub fn polygon(polygon: &Polygon<f64>) -> Vec<Ring> {
    std::iter::once(polygon.exterior())
        .chain(polygon.interiors())
        .map(line)
        .collect()
}

/// A line's positions.
pub fn line(line: &LineString<f64>) -> Vec<Position> {
    line.coords()
        .map(|at| [millionth(at.x), millionth(at.y)])
        .collect()
}
