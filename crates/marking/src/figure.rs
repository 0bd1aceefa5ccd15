//! A painted figure: what is seen, where feet land, and the ground that it needs.

use std::collections::BTreeMap;

use geo::{Area, Coord, LineString, Polygon, Winding};

use crate::shape;

/// One figure in metres, in its own frame or in the yard's ([`Figure::placed`]).
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// The family that made it, or `drawn`.
    pub family: String,
    /// Its lengths by name, metres, in the family's order.
    pub lengths: Vec<(String, f64)>,
    /// Painted shapes; no two of them overlap.
    pub paint: Vec<Paint>,
    /// Where feet land.
    pub cells: Vec<Cell>,
    /// The facing that the figure fixes, radians from +x anticlockwise.
    pub facing: Option<f64>,
    /// Lines and corridors that are travelled.
    pub lanes: Vec<Lane>,
    /// Children that can use it side by side.
    pub tracks: u32,
    /// Middles of the waiting spots.
    pub wait: Vec<Coord<f64>>,
    /// The ground it needs in use: approach, cells or lane, sway, run-out, waiting.
    pub envelope: Polygon<f64>,
}

/// One painted shape.
#[derive(Clone, Debug, PartialEq)]
pub struct Paint {
    /// Its colour.
    pub colour: Colour,
    /// Its outline.
    pub polygon: Polygon<f64>,
}

/// The paints (look: section 2).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Colour {
    Chalk,
    Straw,
    Harebell,
    Sedge,
    Hip,
    Madder,
    Sloe,
}

/// A place where a foot, or both feet, land.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// Its name within the figure.
    pub id: String,
    /// Its outline.
    pub outline: Outline,
    /// The aim point.
    pub centre: Coord<f64>,
    /// What it takes.
    pub takes: Takes,
    /// Whether a route may start here.
    pub start: bool,
    /// Whether a route may end here.
    pub end: bool,
    /// Numbers of the cells that may follow; `None`: any other.
    pub next: Option<Vec<usize>>,
    /// On a start cell: whether the envelope holds two running strides of free ground
    /// before it.
    pub run_up: bool,
}

/// A cell's outline.
#[derive(Clone, Debug, PartialEq)]
pub enum Outline {
    /// A disc round the cell's centre.
    Disc {
        /// Metres.
        radius: f64,
    },
    /// A simple polygon, anticlockwise.
    Polygon(Polygon<f64>),
}

impl Outline {
    /// How far it reaches from `centre` along a unit, metres.
    pub(crate) fn ahead(&self, centre: Coord<f64>, way: Coord<f64>) -> f64 {
        match self {
            Outline::Disc { radius } => *radius,
            Outline::Polygon(outline) => {
                let along = |at: &Coord<f64>| (at.x - centre.x) * way.x + (at.y - centre.y) * way.y;
                outline.exterior().coords().map(along).fold(0.0, f64::max)
            }
        }
    }

    /// How far its farthest corner lies from `centre`, metres.
    pub(crate) fn out(&self, centre: Coord<f64>) -> f64 {
        match self {
            Outline::Disc { radius } => *radius,
            Outline::Polygon(outline) => {
                let far = |at: &Coord<f64>| libm::hypot(at.x - centre.x, at.y - centre.y);
                outline.exterior().coords().map(far).fold(0.0, f64::max)
            }
        }
    }
}

/// What a cell takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Takes {
    /// One foot, right or left.
    One,
    /// Both feet.
    Both,
    /// Any.
    Either,
    Left,
    Right,
}

/// A painted line or corridor that is travelled along.
#[derive(Clone, Debug, PartialEq)]
pub struct Lane {
    /// What is asked of the child.
    pub kind: LaneKind,
    /// The middle, in the way of travel.
    pub line: LineString<f64>,
    /// Clear width of a corridor, painted width of a line; metres.
    pub width: f64,
    /// Pieces in the way of travel; their lengths add up to the lane's.
    pub pieces: Vec<Piece>,
}

/// A straight or a bend of one radius.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Metres along the middle.
    pub length: f64,
    /// Metres; `None` for a straight.
    pub radius: Option<f64>,
}

/// What a lane asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LaneKind {
    /// Stay inside.
    Corridor,
    /// Tread on it.
    Line,
}

