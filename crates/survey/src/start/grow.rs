//! Placing points one after another, on several drafts at once.

use super::loci::{crossings, loci};
use super::{DRAFTS, Draft, Soft, spread};
use crate::model::{Place, apart, cross, length, row, value};
use crate::network::{Kind, PointId};

/// A draft that costs so much more than the best (two or three wild readings) is given up.
const HOPELESS: f64 = 25.0;

/// Points in all drafts together, past which the dearest drafts go: work stays bounded.
const DRAFTED: usize = 1200;

/// Readings of a point that are crossed pairwise; the others judge.
const CROSSED: usize = 6;

/// Two readings that cross at a smaller angle (sine) place a point badly.
const CROSSES_WELL: f64 = 0.3;

/// Places every point that crossings can reach. Points that at most two readings hold can
/// decide nothing for others: they come last, and both their mirrors fit.
pub(crate) fn grow(soft: &Soft, drafts: &mut Vec<Draft>, placed: &mut [bool]) {
    let nothing = vec![false; soft.points];
    grow_core(soft, drafts, placed, &nothing);
    grow_by(soft, drafts, placed, 1, |_| true);
}

/// The same for what more than two readings hold, with points that are `barred` left out.
pub(crate) fn grow_core(
    soft: &Soft,
    drafts: &mut Vec<Draft>,
    placed: &mut [bool],
    barred: &[bool],
) {
    let core = core(soft, placed, barred);
    grow_by(soft, drafts, placed, DRAFTS, |p| core[p]);
}

fn grow_by(
    soft: &Soft,
    drafts: &mut Vec<Draft>,
    placed: &mut [bool],
    most: usize,
    wanted: impl Fn(PointId) -> bool + Copy,
) {
    let mut ripe: Vec<Option<(usize, f64)>> = vec![None; soft.points];
    let mut count = placed.iter().filter(|p| **p).count();
    let mut refine_at = (count + count / 3 + 1).max(4);
    while let Some(point) = next(soft, drafts, placed, &mut ripe, wanted) {
        branch(soft, drafts, placed, point, most);
        placed[point] = true;
        count += 1;
        if count >= refine_at {
            refine_at = count + count / 3 + 1;
            for draft in drafts.iter_mut() {
                soft.refine(draft, placed, 4);
            }
        }
    }
}

/// Points that stay when those with two readings or fewer are taken away one by one.
fn core(soft: &Soft, placed: &[bool], barred: &[bool]) -> Vec<bool> {
    let mut inside: Vec<bool> = barred.iter().map(|b| !b).collect();
    loop {
        let weak: Vec<PointId> = (0..soft.points)
            .filter(|&p| inside[p] && !placed[p] && ties(soft, p, &inside).len() <= 2)
            .collect();
        if weak.is_empty() {
            return inside;
        }
        for p in weak {
            inside[p] = false;
        }
    }
}

/// Readings of `p` to points of `placed`, of repeated ones only the first.
pub(crate) fn ties(soft: &Soft, p: PointId, placed: &[bool]) -> Vec<usize> {
    let mut seen: Vec<(u8, Vec<PointId>)> = Vec::new();
    let others_placed = |n: usize| soft.readings[n].kind.points().all(|q| q == p || placed[q]);
    soft.touching[p]
        .iter()
        .copied()
        .filter(|&n| {
            let kind = soft.readings[n].kind;
            let sort = match kind {
                Kind::Distance { .. } => 0,
                Kind::Along { .. } => 1,
                Kind::Left { .. } => 2,
                Kind::Square { .. } => 3,
                Kind::KnownX { .. } => 4,
                Kind::KnownY { .. } => 5,
            };
            let mut others: Vec<PointId> = kind.points().collect();
            if sort == 0 {
                others.sort_unstable();
            }
            others_placed(n) && !seen.contains(&(sort, others.clone())) && {
                seen.push((sort, others));
                true
            }
        })
        .collect()
}

/// Three readings cross well; any do; how many; what it brings to a third; the best sine.
type Ripeness = (bool, bool, usize, usize, f64);

