//! `plan`: every stage to out/.

use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use footfall::Footfall;
use marking::Figure;
use note::{Fact, Note, msg};
use plan::{Laid, Plan as Record};
use project::read::layout::Marking;
use project::write::{Output, write};
use serde_json::json;

use crate::building;
use crate::command::{Manner, Plan};
use crate::outcome::{Fault, Outcome};
use crate::papers;
use crate::planning::{Class, Planned, choose, class, could, curve, task};
use crate::screens;
use crate::survey::{Surveyed, walk};
use crate::teaching::{self, Taught};
use crate::tell::{Telling, tell_without_project};
use crate::verbs::audit::judged;
use crate::verbs::survey::record;

/// Walks through every stage and lets out the plan with its papers. An interrupt stops the
/// search and leaves the last plan in place.
pub fn plan(asked: &Plan, manner: Manner) -> Result<Outcome, Fault> {
    let stop = Arc::new(AtomicBool::new(false));
    let heard = Arc::clone(&stop);
    // Where the machine gives no signals, an interrupt ends the program: no file is open.
    let _ = ctrlc::set_handler(move || heard.store(true, Ordering::Relaxed));
    let mut notes = Vec::new();
    let dir = &asked.folder.dir;
    let Some(walked) = walk(dir, &mut notes) else {
        tell_without_project(manner, &notes);
        return Ok(Outcome::WrongInput);
    };
    let project = &walked.project;
    let telling = Telling::of(project, manner);
    let refuse = |notes: &[Note], outcome| {
        telling.notes(notes);
        telling.json(json!({ "written": [] }), notes);
        Ok(outcome)
    };
    let (Some(survey), Some(yard), Some(ground)) = (&walked.survey, &walked.yard, &walked.ground)
    else {
        return refuse(&notes, Outcome::WrongInput);
    };
    // The survey's papers rest on the survey alone; the class and its figures are found
    // meanwhile.
    let mut of_class = Vec::new();
    let (survey_papers, offered) = rayon::join(
        || papers::survey(&walked, &notes, asked.large),
        || {
            let class = class(project, yard, &mut of_class)?;
            let bare = ground.free.0.is_empty();
            let candidates = (!bare).then(|| could(project, &class, &mut of_class));
            Some((class, candidates))
        },
    );
    let survey_papers = survey_papers?;
    notes.append(&mut of_class);
    let Some((class, candidates)) = offered else {
        return refuse(&notes, Outcome::WrongInput);
    };
    let Some(candidates) = candidates else {
        notes.push(Note::warning(None, msg!("plan-no-ground")).mend(msg!("plan-see-blocked")));
        return refuse(&notes, Outcome::DoesNotHold);
    };
    if note::any_error(&notes) {
        return refuse(&notes, Outcome::WrongInput);
    }
    let mut planned = choose(
        project,
        &class,
        candidates,
        yard,
        ground,
        asked.budget,
        &telling,
        &stop,
    )?;
    notes.extend(planned.plan.notes.iter().cloned());
    if planned.plan.stopped || stop.load(Ordering::Relaxed) {
        notes.push(Note::warning(None, msg!("plan-stopped")));
        return refuse(&notes, Outcome::DoesNotHold);
    }
    for check in planned
        .plan
        .checks
        .iter()
        .filter(|check| check.hard && !check.pass)
    {
        let theirs = project
            .layout
            .iter()
            .find(|marking| Some(&marking.name) == check.marking.as_ref());
        let place = theirs.and_then(|marking| marking.place.clone());
        notes.push(Note::warning(place, judged(check, &telling)).mend(msg!("plan-move-or-unlock")));
    }
    if planned.plan.placed.is_empty() {
        nothing_placed(&planned, &mut notes);
        return refuse(&notes, Outcome::DoesNotHold);
    }
    let told = Told::of(project, &class, &planned);
    let laid: Vec<(&str, &Figure)> = std::iter::zip(&told.markings, &told.figures)
        .map(|(marking, figure)| (marking.name.as_str(), figure))
        .collect();
    // other budgets, paint and play hang on the plan alone
    let mut of_play = Vec::new();
    let (curve, (built, taught)) = rayon::join(
        || curve(project, &class, &planned, yard, ground),
        || {
            rayon::join(
                || building::build(&walked, &laid, &mut notes),
                || teaching::teach(project, &class, &told, &mut of_play),
            )
        },
    );
    planned.curve = curve?;
    let taught = taught?;
    notes.append(&mut of_play);
    let mut record = record(&walked);
    let names: Vec<&str> = laid.iter().map(|(name, _)| *name).collect();
    record.build = built.as_ref().map(|built| building::record(built, &names));
    record.teach = taught.as_ref().map(Taught::record);
    fill(&mut record, &walked, &class, &planned, &told);
    let before = last(dir);
    let text = record.to_json().map_err(|why| Fault(why.to_string()))?;
    let old = project.files.get("layout.toml").map_or("", |text| text);
    let layout = project::write_layout(old, &told.markings, project.about.units).pour(&mut notes);
    let Some(layout) = layout else {
        return refuse(&notes, Outcome::WrongInput);
    };
    let mut outputs = vec![
        Output::new("out/plan.json", text),
        Output::new("layout.toml", layout),
    ];
    outputs.extend(survey_papers);
    let (printed, others) = rayon::join(
        || {
            papers::plan(
                &walked,
                &class,
                &planned,
                &record,
                built.as_ref(),
                taught.as_ref(),
                asked.large,
            )
        },
        || -> Result<Vec<Output>, Fault> {
            let mut others = Vec::new();
            if let Some(built) = &built {
                others.push(papers::checks(project, &built.setout));
                others.extend(papers::cut(project, built, asked.r12));
                if asked.tiled {
                    others.extend(papers::tiled(project, built)?);
                }
                others.extend(papers::calendar(project, built));
            }
            let sessions = taught.as_ref().and_then(|it| papers::sessions(project, it));
            others.extend(sessions);
            others.extend(screens::pages(project, yard, &class, &planned, &told));
            Ok(others)
        },
    );
    outputs.extend(printed?);
    outputs.extend(others?);
    telling.notes(&notes);
    if let Err(fault) = write(dir, &outputs) {
        telling.notes(&[fault.note()]);
        return Err(Fault(fault.to_string()));
    }
    summary(&telling, project, &planned, &record);
    changes(&telling, before.as_ref(), &record);
    let written: Vec<&str> = outputs.iter().map(|output| output.path.as_str()).collect();
    let (cut, told): (Vec<&str>, Vec<&str>) = written
        .iter()
        .partition(|file| file.starts_with("out/cut/"));
    for file in told {
        telling.say(&msg!("told-written", file = file));
    }
    if !cut.is_empty() {
        telling.say(&msg!("told-written-cut", count = cut.len()));
    }
    let holds = survey.global_test.passed
        && planned
            .plan
            .checks
            .iter()
            .all(|check| check.pass || !check.hard);
    telling.json(
        json!({ "written": written, "holds": holds, "value": planned.plan.dealt.value, "bound": planned.plan.bound }),
        &notes,
    );
    Ok(if holds {
        Outcome::Done
    } else {
        Outcome::DoesNotHold
    })
}

