//! `build.stencils`, `build.taped` and `build.sheets`: what is cut, and from what.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ground::{Ring, polygon};
use crate::round::millionth;

/// A plate in its own frame, its middle at the origin.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Stencil {
    /// `S01`, `S02`.
    pub id: String,
    /// What it shows: `ring`, `cell`, `disc`, `half-moon`, `chevron`, `stroke`, `print`,
    /// `glyph-7`, `shape`.
    pub motif: String,
    /// The colour of most of its paint first.
    pub colours: Vec<String>,
    /// What it is cut from.
    pub material: String,
    /// What it is cut with.
    pub tool: String,
    /// The whole plate.
    pub plate: Vec<Ring>,
    /// What is open in it, the ties taken away.
    pub openings: Vec<Opening>,
    /// Ties that were added.
    pub ties: usize,
    /// What is cut in one piece.
    pub panels: Vec<CutPanel>,
    /// Where it is painted through.
    pub uses: Vec<Use>,
}

/// A hole that paint goes through.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Opening {
    /// Its colour.
    pub colour: String,
    /// In the stencil's frame.
    pub polygon: Vec<Ring>,
}

/// A panel of a plate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CutPanel {
    /// `S03-A`, or the stencil's id.
    pub id: String,
    /// In the stencil's frame.
    pub plate: Vec<Ring>,
    /// Middles of the registration holes.
    pub holes: Vec<[f64; 2]>,
}

/// A place where a stencil is laid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Use {
    /// The marking.
    pub marking: String,
    /// Numbers of its painted shapes, from 0.
    pub paint: Vec<usize>,
    /// Where the stencil's origin lies in the yard, metres.
    pub at: [f64; 2],
    /// How its +x is turned there, degrees anticlockwise.
    pub turn: f64,
    /// Whether it lies on its face.
    pub over: bool,
}

/// A painted shape that needs no plate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Taped {
    /// The marking.
    pub marking: String,
    /// Number of its painted shape, from 0.
    pub paint: usize,
    /// Its colour.
    pub colour: String,
    /// `stroke`, `solid` or `large`.
    pub why: String,
    /// Metres of its outline.
    pub outline: f64,
    /// Square metres.
    pub area: f64,
}

/// A sheet with the panels that are cut from it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CutSheet {
    /// Metres along x.
    pub width: f64,
    /// Metres along y.
    pub height: f64,
    /// Area of the plates as a share of the sheet.
    pub density: f64,
    /// What lies on it.
    pub parts: Vec<Laid>,
}

/// Where a panel lies on a sheet: turned about the origin of its stencil's frame, then moved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Laid {
    /// The panel.
    pub panel: String,
    /// Degrees anticlockwise.
    pub turn: f64,
    /// Metres.
    pub at: [f64; 2],
}

impl Stencil {
    /// Copies a plate; `names` are the markings'.
    pub fn of(stencil: &stencil::Stencil, names: &[&str]) -> Stencil {
        Stencil {
            id: stencil.id.clone(),
            motif: stencil.motif.slug(),
            colours: stencil
                .colours
                .iter()
                .map(|colour| colour.word().to_owned())
                .collect(),
            material: stencil.material.word().to_owned(),
            tool: stencil.tool.word().to_owned(),
            plate: polygon(&stencil.plate),
            openings: stencil
                .openings
                .iter()
                .map(|opening| Opening {
                    colour: opening.colour.word().to_owned(),
                    polygon: polygon(&opening.polygon),
                })
                .collect(),
            ties: stencil.ties.len(),
            panels: stencil
                .panels
                .iter()
                .map(|panel| CutPanel {
                    id: panel.id.clone(),
                    plate: polygon(&panel.plate),
                    holes: panel
                        .holes
                        .iter()
                        .map(|at| [at.x, at.y].map(millionth))
                        .collect(),
                })
                .collect(),
            uses: stencil
                .uses
                .iter()
                .map(|used| Use {
                    marking: name(names, used.marking),
                    paint: used.paint.clone(),
                    at: [used.at.x, used.at.y].map(millionth),
                    turn: millionth(used.turn.to_degrees()),
                    over: used.over,
                })
                .collect(),
        }
    }
}

impl Taped {
    /// Copies a shape without a plate; `names` are the markings'.
    pub fn of(taped: &stencil::Taped, names: &[&str]) -> Taped {
        Taped {
            marking: name(names, taped.marking),
            paint: taped.paint,
            colour: taped.colour.word().to_owned(),
            why: match taped.why {
                stencil::Why::Stroke => "stroke",
                stencil::Why::Solid => "solid",
                stencil::Why::Large => "large",
            }
            .to_owned(),
            outline: millionth(taped.outline),
            area: millionth(taped.area),
        }
    }
}

pub(super) fn name(names: &[&str], number: usize) -> String {
    names.get(number).copied().unwrap_or_default().to_owned()
}
