//! Margins to the yard's hard edges and to what stands in it.

use geo::{Coord, LineString};
use ledger::Key;

use crate::body::{Body, Part, part};
use crate::figures::{DRAIN, DROP, FIXTURE, HARD_EDGE};
use crate::grid::Grid;
use crate::patch::Patch;
use crate::result::Why;
use crate::shapes;
use crate::yard::{EdgeKind, Yard};

/// Metres that an edge's points may lie off the boundary: the tapes' own error.
const OFF_LINE: f64 = 0.05;

/// The edge's word in the survey file; the catalogue turns it into the language.
pub fn word(kind: EdgeKind) -> &'static str {
    match kind {
        EdgeKind::Wall => "wall",
        EdgeKind::Fence => "fence",
        EdgeKind::Hedge => "hedge",
        EdgeKind::Kerb => "kerb",
        EdgeKind::Drop => "drop",
        EdgeKind::Open => "open",
    }
}

/// The figure of an edge's margin; none for open ground.
fn margin(kind: EdgeKind) -> Option<Key> {
    match kind {
        EdgeKind::Wall | EdgeKind::Fence | EdgeKind::Hedge | EdgeKind::Kerb => Some(HARD_EDGE),
        EdgeKind::Drop => Some(DROP),
        EdgeKind::Open => None,
    }
}

/// All edges of the yard: those told, and a wall wherever nothing is told.
pub fn edges(yard: &Yard) -> Vec<(EdgeKind, LineString<f64>)> {
    let mut edges: Vec<_> = yard
        .edges
        .iter()
        .map(|edge| (edge.is, edge.line.clone()))
        .collect();
    let rings = std::iter::once(yard.boundary.exterior()).chain(yard.boundary.interiors());
    for side in rings.flat_map(|ring| ring.lines()) {
        for (from, to) in untold(yard, side.start, side.end) {
            edges.push((EdgeKind::Wall, LineString(vec![from, to])));
        }
    }
    edges
}

/// The stretches of a side of the boundary that no edge speaks of.
fn untold(yard: &Yard, a: Coord<f64>, b: Coord<f64>) -> Vec<(Coord<f64>, Coord<f64>)> {
    let Some(way) = shapes::direction(a, b) else {
        return Vec::new();
    };
    let long = shapes::length(b - a);
    let near = |at: Coord<f64>| shapes::cross(way, at - a).abs() <= OFF_LINE;
    let mut told: Vec<(f64, f64)> = yard
        .edges
        .iter()
        .flat_map(|edge| edge.line.lines())
        .filter(|line| near(line.start) && near(line.end))
        .map(|line| {
            let [s, e] = [line.start, line.end].map(|at| shapes::dot(way, at - a));
            (s.min(e), s.max(e))
        })
        .collect();
    told.sort_by(|one, other| one.0.total_cmp(&other.0));
    let (mut gaps, mut reached) = (Vec::new(), 0.0);
    for (start, end) in told {
        if start.min(long) > reached + OFF_LINE {
            gaps.push((reached, start.min(long)));
        }
        reached = end.max(reached);
    }
    if long > reached + OFF_LINE {
        gaps.push((reached, long));
    }
    gaps.into_iter()
        .map(|(from, to)| (a + way * from, a + way * to))
        .collect()
}

/// Margins along the edges.
pub fn of_edges(
    grid: &Grid,
    edges: &[(EdgeKind, LineString<f64>)],
    ledger: &ledger::Ledger,
) -> Vec<Patch> {
    let with_margin = edges
        .iter()
        .filter_map(|(kind, line)| Some((kind, line, margin(*kind)?)));
    with_margin
        .map(|(kind, line, rule)| {
            let shape = shapes::along(grid, &line.0, ledger.number(rule));
            Patch::new(shape, Why::EdgeMargin, word(*kind), Some(rule))
        })
        .collect()
}

/// Margins round what stands or drains; equipment has a clear zone instead.
pub fn of_fixtures(grid: &Grid, bodies: &[Body], ledger: &ledger::Ledger) -> Vec<Patch> {
    let patch = |body: &Body, why, rule: Key| {
        let shape = body.grown(grid, ledger.number(rule));
        Patch::new(shape, why, &body.fixture.name, Some(rule))
    };
    let margins = bodies
        .iter()
        .filter_map(|body| match part(body.fixture.is) {
            Part::Equipment | Part::Unruled => None,
            Part::Standing => Some(patch(body, Why::FixtureMargin, FIXTURE)),
            Part::Drain => Some(patch(body, Why::Drain, DRAIN)),
        });
    margins.collect()
}
