//! Wheels in time: hands take the rims and push, let go, and the wheels roll on.

use children::Side;
use geo::Coord;

use crate::aid::{Aid, Leg, Mark, Stand, beside, print};
use crate::clip::{Clip, Role, opposite};
use crate::figures::Model;
use crate::ride::{Adapted, Ride, Stretch, Then};
use crate::say::{Down, Event};
use crate::track::{Key, unwound};

/// Seconds between two keys: wheels change their speed so little that a straight line between
/// keys is right to 2 mm.
const EVERY: f64 = 1.0 / 12.0;
/// Metres: a hand that swings back passes so far outside the rim.
const OUTSIDE: f64 = 0.04;
/// Metres from the outer edge of the wheels to the middle of the rim.
const RIM: f64 = 0.02;
/// Share of a stand after which the hands leave the rims to reach back.
const REACH_BACK: f64 = 0.75;

/// One push in time; speeds fall and rise evenly within it.
#[derive(Clone, Copy, Debug)]
struct Push {
    leg: Leg,
    starts: f64,
    /// Seconds with a hand on the rim, and without.
    held: f64,
    rolls: f64,
    /// Metres a second when the hand takes the rim, lets go, and when the push is over.
    speeds: [f64; 3],
    /// Seconds that it stands after it.
    still: f64,
}

impl Push {
    fn ends(&self) -> f64 {
        self.starts + self.held + self.rolls
    }

    /// Metres along the way, seconds into the push.
    fn along(&self, into: f64) -> f64 {
        let [first, top, last] = self.speeds;
        let run = |time: f64, whole: f64, from: f64, to: f64| {
            if whole > 0.0 {
                from * time + (to - from) * time * time / (2.0 * whole)
            } else {
                0.0
            }
        };
        let held = into.min(self.held);
        let rolled = (into - self.held).clamp(0.0, self.rolls);
        self.leg.from + run(held, self.held, first, top) + run(rolled, self.rolls, top, last)
    }
}

/// The speed of a leg from mark to mark: the child's own, unless its pushes would follow one
/// another too fast; and the share of the push's time with a hand on the rim.
fn pace(ride: &Ride, row: &Adapted, legs: &[Leg], nth: usize, model: &Model) -> (f64, f64) {
    let Some(leg) = legs.get(nth) else {
        return (1.0, model.push_hold);
    };
    let own = if row.quick {
        ride.speeds.run
    } else {
        ride.speeds.walk
    };
    let whole: f64 = legs
        .iter()
        .filter(|other| other.count == leg.count)
        .map(|other| other.to - other.from)
        .sum();
    let speed = own
        .max(f64::MIN_POSITIVE)
        .min(whole / (leg.of as f64 * model.push_least));
    if leg.then != Then::Wait {
        return (speed, model.push_hold);
    }
    let way = leg.to - leg.from;
    let time = way / speed + model.push_wait;
    (way / time, model.push_hold * way / speed / time)
}

/// Every push in time. Between two of them the speed is the slower one's, less what a glide
/// loses; it is nought where the wheels stand.
fn pushes(ride: &Ride, row: &Adapted, legs: &[Leg], model: &Model) -> Vec<Push> {
    let fade = model.push_fade;
    let [grip, release] = model.push_grip;
    let arc = (release - grip) * model.wheel / 2.0;
    let mut time = model.ready;
    let mut before = 0.0;
    let mut all = Vec::new();
    for (nth, leg) in legs.iter().enumerate() {
        let (speed, hold) = pace(ride, row, legs, nth, model);
        let after = match (leg.then, legs.get(nth + 1)) {
            (Then::Still, _) | (_, None) => 0.0,
            _ => (1.0 - fade) * speed.min(pace(ride, row, legs, nth + 1, model).0),
        };
        // a push that is to end on the spot is a gentle one
        let top = if after > 0.0 {
            (1.0 + fade) * speed
        } else {
            (1.0 - fade) * speed
        }
        .max(before);
        let way = leg.to - leg.from;
        let (held, rolled) = ((before + top) / 2.0, (top + after) / 2.0);
        // a hand goes round with the rim, and can go no further than its reach
        let most = if way > arc {
            arc * rolled / (held * (way - arc) + arc * rolled)
        } else {
            1.0
        };
        let hold = hold.min(most);
        let whole = way / (hold * held + (1.0 - hold) * rolled);
        let still = match leg.then {
            Then::Still => model.push_still,
            _ => 0.0,
        };
        let push = Push {
            leg: *leg,
            starts: time,
            held: hold * whole,
            rolls: (1.0 - hold) * whole,
            speeds: [before, top, after],
            still,
        };
        time = push.ends() + still;
        before = after;
        all.push(push);
    }
    all
}

