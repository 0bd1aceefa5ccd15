//! Where wheels get to: the yard flooded from its doors and gates at a wheel's clear width.

use geo::Coord;
use ground::yard::{Footprint, SurfaceKind, Yard};

use crate::geometry::{Segment, bounds, edges, inside, to_segment};

/// Squares of ground, and whether wheels reach them.
pub(crate) struct Reach {
    low: Coord<f64>,
    columns: usize,
    rows: usize,
    reached: Vec<bool>,
}

/// Metres: a third of a wheel's way, so that no gap as wide as it is missed.
const STEP: f64 = 0.3;

impl Reach {
    /// `None` where no door and no gate says where wheels come from.
    pub(crate) fn new(yard: &Yard, width: f64) -> Option<Reach> {
        let boundary = edges(&yard.boundary);
        let mut starts: Vec<Segment> = yard
            .doors
            .iter()
            .map(|door| (door.jambs[0], door.jambs[1]))
            .collect();
        starts.extend(yard.gates.iter().map(|gate| (gate.posts[0], gate.posts[1])));
        boundary.first()?;
        starts.first()?;
        let (low, high) = bounds(boundary.iter().map(|(a, _)| *a));
        let many = |length: f64| (length / STEP).clamp(0.0, 2000.0) as usize + 2;
        let (columns, rows) = (many(high.x - low.x), many(high.y - low.y));
        let solid: Vec<(Vec<Segment>, f64)> = yard
            .fixtures
            .iter()
            .map(|fixture| match &fixture.shape {
                Footprint::Outline(polygon) => (edges(polygon), 0.0),
                Footprint::Disc { centre, radius } => (vec![(*centre, *centre)], *radius),
                Footprint::Beam(a, b) => (vec![(*a, *b)], 0.0),
            })
            .collect();
        let soft: Vec<Vec<Segment>> = yard
            .surfaces
            .iter()
            .filter(|surface| {
                matches!(
                    surface.is,
                    SurfaceKind::LooseFill | SurfaceKind::Sand | SurfaceKind::Mulch
                )
            })
            .map(|surface| edges(&surface.outline))
            .collect();
        let rolls = |p: Coord<f64>| {
            inside(p, &boundary)
                && solid.iter().all(|(ring, grown)| {
                    !inside(p, ring)
                        && ring
                            .iter()
                            .all(|side| to_segment(p, *side) - grown >= width / 2.0)
                })
                && !soft.iter().any(|ring| inside(p, ring))
        };
        let mut reach = Reach {
            low,
            columns,
            rows,
            reached: vec![false; columns * rows],
        };
        let middle = |at: usize| Coord {
            x: low.x + STEP * (at % columns) as f64,
            y: low.y + STEP * (at / columns) as f64,
        };
        // A start is a spot beside the opening, as far in as a wheel's way is wide.
        let mut todo: Vec<usize> = (0..columns * rows)
            .filter(|at| {
                starts
                    .iter()
                    .any(|way| to_segment(middle(*at), *way) <= width)
                    && rolls(middle(*at))
            })
            .collect();
        for at in &todo {
            reach.reached[*at] = true;
        }
        while let Some(at) = todo.pop() {
            let (row, column) = (at / columns, at % columns);
            let beside = [
                (column > 0).then(|| at - 1),
                (column + 1 < columns).then_some(at + 1),
                (row > 0).then(|| at - columns),
                (row + 1 < rows).then_some(at + columns),
            ];
            for next in beside.into_iter().flatten() {
                if !reach.reached[next] && rolls(middle(next)) {
                    reach.reached[next] = true;
                    todo.push(next);
                }
            }
        }
        Some(reach)
    }

    /// Whether wheels get anywhere at all.
    pub(crate) fn anywhere(&self) -> bool {
        self.reached.contains(&true)
    }

    /// Whether wheels get to a square at or next to a place.
    pub(crate) fn reaches(&self, p: Coord<f64>) -> bool {
        let column = ((p.x - self.low.x) / STEP).round();
        let row = ((p.y - self.low.y) / STEP).round();
        (-1..=1).any(|down| {
            (-1..=1).any(|right| {
                let (column, row) = (column + f64::from(right), row + f64::from(down));
                column >= 0.0
                    && row >= 0.0
                    && column < self.columns as f64
                    && row < self.rows as f64
                    && self.reached[row as usize * self.columns + column as usize]
            })
        })
    }
}
