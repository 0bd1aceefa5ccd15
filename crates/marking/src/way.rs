//! The middle of a lane: straights and bends, each an arc that a string can draw.

use geo::Coord;

use crate::figure::Piece;
use crate::shape::{Pose, arc};

/// One piece: metres along, and the turn it makes, radians (left positive).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Leg {
    /// Straight on.
    Straight(f64),
    /// A bend of a radius, through an angle.
    Bend {
        /// Metres.
        radius: f64,
        /// Radians, left positive.
        turn: f64,
    },
}

/// A line of legs.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    start: Pose,
    legs: Vec<Leg>,
}

impl Leg {
    fn length(self) -> f64 {
        match self {
            Leg::Straight(length) => length,
            Leg::Bend { radius, turn } => radius * turn.abs(),
        }
    }

    /// Where one is after `part` of the leg, from 0 to 1.
    fn after(self, from: Pose, part: f64) -> Pose {
        match self {
            Leg::Straight(length) => Pose {
                at: from.point(length * part, 0.0),
                ..from
            },
            Leg::Bend { radius, turn } => {
                let bent = turn * part;
                let (sin, cos) = libm::sincos(bent.abs());
                let aside = radius * (1.0 - cos) * turn.signum();
                Pose {
                    at: from.point(radius * sin, aside),
                    turn: from.turn + bent,
                }
            }
        }
    }
}

impl Way {
    /// Legs from a pose on.
    pub fn new(start: Pose, legs: Vec<Leg>) -> Way {
        Way { start, legs }
    }

    /// Metres along a line `aside` to the left of the middle.
    pub fn length(&self, aside: f64) -> f64 {
        self.legs
            .iter()
            .map(|leg| beside(*leg, aside).length())
            .sum()
    }

    /// Where one is `along` the line `aside` of the middle.
    pub fn pose(&self, aside: f64, along: f64) -> Pose {
        let mut pose = self.start;
        let mut left = along;
        for leg in &self.legs {
            let long = beside(*leg, aside).length();
            if left <= long && long > 0.0 {
                pose = leg.after(pose, (left / long).max(0.0));
                return Pose {
                    at: pose.point(0.0, aside),
                    ..pose
                };
            }
            left -= long;
            pose = leg.after(pose, 1.0);
        }
        Pose {
            at: pose.point(left.max(0.0), aside),
            ..pose
        }
    }

    /// Points of the line `aside` of the middle between two lengths along it.
    pub fn line(&self, aside: f64, from: f64, to: f64, flat: f64) -> Vec<Coord<f64>> {
        let mut points = vec![self.pose(aside, from).at];
        let mut passed = 0.0;
        for leg in &self.legs {
            let beside = beside(*leg, aside);
            let long = beside.length();
            let (first, last) = (from.max(passed), to.min(passed + long));
            if first < last {
                match beside {
                    Leg::Straight(_) => points.push(self.pose(aside, last).at),
                    Leg::Bend { radius, .. } => {
                        // as many points as an arc of this sweep needs
                        let sweep = (last - first) / radius;
                        let steps = arc(Coord::default(), [radius; 2], 0.0, sweep, flat).len() - 1;
                        points.extend((1..=steps).map(|step| {
                            let share = step as f64 / steps as f64;
                            self.pose(aside, first + (last - first) * share).at
                        }));
                    }
                }
            }
            passed += long;
        }
        points
    }

    /// Its pieces, as the footfall model reads them.
    pub fn pieces(&self) -> Vec<Piece> {
        self.legs
            .iter()
            .map(|leg| Piece {
                length: leg.length(),
                radius: match leg {
                    Leg::Straight(_) => None,
                    Leg::Bend { radius, .. } => Some(*radius),
                },
            })
            .collect()
    }
}

/// The same leg on a line `aside` to the left: a left bend is tighter there.
fn beside(leg: Leg, aside: f64) -> Leg {
    match leg {
        Leg::Straight(_) => leg,
        Leg::Bend { radius, turn } => Leg::Bend {
            radius: radius - aside * turn.signum(),
            turn,
        },
    }
}
