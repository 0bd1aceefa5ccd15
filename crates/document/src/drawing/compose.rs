//! Lays a plan out on a sheet: the largest scale of the rulers at which the yard, its
//! dimensions, the title block, the legend and, where there is room, the survey stand
//! beside each other without touching.

use super::block::{self, Columns, Entry, Title};
use super::scale::Scale;
use super::scene::{Rect, Scene, Spot};
use super::taken::inside;
use super::view::{View, far};
use super::yard::Plan;
use crate::sheet::Sheet;

/// Cells of the search, mm.
const CELL: f64 = 1.5;
/// Paper that printers cannot reach, mm.
const RIM: f64 = 6.0;
/// Room that dimensions need outside the yard, mm.
const BAND: f64 = 11.5;
/// Room between blocks, mm.
const APART: f64 = 4.0;

/// A sheet laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// Width and height of the sheet as it is held, mm.
    pub size: [f64; 2],
    /// The reduction.
    pub scale: Scale,
    /// Where the yard lies.
    pub view: View,
    /// The title block's ground.
    pub title: Rect,
    /// The legend's ground and its columns.
    pub legend: Option<(Rect, Columns)>,
    /// The survey's ground, where there is room for it.
    pub inset: Option<Rect>,
}

/// Which cells are taken, and how many in any rectangle, in one subtraction.
struct Grid {
    columns: usize,
    rows: usize,
    sums: Vec<u32>,
}

impl Grid {
    fn new(size: [f64; 2], mut taken: impl FnMut(Spot) -> bool) -> Grid {
        let (columns, rows) = ((size[0] / CELL) as usize, (size[1] / CELL) as usize);
        let wide = columns + 1;
        let mut sums = vec![0; wide * (rows + 1)];
        for row in 0..rows {
            let mut line = 0;
            for column in 0..columns {
                let middle = [(column as f64 + 0.5) * CELL, (row as f64 + 0.5) * CELL];
                line += u32::from(taken(middle));
                sums[(row + 1) * wide + column + 1] = sums[row * wide + column + 1] + line;
            }
        }
        Grid {
            columns,
            rows,
            sums,
        }
    }

    fn free(&self, rect: &Rect) -> bool {
        let low = |v: f64| (v / CELL).floor();
        let high = |v: f64| (v / CELL).ceil();
        let (left, top) = (low(rect.x), low(rect.y));
        let (right, bottom) = (high(rect.x + rect.w), high(rect.y + rect.h));
        if left < 0.0 || top < 0.0 || right > self.columns as f64 || bottom > self.rows as f64 {
            return false;
        }
        let (l, t, r, b) = (left as usize, top as usize, right as usize, bottom as usize);
        let wide = self.columns + 1;
        self.sums[b * wide + r] + self.sums[t * wide + l]
            == self.sums[t * wide + r] + self.sums[b * wide + l]
    }
}

/// Lays out a plan. Every yard gets a sheet: past the rulers the scale goes on in 1, 2 and 5.
pub fn compose(
    sheet: &Sheet,
    plan: &Plan,
    entries: &[Entry],
    title: &dyn Fn(Scale) -> Title,
) -> Layout {
    let ring: Vec<Spot> = plan
        .yard
        .boundary
        .exterior()
        .coords()
        .map(|c| [c.x, -c.y])
        .collect();
    let bounds = Rect::round(ring.iter().copied()).unwrap_or(Rect {
        x: 0.0,
        y: 0.0,
        w: 1.0,
        h: 1.0,
    });
    let upright = sheet.paper.upright();
    let mut last = None;
    for scale in
        Scale::all(sheet.units).chain([5, 10, 20, 50, 100, 200, 500].map(|k| Scale(k * 1000)))
    {
        let mm = scale.mm();
        let mut best: Option<(f64, Layout)> = None;
        for size in [[upright[1], upright[0]], upright] {
            let need = need(sheet);
            if bounds.w * mm + 2.0 * need > size[0] || bounds.h * mm + 2.0 * need > size[1] {
                continue;
            }
            for (score, layout) in places(sheet, plan, entries, title, scale, size, &ring, bounds) {
                if best.as_ref().is_none_or(|(top, _)| score > *top + 1e-9) {
                    best = Some((score, layout));
                }
            }
        }
        if let Some((_, layout)) = best {
            return layout;
        }
        last = Some(scale);
    }
    // only a yard past every scale comes here, and `unit::LONGEST` refuses it at the door
    let scale = last.unwrap_or(Scale(500_000));
    let size = [upright[1], upright[0]];
    let view = View {
        mm: scale.mm(),
        origin: [RIM + BAND, size[1] - RIM - BAND],
    };
    let title = title_ground(sheet, size, &title(scale));
    Layout {
        size,
        scale,
        view,
        title,
        legend: None,
        inset: None,
    }
}

