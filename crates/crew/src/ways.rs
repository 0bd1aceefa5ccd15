//! The way out: nobody is painted in, and doors stay joined.
//!
//! The ground is a grid of steps. A wet marking closes the steps on it and a body's breadth
//! round it, and so do walls; who works at a marking stands on the open steps beside it. A
//! door is its nearest step. From the doors on, open steps are joined to their four neighbours; a gap narrower
//! than a step counts as closed.

use std::cell::RefCell;
use std::collections::BTreeMap;

use geo::{BoundingRect, Contains, Coord, Distance, Euclidean, Point, Polygon};
use ledger::Ledger;

use crate::figures::{BESIDE, BODY, GRID};
use crate::question::Job;
use crate::say::is_ground;
use crate::schedule::Ways;

/// Steps of the largest grid.
const STEPS: f64 = 250_000.0;

/// Ways over the ground of a job.
pub(crate) struct Walks {
    wide: usize,
    /// Whether a step lies on the ground.
    ground: Vec<bool>,
    /// Steps that each marking closes while it is wet.
    closed: Vec<Vec<usize>>,
    /// Steps beside each marking.
    beside: Vec<Vec<usize>>,
    /// The step of each door.
    doors: Vec<usize>,
    /// Markings that can be left while they alone are wet.
    can_leave: Vec<bool>,
    /// Pairs of doors that stay joined whichever marking is wet.
    joined: Vec<(usize, usize)>,
    /// What was found out, by the markings that are wet.
    known: RefCell<BTreeMap<Vec<usize>, Open>>,
}

/// What is open while some markings are wet.
struct Open {
    /// Whether each marking can be left.
    leave: Vec<bool>,
    /// Whether the doors are joined that can be.
    joined: bool,
}

/// What is wrong with the ways before any order of work is thought of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Shut {
    /// No way leads from a marking to a door.
    NoWay(usize),
    /// A marking alone closes the way between two doors while it is wet.
    Between(usize, usize, usize),
}

impl Walks {
    /// The ways of a job, and what cannot be kept open; `None` where no ground, door or
    /// marking is known.
    pub fn new(job: &Job, ledger: &Ledger) -> Option<(Walks, Vec<Shut>)> {
        let ground = job.ground.as_ref().filter(|ground| is_ground(ground))?;
        let rect = ground.bounding_rect()?;
        if job.doors.is_empty() || job.markings.is_empty() {
            return None;
        }
        let (width, height) = (rect.width(), rect.height());
        let mut step = ledger.number(GRID).max(0.01);
        while (width / step + 1.0) * (height / step + 1.0) > STEPS {
            step *= 1.5;
        }
        let wide = (width / step).ceil().max(1.0) as usize;
        let high = (height / step).ceil().max(1.0) as usize;
        let middle = |at: usize| Coord {
            x: rect.min().x + ((at % wide) as f64 + 0.5) * step,
            y: rect.min().y + ((at / wide) as f64 + 0.5) * step,
        };
        let (body, room) = (ledger.number(BODY), ledger.number(BESIDE));
        // Walls are kept from as wet paint is; half a step less, lest the grid close a gate.
        let off_walls = |at: &Coord<f64>| {
            let edges = std::iter::once(ground.exterior()).chain(ground.interiors());
            edges
                .map(|edge| Euclidean.distance(&Point(*at), edge))
                .all(|off| off >= body - step / 2.0)
        };
        let on: Vec<bool> = (0..wide * high)
            .map(&middle)
            .map(|at| ground.contains(&at) && off_walls(&at))
            .collect();
        let within = |outline: &Polygon<f64>, reach: f64| -> Vec<usize> {
            let Some(near) = outline.bounding_rect() else {
                return Vec::new();
            };
            let inside = |at: Coord<f64>| {
                (near.min().x - reach..=near.max().x + reach).contains(&at.x)
                    && (near.min().y - reach..=near.max().y + reach).contains(&at.y)
            };
            (0..on.len())
                .filter(|at| on[*at] && inside(middle(*at)))
                .filter(|at| Euclidean.distance(&Point(middle(*at)), outline) <= reach)
                .collect()
        };
        let closed: Vec<Vec<usize>> = job
            .markings
            .iter()
            .map(|marking| within(&marking.outline, body))
            .collect();
        let beside = job
            .markings
            .iter()
            .zip(&closed)
            .map(|(marking, closed)| {
                let mut steps = within(&marking.outline, body.max(room) + step);
                steps.retain(|at| closed.binary_search(at).is_err());
                steps
            })
            .collect();
        let nearest = |door: Coord<f64>| {
            let off = |at: usize| {
                let by = middle(at) - door;
                by.x * by.x + by.y * by.y
            };
            (0..on.len())
                .filter(|at| on[*at])
                .min_by(|a, b| off(*a).total_cmp(&off(*b)))
        };
        let doors: Vec<usize> = job
            .doors
            .iter()
            .map(|door| nearest(door.at))
            .collect::<Option<_>>()?;
        let mut walks = Walks {
            wide,
            ground: on,
            closed,
            beside,
            can_leave: vec![true; job.markings.len()],
            joined: Vec::new(),
            doors,
            known: RefCell::new(BTreeMap::new()),
        };
        let shut = walks.settle(job.markings.len());
        Some((walks, shut))
    }