/// What the papers and the record tell of each placed marking.
pub struct Told {
    /// As the layout file names them.
    pub markings: Vec<Marking>,
    /// In the yard's coordinates.
    pub figures: Vec<Figure>,
    /// By marking, then activity, then child.
    pub footfall: Vec<Vec<Vec<Footfall>>>,
}

impl Told {
    fn of(project: &project::Project, class: &Class, planned: &Planned) -> Told {
        let mut told = Told {
            markings: Vec::new(),
            figures: Vec::new(),
            footfall: Vec::new(),
        };
        for placed in &planned.plan.placed {
            let Some(candidate) = planned.candidates.get(placed.candidate) else {
                continue;
            };
            let pose = placed.pose;
            told.markings.push(Marking {
                name: candidate.name.clone(),
                family: candidate.family.clone(),
                at: [pose.at.x, pose.at.y],
                turn: pose.turn,
                mirrored: pose.mirrored,
                locked: candidate.locked.is_some(),
                lengths: candidate.figure.lengths.clone(),
                place: None,
            });
            told.figures
                .push(candidate.figure.placed(pose.at, pose.turn, pose.mirrored));
            let gaits = project
                .family(&candidate.family)
                .map_or_else(Vec::new, |family| {
                    layout::candidates::activities(family, &project.programme.weights)
                });
            let rows = footfall::class(
                std::slice::from_ref(&candidate.figure),
                &class.children,
                &gaits,
                &class.model,
            );
            told.footfall.extend(rows);
        }
        told
    }
}

/// The family whose cells spell.
const LETTERS: &str = "letter-court";

fn fill(record: &mut Record, walked: &Surveyed, class: &Class, planned: &Planned, told: &Told) {
    let project = &walked.project;
    record.children = Some(class.children.iter().map(plan::Child::of).collect());
    record.learned = plan::Learned::of(&class.learned);
    let marking = |(marking, figure): (&Marking, &Figure)| {
        let laid = Laid {
            name: &marking.name,
            candidate: Some(&marking.name),
            at: marking.at,
            turn: marking.turn.to_degrees(),
            mirrored: marking.mirrored,
            locked: marking.locked,
            words: (marking.family == LETTERS)
                .then(|| {
                    let step = figure.lengths.first().map_or(0.0, |(_, step)| *step);
                    plan::Words::of(&class.look.letters, step)
                })
                .flatten(),
        };
        plan::Marking::of(&laid, figure)
    };
    record.markings = Some(
        std::iter::zip(&told.markings, &told.figures)
            .map(marking)
            .collect(),
    );
    let mut footfall = Vec::new();
    for ((marking, figure), activities) in
        told.markings.iter().zip(&told.figures).zip(&told.footfall)
    {
        for children in activities {
            for (child, one) in std::iter::zip(&class.children, children) {
                if !one.routes.is_empty() {
                    footfall.push(plan::Footfall::of(&marking.name, figure, &child.name, one));
                }
            }
        }
    }
    record.footfall = Some(footfall);
    if let (Some(yard), Some(ground)) = (&walked.yard, &walked.ground) {
        let task = task(
            project,
            class,
            &planned.candidates,
            yard,
            ground,
            planned.budget,
        );
        let programme = &project.programme;
        record.layout = Some(plan::Layout::of(
            programme.weeks,
            &programme.weights,
            &class.children,
            &task,
            &planned.plan,
            &planned.curve,
            &project.ledger,
        ));
    }
    record.audit = Some(planned.plan.checks.iter().map(plan::Check::of).collect());
    record.sources = plan::Source::cited(&project.ledger);
}

