//! The most likely route of each start cell and length.
//!
//! A shortest path in the product of (cell before, cell, contact state), by dynamic
//! programming from the end: exact, because a contact's chance depends on no more than that.

use std::borrow::Cow;

use children::Side;

use crate::contact::{Goer, LogP};
use crate::gait::{Contact, Stand};
use crate::moves::{Move, Moves, stands, travels};
use crate::net::{Edge, LANES, Net};
use crate::reach::Fewest;

/// Routes whose log p differ by less than this are equally likely.
const TIE: f64 = 1e-12;

/// One flight of a route.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Step {
    /// Number of the edge.
    pub edge: usize,
    /// Number of the spacing.
    pub spacing: usize,
    /// Number of the gait's line.
    pub line: usize,
}

/// A route as found.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    pub start: usize,
    /// How one stands at the start.
    pub stand: Contact,
    pub steps: Vec<Step>,
}

/// Every kept route of up to so many flights, by start cell and then n.
pub(crate) fn routes(
    net: &Net,
    goer: &Goer,
    foot: Option<Side>,
    landings: &[f64],
    longest: usize,
) -> Vec<Found> {
    if longest == 0 || net.edges.is_empty() || !net.figure.cells.iter().any(|cell| cell.start) {
        return Vec::new();
    }
    let search = Search::new(net, goer, foot, landings);
    let onward = search.onward(longest);
    let mut found = Vec::new();
    for start in starts(net) {
        for left in 0..onward.len() {
            found.extend(search.best(start, &onward[..=left]));
        }
    }
    found
}

/// For each start cell the greatest log p of a route of 1, 2, ... flights.
pub(crate) fn greatest_logs(
    net: &Net,
    goer: &Goer,
    foot: Option<Side>,
    landings: &[f64],
) -> Vec<(usize, Vec<f64>)> {
    let search = Search::new(net, goer, foot, landings);
    let onward = search.onward(goer.model.longest);
    starts(net)
        .map(|start| {
            let most = |layer| {
                let logs = stands(goer, &net.figure.cells[start], foot);
                logs.map(|state| search.from(start, state, layer))
                    .fold(f64::NEG_INFINITY, f64::max)
            };
            (start, onward.iter().map(most).collect())
        })
        .collect()
}

fn starts(net: &Net) -> impl Iterator<Item = usize> {
    let cells = net.figure.cells.iter().enumerate();
    cells.filter(|(_, cell)| cell.start).map(|(start, _)| start)
}

/// The greatest log p of what follows each edge: by the class of the state in which it lands.
type Layer = Vec<Vec<f64>>;

struct Search<'a> {
    net: &'a Net<'a>,
    goer: &'a Goer<'a>,
    foot: Option<Side>,
    moves: Moves,
    fewest: Fewest,
    /// log p of each edge's contact as a route's first, kind by kind.
    first: Vec<Vec<f64>>,
    /// The same in the order of the net's turns; straight back and what wheels cannot turn
    /// are ruled out.
    after: Vec<Vec<[f64; LANES]>>,
}

