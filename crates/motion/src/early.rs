//! Early forms as rows: which prints of a clip differ, and how.
//!
//! What an observer looks for and the early looks are children.md 3.1-3.7, in our words. A new
//! form is a new row of [`EARLY`]: nothing else in this room knows one from another.

use children::{Side, Skill};
use footfall::Flight;
use geo::Coord;
use ledger::Key;

use crate::clip::{Clip, Print, Role, opposite, sign};
use crate::figures::{self, Model};

/// Which foot a row speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// Either.
    Any,
    /// The one that leads, or lands first.
    Lead,
    /// The other.
    Other,
}

/// Which prints a row speaks of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scope {
    /// Of these roles.
    pub roles: &'static [Role],
    /// Of this foot.
    pub which: Which,
    /// Reached by this flight; any where none is named.
    pub by: Option<Flight>,
    /// Of the contacts from this number, every so many, up to that number.
    pub counts: (usize, usize, usize),
}

/// What is done to a print. Lengths that are shares are of the child's foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edit {
    /// It does not come down; the foot that was down stays in its stead.
    Drop,
    /// The other foot lands in its stead, on its own side.
    Swap,
    /// It lands later by seconds, at most half its time on the ground.
    Late(Key),
    /// It lands further ahead by a share; `-1` behind.
    Ahead(f64, Key),
    /// It lands further out to its own side by a share; `-1` further in.
    Out(f64, Key),
    /// Its toes turn by degrees toward the way of travel.
    Turn(Key),
    /// The foot before it stays until it is down: no flight.
    Step,
    /// The child stands for seconds before the flight that reaches it.
    Pause(Key),
    /// The free foot touches down beside it: from a share of its time on the ground, for
    /// seconds.
    Tap(Key, Key),
    /// The second beat of its cycle falls at another ratio of long to short.
    Beat(Key),
    /// It lifts earlier by seconds, at most half its time on the ground.
    Lift(Key),
    /// The flight that reaches it is shorter by a share of the way from the contact before;
    /// all that follows comes as much less far.
    Short(Key),
    /// A foot that would stay for good stands for seconds, then steps on by a share, as if
    /// the child overbalanced.
    StepOn(Key, Key),
}

/// An early form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Early {
    /// The skill.
    pub skill: Skill,
    /// Its name, of its own within the skill.
    pub name: &'static str,
    /// The check that it does not meet (children.md 3), as `G1`.
    pub check: &'static str,
    /// Key of the sentence that says what is seen.
    pub says: &'static str,
    /// The edits, in order.
    pub edits: &'static [(Scope, Edit)],
}

const ALL: (usize, usize, usize) = (0, 1, usize::MAX);

const fn on(roles: &'static [Role]) -> Scope {
    Scope {
        roles,
        which: Which::Any,
        by: None,
        counts: ALL,
    }
}

const CONTACTS: Scope = on(&[Role::Contact]);
const CLOSINGS: Scope = on(&[Role::Closing]);

