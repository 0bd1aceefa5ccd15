//! Papers for the office: the owner's leave, a sheet of risks and what is won by them, a letter
//! to families, the log of upkeep. What the plan knows is filled in; the rest is lines to write on.

use ::words::Language;
use ground::yard::FixtureKind;
use note::{Fact, msg};
use plan::Check;

use super::{Planned, painter, words};
use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript, string};

/// Writes all of them, each on pages of its own.
pub fn write(
    paper: &mut Manuscript,
    sheet: &Sheet,
    planned: &Planned,
    upkeep: Option<&::paint::Upkeep>,
) {
    leave(paper, sheet, planned);
    paper.page_break();
    risks(paper, sheet, planned);
    for language in first(sheet.language) {
        paper.page_break();
        let theirs = Sheet { language, ..*sheet };
        paper.code(&format!("#[#set text(lang: {})", string(language.tag())));
        letter(paper, &theirs, planned);
        paper.code("]");
    }
    paper.page_break();
    log(paper, sheet, planned, upkeep);
}

/// The two languages, the project's first: a letter goes home in both.
fn first(language: Language) -> [Language; 2] {
    match language {
        Language::En => [Language::En, Language::Es],
        Language::Es => [Language::Es, Language::En],
    }
}

fn names(sheet: &Sheet, keys: &[&'static str]) -> Vec<String> {
    keys.iter().map(|key| sheet.word(key)).collect()
}

/// The owner's leave, to be signed.
fn leave(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.heading(1, &sheet.say(msg!("office-leave-title", name = sheet.name)));
    paper.paragraph(&sheet.say(msg!(
        "office-leave-asks",
        name = sheet.name,
        markings = planned.markings().count()
    )));
    let rows: Vec<Vec<String>> = planned
        .markings()
        .map(|(marking, figure)| {
            let area: f64 = figure.paint_area().iter().map(|(_, area)| area).sum();
            let colours: Vec<String> = figure
                .paint_area()
                .iter()
                .map(|(colour, _)| sheet.word(painter::paint_key(*colour)))
                .collect();
            vec![
                words::marking(sheet, marking, planned.candidate(marking)),
                colours.join(", "),
                measure::area_figure(area, sheet),
            ]
        })
        .collect();
    paper.table(
        &[
            Column::prose(sheet.word("page-column-marking"), 1),
            Column::prose(sheet.word("office-column-colours"), 1),
            Column::figures(sheet.say(msg!(
                "office-column-painted",
                unit = measure::unit(sheet.units)
            ))),
        ],
        &rows,
        false,
    );
    paper.heading(2, &sheet.word("office-leave-how"));
    paper.list(
        &names(
            sheet,
            &[
                "office-leave-paint",
                "office-leave-open",
                "office-leave-not-on",
                "office-leave-keep",
                "office-leave-remove",
            ],
        ),
        false,
    );
    paper.heading(2, &sheet.word("office-leave-needs"));
    words::ticks(
        paper,
        &names(
            sheet,
            &[
                "office-tick-owner",
                "office-tick-others",
                "office-tick-surface",
                "office-tick-routes",
                "office-tick-insurer",
                "office-tick-licence",
            ],
        ),
    );
    paper.fields(&names(sheet, &["office-product", "office-repairs"]));
    paper.fields(&names(sheet, &["office-from", "office-until"]));
    paper.fields(&names(
        sheet,
        &["office-owner", "office-signed", "office-date"],
    ));
}

/// One thing that can go wrong.
struct Hazard {
    what: &'static str,
    /// What the plan says of it.
    here: String,
    control: &'static str,
}

/// What is won, what can go wrong, what is done about it.
fn risks(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.heading(1, &sheet.say(msg!("office-risk-title", name = sheet.name)));
    if let Some(layout) = &planned.record.layout {
        paper.paragraph(&sheet.say(msg!(
            "office-risk-benefit",
            children = u64::from(planned.heads()),
            markings = planned.markings().count(),
            share = Fact::Number(100.0 * layout.value, 0)
        )));
    }
    paper.paragraph(&sheet.word("office-risk-how"));
    paper.paragraph(&sheet.word("office-risk-scale"));
    paper.care(
        &sheet.word("doc-take-care"),
        &names(sheet, &["office-care-law", "office-care-ask"]),
    );
    let rows: Vec<Vec<String>> = hazards(sheet, planned)
        .into_iter()
        .map(|hazard| {
            vec![
                sheet.word(hazard.what),
                hazard.here,
                sheet.word(hazard.control),
                "__ × __".to_owned(),
                "__ × __".to_owned(),
            ]
        })
        .collect();
    paper.sentences(&columns(sheet), &rows);
    paper.heading(2, &sheet.word("office-risk-more"));
    paper.ruled(&columns(sheet), MORE);
    paper.fields(&names(
        sheet,
        &["office-filled-by", "office-date", "office-review"],
    ));
}

/// Lines for what the plan does not know.
const MORE: usize = 4;

fn columns(sheet: &Sheet) -> [Column; 5] {
    [
        Column::prose(sheet.word("office-column-hazard"), 4),
        Column::prose(sheet.word("office-column-here"), 5),
        Column::prose(sheet.word("office-column-control"), 6),
        Column::prose(sheet.word("office-column-before"), 2),
        Column::prose(sheet.word("office-column-after"), 2),
    ]
}

fn hazards(sheet: &Sheet, planned: &Planned) -> Vec<Hazard> {
    let checks = planned.record.audit.as_deref().unwrap_or_default();
    let lanes: Vec<String> = planned
        .markings()
        .filter(|(_, figure)| !figure.lanes.is_empty())
        .map(|(marking, _)| words::marking(sheet, marking, planned.candidate(marking)))
        .collect();
    let yard = planned.yard.yard;
    let low = |kind: FixtureKind| matches!(kind, FixtureKind::Drain | FixtureKind::Cover);
    let (drains, equipment): (Vec<_>, Vec<_>) =
        yard.fixtures.iter().partition(|fixture| low(fixture.is));
    let named = |fixtures: &[&ground::yard::Fixture]| -> Vec<String> {
        fixtures
            .iter()
            .map(|fixture| fixture.name.clone())
            .collect()
    };
    let rules = |names: &[&str]| told(sheet, checks, names);
    let lines = |parts: Vec<String>| parts.join(" ");
    vec![
        Hazard {
            what: "office-hazard-fast",
            here: lines(vec![
                sheet.say(msg!(
                    "office-here-lanes",
                    count = lanes.len(),
                    lanes = lanes
                )),
                rules(&["run-out-wanted", "lanes-crossed", "lane-from-edges"]),
            ]),
            control: "office-control-fast",
        },
        Hazard {
            what: "office-hazard-equipment",
            here: lines(vec![
                sheet.say(msg!(
                    "office-here-equipment",
                    count = equipment.len(),
                    fixtures = named(&equipment)
                )),
                rules(&["envelope-on-ground"]),
            ]),
            control: "office-control-equipment",
        },
        Hazard {
            what: "office-hazard-trip",
            here: lines(vec![
                sheet.say(msg!(
                    "office-here-drains",
                    count = drains.len(),
                    fixtures = named(&drains)
                )),
                rules(&["landing-from-edges", "landing-from-drains"]),
            ]),
            control: "office-control-trip",
        },
        Hazard {
            what: "office-hazard-sight",
            here: rules(&["in-sight"]),
            control: "office-control-sight",
        },
        Hazard {
            what: "office-hazard-ways",
            here: lines(vec![
                sheet.say(msg!(
                    "office-here-ways",
                    doors = yard.doors.len(),
                    gates = yard.gates.len(),
                    routes = yard.routes.len()
                )),
                rules(&["waiting-off-ways-out"]),
            ]),
            control: "office-control-ways",
        },
        Hazard {
            what: "office-hazard-wet",
            here: sheet.word("office-here-look"),
            control: "office-control-wet",
        },
        Hazard {
            what: "office-hazard-heat",
            here: sheet.word("office-here-look"),
            control: "office-control-heat",
        },
        Hazard {
            what: "office-hazard-crowd",
            here: planned
                .record
                .layout
                .as_ref()
                .map_or_else(String::new, |layout| {
                    sheet.say(msg!(
                        "office-here-crowd",
                        out = u64::from(layout.out_together)
                    ))
                }),
            control: "office-control-crowd",
        },
        Hazard {
            what: "office-hazard-cars",
            here: sheet.word("office-here-look"),
            control: "office-control-cars",
        },
        Hazard {
            what: "office-hazard-work",
            here: sheet.word("office-here-work"),
            control: "office-control-work",
        },
    ]
}

/// Whether the layout keeps some rules.
fn told(sheet: &Sheet, checks: &[Check], rules: &[&str]) -> String {
    let of: Vec<&Check> = checks
        .iter()
        .filter(|check| rules.contains(&check.rule.as_str()))
        .collect();
    let off = of.iter().filter(|check| !check.pass).count();
    sheet.say(msg!("office-here-rules", checks = of.len(), off = off))
}

/// A letter home, with leave item by item.
fn letter(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    let (sessions, minutes) = planned.sessions;
    paper.heading(
        1,
        &sheet.say(msg!("office-letter-title", name = sheet.name)),
    );
    for text in [
        sheet.word("office-letter-what"),
        sheet.word("office-letter-why"),
        sheet.say(msg!(
            "office-letter-when",
            sessions = u64::from(sessions),
            minutes = Fact::Number(minutes, 0)
        )),
        sheet.word("office-letter-bring"),
        sheet.word("office-letter-watch"),
    ] {
        paper.paragraph(&text);
    }
    paper.heading(2, &sheet.word("office-letter-leave"));
    paper.paragraph(&sheet.word("office-letter-leave-how"));
    words::ticks(
        paper,
        &names(
            sheet,
            &[
                "office-consent-checks",
                "office-consent-monitor",
                "office-consent-photo-learning",
                "office-consent-photo-print",
                "office-consent-keep",
            ],
        ),
    );
    paper.paragraph(&sheet.word("office-letter-stop"));
    paper.fields(&names(
        sheet,
        &["office-code", "office-signed", "office-date"],
    ));
    paper.fields(&names(sheet, &["office-contact", "office-telephone"]));
}

/// Rows of the log that wait for an entry.
const ENTRIES: usize = 10;

/// Who looks at the paint when, and what was done.
fn log(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, upkeep: Option<&::paint::Upkeep>) {
    paper.heading(1, &sheet.say(msg!("office-log-title", name = sheet.name)));
    paper.paragraph(&sheet.word("office-log-when"));
    paper.list(
        &names(
            sheet,
            &[
                "office-log-month",
                "office-log-half",
                "office-log-winter",
                "office-log-close",
                "office-log-refresh",
            ],
        ),
        false,
    );
    if let Some(upkeep) = upkeep {
        paper.paragraph(&sheet.say(msg!(
            "office-log-years",
            months = Fact::Number(upkeep.every, 0),
            known = if upkeep.annual.is_some() { "yes" } else { "no" },
            cost = upkeep.annual.map_or_else(String::new, |cost| {
                words::money(sheet, cost, planned.money)
            }),
            years = u64::from(upkeep.years),
        )));
    }
    paper.heading(2, &sheet.word("office-log-look"));
    paper.lead(&sheet.word("office-log-score"));
    let blank = || "____".to_owned();
    let rows: Vec<Vec<String>> = planned
        .markings()
        .map(|(marking, _)| {
            let mut row = vec![words::marking(sheet, marking, planned.candidate(marking))];
            row.extend(std::iter::repeat_with(blank).take(5));
            row.push("_________".to_owned());
            row
        })
        .collect();
    paper.table(
        &[
            Column::prose(sheet.word("page-column-marking"), 1),
            Column::words(sheet.word("office-column-seen")),
            Column::words(sheet.word("office-column-edges")),
            Column::words(sheet.word("office-column-lifts")),
            Column::words(sheet.word("office-column-grip")),
            Column::words(sheet.word("office-column-cracks")),
            Column::words(sheet.word("office-column-do")),
        ],
        &rows,
        false,
    );
    paper.heading(2, &sheet.word("office-log-done"));
    paper.ruled(
        &[
            Column::prose(sheet.word("office-date"), 2),
            Column::prose(sheet.word("page-column-marking"), 3),
            Column::prose(sheet.word("office-column-done"), 6),
            Column::prose(sheet.word("office-column-who"), 2),
        ],
        ENTRIES,
    );
}
