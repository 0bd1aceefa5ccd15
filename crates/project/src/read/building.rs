//! `[build]` of `programme.toml`: who paints on how many days, and what stencils are cut from.

use ledger::Ledger;
use note::{Note, msg};
use paint::CanSystem;
use stencil::{Applied, Material, Tool, TurnOver};
use unit::Units;

use crate::read::figures as fig;
use crate::read::table::{Desk, Table};

/// What the file says of the build; what it leaves out is as usual.
#[derive(Clone, Debug, PartialEq)]
pub struct Building {
    /// People who paint.
    pub people: u32,
    /// Days of painting.
    pub days: u32,
    /// Hours of the clock between which there is work.
    pub hours: [f64; 2],
    /// What stencils are cut from.
    pub material: Material,
    /// What they are cut with.
    pub tool: Tool,
    /// How the paint is put on.
    pub applied: Applied,
    /// Whether a plate may be laid on its face.
    pub turn_over: TurnOver,
    /// Which cans are sold.
    pub cans: CanSystem,
    /// Whether the crew has done it before.
    pub practised: bool,
    /// Whether wheels roll over the markings.
    pub wheels: bool,
}

impl Building {
    /// The usual: a crew of volunteers with knives, sheets of polyethylene and rollers.
    pub fn usual(units: Units, ledger: &Ledger) -> Building {
        let whole = |key, most| ledger.number(key).round().clamp(1.0, most) as u32;
        Building {
            people: whole(fig::PEOPLE, MOST_PEOPLE),
            days: whole(fig::DAYS, MOST_DAYS),
            hours: [fig::FROM, fig::UNTIL].map(|key| ledger.number(key)),
            material: Material::SolidPe,
            tool: Tool::Knife,
            applied: Applied::Roller,
            turn_over: TurnOver::Never,
            cans: match units {
                Units::Metres => CanSystem::Metric,
                Units::Feet => CanSystem::Us,
            },
            practised: false,
            wheels: false,
        }
    }
}

/// More would not find room in a yard.
const MOST_PEOPLE: f64 = 60.0;
/// More is no painting day but a trade.
const MOST_DAYS: f64 = 14.0;

/// Reads the table.
pub fn building(table: Table, units: Units, ledger: &Ledger, desk: &mut Desk) -> Building {
    let mut building = Building::usual(units, ledger);
    if let Some(people) = table.count("people", (1, MOST_PEOPLE as u32), desk) {
        building.people = people.value;
    }
    if let Some(days) = table.count("days", (1, MOST_DAYS as u32), desk) {
        building.days = days.value;
    }
    for (key, hour) in ["from", "until"].into_iter().zip(&mut building.hours) {
        if let Some(read) = table.within(key, (0.0, 24.0), desk) {
            *hour = read.value;
        }
    }
    let [from, until] = building.hours;
    if from >= until {
        desk.notes.push(
            Note::error(table.at.clone(), msg!("build-hours")).mend(msg!("build-hours-mend")),
        );
        building.hours = Building::usual(units, ledger).hours;
    }
    let materials = Material::ALL.map(|material| (material.word(), material));
    if let Some(material) = table.word("material", &materials, desk) {
        building.material = material.value;
        building.tool = material
            .value
            .tools()
            .first()
            .copied()
            .unwrap_or(Tool::Knife);
    }
    let tools =
        [Tool::Knife, Tool::Laser, Tool::Router, Tool::Jigsaw].map(|tool| (tool.word(), tool));
    if let Some(tool) = table.word("tool", &tools, desk) {
        let fitting = building.material.tools();
        if fitting.contains(&tool.value) {
            building.tool = tool.value;
        } else {
            desk.notes.push(
                Note::error(
                    tool.at,
                    msg!(
                        "build-tool",
                        tool = tool.value.word(),
                        material = building.material.word()
                    ),
                )
                .expected(msg!(
                    "one-of",
                    names = fitting
                        .iter()
                        .map(|tool| tool.word().to_owned())
                        .collect::<Vec<_>>()
                )),
            );
        }
    }
    let applied = [
        ("roller", Applied::Roller),
        ("brush", Applied::Brush),
        ("spray", Applied::Spray),
    ];
    if let Some(applied) = table.word("applied", &applied, desk) {
        building.applied = applied.value;
    }
    if let Some(over) = table.truth("turn_over", desk) {
        building.turn_over = if over.value {
            TurnOver::Allowed
        } else {
            TurnOver::Never
        };
    }
    let cans = [("litres", CanSystem::Metric), ("gallons", CanSystem::Us)];
    if let Some(cans) = table.word("cans", &cans, desk) {
        building.cans = cans.value;
    }
    building.practised = table
        .truth("practised", desk)
        .is_some_and(|practised| practised.value);
    building.wheels = table
        .truth("wheels", desk)
        .is_some_and(|wheels| wheels.value);
    table.finish(desk);
    building
}
