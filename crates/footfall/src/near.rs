//! Of a large figure, the ways on which a child's kept routes run.
//!
//! Where any cell may follow any other, the turns are as the cube of the cells, and nearly
//! all of them lead nowhere: too far, or back. Two bounds say which without telling a turn.
//!
//! From above: were every flight straight on, a route's log p would be a shortest path over
//! the cells alone; no turn makes a flight likelier than the better of straight on and
//! straight back. From below: the best routes over some ways. A travel of which every route,
//! bounded from above, stays under what its start and number of flights are known to reach
//! is on no kept route, nor on one that ties with it.

use children::Side;

use crate::contact::{Goer, Kind, LogP};
use crate::moves::{Class, Moves, stands, travels};
use crate::net::Net;
use crate::routes::greatest_logs;
use crate::ways::{Near, Spacing, Ways};

/// What routes may lose against the bound in the first attempt, in log p.
const FIRST: f64 = 0.15;
/// Times as much in each attempt that leaves a start and a number of flights without a route.
const MORE: f64 = 8.0;
/// Ties and the rounding of long sums, with much to spare: of 1 and of the log.
const SPARE: f64 = 1e-9;

/// The ways on which every kept route runs, and every route that ties with one.
pub(crate) fn near<'a>(
    ways: &Ways<'a>,
    goer: &Goer,
    foot: Option<Side>,
    landings: &[f64],
) -> Net<'a> {
    let bound = Bound::of(ways, goer, foot, landings);
    let net = |live: &[bool]| Net::of(ways, goer.model, |travel| live[travel]);
    let mut loss = FIRST;
    loop {
        let live = bound.live(|_, _, most| most - loss);
        let all = loss.is_infinite();
        let some = net(&live);
        if all {
            return some;
        }
        let reached = greatest_logs(&some, goer, foot, landings);
        let log = |start: usize, n: usize| {
            let of_start = reached.iter().find(|(cell, _)| *cell == start);
            let log = of_start.and_then(|(_, logs)| logs.get(n - 1));
            log.copied().unwrap_or(f64::NEG_INFINITY)
        };
        if bound
            .starts()
            .all(|(start, n)| log(start, n) > f64::NEG_INFINITY)
        {
            let live = bound.live(|start, n, _| {
                let log = log(start, n);
                log - SPARE * (1.0 - log)
            });
            return net(&live);
        }
        loss = if loss > 1e6 {
            f64::INFINITY
        } else {
            loss * MORE
        };
    }
}

/// The bound from above.
struct Bound<'a> {
    ways: &'a Ways<'a>,
    goer: &'a Goer<'a>,
    foot: Option<Side>,
    moves: Moves,
    /// The greatest log p of each travel after any other, kind by kind, nearest first.
    logs: Vec<Logs>,
    /// `most[left][class][cell]`: the greatest log p of so many flights on from a state, an end
    /// cell last; nothing where the cell does not take it.
    most: Vec<Vec<Vec<f64>>>,
}

/// Log p of each travel, in the order of [`Ways::nearest`].
struct Logs {
    of: Vec<f64>,
    /// The greatest from each place to the end of its cell's.
    rest: Vec<f64>,
}

