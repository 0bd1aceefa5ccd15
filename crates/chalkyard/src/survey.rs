//! The first stretch of the way, which every verb walks: files, survey, yard, ground.

use ground::result::Ground;
use ground::yard::Yard;
use note::Note;
use project::Project;
use survey::result::Survey;

/// As far as the value came.
pub struct Surveyed {
    /// The folder.
    pub project: Project,
    /// The adjusted survey.
    pub survey: Option<Survey>,
    /// The yard on its coordinates.
    pub yard: Option<Yard>,
    /// What may be painted.
    pub ground: Option<Ground>,
}

/// Reads the folder and walks to the ground, or as far as the input allows. `None` where
/// there is no project to read.
pub fn walk(dir: &std::path::Path, notes: &mut Vec<Note>) -> Option<Surveyed> {
    let project = project::read(dir).pour(notes)?;
    let mut walked = Surveyed {
        project,
        survey: None,
        yard: None,
        ground: None,
    };
    let Some(network) = &walked.project.network else {
        return Some(walked);
    };
    if note::any_error(notes) {
        return Some(walked);
    }
    walked.survey = survey::adjust(network, &walked.project.ledger).pour(notes);
    let Some(survey) = &walked.survey else {
        return Some(walked);
    };
    walked.yard = project::yard(&walked.project, survey).pour(notes);
    let Some(yard) = &walked.yard else {
        return Some(walked);
    };
    if !note::any_error(notes) {
        let zones = walked.project.about.zones;
        walked.ground = Some(ground::ground(yard, zones, &walked.project.ledger).pour(notes));
    }
    Some(walked)
}
