//! Proofs that figures cannot lie together, whatever their poses.
//!
//! All poses of a figure are covered by boxes: a place give or take half a step, a turn give
//! or take half an angle. Points of a lattice that the envelope covers at every pose of a box
//! are *surely* covered; no other figure may cover them. A box whose surely covered ground
//! passes the free ground falls away. What is left are sets of boxes, one for each figure,
//! that are split until every branch has a figure without a box: then the figures are proven
//! apart. Boxes are generous, so a proof never errs on that side; it may only fail.

use std::collections::BTreeMap;

use geo::{Area, BooleanOps, BoundingRect, Coord, MultiPolygon, Polygon};
use rayon::prelude::*;

use super::convex::{Ring, meets, parts};
use super::grid::{Grid, Map};
use super::search::Layout;
use crate::candidate::{Candidate, Pose};
use crate::geometry::{Segment, bounds, edges, inside, length, to_segment};

/// Boxes of a full turn at the first level; each level halves them, and the places.
const TURNS: usize = 180;
const LEVELS: usize = 3;

/// Metres between places at the first level: no finer, and no more places than these.
const FINEST: f64 = 0.125;
const PLACES: f64 = 8_000.0;

/// A lattice point at every second place of the first level, each way.
const SPARSE: usize = 2;

/// A figure with more boxes than these at its first level is left out of a proof, which then
/// speaks of the others alone.
const BOXES: usize = 250_000;

/// A figure that would have more than these at a next level stays as it was.
const FINE_BOXES: usize = 200_000;

/// Metres by which a proof is weaker than it need be: rounding never tips it.
const SLACK: f64 = 2e-3;

/// The lattice and what of it is free.
pub(crate) struct Proofs {
    /// Of each candidate the number of its core.
    core_of: Vec<usize>,
    cores: Vec<Core>,
    edges: Vec<Segment>,
    /// Places of the first level.
    grid: Grid,
    /// Points of the lattice in a row, and words for all of them.
    columns: usize,
    rows: usize,
    words: usize,
    /// Lattice points that no figure may cover: outside the free ground, or under what is
    /// locked.
    closed: Vec<u64>,
    /// Sets by number of core, and whether they are proven apart.
    known: BTreeMap<Vec<usize>, bool>,
    /// By core and level.
    boxes: BTreeMap<(usize, usize), Option<Boxes>>,
    /// Words that all boxes hold.
    stored: usize,
}

/// What all figures of a family cover in their own frame. Where cores cannot lie together,
/// no figures of these families can, and one proof serves all lengths.
struct Core {
    shape: Polygon<f64>,
    mirrors: bool,
}

/// Boxes of poses of one figure that the free ground does not rule out.
#[derive(Default)]
struct Boxes {
    /// Place by column and row, and the turn's number, mirrored ones behind.
    at: Vec<[u16; 3]>,
    /// What each surely covers: the first word of every box, then the second, and so on.
    bits: Vec<u64>,
    /// What one turn moves the farthest corner, in steps between places.
    arc: f64,
}

impl Proofs {
    /// `None` where nothing is free.
    pub(crate) fn new(
        candidates: &[Candidate],
        free: &MultiPolygon<f64>,
        locked: &Layout,
    ) -> Option<Proofs> {
        let edges: Vec<Segment> = free.0.iter().flat_map(edges).collect();
        edges.first()?;
        let (low, high) = bounds(edges.iter().map(|(a, _)| *a));
        let mut grid = Grid::over(low, high, PLACES, FINEST);
        // A last row and column, so that the boxes cover all of the ground.
        grid.columns += 1;
        grid.rows += 1;
        let (columns, rows) = (grid.columns.div_ceil(SPARSE), grid.rows.div_ceil(SPARSE));
        let words = (columns * rows).div_ceil(64);
        let mut closed = vec![0; words];
        let standing: Vec<Vec<Segment>> = locked
            .iter()
            .map(|(number, laid)| edges_at(&candidates[*number], &laid.pose))
            .collect();
        for row in 0..rows {
            for column in 0..columns {
                let p = grid.place(row * SPARSE, column * SPARSE);
                let under = |ring: &Vec<Segment>| {
                    inside(p, ring) && ring.iter().all(|side| to_segment(p, *side) > SLACK)
                };
                if !inside(p, &edges) && edges.iter().all(|side| to_segment(p, *side) > SLACK)
                    || standing.iter().any(under)
                {
                    set(&mut closed, row * columns + column);
                }
            }
        }
        let (cores, core_of) = cores(candidates);
        Some(Proofs {
            core_of,
            cores,
            edges,
            grid,
            columns,
            rows,
            words,
            closed,
            known: BTreeMap::new(),
            boxes: BTreeMap::new(),
            stored: 0,
        })
    }

