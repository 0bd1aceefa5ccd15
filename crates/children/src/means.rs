//! Children who travel by other means: wheels and walkers have a gait of pushes, a held
//! child the easier form of each skill (programme.md 4; common practice, no source).

use ledger::Ledger;

use crate::child::{Ability, Means, Skill, Speeds};
use crate::figures::{
    HELD_CAN, HELD_REACH, PUSH_CAN, PUSH_CV, PUSH_M, PUSH_RUN_SPEED, PUSH_STEADY, PUSH_TURN,
    PUSH_WALK_SPEED, PUSH_WALKER, row,
};

/// The turning radius of a child's means, metres; `None` for a child on its own feet.
pub fn turning_radius(means: Means, ledger: &Ledger) -> Option<f64> {
    matches!(means, Means::Wheels | Means::Walker).then(|| ledger.number(PUSH_TURN))
}

/// What becomes of a skill as the age's figures have it, for a child of these means.
pub fn adapted(means: Means, skill: Skill, age: f64, on_feet: Ability, ledger: &Ledger) -> Ability {
    let share = match means {
        Means::Feet => return on_feet,
        Means::Held => {
            let reach = ledger.number(HELD_REACH);
            let mut sources = on_feet.sources;
            sources.extend([HELD_REACH.0.to_owned(), HELD_CAN.0.to_owned()]);
            return Ability {
                m: on_feet.m * reach,
                tau: on_feet.tau * reach,
                can: on_feet.can.max(ledger.number(HELD_CAN)),
                steady: on_feet.steady,
                sources,
            };
        }
        Means::Wheels => 1.0,
        Means::Walker => ledger.number(PUSH_WALKER),
    };
    let pushes = row(skill).pushes;
    let m = share * ledger.at_age(PUSH_M, age) * ledger.number(pushes);
    let keys = [PUSH_M, pushes, PUSH_CV, PUSH_CAN, PUSH_STEADY];
    let walker = (means == Means::Walker).then_some(PUSH_WALKER);
    Ability {
        m,
        tau: m * ledger.number(PUSH_CV),
        can: ledger.number(PUSH_CAN),
        steady: ledger.at_age(PUSH_STEADY, age),
        sources: keys
            .into_iter()
            .chain(walker)
            .map(|key| key.0.to_owned())
            .collect(),
    }
}

/// Speeds by other means; a held child goes at the pace of who holds it, taken alike.
pub fn pace(means: Means, on_feet: Speeds, ledger: &Ledger) -> Speeds {
    match means {
        Means::Feet => on_feet,
        Means::Walker | Means::Wheels | Means::Held => Speeds {
            walk: on_feet.walk * ledger.number(PUSH_WALK_SPEED),
            run: on_feet.run * ledger.number(PUSH_RUN_SPEED),
        },
    }
}
