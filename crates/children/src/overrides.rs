//! What people set for a child: it wins over every default and measurement.

use note::{Fact, Note, Noted, msg};

use crate::child::{Child, Means, Skill};
use crate::entry::{Override, Trait};
use crate::roster::millionth;

/// Stands among the sources of what people set for the child.
const SET: &str = "set";

/// Children with what people set for them. A foot that is set moves the jump's reach along,
/// unless that is set too.
pub fn overridden(mut children: Vec<Child>, overrides: &[Override]) -> Noted<Vec<Child>> {
    let mut notes = Vec::new();
    let bodies_first = |set: &&Override| matches!(set.what, Trait::Foot | Trait::Stature);
    let (bodies, skills): (Vec<&Override>, Vec<&Override>) =
        overrides.iter().partition(bodies_first);
    for set in bodies.into_iter().chain(skills) {
        let Some(child) = children.iter_mut().find(|child| child.name == set.child) else {
            let known = children
                .iter()
                .map(|child| child.name.clone())
                .collect::<Vec<_>>();
            notes.push(
                Note::error(set.at.clone(), msg!("child-unknown", child = &set.child))
                    .expected(msg!("child-unknown-expected", children = known)),
            );
            continue;
        };
        if !set.what.admits(set.value) {
            notes.push(
                Note::error(
                    set.at.clone(),
                    msg!(
                        "child-figure-outside",
                        child = &set.child,
                        figure = set.what.word(),
                        value = Fact::Number(set.value, 3)
                    ),
                )
                .expected(match set.what {
                    Trait::Can(_) | Trait::Steady(_) => msg!("child-probability-expected"),
                    _ => msg!("child-figure-expected"),
                }),
            );
            continue;
        }
        let value = millionth(set.value);
        match set.what {
            Trait::Stature => child.stature = value,
            Trait::Scatter => child.scatter = value,
            Trait::WalkSpeed => child.speeds.walk = value,
            Trait::RunSpeed => child.speeds.run = value,
            Trait::Foot => {
                let longer = value - child.foot;
                child.foot = value;
                if let (Means::Feet, Some(jump)) = (child.means, child.skills.get_mut(&Skill::Jump))
                {
                    jump.m = millionth(jump.m + longer);
                }
            }
            Trait::Reach(skill) | Trait::Tau(skill) | Trait::Can(skill) | Trait::Steady(skill) => {
                let Some(ability) = child.skills.get_mut(&skill) else {
                    continue;
                };
                match set.what {
                    Trait::Reach(_) => ability.m = value,
                    Trait::Tau(_) => ability.tau = value,
                    Trait::Can(_) => ability.can = value,
                    _ => ability.steady = value,
                }
                if !ability.sources.iter().any(|source| source == SET) {
                    ability.sources.push(SET.to_owned());
                }
            }
        }
    }
    Noted {
        value: children,
        notes,
    }
}
