//! What staff can see from where they stand.

use geo::{Coord, Intersects, Line};
use ledger::Ledger;

use crate::body::Body;
use crate::figures::HIDES;
use crate::margins;
use crate::shapes;
use crate::yard::{EdgeKind, Fixture, FixtureKind, Yard};

/// Whether a spot is in sight from a stand: nothing higher than the ledger's figure, no
/// wall and no hedge lies between. A fixture at the stand or the spot itself counts too:
/// nobody sees through the trunk they lean on.
pub fn sees(yard: &Yard, stand: Coord<f64>, spot: Coord<f64>, ledger: &Ledger) -> bool {
    let limit = ledger.number(HIDES);
    let sight = Line::new(stand, spot);
    let hidden = yard
        .fixtures
        .iter()
        .filter(|fixture| hides(fixture, limit))
        .any(|fixture| {
            let body = Body::of(fixture);
            match body.ring.as_slice() {
                [_] => body.distance_to(&sight.into()) <= 0.0,
                _ => body
                    .footprint()
                    .iter()
                    .any(|footprint| footprint.intersects(&sight)),
            }
        });
    let walled = margins::edges(yard)
        .iter()
        .filter(|(kind, _)| matches!(kind, EdgeKind::Wall | EdgeKind::Hedge))
        .flat_map(|(_, line)| line.lines().collect::<Vec<_>>())
        .any(|wall| crosses(wall, sight));
    !hidden && !walled
}

/// Whether a fixture is higher than the limit: by its top, by its height, or by its kind
/// where neither is known. A swing's beam and a seesaw hide nobody.
fn hides(fixture: &Fixture, limit: f64) -> bool {
    use FixtureKind::*;
    match fixture.is {
        Swing | TyreSwing | Seesaw | Drain | Cover => return false,
        _ => {}
    }
    match fixture.top.or(fixture.height) {
        Some(height) => height > limit,
        None => !matches!(
            fixture.is,
            Bench | Table | Planter | Sandpit | Rocker | Hydrant | Roundabout
        ),
    }
}

/// Whether a sight passes from one side of a wall to the other; along it or up to it, it
/// does not.
fn crosses(wall: Line<f64>, sight: Line<f64>) -> bool {
    // metres: a stand at the wall's foot is not behind it
    const AT_WALL: f64 = 0.01;
    let [stand, spot] = off(wall, sight);
    let [from, to] = off(sight, wall);
    stand.min(spot) < -AT_WALL
        && stand.max(spot) > AT_WALL
        && from.min(to) <= 0.0
        && from.max(to) >= 0.0
}

/// Metres of another line's ends left of a line.
fn off(line: Line<f64>, other: Line<f64>) -> [f64; 2] {
    let way = line.end - line.start;
    let long = shapes::length(way).max(f64::MIN_POSITIVE);
    [other.start, other.end].map(|at| shapes::cross(way, at - line.start) / long)
}
