//! The second stretch of the way: the class, its candidates, the choice and where it lies.

use std::sync::atomic::{AtomicBool, Ordering};

use children::{Child, Date, Expected, Side};
use footfall::{Gait, Model};
use geo::{Area, Coord};
use ground::result::Ground;
use ground::yard::Yard;
use indicatif::{ProgressBar, ProgressStyle};
use layout::candidates::{Kit, activities, candidates, yields};
use layout::cost::{Prices, cost};
use layout::plan::Worth;
use layout::programme::Question;
use layout::week::{Target, Time, Week, targets};
use layout::{Candidate, Pose, Progress, Task, Work};
use learning::{Learned, Pupil, Try};
use marking::{Family, Figure, Look, Palette};
use note::{Fact, Note, Noted, Place, msg};
use project::Project;
use project::read::layout::Marking;
use project::read::seen::Sight;
use project::read::trials::{On, Trial};

use crate::command::Manner;
use crate::outcome::Fault;
use crate::tell::Telling;

/// All that is known before anything is chosen.
pub struct Class {
    /// Who will play, as they stand after what they have shown.
    pub children: Vec<Child>,
    /// What was learned of them.
    pub learned: Learned,
    /// How many each of them stands for.
    pub counts: Vec<u32>,
    /// Constants of the footfall model.
    pub model: Model,
    /// Colours and breadths.
    pub look: Look,
    /// The week.
    pub week: Week,
    /// Its minutes.
    pub time: Time,
    /// What each child should get of it.
    pub targets: Vec<Target>,
    /// What things cost.
    pub prices: Prices,
}

/// The class of a project; `None` where notes say why there is none.
pub fn class(project: &Project, yard: &Yard, notes: &mut Vec<Note>) -> Option<Class> {
    let ledger = &project.ledger;
    let programme = &project.programme;
    let whole = |file: &str| Place::whole(&file.into());
    let expected: Vec<Expected> = if project.children.is_empty() {
        let told = children::counts(&programme.ages, ledger);
        told.pour(notes).into_iter().map(Expected::of).collect()
    } else {
        let Some(date) = project.about.date else {
            notes.push(
                Note::error(whole("project.toml"), msg!("class-no-date"))
                    .mend(msg!("class-add-date")),
            );
            return None;
        };
        let date = Date {
            year: i32::from(date.year()),
            month: date.month().unsigned_abs(),
        };
        children::expected(&project.children, date, ledger).pour(notes)
    };
    let expected = overridden(expected, project).pour(notes);
    if expected.is_empty() {
        if !note::any_error(notes) {
            notes.push(
                Note::error(whole("children.csv"), msg!("class-empty"))
                    .mend(msg!("class-add-children")),
            );
        }
        return None;
    }
    let counts: Vec<u32> = expected.iter().map(|one| one.child.count).collect();
    let week = Week {
        sessions: programme.sessions_a_week,
        minutes: programme.minutes,
        staff: programme.staff,
        yard_area: yard.boundary.unsigned_area(),
    };
    let time = week.time(counts.iter().sum(), ledger);
    if time.outings > 1 {
        notes.push(Note::advice(
            None,
            msg!(
                "class-turns",
                out = u64::from(time.out),
                outings = u64::from(time.outings)
            ),
        ));
    }
    let model = Model::of(ledger);
    let look = look(project);
    let learned = learn(project, expected, &model, &look).pour(notes);
    let children = learned.children.clone();
    Some(Class {
        targets: targets(&children, &programme.weights, time.each, ledger),
        model,
        look,
        prices: prices(project),
        children,
        learned,
        counts,
        week,
        time,
    })
}

/// Colours and breadths for the project's ground, and its words for letter courts.
pub fn look(project: &Project) -> Look {
    let ground = project
        .programme
        .palette
        .unwrap_or(marking::Ground::Asphalt);
    Look::of(Palette { ground }, &project.ledger)
        .lettered(&project.programme.words, project.about.seed)
}

/// The children with what people set for them.
fn overridden(mut expected: Vec<Expected>, project: &Project) -> Noted<Vec<Expected>> {
    let children = expected.iter().map(|one| one.child.clone()).collect();
    let set = children::overridden(children, &project.overrides);
    for (one, child) in expected.iter_mut().zip(set.value) {
        one.child = child;
    }
    Noted {
        value: expected,
        notes: set.notes,
    }
}

