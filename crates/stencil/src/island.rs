//! Islands: bare ground that paint surrounds. The plate would drop it, so ties hold it.
//!
//! A joint or a glyph's own tie counts; where they stand too far apart, or are too few, or
//! all in one line like the pins of a hinge, ties are added. An added tie leaves the island
//! square to its edge, across the paint, where the paint near its wanted place is narrowest.

use geo::{BooleanOps, BoundingRect, Coord, MultiPolygon, Polygon, Winding};
use marking::Paint;

use crate::material::Rules;
use crate::motif::{eyes, parts};
use crate::result::{Opening, Tie};
use crate::shape::{off, sides};

/// Metres between the places along an edge that are looked at.
const STEP: f64 = 0.001;
/// Metres. What lies so far off the paint is no edge of it; filled joints stay this near.
const AT_PAINT: f64 = 0.000_5;
/// Metres by which a tie reaches into the bare ground at either end: past a round edge.
const REACH: f64 = 0.005;

/// Openings with the ties left standing in them, and the ties.
pub(crate) fn tied(openings: Vec<Opening>, rules: &Rules) -> (Vec<Opening>, Vec<Tie>) {
    let shapes: Vec<Polygon<f64>> = openings.iter().map(|one| one.polygon.clone()).collect();
    let mut ties = Vec::new();
    let inked: Vec<Paint> = openings
        .iter()
        .map(|one| Paint {
            colour: one.colour,
            polygon: one.polygon.clone(),
        })
        .collect();
    // a numeral in its cell's eye closes nothing, near as it stands to the band
    for part in parts(&inked, rules) {
        let own: Vec<Polygon<f64>> = part
            .iter()
            .filter_map(|at| shapes.get(*at).cloned())
            .collect();
        let sides = sides(&own);
        for eye in eyes(&own, rules.join) {
            let mut edge = eye.exterior().clone();
            edge.make_cw_winding();
            ties.extend(Edge::of(&edge, &sides).ties(&sides, &own, rules));
        }
    }
    if ties.is_empty() {
        return (openings, ties);
    }
    let strips: Vec<Polygon<f64>> = ties.iter().map(standing).collect();
    let strips = geo::unary_union(&strips);
    let openings = openings
        .into_iter()
        .flat_map(|one| {
            let left = MultiPolygon(vec![one.polygon]).difference(&strips);
            left.into_iter()
                .filter(|left| geo::Area::unsigned_area(left) > rules.least * rules.least / 4.0)
                .map(move |polygon| Opening {
                    colour: one.colour,
                    polygon,
                })
                .collect::<Vec<_>>()
        })
        .collect();
    (openings, ties)
}

/// The strip of plate that a tie is, with its reach into the ground at both ends.
fn standing(tie: &Tie) -> Polygon<f64> {
    let (sin, cos) = libm::sincos(tie.way);
    let along = Coord { x: cos, y: sin } * (tie.length / 2.0 + REACH);
    let aside = Coord { x: -sin, y: cos } * (tie.width / 2.0);
    let corners = [
        tie.at - along - aside,
        tie.at + along - aside,
        tie.at + along + aside,
        tie.at - along + aside,
    ];
    Polygon::new(corners.to_vec().into(), Vec::new())
}

/// An island's edge, in steps.
struct Edge {
    places: Vec<Coord<f64>>,
    /// Metres from one place to the next, and round it.
    step: f64,
    round: f64,
    long: f64,
    /// Numbers of the places in the middle of a joint.
    joints: Vec<usize>,
    /// Metres of the edge that no paint bounds.
    neck: f64,
}

impl Edge {
    fn of(eye: &geo::LineString<f64>, paint: &[[Coord<f64>; 2]]) -> Edge {
        let round: f64 = eye.lines().map(|l| libm::hypot(l.dx(), l.dy())).sum();
        let count = (round / STEP).ceil().max(8.0);
        let step = round / count;
        let mut places = Vec::new();
        let mut along = 0.0;
        for side in eye.lines() {
            let long = libm::hypot(side.dx(), side.dy());
            while (places.len() as f64) * step < along + long && (places.len() as f64) < count {
                let share = (places.len() as f64 * step - along) / long;
                places.push(side.start + (side.end - side.start) * share);
            }
            along += long;
        }
        let long = eye
            .bounding_rect()
            .map_or(0.0, |room| room.width().max(room.height()));
        let bare: Vec<bool> = places.iter().map(|at| off(*at, paint) > AT_PAINT).collect();
        Edge {
            joints: middles(&bare),
            neck: bare.iter().filter(|bare| **bare).count() as f64 * step,
            places,
            step,
            round,
            long,
        }
    }

