//! Which criteria a clip meets, measured on its footfalls: what was done to the clip is not
//! asked. Roles tell contacts from closing feet and hops; times and places decide.

use children::{Side, Skill};
use ledger::Ledger;
use motion::{Clip, Print, Role};

use crate::figures;

/// The limits, from the ledger.
struct Limits {
    together: f64,
    float: f64,
    advance: f64,
    even: f64,
    long_short: f64,
    line: f64,
    square: f64,
    stop: f64,
}

/// Seconds: flights and landings that lie closer are one.
const SAME: f64 = 1e-5;

/// The criteria of the clip's skill, in their order: met or not.
pub(crate) fn met(clip: &Clip, ledger: &Ledger) -> Vec<bool> {
    let limits = Limits {
        together: ledger.number(figures::TOGETHER),
        float: ledger.number(figures::FLOAT),
        advance: ledger.number(figures::ADVANCE),
        even: ledger.number(figures::EVEN),
        long_short: ledger.number(figures::LONG_SHORT),
        line: ledger.number(figures::LINE),
        square: ledger.number(figures::SQUARE).to_radians(),
        stop: ledger.number(figures::STOP),
    };
    let seen = Seen { clip, limits };
    match clip.skill {
        Skill::Jump => vec![
            seen.leaves_together(),
            seen.flies_before_contacts(1),
            seen.lands_together(),
            seen.stays(),
        ],
        Skill::Hop => vec![
            seen.one_side(&[Role::Contact]),
            seen.free_foot_up(),
            seen.goes_on(),
            seen.even(),
        ],
        Skill::Leap => vec![
            seen.keeps_pace(|at, leap| at <= leap),
            seen.other_foot(),
            seen.floats(),
            seen.keeps_pace(|at, leap| at > leap),
        ],
        Skill::Gallop => vec![
            seen.one_side(&[Role::Contact]),
            !seen.passes(),
            seen.flies_before_contacts(2),
            seen.long_short(),
        ],
        Skill::Slide => vec![
            seen.square(),
            !seen.passes(),
            seen.flies_before_contacts(2),
            seen.even(),
        ],
        Skill::Skip => vec![seen.hop_each(), seen.hops_alternate(), seen.no_pause()],
        Skill::Run => vec![seen.flies_before_contacts(2), seen.on_line(), seen.even()],
        Skill::Walk => Vec::new(),
    }
}

/// Whether feet could do it: each is in one place at a time, lands before it lifts, and the
/// child ends on the ground.
pub(crate) fn sound(clip: &Clip) -> bool {
    let one_place = |side: Side| {
        let own: Vec<&Print> = clip
            .prints
            .iter()
            .filter(|print| print.side == side)
            .collect();
        own.windows(2).all(|pair| match pair {
            [a, b] => a
                .lifts
                .is_some_and(|lifts| a.lands < lifts && lifts <= b.lands),
            _ => true,
        })
    };
    let stays = |print: &Print| print.lifts.is_none() && print.lands <= clip.end;
    one_place(Side::Right) && one_place(Side::Left) && clip.prints.iter().any(stays)
}

struct Seen<'a> {
    clip: &'a Clip,
    limits: Limits,
}

