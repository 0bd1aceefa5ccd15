//! What was measured: points, readings and the frame they are wanted in.

use std::collections::BTreeMap;

use note::Place;

/// A point's number in [`Network::points`].
pub type PointId = usize;

/// All that was measured of one yard.
#[derive(Clone, Debug, PartialEq)]
pub struct Network {
    /// Names in the order of their first mention.
    pub points: Vec<String>,
    /// Readings in the order of the user's files.
    pub readings: Vec<Reading>,
    /// The frame.
    pub datum: Datum,
    /// Corners of the yard in the order walked.
    pub boundary: Vec<PointId>,
    /// Which way that order runs; settles the mirror image.
    pub walked: Walked,
    /// Rough places in metres, if the user gave any. A free datum stays nearest to them.
    pub start: BTreeMap<PointId, [f64; 2]>,
    /// Where the boundary stands in the user's file, for notes.
    pub at: Option<Place>,
}

/// One measured value.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// What was measured between which points.
    pub kind: Kind,
    /// Metres; radians for [`Kind::Square`].
    pub value: f64,
    /// Standard deviation in the unit of the value.
    pub sigma: f64,
    /// Where it stands in the user's file.
    pub at: Option<Place>,
}

/// What a reading measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Straight distance.
    Distance {
        /// One end.
        from: PointId,
        /// The other.
        to: PointId,
    },
    /// Distance along the line from `from` towards `to`, to the foot of `point`.
    Along {
        /// Start of the line.
        from: PointId,
        /// The line runs towards it.
        to: PointId,
        /// What was measured.
        point: PointId,
    },
    /// Distance of `point` to the left of the line from `from` towards `to`; negative to
    /// the right. A point said to be on the line is one with the value 0.
    Left {
        /// Start of the line.
        from: PointId,
        /// The line runs towards it.
        to: PointId,
        /// What was measured.
        point: PointId,
    },
    /// The unsigned angle at `at` between the ways to `from` and to `to`.
    Square {
        /// The corner.
        at: PointId,
        /// One arm.
        from: PointId,
        /// The other.
        to: PointId,
    },
    /// The x of a point, known from a drawing.
    KnownX {
        /// The point.
        point: PointId,
    },
    /// The y of a point, known from a drawing.
    KnownY {
        /// The point.
        point: PointId,
    },
}

/// The frame in which coordinates are wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Datum {
    /// `origin` at (0, 0), `towards` on the x axis. With known coordinates of at least
    /// two points in the network the frame is theirs and this is only a start.
    Line {
        /// At (0, 0).
        origin: PointId,
        /// On +x.
        towards: PointId,
    },
    /// Nearest to the start: inner constraints on all points.
    Free,
}

/// Which way round the boundary was written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walked {
    /// With the yard on the left.
    Anticlockwise,
    /// With the yard on the right.
    Clockwise,
}

/// How good the tape is: sigma = sqrt(constant² + (per_metre · length)²), in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// Metres.
    pub constant: f64,
    /// Metres a metre.
    pub per_metre: f64,
}

impl Tape {
    /// Standard deviation in metres of one reading of `length` metres.
    pub fn sigma(self, length: f64) -> f64 {
        libm::hypot(self.constant, self.per_metre * length)
    }
}
