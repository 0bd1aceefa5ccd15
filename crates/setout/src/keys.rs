//! The fewest points that fix a figure on the ground.

use geo::{Coord, CoordsIter};
use marking::{Figure, Outline};

use crate::result::{Feature, Role};

/// A place of the figure that a painter recognises.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Spot {
    pub(crate) feature: Feature,
    pub(crate) at: Coord<f64>,
}

/// The key points, and other places worth finding: what lies nearer to one of them than key
/// points may is found from that.
pub(crate) struct Keys {
    pub(crate) points: Vec<(Role, Spot)>,
    pub(crate) rest: Vec<Spot>,
}

pub(crate) fn between(a: Coord<f64>, b: Coord<f64>) -> f64 {
    libm::hypot(b.x - a.x, b.y - a.y)
}

/// Metres of a point along the line from `a` to `b`, and to the left of it.
pub(crate) fn against(a: Coord<f64>, b: Coord<f64>, at: Coord<f64>) -> [f64; 2] {
    let (way, to) = (b - a, at - a);
    let long = libm::hypot(way.x, way.y).max(f64::MIN_POSITIVE);
    [
        (way.x * to.x + way.y * to.y) / long,
        (way.x * to.y - way.y * to.x) / long,
    ]
}

/// Origin and direction are the two of the figure's own places that lie farthest apart:
/// the longer the line, the truer the turn. The check is the place farthest off that line,
/// if any lies `off_line` metres off it; then it also shows a mirrored figure. Places nearer
/// than `apart` metres do not make a line.
pub(crate) fn keys(figure: &Figure, apart: f64, off_line: f64) -> Keys {
    let mut spots = spots(figure, off_line);
    if !is_round(figure)
        && widest(&spots).is_none_or(|[a, b]| between(spots[a].at, spots[b].at) < apart)
    {
        spots.extend(corners(figure));
    }
    let Some([first, last]) = widest(&spots) else {
        return Keys {
            points: spots
                .first()
                .map(|spot| (Role::Origin, spot.clone()))
                .into_iter()
                .collect(),
            rest: Vec::new(),
        };
    };
    let [origin, direction] = [spots[first].at, spots[last].at];
    let mut chosen = vec![(Role::Origin, first)];
    if between(origin, direction) >= apart {
        chosen.push((Role::Direction, last));
        let off = |spot: &Spot| against(origin, direction, spot.at)[1].abs();
        let aside = farthest(spots.iter().map(off));
        if let Some(aside) = aside.filter(|&aside| off(&spots[aside]) >= off_line) {
            chosen.push((Role::Check, aside));
        }
    }
    let used: Vec<usize> = chosen.iter().map(|(_, at)| *at).collect();
    let mut found: Vec<Coord<f64>> = used.iter().map(|&at| spots[at].at).collect();
    let mut rest: Vec<Spot> = Vec::new();
    for spot in spots
        .iter()
        .filter(|spot| !matches!(spot.feature, Feature::Corner(_)))
    {
        if found.iter().all(|at| between(*at, spot.at) >= apart) {
            found.push(spot.at);
            rest.push(spot.clone());
        }
    }
    Keys {
        points: chosen
            .into_iter()
            .map(|(role, at)| (role, spots[at].clone()))
            .collect(),
        rest,
    }
}

/// Middles of cells, ends and bends of lanes, and where a lane is farthest from its start.
fn spots(figure: &Figure, off_line: f64) -> Vec<Spot> {
    let mut spots: Vec<Spot> = Vec::new();
    let mut put = |feature: Feature, at: Coord<f64>| {
        // metres: a stage hands on places to 1e-6, nobody chalks two marks nearer than this
        const SAME: f64 = 1e-3;
        if at.x.is_finite()
            && at.y.is_finite()
            && spots.iter().all(|spot| between(spot.at, at) > SAME)
        {
            spots.push(Spot { feature, at });
        }
    };
    for (number, lane) in figure.lanes.iter().enumerate() {
        let line = &lane.line.0;
        if let (Some(start), Some(end)) = (line.first(), line.last()) {
            put(Feature::LaneStart(number), *start);
            put(Feature::LaneEnd(number), *end);
            if let Some(far) = farthest(line.iter().map(|at| between(*start, *at))) {
                put(Feature::LaneFar(number), line[far]);
            }
            for (nth, bend) in bends(line, off_line).into_iter().enumerate() {
                put(Feature::LaneBend(number, nth), bend);
            }
        }
    }
    for cell in &figure.cells {
        put(Feature::Cell(cell.id.clone()), cell.centre);
    }
    if figure.lanes.is_empty() && figure.cells.is_empty() {
        for (number, spot) in figure.wait.iter().enumerate() {
            put(Feature::Wait(number), *spot);
        }
    }
    spots
}

