//! What a plate is made of and cut with, and the rules that follow.

use ledger::{Key, Ledger};

use crate::figures as key;

/// What plates are cut from. No PVC: a laser makes chlorine compounds of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Material {
    /// Card or kraft paper, its edges sealed.
    Card,
    /// Polyester film.
    Film,
    /// Fluted polypropylene.
    Fluted,
    /// Solid polyethylene.
    SolidPe,
    /// Hardboard.
    Hardboard,
}

/// What it is cut with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Tool {
    Knife,
    Laser,
    Router,
    Jigsaw,
}

/// How the paint is put on: it sets the margin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Applied {
    Roller,
    Brush,
    Spray,
}

/// Whether a plate may be laid on its face, so that mirrored shapes share it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TurnOver {
    /// A plate has one face to the ground: wet paint on the other would print.
    Never,
    /// It may be turned over once it is dry and clean.
    Allowed,
}

/// Where a numeral in the eye of a cell is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Numerals {
    /// Through a small plate of its own, so that all cells share one.
    Apart,
    /// Through its cell's plate: in one go, but a plate a numeral.
    InCell,
}

/// The wishes of who builds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub struct Setting {
    pub material: Material,
    pub tool: Tool,
    pub applied: Applied,
    pub turn_over: TurnOver,
    pub numerals: Numerals,
}

impl Material {
    /// All of them.
    pub const ALL: [Material; 5] = [
        Material::Card,
        Material::Film,
        Material::Fluted,
        Material::SolidPe,
        Material::Hardboard,
    ];

    /// The word of files.
    pub fn word(self) -> &'static str {
        match self {
            Material::Card => "card",
            Material::Film => "film",
            Material::Fluted => "fluted",
            Material::SolidPe => "solid-pe",
            Material::Hardboard => "hardboard",
        }
    }

    /// What cuts it.
    pub fn tools(self) -> &'static [Tool] {
        match self {
            Material::Card => &[Tool::Knife],
            Material::Film => &[Tool::Knife, Tool::Laser],
            Material::Fluted | Material::SolidPe => &[Tool::Knife, Tool::Router],
            Material::Hardboard => &[Tool::Jigsaw, Tool::Router, Tool::Laser],
        }
    }

    /// Keys of its thickness, least tie and longest tongue.
    fn keys(self) -> [Key; 3] {
        match self {
            Material::Card => [key::CARD_THICKNESS, key::CARD_TIE, key::CARD_TONGUE],
            Material::Film => [key::FILM_THICKNESS, key::FILM_TIE, key::FILM_TONGUE],
            Material::Fluted => [key::FLUTED_THICKNESS, key::FLUTED_TIE, key::FLUTED_TONGUE],
            Material::SolidPe => [
                key::SOLID_PE_THICKNESS,
                key::SOLID_PE_TIE,
                key::SOLID_PE_TONGUE,
            ],
            Material::Hardboard => [
                key::HARDBOARD_THICKNESS,
                key::HARDBOARD_TIE,
                key::HARDBOARD_TONGUE,
            ],
        }
    }
}

impl Tool {
    /// All of them.
    pub const ALL: [Tool; 4] = [Tool::Knife, Tool::Laser, Tool::Router, Tool::Jigsaw];

    /// The word of files.
    pub fn word(self) -> &'static str {
        match self {
            Tool::Knife => "knife",
            Tool::Laser => "laser",
            Tool::Router => "router",
            Tool::Jigsaw => "jigsaw",
        }
    }

    /// Width of its cut, metres.
    pub fn kerf(self, ledger: &Ledger) -> f64 {
        ledger.number(match self {
            Tool::Knife => key::KERF_KNIFE,
            Tool::Laser => key::KERF_LASER,
            Tool::Router => key::KERF_ROUTER,
            Tool::Jigsaw => key::KERF_JIGSAW,
        })
    }
}

/// What a plate must keep to; metres where no other unit is named.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct Rules {
    pub thickness: f64,
    /// Least width of a tie.
    pub tie: f64,
    /// Longest tongue over its width.
    pub tongue: f64,
    pub tie_spacing: f64,
    /// Least ties of an island, and of a long one.
    pub tie_count: [usize; 2],
    pub tie_long: f64,
    /// Of the outline.
    pub tie_share: f64,
    pub kerf: f64,
    /// Sides of a sheet after trimming.
    pub sheet: [f64; 2],
    /// Least gap of two parts on a sheet.
    pub part_gap: f64,
    pub margin: f64,
    /// Longest side of a panel: what two people carry, and what a trimmed sheet gives.
    pub longest: f64,
    pub overlap: f64,
    pub panels: usize,
    pub hole: f64,
    pub same: f64,
    pub stroke_long: f64,
    pub stroke_slim: f64,
    /// Square metres.
    pub solid: f64,
    pub least: f64,
    pub web: f64,
    /// Pieces this near belong to one motif.
    pub join: f64,
    /// Cap height and tie that glyphs are known by.
    pub glyph: [f64; 2],
}

impl Rules {
    /// The ledger's, for a setting.
    pub fn of(setting: &Setting, ledger: &Ledger) -> Rules {
        /// Of a joint. A joint is cut straight and rounded to 1e-6 m; cells stand more
        /// than twice as far apart.
        const JOIN: f64 = 1.1;
        let size = |key| ledger.number(key);
        let [thickness, tie, tongue] = setting.material.keys().map(size);
        let tie_count = match ledger.list(key::TIE_COUNT) {
            [short, long] => [*short as usize, *long as usize],
            _ => [0; 2],
        };
        let sheet = match ledger.list(key::SHEET) {
            [a, b] => [*a, *b].map(|side| side - 2.0 * size(key::TRIM)),
            _ => [f64::NAN; 2],
        };
        let wander = match setting.tool {
            Tool::Jigsaw => size(key::WANDER_JIGSAW),
            Tool::Knife | Tool::Laser | Tool::Router => 0.0,
        };
        Rules {
            thickness,
            tie: tie.max(size(key::TIE_THICK) * thickness),
            tongue,
            tie_spacing: size(key::TIE_SPACING),
            tie_count,
            tie_long: size(key::TIE_LONG),
            tie_share: size(key::TIE_SHARE),
            kerf: setting.tool.kerf(ledger),
            sheet,
            part_gap: setting.tool.kerf(ledger) + size(key::PART_GAP),
            margin: size(match setting.applied {
                Applied::Roller => key::MARGIN_ROLLER,
                Applied::Brush => key::MARGIN_BRUSH,
                Applied::Spray => key::MARGIN_SPRAY,
            }),
            longest: size(key::CARRY).min(sheet[0]).min(sheet[1]),
            overlap: size(key::OVERLAP),
            panels: size(key::PANELS) as usize,
            hole: size(key::HOLE),
            same: size(key::SAME),
            stroke_long: size(key::STROKE_LONG),
            stroke_slim: size(key::STROKE_SLIM),
            solid: size(key::SOLID),
            least: size(key::LEAST),
            // cut from both sides by a tool that wanders
            web: size(key::WEB) + 2.0 * wander,
            join: JOIN * size(key::JOINT),
            glyph: [size(key::CAP), size(key::TIE)],
        }
    }
}
