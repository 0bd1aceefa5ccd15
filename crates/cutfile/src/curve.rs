//! Arcs found again in polygons.
//!
//! The house draws an arc as corners that lie on it, up to half a millimetre flat. A cutter
//! follows an arc smoothly, so runs of corners on one circle are written as one arc each
//! side: a DXF bulge, an SVG arc. Bows of letters are no arcs and keep their sides (0.3 mm
//! flat at a cap height of 15 cm).

/// A corner of a closed path, millimetres, and the bulge of the side that begins there:
/// the tangent of a quarter of its angle, positive anticlockwise, 0 for a straight.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct Corner {
    pub x: f64,
    pub y: f64,
    pub bulge: f64,
}

/// Millimetres: corners are rounded to 1e-3 mm, in the yard and in the plate again, and a
/// circle through three of them misses the others by a few times that.
const ON_CIRCLE: f64 = 0.01;
/// Sides of an arc at least: four points always lie nearly on some circle where sides are short.
const SIDES: usize = 4;
/// Radians: no side of an arc turns farther; a hexagon is no circle.
const WIDEST: f64 = 0.7;
/// Millimetres: sides of one arc are alike but for the ends, where something was cut off.
const ALIKE: f64 = 0.02;

/// A closed path with its arcs; `ring` in millimetres, its first corner not repeated.
pub fn arcs(ring: &[[f64; 2]]) -> Vec<Corner> {
    let count = ring.len();
    let mut corners: Vec<Corner> = ring
        .iter()
        .map(|[x, y]| Corner {
            x: *x,
            y: *y,
            bulge: 0.0,
        })
        .collect();
    if count <= SIDES {
        return corners;
    }
    let at = |index: usize| ring[index % count];
    let long = |index: usize| {
        let ([ax, ay], [bx, by]) = (at(index), at(index + 1));
        libm::hypot(bx - ax, by - ay)
    };
    // begin where a run begins: at a side unlike the one before it
    let start = (0..count)
        .find(|side| (long(*side) - long(*side + count - 1)).abs() > ALIKE)
        .unwrap_or(0);
    let mut from = start;
    while from < start + count {
        // sides alike in length
        let mut to = from + 1;
        while to < start + count && (long(to) - long(from)).abs() <= ALIKE {
            to += 1;
        }
        let sides = to - from;
        match circle(&(0..=sides).map(|by| at(from + by)).collect::<Vec<_>>()) {
            Some(bulge) if sides >= SIDES => {
                // a cut-off side before or after belongs to the arc where it ends on it
                for by in 0..sides {
                    corners[(from + by) % count].bulge = bulge;
                }
                from = to;
            }
            _ => from += 1,
        }
    }
    ends(&mut corners);
    corners
}

/// The bulge of each side where all points lie on one circle, in equal steps.
fn circle(points: &[[f64; 2]]) -> Option<f64> {
    let ([a, .., c], middle) = (points, points.get(points.len() / 2)?) else {
        return None;
    };
    // a full circle ends where it begins: take a third and two thirds of it
    let third = points.len() / 3;
    let (a, b, c) = if libm::hypot(a[0] - c[0], a[1] - c[1]) < 1.0 {
        (*a, *points.get(third)?, *points.get(2 * third)?)
    } else {
        (*a, *middle, *c)
    };
    let (bx, by, cx, cy) = (b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]);
    let cross = 2.0 * (bx * cy - by * cx);
    if cross.abs() < 1e-9 {
        return None;
    }
    let (bb, cc) = (bx * bx + by * by, cx * cx + cy * cy);
    let centre = [
        a[0] + (cy * bb - by * cc) / cross,
        a[1] + (bx * cc - cx * bb) / cross,
    ];
    let radius = libm::hypot(a[0] - centre[0], a[1] - centre[1]);
    let on = |point: &[f64; 2]| {
        (libm::hypot(point[0] - centre[0], point[1] - centre[1]) - radius).abs() <= ON_CIRCLE
    };
    if !points.iter().all(on) {
        return None;
    }
    let [first, second, ..] = points else {
        return None;
    };
    let chord = libm::hypot(second[0] - first[0], second[1] - first[1]);
    let angle = 2.0 * libm::asin((chord / 2.0 / radius).min(1.0));
    if angle > WIDEST {
        return None;
    }
    // anticlockwise where the points turn left
    Some(libm::tan(angle / 4.0).copysign(cross))
}

