//! Whether equipment stands too near to other equipment, to things that stand, to edges.
//!
//! Nothing is blocked here: a person decides what moves.

use geo::{Area, BoundingRect, Coord, Intersects, LineString, Polygon, Rect};
use ledger::Ledger;
use note::{Fact, Note, msg};

use crate::Standard;
use crate::body::{Body, Part, part};
use crate::figures::{
    PAIR_HIGH_GAP, PAIR_LOW_HEIGHT, PARALLEL, STATIONARY, STRUCTURE_GAP, TOGETHER,
};
use crate::grid::Grid;
use crate::margins;
use crate::shapes;
use crate::yard::{EdgeKind, FixtureKind, More, Yard};
use crate::zones::Zone;

/// A piece of equipment with its zones.
pub struct Equipment<'a> {
    pub body: &'a Body<'a>,
    pub zones: Vec<Zone>,
}

/// Square metres that zones may share before anyone is told: the tapes cannot tell less.
const TOUCH: f64 = 0.01;

impl Equipment<'_> {
    fn pieces(&self, of: impl Fn(&Zone) -> bool) -> Vec<Polygon<f64>> {
        self.zones
            .iter()
            .filter(|zone| of(zone))
            .flat_map(|zone| zone.shape.clone())
            .collect()
    }

    /// How low the play surface is, if it is known.
    fn height(&self) -> f64 {
        self.body.fixture.height.unwrap_or(f64::INFINITY)
    }

    /// The way down a slide.
    fn exit_way(&self) -> Option<Coord<f64>> {
        let More::Slide { exit: Some([p, q]) } = self.body.fixture.more else {
            return None;
        };
        let side = shapes::left(shapes::direction(p, q)?);
        let inward = shapes::dot(side, self.body.middle() - p) > 0.0;
        Some(if inward { -side } else { side })
    }

    fn moves(&self) -> bool {
        matches!(
            self.body.fixture.is,
            FixtureKind::Swing | FixtureKind::TyreSwing
        )
    }
}

/// Tells of every pair that is too near: zones that are never shared, and the 6 and 9 ft
/// rule between what stands still.
pub fn pairs(
    grid: &Grid,
    all: &[Equipment],
    standard: Standard,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) {
    for (i, one) in all.iter().enumerate() {
        for other in &all[i + 1..] {
            let gap = one.body.distance(other.body);
            let together = gap < ledger.number(TOGETHER);
            if let Some(area) = forbidden(grid, one, other, together, ledger) {
                notes.push(overlap(one, other, area));
            } else if standard == Standard::UsHandbook && !together {
                notes.extend(too_near(one, other, gap, ledger));
            }
        }
    }
}

/// Square metres of a zone that is never shared and yet is.
fn forbidden(
    grid: &Grid,
    one: &Equipment,
    other: &Equipment,
    together: bool,
    ledger: &Ledger,
) -> Option<f64> {
    if let Some((a, b)) = one.exit_way().zip(other.exit_way()) {
        let most = ledger.number(PARALLEL).to_radians();
        if shapes::dot(a, b) > libm::cos(most) {
            return None;
        }
    }
    // One structure shares its own zones; only its moving paths must not cross.
    let shared = |a: &Equipment, b: &Equipment| {
        let alone = a.pieces(|zone| zone.alone);
        let theirs = b.pieces(|zone| zone.alone || !together);
        if !near(&alone, &theirs) {
            return 0.0;
        }
        grid.shared(&alone, &theirs).unsigned_area()
    };
    let area = shared(one, other).max(shared(other, one));
    (area > TOUCH).then_some(area)
}

/// Whether the boxes round two groups meet.
fn near(one: &[Polygon<f64>], other: &[Polygon<f64>]) -> bool {
    let boxes = |of: &[Polygon<f64>]| -> Vec<Rect<f64>> {
        of.iter().filter_map(BoundingRect::bounding_rect).collect()
    };
    let others = boxes(other);
    boxes(one)
        .iter()
        .any(|one| others.iter().any(|other| one.intersects(other)))
}

fn overlap(one: &Equipment, other: &Equipment, area: f64) -> Note {
    let (first, second) = (one.body.fixture, other.body.fixture);
    Note::warning(
        first.at.clone(),
        msg!(
            "zones-overlap",
            first = &first.name,
            second = &second.name,
            area = Fact::Area(area)
        ),
    )
    .also(second.at.clone())
    .expected(msg!("zones-never-shared"))
    .mend(msg!("zones-move-apart"))
}

