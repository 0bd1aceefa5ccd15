//! What the ground is made of: may it be painted?
//!
//! Later surfaces lie over earlier ones. Where none is given the ground is taken for
//! sound asphalt, and that is said.

use geo::{Area, Coord, Intersects, MultiPolygon, Polygon};
use ledger::{Key, Ledger};
use note::{Fact, Note, msg};

use crate::body::{Body, Part, part};
use crate::figures::CURE;
use crate::grid::Grid;
use crate::patch::Patch;
use crate::result::Why;
use crate::yard::{Condition, RemarkKind, Surface, SurfaceKind, Yard};

/// Whether a surface takes paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paint {
    /// Yes.
    Yes,
    /// Yes, but its joints move and print through.
    WithCare,
    /// After a test: old paint may hold lead.
    TestFirst,
    /// After asking the sealer's maker.
    AskMaker,
    /// Not unless the surfacing's maker agrees in writing.
    UnlessMakerAgrees,
    /// No.
    No,
}

/// The rule of each kind. Source: building.md 1.4; paving common practice.
pub fn paint(kind: SurfaceKind) -> Paint {
    use SurfaceKind::*;
    match kind {
        Asphalt | Concrete => Paint::Yes,
        Paving => Paint::WithCare,
        OldPaint => Paint::TestFirst,
        Sealer => Paint::AskMaker,
        Rubber | Mulch | Carpet => Paint::UnlessMakerAgrees,
        LooseFill | Sand | Grass | Soil | Wood | Steel | Tactile => Paint::No,
    }
}

/// The kind's word in the survey file; the catalogue turns it into the language.
pub fn word(kind: SurfaceKind) -> &'static str {
    use SurfaceKind::*;
    match kind {
        Asphalt => "asphalt",
        Concrete => "concrete",
        Paving => "paving",
        OldPaint => "old-paint",
        Sealer => "sealer",
        Rubber => "rubber",
        Mulch => "mulch",
        Carpet => "carpet",
        LooseFill => "loose-fill",
        Sand => "sand",
        Grass => "grass",
        Soil => "soil",
        Wood => "wood",
        Steel => "steel",
        Tactile => "tactile",
    }
}

/// Patches of surfaces that must not, or not yet, be painted.
pub fn patches(grid: &Grid, yard: &Yard, ledger: &Ledger, notes: &mut Vec<Note>) -> Vec<Patch> {
    let outlines: Vec<Polygon<f64>> = yard.surfaces.iter().map(|s| s.outline.clone()).collect();
    let bare = grid.minus([&yard.boundary], &outlines);
    assumed(&bare, outlines.is_empty(), notes);
    let mut judged = Vec::new();
    for (i, surface) in yard.surfaces.iter().enumerate() {
        let seen = grid.minus([&outlines[i]], &outlines[i + 1..]);
        let seen = grid.shared(&seen.0, [&yard.boundary]).unsigned_area() >= SPECK;
        judged.push(if seen {
            judge(surface, ledger, notes)
        } else {
            Judged::Paintable
        });
    }
    let mut patches = Vec::new();
    for (i, surface) in yard.surfaces.iter().enumerate() {
        if let Judged::Blocked(rule) = judged[i] {
            // Where two blocked surfaces meet they may overlap: no hair is left between.
            let over = (i + 1..outlines.len()).filter(|&j| judged[j] == Judged::Paintable);
            let shape = grid.minus([&outlines[i]], over.map(|j| &outlines[j]));
            patches.push(Patch::new(shape.0, Why::Surface, word(surface.is), rule));
        }
    }
    patches
}

/// Whether a surface is painted; if not, the figure that says so, where one does.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Judged {
    Paintable,
    Blocked(Option<Key>),
}

/// Square metres of a surface that nobody would speak of.
const SPECK: f64 = 0.01;

fn assumed(bare: &MultiPolygon<f64>, all: bool, notes: &mut Vec<Note>) {
    let area = bare.unsigned_area();
    if area >= SPECK {
        let key = if all {
            "surface-assumed"
        } else {
            "surface-assumed-rest"
        };
        let what = msg!(key, area = Fact::Area(area));
        notes.push(Note::advice(None, what).mend(msg!("surface-tell")));
    }
}

