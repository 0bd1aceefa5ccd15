//! The report of a survey: the yard drawn to scale, what the readings say in plain words,
//! what to measure again, the tables, what is kept clear and why, and the sources.

use geo::{Area as _, Coord};
use ground::result::{Blocked, Why};
use ledger::{Ledger, Standing};
use note::{Note, Severity, msg};
use survey::network::Kind;
use survey::result::{Adjusted, Help, Slip, Survey};

use crate::drawing::block::{self, name_at, unchecked};
use crate::drawing::scene::{Rect, Scene};
use crate::drawing::yard::Plan;
use crate::measure;
use crate::plan_sheet::{self, areas};
use crate::sheet::Sheet;
use crate::typeset::{Column, Fault, Manuscript};

/// Sets the report. `notes` are those of the stages that made the plan.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn survey_report(
    sheet: &Sheet,
    plan: &Plan,
    notes: &[Note],
    ledger: &Ledger,
) -> Result<Vec<u8>, Fault> {
    let drawn = plan_sheet::draw(sheet, plan, ledger);
    let kind = sheet.word("doc-kind-survey");
    let title = sheet.say(msg!(
        "doc-told-title",
        name = sheet.name,
        kind = kind.as_str()
    ));
    let mut paper = Manuscript::new(sheet, "survey-report", &title, &sheet.word("doc-page-of"));
    paper.plate(&drawn.scene, &drawn.told.says);
    paper.heading(1, &sheet.say(msg!("doc-report-title", name = sheet.name)));
    if let Some(survey) = plan.survey {
        let limit = ledger.number(survey::figures::UNCHECKED);
        says(&mut paper, sheet, plan, survey, limit);
        again(&mut paper, sheet, survey);
        noticed(&mut paper, sheet, notes);
        picture(&mut paper, sheet, plan, survey, limit);
        readings(&mut paper, sheet, survey, limit);
        points(&mut paper, sheet, plan, survey);
    } else {
        noticed(&mut paper, sheet, notes);
    }
    blocked(&mut paper, sheet, plan, ledger);
    paper.heading(2, &sheet.word("doc-assumptions"));
    paper.list(&assumptions(sheet, plan), false);
    paper.heading(2, &sheet.word("doc-before-you-go-on"));
    paper.care(&sheet.word("doc-take-care"), &cautions(sheet));
    sources(&mut paper, sheet, ledger);
    paper.press()
}

/// The pair of points that a reading joins, or what else it measures, as people say it.
pub fn reading_name(sheet: &Sheet, survey: &Survey, kind: Kind) -> String {
    let name = |id: usize| {
        survey
            .points
            .get(id)
            .map_or("?", |point| point.name.as_str())
    };
    match kind {
        Kind::Distance { from, to } => sheet.say(msg!(
            "doc-reading-distance",
            from = name(from),
            to = name(to)
        )),
        Kind::Along { from, to, point } => sheet.say(msg!(
            "doc-reading-along",
            from = name(from),
            to = name(to),
            point = name(point)
        )),
        Kind::Left { from, to, point } => sheet.say(msg!(
            "doc-reading-left",
            from = name(from),
            to = name(to),
            point = name(point)
        )),
        Kind::Square { at, from, to } => sheet.say(msg!(
            "doc-reading-square",
            at = name(at),
            from = name(from),
            to = name(to)
        )),
        Kind::KnownX { point } => sheet.say(msg!("doc-reading-known-x", point = name(point))),
        Kind::KnownY { point } => sheet.say(msg!("doc-reading-known-y", point = name(point))),
    }
}

/// A reading's value: a length, or degrees for an angle.
fn value(sheet: &Sheet, kind: Kind, value: f64) -> String {
    match kind {
        Kind::Square { .. } => format!("{}°", measure::plain(value.to_degrees(), 2, sheet)),
        _ => measure::reading(value, sheet),
    }
}

/// The gap between the others' word and the reading: mm or in, degrees for an angle.
fn gap(sheet: &Sheet, reading: &Adjusted) -> String {
    match reading.kind {
        Kind::Square { .. } => format!("{}°", measure::plain(reading.v.to_degrees(), 2, sheet)),
        _ => measure::small(reading.v, sheet),
    }
}

