//! A fixture's body on the ground, and the part it plays.

use geo::{Centroid, Coord, Distance, Euclidean, Geometry, LineString, Point, Polygon};

use crate::grid::Grid;
use crate::shapes;
use crate::yard::{Fixture, FixtureKind, Footprint};

/// What a fixture asks of the ground round it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Children play on it: a clear zone.
    Equipment,
    /// It stands: a margin.
    Standing,
    /// It lies in the ground, or must be reached: a drain's margin.
    Drain,
    /// Nobody says what it is: the widest zone.
    Unruled,
}

/// The part of each kind (the format reference, "Details that both sides rely on").
pub fn part(kind: FixtureKind) -> Part {
    use FixtureKind::*;
    match kind {
        Slide | Swing | TyreSwing | Climber | Seesaw | Rocker | Roundabout => Part::Equipment,
        House | Tree | Post | Lamp | Bench | Table | Shed | Building | Planter | Sandpit => {
            Part::Standing
        }
        Drain | Cover | Hydrant => Part::Drain,
        Other => Part::Unruled,
    }
}

/// A fixture with its body: all points within `radius` of `ring`.
#[derive(Clone, Debug)]
pub struct Body<'a> {
    /// The fixture.
    pub fixture: &'a Fixture,
    /// An outline, a line of two points, or one point.
    pub ring: Vec<Coord<f64>>,
    /// Metres round it; 0 but for a disc.
    pub radius: f64,
}

impl<'a> Body<'a> {
    /// The body of a fixture.
    pub fn of(fixture: &'a Fixture) -> Body<'a> {
        let (ring, radius) = match &fixture.shape {
            Footprint::Outline(outline) => {
                let ring = outline.exterior();
                let open = ring.0.len().saturating_sub(usize::from(ring.is_closed()));
                (ring.0[..open].to_vec(), 0.0)
            }
            Footprint::Disc { centre, radius } => (vec![*centre], *radius),
            Footprint::Beam(a, b) => (vec![*a, *b], 0.0),
        };
        Body {
            fixture,
            ring,
            radius,
        }
    }

    /// All ground within `by` metres of the body.
    pub fn grown(&self, grid: &Grid, by: f64) -> Vec<Polygon<f64>> {
        shapes::grown(grid, &self.ring, self.radius + by)
    }

    /// The ground that it covers; nothing for a beam overhead.
    pub fn footprint(&self) -> Vec<Polygon<f64>> {
        match self.ring.as_slice() {
            [centre] if self.radius > 0.0 => vec![shapes::disc(*centre, self.radius)],
            [] | [_] | [_, _] => Vec::new(),
            ring => vec![shapes::closed(ring.to_vec())],
        }
    }

    /// Its middle: the centre of mass of an outline, of a beam, of a disc.
    pub fn middle(&self) -> Coord<f64> {
        self.geometry()
            .centroid()
            .map_or(Coord::zero(), |point| point.0)
    }

    /// Metres of ground between two bodies.
    pub fn distance(&self, other: &Body) -> f64 {
        let between = Euclidean.distance(&self.geometry(), &other.geometry());
        (between - self.radius - other.radius).max(0.0)
    }

    /// Metres of ground between the body and a line.
    pub fn distance_to(&self, line: &LineString<f64>) -> f64 {
        let line = Geometry::LineString(line.clone());
        (Euclidean.distance(&self.geometry(), &line) - self.radius).max(0.0)
    }

    /// Metres between the body and the ground inside a boundary; 0 for what stands on it.
    pub fn distance_to_ground(&self, boundary: &Polygon<f64>) -> f64 {
        let ground = Geometry::Polygon(boundary.clone());
        (Euclidean.distance(&self.geometry(), &ground) - self.radius).max(0.0)
    }

    fn geometry(&self) -> Geometry<f64> {
        match self.ring.as_slice() {
            [only] => Geometry::Point(Point(*only)),
            [_, _] => Geometry::LineString(LineString(self.ring.clone())),
            ring => Geometry::Polygon(shapes::closed(ring.to_vec())),
        }
    }
}
