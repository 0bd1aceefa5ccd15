//! What is left to paint, and why the rest is not: the answer of this room.

use geo::{LineString, MultiPolygon, Polygon};
use ledger::Key;

/// The ground of a yard. Coordinates are rounded to 1e-6 m on the way out.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// The whole yard, outer ring anticlockwise.
    pub yard: Polygon<f64>,
    /// What may be painted.
    pub free: MultiPolygon<f64>,
    /// What may not, each patch cut to the yard, in the order of the rules; patches of
    /// different rules may overlap.
    pub blocked: Vec<Blocked>,
    /// The walks kept open.
    pub routes: Vec<Route>,
    /// Slivers of free ground that were dropped: how many, and their area in m².
    pub slivers: (usize, f64),
}

/// A patch that may not be painted.
#[derive(Clone, Debug, PartialEq)]
pub struct Blocked {
    /// The patch.
    pub polygon: Polygon<f64>,
    /// Why, with what.
    pub why: Why,
    /// Named thing that it belongs to: a fixture, a door, a route, an edge.
    pub of: String,
    /// The ledger figure that sets its size, where one does.
    pub rule: Option<Key>,
    /// Whether no other equipment's zone may share it (swings, slide exits).
    pub alone: bool,
}

/// Kinds of blocked patches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// The fixture stands there.
    Footprint,
    /// The clear zone round equipment.
    ClearZone,
    /// The surface must not, or not yet, be painted.
    Surface,
    /// Margin to a hard edge of the yard.
    EdgeMargin,
    /// Margin to a fixture that is not equipment.
    FixtureMargin,
    /// A drain, cover or hydrant with its margin.
    Drain,
    /// A door or gate swings over it.
    Swing,
    /// The clear floor in front of a door or gate.
    DoorFloor,
    /// A route kept open.
    Route,
    /// The surveyor's remark keeps it clear.
    Remark,
}

/// A walk kept open.
#[derive(Clone, Debug, PartialEq)]
pub struct Route {
    /// From this door, gate or fixture.
    pub from: String,
    /// To that one.
    pub to: String,
    /// Clear width, metres.
    pub width: f64,
    /// The middle of the walk; `None` where there is no way at that width.
    pub line: Option<LineString<f64>>,
    /// Metres along it.
    pub length: f64,
}

impl Why {
    /// The word of plan.json.
    pub fn word(self) -> &'static str {
        match self {
            Why::Footprint => "footprint",
            Why::ClearZone => "clear-zone",
            Why::Surface => "surface",
            Why::EdgeMargin => "edge-margin",
            Why::FixtureMargin => "fixture-margin",
            Why::Drain => "drain",
            Why::Swing => "swing",
            Why::DoorFloor => "door-floor",
            Why::Route => "route",
            Why::Remark => "remark",
        }
    }
}
