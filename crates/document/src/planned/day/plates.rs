//! The stencils: a thumbnail each, and where they are laid.

use ::stencil::{Motif, Stencil};
use geo::{Area, BoundingRect};
use note::msg;

use super::Build;
use crate::drawing::figure;
use crate::drawing::scene::{Dash, INK, Path, Scene, Stroke, Text, pen};
use crate::drawing::view::View;
use crate::face::{self, Weight};
use crate::measure;
use crate::planned::{Planned, painter, words};
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Thumbnails in a row.
const ROW: usize = 4;

/// Writes the pages.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, build: &Build) {
    let stencils = &build.stencils.stencils;
    paper.heading(2, &sheet.word("day-stencils"));
    let uses: usize = stencils.iter().map(|one| one.uses.len()).sum();
    paper.paragraph(&sheet.say(msg!(
        "day-stencils-told",
        stencils = stencils.len(),
        uses = uses,
        sheets = build.sheets
    )));
    paper.list(
        &[
            "day-stencil-up",
            "day-stencil-ticks",
            "day-stencil-ties",
            "day-stencil-clean",
        ]
        .map(|key| sheet.word(key)),
        false,
    );
    for row in stencils.chunks(ROW) {
        let told: Vec<String> = row.iter().map(|one| title(sheet, one)).collect();
        let scene = thumbnails(sheet, row);
        paper.figure(
            &scene,
            &sheet.say(msg!("day-stencils-alt", stencils = told)),
        );
    }
    let rows: Vec<Vec<String>> = stencils
        .iter()
        .map(|one| {
            vec![
                one.id.clone(),
                title(sheet, one),
                size(sheet, one),
                one.panels.len().to_string(),
                places(sheet, planned, one),
            ]
        })
        .collect();
    paper.sentences(
        &[
            Column::words(sheet.word("day-column-stencil")),
            Column::prose(sheet.word("day-column-shows"), 3),
            Column::words(sheet.say(msg!("day-column-plate", unit = measure::unit(sheet.units)))),
            Column::figures(sheet.word("day-column-panels")),
            Column::prose(sheet.word("day-column-where"), 4),
        ],
        &rows,
    );
    taped(paper, sheet, planned, build);
}

/// What is taped or rolled along chalk lines.
fn taped(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, build: &Build) {
    let taped = &build.stencils.taped;
    if taped.is_empty() {
        return;
    }
    paper.heading(2, &sheet.word("day-taped"));
    paper.lead(&sheet.word("day-taped-how"));
    let mut rows = Vec::new();
    for (number, (marking, _)) in planned.markings().enumerate() {
        let mut colours: Vec<_> = taped
            .iter()
            .filter(|one| one.marking == number)
            .map(|one| one.colour)
            .collect();
        colours.sort();
        colours.dedup();
        for colour in colours {
            let of = || {
                taped
                    .iter()
                    .filter(move |one| one.marking == number && one.colour == colour)
            };
            let outline: f64 = of().map(|one| one.outline).sum();
            let area: f64 = of().map(|one| one.area).sum();
            rows.push(vec![
                words::marking(sheet, marking, planned.candidate(marking)),
                sheet.word(painter::paint_key(colour)),
                of().count().to_string(),
                measure::dimension(outline, sheet),
                measure::area_figure(area, sheet),
            ]);
        }
    }
    let unit = measure::unit(sheet.units);
    paper.table(
        &[
            Column::prose(sheet.word("page-column-marking"), 2),
            Column::prose(sheet.word("day-column-colour"), 1),
            Column::figures(sheet.word("day-column-shapes")),
            Column::figures(sheet.say(msg!("day-column-edge", unit = unit))),
            Column::figures(sheet.say(msg!("office-column-painted", unit = unit))),
        ],
        &rows,
        false,
    );
}

