//! The set-out sheet: where to hook the tapes, in the order of one walk, with boxes for what
//! the check tapes read.

use ::setout::{Feature, Held, KeyPoint, Role, SetOut, Stop};
use geo::Coord;
use note::msg;
use unit::show::{Inches, feet};
use unit::{INCH, Units};

use super::{Planned, words};
use crate::drawing::scene::{INK, Path, Scene, Spot, Stroke, Text, WHITE, pen};
use crate::drawing::view::View;
use crate::face::{self, Weight};
use crate::measure;
use crate::plan_sheet::Drawn;
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript, string};

/// Writes the sheets.
pub fn write(
    paper: &mut Manuscript,
    sheet: &Sheet,
    planned: &Planned,
    drawn: &Drawn,
    setout: &SetOut,
) {
    paper.heading(1, &sheet.say(msg!("page-setout-title", name = sheet.name)));
    let (scene, says) = map(sheet, drawn, setout);
    hands(paper, sheet, setout);
    paper.plate(&scene, &says);
    figures(paper, sheet, planned, setout);
    instead(paper, sheet, setout);
}

/// The same without head and map, for a paper that has its own.
pub fn body(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, setout: &SetOut) {
    hands(paper, sheet, setout);
    figures(paper, sheet, planned, setout);
    instead(paper, sheet, setout);
}

/// How to hold the tapes, and the walk.
fn hands(paper: &mut Manuscript, sheet: &Sheet, setout: &SetOut) {
    paper.care(
        &sheet.word("doc-take-care"),
        &[
            "page-setout-care-dry",
            "page-setout-care-ends",
            "page-setout-care-check",
        ]
        .map(|key| sheet.word(key)),
    );
    paper.list(
        &[
            "page-setout-how-hook",
            "page-setout-how-left",
            "page-setout-how-check",
            "page-setout-how-figure",
        ]
        .map(|key| sheet.word(key)),
        true,
    );
    paper.paragraph(&sheet.say(msg!(
        "page-setout-walk",
        points = setout.walk.len(),
        walked = words::length(sheet, setout.walked),
        step = format!(
            "{} {}",
            measure::small(setout.step, sheet),
            measure::small_unit(sheet.units)
        )
    )));
    walk(paper, sheet, setout);
}

fn base(setout: &SetOut, number: usize) -> &str {
    setout.bases.names.get(number).map_or("", String::as_str)
}

/// The key points in their order: two tapes, a third, a box; large, for it is read standing.
fn walk(paper: &mut Manuscript, sheet: &Sheet, setout: &SetOut) {
    let row = |(number, stop): (usize, &Stop)| {
        let point = setout.points.get(stop.point)?;
        let third = point.third.as_ref();
        let under = [what(sheet, point), moves(sheet, setout, stop)].join(". ");
        Some([
            (number + 1).to_string(),
            point.name.clone(),
            under.trim_end_matches(". ").to_owned(),
            tape(sheet, setout, &point.tapes[0]),
            tape(sheet, setout, &point.tapes[1]),
            third.map_or_else(
                || sheet.word("doc-none"),
                |third| {
                    let held = Held {
                        base: third.base,
                        length: third.length,
                    };
                    tape(sheet, setout, &held)
                },
            ),
            third.map_or_else(String::new, |third| {
                sheet.say(msg!(
                    "page-setout-within",
                    limit = limit(sheet, third.limit)
                ))
            }),
        ])
    };
    let array = |cells: &[String]| -> String {
        cells
            .iter()
            .map(|cell| format!("{}, ", string(cell)))
            .collect()
    };
    let rows: String = setout
        .walk
        .iter()
        .enumerate()
        .filter_map(row)
        .map(|cells| format!("({}), ", array(&cells)))
        .collect();
    let heads = [
        "page-setout-number",
        "page-setout-mark",
        "page-setout-first",
        "page-setout-second",
        "page-setout-third",
        "page-setout-reads",
    ]
    .map(|key| sheet.word(key));
    paper.code(&format!("#stops(({}), ({rows}))", array(&heads)));
}

fn tape(sheet: &Sheet, setout: &SetOut, held: &Held) -> String {
    format!(
        "{}\u{A0}\u{A0}{}",
        base(setout, held.base),
        measure::reading(held.length, sheet)
    )
}

/// How far off a check may be, in whole millimetres or eighths of an inch, rounded down.
fn limit(sheet: &Sheet, metres: f64) -> String {
    match sheet.units {
        Units::Metres => format!("{} mm", (metres * 1000.0).floor()),
        Units::Feet => feet((metres / INCH * 8.0).floor() / 8.0 * INCH, Inches::EIGHTHS),
    }
}

