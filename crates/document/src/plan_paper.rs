//! The plan on paper: a page for the director, the plan sheet, a page for each marking, and
//! what was left out and why.

use std::collections::BTreeMap;

use ledger::Ledger;
use marking::{Colour, Figure};
use note::{Fact, msg};
use plan::{Layout, Plan as Record};

use crate::drawing::markings::Marked;
use crate::drawing::yard::Plan;
use crate::marking_page;
use crate::plan_sheet::{self, Drawn};
use crate::sheet::Sheet;
use crate::typeset::{Column, Fault, Manuscript};

/// All that the papers of a plan are made from.
pub struct Told<'a> {
    /// Name, language, units, paper.
    pub sheet: &'a Sheet<'a>,
    /// The yard and its ground.
    pub plan: &'a Plan<'a>,
    /// The plan's record.
    pub record: &'a Record,
    /// The markings' figures in the yard, in the record's order.
    pub placed: &'a [Figure],
    /// The same in their own frames.
    pub own: &'a [Figure],
    /// Litres of each colour, all markings together.
    pub litres: &'a BTreeMap<Colour, f64>,
    /// Metres of masking tape.
    pub tape: f64,
    /// An ISO 4217 code.
    pub currency: &'a str,
    /// Sessions a week and minutes of each.
    pub sessions: (u32, f64),
    /// The figures and their sources.
    pub ledger: &'a Ledger,
}

impl Told<'_> {
    fn marked(&self) -> Vec<Marked<'_>> {
        let markings = self.record.markings.iter().flatten();
        markings
            .zip(self.placed)
            .enumerate()
            .map(|(at, (marking, figure))| Marked {
                number: at + 1,
                name: &marking.name,
                figure,
            })
            .collect()
    }
}

/// The plan sheet alone.
pub fn plan_drawing(told: &Told) -> Drawn {
    plan_sheet::draw_markings(told.sheet, told.plan, &told.marked(), told.ledger)
}

/// One PDF: the director's page, the plan sheet, the markings, what was left out.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn plan_papers(told: &Told) -> Result<Vec<u8>, Fault> {
    let sheet = told.sheet;
    let title = sheet.say(msg!("paper-title", name = sheet.name));
    let foot = sheet.say(msg!("paper-foot", name = sheet.name));
    let mut paper = Manuscript::new(sheet, "plan", &title, &foot);
    if let Some(layout) = &told.record.layout {
        director(&mut paper, told, layout);
        let drawn = plan_drawing(told);
        paper.plate(&drawn.scene, &drawn.told.says);
        for (number, own) in told.own.iter().enumerate() {
            marking_page::write(&mut paper, told, number, own);
        }
        paper.page_break();
        left_out(&mut paper, sheet, layout);
        audit(&mut paper, told);
    }
    paper.press()
}

fn percent(share: f64) -> Fact {
    Fact::Number(100.0 * share, 0)
}

fn director(paper: &mut Manuscript, told: &Told, layout: &Layout) {
    let sheet = told.sheet;
    let (sessions, minutes) = told.sessions;
    let children: u32 = told
        .record
        .children
        .iter()
        .flatten()
        .map(|child| child.count)
        .sum();
    let cost: f64 = chosen(layout).map(|candidate| candidate.cost).sum();
    paper.heading(1, &sheet.say(msg!("paper-title", name = sheet.name)));
    paper.paragraph(&sheet.say(msg!(
        "paper-gain",
        markings = layout.chosen.len(),
        children = u64::from(children),
        share = percent(layout.value),
    )));
    paper.paragraph(&sheet.say(msg!(
        "paper-week",
        sessions = u64::from(sessions),
        minutes = Fact::Number(minutes, 0),
        weeks = u64::from(layout.weeks),
        together = u64::from(layout.out_together),
        outings = u64::from(layout.outings),
    )));
    paper.heading(2, &sheet.word("paper-skills"));
    paper.table(
        &[
            Column::words(sheet.word("paper-column-skill")),
            Column::figures(sheet.word("paper-column-wanted")),
            Column::figures(sheet.word("paper-column-planned")),
            Column::figures(sheet.word("paper-column-share")),
        ],
        &skills(told, layout, children),
        false,
    );
    paper.heading(2, &sheet.word("paper-buy"));
    paper.lead(&sheet.say(msg!(
        "paper-cost",
        cost = Fact::Number(cost, 0),
        currency = told.currency,
        budget = Fact::Number(layout.budget, 0),
        tape = Fact::Number(told.tape, 0),
    )));
    let rows: Vec<Vec<String>> = told
        .litres
        .iter()
        .map(|(colour, litres)| vec![colour_word(sheet, *colour), decimal(sheet, *litres, 1)])
        .collect();
    paper.table(
        &[
            Column::words(sheet.word("paper-column-colour")),
            Column::figures(sheet.word("paper-column-litres")),
        ],
        &rows,
        false,
    );
    paper.heading(2, &sheet.word("paper-sure"));
    paper.paragraph(&sheet.say(msg!(
        "paper-bound",
        bound = percent(layout.bound),
        gap = Fact::Number(100.0 * layout.gap, 1),
    )));
    paper.paragraph(&sheet.word("paper-prior"));
    let more: Vec<String> = layout
        .binds
        .iter()
        .filter(|binds| binds.change > 0.000_5)
        .map(|binds| {
            sheet.say(msg!(
                "paper-binds",
                of = binds.of.as_str(),
                more = Fact::Number(binds.more, 0),
                change = Fact::Number(100.0 * binds.change, 1),
            ))
        })
        .collect();
    paper.list(&more, false);
    let without = without_station(told, layout);
    if !without.is_empty() {
        paper.paragraph(&sheet.say(msg!("paper-without", children = without)));
    }
    paper.heading(2, &sheet.word("paper-need"));
    paper.list(
        &["leave", "dates", "money", "people", "closed"].map(|what| {
            sheet.word(match what {
                "leave" => "paper-need-leave",
                "dates" => "paper-need-dates",
                "money" => "paper-need-money",
                "people" => "paper-need-people",
                _ => "paper-need-closed",
            })
        }),
        true,
    );
    paper.care(
        &sheet.word("doc-take-care"),
        &[
            "paper-care-advice",
            "paper-care-zones",
            "paper-care-routes",
            "paper-care-adult",
        ]
        .map(|key| sheet.word(key)),
    );
}

