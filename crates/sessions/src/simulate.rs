//! The sessions played turn by turn: contacts, active minutes and waiting, with their spread.
//!
//! Each track of a station has a line of its own. The first in line starts when the gap since
//! the last start has passed (and, where only one may be on the track, when it is empty);
//! the turn is [`turn`]; the way back varies a little; then the child stands in line again. At
//! a slot's end nobody starts any more; seconds are cut off there, contacts of a turn under
//! way still count.
//!
//! Invariant: a child's seconds on the marking, on the way back, in line and settling add up
//! to its slots.

use chance::Chance;
use ledger::Ledger;
use rayon::prelude::*;

use crate::figures as fig;
use crate::programme::{Play, Programme};
use crate::schedule::{Group, Plan, State};
use crate::turn::{Failing, contact, mean_turn, turn};

/// How a session goes, beyond what the plan knows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Manner {
    /// What children do when a contact fails.
    pub failing: Failing,
    /// Mean of what varies in the way back, exponential, seconds; taken out of the plan's
    /// time for it, so that the mean stays.
    pub dawdle_s: f64,
    /// Until all move after a change of station, seconds.
    pub settle_s: f64,
    /// Chance that a child takes part in a session.
    pub attendance: f64,
    /// How often the programme is played.
    pub runs: u32,
}

impl Manner {
    /// By the ledger, a hundred times, children going back into line where a contact fails.
    pub fn usual(ledger: &Ledger) -> Manner {
        Manner {
            failing: Failing::GoBack,
            dawdle_s: ledger.number(fig::DAWDLE),
            settle_s: ledger.number(fig::SETTLE),
            attendance: ledger.number(fig::ATTENDANCE),
            runs: 100,
        }
    }

    /// The plan's own view: everybody comes, moves at once, goes on after a fault, and walks
    /// back in the same time every turn.
    pub fn as_planned(runs: u32) -> Manner {
        Manner {
            failing: Failing::GoOn,
            dawdle_s: 0.0,
            settle_s: 0.0,
            attendance: 1.0,
            runs,
        }
    }
}

/// What is to be expected of the planned sessions.
#[derive(Clone, Debug, PartialEq)]
pub struct Forecast {
    /// How often they were played.
    pub runs: u32,
    /// By child, in the order of the roster.
    pub children: Vec<Expected>,
    /// By station.
    pub stations: Vec<Waiting>,
}

/// One child over all planned sessions.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Expected {
    /// Good contacts.
    pub contacts: Spread,
    /// Minutes on a marking.
    pub active: Spread,
    /// Minutes on the way back.
    pub walking: Spread,
    /// Minutes in line.
    pub waiting: Spread,
    /// The longest wait of all, seconds.
    pub longest: Spread,
    /// Good contacts by the closed form: slots over [`crate::queue::turns`], everybody there.
    pub contacts_closed: f64,
    /// Minutes on a marking by the closed form.
    pub active_closed: f64,
    /// Minutes in line by the closed form.
    pub waiting_closed: f64,
    /// Good contacts by the layout's turn, which has the whole line before it.
    pub contacts_layout: f64,
}

/// Over the runs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spread {
    /// Mean.
    pub mean: f64,
    /// Standard deviation from run to run.
    pub sd: f64,
}

impl Spread {
    /// Standard error of the mean over so many runs.
    pub fn error(&self, runs: u32) -> f64 {
        self.sd / libm::sqrt(f64::from(runs.max(1)))
    }

    fn of(values: impl Iterator<Item = f64> + Clone) -> Spread {
        let many = values.clone().count().max(1) as f64;
        let mean = values.clone().sum::<f64>() / many;
        let squares: f64 = values.map(|value| (value - mean) * (value - mean)).sum();
        Spread {
            mean,
            sd: libm::sqrt(squares / (many - 1.0).max(1.0)),
        }
    }
}

/// Waits at one station over all runs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Waiting {
    /// Turns that were waited for.
    pub turns: u64,
    /// Mean wait, seconds.
    pub mean: f64,
    /// The longest, seconds.
    pub longest: f64,
    /// Share of waits longer than the limit.
    pub over: f64,
}

/// What was counted for one child.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tally {
    /// Good contacts.
    pub contacts: u64,
    /// Turns that were started.
    pub turns: u64,
    /// Seconds on the marking.
    pub active: f64,
    /// Seconds on the way back.
    pub walking: f64,
    /// Seconds in line.
    pub waiting: f64,
    /// The longest wait for a turn, seconds.
    pub longest: f64,
}

/// A child as a track knows it: what it plays, one after the other, with shares of the time.
#[derive(Clone, Debug, PartialEq)]
pub struct Player<'a> {
    /// Its plays and their shares.
    pub plays: Vec<(&'a Play, f64)>,
}

