//! A plate at 1:1 on pages of the house's paper, to be glued together and cut along.

use ::stencil::{Panel, Stencil};
use cutfile::{Page, Tile, Tiling, tiles};
use geo::{BooleanOps, BoundingRect, Coord, LineString, MultiLineString, Rect as Window};
use ledger::Ledger;
use note::msg;

use crate::drawing::scene::{Dash, Path, Scene, Stroke, Text, pen};
use crate::drawing::view::View;
use crate::sheet::{Paper, Sheet};
use crate::typeset::Manuscript;

/// Millimetres of a metre: 1:1.
const MM: f64 = 1000.0;
/// Ends of the bars that are measured before anybody cuts, mm.
const BARS: [(f64, &str); 2] = [(100.0, "100 mm"), (101.6, "4 in")];

/// Writes a stencil's panels, each with a map of its pages first.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, stencil: &Stencil, ledger: &Ledger) {
    let page = match sheet.paper {
        Paper::A4 => Page::A4,
        Paper::Letter => Page::Letter,
    };
    for panel in &stencil.panels {
        let Some(room) = panel.plate.bounding_rect() else {
            continue;
        };
        let low = room.min();
        let tiling = tiles([room.width(), room.height()], page, ledger);
        let lines = lines(panel, low);
        paper.plate(
            &map(sheet, panel, &tiling, &lines),
            &sheet.say(msg!(
                "tiles-map",
                panel = panel.id.as_str(),
                columns = tiling.columns,
                rows = tiling.rows
            )),
        );
        for tile in &tiling.pages {
            paper.plate(
                &one(sheet, panel, &tiling, tile, &lines),
                &sheet.say(msg!(
                    "tiles-page",
                    panel = panel.id.as_str(),
                    page = tile.label.as_str()
                )),
            );
        }
    }
}

/// What is cut, from the plate's lower left corner.
fn lines(panel: &Panel, low: Coord<f64>) -> MultiLineString<f64> {
    let moved =
        |ring: &LineString<f64>| -> LineString<f64> { ring.coords().map(|at| *at - low).collect() };
    MultiLineString::new(panel.cuts.iter().map(moved).collect())
}

/// All pages as a map.
fn map(sheet: &Sheet, panel: &Panel, tiling: &Tiling, lines: &MultiLineString<f64>) -> Scene {
    let [wide, high] = sheet.paper.upright();
    let caps = sheet.caps();
    let mut scene = Scene::new(wide, high);
    let (left, top) = (20.0, 52.0);
    let title = format!("{}: {} × {}", panel.id, tiling.columns, tiling.rows);
    scene.text(Text::new(title, [left, 26.0], caps.title).bold());
    for (number, key) in ["tiles-scale", "tiles-glue"].into_iter().enumerate() {
        let line = 35.0 + 5.5 * number as f64;
        scene.text(Text::new(sheet.word(key), [left, line], caps.name));
    }
    let reach = |axis: usize, count: usize| {
        tiling.reach[axis]
            + (tiling.reach[axis] - tiling.overlap) * (count.saturating_sub(1)) as f64
    };
    let (x, y) = (reach(0, tiling.columns), reach(1, tiling.rows));
    let mm = ((wide - 40.0) / x).min((high - top - 30.0) / y);
    let tall = lines.bounding_rect().map_or(0.0, |rect| rect.max().y);
    let view = View {
        mm,
        origin: [left, top + tall * mm],
    };
    for line in lines {
        scene.stroke(Path::ring(&view.ring(line)), Stroke::solid(pen::ZONE));
    }
    for tile in &tiling.pages {
        let [x0, y0, x1, y1] = tile.window;
        let a = view.at(Coord { x: x0, y: y1 });
        let b = view.at(Coord { x: x1, y: y0 });
        let ring = [a, [b[0], a[1]], b, [a[0], b[1]]];
        scene.stroke(Path::ring(&ring), Stroke::dashed(pen::HAIR, Dash::Short));
        let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0 + caps.head / 2.0];
        scene.text(
            Text::new(tile.label.clone(), middle, caps.head)
                .bold()
                .middle(),
        );
    }
    scene
}

