//! The plan sheet: the yard, its zones quiet behind, the markings in colour at scale.

use std::ops::Range;

use geo::{Coord, Distance, Euclidean, LineString};
use note::msg;

use super::{Planned, painter, words};
use crate::drawing::block::{self, Title};
use crate::drawing::compose::compose;
use crate::drawing::figure::{Paint, painted};
use crate::drawing::hatch::Rings;
use crate::drawing::label;
use crate::drawing::mark;
use crate::drawing::scale::Scale;
use crate::drawing::scene::{Colour, INK, Item, Path, Rect, Scene, Spot, Text, WHITE, pen};
use crate::drawing::svg::Told;
use crate::drawing::taken::{Slab, Taken, weight};
use crate::drawing::view::View;
use crate::drawing::yard::{self, Plan};
use crate::face::{self, Weight};
use crate::measure;
use crate::plan_sheet::{self, Drawn};
use crate::sheet::Sheet;
use unit::Units;

/// Ink of what stands behind the markings: 3:1 on paper.
const QUIET: Colour = Colour(0x8C_91_97);

/// Draws the plan sheet.
pub fn draw(sheet: &Sheet, planned: &Planned) -> Drawn {
    let surveyed = planned.yard;
    // the survey has its own sheet: its points and ellipses would only be in the way here
    let plan = Plan {
        survey: None,
        ..surveyed
    };
    let entries = block::entries(&plan);
    let areas = plan_sheet::areas(sheet, &surveyed);
    let count = planned.markings().count();
    let title = |scale: Scale| Title {
        kind: sheet.word("page-kind-plan"),
        rows: vec![
            (
                sheet.word("doc-row-scale"),
                sheet.say(msg!(
                    "doc-scale-on",
                    scale = scale.says(sheet.units),
                    paper = sheet.paper.name()
                )),
            ),
            (sheet.word("doc-row-date"), sheet.date.to_owned()),
            (sheet.word("page-row-markings"), count.to_string()),
            (sheet.word("doc-row-free"), areas.free.clone()),
            (
                sheet.word("doc-row-lengths"),
                sheet.word(match sheet.units {
                    Units::Metres => "doc-lengths-metres",
                    Units::Feet => "doc-lengths-feet",
                }),
            ),
        ],
        scale,
        caution: match sheet.credit {
            Some(credit) => format!("{} {credit}", sheet.word("doc-caution-plan")),
            None => sheet.word("doc-caution-plan"),
        },
    };
    // the survey's room on the sheet is the markings' here
    let layout = compose(sheet, &surveyed, &entries, &title);
    let [width, height] = layout.size;
    let mut scene = Scene::new(width, height);
    let mut taken = Taken::new(width, height);
    let blocks = [
        Some(layout.title),
        layout.legend.map(|(rect, _)| rect),
        layout.inset,
    ];
    for block in blocks.into_iter().flatten() {
        taken.slab(&Slab::level(block.grown(1.0)), weight::NEVER);
    }
    yard::draw(&mut scene, &mut taken, &plan, &layout.view);
    set_back(&mut scene);
    let envelopes = markings(&mut scene, &mut taken, planned, &layout.view, layout.scale);
    names(&mut scene, &mut taken, sheet, planned, &envelopes);
    label::write(
        &mut scene,
        &mut taken,
        sheet,
        &plan,
        &layout.view,
        planned.ledger,
    );
    block::title(
        &mut scene,
        [layout.title.x, layout.title.y],
        sheet,
        &title(layout.scale),
    );
    if let Some((rect, columns)) = layout.legend {
        block::legend(&mut scene, [rect.x, rect.y], sheet, &entries, columns);
    }
    if let Some(rect) = layout.inset {
        list(&mut scene, rect, sheet, planned);
    }
    let told = Told {
        title: sheet.say(msg!(
            "doc-told-title",
            name = sheet.name,
            kind = sheet.word("page-kind-plan")
        )),
        says: says(sheet, planned, layout.scale),
        language: sheet.language.tag(),
    };
    Drawn {
        scene,
        told,
        layout,
    }
}

/// The sheet in words: what lies where.
fn says(sheet: &Sheet, planned: &Planned, scale: Scale) -> String {
    let all: Vec<String> = planned
        .markings()
        .map(|(marking, _)| {
            sheet.say(msg!(
                "page-plan-lies",
                name = words::marking(sheet, marking, planned.candidate(marking)),
                x = words::length(sheet, marking.at[0]),
                y = words::length(sheet, marking.at[1])
            ))
        })
        .collect();
    sheet.say(msg!(
        "page-plan-told",
        name = sheet.name,
        scale = scale.says(sheet.units),
        markings = all
    ))
}