/// One track for `seconds`: what each child did, and all waits for a turn.
///
/// - `gap`: between two starts, seconds; `alone`: whether the track must be empty too
/// - `dawdle_s`: as in [`Manner`]
pub fn track(
    players: &[Player],
    seconds: f64,
    gap: f64,
    alone: bool,
    failing: Failing,
    dawdle_s: f64,
    chance: &mut Chance,
) -> (Vec<Tally>, Vec<f64>) {
    let mut tallies = vec![Tally::default(); players.len()];
    let mut waits = Vec::new();
    let odds: Vec<Vec<f64>> = players
        .iter()
        .map(|player| {
            let plays = player.plays.iter();
            plays
                .map(|(play, _)| contact(play.flights, play.good))
                .collect()
        })
        .collect();
    // Ready to start since; of those ready at once the first in line.
    let mut ready: Vec<(f64, u64, usize)> =
        (0..players.len()).map(|at| (0.0, at as u64, at)).collect();
    let mut in_line = players.len() as u64;
    let mut free = 0.0_f64;
    while let Some(first) = (0..ready.len()).min_by(|a, b| {
        let (a, b) = (ready[*a], ready[*b]);
        a.0.total_cmp(&b.0).then(a.1.cmp(&b.1))
    }) {
        let (since, _, who) = ready[first];
        let start = since.max(free);
        if start >= seconds {
            break;
        }
        let tally = &mut tallies[who];
        tally.waiting += start - since;
        tally.longest = tally.longest.max(start - since);
        waits.push(start - since);
        let (mut part, mut until) = (0, 0.0);
        for (number, (_, share)) in players[who].plays.iter().enumerate() {
            part = number;
            until += share * seconds;
            if start < until {
                break;
            }
        }
        let Some((play, _)) = players[who].plays.get(part) else {
            ready.swap_remove(first);
            continue;
        };
        let varies = dawdle_s.min(play.walk_back_s);
        let had = turn(play, odds[who][part], failing, varies, chance);
        let back = had.back_s
            + if varies > 0.0 {
                -varies * libm::log(chance.above_zero())
            } else {
                0.0
            };
        tally.contacts += u64::from(had.good);
        tally.turns += 1;
        let landed = start + had.pass_s;
        tally.active += landed.min(seconds) - start;
        let home = landed + back;
        tally.walking += (home.min(seconds) - landed).max(0.0);
        free = start + if alone { gap.max(had.pass_s) } else { gap };
        ready[first] = (home, in_line, who);
        in_line += 1;
    }
    for (since, _, who) in ready {
        tallies[who].waiting += (seconds - since).max(0.0);
    }
    (tallies, waits)
}

/// Plays the planned sessions `manner.runs` times.
pub fn simulate(programme: &Programme, plan: &Plan, manner: &Manner, ledger: &Ledger) -> Forecast {
    let gap = ledger.number(fig::RELEASE);
    let limit = ledger.number(fig::WAIT_MOST);
    let runs: Vec<(Vec<Tally>, Vec<Waits>)> = (0..manner.runs)
        .into_par_iter()
        .map(|run| {
            // Streams of the search are few; those of the runs lie past them.
            let chance = Chance::stream(programme.seed, (1 << 32) + u64::from(run));
            one_run(programme, plan, manner, gap, limit, chance)
        })
        .collect();
    let minutes = 1.0 / 60.0;
    let closed = closed(programme, plan, manner, gap);
    let layout = layout(programme, plan, gap * ledger.number(fig::TRACK_CHILDREN));
    let children = closed
        .into_iter()
        .enumerate()
        .map(|(child, closed)| {
            let all = || runs.iter().map(move |run| run.0[child]);
            Expected {
                contacts: Spread::of(all().map(|it| it.contacts as f64)),
                active: Spread::of(all().map(|it| it.active * minutes)),
                walking: Spread::of(all().map(|it| it.walking * minutes)),
                waiting: Spread::of(all().map(|it| it.waiting * minutes)),
                longest: Spread::of(all().map(|it| it.longest)),
                contacts_closed: closed[0],
                active_closed: closed[1] * minutes,
                waiting_closed: closed[2] * minutes,
                contacts_layout: layout[child],
            }
        })
        .collect();
    let stations = (0..programme.stations.len())
        .map(|station| {
            let mut all = Waits::default();
            for run in &runs {
                all.join(&run.1[station]);
            }
            let many = all.turns.max(1) as f64;
            Waiting {
                turns: all.turns,
                mean: all.sum / many,
                longest: all.longest,
                over: all.over as f64 / many,
            }
        })
        .collect();
    Forecast {
        runs: manner.runs,
        children,
        stations,
    }
}

#[derive(Clone, Copy, Default)]
struct Waits {
    turns: u64,
    sum: f64,
    longest: f64,
    over: u64,
}

impl Waits {
    fn join(&mut self, other: &Waits) {
        self.turns += other.turns;
        self.sum += other.sum;
        self.longest = self.longest.max(other.longest);
        self.over += other.over;
    }
}

/// Longer than the limit by less is not longer, seconds: a thousandth of a gap.
const SAME_WAIT: f64 = 0.005;