/// Which tape's end is carried where.
fn moves(sheet: &Sheet, setout: &SetOut, stop: &Stop) -> String {
    let all: Vec<String> = stop
        .moves
        .iter()
        .map(|carried| {
            sheet.say(msg!(
                "page-setout-move",
                tape = carried.tape + 1,
                to = base(setout, carried.to)
            ))
        })
        .collect();
    all.join("; ")
}

/// Other tapes for a day on which something stands on a surveyed point.
fn instead(paper: &mut Manuscript, sheet: &Sheet, setout: &SetOut) {
    let rows: Vec<Vec<String>> = setout
        .walk
        .iter()
        .filter_map(|stop| setout.points.get(stop.point))
        .flat_map(|point| point.instead.iter().map(move |other| (point, other)))
        .map(|(point, other)| {
            vec![
                point.name.clone(),
                base(setout, other.without).to_owned(),
                tape(sheet, setout, &other.tapes[0]),
                tape(sheet, setout, &other.tapes[1]),
            ]
        })
        .collect();
    if rows.is_empty() {
        return;
    }
    paper.heading(2, &sheet.word("page-setout-instead"));
    paper.lead(&sheet.word("page-setout-instead-how"));
    paper.table(
        &[
            Column::prose(sheet.word("page-setout-mark"), 1),
            Column::words(sheet.word("page-setout-without")),
            Column::figures(sheet.word("page-setout-first")),
            Column::figures(sheet.word("page-setout-second")),
        ],
        &rows,
        false,
    );
}

/// What a key point is for, and what of the figure lies there.
fn what(sheet: &Sheet, point: &KeyPoint) -> String {
    let role = match point.role {
        Role::Origin => "origin",
        Role::Direction => "direction",
        Role::Check => "check",
    };
    sheet.say(msg!(
        "page-setout-role",
        role = role,
        feature = feature(sheet, &point.feature)
    ))
}

fn feature(sheet: &Sheet, feature: &Feature) -> String {
    let (kind, name) = match feature {
        Feature::Cell(id) => ("cell", id.clone()),
        Feature::LaneStart(lane) => ("lane-start", (lane + 1).to_string()),
        Feature::LaneEnd(lane) => ("lane-end", (lane + 1).to_string()),
        Feature::LaneFar(lane) => ("lane-far", (lane + 1).to_string()),
        Feature::LaneBend(..) => ("bend", String::new()),
        Feature::Wait(spot) => ("wait", (spot + 1).to_string()),
        Feature::Corner(shape) => ("corner", (shape + 1).to_string()),
    };
    sheet.say(msg!("page-setout-feature", kind = kind, name = name))
}

/// The plan sheet with bases and key points on it.
pub fn map(sheet: &Sheet, drawn: &Drawn, setout: &SetOut) -> (Scene, String) {
    let (mut scene, view) = (drawn.scene.clone(), drawn.layout.view);
    let caps = sheet.caps();
    let spot = |at: Coord<f64>| view.at(at);
    let mut used: Vec<usize> = setout
        .points
        .iter()
        .flat_map(|point| {
            let third = point.third.as_ref().map(|third| third.base);
            point.tapes.iter().map(|tape| tape.base).chain(third)
        })
        .collect();
    used.sort_unstable();
    used.dedup();
    let mut plates: Vec<Spot> = Vec::new();
    for number in used {
        let Some(&at) = setout.bases.at.get(number) else {
            continue;
        };
        base_mark(&mut scene, spot(at));
        label(
            &mut scene,
            &mut plates,
            spot(at),
            base(setout, number),
            caps.name,
        );
    }
    for (number, stop) in setout.walk.iter().enumerate() {
        let Some(point) = setout.points.get(stop.point) else {
            continue;
        };
        key_mark(&mut scene, &view, point);
        label(
            &mut scene,
            &mut plates,
            spot(point.at),
            &(number + 1).to_string(),
            caps.note,
        );
    }
    (scene, sheet.word("page-setout-map"))
}

/// A surveyed point that a tape hangs on: a solid square.
fn base_mark(scene: &mut Scene, [x, y]: Spot) {
    let half = 0.9;
    let ring = [
        [x - half, y - half],
        [x + half, y - half],
        [x + half, y + half],
        [x - half, y + half],
    ];
    scene.shape(Path::ring(&ring), INK, Stroke::solid(pen::ZONE));
}