impl<'a> Bound<'a> {
    fn of(
        ways: &'a Ways<'a>,
        goer: &'a Goer<'a>,
        foot: Option<Side>,
        landings: &[f64],
    ) -> Bound<'a> {
        let cells = &ways.figure.cells;
        let moves = Moves::of(ways.figure, goer, foot);
        let ends = |class: &Class| {
            let ends = std::iter::zip(cells, &class.takes);
            ends.map(|(cell, takes)| {
                if *takes && cell.end && class.done {
                    0.0
                } else {
                    f64::NEG_INFINITY
                }
            })
            .collect()
        };
        let mut bound = Bound {
            ways,
            goer,
            foot,
            logs: logs(ways, goer, landings),
            most: vec![moves.classes.iter().map(ends).collect()],
            moves,
        };
        for left in 1..=goer.model.longest {
            let layer = bound.layer(&bound.most[left - 1]);
            if layer.iter().flatten().all(|log| *log == f64::NEG_INFINITY) {
                break;
            }
            bound.most.push(layer);
        }
        bound
    }

    fn layer(&self, later: &[Vec<f64>]) -> Vec<Vec<f64>> {
        let tops: Vec<f64> = later.iter().map(|later| top(later)).collect();
        let classes = &self.moves.classes;
        let mut layer: Vec<Vec<f64>> = Vec::with_capacity(classes.len());
        for (number, class) in classes.iter().enumerate() {
            if class.like < number {
                layer.push(layer[class.like].clone());
                continue;
            }
            let mut alike = classes.iter().filter(|other| other.like == number);
            let landed = alike.any(|class| class.landed);
            let mut here = vec![f64::NEG_INFINITY; class.takes.len()];
            for next in &class.moves {
                let (later, top) = (&later[next.then], tops[next.then]);
                for (cell, most) in here.iter_mut().enumerate() {
                    let asked = landed || self.ways.figure.cells[cell].start;
                    if !(asked && class.takes[cell]) {
                        continue;
                    }
                    for (near, log, rest) in self.out(next.kind, cell) {
                        // Those farther away cannot do more.
                        if rest + top <= *most {
                            break;
                        }
                        let log = log + later[near.to as usize];
                        if log > *most {
                            *most = log;
                        }
                    }
                }
            }
            layer.push(here);
        }
        layer
    }

    /// The travels out of a cell, nearest first: with log p, and the greatest from there on.
    fn out(&self, kind: usize, cell: usize) -> impl Iterator<Item = (&Near, f64, f64)> {
        let (out, logs) = (self.ways.out(cell), &self.logs[kind]);
        let near = self.ways.nearest[out.clone()].iter();
        let logs = std::iter::zip(&logs.of[out.clone()], &logs.rest[out]);
        near.zip(logs)
            .map(|(near, (log, rest))| (near, *log, *rest))
    }

    /// The starts and numbers of flights that the bound leaves a route.
    fn starts(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let cells = self.ways.figure.cells.iter().enumerate();
        let starts = cells.filter(|(_, cell)| cell.start);
        starts.flat_map(move |(start, cell)| {
            (1..self.most.len())
                .filter(move |n| {
                    stands(self.goer, cell, self.foot)
                        .map(|state| self.most[*n][self.moves.class(state)][start])
                        .any(|log| log > f64::NEG_INFINITY)
                })
                .map(move |n| (start, n))
        })
    }

    /// The travels that may be on a route of at least this log p.
    ///
    /// - `least`: of a start, a number of flights, and the bound there
    fn live(&self, least: impl Fn(usize, usize, f64) -> f64) -> Vec<bool> {
        let cells = &self.ways.figure.cells;
        let mut live = vec![false; self.ways.travels.len()];
        // By class and cell: what may still be lost.
        let nowhere = vec![vec![f64::NEG_INFINITY; cells.len()]; self.moves.classes.len()];
        let mut here = nowhere.clone();
        for left in (1..self.most.len()).rev() {
            for (start, cell) in cells.iter().enumerate().filter(|(_, cell)| cell.start) {
                let classes =
                    || stands(self.goer, cell, self.foot).map(|state| self.moves.class(state));
                let most = classes()
                    .map(|class| self.most[left][class][start])
                    .fold(f64::NEG_INFINITY, f64::max);
                if most == f64::NEG_INFINITY {
                    continue;
                }
                let least = least(start, left, most);
                for class in classes() {
                    let loss = self.most[left][class][start] - least;
                    here[class][start] = here[class][start].max(loss);
                }
            }
            let mut there = nowhere.clone();
            let tops: Vec<f64> = self.most[left - 1].iter().map(|later| top(later)).collect();
            for (number, class) in self.moves.classes.iter().enumerate() {
                for next in &class.moves {
                    let (later, top) = (&self.most[left - 1][next.then], tops[next.then]);
                    let there = &mut there[next.then];
                    for (cell, loss) in here[number].iter().enumerate() {
                        if *loss < 0.0 {
                            continue;
                        }
                        let spare = loss - self.most[left][number][cell];
                        for (near, log, rest) in self.out(next.kind, cell) {
                            if spare + (rest + top) < 0.0 {
                                break;
                            }
                            let to = near.to as usize;
                            let loss = spare + (log + later[to]);
                            if loss >= 0.0 {
                                live[near.travel as usize] = true;
                                if loss > there[to] {
                                    there[to] = loss;
                                }
                            }
                        }
                    }
                }
            }
            here = there;
        }
        live
    }
}

/// The greatest log of a layer.
fn top(layer: &[f64]) -> f64 {
    layer.iter().copied().fold(f64::NEG_INFINITY, f64::max)
}

/// The greatest log p of each travel after any other, kind by kind.
fn logs(ways: &Ways, goer: &Goer, landings: &[f64]) -> Vec<Logs> {
    let of_kind = |kind: &Kind| {
        let log_p = LogP::of(goer, kind, landings);
        let log = |spacing: &Spacing| {
            if !travels(goer, spacing.cos_alpha) {
                return f64::NEG_INFINITY;
            }
            let straight = log_p.at(spacing);
            // No figure of the ledger makes a turn a help, but a project's own might.
            if goer.model.g(kind.flight) >= 0.0 {
                return straight;
            }
            let about = Spacing {
                cos_phi: -1.0,
                ..spacing.clone()
            };
            straight.max(log_p.at(&about))
        };
        let of_spacing: Vec<f64> = ways.firsts.iter().map(log).collect();
        let near = ways.nearest.iter();
        let of: Vec<f64> = near.map(|near| of_spacing[near.first as usize]).collect();
        let mut rest = of.clone();
        for cell in 0..ways.figure.cells.len() {
            let mut most = f64::NEG_INFINITY;
            for rest in rest[ways.out(cell)].iter_mut().rev() {
                most = if *rest > most { *rest } else { most };
                *rest = most;
            }
        }
        Logs { of, rest }
    };
    goer.kinds.iter().map(of_kind).collect()
}
