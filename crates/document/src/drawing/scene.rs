//! A drawing as the pen sees it: strokes, fills and lines of text in paper millimetres.
//!
//! x runs right and y down from the sheet's upper left corner. Later items lie on top.

use crate::face::{self, Weight};

/// A place on the sheet, mm.
pub type Spot = [f64; 2];

/// A colour, 0xRRGGBB.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub u32);

/// Ink of all lines and letters.
pub const INK: Colour = Colour(0x22262B);
/// The paper.
pub const WHITE: Colour = Colour(0xFFFFFF);

/// Widths of lines in mm (ISO 128 steps, from memory).
pub mod pen {
    /// Wall, beam.
    pub const WALL: f64 = 1.0;
    /// Fence, frame.
    pub const FENCE: f64 = 0.7;
    /// Hedge, fixture.
    pub const FIXTURE: f64 = 0.5;
    /// Envelope, flight, ellipse.
    pub const ELLIPSE: f64 = 0.35;
    /// Zone edge, paint outline.
    pub const ZONE: f64 = 0.25;
    /// Dimension, hatch, reading.
    pub const THIN: f64 = 0.18;
    /// Margin, rule.
    pub const HAIR: f64 = 0.13;
}

/// One step of a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Step {
    /// Lifts the pen.
    Move(Spot),
    /// Draws straight.
    Line(Spot),
    /// Draws an elliptic arc: half-axes, turn of the first one in degrees, the long way
    /// round, clockwise on the sheet, end.
    Arc(Spot, f64, bool, bool, Spot),
    /// Back to the last lift.
    Close,
}

/// A path of the pen.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Path(pub Vec<Step>);

impl Path {
    /// Straight pieces through all spots.
    pub fn line(spots: &[Spot]) -> Path {
        let mut path = Path::default();
        path.add_line(spots);
        path
    }

    /// The same, closed.
    pub fn ring(spots: &[Spot]) -> Path {
        let mut path = Path::line(spots);
        path.0.push(Step::Close);
        path
    }

    /// Adds a piece without joining it to the last.
    pub fn add_line(&mut self, spots: &[Spot]) {
        for (number, &spot) in spots.iter().enumerate() {
            self.0.push(if number == 0 {
                Step::Move(spot)
            } else {
                Step::Line(spot)
            });
        }
    }

    /// Adds a closed piece.
    pub fn add_ring(&mut self, spots: &[Spot]) {
        self.add_line(spots);
        self.0.push(Step::Close);
    }

    /// A full circle.
    pub fn circle(centre: Spot, radius: f64) -> Path {
        Path::ellipse(centre, [radius, radius], 0.0)
    }

    /// Adds a full circle.
    pub fn add_circle(&mut self, centre: Spot, radius: f64) {
        self.0.extend(Path::circle(centre, radius).0);
    }

    /// A full ellipse; `turn` in degrees clockwise on the sheet.
    pub fn ellipse(centre: Spot, half: Spot, turn: f64) -> Path {
        let (sin, cos) = libm::sincos(turn.to_radians());
        let end = |sign: f64| {
            [
                centre[0] + sign * half[0] * cos,
                centre[1] + sign * half[0] * sin,
            ]
        };
        Path(vec![
            Step::Move(end(1.0)),
            Step::Arc(half, turn, false, true, end(-1.0)),
            Step::Arc(half, turn, false, true, end(1.0)),
            Step::Close,
        ])
    }

    /// A rectangle with round corners.
    pub fn plate(rect: Rect, radius: f64) -> Path {
        let Rect { x, y, w, h } = rect;
        let r = radius.min(w / 2.0).min(h / 2.0);
        if r <= 0.0 {
            return Path::ring(&[[x, y], [x + w, y], [x + w, y + h], [x, y + h]]);
        }
        let corner = |to| Step::Arc([r, r], 0.0, false, true, to);
        Path(vec![
            Step::Move([x + r, y]),
            Step::Line([x + w - r, y]),
            corner([x + w, y + r]),
            Step::Line([x + w, y + h - r]),
            corner([x + w - r, y + h]),
            Step::Line([x + r, y + h]),
            corner([x, y + h - r]),
            Step::Line([x, y + r]),
            corner([x + r, y]),
            Step::Close,
        ])
    }
}

/// How a line is broken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Dash {
    /// Not at all.
    Solid,
    /// Envelope, doubtful reading: 3 on, 1 off.
    Long,
    /// Zone edge: 2 on, 1 off.
    Zone,
    /// Route edge: 4 on, 1 off.
    Route,
    /// Margin edge.
    Chain,
    /// Unchecked reading: round dots.
    Dots,
    /// Gate, threshold.
    Short,
}