fn says(paper: &mut Manuscript, sheet: &Sheet, plan: &Plan, survey: &Survey, limit: f64) {
    paper.heading(2, &sheet.word("doc-says"));
    let loose = survey.points.iter().filter(|point| point.loose).count();
    let verdict = match (
        loose,
        survey.dof,
        survey.global_test.passed,
        survey.suspects.is_empty(),
    ) {
        (1.., ..) => sheet.say(msg!("doc-verdict-loose", count = loose)),
        (0, 0, ..) => sheet.word("doc-verdict-unchecked"),
        (0, _, true, true) => sheet.word("doc-verdict-good"),
        (0, _, true, false) => {
            sheet.say(msg!("doc-verdict-good-but", count = survey.suspects.len()))
        }
        (0, _, false, _) => sheet.word("doc-verdict-disagree"),
    };
    paper.paragraph(&verdict);
    let areas = areas(sheet, plan);
    paper.paragraph(&sheet.say(msg!(
        "doc-says-areas",
        yard = areas.yard.as_str(),
        free = areas.free.as_str()
    )));
    let worst = survey
        .points
        .iter()
        .filter_map(|point| point.ellipse.map(|ellipse| (ellipse.a, point)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    if let Some((axis, point)) = worst {
        let within = format!(
            "{} {}",
            measure::small(axis * measure::ellipse_95(), sheet),
            measure::small_unit(sheet.units)
        );
        paper.paragraph(&sheet.say(msg!(
            "doc-says-worst",
            point = point.name.as_str(),
            within = within
        )));
    }
    let alone = survey
        .readings
        .iter()
        .filter(|reading| !reading.set_aside && unchecked(reading, limit))
        .count();
    paper.paragraph(&sheet.say(msg!(
        "doc-says-readings",
        readings = survey.readings.len(),
        dof = survey.dof,
        unchecked = alone
    )));
}

fn again(paper: &mut Manuscript, sheet: &Sheet, survey: &Survey) {
    if survey.suspects.is_empty() && survey.next_readings.is_empty() {
        return;
    }
    paper.heading(2, &sheet.word("doc-again"));
    paper.care(
        &sheet.word("doc-take-care"),
        &[sheet.word("doc-care-tapes"), sheet.word("doc-care-traffic")],
    );
    if !survey.suspects.is_empty() {
        let rows: Vec<Vec<String>> = survey
            .suspects
            .iter()
            .filter_map(|suspect| {
                let first = survey.readings.get(*suspect.readings.first()?)?;
                let group: Vec<String> = suspect
                    .readings
                    .iter()
                    .filter_map(|&number| survey.readings.get(number))
                    .map(|reading| reading_name(sheet, survey, reading.kind))
                    .collect();
                let probably = match suspect.guess {
                    Some(slip) => slip_words(sheet, slip),
                    None if group.len() > 1 => sheet.word("doc-slip-one-of-these"),
                    None => sheet.word("doc-slip-unknown"),
                };
                Some(vec![
                    group.join(", "),
                    value(sheet, first.kind, first.reading),
                    value(sheet, first.kind, suspect.should_read),
                    probably,
                ])
            })
            .collect();
        let unit = measure::unit(sheet.units);
        paper.table(
            &[
                Column::prose(sheet.word("doc-column-reading"), 3),
                Column::figures(sheet.say(msg!("doc-column-reads", unit = unit))),
                Column::figures(sheet.say(msg!("doc-column-others", unit = unit))),
                Column::prose(sheet.word("doc-column-probably"), 4),
            ],
            &rows,
            sheet.large,
        );
    }
    if !survey.next_readings.is_empty() {
        paper.lead(&sheet.word("doc-next-best"));
        let name = |id: usize| {
            survey
                .points
                .get(id)
                .map_or("?", |point| point.name.as_str())
        };
        let items: Vec<String> = survey
            .next_readings
            .iter()
            .map(|next| {
                let (from, to) = (name(next.from), name(next.to));
                match next.helps {
                    Help::Fixes(point) => sheet.say(msg!(
                        "doc-next-fixes",
                        from = from,
                        to = to,
                        point = name(point)
                    )),
                    Help::Checks(reading) => {
                        let checked = survey
                            .readings
                            .get(reading)
                            .map(|one| reading_name(sheet, survey, one.kind));
                        sheet.say(msg!(
                            "doc-next-checks",
                            from = from,
                            to = to,
                            reading = checked.unwrap_or_default()
                        ))
                    }
                    Help::Separates(group) => {
                        let names: Vec<String> = survey
                            .groups
                            .get(group)
                            .into_iter()
                            .flatten()
                            .filter_map(|&number| survey.readings.get(number))
                            .map(|one| reading_name(sheet, survey, one.kind))
                            .collect();
                        sheet.say(msg!(
                            "doc-next-separates",
                            from = from,
                            to = to,
                            readings = names
                        ))
                    }
                }
            })
            .collect();
        paper.list(&items, true);
    }
}

fn slip_words(sheet: &Sheet, slip: Slip) -> String {
    let count = |n: i32| u64::from(n.unsigned_abs());
    match slip {
        Slip::WholeMetres(n) => sheet.say(msg!("doc-slip-metres", count = count(n))),
        Slip::WholeFeet(n) => sheet.say(msg!("doc-slip-feet", count = count(n))),
        Slip::Tenths(n) => sheet.say(msg!("doc-slip-tenths", count = count(n))),
        Slip::SwappedDigits(read) => sheet.say(msg!(
            "doc-slip-swapped",
            read = measure::reading(read, sheet)
        )),
        Slip::FootForInch(read) => sheet.say(msg!(
            "doc-slip-foot-inch",
            read = measure::reading(read, sheet)
        )),
        Slip::Hook(hook) => sheet.say(msg!(
            "doc-slip-hook",
            hook = format!(
                "{} {}",
                measure::small(hook.abs(), sheet),
                measure::small_unit(sheet.units)
            )
        )),
    }
}

/// Notes in words, errors first, each sentence once.
fn noticed(paper: &mut Manuscript, sheet: &Sheet, notes: &[Note]) {
    let mut sorted: Vec<&Note> = notes.iter().collect();
    sorted.sort_by_key(|note| note.severity);
    let mut items: Vec<String> = Vec::new();
    for note in sorted {
        let start = match note.severity {
            Severity::Error => sheet.word("doc-noticed-error"),
            Severity::Warning => sheet.word("doc-noticed-warning"),
            Severity::Advice => sheet.word("doc-noticed-advice"),
        };
        let mut item = format!("{start} {}", sentence(&sheet.say(note.what.clone())));
        if let Some(mend) = &note.mend {
            item.push(' ');
            item.push_str(&sentence(&sheet.say(mend.clone())));
        }
        if !items.contains(&item) {
            items.push(item);
        }
    }
    if !items.is_empty() {
        paper.heading(2, &sheet.word("doc-noticed"));
        paper.list(&items, false);
    }
}

/// A clause of the catalogue as a sentence: with a capital and a full stop.
fn sentence(clause: &str) -> String {
    let mut letters = clause.trim().chars();
    let mut out: String = letters
        .next()
        .map(|first| first.to_uppercase().collect())
        .unwrap_or_default();
    out.push_str(letters.as_str());
    if !out.ends_with(['.', '!', '?', ':']) {
        out.push('.');
    }
    out
}

fn picture(paper: &mut Manuscript, sheet: &Sheet, plan: &Plan, survey: &Survey, limit: f64) {
    let [w, h] = if sheet.large {
        [175.0, 150.0]
    } else {
        [175.0, 120.0]
    };
    let mut scene = Scene::new(w, h);
    let used = block::inset(
        &mut scene,
        Rect {
            x: 0.0,
            y: 0.0,
            w,
            h,
        },
        sheet,
        survey,
        limit,
    );
    scene.height = (used.h + 1.0).min(h + 20.0);
    let bounds = Rect::round(plan.yard.boundary.exterior().coords().map(|c| [c.x, c.y]));
    let names: Vec<String> = survey
        .points
        .iter()
        .map(|point| point.name.clone())
        .collect();
    let doubtful = survey
        .suspects
        .iter()
        .map(|suspect| suspect.readings.len())
        .sum::<usize>();
    if bounds.is_some() {
        paper.heading(2, &sheet.word("doc-picture"));
        paper.figure(
            &scene,
            &sheet.say(msg!("doc-picture-alt", names = names, doubtful = doubtful)),
        );
    }
}

fn readings(paper: &mut Manuscript, sheet: &Sheet, survey: &Survey, limit: f64) {
    paper.heading(2, &sheet.word("doc-readings"));
    paper.lead(&sheet.word("doc-readings-how"));
    let doubtful: Vec<usize> = survey
        .suspects
        .iter()
        .flat_map(|suspect| suspect.readings.iter().copied())
        .collect();
    let rank = |number: usize, reading: &Adjusted| match () {
        () if doubtful.contains(&number) => 0,
        () if unchecked(reading, limit) => 1,
        () => 2,
    };
    let mut order: Vec<(usize, &Adjusted)> = survey.readings.iter().enumerate().collect();
    order.sort_by_key(|&(number, reading)| (rank(number, reading), number));
    let rows: Vec<Vec<String>> = order
        .into_iter()
        .map(|(number, reading)| {
            let words = match rank(number, reading) {
                0 if reading.set_aside => "doc-state-set-aside",
                0 => "doc-state-doubtful",
                1 => "doc-state-unchecked",
                _ => "doc-state-agrees",
            };
            vec![
                reading_name(sheet, survey, reading.kind),
                value(sheet, reading.kind, reading.reading),
                value(sheet, reading.kind, reading.adjusted),
                gap(sheet, reading),
                measure::plain(reading.r * 100.0, 0, sheet),
                sheet.word(words),
            ]
        })
        .collect();
    let (unit, small) = (measure::unit(sheet.units), measure::small_unit(sheet.units));
    paper.table(
        &[
            Column::words(sheet.word("doc-column-reading")),
            Column::figures(sheet.say(msg!("doc-column-reads", unit = unit))),
            Column::figures(sheet.say(msg!("doc-column-others", unit = unit))),
            Column::figures(sheet.say(msg!("doc-column-gap", unit = small))),
            Column::figures(sheet.word("doc-column-checked")),
            Column::prose(sheet.word("doc-column-state"), 1),
        ],
        &rows,
        sheet.large,
    );
}

fn points(paper: &mut Manuscript, sheet: &Sheet, plan: &Plan, survey: &Survey) {
    paper.heading(2, &sheet.word("doc-points"));
    paper.lead(&sheet.word("doc-points-how"));
    let ring: Vec<Coord<f64>> = plan.yard.boundary.exterior().coords().copied().collect();
    let rows: Vec<Vec<String>> = survey
        .points
        .iter()
        .map(|point| {
            let sure = match point.ellipse {
                Some(ellipse) => measure::small(ellipse.a * measure::ellipse_95(), sheet),
                None if point.loose => sheet.word("doc-point-loose"),
                None if point.sx.max(point.sy) > 0.0 => {
                    measure::small(point.sx.max(point.sy) * measure::HALF_95, sheet)
                }
                None => sheet.word("doc-point-held"),
            };
            let corner = ring
                .iter()
                .position(|c| libm::hypot(c.x - point.x, c.y - point.y) < 1e-3);
            let side = corner.and_then(|corner| {
                let (a, b) = (ring.get(corner)?, ring.get(corner + 1)?);
                let next = name_at(plan.survey, plan.yard, (corner + 1) % (ring.len() - 1))?;
                let length = measure::dimension(libm::hypot(b.x - a.x, b.y - a.y), sheet);
                Some((sheet.say(msg!("doc-side-to", to = next)), length))
            });
            let (to, length) = side.unwrap_or_else(|| (sheet.word("doc-none"), String::new()));
            vec![
                point.name.clone(),
                measure::coordinate(point.x, sheet),
                measure::coordinate(point.y, sheet),
                sure,
                length,
                to,
            ]
        })
        .collect();
    let (unit, small) = (measure::unit(sheet.units), measure::small_unit(sheet.units));
    paper.table(
        &[
            Column::words(sheet.word("doc-column-point")),
            Column::figures(format!("x, {unit}")),
            Column::figures(format!("y, {unit}")),
            Column::figures(sheet.say(msg!("doc-column-sure", unit = small))),
            Column::figures(sheet.say(msg!("doc-column-side", unit = unit))),
            Column::prose(sheet.word("doc-column-side-to"), 1),
        ],
        &rows,
        sheet.large,
    );
}

/// The sentence of a reason.
fn why(blocked: &Blocked) -> &'static str {
    match blocked.why {
        Why::Footprint => "doc-why-footprint",
        Why::ClearZone if blocked.alone => "doc-why-alone",
        Why::ClearZone => "doc-why-clear-zone",
        Why::Surface => "doc-why-surface",
        Why::EdgeMargin => "doc-why-edge-margin",
        Why::FixtureMargin => "doc-why-fixture-margin",
        Why::Drain => "doc-why-drain",
        Why::Swing => "doc-why-swing",
        Why::DoorFloor => "doc-why-door-floor",
        Why::Route => "doc-why-route",
        Why::Remark => "doc-why-remark",
    }
}

fn blocked(paper: &mut Manuscript, sheet: &Sheet, plan: &Plan, ledger: &Ledger) {
    paper.heading(2, &sheet.word("doc-blocked"));
    paper.lead(&sheet.word("doc-blocked-how"));
    // patches of one thing, reason and rule are one row
    let mut rows: Vec<(&Blocked, f64)> = Vec::new();
    for patch in &plan.ground.blocked {
        let area = patch.polygon.unsigned_area();
        match rows.iter_mut().find(|(first, _)| {
            (&first.of, why(first), first.rule) == (&patch.of, why(patch), patch.rule)
        }) {
            Some((_, sum)) => *sum += area,
            None => rows.push((patch, area)),
        }
    }
    let rows: Vec<Vec<String>> = rows
        .into_iter()
        .map(|(patch, area)| {
            let figure = patch.rule.and_then(|rule| ledger.figure(rule.0));
            let rule = figure.map_or_else(
                || sheet.word("doc-none"),
                |figure| {
                    let words = figure_words(
                        sheet,
                        figure.values.first().copied().unwrap_or(f64::NAN),
                        &figure.unit,
                    );
                    // a bare number is a factor: of a swing's pivot height
                    if figure.unit == "1" {
                        format!("× {words}")
                    } else {
                        words
                    }
                },
            );
            let source = figure.map_or_else(
                || sheet.word("doc-none"),
                |figure| source_words(sheet, figure),
            );
            vec![
                thing(sheet, plan, patch),
                sheet.word(why(patch)),
                measure::area_figure(area, sheet),
                rule,
                source,
            ]
        })
        .collect();
    paper.table(
        &[
            Column::words(sheet.word("doc-column-thing")),
            Column::prose(sheet.word("doc-column-why"), 1),
            Column::figures(sheet.say(msg!("doc-column-area", unit = measure::unit(sheet.units)))),
            Column::figures(sheet.word("doc-column-rule")),
            Column::words(sheet.word("doc-column-source")),
        ],
        &rows,
        true,
    );
}

/// What a patch belongs to: the user's own name, or the word of an edge or a surface.
fn thing(sheet: &Sheet, plan: &Plan, patch: &Blocked) -> String {
    if patch.why == Why::Route {
        let route = plan
            .ground
            .routes
            .iter()
            .find(|one| format!("{}-{}", one.from, one.to) == patch.of);
        if let Some(route) = route {
            return sheet.say(msg!(
                "doc-reading-distance",
                from = route.from.as_str(),
                to = route.to.as_str()
            ));
        }
    }
    let mine = plan.yard.fixtures.iter().any(|one| one.name == patch.of)
        || plan.yard.doors.iter().any(|one| one.name == patch.of)
        || plan.yard.gates.iter().any(|one| one.name == patch.of);
    let key = match (mine, patch.of.as_str()) {
        (true, _) => return patch.of.clone(),
        (_, "wall") => "doc-legend-wall",
        (_, "fence") => "doc-legend-fence",
        (_, "hedge") => "doc-legend-hedge",
        (_, "kerb") => "doc-legend-kerb",
        (_, "drop") => "doc-legend-drop",
        (_, "open") => "doc-legend-open",
        (_, "asphalt") => "doc-surface-asphalt",
        (_, "concrete") => "doc-surface-concrete",
        (_, "paving") => "doc-surface-paving",
        (_, "old-paint") => "doc-surface-old-paint",
        (_, "sealer") => "doc-surface-sealer",
        (_, "rubber") => "doc-surface-rubber",
        (_, "mulch") => "doc-surface-mulch",
        (_, "carpet") => "doc-surface-carpet",
        (_, "loose-fill") => "doc-surface-loose-fill",
        (_, "sand") => "doc-surface-sand",
        (_, "grass") => "doc-surface-grass",
        (_, "soil") => "doc-surface-soil",
        (_, "wood") => "doc-surface-wood",
        (_, "steel") => "doc-surface-steel",
        (_, "tactile") => "doc-surface-tactile",
        (_, "puddle") => "doc-remark-puddle",
        (_, "trike-path") => "doc-remark-trike-path",
        (_, "slope") => "doc-remark-slope",
        _ => return patch.of.clone(),
    };
    sheet.word(key)
}

/// A ledger figure with its unit, lengths in the sheet's.
fn figure_words(sheet: &Sheet, value: f64, unit: &str) -> String {
    let short = || {
        let text = measure::plain(value, 4, sheet);
        let mark = sheet.language.mark();
        if text.contains(mark) {
            text.trim_end_matches('0').trim_end_matches(mark).to_owned()
        } else {
            text
        }
    };
    match unit {
        "m" if value.abs() < 0.05 => format!(
            "{} {}",
            measure::small(value, sheet),
            measure::small_unit(sheet.units)
        ),
        "m" => measure::length(value, sheet),
        "1" => short(),
        other => format!("{} {other}", short()),
    }
}

fn standing_words(sheet: &Sheet, standing: Standing) -> String {
    sheet.word(match standing {
        Standing::Published => "doc-standing-published",
        Standing::Practice => "doc-standing-practice",
        Standing::Memory => "doc-standing-memory",
    })
}

/// The source's key, or its standing where there is none.
fn source_words(sheet: &Sheet, figure: &ledger::Figure) -> String {
    if figure.source == "-" {
        standing_words(sheet, figure.standing)
    } else {
        figure.source.clone()
    }
}

fn assumptions(sheet: &Sheet, plan: &Plan) -> Vec<String> {
    let mut all = vec![
        sheet.word("doc-assume-level"),
        sheet.word("doc-assume-doubt"),
        sheet.word("doc-assume-free"),
        sheet.word("doc-assume-straight"),
    ];
    if plan
        .yard
        .fixtures
        .iter()
        .any(|one| one.is == ground::yard::FixtureKind::Tree)
    {
        all.push(sheet.word("doc-assume-crown"));
    }
    if sheet.north.is_none() {
        all.push(sheet.word("doc-assume-no-north"));
    }
    all.extend(sheet.assumed.iter().cloned());
    all.extend(sheet.credit.map(str::to_owned));
    all
}

/// The usual cautions of a plan, each an act (building.md 8, in our words).
fn cautions(sheet: &Sheet) -> Vec<String> {
    [
        "doc-care-advice",
        "doc-care-leave",
        "doc-care-zones",
        "doc-care-doors",
        "doc-care-children",
        "doc-care-surfacing",
        "doc-care-old-paint",
        "doc-care-bar",
    ]
    .map(|key| sheet.word(key))
    .to_vec()
}

fn sources(paper: &mut Manuscript, sheet: &Sheet, ledger: &Ledger) {
    // A folder that has been planned has more figures read: this paper rests on these rooms.
    const ROOMS: [&str; 4] = ["survey", "project", "ground", "document"];
    let cited: Vec<&ledger::Figure> = ledger
        .cited()
        .filter(|figure| ROOMS.contains(&figure.room))
        .collect();
    if cited.is_empty() {
        return;
    }
    paper.heading(2, &sheet.word("doc-sources"));
    paper.lead(&sheet.word("doc-sources-how"));
    let rows: Vec<Vec<String>> = cited
        .iter()
        .map(|figure| {
            let values: Vec<String> = figure
                .values
                .iter()
                .map(|&value| figure_words(sheet, value, &figure.unit))
                .collect();
            let standing = standing_words(sheet, figure.standing);
            let standing = if figure.replaced {
                sheet.say(msg!("doc-standing-replaced", standing = standing))
            } else {
                standing
            };
            vec![
                figure.what.clone(),
                values.join(", "),
                if figure.source == "-" {
                    sheet.word("doc-none")
                } else {
                    figure.source.clone()
                },
                standing,
            ]
        })
        .collect();
    paper.table(
        &[
            Column::prose(sheet.word("doc-column-what"), 5).english(),
            Column::figures(sheet.word("doc-column-figure")),
            Column::words(sheet.word("doc-column-source")),
            Column::words(sheet.word("doc-column-standing")),
        ],
        &rows,
        true,
    );
    let mut keys: Vec<&str> = cited
        .iter()
        .flat_map(|figure| figure.source.split(['+', ',']).map(str::trim))
        .collect();
    keys.sort_unstable();
    keys.dedup();
    let works: Vec<String> = keys
        .into_iter()
        .filter_map(|key| ledger.source(key).map(|text| format!("{key}: {text}")))
        .collect();
    paper.list(&works, false);
}
