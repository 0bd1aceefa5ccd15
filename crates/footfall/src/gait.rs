//! Gaits as data: which contact may follow which, and what flight that is.
//!
//! A new gait is a new row: nothing else in this room knows one gait from another.

use children::{Ability, Child, Means, Side, Skill};

use crate::figures::Model;

/// What lands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Contact {
    /// The right foot.
    R,
    /// The left foot.
    L,
    /// Both feet, or the wheels.
    B,
}

impl Contact {
    /// The letter of files.
    pub fn letter(self) -> char {
        match self {
            Contact::R => 'R',
            Contact::L => 'L',
            Contact::B => 'B',
        }
    }

    /// The side, of a single foot.
    pub fn side(self) -> Option<Side> {
        match self {
            Contact::R => Some(Side::Right),
            Contact::L => Some(Side::Left),
            Contact::B => None,
        }
    }
}

/// How a contact is reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Flight {
    Walk,
    Run,
    Jump,
    Hop,
    Leap,
    /// From one foot to both, or from both to one.
    Mixed,
    Gallop,
    Slide,
    Skip,
    /// One push of a wheelchair's rims, or of a walker.
    Push,
}

impl Flight {
    /// All of them, in order.
    pub const ALL: [Flight; 10] = [
        Flight::Walk,
        Flight::Run,
        Flight::Jump,
        Flight::Hop,
        Flight::Leap,
        Flight::Mixed,
        Flight::Gallop,
        Flight::Slide,
        Flight::Skip,
        Flight::Push,
    ];

    /// The skills whose reach it has, as a mean; a push has that of the skill it stands in
    /// for, in pushes.
    fn skills(self) -> &'static [Skill] {
        match self {
            Flight::Walk => &[Skill::Walk],
            Flight::Push => &[],
            Flight::Run => &[Skill::Run],
            Flight::Jump => &[Skill::Jump],
            Flight::Hop => &[Skill::Hop],
            Flight::Leap => &[Skill::Leap],
            Flight::Mixed => &[Skill::Hop, Skill::Jump],
            Flight::Gallop => &[Skill::Gallop],
            Flight::Slide => &[Skill::Slide],
            Flight::Skip => &[Skill::Skip],
        }
    }

    /// Whose contacts a second it has, in a gait of this rate: a run-up's are the run's.
    pub(crate) fn rate(self, gait: Skill) -> Skill {
        if self == Flight::Run {
            Skill::Run
        } else {
            gait
        }
    }

    /// Whether its reach is sideways already, so that a fixed facing costs nothing more.
    pub(crate) fn sideways(self) -> bool {
        self == Flight::Slide
    }
}

/// How far one comfortable flight carries: Normal(m, tau), metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Mean.
    pub m: f64,
    /// How unsure it is.
    pub tau: f64,
}

impl Reach {
    /// rho at z: max(m + tau z, .3 m).
    pub fn at(self, z: f64, model: &Model) -> f64 {
        (self.m + self.tau * z).max(model.floor * self.m)
    }

    /// z = -.7 m / tau, where the floor sets in.
    pub fn kink(self, model: &Model) -> f64 {
        -(1.0 - model.floor) * self.m / self.tau
    }
}

/// A contact, and how far a run-up has come (0 where a gait has none).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stand {
    /// What stands.
    pub contact: Contact,
    /// Flights of the run-up that lie behind.
    pub phase: u8,
}

/// One line of a gait: `then` may follow `after`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Follow {
    /// Before.
    pub after: Stand,
    /// The landing.
    pub then: Stand,
    /// What flight that is.
    pub flight: Flight,
    /// Whose q keeps the pattern.
    pub steady: Skill,
}

impl Follow {
    /// The skills whose reach and practice it is.
    fn skills(&self) -> &[Skill] {
        match self.flight {
            Flight::Push => std::slice::from_ref(&self.steady),
            flight => flight.skills(),
        }
    }

    /// The reach of a child; `None` when a skill of it is not known.
    pub fn reach(&self, child: &Child) -> Option<Reach> {
        let skills = self.skills();
        let share = 1.0 / skills.len() as f64;
        let mut reach = Reach { m: 0.0, tau: 0.0 };
        for skill in skills {
            let Ability { m, tau, .. } = child.skills.get(skill)?;
            reach.m += share * m;
            reach.tau += share * tau;
        }
        let mean = reach.m.is_finite() && reach.m > 0.0;
        (mean && reach.tau.is_finite() && reach.tau >= 0.0).then_some(reach)
    }
}

