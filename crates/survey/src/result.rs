//! What the readings say: the answer of this room.

use crate::network::{Datum, Kind, PointId};

/// An adjusted survey. Coordinates are rounded to 1e-7 m on the way out, and what
/// follows uses the rounded value.
#[derive(Clone, Debug, PartialEq)]
pub struct Survey {
    /// The frame that was used.
    pub datum: Datum,
    /// In the order of `Network::points`.
    pub points: Vec<Point>,
    /// The covariance of all coordinates, m².
    pub covariance: Covariance,
    /// Corners in anticlockwise order.
    pub boundary: Vec<PointId>,
    /// In the order of `Network::readings`.
    pub readings: Vec<Adjusted>,
    /// Readings, by number, that the tests cannot tell apart.
    pub groups: Vec<Vec<usize>>,
    /// Degrees of freedom.
    pub dof: usize,
    /// Weighted sum of squared residuals of the readings kept.
    pub vtpv: f64,
    /// A-posteriori over a-priori sigma; 0 where `dof` is 0.
    pub s0: f64,
    /// The global test of the last round.
    pub global_test: GlobalTest,
    /// Readings most likely wrong, the worst first.
    pub suspects: Vec<Suspect>,
    /// The yard's area; `None` while the boundary is loose.
    pub area: Option<Measured>,
    /// Extra readings that would help most, the best first.
    pub next_readings: Vec<NextReading>,
}

/// One point of the answer, metres.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// As the user spells it.
    pub name: String,
    /// Metres.
    pub x: f64,
    /// Metres.
    pub y: f64,
    /// Standard deviations at the a-priori sigma, metres.
    pub sx: f64,
    /// The same in y.
    pub sy: f64,
    /// Whether the datum or known coordinates hold it.
    pub fixed: bool,
    /// Whether the readings fix it at all; where not, x and y are a guess to draw with.
    pub loose: bool,
    /// Standard error ellipse (one sigma); `None` for a fixed or loose point.
    pub ellipse: Option<Ellipse>,
}

/// A standard error ellipse (one sigma).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ellipse {
    /// Long half-axis, metres.
    pub a: f64,
    /// Short half-axis, metres.
    pub b: f64,
    /// From +x to the long axis, anticlockwise, degrees in [0, 180).
    pub theta_deg: f64,
}

/// Covariance of coordinates, m²: x then y of each point in `order`.
#[derive(Clone, Debug, PartialEq)]
pub struct Covariance {
    /// Points that it covers.
    pub order: Vec<PointId>,
    /// Row by row, (2 · order.len())².
    pub values: Vec<f64>,
}

/// One reading after the adjustment.
#[derive(Clone, Debug, PartialEq)]
pub struct Adjusted {
    /// What was measured.
    pub kind: Kind,
    /// As read.
    pub reading: f64,
    /// A-priori standard deviation.
    pub sigma: f64,
    /// What the adjusted points say.
    pub adjusted: f64,
    /// `adjusted - reading`.
    pub v: f64,
    /// Redundancy number, 0 to 1; for a reading set aside, as it stood when it was.
    pub r: f64,
    /// Standardised residual by the stated sigma; `None` where nothing checks it.
    pub w: Option<f64>,
    /// The same by the sigma found from all residuals; `None` below two degrees of freedom.
    pub tau: Option<f64>,
    /// Smallest blunder that the test would find, in the unit of the reading.
    pub mdb: Option<f64>,
    /// Whether the search for slips set it aside.
    pub set_aside: bool,
}

/// Whether the readings agree with each other as their sigmas promise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GlobalTest {
    /// Share of good surveys that the test would doubt.
    pub alpha: f64,
    /// vTPv may be at most this.
    pub limit: f64,
    /// Whether it is.
    pub passed: bool,
}

/// A reading that the others speak against.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspect {
    /// Readings, by number, that the fault could be in: one, or a group that cannot be
    /// told apart, the first being the one set aside.
    pub readings: Vec<usize>,
    /// What the others say the first should read.
    pub should_read: f64,
    /// What probably happened.
    pub guess: Option<Slip>,
    /// Whether it was found and set aside, or only named because nothing can locate it.
    pub set_aside: bool,
}

/// How a tape is misread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Slip {
    /// Whole metres too many (or few).
    WholeMetres(i32),
    /// Whole feet too many (or few).
    WholeFeet(i32),
    /// Tenths of a metre too many (or few).
    Tenths(i32),
    /// Two neighbouring digits swapped; metres that it should have read.
    SwappedDigits(f64),
    /// Feet taken for inches, or inches for feet; metres that it should have read.
    FootForInch(f64),
    /// The hook or end ring of the tape counted in or left out, metres.
    Hook(f64),
}

/// A value and its standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// The value.
    pub value: f64,
    /// Its standard deviation.
    pub sigma: f64,
}

/// A reading worth taking.
#[derive(Clone, Debug, PartialEq)]
pub struct NextReading {
    /// One end.
    pub from: PointId,
    /// The other.
    pub to: PointId,
    /// What it does.
    pub helps: Help,
    /// Before, in the unit that `helps` says.
    pub before: f64,
    /// After.
    pub after: f64,
}

/// How an extra reading helps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Help {
    /// It fixes this loose point; `after` is its long half-axis in metres, `before` infinite.
    Fixes(PointId),
    /// It checks this reading; before and after are its redundancy number.
    Checks(usize),
    /// It separates this group; before and after are the largest correlation within.
    Separates(usize),
}