/// A key point: a cross in a white ring.
fn key_mark(scene: &mut Scene, view: &View, point: &KeyPoint) {
    let [x, y] = view.at(point.at);
    scene.shape(
        Path::circle([x, y], 1.3),
        WHITE,
        Stroke::solid(pen::ELLIPSE),
    );
    for way in [[1.3, 0.0], [0.0, 1.3]] {
        let ends = [[x - way[0], y - way[1]], [x + way[0], y + way[1]]];
        scene.stroke(Path::line(&ends), Stroke::solid(pen::ELLIPSE));
    }
}

/// Words beside a mark, where no other words of this map stand.
fn label(scene: &mut Scene, plates: &mut Vec<Spot>, [x, y]: Spot, words: &str, cap: f64) {
    let wide = face::width(words, cap, Weight::Bold);
    let off = [wide / 2.0 + 2.2, cap / 2.0 + 2.2];
    let ways = [
        [1.0, -1.0],
        [-1.0, -1.0],
        [1.0, 1.0],
        [-1.0, 1.0],
        [1.4, 0.0],
        [-1.4, 0.0],
        [0.0, -1.6],
        [0.0, 1.6],
    ];
    let spots = ways.map(|way| [x + way[0] * off[0], y + way[1] * off[1]]);
    let free = |at: &Spot| {
        plates
            .iter()
            .all(|plate| (plate[0] - at[0]).abs() > 4.5 || (plate[1] - at[1]).abs() > cap + 1.2)
    };
    let at = spots.iter().copied().find(free).unwrap_or(spots[0]);
    plates.push(at);
    let plate = crate::drawing::scene::Rect {
        x: at[0] - wide / 2.0 - 0.4,
        y: at[1] - cap / 2.0 - 0.5,
        w: wide + 0.8,
        h: cap + 1.0,
    };
    scene.fill(Path::plate(plate, 0.4), WHITE);
    scene.text(
        Text::new(words.to_owned(), [at[0], at[1] + cap / 2.0], cap)
            .bold()
            .middle(),
    );
}

/// Marking by marking: the chalk line, what is found from it, the right angle.
fn figures(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, setout: &SetOut) {
    paper.page_break();
    paper.heading(2, &sheet.word("page-setout-figures"));
    paper.lead(&sheet.word("page-setout-figures-how"));
    for (marking, (record, _)) in setout.markings.iter().zip(planned.markings()) {
        let name = words::marking(sheet, record, planned.candidate(record));
        paper.heading(3, &name);
        let point = |number: usize| {
            let point = setout.points.get(number);
            point.map_or_else(String::new, |point| point.name.clone())
        };
        let mut items = Vec::new();
        if let Some(chalk) = &marking.chalk {
            let ends: Vec<String> = marking.points.iter().take(2).map(|at| point(*at)).collect();
            items.push(sheet.say(msg!(
                "page-setout-chalk",
                ends = ends,
                length = measure::reading(chalk.length, sheet)
            )));
        }
        if let Some(square) = &marking.square {
            items.push(sheet.say(msg!(
                "page-setout-square",
                along = measure::reading(square.along, sheet),
                aside = measure::reading(square.aside, sheet),
                across = measure::reading(square.across, sheet),
                side = if square.left { "left" } else { "right" }
            )));
        }
        for span in &marking.spans {
            items.push(sheet.say(msg!(
                "page-setout-span",
                ends = span.between.map(point).to_vec(),
                length = measure::reading(span.length, sheet),
                limit = limit(sheet, span.limit)
            )));
        }
        paper.list(&items, false);
        if let Some(chalk) = marking
            .chalk
            .as_ref()
            .filter(|chalk| !chalk.offsets.is_empty())
        {
            let rows: Vec<Vec<String>> = chalk
                .offsets
                .iter()
                .map(|offset| {
                    vec![
                        feature(sheet, &offset.feature),
                        measure::reading(offset.along, sheet),
                        if offset.left > 0.0 {
                            measure::reading(offset.left, sheet)
                        } else {
                            String::new()
                        },
                        if offset.left < 0.0 {
                            measure::reading(-offset.left, sheet)
                        } else {
                            String::new()
                        },
                    ]
                })
                .collect();
            paper.table(
                &[
                    Column::prose(sheet.word("page-setout-what"), 1),
                    Column::figures(sheet.word("page-setout-along")),
                    Column::figures(sheet.word("page-setout-left")),
                    Column::figures(sheet.word("page-setout-right")),
                ],
                &rows,
                false,
            );
        }
    }
}
