//! Networks written briefly.
#![allow(dead_code)]

use std::collections::BTreeMap;

use survey::network::{Datum, Kind, Network, PointId, Reading, Walked};
use survey::result::Survey;

pub fn ledger() -> ledger::Ledger {
    ledger::Ledger::shipped().expect("the shipped ledger reads")
}

/// A ledger under which no reading is doubted, for nets that are shown whole.
pub fn trusting() -> ledger::Ledger {
    let mut ledger = ledger();
    ledger
        .replace("test.w_alpha", &[1e-300])
        .expect("a figure of one number");
    ledger
}

/// A network that grows by name.
#[derive(Debug)]
pub struct Net(pub Network);

impl Net {
    pub fn new(names: &str) -> Net {
        let points: Vec<String> = names.split_whitespace().map(str::to_owned).collect();
        Net(Network {
            points,
            readings: Vec::new(),
            datum: Datum::Line {
                origin: 0,
                towards: 1,
            },
            boundary: Vec::new(),
            walked: Walked::Anticlockwise,
            start: BTreeMap::new(),
            at: None,
        })
    }

    pub fn id(&self, name: &str) -> PointId {
        self.0
            .points
            .iter()
            .position(|n| n == name)
            .unwrap_or_else(|| panic!("no point {name}"))
    }

    pub fn ids(&self, names: &str) -> Vec<PointId> {
        names.split_whitespace().map(|n| self.id(n)).collect()
    }

    pub fn read(mut self, kind: Kind, value: f64, sigma: f64) -> Net {
        self.0.readings.push(Reading {
            kind,
            value,
            sigma,
            at: None,
        });
        self
    }

    /// `A-B 12.003 ...`, all of one sigma.
    pub fn distances(mut self, text: &str, sigma: impl Fn(f64) -> f64) -> Net {
        let words: Vec<&str> = text.split_whitespace().collect();
        for pair in words.chunks(2) {
            let (from, to) = pair[0].split_once('-').expect("A-B");
            let value: f64 = pair[1].parse().expect("a number");
            let kind = Kind::Distance {
                from: self.id(from),
                to: self.id(to),
            };
            self = self.read(kind, value, sigma(value));
        }
        self
    }

    pub fn known(self, name: &str, x: f64, y: f64, sigma: f64) -> Net {
        let point = self.id(name);
        self.read(Kind::KnownX { point }, x, sigma)
            .read(Kind::KnownY { point }, y, sigma)
    }

    pub fn start(mut self, name: &str, x: f64, y: f64) -> Net {
        let id = self.id(name);
        self.0.start.insert(id, [x, y]);
        self
    }

    pub fn walk(mut self, names: &str) -> Net {
        self.0.boundary = self.ids(names);
        self
    }

    pub fn free(mut self) -> Net {
        self.0.datum = Datum::Free;
        self
    }

    pub fn adjust(&self, ledger: &ledger::Ledger) -> Survey {
        let noted = survey::adjust(&self.0, ledger);
        noted
            .value
            .unwrap_or_else(|| panic!("no answer: {:?}", noted.notes))
    }
}

pub fn tape(length: f64) -> f64 {
    survey::network::Tape {
        constant: 0.003,
        per_metre: 0.0003,
    }
    .sigma(length)
}

#[track_caller]
pub fn near(ours: f64, printed: f64, tolerance: f64, what: &str) {
    assert!(
        (ours - printed).abs() <= tolerance,
        "{what}: {ours}, not {printed}"
    );
}

#[track_caller]
pub fn at(survey: &Survey, name: &str, x: f64, y: f64, tolerance: f64) {
    let point = survey
        .points
        .iter()
        .find(|p| p.name == name)
        .expect("the point");
    near(point.x, x, tolerance, &format!("{name} x"));
    near(point.y, y, tolerance, &format!("{name} y"));
}

#[track_caller]
pub fn ellipse(survey: &Survey, name: &str, a: f64, b: f64, theta: f64) {
    let point = survey
        .points
        .iter()
        .find(|p| p.name == name)
        .expect("the point");
    let ours = point.ellipse.expect("an ellipse");
    near(ours.a, a, 0.6e-6, &format!("{name} a"));
    near(ours.b, b, 0.6e-6, &format!("{name} b"));
    near(ours.theta_deg, theta, 0.6e-3, &format!("{name} theta"));
}
