//! Two tapes that cross at a mark.

use geo::Coord;
use survey::result::Ellipse;

/// Rows of a 2 × 2 matrix.
pub type Square = [[f64; 2]; 2];

/// How two tapes cross.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossing {
    /// Metres.
    pub lengths: [f64; 2],
    /// Between the tapes at the mark, degrees.
    pub angle_deg: f64,
    /// Units from base to mark.
    pub(crate) units: [Coord<f64>; 2],
    /// Columns: where the mark goes for each metre that a tape reads long.
    pub(crate) inverse: Square,
}

/// Tapes from two bases to a mark; `None` where a base is the mark or both tapes lie in one
/// line.
pub fn crossing(bases: [Coord<f64>; 2], mark: Coord<f64>) -> Option<Crossing> {
    let ways = bases.map(|base| mark - base);
    let lengths = ways.map(|way| libm::hypot(way.x, way.y));
    // metres: nearer, a base is the mark itself
    const SAME: f64 = 1e-6;
    if !lengths.iter().all(|length| *length > SAME) {
        return None;
    }
    let [a, b] = [ways[0] / lengths[0], ways[1] / lengths[1]];
    let sine = a.x * b.y - a.y * b.x;
    // of the angle: below, the tapes are one line to the last digit of a coordinate
    if sine.abs() < 1e-9 {
        return None;
    }
    Some(Crossing {
        lengths,
        angle_deg: libm::atan2(sine.abs(), a.x * b.x + a.y * b.y).to_degrees(),
        units: [a, b],
        inverse: [[b.y / sine, -a.y / sine], [-b.x / sine, a.x / sine]],
    })
}

impl Crossing {
    /// Covariance of the mark, m², for the standard deviations of both tapes, the bases
    /// being exact.
    pub fn covariance(&self, sigmas: [f64; 2]) -> Square {
        let [[p, q], [r, s]] = self.inverse;
        let [a, b] = sigmas.map(|sigma| sigma * sigma);
        let xy = p * a * r + q * b * s;
        [[p * a * p + q * b * q, xy], [xy, r * a * r + s * b * s]]
    }

    /// Where the mark comes to lie when the tapes are held to other lengths, metres; `None`
    /// where these do not meet. `mark` is where the tapes as crossed meet.
    pub(crate) fn meet(&self, bases: [Coord<f64>; 2], lengths: [f64; 2]) -> Option<Coord<f64>> {
        let line = bases[1] - bases[0];
        let apart = libm::hypot(line.x, line.y);
        let along =
            (apart * apart + lengths[0] * lengths[0] - lengths[1] * lengths[1]) / (2.0 * apart);
        let square = lengths[0] * lengths[0] - along * along;
        if !(apart > 0.0 && square >= 0.0) {
            return None;
        }
        let way = line / apart;
        let left = way.x * self.units[0].y - way.y * self.units[0].x;
        let off = square.sqrt().copysign(left);
        Some(Coord {
            x: bases[0].x + along * way.x - off * way.y,
            y: bases[0].y + along * way.y + off * way.x,
        })
    }
}

/// The ellipse of a covariance: half-axes are `times` standard deviations long.
pub fn axes(covariance: &Square, times: f64) -> Ellipse {
    let [[xx, xy], [_, yy]] = *covariance;
    let one = survey::axes(xx, xy, yy);
    Ellipse {
        a: times * one.a,
        b: times * one.b,
        ..one
    }
}

/// Standard deviations that the half-axes of an ellipse must be long to hold a share
/// `level` of all marks.
///
/// # Source
/// √ of the chi-square quantile of two degrees of freedom, which is -2 ln(1 - level).
pub(crate) fn times(level: f64) -> f64 {
    (-2.0 * libm::log(1.0 - level.clamp(0.0, 0.999_999))).sqrt()
}
