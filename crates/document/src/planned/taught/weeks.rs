//! The weeks on the wall: who plays where when, what each child gets of it, what to do when
//! something falls out.

use children::Means;
use footfall::Pitch;
use games::Form;
use note::{Fact, msg};
use plan::Teach;

use super::Teaching;
use crate::measure;
use crate::plan_sheet::Drawn;
use crate::planned::{Planned, suits, words};
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Writes the pages.
pub fn write(
    paper: &mut Manuscript,
    sheet: &Sheet,
    planned: &Planned,
    drawn: &Drawn,
    teaching: &Teaching,
) {
    let teach = teaching.teach;
    paper.heading(1, &sheet.say(msg!("weeks-title", name = sheet.name)));
    paper.paragraph(&sheet.say(msg!(
        "weeks-told",
        weeks = u64::from(teach.weeks),
        slots = u64::from(teach.slots),
        minutes = Fact::Number(teach.slot_minutes, 0),
        value = Fact::Number(100.0 * teach.value, 0),
        gap = Fact::Number(100.0 * teach.gap, 1),
        starts = teaching.starts,
        known = if teaching.starts.is_empty() {
            "no"
        } else {
            "yes"
        },
    )));
    let keys = [
        "weeks-how-warm",
        "weeks-how-show",
        "weeks-how-free",
        "weeks-how-lost",
        "weeks-how-broken",
        "weeks-how-short",
    ];
    paper.list(&keys.map(|key| sheet.word(key)), false);
    paper.care(
        &sheet.word("doc-take-care"),
        &["weeks-care-ground", "weeks-care-sight", "weeks-care-heat"].map(|key| sheet.word(key)),
    );
    waiting(paper, sheet, planned, teach);
    paper.plate(&drawn.scene, &drawn.told.says);
    for week in 1..=teach.weeks {
        paper.page_break();
        this_week(paper, sheet, planned, teaching, week);
    }
    paper.page_break();
    forms(paper, sheet, planned, teach);
    gets(paper, sheet, teach);
}

/// Which child plays which form of the games at a station, from what its feet will do there.
fn forms(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, teach: &Teach) {
    let mut played: Vec<(&str, &str)> = Vec::new();
    let groups = teach
        .sessions
        .iter()
        .flat_map(|one| one.slots.iter().flatten());
    for group in groups {
        let on = (group.marking.as_str(), group.gait.as_str());
        if !played.contains(&on) {
            played.push(on);
        }
    }
    let mut rows = Vec::new();
    for (marking, gait) in played {
        let who = |wanted: Form| -> String {
            let of = planned.children().iter().filter(|child| {
                let feet = planned.record.footfall.iter().flatten().filter(|row| {
                    row.marking == marking && row.gait == gait && row.child == child.id
                });
                let shares = feet.fold(None, |best: Option<Pitch>, row| {
                    // the better of the two feet leads
                    let this = Pitch {
                        well: row.well,
                        easy: row.easy,
                        hard: row.hard,
                    };
                    match best {
                        Some(best) if best.well >= this.well => Some(best),
                        _ => Some(this),
                    }
                });
                let none = Pitch {
                    well: 0.0,
                    easy: 0.0,
                    hard: 1.0,
                };
                games::form_for(means(&child.means), shares.unwrap_or(none)) == wanted
            });
            let codes: Vec<&str> = of.map(|child| child.id.as_str()).collect();
            if codes.is_empty() {
                sheet.word("doc-none")
            } else {
                codes.join(", ")
            }
        };
        rows.push(vec![
            marking_name(sheet, planned, marking),
            suits::gait_words(sheet, gait),
            who(Form::Easier),
            who(Form::Harder),
            who(Form::Wheels),
        ]);
    }
    if rows.is_empty() {
        return;
    }
    rows.sort();
    paper.heading(2, &sheet.word("weeks-forms"));
    paper.lead(&sheet.word("weeks-forms-how"));
    paper.sentences(
        &[
            Column::prose(sheet.word("page-column-marking"), 3),
            Column::prose(sheet.word("page-column-skill"), 2),
            Column::prose(sheet.word("card-easier"), 4),
            Column::prose(sheet.word("card-harder"), 3),
            Column::prose(sheet.word("weeks-column-wheels"), 2),
        ],
        &rows,
    );
}

/// The means of a word of the record.
fn means(word: &str) -> Means {
    match word {
        "walker" => Means::Walker,
        "wheels" => Means::Wheels,
        "held" => Means::Held,
        _ => Means::Feet,
    }
}

fn marking_name(sheet: &Sheet, planned: &Planned, name: &str) -> String {
    planned
        .markings()
        .find(|(marking, _)| marking.name == name)
        .map_or_else(
            || name.to_owned(),
            |(marking, _)| words::marking(sheet, marking, planned.candidate(marking)),
        )
}