/// Least distance of the yard from the sheet's edge at which a dimension still stands, mm:
/// the nearest line that is offered and the ends of its extensions.
fn need(sheet: &Sheet) -> f64 {
    5.5 * (sheet.caps().name / 2.5).min(1.2) + 1.8
}

fn title_ground(sheet: &Sheet, size: [f64; 2], title: &Title) -> Rect {
    let at = [size[0] - RIM - block::title_width(sheet), RIM];
    block::title(&mut Scene::new(size[0], size[1]), at, sheet, title)
}

/// The ways to lay out at one scale on one sheet, each with its worth.
#[allow(clippy::too_many_arguments)]
fn places(
    sheet: &Sheet,
    plan: &Plan,
    entries: &[Entry],
    title: &dyn Fn(Scale) -> Title,
    scale: Scale,
    size: [f64; 2],
    ring: &[Spot],
    bounds: Rect,
) -> Vec<(f64, Layout)> {
    let mm = scale.mm();
    let title = title_ground(sheet, size, &title(scale));
    let band = if sheet.large { BAND * 1.35 } else { BAND };
    // the yard with the room its dimensions need, as a mask about its own corner
    let mask = {
        let shifted: Vec<Spot> = ring
            .iter()
            .map(|s| [(s[0] - bounds.x) * mm + band, (s[1] - bounds.y) * mm + band])
            .collect();
        let room = [bounds.w * mm + 2.0 * band, bounds.h * mm + 2.0 * band];
        let rings = vec![shifted.clone()];
        let columns = (room[0] / CELL).ceil() as usize + 1;
        let rows = (room[1] / CELL).ceil() as usize + 1;
        let cells: Vec<bool> = (0..columns * rows)
            .map(|cell| {
                let spot = [
                    (cell % columns) as f64 * CELL,
                    (cell / columns) as f64 * CELL,
                ];
                inside(&rings, spot)
                    || shifted
                        .windows(2)
                        .any(|side| off(spot, side[0], side[1]) <= band)
            })
            .collect();
        move |spot: Spot| {
            let (x, y) = (spot[0] / CELL, spot[1] / CELL);
            x >= 0.0
                && y >= 0.0
                && x < columns as f64
                && (y as usize) < rows
                && cells[y as usize * columns + x as usize]
        }
    };
    let room = [
        size[0] - 2.0 * RIM - bounds.w * mm,
        size[1] - 2.0 * RIM - bounds.h * mm,
    ];
    // a yard that fills the sheet may leave less room for dimensions on a side without any
    let least = (band - 5.0)
        .min(room[0].min(room[1]) / 2.0)
        .max(need(sheet) - RIM);
    let steps = |room: f64| -> Vec<f64> {
        let (low, high) = (least, (room - least).max(least));
        let wanted = [band.min(high).max(low), high, (low + high) / 2.0, low];
        let mut all: Vec<f64> = wanted
            .into_iter()
            .chain((1..6).map(|k| low + (high - low) * f64::from(k) / 6.0))
            .collect();
        all.sort_by(f64::total_cmp);
        all.dedup_by(|a, b| (*a - *b).abs() < 1.0);
        all
    };
    let mut found = Vec::new();
    for dx in steps(room[0]) {
        for dy in steps(room[1]) {
            let corner = [RIM + dx, RIM + dy];
            let meets_title = title.grown(APART / 2.0);
            let grid = Grid::new(size, |spot| {
                let rim = spot[0] < RIM - 1.0
                    || spot[1] < RIM - 1.0
                    || spot[0] > size[0] - RIM + 1.0
                    || spot[1] > size[1] - RIM + 1.0;
                rim || mask([spot[0] - corner[0] + band, spot[1] - corner[1] + band])
            });
            if !grid.free(&title) {
                continue;
            }
            let free = |rect: &Rect, others: &[Rect]| {
                grid.free(rect)
                    && !rect.meets(&meets_title)
                    && !others.iter().any(|other| rect.grown(APART).meets(other))
            };
            let Some(legend) = legend_place(sheet, entries, size, title, &free) else {
                continue;
            };
            let others: Vec<Rect> = legend.iter().map(|(rect, _)| *rect).collect();
            let inset = plan
                .survey
                .and_then(|_| inset_place(sheet, size, title, &others, &free));
            let view = View {
                mm,
                origin: [corner[0] - bounds.x * mm, corner[1] - bounds.y * mm],
            };
            let worth = inset.map_or(0.0, |rect| rect.w) * 10.0
                + dx.min(band).min(room[0] - dx)
                + dy.min(band).min(room[1] - dy)
                - legend.map_or(0.0, |(_, columns)| columns.count as f64);
            found.push((
                worth,
                Layout {
                    size,
                    scale,
                    view,
                    title,
                    legend,
                    inset,
                },
            ));
        }
    }
    found
}

