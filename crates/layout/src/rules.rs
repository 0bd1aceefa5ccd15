//! The rules of a layout, measured: the planner's own and the audit's are these.
//!
//! Each rule measures one figure among the others and returns what is wanted and what is;
//! hard rules must hold, the others cost something where they do not. Weights are equal: a
//! term that falls wholly short costs 1.

use geo::{Area, BooleanOps, Coord, MultiPolygon, Polygon};
use ground::result::Ground;
use ground::yard::{EdgeKind, FixtureKind, Footprint, SurfaceKind, Yard};
use ledger::{Key, Ledger};
use marking::{LaneKind, Outline};

use crate::candidate::{Candidate, Pose};
use crate::figures as fig;
use crate::geometry::{
    Segment, apart, between, cross, edges, inside, length, line_edges, to_segment,
};
use crate::place::convex::{Ring, meets};
use crate::place::site::pieces_at;
use crate::reach::Reach;

/// What is measured of one rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finding {
    /// In kebab-case.
    pub rule: &'static str,
    /// `m`, `m2`, `deg`, `points` or `1`.
    pub unit: &'static str,
    /// What is wanted.
    pub wanted: f64,
    /// What is.
    pub actual: f64,
    /// Whether it must hold.
    pub hard: bool,
    /// Whether it holds.
    pub pass: bool,
    /// The figure that says what is wanted.
    pub source: Option<Key>,
    /// How far it falls short, from 0 to 1.
    pub short: f64,
}

/// Metres, square metres or degrees: below what a stage's rounding can move.
const SAME: f64 = 1e-5;

fn finding(
    rule: &'static str,
    unit: &'static str,
    wanted: f64,
    actual: f64,
    source: Option<Key>,
) -> Finding {
    Finding {
        rule,
        unit,
        wanted,
        actual,
        hard: false,
        pass: true,
        source,
        short: 0.0,
    }
}

fn at_least(
    rule: &'static str,
    unit: &'static str,
    wanted: f64,
    actual: f64,
    source: Option<Key>,
) -> Finding {
    let pass = actual >= wanted - SAME;
    let short = if pass {
        0.0
    } else {
        ((wanted - actual) / wanted.abs().max(SAME)).clamp(0.0, 1.0)
    };
    Finding {
        pass,
        short,
        ..finding(rule, unit, wanted, actual, source)
    }
}

/// `whole`: how far beyond what is wanted counts as wholly short.
fn at_most(
    rule: &'static str,
    unit: &'static str,
    wanted: f64,
    actual: f64,
    whole: f64,
    source: Option<Key>,
) -> Finding {
    let pass = actual <= wanted + SAME;
    let short = if pass {
        0.0
    } else {
        ((actual - wanted) / whole).clamp(0.0, 1.0)
    };
    Finding {
        pass,
        short,
        ..finding(rule, unit, wanted, actual, source)
    }
}

impl Finding {
    fn hard(self) -> Finding {
        Finding { hard: true, ..self }
    }
}

/// All that stands still round the figures, with the figures of the ledger read.
pub struct Surroundings<'a> {
    yard: &'a Yard,
    ledger: &'a Ledger,
    free: &'a MultiPolygon<f64>,
    free_edges: Vec<Segment>,
    /// Sides of the yard that are not open, and what stands in it.
    solid: Vec<Segment>,
    /// Doors and gates.
    ways_out: Vec<Segment>,
    drains: Vec<(Vec<Segment>, f64)>,
    walks: Vec<Segment>,
    /// Directions of the walls modulo a right angle, with their middles.
    pub(crate) walls: Vec<Segment>,
    reach: Option<Reach>,
    runs: [f64; 3],
    wait_clear: f64,
    lane_single: f64,
    calm: f64,
    square: f64,
    margins: [f64; 3],
    drain: f64,
    gate_clear: f64,
}

/// A figure where it lies, as the rules see it; metres in the yard.
#[derive(Clone, Debug)]
pub struct Setting {
    turn: f64,
    pieces: Vec<Ring>,
    envelope: Vec<Segment>,
    cells: Vec<Coord<f64>>,
    /// Cells of a figure where children hop or jump.
    landings: Vec<(Coord<f64>, f64)>,
    lanes: Vec<LaneAt>,
    ends: Vec<End>,
    wait: Vec<Coord<f64>>,
    fast: bool,
}