impl<'a> Search<'a> {
    fn new(net: &'a Net, goer: &'a Goer, foot: Option<Side>, landings: &[f64]) -> Search<'a> {
        let log_p: Vec<Vec<f64>> = goer
            .kinds
            .iter()
            .map(|kind| {
                let log_p = LogP::of(goer, kind, landings);
                net.spacings
                    .iter()
                    .map(|spacing| log_p.at(spacing))
                    .collect()
            })
            .collect();
        let mut turns = Cow::Borrowed(&net.turns);
        if goer.gait.across {
            rule_out_travel(net, goer, turns.to_mut());
        }
        if goer.gait.wheels {
            rule_out_tight_turns(net, goer, turns.to_mut());
        }
        let after = log_p
            .iter()
            .map(|log_p| {
                let log = |turn: Option<u32>| turn.map_or(f64::NEG_INFINITY, |t| log_p[t as usize]);
                turns.iter().map(|lanes| lanes.map(log)).collect()
            })
            .collect();
        let log = |log_p: &[f64], edge: &Edge| {
            if travels(goer, net.spacings[edge.first].cos_alpha) {
                log_p[edge.first]
            } else {
                f64::NEG_INFINITY
            }
        };
        let first = log_p
            .iter()
            .map(|log_p| net.edges.iter().map(|edge| log(log_p, edge)).collect())
            .collect();
        let moves = Moves::of(net.figure, goer, foot);
        Search {
            net,
            goer,
            foot,
            fewest: Fewest::of(net, goer, foot, &moves),
            moves,
            first,
            after,
        }
    }

    /// `onward()[left][class][edge]`: the greatest log p of what follows a landing in that
    /// class over that edge, with `left` flights still to come and an end cell last.
    fn onward(&self, longest: usize) -> Vec<Layer> {
        let net = self.net;
        let classes = 0..self.moves.classes.len();
        let ends = |class: usize| {
            net.edges
                .iter()
                .map(|edge| {
                    if self.fewest.may(class, edge.to, 0, longest) {
                        0.0
                    } else {
                        f64::NEG_INFINITY
                    }
                })
                .collect()
        };
        let mut layers: Vec<Layer> = vec![classes.clone().map(ends).collect()];
        for left in 1..longest {
            let later = &layers[left - 1];
            let mut layer: Layer = Vec::with_capacity(classes.len());
            for class in classes.clone() {
                let like = self.moves.classes[class].like;
                layer.push(if like < class {
                    layer[like].clone()
                } else {
                    self.layer(class, left, longest, later)
                });
            }
            // Nothing can be lengthened any more.
            if layer.iter().flatten().all(|log| *log == f64::NEG_INFINITY) {
                break;
            }
            layers.push(layer);
        }
        layers
    }

    /// The edges into a cell go side by side: none waits for the greatest of another.
    fn layer(&self, class: usize, left: usize, longest: usize, later: &Layer) -> Vec<f64> {
        let (net, classes) = (self.net, &self.moves.classes);
        let alike = || (0..classes.len()).filter(|other| classes[*other].like == class);
        let may = |cell| alike().any(|class| self.fewest.may(class, cell, left, longest));
        let mut layer = vec![f64::NEG_INFINITY; net.edges.len()];
        for cell in (0..net.figure.cells.len()).filter(|cell| may(*cell)) {
            let out = net.out(cell);
            for (edges, turns) in net.abreast(cell) {
                let mut best = [f64::NEG_INFINITY; LANES];
                for next in &classes[class].moves {
                    let here = &self.after[next.kind][turns.clone()];
                    let later = &later[next.then][out.clone()];
                    for (here, later) in std::iter::zip(here, later) {
                        for (best, here) in best.iter_mut().zip(here) {
                            let log = here + later;
                            *best = if log > *best { log } else { *best };
                        }
                    }
                }
                for (edge, best) in std::iter::zip(edges, best) {
                    layer[*edge] = best;
                }
            }
        }
        layer
    }

    /// The most likely route of as many flights as there are layers. Among equally likely
    /// ones, contact by contact: the right foot first, then the smallest cell.
    fn best(&self, start: usize, onward: &[Layer]) -> Option<Found> {
        let gait = &self.goer.gait;
        let cell = &self.net.figure.cells[start];
        let stands: Vec<Stand> = stands(self.goer, cell, self.foot).collect();
        let last = onward.last()?;
        let best = |state: Stand| self.from(start, state, last);
        let most = stands
            .iter()
            .map(|state| best(*state))
            .fold(f64::NEG_INFINITY, f64::max);
        if most == f64::NEG_INFINITY {
            return None;
        }
        let stand = stands
            .into_iter()
            .find(|state| most - best(*state) <= TIE)?;
        // What a choice loses against the best from there is taken off the tie, so that no
        // rounding of long sums can rule out the best itself.
        let mut tie = TIE - (most - best(stand));
        let mut most = best(stand);
        let (mut state, mut here, mut edge) = (stand, start, None);
        let mut steps = Vec::with_capacity(onward.len());
        for layer in onward.iter().rev() {
            let lines = gait.follows.iter().enumerate();
            let lines = lines.filter(|(_, follow)| follow.after == state);
            let chosen = lines.filter_map(|(line, follow)| {
                if !gait.lands(follow, self.foot) {
                    return None;
                }
                let next = Move {
                    kind: self.goer.kind_of[line],
                    then: self.moves.class(follow.then),
                };
                // The followers come in the order of their cells.
                let (k, log) = self
                    .logs(next, here, edge, layer)
                    .enumerate()
                    .find(|(_, log)| most - log <= tie)?;
                let edge = self.net.out(here).start + k;
                let to = self.net.edges[edge].to;
                Some((follow.then, to, line, edge, k, log, layer[next.then][edge]))
            });
            let (then, to, line, next, k, log, later) =
                chosen.min_by_key(|(then, to, ..)| (*then, *to))?;
            let spacing = match edge {
                None => self.net.edges[next].first,
                Some(edge) => self.net.turn(edge, k)?,
            };
            steps.push(Step {
                edge: next,
                spacing,
                line,
            });
            tie -= most - log;
            most = later;
            (state, here, edge) = (then, to, Some(next));
        }
        Some(Found {
            start,
            stand: stand.contact,
            steps,
        })
    }

    /// The greatest log p of a route from a start and a stand, with that layer after its first
    /// flight.
    fn from(&self, start: usize, state: Stand, layer: &Layer) -> f64 {
        let moves = self.moves.after(state).iter();
        moves
            .flat_map(|next| self.logs(*next, start, None, layer))
            .fold(f64::NEG_INFINITY, f64::max)
    }

    /// The greatest log p of a route that goes on by a move over each edge out of a cell, after
    /// an edge or first.
    fn logs<'b>(
        &'b self,
        next: Move,
        cell: usize,
        edge: Option<usize>,
        layer: &'b Layer,
    ) -> impl Iterator<Item = f64> + 'b {
        let out = self.net.out(cell);
        let later = &layer[next.then][out.clone()];
        let (first, after) = (&self.first[next.kind], &self.after[next.kind]);
        let turns = edge.map(|edge| self.net.lane(edge));
        let here = move |k: usize| match turns {
            None => first[out.start + k],
            Some((turns, lane)) => after[turns + k][lane],
        };
        later
            .iter()
            .enumerate()
            .map(move |(k, later)| here(k) + later)
    }
}

