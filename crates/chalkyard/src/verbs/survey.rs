//! `survey`: adjust the readings; a report and a picture.

use note::{Fact, msg};
use plan::Plan;
use project::Project;
use project::write::{Output, write};
use serde_json::json;

use crate::command::{Manner, Survey};
use crate::outcome::{Fault, Outcome};
use crate::papers;
use crate::survey::{Surveyed, walk};
use crate::tell::{Telling, tell_without_project};

/// Walks to the ground and lets out plan.json, the drawing, the report and the tape sheet.
pub fn survey(asked: &Survey, manner: Manner) -> Result<Outcome, Fault> {
    let mut notes = Vec::new();
    let Some(walked) = walk(&asked.folder.dir, &mut notes) else {
        tell_without_project(manner, &notes);
        return Ok(Outcome::WrongInput);
    };
    let telling = Telling::of(&walked.project, manner);
    if note::any_error(&notes) {
        telling.notes(&notes);
        telling.json(json!({ "written": [] }), &notes);
        return Ok(Outcome::WrongInput);
    }
    let plan = record(&walked);
    let text = plan.to_json().map_err(|why| Fault(why.to_string()))?;
    let mut outputs = vec![Output::new("out/plan.json", text)];
    outputs.extend(papers::survey(&walked, &notes, asked.large)?);
    telling.notes(&notes);
    if let Err(fault) = write(&asked.folder.dir, &outputs) {
        telling.notes(&[fault.note()]);
        return Err(Fault(fault.to_string()));
    }
    summary(&telling, &walked, &outputs);
    let written: Vec<&str> = outputs.iter().map(|output| output.path.as_str()).collect();
    let holds = walked
        .survey
        .as_ref()
        .is_none_or(|survey| survey.global_test.passed);
    telling.json(json!({ "written": written, "holds": holds }), &notes);
    Ok(if holds {
        Outcome::Done
    } else {
        Outcome::DoesNotHold
    })
}

/// The part of plan.json that this stretch fills.
pub fn record(walked: &Surveyed) -> Plan {
    let Project {
        about,
        ledger,
        network,
        ..
    } = &walked.project;
    let mut plan = Plan::new(&about.name, about.seed);
    plan.survey = network
        .as_ref()
        .zip(walked.survey.as_ref())
        .map(|(network, survey)| plan::Survey::of(network, survey));
    plan.ground = walked
        .ground
        .as_ref()
        .map(|ground| plan::Ground::of(ground, ledger));
    plan.sources = plan::Source::cited(ledger);
    plan
}

fn summary(telling: &Telling, walked: &Surveyed, outputs: &[Output]) {
    use geo::Area;
    if let Some(area) = walked.survey.as_ref().and_then(|survey| survey.area) {
        telling.say(&msg!(
            "survey-told-yard",
            area = Fact::Area(area.value),
            doubt = Fact::Area(2.0 * area.sigma)
        ));
    }
    if let Some(ground) = &walked.ground {
        telling.say(&msg!(
            "survey-told-free",
            area = Fact::Area(ground.free.unsigned_area())
        ));
    }
    for output in outputs {
        telling.say(&msg!("told-written", file = &output.path));
    }
}