/// Where a route ends, the way it went there, and whether it is run.
#[derive(Clone, Copy, Debug)]
struct End {
    at: Coord<f64>,
    way: Coord<f64>,
    long: bool,
}

#[derive(Clone, Debug)]
struct LaneAt {
    line: Vec<Segment>,
    half: f64,
    corridor: bool,
    clear: f64,
}

impl Setting {
    /// A candidate at a pose.
    pub fn new(candidate: &Candidate, pose: Pose) -> Setting {
        let figure = &candidate.figure;
        let at = |p: Coord<f64>| pose.of(p);
        let segments = |line: Vec<Segment>| -> Vec<Segment> {
            line.into_iter().map(|(a, b)| (at(a), at(b))).collect()
        };
        let lanes: Vec<LaneAt> = figure
            .lanes
            .iter()
            .map(|lane| LaneAt {
                line: segments(line_edges(&lane.line)),
                half: lane.width / 2.0,
                corridor: lane.kind == LaneKind::Corridor,
                clear: lane.width,
            })
            .collect();
        // The way a lane or a row of cells goes as a whole: a wave's last bow points aside,
        // and yet its children come out along the wave.
        let mut ends: Vec<End> = Vec::new();
        for lane in &lanes {
            if let (Some((from, _)), Some((_, to))) = (lane.line.first(), lane.line.last()) {
                ends.push(End {
                    at: *to,
                    way: *to - *from,
                    long: lane.corridor,
                });
            }
        }
        let starts: Vec<Coord<f64>> = figure
            .cells
            .iter()
            .filter(|cell| cell.start)
            .map(|cell| at(cell.centre))
            .collect();
        for cell in figure.cells.iter().filter(|cell| cell.end && !cell.start) {
            let to = at(cell.centre);
            let from = |start: &&Coord<f64>| length(to - **start);
            if let Some(start) = starts.iter().min_by(|a, b| from(a).total_cmp(&from(b))) {
                ends.push(End {
                    at: to,
                    way: to - *start,
                    long: false,
                });
            }
        }
        ends.retain(|end| length(end.way) > 0.0);
        Setting {
            turn: pose.turn,
            pieces: pieces_at(candidate, &pose),
            envelope: segments(edges(&figure.envelope)),
            cells: figure.cells.iter().map(|cell| at(cell.centre)).collect(),
            landings: figure
                .cells
                .iter()
                .map(|cell| (at(cell.centre), radius(cell)))
                .collect(),
            fast: lanes.iter().any(|lane| lane.corridor),
            lanes,
            ends,
            wait: figure.wait.iter().map(|spot| at(*spot)).collect(),
        }
    }

    fn lane_segments(&self) -> impl Iterator<Item = (&Segment, f64)> {
        self.lanes
            .iter()
            .flat_map(|lane| lane.line.iter().map(move |segment| (segment, lane.half)))
    }

    /// Metres between two envelopes; the depth of the overlap, negative, where they lap.
    pub(crate) fn apart(&self, other: &Setting) -> f64 {
        let origin = Coord { x: 0.0, y: 0.0 };
        let mut depth: f64 = 0.0;
        for ours in &self.pieces {
            for theirs in &other.pieces {
                depth = depth.max(meets(theirs, ours).depth(origin));
            }
        }
        if depth > 0.0 {
            -depth
        } else {
            apart(&self.envelope, &other.envelope)
        }
    }
}

fn radius(cell: &marking::Cell) -> f64 {
    match &cell.outline {
        Outline::Disc { radius } => *radius,
        Outline::Polygon(outline) => outline
            .exterior()
            .coords()
            .map(|p| length(*p - cell.centre))
            .fold(0.0, f64::max),
    }
}