/// Where a lane strays most from the straight line between its ends, each time that it has
/// left that line: the corners of a zigzag, the crests of a wave.
fn bends(line: &[Coord<f64>], off_line: f64) -> Vec<Coord<f64>> {
    let (Some(&start), Some(&end)) = (line.first(), line.last()) else {
        return Vec::new();
    };
    if between(start, end) < off_line {
        return Vec::new();
    }
    let mut bends: Vec<(f64, Coord<f64>)> = Vec::new();
    let mut open = false;
    for at in line {
        let left = against(start, end, *at)[1];
        if left.abs() < off_line {
            open &= left.abs() > off_line / 2.0;
            continue;
        }
        match bends.last_mut().filter(|last| open && last.0 * left > 0.0) {
            Some(last) if left.abs() > last.0.abs() => *last = (left, *at),
            Some(_) => {}
            None => bends.push((left, *at)),
        }
        open = true;
    }
    bends.into_iter().map(|(_, at)| at).collect()
}

/// The two corners of the paint that lie farthest apart.
fn corners(figure: &Figure) -> Vec<Spot> {
    let all: Vec<Spot> = figure
        .paint
        .iter()
        .enumerate()
        .flat_map(|(number, paint)| {
            paint.polygon.exterior_coords_iter().map(move |at| Spot {
                feature: Feature::Corner(number),
                at,
            })
        })
        .filter(|spot| spot.at.x.is_finite() && spot.at.y.is_finite())
        .collect();
    let hull = hull(&all);
    let kept: Vec<Spot> = hull.into_iter().map(|at| all[at].clone()).collect();
    match widest(&kept) {
        Some([a, b]) => vec![kept[a].clone(), kept[b].clone()],
        None => kept.into_iter().take(1).collect(),
    }
}

/// Spots that are extreme in one of so many directions: the farthest two are among them to
/// a part in a thousand.
fn hull(spots: &[Spot]) -> Vec<usize> {
    const DIRECTIONS: u32 = 64;
    let mut kept: Vec<usize> = (0..DIRECTIONS)
        .filter_map(|step| {
            let turn = f64::from(step) / f64::from(DIRECTIONS) * std::f64::consts::TAU;
            let (sin, cos) = libm::sincos(turn);
            farthest(spots.iter().map(|spot| spot.at.x * cos + spot.at.y * sin))
        })
        .collect();
    kept.sort_unstable();
    kept.dedup();
    kept
}

/// A single disc looks the same however it is turned.
fn is_round(figure: &Figure) -> bool {
    figure.lanes.is_empty()
        && figure.facing.is_none()
        && matches!(figure.cells.as_slice(), [cell] if matches!(cell.outline, Outline::Disc { .. }))
}

/// Numbers of the two spots that lie farthest apart, the earlier first.
fn widest(spots: &[Spot]) -> Option<[usize; 2]> {
    let mut best: Option<([usize; 2], f64)> = None;
    for (i, a) in spots.iter().enumerate() {
        for (j, b) in spots.iter().enumerate().skip(i + 1) {
            let apart = between(a.at, b.at);
            // metres: a tie is settled by the figure's order, not by the last digit
            if best.is_none_or(|(_, most)| apart > most + 1e-6) {
                best = Some(([i, j], apart));
            }
        }
    }
    best.map(|(pair, _)| pair)
}

/// Number of the greatest, the first of equals.
pub(crate) fn farthest(values: impl Iterator<Item = f64>) -> Option<usize> {
    let mut best: Option<(usize, f64)> = None;
    for (at, value) in values.enumerate() {
        if best.is_none_or(|(_, most)| value > most + 1e-6) {
            best = Some((at, value));
        }
    }
    best.map(|(at, _)| at)
}
