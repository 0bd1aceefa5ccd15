//! The frame: what holds the coordinates, and how a free one lies nearest to its start.

use crate::fit::Fit;
use crate::model::{Place, cross, dot, minus, turned};
use crate::network::{Datum, Kind, Network, PointId, Reading};

/// What of a network ties it to a frame.
pub(crate) struct Frame {
    /// Known coordinates rule: at least two points are known in both.
    pub(crate) known_rules: bool,
    /// Places of points known in both coordinates, where these rule.
    pub(crate) known: Vec<Option<Place>>,
    /// Coordinates known exactly (2 · point + axis), where these rule.
    pub(crate) fixed: Vec<bool>,
}

impl Frame {
    pub(crate) fn of(network: &Network) -> Frame {
        let points = network.points.len();
        let mut best: Vec<Option<(f64, f64)>> = vec![None; 2 * points];
        for reading in &network.readings {
            if let Some(coordinate) = coordinate(reading.kind) {
                let slot = &mut best[coordinate];
                if slot.is_none_or(|(_, sigma)| reading.sigma < sigma) {
                    *slot = Some((reading.value, reading.sigma));
                }
            }
        }
        let known: Vec<Option<Place>> = best
            .chunks_exact(2)
            .map(|c| Some([c[0]?.0, c[1]?.0]))
            .collect();
        if known.iter().flatten().count() < 2 {
            return Frame {
                known_rules: false,
                known: vec![None; points],
                fixed: vec![false; 2 * points],
            };
        }
        let fixed = best
            .iter()
            .map(|b| b.is_some_and(|(_, sigma)| sigma == 0.0))
            .collect();
        Frame {
            known_rules: true,
            known,
            fixed,
        }
    }

    /// Whether a reading takes part in the adjustment.
    pub(crate) fn uses(&self, reading: &Reading) -> bool {
        coordinate(reading.kind).is_none_or(|c| self.known_rules && !self.fixed[c])
    }

    /// The two points that carry the work: the user's line, or any two for a free frame.
    pub(crate) fn line(&self, network: &Network) -> Option<(PointId, PointId)> {
        match network.datum {
            _ if self.known_rules => None,
            Datum::Line { origin, towards } => Some((origin, towards)),
            Datum::Free => match *network.boundary.as_slice() {
                [a, b, ..] => Some((a, b)),
                _ => Some((0, 1)),
            },
        }
    }
}

/// The coordinate (2 · point + axis) that a known reading gives.
fn coordinate(kind: Kind) -> Option<usize> {
    match kind {
        Kind::KnownX { point } => Some(2 * point),
        Kind::KnownY { point } => Some(2 * point + 1),
        _ => None,
    }
}

/// Turns and shifts places so that `origin` is at (0, 0) and `towards` on +x.
pub(crate) fn pose(at: &mut [Place], origin: PointId, towards: PointId) {
    let o = at[origin];
    let way = minus(at[towards], o);
    let long = libm::hypot(way[0], way[1]);
    let u = if long > 0.0 {
        [way[0] / long, way[1] / long]
    } else {
        [1.0, 0.0]
    };
    for place in at.iter_mut() {
        let d = minus(*place, o);
        *place = [dot(u, d), cross(u, d)];
    }
    at[origin] = [0.0, 0.0];
    at[towards] = [long, 0.0];
}

/// Holds what keeps the frame of two points: one whole, of the other the coordinate that
/// turning moves most.
pub(crate) fn hold(held: &mut [bool], at: &[Place], origin: PointId, towards: PointId) {
    let way = minus(at[towards], at[origin]);
    held[2 * origin] = true;
    held[2 * origin + 1] = true;
    held[2 * towards + usize::from(way[0].abs() >= way[1].abs())] = true;
}