/// Sets thin lines back: zones are known, the markings are new.
fn set_back(scene: &mut Scene) {
    for item in &mut scene.items {
        if let Item::Path(_, fill, stroke) = item {
            match stroke {
                Some(stroke) if stroke.width <= pen::ZONE && stroke.colour == INK => {
                    stroke.colour = QUIET
                }
                // dots of a hatch are filled without an outline
                None if *fill == Some(INK) => *fill = Some(QUIET),
                _ => {}
            }
        }
    }
}

fn spots(view: &View, ring: &[[f64; 2]]) -> Vec<Spot> {
    let line: LineString<f64> = ring.iter().map(|&[x, y]| Coord { x, y }).collect();
    view.ring(&line)
}

fn rings(view: &View, polygon: &[Vec<[f64; 2]>]) -> Rings {
    polygon
        .iter()
        .map(|ring| spots(view, ring))
        .filter(|ring| ring.len() > 2)
        .collect()
}

/// Draws all markings as the record has them; returns their envelopes on the sheet.
fn markings(
    scene: &mut Scene,
    taken: &mut Taken,
    planned: &Planned,
    view: &View,
    scale: Scale,
) -> Vec<Vec<Spot>> {
    let mut envelopes = Vec::new();
    let mut pieces: Vec<(Rings, Paint)> = Vec::new();
    for (marking, _) in planned.markings() {
        let needed = rings(view, &marking.envelope);
        for ring in needed.iter().take(1) {
            painter::envelope(scene, ring);
            taken.ring(ring, weight::LINE);
            envelopes.push(ring.clone());
        }
        if needed.is_empty() {
            envelopes.push(Vec::new());
        }
        for paint in &marking.paint {
            if let Some(colour) = painter::paint_named(&paint.colour) {
                let rings = rings(view, &paint.polygon);
                taken.ground(&rings, weight::HARD);
                rings.iter().for_each(|ring| taken.ring(ring, weight::HARD));
                pieces.push((rings, painter::paint_of(colour)));
            }
        }
    }
    let outline = if scale.0 > 60 { pen::HAIR } else { pen::ZONE };
    painted(scene, &pieces, planned.in_colour, outline);
    envelopes
}

/// A number in a disc and a name beside each envelope, where they cover least.
fn names(
    scene: &mut Scene,
    taken: &mut Taken,
    sheet: &Sheet,
    planned: &Planned,
    envelopes: &[Vec<Spot>],
) {
    let cap = sheet.caps().name;
    let disc = cap * 0.92;
    for (number, ((marking, _), ring)) in planned.markings().zip(envelopes).enumerate() {
        let Some(bounds) = Rect::round(ring.iter().copied()) else {
            continue;
        };
        let name = words::family(sheet, &marking.family);
        let name = if marking::family(&marking.family).is_some() {
            name
        } else {
            marking.name.clone()
        };
        let wide = 2.0 * disc + 1.4 + face::width(&face::printable(&name), cap, Weight::Bold);
        let whole = [wide / 2.0 + 0.5, disc + 0.4];
        let alone = [disc + 0.4, disc + 0.4];
        let place = |half: Spot, beside: bool| {
            let mut best: Option<(f64, Slab)> = None;
            for (bias, centre) in offers(bounds, half) {
                let turn = 0.0;
                let slab = Slab { centre, half, turn };
                if beside && !reads_as(&slab, number, envelopes) {
                    continue;
                }
                let cost = bias + taken.cost(&slab);
                if cost.is_finite() && best.as_ref().is_none_or(|(least, _)| cost < *least) {
                    best = Some((cost, slab));
                }
            }
            best.map(|(_, slab)| slab)
        };
        // where the name has no place the number stands alone; in the worst case in the middle
        let named = place(whole, true);
        let slab = named
            .or_else(|| place(alone, true))
            .or_else(|| place(alone, false))
            .unwrap_or(Slab {
                centre: bounds.centre(),
                half: alone,
                turn: 0.0,
            });
        let [x, y] = slab.centre;
        if named.is_some() && taken.cost(&slab) > 0.0 {
            let plate = Rect {
                x: x - slab.half[0],
                y: y - slab.half[1],
                w: 2.0 * slab.half[0],
                h: 2.0 * slab.half[1],
            };
            scene.fill(Path::plate(plate, 0.8), WHITE);
        }
        taken.slab(&slab, weight::NEVER);
        let said = (number + 1).to_string();
        if named.is_some() {
            let left = x - wide / 2.0 + disc;
            mark::number(scene, [left, y], &said, cap);
            scene.text(Text::new(name, [left + disc + 1.4, y + cap / 2.0], cap).bold());
        } else {
            mark::number(scene, [x, y], &said, cap);
        }
    }
}

