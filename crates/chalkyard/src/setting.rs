//! Where to hook the tapes, for what a plan lays or a layout file holds.

use geo::Coord;
use marking::Figure;
use note::Note;
use project::Project;
use setout::{Laid, SetOut};

use crate::planning::look;
use crate::survey::Surveyed;

/// The set-out of figures that lie where they shall, each with its marking's name.
pub fn set_out(
    walked: &Surveyed,
    laid: &[(&str, &Figure)],
    notes: &mut Vec<Note>,
) -> Option<SetOut> {
    let (survey, yard) = (walked.survey.as_ref()?, walked.yard.as_ref()?);
    let project = &walked.project;
    let laid: Vec<Laid> = laid
        .iter()
        .map(|&(name, figure)| Laid { name, figure })
        .collect();
    let question = setout::Question {
        survey,
        obstacles: &setout::obstacles(yard),
        laid: &laid,
        tape: project.surveyed.tape,
        units: project.about.units,
        step: setout::step(project.about.units, &project.ledger),
    };
    Some(setout::setout(&question, &project.ledger).pour(notes))
}

/// The figures of the layout file, in the yard's coordinates.
pub fn laid_out(project: &Project, notes: &mut Vec<Note>) -> Vec<Figure> {
    let look = look(project);
    let figures = project.layout.iter().filter_map(|marking| {
        // the reader has refused a stranger's name
        let family = project.family(&marking.family)?;
        let lengths: Vec<f64> = marking.lengths.iter().map(|(_, metres)| *metres).collect();
        match family.make(&lengths, &look) {
            Ok(figure) => {
                let [x, y] = marking.at;
                Some(figure.placed(Coord { x, y }, marking.turn, marking.mirrored))
            }
            Err(fault) => {
                let (what, expected) = fault.messages(family.name());
                notes.push(Note::error(marking.place.clone(), what).expected(expected));
                None
            }
        }
    });
    figures.collect()
}
