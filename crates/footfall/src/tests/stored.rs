//! Stored figures of the oracle as this house's types; the bench reads them too.

use std::collections::BTreeMap;

use children::{Ability, Child, Means, Side, Skill, Speeds};
use geo::{Coord, LineString, Polygon};
use marking::{Cell, Figure, Lane, LaneKind, Outline, Piece, Takes};
use serde::Deserialize;

/// What plain numpy made of a class.
#[derive(Deserialize)]
pub struct StoredClass {
    /// The children.
    pub children: Vec<StoredChild>,
    /// The figures.
    pub figures: Vec<StoredFigure>,
    /// Gait and foot.
    pub activities: Vec<(String, Option<String>)>,
    /// Share well pitched by figure, activity and child.
    #[allow(dead_code)]
    pub well: Vec<Vec<Vec<f64>>>,
}

impl StoredClass {
    /// The class that the oracle stored; `None` where its file does not read.
    pub fn read() -> Option<StoredClass> {
        serde_json::from_str(include_str!("../../oracle/class.json")).ok()
    }

    /// Its children.
    pub fn children(&self) -> Vec<Child> {
        self.children.iter().map(StoredChild::child).collect()
    }
}

/// A figure of the oracle.
#[derive(Deserialize)]
pub struct StoredFigure {
    family: String,
    facing: Option<f64>,
    cells: Vec<StoredCell>,
    lanes: Vec<StoredLane>,
}

#[derive(Deserialize)]
struct StoredCell {
    centre: (f64, f64),
    takes: String,
    start: bool,
    end: bool,
    next: Option<Vec<usize>>,
    run_up: bool,
    radius: Option<f64>,
    outline: Option<Vec<(f64, f64)>>,
}

#[derive(Deserialize)]
struct StoredLane {
    kind: String,
    width: f64,
    line: Vec<(f64, f64)>,
    pieces: Vec<StoredPiece>,
}

#[derive(Deserialize)]
struct StoredPiece {
    length: f64,
    radius: Option<f64>,
}

/// A child of the oracle.
#[derive(Deserialize)]
pub struct StoredChild {
    age: f64,
    means: String,
    stature: f64,
    foot: f64,
    scatter: f64,
    walk_speed: f64,
    skills: BTreeMap<String, StoredAbility>,
}

#[derive(Deserialize)]
struct StoredAbility {
    m: f64,
    tau: f64,
    can: f64,
    steady: f64,
}

/// Cells alone: no paint, no ground of its own.
pub fn of_cells(cells: Vec<Cell>) -> Figure {
    Figure {
        family: "drawn".to_owned(),
        lengths: Vec::new(),
        paint: Vec::new(),
        cells,
        facing: None,
        lanes: Vec::new(),
        tracks: 1,
        wait: Vec::new(),
        envelope: Polygon::new(LineString::new(Vec::new()), Vec::new()),
    }
}

/// A side of the oracle.
pub fn side(foot: Option<&str>) -> Option<Side> {
    match foot {
        Some("R") => Some(Side::Right),
        Some("L") => Some(Side::Left),
        _ => None,
    }
}

impl StoredFigure {
    /// As a figure.
    pub fn figure(&self) -> Figure {
        Figure {
            family: self.family.clone(),
            facing: self.facing,
            lanes: self.lanes.iter().map(StoredLane::lane).collect(),
            ..of_cells(self.cells.iter().map(StoredCell::cell).collect())
        }
    }
}

impl StoredCell {
    fn cell(&self) -> Cell {
        let outline = match (&self.outline, self.radius) {
            (Some(corners), _) => {
                Outline::Polygon(Polygon::new(LineString::from(corners.clone()), Vec::new()))
            }
            (None, radius) => Outline::Disc {
                radius: radius.unwrap_or(0.0),
            },
        };
        let takes = match self.takes.as_str() {
            "one" => Takes::One,
            "both" => Takes::Both,
            "left" => Takes::Left,
            "right" => Takes::Right,
            _ => Takes::Either,
        };
        Cell {
            id: String::new(),
            outline,
            centre: Coord {
                x: self.centre.0,
                y: self.centre.1,
            },
            takes,
            start: self.start,
            end: self.end,
            next: self.next.clone(),
            run_up: self.run_up,
        }
    }
}

impl StoredLane {
    fn lane(&self) -> Lane {
        Lane {
            kind: if self.kind == "line" {
                LaneKind::Line
            } else {
                LaneKind::Corridor
            },
            line: LineString::from(self.line.clone()),
            width: self.width,
            pieces: self
                .pieces
                .iter()
                .map(|p| Piece {
                    length: p.length,
                    radius: p.radius,
                })
                .collect(),
        }
    }
}

impl StoredChild {
    /// As a child.
    pub fn child(&self) -> Child {
        let ability = |stored: &StoredAbility| Ability {
            m: stored.m,
            tau: stored.tau,
            can: stored.can,
            steady: stored.steady,
            sources: Vec::new(),
        };
        Child {
            name: format!("age-{}", self.age),
            count: 1,
            age: self.age,
            stature: self.stature,
            foot: self.foot,
            scatter: self.scatter,
            means: if self.means == "wheels" {
                Means::Wheels
            } else {
                Means::Feet
            },
            less_used: None,
            speeds: Speeds {
                walk: self.walk_speed,
                run: 2.0 * self.walk_speed,
            },
            skills: self
                .skills
                .iter()
                .filter_map(|(word, stored)| Some((Skill::of_word(word)?, ability(stored))))
                .collect(),
        }
    }
}
