//! What each edit of an early form does to the prints of a clip.

use footfall::Flight;
use geo::Coord;

use crate::clip::{Clip, Print, Role, opposite, sign};
use crate::early::Edit;
use crate::figures::Model;

impl Clip {
    pub(crate) fn edit(&mut self, at: usize, edit: &Edit, model: &Model) {
        let Some(mut print) = self.prints.get(at).copied() else {
            return;
        };
        let foot = self.body.foot;
        match *edit {
            Edit::Drop => {
                // the last one stays, or the child would stand on nothing
                let (Some(lifts), Some(before)) = (print.lifts, at.checked_sub(1)) else {
                    return;
                };
                if let Some(stays) = self.prints.get_mut(before) {
                    stays.lifts = stays.lifts.map(|own| own.max(lifts));
                }
                self.prints.remove(at);
                return;
            }
            Edit::Swap => {
                print.aside(-2.0 * print.out);
                print.side = opposite(print.side);
                print.out = print.out.abs();
            }
            Edit::Late(by) => {
                let stance = print.lifts.unwrap_or(self.end) - print.lands;
                print.lands += model.size(by).clamp(0.0, stance / 2.0);
            }
            Edit::Ahead(way, by) => {
                let (sin, cos) = libm::sincos(print.toes);
                print.at = print.at + Coord { x: cos, y: sin } * (way * model.size(by) * foot);
            }
            Edit::Out(way, by) => {
                let by = way * model.size(by) * foot;
                print.aside(by);
                print.out += by;
            }
            Edit::Turn(by) => {
                let by = model.size(by).to_radians();
                let off = libm::remainder(print.travel - print.toes, std::f64::consts::TAU);
                print.toes += off.clamp(-by, by);
            }
            Edit::Step => self.stays_until(&print, model),
            Edit::Pause(by) => {
                self.pause(&print, model.size(by).max(0.0));
                return;
            }
            Edit::Tap(share, time) => {
                let stance = print.lifts.unwrap_or(self.end) - print.lands;
                let mut tap = print;
                let side = opposite(print.side);
                tap.side = side;
                tap.aside(2.0 * model.beside * foot);
                let (sin, cos) = libm::sincos(print.toes);
                tap.at = tap.at - Coord { x: cos, y: sin } * (model.carry_behind * foot);
                tap.out = 2.0 * model.beside * foot - print.out;
                tap.lands = print.lands + stance * model.size(share).clamp(0.0, 0.9);
                let left = print.lands + stance - tap.lands;
                tap.lifts = Some(tap.lands + model.size(time).clamp(0.0, left / 2.0));
                tap.role = Role::Tap;
                tap.by = None;
                // the last stance ends with both feet down anyway
                if print.lifts.is_some() {
                    self.prints.push(tap);
                }
                return;
            }
            Edit::Beat(ratio) => {
                self.second_beat(at, model.size(ratio).clamp(0.1, 10.0));
                return;
            }
            Edit::Lift(by) => {
                print.lifts = print.lifts.map(|lifts| {
                    let stance = lifts - print.lands;
                    lifts - model.size(by).clamp(0.0, stance / 2.0)
                });
            }
            Edit::Short(share) => {
                self.short(&print, model.size(share).clamp(0.0, 1.0));
                return;
            }
            Edit::Both => {
                self.both(at, model.beside * foot);
                return;
            }
            Edit::StepOn(time, share) => {
                self.step_on(
                    at,
                    model.size(time).max(0.0),
                    model.size(share) * foot,
                    model,
                );
                return;
            }
        }
        if let Some(own) = self.prints.get_mut(at) {
            *own = print;
        }
    }

    /// The other foot stays where it was until this print is down.
    fn stays_until(&mut self, print: &Print, model: &Model) {
        let lifts = print.lands + model.both_down;
        let before = self
            .prints
            .iter_mut()
            .filter(|other| other.side != print.side && other.lands < print.lands)
            .max_by(|one, other| one.lands.total_cmp(&other.lands));
        let next = before.as_ref().map(|before| (before.side, before.lands));
        if let Some(before) = before
            && let Some(own) = before.lifts
        {
            before.lifts = Some(own.max(lifts));
        }
        // its own next landing cannot come before it has left
        if let Some((side, lands)) = next
            && let Some(after) = self
                .prints
                .iter_mut()
                .filter(|other| other.side == side && other.lands > lands)
                .min_by(|one, other| one.lands.total_cmp(&other.lands))
        {
            after.lands = after.lands.max(lifts + model.both_down);
        }
    }

