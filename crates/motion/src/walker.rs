//! A walker in time: the frame is set ahead, one foot steps, the other comes beside it.

use children::Side;
use footfall::Flight;
use geo::Coord;

use crate::aid::{Aid, Leg, Mark, Stand, beside, print};
use crate::clip::{Clip, Print, Role, opposite};
use crate::figures::Model;
use crate::ride::{Adapted, Ride, Then};
use crate::say::{Down, Event};
use crate::track::{Key, unwound};

/// Keys of the frame while it moves.
const PIECES: u32 = 8;

/// Puts frame and feet into a clip. Frame, foot and foot share the time of a leg evenly, each
/// waits a little before it moves, and one alone moves at a time.
pub(crate) fn fill(clip: &mut Clip, ride: &Ride, row: &Adapted, legs: &[Leg], model: &Model) {
    let own = if row.quick {
        ride.speeds.run
    } else {
        ride.speeds.walk
    };
    let aside = model.beside * clip.body.foot;
    let ahead = |(at, toes): (Coord<f64>, f64)| {
        let (sin, cos) = libm::sincos(toes);
        (at + Coord { x: cos, y: sin } * model.walker_ahead, toes)
    };
    let start = ride.place(legs.first().map_or(0.0, |leg| leg.from));
    let sides = [clip.lead, opposite(clip.lead)];
    let mut feet: [Vec<Print>; 2] = sides.map(|side| {
        let at = beside(start, side, aside, 0.0);
        let times = [0.0, f64::INFINITY];
        vec![print((at, start.1), side, aside, times, Role::Start, 0)]
    });
    let (at, toes) = ahead(start);
    let mut aid = Aid {
        means: ride.means,
        breadth: model.feet.wheels_breadth,
        keys: Vec::new(),
        hands: None,
        stands: vec![Stand {
            at,
            toes,
            lands: 0.0,
            lifts: None,
        }],
        marks: Vec::new(),
        events: Vec::new(),
    };
    let mut time = model.ready;
    for leg in legs {
        let way = leg.to - leg.from;
        let beat = (way / own.max(f64::MIN_POSITIVE) / 3.0).max(model.walker_beat);
        let waits = beat * (1.0 - model.walker_move);
        let place = ride.place(leg.to);
        let event = |lands: f64, feet: Down, role: Role| Event {
            lands,
            feet,
            role,
            count: leg.count,
            flown: false,
        };
        if let Some(stand) = aid.stands.last_mut() {
            stand.lifts = Some(time + waits);
        }
        time += beat;
        let (at, toes) = ahead(place);
        aid.stands.push(Stand {
            at,
            toes,
            lands: time,
            lifts: None,
        });
        aid.events.push(event(time, Down::Air, Role::Frame));
        for (nth, (side, own)) in std::iter::zip(sides, &mut feet).enumerate() {
            if let Some(stands) = own.last_mut() {
                stands.lifts = Some(time + waits);
            }
            time += beat;
            let role = match (leg.arrives, nth) {
                (false, _) => Role::Step,
                (true, 0) => Role::Contact,
                (true, _) => Role::Closing,
            };
            let at = beside(place, side, aside, 0.0);
            own.push(Print {
                by: Some(Flight::Walk),
                ..print(
                    (at, place.1),
                    side,
                    aside,
                    [time, f64::INFINITY],
                    role,
                    leg.count,
                )
            });
            let foot = match side {
                Side::Right => Down::R,
                Side::Left => Down::L,
            };
            aid.events.push(event(time, foot, role));
        }
        if leg.arrives {
            aid.marks.push(Mark {
                count: leg.count,
                at: place.0,
                toes: place.1,
                lands: time,
            });
        }
        match leg.then {
            Then::On => {}
            Then::Wait => time += model.push_wait,
            Then::Still => time += model.push_still,
        }
    }
    let last = aid.events.last().map_or(0.0, |event| event.lands);
    clip.end = last + model.ready;
    aid.keys = keys(&aid.stands, clip.end);
    clip.prints = feet.into_iter().flatten().collect();
    clip.aid = Some(aid);
}

/// The frame from stand to stand: it starts and comes to rest gently.
fn keys(stands: &[Stand], end: f64) -> Vec<Key> {
    let mut keys = Vec::new();
    for (nth, stand) in stands.iter().enumerate() {
        let rest = |time: f64| Key {
            time,
            at: stand.at,
            toes: stand.toes,
            height: 0.0,
        };
        let lifts = stand.lifts.unwrap_or(end);
        keys.push(rest(stand.lands));
        keys.push(rest(lifts));
        let Some(next) = stands.get(nth + 1) else {
            continue;
        };
        let turn = libm::remainder(next.toes - stand.toes, std::f64::consts::TAU);
        for piece in 1..PIECES {
            let share = f64::from(piece) / f64::from(PIECES);
            let even = share * share * (3.0 - 2.0 * share);
            keys.push(Key {
                time: lifts + (next.lands - lifts) * share,
                at: stand.at + (next.at - stand.at) * even,
                toes: stand.toes + turn * even,
                height: 0.0,
            });
        }
    }
    unwound(keys)
}