    /// Finds out what can be kept open at all.
    fn settle(&mut self, markings: usize) -> Vec<Shut> {
        let mut shut = Vec::new();
        let dry = self.colours(&[]);
        let mut joined = Vec::new();
        for (a, first) in self.doors.iter().enumerate() {
            for (b, second) in self.doors.iter().enumerate().skip(a + 1) {
                if dry[*first] == dry[*second] {
                    joined.push((a, b));
                }
            }
        }
        for marking in 0..markings {
            let wet = self.colours(&[marking]);
            self.can_leave[marking] = self.leaves(marking, &wet);
            if !self.can_leave[marking] {
                shut.push(Shut::NoWay(marking));
            }
            joined.retain(|&(a, b)| {
                let open = self.between(a, b, &wet);
                if !open {
                    shut.push(Shut::Between(marking, a, b));
                }
                open
            });
        }
        self.joined = joined;
        shut
    }

    fn leaves(&self, marking: usize, colours: &[usize]) -> bool {
        self.beside[marking].iter().any(|step| {
            colours[*step] != 0
                && self
                    .doors
                    .iter()
                    .any(|door| colours[*door] == colours[*step])
        })
    }

    /// A door under wet paint is closed.
    fn between(&self, a: usize, b: usize, colours: &[usize]) -> bool {
        let (a, b) = (colours[self.doors[a]], colours[self.doors[b]]);
        a != 0 && a == b
    }

    /// Each step with the number of the piece of open ground that it belongs to; 0: closed.
    fn colours(&self, wet: &[usize]) -> Vec<usize> {
        let mut open = self.ground.clone();
        for marking in wet {
            for step in &self.closed[*marking] {
                open[*step] = false;
            }
        }
        let mut colours = vec![0; open.len()];
        let mut next = 0;
        let mut stack = Vec::new();
        // Only what a door leads to matters.
        for &door in &self.doors {
            if !open[door] || colours[door] != 0 {
                continue;
            }
            next += 1;
            colours[door] = next;
            stack.push(door);
            while let Some(at) = stack.pop() {
                let column = at % self.wide;
                let around = [
                    (column > 0).then(|| at - 1),
                    (column + 1 < self.wide).then_some(at + 1),
                    at.checked_sub(self.wide),
                    Some(at + self.wide).filter(|at| *at < open.len()),
                ];
                for to in around.into_iter().flatten() {
                    if open[to] && colours[to] == 0 {
                        colours[to] = next;
                        stack.push(to);
                    }
                }
            }
        }
        colours
    }

    /// Whether all is open even with everything wet and people everywhere.
    pub fn always(&self) -> bool {
        let all: Vec<usize> = (0..self.closed.len()).collect();
        self.open(&all, &all)
    }
}

impl Ways for Walks {
    fn open(&self, at: &[usize], wet: &[usize]) -> bool {
        let mut known = self.known.borrow_mut();
        let found = known.entry(wet.to_vec()).or_insert_with(|| {
            let colours = self.colours(wet);
            let leave = (0..self.closed.len())
                .map(|marking| !self.can_leave[marking] || self.leaves(marking, &colours))
                .collect();
            let joined = self
                .joined
                .iter()
                .all(|&(a, b)| self.between(a, b, &colours));
            Open { leave, joined }
        });
        found.joined && at.iter().all(|marking| found.leave[*marking])
    }
}
