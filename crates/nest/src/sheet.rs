//! Nesting on sheets of one size: as few as the search finds, the last as little used.

use chance::Chance;
use rayon::prelude::*;

use crate::part::{Budget, Left, Part, Placement};
use crate::search::Search;
use crate::start::{beyond, bottom_left};
use crate::strip::{numbers, orders, placement, reach, sort_out, squeeze};
use crate::world::{Room, Spot, World};

/// A rectangular sheet, of which there are as many as are needed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Along x, from edge to edge.
    pub width: f64,
    /// Along y.
    pub height: f64,
    /// Kept free along all four edges.
    pub margin: f64,
    /// Kept free between parts.
    pub gap: f64,
}

/// Parts laid on sheets.
#[derive(Clone, Debug, PartialEq)]
pub struct Nesting {
    /// The sheets used, the emptiest last.
    pub sheets: Vec<Laid>,
    /// Area inside the outlines laid, as a share of all sheets used; 0 for none.
    pub density: f64,
    /// What got no place, by part.
    pub left: Vec<Left>,
    /// Sheets that the bottom-left start used: never fewer than `sheets`.
    pub start: usize,
}

/// One sheet with its parts.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// By part and copy; copies are counted over all sheets.
    pub placements: Vec<Placement>,
    /// Area inside the outlines laid, as a share of the sheet.
    pub density: f64,
    /// From the left edge to the end of the last part and the margin beyond: what lies further
    /// right can be cut off whole.
    pub used: f64,
}

/// Share of a walk's steps for getting by with fewer sheets; the rest make the last shorter.
const FEWER: f64 = 0.6;
/// Rounds without less overlap before a part is taken to have no place on a sheet.
const PATIENCE: usize = 40;

/// Copies on one sheet, by their number in the list of all copies.
type Pile = Vec<(usize, Spot)>;

/// Lays the parts on as few sheets as the budget finds, each part's place from its sheet's lower
/// left corner.
pub fn nest(parts: &[Part], sheet: &Sheet, budget: &Budget) -> Nesting {
    let world = World::new(parts, sheet.gap, sheet.width.max(sheet.height));
    let room = Room {
        low: [sheet.margin; 2],
        high: [sheet.width - sheet.margin, sheet.height - sheet.margin],
    };
    let (copies, left) = sort_out(&world, parts, &room);
    let start = best_start(&world, &room, &copies);
    let walks = budget.walks.max(1);
    let share = budget.steps / walks as u64;
    let ends: Vec<Vec<Pile>> = (0..walks)
        .into_par_iter()
        .map(|walk| {
            let mut chance = Chance::stream(budget.seed, walk as u64);
            improve(&world, &room, start.clone(), &mut chance, share)
        })
        .collect();
    let first = start.len();
    let mut best = start;
    for end in ends {
        if better(&world, &end, &best) {
            best = end;
        }
    }
    let whole = sheet.width * sheet.height;
    let numbers = numbers(&copies);
    let laid = |mut pile: Pile| {
        pile.sort_by_key(|(copy, _)| *copy);
        Laid {
            density: area(&world, &pile) / whole,
            used: reach(&world, &spots(&pile)) + sheet.margin,
            placements: pile
                .iter()
                .map(|&(copy, spot)| placement(&world, spot, numbers[copy]))
                .collect(),
        }
    };
    let sheets: Vec<Laid> = best.into_iter().map(laid).collect();
    let filled: f64 = sheets.iter().map(|laid| laid.density).sum();
    let density = if sheets.is_empty() {
        0.0
    } else {
        filled / sheets.len() as f64
    };
    Nesting {
        sheets,
        density,
        left,
        start: first,
    }
}

fn spots(pile: &Pile) -> Vec<Spot> {
    pile.iter().map(|(_, spot)| *spot).collect()
}

fn area(world: &World, pile: &Pile) -> f64 {
    pile.iter()
        .map(|(_, spot)| world.areas[world.poses[spot.pose].part])
        .sum()
}

