//! A marking that could be painted: what it costs, needs and gives.

use children::{Side, Skill};
use geo::Coord;
use marking::Figure;

/// A family at fixed lengths, for one group of children.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// Unique among the candidates.
    pub name: String,
    /// The family that makes it.
    pub family: String,
    /// The part of the class that it is sized for; of one family, a group gets one at most.
    pub group: String,
    /// The figure in its own frame.
    pub figure: Figure,
    /// Paint, tape and primer, in the project's currency.
    pub cost: f64,
    /// Area of its envelope, m².
    pub area: f64,
    /// Where people have locked it; then it is always chosen and never moved.
    pub locked: Option<Pose>,
    /// The programme refuses it.
    pub refused: bool,
    /// Whether it may be laid mirrored: a figure with letters or footprints may not.
    pub mirrors: bool,
    /// What a minute on it gives to whom.
    pub yields: Vec<Yield>,
}

/// Expected practice a minute: e of LAYOUT, in [0, 1].
#[derive(Clone, Debug, PartialEq)]
pub struct Yield {
    /// Number of the child.
    pub child: usize,
    /// A gait and its leading foot, as `hop:R`.
    pub activity: String,
    /// The skill that is practised.
    pub skill: Skill,
    /// The foot, where the skill has sides.
    pub side: Option<Side>,
    /// The share of a full minute's practice.
    pub e: f64,
}

/// Where a figure lies: mirrored in its own x-axis, then turned, then moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Where its origin comes to lie, metres.
    pub at: Coord<f64>,
    /// Radians from +x anticlockwise.
    pub turn: f64,
    /// Whether left and right are swapped.
    pub mirrored: bool,
}