    /// The ties that are missing.
    fn ties(&self, paint: &[[Coord<f64>; 2]], shapes: &[Polygon<f64>], rules: &Rules) -> Vec<Tie> {
        // ground that one neck holds is a tongue, not an island, where it is short enough
        if self.joints.len() == 1 && self.long <= rules.tongue * self.neck {
            return Vec::new();
        }
        let count = self.places.len();
        let [short, long] = rules.tie_count;
        let wanted = if self.long > rules.tie_long {
            long
        } else {
            short
        };
        let mut held: Vec<usize> = self.joints.clone();
        let mut ties: Vec<Tie> = Vec::new();
        // no more than one every two widths: an edge has no room for others
        let most = held.len() + (self.round / (2.0 * rules.tie)).ceil() as usize;
        while held.len() < most {
            let (from, gap) = self.widest(&held);
            let enough = gap <= rules.tie_spacing && held.len() >= wanted;
            let lines: Vec<(Coord<f64>, f64)> =
                held.iter().filter_map(|at| self.line(*at, paint)).collect();
            if enough && !in_line(&lines, rules.tie) {
                break;
            }
            // so many parts that each keeps the spacing; the first of them now
            let parts = if held.is_empty() {
                1.0
            } else {
                (gap / rules.tie_spacing).ceil().max(2.0)
            };
            // ties beyond the rule's count stand off the middle, where two would be in line
            let aim = if held.is_empty() {
                0
            } else {
                from + (gap / parts / self.step) as usize
            };
            let slack = if held.is_empty() {
                count / 2
            } else {
                ((0.2 * gap / parts / self.step) as usize).min(count / 2)
            };
            let Some((place, tie)) = self.narrowest(aim, slack, &held, paint, shapes, rules) else {
                break;
            };
            held.push(place);
            held.sort_unstable();
            ties.push(tie);
        }
        ties
    }

    /// The place that begins the widest gap between what holds, and its metres.
    fn widest(&self, held: &[usize]) -> (usize, f64) {
        let Some(first) = held.first() else {
            return (0, self.round);
        };
        let next = held.iter().skip(1).copied();
        let next = next.chain([first + self.places.len()]);
        let gaps = held.iter().zip(next);
        let gaps = gaps.map(|(at, next)| (*at, (next - at) as f64 * self.step));
        gaps.fold(
            (0, 0.0),
            |best, gap| if gap.1 > best.1 { gap } else { best },
        )
    }

    /// A place where something holds, and which way that leads: a joint as its sides run.
    fn line(&self, at: usize, paint: &[[Coord<f64>; 2]]) -> Option<(Coord<f64>, f64)> {
        /// Metres into a joint, past the round of its filling.
        const INTO: f64 = 0.008;
        let (place, way) = (*self.places.get(at)?, self.way(at)?);
        if !self.joints.contains(&at) {
            return Some((place, way));
        }
        let (sin, cos) = libm::sincos(way);
        let inside = place + Coord { x: cos, y: sin } * INTO;
        let [from, to] = paint
            .iter()
            .min_by(|a, b| off(inside, &[**a]).total_cmp(&off(inside, &[**b])))?;
        Some((place, libm::atan2(to.y - from.y, to.x - from.x)))
    }

    /// Off the island at a place: the normal of its edge.
    fn way(&self, at: usize) -> Option<f64> {
        /// Places to either side: an edge's corner is seen as round.
        const ABOUT: usize = 8;
        let count = self.places.len();
        let about = ABOUT.min(count / 8).max(1);
        let (before, after) = (
            self.places.get((at + count - about) % count)?,
            self.places.get((at + about) % count)?,
        );
        // the eye runs clockwise: off it lies to the left
        let along = *after - *before;
        Some(libm::atan2(along.x, -along.y))
    }

