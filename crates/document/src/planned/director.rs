//! One page for the director: what the class gains, what it costs, what to buy, what we
//! need, how sure we are, whom it leaves out.

use std::collections::{BTreeMap, BTreeSet};

use marking::Colour;
use note::{Fact, Message, msg};
use plan::{Child, Layout};

use super::suits::years;
use super::{Planned, painter, words};
use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// The taught skills in their order.
pub const SKILLS: [&str; 6] = ["jump", "hop", "leap", "gallop", "slide", "skip"];

/// A budget that nothing binds is none.
pub const NO_LIMIT: f64 = 1e8;

/// Writes the page.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.heading(
        1,
        &sheet.say(msg!("page-director-title", name = sheet.name)),
    );
    let Some(layout) = &planned.record.layout else {
        paper.paragraph(&sheet.word("page-no-layout"));
        return;
    };
    let cost = cost(planned);
    let ages: BTreeSet<u32> = planned.children().iter().map(years).collect();
    let ends = [ages.first(), ages.last()].map(|age| age.copied().unwrap_or_default());
    let (sessions, minutes) = planned.sessions;
    paper.paragraph(&sheet.say(Message {
        key: "page-gain",
        facts: vec![
            ("markings", Fact::Count(planned.markings().count() as u64)),
            ("children", Fact::Count(u64::from(planned.heads()))),
            ("low", Fact::Count(u64::from(ends[0]))),
            ("high", Fact::Count(u64::from(ends[1]))),
            ("sessions", Fact::Count(u64::from(sessions))),
            ("minutes", Fact::Number(minutes, 0)),
            ("share", words::percent(layout.value)),
            ("cost", Fact::Text(words::money(sheet, cost, planned.money))),
        ],
    }));
    if layout.outings > 1 {
        paper.paragraph(&sheet.say(msg!(
            "class-turns",
            out = u64::from(layout.out_together),
            outings = u64::from(layout.outings)
        )));
    }
    paper.heading(2, &sheet.word("page-gains"));
    gains(paper, sheet, planned, layout, &ages);
    paper.heading(2, &sheet.word("page-buy"));
    paper.paragraph(&buy(sheet, planned, cost));
    paper.heading(2, &sheet.word("page-need"));
    words::ticks(
        paper,
        &[
            "page-need-leave",
            "page-need-codes",
            "page-need-surface",
            "page-need-days",
            "page-need-money",
        ]
        .map(|key| sheet.word(key)),
    );
    paper.heading(2, &sheet.word("page-sure"));
    let mut sure = sure(sheet, planned, layout);
    sure.push(without(sheet, planned));
    paper.list(&sure, false);
    paper.care(
        &sheet.word("doc-take-care"),
        &["page-care-codes", "page-care-children", "page-care-wet"].map(|key| sheet.word(key)),
    );
}

/// What the markings cost together.
pub fn cost(planned: &Planned) -> f64 {
    planned
        .markings()
        .filter_map(|(marking, _)| planned.candidate(marking))
        .map(|one| one.cost)
        .sum()
}

/// Practice of a skill: planned over wanted, of the children a filter lets by.
fn share(
    layout: &Layout,
    children: &[Child],
    skill: &str,
    of: impl Fn(&Child) -> bool,
) -> Option<f64> {
    let (mut got, mut wanted) = (0.0, 0.0);
    for one in layout.practice.iter().filter(|one| one.skill == skill) {
        let Some(child) = children
            .iter()
            .find(|child| child.id == one.child)
            .filter(|child| of(child))
        else {
            continue;
        };
        got += f64::from(child.count) * (one.first + one.second);
        wanted += f64::from(child.count) * one.target;
    }
    (wanted > 0.0).then(|| got / wanted)
}

/// Minutes a week of an average child among those who should practise a skill.
fn wanted(layout: &Layout, children: &[Child], skill: &str) -> f64 {
    let mut sum = 0.0;
    let mut who = BTreeSet::new();
    for one in layout.practice.iter().filter(|one| one.skill == skill) {
        let count = children
            .iter()
            .find(|child| child.id == one.child)
            .map_or(0.0, |child| f64::from(child.count));
        sum += count * one.target;
        who.insert(one.child.as_str());
    }
    let heads: u32 = children
        .iter()
        .filter(|child| who.contains(child.id.as_str()))
        .map(|child| child.count)
        .sum();
    sum / f64::from(heads.max(1))
}

/// By skill and age: how much of the practice wanted the plan gives.
fn gains(
    paper: &mut Manuscript,
    sheet: &Sheet,
    planned: &Planned,
    layout: &Layout,
    ages: &BTreeSet<u32>,
) {
    let children = planned.children();
    words::small(paper, &sheet.word("page-gains-how"));
    let mut columns = vec![Column::prose(sheet.word("page-column-skill"), 1)];
    columns.push(Column::figures(sheet.word("page-column-wanted")));
    for age in ages {
        let heads: u32 = children
            .iter()
            .filter(|child| years(child) == *age)
            .map(|child| child.count)
            .sum();
        columns.push(Column::figures(sheet.say(msg!(
            "page-column-age",
            age = u64::from(*age),
            count = u64::from(heads)
        ))));
    }
    columns.push(Column::figures(sheet.word("page-column-all")));
    let cell = |share: Option<f64>| {
        share.map_or_else(
            || sheet.word("doc-none"),
            |share| format!("{} %", measure::plain(100.0 * share, 0, sheet)),
        )
    };
    let rows: Vec<Vec<String>> = SKILLS
        .into_iter()
        .filter(|skill| share(layout, children, skill, |_| true).is_some())
        .map(|skill| {
            let mut row = vec![super::suits::gait_words(sheet, skill)];
            row.push(measure::plain(wanted(layout, children, skill), 1, sheet));
            row.extend(
                ages.iter()
                    .map(|age| cell(share(layout, children, skill, |child| years(child) == *age))),
            );
            row.push(cell(share(layout, children, skill, |_| true)));
            row
        })
        .collect();
    paper.table(&columns, &rows, sheet.large);
}

