//! Lanes: no aim, the child's own stride, and a foot that must stay in or on.

use std::f64::consts::FRAC_1_SQRT_2;

use children::{Child, Side};
use geo::Coord;
use marking::{Figure, Lane, LaneKind};

use crate::contact::{Goer, Kind};
use crate::figures::Model;
use crate::gait::{Contact, Stand};
use crate::moves::sideways;

/// Metres: a contact on the very end of a piece or lane still belongs to it.
const ON: f64 = 1e-9;
/// No yard holds a lane of more strides; a slip of the pen must not fill the memory.
const MOST: usize = 1000;

/// One contact on a lane.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Tread {
    /// Number of the gait's line.
    pub line: usize,
    /// Its p, which does not depend on z.
    pub p: f64,
    /// Metres along the lane.
    pub along: f64,
}

/// The contacts of a child who goes a lane to its end, in the gait's own strides.
///
/// None from where the gait does not say by itself what comes next (a court's).
pub(crate) fn treads(
    figure: &Figure,
    lane: &Lane,
    goer: &Goer,
    foot: Option<Side>,
) -> Option<(Contact, Vec<Tread>)> {
    let gait = &goer.gait;
    let length: f64 = lane.pieces.iter().map(|piece| piece.length).sum();
    let start = begin(goer, foot)?;
    let stays = stays(lane, goer.child, goer.model, gait.wheels);
    let (mut state, mut along, mut treads) = (start, 0.0, Vec::new());
    while treads.len() < MOST {
        let mut next = gait
            .follows
            .iter()
            .enumerate()
            .filter(|(_, follow)| follow.after == state);
        let (Some((line, follow)), None) = (next.next(), next.next()) else {
            break;
        };
        let kind = &goer.kinds[goer.kind_of[line]];
        let stride = goer.model.stride * kind.reach.m;
        let from = along;
        along += stride;
        let within = along <= length + ON;
        if !within || !passable(figure, lane, goer, (from, along)) {
            break;
        }
        treads.push(Tread {
            line,
            p: steady(lane, goer, kind, stride, along) * stays,
            along,
        });
        state = follow.then;
    }
    Some((start.contact, treads))
}

/// The right foot stands first, unless the leading foot wants the other.
fn begin(goer: &Goer, foot: Option<Side>) -> Option<Stand> {
    let gait = &goer.gait;
    gait.starts(false)
        .filter(|state| gait.stands(*state, foot))
        .find(|start| {
            // The first landing after the run-up must be the leading foot's.
            let mut state = *start;
            while let Some(follow) = gait.follows.iter().find(|follow| follow.after == state) {
                if follow.then.phase >= gait.done {
                    return gait.lands(follow, foot);
                }
                state = follow.then;
            }
            false
        })
}

/// W: the chance that a foot stays inside the corridor, or touches the line.
///
/// The foot's middle is Normal(0, (sigma/2)²) across the lane; half a breadth is taken off
/// a corridor's half width and added to a line's.
fn stays(lane: &Lane, child: &Child, model: &Model, wheels: bool) -> f64 {
    let breadth = if wheels {
        model.wheels_breadth
    } else {
        model.foot_breadth * child.stature
    };
    let half = match lane.kind {
        LaneKind::Corridor => (lane.width - breadth) / 2.0,
        LaneKind::Line => (lane.width + breadth) / 2.0,
    };
    let sigma = (model.lane_scatter * child.scatter).max(1e-9);
    if half > 0.0 {
        1.0 - libm::erfc(half / sigma * FRAC_1_SQRT_2)
    } else {
        0.0
    }
}

/// q at a contact: on a bend of radius R at speed v it becomes q^max(1, v²/(grip R)).
fn steady(lane: &Lane, goer: &Goer, kind: &Kind, stride: f64, along: f64) -> f64 {
    let Some(radius) = radius_at(lane, along) else {
        return kind.q;
    };
    let v = stride
        * goer
            .model
            .rate(kind.flight.rate(goer.gait.rate), goer.child.age);
    libm::pow(kind.q, (v * v / (goer.model.grip * radius)).max(1.0))
}

/// The radius of the piece that a place lies on.
fn radius_at(lane: &Lane, along: f64) -> Option<f64> {
    let mut left = along;
    for piece in &lane.pieces {
        if left <= piece.length + ON {
            return piece.radius;
        }
        left -= piece.length;
    }
    lane.pieces.last().and_then(|piece| piece.radius)
}

/// Whether a gait may pass a stretch: across a fixed facing where it goes sideways, on no
/// tighter bend than its wheels turn.
fn passable(figure: &Figure, lane: &Lane, goer: &Goer, (from, to): (f64, f64)) -> bool {
    if goer.gait.wheels {
        return radius_at(lane, to).is_none_or(|radius| radius >= goer.model.wheels_turn);
    }
    match (goer.gait.across, figure.facing) {
        (true, Some(facing)) => {
            let by = at(lane, to) - at(lane, from);
            let size = libm::hypot(by.x, by.y);
            let cos_alpha = (by.x * libm::cos(facing) + by.y * libm::sin(facing)) / size;
            size > 0.0 && sideways(cos_alpha, goer)
        }
        _ => true,
    }
}

/// The point of a lane's middle line at a distance along it.
fn at(lane: &Lane, along: f64) -> Coord<f64> {
    let mut left = along;
    for part in lane.line.lines() {
        let by = part.end - part.start;
        let length = libm::hypot(by.x, by.y);
        if left <= length && length > 0.0 {
            return part.start + by * (left / length);
        }
        left -= length;
    }
    lane.line
        .coords()
        .last()
        .copied()
        .unwrap_or(Coord { x: 0.0, y: 0.0 })
}