    fn narrowest(
        &self,
        aim: usize,
        slack: usize,
        held: &[usize],
        paint: &[[Coord<f64>; 2]],
        shapes: &[Polygon<f64>],
        rules: &Rules,
    ) -> Option<(usize, Tie)> {
        /// Places tried to either side of the wanted one.
        const TRIED: usize = 12;
        let count = self.places.len();
        let clear = (2.0 * rules.tie / self.step) as usize;
        let mut best: Option<(usize, Tie)> = None;
        for tried in 0..=2 * TRIED {
            // the wanted place first, then one to each side in turn
            let by = tried.div_ceil(2) * slack / TRIED;
            let ahead = if tried % 2 == 0 { by } else { count - by };
            let place = (aim + ahead) % count;
            let near = held.iter().any(|at| {
                let apart = at.abs_diff(place);
                apart.min(count - apart) < clear
            });
            if near {
                continue;
            }
            let Some(tie) = self.across(place, paint, shapes, rules) else {
                continue;
            };
            // a place a little off must save a millimetre
            if best
                .as_ref()
                .is_none_or(|(_, best)| tie.length < best.length - STEP)
            {
                best = Some((place, tie));
            }
        }
        best
    }

    /// A tie from a place across the paint.
    fn across(
        &self,
        place: usize,
        paint: &[[Coord<f64>; 2]],
        shapes: &[Polygon<f64>],
        rules: &Rules,
    ) -> Option<Tie> {
        let (from, way) = (*self.places.get(place)?, self.way(place)?);
        let (sin, cos) = libm::sincos(way);
        let ahead = Coord { x: cos, y: sin };
        let aside = Coord { x: -sin, y: cos };
        // both edges of the tie and its middle leave the paint
        let mut length: f64 = 0.0;
        for share in [-0.5, 0.0, 0.5] {
            let at = from + aside * (share * rules.tie);
            length = length.max(leaves(at, ahead, paint, shapes)?);
        }
        Some(Tie {
            at: from + ahead * (length / 2.0),
            way,
            width: rules.tie,
            length,
        })
    }
}

/// Metres from a place at an island's edge until a ray has left the paint there; `None`
/// where it meets none.
fn leaves(
    from: Coord<f64>,
    ahead: Coord<f64>,
    paint: &[[Coord<f64>; 2]],
    shapes: &[Polygon<f64>],
) -> Option<f64> {
    use geo::{Contains, Point};
    // from the bare ground on, clear of the edge that the place lies on
    let from = from - ahead * STEP;
    let mut met: Vec<f64> = paint
        .iter()
        .filter_map(|[a, b]| {
            let (side, to) = (*b - *a, *a - from);
            let cross = ahead.x * side.y - ahead.y * side.x;
            if cross == 0.0 {
                return None;
            }
            let along = (to.x * side.y - to.y * side.x) / cross;
            let share = (to.x * ahead.y - to.y * ahead.x) / cross;
            (along > 0.0 && (0.0..=1.0).contains(&share)).then_some(along)
        })
        .collect();
    met.sort_by(f64::total_cmp);
    let painted = |at: f64| {
        let at = Point(from + ahead * at);
        shapes.iter().any(|shape| shape.contains(&at))
    };
    // the first crossing after which the ray is bare, having been in paint
    let mut wet = painted(0.0);
    for (index, at) in met.iter().enumerate() {
        let next = met.get(index + 1).map_or(at + 2.0 * REACH, |next| *next);
        let after = painted((at + next) / 2.0);
        if wet && !after {
            return Some(at - STEP);
        }
        wet = wet || after;
    }
    None
}

/// Middles of the runs of bare places round an edge.
fn middles(bare: &[bool]) -> Vec<usize> {
    let count = bare.len();
    let Some(start) = bare.iter().position(|bare| !bare) else {
        return Vec::new();
    };
    let mut middles = Vec::new();
    let mut from = None;
    for step in 0..=count {
        let at = start + step;
        match (from, bare[at % count]) {
            (None, true) => from = Some(at),
            (Some(begun), false) => {
                middles.push(((begun + at) / 2) % count);
                from = None;
            }
            _ => {}
        }
    }
    middles.sort_unstable();
    middles
}

/// Whether all ties stand in one line like the pins of a hinge: the middle of each within
/// the first's own strip, drawn on.
fn in_line(ties: &[(Coord<f64>, f64)], width: f64) -> bool {
    let Some(((at, way), others)) = ties.split_first() else {
        return false;
    };
    let (sin, cos) = libm::sincos(*way);
    let aside = |of: &Coord<f64>| ((of.x - at.x) * -sin + (of.y - at.y) * cos).abs();
    let leans = |of: f64| libm::sin(of - way).abs() > 0.5;
    others
        .iter()
        .all(|(at, way)| aside(at) < width / 2.0 && !leans(*way))
}
