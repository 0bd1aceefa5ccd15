//! Where a foot is at any time, on the ground and in the air.

use std::f64::consts::{PI, TAU};

use children::Side;
use footfall::Flight;
use geo::Coord;

use crate::clip::{Clip, Print, opposite, sign};
use crate::figures::Model;

/// Seconds between two keys of a foot in the air: a screen shows no more.
const EVERY: f64 = 1.0 / 30.0;
/// Seconds in which a free foot is drawn up, or let down again.
const DRAWN_UP: f64 = 0.2;
/// Share of a foot's time in the air from which the whole child flies, and the foot keeps
/// an even pace.
const FLIES: f64 = 0.8;

/// A foot, a hand or what carries at a moment; between two keys all is linear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Key {
    /// Seconds.
    pub time: f64,
    /// The middle, metres.
    pub at: Coord<f64>,
    /// Where the toes point, radians; never more than half a turn from the key before.
    pub toes: f64,
    /// Over the ground, metres; 0 on it.
    pub height: f64,
}

/// One foot through a clip.
#[derive(Clone, Debug, PartialEq)]
pub struct Track {
    /// Which foot.
    pub side: Side,
    /// In order, the first at 0, the last at the end.
    pub keys: Vec<Key>,
}

impl Track {
    /// The way of a foot: it rests on its prints and swings or flies between them. In a flight
    /// of time T it rises by g T²/8, as whatever is thrown. A foot that is free while
    /// the other lands twice or more is carried along, drawn up.
    ///
    /// On wheels it is the way of the hand.
    pub fn of(clip: &Clip, side: Side, model: &Model) -> Track {
        if let Some([right, left]) = clip.aid.as_ref().and_then(|aid| aid.hands.as_ref()) {
            let keys = match side {
                Side::Right => right.clone(),
                Side::Left => left.clone(),
            };
            return Track { side, keys };
        }
        let prints = own(clip, side);
        let flights = clip.flights();
        let mut keys: Vec<Key> = Vec::new();
        for (at, print) in prints.iter().enumerate() {
            let ground = |time: f64| Key {
                time,
                at: print.at,
                toes: print.toes,
                height: 0.0,
            };
            let next = prints.get(at + 1);
            let lifts = match (print.lifts, next) {
                (Some(lifts), Some(_)) => lifts,
                _ => clip.end,
            };
            keys.push(ground(print.lands));
            keys.push(ground(lifts));
            if let Some(next) = next {
                Air::of(clip, print, next, lifts, &flights, model).keys(&mut keys);
            }
        }
        Track {
            side,
            keys: unwound(keys),
        }
    }
}

fn own(clip: &Clip, side: Side) -> Vec<&Print> {
    clip.prints
        .iter()
        .filter(|print| print.side == side)
        .collect()
}

/// A foot between two prints.
struct Air<'a> {
    from: &'a Print,
    to: &'a Print,
    lifts: f64,
    swing: f64,
    carried: bool,
    flights: &'a [(f64, f64)],
    clip: &'a Clip,
    model: &'a Model<'a>,
}

