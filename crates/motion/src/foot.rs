//! The shape of a foot: sole and heel, as our prints and sign repeat it (look, section 3).

use children::Side;
use geo::Coord;

/// Sole of a right foot of length 1, the toes along +x, y to the left.
const SOLE: [[f64; 2]; 12] = [
    [-0.09, 0.115],
    [0.02, 0.125],
    [0.14, 0.16],
    [0.28, 0.19],
    [0.40, 0.175],
    [0.48, 0.10],
    [0.50, 0.0],
    [0.46, -0.09],
    [0.36, -0.15],
    [0.22, -0.17],
    [0.06, -0.15],
    [-0.09, -0.115],
];

/// Its heel.
const HEEL: [[f64; 2]; 8] = [
    [-0.15, 0.115],
    [-0.28, 0.13],
    [-0.40, 0.115],
    [-0.48, 0.05],
    [-0.48, -0.05],
    [-0.40, -0.115],
    [-0.28, -0.13],
    [-0.15, -0.115],
];

/// Straight pieces that a curve between two spots is cut into.
const PIECES: u32 = 4;

/// Sole and heel of a foot of length 1 as two closed rings, the toes along +x, y to the
/// left; the cut between them is straight, all else a smooth line through the spots
/// (Catmull and Rom's).
pub fn outline(side: Side) -> [Vec<Coord<f64>>; 2] {
    let sign = if side == Side::Left { -1.0 } else { 1.0 };
    [smooth(&SOLE, sign), smooth(&HEEL, sign)]
}

fn smooth(spots: &[[f64; 2]], sign: f64) -> Vec<Coord<f64>> {
    let last = spots.len().saturating_sub(1);
    let mut out = Vec::new();
    for (at, pair) in spots.windows(2).enumerate() {
        let &[p1, p2] = pair else { continue };
        let p0 = spots.get(at.wrapping_sub(1)).copied().unwrap_or(p1);
        let p3 = spots.get(at + 2).copied().unwrap_or(p2);
        for piece in 0..PIECES {
            let t = f64::from(piece) / f64::from(PIECES);
            let (t2, t3) = (t * t, t * t * t);
            let axis = |a: usize| {
                let (m1, m2) = ((p2[a] - p0[a]) / 2.0, (p3[a] - p1[a]) / 2.0);
                (2.0 * t3 - 3.0 * t2 + 1.0) * p1[a]
                    + (t3 - 2.0 * t2 + t) * m1
                    + (3.0 * t2 - 2.0 * t3) * p2[a]
                    + (t3 - t2) * m2
            };
            out.push(Coord {
                x: axis(0),
                y: sign * axis(1),
            });
        }
    }
    if let Some([x, y]) = spots.get(last) {
        out.push(Coord { x: *x, y: sign * y });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_left_foot_is_a_right_one_in_the_mirror_and_one_foot_long() {
        let (right, left) = (outline(Side::Right), outline(Side::Left));
        for (one, other) in right.iter().flatten().zip(left.iter().flatten()) {
            assert_eq!((one.x, one.y), (other.x, -other.y));
        }
        let along = right.iter().flatten().map(|at| at.x);
        let (low, high) = along.fold((0.0_f64, 0.0_f64), |(l, h), x| (l.min(x), h.max(x)));
        // a smooth line may pass its outermost spots by a hair
        assert!((high - low - 0.98).abs() < 0.02, "{low} {high}");
    }
}