/// What was measured, and tried on figures of known size, moves the children who did it and,
/// less, their age and group. What people set for a child wins over it.
fn learn(project: &Project, expected: Vec<Expected>, model: &Model, look: &Look) -> Noted<Learned> {
    let pupils: Vec<Pupil> = expected
        .into_iter()
        .map(|expected| {
            let trials = project
                .trials
                .iter()
                .filter(|trial| trial.child == expected.child.name);
            let tries = trials
                .filter_map(|trial| {
                    let (figure, family) = tried_on(project, trial, look)?;
                    let word = trial
                        .activity
                        .as_deref()
                        .or(family.activities().first().copied())?;
                    let (gait, foot) = match word.split_once(':') {
                        Some((gait, "R")) => (gait, Some(Side::Right)),
                        Some((gait, "L")) => (gait, Some(Side::Left)),
                        _ => (word, None),
                    };
                    Some(Try {
                        figure,
                        gait: Gait::named(gait)?,
                        foot,
                        n: trial.n,
                        good: trial.good,
                    })
                })
                .collect();
            let seen = || {
                let code = &expected.child.name;
                project.seen.iter().filter(move |seen| seen.child == *code)
            };
            let checks = seen().filter_map(|seen| match seen.what {
                Sight::Looks(check) => Some(check),
                Sight::Count(_) => None,
            });
            let runs = seen().filter_map(|seen| match seen.what {
                Sight::Count(run) => Some(run),
                Sight::Looks(_) => None,
            });
            Pupil {
                tries,
                checks: checks.collect(),
                runs: runs.collect(),
                ..Pupil::new(expected.clone())
            }
        })
        .collect();
    let mut learned = learning::learn(&pupils, model, &project.ledger);
    // told already, when they were set the first time
    learned.value.children = children::overridden(learned.value.children, &project.overrides).value;
    learned
}

/// The figure of a trial: a marking of the layout, or a family at the lengths of the day.
fn tried_on<'a>(
    project: &'a Project,
    trial: &Trial,
    look: &Look,
) -> Option<(Figure, &'a dyn Family)> {
    let (family, lengths) = match &trial.on {
        On::Marking(name) => {
            let marking = project
                .layout
                .iter()
                .find(|marking| marking.name == *name)?;
            (&marking.family, &marking.lengths)
        }
        On::Figure { family, lengths } => (family, lengths),
    };
    let family = project.family(family)?;
    let lengths: Vec<f64> = lengths.iter().map(|(_, metres)| *metres).collect();
    Some((family.make(&lengths, look).ok()?, family))
}

/// The cheapest litre and metre that the project names, else the ledger's.
fn prices(project: &Project) -> Prices {
    let usual = Prices::usual(&project.ledger);
    let least = |packages: &[project::read::package::Package], usual: f64| {
        let each = packages
            .iter()
            .filter(|one| one.size > 0.0)
            .map(|one| one.price / one.size);
        each.min_by(f64::total_cmp).unwrap_or(usual)
    };
    let named = &project.programme.prices;
    Prices {
        paint: least(&named.paint, usual.paint),
        tape: least(&named.tape, usual.tape),
    }
}

/// What could be painted: what people have locked, and every family at the sizes of this
/// class.
pub fn could(project: &Project, class: &Class, notes: &mut Vec<Note>) -> Vec<Candidate> {
    let programme = &project.programme;
    let drawn = project.figures.values().map(|own| own as &dyn Family);
    let wanted: Vec<&dyn Family> = marking::families()
        .iter()
        .map(|family| *family as &dyn Family)
        .chain(drawn)
        .filter(|family| {
            programme.wanted.is_empty()
                || programme
                    .wanted
                    .iter()
                    .any(|name| name.value == family.name())
        })
        .collect();
    let refused: Vec<String> = programme
        .refused
        .iter()
        .map(|name| name.value.clone())
        .collect();
    let price = |figure: &Figure| price(figure, project, class);
    let kit = Kit {
        families: &wanted,
        refused: &refused,
        look: &class.look,
        model: &class.model,
        price: &price,
    };
    let mut all: Vec<Candidate> = project
        .layout
        .iter()
        .filter(|marking| marking.locked)
        .filter_map(|marking| laid(marking, project, class, notes))
        .collect();
    all.extend(candidates(
        &class.children,
        &programme.weights,
        &kit,
        &project.ledger,
    ));
    all
}

fn price(figure: &Figure, project: &Project, class: &Class) -> f64 {
    cost(
        figure,
        class.look.palette.ground,
        class.prices,
        &project.ledger,
    )
}

