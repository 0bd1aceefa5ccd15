//! The papers of a plan: a page for the director, the plan sheet, a page for each marking,
//! what was left out and why, and the pages to try it with chalk first.
//!
//! In at the door: the open record and the figures it speaks of ([`Planned`]). Out: a
//! drawing or PDF files. Nothing is reckoned here but counts of children
//! (`suits`) and sums over the record.

pub mod day;
pub mod director;
pub mod footprints;
mod learned;
pub mod marking_page;
mod office;
pub mod painter;
pub mod reckoning;
pub mod setout;
mod suits;
pub mod taught;
pub mod trial;
mod words;

pub use words::rule_key;
pub mod yard_plan;

use ledger::Ledger;
use marking::{Figure, Ground};
use note::msg;
use plan::{Candidate, Child, Marking, Plan as Record};

use crate::drawing::yard::Plan;
use crate::plan_sheet::Drawn;
use crate::sheet::Sheet;
use crate::typeset::{Fault, Manuscript};

/// A plan as its papers need it.
#[derive(Clone, Copy)]
pub struct Planned<'a> {
    /// The yard, its ground and its survey.
    pub yard: Plan<'a>,
    /// The open record.
    pub record: &'a Record,
    /// The figures of the record's markings, each in its own frame, in that order.
    pub figures: &'a [Figure],
    /// What the yard is paved with.
    pub surface: Ground,
    /// The currency of the costs, an ISO 4217 code.
    pub money: &'a str,
    /// The most that may be spent; `None` where nobody says.
    pub budget: Option<f64>,
    /// Sessions a week and minutes of each.
    pub sessions: (u32, f64),
    /// Value and bound at some budgets, the least first; may be empty.
    pub curve: &'a [AtBudget],
    /// Whether the plan sheet is printed in colour.
    pub in_colour: bool,
    /// Figures and sources.
    pub ledger: &'a Ledger,
}

/// What a budget would buy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtBudget {
    /// In the currency.
    pub budget: f64,
    /// Share of the practice wanted, 0 to 1.
    pub value: f64,
    /// No plan of this budget can do better.
    pub bound: f64,
}

impl<'a> Planned<'a> {
    /// The markings beside their figures.
    pub fn markings(&self) -> impl Iterator<Item = (&'a Marking, &'a Figure)> {
        self.record.markings.iter().flatten().zip(self.figures)
    }

    /// The class.
    pub fn children(&self) -> &'a [Child] {
        self.record.children.as_deref().unwrap_or_default()
    }

    /// How many children there are.
    pub fn heads(&self) -> u32 {
        self.children().iter().map(|child| child.count).sum()
    }

    /// What the record says of the candidate that a marking came from.
    pub fn candidate(&self, marking: &Marking) -> Option<&'a Candidate> {
        let name = marking.candidate.as_deref().unwrap_or(&marking.name);
        self.record
            .layout
            .as_ref()?
            .candidates
            .iter()
            .find(|one| one.name == name)
    }
}

/// The plan sheet.
pub fn plan_drawing(sheet: &Sheet, planned: &Planned) -> Drawn {
    yard_plan::draw(sheet, planned)
}

/// One PDF: the director's page, the plan sheet as [`plan_drawing`] drew it, a page a
/// marking, what was left out, the audit.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn plan_papers(sheet: &Sheet, planned: &Planned, drawn: &Drawn) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, "plan", "page-kind-papers");
    director::write(&mut paper, sheet, planned);
    paper.plate(&drawn.scene, &drawn.told.says);
    for number in 0..planned.figures.len() {
        marking_page::write(&mut paper, sheet, planned, number);
    }
    learned::write(&mut paper, sheet, planned);
    paper.page_break();
    reckoning::write(&mut paper, sheet, planned);
    paper.press()
}

/// The chalk trial and the baseline sheet, to be written in.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn trial_papers(sheet: &Sheet, planned: &Planned) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, "trial", "page-kind-trial");
    trial::write(&mut paper, sheet, planned);
    paper.press()
}

/// The set-out sheets: tapes, checks, chalk lines, and the plan sheet with both on it.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn setout_papers(
    sheet: &Sheet,
    planned: &Planned,
    drawn: &Drawn,
    setout: &::setout::SetOut,
) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, "set-out", "page-kind-setout");
    setout::write(&mut paper, sheet, planned, drawn, setout);
    paper.press()
}

/// The paper for the painting day, the plan sheet as [`plan_drawing`] drew it.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn day_papers(
    sheet: &Sheet,
    planned: &Planned,
    drawn: &Drawn,
    build: &day::Build,
) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, "day", "page-kind-day");
    day::write(&mut paper, sheet, planned, drawn, build);
    paper.press()
}

/// The game cards, two a page.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn card_papers(
    sheet: &Sheet,
    planned: &Planned,
    teaching: &taught::Teaching,
) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, "cards", "page-kind-cards");
    taught::cards(&mut paper, sheet, planned, teaching);
    paper.press()
}

/// The weeks on the wall, the lights of the day, the pocket list.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn week_papers(
    sheet: &Sheet,
    planned: &Planned,
    drawn: &Drawn,
    teaching: &taught::Teaching,
) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, "weeks", "page-kind-weeks");
    taught::weeks(&mut paper, sheet, planned, drawn, teaching);
    paper.press()
}

/// A stencil at 1:1, tiled for a printer.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn tiled_papers(
    sheet: &Sheet,
    stencil: &::stencil::Stencil,
    ledger: &Ledger,
) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, &format!("tiles {}", stencil.id), "page-kind-tiles");
    day::at_full_size(&mut paper, sheet, stencil, ledger);
    paper.press()
}

/// The papers for the office: leave, risks, a letter home in both languages, upkeep.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn office_papers(
    sheet: &Sheet,
    planned: &Planned,
    upkeep: Option<&::paint::Upkeep>,
) -> Result<Vec<u8>, Fault> {
    let mut paper = manuscript(sheet, "office", "page-kind-office");
    office::write(&mut paper, sheet, planned, upkeep);
    paper.press()
}

/// Parts that only these papers have.
const PARTS: &str = include_str!("parts.typ");

fn manuscript(sheet: &Sheet, kind: &str, title: &'static str) -> Manuscript {
    let title = sheet.say(msg!(
        "doc-told-title",
        name = sheet.name,
        kind = sheet.word(title)
    ));
    let mut paper = Manuscript::new(sheet, kind, &title, &sheet.word("doc-page-of"));
    paper.code(PARTS);
    paper
}
