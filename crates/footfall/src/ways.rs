//! The geometry of a figure's cells, worked out once for all children and gaits.

use std::collections::BTreeMap;
use std::ops::Range;

use geo::Coord;
use marking::{Cell, Figure, Outline};

use crate::figures::Model;
use crate::landing::overlap;

/// The family whose cells are aims along two banks.
///
/// Water parts them however near they are, so a crossing's two spots never overlap; the
/// page's worked example of a brook counts its narrowest crossing.
const BROOK: &str = "brook";

/// Contacts nearer alike than this are one: metres, and the same number for cosines. Six
/// orders under what is handed on, and it lets a straight row be reckoned once.
const ALIKE: f64 = 1e-12;

/// From one cell to a follower.
#[derive(Clone, Debug)]
pub(crate) struct Edge {
    pub from: usize,
    pub to: usize,
    /// Where its contacts begin in [`Ways::turns`].
    turns: usize,
    /// The contact as a route's first.
    pub first: usize,
    /// Whether the two cells share ground.
    pub overlap: bool,
}

/// What a contact's chance depends on, apart from the child: distance, turn, facing and the
/// shape that is landed in.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Spacing {
    /// Metres between the centres.
    pub d: f64,
    /// Of the turn from the displacement before.
    pub cos_phi: f64,
    /// Of travel against the figure's facing.
    pub cos_alpha: Option<f64>,
    /// A cell of the shape that is landed in.
    pub cell: usize,
}

/// All ways over a figure's cells.
#[derive(Debug)]
pub(crate) struct Ways<'a> {
    pub figure: &'a Figure,
    /// By cell of departure, then of arrival.
    pub edges: Vec<Edge>,
    /// The edges out of each cell.
    out: Vec<Range<usize>>,
    /// For each edge and each edge that may follow it: the number of the contact's spacing,
    /// `None` for straight back.
    turns: Vec<Option<usize>>,
    pub spacings: Vec<Spacing>,
    /// The cells of different shape.
    pub shapes: Vec<usize>,
}

impl<'a> Ways<'a> {
    pub fn of(figure: &'a Figure, model: &Model) -> Ways<'a> {
        let cells = &figure.cells;
        let (shape_of, shapes) = shapes(cells);
        let mut ways = Ways {
            figure,
            edges: Vec::new(),
            out: Vec::new(),
            turns: Vec::new(),
            spacings: Vec::new(),
            shapes,
        };
        let mut known = BTreeMap::new();
        let mut travels = Vec::new();
        for (from, cell) in cells.iter().enumerate() {
            let start = ways.edges.len();
            let mut followers: Vec<usize> = match &cell.next {
                Some(next) => next
                    .iter()
                    .copied()
                    .filter(|to| *to < cells.len())
                    .collect(),
                None => (0..cells.len()).collect(),
            };
            followers.sort_unstable();
            followers.dedup();
            for to in followers.into_iter().filter(|to| *to != from) {
                let travel = Travel::between(figure, cell, &cells[to]);
                let first = ways.spacing(&mut known, &travel, 1.0, shape_of[to]);
                let overlap = figure.family != BROOK && overlap(cell, &cells[to], model.overlap);
                ways.edges.push(Edge {
                    from,
                    to,
                    turns: 0,
                    first,
                    overlap,
                });
                travels.push(travel);
            }
            ways.out.push(start..ways.edges.len());
        }
        for number in 0..ways.edges.len() {
            let Edge { from, to, .. } = ways.edges[number];
            ways.edges[number].turns = ways.turns.len();
            for after in ways.out[to].clone() {
                let there = ways.edges[after].to;
                let turn = (there != from).then(|| {
                    let cos_phi = travels[number].turn(&travels[after]);
                    ways.spacing(&mut known, &travels[after], cos_phi, shape_of[there])
                });
                ways.turns.push(turn);
            }
        }
        ways
    }

    /// The edges out of a cell.
    pub fn out(&self, cell: usize) -> Range<usize> {
        self.out[cell].clone()
    }

    /// The places in [`Ways::turn`] of what may follow an edge, in the order of
    /// [`Ways::out`].
    pub fn after(&self, edge: &Edge) -> Range<usize> {
        edge.turns..edge.turns + self.out[edge.to].len()
    }

    /// The spacing of one contact after another.
    pub fn turn(&self, place: usize) -> Option<usize> {
        self.turns[place]
    }

    /// How many turns there are.
    pub fn turns(&self) -> usize {
        self.turns.len()
    }

    fn spacing(
        &mut self,
        known: &mut BTreeMap<[i64; 4], usize>,
        travel: &Travel,
        cos_phi: f64,
        cell: usize,
    ) -> usize {
        let fine = |value: f64| (value / ALIKE).round() as i64;
        let facing = travel.cos_alpha.map_or(i64::MAX, fine);
        *known
            .entry([fine(travel.d), fine(cos_phi), facing, cell as i64])
            .or_insert_with(|| {
                let Travel { d, cos_alpha, .. } = *travel;
                self.spacings.push(Spacing {
                    d,
                    cos_phi,
                    cos_alpha,
                    cell,
                });
                self.spacings.len() - 1
            })
    }
}

/// One displacement.
struct Travel {
    d: f64,
    /// Unit vector; zero where the centres coincide.
    heading: Coord<f64>,
    cos_alpha: Option<f64>,
}

impl Travel {
    fn between(figure: &Figure, here: &Cell, there: &Cell) -> Travel {
        let by = there.centre - here.centre;
        let d = libm::hypot(by.x, by.y);
        let heading = if d > 0.0 {
            by / d
        } else {
            Coord { x: 0.0, y: 0.0 }
        };
        let cos_alpha = figure.facing.map(|facing| {
            (heading.x * libm::cos(facing) + heading.y * libm::sin(facing)).clamp(-1.0, 1.0)
        });
        Travel {
            d,
            heading,
            cos_alpha,
        }
    }

    /// cos phi of the turn into the next displacement.
    fn turn(&self, next: &Travel) -> f64 {
        let (a, b) = (self.heading, next.heading);
        if (a.x == 0.0 && a.y == 0.0) || (b.x == 0.0 && b.y == 0.0) {
            return 1.0;
        }
        (a.x * b.x + a.y * b.y).clamp(-1.0, 1.0)
    }
}

/// For each cell the first of its shape, and the list of these.
fn shapes(cells: &[Cell]) -> (Vec<usize>, Vec<usize>) {
    let mut known: BTreeMap<Vec<i64>, usize> = BTreeMap::new();
    let fine = |value: f64| (value / ALIKE).round() as i64;
    let shape_of: Vec<usize> = cells
        .iter()
        .enumerate()
        .map(|(number, cell)| {
            let key = match &cell.outline {
                Outline::Disc { radius } => vec![fine(*radius)],
                Outline::Polygon(polygon) => std::iter::once(polygon.exterior())
                    .chain(polygon.interiors())
                    .flat_map(|ring| ring.coords().chain(std::iter::once(&cell.centre)))
                    .flat_map(|at| [fine(at.x - cell.centre.x), fine(at.y - cell.centre.y)])
                    .collect(),
            };
            *known.entry(key).or_insert(number)
        })
        .collect();
    let mut shapes: Vec<usize> = known.into_values().collect();
    shapes.sort_unstable();
    (shape_of, shapes)
}
