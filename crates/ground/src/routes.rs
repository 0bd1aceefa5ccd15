//! Walks kept open between doors, gates and fixtures.
//!
//! A walk of width w is the way of a disc of that width: what stands and the yard's rim
//! are grown by w/2, swings' and slide exits' zones too, and the shortest line through
//! what is left is the middle of the walk.

use geo::{Coord, Distance, Euclidean, Intersects, LineString, MultiPolygon, Point, Polygon};
use ledger::Ledger;
use note::{Fact, Note, msg};

use crate::body::{Body, Part, part};
use crate::doors::Opening;
use crate::figures::{NARROW_WIDTH, PLAY_WIDTH};
use crate::grid::{Grid, SNAP};
use crate::neighbours::Equipment;
use crate::patch::Patch;
use crate::result::{Route, Why};
use crate::shapes;
use crate::walk;
use crate::yard::{FixtureKind, Wanted, Yard};

/// Metres in one more than which a way is not looked for: no walk is wider.
const WIDEST: f64 = 20.0;

/// What the walks have to know.
pub struct Walks<'a> {
    pub grid: &'a Grid,
    pub yard: &'a Yard,
    pub bodies: &'a [Body<'a>],
    pub equipment: &'a [Equipment<'a>],
    pub openings: &'a [Opening<'a>],
    pub ledger: &'a Ledger,
}

/// An end of a walk.
enum End<'a> {
    Opening(&'a Opening<'a>),
    Body(&'a Body<'a>),
}

