//! One paper to print for the painting day: cautions, map, order of work, set-out, stencils,
//! paint, what to do when it rains, who signs, what was built.

mod chart;
mod plates;
mod shop;
mod tiles;
mod weather;

use ::crew::Plan as CrewPlan;
use ::paint::{Shopping, Upkeep};
use ::setout::SetOut;
use ::stencil::{Stencil, Stencils};
use ledger::Ledger;
use note::msg;

use super::{Planned, setout, words};
use crate::plan_sheet::Drawn;
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

pub use shop::thing;

/// What the people who build need, as its papers show it.
#[derive(Clone, Copy)]
pub struct Build<'a> {
    /// Where to hook the tapes.
    pub setout: &'a SetOut,
    /// What is painted through what.
    pub stencils: &'a Stencils,
    /// Sheets that plates are cut from.
    pub sheets: usize,
    /// What is bought.
    pub shopping: &'a Shopping,
    /// What the years cost.
    pub upkeep: &'a Upkeep,
    /// Who does what when.
    pub crew: Option<&'a CrewPlan>,
    /// People who come.
    pub people: u32,
    /// What the weather files say.
    pub skies: &'a [Sky<'a>],
}

/// What one weather file says of painting.
#[derive(Clone, Copy)]
pub struct Sky<'a> {
    /// The place that it names.
    pub place: &'a str,
    /// By month, of a typical year.
    pub year: Option<&'a days::Year>,
    /// Of a forecast, the best first.
    pub windows: &'a [days::Window],
}

/// Writes the paper.
pub fn write(
    paper: &mut Manuscript,
    sheet: &Sheet,
    planned: &Planned,
    drawn: &Drawn,
    build: &Build,
) {
    let say =
        |keys: &[&'static str]| -> Vec<String> { keys.iter().map(|key| sheet.word(key)).collect() };
    paper.heading(1, &sheet.say(msg!("day-title", name = sheet.name)));
    // a box does not break over pages: in large type one would not fit
    for acts in CAUTIONS.chunks(9) {
        paper.care(&sheet.word("doc-take-care"), &say(acts));
    }
    paper.heading(2, &sheet.word("day-before"));
    words::ticks(paper, &say(&BEFORE));
    weather::write(paper, sheet, build);
    let (scene, says) = setout::map(sheet, drawn, build.setout);
    paper.plate(&scene, &says);
    if let Some(plan) = build.crew {
        paper.page_break();
        chart::write(paper, sheet, planned, build, plan);
    }
    paper.page_break();
    paper.heading(2, &sheet.word("day-setout"));
    setout::body(paper, sheet, planned, build.setout);
    paper.page_break();
    plates::write(paper, sheet, planned, build);
    shop::write(paper, sheet, planned, build);
    paper.page_break();
    paper.heading(2, &sheet.word("day-rain"));
    paper.list(&say(&RAIN), true);
    sign(paper, sheet, planned);
}

/// Writes a stencil's panels at 1:1 on pages of the house's paper.
pub fn at_full_size(paper: &mut Manuscript, sheet: &Sheet, stencil: &Stencil, ledger: &Ledger) {
    tiles::write(paper, sheet, stencil, ledger);
}

/// The usual cautions, each an act, in the order in which they are met.
const CAUTIONS: [&str; 17] = [
    "day-care-advice",
    "day-care-leave",
    "day-care-zones",
    "day-care-open",
    "day-care-closed",
    "day-care-traffic",
    "day-care-heat",
    "day-care-old",
    "day-care-chemicals",
    "day-care-grit",
    "day-care-tapes",
    "day-care-blades",
    "day-care-laser",
    "day-care-dry",
    "day-care-slip",
    "day-care-drain",
    "day-care-aid",
];

const BEFORE: [&str; 8] = [
    "day-before-leave",
    "day-before-weather",
    "day-before-surface",
    "day-before-damp",
    "day-before-swept",
    "day-before-bar",
    "day-before-traffic",
    "day-before-told",
];

const RAIN: [&str; 6] = [
    "day-rain-stop",
    "day-rain-cover",
    "day-rain-wash",
    "day-rain-wait",
    "day-rain-mend",
    "day-rain-rope",
];

/// Who says that it is done, and what was really built.
fn sign(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.heading(2, &sheet.word("day-done"));
    let keys = [
        "day-done-checks",
        "day-done-blades",
        "day-done-brushes",
        "day-done-grip",
        "day-done-open",
        "day-done-photo",
        "day-done-stencils",
    ];
    words::ticks(paper, &keys.map(|key| sheet.word(key)));
    paper.fields(&["day-leader", "office-signed", "office-date"].map(|key| sheet.word(key)));
    paper.heading(2, &sheet.word("day-built"));
    paper.lead(&sheet.word("day-built-how"));
    let rows: Vec<Vec<String>> = planned
        .markings()
        .map(|(marking, _)| {
            let mut row = vec![words::marking(sheet, marking, planned.candidate(marking))];
            row.extend(["______", "____________", "____", "______"].map(str::to_owned));
            row
        })
        .collect();
    paper.sentences(
        &[
            Column::prose(sheet.word("page-column-marking"), 1),
            Column::words(sheet.word("day-built-moved")),
            Column::words(sheet.word("day-built-paint")),
            Column::words(sheet.word("day-built-coats")),
            Column::words(sheet.word("day-built-degrees")),
        ],
        &rows,
    );
}
