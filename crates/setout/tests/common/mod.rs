//! Yards, figures and dice for the tests of this room. All of it is invented, but for the
//! yard Y1 of the reference page (derived there).
#![allow(dead_code)]

use std::collections::BTreeMap;

use chance::Chance;
use geo::{Coord, Polygon, coord};
use marking::{Cell, Figure, Outline, Takes};
use survey::network::{Datum, Kind, Network, Reading, Tape, Walked};
use survey::result::{Covariance, GlobalTest, Point, Survey};

/// The tape of the reference page, 2.1: common practice, no source.
pub const TAPE: Tape = Tape {
    constant: 0.003,
    per_metre: 0.0003,
};

pub fn ledger() -> ledger::Ledger {
    ledger::Ledger::shipped().expect("the shipped ledger reads")
}

/// A ledger with some figures replaced.
pub fn ledger_with(figures: &[(&str, f64)]) -> ledger::Ledger {
    let mut ledger = ledger();
    for (key, value) in figures {
        ledger
            .replace(key, &[*value])
            .expect("a figure of one number");
    }
    ledger
}

/// A figure of cells of 0.2 m radius at these places and nothing else.
pub fn figure(places: &[Coord<f64>]) -> Figure {
    Figure {
        family: "invented".to_owned(),
        lengths: Vec::new(),
        paint: Vec::new(),
        cells: places
            .iter()
            .enumerate()
            .map(|(number, at)| Cell {
                id: number.to_string(),
                outline: Outline::Disc { radius: 0.2 },
                centre: *at,
                takes: Takes::Either,
                start: number == 0,
                end: number + 1 == places.len(),
                next: None,
                run_up: false,
            })
            .collect(),
        facing: None,
        lanes: Vec::new(),
        tracks: 1,
        wait: Vec::new(),
        envelope: Polygon::new(places.to_vec().into(), Vec::new()),
    }
}

/// A survey of points with a given covariance, row by row.
pub fn surveyed(points: &[(&str, f64, f64)], covariance: Vec<f64>) -> Survey {
    Survey {
        datum: Datum::Free,
        points: points
            .iter()
            .map(|(name, x, y)| Point {
                name: (*name).to_owned(),
                x: *x,
                y: *y,
                sx: 0.0,
                sy: 0.0,
                fixed: false,
                loose: false,
                ellipse: None,
            })
            .collect(),
        covariance: Covariance {
            order: (0..points.len()).collect(),
            values: covariance,
        },
        boundary: Vec::new(),
        readings: Vec::new(),
        groups: Vec::new(),
        dof: 0,
        vtpv: 0.0,
        s0: 0.0,
        global_test: GlobalTest {
            alpha: 0.001,
            limit: 0.0,
            passed: true,
        },
        suspects: Vec::new(),
        area: None,
        next_readings: Vec::new(),
    }
}

/// The corners of Y1 as planned, before anyone taped.
pub const Y1: [(&str, f64, f64); 6] = [
    ("A", 0.0, 0.0),
    ("B", 24.0, 0.0),
    ("C", 24.0, 10.0),
    ("D", 14.0, 10.0),
    ("E", 14.0, 18.0),
    ("F", 0.0, 18.0),
];

/// The tapes of Y1.
const TAPED: [(usize, usize); 12] = [
    (0, 1),
    (1, 2),
    (2, 3),
    (3, 4),
    (4, 5),
    (5, 0),
    (0, 2),
    (0, 3),
    (0, 4),
    (1, 3),
    (1, 5),
    (3, 5),
];

/// Y1 as taped by somebody: `error` gives each reading its error for its sigma.
pub fn taped(mut error: impl FnMut(f64) -> f64) -> Survey {
    let readings = TAPED
        .iter()
        .map(|&(from, to)| {
            let [a, b] = [Y1[from], Y1[to]];
            let long = libm::hypot(b.1 - a.1, b.2 - a.2);
            let sigma = TAPE.sigma(long);
            Reading {
                kind: Kind::Distance { from, to },
                value: long + error(sigma),
                sigma,
                at: None,
            }
        })
        .collect();
    let network = Network {
        points: Y1.iter().map(|point| point.0.to_owned()).collect(),
        readings,
        datum: Datum::Line {
            origin: 0,
            towards: 1,
        },
        boundary: (0..6).collect(),
        walked: Walked::Anticlockwise,
        start: BTreeMap::new(),
        at: None,
    };
    // good readings are not to be set aside: their errors are what is tested
    survey::adjust(&network, &ledger_with(&[("test.w_alpha", 1e-300)]))
        .value
        .expect("Y1 holds together")
}

/// A fixed sequence of numbers.
pub struct Dice(Chance);

impl Dice {
    pub fn new(seed: u64) -> Dice {
        Dice(Chance::new(seed))
    }

    pub fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.0.above_zero()
    }

    pub fn below(&mut self, top: usize) -> usize {
        (self.0.bits() % top as u64) as usize
    }

    /// Standard normal.
    pub fn normal(&mut self) -> f64 {
        self.0.normal()
    }
}

pub fn between(a: Coord<f64>, b: Coord<f64>) -> f64 {
    libm::hypot(b.x - a.x, b.y - a.y)
}

/// Where two tapes of these lengths meet, left of the way from `a` to `b`.
pub fn meet(a: Coord<f64>, b: Coord<f64>, lengths: [f64; 2]) -> Coord<f64> {
    let apart = between(a, b);
    let along = (apart * apart + lengths[0] * lengths[0] - lengths[1] * lengths[1]) / (2.0 * apart);
    let off = (lengths[0] * lengths[0] - along * along).sqrt();
    let (x, y) = ((b.x - a.x) / apart, (b.y - a.y) / apart);
    coord! { x: a.x + along * x - off * y, y: a.y + along * y + off * x }
}
