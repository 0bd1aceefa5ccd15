//! What a cut file shows, in millimetres, before it is written in any format.

use geo::{Coord, LineString};
use stencil::{Panel, Stencil, Stencils};

use crate::curve::{Corner, arcs};

/// A sheet of material with panels laid on it, metres.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct Sheet {
    pub width: f64,
    pub height: f64,
    pub parts: Vec<Placed>,
}

/// Where a panel lies on a sheet: turned about the origin of its stencil's frame, then moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Number of the stencil.
    pub stencil: usize,
    /// Number of its panel.
    pub panel: usize,
    /// Degrees anticlockwise.
    pub turn: f64,
    /// Metres from the sheet's left edge.
    pub x: f64,
    /// Metres from the sheet's lower edge.
    pub y: f64,
}

/// The words that are written; this room knows no language.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Texts {
    /// As "Units: mm, 1:1".
    pub units: String,
    /// As "Measure: 100 mm".
    pub square: String,
    /// As "This side up".
    pub side_up: String,
    /// For each stencil what it shows and its colours, as "ring, chalk".
    pub names: Vec<String>,
}

/// What is done with a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Layer {
    /// The tool follows it.
    Cut,
    /// Written or drawn by hand or pen; never cut.
    Mark,
    /// The edge of the sheet; never cut.
    Sheet,
    /// The square that shows the scale; never cut.
    Scale,
}

impl Layer {
    /// All of them.
    pub const ALL: [Layer; 4] = [Layer::Cut, Layer::Mark, Layer::Sheet, Layer::Scale];

    /// Its name in files: it says the unit, for R12 can say it nowhere else.
    pub fn name(self) -> &'static str {
        match self {
            Layer::Cut => "CUT_MM",
            Layer::Mark => "MARK_MM_NEVER_CUT",
            Layer::Sheet => "SHEET_MM_NEVER_CUT",
            Layer::Scale => "SCALE_100_MM_NEVER_CUT",
        }
    }
}

/// A text or an open line that is not cut.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A line of text.
    Text {
        /// Its layer.
        layer: Layer,
        /// Middle of its foot, millimetres.
        at: [f64; 2],
        /// Cap height, millimetres.
        high: f64,
        /// Degrees anticlockwise.
        turn: f64,
        /// What it says.
        text: String,
    },
    /// An open line, millimetres.
    Line(Layer, Vec<[f64; 2]>),
    /// A closed line, millimetres.
    Ring(Layer, Vec<[f64; 2]>),
}

/// One file, millimetres, its lower left corner at the origin; y goes up.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// As in the file's name.
    pub title: String,
    /// The whole of it, the scale's strip at the foot too.
    pub size: [f64; 2],
    /// Closed paths of the tool's middle, in the order in which they are best cut: what lies
    /// inside before what lies round it.
    pub cuts: Vec<Vec<Corner>>,
    /// All else.
    pub marks: Vec<Mark>,
}

/// Millimetres of a metre.
const MM: f64 = 1000.0;
/// Millimetres between the sheet and what stands beside it.
const ROOM: f64 = 20.0;
/// Millimetres: cap heights of the texts at the foot and on a panel, and the least that a
/// pen writes.
const CAPS: [f64; 3] = [10.0, 14.0, 4.0];
/// Widths of a letter over its cap height, on average and erring to the broad.
const BROAD: f64 = 0.95;

/// A sheet with all that is cut from it.
///
/// A part that names a stencil or panel that does not exist is left out.
pub fn sheet_drawing(
    title: &str,
    sheet: &Sheet,
    stencils: &Stencils,
    texts: &Texts,
    square: f64,
) -> Drawing {
    let size = [sheet.width * MM, sheet.height * MM];
    let mut drawing = Drawing::bare(title, size, texts, square * MM);
    let edge = drawing.foot;
    drawing.edge([0.0, edge], size);
    for part in &sheet.parts {
        let Some(one) = stencils.stencils.get(part.stencil) else {
            continue;
        };
        let Some(panel) = one.panels.get(part.panel) else {
            continue;
        };
        let name = texts.names.get(part.stencil).map_or("", String::as_str);
        drawing.part(panel, name, texts, part);
    }
    drawing.done()
}

/// One stencil: its panels side by side.
pub fn stencil_drawing(
    title: &str,
    stencil: &Stencil,
    name: &str,
    texts: &Texts,
    square: f64,
) -> Drawing {
    let mut left = ROOM / MM;
    let mut high: f64 = 0.0;
    let mut parts = Vec::new();
    for panel in &stencil.panels {
        let [low, top] = corners(panel);
        parts.push(Placed {
            stencil: 0,
            panel: parts.len(),
            turn: 0.0,
            x: left - low.x,
            y: ROOM / MM - low.y,
        });
        left += top.x - low.x + ROOM / MM;
        high = high.max(top.y - low.y);
    }
    let size = [left * MM, high * MM + 2.0 * ROOM];
    let mut drawing = Drawing::bare(title, size, texts, square * MM);
    for (panel, part) in stencil.panels.iter().zip(&parts) {
        drawing.part(panel, name, texts, part);
    }
    drawing.done()
}

