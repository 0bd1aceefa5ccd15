//! What the crew should hear.

use geo::Polygon;
use ledger::Ledger;
use note::{Fact, Note, msg};

use crate::figures::CLEAN;
use crate::question::{Job, Way, Window};
use crate::result::Plan;
use crate::schedule::Problem;
use crate::tasks::{PEOPLE, Works};
use crate::ways::Shut;

/// More people than ever paint one yard: a slip.
const MOST_PEOPLE: u32 = 500;

/// Seconds from the first midnight within which all days lie: ten years.
const YEARS: i64 = 315_360_000;

/// Whether an outline has a ring of numbers.
pub(crate) fn is_ground(outline: &Polygon<f64>) -> bool {
    let rings = std::iter::once(outline.exterior()).chain(outline.interiors());
    let mut coords = rings.flat_map(|ring| ring.coords());
    outline.exterior().0.len() >= 4 && coords.all(|at| at.x.is_finite() && at.y.is_finite())
}

/// What stops the plan before it is begun, and what can be seen at once.
pub(crate) fn faults(job: &Job) -> Vec<Note> {
    let mut notes = Vec::new();
    if job.people == 0 {
        notes.push(Note::error(None, msg!("crew-nobody")).mend(msg!("crew-name-people")));
    }
    if job.people > MOST_PEOPLE {
        notes.push(Note::error(
            None,
            msg!("crew-too-many", count = u64::from(job.people)),
        ));
    }
    if job.windows.is_empty() {
        notes.push(Note::error(None, msg!("crew-no-window")).mend(msg!("crew-name-window")));
    }
    let ordered = job
        .windows
        .windows(2)
        .all(|two| two[0].to_s <= two[1].from_s);
    let fit = |window: &Window| {
        let years = -YEARS..=YEARS;
        window.from_s < window.to_s
            && years.contains(&window.from_s)
            && years.contains(&window.to_s)
    };
    if !ordered || !job.windows.iter().all(fit) {
        notes.push(Note::error(None, msg!("crew-windows-mixed")).mend(msg!("crew-order-windows")));
    }
    for marking in &job.markings {
        let strange = marking.pieces.iter().any(|piece| {
            matches!(piece.way, Way::Stencil { stencil, .. } if stencil >= job.stencils.len())
        });
        if strange {
            notes.push(Note::error(
                None,
                msg!("crew-stencil-unknown", marking = &marking.name),
            ));
        }
        let finite = |value: f64| value.is_finite() && value >= 0.0;
        let lengths = marking.pieces.iter().all(|piece| {
            finite(piece.area)
                && match piece.way {
                    Way::Stencil { .. } => true,
                    Way::Masked { length } => finite(length),
                    Way::Free { edge } => finite(edge),
                }
        });
        let outlined = is_ground(&marking.outline);
        if !(lengths && outlined && finite(marking.swept) && finite(marking.primed)) {
            notes.push(Note::error(
                None,
                msg!("crew-no-quantity", marking = &marking.name),
            ));
        }
    }
    notes
}

/// Days too short to clean up in.
pub(crate) fn windows(job: &Job, short: usize, ledger: &Ledger) -> Vec<Note> {
    if short == 0 {
        return Vec::new();
    }
    let what = msg!(
        "crew-window-too-short",
        count = short,
        minutes = Fact::Number(ledger.number(CLEAN), 0)
    );
    // With no day left there is nothing to plan.
    let note = if short == job.windows.len() {
        Note::error(None, what)
    } else {
        Note::warning(None, what)
    };
    vec![note.mend(msg!("crew-name-window"))]
}

/// Ways that cannot be kept open.
pub(crate) fn ways(job: &Job, shut: Option<&[Shut]>) -> Vec<Note> {
    let Some(shut) = shut else {
        if job.markings.is_empty() {
            return Vec::new();
        }
        return vec![Note::advice(None, msg!("crew-no-ground")).mend(msg!("crew-name-ground"))];
    };
    let marking = |number: usize| &job.markings[number].name;
    shut.iter()
        .map(|shut| match *shut {
            Shut::NoWay(number) => {
                Note::warning(None, msg!("crew-no-way", marking = marking(number)))
                    .mend(msg!("crew-paint-backwards"))
            }
            Shut::Between(number, a, b) => Note::warning(
                None,
                msg!(
                    "crew-way-closed",
                    marking = marking(number),
                    from = &job.doors[a].name,
                    to = &job.doors[b].name
                ),
            )
            .mend(msg!("crew-half-at-a-time")),
        })
        .collect()
}

/// Tasks that no crew or day of these can hold.
pub(crate) fn unfit(job: &Job, made: &Works, problem: &Problem) -> Vec<Note> {
    let mut notes = Vec::new();
    let most = (0..made.works.len())
        .map(|work| problem.need(work, PEOPLE))
        .max()
        .unwrap_or(0);
    if most > job.people {
        notes.push(
            Note::error(
                None,
                msg!(
                    "crew-too-few",
                    need = u64::from(most),
                    have = u64::from(job.people)
                ),
            )
            .mend(msg!("crew-find-more")),
        );
    }
    let mut told = Vec::new();
    for (work, meaning) in made.meanings.iter().enumerate() {
        let long = problem.in_window(work, i64::MIN).is_none();
        if long && !problem.windows.is_empty() && !told.contains(&meaning.marking) {
            told.push(meaning.marking);
            let minutes = made.works[work].seconds as f64 / 60.0;
            notes.push(
                Note::error(
                    None,
                    msg!(
                        "crew-task-too-long",
                        marking = &job.markings[meaning.marking].name,
                        minutes = Fact::Number(minutes, 0)
                    ),
                )
                .mend(msg!("crew-longer-day")),
            );
        }
    }
    notes
}

/// Nothing fits, with all days that may be added.
pub(crate) fn no_plan() -> Note {
    Note::error(None, msg!("crew-no-plan")).mend(msg!("crew-longer-day"))
}

/// What the plan itself has to tell.
pub(crate) fn plan(job: &Job, plan: &Plan) -> Vec<Note> {
    let mut notes = Vec::new();
    let added = plan.days.iter().filter(|day| day.added).count();
    if added > 0 {
        notes.push(
            Note::warning(None, msg!("crew-more-days", count = added))
                .mend(msg!("crew-more-hands")),
        );
    }
    if let (Some(back), Some(dry)) = (job.children_s, plan.children_s)
        && dry > back
    {
        let hours = (dry - back) as f64 / 3600.0;
        notes.push(
            Note::warning(
                None,
                msg!("crew-children-too-early", hours = Fact::Number(hours, 1)),
            )
            .mend(msg!("crew-rope-off")),
        );
    }
    notes
}
