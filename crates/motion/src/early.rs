//! Early forms as rows: which prints of a clip differ, and how.

use children::Skill;
use footfall::Flight;
use ledger::Key;

use crate::clip::{Clip, Print, Role};
use crate::figures::Model;
use crate::forms::{COURT, EARLY};

/// Which foot a row speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// Either.
    Any,
    /// The one that leads, or lands first.
    Lead,
    /// The other.
    Other,
    /// The only one of its contact.
    Alone,
    /// Of two that land in one contact, the one that does not lead.
    Second,
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
    /// The other foot lands with it, both beside the aim.
    Both,
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

/// The rows of a skill, on its own gait.
pub fn early(skill: Skill) -> impl Iterator<Item = &'static Early> {
    EARLY.iter().filter(move |row| row.skill == skill)
}

/// The rows of a clip: its gait's. None where wheels or a walker carry, whose early forms
/// nobody has written down.
pub fn forms(clip: &Clip) -> impl Iterator<Item = &'static Early> + use<> {
    let rows = match clip.gait {
        _ if clip.aid.is_some() => &[],
        "court" => COURT,
        _ => EARLY,
    };
    let (gait, skill) = (clip.gait, clip.skill);
    rows.iter()
        .filter(move |row| row.skill == skill && (gait == "court" || gait == skill.word()))
}

impl Scope {
    /// Whether a print of a clip is meant.
    pub fn holds(&self, print: &Print, clip: &Clip) -> bool {
        let (from, every, to) = self.counts;
        let lead = clip.lead;
        let twin = || {
            clip.prints.iter().any(|other| {
                other.role == print.role && other.count == print.count && other.side != print.side
            })
        };
        let side = match self.which {
            Which::Any => true,
            Which::Lead => print.side == lead,
            Which::Other => print.side != lead,
            Which::Alone => !twin(),
            Which::Second => print.side != lead && twin(),
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
                        .is_some_and(|print| scope.holds(print, &clip))
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
