//! The `survey` key.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use survey::network::{Datum, Kind, Network};
use survey::result::{Help, Slip};

use crate::round::{millionth, round_to, tenth_of_a_micron};

/// The taped yard: coordinates, how sure they are, and which readings to doubt.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Survey {
    /// The frame of the coordinates.
    pub datum: Frame,
    /// Every point by name.
    pub points: BTreeMap<String, Point>,
    /// Covariance of the coordinates at the a-priori sigma.
    pub covariance: Covariance,
    /// Corners of the yard, anticlockwise.
    pub boundary: Vec<String>,
    /// Every reading after the adjustment.
    pub readings: Vec<Reading>,
    /// Numbers of readings that no test can tell apart.
    pub groups: Vec<Vec<usize>>,
    /// Degrees of freedom.
    pub dof: usize,
    /// Weighted sum of squared residuals.
    pub vtpv: f64,
    /// A-posteriori over a-priori sigma.
    pub s0: f64,
    /// Whether the readings agree as their sigmas promise.
    pub global_test: GlobalTest,
    /// Readings most likely wrong, the worst first.
    pub suspects: Vec<Suspect>,
    /// The yard's area, m²; null while the boundary is loose.
    pub area: Option<Measured>,
    /// Extra readings that would help most.
    pub next_readings: Vec<NextReading>,
}

/// The frame: a point at the origin and one on +x, or a free network.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Frame {
    /// `line` or `free`.
    pub kind: String,
    /// The point at (0, 0).
    pub origin: Option<String>,
    /// The point on +x.
    pub towards: Option<String>,
}

/// A point of the yard, metres.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Point {
    /// Metres.
    pub x: f64,
    /// Metres.
    pub y: f64,
    /// Standard deviation, metres.
    pub sx: f64,
    /// Standard deviation, metres.
    pub sy: f64,
    /// Whether the datum holds it.
    pub fixed: bool,
    /// Whether the readings leave it loose.
    pub loose: bool,
    /// Standard error ellipse (one sigma).
    pub ellipse: Option<Ellipse>,
}

/// A standard error ellipse.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Ellipse {
    /// Long half-axis, metres.
    pub a: f64,
    /// Short half-axis, metres.
    pub b: f64,
    /// From +x to the long axis, anticlockwise, degrees in [0, 180).
    pub theta_deg: f64,
}

/// A covariance matrix, m²: x then y of each point in `order`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Covariance {
    /// Names of the points that it covers.
    pub order: Vec<String>,
    /// Its rows.
    pub rows: Vec<Vec<f64>>,
}

/// A reading after the adjustment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Reading {
    /// `distance` (from, to), `along` and `left` (from, to, point), `square` (at, from, to),
    /// `known-x` and `known-y` (point).
    pub kind: String,
    /// The points in that order.
    pub points: Vec<String>,
    /// As read: metres, for a square degrees.
    pub reading: f64,
    /// Its standard deviation in the same unit.
    pub sigma: f64,
    /// What the adjusted points say.
    pub adjusted: f64,
    /// `adjusted - reading`.
    pub v: f64,
    /// Redundancy number.
    pub r: f64,
    /// Standardised residual by the stated sigma.
    pub w: Option<f64>,
    /// The same by the sigma found from all residuals.
    pub tau: Option<f64>,
    /// Smallest blunder that would be found.
    pub mdb: Option<f64>,
    /// Whether the search for slips set it aside.
    pub set_aside: bool,
}

/// The global test.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct GlobalTest {
    /// Share of good surveys that it would doubt.
    pub alpha: f64,
    /// vTPv may be at most this.
    pub limit: f64,
    /// Whether it is.
    pub passed: bool,
}

/// A reading that the others speak against.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Suspect {
    /// Numbers of the readings that the fault could be in, the likeliest first.
    pub readings: Vec<usize>,
    /// The points of the likeliest.
    pub points: Vec<String>,
    /// What it reads.
    pub reading: f64,
    /// What the others say that it should read.
    pub should_read: f64,
    /// What probably happened.
    pub guess: Option<Guess>,
    /// Whether it was set aside, or only named because nothing can locate the fault.
    pub set_aside: bool,
}

/// What probably happened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Guess {
    /// `whole-metres`, `whole-feet`, `tenths`, `swapped-digits`, `foot-for-inch` or `hook`.
    pub slip: String,
    /// How many too many for the first three, metres for the others.
    pub amount: f64,
}

/// A value and its standard deviation.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Measured {
    /// The value.
    pub value: f64,
    /// Its standard deviation.
    pub sigma: f64,
}

/// A reading worth taking.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NextReading {
    /// Both ends.
    pub points: Vec<String>,
    /// `fixes` a loose point, `checks` a reading, or `separates` a group.
    pub helps: String,
    /// The point's name, or the number of the reading or group.
    pub what: String,
    /// Long half-axis in metres, redundancy number or correlation before; null: infinite.
    pub before: Option<f64>,
    /// The same after; null: still infinite, it takes more than this one.
    pub after: Option<f64>,
}

