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

use crate::contact::{Chance, Goer, Kind};
use crate::gait::{Follow, Stand};
use crate::routes::{greatest_logs, lands, stands, travels};
use crate::ways::{Near, Net, Spacing, Ways};

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
    states: Vec<Stand>,
    lines: Vec<Line>,
    /// The greatest log p of each travel after any other, kind by kind, nearest first.
    logs: Vec<Logs>,
    /// `most[left][state][cell]`: the greatest log p of so many flights on, an end cell last.
    most: Vec<Vec<Vec<f64>>>,
}

/// Log p of each travel, in the order of [`Ways::nearest`].
struct Logs {
    of: Vec<f64>,
    /// The greatest from each place to the end of its cell's.
    rest: Vec<f64>,
}

/// A line of the gait.
struct Line {
    after: usize,
    then: usize,
    kind: usize,
    /// Whether it may land on each cell.
    lands: Vec<bool>,
}

impl<'a> Bound<'a> {
    fn of(
        ways: &'a Ways<'a>,
        goer: &'a Goer<'a>,
        foot: Option<Side>,
        landings: &[f64],
    ) -> Bound<'a> {
        let follows = goer.gait.follows;
        let cells = &ways.figure.cells;
        let mut states: Vec<Stand> = follows
            .iter()
            .flat_map(|follow| [follow.after, follow.then])
            .collect();
        states.sort_unstable();
        states.dedup();
        let place = |state: Stand| states.partition_point(|other| *other < state);
        let line = |(follow, kind): (&Follow, &usize)| Line {
            after: place(follow.after),
            then: place(follow.then),
            kind: *kind,
            lands: cells
                .iter()
                .map(|cell| lands(goer, follow, foot, cell))
                .collect(),
        };
        let lines = std::iter::zip(follows, &goer.kind_of).map(line).collect();
        let mut bound = Bound {
            ways,
            goer,
            foot,
            lines,
            logs: logs(ways, goer, landings),
            most: vec![
                states
                    .iter()
                    .map(|state| {
                        let ends = |cell: &marking::Cell| cell.end && state.phase >= goer.gait.done;
                        let log = |end| if end { 0.0 } else { f64::NEG_INFINITY };
                        cells.iter().map(|cell| log(ends(cell))).collect()
                    })
                    .collect(),
            ],
            states,
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
        let cells = self.ways.figure.cells.len();
        let mut layer = vec![vec![f64::NEG_INFINITY; cells]; self.states.len()];
        for line in &self.lines {
            let (later, top) = line.later(later);
            let logs = &self.logs[line.kind];
            for (cell, most) in layer[line.after].iter_mut().enumerate() {
                for place in self.ways.out(cell) {
                    // Those farther away cannot do more.
                    if logs.rest[place] + top <= *most {
                        break;
                    }
                    let log = logs.of[place] + later[self.ways.nearest[place].to];
                    if log > *most {
                        *most = log;
                    }
                }
            }
        }
        layer
    }

    /// The starts and numbers of flights that the bound leaves a route.
    fn starts(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let cells = self.ways.figure.cells.iter().enumerate();
        let starts = cells.filter(|(_, cell)| cell.start);
        starts.flat_map(move |(start, cell)| {
            (1..self.most.len())
                .filter(move |n| {
                    stands(self.goer, cell, self.foot)
                        .any(|state| self.most[*n][self.place(state)][start] > f64::NEG_INFINITY)
                })
                .map(move |n| (start, n))
        })
    }

    fn place(&self, state: Stand) -> usize {
        self.states.partition_point(|other| *other < state)
    }

    /// The travels that may be on a route of at least this log p.
    ///
    /// - `least`: of a start, a number of flights, and the bound there
    fn live(&self, least: impl Fn(usize, usize, f64) -> f64) -> Vec<bool> {
        let cells = &self.ways.figure.cells;
        let mut live = vec![false; self.ways.travels.len()];
        // By state and cell: what may still be lost.
        let nowhere = vec![vec![f64::NEG_INFINITY; cells.len()]; self.states.len()];
        let mut here = nowhere.clone();
        for left in (1..self.most.len()).rev() {
            for (start, cell) in cells.iter().enumerate().filter(|(_, cell)| cell.start) {
                let places = || stands(self.goer, cell, self.foot).map(|state| self.place(state));
                let most = places()
                    .map(|state| self.most[left][state][start])
                    .fold(f64::NEG_INFINITY, f64::max);
                if most == f64::NEG_INFINITY {
                    continue;
                }
                let least = least(start, left, most);
                for state in places() {
                    let loss = self.most[left][state][start] - least;
                    here[state][start] = here[state][start].max(loss);
                }
            }
            let mut there = nowhere.clone();
            for line in &self.lines {
                let (later, top) = line.later(&self.most[left - 1]);
                let logs = &self.logs[line.kind];
                let there = &mut there[line.then];
                for (cell, loss) in here[line.after].iter().enumerate() {
                    if *loss < 0.0 {
                        continue;
                    }
                    let spare = loss - self.most[left][line.after][cell];
                    for place in self.ways.out(cell) {
                        if spare + (logs.rest[place] + top) < 0.0 {
                            break;
                        }
                        let Near { travel, to, .. } = self.ways.nearest[place];
                        let loss = spare + (logs.of[place] + later[to]);
                        if loss >= 0.0 {
                            live[travel] = true;
                            if loss > there[to] {
                                there[to] = loss;
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

impl Line {
    /// What follows on each cell, ruled out where the line may not land, and the greatest of it.
    fn later(&self, layer: &[Vec<f64>]) -> (Vec<f64>, f64) {
        let later: Vec<f64> = std::iter::zip(&layer[self.then], &self.lands)
            .map(|(log, lands)| if *lands { *log } else { f64::NEG_INFINITY })
            .collect();
        let top = later.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        (later, top)
    }
}

/// The greatest log p of each travel after any other, kind by kind.
fn logs(ways: &Ways, goer: &Goer, landings: &[f64]) -> Vec<Logs> {
    let of_kind = |kind: &Kind| {
        let rho = kind.reach.at(0.0, goer.model);
        let log = |spacing: &Spacing| {
            if !travels(goer, spacing.cos_alpha) {
                return f64::NEG_INFINITY;
            }
            let straight = Chance::of(goer, kind, spacing, landings).log_p(rho);
            // No figure of the ledger makes a turn a help, but a project's own might.
            if goer.model.g(kind.flight) >= 0.0 {
                return straight;
            }
            let about = Spacing {
                cos_phi: -1.0,
                ..spacing.clone()
            };
            straight.max(Chance::of(goer, kind, &about, landings).log_p(rho))
        };
        let of_spacing: Vec<f64> = ways.firsts.iter().map(log).collect();
        let of: Vec<f64> = ways
            .nearest
            .iter()
            .map(|near| of_spacing[near.first])
            .collect();
        let mut rest = of.clone();
        for cell in 0..ways.figure.cells.len() {
            let mut most = f64::NEG_INFINITY;
            for rest in rest[ways.out(cell)].iter_mut().rev() {
                most = most.max(*rest);
                *rest = most;
            }
        }
        Logs { of, rest }
    };
    goer.kinds.iter().map(of_kind).collect()
}