/// The point to place now: first those that three readings cross well, then the others by
/// how well they cross.
fn next(
    soft: &Soft,
    drafts: &[Draft],
    placed: &[bool],
    ripe: &mut [Option<(usize, f64)>],
    wanted: impl Fn(PointId) -> bool,
) -> Option<PointId> {
    let best = drafts.first()?;
    let tied: Vec<usize> = (0..soft.points)
        .map(|p| {
            if placed[p] {
                0
            } else {
                ties(soft, p, placed).len()
            }
        })
        .collect();
    // Points that placing `p` would bring to a third reading, which then judges both.
    let closes = |p: PointId| {
        let others = soft.touching[p]
            .iter()
            .flat_map(|&n| soft.readings[n].kind.points());
        others.filter(|&q| q != p && tied[q] == 2).count().min(3)
    };
    let mut choice: Option<(Ripeness, PointId)> = None;
    for p in (0..soft.points).filter(|&p| !placed[p] && wanted(p)) {
        if tied[p] < 2 {
            continue;
        }
        let ties = ties(soft, p, placed);
        let quality = match ripe[p] {
            Some((count, quality)) if count == ties.len() => quality,
            _ => {
                let mut at = best.at.clone();
                candidates(soft, &ties, p, &mut at)
                    .first()
                    .map_or(0.0, |(place, _)| {
                        at[p] = *place;
                        crossing(soft, &ties, p, &at)
                    })
            }
        };
        ripe[p] = Some((ties.len(), quality));
        if quality <= 0.0 {
            continue;
        }
        let good = quality > CROSSES_WELL;
        let key = (
            good && ties.len() >= 3,
            good,
            ties.len().min(6),
            closes(p),
            quality,
        );
        if choice.as_ref().is_none_or(|(most, _)| key > *most) {
            choice = Some((key, p));
        }
    }
    choice.map(|(_, p)| p)
}

/// The best sine between two of the readings' directions at the point.
fn crossing(soft: &Soft, ties: &[usize], p: PointId, at: &[Place]) -> f64 {
    let ways: Vec<Place> = ties
        .iter()
        .filter_map(|&n| {
            row(soft.readings[n].kind, at)
                .terms()
                .iter()
                .find(|(q, _)| *q == p)
                .map(|t| t.1)
        })
        .collect();
    let mut best = 0.0_f64;
    for (i, a) in ways.iter().enumerate() {
        for b in &ways[..i] {
            best = best.max(cross(*a, *b).abs() / (length(*a) * length(*b)).max(1e-12));
        }
    }
    best
}

/// Puts `point` into every draft at each place where it could be.
fn branch(soft: &Soft, drafts: &mut Vec<Draft>, placed: &[bool], point: PointId, most: usize) {
    let ties: Vec<usize> = ties(soft, point, placed);
    let all: Vec<usize> = soft.touching[point]
        .iter()
        .copied()
        .filter(|&n| {
            soft.readings[n]
                .kind
                .points()
                .all(|q| q == point || placed[q])
        })
        .collect();
    // The third point's mirror is the mirror of the whole, unless a side was read.
    let first = placed.iter().filter(|p| **p).count() == 2
        && !soft
            .readings
            .iter()
            .any(|r| matches!(r.kind, Kind::Left { .. }) || r.kind.is_known())
        && !soft.held.iter().any(|h| *h);
    let keep = if first || most == 1 { 1 } else { 3 };
    let mut grown = Vec::with_capacity(drafts.len() * keep);
    for draft in drafts.iter_mut() {
        for (place, _) in candidates(soft, &ties, point, &mut draft.at)
            .into_iter()
            .take(keep)
        {
            draft.at[point] = place;
            let cost = draft.cost + all.iter().map(|&n| soft.cost(n, &draft.at)).sum::<f64>();
            grown.push(Draft {
                at: draft.at.clone(),
                cost,
            });
        }
    }
    if !grown.is_empty() {
        grown.sort_by(|a, b| a.cost.total_cmp(&b.cost));
        let count = placed.iter().filter(|p| **p).count();
        let best = grown[0].cost;
        grown.retain(|d| d.cost <= best + HOPELESS);
        grown.truncate((DRAFTED / count.max(1)).clamp(4, DRAFTS));
        *drafts = grown;
    }
}

