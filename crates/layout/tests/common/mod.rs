//! A yard, a class and candidates of our own invention, small enough for a test.

#![allow(clippy::expect_used, dead_code, missing_docs)]

use children::Skill;
use geo::{Area, BooleanOps, Coord, LineString, MultiPolygon, Polygon, coord};
use ground::result::Ground;
use ground::yard::{Edge, EdgeKind, Yard};
use layout::programme::Question;
use layout::week::{Target, Time, Week};
use layout::{Candidate, Plan, Task, Work, Yield, plan};
use ledger::Ledger;
use marking::{Figure, Lane, LaneKind, Piece};

/// A turn and a move of everything.
#[derive(Clone, Copy)]
pub struct Motion {
    pub turn: f64,
    pub by: Coord<f64>,
}

impl Motion {
    pub fn of(&self, (x, y): (f64, f64)) -> Coord<f64> {
        let (sin, cos) = libm::sincos(self.turn);
        coord! { x: x * cos - y * sin + self.by.x, y: x * sin + y * cos + self.by.y }
    }
}

pub const STILL: Motion = Motion {
    turn: 0.0,
    by: coord! { x: 0.0, y: 0.0 },
};

fn ring(motion: Motion, corners: &[(f64, f64)]) -> Polygon<f64> {
    Polygon::new(
        LineString::new(corners.iter().map(|p| motion.of(*p)).collect()),
        Vec::new(),
    )
}

pub struct World {
    pub yard: Yard,
    pub ground: Ground,
    pub candidates: Vec<Candidate>,
    pub targets: Vec<Target>,
    pub counts: Vec<u32>,
    pub budget: f64,
    pub sessions: u32,
}

/// An oblong of free ground in a yard that leaves way round it.
pub fn oblong((long, wide): (f64, f64), sizes: &[(f64, f64)]) -> World {
    let mut world = world(STILL, 4.0, sizes);
    let corners = [(0.0, 0.0), (long, 0.0), (long, wide), (0.0, wide)];
    let corners = corners.map(|(x, y)| (x + 4.0, y + 2.0));
    world.ground.free = MultiPolygon::new(vec![ring(STILL, &corners)]);
    world
}

/// An L-shaped yard with a block in it; `sizes` are the figures' envelopes, length and
/// width in metres. Figure k serves skill k, k + 1, ... in turn.
pub fn world(motion: Motion, scale: f64, sizes: &[(f64, f64)]) -> World {
    let s = scale;
    let boundary = ring(
        motion,
        &[
            (0.0, 0.0),
            (16.0 * s, 0.0),
            (16.0 * s, 7.0 * s),
            (8.0 * s, 7.0 * s),
            (8.0 * s, 13.0 * s),
            (0.0, 13.0 * s),
        ],
    );
    let inner = ring(
        motion,
        &[
            (0.5, 0.5),
            (16.0 * s - 0.5, 0.5),
            (16.0 * s - 0.5, 7.0 * s - 0.5),
            (8.0 * s - 0.5, 7.0 * s - 0.5),
            (8.0 * s - 0.5, 13.0 * s - 0.5),
            (0.5, 13.0 * s - 0.5),
        ],
    );
    let block = ring(
        motion,
        &[
            (4.0 * s, 4.0 * s),
            (5.0 * s, 4.2 * s),
            (4.8 * s, 5.3 * s),
            (4.0 * s, 5.0 * s),
        ],
    );
    let free = MultiPolygon::new(vec![inner]).difference(&MultiPolygon::new(vec![block]));
    let corners: Vec<_> = boundary.exterior().lines().collect();
    let yard = Yard {
        boundary: boundary.clone(),
        edges: corners
            .iter()
            .map(|side| Edge {
                line: LineString::new(vec![side.start, side.end]),
                is: EdgeKind::Fence,
            })
            .collect(),
        surfaces: Vec::new(),
        fixtures: Vec::new(),
        doors: Vec::new(),
        gates: Vec::new(),
        routes: Vec::new(),
        stands: vec![motion.of((2.0, 2.0))],
        remarks: Vec::new(),
    };
    let ground = Ground {
        yard: boundary,
        free,
        blocked: Vec::new(),
        routes: Vec::new(),
        slivers: (0, 0.0),
    };
    let candidates = sizes
        .iter()
        .enumerate()
        .map(|(k, size)| candidate(k, *size))
        .collect();
    let skills = [Skill::Jump, Skill::Skip];
    let targets = (0..2)
        .flat_map(|child| {
            skills.map(|skill| Target {
                child,
                skill,
                side: None,
                minutes: 30.0,
            })
        })
        .collect();
    World {
        yard,
        ground,
        candidates,
        targets,
        counts: vec![5, 7],
        budget: 1000.0,
        sessions: 3,
    }
}