    /// Whether a set is proven not to fit. `work` is what it may cost, in boxes looked at,
    /// and is drawn down.
    pub(crate) fn apart(&mut self, set: &[usize], work: &mut u64) -> bool {
        let mut set: Vec<usize> = set.iter().map(|k| self.core_of[*k]).collect();
        set.sort_unstable();
        if let Some(known) = self.known.get(&set) {
            return *known;
        }
        let proven = (0..LEVELS).any(|level| {
            let before = (*work).min(EACH);
            let mut left = before;
            let proven = self.apart_at(&set, level, &mut left);
            *work -= before - left;
            proven
        });
        self.known.insert(set, proven);
        proven
    }

    /// The same with boxes of one level, where a figure has not too many of them.
    fn apart_at(&mut self, set: &[usize], level: usize, work: &mut u64) -> bool {
        let finer = |proofs: &Proofs, k: usize| {
            // Halved thrice, boxes are mostly several times as many.
            let few = |boxes: &Boxes| boxes.at.len() * 4 <= FINE_BOXES;
            let before = proofs.boxes.get(&(k, level.saturating_sub(1)));
            level == 0 || before.is_some_and(|boxes| boxes.as_ref().is_some_and(few))
        };
        let missing: Vec<usize> = set
            .iter()
            .copied()
            .filter(|k| !self.boxes.contains_key(&(*k, level)) && finer(self, *k))
            .filter(|_| self.stored <= STORED)
            .collect();
        let made: Vec<_> = missing
            .into_par_iter()
            .map(|k| ((k, level), self.boxes_of(k, level)))
            .collect();
        let stored = made.iter().flat_map(|(_, boxes)| boxes);
        self.stored += stored.map(|boxes| boxes.bits.len()).sum::<usize>();
        self.boxes.extend(made);
        let at = |k: &usize, level: usize| self.boxes.get(&(*k, level))?.as_ref();
        if level > 0 && set.iter().all(|k| at(k, level).is_none()) {
            return false;
        }
        let figures: Vec<&Boxes> = set
            .iter()
            .filter_map(|k| (0..=level).rev().find_map(|level| at(k, level)))
            .collect();
        let whole = figures
            .iter()
            .map(|boxes| (0..boxes.at.len() as u32).collect())
            .collect();
        self.none(&figures, whole, work)
    }

    /// A least set within `set` that is proven apart: no member of it can be spared.
    pub(crate) fn least_apart(
        &mut self,
        set: &[usize],
        work: &mut u64,
        go_on: &dyn Fn() -> bool,
    ) -> Option<Vec<usize>> {
        for size in 1..=set.len() {
            for some in choices(set, size) {
                if *work == 0 || !go_on() {
                    return None;
                }
                if self.apart(&some, work) {
                    return Some(some);
                }
            }
        }
        None
    }

