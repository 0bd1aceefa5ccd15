//! When the stops of a path on feet land, and what lies on the ground at each.

use children::Side;
use footfall::Flight;
use geo::Coord;

use crate::clip::{Print, Role, opposite, sign};
use crate::figures::Model;
use crate::path::{Path, Stop};

/// The times of one stop.
#[derive(Clone, Copy)]
pub(crate) struct Beat {
    pub lands: f64,
    /// From contact to contact, all being of its flight.
    pub interval: f64,
    pub flight: f64,
    /// Of a cycle of two beats: the first, the second.
    pub parts: Option<(f64, f64)>,
}

/// When every stop lands. The time on the ground between two flights is half the one's and
/// half the other's, so that like flights follow at their own interval.
pub(crate) fn beats(path: &Path, model: &Model) -> Option<Vec<Beat>> {
    let mut beats: Vec<Beat> = vec![Beat {
        lands: 0.0,
        interval: 0.0,
        flight: 0.0,
        parts: None,
    }];
    let mut stops = path.stops.iter().skip(1).peekable();
    stops.peek()?;
    for stop in stops {
        let kind = stop.flight?;
        let interval = model.interval(kind, path.rate, path.body.age);
        let flight = model.flight(kind, path.rate, path.body.age);
        let parts = model
            .beat(kind)
            .map(|ratio| (interval * ratio / (1.0 + ratio), interval / (1.0 + ratio)));
        let ground = (interval - flight) / 2.0;
        let lands = match (beats.as_slice(), parts) {
            ([_], Some((_, short))) => model.ready + short,
            ([_], None) => model.ready + ground + flight.max(0.0),
            ([.., last], _) => last.lands + (last.interval - last.flight) / 2.0 + ground + flight,
            ([], _) => return None,
        };
        beats.push(Beat {
            lands,
            interval,
            flight,
            parts,
        });
    }
    Some(beats)
}

/// How long both feet share the ground in a cycle of two beats.
fn shared(beat: &Beat, model: &Model) -> f64 {
    match beat.parts {
        Some((_, short)) => model
            .both_down
            .min((short - beat.flight).max(0.0) / 2.0)
            .min(short / 2.0),
        None => 0.0,
    }
}

/// When a foot leaves the start: the one that is not needed at once, the other as it pushes
/// off.
pub(crate) fn leaves_start(path: &Path, beats: &[Beat], side: Side, model: &Model) -> f64 {
    let (Some(start), Some(next), Some(beat)) =
        (path.stops.first(), path.stops.get(1), beats.get(1))
    else {
        return model.ready;
    };
    let pushes = match next.flight {
        // the leading foot steps out, the other pushes
        Some(Flight::Gallop | Flight::Slide) => next.contact.side() != Some(side),
        _ => start.contact.side().is_none_or(|stands| stands == side),
    };
    match next.flight {
        _ if !pushes => model.ready,
        Some(Flight::Skip) => beat.lands + shared(beat, model),
        _ => beat.lands - beat.flight,
    }
}

/// The prints of one stop, with the times when they lift for the next.
pub(crate) fn stop_prints(
    path: &Path,
    stop: &Stop,
    beat: &Beat,
    next: Option<&Beat>,
    model: &Model,
) -> Vec<Print> {
    let beside = model.beside * path.body.foot;
    let aside = match stop.flight {
        Some(Flight::Gallop | Flight::Slide) => beside,
        // a hop goes along the middle
        Some(Flight::Hop) => 0.0,
        _ if !path.open => 0.0,
        Some(Flight::Walk) => model.beside_walk,
        _ => beside,
    };
    let role = if stop.counted {
        Role::Contact
    } else {
        Role::Run
    };
    let lifts = next.map(|next| next.lands - next.flight);
    let landed = |side: Side, aside: f64, ahead: f64| Print {
        lands: beat.lands,
        lifts,
        role,
        by: stop.flight,
        ..placed(stop, side, aside, ahead)
    };
    let Some(side) = stop.contact.side() else {
        return [Side::Right, Side::Left]
            .map(|side| landed(side, stop.apart, 0.0))
            .to_vec();
    };
    let (long, _) = beat.parts.unwrap_or((0.0, 0.0));
    let second = beat.lands + long;
    match stop.flight {
        Some(Flight::Gallop | Flight::Slide) => {
            let behind = match stop.flight {
                Some(Flight::Gallop) => -model.closing * path.body.foot,
                _ => 0.0,
            };
            let lead = Print {
                lifts: next.map(|_| second + shared(beat, model)),
                ..landed(side, aside, 0.0)
            };
            let closing = Print {
                lands: second,
                role: Role::Closing,
                by: None,
                ..landed(opposite(side), aside, behind)
            };
            vec![lead, closing]
        }
        Some(Flight::Skip) => {
            let half = model.skip_hop * path.body.stature / 2.0;
            let step = Print {
                lifts: Some(second - beat.flight),
                ..landed(side, aside, -half)
            };
            let hop = Print {
                lands: second,
                lifts: next.map(|next| next.lands + shared(next, model)),
                role: Role::Hop,
                by: None,
                ..landed(side, aside, half)
            };
            vec![step, hop]
        }
        _ => vec![landed(side, aside, 0.0)],
    }
}

/// A foot at a stop: so far to its own side, so far ahead of the aim.
pub(crate) fn placed(stop: &Stop, side: Side, aside: f64, ahead: f64) -> Print {
    let (sin, cos) = libm::sincos(stop.toes);
    Print {
        side,
        at: stop.at
            + Coord { x: -sin, y: cos } * (sign(side) * aside)
            + Coord { x: cos, y: sin } * ahead,
        toes: stop.toes,
        travel: stop.travel,
        out: aside,
        lands: 0.0,
        lifts: None,
        role: Role::Contact,
        by: None,
        count: 0,
    }
}