/// What a leading foot binds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leads {
    /// Nothing: the gait has no side.
    Nothing,
    /// Every contact of a single foot.
    Every,
    /// The first landing after the run-up.
    First,
}

/// A gait.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gait {
    /// The word of files.
    pub name: &'static str,
    /// The skill that it serves.
    pub skill: Skill,
    /// Whose `can` it takes.
    pub can: Skill,
    /// Whose contacts a second.
    pub rate: Skill,
    /// Which contact may follow which.
    pub follows: &'static [Follow],
    /// Phase at which free ground before the start lets a route begin.
    pub free_run_up: u8,
    /// Phase from which a route may end and contacts are practice.
    pub done: u8,
    /// What a leading foot binds.
    pub leads: Leads,
    /// Whether travel must be across a fixed facing.
    pub across: bool,
    /// Whether it goes on wheels: any cell takes them, and they do not turn on the spot.
    pub wheels: bool,
}

const fn stand(contact: Contact, phase: u8) -> Stand {
    Stand { contact, phase }
}

const fn follow(after: Contact, then: Contact, flight: Flight, steady: Skill) -> Follow {
    Follow {
        after: stand(after, 0),
        then: stand(then, 0),
        flight,
        steady,
    }
}

const fn step(
    after: Contact,
    from: u8,
    then: Contact,
    to: u8,
    flight: Flight,
    steady: Skill,
) -> Follow {
    Follow {
        after: stand(after, from),
        then: stand(then, to),
        flight,
        steady,
    }
}

use Contact::{B, L, R};

const PLAIN: Gait = Gait {
    name: "walk",
    skill: Skill::Walk,
    can: Skill::Walk,
    rate: Skill::Walk,
    follows: &[
        follow(R, L, Flight::Walk, Skill::Walk),
        follow(L, R, Flight::Walk, Skill::Walk),
    ],
    free_run_up: 0,
    done: 0,
    leads: Leads::Nothing,
    across: false,
    wheels: false,
};

const fn push(skill: Skill) -> [Follow; 1] {
    [follow(B, B, Flight::Push, skill)]
}

/// The gait of pushes that stands in for each skill.
const PUSHES: [[Follow; 1]; Skill::ALL.len()] = [
    push(Skill::Jump),
    push(Skill::Hop),
    push(Skill::Leap),
    push(Skill::Gallop),
    push(Skill::Slide),
    push(Skill::Skip),
    push(Skill::Run),
    push(Skill::Walk),
];

/// Every gait on feet, the taught skills first.
pub const GAITS: [Gait; 9] = [
    Gait {
        name: "jump",
        skill: Skill::Jump,
        can: Skill::Jump,
        rate: Skill::Jump,
        follows: &[follow(B, B, Flight::Jump, Skill::Jump)],
        ..PLAIN
    },
    Gait {
        name: "hop",
        skill: Skill::Hop,
        can: Skill::Hop,
        rate: Skill::Hop,
        follows: &[
            follow(R, R, Flight::Hop, Skill::Hop),
            follow(L, L, Flight::Hop, Skill::Hop),
        ],
        leads: Leads::Every,
        ..PLAIN
    },
    Gait {
        name: "leap",
        skill: Skill::Leap,
        can: Skill::Leap,
        rate: Skill::Leap,
        follows: &[
            step(R, 0, L, 1, Flight::Run, Skill::Run),
            step(L, 0, R, 1, Flight::Run, Skill::Run),
            step(R, 1, L, 2, Flight::Run, Skill::Run),
            step(L, 1, R, 2, Flight::Run, Skill::Run),
            step(R, 2, L, 3, Flight::Leap, Skill::Leap),
            step(L, 2, R, 3, Flight::Leap, Skill::Leap),
            step(R, 3, L, 3, Flight::Leap, Skill::Leap),
            step(L, 3, R, 3, Flight::Leap, Skill::Leap),
        ],
        free_run_up: 2,
        done: 3,
        leads: Leads::First,
        ..PLAIN
    },
    Gait {
        name: "gallop",
        skill: Skill::Gallop,
        can: Skill::Gallop,
        rate: Skill::Gallop,
        follows: &[
            follow(R, R, Flight::Gallop, Skill::Gallop),
            follow(L, L, Flight::Gallop, Skill::Gallop),
        ],
        leads: Leads::Every,
        ..PLAIN
    },
    Gait {
        name: "slide",
        skill: Skill::Slide,
        can: Skill::Slide,
        rate: Skill::Slide,
        follows: &[
            follow(R, R, Flight::Slide, Skill::Slide),
            follow(L, L, Flight::Slide, Skill::Slide),
        ],
        leads: Leads::Every,
        across: true,
        ..PLAIN
    },
    Gait {
        name: "skip",
        skill: Skill::Skip,
        can: Skill::Skip,
        rate: Skill::Skip,
        follows: &[
            follow(R, L, Flight::Skip, Skill::Skip),
            follow(L, R, Flight::Skip, Skill::Skip),
        ],
        ..PLAIN
    },
    Gait {
        name: "court",
        skill: Skill::Hop,
        can: Skill::Hop,
        rate: Skill::Hop,
        follows: &[
            follow(R, R, Flight::Hop, Skill::Hop),
            follow(L, L, Flight::Hop, Skill::Hop),
            follow(R, B, Flight::Mixed, Skill::Hop),
            follow(L, B, Flight::Mixed, Skill::Hop),
            follow(B, R, Flight::Mixed, Skill::Hop),
            follow(B, L, Flight::Mixed, Skill::Hop),
            follow(B, B, Flight::Jump, Skill::Hop),
        ],
        leads: Leads::Every,
        ..PLAIN
    },
    Gait {
        name: "run",
        skill: Skill::Run,
        can: Skill::Run,
        rate: Skill::Run,
        follows: &[
            follow(R, L, Flight::Run, Skill::Run),
            follow(L, R, Flight::Run, Skill::Run),
        ],
        ..PLAIN
    },
    PLAIN,
];