fn candidate(k: usize, (length, width): (f64, f64)) -> Candidate {
    let corners = [(0.0, 0.0), (length, 0.0), (length, width), (0.0, width)];
    let envelope = ring(STILL, &corners);
    let lane = Lane {
        kind: if k.is_multiple_of(2) {
            LaneKind::Corridor
        } else {
            LaneKind::Line
        },
        line: LineString::from(vec![
            (0.5, width / 2.0),
            (length - 3.2_f64.min(length - 1.0), width / 2.0),
        ]),
        width: 0.9,
        pieces: vec![Piece {
            length: 1.0,
            radius: None,
        }],
    };
    Candidate {
        name: format!("figure{k:02}"),
        family: format!("family{k}"),
        group: "all".to_owned(),
        cost: 40.0 + k as f64,
        area: envelope.unsigned_area(),
        figure: Figure {
            family: format!("family{k}"),
            lengths: Vec::new(),
            paint: Vec::new(),
            cells: Vec::new(),
            facing: None,
            lanes: vec![lane],
            tracks: 1,
            wait: vec![coord! { x: 0.3, y: 0.3 }],
            envelope,
        },
        locked: None,
        refused: false,
        mirrors: true,
        yields: (0..2)
            .map(|child| Yield {
                child,
                activity: if k.is_multiple_of(2) { "jump" } else { "skip" }.to_owned(),
                skill: if k.is_multiple_of(2) {
                    Skill::Jump
                } else {
                    Skill::Skip
                },
                side: None,
                e: 0.3 + 0.05 * ((k + child) % 7) as f64,
            })
            .collect(),
    }
}

pub const WORK: Work = Work {
    bound_nodes: 200,
    set_nodes: 40,
    orders: 16,
    sets: 3,
    steps: 12,
    idle: 12,
    packing: 1_000,
    near: 0.0,
    polish: 1,
    proofs: 10,
};

impl World {
    pub fn week(&self) -> Week {
        Week {
            sessions: self.sessions,
            minutes: 28.0,
            staff: 2,
            yard_area: self.yard.boundary.unsigned_area(),
        }
    }

    pub fn question(&self, ledger: &Ledger) -> Question<'_> {
        let time: Time = self.week().time(self.counts.iter().sum(), ledger);
        Question {
            counts: &self.counts,
            targets: &self.targets,
            candidates: &self.candidates,
            time,
            budget: self.budget,
            free_area: self.ground.free.unsigned_area(),
        }
    }

    pub fn plan(&self, ledger: &Ledger) -> Plan {
        self.plan_by(WORK, ledger)
    }

    pub fn plan_by(&self, work: Work, ledger: &Ledger) -> Plan {
        let task = Task {
            question: self.question(ledger),
            week: self.week(),
            yard: &self.yard,
            ground: &self.ground,
            seed: 7,
            work,
        };
        plan(&task, ledger, &|_| true).expect("it solves")
    }
}

/// Cases of the stored placements: scale of the yard, and figures.
pub fn cases() -> Vec<(f64, Vec<(f64, f64)>)> {
    let sizes = |many: usize, length: f64| -> Vec<(f64, f64)> {
        (0..many)
            .map(|k| {
                (
                    length + (k * 5 % 7) as f64 * 0.6,
                    1.6 + (k * 3 % 5) as f64 * 0.5,
                )
            })
            .collect()
    };
    vec![
        (1.0, sizes(8, 3.5)),
        (0.7, sizes(10, 3.0)),
        (0.55, sizes(6, 2.5)),
        (1.3, sizes(9, 5.0)),
    ]
}
