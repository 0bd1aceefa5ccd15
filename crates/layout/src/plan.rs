//! The whole stage: the bound, the set, its poses, its minutes, its reasons.

use ground::result::Ground;
use ground::yard::Yard;
use ledger::Ledger;
use note::{Fact, Note, msg};
use rayon::prelude::*;

use crate::audit::{Check, audit};
use crate::candidate::{Candidate, Pose};
use crate::millionth;
use crate::place::search::{Found, Layout, Progress, Searcher, Work};
use crate::place::site::{Laid, Site};
use crate::programme::{Ceiling, Dealt, Limits, Programme, Question, Unsolved};
use crate::rules::Surroundings;
use crate::week::{Target, Week};

/// What the planner is asked.
#[derive(Clone, Copy, Debug)]
pub struct Task<'a> {
    /// The programme's question.
    pub question: Question<'a>,
    /// The week that the question's time is of.
    pub week: Week,
    /// The surveyed yard.
    pub yard: &'a Yard,
    /// Its ground.
    pub ground: &'a Ground,
    /// Seed of every random choice.
    pub seed: u64,
    /// How much to do.
    pub work: Work,
}

/// A marking where it lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Number of the candidate.
    pub candidate: usize,
    /// Where.
    pub pose: Pose,
}

/// The layout, its value, its bound and its reasons.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The markings, by candidate.
    pub placed: Vec<Placed>,
    /// Z, minutes and practice of the markings that were placed.
    pub dealt: Dealt,
    /// No choice can do better.
    pub bound: f64,
    /// (bound - value) / bound; 0 where the bound is 0.
    pub gap: f64,
    /// What the shape of the ground says beyond its area.
    pub shape: Shape,
    /// Whether the bound is the programme's very optimum.
    pub proven: bool,
    /// Whether the search was stopped before its work was done.
    pub stopped: bool,
    /// What a little more of each would change.
    pub binds: Vec<Binds>,
    /// Why each other candidate is not there.
    pub left_out: Vec<LeftOut>,
    /// The rules held against the layout.
    pub checks: Vec<Check>,
    /// What the user should know of what is locked.
    pub notes: Vec<Note>,
    /// What is proven of all sets, for [`curve_from`].
    ceiling: Ceiling,
}

/// The bound of the programme, which knows the ground by its area, held against the ground's
/// shape: with one more row for each set of figures that is proven to have no place together.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// Sets of candidates of which one at least stays out, whatever the poses.
    pub apart: Vec<Vec<usize>>,
    /// No choice that keeps these rows can do better; at most the programme's own bound.
    pub bound: f64,
    /// (bound - value) / bound; 0 where the bound is 0.
    pub gap: f64,
}

/// The change of the best Z for a little more of something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Binds {
    /// `money`, `ground`, `time` or `staff`.
    pub of: &'static str,
    /// How much more: currency, m², minutes a session, members.
    pub more: f64,
    /// Change of Z's bound before branching (the markings taken as divisible), where a set
    /// as a whole would jump; never negative but for time and staff: longer sessions ask
    /// for more as well, and more staff who may bring outings together
    /// and so leave stations less time.
    pub change: f64,
}

/// A candidate that was not placed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeftOut {
    /// Its number.
    pub candidate: usize,
    /// Why.
    pub why: Reason,
}

/// Why a candidate is not in the layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// The programme refuses it.
    Refused,
    /// It would fit and be paid for, and add nothing.
    NoGain,
    /// One of its family serves its group already; its number.
    SameFamily(usize),
    /// The purse does not reach.
    Money,
    /// The area of the free ground does not reach.
    Ground,
    /// It has nowhere to lie among the others.
    NoPlace,
    /// It fits and would add something, but the best set found does without it.
    Outdone,
}

impl Reason {
    /// The word of plan.json.
    pub fn word(self) -> &'static str {
        match self {
            Reason::Refused => "refused",
            Reason::NoGain => "no-gain",
            Reason::SameFamily(_) => "same-family",
            Reason::Money => "money",
            Reason::Ground => "ground",
            Reason::NoPlace => "no-place",
            Reason::Outdone => "outdone",
        }
    }
}