impl Survey {
    /// Copies the answer of the survey stage.
    pub fn of(network: &Network, survey: &survey::result::Survey) -> Survey {
        let name = |id: usize| network.points.get(id).cloned().unwrap_or_default();
        let names = |kind: Kind| -> Vec<String> { points(kind).into_iter().map(name).collect() };
        let size = 2 * survey.covariance.order.len();
        Survey {
            datum: match survey.datum {
                Datum::Line { origin, towards } => Frame {
                    kind: "line".to_owned(),
                    origin: Some(name(origin)),
                    towards: Some(name(towards)),
                },
                Datum::Free => Frame {
                    kind: "free".to_owned(),
                    origin: None,
                    towards: None,
                },
            },
            points: survey
                .points
                .iter()
                .map(|point| {
                    let ellipse = point.ellipse.map(|ellipse| Ellipse {
                        a: tenth_of_a_micron(ellipse.a),
                        b: tenth_of_a_micron(ellipse.b),
                        theta_deg: round_to(ellipse.theta_deg, 4),
                    });
                    let wire = Point {
                        x: tenth_of_a_micron(point.x),
                        y: tenth_of_a_micron(point.y),
                        sx: tenth_of_a_micron(point.sx),
                        sy: tenth_of_a_micron(point.sy),
                        fixed: point.fixed,
                        loose: point.loose,
                        ellipse,
                    };
                    (point.name.clone(), wire)
                })
                .collect(),
            covariance: Covariance {
                order: survey.covariance.order.iter().map(|id| name(*id)).collect(),
                rows: survey
                    .covariance
                    .values
                    .chunks(size.max(1))
                    .map(|row| row.iter().map(|value| round_to(*value, 13)).collect())
                    .collect(),
            },
            boundary: survey.boundary.iter().map(|id| name(*id)).collect(),
            readings: survey
                .readings
                .iter()
                .map(|reading| {
                    let scale = scale(reading.kind);
                    Reading {
                        kind: word(reading.kind).to_owned(),
                        points: names(reading.kind),
                        reading: tenth_of_a_micron(reading.reading * scale),
                        sigma: tenth_of_a_micron(reading.sigma * scale),
                        adjusted: tenth_of_a_micron(reading.adjusted * scale),
                        v: tenth_of_a_micron(reading.v * scale),
                        r: millionth(reading.r),
                        w: reading.w.map(millionth),
                        tau: reading.tau.map(millionth),
                        mdb: reading.mdb.map(|mdb| tenth_of_a_micron(mdb * scale)),
                        set_aside: reading.set_aside,
                    }
                })
                .collect(),
            groups: survey.groups.clone(),
            dof: survey.dof,
            vtpv: millionth(survey.vtpv),
            s0: millionth(survey.s0),
            global_test: GlobalTest {
                alpha: survey.global_test.alpha,
                limit: millionth(survey.global_test.limit),
                passed: survey.global_test.passed,
            },
            suspects: survey
                .suspects
                .iter()
                .filter_map(|suspect| {
                    let first = survey.readings.get(*suspect.readings.first()?)?;
                    Some(Suspect {
                        readings: suspect.readings.clone(),
                        points: names(first.kind),
                        reading: tenth_of_a_micron(first.reading * scale(first.kind)),
                        should_read: tenth_of_a_micron(suspect.should_read * scale(first.kind)),
                        guess: suspect.guess.map(guess),
                        set_aside: suspect.set_aside,
                    })
                })
                .collect(),
            area: survey.area.map(|area| Measured {
                value: millionth(area.value),
                sigma: millionth(area.sigma),
            }),
            next_readings: survey
                .next_readings
                .iter()
                .map(|next| {
                    let (helps, what) = match next.helps {
                        Help::Fixes(point) => ("fixes", name(point)),
                        Help::Checks(reading) => ("checks", reading.to_string()),
                        Help::Separates(group) => ("separates", group.to_string()),
                    };
                    NextReading {
                        points: vec![name(next.from), name(next.to)],
                        helps: helps.to_owned(),
                        what,
                        before: next.before.is_finite().then(|| millionth(next.before)),
                        after: next.after.is_finite().then(|| millionth(next.after)),
                    }
                })
                .collect(),
        }
    }
}

/// Radians become degrees on the wire; metres stay.
fn scale(kind: Kind) -> f64 {
    match kind {
        Kind::Square { .. } => 180.0 / std::f64::consts::PI,
        _ => 1.0,
    }
}

fn word(kind: Kind) -> &'static str {
    match kind {
        Kind::Distance { .. } => "distance",
        Kind::Along { .. } => "along",
        Kind::Left { .. } => "left",
        Kind::Square { .. } => "square",
        Kind::KnownX { .. } => "known-x",
        Kind::KnownY { .. } => "known-y",
    }
}

fn points(kind: Kind) -> Vec<usize> {
    match kind {
        Kind::Distance { from, to } => vec![from, to],
        Kind::Along { from, to, point } | Kind::Left { from, to, point } => vec![from, to, point],
        Kind::Square { at, from, to } => vec![at, from, to],
        Kind::KnownX { point } | Kind::KnownY { point } => vec![point],
    }
}

fn guess(slip: Slip) -> Guess {
    let (slip, amount) = match slip {
        Slip::WholeMetres(metres) => ("whole-metres", f64::from(metres)),
        Slip::WholeFeet(feet) => ("whole-feet", f64::from(feet)),
        Slip::Tenths(tenths) => ("tenths", f64::from(tenths)),
        Slip::SwappedDigits(metres) => ("swapped-digits", metres),
        Slip::FootForInch(metres) => ("foot-for-inch", metres),
        Slip::Hook(metres) => ("hook", metres),
    };
    Guess {
        slip: slip.to_owned(),
        amount: tenth_of_a_micron(amount),
    }
}