/// One page at 1:1.
fn one(
    sheet: &Sheet,
    panel: &Panel,
    tiling: &Tiling,
    tile: &Tile,
    lines: &MultiLineString<f64>,
) -> Scene {
    let [wide, high] = match (sheet.paper.upright(), tiling.landscape) {
        (size, false) => size,
        ([wide, high], true) => [high, wide],
    };
    let caps = sheet.caps();
    let [x0, y0, x1, y1] = tile.window;
    let (w, h) = ((x1 - x0) * MM, (y1 - y0) * MM);
    let (left, top) = ((wide - w) / 2.0, (high - h) / 2.0);
    let view = View {
        mm: MM,
        origin: [left - x0 * MM, top + y1 * MM],
    };
    let mut scene = Scene::new(wide, high);
    let window = Window::new(Coord { x: x0, y: y0 }, Coord { x: x1, y: y1 }).to_polygon();
    for line in &window.clip(lines, false) {
        scene.stroke(Path::line(&view.line(line)), Stroke::solid(pen::ELLIPSE));
    }
    crops(&mut scene, [left, top, w, h]);
    // what the next page to the right, and the one below, show again
    let over = tiling.overlap * MM;
    let glue = Stroke::dashed(pen::HAIR, Dash::Short);
    if tile.right.is_some() {
        let x = left + w - over;
        scene.stroke(Path::line(&[[x, top], [x, top + h]]), glue);
    }
    if tile.below.is_some() {
        let y = top + h - over;
        scene.stroke(Path::line(&[[left, y], [left + w, y]]), glue);
    }
    for (number, (long, words)) in BARS.into_iter().enumerate() {
        let (x, y) = (left + 14.0, top + 8.0 + 6.0 * number as f64);
        bar(&mut scene, [x, y], long, words, caps.note);
    }
    let at = [left + w - 14.0, top + 9.0];
    let name = format!("{}  {}", panel.id, tile.label);
    scene.text(Text::new(name, at, caps.head).bold().end());
    let next = |key: &'static str, other: &Option<String>| {
        other
            .as_ref()
            .map(|label| sheet.say(msg!(key, page = label.as_str())))
    };
    let told: Vec<String> = [
        next("tiles-right", &tile.right),
        next("tiles-below", &tile.below),
    ]
    .into_iter()
    .flatten()
    .collect();
    let at = [left + w - 14.0, top + 14.0];
    scene.text(Text::new(told.join(", "), at, caps.note).end());
    scene
}

/// Marks at the corners of what is shown, outside it.
fn crops(scene: &mut Scene, [x, y, w, h]: [f64; 4]) {
    const LONG: f64 = 6.0;
    const OFF: f64 = 1.5;
    for (cx, out_x) in [(x, -1.0), (x + w, 1.0)] {
        for (cy, out_y) in [(y, -1.0), (y + h, 1.0)] {
            for [from, to] in [
                [[cx + out_x * OFF, cy], [cx + out_x * (OFF + LONG), cy]],
                [[cx, cy + out_y * OFF], [cx, cy + out_y * (OFF + LONG)]],
            ] {
                scene.stroke(Path::line(&[from, to]), Stroke::solid(pen::HAIR));
            }
        }
    }
}

/// A bar with its length. It covers nothing: a line to cut may run under it.
fn bar(scene: &mut Scene, [x, y]: [f64; 2], long: f64, words: &str, cap: f64) {
    let mut path = Path::line(&[[x, y], [x + long, y]]);
    for end in [x, x + long] {
        path.add_line(&[[end, y - 1.5], [end, y + 1.5]]);
    }
    scene.stroke(path, Stroke::solid(pen::ZONE));
    scene.text(Text::new(
        words.to_owned(),
        [x + long + 2.0, y + cap / 2.0],
        cap,
    ));
}