/// Puts pushes, hands and the way of the wheels into a clip.
pub(crate) fn fill(clip: &mut Clip, ride: &Ride, row: &Adapted, legs: &[Leg], model: &Model) {
    let all = pushes(ride, row, legs, model);
    let (Some(first), Some(last)) = (all.first(), all.last()) else {
        return;
    };
    clip.end = last.ends() + model.ready;
    let breadth = model.feet.wheels_breadth;
    let aside = breadth / 2.0 - RIM;
    let sides: &[Side] = if row.one_hand {
        &[clip.lead]
    } else {
        &[Side::Right, Side::Left]
    };
    let hands = match sides {
        [Side::Right] => Down::R,
        [Side::Left] => Down::L,
        _ => Down::B,
    };
    let [grip, _] = model.push_grip;
    let reach = model.wheel / 2.0 * libm::sin(grip);
    let mut aid = Aid {
        means: ride.means,
        breadth,
        keys: Vec::new(),
        hands: None,
        stands: vec![stand(ride, first.leg.from, 0.0, Some(first.starts))],
        marks: Vec::new(),
        events: Vec::new(),
    };
    for (nth, push) in all.iter().enumerate() {
        let role = match push.leg.stretch {
            Stretch::Short => Role::Short,
            _ => Role::Push,
        };
        let lets_go = push.starts + push.held;
        let event = |lands: f64, feet: Down, role: Role| Event {
            lands,
            feet,
            role,
            count: push.leg.count,
            flown: false,
        };
        aid.events.push(event(push.starts, hands, role));
        aid.events.push(event(lets_go, Down::Air, Role::Glide));
        if push.leg.then == Then::Wait {
            let lands = (push.ends() - model.push_wait).max(lets_go + SAME);
            aid.events.push(event(lands, Down::Air, Role::Wait));
        }
        let place = ride.place(push.leg.from);
        for side in sides {
            let at = beside(place, *side, aside, reach);
            let times = [push.starts, lets_go];
            let own = print((at, place.1), *side, aside, times, role, push.leg.count);
            clip.prints.push(own);
        }
        if push.leg.arrives {
            let (at, toes) = ride.place(push.leg.to);
            aid.marks.push(Mark {
                count: push.leg.count,
                at,
                toes,
                lands: push.ends(),
            });
        }
        if push.leg.then == Then::Still {
            let next = all.get(nth + 1).map(|next| next.starts);
            aid.events.push(event(push.ends(), Down::B, Role::Still));
            aid.stands.push(stand(ride, push.leg.to, push.ends(), next));
            let place = ride.place(push.leg.to);
            let lifts = next.map_or(f64::INFINITY, |_| push.ends() + push.still * REACH_BACK);
            for side in [Side::Right, Side::Left] {
                let at = beside(place, side, aside, reach);
                let times = [push.ends(), lifts];
                let own = print(
                    (at, place.1),
                    side,
                    aside,
                    times,
                    Role::Still,
                    push.leg.count,
                );
                clip.prints.push(own);
            }
        }
    }
    let times = times(&all, clip.end);
    aid.keys = keys(&times, |time| {
        let (at, toes) = ride.place(along(&all, time));
        (at, toes)
    });
    aid.hands = Some([Side::Right, Side::Left].map(|side| {
        let steers = row.one_hand && side == opposite(clip.lead);
        keys(&times, |time| {
            let place = ride.place(along(&all, time));
            let (ahead, outside) = if steers {
                (0.0, 0.0)
            } else {
                hand(&all, time, model)
            };
            (beside(place, side, aside + outside, ahead), place.1)
        })
    }));
    clip.aid = Some(aid);
}

/// Seconds: two events of one push lie apart by this at least.
const SAME: f64 = 1e-3;

fn stand(ride: &Ride, along: f64, lands: f64, lifts: Option<f64>) -> Stand {
    let (at, toes) = ride.place(along);
    Stand {
        at,
        toes,
        lands,
        lifts,
    }
}

/// The push that a time falls into or that was before it.
fn current(all: &[Push], time: f64) -> Option<&Push> {
    all.iter().rev().find(|push| push.starts <= time)
}

fn along(all: &[Push], time: f64) -> f64 {
    match (current(all, time), all.first()) {
        (Some(push), _) if time >= push.ends() => push.leg.to,
        (Some(push), _) => push.along(time - push.starts),
        (None, Some(first)) => first.leg.from,
        (None, None) => 0.0,
    }
}

/// A hand against the axle, metres: ahead, and outside the rim. It goes round with the rim
/// while it holds it, and swings back while the wheels roll.
fn hand(all: &[Push], time: f64, model: &Model) -> (f64, f64) {
    let radius = model.wheel / 2.0;
    let [grip, _] = model.push_grip;
    let back = radius * libm::sin(grip);
    let Some(push) = current(all, time) else {
        return (back, 0.0);
    };
    let rim = |into: f64| radius * libm::sin(grip + (push.along(into) - push.leg.from) / radius);
    let into = time - push.starts;
    if into <= push.held {
        return (rim(into), 0.0);
    }
    let share = ((into - push.held) / push.rolls.max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
    let even = share * share * (3.0 - 2.0 * share);
    let let_go = rim(push.held);
    (
        let_go + (back - let_go) * even,
        OUTSIDE * libm::sin(std::f64::consts::PI * share),
    )
}

/// When keys are wanted: where anything changes, and often enough between.
fn times(all: &[Push], end: f64) -> Vec<f64> {
    let mut times = vec![0.0];
    let mut cut = |from: f64, to: f64| {
        let pieces = (((to - from) / EVERY).ceil() as usize).clamp(1, 1000);
        times.extend((0..=pieces).map(|piece| from + (to - from) * piece as f64 / pieces as f64));
    };
    for push in all {
        cut(push.starts, push.starts + push.held);
        cut(push.starts + push.held, push.ends());
    }
    times.push(end);
    times
}

fn keys(times: &[f64], place: impl Fn(f64) -> (Coord<f64>, f64)) -> Vec<Key> {
    let keys = times
        .iter()
        .map(|time| {
            let (at, toes) = place(*time);
            Key {
                time: *time,
                at,
                toes,
                height: 0.0,
            }
        })
        .collect();
    unwound(keys)
}
