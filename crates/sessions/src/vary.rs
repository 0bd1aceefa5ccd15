//! Against staleness: pairs of stations that return, and games that change.

use std::collections::BTreeMap;

use crate::frame::{Frame, gait};
use crate::programme::Programme;
use crate::schedule::{Group, Seat, Session, State};
use crate::seats::{FREE, Seats};

/// A repeated pair is as bad as this much practice less, minutes.
pub(crate) const PAIR: f64 = 0.2;

/// Times that a child goes between the same two stations in two sessions running.
pub(crate) fn pairs(frame: &Frame, seats: &Seats) -> u32 {
    let held = running(frame);
    held.windows(2)
        .flat_map(|two| {
            (0..seats.kids.len()).map(|kid| repeats_of(frame, seats, kid, two[0], two[1]))
        })
        .sum()
}

/// Sessions that take place.
pub(crate) fn running(frame: &Frame) -> Vec<usize> {
    (0..frame.sittings.len())
        .filter(|sitting| frame.sittings[*sitting].state != State::Lost)
        .collect()
}

/// Pairs of stations, one after the other, that a child has in both sessions.
fn repeats_of(frame: &Frame, seats: &Seats, kid: usize, one: usize, other: usize) -> u32 {
    let steps = |sitting: usize| {
        let first = sitting * frame.slots;
        (first..first + frame.slots.saturating_sub(1)).filter_map(|slot| {
            let a = seats.station(frame, kid, slot)?;
            let b = seats.station(frame, kid, slot + 1)?;
            (a != b).then_some((a.min(b), a.max(b)))
        })
    };
    let again = steps(other).filter(|step| steps(one).any(|it| it == *step));
    again.count() as u32
}

/// The same for a session with those before and after it that take place.
///
/// - `running`: the sessions that take place, ascending
pub(crate) fn near(
    frame: &Frame,
    seats: &Seats,
    kid: usize,
    sitting: usize,
    running: &[usize],
) -> u32 {
    let Ok(at) = running.binary_search(&sitting) else {
        return 0;
    };
    let before = at.checked_sub(1).map(|at| running[at]);
    [before, running.get(at + 1).copied()]
        .into_iter()
        .flatten()
        .map(|other| repeats_of(frame, seats, kid, sitting, other))
        .sum()
}

/// The groups of a slot, by station.
pub(crate) fn groups(
    programme: &Programme,
    frame: &Frame,
    seats: &Seats,
    slot: usize,
) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for (station, played) in seats.played[slot].iter().enumerate() {
        if *played == FREE {
            continue;
        }
        let mut word = String::new();
        let mut sat = Vec::new();
        for (kid, forms) in std::iter::zip(&seats.kids, &seats.form) {
            let form = forms[slot];
            if form == FREE || frame.forms[form as usize].station != station {
                continue;
            }
            let parts = &frame.forms[form as usize].parts;
            if let (true, Some((act, _))) = (word.is_empty(), parts.first()) {
                let activity = &programme.stations[station].activities[frame.acts[*act].number];
                word = gait(&activity.word).to_owned();
            }
            sat.push(Seat {
                child: *kid,
                parts: parts
                    .iter()
                    .map(|(act, share)| (frame.acts[*act].number, *share))
                    .collect(),
            });
        }
        groups.push(Group {
            station,
            gait: word,
            game: None,
            seats: sat,
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
            let word = group.gait.clone();
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
                        let mut all = group.seats.iter();
                        all.all(|seat| ready(seat.child, game.level, &game.after))
                    })
                    .min_by_key(|(number, game)| {
                        let all = group.seats.iter();
                        let times: u32 =
                            all.map(|it| times(it.child, group.station, *number)).sum();
                        (times, u8::MAX - game.level, *number)
                    })
                    .map(|(number, _)| number);
            }
            if let Some(game) = group.game {
                for seat in &group.seats {
                    *played.entry((seat.child, group.station, game)).or_default() += 1;
                }
            }
        }
    }
}
