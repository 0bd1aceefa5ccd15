//! Writes the cut files of every family into a folder, and beside them `stencils.json`, the
//! geometry that they must read back as: `cargo run -p cutfile --example cut -- FOLDER`.
//! The sheets are laid in rows, one part after the other; texts are samples.

use std::error::Error;

use cutfile::{Placed, Sheet, Texts, Version, files};
use geo::{BoundingRect, Polygon};
use ledger::Ledger;
use marking::{Ground, Look, Palette, families};
use serde_json::{Value, json};
use stencil::{
    Applied, Laid, Material, Numerals, Rules, Setting, Stencils, Tool, TurnOver, stencils,
};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args().nth(1).ok_or("name a folder")?;
    let tool = match std::env::args().nth(2).as_deref() {
        Some("router") => Tool::Router,
        _ => Tool::Knife,
    };
    let ledger = Ledger::shipped()?;
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        &ledger,
    );
    let mut figures = Vec::new();
    for family in families() {
        let lengths: Vec<f64> = family.lengths().iter().map(|one| one.default).collect();
        let figure = family.make(&lengths, &look);
        figures.push(figure.map_err(|fault| format!("{}: {fault:?}", family.name()))?);
    }
    let laid: Vec<Laid> = figures
        .iter()
        .map(|figure| Laid { figure, turn: 0.0 })
        .collect();
    let setting = Setting {
        material: Material::SolidPe,
        tool,
        applied: Applied::Roller,
        turn_over: TurnOver::Never,
        numerals: Numerals::Apart,
    };
    let made = stencils(&laid, &setting, &ledger).value;
    let sheets = rows(&made);
    let texts = Texts {
        units: "Units: mm, 1:1".to_owned(),
        square: "100 mm \u{b1} 0.5".to_owned(),
        side_up: "Este lado arriba, mañana también".to_owned(),
        names: made.stencils.iter().map(|one| one.motif.slug()).collect(),
    };
    std::fs::create_dir_all(&folder)?;
    for version in [Version::R2000, Version::R12] {
        for file in files(&made, &sheets, &texts, version, &ledger) {
            std::fs::write(format!("{folder}/{}", file.name), file.bytes)?;
        }
    }
    let kerf = Rules::of(&setting, &ledger).kerf;
    let record = record(&made, &sheets, kerf);
    std::fs::write(
        format!("{folder}/stencils.json"),
        serde_json::to_vec_pretty(&record)?,
    )?;
    println!(
        "{} shapes through {} stencils, {} taped, {} sheets",
        made.stencils
            .iter()
            .flat_map(|one| one.uses.iter())
            .map(|used| used.paint.len())
            .sum::<usize>(),
        made.stencils.len(),
        made.taped.len(),
        sheets.len()
    );
    Ok(())
}

/// Parts in rows, every other one turned by a right angle: a layout that cuts, not a good one.
fn rows(made: &Stencils) -> Vec<Sheet> {
    const GAP: f64 = 0.01;
    let [width, height] = [2.4384, 1.2192];
    let mut sheets: Vec<Sheet> = Vec::new();
    let (mut left, mut low, mut tall) = (GAP, GAP, 0.0_f64);
    let panels = made.stencils.iter().enumerate().flat_map(|(stencil, one)| {
        let each = one.panels.iter().enumerate();
        each.map(move |(panel, one)| (stencil, panel, one))
    });
    for (number, (stencil, panel, one)) in panels.enumerate() {
        let Some(room) = one.plate.bounding_rect() else {
            continue;
        };
        let turned = number % 2 == 1 && room.width() < 1.19;
        let (broad, high) = if turned {
            (room.height(), room.width())
        } else {
            (room.width(), room.height())
        };
        if left + broad + GAP > width {
            (left, low, tall) = (GAP, low + tall + GAP, 0.0);
        }
        if sheets.is_empty() || low + high + GAP > height {
            sheets.push(Sheet {
                width,
                height,
                parts: Vec::new(),
            });
            (left, low, tall) = (GAP, GAP, 0.0);
        }
        let (turn, x, y) = if turned {
            (90.0, left + room.max().y, low - room.min().x)
        } else {
            (0.0, left - room.min().x, low - room.min().y)
        };
        if let Some(sheet) = sheets.last_mut() {
            sheet.parts.push(Placed {
                stencil,
                panel,
                turn,
                x,
                y,
            });
        }
        left += broad + GAP;
        tall = tall.max(high);
    }
    sheets
}

fn polygon(shape: &Polygon<f64>) -> Value {
    let ring = |ring: &geo::LineString<f64>| {
        let places = ring.coords().map(|at| json!([at.x, at.y]));
        places.collect::<Vec<_>>()
    };
    let inner = shape.interiors().iter().map(ring);
    json!(
        std::iter::once(ring(shape.exterior()))
            .chain(inner)
            .collect::<Vec<_>>()
    )
}

fn record(made: &Stencils, sheets: &[Sheet], kerf: f64) -> Value {
    let panel = |panel: &stencil::Panel| {
        json!({
            "id": panel.id,
            "plate": polygon(&panel.plate),
            "openings": panel.openings.iter().map(|one| polygon(&one.polygon)).collect::<Vec<_>>(),
            "cuts": panel.cuts.iter()
                .map(|ring| ring.coords().map(|at| json!([at.x, at.y])).collect::<Vec<_>>())
                .collect::<Vec<_>>(),
            "holes": panel.holes.iter().map(|at| json!([at.x, at.y])).collect::<Vec<_>>(),
            "hole": panel.hole,
            "label": [panel.label.x, panel.label.y],
            "arrow": panel.arrow.iter().map(|at| json!([at.x, at.y])).collect::<Vec<_>>(),
        })
    };
    let stencil = |one: &stencil::Stencil| {
        json!({
            "id": one.id,
            "file": format!("stencil-{}-{}-{}", one.id, one.motif.slug(),
                one.colours.iter().map(|colour| colour.word()).collect::<Vec<_>>().join("-")),
            "motif": one.motif.slug(),
            "plate": polygon(&one.plate),
            "openings": one.openings.iter().map(|one| polygon(&one.polygon)).collect::<Vec<_>>(),
            "ties": one.ties.len(),
            "panels": one.panels.iter().map(panel).collect::<Vec<_>>(),
            "uses": one.uses.iter().map(|used| json!({
                "marking": used.marking, "paint": used.paint,
                "at": [used.at.x, used.at.y], "turn": used.turn, "over": used.over,
            })).collect::<Vec<_>>(),
        })
    };
    let sheet = |sheet: &Sheet| {
        json!({
            "width": sheet.width,
            "height": sheet.height,
            "parts": sheet.parts.iter().map(|part| json!({
                "stencil": part.stencil, "panel": part.panel,
                "turn": part.turn, "x": part.x, "y": part.y,
            })).collect::<Vec<_>>(),
        })
    };
    json!({
        "kerf": kerf,
        "stencils": made.stencils.iter().map(stencil).collect::<Vec<_>>(),
        "sheets": sheets.iter().map(sheet).collect::<Vec<_>>(),
    })
}
