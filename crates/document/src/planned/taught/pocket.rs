//! The pocket list of cues by skill.

use crate::planned::{Planned, suits};
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Writes the pages, the skills that the programme wants.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.page_break();
    paper.heading(2, &sheet.word("pocket-title"));
    paper.paragraph(&sheet.word("pocket-how"));
    let wanted = |skill: &str| {
        planned.record.layout.as_ref().is_none_or(|layout| {
            layout
                .weights
                .iter()
                .any(|(name, weight)| name == skill && *weight > 0.0)
        })
    };
    for page in games::pages() {
        let skill = page.skill.word();
        if !wanted(skill) {
            continue;
        }
        let words = page.words(sheet.language.tag());
        paper.heading(3, &suits::gait_words(sheet, skill));
        paper.paragraph(&words.what);
        let seen = |cue: &games::Cue| {
            let forms = motion::EARLY.iter();
            let form = forms
                .filter(|early| early.skill == page.skill)
                .find(|early| early.name == cue.form);
            form.map(|early| sheet.word(early.says))
        };
        let mut rows: Vec<Vec<String>> = vec![vec![
            sheet.word("pocket-everyone"),
            format!("“{}”", words.cue),
        ]];
        rows.extend(
            words
                .cues
                .iter()
                .filter_map(|cue| Some(vec![seen(cue)?, format!("“{}”", cue.say)])),
        );
        rows.push(vec![sheet.word("card-easier"), words.easier.clone()]);
        rows.push(vec![sheet.word("card-harder"), words.harder.clone()]);
        paper.sentences(
            &[
                Column::prose(sheet.word("pocket-see"), 1),
                Column::prose(sheet.word("pocket-say"), 1),
            ],
            &rows,
        );
    }
}
