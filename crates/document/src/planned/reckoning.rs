//! What was left out and why, what another budget would give, the rules in short.

use std::collections::BTreeMap;

use note::msg;
use plan::{Candidate, Check};

use super::{AtBudget, Planned, words};
use crate::drawing::scene::{Dash, INK, Path, Scene, Spot, Stroke, Text, WHITE, pen};
use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Writes the pages.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    left_out(paper, sheet, planned);
    if planned.curve.len() > 1 {
        paper.heading(2, &sheet.word("page-curve"));
        paper.lead(&sheet.word("page-curve-how"));
        paper.figure(&curve(sheet, planned), &curve_told(sheet, planned));
    }
    audit(paper, sheet, planned);
}

fn left_out(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.heading(2, &sheet.word("page-left-out"));
    let Some(layout) = planned
        .record
        .layout
        .as_ref()
        .filter(|layout| !layout.left_out.is_empty())
    else {
        paper.paragraph(&sheet.word("page-left-out-none"));
        return;
    };
    let name = |name: &str| {
        let one = layout.candidates.iter().find(|one| one.name == name);
        one.map_or_else(|| name.to_owned(), |one| words::candidate(sheet, one))
    };
    // the sizes of one family with one reason in one row
    let mut alike: Vec<(String, String, Vec<&Candidate>)> = Vec::new();
    for left in &layout.left_out {
        let by = left.by.as_deref().map_or_else(String::new, name);
        let why = words::reason(sheet, &left.why, &by);
        let one = layout
            .candidates
            .iter()
            .find(|one| one.name == left.candidate);
        let family = one.map_or_else(
            || left.candidate.clone(),
            |one| words::family(sheet, &one.family),
        );
        match alike
            .iter_mut()
            .find(|row| (&row.0, &row.1) == (&family, &why))
        {
            Some(row) => row.2.extend(one),
            None => alike.push((family, why, one.into_iter().collect())),
        }
    }
    let range =
        |of: &[&Candidate], figure: &dyn Fn(&Candidate) -> f64, show: &dyn Fn(f64) -> String| {
            let least = of
                .iter()
                .map(|one| figure(one))
                .fold(f64::INFINITY, f64::min);
            let most = of.iter().map(|one| figure(one)).fold(0.0, f64::max);
            match (show(least), show(most)) {
                _ if of.is_empty() => String::new(),
                (least, most) if least == most => least,
                (least, most) => format!("{least}–{most}"),
            }
        };
    let rows: Vec<Vec<String>> = alike
        .iter()
        .map(|(family, why, of)| {
            let name = match of.as_slice() {
                [one] => words::candidate(sheet, one),
                several => sheet.say(msg!(
                    "page-left-out-sizes",
                    name = family.as_str(),
                    sizes = several.len()
                )),
            };
            vec![
                name,
                range(of, &|one| one.cost, &|cost| measure::plain(cost, 0, sheet)),
                range(of, &|one| one.area, &|area| {
                    measure::area_figure(area, sheet)
                }),
                why.clone(),
            ]
        })
        .collect();
    paper.lead(&sheet.word("page-left-out-how"));
    paper.table(
        &[
            Column::words(sheet.word("page-column-marking")),
            Column::figures(sheet.say(msg!("page-column-cost", money = planned.money))),
            Column::figures(sheet.say(msg!(
                "page-column-ground",
                unit = measure::unit(sheet.units)
            ))),
            Column::prose(sheet.word("page-column-why"), 1),
        ],
        &rows,
        sheet.large,
    );
}