impl<'a> Air<'a> {
    fn of(
        clip: &'a Clip,
        from: &'a Print,
        to: &'a Print,
        lifts: f64,
        flights: &'a [(f64, f64)],
        model: &'a Model<'a>,
    ) -> Air<'a> {
        let meanwhile = clip
            .prints
            .iter()
            .filter(|print| {
                print.side != from.side && print.lands > lifts && print.lands < to.lands
            })
            .count();
        Air {
            from,
            to,
            lifts,
            swing: match to.by {
                Some(Flight::Walk) => model.swing_walk,
                _ => model.swing,
            },
            carried: meanwhile >= 2,
            flights,
            clip,
            model,
        }
    }

    /// Share of its time in the air in which the whole child flies.
    fn flown(&self) -> f64 {
        let shared =
            |(from, to): &(f64, f64)| (to.min(self.to.lands) - from.max(self.lifts)).max(0.0);
        let time = self.to.lands - self.lifts;
        self.flights.iter().map(shared).sum::<f64>() / time.max(f64::MIN_POSITIVE)
    }

    fn keys(&self, keys: &mut Vec<Key>) {
        let time = self.to.lands - self.lifts;
        let pieces = ((time / EVERY).ceil() as usize).clamp(4, 1000);
        let flies = self.flown() >= FLIES;
        for piece in 1..pieces {
            let share = piece as f64 / pieces as f64;
            let now = self.lifts + time * share;
            let even = if flies {
                share
            } else {
                share * share * (3.0 - 2.0 * share)
            };
            let turn = libm::remainder(self.to.toes - self.from.toes, TAU);
            let rise = self.rise(now);
            let key = if self.carried {
                self.carried(now, rise)
            } else {
                let swing = if flies {
                    0.0
                } else {
                    self.swing * libm::sin(PI * share)
                };
                Key {
                    time: now,
                    at: self.from.at + (self.to.at - self.from.at) * even,
                    toes: self.from.toes + turn * even,
                    height: rise.max(swing),
                }
            };
            keys.push(key);
        }
    }

    /// How high the child is in a flight, metres: g (t - from)(to - t)/2.
    fn rise(&self, now: f64) -> f64 {
        self.flights
            .iter()
            .find(|(from, to)| *from < now && now < *to)
            .map_or(0.0, |(from, to)| {
                self.model.gravity * (now - from) * (to - now) / 2.0
            })
    }

    /// Beside and behind the other foot, drawn up at the beginning and let down at the end.
    fn carried(&self, now: f64, rise: f64) -> Key {
        let (at, toes) = resting(self.clip, opposite(self.from.side), now);
        let foot = self.clip.body.foot;
        let (sin, cos) = libm::sincos(toes);
        let beside =
            Coord { x: -sin, y: cos } * (sign(self.from.side) * 2.0 * self.model.beside * foot);
        let behind = Coord { x: cos, y: sin } * (self.model.carry_behind * foot);
        let aim = at + beside - behind;
        let smooth = |share: f64| {
            let share = share.clamp(0.0, 1.0);
            share * share * (3.0 - 2.0 * share)
        };
        let up = smooth((now - self.lifts) / DRAWN_UP);
        let down = smooth((self.to.lands - now) / DRAWN_UP);
        let (ground, held) = if up < 1.0 {
            (self.from, up)
        } else {
            (self.to, down)
        };
        Key {
            time: now,
            at: ground.at + (aim - ground.at) * held,
            toes: ground.toes + libm::remainder(toes - ground.toes, TAU) * held,
            height: self.model.carry * held + rise,
        }
    }
}

/// Where the other foot is, as if it moved evenly from print to print.
fn resting(clip: &Clip, side: Side, now: f64) -> (Coord<f64>, f64) {
    let prints = own(clip, side);
    let mut last: Option<&Print> = None;
    for print in prints {
        if print.lands > now {
            let Some(from) = last else {
                return (print.at, print.toes);
            };
            let lifts = from.lifts.unwrap_or(from.lands);
            let share =
                ((now - lifts) / (print.lands - lifts).max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
            let turn = libm::remainder(print.toes - from.toes, TAU);
            return (
                from.at + (print.at - from.at) * share,
                from.toes + turn * share,
            );
        }
        last = Some(print);
    }
    last.map_or((Coord::default(), 0.0), |print| (print.at, print.toes))
}

/// Angles that never jump by a turn from key to key; everything to a millionth.
pub(crate) fn unwound(mut keys: Vec<Key>) -> Vec<Key> {
    let round = |value: f64| (value * 1e6).round() / 1e6;
    let mut last: Option<f64> = None;
    for key in &mut keys {
        if let Some(last) = last {
            key.toes = last + libm::remainder(key.toes - last, TAU);
        }
        last = Some(key.toes);
        *key = Key {
            time: round(key.time),
            at: Coord {
                x: round(key.at.x),
                y: round(key.at.y),
            },
            toes: round(key.toes),
            height: round(key.height),
        };
    }
    keys.dedup_by(|later, earlier| later.time <= earlier.time);
    keys
}
