//! The most likely route of each start cell and length.
//!
//! A shortest path in the product of (cell before, cell, contact state), by dynamic
//! programming from the end: exact, because a contact's chance depends on no more than that.

use children::Side;
use marking::{Cell, Takes};

use crate::contact::{Chance, Goer};
use crate::gait::{Contact, Follow, Stand};
use crate::ways::Net;

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
            (start, onward.iter().map(|layer| most(layer)).collect())
        })
        .collect()
}

fn starts(net: &Net) -> impl Iterator<Item = usize> {
    let cells = net.figure.cells.iter().enumerate();
    cells.filter(|(_, cell)| cell.start).map(|(start, _)| start)
}

/// How a child may stand on a start cell.
pub(crate) fn stands(goer: &Goer, cell: &Cell, foot: Option<Side>) -> impl Iterator<Item = Stand> {
    let gait = &goer.gait;
    gait.starts(cell.run_up)
        .filter(move |state| gait.stands(*state, foot))
        .filter(|state| gait.wheels || takes(cell, state.contact))
}

/// Whether a line of the gait may land on a cell, however it is reached.
pub(crate) fn lands(goer: &Goer, follow: &Follow, foot: Option<Side>, cell: &Cell) -> bool {
    let gait = &goer.gait;
    (gait.wheels || takes(cell, follow.then.contact)) && gait.lands(follow, foot)
}

/// Whether the gait may travel so against the facing.
pub(crate) fn travels(goer: &Goer, cos_alpha: Option<f64>) -> bool {
    match cos_alpha {
        Some(cos_alpha) if goer.gait.across => sideways(cos_alpha, goer),
        _ => true,
    }
}

struct Search<'a> {
    net: &'a Net<'a>,
    goer: &'a Goer<'a>,
    foot: Option<Side>,
    /// log p of each edge's contact as a route's first, kind by kind.
    first: Vec<Vec<f64>>,
    /// The same in the order of the net's turns; straight back and what wheels cannot turn
    /// are ruled out.
    after: Vec<Vec<f64>>,
    /// For each line and edge: whether the gait may land so on that cell.
    lands: Vec<Vec<bool>>,
}

impl<'a> Search<'a> {
    fn new(net: &'a Net, goer: &'a Goer, foot: Option<Side>, landings: &[f64]) -> Search<'a> {
        let log_p: Vec<Vec<f64>> = goer
            .kinds
            .iter()
            .map(|kind| {
                let rho = kind.reach.at(0.0, goer.model);
                let log_p = |spacing| Chance::of(goer, kind, spacing, landings).log_p(rho);
                net.spacings.iter().map(log_p).collect()
            })
            .collect();
        let mut turns: Vec<Option<usize>> = (0..net.turns()).map(|place| net.turn(place)).collect();
        if goer.gait.wheels {
            rule_out_tight_turns(net, goer, &mut turns);
        }
        let after = log_p
            .iter()
            .map(|log_p| {
                turns
                    .iter()
                    .map(|turn| turn.map_or(f64::NEG_INFINITY, |t| log_p[t]))
                    .collect()
            })
            .collect();
        let first = log_p
            .iter()
            .map(|log_p| net.edges.iter().map(|edge| log_p[edge.first]).collect())
            .collect();
        let lands = goer
            .gait
            .follows
            .iter()
            .map(|follow| {
                net.edges
                    .iter()
                    .map(|edge| {
                        travels(goer, net.spacings[edge.first].cos_alpha)
                            && lands(goer, follow, foot, &net.figure.cells[edge.to])
                    })
                    .collect()
            })
            .collect();
        Search {
            net,
            goer,
            foot,
            first,
            after,
            lands,
        }
    }

    /// `onward()[left][line][edge]`: the greatest log p of what follows the landing of that
    /// line over that edge, with `left` flights still to come and an end cell last.
    fn onward(&self, longest: usize) -> Vec<Vec<Vec<f64>>> {
        let (net, gait) = (self.net, &self.goer.gait);
        let ends = gait
            .follows
            .iter()
            .zip(&self.lands)
            .map(|(follow, lands)| {
                net.edges
                    .iter()
                    .zip(lands)
                    .map(|(edge, lands)| {
                        let end = net.figure.cells[edge.to].end && follow.then.phase >= gait.done;
                        if end && *lands {
                            0.0
                        } else {
                            f64::NEG_INFINITY
                        }
                    })
                    .collect()
            })
            .collect();
        let mut layers: Vec<Vec<Vec<f64>>> = vec![ends];
        for left in 1..longest {
            let later = &layers[left - 1];
            let layer: Vec<Vec<f64>> = (0..gait.follows.len())
                .map(|line| self.layer(line, later))
                .collect();
            // Nothing can be lengthened any more.
            if layer.iter().flatten().all(|log| *log == f64::NEG_INFINITY) {
                break;
            }
            layers.push(layer);
        }
        layers
    }

    fn layer(&self, line: usize, later: &[Vec<f64>]) -> Vec<f64> {
        let follows = self.goer.gait.follows;
        let state = follows[line].then;
        let mut layer = vec![f64::NEG_INFINITY; self.net.edges.len()];
        for next in self.lines(state) {
            for (number, (edge, best)) in self.net.edges.iter().zip(&mut layer).enumerate() {
                let later = self.later(next, edge.to, later);
                *best = best.max(greatest(self.here(next, edge.to, Some(number)), later));
            }
        }
        for (best, lands) in layer.iter_mut().zip(&self.lands[line]) {
            if !lands {
                *best = f64::NEG_INFINITY;
            }
        }
        layer
    }

    /// The most likely route of as many flights as there are layers. Among equally likely
    /// ones, contact by contact: the right foot first, then the smallest cell.
    fn best(&self, start: usize, onward: &[Vec<Vec<f64>>]) -> Option<Found> {
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
            let chosen = self.lines(state).filter_map(|line| {
                let logs = self
                    .here(line, here, edge)
                    .iter()
                    .zip(self.later(line, here, layer));
                // The followers come in the order of their cells.
                let (k, log) = logs
                    .map(|(here, later)| here + later)
                    .enumerate()
                    .find(|(_, log)| most - log <= tie)?;
                let next = self.net.out(here).start + k;
                Some((
                    gait.follows[line].then,
                    self.net.edges[next].to,
                    line,
                    next,
                    k,
                    log,
                ))
            });
            let (then, to, line, next, k, log) =
                chosen.min_by_key(|(then, to, ..)| (*then, *to))?;
            let spacing = match edge {
                None => self.net.edges[next].first,
                Some(edge) => self
                    .net
                    .turn(self.net.after(&self.net.edges[edge]).start + k)?,
            };
            steps.push(Step {
                edge: next,
                spacing,
                line,
            });
            tie -= most - log;
            most = layer[line][next];
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
    fn from(&self, start: usize, state: Stand, layer: &[Vec<f64>]) -> f64 {
        self.lines(state)
            .map(|line| greatest(self.here(line, start, None), self.later(line, start, layer)))
            .fold(f64::NEG_INFINITY, f64::max)
    }

    /// The lines of the gait that may follow a state.
    fn lines(&self, state: Stand) -> impl Iterator<Item = usize> + '_ {
        let follows = self.goer.gait.follows;
        (0..follows.len()).filter(move |line| follows[*line].after == state)
    }

    /// log p of a line's contact over each edge out of a cell, after an edge or first.
    fn here(&self, line: usize, cell: usize, edge: Option<usize>) -> &[f64] {
        let kind = self.goer.kind_of[line];
        match edge {
            None => &self.first[kind][self.net.out(cell)],
            Some(edge) => &self.after[kind][self.net.after(&self.net.edges[edge])],
        }
    }

    /// The greatest log p of what follows over each of these edges.
    fn later<'b>(&self, line: usize, cell: usize, layer: &'b [Vec<f64>]) -> &'b [f64] {
        &layer[line][self.net.out(cell)]
    }
}

