//! From figures to key points, tapes and a walk.

use std::collections::BTreeSet;

use geo::Coord;
use ledger::Ledger;
use note::Noted;

use crate::bases::Bases;
use crate::finder::{Choice, Finder, Sight};
use crate::hints::{self, stepped};
use crate::keys::{Spot, between, keys};
use crate::millionth;
use crate::question::Question;
use crate::result::*;
use crate::say;
use crate::spread::{Ray, Spread};
use crate::walk::{Order, Stops, walk};

/// A key point before its tapes are chosen.
struct Wanted {
    marking: usize,
    role: Role,
    spot: Spot,
    sight: Vec<Sight>,
    /// The best first; at least one.
    choices: Vec<Choice>,
}

/// Sets out all that is laid.
///
/// # Shapes and units
/// Metres in the survey's frame; printed lengths in whole steps, all else to 1e-6.
pub fn setout(question: &Question, ledger: &Ledger) -> Noted<SetOut> {
    let bases = Bases::of(question.survey);
    let finder = Finder::new(question, &bases, ledger);
    let mut wanted = Vec::new();
    let mut unreached = Vec::new();
    let mut rests = Vec::new();
    for (marking, laid) in question.laid.iter().enumerate() {
        let mut found = keys(laid.figure, finder.apart, finder.off_line);
        for (role, spot) in found.points {
            let sight = finder.sight(spot.at);
            let choices = finder.choices(spot.at, &sight);
            if choices.is_empty() {
                unreached.push(Unreached {
                    marking,
                    role,
                    feature: spot.feature.clone(),
                    at: rounded(spot.at),
                });
                // where the others make a line, it is found from that
                found.rest.push(spot);
            } else {
                wanted.push(Wanted {
                    marking,
                    role,
                    spot,
                    sight,
                    choices,
                });
            }
        }
        rests.push(found.rest);
    }
    let stops = Stops {
        at: wanted.iter().map(|wanted| wanted.spot.at).collect(),
        sets: wanted
            .iter()
            .map(|wanted| wanted.choices.iter().map(Choice::set).collect())
            .collect(),
        bases: bases.at.clone(),
        moving: finder.moving,
    };
    let order = walk(&stops);
    let points = points(&finder, &wanted, &order);
    let markings = question
        .laid
        .iter()
        .zip(&rests)
        .enumerate()
        .map(|(number, (laid, rest))| {
            let mine: Vec<usize> = (0..points.len())
                .filter(|&point| points[point].marking == number)
                .collect();
            lay(&finder, laid.name, mine, &points, rest, ledger)
        })
        .collect();
    let angle_min = finder.angle_min;
    let (walk, carried) = moves(&points, &order, &stops);
    let value = SetOut {
        step: finder.step,
        level: finder.level,
        tape: question.tape,
        walked: millionth(
            order
                .stops
                .windows(2)
                .map(|pair| between(stops.at[pair[0]], stops.at[pair[1]]))
                .sum(),
        ),
        carried: millionth(carried),
        points,
        markings,
        walk,
        unreached,
        bases,
    };
    let notes = say::notes(question, &value, angle_min);
    Noted { value, notes }
}

fn rounded(at: Coord<f64>) -> Coord<f64> {
    Coord {
        x: millionth(at.x),
        y: millionth(at.y),
    }
}

fn points(finder: &Finder, wanted: &[Wanted], order: &Order) -> Vec<KeyPoint> {
    let mut taken: BTreeSet<String> = finder.bases.names.iter().cloned().collect();
    let mut points: Vec<KeyPoint> = Vec::with_capacity(wanted.len());
    for (number, want) in wanted.iter().enumerate() {
        let set = order.sets.get(number).copied().unwrap_or(0);
        let Some(choice) = want.choices.get(set).or(want.choices.first()) else {
            continue;
        };
        let marking = finder.question.laid[want.marking].name;
        let nth = 1 + points
            .iter()
            .filter(|point| point.marking == want.marking)
            .count();
        let mut name = format!("{marking}-{nth}");
        while !taken.insert(name.clone()) {
            name.push('x');
        }
        let at = want.spot.at;
        let tapes = finder.held(choice);
        let lands = finder.lands(choice, tapes, at);
        points.push(KeyPoint {
            name,
            marking: want.marking,
            role: want.role,
            feature: want.spot.feature.clone(),
            at: rounded(at),
            angle_deg: millionth(choice.crossing.angle_deg),
            good: finder.is_good(&choice.crossing),
            ellipse: finder.ellipse(choice),
            third: choice.third.map(|base| finder.third(choice, base, lands)),
            instead: finder.instead(choice, at, &want.sight),
            barred: finder.barred(choice, at, &want.sight),
            lands: rounded(lands),
            tapes,
        });
    }
    points
}