/// A gait that goes sideways rules out travel that does not.
fn rule_out_travel(net: &Net, goer: &Goer, turns: &mut [[Option<u32>; LANES]]) {
    for number in 0..net.edges.len() {
        let (start, lane) = net.lane(number);
        let out = &net.edges[net.out(net.edges[number].to)];
        for (k, next) in out.iter().enumerate() {
            if !travels(goer, net.spacings[next.first].cos_alpha) {
                turns[start + k][lane] = None;
            }
        }
    }
}

/// Wheels turn on an arc that touches both displacements, and its ends must lie within half
/// of each: radius x tan(phi/2) <= half the shorter.
fn rule_out_tight_turns(net: &Net, goer: &Goer, turns: &mut [[Option<u32>; LANES]]) {
    for (number, edge) in net.edges.iter().enumerate() {
        let before = net.spacings[edge.first].d;
        let (start, lane) = net.lane(number);
        for turns in &mut turns[start..start + net.out(edge.to).len()] {
            let Some(spacing) = turns[lane].map(|turn| &net.spacings[turn as usize]) else {
                continue;
            };
            let half = libm::sqrt((1.0 - spacing.cos_phi) / (1.0 + spacing.cos_phi));
            if goer.model.wheels_turn * half > before.min(spacing.d) / 2.0 + 1e-9 {
                turns[lane] = None;
            }
        }
    }
}