    /// `None` where there are too many.
    fn boxes_of(&self, number: usize, level: usize) -> Option<Boxes> {
        let times = 1 << level;
        let turns = TURNS * times;
        let grid = Grid {
            step: self.grid.step / times as f64,
            columns: (self.grid.columns - 1) * times + 1,
            rows: (self.grid.rows - 1) * times + 1,
            ..self.grid
        };
        let give = |far: f64| {
            // How far a point moves within a box, at most, at this distance from the middle.
            grid.step * std::f64::consts::FRAC_1_SQRT_2
                + far * std::f64::consts::PI / turns as f64
                + SLACK
        };
        let Core { shape, mirrors } = &self.cores[number];
        let bounds = shape.bounding_rect()?;
        let middle = bounds.center();
        let moved = |ring: Ring| -> Ring { ring.into_iter().map(|p| p - middle).collect() };
        let rings: Vec<Ring> = std::iter::once(shape.exterior())
            .chain(shape.interiors())
            .map(|ring| moved(ring.coords().skip(1).copied().collect()))
            .collect();
        let parts: Vec<Ring> = parts(shape).into_iter().map(moved).collect();
        let far = |ring: &[Coord<f64>]| ring.iter().map(|p| length(*p)).fold(0.0, f64::max);
        let ways = if *mirrors { 2 * turns } else { turns };
        let mut boxes = Boxes {
            arc: rings.iter().map(|ring| far(ring)).fold(0.0, f64::max)
                * 2.0
                * std::f64::consts::PI
                / turns as f64
                / grid.step,
            ..Boxes::default()
        };
        let mut rows = Vec::new();
        for way in 0..ways {
            let pose = Pose {
                at: Coord { x: 0.0, y: 0.0 },
                turn: (way % turns) as f64 * 2.0 * std::f64::consts::PI / turns as f64,
                mirrored: way >= turns,
            };
            let turned = |ring: &Ring| -> Ring {
                let mut ring: Ring = ring.iter().map(|p| pose.of(*p)).collect();
                if pose.mirrored {
                    ring.reverse();
                }
                ring
            };
            let Some(mut map) = self.places_left(number, level, way, &grid) else {
                continue;
            };
            let sides: Vec<Segment> = rings
                .iter()
                .flat_map(|ring| super::convex::pairs(&turned(ring)).collect::<Vec<_>>())
                .collect();
            let sure = surely(&sides, grid.step, &give);
            if sure.is_empty() {
                continue;
            }
            // Where the ground's edge runs through the figure at every pose of a box.
            for part in &parts {
                let part = turned(part);
                let give = give(far(&part));
                for (a, b) in &self.edges {
                    if let Some(body) = meets(&[*a, *b], &part).within(give) {
                        grid.mark(&mut map, &body, false);
                    }
                }
            }
            for (row, column) in map.places() {
                if let Some(bits) = self.shifted(&sure, (row, column), SPARSE * times) {
                    boxes.at.push([column as u16, row as u16, way as u16]);
                    rows.extend(bits);
                }
            }
            if boxes.at.len() > BOXES {
                return None;
            }
        }
        let words = 0..self.words;
        boxes.bits = words
            .flat_map(|word| rows.iter().skip(word).step_by(self.words).copied())
            .collect();
        Some(boxes)
    }

    /// Places of a turn whose boxes the level before has not ruled out; `None` where none is
    /// left.
    fn places_left(&self, number: usize, level: usize, way: usize, grid: &Grid) -> Option<Map> {
        let Some(before) = level.checked_sub(1) else {
            return Some(grid.all());
        };
        let boxes = self.boxes.get(&(number, before))?.as_ref()?;
        // A box reaches half way to the places and turns beside it, of which this level has
        // one more between each two.
        let turns = TURNS << before;
        let (side, turn) = (way / (2 * turns), way % (2 * turns));
        let mut map = grid.none();
        let mut any = false;
        for turn in [turn / 2, turn.div_ceil(2) % turns] {
            let way = (side * turns + turn) as u16;
            let first = boxes.at.partition_point(|at| at[2] < way);
            for at in boxes.at[first..].iter().take_while(|at| at[2] == way) {
                let (column, row) = (usize::from(at[0]) * 2, usize::from(at[1]) * 2);
                let columns = (column.saturating_sub(1), (column + 2).min(grid.columns));
                for row in row.saturating_sub(1)..(row + 2).min(grid.rows) {
                    map.set(row, columns.0, columns.1, true);
                }
                any = true;
            }
        }
        any.then_some(map)
    }

