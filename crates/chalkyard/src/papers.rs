//! What a run prints: papers and drawings, as files for the way out.

use std::collections::BTreeMap;

use document::drawing::yard::Plan;
use document::sheet::{Paper, Sheet};
use marking::{Colour, Figure};
use note::Note;
use plan::Plan as Record;
use project::write::Output;
use project::{About, Project};

use crate::outcome::Fault;
use crate::planning::{Class, Planned};
use crate::survey::Surveyed;
use crate::verbs::plan::Told;

/// The survey's report, drawing and tape sheet.
pub fn survey(walked: &Surveyed, notes: &[Note], large: bool) -> Result<Vec<Output>, Fault> {
    let project = &walked.project;
    let date = date(&project.about);
    let sheet = sheet(project, &date, large);
    let mut outputs = Vec::new();
    if let (Some(yard), Some(ground)) = (&walked.yard, &walked.ground) {
        let plan = Plan {
            yard,
            ground,
            survey: walked.survey.as_ref(),
        };
        let drawn = document::plan_sheet::draw(&sheet, &plan, &project.ledger);
        outputs.push(Output::new(
            "out/yard.svg",
            document::drawing::svg::alone(&drawn.scene, &drawn.told),
        ));
        let report = document::survey_report::survey_report(&sheet, &plan, notes, &project.ledger);
        outputs.push(Output::new("out/survey-report.pdf", report.map_err(fault)?));
    }
    if let Some(network) = &project.network {
        let tape = document::tape_sheet::tape_sheet(
            &sheet,
            network,
            walked.survey.as_ref(),
            &project.ledger,
        );
        outputs.push(Output::new("out/tape-sheet.pdf", tape.map_err(fault)?));
    }
    Ok(outputs)
}

fn sheet<'a>(project: &'a Project, date: &'a str, large: bool) -> Sheet<'a> {
    let about = &project.about;
    Sheet {
        name: &about.name,
        language: about.language,
        units: about.units,
        paper: match about.paper {
            project::Paper::A4 => Paper::A4,
            project::Paper::Letter => Paper::Letter,
        },
        date,
        large,
        north: project.surveyed.north,
        credit: project.surveyed.credit.as_deref(),
        assumed: &project.surveyed.assumed,
    }
}

/// The project's date; never the clock's, so that the same folder gives the same paper.
fn date(about: &About) -> String {
    about
        .date
        .map_or_else(|| "—".to_owned(), |date| date.to_string())
}

fn fault(fault: document::typeset::Fault) -> Fault {
    Fault(fault.to_string())
}

/// The plan's papers, its drawing, and what to try before paint.
pub fn plan(
    walked: &Surveyed,
    class: &Class,
    planned: &Planned,
    told: &Told,
    record: &Record,
    large: bool,
) -> Result<Vec<Output>, Fault> {
    let project = &walked.project;
    let date = date(&project.about);
    let sheet = sheet(project, &date, large);
    let (Some(yard), Some(ground)) = (&walked.yard, &walked.ground) else {
        return Ok(Vec::new());
    };
    let survey = walked.survey.as_ref();
    let drawing = Plan {
        yard,
        ground,
        survey,
    };
    let paint = class.look.palette.ground;
    let own: Vec<Figure> = planned
        .plan
        .placed
        .iter()
        .filter_map(|placed| planned.candidates.get(placed.candidate))
        .map(|candidate| candidate.figure.clone())
        .collect();
    let mut litres: BTreeMap<Colour, f64> = BTreeMap::new();
    for figure in &own {
        for (colour, more) in layout::cost::litres(figure, paint, &project.ledger) {
            *litres.entry(colour).or_default() += more;
        }
    }
    let tape = own
        .iter()
        .map(|figure| layout::cost::tape(figure, &project.ledger))
        .sum();
    let paper = document::plan_paper::Told {
        sheet: &sheet,
        plan: &drawing,
        record,
        placed: &told.figures,
        own: &own,
        litres: &litres,
        tape,
        currency: &project.about.currency,
        sessions: (project.programme.sessions_a_week, project.programme.minutes),
        ledger: &project.ledger,
    };
    let drawn = document::plan_paper::plan_drawing(&paper);
    let svg = document::drawing::svg::alone(&drawn.scene, &drawn.told);
    Ok(vec![
        Output::new("out/plan.svg", svg),
        Output::new(
            "out/plan.pdf",
            document::plan_paper::plan_papers(&paper).map_err(fault)?,
        ),
        Output::new(
            "out/trial.pdf",
            document::trial_paper::trial_papers(&sheet, record).map_err(fault)?,
        ),
    ])
}
