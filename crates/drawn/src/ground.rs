//! The ground that a drawn figure needs in use.

use geo::{ConvexHull, Coord, LineString, MultiPoint, Polygon, coord};
use marking::{Cell, Lane, Outline, Paint};

/// Metres of the ledger that an envelope is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Beside cells and lanes.
    pub sway: f64,
    /// Behind a start.
    pub behind: f64,
    /// Round a waiting spot.
    pub wait: f64,
    /// Before a leap.
    pub run_up: f64,
    /// After a lane.
    pub run_out_run: f64,
    /// After all else.
    pub run_out_other: f64,
}

/// Eight corners round a spot, none nearer than `radius`.
fn around(spot: Coord<f64>, radius: f64) -> impl Iterator<Item = Coord<f64>> {
    let eighth = std::f64::consts::FRAC_PI_4;
    let out = radius / libm::cos(eighth / 2.0);
    (0..8).map(move |corner| {
        let (sin, cos) = libm::sincos(eighth * (f64::from(corner) + 0.5));
        coord! { x: spot.x + out * cos, y: spot.y + out * sin }
    })
}

/// An outline grown by so much, roughly and never less.
fn grown(cell: &Cell, by: f64) -> Vec<Coord<f64>> {
    match &cell.outline {
        Outline::Disc { radius } => around(cell.centre, radius + by).collect(),
        Outline::Polygon(outline) => {
            let corners = outline.exterior().coords();
            corners.flat_map(|at| around(*at, by)).collect()
        }
    }
}

fn unit(way: Coord<f64>) -> Option<Coord<f64>> {
    let long = libm::hypot(way.x, way.y);
    (long > 0.0).then(|| way / long)
}

/// The least convex shape round cells with their sway, lanes, paint, run-ups and run-outs;
/// with the ground from the waiting spots to where the way begins.
pub fn envelope(
    paint: &[Paint],
    cells: &[Cell],
    lanes: &[Lane],
    wait: &[Coord<f64>],
    room: &Room,
) -> Polygon<f64> {
    let mut points: Vec<Coord<f64>> = paint
        .iter()
        .flat_map(|paint| paint.polygon.exterior().coords().copied())
        .collect();
    let mut doors = Vec::new();
    for (at, cell) in cells.iter().enumerate() {
        points.extend(grown(cell, room.sway));
        let leads: Vec<usize> = match &cell.next {
            Some(next) => next.clone(),
            None => (0..cells.len()).filter(|other| *other != at).collect(),
        };
        if cell.start {
            doors.push(cell.centre);
            let back = if cell.run_up {
                room.run_up
            } else {
                room.behind
            };
            for next in leads.iter().filter_map(|next| cells.get(*next)) {
                let Some(way) = unit(next.centre - cell.centre) else {
                    continue;
                };
                let by = if cell.run_up { room.sway } else { 0.0 };
                points.extend(grown(cell, by).into_iter().map(|at| at - way * back));
            }
        }
        for next in leads.iter().filter_map(|next| cells.get(*next)) {
            // past the last cell of a way, or one that is said to end it
            let last = next.end && next.next.as_ref().is_none_or(Vec::is_empty);
            if let (true, Some(way)) = (last, unit(next.centre - cell.centre)) {
                let over = grown(next, room.sway).into_iter();
                points.extend(over.map(|at| at + way * room.run_out_other));
            }
        }
    }
    for lane in lanes {
        let half = lane.width / 2.0 + room.sway;
        points.extend(lane.line.coords().flat_map(|at| around(*at, half)));
        doors.extend(lane.line.coords().next());
        let corners = &lane.line.0;
        let ends = [
            (corners.first(), corners.get(1), room.behind),
            (
                corners.last(),
                corners.len().checked_sub(2).and_then(|at| corners.get(at)),
                room.run_out_run,
            ),
        ];
        for (end, inner, by) in ends {
            if let (Some(end), Some(inner)) = (end, inner)
                && let Some(way) = unit(*end - *inner)
            {
                let aside = coord! { x: -way.y, y: way.x } * half;
                let far = *end + way * by;
                points.extend([far + aside, far - aside]);
            }
        }
    }
    let figure = MultiPoint::from(points).convex_hull();
    let nearest = |spot: &Coord<f64>| {
        let far = |door: &Coord<f64>| libm::hypot(door.x - spot.x, door.y - spot.y);
        doors
            .iter()
            .copied()
            .min_by(|a, b| far(a).total_cmp(&far(b)))
    };
    let mut parts = vec![figure];
    let mut waiting: Vec<Coord<f64>> = Vec::new();
    for spot in wait {
        waiting.extend(around(*spot, room.wait));
        waiting.extend(
            nearest(spot)
                .into_iter()
                .flat_map(|door| around(door, room.wait)),
        );
    }
    if !waiting.is_empty() {
        parts.push(MultiPoint::from(waiting).convex_hull());
    }
    let mut shapes = geo::unary_union(&parts).0;
    shapes.sort_by(|a, b| {
        use geo::Area;
        b.unsigned_area().total_cmp(&a.unsigned_area())
    });
    let whole = shapes.into_iter().next();
    whole.map_or_else(
        || Polygon::new(LineString(Vec::new()), Vec::new()),
        |whole| Polygon::new(whole.exterior().clone(), Vec::new()),
    )
}
