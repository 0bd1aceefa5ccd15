//! Known faults: what is done to a clip's footfalls, and which criteria then fail.

use children::Skill;
use footfall::Flight;
use motion::{Clip, Early, Edit, Model, Role, Scope, Which, early};

use crate::figures;

/// A fault of the practice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fault {
    /// What is done, with its name and sentence: a row of `motion::EARLY`, or one of our own.
    pub form: &'static Early,
    /// Names of the criteria that fail.
    pub breaks: &'static [&'static str],
}

impl Fault {
    /// The skill.
    pub fn skill(&self) -> Skill {
        self.form.skill
    }

    /// The clip with this fault.
    pub fn of(&self, clip: &Clip, model: &Model) -> Clip {
        self.form.of(clip, model)
    }
}

const ANY: (usize, usize, usize) = (0, 1, usize::MAX);

const fn on(roles: &'static [Role]) -> Scope {
    Scope {
        roles,
        which: Which::Any,
        by: None,
        counts: ANY,
    }
}

const CONTACTS: Scope = on(&[Role::Contact]);

/// Faults that no early form of motion has, so that each criterion can fail alone.
const OWN: &[Early] = &[
    Early {
        skill: Skill::Jump,
        name: "leaves-one-first",
        check: "J2",
        says: "course-fault-jump-leaves-one-first",
        edits: &[(
            Scope {
                which: Which::Other,
                ..on(&[Role::Start, Role::Contact])
            },
            Edit::Lift(figures::LEAVE),
        )],
    },
    Early {
        skill: Skill::Jump,
        name: "steps-on",
        check: "J5",
        says: "course-fault-jump-steps-on",
        edits: &[(
            Scope {
                which: Which::Lead,
                ..CONTACTS
            },
            Edit::StepOn(figures::STEP_ON_AFTER, figures::STEP_ON),
        )],
    },
    Early {
        skill: Skill::Hop,
        name: "on-the-spot",
        check: "H1",
        says: "course-fault-hop-on-the-spot",
        edits: &[(
            Scope {
                counts: (2, 1, usize::MAX),
                ..CONTACTS
            },
            Edit::Short(figures::SHORT),
        )],
    },
    Early {
        skill: Skill::Hop,
        name: "rests",
        check: "H1",
        says: "course-fault-hop-rests",
        edits: &[(
            Scope {
                counts: (3, 2, usize::MAX),
                ..CONTACTS
            },
            Edit::Pause(figures::REST),
        )],
    },
    Early {
        skill: Skill::Leap,
        name: "same-foot",
        check: "L2",
        says: "course-fault-leap-same-foot",
        edits: &[
            (
                Scope {
                    by: Some(Flight::Leap),
                    ..CONTACTS
                },
                Edit::Swap,
            ),
            (on(&[Role::Run, Role::Stand]), Edit::Swap),
        ],
    },
    Early {
        skill: Skill::Leap,
        name: "stops-after",
        check: "L5",
        says: "course-fault-leap-stops-after",
        edits: &[(on(&[Role::Run]), Edit::Pause(figures::REST))],
    },
    Early {
        skill: Skill::Gallop,
        name: "drags",
        check: "G3",
        says: "course-fault-gallop-drags",
        edits: &[(CONTACTS, Edit::Step)],
    },
    Early {
        skill: Skill::Slide,
        name: "stops",
        check: "S2",
        says: "course-fault-slide-stops",
        edits: &[(
            Scope {
                counts: (3, 2, usize::MAX),
                ..CONTACTS
            },
            Edit::Pause(figures::REST),
        )],
    },
    Early {
        skill: Skill::Skip,
        name: "misses-hops",
        check: "K1",
        says: "course-fault-skip-misses-hops",
        edits: &[(
            Scope {
                counts: (3, 1, 4),
                ..on(&[Role::Hop])
            },
            Edit::Drop,
        )],
    },
    Early {
        skill: Skill::Skip,
        name: "one-foot",
        check: "K2",
        says: "course-fault-skip-one-foot",
        edits: &[
            // the same foot comes again: it has to have left
            (on(&[Role::Hop]), Edit::Lift(figures::HOP_OFF)),
            (
                Scope {
                    which: Which::Other,
                    ..on(&[Role::Contact, Role::Hop])
                },
                Edit::Swap,
            ),
            // it comes to rest beside what was swapped last
            (
                Scope {
                    which: Which::Lead,
                    ..on(&[Role::Stand])
                },
                Edit::Swap,
            ),
        ],
    },
    Early {
        skill: Skill::Run,
        name: "limps",
        check: "R1",
        says: "course-fault-run-limps",
        edits: &[(
            Scope {
                which: Which::Other,
                ..CONTACTS
            },
            Edit::Late(figures::LIMP),
        )],
    },
];

/// What each fault breaks, by skill and name; a fault without a line is not in the practice.
const BREAKS: &[(Skill, &str, &[&str])] = &[
    (Skill::Jump, "one-after-the-other", &["jump-lands"]),
    (
        Skill::Jump,
        "steps-over",
        &["jump-leaves", "jump-flies", "jump-lands"],
    ),
    (Skill::Jump, "leaves-one-first", &["jump-leaves"]),
    (Skill::Jump, "steps-on", &["jump-stays"]),
    (Skill::Hop, "taps", &["hop-free-foot"]),
    (Skill::Hop, "changes-foot", &["hop-same-foot"]),
    (Skill::Hop, "on-the-spot", &["hop-goes-on"]),
    (Skill::Hop, "rests", &["hop-beat"]),
    (Skill::Leap, "big-step", &["leap-floats"]),
    (Skill::Leap, "stops-first", &["leap-runs-up"]),
    (Skill::Leap, "same-foot", &["leap-other-foot"]),
    (Skill::Leap, "stops-after", &["leap-runs-on"]),
    // a new foot can lead only after it has passed the other
    (
        Skill::Gallop,
        "lead-changes",
        &["gallop-lead", "gallop-behind"],
    ),
    (Skill::Gallop, "passes", &["gallop-behind"]),
    (Skill::Gallop, "even-beat", &["gallop-beat"]),
    (Skill::Gallop, "drags", &["gallop-spring"]),
    (Skill::Slide, "crosses", &["slide-uncrossed"]),
    (Skill::Slide, "turns", &["slide-square"]),
    (Skill::Slide, "drags", &["slide-spring"]),
    (Skill::Slide, "stops", &["slide-flows"]),
    (Skill::Skip, "one-sided", &["skip-step-hop", "skip-sides"]),
    (Skill::Skip, "misses-hops", &["skip-step-hop"]),
    (Skill::Skip, "one-foot", &["skip-sides"]),
    (Skill::Skip, "pauses", &["skip-beat"]),
    (Skill::Run, "shuffles", &["run-floats"]),
    (Skill::Run, "wide", &["run-line"]),
    (Skill::Run, "limps", &["run-even"]),
];

/// Every fault of the practice, by skill.
pub(crate) fn all() -> impl Iterator<Item = Fault> {
    BREAKS.iter().filter_map(|(skill, name, breaks)| {
        let own = OWN.iter().filter(|row| row.skill == *skill);
        let form = own.chain(early(*skill)).find(|row| row.name == *name)?;
        Some(Fault { form, breaks })
    })
}

/// The faults of a skill, in order.
pub fn faults(skill: Skill) -> Vec<Fault> {
    all().filter(|fault| fault.skill() == skill).collect()
}