fn one_run(
    programme: &Programme,
    plan: &Plan,
    manner: &Manner,
    gap: f64,
    limit: f64,
    mut chance: Chance,
) -> (Vec<Tally>, Vec<Waits>) {
    let mut tallies = vec![Tally::default(); programme.children.len()];
    let mut waits = vec![Waits::default(); programme.stations.len()];
    let seconds = (plan.slot_minutes * 60.0 - manner.settle_s).max(0.0);
    for session in plan.sessions.iter().filter(|it| it.state == State::Planned) {
        let mut present = vec![false; programme.children.len()];
        for child in plan.outings.get(session.outing).into_iter().flatten() {
            present[*child] = chance.share() < manner.attendance;
        }
        for group in session.slots.iter().flatten() {
            let alone = alone(programme, group);
            for (children, players) in tracks(programme, group, |child| present[child]) {
                let (had, waited) = track(
                    &players,
                    seconds,
                    gap,
                    alone,
                    manner.failing,
                    manner.dawdle_s,
                    &mut chance,
                );
                for (child, had) in std::iter::zip(children, had) {
                    let tally = &mut tallies[child];
                    tally.contacts += had.contacts;
                    tally.turns += had.turns;
                    tally.active += had.active;
                    tally.walking += had.walking;
                    tally.waiting += had.waiting;
                    tally.longest = tally.longest.max(had.longest);
                }
                let of = &mut waits[group.station];
                for wait in waited {
                    of.turns += 1;
                    of.sum += wait;
                    of.longest = of.longest.max(wait);
                    of.over += u64::from(wait > limit + SAME_WAIT);
                }
            }
        }
    }
    (tallies, waits)
}

/// Whether a group's gait holds a track for itself.
fn alone(programme: &Programme, group: &Group) -> bool {
    let parts = group.seats.iter().flat_map(|seat| &seat.parts);
    let activities = &programme.stations[group.station].activities;
    let mut played = parts.filter_map(|part| activities.get(part.0));
    played.any(|activity| activity.alone)
}

/// The lines of a group: dealt to the tracks in turn.
fn tracks<'a>(
    programme: &'a Programme,
    group: &Group,
    present: impl Fn(usize) -> bool,
) -> Vec<(Vec<usize>, Vec<Player<'a>>)> {
    let station = &programme.stations[group.station];
    let many = station.tracks.max(1) as usize;
    let mut lines = vec![(Vec::new(), Vec::new()); many];
    let here = group.seats.iter().filter(|seat| present(seat.child));
    for (at, seat) in here.enumerate() {
        let plays = seat.parts.iter().filter_map(|(activity, share)| {
            let plays = &station.activities.get(*activity)?.plays;
            let play = plays.iter().find(|play| play.child == seat.child)?;
            Some((play, *share))
        });
        lines[at % many].0.push(seat.child);
        lines[at % many].1.push(Player {
            plays: plays.collect(),
        });
    }
    lines
}

/// By child: good contacts, seconds on the marking and in line, everybody there and each
/// turn as long as its mean; what is settling is taken off.
fn closed(programme: &Programme, plan: &Plan, manner: &Manner, gap: f64) -> Vec<[f64; 3]> {
    let mut sums = vec![[0.0; 3]; programme.children.len()];
    let seconds = (plan.slot_minutes * 60.0 - manner.settle_s).max(0.0);
    each_line(programme, plan, |alone, children, players| {
        let mean = |(play, share): &(&Play, f64)| {
            let varies = manner.dawdle_s.min(play.walk_back_s);
            let p = contact(play.flights, play.good);
            let (good, pass, back) = mean_turn(play, p, manner.failing, varies);
            (good, pass, back + varies, *share)
        };
        // What the whole line takes to start once.
        let round: f64 = players
            .iter()
            .flat_map(|player| player.plays.iter().map(&mean))
            .map(|(_, pass, _, share)| share * if alone { gap.max(pass) } else { gap })
            .sum();
        for (child, player) in std::iter::zip(children, players) {
            for (good, pass, back, share) in player.plays.iter().map(&mean) {
                let (cycle, wait) = crate::queue::turns(1, round, pass + back);
                let turns = if cycle > 0.0 {
                    share * seconds / cycle
                } else {
                    0.0
                };
                let sum = &mut sums[*child];
                sum[0] += turns * good;
                sum[1] += turns * pass;
                sum[2] += turns * wait;
            }
        }
    });
    sums
}

/// By child: good contacts by the layout's turn.
fn layout(programme: &Programme, plan: &Plan, least: f64) -> Vec<f64> {
    let mut sums = vec![0.0; programme.children.len()];
    each_line(programme, plan, |_, children, players| {
        for (child, player) in std::iter::zip(children, players) {
            for (play, share) in &player.plays {
                let turn = (play.pass_s + play.walk_back_s).max(least);
                sums[*child] += share * plan.slot_minutes * 60.0 / turn * play.good;
            }
        }
    });
    sums
}

fn each_line(programme: &Programme, plan: &Plan, mut tell: impl FnMut(bool, &[usize], &[Player])) {
    for session in plan.sessions.iter().filter(|it| it.state == State::Planned) {
        for group in session.slots.iter().flatten() {
            let alone = alone(programme, group);
            for (children, players) in tracks(programme, group, |_| true) {
                tell(alone, &children, &players);
            }
        }
    }
}