fn chosen(layout: &Layout) -> impl Iterator<Item = &plan::Candidate> {
    layout
        .candidates
        .iter()
        .filter(|candidate| layout.chosen.contains(&candidate.name))
}

/// Minutes a week of an average child by skill: wanted, planned, and the share.
fn skills(told: &Told, layout: &Layout, children: u32) -> Vec<Vec<String>> {
    let sheet = told.sheet;
    let count: BTreeMap<&str, f64> = told
        .record
        .children
        .iter()
        .flatten()
        .map(|child| (child.id.as_str(), f64::from(child.count)))
        .collect();
    let mut sums: BTreeMap<&str, (f64, f64)> = BTreeMap::new();
    for practice in &layout.practice {
        let many = count.get(practice.child.as_str()).copied().unwrap_or(1.0);
        let sum = sums.entry(practice.skill.as_str()).or_default();
        sum.0 += many * practice.target;
        sum.1 += many * (practice.first + practice.second);
    }
    let each = f64::from(children.max(1));
    ["jump", "hop", "leap", "gallop", "slide", "skip"]
        .into_iter()
        .filter_map(|skill| Some((skill, *sums.get(skill)?)))
        .map(|(skill, (wanted, planned))| {
            vec![
                skill_word(sheet, skill),
                decimal(sheet, wanted / each, 1),
                decimal(sheet, planned / each, 1),
                format!(
                    "{:.0} %",
                    if wanted > 0.0 {
                        100.0 * planned / wanted
                    } else {
                        0.0
                    }
                ),
            ]
        })
        .collect()
}

/// Children to whom no practice falls.
fn without_station(told: &Told, layout: &Layout) -> Vec<String> {
    let children = told.record.children.iter().flatten();
    children
        .filter(|child| {
            !layout
                .practice
                .iter()
                .any(|practice| practice.child == child.id && practice.first > 1e-6)
        })
        .map(|child| child.id.clone())
        .collect()
}

fn left_out(paper: &mut Manuscript, sheet: &Sheet, layout: &Layout) {
    paper.heading(2, &sheet.word("paper-left-out"));
    let rows: Vec<Vec<String>> = layout
        .left_out
        .iter()
        .map(|left| {
            let cost = layout
                .candidates
                .iter()
                .find(|one| one.name == left.candidate);
            vec![
                left.candidate.clone(),
                cost.map_or_else(String::new, |one| decimal(sheet, one.cost, 0)),
                sheet.say(msg!(
                    "paper-why",
                    why = left.why.as_str(),
                    by = left.by.clone().unwrap_or_default(),
                )),
            ]
        })
        .collect();
    if rows.is_empty() {
        paper.paragraph(&sheet.word("paper-none"));
        return;
    }
    paper.table(
        &[
            Column::words(sheet.word("paper-column-marking")),
            Column::figures(sheet.word("paper-column-cost")),
            Column::prose(sheet.word("paper-column-why"), 1),
        ],
        &rows,
        false,
    );
}

fn audit(paper: &mut Manuscript, told: &Told) {
    let sheet = told.sheet;
    let checks: Vec<&plan::Check> = told.record.audit.iter().flatten().collect();
    let hard = checks.iter().filter(|check| check.hard).count();
    let broken = checks
        .iter()
        .filter(|check| check.hard && !check.pass)
        .count();
    let unmet: Vec<Vec<String>> = checks
        .iter()
        .filter(|check| !check.hard && !check.pass)
        .map(|check| {
            vec![
                check.marking.clone().unwrap_or_default(),
                check.rule.replace('-', " "),
                decimal(sheet, check.wanted, 2),
                decimal(sheet, check.actual, 2),
                unit_word(&check.unit).to_owned(),
            ]
        })
        .collect();
    paper.heading(2, &sheet.word("paper-audit"));
    paper.paragraph(&sheet.say(msg!(
        "paper-audit-told",
        hard = hard,
        broken = broken,
        unmet = unmet.len(),
    )));
    if !unmet.is_empty() {
        paper.table(
            &[
                Column::words(sheet.word("paper-column-marking")),
                Column::words(sheet.word("paper-column-rule")).english(),
                Column::figures(sheet.word("paper-column-want")),
                Column::figures(sheet.word("paper-column-is")),
                Column::words(sheet.word("paper-column-unit")),
            ],
            &unmet,
            false,
        );
    }
}

fn unit_word(unit: &str) -> &str {
    match unit {
        "m2" => "m²",
        "1" => "",
        other => other,
    }
}

/// A number in the manner of the sheet's language.
pub(crate) fn decimal(sheet: &Sheet, value: f64, places: usize) -> String {
    words::number::decimal(value, places, sheet.language)
}

/// The word of a skill.
pub(crate) fn skill_word(sheet: &Sheet, skill: &str) -> String {
    sheet.say(msg!("paper-skill", skill = skill))
}

/// The word of a colour: its name is its own.
pub(crate) fn colour_word(sheet: &Sheet, colour: Colour) -> String {
    sheet.say(msg!("paper-colour", colour = colour.word()))
}