    /// The points of the lattice among those that are moved to a place; `None` where one is
    /// closed.
    fn shifted(
        &self,
        sure: &[(i32, i32)],
        (row, column): (usize, usize),
        sparse: usize,
    ) -> Option<Vec<u64>> {
        let mut bits = vec![0; self.words];
        let sparse = sparse as i64;
        for (down, right) in sure {
            let (row, column) = (
                row as i64 + i64::from(*down),
                column as i64 + i64::from(*right),
            );
            if row < 0 || column < 0 {
                return None;
            }
            if row % sparse != 0 || column % sparse != 0 {
                continue;
            }
            let (row, column) = ((row / sparse) as usize, (column / sparse) as usize);
            if row >= self.rows || column >= self.columns {
                return None;
            }
            let at = row * self.columns + column;
            if self.closed[at / 64] >> (at % 64) & 1 == 1 {
                return None;
            }
            set(&mut bits, at);
        }
        Some(bits)
    }

    /// Whether no choice of one box for each figure leaves them apart.
    fn none(&self, figures: &[&Boxes], mut left: Vec<Vec<u32>>, work: &mut u64) -> bool {
        loop {
            let looked: usize = left.iter().map(Vec::len).sum();
            let Some(rest) = work.checked_sub(looked as u64 + 1) else {
                *work = 0;
                return false;
            };
            *work = rest;
            if left.iter().any(Vec::is_empty) {
                return true;
            }
            // What a figure covers wherever it lies is closed to the others.
            let sure: Vec<Vec<u64>> = std::iter::zip(figures, &left)
                .map(|(boxes, left)| {
                    let all = |word| {
                        let bits = boxes.word(word);
                        let mut sure = !0;
                        for at in left {
                            sure &= bits[*at as usize];
                            if sure == 0 {
                                break;
                            }
                        }
                        sure
                    };
                    (0..self.words).map(all).collect()
                })
                .collect();
            let mut fewer = false;
            for (number, boxes) in figures.iter().enumerate() {
                let mut closed = vec![0; self.words];
                for (_, sure) in sure
                    .iter()
                    .enumerate()
                    .filter(|(other, _)| *other != number)
                {
                    closed
                        .iter_mut()
                        .zip(sure)
                        .for_each(|(closed, sure)| *closed |= sure);
                }
                let before = left[number].len();
                for (word, closed) in closed.iter().enumerate().filter(|(_, c)| **c != 0) {
                    let bits = boxes.word(word);
                    left[number].retain(|at| bits[*at as usize] & closed == 0);
                }
                fewer |= left[number].len() < before;
            }
            if !fewer {
                break;
            }
        }
        if left.iter().any(Vec::is_empty) {
            return true;
        }
        // The figure with the fewest boxes, split across its widest spread.
        let Some(number) = (0..left.len())
            .filter(|number| left[*number].len() > 1)
            .min_by_key(|number| left[*number].len())
        else {
            return false;
        };
        let halves = figures[number].split(&left[number]);
        for half in halves {
            let mut left = left.clone();
            left[number] = half;
            if !self.none(figures, left, work) {
                return false;
            }
        }
        true
    }
}

/// Words of boxes after which no figure gets any more: a third of a gigabyte.
const STORED: usize = 40_000_000;

/// Boxes that the proof of one set may look at, at each level.
const EACH: u64 = 80_000_000;

impl Boxes {
    /// One word of all boxes.
    fn word(&self, word: usize) -> &[u64] {
        let many = self.at.len();
        &self.bits[word * many..(word + 1) * many]
    }

