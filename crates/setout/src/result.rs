//! What is set out, from where, in which order.

use geo::Coord;
use survey::network::Tape;
use survey::result::Ellipse;

use crate::bases::Bases;

/// The set-out of a whole plan. Lengths that are printed are whole steps; the rest is
/// rounded to 1e-6.
#[derive(Clone, Debug, PartialEq)]
pub struct SetOut {
    /// Printed lengths are multiples of this, metres.
    pub step: f64,
    /// Share of marks that land within their ellipse.
    pub level: f64,
    /// How good the tape was taken to be.
    pub tape: Tape,
    /// Survey points that tapes may be hooked to: the numbers of bases count here.
    pub bases: Bases,
    /// In the order of the plan, each marking's together.
    pub points: Vec<KeyPoint>,
    /// In the order of the plan.
    pub markings: Vec<Marking>,
    /// Every key point once, in the order of the walk.
    pub walk: Vec<Stop>,
    /// Metres between the first key point and the last, in a straight line from each to
    /// the next.
    pub walked: f64,
    /// Metres that tapes' ends are carried.
    pub carried: f64,
    /// Key points that no two tapes fix.
    pub unreached: Vec<Unreached>,
}

/// A point on the ground from which a figure is laid.
#[derive(Clone, Debug, PartialEq)]
pub struct KeyPoint {
    /// Its marking's name and a number: `brook1-1`.
    pub name: String,
    /// Number of its marking.
    pub marking: usize,
    /// Why it is wanted.
    pub role: Role,
    /// What of the figure lies there.
    pub feature: Feature,
    /// Where it shall be, metres.
    pub at: Coord<f64>,
    /// The two tapes. Who stands at the first's base and looks to the second's has the
    /// point on the left.
    pub tapes: [Held; 2],
    /// Between the tapes at the point, degrees.
    pub angle_deg: f64,
    /// Whether they cross well, and not only well enough.
    pub good: bool,
    /// Where the printed lengths meet: within some millimetres of `at`.
    pub lands: Coord<f64>,
    /// Within it, round `at`, the mark will lie in a share `SetOut::level` of all cases.
    pub ellipse: Ellipse,
    /// The check; `None` where no third tape reaches it.
    pub third: Option<Third>,
    /// What to do when a base cannot be used on the day.
    pub instead: Vec<Instead>,
    /// Tapes that would cross better but for what stands in their way.
    pub barred: Vec<Barred>,
}

/// Why a key point is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// It fixes where the figure lies.
    Origin,
    /// It fixes how the figure is turned.
    Direction,
    /// It shows whether both are right, and whether the figure is mirrored.
    Check,
}

/// What of a figure lies at a point.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Feature {
    /// The middle of the cell of this name.
    Cell(String),
    /// Where the middle of this lane (from 0) starts.
    LaneStart(usize),
    /// Where it ends.
    LaneEnd(usize),
    /// Where it is farthest from its start.
    LaneFar(usize),
    /// Where it strays most from the straight line between its ends, for this time (from 0):
    /// a corner of a zigzag, a crest of a wave.
    LaneBend(usize, usize),
    /// The middle of this waiting spot (from 0).
    Wait(usize),
    /// A corner of this painted shape (from 0).
    Corner(usize),
}

/// A tape held to a base.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// Number of the base.
    pub base: usize,
    /// Metres, a multiple of the step.
    pub length: f64,
}

/// A third tape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Third {
    /// Number of the base.
    pub base: usize,
    /// What it should read, metres, a multiple of the step.
    pub length: f64,
    /// Its predicted standard deviation, metres.
    pub sigma: f64,
    /// Farther off than this, metres: redo.
    pub limit: f64,
    /// The smallest slip in either of the two tapes that carries it past the limit, metres.
    pub finds: f64,
}

/// Two other tapes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Instead {
    /// The base that cannot be used.
    pub without: usize,
    /// The tapes, ordered like a key point's.
    pub tapes: [Held; 2],
    /// Between them, degrees.
    pub angle_deg: f64,
    /// As the key point's.
    pub ellipse: Ellipse,
}

/// A tape that cannot be drawn straight.
#[derive(Clone, Debug, PartialEq)]
pub struct Barred {
    /// From this base.
    pub base: usize,
    /// What stands in its way, by name.
    pub by: String,
}

/// A key point that no two tapes fix.
#[derive(Clone, Debug, PartialEq)]
pub struct Unreached {
    /// Number of its marking.
    pub marking: usize,
    /// Why it was wanted.
    pub role: Role,
    /// What of the figure lies there.
    pub feature: Feature,
    /// Where it shall be, metres.
    pub at: Coord<f64>,
}

/// How one marking is laid.
#[derive(Clone, Debug, PartialEq)]
pub struct Marking {
    /// Its name.
    pub name: String,
    /// Numbers of its key points: origin, direction, check.
    pub points: Vec<usize>,
    /// From origin to direction, degrees anticlockwise from +x; `None` for a figure of one
    /// point.
    pub turn_deg: Option<f64>,
    /// Standard deviation of that turn, degrees.
    pub turn_sigma_deg: Option<f64>,
    /// Readings between its key points: they show what third tapes do not.
    pub spans: Vec<Span>,
    /// The line to snap from origin to direction.
    pub chalk: Option<Chalk>,
    /// A right angle on it, where the figure has ground on a side of it.
    pub square: Option<RightAngle>,
}

/// A reading between two key points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Numbers of the key points.
    pub between: [usize; 2],
    /// What it should read, metres, a multiple of the step.
    pub length: f64,
    /// Its predicted standard deviation, metres.
    pub sigma: f64,
    /// Farther off than this, metres: redo.
    pub limit: f64,
}

/// A chalk line from origin to direction: the baseline of the rest of the figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Chalk {
    /// Metres from origin to direction, a multiple of the step.
    pub length: f64,
    /// What else of the figure is found from it, in the way of the line.
    pub offsets: Vec<Offset>,
}

/// A place found from the baseline.
#[derive(Clone, Debug, PartialEq)]
pub struct Offset {
    /// What of the figure lies there.
    pub feature: Feature,
    /// Metres from the origin along the line, a multiple of the step.
    pub along: f64,
    /// Metres to the left of the line, to the right below zero; a multiple of the step.
    pub left: f64,
}

/// A right angle laid with three lengths in the ratio 3, 4, 5.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RightAngle {
    /// Along the chalk line from the origin, metres.
    pub along: f64,
    /// Square to it, metres.
    pub aside: f64,
    /// From end to end, metres.
    pub across: f64,
    /// Whether it goes up on the left of the line.
    pub left: bool,
    /// Standard deviation of the angle, degrees.
    pub sigma_deg: f64,
}

/// One stop of the walk.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    /// Number of the key point.
    pub point: usize,
    /// Tapes' ends to carry before it, in the order of the tapes.
    pub moves: Vec<Move>,
}

/// A tape's end is carried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Move {
    /// Which tape, from 0.
    pub tape: usize,
    /// Unhooked from this base; `None` where it lay rolled up.
    pub from: Option<usize>,
    /// Hooked to this one.
    pub to: usize,
}