/// Value and bound over the budget.
fn curve(sheet: &Sheet, planned: &Planned) -> Scene {
    let caps = sheet.caps();
    let grow = caps.note / 1.8;
    let mut scene = Scene::new(175.0, 62.0 * grow);
    let (left, right) = (12.0 * grow, 175.0 - 34.0 * grow);
    let (top, zero) = (6.0 * grow, 62.0 * grow - 11.0 * grow);
    let most = planned
        .curve
        .iter()
        .map(|at| at.budget)
        .fold(0.0, f64::max)
        .max(1e-9);
    let tall = planned
        .curve
        .iter()
        .map(|at| at.bound.max(at.value))
        .fold(0.0, f64::max)
        .clamp(0.01, 1.0);
    let step = if tall > 0.5 { 0.25 } else { 0.1 };
    let full = (tall / step).ceil() * step;
    let spot = |budget: f64, share: f64| -> Spot {
        [
            left + budget / most * (right - left),
            zero - share / full * (zero - top),
        ]
    };
    for line in 0..=((full / step).round() as usize) {
        let share = line as f64 * step;
        let [_, y] = spot(0.0, share);
        scene.stroke(
            Path::line(&[[left, y], [right, y]]),
            Stroke::solid(pen::HAIR),
        );
        let text = measure::plain(100.0 * share, 0, sheet);
        scene.text(Text::new(text, [left - 1.5, y + caps.note / 2.0], caps.note).end());
    }
    scene.text(Text::new("%", [left - 1.5, top - caps.note], caps.note).end());
    let line = |of: &dyn Fn(&AtBudget) -> f64| -> Vec<Spot> {
        planned
            .curve
            .iter()
            .map(|at| spot(at.budget, of(at)))
            .collect()
    };
    let (bound, value) = (line(&|at| at.bound), line(&|at| at.value));
    scene.stroke(
        Path::line(&bound),
        Stroke::dashed(pen::ELLIPSE, Dash::Short),
    );
    scene.stroke(Path::line(&value), Stroke::solid(pen::FIXTURE));
    for at in &value {
        scene.shape(Path::circle(*at, 0.8), WHITE, Stroke::solid(pen::ELLIPSE));
    }
    // the two names keep clear of each other, however near their lines end
    let ends = [bound.last(), value.last()].map(|spot| spot.map_or(zero, |spot| spot[1]));
    let apart = caps.note * 1.8;
    let low = if ends[1] - ends[0] < apart {
        ends[0] + apart
    } else {
        ends[1]
    };
    for (key, y) in [("page-curve-bound", ends[0]), ("page-curve-value", low)] {
        scene.text(Text::new(
            sheet.word(key),
            [right + 2.0, y + caps.note / 2.0],
            caps.note,
        ));
    }
    let mut last = f64::NEG_INFINITY;
    for at in planned.curve {
        let [x, _] = spot(at.budget, 0.0);
        scene.stroke(
            Path::line(&[[x, zero], [x, zero + 1.2]]),
            Stroke::solid(pen::THIN),
        );
        let text = Text::new(
            measure::plain(at.budget, 0, sheet),
            [x, zero + 2.4 + caps.note],
            caps.note,
        )
        .middle();
        if x - text.width() / 2.0 > last + 1.5 {
            last = x + text.width() / 2.0;
            scene.text(text);
        }
    }
    let foot = sheet.say(msg!("page-curve-budget", money = planned.money));
    scene.text(
        Text::new(
            foot,
            [(left + right) / 2.0, zero + 4.6 + 2.0 * caps.note],
            caps.note,
        )
        .middle(),
    );
    if let Some(budget) = planned.budget.filter(|budget| *budget <= most) {
        let ends = [spot(budget, 0.0), spot(budget, full)];
        scene.stroke(
            Path::line(&ends),
            Stroke {
                width: pen::ELLIPSE,
                colour: INK,
                dash: Dash::Long,
            },
        );
        scene.text(
            Text::new(
                sheet.word("page-curve-ours"),
                [ends[1][0], top - 1.5],
                caps.note,
            )
            .middle(),
        );
    }
    scene
}

fn curve_told(sheet: &Sheet, planned: &Planned) -> String {
    let all: Vec<String> = planned
        .curve
        .iter()
        .map(|at| {
            sheet.say(msg!(
                "page-curve-told",
                budget = words::money(sheet, at.budget, planned.money),
                value = words::percent(at.value),
                bound = words::percent(at.bound)
            ))
        })
        .collect();
    all.join("; ")
}

/// What is wanted or what is, in the user's unit.
fn figure(sheet: &Sheet, value: f64, unit: &str) -> String {
    match unit {
        "m" => measure::length(value, sheet),
        "m2" => measure::area(value, sheet),
        "deg" => format!("{}°", measure::plain(value, 1, sheet)),
        _ => measure::plain(value, 2, sheet),
    }
}

/// Rule by rule: how many checks hold; then each one that does not.
fn audit(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    let checks = planned.record.audit.as_deref().unwrap_or_default();
    if checks.is_empty() {
        return;
    }
    paper.heading(2, &sheet.word("page-audit"));
    let mut order: Vec<&str> = Vec::new();
    let mut rules: BTreeMap<&str, Vec<&Check>> = BTreeMap::new();
    for check in checks {
        if !order.contains(&check.rule.as_str()) {
            order.push(&check.rule);
        }
        rules.entry(&check.rule).or_default().push(check);
    }
    order.sort_by_key(|rule| {
        !rules
            .get(rule)
            .is_some_and(|of| of.iter().any(|check| check.hard))
    });
    let rows: Vec<Vec<String>> = order
        .iter()
        .filter_map(|rule| Some((*rule, rules.get(rule)?)))
        .map(|(rule, of)| {
            let held = of.iter().filter(|check| check.pass).count();
            let hard = of.iter().any(|check| check.hard);
            vec![
                words::rule(sheet, rule),
                sheet.word(if hard {
                    "page-rule-must"
                } else {
                    "page-rule-should"
                }),
                format!("{held}/{}", of.len()),
            ]
        })
        .collect();
    paper.lead(&sheet.word("page-audit-how"));
    paper.table(
        &[
            Column::prose(sheet.word("page-column-rule"), 1),
            Column::words(sheet.word("page-column-kind")),
            Column::figures(sheet.word("page-column-held")),
        ],
        &rows,
        sheet.large,
    );
    let named = |check: &Check| {
        let marking = planned
            .markings()
            .map(|(marking, _)| marking)
            .find(|one| Some(&one.name) == check.marking.as_ref());
        marking.map_or_else(
            || sheet.word("page-whole-layout"),
            |one| words::marking(sheet, one, planned.candidate(one)),
        )
    };
    let unmet: Vec<Vec<String>> = checks
        .iter()
        .filter(|check| !check.pass)
        .map(|check| {
            vec![
                named(check),
                words::rule(sheet, &check.rule),
                figure(sheet, check.wanted, &check.unit),
                figure(sheet, check.actual, &check.unit),
            ]
        })
        .collect();
    if unmet.is_empty() {
        paper.paragraph(&sheet.word("page-audit-all"));
        return;
    }
    paper.lead(&sheet.word("page-audit-unmet"));
    paper.table(
        &[
            Column::words(sheet.word("page-column-marking")),
            Column::prose(sheet.word("page-column-rule"), 1),
            Column::figures(sheet.word("page-column-limit")),
            Column::figures(sheet.word("page-column-is")),
        ],
        &unmet,
        true,
    );
}