impl Walks<'_> {
    /// All walks wanted, each with its corridor, which is blocked.
    pub fn all(&self, notes: &mut Vec<Note>) -> (Vec<Route>, Vec<Patch>) {
        let (mut routes, mut patches) = (Vec::new(), Vec::new());
        for wanted in &self.yard.routes {
            let Some((from, to)) = self.ends(wanted, notes) else {
                continue;
            };
            if !(wanted.width > 0.0 && wanted.width <= WIDEST) {
                notes.push(
                    Note::error(
                        wanted.at.clone(),
                        msg!("route-width-odd", from = &wanted.from, to = &wanted.to),
                    )
                    .expected(msg!("route-width-usual", width = self.length(PLAY_WIDTH))),
                );
                continue;
            }
            let line = self.walk(&from, &to, wanted.width);
            if let Some(line) = &line {
                let corridor = shapes::along(self.grid, &line.0, wanted.width / 2.0);
                let of = format!("{}-{}", wanted.from, wanted.to);
                patches.push(Patch::new(corridor, Why::Route, &of, None));
            } else {
                notes.push(self.no_way(wanted, &from, &to));
            }
            let length = line.as_ref().map_or(0.0, walked);
            routes.push(Route {
                from: wanted.from.clone(),
                to: wanted.to.clone(),
                width: wanted.width,
                line,
                length,
            });
        }
        (routes, patches)
    }

    fn length(&self, key: ledger::Key) -> Fact {
        Fact::Length(self.ledger.number(key))
    }

    fn ends(&self, wanted: &Wanted, notes: &mut Vec<Note>) -> Option<(End<'_>, End<'_>)> {
        let mut find = |name: &String| {
            let opening = self.openings.iter().find(|opening| opening.name == name);
            let body = || self.bodies.iter().find(|body| &body.fixture.name == name);
            let end = opening.map(End::Opening).or_else(|| body().map(End::Body));
            if end.is_none() {
                let what = msg!("route-end-unknown", name = name);
                notes.push(Note::error(wanted.at.clone(), what).mend(msg!("route-name-end")));
            }
            end
        };
        let (from, to) = (find(&wanted.from), find(&wanted.to));
        from.zip(to)
    }

    /// The ground on which the middle of a walk of this width may lie.
    fn ground(&self, width: f64, ends: [&End; 2]) -> MultiPolygon<f64> {
        let half = width / 2.0;
        let is_end = |body: &Body| {
            ends.iter()
                .any(|end| matches!(end, End::Body(own) if std::ptr::eq(own.fixture, body.fixture)))
        };
        let mut taken = Vec::new();
        let boundary = &self.yard.boundary;
        for ring in std::iter::once(boundary.exterior()).chain(boundary.interiors()) {
            taken.extend(shapes::along(self.grid, &ring.0, half));
        }
        for body in self
            .bodies
            .iter()
            .filter(|body| stands(body) && !is_end(body))
        {
            taken.extend(body.grown(self.grid, half));
        }
        for equipment in self
            .equipment
            .iter()
            .filter(|equipment| !is_end(equipment.body))
        {
            let moving = equipment.zones.iter().filter(|zone| zone.moving);
            for piece in moving.flat_map(|zone| &zone.shape) {
                taken.extend(shapes::grown(self.grid, open_ring(piece), half));
            }
        }
        self.grid.minus([boundary], &taken)
    }

    /// The shortest walk of this width, from middle to middle of the ends.
    fn walk(&self, from: &End, to: &End, width: f64) -> Option<LineString<f64>> {
        let ground = self.ground(width, [from, to]);
        // One door may have two sides: the shortest over all.
        let mut best: Option<(f64, LineString<f64>)> = None;
        for start in entries(from, width, self.grid, &ground) {
            for goal in entries(to, width, self.grid, &ground) {
                let Some(way) = walk::shortest(self.grid, &ground, start.inside, goal.inside)
                else {
                    continue;
                };
                let mut line = vec![self.grid.round(start.outside)];
                line.extend(way);
                line.push(self.grid.round(goal.outside));
                line.dedup();
                let line = self.cut_at_ends(line, from, to, width);
                let long = walked(&line);
                if best.as_ref().is_none_or(|(shortest, _)| long < *shortest) {
                    best = Some((long, line));
                }
            }
        }
        best.map(|(_, line)| line)
    }

    /// Cuts what lies on a fixture that the walk leads to.
    fn cut_at_ends(
        &self,
        mut line: Vec<Coord<f64>>,
        from: &End,
        to: &End,
        width: f64,
    ) -> LineString<f64> {
        for end in [from, to] {
            if let End::Body(body) = end {
                let own = body.grown(self.grid, width / 2.0);
                let at_front = std::ptr::eq(end, from);
                if at_front {
                    line.reverse();
                }
                line = until(line, &own);
                if at_front {
                    line.reverse();
                }
            }
        }
        LineString(line.into_iter().map(|at| self.grid.round(at)).collect())
    }

    /// Tells that there is no way, and how wide one there would be.
    fn no_way(&self, wanted: &Wanted, from: &End, to: &End) -> Note {
        // a hundredth of a metre: the tape's own reading
        const NEAR: f64 = 0.01;
        let (mut passes, mut fails) = (0.0, wanted.width);
        while fails - passes > NEAR {
            let width = (passes + fails) / 2.0;
            match self.walk(from, to, width) {
                Some(_) => passes = width,
                None => fails = width,
            }
        }
        let (names, at) = ((&wanted.from, &wanted.to), wanted.at.clone());
        let wide = Fact::Length(wanted.width);
        let note = if passes < 2.0 * NEAR {
            Note::warning(
                at,
                msg!("route-none", from = names.0, to = names.1, width = wide),
            )
        } else {
            Note::warning(
                at,
                msg!(
                    "route-too-narrow",
                    from = names.0,
                    to = names.1,
                    width = wide,
                    widest = Fact::Length((passes / NEAR).floor() * NEAR)
                ),
            )
            .expected(msg!("route-may-narrow", narrow = self.length(NARROW_WIDTH)))
        };
        note.mend(msg!("route-clear-way"))
    }
}

/// Whether one has to walk round it.
fn stands(body: &Body) -> bool {
    match part(body.fixture.is) {
        Part::Drain => body.fixture.is == FixtureKind::Hydrant,
        _ => true,
    }
}

/// Where a walk comes to an end: the end itself, and the ground's point next to it.
struct Entry {
    outside: Coord<f64>,
    inside: Coord<f64>,
}