/// Every early form, by skill.
pub const EARLY: &[Early] = &[
    Early {
        skill: Skill::Jump,
        name: "one-after-the-other",
        check: "J4",
        says: "motion-early-jump-one-after-the-other",
        edits: &[
            (
                Scope {
                    which: Which::Other,
                    ..CONTACTS
                },
                Edit::Late(figures::LATE),
            ),
            (
                Scope {
                    which: Which::Other,
                    ..CONTACTS
                },
                Edit::Ahead(-1.0, figures::BEHIND),
            ),
        ],
    },
    Early {
        skill: Skill::Jump,
        name: "steps-over",
        check: "J2",
        says: "motion-early-jump-steps-over",
        edits: &[
            (
                Scope {
                    which: Which::Other,
                    ..CONTACTS
                },
                Edit::Late(figures::LATE),
            ),
            (
                Scope {
                    which: Which::Lead,
                    ..CONTACTS
                },
                Edit::Step,
            ),
        ],
    },
    Early {
        skill: Skill::Hop,
        name: "taps",
        check: "H3",
        says: "motion-early-hop-taps",
        edits: &[(
            Scope {
                counts: (1, 2, usize::MAX),
                ..CONTACTS
            },
            Edit::Tap(figures::TAP, figures::TAP_TIME),
        )],
    },
    Early {
        skill: Skill::Hop,
        name: "changes-foot",
        check: "H1",
        says: "motion-early-hop-changes-foot",
        edits: &[(
            Scope {
                counts: (3, 1, usize::MAX),
                ..on(&[Role::Contact, Role::Stand])
            },
            Edit::Swap,
        )],
    },
    Early {
        skill: Skill::Leap,
        name: "big-step",
        check: "L3",
        says: "motion-early-leap-big-step",
        edits: &[(
            Scope {
                by: Some(Flight::Leap),
                ..CONTACTS
            },
            Edit::Step,
        )],
    },
    Early {
        skill: Skill::Leap,
        name: "stops-first",
        check: "L1",
        says: "motion-early-leap-stops-first",
        edits: &[(
            Scope {
                by: Some(Flight::Leap),
                ..CONTACTS
            },
            Edit::Pause(figures::PAUSE),
        )],
    },
    Early {
        skill: Skill::Gallop,
        name: "lead-changes",
        check: "G1",
        says: "motion-early-gallop-lead-changes",
        edits: &[
            (
                Scope {
                    counts: (2, 2, 4),
                    ..CLOSINGS
                },
                Edit::Drop,
            ),
            (
                Scope {
                    counts: (3, 1, 4),
                    ..on(&[Role::Contact, Role::Closing])
                },
                Edit::Swap,
            ),
        ],
    },
    Early {
        skill: Skill::Gallop,
        name: "passes",
        check: "G2",
        says: "motion-early-gallop-passes",
        edits: &[(CLOSINGS, Edit::Ahead(1.0, figures::PAST))],
    },
    Early {
        skill: Skill::Gallop,
        name: "even-beat",
        check: "G4",
        says: "motion-early-gallop-even-beat",
        edits: &[(CLOSINGS, Edit::Beat(figures::EVEN))],
    },
    Early {
        skill: Skill::Slide,
        name: "crosses",
        check: "S3",
        says: "motion-early-slide-crosses",
        edits: &[
            (CLOSINGS, Edit::Out(-1.0, figures::CROSS)),
            (CLOSINGS, Edit::Ahead(-1.0, figures::CROSS_BEHIND)),
        ],
    },
    Early {
        skill: Skill::Slide,
        name: "turns",
        check: "S1",
        says: "motion-early-slide-turns",
        edits: &[(
            Scope {
                counts: (2, 1, usize::MAX),
                ..on(&[Role::Contact, Role::Closing, Role::Stand])
            },
            Edit::Turn(figures::TURN),
        )],
    },
    Early {
        skill: Skill::Slide,
        name: "drags",
        check: "S4",
        says: "motion-early-slide-drags",
        edits: &[(CONTACTS, Edit::Step)],
    },
    Early {
        skill: Skill::Skip,
        name: "one-sided",
        check: "K2",
        says: "motion-early-skip-one-sided",
        edits: &[(
            Scope {
                which: Which::Other,
                ..on(&[Role::Hop])
            },
            Edit::Drop,
        )],
    },
    Early {
        skill: Skill::Skip,
        name: "pauses",
        check: "K3",
        says: "motion-early-skip-pauses",
        edits: &[(
            Scope {
                counts: (2, 1, usize::MAX),
                ..CONTACTS
            },
            Edit::Pause(figures::PAUSE),
        )],
    },
    Early {
        skill: Skill::Run,
        name: "shuffles",
        check: "R1",
        says: "motion-early-run-shuffles",
        edits: &[(CONTACTS, Edit::Step)],
    },
    Early {
        skill: Skill::Run,
        name: "wide",
        check: "R2",
        says: "motion-early-run-wide",
        edits: &[(CONTACTS, Edit::Out(1.0, figures::WIDE))],
    },
];

/// The rows of a skill.
pub fn early(skill: Skill) -> impl Iterator<Item = &'static Early> {
    EARLY.iter().filter(move |row| row.skill == skill)
}

impl Scope {
    /// Whether a print of a clip is meant.
    pub fn holds(&self, print: &Print, lead: Side) -> bool {
        let (from, every, to) = self.counts;
        let side = match self.which {
            Which::Any => true,
            Which::Lead => print.side == lead,
            Which::Other => print.side != lead,
        };
        let count = print.count >= from
            && print.count <= to
            && (print.count - from).is_multiple_of(every.max(1));
        let by = self.by.is_none_or(|flight| print.by == Some(flight));
        side && count && by && self.roles.contains(&print.role)
    }
}

impl Early {
    /// The clip in this form; `clip` is one of the skill, done well.
    pub fn of(&self, clip: &Clip, model: &Model) -> Clip {
        let mut clip = clip.clone();
        clip.early = Some(self.name);
        for (scope, edit) in self.edits {
            let meant: Vec<usize> = (0..clip.prints.len())
                .filter(|at| {
                    clip.prints
                        .get(*at)
                        .is_some_and(|print| scope.holds(print, clip.lead))
                })
                .collect();
            // from the last, so that what is taken out or put in moves nothing yet to come
            for at in meant.into_iter().rev() {
                clip.edit(at, edit, model);
            }
            clip.sort();
        }
        clip.rounded()
    }
}

impl Clip {
    fn edit(&mut self, at: usize, edit: &Edit, model: &Model) {
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
