//! Pages for a screen: feet that move, as files for the way out.

use ::course::{Painted, Stand, Unled};
use children::{Child, Means, Skill};
use footfall::{Footfall, Gait};
use ground::yard::Yard;
use layout::Candidate;
use marking::Figure;
use motion::{Clip, Model, Path, Way};
use note::msg;
use project::Project;
use project::write::Output;
use screen::{Course, Going, Shown, SkillText, Tongue};
use words::Catalogue;

use crate::planning::{Class, Planned};
use crate::verbs::plan::Told;

/// The page of all skills, and the page of this plan's markings with a child of each age on
/// them.
pub fn pages(
    project: &Project,
    yard: &Yard,
    class: &Class,
    planned: &Planned,
    told: &Told,
) -> Vec<Output> {
    let about = &project.about;
    let catalogue = Catalogue::of(about.language);
    let tongue = Tongue {
        catalogue,
        units: about.units,
    };
    let model = Model::of(&project.ledger);
    let candidates = planned
        .plan
        .placed
        .iter()
        .filter_map(|placed| planned.candidates.get(placed.candidate));
    let named: Vec<(String, &Figure)> = candidates
        .map(|one| (name(one, catalogue, about.units), &one.figure))
        .collect();
    let shown: Vec<Shown> = named
        .iter()
        .zip(&told.footfall)
        .map(|((name, figure), activities)| Shown {
            name,
            figure,
            going: activities
                .iter()
                .flat_map(|rows| going(figure, &class.children, rows, &model))
                .collect(),
        })
        .collect();
    let names: Vec<&str> = named.iter().map(|(name, _)| name.as_str()).collect();
    vec![
        Output::new(
            "out/course.html",
            course(project, yard, class, planned, told, &names, &tongue),
        ),
        Output::new(
            "out/skills.html",
            screen::skills_page(&tongue, &project.ledger),
        ),
        Output::new(
            "out/feet.html",
            screen::plan_page(&about.name, &shown, &tongue, &project.ledger),
        ),
    ]
}

/// The course for the yard's staff.
fn course(
    project: &Project,
    yard: &Yard,
    class: &Class,
    planned: &Planned,
    told: &Told,
    names: &[&str],
    tongue: &Tongue,
) -> String {
    let trained: Vec<Vec<(Skill, f64)>> = told
        .footfall
        .iter()
        .map(|activities| trained(activities, &class.counts))
        .collect();
    let texts: Vec<SkillText> = games::pages()
        .iter()
        .map(|page| {
            let words = page.words(project.about.language.tag());
            SkillText {
                skill: page.skill,
                what: words.what.clone(),
                early: words.early.clone(),
                later: words.later.clone(),
                cue: words.cue.clone(),
                cues: words
                    .cues
                    .iter()
                    .map(|cue| (cue.form.clone(), cue.say.clone()))
                    .collect(),
                easier: words.easier.clone(),
                harder: words.harder.clone(),
                figures: std::iter::zip(names, &trained)
                    .filter(|(_, trained)| trained.iter().any(|(skill, _)| *skill == page.skill))
                    .map(|(name, _)| (*name).to_owned())
                    .collect(),
            }
        })
        .collect();
    let markings: Vec<Painted> = std::iter::zip(names, &trained)
        .filter_map(|(name, trained)| {
            let best = trained.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
            Some(Painted {
                name: (*name).to_owned(),
                skill: best.0,
                well_pitched: best.1,
            })
        })
        .collect();
    let holds = |rule: &str, marking: &str| {
        let checks = &planned.plan.checks;
        checks
            .iter()
            .filter(|check| check.rule == rule && check.marking.as_deref() == Some(marking))
            .all(|check| check.pass)
    };
    /// Fast: who is on it cannot stop at once.
    const FAST: [Skill; 4] = [Skill::Run, Skill::Leap, Skill::Gallop, Skill::Skip];
    /// Hard for a class in which fewer than this share are well pitched.
    const HARD: f64 = 0.3;
    let unled: Vec<Unled> = names
        .iter()
        .zip(&trained)
        .zip(&told.markings)
        .map(|((name, trained), marking)| Unled {
            name: (*name).to_owned(),
            fast: trained.iter().any(|(skill, _)| FAST.contains(skill)),
            run_out: holds("run-out-inside", &marking.name)
                && holds("run-out-wanted", &marking.name),
            meets: !holds("lanes-crossed", &marking.name),
            hard: trained.iter().all(|(_, well)| *well < HARD),
        })
        .collect();
    let stands: Vec<Stand> = yard
        .stands
        .iter()
        .enumerate()
        .map(|(number, at)| Stand {
            name: (number + 1).to_string(),
            sees: told
                .figures
                .iter()
                .map(|figure| {
                    let cells = figure.cells.iter().map(|cell| cell.centre);
                    let lanes = figure
                        .lanes
                        .iter()
                        .flat_map(|lane| lane.line.coords().copied());
                    cells
                        .chain(lanes)
                        .map(|spot| ground::sees(yard, *at, spot, &project.ledger))
                        .collect()
                })
                .collect(),
        })
        .collect();
    screen::course_page(
        &Course {
            yard: &project.about.name,
            seed: project.about.seed,
            texts: &texts,
            markings: &markings,
            unled: &unled,
            stands: &stands,
            start: project.programme.starts,
        },
        tongue,
        &project.ledger,
    )
}

