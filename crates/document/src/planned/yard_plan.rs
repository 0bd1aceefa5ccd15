//! The plan sheet: the yard, its zones quiet behind, the markings in colour at scale.

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
        let half = [wide / 2.0 + 0.5, disc + 0.4];
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
                offers.push((
                    1.5,
                    [
                        x + sx * (w - half[0]).max(0.0),
                        y + sy * (h - half[1]).max(0.0),
                    ],
                ));
            }
        }
        let mut best: Option<(f64, Spot)> = None;
        for (bias, at) in offers {
            let slab = Slab {
                centre: at,
                half,
                turn: 0.0,
            };
            if !reads_as(&slab, number, envelopes) {
                continue;
            }
            let cost = bias + taken.cost(&slab);
            if cost.is_finite() && best.as_ref().is_none_or(|(least, _)| cost < *least) {
                best = Some((cost, at));
            }
        }
        let (at, words) = match best {
            Some((_, at)) => (at, Some(name)),
            None => ([x, y], None),
        };
        let slab = Slab {
            centre: at,
            half,
            turn: 0.0,
        };
        if words.is_some() {
            if taken.cost(&slab) > 0.0 {
                let plate = Rect {
                    x: at[0] - half[0],
                    y: at[1] - half[1],
                    w: 2.0 * half[0],
                    h: 2.0 * half[1],
                };
                scene.fill(Path::plate(plate, 0.8), WHITE);
            }
            taken.slab(&slab, weight::NEVER);
        }
        let left = at[0] - wide / 2.0 + disc;
        mark::number(scene, [left, at[1]], &(number + 1).to_string(), cap);
        if let Some(name) = words {
            scene.text(Text::new(name, [left + disc + 1.4, at[1] + cap / 2.0], cap).bold());
        }
    }
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
    let grow = caps.note / 1.8;
    let line = caps.note * 1.67;
    let bottom = room.y + room.h;
    let mut y = room.y + caps.name;
    scene.text(Text::new(sheet.word("page-list"), [room.x, y], caps.name).bold());
    y += 3.0;
    let (indent, disc) = (6.0 * grow, caps.note * 0.95);
    for (number, (marking, figure)) in planned.markings().enumerate() {
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
        let names = face::wrap(&name, caps.note, Weight::Bold, room.w - indent);
        let lines = face::wrap(&says, caps.note, Weight::Regular, room.w - indent);
        let high = line * (names.len() + lines.len()) as f64 + 1.4;
        if y + high > bottom {
            return;
        }
        mark::number(
            scene,
            [room.x + disc, y + line - caps.note / 2.0],
            &(number + 1).to_string(),
            caps.note,
        );
        for text in names {
            y += line;
            scene.text(Text::new(text, [room.x + indent, y], caps.note).bold());
        }
        for text in lines {
            y += line;
            scene.text(Text::new(text, [room.x + indent, y], caps.note));
        }
        y += 1.4;
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
