//! Figures and settings that several tests stand on.
#![allow(dead_code)]

use geo::{Coord, Polygon};
use ledger::Ledger;
use marking::{Colour, Figure, Ground, Look, Paint, Palette, families};
use note::Noted;
use stencil::{Applied, Laid, Material, Numerals, Setting, Stencils, Tool, TurnOver, stencils};

pub const SETTING: Setting = Setting {
    material: Material::SolidPe,
    tool: Tool::Knife,
    applied: Applied::Roller,
    turn_over: TurnOver::Never,
    numerals: Numerals::Apart,
};

pub fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

/// Every family at its default lengths.
pub fn house() -> Vec<Figure> {
    let ledger = ledger();
    let ground = Ground::Asphalt;
    let look = Look::of(Palette { ground }, &ledger);
    families()
        .iter()
        .map(|family| {
            let lengths: Vec<f64> = family.lengths().iter().map(|one| one.default).collect();
            family.make(&lengths, &look).expect("defaults fit")
        })
        .collect()
}

pub fn of(name: &str) -> Figure {
    let found = house().into_iter().find(|figure| figure.family == name);
    found.expect("a family of the house")
}

/// A figure of nothing but paint.
pub fn painted(paint: Vec<(Colour, Polygon<f64>)>) -> Figure {
    Figure {
        family: "drawn".to_owned(),
        lengths: Vec::new(),
        paint: paint
            .into_iter()
            .map(|(colour, polygon)| Paint { colour, polygon })
            .collect(),
        cells: Vec::new(),
        facing: None,
        lanes: Vec::new(),
        tracks: 1,
        wait: Vec::new(),
        envelope: geo::polygon![],
    }
}

pub fn cut(figures: &[Figure], setting: &Setting) -> Noted<Stencils> {
    let laid: Vec<Laid> = figures
        .iter()
        .map(|figure| Laid { figure, turn: 0.0 })
        .collect();
    stencils(&laid, setting, &ledger())
}

/// A polygon of a disc, its corners on the circle.
pub fn disc(at: [f64; 2], radius: f64, sides: u32) -> Polygon<f64> {
    let corners: Vec<Coord<f64>> = (0..sides)
        .map(|side| {
            let turn = std::f64::consts::TAU * f64::from(side) / f64::from(sides);
            let (sin, cos) = libm::sincos(turn);
            Coord {
                x: at[0] + radius * cos,
                y: at[1] + radius * sin,
            }
        })
        .collect();
    Polygon::new(corners.into(), Vec::new())
}

/// A place of a stencil where a use lays it.
pub fn laid_at(used: &stencil::Use, at: Coord<f64>) -> Coord<f64> {
    let (sin, cos) = libm::sincos(used.turn);
    let y = if used.over { -at.y } else { at.y };
    Coord {
        x: used.at.x + at.x * cos - y * sin,
        y: used.at.y + at.x * sin + y * cos,
    }
}

/// A polygon with its corners moved.
pub fn moved(shape: &Polygon<f64>, by: impl Copy + Fn(Coord<f64>) -> Coord<f64>) -> Polygon<f64> {
    use geo::MapCoords;
    shape.map_coords(by)
}
