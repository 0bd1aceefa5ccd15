//! What comes out.

use geo::{Coord, LineString, Polygon};
use marking::Colour;

use crate::material::{Material, Tool};

/// The plates of a set of markings, and what needs none. Metres and radians, to 1e-6.
#[derive(Clone, Debug, PartialEq)]
pub struct Stencils {
    /// In the order in which they are first painted through.
    pub stencils: Vec<Stencil>,
    /// Shapes rolled along chalk lines, drawn by string, or taped; in the order of the
    /// markings and of their paint.
    pub taped: Vec<Taped>,
}

/// One motif in one colour, or one with its heel bar in a second.
#[derive(Clone, Debug, PartialEq)]
pub struct Stencil {
    /// `S01`, `S02`: as many digits as sort.
    pub id: String,
    /// What it shows.
    pub motif: Motif,
    /// The colour of most of its paint first.
    pub colours: Vec<Colour>,
    /// What it is cut from.
    pub material: Material,
    /// What it is cut with.
    pub tool: Tool,
    /// The whole plate in its own frame: an upright rectangle, its middle at the origin.
    pub plate: Polygon<f64>,
    /// What is open in it: the paint, less the ties.
    pub openings: Vec<Opening>,
    /// Ties that were added; painted in once the plate is lifted.
    pub ties: Vec<Tie>,
    /// Which way, in its frame, lies the front of the marking that uses it first.
    pub front: f64,
    /// How the plate is cut, one panel at least.
    pub panels: Vec<Panel>,
    /// Where it is painted through, in the order of the markings.
    pub uses: Vec<Use>,
    /// What is weaker in it than its material likes.
    pub weak: Vec<Weak>,
}

/// What a stencil shows, as well as its outline tells.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Motif {
    /// A round cell.
    Ring,
    /// Any other band round bare ground.
    Cell,
    /// A solid disc: a pebble, a teller.
    Disc,
    /// A start.
    HalfMoon,
    /// Go.
    Chevron,
    /// A short stroke or a bar.
    Stroke,
    /// A footprint.
    Print,
    /// Numerals or a letter.
    Glyph(String),
    /// None of these.
    Shape,
}

impl Motif {
    /// The word of file names and of the catalogue's keys; ASCII.
    pub fn word(&self) -> &'static str {
        match self {
            Motif::Ring => "ring",
            Motif::Cell => "cell",
            Motif::Disc => "disc",
            Motif::HalfMoon => "half-moon",
            Motif::Chevron => "chevron",
            Motif::Stroke => "stroke",
            Motif::Print => "print",
            Motif::Glyph(_) => "glyph",
            Motif::Shape => "shape",
        }
    }

    /// A name for a file: the word, and which glyph. ASCII, lower case.
    pub fn slug(&self) -> String {
        match self {
            Motif::Glyph(text) => {
                let plain = |letter: char| match letter {
                    'Ñ' => "enye".to_owned(),
                    other => other.to_ascii_lowercase().to_string(),
                };
                format!("glyph-{}", text.chars().map(plain).collect::<String>())
            }
            other => other.word().to_owned(),
        }
    }
}

/// One hole in a plate that paint goes through.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct Opening {
    pub colour: Colour,
    pub polygon: Polygon<f64>,
}

/// A strip of plate left standing across the paint.
#[derive(Clone, Debug, PartialEq)]
pub struct Tie {
    /// Its middle.
    pub at: Coord<f64>,
    /// Which way it leads, off the island.
    pub way: f64,
    /// Across, metres.
    pub width: f64,
    /// Metres of paint that it spans.
    pub length: f64,
}

/// What is cut in one piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Panel {
    /// The stencil's, and a letter where there is more than one: `S03-A`.
    pub id: String,
    /// In the stencil's frame.
    pub plate: Polygon<f64>,
    /// What is open in this panel.
    pub openings: Vec<Opening>,
    /// Where the middle of the blade or beam runs: half a kerf into the waste, openings
    /// first, holes next, the plate's edge last. Closed.
    pub cuts: Vec<LineString<f64>>,
    /// Middles of the registration holes; two panels share those on their seam.
    pub holes: Vec<Coord<f64>>,
    /// A hole across, metres.
    pub hole: f64,
    /// From tail to tip, towards [`Stencil::front`].
    pub arrow: [Coord<f64>; 2],
    /// Where its id, its colour and "this side up" are written, the middle of the lines.
    pub label: Coord<f64>,
    /// Which way the lines run.
    pub label_turn: f64,
    /// How far text may reach from the middle along and across the lines, metres.
    pub label_room: [f64; 2],
}

/// Where a stencil is painted through.
#[derive(Clone, Debug, PartialEq)]
pub struct Use {
    /// Number of the marking.
    pub marking: usize,
    /// Numbers of its painted shapes, rising.
    pub paint: Vec<usize>,
    /// Where the stencil's origin lies, in the figure's coordinates.
    pub at: Coord<f64>,
    /// How the stencil's +x is turned there, (-pi, pi].
    pub turn: f64,
    /// Whether it lies on its face: first y to -y, then the turn.
    pub over: bool,
}

/// A painted shape that needs no plate.
#[derive(Clone, Debug, PartialEq)]
pub struct Taped {
    /// Number of the marking.
    pub marking: usize,
    /// Number of its painted shape.
    pub paint: usize,
    /// Its colour.
    pub colour: Colour,
    /// Why.
    pub why: Why,
    /// Metres of its outline.
    pub outline: f64,
    /// Square metres.
    pub area: f64,
}

/// Why a shape is not stencilled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// A stroke: rolled along chalk lines.
    Stroke,
    /// A big solid.
    Solid,
    /// Its plate would take more panels than are worth it: drawn by string and taped.
    Large,
}

/// What is weaker in a plate than its material likes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weak {
    /// What.
    pub what: Weakness,
    /// Where, in the stencil's frame.
    pub at: Coord<f64>,
    /// Metres across.
    pub width: f64,
    /// Metres along; 0 where only the width matters.
    pub length: f64,
}

/// Kinds of weakness.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weakness {
    /// An opening narrower than a roller fills.
    Opening,
    /// A web narrower than any sheet keeps.
    Web,
    /// A strip narrower than a tie of this material.
    Thin,
    /// A strip or tongue too long for its width.
    Tongue,
    /// Added ties take too much of the outline.
    Ties,
    /// The tool is too broad for an opening.
    Kerf,
    /// A piece that nothing holds.
    Falls,
}