    /// Two parts of some boxes, neither empty: those of one place or turn apart from others.
    fn split(&self, some: &[u32]) -> [Vec<u32>; 2] {
        let value = |axis: usize, at: &u32| self.at[*at as usize][axis];
        let spread = |axis: usize| {
            let (low, high) = some.iter().fold((u16::MAX, 0), |(low, high), at| {
                (low.min(value(axis, at)), high.max(value(axis, at)))
            });
            let wide = f64::from(high - low) * if axis == 2 { self.arc } else { 1.0 };
            (wide, low, high)
        };
        let all = [spread(0), spread(1), spread(2)];
        let axis = (0..3)
            .max_by(|a, b| all[*a].0.total_cmp(&all[*b].0).then(b.cmp(a)))
            .unwrap_or(0);
        let middle = all[axis].1 + (all[axis].2 - all[axis].1) / 2;
        let (one, other) = some.iter().partition(|at| value(axis, at) <= middle);
        [one, other]
    }
}

/// The cores, and each candidate's. A locked or refused figure shares none, as it is in no
/// set; nor does one that has little in common with its family.
fn cores(candidates: &[Candidate]) -> (Vec<Core>, Vec<usize>) {
    /// Of the smaller area.
    const COMMON: f64 = 0.8;
    let mut cores: Vec<(Option<&str>, Core)> = Vec::new();
    let mut core_of = Vec::with_capacity(candidates.len());
    for candidate in candidates {
        let shape = &candidate.figure.envelope;
        let open = candidate.locked.is_none() && !candidate.refused;
        let family = open.then_some(candidate.family.as_str());
        let shared = cores.iter().enumerate().find_map(|(at, (of, core))| {
            (open && *of == family).then_some(())?;
            let both = core.shape.intersection(shape);
            let both = both
                .0
                .into_iter()
                .max_by(|a, b| a.unsigned_area().total_cmp(&b.unsigned_area()))?;
            let least = core.shape.unsigned_area().min(shape.unsigned_area());
            (both.unsigned_area() >= COMMON * least).then_some((at, both))
        });
        match shared {
            Some((at, both)) => {
                cores[at].1.shape = both;
                cores[at].1.mirrors |= candidate.mirrors;
                core_of.push(at);
            }
            None => {
                core_of.push(cores.len());
                cores.push((
                    family,
                    Core {
                        shape: shape.clone(),
                        mirrors: candidate.mirrors,
                    },
                ));
            }
        }
    }
    (cores.into_iter().map(|(_, core)| core).collect(), core_of)
}

/// Points about the middle, by steps between places, that a figure covers at every pose of a
/// box.
fn surely(sides: &[Segment], step: f64, give: &dyn Fn(f64) -> f64) -> Vec<(i32, i32)> {
    let reach = sides.iter().map(|(p, _)| length(*p)).fold(0.0, f64::max);
    let many = (reach / step) as i32 + 1;
    let mut sure = Vec::new();
    let mut crossed = Vec::new();
    for row in -many..=many {
        let y = f64::from(row) * step;
        crossed.clear();
        crossed.extend(
            sides
                .iter()
                .filter(|(a, b)| (a.y > y) != (b.y > y))
                .map(|(a, b)| (b.x - a.x) * (y - a.y) / (b.y - a.y) + a.x),
        );
        crossed.sort_by(f64::total_cmp);
        for pair in crossed.chunks_exact(2) {
            let (from, to) = (
                (pair[0] / step).ceil() as i32,
                (pair[1] / step).floor() as i32,
            );
            for column in from..=to {
                let p = Coord {
                    x: f64::from(column) * step,
                    y,
                };
                let give = give(length(p));
                if sides.iter().all(|side| to_segment(p, *side) > give) {
                    sure.push((row, column));
                }
            }
        }
    }
    sure
}

fn set(bits: &mut [u64], at: usize) {
    if let Some(word) = bits.get_mut(at / 64) {
        *word |= 1 << (at % 64);
    }
}

fn edges_at(candidate: &Candidate, pose: &Pose) -> Vec<Segment> {
    edges(&pose.of_polygon(&candidate.figure.envelope))
}

