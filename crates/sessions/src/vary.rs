//! Against staleness: the slots of a session in another order, and games that change.

use std::collections::BTreeMap;

use crate::frame::{Frame, gait};
use crate::programme::Programme;
use crate::schedule::{Group, Session, State};
use crate::seats::{FREE, Seats};

/// A repeated pair is as bad as this much practice less, minutes.
const PAIR: f64 = 0.1;

/// Slots of a session of which every order is tried: 120 orders.
const ORDERED: usize = 5;

/// Times that a child goes between the same two stations in two sessions running.
pub(crate) fn pairs(frame: &Frame, seats: &Seats) -> u32 {
    let held = running(frame);
    held.windows(2)
        .map(|two| repeats(frame, seats, two[0], two[1]))
        .sum()
}

/// Sessions that take place.
fn running(frame: &Frame) -> Vec<usize> {
    (0..frame.sittings.len())
        .filter(|sitting| frame.sittings[*sitting].state != State::Lost)
        .collect()
}

fn repeats(frame: &Frame, seats: &Seats, one: usize, other: usize) -> u32 {
    let steps = |kid: usize, sitting: usize| -> Vec<(usize, usize)> {
        let first = sitting * frame.slots;
        (first..first + frame.slots.saturating_sub(1))
            .filter_map(|slot| {
                let a = seats.station(frame, kid, slot)?;
                let b = seats.station(frame, kid, slot + 1)?;
                (a != b).then_some((a.min(b), a.max(b)))
            })
            .collect()
    };
    (0..seats.kids.len())
        .map(|kid| {
            let before = steps(kid, one);
            let after = steps(kid, other);
            after.iter().filter(|step| before.contains(step)).count() as u32
        })
        .sum()
}

/// Puts the slots of planned sessions in the order in which fewest pairs repeat, where it
/// costs no practice worth more.
pub(crate) fn order(frame: &Frame, seats: &mut Seats) {
    if frame.slots < 2 || frame.slots > ORDERED {
        return;
    }
    let orders = permutations(frame.slots);
    let running = running(frame);
    let per_week = frame.sittings.len() / frame.weeks.max(1);
    let mut used = vec![0.0; frame.forms_of.len()];
    for _ in 0..2 {
        for (at, sitting) in running.iter().enumerate() {
            if frame.sittings[*sitting].state != State::Planned {
                continue;
            }
            let week = sitting / per_week;
            let mut cost = |seats: &Seats| {
                let before = at.checked_sub(1).map(|at| running[at]);
                let near = [before, running.get(at + 1).copied()];
                let pairs: u32 = near
                    .into_iter()
                    .flatten()
                    .map(|other| repeats(frame, seats, *sitting, other))
                    .sum();
                let practice: f64 = (0..seats.kids.len())
                    .flat_map(|kid| seats.week(frame, kid, week, &mut used))
                    .sum();
                PAIR * f64::from(pairs) - practice
            };
            let mut best = (cost(seats), None);
            for order in &orders {
                let turned = turned(frame, seats, *sitting, order);
                let first = sitting * frame.slots;
                let may = (0..turned.kids.len()).all(|kid| {
                    (first..first + frame.slots).all(|slot| turned.changes(frame, kid, slot))
                });
                let price = cost(&turned);
                if may && price < best.0 - 1e-9 {
                    best = (price, Some(turned));
                }
            }
            if let Some(turned) = best.1 {
                *seats = turned;
            }
        }
    }
}

fn turned(frame: &Frame, seats: &Seats, sitting: usize, order: &[usize]) -> Seats {
    let mut turned = seats.clone();
    let first = sitting * frame.slots;
    for (to, from) in order.iter().enumerate() {
        let (to, from) = (first + to, first + from);
        for (kid, forms) in seats.form.iter().enumerate() {
            turned.form[kid][to] = forms[from];
        }
        turned.played[to].clone_from(&seats.played[from]);
        turned.count[to].clone_from(&seats.count[from]);
        turned.open[to] = seats.open[from];
    }
    turned
}

fn permutations(many: usize) -> Vec<Vec<usize>> {
    if many == 0 {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for shorter in permutations(many - 1) {
        for at in (0..many).rev() {
            let mut longer = shorter.clone();
            longer.insert(at, many - 1);
            all.push(longer);
        }
    }
    all
}

/// The groups of a slot, by station.
pub(crate) fn groups(frame: &Frame, seats: &Seats, slot: usize) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for (station, played) in seats.played[slot].iter().enumerate() {
        if *played == FREE {
            continue;
        }
        let form = &frame.forms[*played as usize];
        groups.push(Group {
            station,
            parts: form
                .parts
                .iter()
                .map(|(act, share)| (frame.acts[*act].number, *share))
                .collect(),
            game: None,
            children: std::iter::zip(&seats.kids, &seats.form)
                .filter(|(_, forms)| forms[slot] == *played)
                .map(|(kid, _)| *kid)
                .collect(),
        });
    }
    groups
}

/// Gives every planned group a game: of those that each of its children is ready for, the
/// one they have played least, the harder first.
pub(crate) fn games(programme: &Programme, level_visits: f64, sessions: &mut [Session]) {
    let mut played: BTreeMap<(usize, usize, usize), u32> = BTreeMap::new();
    for session in sessions {
        for group in session.slots.iter_mut().flatten() {
            let station = &programme.stations[group.station];
            let times = |child: usize, at: usize, game: usize| {
                played.get(&(child, at, game)).copied().unwrap_or(0)
            };
            let word = group
                .parts
                .first()
                .and_then(|part| station.activities.get(part.0))
                .map_or("", |activity| gait(&activity.word));
            let of_gait = || {
                let games = station.games.iter().enumerate();
                games.filter(|(_, game)| game.gait == word)
            };
            let ready = |child: usize, level: u8, after: &[String]| {
                let lower = of_gait()
                    .filter(|(_, it)| it.level < level)
                    .map(|it| it.1.level);
                let climbed = lower.max().is_none_or(|below| {
                    let visits: u32 = of_gait()
                        .filter(|(_, it)| it.level == below)
                        .map(|(number, _)| times(child, group.station, number))
                        .sum();
                    f64::from(visits) >= level_visits
                });
                climbed
                    && after.iter().all(|name| {
                        programme.stations.iter().enumerate().any(|(at, station)| {
                            station.games.iter().enumerate().any(|(number, game)| {
                                game.name == *name && times(child, at, number) > 0
                            })
                        })
                    })
            };
            if session.state == State::Planned {
                group.game = of_gait()
                    .filter(|(_, game)| {
                        let mut all = group.children.iter();
                        all.all(|child| ready(*child, game.level, &game.after))
                    })
                    .min_by_key(|(number, game)| {
                        let all = group.children.iter();
                        let times: u32 = all.map(|it| times(*it, group.station, *number)).sum();
                        (times, u8::MAX - game.level, *number)
                    })
                    .map(|(number, _)| number);
            }
            if let Some(game) = group.game {
                for child in &group.children {
                    *played.entry((*child, group.station, game)).or_default() += 1;
                }
            }
        }
    }
}