/// Sides that were cut short at either end of an arc lie on its circle too.
fn ends(corners: &mut [Corner]) {
    let count = corners.len();
    let before: Vec<Corner> = corners.to_vec();
    let bulge = |at: usize| before[at % count].bulge;
    for side in 0..count {
        if bulge(side) != 0.0 {
            continue;
        }
        for (neighbour, probe) in [
            // the arc that ends here: its last side, and the far end of this side
            (side + count - 1, side + 1),
            // the arc that begins at this side's end: its first side, and this side's start
            (side + 1, side),
        ] {
            let arc = bulge(neighbour);
            if arc == 0.0 {
                continue;
            }
            let (a, b) = (before[neighbour % count], before[(neighbour + 1) % count]);
            let (centre, radius) = centre(a, b, arc);
            let at = before[probe % count];
            let off = libm::hypot(at.x - centre[0], at.y - centre[1]) - radius;
            let (p, q) = (before[side], before[(side + 1) % count]);
            let chord = libm::hypot(q.x - p.x, q.y - p.y);
            let whole = libm::hypot(b.x - a.x, b.y - a.y);
            // round the same way: a straight that comes back to the circle does not turn
            let turn = (b.x - a.x) * (q.y - p.y) - (b.y - a.y) * (q.x - p.x);
            let onward = if neighbour % count == (side + 1) % count {
                -turn
            } else {
                turn
            };
            if off.abs() <= ON_CIRCLE && chord <= whole + ALIKE && onward * arc > 0.0 {
                let angle = 2.0 * libm::asin((chord / 2.0 / radius).min(1.0));
                corners[side].bulge = libm::tan(angle / 4.0).copysign(arc);
                break;
            }
        }
    }
}

/// Centre and radius of a side's arc.
pub(crate) fn centre(a: Corner, b: Corner, bulge: f64) -> ([f64; 2], f64) {
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let chord = libm::hypot(dx, dy);
    let radius = chord * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
    // from the middle of the chord to the centre, to the left where it turns left
    let off = chord * (1.0 - bulge * bulge) / (4.0 * bulge);
    let middle = [(a.x + b.x) / 2.0, (a.y + b.y) / 2.0];
    (
        [middle[0] - dy / chord * off, middle[1] + dx / chord * off],
        radius,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(radius: f64, sides: usize, way: f64) -> Vec<[f64; 2]> {
        (0..sides)
            .map(|side| {
                let turn = way * std::f64::consts::TAU * side as f64 / sides as f64;
                let at = |value: f64| (value * 1000.0).round() / 1000.0;
                [at(radius * libm::cos(turn)), at(radius * libm::sin(turn))]
            })
            .collect()
    }

    /// Bulge = tan(angle / 4): DXF reference, from memory, as building.md has it.
    #[test]
    fn a_polygon_on_a_circle_becomes_that_circle() {
        for way in [1.0, -1.0] {
            let corners = arcs(&ring(110.0, 40, way));
            let wanted = libm::tan(std::f64::consts::TAU / 40.0 / 4.0) * way;
            for (index, corner) in corners.iter().enumerate() {
                assert!((corner.bulge - wanted).abs() < 1e-4, "{index}: {corner:?}");
                let next = corners[(index + 1) % corners.len()];
                let (centre, radius) = centre(*corner, next, corner.bulge);
                assert!(libm::hypot(centre[0], centre[1]) < 0.05 && (radius - 110.0).abs() < 0.05);
            }
        }
    }

    #[test]
    fn straights_and_hexagons_stay_as_they_are() {
        for shape in [
            vec![[0.0, 0.0], [100.0, 0.0], [100.0, 50.0], [0.0, 50.0]],
            ring(100.0, 6, 1.0),
            (0..20)
                .map(|at| [f64::from(at) * 5.0, 0.0])
                .chain([[95.0, 50.0], [0.0, 50.0]])
                .collect(),
        ] {
            assert!(
                arcs(&shape).iter().all(|corner| corner.bulge == 0.0),
                "{shape:?}"
            );
        }
    }

    /// A half circle on a straight: the arc's sides bulge, the straight does not.
    #[test]
    fn a_half_moon_keeps_its_flat_side() {
        let mut shape: Vec<[f64; 2]> = ring(200.0, 40, 1.0);
        shape.truncate(21);
        let corners = arcs(&shape);
        assert!(corners[..20].iter().all(|corner| corner.bulge > 0.0));
        assert_eq!(corners[20].bulge, 0.0);
    }

    /// A band's outer edge between two joints: its end sides are cut short.
    #[test]
    fn sides_cut_short_belong_to_their_arc() {
        let mut shape: Vec<[f64; 2]> = ring(200.0, 40, 1.0);
        shape.truncate(15);
        let tail = |turn: f64| [200.0 * libm::cos(turn), 200.0 * libm::sin(turn)];
        let step = std::f64::consts::TAU / 40.0;
        shape.push(tail(14.6 * step));
        shape.push([50.0, 60.0]);
        let corners = arcs(&shape);
        assert!(
            corners[..15].iter().all(|corner| corner.bulge > 0.0),
            "{corners:?}"
        );
        assert!(corners[14].bulge < corners[13].bulge);
        assert_eq!(corners[15].bulge, 0.0);
        assert_eq!(corners[16].bulge, 0.0);
    }
}
