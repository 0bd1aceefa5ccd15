//! Random networks with a known truth.
#![allow(dead_code)]

use super::common::Net;
use chance::Chance;
use survey::network::{Kind, PointId};

/// Numbers by chance, in the forms that networks ask for.
pub struct Random(Chance);

impl Random {
    pub fn new(seed: u64) -> Random {
        Random(Chance::new(seed))
    }

    pub fn next(&mut self) -> u64 {
        self.0.bits()
    }

    pub fn unit(&mut self) -> f64 {
        self.0.share()
    }

    pub fn below(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }

    /// Standard normal (Box and Muller).
    pub fn normal(&mut self) -> f64 {
        let (u, v) = (1.0 - self.unit(), self.unit());
        (-2.0 * libm::log(u)).sqrt() * libm::cos(std::f64::consts::TAU * v)
    }

    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for i in (1..list.len()).rev() {
            list.swap(i, self.below(i + 1));
        }
    }
}

pub struct Case {
    pub net: Net,
    pub truth: Vec<[f64; 2]>,
}

pub fn apart(a: [f64; 2], b: [f64; 2]) -> f64 {
    libm::hypot(a[0] - b[0], a[1] - b[1])
}

/// `n` points at least 0.8 m from each other in a field of some 4 m a point.
pub fn points(random: &mut Random, n: usize) -> Vec<[f64; 2]> {
    let wide = 4.0 * (n as f64).sqrt() + 4.0;
    let mut points: Vec<[f64; 2]> = Vec::new();
    while points.len() < n {
        let p = [wide * random.unit(), 0.8 * wide * random.unit()];
        if points.iter().all(|q| apart(*q, p) > 0.8) {
            points.push(p);
        }
    }
    points
}

/// Value of a reading at the truth.
pub fn exact(kind: Kind, at: &[[f64; 2]]) -> f64 {
    let along = |f: PointId, t: PointId, p: PointId| {
        let long = apart(at[f], at[t]);
        let u = [(at[t][0] - at[f][0]) / long, (at[t][1] - at[f][1]) / long];
        let d = [at[p][0] - at[f][0], at[p][1] - at[f][1]];
        (u[0] * d[0] + u[1] * d[1], u[0] * d[1] - u[1] * d[0])
    };
    match kind {
        Kind::Distance { from, to } => apart(at[from], at[to]),
        Kind::Along { from, to, point } => along(from, to, point).0,
        Kind::Left { from, to, point } => along(from, to, point).1,
        Kind::Square { at: c, from, to } => {
            let (a, l) = along(c, from, to);
            libm::atan2(l.abs(), a)
        }
        Kind::KnownX { point } => at[point][0],
        Kind::KnownY { point } => at[point][1],
    }
}

/// A network of given readings with noise, in random order and no start.
pub fn case(random: &mut Random, truth: Vec<[f64; 2]>, mut kinds: Vec<Kind>) -> Case {
    let names: Vec<String> = (0..truth.len()).map(|i| format!("P{i}")).collect();
    let mut net = Net::new(&names.join(" "));
    random.shuffle(&mut kinds);
    for kind in kinds {
        let value = exact(kind, &truth);
        let sigma = if matches!(kind, Kind::Square { .. }) {
            0.01
        } else {
            super::common::tape(value)
        };
        net = net.read(kind, value + sigma * random.normal(), sigma);
    }
    Case { net, truth }
}

/// Turns `truth` into the frame of its first two points, mirrored if it should be.
pub fn framed(truth: &[[f64; 2]], mirrored: bool) -> Vec<[f64; 2]> {
    let o = truth[0];
    let long = apart(truth[0], truth[1]);
    let u = [(truth[1][0] - o[0]) / long, (truth[1][1] - o[1]) / long];
    let sign = if mirrored { -1.0 } else { 1.0 };
    truth
        .iter()
        .map(|p| {
            let d = [p[0] - o[0], p[1] - o[1]];
            [
                u[0] * d[0] + u[1] * d[1],
                sign * (u[0] * d[1] - u[1] * d[0]),
            ]
        })
        .collect()
}
