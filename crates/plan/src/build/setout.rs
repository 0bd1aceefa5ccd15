//! `build.setout`: how the markings come to lie where they were planned.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::round::millionth;
use crate::survey::Ellipse;

/// The set-out of all markings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SetOut {
    /// Printed lengths are multiples of this, metres.
    pub step: f64,
    /// Share of marks that land within their ellipse.
    pub level: f64,
    /// Key points in the order of the walk.
    pub points: Vec<KeyPoint>,
    /// Metres walked from the first key point to the last.
    pub walked: f64,
    /// Metres that ends of tapes are carried.
    pub carried: f64,
    /// Readings between key points that check a marking, by marking.
    pub spans: Vec<Span>,
}

/// A point on the ground from which a figure is laid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct KeyPoint {
    /// Its marking's name and a number.
    pub name: String,
    /// The marking.
    pub marking: String,
    /// `origin`, `direction` or `check`.
    pub role: String,
    /// Where it shall be, metres.
    pub at: [f64; 2],
    /// The two tapes: seen from the first base towards the second, the point lies left.
    pub tapes: [Tape; 2],
    /// Between the tapes, degrees.
    pub angle_deg: f64,
    /// The ellipse in which it lands, round `at`.
    pub ellipse: Ellipse,
    /// The check; null where no third tape reaches it.
    pub third: Option<Third>,
}

/// A tape hooked to a surveyed point.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Tape {
    /// The surveyed point.
    pub base: String,
    /// Metres.
    pub length: f64,
}

/// A third tape.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Third {
    /// The surveyed point.
    pub base: String,
    /// What it should read, metres.
    pub length: f64,
    /// Its predicted standard deviation, metres.
    pub sigma: f64,
    /// Farther off than this, metres: redo.
    pub limit: f64,
}

/// A check between two key points.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Span {
    /// Key points.
    pub between: [String; 2],
    /// What it should read, metres.
    pub length: f64,
    /// Its predicted standard deviation, metres.
    pub sigma: f64,
    /// Farther off than this, metres: redo.
    pub limit: f64,
}

impl SetOut {
    /// Copies the set-out stage's answer.
    pub fn of(setout: &setout::SetOut) -> SetOut {
        let base = |number: usize| setout.bases.names.get(number).cloned().unwrap_or_default();
        let point = |number: usize| {
            let point = setout.points.get(number);
            point.map_or_else(String::new, |point| point.name.clone())
        };
        let points = setout
            .walk
            .iter()
            .filter_map(|stop| setout.points.get(stop.point));
        SetOut {
            step: millionth(setout.step),
            level: millionth(setout.level),
            points: points
                .map(|point| KeyPoint {
                    name: point.name.clone(),
                    marking: setout
                        .markings
                        .get(point.marking)
                        .map_or_else(String::new, |marking| marking.name.clone()),
                    role: match point.role {
                        setout::Role::Origin => "origin",
                        setout::Role::Direction => "direction",
                        setout::Role::Check => "check",
                    }
                    .to_owned(),
                    at: [point.at.x, point.at.y].map(millionth),
                    tapes: point.tapes.map(|tape| Tape {
                        base: base(tape.base),
                        length: millionth(tape.length),
                    }),
                    angle_deg: millionth(point.angle_deg),
                    ellipse: Ellipse {
                        a: millionth(point.ellipse.a),
                        b: millionth(point.ellipse.b),
                        theta_deg: millionth(point.ellipse.theta_deg),
                    },
                    third: point.third.as_ref().map(|third| Third {
                        base: base(third.base),
                        length: millionth(third.length),
                        sigma: millionth(third.sigma),
                        limit: millionth(third.limit),
                    }),
                })
                .collect(),
            walked: millionth(setout.walked),
            carried: millionth(setout.carried),
            spans: setout
                .markings
                .iter()
                .flat_map(|marking| &marking.spans)
                .map(|span| Span {
                    between: span.between.map(point),
                    length: millionth(span.length),
                    sigma: millionth(span.sigma),
                    limit: millionth(span.limit),
                })
                .collect(),
        }
    }
}