/// Gains of Z below this are none.
const NO_GAIN: f64 = 1e-6;

/// Chooses and lays. `go_on` hears what is being done and may say no: then the best layout
/// so far is the answer, and says so.
///
/// # Errors
/// [`Unsolved`] where the solver fails on its own account.
pub fn plan(
    task: &Task,
    ledger: &Ledger,
    go_on: &(dyn Fn(Progress) -> bool + Sync),
) -> Result<Plan, Unsolved> {
    let question = &task.question;
    let candidates = question.candidates;
    let programme = Programme::new(question, ledger);
    let around = Surroundings::new(task.yard, task.ground, ledger);
    let locked: Layout = (0..candidates.len())
        .filter_map(|at| Some((at, Laid::new(&candidates[at], candidates[at].locked?))))
        .collect();
    let site = Site::new(&task.ground.free, &around.walls);
    let found = match &site {
        Some(site) => {
            let mut searcher = Searcher {
                candidates,
                programme: &programme,
                site,
                free: &task.ground.free,
                budget: question.budget,
                seed: task.seed,
                work: task.work,
                go_on,
                stances: Vec::new(),
                cramped: false,
                around: &around,
                locked,
            };
            let mut found = searcher.run()?;
            if !found.stopped {
                searcher.polish(&mut found.layout, &around);
            }
            let (left_out, binds) = rayon::join(
                || left_out(question, &programme, &found, Some(&searcher)),
                || binds(task, &programme, &found, ledger),
            );
            (found, left_out?, binds?)
        }
        None => {
            let (first, ceiling) = programme.choose_under(
                &Limits::default(),
                task.work.bound_nodes,
                &Ceiling::default(),
                &|| true,
            )?;
            let value = programme.value(&locked.keys().copied().collect::<Vec<_>>())?;
            let found = Found {
                layout: locked,
                value,
                first,
                ceiling,
                stopped: false,
                apart: Vec::new(),
                shape_bound: f64::INFINITY,
            };
            let left_out = left_out(question, &programme, &found, None)?;
            let binds = binds(task, &programme, &found, ledger)?;
            (found, left_out, binds)
        }
    };
    let (found, left_out, binds) = found;
    let numbers: Vec<usize> = found.layout.keys().copied().collect();
    let dealt = programme.deal(question, &numbers)?;
    let bound = found.first.bound.max(dealt.value);
    let shape_bound = found.shape_bound.clamp(dealt.value, bound);
    let gap = |bound: f64| {
        if bound > 0.0 {
            (bound - dealt.value) / bound
        } else {
            0.0
        }
    };
    let placed: Vec<(&Candidate, Pose)> = found
        .layout
        .iter()
        .map(|(at, laid)| (&candidates[*at], laid.pose))
        .collect();
    Ok(Plan {
        placed: found
            .layout
            .iter()
            .map(|(at, laid)| Placed {
                candidate: *at,
                pose: laid.pose,
            })
            .collect(),
        gap: gap(bound),
        shape: Shape {
            gap: gap(shape_bound),
            bound: shape_bound,
            apart: found.apart,
        },
        dealt,
        bound,
        proven: found.first.proven,
        stopped: found.stopped,
        binds,
        left_out,
        checks: audit(&placed, &around, ledger),
        notes: locked_beyond(question),
        ceiling: found.ceiling,
    })
}

/// What is locked stands even where it alone passes the purse or the ground; nothing can be
/// added then, and the user is told why.
fn locked_beyond(question: &Question) -> Vec<Note> {
    let locked = || question.candidates.iter().filter(|it| it.locked.is_some());
    let cost: f64 = locked().map(|it| it.cost).sum();
    let area: f64 = locked().map(|it| it.area).sum();
    let mut notes = Vec::new();
    if cost > question.budget + 1e-6 {
        notes.push(
            Note::warning(
                None,
                msg!(
                    "layout-locked-over-budget",
                    cost = Fact::Number(cost, 2),
                    budget = Fact::Number(question.budget, 2)
                ),
            )
            .mend(msg!("layout-unlock")),
        );
    }
    if area > question.free_area + 1e-6 {
        notes.push(
            Note::warning(
                None,
                msg!(
                    "layout-locked-over-ground",
                    area = Fact::Area(area),
                    free = Fact::Area(question.free_area)
                ),
            )
            .mend(msg!("layout-unlock")),
        );
    }
    notes
}