/// Places for `p` by the readings `ties`, the best first, each with its cost.
pub(crate) fn candidates(
    soft: &Soft,
    ties: &[usize],
    p: PointId,
    at: &mut [Place],
) -> Vec<(Place, f64)> {
    let by_reading: Vec<_> = ties
        .iter()
        .map(|&n| loci(soft.readings[n].kind, soft.readings[n].value, p, at))
        .filter(|loci| !loci.is_empty())
        .take(CROSSED)
        .collect();
    let mut places = Vec::new();
    for (i, first) in by_reading.iter().enumerate() {
        for second in &by_reading[..i] {
            for &a in first {
                for &b in second {
                    places.extend(crossings(a, b));
                }
            }
        }
    }
    if by_reading.len() < ties.len() {
        places.extend(around(at, soft, ties, p));
    }
    let mut found: Vec<(Place, f64)> = Vec::new();
    for place in places {
        at[p] = place;
        let cost = polish(soft, ties, p, at);
        found.push((at[p], cost));
    }
    found.sort_by(|a, b| a.1.total_cmp(&b.1));
    let mut distinct: Vec<(Place, f64)> = Vec::new();
    for (place, cost) in found {
        let near = soft.readings.first().map_or(1e-3, |r| r.sigma);
        if distinct
            .iter()
            .all(|(other, _)| apart(*other, place) > near)
        {
            distinct.push((place, cost));
        }
    }
    distinct
}

/// A wheel of places round the points that the readings see, for loci of higher degree.
fn around(at: &[Place], soft: &Soft, ties: &[usize], p: PointId) -> Vec<Place> {
    let mut seen = vec![false; soft.points];
    for q in ties
        .iter()
        .flat_map(|&n| soft.readings[n].kind.points())
        .filter(|&q| q != p)
    {
        seen[q] = true;
    }
    let (centre, wide) = spread(at, &seen);
    (0..16)
        .map(|spoke| {
            let (s, c) = libm::sincos(f64::from(spoke) * std::f64::consts::FRAC_PI_8);
            let far = wide.max(1e-3) * if spoke % 2 == 0 { 0.8 } else { 2.0 };
            [centre[0] + far * c, centre[1] + far * s]
        })
        .collect()
}

/// Moves one point to the nearest least cost of its readings, and gives it.
fn polish(soft: &Soft, ties: &[usize], p: PointId, at: &mut [Place]) -> f64 {
    let cost = |at: &[Place]| ties.iter().map(|&n| soft.cost(n, at)).sum::<f64>();
    let mut now = cost(at);
    for _ in 0..8 {
        let (mut xx, mut xy, mut yy, mut rx, mut ry) = (1e-9, 0.0, 1e-9, 0.0, 0.0);
        for &n in ties {
            let reading = &soft.readings[n];
            let z = (value(reading.kind, at) - reading.value) / reading.sigma;
            let share = 1.0 / (1.0 + z * z / 16.0);
            let weight = share * share;
            for (_, d) in row(reading.kind, at)
                .terms()
                .iter()
                .filter(|(q, _)| *q == p)
            {
                let a = [d[0] / reading.sigma, d[1] / reading.sigma];
                xx += weight * a[0] * a[0];
                xy += weight * a[0] * a[1];
                yy += weight * a[1] * a[1];
                rx -= weight * a[0] * z;
                ry -= weight * a[1] * z;
            }
        }
        let whole = xx * yy - xy * xy;
        if whole <= 1e-12 * xx * yy {
            break;
        }
        let step = [(yy * rx - xy * ry) / whole, (xx * ry - xy * rx) / whole];
        let before = at[p];
        let mut share = 1.0;
        let mut moved = false;
        for _ in 0..6 {
            at[p] = [before[0] + share * step[0], before[1] + share * step[1]];
            let there = cost(at);
            if there < now {
                moved = now - there > 1e-6 * now;
                now = there;
                break;
            }
            at[p] = before;
            share *= 0.25;
        }
        if !moved {
            break;
        }
    }
    now
}