/// A marking of the layout file as a candidate that lies where people laid it.
pub fn laid(
    marking: &Marking,
    project: &Project,
    class: &Class,
    notes: &mut Vec<Note>,
) -> Option<Candidate> {
    // the reader has refused a stranger's name
    let family = project.family(&marking.family)?;
    let lengths: Vec<f64> = marking.lengths.iter().map(|(_, metres)| *metres).collect();
    let figure = match family.make(&lengths, &class.look) {
        Ok(figure) => figure,
        Err(fault) => {
            let (what, expected) = fault.messages(family.name());
            notes.push(Note::error(marking.place.clone(), what).expected(expected));
            return None;
        }
    };
    let gaits = activities(family, &project.programme.weights);
    Some(Candidate {
        name: marking.name.clone(),
        family: marking.family.clone(),
        group: marking.name.clone(),
        cost: price(&figure, project, class),
        area: figure.envelope.unsigned_area(),
        locked: Some(Pose {
            at: Coord {
                x: marking.at[0],
                y: marking.at[1],
            },
            turn: marking.turn,
            mirrored: marking.mirrored,
        }),
        refused: false,
        mirrors: family.can_mirror(),
        yields: yields(
            &figure,
            &gaits,
            &class.children,
            &class.model,
            &project.ledger,
        ),
        figure,
    })
}

/// The answer and its question.
pub struct Planned {
    /// What could be painted.
    pub candidates: Vec<Candidate>,
    /// The choice.
    pub plan: layout::Plan,
    /// The most that may be spent.
    pub budget: f64,
    /// Value and bound of the choice at budgets round it, by rising budget; see [`curve`].
    pub curve: Vec<Worth>,
}

/// The curve of value against budget has so many steps, and the budget is this one.
const STEPS: u32 = 7;
const BUDGET_AT: u32 = 4;

/// A budget where the project names none: nothing binds.
const NO_LIMIT: f64 = 1e9;

#[allow(clippy::too_many_arguments)]
/// Chooses and lays. Progress goes to the terminal; an interrupt stops the search.
pub fn choose(
    project: &Project,
    class: &Class,
    candidates: Vec<Candidate>,
    yard: &Yard,
    ground: &Ground,
    budget: Option<f64>,
    telling: &Telling,
    stop: &AtomicBool,
) -> Result<Planned, Fault> {
    let budget = budget.or(project.about.budget).unwrap_or(NO_LIMIT);
    let task = task(project, class, &candidates, yard, ground, budget);
    let bar = bar(telling.manner);
    let go_on = |progress: Progress| {
        show(&bar, progress, telling);
        !stop.load(Ordering::Relaxed)
    };
    let plan = layout::plan(&task, &project.ledger, &go_on).map_err(|why| Fault(why.0))?;
    bar.finish_and_clear();
    Ok(Planned {
        candidates,
        plan,
        budget,
        curve: Vec::new(),
    })
}

/// Value and bound of the choice at budgets round the plan's; none where none binds.
pub fn curve(
    project: &Project,
    class: &Class,
    planned: &Planned,
    yard: &Yard,
    ground: &Ground,
) -> Result<Vec<Worth>, Fault> {
    if project.about.budget.is_none() {
        return Ok(Vec::new());
    }
    let budget = planned.budget;
    let task = task(project, class, &planned.candidates, yard, ground, budget);
    let budgets: Vec<f64> = (1..=STEPS)
        .map(|step| budget * f64::from(step) / f64::from(BUDGET_AT))
        .collect();
    layout::curve_from(&planned.plan, &task, &budgets, &project.ledger).map_err(|why| Fault(why.0))
}

/// The question that a plan answers.
pub fn task<'a>(
    project: &Project,
    class: &'a Class,
    candidates: &'a [Candidate],
    yard: &'a Yard,
    ground: &'a Ground,
    budget: f64,
) -> Task<'a> {
    Task {
        question: Question {
            counts: &class.counts,
            targets: &class.targets,
            candidates,
            time: class.time,
            budget,
            free_area: (ground.free.unsigned_area() * 1e6).round() / 1e6,
        },
        week: class.week,
        yard,
        ground,
        seed: project.about.seed,
        work: Work::default(),
    }
}

fn bar(manner: Manner) -> ProgressBar {
    if manner.quiet || manner.json {
        return ProgressBar::hidden();
    }
    let bar = ProgressBar::new_spinner();
    if let Ok(style) = ProgressStyle::with_template("{spinner} {msg} ({elapsed})") {
        bar.set_style(style);
    }
    bar
}

fn show(bar: &ProgressBar, progress: Progress, telling: &Telling) {
    let says = match progress {
        Progress::Bounding => msg!("progress-bounding"),
        Progress::Laying(figures) => msg!("progress-laying", count = figures),
        Progress::Exchanging(step, of, value) => {
            msg!(
                "progress-exchanging",
                step = step,
                of = of,
                share = Fact::Number(100.0 * value, 1)
            )
        }
        Progress::Polishing(round, of) => msg!("progress-polishing", step = round, of = of),
    };
    bar.set_message(telling.sentence(&says));
    bar.tick();
}
