//! The walk against all orders.
#![allow(clippy::expect_used, clippy::panic)]

mod common;

use common::Dice;
use geo::coord;
use setout::{Stops, walk};

/// The shortest of all walks and all choices of sets (Held and Karp's recursion over the
/// stops that have been seen).
fn shortest(stops: &Stops) -> f64 {
    let count = stops.at.len();
    let nodes: Vec<(usize, usize)> = (0..count)
        .flat_map(|stop| (0..stops.sets[stop].len()).map(move |set| (stop, set)))
        .collect();
    let costs: Vec<Vec<f64>> = nodes
        .iter()
        .map(|&a| {
            let to = |&b: &(usize, usize)| if a.0 == b.0 { 0.0 } else { stops.going(a, b) };
            nodes.iter().map(to).collect()
        })
        .collect();
    let mut best = vec![vec![f64::INFINITY; nodes.len()]; 1 << count];
    for (at, node) in nodes.iter().enumerate() {
        best[1 << node.0][at] = 0.0;
    }
    for seen in 1..1usize << count {
        for (here, _) in nodes.iter().enumerate() {
            let so_far = best[seen][here];
            if so_far.is_finite() {
                for (next, node) in nodes.iter().enumerate() {
                    if seen & 1 << node.0 == 0 {
                        let total = so_far + costs[here][next];
                        let place = &mut best[seen | 1 << node.0][next];
                        *place = place.min(total);
                    }
                }
            }
        }
    }
    best[(1 << count) - 1]
        .iter()
        .copied()
        .fold(f64::INFINITY, f64::min)
}

fn random(dice: &mut Dice, count: usize) -> Stops {
    let bases: Vec<_> = (0..6 + dice.below(6))
        .map(|_| coord! { x: dice.within(0.0, 30.0), y: dice.within(0.0, 20.0) })
        .collect();
    // clusters, as the key points of markings come
    let middles: Vec<_> = (0..1 + dice.below(4))
        .map(|_| coord! { x: dice.within(3.0, 27.0), y: dice.within(3.0, 17.0) })
        .collect();
    let at = (0..count)
        .map(|_| {
            let middle = middles[dice.below(middles.len())];
            coord! { x: middle.x + dice.within(-3.0, 3.0), y: middle.y + dice.within(-3.0, 3.0) }
        })
        .collect();
    let sets = (0..count)
        .map(|_| {
            (0..1 + dice.below(5))
                .map(|_| {
                    let mut set = Vec::new();
                    while set.len() < 3 {
                        let base = dice.below(bases.len());
                        if !set.contains(&base) {
                            set.push(base);
                        }
                    }
                    set
                })
                .collect()
        })
        .collect();
    Stops {
        at,
        sets,
        bases,
        moving: 6.0,
    }
}

/// Walks of `counts` stops, so many of each: the worst of ours over the shortest.
fn worst(counts: std::ops::RangeInclusive<usize>, each: usize, seed: u64) -> f64 {
    let mut dice = Dice::new(seed);
    let (mut worst, mut exact, mut all) = (1.0_f64, 0, 0);
    for count in counts.clone() {
        for _ in 0..each {
            let stops = random(&mut dice, count);
            let (ours, least) = (walk(&stops), shortest(&stops));
            let mut seen = ours.stops.clone();
            seen.sort_unstable();
            assert_eq!(seen, (0..count).collect::<Vec<_>>(), "each stop once");
            let paid: f64 = ours
                .stops
                .windows(2)
                .map(|pair| {
                    let [a, b] = [pair[0], pair[1]].map(|stop| (stop, ours.sets[stop]));
                    stops.going(a, b)
                })
                .sum();
            assert!(
                (paid - ours.cost).abs() < 1e-6,
                "{paid} is said to be {}",
                ours.cost
            );
            assert!(ours.cost >= least - 1e-6, "shorter than the shortest");
            worst = worst.max(ours.cost / least);
            exact += usize::from(ours.cost <= least + 1e-6);
            all += 1;
        }
    }
    println!("{counts:?} stops: worst {worst}, exact {exact} of {all}");
    worst
}

#[test]
fn up_to_twelve_stops_no_walk_is_shorter() {
    let worst = worst(2..=12, 24, 1);
    assert!(worst <= 1.0 + 1e-9, "{worst}");
}

/// Past twelve stops the walk is searched for; here it is still known what there is to find.
#[test]
fn past_twelve_stops_no_walk_is_a_twentieth_shorter() {
    let worst = worst(13..=14, 12, 2);
    assert!(worst <= 1.05, "{worst}");
}

#[test]
fn no_stop_and_one_stop_are_walks() {
    let none = Stops {
        at: Vec::new(),
        sets: Vec::new(),
        bases: Vec::new(),
        moving: 6.0,
    };
    assert!(walk(&none).stops.is_empty());
    let one = Stops {
        at: vec![coord! { x: 1.0, y: 1.0 }],
        sets: vec![Vec::new()],
        ..none
    };
    assert_eq!(walk(&one).stops, [0]);
}
