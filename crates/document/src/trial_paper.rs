//! Before paint: figures to chalk and a ten-minute baseline, on forms to write in.

use note::msg;
use plan::Plan as Record;

use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Column, Fault, Manuscript};

/// Figures and sizes of each that are tried: two of two, as far as the plan has them.
const FIGURES: usize = 2;
const SIZES: usize = 2;

/// Children who try, and children of the baseline.
const TRIERS: usize = 4;
const BASELINE: usize = 10;

/// The trial and the baseline of a plan, a page each.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn trial_papers(sheet: &Sheet, record: &Record) -> Result<Vec<u8>, Fault> {
    let title = sheet.say(msg!("trial-title", name = sheet.name));
    let foot = sheet.say(msg!("trial-foot", name = sheet.name));
    let mut paper = Manuscript::new(sheet, "trial", &title, &foot);
    paper.heading(1, &title);
    paper.paragraph(&sheet.word("trial-why"));
    paper.care(
        &sheet.word("doc-take-care"),
        &["trial-care-warm", "trial-care-grip", "trial-care-stop"].map(|key| sheet.word(key)),
    );
    let figures = to_chalk(record);
    paper.heading(2, &sheet.word("trial-figures"));
    let lines: Vec<String> = figures
        .iter()
        .map(|figure| {
            let lengths: Vec<String> = figure
                .lengths
                .iter()
                .map(|(name, metres)| format!("{name} {}", measure::length(*metres, sheet)))
                .collect();
            sheet.say(msg!(
                "trial-sizes",
                family = figure.name.as_str(),
                group = figure.group.as_str(),
                lengths = lengths,
            ))
        })
        .collect();
    paper.list(&lines, true);
    paper.heading(2, &sheet.word("trial-tries"));
    let blank = || String::from("______");
    let rows: Vec<Vec<String>> = figures
        .iter()
        .flat_map(|figure| {
            (0..TRIERS).map(move |_| vec![blank(), figure.name.clone(), blank(), blank()])
        })
        .collect();
    paper.table(
        &[
            Column::words(sheet.word("trial-column-child")),
            Column::words(sheet.word("trial-column-figure")),
            Column::words(sheet.word("trial-column-tries")),
            Column::words(sheet.word("trial-column-good")),
        ],
        &rows,
        false,
    );
    paper.remark(&sheet.word("trial-back"));
    paper.page_break();
    paper.heading(2, &sheet.word("trial-baseline"));
    paper.paragraph(&sheet.word("trial-baseline-how"));
    let children = baseline(record);
    let rows: Vec<Vec<String>> = children
        .into_iter()
        .map(|child| vec![child, blank(), blank(), blank()])
        .collect();
    paper.table(
        &[
            Column::words(sheet.word("trial-column-child")),
            Column::words(sheet.word("trial-column-jump")),
            Column::words(sheet.word("trial-column-right")),
            Column::words(sheet.word("trial-column-left")),
        ],
        &rows,
        false,
    );
    paper.remark(&sheet.word("trial-baseline-back"));
    paper.press()
}

/// Candidates worth a trial: of the families chosen first, the sizes that differ.
fn to_chalk(record: &Record) -> Vec<&plan::Candidate> {
    let Some(layout) = &record.layout else {
        return Vec::new();
    };
    let mut families: Vec<&str> = Vec::new();
    let chosen = layout
        .candidates
        .iter()
        .filter(|one| layout.chosen.contains(&one.name));
    for one in chosen.chain(&layout.candidates) {
        let jumps = ["court", "brook", "spots", "pair"].contains(&one.family.as_str());
        if jumps && !families.contains(&one.family.as_str()) {
            families.push(&one.family);
        }
    }
    families
        .into_iter()
        .take(FIGURES)
        .flat_map(|family| {
            layout
                .candidates
                .iter()
                .filter(move |one| one.family == family)
                .take(SIZES)
        })
        .collect()
}

/// Children of the baseline: evenly over the ages, those on foot.
fn baseline(record: &Record) -> Vec<String> {
    let mut children: Vec<&plan::Child> = record
        .children
        .iter()
        .flatten()
        .filter(|child| child.means == "feet")
        .collect();
    children.sort_by(|a, b| a.age.total_cmp(&b.age).then_with(|| a.id.cmp(&b.id)));
    let roster = children.iter().all(|child| child.count == 1);
    if !roster || children.is_empty() {
        return vec!["______".to_owned(); BASELINE];
    }
    let many = children.len().min(BASELINE);
    (0..many)
        .map(|at| children[at * children.len() / many].id.clone())
        .collect()
}
