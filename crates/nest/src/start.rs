//! Bottom-left: each part in turn as far left as it goes, then as low.

use crate::convex::Point;
use crate::world::{Room, Spot, World};

/// Heights tried for one pose; more are thinned evenly. Two hundred tell most plateaus of a
/// crowded sheet apart, and keep the start at a small share of the search.
const HEIGHTS: usize = 200;

/// Most slides left and down after a place was chosen.
const SLIDES: usize = 20;

/// The place of a part among those laid that reaches least far right; `None` where none is left.
pub(crate) fn bottom_left(world: &World, room: &Room, laid: &[Spot], part: usize) -> Option<Spot> {
    let mut best: Option<(f64, f64, Spot)> = None;
    let mut blocked = Vec::new();
    for pose in world.of_part[part].clone() {
        let Some(range) = world.range(pose, room) else {
            continue;
        };
        for y in heights(world, &range, laid, pose) {
            blocked.clear();
            for other in laid {
                world
                    .fit(other.pose, pose)
                    .blocked(0, y, other.at, world.touch, &mut blocked);
            }
            let Some(x) = first_free(&mut blocked, range.low[0], range.high[0], world.touch) else {
                continue;
            };
            let spot = Spot { pose, at: [x, y] };
            let right = world.right(spot);
            let better = best.is_none_or(|(least, low, _)| {
                right < least - world.touch || (right <= least + world.touch && y < low)
            });
            if better && is_free(world, laid, spot) {
                best = Some((right, y, spot));
            }
        }
    }
    best.map(|(_, _, spot)| settle(world, room, laid, spot))
}

/// The place right of all that is laid: there for every part that fits in an empty room, and
/// so for each in a strip, should bottom-left miss one by rounding.
pub(crate) fn beyond(world: &World, room: &Room, laid: &[Spot], part: usize) -> Option<Spot> {
    let reach = laid
        .iter()
        .map(|&spot| world.right(spot) + world.gap + world.touch);
    let mut rest = *room;
    rest.low[0] = reach.fold(room.low[0], f64::max);
    let turns = world.of_part[part].clone();
    turns
        .filter_map(|pose| Some((pose, world.range(pose, &rest)?.low)))
        .map(|(pose, at)| Spot { pose, at })
        .next()
}

/// Heights at which a pose rests on the room's edges or on a piece of what is laid.
fn heights(world: &World, range: &Room, laid: &[Spot], pose: usize) -> Vec<f64> {
    let mut heights = vec![range.low[1], range.high[1]];
    for other in laid {
        let rests = world
            .fit(other.pose, pose)
            .rests(1)
            .map(|y| y + other.at[1]);
        heights.extend(rests.filter(|y| (range.low[1]..=range.high[1]).contains(y)));
    }
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|a, b| *a - *b <= world.touch);
    let many = heights.len();
    if many > HEIGHTS {
        heights = (0..HEIGHTS)
            .map(|k| heights[k * (many - 1) / (HEIGHTS - 1)])
            .collect();
    }
    heights
}

/// The first place in [low, high] outside of all open stretches.
fn first_free(blocked: &mut [[f64; 2]], low: f64, high: f64, touch: f64) -> Option<f64> {
    blocked.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut free = low;
    for stretch in blocked.iter() {
        if stretch[0] >= free {
            break;
        }
        free = free.max(stretch[1]);
    }
    (free <= high + touch).then_some(free.min(high))
}

pub(crate) fn is_free(world: &World, laid: &[Spot], spot: Spot) -> bool {
    laid.iter().all(|&other| world.depth(other, spot) == 0.0)
}

/// Slides left and down by turns until it rests.
fn settle(world: &World, room: &Room, laid: &[Spot], mut spot: Spot) -> Spot {
    for _ in 0..SLIDES {
        let from = spot.at;
        for axis in 0..2 {
            spot.at = slide(world, room, laid.iter().copied(), spot, axis);
        }
        if from[0] - spot.at[0] <= world.touch && from[1] - spot.at[1] <= world.touch {
            break;
        }
    }
    spot
}

/// As far down an axis as the spot goes without passing through another.
pub(crate) fn slide(
    world: &World,
    room: &Room,
    laid: impl Iterator<Item = Spot> + Clone,
    spot: Spot,
    axis: usize,
) -> Point {
    let Some(range) = world.range(spot.pose, room) else {
        return spot.at;
    };
    let mut blocked = Vec::new();
    for other in laid.clone() {
        let fit = world.fit(other.pose, spot.pose);
        fit.blocked(axis, spot.at[1 - axis], other.at, world.touch, &mut blocked);
    }
    let here = spot.at[axis];
    let stop = blocked
        .iter()
        .filter(|stretch| stretch[0] < here && stretch[1] > range.low[axis])
        .map(|stretch| stretch[1].min(here))
        .fold(range.low[axis], f64::max);
    let mut slid = spot;
    slid.at[axis] = stop.min(here);
    // long division along a slanting edge may miss by more than a touch: then it stays
    let free = laid.clone().all(|other| world.depth(other, slid) == 0.0);
    if free { slid.at } else { spot.at }
}