/// 6 ft apart if both play surfaces are at most 30 in high, else 9 ft. Where a height is
/// not known, 9 ft.
fn too_near(one: &Equipment, other: &Equipment, gap: f64, ledger: &Ledger) -> Option<Note> {
    if one.moves() || other.moves() {
        return None;
    }
    let low = ledger.number(PAIR_LOW_HEIGHT);
    let both_low = one.height() <= low && other.height() <= low;
    let wanted = ledger.number(if both_low { STATIONARY } else { PAIR_HIGH_GAP });
    let (first, second) = (one.body.fixture, other.body.fixture);
    (gap < wanted - shapes::OUTSIDE).then(|| {
        Note::warning(
            first.at.clone(),
            msg!(
                "equipment-too-near",
                first = &first.name,
                second = &second.name,
                distance = Fact::Length(gap)
            ),
        )
        .also(second.at.clone())
        .expected(msg!("equipment-apart", wanted = Fact::Length(wanted)))
        .mend(msg!("zones-move-apart"))
    })
}

/// Tells of things that stand in a clear zone, and of edges that cut one off.
pub fn obstructions(
    grid: &Grid,
    all: &[Equipment],
    bodies: &[Body],
    edges: &[(EdgeKind, LineString<f64>)],
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) {
    let gap = ledger.number(STRUCTURE_GAP);
    let standing: Vec<_> = bodies
        .iter()
        .filter(|body| part(body.fixture.is) == Part::Standing)
        .filter(|body| body.fixture.is != FixtureKind::Sandpit)
        .map(|body| (body, body.footprint()))
        .collect();
    for equipment in all {
        let zone = equipment.pieces(|_| true);
        for (thing, footprint) in &standing {
            if near(&zone, footprint) && grid.shared(&zone, footprint).unsigned_area() > TOUCH {
                let distance = equipment.body.distance(thing);
                notes.push(obstructed(equipment, &thing.fixture.name, distance, gap));
            }
        }
        let mut told = Vec::new();
        for (kind, line) in edges.iter().filter(|(kind, _)| *kind != EdgeKind::Open) {
            if !told.contains(kind) && zone.iter().any(|piece| enters(piece, line)) {
                told.push(*kind);
                notes.push(at_edge(
                    equipment,
                    *kind,
                    equipment.body.distance_to(line),
                    gap,
                ));
            }
        }
    }
}

/// Whether a line comes into a piece, by more than arcs and tapes explain.
fn enters(piece: &Polygon<f64>, line: &LineString<f64>) -> bool {
    const DEEP: f64 = 0.02;
    let box_meets = piece
        .bounding_rect()
        .zip(line.bounding_rect())
        .is_some_and(|(one, other)| one.intersects(&other));
    box_meets && line.intersects(&shrunk(piece, DEEP))
}

/// A convex piece drawn towards its middle by about `by` metres.
fn shrunk(piece: &Polygon<f64>, by: f64) -> Polygon<f64> {
    use geo::{Centroid, MapCoords};
    let Some(middle) = piece.centroid().map(|point| point.0) else {
        return piece.clone();
    };
    piece.map_coords(|at| {
        let out = at - middle;
        let long = shapes::length(out);
        if long <= by {
            middle
        } else {
            middle + out * ((long - by) / long)
        }
    })
}

fn obstructed(equipment: &Equipment, thing: &str, distance: f64, gap: f64) -> Note {
    let fixture = equipment.body.fixture;
    Note::warning(
        fixture.at.clone(),
        msg!(
            "zone-obstructed",
            fixture = &fixture.name,
            thing = thing,
            distance = Fact::Length(distance)
        ),
    )
    .expected(msg!("zone-clear", gap = Fact::Length(gap)))
    .mend(msg!("zones-move-apart"))
}

fn at_edge(equipment: &Equipment, kind: EdgeKind, distance: f64, gap: f64) -> Note {
    let fixture = equipment.body.fixture;
    Note::warning(
        fixture.at.clone(),
        msg!(
            "zone-cut-by-edge",
            fixture = &fixture.name,
            edge = margins::word(kind),
            distance = Fact::Length(distance)
        ),
    )
    .expected(msg!("zone-clear", gap = Fact::Length(gap)))
    .mend(msg!("zones-move-apart"))
}

/// Tells of what stands wholly outside the yard: most likely a slip of the tape.
pub fn outside(yard: &Yard, bodies: &[Body], notes: &mut Vec<Note>) {
    for body in bodies {
        let off = body.distance_to_ground(&yard.boundary);
        if off > TAPED {
            let name = &body.fixture.name;
            let what = msg!("fixture-outside-yard", name = name, off = Fact::Length(off));
            notes.push(
                Note::warning(body.fixture.at.clone(), what).mend(msg!("fixture-check-points")),
            );
        }
    }
}

/// Metres that a thing on the rim may be taped outside it.
const TAPED: f64 = 0.05;