/// Where the legend goes: nearest under the title block, in as few columns as will do.
fn legend_place(
    sheet: &Sheet,
    entries: &[Entry],
    size: [f64; 2],
    title: Rect,
    free: &dyn Fn(&Rect, &[Rect]) -> bool,
) -> Option<Option<(Rect, Columns)>> {
    if entries.is_empty() {
        return Some(None);
    }
    let grow = sheet.caps().note / 1.8;
    for measure in [26.0, 21.0] {
        for count in 1..=5 {
            let shape = Columns {
                count,
                measure: measure * grow,
            };
            let mut scratch = Scene::new(size[0], size[1]);
            let rect = block::legend(&mut scratch, [0.0, 0.0], sheet, entries, shape)?;
            let wish = [title.x, title.y + title.h + APART + 2.0];
            if let Some(rect) = nearest(rect, size, wish, &|rect| free(rect, &[])) {
                return Some(Some((rect, shape)));
            }
        }
    }
    None
}

fn inset_place(
    sheet: &Sheet,
    size: [f64; 2],
    title: Rect,
    others: &[Rect],
    free: &dyn Fn(&Rect, &[Rect]) -> bool,
) -> Option<Rect> {
    let grow = if sheet.large { 1.3 } else { 1.0 };
    [[84.0, 82.0], [70.0, 78.0], [62.0, 70.0], [54.0, 62.0]]
        .into_iter()
        .find_map(|[w, h]| {
            let rect = Rect {
                x: 0.0,
                y: 0.0,
                w: w * grow,
                h: h * grow,
            };
            nearest(rect, size, [title.x - w * grow - APART, title.y], &|rect| {
                free(rect, others)
            })
        })
}

/// The free place nearest to a wish.
fn nearest(rect: Rect, size: [f64; 2], wish: Spot, free: &dyn Fn(&Rect) -> bool) -> Option<Rect> {
    let mut best: Option<(f64, Rect)> = None;
    let mut offer = |x: f64, y: f64| {
        let moved = Rect { x, y, ..rect };
        let cost = far([x, y], wish);
        if best.as_ref().is_none_or(|(least, _)| cost < *least) && free(&moved) {
            best = Some((cost, moved));
        }
    };
    offer(wish[0], wish[1]);
    let mut y = RIM;
    while y + rect.h <= size[1] - RIM {
        let mut x = RIM;
        while x + rect.w <= size[0] - RIM {
            offer(x, y);
            x += CELL;
        }
        y += CELL;
    }
    best.map(|(_, rect)| rect)
}

/// Distance of a spot from a side.
fn off(spot: Spot, a: Spot, b: Spot) -> f64 {
    let way = [b[0] - a[0], b[1] - a[1]];
    let length = way[0] * way[0] + way[1] * way[1];
    let share = if length > 0.0 {
        (((spot[0] - a[0]) * way[0] + (spot[1] - a[1]) * way[1]) / length).clamp(0.0, 1.0)
    } else {
        0.0
    };
    far(spot, [a[0] + share * way[0], a[1] + share * way[1]])
}