fn entries(end: &End, width: f64, grid: &Grid, ground: &MultiPolygon<f64>) -> Vec<Entry> {
    // metres by which jambs may lie off their wall, and a corner may push a walk aside
    const ASIDE: f64 = 0.5;
    match end {
        End::Opening(opening) => {
            let outside = opening.middle();
            let before = |&inward: &Coord<f64>| {
                let ideal = outside + inward * (width / 2.0 + 3.0 * SNAP);
                let inside = nearest(grid, ground, ideal, ASIDE)?;
                Some(Entry { outside, inside })
            };
            opening.inward.iter().filter_map(before).collect()
        }
        End::Body(body) => {
            let outside = body.middle();
            let reach = body
                .ring
                .iter()
                .map(|&at| shapes::length(at - outside))
                .fold(body.radius, f64::max);
            nearest(grid, ground, outside, reach + width + ASIDE)
                .map(|inside| Entry { outside, inside })
                .into_iter()
                .collect()
        }
    }
}

/// The point of the ground nearest to a point, if it lies within reach.
fn nearest(
    grid: &Grid,
    ground: &MultiPolygon<f64>,
    at: Coord<f64>,
    reach: f64,
) -> Option<Coord<f64>> {
    let at = grid.round(at);
    if ground.intersects(&at) {
        return Some(at);
    }
    let mut near: Vec<(f64, Coord<f64>)> = Vec::new();
    for ring in ground
        .0
        .iter()
        .flat_map(|p| std::iter::once(p.exterior()).chain(p.interiors()))
    {
        for side in ring.lines() {
            let Some(way) = shapes::direction(side.start, side.end) else {
                continue;
            };
            let long = shapes::length(side.end - side.start);
            let along = shapes::dot(at - side.start, way).clamp(0.0, long);
            let foot = side.start + way * along;
            let off = shapes::length(foot - at);
            if off <= reach {
                // a step inside, so that the grid does not round it out again
                let inside = grid.round(foot + shapes::left(way) * (2.0 * SNAP));
                near.push((off, inside));
                near.push((shapes::length(side.start - at), side.start));
            }
        }
    }
    near.sort_by(|one, other| one.0.total_cmp(&other.0));
    near.into_iter()
        .map(|(_, inside)| inside)
        .find(|inside| ground.intersects(inside))
}

/// A line up to its first point on any of the shapes.
fn until(line: Vec<Coord<f64>>, shapes: &[Polygon<f64>]) -> Vec<Coord<f64>> {
    let on = |at: &Coord<f64>| shapes.iter().any(|shape| shape.intersects(at));
    let mut kept: Vec<Coord<f64>> = Vec::new();
    for at in line {
        if let Some(&before) = kept.last()
            && on(&at)
        {
            let step = geo::Line::new(before, at);
            let rims = shapes.iter().flat_map(|shape| shape.exterior().lines());
            let first = rims
                .filter_map(|rim| geo::line_intersection::line_intersection(step, rim))
                .flat_map(|meeting| match meeting {
                    geo::LineIntersection::SinglePoint { intersection, .. } => vec![intersection],
                    geo::LineIntersection::Collinear { intersection } => {
                        vec![intersection.start, intersection.end]
                    }
                })
                .min_by(|a, b| {
                    let off = |at: &Coord<f64>| shapes::length(*at - before);
                    off(a).total_cmp(&off(b))
                });
            kept.push(first.unwrap_or(at));
            return kept;
        }
        kept.push(at);
    }
    kept
}

fn open_ring(piece: &Polygon<f64>) -> &[Coord<f64>] {
    let ring = &piece.exterior().0;
    &ring[..ring.len().saturating_sub(1)]
}

fn walked(line: &LineString<f64>) -> f64 {
    let steps = line
        .lines()
        .map(|step| Euclidean.distance(Point(step.start), Point(step.end)));
    (steps.sum::<f64>() * 1e6).round() / 1e6
}
