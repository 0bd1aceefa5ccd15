//! The free ground as figures meet it, and where a figure may lie among others.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

use geo::{Coord, MultiPolygon};

use super::convex::{Halves, Ring, meets, pieces};
use super::grid::{Grid, Map};
use crate::candidate::{Candidate, Pose};
use crate::geometry::{Segment, bounds, edges};

/// The free ground.
pub(crate) struct Site {
    edges: Vec<Segment>,
    low: Coord<f64>,
    high: Coord<f64>,
    /// Turns worth trying, radians: along the longest walls first, the finer fan last.
    pub(crate) turns: Vec<f64>,
    /// How many of them are not of the finer fan.
    plain: usize,
}

/// A figure at one turn.
pub(crate) struct Turned {
    turn: f64,
    mirrored: bool,
    pieces: Vec<Ring>,
    serial: usize,
}

/// A figure at one turn, and what the bare ground leaves it.
pub(crate) struct Stance {
    pub(crate) turn: f64,
    pub(crate) mirrored: bool,
    /// Convex pieces of the envelope, turned, about the figure's origin.
    pub(crate) pieces: Vec<Ring>,
    grid: Grid,
    map: Map,
    /// Its number among all stances of a search.
    pub(crate) serial: usize,
}

/// A figure laid.
#[derive(Clone, Debug)]
pub(crate) struct Laid {
    pub(crate) pose: Pose,
    /// Convex pieces of the envelope, in the yard.
    pub(crate) pieces: Vec<Ring>,
    /// What it takes of the places of stances, by their serial numbers; worked out when
    /// first asked, and shared by all layouts in which the figure lies so.
    shadows: Arc<Mutex<BTreeMap<usize, Arc<Map>>>>,
}

/// Places of a grid, and its finest step in metres. A slot narrower than the step may be
/// missed at one turn; what is laid is then slid until it touches.
const PLACES: f64 = 12_000.0;
const FINEST: f64 = 0.1;

/// Turns of the fan between the walls' own, radians.
const FAN: f64 = std::f64::consts::PI / 16.0;

impl Site {
    /// `None` where nothing is free.
    pub(crate) fn new(free: &MultiPolygon<f64>, walls: &[Segment]) -> Option<Site> {
        let edges: Vec<Segment> = free.0.iter().flat_map(edges).collect();
        edges.first()?;
        let (low, high) = bounds(edges.iter().map(|(a, _)| *a));
        let (turns, plain) = turns(walls, &edges);
        Some(Site {
            turns,
            plain,
            edges,
            low,
            high,
        })
    }

    /// How many of the turns are tried, by whether the finer fan is among them.
    pub(crate) fn turns(&self, fine: bool) -> usize {
        if fine { self.turns.len() } else { self.plain }
    }

    /// A figure at one of the turns.
    ///
    /// - `number`: the candidate's
    pub(crate) fn turned(
        &self,
        (number, candidate): (usize, &Candidate),
        which: usize,
        mirrored: bool,
    ) -> Option<Turned> {
        let turn = *self.turns.get(which)?;
        let still = Pose {
            at: Coord { x: 0.0, y: 0.0 },
            turn,
            mirrored,
        };
        Some(Turned {
            turn,
            mirrored,
            pieces: pieces_at(candidate, &still),
            serial: (number * self.turns.len() + which) * 2 + usize::from(mirrored),
        })
    }

    /// What the bare ground leaves a turned figure; `None` where it fits nowhere.
    pub(crate) fn stance(&self, turned: Turned) -> Option<Stance> {
        let Turned {
            turn,
            mirrored,
            pieces,
            serial,
        } = turned;
        let corner = *pieces.first()?.first()?;
        let grid = Grid::over(self.low - corner, self.high - corner, PLACES, FINEST);
        let mut map = grid.inside(&self.edges, corner);
        for piece in &pieces {
            for (a, b) in &self.edges {
                grid.mark(&mut map, &meets(&[*a, *b], piece), false);
            }
        }
        (map.count() > 0).then_some(Stance {
            turn,
            mirrored,
            pieces,
            grid,
            map,
            serial,
        })
    }
}