/// All choices of `size` members, in order.
fn choices(set: &[usize], size: usize) -> Vec<Vec<usize>> {
    if size == 0 {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for (at, first) in set.iter().enumerate() {
        for mut rest in choices(&set[at + 1..], size - 1) {
            rest.insert(0, *first);
            all.push(rest);
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use geo::LineString;
    use marking::Figure;
    use proptest::prelude::*;

    use super::*;

    fn ring(corners: Vec<(f64, f64)>) -> Polygon<f64> {
        Polygon::new(LineString::from(corners), Vec::new())
    }

    fn slab(length: f64, width: f64) -> Polygon<f64> {
        ring(vec![
            (0.0, 0.0),
            (length, 0.0),
            (length, width),
            (0.0, width),
        ])
    }

    fn candidate((number, envelope): (usize, Polygon<f64>)) -> Candidate {
        Candidate {
            name: String::new(),
            family: number.to_string(),
            group: String::new(),
            cost: 0.0,
            area: 0.0,
            locked: None,
            refused: false,
            mirrors: false,
            yields: Vec::new(),
            figure: Figure {
                family: String::new(),
                lengths: Vec::new(),
                paint: Vec::new(),
                cells: Vec::new(),
                facing: None,
                lanes: Vec::new(),
                tracks: 1,
                wait: Vec::new(),
                envelope,
            },
        }
    }

    /// Whether all figures are proven apart on a ground, turned by an angle.
    fn proven(ground: &Polygon<f64>, turn: f64, figures: Vec<Polygon<f64>>) -> bool {
        let pose = Pose {
            at: Coord { x: 3.1, y: -7.7 },
            turn,
            mirrored: false,
        };
        let candidates: Vec<Candidate> = figures.into_iter().enumerate().map(candidate).collect();
        let free = MultiPolygon::new(vec![pose.of_polygon(ground)]);
        let mut proofs = Proofs::new(&candidates, &free, &Layout::new()).expect("some is free");
        let all: Vec<usize> = (0..candidates.len()).collect();
        proofs.apart(&all, &mut 1_000_000)
    }

    /// By hand: slabs broader than half the room, longer than the room is broad, cannot lie
    /// side by side, nor across; a hand narrower and they do. A slab longer than the room's
    /// diagonal lies nowhere.
    #[test]
    fn slabs_in_a_room() {
        let room = slab(6.0, 6.0);
        for turn in [0.0, 0.4] {
            assert!(proven(&room, turn, vec![slab(5.0, 3.2), slab(5.0, 3.2)]));
            assert!(!proven(&room, turn, vec![slab(5.0, 2.99), slab(5.0, 2.99)]));
            assert!(proven(&room, turn, vec![slab(8.2, 0.9)]));
            assert!(!proven(&room, turn, vec![slab(5.99, 5.99)]));
        }
    }

    /// An L of two arms 2 m broad holds one slab 5 m long in each, never three.
    #[test]
    fn slabs_in_an_l() {
        let l = ring(vec![
            (0.0, 0.0),
            (7.5, 0.0),
            (7.5, 2.0),
            (2.0, 2.0),
            (2.0, 7.5),
            (0.0, 7.5),
        ]);
        let slabs = |many: usize| vec![slab(5.0, 1.6); many];
        assert!(!proven(&l, 0.7, slabs(2)));
        assert!(proven(&l, 0.7, slabs(3)));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4))]
        /// A ground cut into pieces holds its pieces, with nothing to spare.
        #[test]
        fn what_fills_the_ground_is_never_proven_apart(
            w in 40_u32..80, h in 40_u32..80, a in 20_u32..60, b in 20_u32..80, turn in 0_u32..628,
        ) {
            let (w, h) = (f64::from(w) / 10.0, f64::from(h) / 10.0);
            let (a, b) = (w * f64::from(a) / 100.0, h * f64::from(b) / 100.0);
            let parts = vec![slab(a, h), slab(w - a, b), slab(h - b, w - a)];
            prop_assert!(!proven(&slab(w, h), f64::from(turn) / 100.0, parts));
        }
    }
}
