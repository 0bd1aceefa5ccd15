//! What a run prints: papers and drawings, as files for the way out.

use document::drawing::yard::Plan;
use document::sheet::{Paper, Sheet};
use note::Note;
use project::write::Output;
use project::{About, Project};

use crate::outcome::Fault;
use crate::survey::Surveyed;

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

/// The plan's papers.
pub fn plan(
    _walked: &Surveyed,
    _class: &crate::planning::Class,
    _planned: &crate::planning::Planned,
    _told: &crate::verbs::plan::Told,
    _record: &plan::Plan,
    _large: bool,
) -> Result<Vec<Output>, Fault> {
    Ok(Vec::new())
}