impl<'a> Surroundings<'a> {
    /// Reads a yard and its ground.
    pub fn new(yard: &'a Yard, ground: &'a Ground, ledger: &'a Ledger) -> Surroundings<'a> {
        let walls: Vec<Segment> = yard
            .edges
            .iter()
            .filter(|edge| edge.is != EdgeKind::Open)
            .flat_map(|edge| line_edges(&edge.line))
            .collect();
        let walls = if yard.edges.is_empty() {
            edges(&yard.boundary)
        } else {
            walls
        };
        let mut solid = walls.clone();
        let mut drains = Vec::new();
        for fixture in &yard.fixtures {
            let (outline, grown) = outline(&fixture.shape);
            match fixture.is {
                FixtureKind::Drain | FixtureKind::Cover | FixtureKind::Hydrant => {
                    drains.push((outline, grown))
                }
                _ => solid.extend(outline),
            }
        }
        let mut ways_out: Vec<Segment> = yard
            .doors
            .iter()
            .map(|door| (door.jambs[0], door.jambs[1]))
            .collect();
        ways_out.extend(yard.gates.iter().map(|gate| (gate.posts[0], gate.posts[1])));
        let number = |key| ledger.number(key);
        Surroundings {
            reach: Reach::new(yard, number(fig::WHEELS_WAY)),
            free: &ground.free,
            free_edges: ground.free.0.iter().flat_map(edges).collect(),
            walks: ground
                .routes
                .iter()
                .filter_map(|walk| walk.line.as_ref())
                .flat_map(line_edges)
                .collect(),
            solid,
            ways_out,
            drains,
            walls,
            runs: [
                number(fig::RUN_OUT_RUN),
                number(fig::RUN_OUT_OTHER),
                number(fig::RUN_OUT_WANTED),
            ],
            wait_clear: number(fig::WAIT_CLEAR),
            lane_single: number(fig::LANE_SINGLE),
            calm: number(fig::CALM),
            square: number(fig::SQUARE),
            margins: [
                number(fig::MARGIN_STILL),
                number(fig::MARGIN_LANE),
                number(fig::MARGIN_LANDING),
            ],
            drain: number(fig::DRAIN_LANDING),
            gate_clear: number(fig::GATE_CLEAR),
            yard,
            ledger,
        }
    }

    /// What is left unmet of the wanted terms of one figure among others, and by the others
    /// because of it.
    pub(crate) fn penalty(&self, me: &Setting, others: &[&Setting]) -> f64 {
        /// Cells looked for from the stands while poses are tried.
        const LOOKED_FOR: usize = 6;
        self.wanted(me, others, LOOKED_FOR)
            .iter()
            .map(|finding| finding.short)
            .sum()
    }

    /// The wanted terms of one figure; up to `cells` of its cells are looked for.
    pub(crate) fn wanted(&self, me: &Setting, others: &[&Setting], cells: usize) -> Vec<Finding> {
        let mut found = Vec::new();
        let runs = me.ends.iter().filter(|end| end.long);
        let clear = runs
            .map(|end| self.run_out(end, others))
            .fold(f64::INFINITY, f64::min);
        if clear.is_finite() {
            found.push(at_least(
                "run-out-wanted",
                "m",
                self.runs[2],
                clear,
                Some(fig::RUN_OUT_WANTED),
            ));
        }
        if let Some(clear) = self.wait_to_lanes(me, others) {
            found.push(at_least(
                "waiting-off-lanes",
                "m",
                self.wait_clear,
                clear,
                Some(fig::WAIT_CLEAR),
            ));
        }
        if !self.yard.stands.is_empty() && !me.cells.is_empty() {
            let stride = me.cells.len().div_ceil(cells.max(1)).max(1);
            let looked: Vec<_> = me.cells.iter().step_by(stride).collect();
            let seen = looked
                .iter()
                .filter(|cell| {
                    self.yard
                        .stands
                        .iter()
                        .any(|stand| ground::sees(self.yard, *stand, ***cell, self.ledger))
                })
                .count();
            let share = seen as f64 / looked.len() as f64;
            found.push(at_least(
                "in-sight",
                "1",
                1.0,
                share,
                Some(ledger::Key("sight.hides")),
            ));
        }
        if let Some(off) = self.off_square(me) {
            found.push(at_most(
                "square-to-walls",
                "deg",
                self.square,
                off,
                45.0,
                Some(fig::SQUARE),
            ));
        }
        let quiet = others
            .iter()
            .filter(|other| other.fast != me.fast)
            .map(|other| {
                if me.fast {
                    calm(other, me)
                } else {
                    calm(me, other)
                }
            })
            .fold(f64::INFINITY, f64::min);
        if quiet.is_finite() {
            found.push(at_least(
                "quiet-from-fast",
                "m",
                self.calm,
                quiet.min(self.calm),
                Some(fig::CALM),
            ));
        }
        found.extend(self.margins(me));
        if !self.ways_out.is_empty() && !me.wait.is_empty() {
            let clear = me
                .wait
                .iter()
                .flat_map(|spot| self.ways_out.iter().map(|way| to_segment(*spot, *way)))
                .fold(f64::INFINITY, f64::min);
            found.push(at_least(
                "waiting-off-ways-out",
                "m",
                self.gate_clear,
                clear.min(self.gate_clear),
                Some(fig::GATE_CLEAR),
            ));
        }
        let crossings = me
            .lane_segments()
            .flat_map(|(lane, _)| {
                let lanes = others
                    .iter()
                    .filter(|_| me.fast)
                    .flat_map(|other| other.lane_segments().map(|(s, _)| s));
                lanes
                    .chain(&self.walks)
                    .filter(|other| between(*lane, **other) == 0.0)
                    .collect::<Vec<_>>()
            })
            .count();
        if !me.lanes.is_empty() {
            found.push(at_most(
                "lanes-crossed",
                "1",
                0.0,
                crossings as f64,
                1.0,
                None,
            ));
        }
        found
    }

    /// Metres from an end, along its way, to the first wall, fixture, door, gate or lane.
    fn run_out(&self, end: &End, others: &[&Setting]) -> f64 {
        let far = end.at + end.way * (self.runs[2] / length(end.way));
        let ray = (end.at, far);
        let lanes = others
            .iter()
            .flat_map(|other| other.lane_segments().map(|(segment, _)| segment));
        self.solid
            .iter()
            .chain(&self.ways_out)
            .chain(lanes)
            .filter_map(|other| hit(ray, *other))
            .fold(self.runs[2], f64::min)
    }

    fn wait_to_lanes(&self, me: &Setting, others: &[&Setting]) -> Option<f64> {
        let lanes = me
            .lane_segments()
            .chain(others.iter().flat_map(|other| other.lane_segments()));
        let lanes: Vec<_> = lanes.collect();
        let clear = me
            .wait
            .iter()
            .flat_map(|spot| {
                lanes
                    .iter()
                    .map(|(lane, half)| (to_segment(*spot, **lane) - half).max(0.0))
            })
            .fold(f64::INFINITY, f64::min);
        clear.is_finite().then_some(clear.min(self.wait_clear))
    }

    /// Degrees off the nearest wall's direction or its right angle.
    fn off_square(&self, me: &Setting) -> Option<f64> {
        let middle = me.envelope.first()?.0;
        let nearest = self
            .walls
            .iter()
            .filter(|(a, b)| length(*b - *a) >= 1.0)
            .min_by(|a, b| to_segment(middle, **a).total_cmp(&to_segment(middle, **b)))?;
        let along = nearest.1 - nearest.0;
        let quarter = std::f64::consts::FRAC_PI_2;
        let off = (me.turn - libm::atan2(along.y, along.x)).rem_euclid(quarter);
        Some(off.min(quarter - off).to_degrees())
    }

    /// Clear distance to what is hard, by what happens there.
    fn margins(&self, me: &Setting) -> Vec<Finding> {
        let mut found = Vec::new();
        let lanes = me
            .lane_segments()
            .map(|(lane, half)| apart(&[*lane], &self.solid) - half)
            .fold(f64::INFINITY, f64::min);
        if lanes.is_finite() {
            let wanted = self.margins[1];
            found.push(at_least(
                "lane-from-edges",
                "m",
                wanted,
                lanes.max(0.0).min(wanted),
                Some(fig::MARGIN_LANE),
            ));
        }
        let landings = |solid: &[Segment]| {
            me.landings
                .iter()
                .flat_map(|(cell, radius)| {
                    solid.iter().map(move |s| to_segment(*cell, *s) - radius)
                })
                .fold(f64::INFINITY, f64::min)
        };
        let hard = landings(&self.solid);
        if hard.is_finite() {
            let wanted = self.margins[2];
            found.push(at_least(
                "landing-from-edges",
                "m",
                wanted,
                hard.max(0.0).min(wanted),
                Some(fig::MARGIN_LANDING),
            ));
        }
        let drains = self
            .drains
            .iter()
            .map(|(ring, grown)| landings(ring) - grown)
            .fold(f64::INFINITY, f64::min);
        if drains.is_finite() {
            found.push(at_least(
                "landing-from-drains",
                "m",
                self.drain,
                drains.max(0.0).min(self.drain),
                Some(fig::DRAIN_LANDING),
            ));
        }
        found
    }

    /// The hard rules of one figure among others, `paint` being its painted shapes in the
    /// yard.
    pub(crate) fn hard(
        &self,
        me: &Setting,
        others: &[&Setting],
        envelope: &Polygon<f64>,
        paint: &[&Polygon<f64>],
    ) -> Vec<Finding> {
        let mut found = vec![
            at_most(
                "paint-on-ground",
                "m2",
                0.0,
                paint.iter().map(|shape| self.outside(shape)).sum(),
                1.0,
                None,
            )
            .hard(),
            at_most(
                "envelope-on-ground",
                "m2",
                0.0,
                self.outside(envelope),
                1.0,
                None,
            )
            .hard(),
        ];
        let nearest = others
            .iter()
            .map(|other| me.apart(other))
            .fold(f64::INFINITY, f64::min);
        if nearest.is_finite() {
            found.push(at_least("envelopes-apart", "m", 0.0, nearest, None).hard());
        }
        found.extend(self.run_outs(me));
        let narrowest = me
            .lanes
            .iter()
            .filter(|lane| lane.corridor)
            .map(|lane| lane.clear)
            .fold(f64::INFINITY, f64::min);
        if narrowest.is_finite() {
            found.push(at_least(
                "lane-width",
                "m",
                self.lane_single,
                narrowest,
                Some(fig::LANE_SINGLE),
            ));
        }
        found
    }

    /// The run-out of each kind that lies within the envelope.
    fn run_outs(&self, me: &Setting) -> Vec<Finding> {
        let mut found = Vec::new();
        for (long, wanted, key) in [
            (true, self.runs[0], fig::RUN_OUT_RUN),
            (false, self.runs[1], fig::RUN_OUT_OTHER),
        ] {
            let ends = me.ends.iter().filter(|end| end.long == long);
            let within = ends
                .map(|end| {
                    let far = end.at + end.way * (wanted / length(end.way));
                    let sides = me.envelope.iter();
                    sides
                        .filter_map(|side| hit((end.at, far), *side))
                        .fold(wanted, f64::min)
                })
                .fold(f64::INFINITY, f64::min);
            if within.is_finite() {
                found.push(at_least("run-out-inside", "m", wanted, within, Some(key)).hard());
            }
        }
        found
    }

    /// Square metres of a shape that lie outside the free ground.
    fn outside(&self, shape: &Polygon<f64>) -> f64 {
        let ring = edges(shape);
        let within = ring
            .first()
            .is_none_or(|(a, _)| inside(*a, &self.free_edges));
        if within
            && apart(&ring, &self.free_edges) > 0.0
            && !self.free_edges.iter().any(|(a, _)| inside(*a, &ring))
        {
            return 0.0;
        }
        MultiPolygon::new(vec![shape.clone()])
            .difference(self.free)
            .unsigned_area()
    }

    /// Whether a figure has its run-out within its own envelope, wherever it lies.
    pub(crate) fn runs_out(&self, me: &Setting) -> bool {
        self.run_outs(me).iter().all(|finding| finding.pass)
    }

    /// Whether wheels get to one of the figures, as far as they get anywhere.
    pub(crate) fn wheels_reach(&self, all: &[&Setting]) -> bool {
        let Some(reach) = self.reach.as_ref().filter(|reach| reach.anywhere()) else {
            return true;
        };
        let middles = all.iter().flat_map(|one| &one.envelope);
        all.is_empty()
            || middles
                .into_iter()
                .any(|(a, b)| reach.reaches((*a + *b) / 2.0))
    }

    /// Rules of the whole layout: a wheeled way to some station, and balance over the yard.
    pub(crate) fn whole(&self, all: &[&Setting]) -> Vec<Finding> {
        let mut found = Vec::new();
        if let Some(reach) = self.reach.as_ref().filter(|_| !all.is_empty()) {
            let reached = all
                .iter()
                .filter(|one| {
                    one.envelope
                        .iter()
                        .any(|(a, b)| reach.reaches((*a + *b) / 2.0))
                })
                .count();
            found.push(
                at_least(
                    "wheeled-way",
                    "1",
                    1.0,
                    reached as f64,
                    Some(fig::WHEELS_WAY),
                )
                .hard(),
            );
        }
        if let Some(off) = self.balance(all) {
            found.push(at_most(
                "balance",
                "1",
                self.ledger.number(fig::BALANCE),
                off,
                1.0,
                Some(fig::BALANCE),
            ));
        }
        found
    }

    /// How far the middle of the envelopes lies off the middle of the free ground, as a
    /// share of the side of a square as large.
    fn balance(&self, all: &[&Setting]) -> Option<f64> {
        use geo::Centroid;
        let middle = self.free.centroid()?;
        let (mut sum, mut weight) = (Coord { x: 0.0, y: 0.0 }, 0.0);
        for one in all {
            let Some((origin, _)) = one.envelope.first() else {
                continue;
            };
            let mut area = 0.0;
            let mut moment = Coord { x: 0.0, y: 0.0 };
            for (a, b) in &one.envelope {
                let twice = cross(*a - *origin, *b - *origin);
                area += twice / 2.0;
                moment = moment + ((*a - *origin) + (*b - *origin)) * (twice / 6.0);
            }
            sum = sum + *origin * area.abs() + moment * area.signum();
            weight += area.abs();
        }
        (weight > 0.0).then(|| length(sum / weight - middle.0) / self.free.unsigned_area().sqrt())
    }

    /// Paint against the ground under it, points of luminance; the palest of the figure.
    pub(crate) fn contrast(&self, candidate: &Candidate, pose: Pose) -> Option<Finding> {
        let paints: Vec<_> = candidate.figure.paint.iter().collect();
        let at = pose.of(paints
            .first()?
            .polygon
            .exterior()
            .coords()
            .next()
            .copied()?);
        let surface = self
            .yard
            .surfaces
            .iter()
            .rev()
            .find(|surface| inside(at, &edges(&surface.outline)))?;
        let under = match surface.is {
            SurfaceKind::Asphalt => marking::Ground::Asphalt,
            SurfaceKind::Concrete | SurfaceKind::Paving => marking::Ground::Concrete,
            _ => return None,
        };
        let under = self.ledger.number(under.key());
        let least = paints
            .iter()
            .map(|paint| {
                marking::contrast(self.ledger.number(paint.colour.key()), under)
                    .points
                    .abs()
            })
            .fold(f64::INFINITY, f64::min);
        Some(at_least(
            "contrast",
            "points",
            self.ledger.number(fig::CONTRAST),
            least,
            Some(fig::CONTRAST),
        ))
    }
}

/// From a quiet figure to the lanes of a fast one.
fn calm(quiet: &Setting, fast: &Setting) -> f64 {
    let to_lane = |p: Coord<f64>| {
        fast.lane_segments()
            .map(|(lane, half)| (to_segment(p, *lane) - half).max(0.0))
            .fold(f64::INFINITY, f64::min)
    };
    let line = quiet
        .lane_segments()
        .flat_map(|(segment, _)| [segment.0, segment.1]);
    quiet
        .cells
        .iter()
        .copied()
        .chain(line)
        .map(to_lane)
        .fold(f64::INFINITY, f64::min)
}

/// Metres along a ray to where it meets a segment.
fn hit((from, to): Segment, (a, b): Segment) -> Option<f64> {
    let (way, along) = (to - from, b - a);
    let turn = cross(way, along);
    if turn == 0.0 {
        return None;
    }
    let t = cross(a - from, along) / turn;
    let s = cross(a - from, way) / turn;
    ((0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&s)).then(|| t * length(way))
}

/// A fixture's outline, and how far it reaches beyond it.
fn outline(shape: &Footprint) -> (Vec<Segment>, f64) {
    match shape {
        Footprint::Outline(polygon) => (edges(polygon), 0.0),
        Footprint::Beam(a, b) => (vec![(*a, *b)], 0.0),
        // Sixteen corners on a circle a little wider, so that none of the true one is
        // left out.
        Footprint::Disc { centre, radius } => {
            let step = std::f64::consts::PI / 8.0;
            let out = radius / libm::cos(step / 2.0);
            let corner = |at: u8| {
                let (sin, cos) = libm::sincos(step * f64::from(at));
                Coord {
                    x: centre.x + out * cos,
                    y: centre.y + out * sin,
                }
            };
            (
                (0..16).map(|at| (corner(at), corner(at + 1))).collect(),
                0.0,
            )
        }
    }
}