/// The plan that stands in the folder, if one does that we can read.
fn last(dir: &Path) -> Option<Record> {
    let text = std::fs::read_to_string(dir.join("out/plan.json")).ok()?;
    Record::from_json(&text).ok()
}

fn nothing_placed(planned: &Planned, notes: &mut Vec<Note>) {
    let useful = planned
        .candidates
        .iter()
        .filter(|candidate| !candidate.refused);
    let cheapest = useful
        .map(|candidate| candidate.cost)
        .min_by(f64::total_cmp);
    let note = Note::warning(None, msg!("plan-nothing"));
    notes.push(match cheapest {
        Some(cost) if cost > planned.budget => {
            note.mend(msg!("plan-least-cost", cost = Fact::Number(cost, 2)))
        }
        Some(_) => note.mend(msg!("plan-see-left-out")),
        None => note.mend(msg!("plan-no-candidate")),
    });
}

fn summary(telling: &Telling, project: &project::Project, planned: &Planned, record: &Record) {
    let plan = &planned.plan;
    let cost: f64 = plan
        .placed
        .iter()
        .filter_map(|placed| planned.candidates.get(placed.candidate))
        .map(|candidate| candidate.cost)
        .sum();
    let percent = |share: f64| Fact::Number(100.0 * share, 1);
    telling.say(&msg!(
        "plan-told-markings",
        count = plan.placed.len(),
        cost = Fact::Number(cost, 2),
        currency = &project.about.currency
    ));
    telling.say(&msg!(
        "plan-told-value",
        value = percent(plan.dealt.value),
        bound = percent(plan.bound),
        gap = percent(plan.gap),
    ));
    for binds in &plan.binds {
        let shown = (1000.0 * binds.change).round() / 1000.0;
        let more = match binds.of {
            "ground" => Fact::Area(binds.more),
            "money" => Fact::Text(format!("{:.0} {}", binds.more, project.about.currency)),
            _ => Fact::Number(binds.more, 0),
        };
        telling.say(&msg!(
            "plan-told-binds",
            of = binds.of,
            more = more,
            sign = match shown {
                up if up > 0.0 => "more",
                down if down < 0.0 => "less",
                _ => "same",
            },
            change = percent(shown.abs()),
        ));
    }
    letters(telling, record);
    for left in &plan.left_out {
        if let Some(candidate) = planned.candidates.get(left.candidate) {
            telling.say(&msg!(
                "plan-told-left-out",
                name = &candidate.name,
                why = left.why.word()
            ));
        }
    }
}

/// What can be spelt on the letter courts that were chosen.
fn letters(telling: &Telling, record: &Record) {
    for marking in record.markings.iter().flatten() {
        let Some(words) = &marking.words else {
            continue;
        };
        telling.say(&msg!(
            "plan-told-letters",
            name = &marking.name,
            jumpable = words.jumpable.len(),
            words = words.jumpable.len() + words.other.len(),
            longest = Fact::Length(words.longest.unwrap_or(0.0)),
        ));
        if !words.other.is_empty() {
            telling.say(&msg!("plan-told-letters-not", words = words.other.clone()));
        }
    }
}

/// What is new since the plan that stood there before.
fn changes(telling: &Telling, before: Option<&Record>, now: &Record) {
    let (Some(old), Some(new)) = (
        before.and_then(|plan| plan.layout.as_ref()),
        now.layout.as_ref(),
    ) else {
        return;
    };
    let gone = old.chosen.iter().filter(|name| !new.chosen.contains(name));
    let come = new.chosen.iter().filter(|name| !old.chosen.contains(name));
    let (gone, come): (Vec<String>, Vec<String>) =
        (gone.cloned().collect(), come.cloned().collect());
    if !gone.is_empty() {
        telling.say(&msg!("plan-told-gone", names = gone));
    }
    if !come.is_empty() {
        telling.say(&msg!("plan-told-come", names = come));
    }
    let lengths = |layout: &plan::Layout, name: &str| {
        layout
            .candidates
            .iter()
            .find(|one| one.name == name)
            .map(|one| one.lengths.clone())
    };
    let resized: Vec<String> = new
        .chosen
        .iter()
        .filter(|name| old.chosen.contains(name) && lengths(old, name) != lengths(new, name))
        .cloned()
        .collect();
    if !resized.is_empty() {
        telling.say(&msg!("plan-told-resized", names = resized));
    }
    let change = new.value - old.value;
    if change.abs() > 5e-5 {
        telling.say(&msg!(
            "plan-told-change",
            change = Fact::Number(100.0 * change, 1)
        ));
    }
}
