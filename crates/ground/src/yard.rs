//! A surveyed yard: where everything stands, in metres, before any rule is applied.

use geo::{Coord, LineString, Polygon};
use note::Place;

/// A yard with all that stands in it. Coordinates are metres in the survey's frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Yard {
    /// Outer ring, anticlockwise, simple.
    pub boundary: Polygon<f64>,
    /// What each side of the boundary is; where the user says nothing, [`EdgeKind::Open`]
    /// is never assumed: it is [`EdgeKind::Wall`].
    pub edges: Vec<Edge>,
    /// Stretches of ground by what they are made of; later ones lie over earlier ones.
    pub surfaces: Vec<Surface>,
    /// What stands or is set in the yard.
    pub fixtures: Vec<Fixture>,
    /// Doors of buildings onto the yard.
    pub doors: Vec<Door>,
    /// Gates of the yard.
    pub gates: Vec<Gate>,
    /// Walks that must stay open.
    pub routes: Vec<Wanted>,
    /// Where staff usually stand.
    pub stands: Vec<Coord<f64>>,
    /// What the surveyor noticed.
    pub remarks: Vec<Remark>,
}

/// One side of the boundary, from `from` to `to` along the outer ring.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// The stretch.
    pub line: LineString<f64>,
    /// What it is.
    pub is: EdgeKind,
}

/// What bounds the yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum EdgeKind {
    Wall,
    Fence,
    Hedge,
    Kerb,
    Drop,
    Open,
}

/// A stretch of ground.
#[derive(Clone, Debug, PartialEq)]
pub struct Surface {
    /// Its outline.
    pub outline: Polygon<f64>,
    /// What it is made of.
    pub is: SurfaceKind,
    /// Days since it was laid, on the project's date, if known.
    pub age_days: Option<i64>,
    /// Sound, worn, cracked, as the surveyor says.
    pub condition: Option<Condition>,
    /// Where it is written.
    pub at: Option<Place>,
}

/// What ground is made of (building.md 1.4).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum SurfaceKind {
    Asphalt,
    Concrete,
    Paving,
    OldPaint,
    Sealer,
    Rubber,
    Mulch,
    Carpet,
    LooseFill,
    Sand,
    Grass,
    Soil,
    Wood,
    Steel,
    Tactile,
}

/// The state of a surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Condition {
    Sound,
    Worn,
    Cracked,
    Spalled,
}

/// What stands or is set in the yard.
#[derive(Clone, Debug, PartialEq)]
pub struct Fixture {
    /// As the user spells it.
    pub name: String,
    /// What it is.
    pub is: FixtureKind,
    /// Its footprint on the ground.
    pub shape: Footprint,
    /// Height of fall or platform, metres, where known.
    pub height: Option<f64>,
    /// Underside and top, metres, where shade matters.
    pub base: Option<f64>,
    /// The top, metres.
    pub top: Option<f64>,
    /// What only some kinds have.
    pub more: More,
    /// Where it is written.
    pub at: Option<Place>,
}

/// A footprint on the ground.
#[derive(Clone, Debug, PartialEq)]
pub enum Footprint {
    /// An outline.
    Outline(Polygon<f64>),
    /// A disc.
    Disc {
        /// Its middle.
        centre: Coord<f64>,
        /// Metres.
        radius: f64,
    },
    /// A line of no width: a beam seen from above.
    Beam(Coord<f64>, Coord<f64>),
}

/// Details by kind.
#[derive(Clone, Debug, PartialEq)]
pub enum More {
    /// Nothing more.
    Nothing,
    /// A slide's exit edge, from one side of the chute to the other.
    Slide {
        /// Both ends of the exit edge.
        exit: Option<[Coord<f64>; 2]>,
    },
    /// A to-fro swing under its beam.
    Swing {
        /// Height of the pivot over the surfacing, metres.
        pivot: f64,
        /// Belt or full bucket seat.
        seat: Seat,
        /// Height of the top of the sitting surface, metres, for a bucket seat.
        seat_top: Option<f64>,
    },
    /// A tyre swing under its pivot.
    TyreSwing {
        /// Length of the suspending members, metres.
        members: f64,
    },
    /// A spring rocker.
    Rocker {
        /// Whether children stand on it.
        standing: bool,
    },
}

/// A swing's seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Seat {
    Belt,
    Bucket,
}

/// What a fixture is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum FixtureKind {
    Slide,
    Swing,
    TyreSwing,
    Climber,
    Seesaw,
    Rocker,
    Roundabout,
    House,
    Tree,
    Post,
    Lamp,
    Bench,
    Table,
    Shed,
    Building,
    Planter,
    Sandpit,
    Drain,
    Cover,
    Hydrant,
    Other,
}

/// A door of a building onto the yard.
#[derive(Clone, Debug, PartialEq)]
pub struct Door {
    /// As the user spells it.
    pub name: String,
    /// Both jambs.
    pub jambs: [Coord<f64>; 2],
    /// Which jamb the hinge is on (0 or 1), if it swings.
    pub hinge: Option<usize>,
    /// Whether it opens out of the building, into the yard.
    pub opens_out: bool,
    /// Where it is written.
    pub at: Option<Place>,
}

/// A gate of the yard.
#[derive(Clone, Debug, PartialEq)]
pub struct Gate {
    /// As the user spells it.
    pub name: String,
    /// Both posts.
    pub posts: [Coord<f64>; 2],
    /// Which post the hinge is on (0 or 1), if it swings.
    pub hinge: Option<usize>,
    /// Whether it opens into the yard.
    pub opens_in: bool,
    /// Where it is written.
    pub at: Option<Place>,
}

/// A walk that must stay open.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// A door, a gate or a fixture.
    pub from: String,
    /// Another.
    pub to: String,
    /// Clear width, metres.
    pub width: f64,
    /// Where it is written.
    pub at: Option<Place>,
}

/// What the surveyor noticed on the ground.
#[derive(Clone, Debug, PartialEq)]
pub struct Remark {
    /// Where.
    pub outline: Polygon<f64>,
    /// What.
    pub is: RemarkKind,
    /// In the surveyor's words.
    pub says: Option<String>,
    /// Where it is written.
    pub at: Option<Place>,
}

/// Kinds of remarks; a puddle, a trike path and a slope keep clear, old paint warns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum RemarkKind {
    Puddle,
    OldPaint,
    TrikePath,
    Slope,
}