/// Turn, spans, chalk line and right angle of one marking.
fn lay(
    finder: &Finder,
    name: &str,
    mine: Vec<usize>,
    points: &[KeyPoint],
    rest: &[Spot],
    ledger: &Ledger,
) -> Marking {
    let spreads: Vec<Spread> = mine
        .iter()
        .map(|&point| finder.spread(point, &points[point], true))
        .collect();
    let mut spans = Vec::new();
    for i in 0..mine.len() {
        for j in i + 1..mine.len() {
            let [a, b] = [&points[mine[i]], &points[mine[j]]];
            let long = between(a.lands, b.lands);
            if long > 0.0 {
                let exact = [i, j].map(|at| finder.spread(mine[at], &points[mine[at]], false));
                let ray = Ray {
                    ends: [&exact[0], &exact[1]],
                    way: (b.lands - a.lands) / long,
                };
                let sigma = finder.reading_sigma(&ray, long);
                spans.push(Span {
                    between: [mine[i], mine[j]],
                    length: stepped(long, finder.step),
                    sigma: millionth(sigma),
                    limit: millionth(finder.limit(sigma)),
                });
            }
        }
    }
    let find = |role: Role| mine.iter().position(|&point| points[point].role == role);
    let line = find(Role::Origin).zip(find(Role::Direction));
    let turned = line.map(|(origin, direction)| {
        let [a, b] = [points[mine[origin]].at, points[mine[direction]].at];
        let (way, long) = (b - a, between(a, b).max(f64::MIN_POSITIVE));
        let across = Ray {
            ends: [&spreads[origin], &spreads[direction]],
            way: Coord {
                x: -way.y / long,
                y: way.x / long,
            },
        };
        let sigma = across.with(&across, finder.bases).max(0.0).sqrt() / long;
        let places: Vec<Coord<f64>> = rest
            .iter()
            .map(|spot| spot.at)
            .chain(mine.iter().map(|&point| points[point].at))
            .collect();
        (
            millionth(libm::atan2(way.y, way.x).to_degrees()),
            millionth(sigma.to_degrees()),
            hints::chalk(a, b, rest, finder.step),
            hints::square(finder.question, [a, b], &places, ledger),
        )
    });
    let (turn_deg, turn_sigma_deg, chalk, square) = match turned {
        Some((turn, sigma, chalk, square)) => (Some(turn), Some(sigma), Some(chalk), square),
        None => (None, None, None, None),
    };
    Marking {
        name: name.to_owned(),
        points: mine,
        turn_deg,
        turn_sigma_deg,
        spans,
        chalk,
        square,
    }
}

/// The stops with the tapes' ends that are carried before each, and the metres of that. The
/// tape that has the shorter way goes.
fn moves(points: &[KeyPoint], order: &Order, stops: &Stops) -> (Vec<Stop>, f64) {
    let mut ends: Vec<Option<usize>> = Vec::new();
    let mut carried = 0.0;
    let walk = order
        .stops
        .iter()
        .map(|&point| {
            let needed = set(&points[point]);
            let missing: Vec<usize> = needed
                .iter()
                .copied()
                .filter(|base| !ends.contains(&Some(*base)))
                .collect();
            while ends.len() < needed.len() {
                ends.push(None);
            }
            let idle: Vec<usize> = (0..ends.len())
                .filter(|&tape| ends[tape].is_none_or(|base| !needed.contains(&base)))
                .collect();
            let (tapes, cost) = assign(&missing, &idle, &|base, tape| {
                ends[tape].map_or(0.0, |from| between(stops.bases[from], stops.bases[base]))
            });
            carried += cost;
            let mut moves: Vec<Move> = missing
                .iter()
                .zip(tapes)
                .map(|(&to, tape)| Move {
                    tape,
                    from: ends[tape].replace(to),
                    to,
                })
                .collect();
            moves.sort_by_key(|moved| moved.tape);
            Stop { point, moves }
        })
        .collect();
    (walk, carried)
}

fn set(point: &KeyPoint) -> Vec<usize> {
    point
        .tapes
        .iter()
        .map(|held| held.base)
        .chain(point.third.map(|third| third.base))
        .collect()
}

/// A tape for each base, so that the whole way is shortest; there are three at most.
fn assign(
    bases: &[usize],
    tapes: &[usize],
    way: &impl Fn(usize, usize) -> f64,
) -> (Vec<usize>, f64) {
    let Some((first, rest)) = bases.split_first() else {
        return (Vec::new(), 0.0);
    };
    let mut best = (Vec::new(), f64::INFINITY);
    for (at, &tape) in tapes.iter().enumerate() {
        let left = [&tapes[..at], &tapes[at + 1..]].concat();
        let (mut taken, cost) = assign(rest, &left, way);
        let cost = cost + way(*first, tape);
        if cost < best.1 {
            taken.insert(0, tape);
            best = (taken, cost);
        }
    }
    best
}