/// Places for a label round bounds and within them, each with how little it is liked.
fn offers(bounds: Rect, half: Spot) -> Vec<(f64, Spot)> {
    let mut offers: Vec<(f64, Spot)> = Vec::new();
    let [x, y] = bounds.centre();
    let (w, h) = (bounds.w / 2.0, bounds.h / 2.0);
    for gap in [0.3, 2.0, 4.0, 7.0] {
        for slide in [-1.0, -0.5, 0.0, 0.5, 1.0] {
            let bias = gap * 1.6 + f64::abs(slide + 1.0) * 0.4;
            let across = x + slide * (w - half[0]);
            offers.push((bias, [across, y - h - half[1] - gap]));
            offers.push((bias + 0.6, [across, y + h + half[1] + gap]));
            let down = y + slide * (h - half[1]);
            offers.push((bias + 1.2, [x + w + half[0] + gap, down]));
            offers.push((bias + 1.2, [x - w - half[0] - gap, down]));
        }
    }
    // within its own envelope too, where nothing is painted
    for sx in [-1.0, -0.8, -0.4, 0.0, 0.4, 0.8, 1.0] {
        for sy in [-0.9, -0.6, -0.3, 0.0, 0.3, 0.6, 0.9] {
            let across = x + sx * (w - half[0]).max(0.0);
            offers.push((1.5, [across, y + sy * (h - half[1]).max(0.0)]));
        }
    }
    offers
}

/// Whether a name there is read as this marking's: it touches no other envelope and lies
/// clearly nearer to its own.
fn reads_as(slab: &Slab, number: usize, envelopes: &[Vec<Spot>]) -> bool {
    /// How much farther the next envelope has to be, mm.
    const CLEARLY: f64 = 2.5;
    let [x, y] = slab.centre;
    let plate = geo::Rect::new(
        Coord {
            x: x - slab.half[0],
            y: y - slab.half[1],
        },
        Coord {
            x: x + slab.half[0],
            y: y + slab.half[1],
        },
    )
    .to_polygon();
    let apart = |ring: &Vec<Spot>| {
        let line: LineString<f64> = ring.iter().map(|&[x, y]| Coord { x, y }).collect();
        Euclidean.distance(&plate, &geo::Polygon::new(line, Vec::new()))
    };
    let own = envelopes.get(number).map_or(0.0, apart);
    envelopes
        .iter()
        .enumerate()
        .filter(|(other, ring)| *other != number && ring.len() > 2)
        .all(|(_, ring)| apart(ring) > own + CLEARLY)
}

