//! The `markings` key.

use std::collections::BTreeMap;

use marking::CourtLetters;
use marking::lettering::Verdict;
use marking::{Cell as Spot, Figure, LaneKind, Outline, Takes};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ground::{Position, Ring, line, polygon};
use crate::round::millionth;

/// One figure in the yard's coordinates.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Marking {
    /// Unique in the plan.
    pub name: String,
    /// The family that made it.
    pub family: String,
    /// The candidate that was chosen; null for a marking that a person laid.
    pub candidate: Option<String>,
    /// Where the figure's own origin lies, metres.
    pub at: Position,
    /// Degrees anticlockwise from +x.
    pub turn: f64,
    /// Whether the figure is mirrored.
    pub mirrored: bool,
    /// Whether the planner must leave it where it is.
    pub locked: bool,
    /// The family's lengths, metres.
    pub lengths: BTreeMap<String, f64>,
    /// Painted shapes.
    pub paint: Vec<Paint>,
    /// Where feet land.
    pub cells: Vec<Cell>,
    /// The facing that the figure fixes, degrees anticlockwise from +x.
    pub facing: Option<f64>,
    /// What is travelled along.
    pub lanes: Vec<Lane>,
    /// Children side by side.
    pub tracks: u32,
    /// Middles of the waiting spots.
    pub wait: Vec<Position>,
    /// The ground it needs in use.
    pub envelope: Vec<Ring>,
    /// What can be spelt on it; null for all but letter courts.
    pub words: Option<Words>,
}

/// The programme's words on a letter court.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Words {
    /// Whose every next letter is within a jump.
    pub jumpable: Vec<String>,
    /// The others.
    pub other: Vec<String>,
    /// The share of the words that can be jumped.
    pub share: f64,
    /// Their longest jump, metres; null where no word jumps from cell to cell.
    pub longest: Option<f64>,
    /// Whether no placing of the letters is better: every other was held against it.
    pub proven: bool,
}

impl Words {
    /// What becomes of the words on a court of this step, metres; `None` without words.
    pub fn of(court: &CourtLetters, step: f64) -> Option<Words> {
        let named = |jumpable: bool| {
            let words = court.words().iter();
            words
                .filter(|spelt| matches!(spelt.verdict, Verdict::Jumpable { .. }) == jumpable)
                .map(|spelt| spelt.word.clone())
                .collect()
        };
        (!court.words().is_empty()).then(|| Words {
            jumpable: named(true),
            other: named(false),
            share: millionth(court.share()),
            longest: court.longest(step).map(millionth),
            proven: court.proven(),
        })
    }
}

/// A painted shape.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Paint {
    /// The paint's name.
    pub colour: String,
    /// Its outline.
    pub polygon: Vec<Ring>,
}

/// A place where a foot, or both feet, land.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Cell {
    /// Unique in the marking.
    pub id: String,
    /// The aim point.
    pub centre: Position,
    /// Radius of a disc; null where there is an outline.
    pub radius: Option<f64>,
    /// Outline; null where there is a radius.
    pub outline: Option<Vec<Ring>>,
    /// `one`, `both`, `either`, `left` or `right`.
    pub takes: String,
    /// Whether a route may start here.
    pub start: bool,
    /// Whether a route may end here.
    pub end: bool,
    /// Cells that may follow; null: any other.
    pub next: Option<Vec<String>>,
    /// Whether two running strides of free ground lie before it.
    pub run_up: bool,
}

/// What is travelled along.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Lane {
    /// `corridor` or `line`.
    pub kind: String,
    /// The middle, in the way of travel.
    pub line: Vec<Position>,
    /// Clear width of a corridor, painted width of a line.
    pub width: f64,
    /// Length along the middle of each piece.
    pub pieces: Vec<f64>,
    /// Radius of each piece; null for a straight.
    pub radii: Vec<Option<f64>>,
}

/// Where a figure lies.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid<'a> {
    /// Unique in the plan.
    pub name: &'a str,
    /// The candidate it came from.
    pub candidate: Option<&'a str>,
    /// Where the figure's own origin lies, metres.
    pub at: Position,
    /// Degrees anticlockwise from +x.
    pub turn: f64,
    /// Whether the figure is mirrored.
    pub mirrored: bool,
    /// Whether the planner must leave it where it is.
    pub locked: bool,
    /// The programme's words, where it is a court of letters.
    pub words: Option<Words>,
}

impl Marking {
    /// Copies a figure that already stands in the yard's coordinates.
    pub fn of(laid: &Laid, figure: &Figure) -> Marking {
        Marking {
            name: laid.name.to_owned(),
            family: figure.family.clone(),
            candidate: laid.candidate.map(str::to_owned),
            at: laid.at.map(millionth),
            turn: millionth(laid.turn),
            mirrored: laid.mirrored,
            locked: laid.locked,
            lengths: figure
                .lengths
                .iter()
                .map(|(name, metres)| (name.clone(), millionth(*metres)))
                .collect(),
            paint: figure
                .paint
                .iter()
                .map(|paint| Paint {
                    colour: format!("{:?}", paint.colour).to_lowercase(),
                    polygon: polygon(&paint.polygon),
                })
                .collect(),
            cells: figure
                .cells
                .iter()
                .map(|spot| cell(spot, &figure.cells))
                .collect(),
            facing: figure.facing.map(|facing| millionth(facing.to_degrees())),
            lanes: figure
                .lanes
                .iter()
                .map(|lane| Lane {
                    kind: match lane.kind {
                        LaneKind::Corridor => "corridor",
                        LaneKind::Line => "line",
                    }
                    .to_owned(),
                    line: line(&lane.line),
                    width: millionth(lane.width),
                    pieces: lane
                        .pieces
                        .iter()
                        .map(|piece| millionth(piece.length))
                        .collect(),
                    radii: lane
                        .pieces
                        .iter()
                        .map(|piece| piece.radius.map(millionth))
                        .collect(),
                })
                .collect(),
            tracks: figure.tracks,
            wait: figure
                .wait
                .iter()
                .map(|at| [millionth(at.x), millionth(at.y)])
                .collect(),
            envelope: polygon(&figure.envelope),
            words: laid.words.clone(),
        }
    }
}

fn cell(spot: &Spot, all: &[Spot]) -> Cell {
    let (radius, outline) = match &spot.outline {
        Outline::Disc { radius } => (Some(millionth(*radius)), None),
        Outline::Polygon(ring) => (None, Some(polygon(ring))),
    };
    let takes = match spot.takes {
        Takes::One => "one",
        Takes::Both => "both",
        Takes::Either => "either",
        Takes::Left => "left",
        Takes::Right => "right",
    };
    Cell {
        id: spot.id.clone(),
        centre: [millionth(spot.centre.x), millionth(spot.centre.y)],
        radius,
        outline,
        takes: takes.to_owned(),
        start: spot.start,
        end: spot.end,
        next: spot.next.as_ref().map(|next| {
            next.iter()
                .filter_map(|at| all.get(*at))
                .map(|cell| cell.id.clone())
                .collect()
        }),
        run_up: spot.run_up,
    }
}
