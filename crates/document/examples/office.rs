//! Draws a yard of our own invention and sets its papers, to be looked at.
//!
//! `cargo run --release -p document --example office -- OUT`

use std::path::PathBuf;

use document::drawing::{svg, yard::Plan};
use document::plan_sheet;
use document::sheet::{Paper, Sheet};
use ledger::Ledger;
use unit::Units;
use words::Language;

#[path = "../tests/common/mod.rs"]
mod common;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let out = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "out".into()));
    std::fs::create_dir_all(&out)?;
    let ledger = Ledger::shipped()?;
    let network = common::network(true);
    let adjusted = survey::adjust(&network, &ledger);
    let survey = adjusted.value.ok_or("no survey")?;
    let yard = common::yard(&survey);
    let ground = ground::ground(&yard, ground::Standard::UsHandbook, &ledger);
    let mut notes = adjusted.notes;
    notes.extend(ground.notes);
    let plan = Plan {
        yard: &yard,
        ground: &ground.value,
        survey: Some(&survey),
    };
    for (language, units, paper, large) in [
        (Language::En, Units::Metres, Paper::A4, false),
        (Language::Es, Units::Metres, Paper::A4, false),
        (Language::En, Units::Feet, Paper::Letter, false),
        (Language::Es, Units::Feet, Paper::Letter, true),
        (Language::En, Units::Metres, Paper::A4, true),
    ] {
        let sheet = Sheet {
            name: "Tern Street",
            language,
            units,
            paper,
            date: "2026-09-01",
            large,
            north: Some(38.0),
            credit: None,
            assumed: &[],
        };
        let tag = format!(
            "{}-{}-{}",
            language.tag(),
            paper.name().to_lowercase(),
            if large { "large" } else { "plain" }
        );
        let drawn = plan_sheet::draw(&sheet, &plan, &ledger);
        std::fs::write(
            out.join(format!("yard-{tag}.svg")),
            svg::alone(&drawn.scene, &drawn.told),
        )?;
        let report = document::survey_report::survey_report(&sheet, &plan, &notes, &ledger)?;
        std::fs::write(out.join(format!("report-{tag}.pdf")), report)?;
        let tape = document::tape_sheet::tape_sheet(&sheet, &network, Some(&survey), &ledger)?;
        std::fs::write(out.join(format!("tape-{tag}.pdf")), tape)?;
        println!("{tag}: {:?} {:?}", drawn.layout.scale, drawn.layout.size);
    }
    let mut unmeasured = common::network(false);
    unmeasured.readings.clear();
    let sheet = Sheet {
        name: "Tern Street",
        language: Language::En,
        units: Units::Feet,
        paper: Paper::Letter,
        date: "2026-09-01",
        large: false,
        north: None,
        credit: None,
        assumed: &[],
    };
    std::fs::write(
        out.join("tape-unmeasured.pdf"),
        document::tape_sheet::tape_sheet(&sheet, &unmeasured, None, &ledger)?,
    )?;
    Ok(())
}