/// Fewer sheets, or as many and a shorter last one.
fn better(world: &World, a: &[Pile], b: &[Pile]) -> bool {
    let last = |piles: &[Pile]| piles.last().map_or(0.0, |pile| reach(world, &spots(pile)));
    a.len() < b.len() || (a.len() == b.len() && last(a) < last(b))
}

/// Bottom-left on the first sheet with a place, in the best of some orders.
fn best_start(world: &World, room: &Room, copies: &[usize]) -> Vec<Pile> {
    let lay = |order: Vec<usize>| {
        let mut piles: Vec<Pile> = Vec::new();
        for copy in order {
            let place = |pile: &Pile| bottom_left(world, room, &spots(pile), copies[copy]);
            let found = piles
                .iter()
                .enumerate()
                .find_map(|(nth, pile)| Some((nth, place(pile)?)));
            match found {
                Some((nth, spot)) => piles[nth].push((copy, spot)),
                // it fits in an empty sheet, or it were not here
                None => {
                    let spot =
                        place(&Vec::new()).or_else(|| beyond(world, room, &[], copies[copy]));
                    piles.push(spot.map(|spot| (copy, spot)).into_iter().collect());
                }
            }
        }
        emptiest_last(world, &mut piles);
        piles
    };
    let mut best: Option<Vec<Pile>> = None;
    for order in orders(world, copies) {
        let piles = lay(order);
        if best.as_ref().is_none_or(|best| better(world, &piles, best)) {
            best = Some(piles);
        }
    }
    best.unwrap_or_default()
}

fn emptiest_last(world: &World, piles: &mut [Pile]) {
    piles.sort_by(|a, b| area(world, b).total_cmp(&area(world, a)));
}

/// Moves parts of the emptiest sheet to the others while that succeeds, then shortens it.
fn improve(
    world: &World,
    room: &Room,
    start: Vec<Pile>,
    chance: &mut Chance,
    all: u64,
) -> Vec<Pile> {
    let mut piles = start;
    let mut steps = (all as f64 * FEWER) as u64;
    let inner = (room.high[0] - room.low[0]) * (room.high[1] - room.low[1]);
    while piles.len() > 1 && steps > 0 {
        let before = steps;
        let moved = move_on(world, room, inner, &mut piles, chance, &mut steps);
        if !moved && before == steps {
            break;
        }
        piles.retain(|pile| !pile.is_empty());
        emptiest_last(world, &mut piles);
    }
    let spent = (all as f64 * FEWER) as u64 - steps;
    if let Some(last) = piles.last_mut() {
        let shorter = squeeze(world, room, spots(last), chance, all - spent);
        for (entry, spot) in last.iter_mut().zip(shorter) {
            entry.1 = spot;
        }
    }
    piles
}

/// Tries each part of the last sheet on each other sheet that has the area for it, large parts
/// first.
fn move_on(
    world: &World,
    room: &Room,
    inner: f64,
    piles: &mut [Pile],
    chance: &mut Chance,
    steps: &mut u64,
) -> bool {
    let Some((last, others)) = piles.split_last_mut() else {
        return false;
    };
    let mut wanting = std::mem::take(last);
    let size = |spot: Spot| world.areas[world.poses[spot.pose].part];
    wanting.sort_by(|a, b| size(b.1).total_cmp(&size(a.1)));
    let mut moved = false;
    for (copy, spot) in wanting {
        let taken = others.iter_mut().any(|pile| {
            if area(world, pile) + size(spot) > inner {
                return false;
            }
            let mut trial = spots(pile);
            let at = [0, 1]
                .map(|axis| room.low[axis] + chance.share() * (room.high[axis] - room.low[axis]));
            trial.push(Spot {
                pose: spot.pose,
                at,
            });
            let mut search = Search::new(world, *room, trial);
            let fits = search.separate(chance, PATIENCE, steps);
            if fits {
                pile.push((copy, spot));
                for (entry, spot) in pile.iter_mut().zip(&search.spots) {
                    entry.1 = *spot;
                }
            }
            fits
        });
        if taken {
            moved = true;
        } else {
            last.push((copy, spot));
        }
    }
    moved
}