impl Seen<'_> {
    fn of(&self, role: Role) -> impl Iterator<Item = &Print> {
        self.clip
            .prints
            .iter()
            .filter(move |print| print.role == role)
    }

    /// When the first foot of each contact lands, in order.
    fn contacts(&self) -> Vec<f64> {
        let mut lands: Vec<(usize, f64)> = Vec::new();
        for print in self.of(Role::Contact) {
            match lands.iter_mut().find(|(count, _)| *count == print.count) {
                Some((_, first)) => *first = first.min(print.lands),
                None => lands.push((print.count, print.lands)),
            }
        }
        lands.into_iter().map(|(_, lands)| lands).collect()
    }

    fn flies_before(&self, lands: f64) -> bool {
        let ends =
            |(from, to): &(f64, f64)| (to - lands).abs() < SAME && to - from >= self.limits.float;
        self.clip.flights().iter().any(ends)
    }

    /// Each contact from this number on comes out of the air.
    fn flies_before_contacts(&self, from: usize) -> bool {
        self.contacts()
            .iter()
            .skip(from - 1)
            .all(|lands| self.flies_before(*lands))
    }

    /// Feet that both leave do so together; one that stays does not take off.
    fn leaves_together(&self) -> bool {
        let feet: Vec<&Print> = self
            .clip
            .prints
            .iter()
            .filter(|print| matches!(print.role, Role::Start | Role::Contact))
            .collect();
        feet.iter().all(|one| {
            feet.iter()
                .filter(|other| other.count == one.count)
                .all(|other| match (one.lifts, other.lifts) {
                    (Some(a), Some(b)) => (a - b).abs() <= self.limits.together,
                    _ => true,
                })
        })
    }

    fn lands_together(&self) -> bool {
        self.of(Role::Contact).all(|one| {
            self.of(Role::Contact)
                .filter(|other| other.count == one.count)
                .all(|other| (one.lands - other.lands).abs() <= self.limits.together)
        })
    }

    /// No foot lands again once the last contact is down.
    fn stays(&self) -> bool {
        let last = self
            .of(Role::Contact)
            .map(|print| print.lands)
            .fold(0.0, f64::max);
        self.clip
            .prints
            .iter()
            .all(|print| print.lands <= last + SAME)
    }

    fn one_side(&self, roles: &[Role]) -> bool {
        let mut sides = self
            .clip
            .prints
            .iter()
            .filter(|print| roles.contains(&print.role))
            .map(|print| print.side);
        let first = sides.next();
        sides.all(|side| Some(side) == first)
    }

    /// Both feet are never down between the first contact and the last.
    fn free_foot_up(&self) -> bool {
        let contacts = self.contacts();
        let (Some(first), Some(last)) = (contacts.first(), contacts.last()) else {
            return true;
        };
        let within = |print: &&Print| print.lands >= *first - SAME && print.lands <= *last + SAME;
        self.clip.prints.iter().filter(within).all(|one| {
            let other = match one.side {
                Side::Right => Side::Left,
                Side::Left => Side::Right,
            };
            !self.clip.down(other, one.lands)
        })
    }

    fn along(print: &Print) -> f64 {
        let (sin, cos) = libm::sincos(print.travel);
        print.at.x * cos + print.at.y * sin
    }

    fn goes_on(&self) -> bool {
        let places: Vec<f64> = self.of(Role::Contact).map(Self::along).collect();
        let least = self.limits.advance * self.clip.body.foot;
        places
            .windows(2)
            .all(|pair| matches!(pair, [a, b] if b - a >= least))
    }

    /// The longest time from contact to contact is not much longer than the shortest.
    fn even(&self) -> bool {
        let contacts = self.contacts();
        let gaps = contacts.windows(2).filter_map(|pair| match pair {
            [a, b] => Some(b - a),
            _ => None,
        });
        let (short, long) = gaps.fold((f64::INFINITY, 0.0_f64), |(short, long), gap| {
            (short.min(gap), long.max(gap))
        });
        long <= self.limits.even * short
    }

    fn leap(&self) -> Option<usize> {
        let steps = self.steps();
        steps
            .iter()
            .position(|print| print.by == Some(footfall::Flight::Leap))
    }

    /// Contacts and running steps in order.
    fn steps(&self) -> Vec<&Print> {
        self.clip
            .prints
            .iter()
            .filter(|print| matches!(print.role, Role::Contact | Role::Run))
            .collect()
    }

    /// No stop: of the steps up to the leap, or from it on, each lands soon after the one
    /// before.
    fn keeps_pace(&self, meant: impl Fn(usize, usize) -> bool) -> bool {
        let Some(leap) = self.leap() else {
            return false;
        };
        let steps = self.steps();
        steps.windows(2).enumerate().all(|(at, pair)| match pair {
            [a, b] => !meant(at + 1, leap) || b.lands - a.lands <= self.limits.stop,
            _ => true,
        })
    }

    fn other_foot(&self) -> bool {
        let steps = self.steps();
        self.leap().is_some_and(|leap| {
            let before = leap.checked_sub(1).and_then(|at| steps.get(at));
            let lands = steps.get(leap);
            matches!((before, lands), (Some(a), Some(b)) if a.side != b.side)
        })
    }

    fn floats(&self) -> bool {
        let steps = self.steps();
        self.leap()
            .and_then(|leap| steps.get(leap))
            .is_some_and(|print| self.flies_before(print.lands))
    }

    /// A foot that was behind comes down in front of the other.
    fn passes(&self) -> bool {
        let mut last: [Option<&Print>; 2] = [None, None];
        let at = |side: Side| usize::from(side == Side::Left);
        for print in &self.clip.prints {
            let own = last[at(print.side)];
            let other = last[1 - at(print.side)];
            let counts = matches!(print.role, Role::Contact | Role::Closing) && print.count > 0;
            if let (Some(own), Some(other)) = (own, other)
                && counts
                && print.count > 1
                && Self::along(own) < Self::along(other) - SAME
                && Self::along(print) > Self::along(other) + SAME
            {
                return true;
            }
            last[at(print.side)] = Some(print);
        }
        false
    }

    fn long_short(&self) -> bool {
        let contact = |count: usize| {
            self.of(Role::Contact)
                .find(|print| print.count == count)
                .map(|print| print.lands)
        };
        self.of(Role::Closing).all(|closing| {
            match (contact(closing.count), contact(closing.count + 1)) {
                (Some(first), Some(next)) => {
                    let (long, short) = (closing.lands - first, next - closing.lands);
                    long >= self.limits.long_short * short
                }
                _ => true,
            }
        })
    }

    fn square(&self) -> bool {
        let feet = self
            .clip
            .prints
            .iter()
            .filter(|print| print.role != Role::Start);
        feet.into_iter().all(|print| {
            let off = libm::fabs(libm::remainder(
                print.toes - print.travel,
                std::f64::consts::TAU,
            ));
            (off - std::f64::consts::FRAC_PI_2).abs() <= self.limits.square
        })
    }

    fn hop_each(&self) -> bool {
        self.of(Role::Contact).all(|step| {
            self.of(Role::Hop)
                .any(|hop| hop.count == step.count && hop.side == step.side)
        })
    }

    /// The other foot's step follows a hop no later than the hop its own step.
    fn no_pause(&self) -> bool {
        let contact = |count: usize| {
            self.of(Role::Contact)
                .find(|print| print.count == count)
                .map(|print| print.lands)
        };
        self.of(Role::Hop)
            .all(|hop| match (contact(hop.count), contact(hop.count + 1)) {
                (Some(step), Some(next)) => next - hop.lands <= hop.lands - step,
                _ => true,
            })
    }

    fn hops_alternate(&self) -> bool {
        let sides: Vec<Side> = self.of(Role::Hop).map(|hop| hop.side).collect();
        sides.len() > 1
            && sides
                .windows(2)
                .all(|pair| matches!(pair, [a, b] if a != b))
    }

    fn on_line(&self) -> bool {
        let most = self.limits.line * self.clip.body.foot;
        self.of(Role::Contact).all(|print| print.out.abs() <= most)
    }
}
