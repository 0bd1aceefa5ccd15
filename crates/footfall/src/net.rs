//! Ways over a figure's cells, all of them or some, with every turn from one into the next.

use std::collections::HashMap;
use std::hash::BuildHasherDefault;
use std::ops::Range;

use marking::Figure;

use crate::figures::Model;
use crate::landing::overlap;
use crate::ways::{Mixed, Spacing, Travel, Ways, fine};

/// The family whose cells are aims along two banks.
///
/// Water parts them however near they are, so a crossing's two spots never overlap; the
/// page's worked example of a brook counts its narrowest crossing.
const BROOK: &str = "brook";

/// From one cell to a follower.
#[derive(Clone, Debug)]
pub(crate) struct Edge {
    pub from: usize,
    pub to: usize,
    /// Its place among the edges into that cell.
    place: usize,
    /// The contact as a route's first.
    pub first: usize,
    /// Whether the two cells share ground.
    pub overlap: bool,
}

/// Edges into a cell that are worked on side by side.
pub(crate) const LANES: usize = 8;

/// Ways over a figure's cells, all of them or some, with every turn from one into the next.
#[derive(Clone, Debug)]
pub(crate) struct Net<'a> {
    pub figure: &'a Figure,
    /// By cell of departure, then of arrival.
    pub edges: Vec<Edge>,
    /// The edges out of each cell.
    out: Vec<Range<usize>>,
    /// The edges into each cell.
    pub into: Vec<Vec<usize>>,
    /// Where the turns on each cell begin.
    turns_on: Vec<usize>,
    /// For each cell, for each [`LANES`] edges into it and each edge out of it: the numbers
    /// of the contacts' spacings, `None` for straight back.
    pub turns: Vec<[Option<u32>; LANES]>,
    pub spacings: Vec<Spacing>,
}

impl<'a> Net<'a> {
    /// - `keep`: of each travel, whether it is one of them
    pub fn of(ways: &Ways<'a>, model: &Model, keep: impl Fn(usize) -> bool) -> Net<'a> {
        let figure = ways.figure;
        let cells = &figure.cells;
        let mut net = Net {
            figure,
            edges: Vec::new(),
            out: Vec::with_capacity(cells.len()),
            into: vec![Vec::new(); cells.len()],
            turns_on: Vec::with_capacity(cells.len()),
            turns: Vec::new(),
            spacings: Vec::new(),
        };
        let mut known = Known::of(ways.firsts.len());
        let mut travels = Vec::new();
        for (from, cell) in cells.iter().enumerate() {
            let start = net.edges.len();
            for number in ways.out(from).filter(|number| keep(*number)) {
                let travel = &ways.travels[number];
                let to = travel.to;
                let first = known.first(travel, ways.shape_of[to]);
                let overlap = figure.family != BROOK && overlap(cell, &cells[to], model.overlap);
                net.into[to].push(net.edges.len());
                net.edges.push(Edge {
                    from,
                    to,
                    place: net.into[to].len() - 1,
                    first,
                    overlap,
                });
                travels.push(travel);
            }
            net.out.push(start..net.edges.len());
        }
        let mut turns = 0;
        for (into, out) in std::iter::zip(&net.into, &net.out) {
            net.turns_on.push(turns);
            turns += into.len().div_ceil(LANES) * out.len();
        }
        net.turns = vec![[None; LANES]; turns];
        for number in 0..net.edges.len() {
            let Edge { from, to, .. } = net.edges[number];
            let (start, lane) = net.lane(number);
            let turns = net.turns[start..].iter_mut();
            let after = std::iter::zip(
                &net.edges[net.out[to].clone()],
                &travels[net.out[to].clone()],
            );
            for ((after, travel), turns) in after.zip(turns) {
                if after.to != from {
                    let cos_phi = travels[number].turn(travel);
                    turns[lane] = Some(known.number(after.first, travel, cos_phi));
                }
            }
        }
        net.spacings = known.spacings;
        net
    }

    /// The edges out of a cell.
    pub fn out(&self, cell: usize) -> Range<usize> {
        self.out[cell].clone()
    }

    /// The edges into a cell, [`LANES`] at a time, each time with the places in [`Net::turns`] of
    /// what may follow, in the order of [`Net::out`].
    pub fn abreast(&self, cell: usize) -> impl Iterator<Item = (&[usize], Range<usize>)> {
        let (start, out) = (self.turns_on[cell], self.out[cell].len());
        let chunks = self.into[cell].chunks(LANES).enumerate();
        chunks.map(move |(chunk, edges)| {
            let start = start + chunk * out;
            (edges, start..start + out)
        })
    }

    /// Where in [`Net::turns`] that begins which may follow an edge, and its lane there.
    pub fn lane(&self, edge: usize) -> (usize, usize) {
        let Edge { to, place, .. } = self.edges[edge];
        let start = self.turns_on[to] + place / LANES * self.out[to].len();
        (start, place % LANES)
    }

    /// The spacing of the contact over the k-th edge that may follow an edge.
    pub fn turn(&self, edge: usize, k: usize) -> Option<usize> {
        let (start, lane) = self.lane(edge);
        self.turns[start + k][lane].map(|turn| turn as usize)
    }
}

/// The spacings of some of the ways, each once.
struct Known {
    /// The number of each of the figure's firsts, where it is among them.
    firsts: Vec<Option<u32>>,
    /// By straight on and turn.
    turned: HashMap<[i64; 2], u32, BuildHasherDefault<Mixed>>,
    spacings: Vec<Spacing>,
}

impl Known {
    fn of(firsts: usize) -> Known {
        Known {
            firsts: vec![None; firsts],
            turned: HashMap::default(),
            spacings: Vec::new(),
        }
    }

    /// The number of a travel straight on.
    fn first(&mut self, travel: &Travel, cell: usize) -> usize {
        let number = self.firsts[travel.first].get_or_insert_with(|| {
            self.spacings.push(travel.straight_on(cell));
            self.spacings.len() as u32 - 1
        });
        *number as usize
    }

    /// The number of a travel after a turn.
    ///
    /// - `first`: its number straight on
    fn number(&mut self, first: usize, travel: &Travel, cos_phi: f64) -> u32 {
        let turn = fine(cos_phi);
        if turn == fine(1.0) {
            return first as u32;
        }
        let Known {
            turned, spacings, ..
        } = self;
        *turned.entry([first as i64, turn]).or_insert_with(|| {
            spacings.push(Spacing {
                cos_phi,
                ..travel.straight_on(spacings[first].cell)
            });
            spacings.len() as u32 - 1
        })
    }
}