impl Turned {
    /// Whether it covers the same shape as a stance, apart from where that lies: then it packs
    /// no better.
    pub(crate) fn covers_as(&self, other: &Stance) -> bool {
        /// Metres: under the gap that pieces keep.
        const SAME: f64 = 1e-5;
        let lowest = |pieces: &[Ring]| {
            let corners = pieces.iter().flatten();
            corners.fold((f64::INFINITY, f64::INFINITY), |low, p| {
                (low.0.min(p.x), low.1.min(p.y))
            })
        };
        let (ours, theirs) = (lowest(&self.pieces), lowest(&other.pieces));
        let by = Coord {
            x: ours.0 - theirs.0,
            y: ours.1 - theirs.1,
        };
        self.pieces.len() == other.pieces.len()
            && self.pieces.iter().all(|piece| {
                other.pieces.iter().any(|twin| {
                    twin.len() == piece.len()
                        && piece.iter().all(|p| {
                            let near = |q: &Coord<f64>| {
                                let off = *p - *q - by;
                                off.x.abs() <= SAME && off.y.abs() <= SAME
                            };
                            twin.iter().any(near)
                        })
                })
            })
    }
}

/// The convex pieces of a candidate's envelope in the yard.
pub(crate) fn pieces_at(candidate: &Candidate, pose: &Pose) -> Vec<Ring> {
    pieces(&candidate.figure.envelope)
        .into_iter()
        .map(|piece| {
            let mut piece: Ring = piece.into_iter().map(|p| pose.of(p)).collect();
            if pose.mirrored {
                piece.reverse();
            }
            piece
        })
        .collect()
}

impl Laid {
    /// A candidate laid at a pose.
    pub(crate) fn new(candidate: &Candidate, pose: Pose) -> Laid {
        Laid {
            pose,
            pieces: pieces_at(candidate, &pose),
            shadows: Arc::default(),
        }
    }

    /// The places of a stance's grid that this figure takes.
    pub(crate) fn shadow(&self, stance: &Stance) -> Arc<Map> {
        // A poisoned lock holds whole maps all the same.
        let mut shadows = self.shadows.lock().unwrap_or_else(PoisonError::into_inner);
        let shadow = shadows.entry(stance.serial).or_insert_with(|| {
            let mut map = stance.grid.none();
            for theirs in &self.pieces {
                for ours in &stance.pieces {
                    stance.grid.mark(&mut map, &meets(theirs, ours), true);
                }
            }
            Arc::new(map)
        });
        Arc::clone(shadow)
    }
}

/// The places that `others` leave to a stance.
pub(crate) struct Room<'a> {
    stance: &'a Stance,
    map: Map,
}

impl Stance {
    /// The places that others leave.
    pub(crate) fn room<'a, 'b>(&'a self, others: impl Iterator<Item = &'b Laid>) -> Room<'a> {
        let shadows: Vec<Arc<Map>> = others.map(|other| other.shadow(self)).collect();
        Room {
            stance: self,
            map: self.map.without(shadows.iter().map(Arc::as_ref)),
        }
    }

    /// The place farthest along `way` that is in none of the shadows; and how far that is, the
    /// figure's tail counted.
    pub(crate) fn farthest(&self, shadows: &[&Map], way: Coord<f64>) -> Option<(f64, Coord<f64>)> {
        let along = |p: &Coord<f64>| p.x * way.x + p.y * way.y;
        let place = |row, column| self.grid.place(row, column);
        // A row's first or last place is its farthest.
        let place = self
            .map
            .ends(shadows)
            .map(|(row, [low, high])| place(row, if way.x > 0.0 { high } else { low }))
            .max_by(|a, b| along(a).total_cmp(&along(b)).then(b.x.total_cmp(&a.x)))?;
        let corners = self.pieces.iter().flatten().map(along);
        let tail = corners.fold(f64::INFINITY, f64::min);
        Some((along(&place) + tail, place))
    }

    /// Slides a free place along `way` and then across it, as far as it goes within a step
    /// of the grid: so that what is laid touches.
    pub(crate) fn slide<'b>(
        &self,
        site: &Site,
        at: Coord<f64>,
        way: Coord<f64>,
        others: impl Iterator<Item = &'b Laid>,
    ) -> Coord<f64> {
        /// Halvings of a step: to a tenth of a millimetre.
        const HALVINGS: u32 = 10;
        /// Steps that all ways together are shorter than.
        const FAR: f64 = 6.0;
        // What cannot be met on so short a way need not be looked at.
        let far = FAR * self.grid.step;
        let near = |theirs: &[Coord<f64>], ours: &Ring| {
            let (low, high) = bounds(theirs.iter().copied());
            let (ours_low, ours_high) = bounds(ours.iter().copied());
            let (low, high) = (low - ours_high, high - ours_low);
            at.x > low.x - far && at.x < high.x + far && at.y > low.y - far && at.y < high.y + far
        };
        let mut bodies: Vec<Halves> = Vec::new();
        let mut mind = |theirs: &[Coord<f64>]| {
            let ours = self.pieces.iter().filter(|ours| near(theirs, ours));
            bodies.extend(ours.map(|ours| meets(theirs, ours)));
        };
        site.edges.iter().for_each(|(a, b)| mind(&[*a, *b]));
        others
            .flat_map(|other| &other.pieces)
            .for_each(|theirs| mind(theirs));
        let across = Coord {
            x: -way.y,
            y: way.x,
        };
        let mut here = at;
        for way in [way, across, way] {
            let mut go = self.grid.step;
            for _ in 0..HALVINGS {
                let there = here + way * go;
                if bodies.iter().all(|body| body.clear_of(there)) {
                    here = there;
                }
                go /= 2.0;
            }
        }
        here
    }

    /// The laid figure with its origin at `at`.
    pub(crate) fn laid(&self, at: Coord<f64>) -> Laid {
        let at = crate::geometry::round(at);
        Laid {
            pose: Pose {
                at,
                turn: self.turn,
                mirrored: self.mirrored,
            },
            pieces: self
                .pieces
                .iter()
                .map(|piece| piece.iter().map(|p| *p + at).collect())
                .collect(),
            shadows: Arc::default(),
        }
    }
}

