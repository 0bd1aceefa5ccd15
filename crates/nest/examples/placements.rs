//! What the room answers to the stored questions, for `oracle/placements.py`:
//! `cargo run -p nest --example placements --release > crates/nest/oracle/placements.json`.

#[path = "../tests/common/mod.rs"]
mod common;

use serde_json::{Value, json};

fn main() {
    let stored: Vec<Value> = common::cases()
        .iter()
        .map(|case| {
            let (width, density, sheets) = common::answer(case);
            let ring = |part: &nest::Part| -> Vec<[f64; 2]> {
                part.outline
                    .exterior()
                    .coords()
                    .map(|at| [at.x, at.y])
                    .collect()
            };
            let parts: Vec<_> = case.parts.iter().map(ring).collect();
            let laid = |placement: &nest::Placement| {
                json!([placement.part, placement.turn, placement.x, placement.y])
            };
            let sheets: Vec<Vec<Value>> = sheets
                .iter()
                .map(|sheet| sheet.iter().map(laid).collect())
                .collect();
            json!({
                "name": case.name, "width": width, "height": case.sheet.height,
                "margin": case.sheet.margin, "gap": case.sheet.gap, "density": density,
                "parts": parts, "sheets": sheets,
            })
        })
        .collect();
    println!("{}", json!({ "cases": stored }));
}