/// One week: by session and slot the groups.
fn this_week(
    paper: &mut Manuscript,
    sheet: &Sheet,
    planned: &Planned,
    teaching: &Teaching,
    week: u32,
) {
    let teach = teaching.teach;
    paper.heading(2, &sheet.say(msg!("weeks-week", week = u64::from(week))));
    let title = |name: &str| {
        let game = teaching.games.iter().find(|game| game.name == name);
        game.and_then(|game| game.text(sheet.language.tag()))
            .map_or_else(|| name.to_owned(), |text| text.title.clone())
    };
    let stations: Vec<&str> = planned
        .markings()
        .map(|(marking, _)| marking.name.as_str())
        .collect();
    let mut rows = Vec::new();
    for session in teach.sessions.iter().filter(|one| one.week == week) {
        let turn = if teach.outings.len() > 1 {
            sheet.say(msg!(
                "weeks-turn",
                session = u64::from(session.session),
                turn = session.outing + 1
            ))
        } else {
            session.session.to_string()
        };
        if session.slots.is_empty() {
            rows.push((turn, String::new(), vec![sheet.word("weeks-lost")]));
            continue;
        }
        for (slot, groups) in session.slots.iter().enumerate() {
            let cells = stations
                .iter()
                .map(|station| {
                    let here = groups.iter().filter(|group| group.marking == *station);
                    let told = here.map(|group| {
                        let children: Vec<&str> = group
                            .children
                            .iter()
                            .map(|seat| seat.child.as_str())
                            .collect();
                        let play = match &group.game {
                            Some(game) => title(game),
                            None => suits::gait_words(sheet, &group.gait),
                        };
                        format!("{play}: {}", children.join(", "))
                    });
                    told.collect::<Vec<_>>().join("; ")
                })
                .collect();
            let first = if slot == 0 {
                turn.clone()
            } else {
                String::new()
            };
            rows.push((first, (slot + 1).to_string(), cells));
        }
    }
    let heads: Vec<String> = stations
        .iter()
        .map(|station| marking_name(sheet, planned, station))
        .collect();
    // a page holds so many stations side by side
    for (at, heads) in heads.chunks(SIDE_BY_SIDE).enumerate() {
        let mut columns = vec![
            Column::words(sheet.word("weeks-column-session")),
            Column::words(sheet.word("weeks-column-slot")),
        ];
        columns.extend(heads.iter().map(|head| Column::prose(head.clone(), 1)));
        let rows: Vec<Vec<String>> = rows
            .iter()
            .map(|(turn, slot, cells)| {
                let mut row = vec![turn.clone(), slot.clone()];
                let from = at * SIDE_BY_SIDE;
                row.extend(
                    (from..from + heads.len())
                        .map(|cell| cells.get(cell).cloned().unwrap_or_default()),
                );
                row
            })
            .collect();
        paper.dense(&columns, &rows);
    }
}

/// Stations beside one another on a page.
const SIDE_BY_SIDE: usize = 5;

/// How long children wait, by station.
fn waiting(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, teach: &Teach) {
    paper.heading(2, &sheet.word("weeks-waiting"));
    paper.lead(&sheet.say(msg!(
        "weeks-waiting-how",
        runs = u64::from(teach.forecast.runs)
    )));
    let rows: Vec<Vec<String>> = teach
        .forecast
        .stations
        .iter()
        .map(|station| {
            vec![
                marking_name(sheet, planned, &station.marking),
                measure::plain(station.mean, 0, sheet),
                measure::plain(station.longest, 0, sheet),
            ]
        })
        .collect();
    paper.table(
        &[
            Column::prose(sheet.word("page-column-marking"), 1),
            Column::figures(sheet.word("weeks-column-mean")),
            Column::figures(sheet.word("weeks-column-longest")),
        ],
        &rows,
        false,
    );
}

/// What each child gets of what it should, by skill; and what the sessions will be like.
fn gets(paper: &mut Manuscript, sheet: &Sheet, teach: &Teach) {
    paper.heading(2, &sheet.word("weeks-gets"));
    paper.lead(&sheet.word("weeks-gets-how"));
    let skills = super::super::director::SKILLS;
    let mut columns = vec![Column::words(sheet.word("weeks-column-child"))];
    columns.extend(skills.map(|skill| Column::figures(suits::gait_words(sheet, skill))));
    columns.push(Column::figures(sheet.word("weeks-column-contacts")));
    columns.push(Column::figures(sheet.word("weeks-column-active")));
    let rows: Vec<Vec<String>> = teach
        .children
        .iter()
        .zip(&teach.forecast.children)
        .map(|(child, foreseen)| {
            let mut row = vec![child.clone()];
            row.extend(skills.map(|skill| {
                let of = || {
                    teach
                        .practice
                        .iter()
                        .filter(|one| one.child == *child && one.skill == skill)
                };
                let (target, got) = of().fold((0.0, 0.0), |sum, one| {
                    (sum.0 + one.target, sum.1 + one.got.min(one.target))
                });
                if target > 0.0 {
                    measure::plain(100.0 * got / target, 0, sheet)
                } else {
                    sheet.word("doc-none")
                }
            }));
            let pair = |spread: &plan::Spread| {
                format!(
                    "{} ± {}",
                    measure::plain(spread.mean, 0, sheet),
                    measure::plain(spread.sd, 0, sheet)
                )
            };
            row.push(pair(&foreseen.contacts));
            row.push(pair(&foreseen.active));
            row
        })
        .collect();
    paper.table(&columns, &rows, true);
    let reasons = [
        ("no-time", "weeks-why-no-time"),
        ("no-station", "weeks-why-no-station"),
        ("never-opens", "weeks-why-never-opens"),
        ("opens-late", "weeks-why-opens-late"),
        ("stations", "weeks-why-stations"),
        ("lost", "weeks-why-lost"),
        ("full", "weeks-why-full"),
        ("time", "weeks-why-time"),
    ];
    let mut items = Vec::new();
    for skill in skills {
        for (why, key) in reasons {
            let mut who: Vec<String> = teach
                .practice
                .iter()
                .filter(|one| one.skill == skill && one.why.as_deref() == Some(why))
                .map(|one| one.child.clone())
                .collect();
            who.dedup();
            if !who.is_empty() {
                items.push(sheet.say(msg!(
                    "weeks-why",
                    skill = suits::gait_words(sheet, skill),
                    who = who,
                    why = sheet.word(key)
                )));
            }
        }
    }
    if !items.is_empty() {
        paper.heading(2, &sheet.word("weeks-missed"));
        paper.list(&items, false);
    }
}