/// The markings listed beside the plan, and what their colours are called.
fn list(scene: &mut Scene, room: Rect, sheet: &Sheet, planned: &Planned) {
    let caps = sheet.caps();
    let bottom = room.y + room.h;
    let mut y = room.y + caps.name;
    scene.text(Text::new(sheet.word("page-list"), [room.x, y], caps.name).bold());
    y += 3.0;
    // as many columns as hold all; then without the sizes, which the pages of the markings tell
    let ways = [(1, true), (2, true), (2, false), (3, false)];
    let top = y;
    for (columns, sized) in ways {
        /// Between columns, mm.
        const BETWEEN: f64 = 4.0;
        let wide = (room.w + BETWEEN) / columns as f64 - BETWEEN;
        let lines = listed(sheet, planned, wide, sized);
        let all = |held: &Vec<Range<usize>>| held.last().is_some_and(|it| it.end == lines.len());
        let mut held = in_columns(&lines, columns, bottom - top, sheet);
        let last = (columns, sized) == ways[ways.len() - 1];
        if !all(&held) && !last {
            continue;
        }
        // no longer than they need be, so that columns end at much the same height
        for less in 1..(bottom - top).max(1.0) as usize {
            let shorter = in_columns(&lines, columns, bottom - top - less as f64, sheet);
            if !all(&shorter) {
                break;
            }
            held = shorter;
        }
        for (nth, column) in held.into_iter().enumerate() {
            let x = room.x + (wide + BETWEEN) * nth as f64;
            y = y.max(column_of(scene, [x, top], sheet, &lines, column));
        }
        break;
    }
    let colours = painter::colours(planned.figures);
    let manner = if planned.in_colour {
        painter::Manner::Painted
    } else {
        painter::Manner::Drawn
    };
    let half = (room.w / 2.0).max(30.0);
    y += 1.5;
    let rows = colours.len().div_ceil(2) as f64 * 5.4 + 6.0;
    if y + rows > bottom {
        return;
    }
    for (number, &colour) in colours.iter().enumerate() {
        let at = [
            room.x + half * (number % 2) as f64,
            y + 5.4 * (number / 2) as f64,
        ];
        painter::swatch(scene, at, colour, manner);
        let name = sheet.word(painter::paint_key(colour));
        scene.text(Text::new(
            name,
            [at[0] + 9.0, at[1] + 2.0 + caps.note / 2.0],
            caps.note,
        ));
    }
    y += colours.len().div_ceil(2) as f64 * 5.4;
    painter::envelope(
        scene,
        &[
            [room.x, y],
            [room.x + 7.0, y],
            [room.x + 7.0, y + 4.0],
            [room.x, y + 4.0],
        ],
    );
    for text in face::wrap(
        &sheet.word("page-list-envelope"),
        caps.note,
        Weight::Regular,
        room.w - 9.0,
    )
    .iter()
    .take(1)
    {
        scene.text(Text::new(
            text,
            [room.x + 9.0, y + 2.0 + caps.note / 2.0],
            caps.note,
        ));
    }
}

/// What the list tells of a marking: lines of its name, and of its size and price.
struct Listed {
    names: Vec<String>,
    says: Vec<String>,
}

impl Listed {
    /// Height on the sheet, mm.
    fn high(&self, sheet: &Sheet) -> f64 {
        list_line(sheet) * (self.names.len() + self.says.len()) as f64 + 1.4
    }
}

fn list_line(sheet: &Sheet) -> f64 {
    sheet.caps().note * 1.67
}

fn list_indent(sheet: &Sheet) -> f64 {
    6.0 * sheet.caps().note / 1.8
}

/// All markings in lines that a column of `wide` mm holds; `sized` tells size and price too.
fn listed(sheet: &Sheet, planned: &Planned, wide: f64, sized: bool) -> Vec<Listed> {
    let cap = sheet.caps().note;
    let room = wide - list_indent(sheet);
    let lines = |(marking, figure)| {
        let candidate = planned.candidate(marking);
        let name = words::marking(sheet, marking, candidate);
        let size = painter::Extent::of_way(figure).size();
        let mut says = sheet.say(msg!(
            "page-list-size",
            long = measure::dimension(size[0], sheet),
            broad = measure::length(size[1], sheet)
        ));
        if let Some(one) = candidate {
            says = format!("{says}, {}", words::money(sheet, one.cost, planned.money));
        }
        Listed {
            names: face::wrap(&name, cap, Weight::Bold, room),
            says: if sized {
                face::wrap(&says, cap, Weight::Regular, room)
            } else {
                Vec::new()
            },
        }
    };
    planned.markings().map(lines).collect()
}

/// Which markings each column holds; the last may leave some over.
fn in_columns(lines: &[Listed], columns: usize, high: f64, sheet: &Sheet) -> Vec<Range<usize>> {
    let mut first = 0;
    let column = |_| {
        let mut left = high;
        let held = lines[first..].iter().take_while(|one| {
            left -= one.high(sheet);
            left >= 0.0
        });
        let from = first;
        first += held.count();
        from..first
    };
    (0..columns).map(column).collect()
}

/// Draws a column of the list from `at` on; returns how low it reaches.
fn column_of(
    scene: &mut Scene,
    at: Spot,
    sheet: &Sheet,
    lines: &[Listed],
    column: Range<usize>,
) -> f64 {
    let cap = sheet.caps().note;
    let (line, indent, disc) = (list_line(sheet), list_indent(sheet), cap * 0.95);
    let [x, mut y] = at;
    for number in column {
        mark::number(
            scene,
            [x + disc, y + line - cap / 2.0],
            &(number + 1).to_string(),
            cap,
        );
        let Listed { names, says } = &lines[number];
        for text in names {
            y += line;
            scene.text(Text::new(text, [x + indent, y], cap).bold());
        }
        for text in says {
            y += line;
            scene.text(Text::new(text, [x + indent, y], cap));
        }
        y += 1.4;
    }
    y
}