/// Value and bound at one budget, before anything is laid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worth {
    /// Money, in the project's currency.
    pub budget: f64,
    /// Z of the best set found.
    pub value: f64,
    /// No set can do better.
    pub bound: f64,
}

/// Value against budget, by rising budget: the choice alone, its ground known by area, each
/// to half a percent or as near as a few nodes bring it. Both rise with the budget.
///
/// # Errors
/// [`Unsolved`] where the solver fails on its own account.
pub fn curve(task: &Task, budgets: &[f64], ledger: &Ledger) -> Result<Vec<Worth>, Unsolved> {
    curve_under((Ceiling::default(), Vec::new()), task, budgets, ledger)
}

/// The same after a plan of the same task, sooner: what the plan proved of sets holds at any
/// budget.
///
/// # Errors
/// As [`curve`].
pub fn curve_from(
    plan: &Plan,
    task: &Task,
    budgets: &[f64],
    ledger: &Ledger,
) -> Result<Vec<Worth>, Unsolved> {
    let ceiling = Programme::new(&task.question, ledger).taken_over(&plan.ceiling);
    let placed = plan.placed.iter().map(|it| it.candidate).collect();
    let mut curve = curve_under((ceiling, vec![placed]), task, budgets, ledger)?;
    // The plan has looked harder at its own budget.
    for worth in &mut curve {
        if worth.budget >= task.question.budget {
            worth.value = worth.value.max(millionth(plan.dealt.value));
            worth.bound = worth.bound.max(worth.value);
        }
        if worth.budget <= task.question.budget {
            worth.bound = worth.bound.min(millionth(plan.bound)).max(worth.value);
        }
    }
    Ok(curve)
}

fn curve_under(
    (mut ceiling, mut known): (Ceiling, Vec<Vec<usize>>),
    task: &Task,
    budgets: &[f64],
    ledger: &Ledger,
) -> Result<Vec<Worth>, Unsolved> {
    /// Of Z.
    const NEAR: f64 = 5e-3;
    const NODES: u64 = 6;
    let programme = Programme::new(&task.question, ledger);
    let mut budgets: Vec<f64> = budgets.iter().copied().filter(|b| b.is_finite()).collect();
    budgets.sort_by(f64::total_cmp);
    let mut curve = Vec::with_capacity(budgets.len());
    for budget in budgets {
        let limits = Limits {
            budget: Some(budget.max(0.0)),
            near: NEAR,
            known: known.clone(),
            ..Limits::default()
        };
        let choice;
        (choice, ceiling) = programme.choose_under(&limits, NODES, &ceiling, &|| true)?;
        known.push(choice.chosen);
        curve.push(Worth {
            budget,
            value: choice.value,
            bound: choice.bound,
        });
    }
    // What a smaller purse pays for, a larger pays for too; what a larger cannot reach,
    // a smaller cannot.
    for at in 1..curve.len() {
        curve[at].value = curve[at].value.max(curve[at - 1].value);
    }
    for at in (1..curve.len()).rev() {
        curve[at - 1].bound = curve[at - 1].bound.min(curve[at].bound);
    }
    for worth in &mut curve {
        worth.value = millionth(worth.value);
        worth.bound = millionth(worth.bound).max(worth.value);
    }
    Ok(curve)
}