/// The greatest sum of two logs. Lanes do not wait for each other; which is greatest does not
/// hang on the order.
fn greatest(here: &[f64], later: &[f64]) -> f64 {
    const LANES: usize = 4;
    let take = |best: &mut f64, here: &f64, later: &f64| {
        let log = here + later;
        *best = if log > *best { log } else { *best };
    };
    if here.len() < LANES {
        let mut best = f64::NEG_INFINITY;
        for (here, later) in std::iter::zip(here, later) {
            take(&mut best, here, later);
        }
        return best;
    }
    let mut best = [f64::NEG_INFINITY; LANES];
    let (here, later) = (here.chunks_exact(LANES), later.chunks_exact(LANES));
    let rest = std::iter::zip(here.remainder(), later.remainder());
    for (here, later) in std::iter::zip(here, later) {
        for ((best, here), later) in best.iter_mut().zip(here).zip(later) {
            take(best, here, later);
        }
    }
    for (best, (here, later)) in best.iter_mut().zip(rest) {
        take(best, here, later);
    }
    best.into_iter().fold(f64::NEG_INFINITY, f64::max)
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

/// Whether travel is across the facing.
pub(crate) fn sideways(cos_alpha: f64, goer: &Goer) -> bool {
    // A row square to the facing, or right on the limit, must not hang on a last bit.
    const SAME: f64 = 1e-9;
    let [most, least] = goer.model.sideways;
    cos_alpha <= most + SAME && cos_alpha >= least - SAME
}

/// Wheels turn on an arc that touches both displacements, and its ends must lie within half
/// of each: radius x tan(phi/2) <= half the shorter.
fn rule_out_tight_turns(net: &Net, goer: &Goer, turns: &mut [Option<usize>]) {
    for edge in &net.edges {
        let before = net.spacings[edge.first].d;
        for place in net.after(edge) {
            let Some(spacing) = turns[place].map(|turn| &net.spacings[turn]) else {
                continue;
            };
            let half = libm::sqrt((1.0 - spacing.cos_phi) / (1.0 + spacing.cos_phi));
            if goer.model.wheels_turn * half > before.min(spacing.d) / 2.0 + 1e-9 {
                turns[place] = None;
            }
        }
    }
}
