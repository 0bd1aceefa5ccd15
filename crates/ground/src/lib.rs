//! The yard minus all that must not be painted, each patch with its reason.
//!
//! In at the door comes a surveyed [`Yard`]; out goes a [`Ground`]: what may be painted,
//! what may not and why, and the walks kept open. [`ground`] names the rules in their
//! order; each has its own module.
//!
//! Invariants: nothing here reads a file, asks the time or holds a sentence; an arc is
//! never drawn inside the true one; every blocked patch says why; all polygons handed on
//! are valid and lie on the grid of 1e-6 m; unknown figures err to safety and are told.

mod figures;
pub mod result;
pub mod shapes;
pub mod sight;
pub mod surfaces;
pub mod yard;

mod body;
mod doors;
mod grid;
mod margins;
mod neighbours;
mod patch;
mod routes;
mod sound;
mod walk;
mod zones;

use geo::{Area, MultiPolygon, Polygon};
use ledger::Ledger;
use note::Noted;

use crate::body::Body;
use crate::grid::Grid;
use crate::neighbours::Equipment;
use crate::patch::Patch;
use crate::result::{Blocked, Ground, Why};
use crate::routes::Walks;
use crate::yard::Yard;
use crate::zones::Rules;

pub use crate::figures::FIGURES;
pub use crate::margins::edges;
pub use crate::sight::sees;

/// The standard by which clear zones are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standard {
    /// The US handbook for public playgrounds (ledger source `CPSC325`).
    UsHandbook,
    /// The European norm's falling spaces (ledger source `EN1176-1`).
    EuropeanNorm,
}

/// Pieces of free ground below this (m²) are dropped: 1 cm², less than a brush.
pub const SLIVER: f64 = 1e-4;

/// Takes from the yard all that must not be painted, each patch with its rule.
///
/// Errors among the notes are of the yard itself (a boundary that crosses itself, a
/// walk to nowhere); then the value holds what could be made.
pub fn ground(yard: &Yard, zones: Standard, ledger: &Ledger) -> Noted<Ground> {
    let mut notes = Vec::new();
    let Some((grid, yard)) = sound::yard(yard, &mut notes) else {
        return Noted {
            value: nothing(yard),
            notes,
        };
    };
    let bodies: Vec<Body> = yard.fixtures.iter().map(Body::of).collect();
    let edges = margins::edges(&yard);
    let openings = doors::openings(&yard, &bodies, &mut notes);

    let mut rules = Rules {
        grid: &grid,
        ledger,
        standard: zones,
        notes: &mut notes,
    };
    let equipment: Vec<Equipment> = bodies
        .iter()
        .map(|body| Equipment {
            body,
            zones: rules.zones(body),
        })
        .filter(|equipment| !equipment.zones.is_empty())
        .collect();
    neighbours::pairs(&grid, &equipment, zones, ledger, &mut notes);
    neighbours::obstructions(&grid, &equipment, &bodies, &edges, ledger, &mut notes);
    neighbours::outside(&yard, &bodies, &mut notes);
    surfaces::under_equipment(&yard, &bodies, &mut notes);

    let mut patches = footprints(&bodies);
    patches.extend(equipment.iter().flat_map(clear_zones));
    patches.extend(margins::of_fixtures(&grid, &bodies, ledger));
    patches.extend(surfaces::patches(&grid, &yard, ledger, &mut notes));
    patches.extend(surfaces::remarks(&yard, &mut notes));
    patches.extend(margins::of_edges(&grid, &edges, ledger));
    patches.extend(doors::patches(&openings, ledger));
    let walks = Walks {
        grid: &grid,
        yard: &yard,
        bodies: &bodies,
        equipment: &equipment,
        openings: &openings,
        ledger,
    };
    let (routes, corridors) = walks.all(&mut notes);
    patches.extend(corridors);

    // The whole patches are taken away, not their pieces cut to the yard: a cut edge is
    // rounded, and would leave a hair of free ground along the yard's rim.
    let shapes = patches.iter().flat_map(|patch| &patch.shape);
    let left = grid.minus([&yard.boundary], shapes);
    let blocked = cut(&grid, &yard.boundary, patches);
    let (free, slivers) = without_slivers(left);
    let value = Ground {
        yard: yard.boundary,
        free,
        blocked,
        routes,
        slivers,
    };
    Noted { value, notes }
}

fn footprints(bodies: &[Body]) -> Vec<Patch> {
    let patch =
        |body: &Body| Patch::new(body.footprint(), Why::Footprint, &body.fixture.name, None);
    bodies.iter().map(patch).collect()
}

fn clear_zones(equipment: &Equipment) -> Vec<Patch> {
    let name = &equipment.body.fixture.name;
    let patch = |zone: &zones::Zone| Patch {
        alone: zone.alone,
        ..Patch::new(zone.shape.clone(), Why::ClearZone, name, Some(zone.rule))
    };
    equipment.zones.iter().map(patch).collect()
}

/// Cuts patches to the yard; a patch may fall into several pieces.
fn cut(grid: &Grid, boundary: &Polygon<f64>, patches: Vec<Patch>) -> Vec<Blocked> {
    let mut blocked = Vec::new();
    for Patch {
        shape,
        why,
        of,
        rule,
        alone,
    } in patches
    {
        let pieces = grid.shared(&shape, [boundary]);
        blocked.extend(pieces.0.into_iter().map(|polygon| Blocked {
            polygon,
            why,
            of: of.clone(),
            rule,
            alone,
        }));
    }
    blocked
}

fn without_slivers(left: MultiPolygon<f64>) -> (MultiPolygon<f64>, (usize, f64)) {
    let (kept, slivers): (Vec<_>, Vec<_>) = left
        .0
        .into_iter()
        .partition(|piece| piece.unsigned_area() >= SLIVER);
    let area = slivers
        .iter()
        .fold(0.0, |sum, piece| sum + piece.unsigned_area());
    (MultiPolygon(kept), (slivers.len(), area))
}

/// The answer for a yard that is none.
fn nothing(yard: &Yard) -> Ground {
    Ground {
        yard: yard.boundary.clone(),
        free: MultiPolygon(Vec::new()),
        blocked: Vec::new(),
        routes: Vec::new(),
        slivers: (0, 0.0),
    }
}
