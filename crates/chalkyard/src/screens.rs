//! Pages for a screen: feet that move, as files for the way out.

use children::Child;
use footfall::{Footfall, Gait};
use layout::Candidate;
use marking::Figure;
use motion::{Clip, Model, Path, Way};
use note::msg;
use project::Project;
use project::write::Output;
use screen::{Going, Shown, Tongue};
use words::Catalogue;

use crate::planning::{Class, Planned};
use crate::verbs::plan::Told;

/// The page of all skills, and the page of this plan's markings with a child of each age on
/// them.
pub fn pages(project: &Project, class: &Class, planned: &Planned, told: &Told) -> Vec<Output> {
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
    vec![
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

/// At each age the child whom a figure suits best, on the route that it would take.
fn going(figure: &Figure, children: &[Child], rows: &[Footfall], model: &Model) -> Vec<Going> {
    let years = |child: &Child| child.age.floor() as u32;
    let mut best: Vec<(u32, &Child, &Footfall)> = Vec::new();
    for (child, row) in children.iter().zip(rows) {
        if row.timed.is_none() {
            continue;
        }
        match best.iter_mut().find(|(age, ..)| *age == years(child)) {
            Some(known) if known.2.pitch.well >= row.pitch.well => {}
            Some(known) => (known.1, known.2) = (child, row),
            None => best.push((years(child), child, row)),
        }
    }
    best.sort_by_key(|(age, ..)| *age);
    best.into_iter()
        .filter_map(|(age, child, row)| {
            let gait = Gait::named(row.gait)?;
            let route = row.routes.get(row.timed?)?;
            let way = Way {
                gait: &gait,
                cells: &route.cells,
                lane: route.lane,
                contacts: &route.contacts,
            };
            let clip = Clip::of(&Path::on(figure, &way, child, model)?, model)?;
            Some(Going {
                who: age.to_string(),
                sided: row.foot.is_some(),
                clip,
            })
        })
        .collect()
}