/// A pen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// mm.
    pub width: f64,
    /// Its ink.
    pub colour: Colour,
    /// How it is broken.
    pub dash: Dash,
}

impl Stroke {
    /// An unbroken line in ink.
    pub const fn solid(width: f64) -> Stroke {
        Stroke {
            width,
            colour: INK,
            dash: Dash::Solid,
        }
    }

    /// A broken line in ink.
    pub const fn dashed(width: f64, dash: Dash) -> Stroke {
        Stroke {
            width,
            colour: INK,
            dash,
        }
    }
}

/// Where a text stands from its spot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

/// One line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// The words.
    pub words: String,
    /// On the baseline.
    pub at: Spot,
    /// Cap height, mm.
    pub cap: f64,
    /// How heavy.
    pub weight: Weight,
    /// Where it stands from `at`.
    pub anchor: Anchor,
    /// Degrees clockwise about `at`.
    pub turn: f64,
    /// Its ink.
    pub colour: Colour,
}

impl Text {
    /// A level line in ink that begins at `at`.
    pub fn new(words: impl Into<String>, at: Spot, cap: f64) -> Text {
        Text {
            words: face::printable(&words.into()),
            at,
            cap,
            weight: Weight::Regular,
            anchor: Anchor::Start,
            turn: 0.0,
            colour: INK,
        }
    }

    /// In bold.
    pub fn bold(mut self) -> Text {
        self.weight = Weight::Bold;
        self
    }

    /// With its middle at the spot.
    pub fn middle(mut self) -> Text {
        self.anchor = Anchor::Middle;
        self
    }

    /// With its end at the spot.
    pub fn end(mut self) -> Text {
        self.anchor = Anchor::End;
        self
    }

    /// Turned about its spot.
    pub fn turned(mut self, degrees: f64) -> Text {
        self.turn = degrees;
        self
    }

    /// mm.
    pub fn width(&self) -> f64 {
        face::width(&self.words, self.cap, self.weight)
    }
}

/// Something drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A path, filled and stroked.
    Path(Path, Option<Colour>, Option<Stroke>),
    /// A line of text.
    Text(Text),
}

/// An upright rectangle on the sheet, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Left.
    pub x: f64,
    /// Top.
    pub y: f64,
    /// Width.
    pub w: f64,
    /// Height.
    pub h: f64,
}

impl Rect {
    /// Its middle.
    pub fn centre(&self) -> Spot {
        [self.x + self.w / 2.0, self.y + self.h / 2.0]
    }

    /// Wider by `by` on every side.
    pub fn grown(&self, by: f64) -> Rect {
        Rect {
            x: self.x - by,
            y: self.y - by,
            w: self.w + 2.0 * by,
            h: self.h + 2.0 * by,
        }
    }

    /// Whether the two share ground.
    pub fn meets(&self, other: &Rect) -> bool {
        self.x < other.x + other.w
            && other.x < self.x + self.w
            && self.y < other.y + other.h
            && other.y < self.y + self.h
    }

    /// The least rectangle round all spots; `None` for none.
    pub fn round(spots: impl IntoIterator<Item = Spot>) -> Option<Rect> {
        let mut spots = spots.into_iter();
        let first = spots.next()?;
        let (mut low, mut high) = (first, first);
        for [x, y] in spots {
            low = [low[0].min(x), low[1].min(y)];
            high = [high[0].max(x), high[1].max(y)];
        }
        Some(Rect {
            x: low[0],
            y: low[1],
            w: high[0] - low[0],
            h: high[1] - low[1],
        })
    }
}

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// Width of the sheet, mm.
    pub width: f64,
    /// Height of the sheet, mm.
    pub height: f64,
    /// What is drawn, the first lowest.
    pub items: Vec<Item>,
}

impl Scene {
    /// An empty sheet.
    pub fn new(width: f64, height: f64) -> Scene {
        Scene {
            width,
            height,
            items: Vec::new(),
        }
    }

    /// Strokes a path.
    pub fn stroke(&mut self, path: Path, stroke: Stroke) {
        if !path.0.is_empty() {
            self.items.push(Item::Path(path, None, Some(stroke)));
        }
    }

    /// Fills a path.
    pub fn fill(&mut self, path: Path, colour: Colour) {
        if !path.0.is_empty() {
            self.items.push(Item::Path(path, Some(colour), None));
        }
    }

    /// Fills and strokes a path.
    pub fn shape(&mut self, path: Path, colour: Colour, stroke: Stroke) {
        if !path.0.is_empty() {
            self.items
                .push(Item::Path(path, Some(colour), Some(stroke)));
        }
    }

    /// Writes a line.
    pub fn text(&mut self, text: Text) {
        if !text.words.is_empty() {
            self.items.push(Item::Text(text));
        }
    }
}