    /// Everything after the print before this one comes later.
    fn pause(&mut self, print: &Print, by: f64) {
        let before = self
            .prints
            .iter()
            .map(|other| other.lands)
            .filter(|lands| *lands < print.lands)
            .fold(0.0, f64::max);
        for other in &mut self.prints {
            if other.lands > before {
                other.lands += by;
            }
            other.lifts = other
                .lifts
                .map(|lifts| if lifts > before { lifts + by } else { lifts });
        }
        self.end += by;
    }

    /// Everything from this print on comes less far, by a share of the way to it.
    fn short(&mut self, print: &Print, share: f64) {
        let before = self
            .prints
            .iter()
            .filter(|other| other.count < print.count && other.role != Role::Tap)
            .max_by(|one, other| one.lands.total_cmp(&other.lands));
        let Some(before) = before else { return };
        let (sin, cos) = libm::sincos(print.travel);
        let ahead = Coord { x: cos, y: sin };
        let way = print.at - before.at;
        let back = ahead * ((way.x * cos + way.y * sin) * share);
        for other in &mut self.prints {
            if other.lands >= print.lands {
                other.at = other.at - back;
            }
        }
    }

    /// The other foot lands with this one; each lies so far to its own side of the aim.
    fn both(&mut self, at: usize, beside: f64) {
        let Some(print) = self.prints.get_mut(at) else {
            return;
        };
        let mut twin = *print;
        twin.side = opposite(print.side);
        twin.aside(print.out + beside);
        print.aside(beside - print.out);
        (print.out, twin.out) = (beside, beside);
        let (count, last) = (print.count, print.lifts.is_none());
        // the foot that would come to rest is down already
        self.prints
            .retain(|other| !(last && other.role == Role::Stand && other.count == count));
        self.prints.push(twin);
    }

    /// The foot that stays steps on after a time.
    fn step_on(&mut self, at: usize, time: f64, by: f64, model: &Model) {
        let swing = model.both_down + model.ready / 4.0;
        let Some(print) = self.prints.get_mut(at) else {
            return;
        };
        if print.lifts.is_some() {
            return;
        }
        let lifts = print.lands + time;
        print.lifts = Some(lifts);
        let (sin, cos) = libm::sincos(print.travel);
        let next = Print {
            at: print.at + Coord { x: cos, y: sin } * by,
            lands: lifts + swing,
            lifts: None,
            role: Role::Run,
            by: Some(Flight::Walk),
            ..*print
        };
        self.end = self.end.max(next.lands + model.ready);
        self.prints.push(next);
    }

    /// Moves a closing foot or a hop to where the cycle's beat has this ratio.
    fn second_beat(&mut self, at: usize, ratio: f64) {
        let Some(second) = self.prints.get(at).copied() else {
            return;
        };
        let contact = |count: usize| {
            self.prints
                .iter()
                .find(|print| print.count == count && print.role == Role::Contact)
                .map(|print| print.lands)
        };
        let (Some(first), Some(next)) = (contact(second.count), contact(second.count + 1)) else {
            return;
        };
        let by = first + (next - first) * ratio / (1.0 + ratio) - second.lands;
        for print in &mut self.prints {
            let own = print.count == second.count;
            if own && print.role == second.role {
                print.lands += by;
            } else if own && print.role == Role::Contact {
                print.lifts = print.lifts.map(|lifts| lifts + by);
            }
        }
    }
}

impl Print {
    /// Moves it to its own side.
    fn aside(&mut self, by: f64) {
        let (sin, cos) = libm::sincos(self.toes);
        self.at = self.at + Coord { x: -sin, y: cos } * (sign(self.side) * by);
    }
}
