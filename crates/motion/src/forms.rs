//! Every early form as a row: what an observer looks for and the early looks are children.md
//! 3.1-3.7, in our words. A new form is a new row: nothing else in this room knows one from
//! another.

use children::Skill;
use footfall::Flight;

use crate::clip::Role;
use crate::early::{Early, Edit, Scope, Which};
use crate::figures;

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

const ALONE: Scope = Scope {
    which: Which::Alone,
    ..CONTACTS
};
const SECOND: Scope = Scope {
    which: Which::Second,
    ..CONTACTS
};

/// Early forms of a court, hop and jump mixed: common practice, no source.
pub const COURT: &[Early] = &[
    Early {
        skill: Skill::Hop,
        name: "taps",
        check: "H3",
        says: "motion-early-court-taps",
        edits: &[(ALONE, Edit::Tap(figures::TAP, figures::TAP_TIME))],
    },
    Early {
        skill: Skill::Hop,
        name: "one-after-the-other",
        check: "J4",
        says: "motion-early-court-one-after-the-other",
        edits: &[
            (SECOND, Edit::Late(figures::LATE)),
            (SECOND, Edit::Ahead(-1.0, figures::BEHIND)),
        ],
    },
    Early {
        skill: Skill::Hop,
        name: "two-on-one",
        check: "H1",
        says: "motion-early-court-two-on-one",
        edits: &[(ALONE, Edit::Both)],
    },
];
