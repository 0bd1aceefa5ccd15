//! Strip packing: one dimension given, the other as short as it goes.

use chance::Chance;
use rayon::prelude::*;

use crate::part::{Budget, Left, Part, Placement, Why};
use crate::search::Search;
use crate::start::{beyond, bottom_left, slide};
use crate::world::{Room, Spot, World};

/// A strip of given height, its length open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// From edge to edge.
    pub height: f64,
    /// Kept free along all four edges.
    pub margin: f64,
    /// Kept free between parts.
    pub gap: f64,
}

/// Parts laid on a strip.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// How long the strip must be, margins included; 0 where nothing was laid.
    pub length: f64,
    /// Area inside the outlines laid, as a share of height times length.
    pub density: f64,
    /// By part and copy.
    pub placements: Vec<Placement>,
    /// What got no place, by part.
    pub left: Vec<Left>,
    /// Length of the bottom-left start that the search set out from: never less than `length`.
    pub start: f64,
}

/// Share of the length taken off after a success, at first and at last.
const SQUEEZE: [f64; 2] = [0.01, 0.000_2];
/// Share of the steps in which squeezing stays bold, and failures are shaken up.
const BOLD: f64 = 0.7;
/// Rounds without less overlap before a length is given up.
const PATIENCE: usize = 120;

/// Lays the parts on as short a strip as the budget finds. x runs along the strip, y across,
/// from its lower left corner.
pub fn strip(parts: &[Part], band: &Band, budget: &Budget) -> Strip {
    let world = World::new(parts, band.gap, band.height);
    let room = Room {
        low: [band.margin; 2],
        high: [f64::INFINITY, band.height - band.margin],
    };
    let (copies, left) = sort_out(&world, parts, &room);
    let start = best_start(&world, &room, &copies);
    let shortest = reach(&world, &start);
    let walks = budget.walks.max(1);
    let share = budget.steps / walks as u64;
    let ends: Vec<Vec<Spot>> = (0..walks)
        .into_par_iter()
        .map(|walk| {
            let mut chance = Chance::stream(budget.seed, walk as u64);
            squeeze(&world, &room, start.clone(), &mut chance, share)
        })
        .collect();
    let mut best = start;
    for end in ends {
        if reach(&world, &end) < reach(&world, &best) {
            best = end;
        }
    }
    let tell = |(&spot, copy)| placement(&world, spot, copy);
    let placements = best.iter().zip(numbers(&copies)).map(tell).collect();
    let long = |reach: f64| {
        if copies.is_empty() {
            0.0
        } else {
            reach + band.margin
        }
    };
    let length = long(reach(&world, &best));
    let area: f64 = copies.iter().map(|&part| world.areas[part]).sum();
    Strip {
        length,
        density: if length > 0.0 {
            area / (length * band.height)
        } else {
            0.0
        },
        placements,
        left,
        start: long(shortest),
    }
}

/// One entry, its part, for every copy that fits; what does not is listed.
pub(crate) fn sort_out(world: &World, parts: &[Part], room: &Room) -> (Vec<usize>, Vec<Left>) {
    let mut copies = Vec::new();
    let mut left = Vec::new();
    for (part, wanted) in parts.iter().enumerate() {
        if world.fits_in(part, room) {
            copies.extend(std::iter::repeat_n(part, wanted.count));
        } else if wanted.count > 0 {
            let unsound = world.of_part[part].is_empty();
            let why = if unsound { Why::Unsound } else { Why::TooLarge };
            left.push(Left {
                part,
                count: wanted.count,
                why,
            });
        }
    }
    (copies, left)
}

/// For every copy, which of its part it is.
pub(crate) fn numbers(copies: &[usize]) -> Vec<usize> {
    let before =
        |(nth, part): (usize, &usize)| copies[..nth].iter().filter(|other| *other == part).count();
    copies.iter().enumerate().map(before).collect()
}

/// A spot as it is told.
pub(crate) fn placement(world: &World, spot: Spot, copy: usize) -> Placement {
    let pose = &world.poses[spot.pose];
    Placement {
        part: pose.part,
        copy,
        turn: pose.turn,
        x: spot.at[0],
        y: spot.at[1],
    }
}

