//! What a gait may do on a figure, states that come to the same told once.
//!
//! Where every cell takes either foot, what may follow the left foot is what may follow the
//! right one, and so the search need not ask twice.

use children::Side;
use marking::{Cell, Figure, Takes};

use crate::contact::Goer;
use crate::gait::{Contact, Stand};

/// The states of a gait on a figure, by what may follow them.
#[derive(Debug)]
pub(crate) struct Moves {
    /// In order, each with its class.
    states: Vec<(Stand, usize)>,
    pub classes: Vec<Class>,
}

/// States that take the same cells and of which the same may follow.
#[derive(Debug)]
pub(crate) struct Class {
    /// Whether each cell takes such a contact.
    pub takes: Vec<bool>,
    /// Whether a route may end so.
    pub done: bool,
    /// The first class that takes the same cells and has the same moves: but for the end, what
    /// follows is the same.
    pub like: usize,
    /// Whether some move lands so; else one only stands so at a start.
    pub landed: bool,
    pub moves: Vec<Move>,
}

/// A flight that may follow.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Move {
    /// Number of its kind.
    pub kind: usize,
    /// Number of the class in which it lands.
    pub then: usize,
}

impl Moves {
    pub fn of(figure: &Figure, goer: &Goer, foot: Option<Side>) -> Moves {
        let gait = &goer.gait;
        let mut states: Vec<Stand> = gait
            .follows
            .iter()
            .flat_map(|follow| [follow.after, follow.then])
            .collect();
        states.sort_unstable();
        states.dedup();
        let place = |state: Stand| states.partition_point(|other| *other < state);
        let takes: Vec<Vec<bool>> = states
            .iter()
            .map(|state| {
                let takes = |cell| gait.wheels || takes(cell, state.contact);
                figure.cells.iter().map(takes).collect()
            })
            .collect();
        let done = |state: usize| states[state].phase >= gait.done;

        // By line: the state before, the kind, the state after.
        let mut lines: Vec<[usize; 3]> = std::iter::zip(gait.follows, &goer.kind_of)
            .filter(|(follow, _)| gait.lands(follow, foot))
            .map(|(follow, kind)| [place(follow.after), *kind, place(follow.then)])
            .collect();
        // A flight into a state that no cell takes, or from which no end is reached, is none.
        loop {
            let before = lines.len();
            let leads = |state| done(state) || lines.iter().any(|[after, ..]| *after == state);
            let ends: Vec<bool> = (0..states.len())
                .map(|state| leads(state) && takes[state].contains(&true))
                .collect();
            lines.retain(|[.., then]| ends[*then]);
            if lines.len() == before {
                break;
            }
        }

        // States are one until something tells them apart: what they take, whether they end,
        // then what follows, and what follows that.
        let mut class_of = vec![0; states.len()];
        let moves = |state: usize, class_of: &[usize]| {
            let mut moves: Vec<Move> = lines
                .iter()
                .filter(|[after, ..]| *after == state)
                .map(|&[_, kind, then]| Move {
                    kind,
                    then: class_of[then],
                })
                .collect();
            moves.sort_unstable();
            moves.dedup();
            moves
        };
        let mut known = 0;
        let firsts = loop {
            let mut firsts: Vec<usize> = Vec::new();
            let finer = (0..states.len())
                .map(|state| {
                    let alike = |first: &usize| {
                        class_of[*first] == class_of[state]
                            && takes[*first] == takes[state]
                            && done(*first) == done(state)
                            && moves(*first, &class_of) == moves(state, &class_of)
                    };
                    firsts.iter().position(alike).unwrap_or_else(|| {
                        firsts.push(state);
                        firsts.len() - 1
                    })
                })
                .collect();
            class_of = finer;
            if firsts.len() == known {
                break firsts;
            }
            known = firsts.len();
        };
        let mut classes: Vec<Class> = firsts
            .into_iter()
            .map(|first| Class {
                takes: takes[first].clone(),
                done: done(first),
                like: 0,
                landed: false,
                moves: moves(first, &class_of),
            })
            .collect();
        for number in 0..classes.len() {
            let Class { takes, moves, .. } = &classes[number];
            let like = |other: &Class| other.takes == *takes && other.moves == *moves;
            classes[number].like = classes.iter().position(like).unwrap_or(number);
        }
        for [.., then] in lines {
            classes[class_of[then]].landed = true;
        }
        Moves {
            states: std::iter::zip(states, class_of).collect(),
            classes,
        }
    }

    /// The class of a state of the gait.
    pub fn class(&self, state: Stand) -> usize {
        let place = self.states.partition_point(|(other, _)| *other < state);
        self.states.get(place).map_or(0, |(_, class)| *class)
    }

    /// What may follow a state.
    pub fn after(&self, state: Stand) -> &[Move] {
        &self.classes[self.class(state)].moves
    }
}

/// How a child may stand on a start cell.
pub(crate) fn stands(goer: &Goer, cell: &Cell, foot: Option<Side>) -> impl Iterator<Item = Stand> {
    let gait = &goer.gait;
    gait.starts(cell.run_up)
        .filter(move |state| gait.stands(*state, foot))
        .filter(|state| gait.wheels || takes(cell, state.contact))
}

/// Whether the gait may travel so against the facing.
pub(crate) fn travels(goer: &Goer, cos_alpha: Option<f64>) -> bool {
    match cos_alpha {
        Some(cos_alpha) if goer.gait.across => sideways(cos_alpha, goer),
        _ => true,
    }
}

/// Whether travel is across the facing.
pub(crate) fn sideways(cos_alpha: f64, goer: &Goer) -> bool {
    // A row square to the facing, or right on the limit, must not hang on a last bit.
    const SAME: f64 = 1e-9;
    let [most, least] = goer.model.sideways;
    cos_alpha <= most + SAME && cos_alpha >= least - SAME
}

/// Whether a cell takes a contact.
fn takes(cell: &Cell, contact: Contact) -> bool {
    match cell.takes {
        Takes::One => contact != Contact::B,
        Takes::Both => contact == Contact::B,
        Takes::Either => true,
        Takes::Left => contact == Contact::L,
        Takes::Right => contact == Contact::R,
    }
}