/// What a stencil shows, and in which colours.
fn title(sheet: &Sheet, one: &Stencil) -> String {
    let (motif, glyph) = match &one.motif {
        Motif::Glyph(text) => ("glyph", text.as_str()),
        other => (other.word(), ""),
    };
    let colours: Vec<String> = one
        .colours
        .iter()
        .map(|colour| sheet.word(painter::paint_key(*colour)))
        .collect();
    format!(
        "{}, {}",
        sheet.say(msg!("day-motif", motif = motif, glyph = glyph)),
        colours.join(" + ")
    )
}

fn size(sheet: &Sheet, one: &Stencil) -> String {
    one.plate.bounding_rect().map_or_else(String::new, |rect| {
        format!(
            "{} × {}",
            measure::dimension(rect.width(), sheet),
            measure::dimension(rect.height(), sheet)
        )
    })
}

/// Marking by marking how often it is laid.
fn places(sheet: &Sheet, planned: &Planned, one: &Stencil) -> String {
    let all: Vec<String> = planned
        .markings()
        .enumerate()
        .filter_map(|(number, (marking, _))| {
            let times = one
                .uses
                .iter()
                .filter(|used| used.marking == number)
                .count();
            let over = one
                .uses
                .iter()
                .filter(|used| used.marking == number && used.over)
                .count();
            (times > 0).then(|| {
                sheet.say(msg!(
                    "day-laid",
                    name = words::marking(sheet, marking, planned.candidate(marking)),
                    times = times,
                    over = over
                ))
            })
        })
        .collect();
    all.join("; ")
}

/// Plates side by side, each as large as its room allows.
fn thumbnails(sheet: &Sheet, row: &[Stencil]) -> Scene {
    let caps = sheet.caps();
    let grow = caps.note / 1.8;
    let (wide, tall) = (175.0 / ROW as f64, 34.0);
    let lines = 2.0 * (caps.note * 1.7) + caps.name * 1.9;
    let mut scene = Scene::new(175.0, tall + lines + 2.0 * grow);
    for (number, one) in row.iter().enumerate() {
        let left = wide * number as f64;
        let Some(rect) = one.plate.bounding_rect() else {
            continue;
        };
        let mm =
            ((wide - 5.0) / rect.width().max(1e-6)).min((tall - 2.0) / rect.height().max(1e-6));
        let middle = [left + wide / 2.0, tall / 2.0];
        let centre = rect.center();
        let view = View {
            mm,
            origin: [middle[0] - centre.x * mm, middle[1] + centre.y * mm],
        };
        let pieces: Vec<_> = one
            .openings
            .iter()
            .filter(|open| open.polygon.unsigned_area() > 0.0)
            .map(|open| (view.rings(&open.polygon), painter::paint_of(open.colour)))
            .collect();
        figure::painted(&mut scene, &pieces, true, pen::HAIR);
        let edge = view.ring(one.plate.exterior());
        scene.stroke(Path::ring(&edge), Stroke::solid(pen::ZONE));
        for panel in one.panels.iter().filter(|_| one.panels.len() > 1) {
            let seam = view.ring(panel.plate.exterior());
            scene.stroke(Path::ring(&seam), Stroke::dashed(pen::THIN, Dash::Short));
        }
        for panel in &one.panels {
            for hole in &panel.holes {
                scene.stroke(Path::circle(view.at(*hole), 0.5), Stroke::solid(pen::THIN));
            }
            let [tail, tip] = panel.arrow.map(|at| view.at(at));
            scene.stroke(Path::line(&[tail, tip]), Stroke::solid(pen::ZONE));
            scene.shape(Path::circle(tip, 0.6), INK, Stroke::solid(pen::HAIR));
        }
        let mut y = tall + caps.name * 1.5;
        let times = format!("{}  × {}", one.id, one.uses.len());
        scene.text(Text::new(times, [middle[0], y], caps.name).bold().middle());
        for line in face::wrap(&title(sheet, one), caps.note, Weight::Regular, wide - 3.0)
            .into_iter()
            .take(2)
        {
            y += caps.note * 1.7;
            scene.text(Text::new(line, [middle[0], y], caps.note).middle());
        }
    }
    scene
}
