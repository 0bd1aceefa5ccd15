//! Parts that overlap are talked apart: guided local search.
//!
//! All parts lie in the room, some overlap. One after another, each part that overlaps looks
//! for a place where its overlaps, each times the weight of the pair, sum to less: among
//! places drawn at random and near by, the best are landed exactly on the edges that stop them.
//! Pairs that still overlap grow heavier, until no quiet place but a true one is left (weights
//! after Voudouris and Tsang 1999; on no-fit polygons Egeblad, Nielsen and Odgaard 2007, Umetani
//! et al. 2009).

use chance::Chance;

use crate::convex::Point;
use crate::fit::Line;
use crate::world::{Room, Spot, World};

/// Places drawn over the whole room for one step.
const WIDE: usize = 24;
/// Places drawn near by for one step.
const NEAR: usize = 16;
/// Drawn places that are landed.
const LANDED: usize = 3;
/// Rounds of one landing.
const ROUNDS: usize = 8;
/// Edges considered in one round of a landing.
const EDGES: usize = 6;

/// The parts of one room under way.
#[derive(Clone)]
pub(crate) struct Search<'a> {
    world: &'a World,
    room: Room,
    /// The part of each copy here.
    parts: Vec<usize>,
    /// Where each lies.
    pub(crate) spots: Vec<Spot>,
    weights: Vec<f64>,
}

#[derive(Clone, Copy)]
struct Place {
    cost: f64,
    spot: Spot,
}