impl Room<'_> {
    /// Places that are left, in the order of the grid.
    pub(crate) fn places(&self) -> impl Iterator<Item = Coord<f64>> + '_ {
        self.map
            .places()
            .map(|(row, column)| self.stance.grid.place(row, column))
    }

    pub(crate) fn count(&self) -> usize {
        self.map.count()
    }
}

/// Directions of the longest walls, modulo a right angle, each with its right angles; then
/// a fan between them, and a finer fan; and how many come before the finer one.
fn turns(walls: &[Segment], edges: &[Segment]) -> (Vec<f64>, usize) {
    use std::f64::consts::{FRAC_PI_2, PI};
    /// Walls' directions within half a degree are one.
    const ALIKE: f64 = PI / 360.0;
    /// Directions of walls that are tried, longest first.
    const DIRECTIONS: usize = 3;
    let mut directions: Vec<(f64, f64)> = Vec::new();
    for (a, b) in if walls.is_empty() { edges } else { walls } {
        let along = *b - *a;
        let turn = libm::atan2(along.y, along.x).rem_euclid(FRAC_PI_2);
        let long = crate::geometry::length(along);
        let near = |have: &f64| {
            let off = (turn - have).abs();
            off.min(FRAC_PI_2 - off) <= ALIKE
        };
        match directions.iter_mut().find(|(have, _)| near(have)) {
            Some(have) => have.1 += long,
            None => directions.push((turn, long)),
        }
    }
    directions.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.total_cmp(&b.0)));
    let mut turns: Vec<f64> = Vec::new();
    let mut plain = 0;
    for (direction, _) in directions.iter().take(DIRECTIONS) {
        turns.extend((0..4).map(|quarter| direction + FRAC_PI_2 * f64::from(quarter)));
    }
    let first = turns.first().copied().unwrap_or(0.0);
    for steps in [[2, 4, 6].as_slice(), &[1, 3, 5, 7]] {
        plain = turns.len();
        for step in steps {
            turns
                .extend((0..4).map(|quarter| {
                    first + FAN * f64::from(*step) + FRAC_PI_2 * f64::from(quarter)
                }));
        }
    }
    // Turns are handed on in degrees; they are rounded here so that the plan can be
    // recomputed from itself.
    let mut whole: Vec<f64> = Vec::new();
    let mut before = 0;
    for (at, turn) in turns.into_iter().enumerate() {
        if at == plain {
            before = whole.len();
        }
        let degrees = crate::millionth(turn.rem_euclid(2.0 * PI) * 180.0 / PI);
        let turn = degrees * PI / 180.0;
        if !whole.contains(&turn) {
            whole.push(turn);
        }
    }
    (whole, before)
}