/// Judges a surface and says what a painter should know of it.
fn judge(surface: &Surface, ledger: &Ledger, notes: &mut Vec<Note>) -> Judged {
    let warn = |key| Note::warning(surface.at.clone(), msg!(key, surface = word(surface.is)));
    match paint(surface.is) {
        Paint::No => return Judged::Blocked(None),
        Paint::UnlessMakerAgrees => {
            let what = msg!("surface-unless-maker-agrees", surface = word(surface.is));
            notes.push(Note::advice(surface.at.clone(), what));
            return Judged::Blocked(None);
        }
        Paint::Yes => {}
        Paint::WithCare => notes.push(warn("surface-with-care").mend(msg!("surface-mind-joints"))),
        Paint::TestFirst => notes.push(warn("surface-test-first").mend(msg!("surface-test-lead"))),
        Paint::AskMaker => notes.push(warn("surface-ask-maker").mend(msg!("surface-try-patch"))),
    }
    let cure = ledger.number(CURE);
    let days = surface.age_days.filter(|_| paint(surface.is) == Paint::Yes);
    if let Some(days) = days.filter(|&days| (days as f64) < cure) {
        let left = (cure - days as f64).ceil().clamp(0.0, 1e9) as u64;
        notes.push(
            Note::warning(
                surface.at.clone(),
                msg!("surface-too-young", surface = word(surface.is), left = left),
            )
            .expected(msg!("surface-cured", days = cure as u64))
            .mend(msg!("surface-wait", left = left)),
        );
        return Judged::Blocked(Some(CURE));
    }
    match surface.condition {
        Some(Condition::Spalled) => {
            notes.push(warn("surface-spalled").mend(msg!("surface-repair")));
            Judged::Blocked(None)
        }
        Some(Condition::Cracked) => {
            notes.push(warn("surface-cracked").mend(msg!("surface-fill-cracks")));
            Judged::Paintable
        }
        Some(Condition::Sound | Condition::Worn) | None => Judged::Paintable,
    }
}

/// Equipment that stands on hard ground, as far as the survey says so.
pub fn under_equipment(yard: &Yard, bodies: &[Body], notes: &mut Vec<Note>) {
    for body in bodies
        .iter()
        .filter(|body| part(body.fixture.is) == Part::Equipment)
    {
        let Some(surface) = surface_at(yard, body.middle()) else {
            continue;
        };
        let hard = matches!(
            surface.is,
            SurfaceKind::Asphalt
                | SurfaceKind::Concrete
                | SurfaceKind::Paving
                | SurfaceKind::OldPaint
                | SurfaceKind::Sealer
        );
        if hard {
            notes.push(
                Note::warning(
                    body.fixture.at.clone(),
                    msg!(
                        "equipment-on-hard-ground",
                        fixture = &body.fixture.name,
                        surface = word(surface.is)
                    ),
                )
                .also(surface.at.clone())
                .mend(msg!("equipment-ask-inspector")),
            );
        }
    }
}

/// The uppermost surface at a point, if one is given.
fn surface_at(yard: &Yard, at: Coord<f64>) -> Option<&Surface> {
    yard.surfaces
        .iter()
        .rev()
        .find(|surface| surface.outline.intersects(&at))
}

/// What the surveyor noticed: a puddle, a trike path and a slope stay clear, old paint
/// warns.
pub fn remarks(yard: &Yard, notes: &mut Vec<Note>) -> Vec<Patch> {
    let mut patches = Vec::new();
    for remark in &yard.remarks {
        let of = match remark.is {
            RemarkKind::Puddle => "puddle",
            RemarkKind::TrikePath => "trike-path",
            RemarkKind::Slope => "slope",
            RemarkKind::OldPaint => {
                notes.push(
                    Note::warning(remark.at.clone(), msg!("remark-old-paint"))
                        .mend(msg!("surface-test-lead")),
                );
                continue;
            }
        };
        patches.push(Patch::new(
            vec![remark.outline.clone()],
            Why::Remark,
            of,
            None,
        ));
    }
    patches
}