impl Gait {
    /// The gait of a word.
    pub fn named(name: &str) -> Option<Gait> {
        GAITS.into_iter().find(|gait| gait.name == name)
    }

    /// The gait by which a child does what this one asks: on wheels or with a walker, pushes
    /// in the same place for the same skill; else the gait itself.
    pub fn by(self, means: Means) -> Gait {
        match means {
            Means::Feet | Means::Held => self,
            Means::Walker | Means::Wheels => Gait {
                name: self.name,
                skill: self.skill,
                can: self.can,
                rate: self.rate,
                follows: &PUSHES[self.skill as usize],
                wheels: true,
                ..PLAIN
            },
        }
    }

    /// The states in which a route may begin.
    pub(crate) fn starts(&self, run_up: bool) -> impl Iterator<Item = Stand> + '_ {
        let phase = if run_up { self.free_run_up } else { 0 };
        [R, L, B]
            .into_iter()
            .map(move |contact| stand(contact, phase))
            .filter(|state| self.follows.iter().any(|follow| follow.after == *state))
    }

    /// Whether a leading foot lets one stand so.
    pub(crate) fn stands(&self, state: Stand, foot: Option<Side>) -> bool {
        match (self.leads, foot, state.contact.side()) {
            (Leads::Every, Some(foot), Some(side)) => foot == side,
            _ => true,
        }
    }

    /// Whether a leading foot lets one land so.
    pub(crate) fn lands(&self, follow: &Follow, foot: Option<Side>) -> bool {
        let first = follow.after.phase < self.done && follow.then.phase >= self.done;
        match (self.leads, foot, follow.then.contact.side()) {
            (Leads::First, Some(foot), Some(side)) if first => foot == side,
            _ => self.stands(follow.then, foot),
        }
    }
}

/// Whether the two feet of a skill have targets of their own.
pub fn sided(skill: Skill) -> bool {
    matches!(
        skill,
        Skill::Hop | Skill::Leap | Skill::Gallop | Skill::Slide
    )
}

/// What one contact is practice of: skill, foot and share, in a fixed order. Nothing for
/// the run-up. Both feet count half to each where the skill has sides.
pub(crate) fn practice(gait: &Gait, follow: &Follow) -> Vec<(Skill, Option<Side>, f64)> {
    let mut shares = Vec::new();
    if follow.then.phase < gait.done {
        return shares;
    }
    let skills = follow.skills();
    for &skill in skills {
        let share = 1.0 / skills.len() as f64;
        match (sided(skill), follow.then.contact.side()) {
            (false, _) => shares.push((skill, None, share)),
            (true, Some(side)) => shares.push((skill, Some(side), share)),
            (true, None) => {
                shares.push((skill, Some(Side::Right), share / 2.0));
                shares.push((skill, Some(Side::Left), share / 2.0));
            }
        }
    }
    shares
}