fn left_out(
    question: &Question,
    programme: &Programme,
    found: &Found,
    searcher: Option<&Searcher>,
) -> Result<Vec<LeftOut>, Unsolved> {
    let candidates = question.candidates;
    let numbers: Vec<usize> = found.layout.keys().copied().collect();
    let sum =
        |of: fn(&Candidate) -> f64| numbers.iter().map(|at| of(&candidates[*at])).sum::<f64>();
    let (spent, used) = (sum(|it| it.cost), sum(|it| it.area));
    let judge = |at: usize| -> Result<LeftOut, Unsolved> {
        let candidate = &candidates[at];
        let same = numbers.iter().copied().find(|other| {
            let other = &candidates[*other];
            (&other.family, &other.group) == (&candidate.family, &candidate.group)
        });
        let with: Vec<usize> = numbers.iter().copied().chain([at]).collect();
        let gains = || -> Result<bool, Unsolved> {
            let least = found.value + NO_GAIN;
            // Where the planes rule it out nothing need be solved.
            Ok(found.ceiling.over(&with) > least && programme.value(&with)? > least)
        };
        let why = if candidate.refused {
            Reason::Refused
        } else if let Some(same) = same {
            Reason::SameFamily(same)
        } else if !gains()? {
            Reason::NoGain
        } else if spent + candidate.cost > question.budget + 1e-9 {
            Reason::Money
        } else if used + candidate.area > question.free_area + 1e-9 {
            Reason::Ground
        } else if !searcher.is_some_and(|searcher| searcher.fits(&found.layout, at)) {
            Reason::NoPlace
        } else {
            Reason::Outdone
        };
        Ok(LeftOut { candidate: at, why })
    };
    (0..candidates.len())
        .into_par_iter()
        .filter(|at| !found.layout.contains_key(at))
        .map(judge)
        .collect()
}

/// Steps of "a little more": a tenth of the purse and of the ground, five minutes a
/// session, one more member of staff.
const TENTH: f64 = 0.1;
const MINUTES: f64 = 5.0;

/// Of Z: what a bound without branching may leave to be found.
const NEAR: f64 = 5e-4;

/// What a little more would change, by the bound with markings taken as divisible.
fn binds(
    task: &Task,
    programme: &Programme,
    found: &Found,
    ledger: &Ledger,
) -> Result<Vec<Binds>, Unsolved> {
    let question = &task.question;
    let ceiling = &found.ceiling;
    let bound = |programme: &Programme, limits: &Limits, known: &Ceiling| {
        programme
            .choose_under(limits, 0, known, &|| true)
            .map(|(choice, _)| choice.bound)
    };
    let (money, ground) = (question.budget * TENTH, question.free_area * TENTH);
    let usual = Limits {
        near: NEAR,
        known: vec![found.layout.keys().copied().collect()],
        ..Limits::default()
    };
    let richer = Limits {
        budget: Some(question.budget + money),
        ..usual.clone()
    };
    let wider = Limits {
        area: Some(question.free_area + ground),
        ..usual.clone()
    };
    let class = question.counts.iter().sum();
    let of_week = |week: Week| {
        let time = week.time(class, ledger);
        let longer = if question.time.each > 0.0 {
            time.each / question.time.each
        } else {
            1.0
        };
        let targets: Vec<Target> = question
            .targets
            .iter()
            .map(|target| Target {
                minutes: millionth(target.minutes * longer),
                ..*target
            })
            .collect();
        let question = Question {
            time,
            targets: &targets,
            ..*question
        };
        let programme = Programme::new(&question, ledger);
        let known = programme.taken_over(ceiling);
        bound(&programme, &usual, &known)
    };
    let longer = Week {
        minutes: task.week.minutes + MINUTES,
        ..task.week
    };
    let more_staff = Week {
        staff: task.week.staff.saturating_add(1),
        ..task.week
    };
    let ((now, richer, wider), (longer, more_staff)) = rayon::join(
        || {
            (
                bound(programme, &usual, ceiling),
                bound(programme, &richer, ceiling),
                bound(programme, &wider, ceiling),
            )
        },
        || rayon::join(|| of_week(longer), || of_week(more_staff)),
    );
    let now = now?;
    let row = |of, more, change: f64| Binds {
        of,
        more,
        change: millionth(change),
    };
    Ok(vec![
        row("money", money, (richer? - now).max(0.0)),
        row("ground", ground, (wider? - now).max(0.0)),
        row("time", MINUTES, longer? - now),
        row("staff", 1.0, more_staff? - now),
    ])
}