impl Cell {
    /// Breadth across a facing, radians from +x; metres.
    pub fn across(&self, toes: f64) -> f64 {
        let (sin, cos) = libm::sincos(toes);
        match &self.outline {
            Outline::Disc { radius } => 2.0 * radius,
            Outline::Polygon(outline) => {
                let aside = outline
                    .exterior()
                    .coords()
                    .map(|at| cos * at.y - sin * at.x);
                let (low, high) = aside
                    .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| {
                        (low.min(v), high.max(v))
                    });
                if low <= high { high - low } else { 0.0 }
            }
        }
    }
}

impl Lane {
    /// The place so many metres along its middle, and the way there, radians; past the end,
    /// the end.
    pub fn along(&self, metres: f64) -> (Coord<f64>, f64) {
        let mut left = metres.max(0.0);
        let mut last = (Coord { x: 0.0, y: 0.0 }, 0.0);
        for part in self.line.lines() {
            let by = part.end - part.start;
            let length = libm::hypot(by.x, by.y);
            let turn = libm::atan2(by.y, by.x);
            if left <= length && length > 0.0 {
                return (part.start + by * (left / length), turn);
            }
            left -= length;
            last = (part.end, turn);
        }
        last
    }
}

impl Figure {
    /// The figure in the yard: mirrored across its own way if asked, turned by `turn`
    /// radians anticlockwise, its origin at `at`. Rounded to 1e-6 m.
    pub fn placed(&self, at: Coord<f64>, turn: f64, mirrored: bool) -> Figure {
        let (sin, cos) = libm::sincos(turn);
        let moved = |from: Coord<f64>| {
            let y = if mirrored { -from.y } else { from.y };
            Coord {
                x: at.x + from.x * cos - y * sin,
                y: at.y + from.x * sin + y * cos,
            }
        };
        let mut figure = self.clone().moved(moved);
        figure.facing = self
            .facing
            .map(|facing| turn + if mirrored { -facing } else { facing });
        if mirrored {
            for cell in &mut figure.cells {
                cell.takes = match cell.takes {
                    Takes::Left => Takes::Right,
                    Takes::Right => Takes::Left,
                    same => same,
                };
            }
        }
        figure.rounded()
    }

    /// Painted area by colour, m², in the order of the colours.
    pub fn paint_area(&self) -> Vec<(Colour, f64)> {
        let mut areas: BTreeMap<Colour, f64> = BTreeMap::new();
        for paint in &self.paint {
            *areas.entry(paint.colour).or_default() += paint.polygon.unsigned_area();
        }
        areas.into_iter().collect()
    }

    /// Metres of painted edge: what is taped where it is not stencilled.
    pub fn outline_length(&self) -> f64 {
        let ring = |ring: &LineString<f64>| {
            ring.lines()
                .map(|side| libm::hypot(side.dx(), side.dy()))
                .sum::<f64>()
        };
        self.paint
            .iter()
            .map(|paint| {
                let inner: f64 = paint.polygon.interiors().iter().map(ring).sum();
                ring(paint.polygon.exterior()) + inner
            })
            .sum()
    }

    /// Every coordinate to 1e-6 m and every ring of an outline anticlockwise, as stages hand
    /// them on.
    pub fn rounded(self) -> Figure {
        let millionth = |value: f64| (value * 1e6).round() / 1e6;
        self.moved(|at| Coord {
            x: millionth(at.x),
            y: millionth(at.y),
        })
    }

    fn moved(mut self, by: impl Fn(Coord<f64>) -> Coord<f64>) -> Figure {
        let shape = |polygon: &Polygon<f64>| {
            let mut polygon = shape::map(polygon, &by);
            // corners that fall on one place are one
            polygon.exterior_mut(|ring| ring.0.dedup());
            polygon.exterior_mut(LineString::make_ccw_winding);
            polygon.interiors_mut(|rings| rings.iter_mut().for_each(LineString::make_cw_winding));
            polygon
        };
        for paint in &mut self.paint {
            paint.polygon = shape(&paint.polygon);
        }
        for cell in &mut self.cells {
            cell.centre = by(cell.centre);
            if let Outline::Polygon(outline) = &mut cell.outline {
                *outline = shape(outline);
            }
        }
        for lane in &mut self.lanes {
            lane.line = LineString(lane.line.coords().map(|at| by(*at)).collect());
        }
        for spot in &mut self.wait {
            *spot = by(*spot);
        }
        self.envelope = shape(&self.envelope);
        self
    }
}
