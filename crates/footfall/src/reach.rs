//! When a route may be where: the fewest flights from a start, and to an end.
//!
//! A landing on a cell that no start leads to, or from which no end is left in the flights
//! still to come, is on no route, and is not asked for.

use children::Side;

use crate::contact::Goer;
use crate::moves::{Moves, stands};
use crate::net::Net;

/// By class and cell: the fewest flights of a route up to a landing there, and of one from
/// there to an end; `usize::MAX` where there is none.
pub(crate) struct Fewest {
    since: Vec<Vec<usize>>,
    until: Vec<Vec<usize>>,
}

impl Fewest {
    pub fn of(net: &Net, goer: &Goer, foot: Option<Side>, moves: &Moves) -> Fewest {
        let cells = &net.figure.cells;
        let by_cell = || cells.iter().enumerate();
        let classes = || moves.classes.iter().enumerate();
        let ends = classes()
            .filter(|(_, class)| class.done && class.landed)
            .flat_map(|(number, _)| {
                let ends = by_cell().filter(|(_, cell)| cell.end);
                ends.map(move |(cell, _)| (number, cell))
            });
        let before = |class: usize, cell: usize| {
            let by_move = classes().filter(move |(_, before)| {
                let mut moves = before.moves.iter();
                before.landed && moves.any(|next| next.then == class)
            });
            by_move.flat_map(move |(before, _)| {
                let edges = net.into[cell].iter();
                edges.map(move |edge| (before, net.edges[*edge].from))
            })
        };
        let after = |class: usize, cell: usize| {
            moves.classes[class].moves.iter().flat_map(move |next| {
                let edges = &net.edges[net.out(cell)];
                edges.iter().map(|edge| (next.then, edge.to))
            })
        };
        let firsts = by_cell()
            .filter(|(_, cell)| cell.start)
            .flat_map(|(start, cell)| {
                let states = stands(goer, cell, foot).map(|state| moves.class(state));
                states.flat_map(move |class| after(class, start))
            });
        Fewest {
            until: fewest(moves, ends.collect(), 0, before),
            since: fewest(moves, firsts.collect(), 1, after),
        }
    }

    /// Whether a landing of a class on a cell may be on a route of no more than `longest`
    /// flights, with `left` of them still to come.
    pub fn may(&self, class: usize, cell: usize, left: usize, longest: usize) -> bool {
        self.until[class][cell] <= left && self.since[class][cell] <= longest - left
    }
}

/// - `here`: where so many `flights` may be enough
/// - `on`: where one more leads
fn fewest<On: Iterator<Item = (usize, usize)>>(
    moves: &Moves,
    mut here: Vec<(usize, usize)>,
    mut flights: usize,
    on: impl Fn(usize, usize) -> On,
) -> Vec<Vec<usize>> {
    let classes = moves.classes.iter();
    let mut fewest: Vec<Vec<usize>> = classes
        .map(|class| vec![usize::MAX; class.takes.len()])
        .collect();
    while !here.is_empty() {
        here.retain(|(class, cell)| {
            let new = moves.classes[*class].takes[*cell] && fewest[*class][*cell] == usize::MAX;
            if new {
                fewest[*class][*cell] = flights;
            }
            new
        });
        let mut next = Vec::new();
        for (class, cell) in here {
            let on = on(class, cell);
            next.extend(on.filter(|(class, cell)| fewest[*class][*cell] == usize::MAX));
        }
        (here, flights) = (next, flights + 1);
    }
    fewest
}