impl<'a> Search<'a> {
    /// Spots are brought into the room; every part must fit in it in some turn.
    pub(crate) fn new(world: &'a World, room: Room, spots: Vec<Spot>) -> Search<'a> {
        let parts: Vec<usize> = spots
            .iter()
            .map(|spot| world.poses[spot.pose].part)
            .collect();
        let weights = vec![1.0; parts.len() * parts.len()];
        let mut search = Search {
            world,
            room,
            parts,
            spots,
            weights,
        };
        for copy in 0..search.spots.len() {
            search.spots[copy] = search.inside(search.spots[copy]);
        }
        search
    }

    /// The nearest spot in the room, turned if it must be.
    fn inside(&self, spot: Spot) -> Spot {
        let part = self.world.poses[spot.pose].part;
        let turns = self.world.of_part[part].clone();
        let found = std::iter::once(spot.pose).chain(turns).find_map(|pose| {
            self.world
                .range(pose, &self.room)
                .map(|range| (pose, range))
        });
        match found {
            Some((pose, range)) => Spot {
                pose,
                at: clamp(spot.at, &range),
            },
            None => spot,
        }
    }

    fn weight(&self, a: usize, b: usize) -> f64 {
        self.weights[a * self.spots.len() + b]
    }

    /// The weighted overlap of a copy at a spot; more than `most` is not told apart.
    fn cost(&self, copy: usize, spot: Spot, most: f64) -> f64 {
        let mut sum = 0.0;
        for (other, &laid) in self.spots.iter().enumerate() {
            if other != copy {
                let depth = self.world.depth(laid, spot);
                if depth > 0.0 {
                    sum += depth * self.weight(copy, other);
                    if sum > most {
                        break;
                    }
                }
            }
        }
        sum
    }

    /// Every overlapping pair and its depth.
    fn overlaps(&self) -> Vec<(usize, usize, f64)> {
        let mut found = Vec::new();
        for a in 0..self.spots.len() {
            for b in a + 1..self.spots.len() {
                let depth = self.world.depth(self.spots[a], self.spots[b]);
                if depth > 0.0 {
                    found.push((a, b, depth));
                }
            }
        }
        found
    }

    /// Until nothing overlaps (true), or `patience` rounds brought no less overlap, or the
    /// steps are used up. The spots are the best seen.
    pub(crate) fn separate(
        &mut self,
        chance: &mut Chance,
        patience: usize,
        steps: &mut u64,
    ) -> bool {
        let mut best = (f64::INFINITY, self.spots.clone());
        let mut since = 0;
        loop {
            let overlaps = self.overlaps();
            let total: f64 = overlaps.iter().map(|overlap| overlap.2).sum();
            if overlaps.is_empty() {
                return true;
            }
            since += 1;
            if total < best.0 {
                best = (total, self.spots.clone());
                since = 0;
            }
            if since > patience || *steps == 0 {
                self.spots = best.1;
                return false;
            }
            let worst = overlaps
                .iter()
                .fold(0.0, |most: f64, overlap| most.max(overlap.2));
            let mut restless = Vec::new();
            for (a, b, depth) in overlaps {
                let heavier = depth / worst;
                for (a, b) in [(a, b), (b, a)] {
                    self.weights[a * self.parts.len() + b] += heavier;
                    if !restless.contains(&a) {
                        restless.push(a);
                    }
                }
            }
            shuffle(&mut restless, chance);
            for copy in restless {
                if *steps == 0 {
                    break;
                }
                let here = self.cost(copy, self.spots[copy], f64::INFINITY);
                if here > 0.0 {
                    *steps -= 1;
                    if let Some(spot) = self.look(copy, here, chance) {
                        self.spots[copy] = spot;
                    }
                }
            }
        }
    }

    /// A spot for the copy that costs less than `here`.
    fn look(&self, copy: usize, here: f64, chance: &mut Chance) -> Option<Spot> {
        let now = self.spots[copy];
        let mut places = vec![Place {
            cost: here,
            spot: now,
        }];
        let turns = self.world.of_part[self.parts[copy]].clone();
        for draw in 0..WIDE + NEAR {
            let near = draw >= WIDE;
            let stay = near && chance.share() < 0.75;
            let pose = if stay {
                now.pose
            } else {
                turns.start + chance.below(turns.len())
            };
            let Some(range) = self.world.range(pose, &self.room) else {
                continue;
            };
            let at = [0, 1].map(|axis| {
                if near {
                    now.at[axis] + 0.2 * self.world.poses[now.pose].size(axis) * chance.normal()
                } else {
                    range.low[axis] + chance.share() * (range.high[axis] - range.low[axis])
                }
            });
            let spot = Spot {
                pose,
                at: clamp(at, &range),
            };
            let worst = if places.len() > LANDED {
                places[LANDED].cost
            } else {
                f64::INFINITY
            };
            let cost = self.cost(copy, spot, worst);
            if cost < worst {
                let rank = places.partition_point(|place| place.cost <= cost);
                places.insert(rank, Place { cost, spot });
                places.truncate(LANDED + 1);
            }
        }
        let mut best = Place {
            cost: here,
            spot: now,
        };
        for place in places {
            let landed = self.land(copy, place);
            if landed.cost < best.cost {
                best = landed;
            }
            if best.cost == 0.0 {
                break;
            }
        }
        (best.cost < here).then_some(best.spot)
    }

    /// Down to a place that no edge near by betters: on the edges it hangs on, or where two of
    /// them cross.
    fn land(&self, copy: usize, mut place: Place) -> Place {
        let Some(range) = self.world.range(place.spot.pose, &self.room) else {
            return place;
        };
        let mut held: Vec<Line> = Vec::new();
        for _ in 0..ROUNDS {
            if place.cost == 0.0 {
                break;
            }
            let spot = place.spot;
            let mut ways: Vec<(f64, Line)> = Vec::new();
            for (other, &laid) in self.spots.iter().enumerate() {
                if other == copy || self.world.depth(laid, spot) == 0.0 {
                    continue;
                }
                let first = ways.len();
                let from = [spot.at[0] - laid.at[0], spot.at[1] - laid.at[1]];
                self.world
                    .fit(laid.pose, spot.pose)
                    .ways_out(from, self.world.touch, &mut ways);
                for way in &mut ways[first..] {
                    way.1 = way.1.moved(laid.at);
                }
            }
            ways.sort_by(|a, b| b.0.total_cmp(&a.0));
            ways.truncate(EDGES);
            let reach = ways.first().map_or(0.0, |way| way.0) * 4.0;
            let mut lines: Vec<Line> = ways.iter().map(|way| way.1).collect();
            let fresh = lines.len();
            lines.append(&mut held);
            lines.extend(
                walls(&range)
                    .into_iter()
                    .filter(|wall| wall.depth(spot.at).abs() <= reach),
            );
            let mut best = place;
            let consider = |at: Point, best: &mut Place| {
                let spot = Spot {
                    pose: spot.pose,
                    at: clamp(at, &range),
                };
                let cost = self.cost(copy, spot, best.cost);
                if cost < best.cost {
                    *best = Place { cost, spot };
                }
            };
            for (k, line) in lines.iter().enumerate() {
                if k < fresh {
                    let depth = line.depth(spot.at);
                    let out = [
                        spot.at[0] + depth * line.normal[0],
                        spot.at[1] + depth * line.normal[1],
                    ];
                    consider(out, &mut best);
                }
                for other in &lines[k + 1..] {
                    let Some(at) = line.cross(other) else {
                        continue;
                    };
                    if (at[0] - spot.at[0]).abs() <= reach && (at[1] - spot.at[1]).abs() <= reach {
                        consider(at, &mut best);
                    }
                }
            }
            if best.cost >= place.cost {
                break;
            }
            place = best;
            held = lines;
            held.truncate(EDGES);
        }
        place
    }

    /// Two copies of different parts change places.
    pub(crate) fn swap(&mut self, a: usize, b: usize) {
        let (p, q) = (self.spots[a], self.spots[b]);
        let middle = |spot: Spot, axis: usize| {
            let pose = &self.world.poses[spot.pose];
            spot.at[axis] + (pose.low[axis] + pose.high[axis]) / 2.0
        };
        for axis in 0..2 {
            let by = middle(q, axis) - middle(p, axis);
            self.spots[a].at[axis] += by;
            self.spots[b].at[axis] -= by;
        }
        for copy in [a, b] {
            self.spots[copy] = self.inside(self.spots[copy]);
        }
    }
}

fn clamp(at: Point, range: &Room) -> Point {
    [0, 1].map(|axis| at[axis].max(range.low[axis]).min(range.high[axis]))
}

/// The edges of where an origin may lie.
fn walls(range: &Room) -> [Line; 4] {
    [
        Line {
            normal: [-1.0, 0.0],
            at: -range.low[0],
        },
        Line {
            normal: [1.0, 0.0],
            at: range.high[0],
        },
        Line {
            normal: [0.0, -1.0],
            at: -range.low[1],
        },
        Line {
            normal: [0.0, 1.0],
            at: range.high[1],
        },
    ]
}

fn shuffle(list: &mut [usize], chance: &mut Chance) {
    for k in (1..list.len()).rev() {
        list.swap(k, chance.below(k + 1));
    }
}