fn corners(panel: &Panel) -> [Coord<f64>; 2] {
    let all = panel.plate.exterior().coords();
    all.fold(
        [
            Coord {
                x: f64::INFINITY,
                y: f64::INFINITY,
            },
            Coord {
                x: f64::NEG_INFINITY,
                y: f64::NEG_INFINITY,
            },
        ],
        |[low, high], at| {
            [
                Coord {
                    x: low.x.min(at.x),
                    y: low.y.min(at.y),
                },
                Coord {
                    x: high.x.max(at.x),
                    y: high.y.max(at.y),
                },
            ]
        },
    )
}

/// A drawing in the making: `foot` is how high its strip of words and scale stands.
struct Draft {
    drawing: Drawing,
    foot: f64,
}

impl Drawing {
    fn bare(title: &str, size: [f64; 2], texts: &Texts, square: f64) -> Draft {
        let foot = square + 2.0 * ROOM;
        let caption = format!("{title}   {}   {}", texts.units, texts.square);
        let beside = 2.0 * ROOM + square;
        let broad = beside + caption.chars().count() as f64 * CAPS[0] * BROAD + ROOM;
        let corner = |x: f64, y: f64| [ROOM + x, ROOM + y];
        let ring = vec![
            corner(0.0, 0.0),
            corner(square, 0.0),
            corner(square, square),
            corner(0.0, square),
        ];
        let text = Mark::Text {
            layer: Layer::Scale,
            at: [(beside + broad - ROOM) / 2.0, ROOM + square / 2.0],
            high: CAPS[0],
            turn: 0.0,
            text: caption,
        };
        Draft {
            drawing: Drawing {
                title: title.to_owned(),
                size: [size[0].max(broad), size[1] + foot],
                cuts: Vec::new(),
                marks: vec![Mark::Ring(Layer::Scale, ring), text],
            },
            foot,
        }
    }
}

impl Draft {
    fn edge(&mut self, at: [f64; 2], size: [f64; 2]) {
        let [x, y] = at;
        let ring = vec![
            [x, y],
            [x + size[0], y],
            [x + size[0], y + size[1]],
            [x, y + size[1]],
        ];
        self.drawing.marks.push(Mark::Ring(Layer::Sheet, ring));
    }

    fn part(&mut self, panel: &Panel, name: &str, texts: &Texts, part: &Placed) {
        let (sin, cos) = libm::sincos(part.turn.to_radians());
        let foot = self.foot;
        let place = |at: Coord<f64>| {
            [
                fine((part.x + at.x * cos - at.y * sin) * MM),
                fine((part.y + at.x * sin + at.y * cos) * MM + foot),
            ]
        };
        for ring in &panel.cuts {
            self.drawing.cuts.push(arcs(&open(ring, place)));
        }
        let [tail, tip] = panel.arrow.map(place);
        self.arrow(tail, tip);
        let [along, tall] = panel.label_room.map(|room| room * MM);
        let lines = [panel.id.as_str(), name, texts.side_up.as_str()];
        let letters = lines.iter().map(|line| line.chars().count()).max();
        // three lines, the gap between two as high as their letters
        let high = (2.0 * along / (letters.unwrap_or(1).max(1) as f64 * BROAD))
            .min(2.0 * tall / 5.0)
            .clamp(CAPS[2], CAPS[1]);
        // read from below or from the right
        let whole = panel.label_turn.to_degrees() + part.turn;
        let turn = whole - 180.0 * ((whole + 89.0) / 180.0).floor();
        let (sin, cos) = libm::sincos(turn.to_radians());
        let middle = place(panel.label);
        for (line, text) in lines.iter().enumerate() {
            let down = high * (1.5 - 2.0 * line as f64);
            self.drawing.marks.push(Mark::Text {
                layer: Layer::Mark,
                at: [fine(middle[0] - sin * down), fine(middle[1] + cos * down)],
                high: fine(high),
                turn: fine(turn),
                text: (*text).to_owned(),
            });
        }
    }

    fn arrow(&mut self, tail: [f64; 2], tip: [f64; 2]) {
        let way = [tip[0] - tail[0], tip[1] - tail[1]];
        // barbs a quarter of the shaft long, and half as far aside
        let barb = |side: f64| {
            [
                fine(tip[0] - 0.25 * way[0] - side * 0.125 * way[1]),
                fine(tip[1] - 0.25 * way[1] + side * 0.125 * way[0]),
            ]
        };
        self.drawing
            .marks
            .push(Mark::Line(Layer::Mark, vec![tail, tip]));
        self.drawing
            .marks
            .push(Mark::Line(Layer::Mark, vec![barb(1.0), tip, barb(-1.0)]));
    }

    fn done(self) -> Drawing {
        self.drawing
    }
}

/// Corners of a closed ring, the first not repeated.
fn open(ring: &LineString<f64>, place: impl Fn(Coord<f64>) -> [f64; 2]) -> Vec<[f64; 2]> {
    let mut corners: Vec<[f64; 2]> = ring.coords().map(|at| place(*at)).collect();
    if corners.len() > 1 && corners.first() == corners.last() {
        corners.pop();
    }
    corners
}

/// To 1e-4 mm, as files have it; a negative zero becomes zero.
pub(crate) fn fine(value: f64) -> f64 {
    (value * 1e4).round() / 1e4 + 0.0
}
