//! What comes in at the door is held against what the rules can work with.

use geo::{Area, Coord, CoordsIter, Polygon, Validation};
use note::{Fact, Note, Place, msg};

use crate::grid::Grid;
use crate::shapes;
use crate::yard::{Fixture, Footprint, More, Yard};

/// A yard that the rules can work with, on its grid; `None`, with an error among the
/// notes, when the boundary bounds nothing. Outlines that cross themselves are replaced
/// by their hulls, places that are none are left out, and both are told.
pub fn yard(yard: &Yard, notes: &mut Vec<Note>) -> Option<(Grid, Yard)> {
    let corners = yard.boundary.coords_iter();
    let Some(grid) = Grid::over(corners) else {
        notes.push(Note::error(None, msg!("yard-no-place")).mend(msg!("yard-check-readings")));
        return None;
    };
    let boundary = on_grid(&grid, &yard.boundary);
    if boundary.unsigned_area() < LEAST {
        notes.push(Note::error(None, msg!("yard-no-area")).mend(msg!("yard-check-readings")));
        return None;
    }
    if !boundary.is_valid() {
        notes.push(Note::error(None, msg!("yard-crosses-itself")).mend(msg!("yard-check-order")));
        return None;
    }
    let mut sound = Yard {
        boundary,
        ..yard.clone()
    };
    sound
        .fixtures
        .retain_mut(|fixture| fixture_is_sound(&grid, fixture, notes));
    for surface in &mut sound.surfaces {
        let name = crate::surfaces::word(surface.is);
        outline_is_sound(&grid, &mut surface.outline, name, &surface.at, notes);
    }
    sound
        .surfaces
        .retain(|surface| !surface.outline.exterior().0.is_empty());
    for remark in &mut sound.remarks {
        outline_is_sound(&grid, &mut remark.outline, "note", &remark.at, notes);
    }
    sound
        .remarks
        .retain(|remark| !remark.outline.exterior().0.is_empty());
    sound
        .edges
        .retain(|edge| edge.line.coords().all(|&at| placed(&grid, at)));
    sound
        .doors
        .retain(|door| all_placed(&grid, &door.jambs, &door.name, &door.at, notes));
    sound
        .gates
        .retain(|gate| all_placed(&grid, &gate.posts, &gate.name, &gate.at, notes));
    Some((grid, sound))
}

/// Square metres of the least yard: what is smaller is a slip of the tape.
const LEAST: f64 = 0.01;

/// Metres of the largest radius of a disc that a fixture can have.
const LARGEST_DISC: f64 = 50.0;

fn placed(grid: &Grid, at: Coord<f64>) -> bool {
    at.x.is_finite() && at.y.is_finite() && grid.reaches(at)
}

fn all_placed(
    grid: &Grid,
    points: &[Coord<f64>],
    name: &str,
    at: &Option<Place>,
    notes: &mut Vec<Note>,
) -> bool {
    let all = points.iter().all(|&point| placed(grid, point));
    if !all {
        notes.push(Note::error(at.clone(), msg!("place-outside", name = name)));
    }
    all
}

/// The boundary on the grid, outer ring anticlockwise, holes clockwise.
fn on_grid(grid: &Grid, boundary: &Polygon<f64>) -> Polygon<f64> {
    use geo::orient::{Direction, Orient};
    let ring = |ring: &geo::LineString<f64>| {
        let points = grid.ring(ring);
        geo::LineString(points.into_iter().map(|point| grid.metres(point)).collect())
    };
    let holes = boundary.interiors().iter().map(ring).collect();
    Polygon::new(ring(boundary.exterior()), holes).orient(Direction::Default)
}

fn fixture_is_sound(grid: &Grid, fixture: &mut Fixture, notes: &mut Vec<Note>) -> bool {
    let (name, at) = (fixture.name.clone(), fixture.at.clone());
    if let More::Slide { exit } = &mut fixture.more {
        *exit = exit.filter(|exit| all_placed(grid, exit, &name, &at, notes));
    }
    match &mut fixture.shape {
        Footprint::Outline(outline) => {
            outline_is_sound(grid, outline, &name, &at, notes);
            !outline.exterior().0.is_empty()
        }
        Footprint::Disc { centre, radius } => {
            if !(*radius >= 0.0 && *radius <= LARGEST_DISC) {
                let wrong = msg!("radius-odd", name = &name, radius = Fact::Length(*radius));
                notes.push(Note::error(at.clone(), wrong));
                return false;
            }
            all_placed(grid, &[*centre], &name, &at, notes)
        }
        Footprint::Beam(a, b) => all_placed(grid, &[*a, *b], &name, &at, notes),
    }
}

/// Leaves the outline as it is, takes its hull where it crosses itself, or empties it
/// where a place is none.
fn outline_is_sound(
    grid: &Grid,
    outline: &mut Polygon<f64>,
    name: &str,
    at: &Option<Place>,
    notes: &mut Vec<Note>,
) {
    use geo::ConvexHull;
    let corners: Vec<_> = outline.exterior().coords().copied().collect();
    if !all_placed(grid, &corners, name, at, notes) {
        *outline = shapes::closed(Vec::new());
        return;
    }
    let rounded = on_grid(grid, outline);
    if !rounded.is_valid() {
        notes.push(
            Note::warning(at.clone(), msg!("outline-crosses-itself", name = name))
                .mend(msg!("outline-check-order")),
        );
        *outline = rounded.convex_hull();
    }
}