/// Turns and shifts `at` so that the points with a start lie nearest to it (least sum of
/// squares): the inner constraints. Gives the points that took part; `None` for fewer than two.
pub(crate) fn nearest_to_start(
    network: &Network,
    at: &mut [Place],
    loose: &[bool],
) -> Option<Vec<(PointId, Place)>> {
    let points: Vec<PointId> = network
        .start
        .keys()
        .copied()
        .filter(|&p| p < at.len() && !loose[p])
        .collect();
    if points.len() < 2 {
        return None;
    }
    let mean = |place: &dyn Fn(PointId) -> Place| {
        let sum = points
            .iter()
            .fold([0.0, 0.0], |s, &p| [s[0] + place(p)[0], s[1] + place(p)[1]]);
        sum.map(|s| s / points.len() as f64)
    };
    let (from, to) = (mean(&|p| at[p]), mean(&|p| network.start[&p]));
    let (mut along, mut across) = (0.0, 0.0);
    for &p in &points {
        let (a, b) = (minus(at[p], from), minus(network.start[&p], to));
        along += dot(a, b);
        across += cross(a, b);
    }
    let long = libm::hypot(along, across);
    let (c, s) = if long > 0.0 {
        (along / long, across / long)
    } else {
        (1.0, 0.0)
    };
    for place in at.iter_mut() {
        let d = minus(*place, from);
        *place = [to[0] + c * d[0] - s * d[1], to[1] + s * d[0] + c * d[1]];
    }
    Some(points.into_iter().map(|p| (p, network.start[&p])).collect())
}

/// Covariance of all coordinates in the frame of the fit (2 · point + axis, row by row), or,
/// where `inner` names points and their start, in the frame that lies nearest to it.
///
/// # Source
/// Baarda's S-transformation: C' = S C Sᵀ, S = 1 - G (G₀ᵀ G)⁻¹ G₀ᵀ, G the motions at the
/// adjusted places and G₀ those at the start, over the points named.
pub(crate) fn covariance(fit: &Fit, inner: Option<&[(PointId, Place)]>) -> Vec<f64> {
    let n = 2 * fit.at.len();
    let mut c = vec![0.0; n * n];
    for a in 0..n {
        for b in 0..n {
            c[a * n + b] = fit.covariance(a, b);
        }
    }
    let Some(points) = inner else { return c };
    let count = points.len() as f64;
    let mean = |places: &mut dyn Iterator<Item = Place>| {
        places
            .fold([0.0, 0.0], |s, p| [s[0] + p[0], s[1] + p[1]])
            .map(|s| s / count)
    };
    let centre = mean(&mut points.iter().map(|&(p, _)| fit.at[p]));
    let start_centre = mean(&mut points.iter().map(|&(_, start)| start));
    let turn = |p: PointId| turned(minus(fit.at[p], centre));
    let start_turn = |start: Place| turned(minus(start, start_centre));
    let inertia: f64 = points
        .iter()
        .map(|&(p, start)| dot(turn(p), start_turn(start)))
        .sum();
    let motion = |a: usize| {
        [
            f64::from(a.is_multiple_of(2)),
            f64::from(a % 2 == 1),
            turn(a / 2)[a % 2],
        ]
    };
    // What each coordinate of the points says of shift and turn.
    let chosen: Vec<(usize, [f64; 3])> = points
        .iter()
        .flat_map(|&(p, start)| {
            let turn = start_turn(start).map(|t| if inertia > 0.0 { t / inertia } else { 0.0 });
            [
                (2 * p, [1.0 / count, 0.0, turn[0]]),
                (2 * p + 1, [0.0, 1.0 / count, turn[1]]),
            ]
        })
        .collect();
    let mut d = vec![[0.0; 3]; n];
    for (b, d) in d.iter_mut().enumerate() {
        for (a, w) in &chosen {
            for k in 0..3 {
                d[k] += w[k] * c[a * n + b];
            }
        }
    }
    let mut m = [[0.0; 3]; 3];
    for (a, w) in &chosen {
        for k in 0..3 {
            for l in 0..3 {
                m[k][l] += d[*a][k] * w[l];
            }
        }
    }
    for a in 0..n {
        let ga = motion(a);
        for b in 0..n {
            let gb = motion(b);
            for k in 0..3 {
                c[a * n + b] -= ga[k] * d[b][k] + d[a][k] * gb[k];
                for l in 0..3 {
                    c[a * n + b] += ga[k] * m[k][l] * gb[l];
                }
            }
        }
    }
    c
}