/// The skills that a figure trains, with the share of the class that it pitches well.
fn trained(activities: &[Vec<Footfall>], counts: &[u32]) -> Vec<(Skill, f64)> {
    let mut best: Vec<(Skill, f64)> = Vec::new();
    for rows in activities {
        let heads: f64 = counts.iter().map(|count| f64::from(*count)).sum();
        let well: f64 = rows
            .iter()
            .zip(counts)
            .map(|(row, count)| row.pitch.well * f64::from(*count))
            .sum();
        let Some(skill) = rows.first().map(|row| row.skill) else {
            continue;
        };
        let share = well / heads.max(1.0);
        match best.iter_mut().find(|(known, _)| *known == skill) {
            Some((_, known)) => *known = known.max(share),
            None if share > 0.0 => best.push((skill, share)),
            None => {}
        }
    }
    best
}

/// As the papers call it.
fn name(candidate: &Candidate, catalogue: &Catalogue, units: unit::Units) -> String {
    let family = match marking::family(&candidate.family) {
        Some(family) => catalogue.say(&msg!("page-family", family = family.name()), units),
        None => return candidate.name.clone(),
    };
    if candidate.locked.is_some() || candidate.group == "all" {
        return family;
    }
    let group = catalogue.say(&msg!("page-group", group = &candidate.group), units);
    catalogue.say(
        &msg!("page-name-group", name = family, group = group),
        units,
    )
}

/// Whole years, and the walker or wheels that a child goes with.
type Kind = (u32, Option<Means>);

/// At each age, and for each who goes with a walker or on wheels, the child whom a figure
/// suits best, on the route that it would take.
fn going(figure: &Figure, children: &[Child], rows: &[Footfall], model: &Model) -> Vec<Going> {
    let aided =
        |child: &Child| matches!(child.means, Means::Walker | Means::Wheels).then_some(child.means);
    let kind = |child: &Child| -> Kind { (child.age.floor() as u32, aided(child)) };
    let mut best: Vec<(Kind, &Child, &Footfall)> = Vec::new();
    for (child, row) in children.iter().zip(rows) {
        if row.timed.is_none() {
            continue;
        }
        match best.iter_mut().find(|(known, ..)| *known == kind(child)) {
            Some(known) if known.2.pitch.well >= row.pitch.well => {}
            Some(known) => (known.1, known.2) = (child, row),
            None => best.push((kind(child), child, row)),
        }
    }
    best.sort_by_key(|(kind, ..)| *kind);
    best.into_iter()
        .filter_map(|((age, aid), child, row)| {
            let gait = Gait::named(row.gait)?;
            let route = row.routes.get(row.timed?)?;
            let way = Way {
                gait: &gait,
                cells: &route.cells,
                lane: route.lane,
                contacts: &route.contacts,
            };
            let mut path = Path::on(figure, &way, child, model)?;
            if let (Some(_), Some(foot)) = (aid, row.foot) {
                path.lead = foot;
            }
            Some(Going {
                who: age.to_string(),
                sided: row.foot.is_some(),
                clip: Clip::of(&path, model)?,
            })
        })
        .collect()
}
