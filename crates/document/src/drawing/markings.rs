//! Markings in plan, and one alone on its ground.

use geo::Polygon;
use marking::{Colour as Coat, Figure};

use super::figure::{Paint, paint, painted};
use super::hatch::Rings;
use super::mark;
use super::scene::{Colour, Dash, Item, Path, Scene, Stroke, WHITE, pen};
use super::taken::{Taken, weight};
use super::view::View;

/// A marking of the plan, in the yard's coordinates.
#[derive(Clone, Copy, Debug)]
pub struct Marked<'a> {
    /// Its number on the sheet, from 1.
    pub number: usize,
    /// Its name.
    pub name: &'a str,
    /// Its figure.
    pub figure: &'a Figure,
}

/// Ink of what stands behind the markings.
const QUIET: Colour = Colour(0x9AA0A6);

/// Sets all that is drawn so far back: the zones of a plan are known, the markings are new.
pub fn set_back(scene: &mut Scene) {
    for item in &mut scene.items {
        if let Item::Path(_, _, Some(stroke)) = item
            && stroke.width <= pen::ZONE
        {
            stroke.colour = QUIET;
        }
    }
}

/// Draws markings in their colours, their envelopes dashed.
pub fn draw(scene: &mut Scene, taken: &mut Taken, markings: &[Marked], view: &View) {
    for marked in markings {
        for ring in view.rings(&marked.figure.envelope) {
            scene.fill(Path::ring(&ring), WHITE);
            scene.stroke(Path::ring(&ring), Stroke::dashed(pen::ELLIPSE, Dash::Long));
            taken.ground(&vec![ring.clone()], weight::HARD);
            taken.ring(&ring, weight::HARD);
        }
        figure(scene, marked.figure, view, true, pen::HAIR);
    }
}

/// One figure: its paint, and its waiting spots with it.
pub fn figure(scene: &mut Scene, figure: &Figure, view: &View, in_colour: bool, outline: f64) {
    let pieces: Vec<(Rings, Paint)> = figure
        .paint
        .iter()
        .map(|piece| (rings(&piece.polygon, view), coat(piece.colour)))
        .collect();
    painted(scene, &pieces, in_colour, outline);
}

fn rings(polygon: &Polygon<f64>, view: &View) -> Rings {
    view.rings(polygon)
}

/// The paint of a colour.
pub fn coat(colour: Coat) -> Paint {
    match colour {
        Coat::Chalk => paint::CHALK,
        Coat::Straw => paint::STRAW,
        Coat::Harebell => paint::HAREBELL,
        Coat::Sedge => paint::SEDGE,
        Coat::Hip => paint::HIP,
        Coat::Madder => paint::MADDER,
        Coat::Sloe => paint::SLOE,
    }
}

/// The numbers beside the markings' names.
pub fn number(scene: &mut Scene, at: super::scene::Spot, number: usize, cap: f64) {
    mark::number(scene, at, &number.to_string(), cap);
}