/// The orders in which bottom-left takes parts: large first, by four meanings of large.
pub(crate) fn orders(world: &World, copies: &[usize]) -> Vec<Vec<usize>> {
    let size = |part: usize, axis: usize| world.poses[world.of_part[part].start].size(axis);
    let meanings: [&dyn Fn(usize) -> f64; 4] = [
        &|part| world.areas[part],
        &|part| size(part, 0),
        &|part| size(part, 1),
        &|part| size(part, 0) * size(part, 1),
    ];
    let by = |large: &&dyn Fn(usize) -> f64| {
        let mut order: Vec<usize> = (0..copies.len()).collect();
        order.sort_by(|&a, &b| large(copies[b]).total_cmp(&large(copies[a])));
        order
    };
    meanings.iter().map(by).collect()
}

fn best_start(world: &World, room: &Room, copies: &[usize]) -> Vec<Spot> {
    let lay = |order: Vec<usize>| {
        let mut laid: Vec<Spot> = Vec::new();
        for &copy in &order {
            let found = bottom_left(world, room, &laid, copies[copy]);
            laid.extend(found.or_else(|| beyond(world, room, &laid, copies[copy])));
        }
        let mut spots: Vec<(usize, Spot)> = order.into_iter().zip(laid).collect();
        spots.sort_by_key(|(copy, _)| *copy);
        spots
            .into_iter()
            .map(|(_, spot)| spot)
            .collect::<Vec<Spot>>()
    };
    let starts = orders(world, copies).into_iter().map(lay);
    starts
        .min_by(|a, b| reach(world, a).total_cmp(&reach(world, b)))
        .unwrap_or_default()
}

/// How far right the spots reach.
pub(crate) fn reach(world: &World, spots: &[Spot]) -> f64 {
    spots
        .iter()
        .map(|&spot| world.right(spot))
        .fold(0.0, f64::max)
}

/// Makes the strip shorter until the steps are used up: shorten, separate, slide left.
pub(crate) fn squeeze(
    world: &World,
    room: &Room,
    start: Vec<Spot>,
    chance: &mut Chance,
    all_steps: u64,
) -> Vec<Spot> {
    let mut steps = all_steps;
    let mut best = slide_left(world, room, start);
    let mut from = best.clone();
    let mut fails = 0_u32;
    while steps > 0 && best.len() > 1 {
        let done = 1.0 - steps as f64 / all_steps as f64;
        let bold = done < BOLD;
        let off = if bold {
            SQUEEZE[0]
        } else {
            let late = (done - BOLD) / (1.0 - BOLD);
            SQUEEZE[0] * libm::pow(SQUEEZE[1] / SQUEEZE[0], late)
        };
        let before = steps;
        let length = (reach(world, &best) - room.low[0]) * (1.0 - off);
        let mut tight = *room;
        tight.high[0] = room.low[0] + length;
        let widest = |spot: &Spot| {
            let part = world.poses[spot.pose].part;
            world.fits_in(part, &tight)
        };
        if !best.iter().all(widest) {
            break;
        }
        let mut search = Search::new(world, tight, from.clone());
        if search.separate(chance, PATIENCE, &mut steps) {
            best = slide_left(world, room, search.spots);
            from = best.clone();
            fails = 0;
        } else {
            fails += 1;
            // from the failure on, or from the best again, two parts changed
            if !bold || fails.is_multiple_of(3) {
                search.spots = best.clone();
            }
            if bold || fails.is_multiple_of(2) {
                let (a, b) = (chance.below(best.len()), chance.below(best.len()));
                search.swap(a, b);
            }
            from = search.spots;
        }
        if steps == before {
            steps -= 1;
        }
    }
    best
}

/// Slides all parts left, the leftmost first, until none moves.
fn slide_left(world: &World, room: &Room, mut spots: Vec<Spot>) -> Vec<Spot> {
    let mut order: Vec<usize> = (0..spots.len()).collect();
    for _ in 0..spots.len() + 1 {
        order.sort_by(|&a, &b| spots[a].at[0].total_cmp(&spots[b].at[0]));
        let mut moved = false;
        for &copy in &order {
            let others = spots.iter().enumerate().filter(|(other, _)| *other != copy);
            let others: Vec<Spot> = others.map(|(_, spot)| *spot).collect();
            let to = slide(world, room, others.iter().copied(), spots[copy], 0);
            moved |= to[0] < spots[copy].at[0] - world.touch;
            spots[copy].at = to;
        }
        if !moved {
            break;
        }
    }
    spots
}