/// Litres by colour and metres of tape, all markings together.
pub fn shopping(planned: &Planned) -> (BTreeMap<Colour, f64>, f64) {
    let mut litres: BTreeMap<Colour, f64> = BTreeMap::new();
    let mut tape = 0.0;
    for (_, figure) in planned.markings() {
        for (colour, one) in layout::cost::litres(figure, planned.surface, planned.ledger) {
            *litres.entry(colour).or_default() += one;
        }
        tape += layout::cost::tape(figure, planned.ledger);
    }
    (litres, tape)
}

fn buy(sheet: &Sheet, planned: &Planned, cost: f64) -> String {
    let (litres, tape) = shopping(planned);
    let paints: Vec<String> = litres
        .iter()
        .map(|(colour, litres)| {
            let name = sheet.word(painter::paint_key(*colour));
            format!(
                "{name}\u{A0}{}\u{A0}L",
                measure::plain(litres.max(0.1), 1, sheet)
            )
        })
        .collect();
    let text = sheet.say(msg!(
        "page-buy-told",
        cost = words::money(sheet, cost, planned.money),
        paints = paints,
        tape = measure::length(tape.ceil(), sheet)
    ));
    match planned.budget.filter(|budget| *budget < NO_LIMIT) {
        Some(budget) => format!(
            "{text} {}",
            sheet.say(msg!(
                "page-buy-left",
                budget = words::money(sheet, budget, planned.money),
                left = words::money(sheet, (budget - cost).max(0.0), planned.money)
            ))
        ),
        None => text,
    }
}

fn sure(sheet: &Sheet, planned: &Planned, layout: &Layout) -> Vec<String> {
    let percent = |share: f64, places: u8| Fact::Number(100.0 * share, places);
    let mut all = vec![sheet.say(msg!(
        "page-bound",
        value = percent(layout.value, 0),
        bound = percent(layout.bound, 0),
        gap = percent(layout.gap, 1)
    ))];
    let binding: Vec<String> = layout
        .binds
        .iter()
        .filter(|binds| binds.change > 5e-4)
        .map(|binds| {
            let more = match binds.of.as_str() {
                "money" => words::money(sheet, binds.more, planned.money),
                "ground" => measure::area(binds.more, sheet),
                _ => measure::plain(binds.more, 0, sheet),
            };
            sheet.say(msg!(
                "page-binds",
                of = binds.of.as_str(),
                more = more,
                change = percent(binds.change, 1)
            ))
        })
        .collect();
    if binding.is_empty() {
        all.push(sheet.word("page-binds-nothing"));
    } else {
        all.push(sheet.say(msg!("page-binds-these", what = binding)));
    }
    all.push(sheet.word("page-sure-children"));
    let checks = planned.record.audit.as_deref().unwrap_or_default();
    let broken = checks
        .iter()
        .filter(|check| check.hard && !check.pass)
        .count();
    let unmet = checks
        .iter()
        .filter(|check| !check.hard && !check.pass)
        .count();
    all.push(sheet.say(msg!("page-sure-rules", broken = broken, unmet = unmet)));
    all
}

/// Children for whom no marking of a skill they should practise is well pitched with at
/// least the ledger's chance, by skill.
pub fn without_station(planned: &Planned) -> Vec<(&'static str, Vec<String>)> {
    let least = footfall::Model::of(planned.ledger).left_out;
    let footfall = planned.record.footfall.as_deref().unwrap_or_default();
    let targets = planned
        .record
        .layout
        .as_ref()
        .map_or(&[][..], |layout| layout.targets.as_slice());
    SKILLS
        .into_iter()
        .filter_map(|skill| {
            let who: Vec<String> = planned
                .children()
                .iter()
                .filter(|child| {
                    targets
                        .iter()
                        .any(|one| one.child == child.id && one.skill == skill && one.minutes > 0.0)
                })
                .filter(|child| {
                    let serves = |gift: &plan::Good| gift.skill == skill && gift.contacts > 0.0;
                    !footfall.iter().any(|row| {
                        row.child == child.id
                            && row.well >= least
                            && (row.skill == skill || row.good_contacts.iter().any(serves))
                    })
                })
                .map(|child| child.id.clone())
                .collect();
            (!who.is_empty()).then_some((skill, who))
        })
        .collect()
}

fn without(sheet: &Sheet, planned: &Planned) -> String {
    let all = without_station(planned);
    if all.is_empty() {
        return sheet.word("page-without-nobody");
    }
    let heads = planned.children().len();
    let lines: Vec<String> = all
        .into_iter()
        .map(|(skill, who)| {
            let skill = super::suits::gait_words(sheet, skill);
            if who.len() == heads {
                sheet.say(msg!("page-without-all", skill = skill))
            } else {
                sheet.say(msg!("page-without-some", skill = skill, who = who))
            }
        })
        .collect();
    sheet.say(msg!("page-without", lines = lines.join("; ")))
}
