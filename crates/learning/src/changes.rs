//! What changed, for whom, and because of what: facts, no sentences.

use children::Skill;

use crate::learn::{Learned, Told};

/// Which figure of a skill.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// m, metres.
    Reach,
    /// tau, metres.
    Unsure,
    /// Probability that the child can.
    Can,
    /// Probability that one contact keeps the pattern.
    Steady,
}

/// What moved it; the child's own first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Because {
    /// A measured best.
    Measured,
    /// Tries, and how many came off.
    Tries {
        /// Tries.
        n: u32,
        /// Good ones.
        good: u32,
    },
    /// Checks, and how many were met.
    Checks {
        /// Criteria looked at.
        n: u32,
        /// Criteria met.
        met: u32,
    },
    /// Counted contacts.
    Counts {
        /// Counts.
        runs: u32,
        /// Contacts in all.
        contacts: u32,
    },
    /// The jump, which the hop follows.
    Jump,
    /// Others of the age or group.
    Others {
        /// Children.
        children: u32,
        /// Their tries.
        tries: u32,
    },
}

/// One figure that changed.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The child.
    pub child: String,
    /// The skill.
    pub skill: Skill,
    /// Which figure.
    pub what: What,
    /// As age and body have it.
    pub before: f64,
    /// As it now stands.
    pub after: f64,
    /// Because of what.
    pub because: Vec<Because>,
}

/// Reach that moves by less is told as the same, metres: a tape reads no finer.
const METRES: f64 = 1e-3;
/// The same for a probability: half of what a page prints, a per cent.
const SHARE: f64 = 5e-3;

/// Every figure that changed by as much as a page would show, by child, skill and figure.
pub fn changes(learned: &Learned) -> Vec<Change> {
    learned.told.iter().flat_map(of).collect()
}

fn of(told: &Told) -> impl Iterator<Item = Change> + '_ {
    let (before, after) = (&told.prior, &told.posterior);
    [
        (What::Reach, before.m, after.m, METRES),
        (What::Unsure, before.tau, after.tau, METRES),
        (What::Can, before.can, after.can, SHARE),
        (What::Steady, before.steady, after.steady, SHARE),
    ]
    .into_iter()
    .filter(|(_, before, after, least)| (after - before).abs() >= *least)
    .map(|(what, before, after, _)| Change {
        child: told.child.clone(),
        skill: told.skill,
        what,
        before,
        after,
        because: because(told, what),
    })
}

/// What can have moved a figure: reach is moved by all but checks, `can` not by others.
fn because(told: &Told, what: What) -> Vec<Because> {
    let seen = &told.seen;
    let reach = matches!(what, What::Reach | What::Unsure);
    let steady = what == What::Steady;
    let mut because = Vec::new();
    if seen.measured > 0 && !steady {
        because.push(Because::Measured);
    }
    if seen.tries > 0 {
        because.push(Because::Tries {
            n: seen.tries,
            good: seen.good,
        });
    }
    if seen.checks > 0 && what == What::Can {
        because.push(Because::Checks {
            n: seen.checks,
            met: seen.met,
        });
    }
    if seen.runs > 0 {
        because.push(Because::Counts {
            runs: seen.runs,
            contacts: seen.contacts,
        });
    }
    if told.follows_jump && reach {
        because.push(Because::Jump);
    }
    if told.others.0 > 0 && reach {
        because.push(Because::Others {
            children: told.others.0,
            tries: told.others.1,
        });
    }
    because
}
