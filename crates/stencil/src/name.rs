//! What a motif shows, told by its outline: paint carries no name.

use geo::{Area, ConvexHull, Coord, MultiPolygon, Polygon};
use marking::{Colour, glyph};

use crate::material::Rules;
use crate::motif::closed;
use crate::result::Motif;
use crate::same::Form;
use crate::shape::{bounds, moved, outline, strip};

/// The kept glyphs, and the two-figure numbers that lines are numbered with, drawn to one
/// area.
pub(crate) struct Glyphs(Vec<(String, Form)>);

/// Numbers of two figures that number lines come to.
const NUMBERS: std::ops::RangeInclusive<u32> = 10..=30;

impl Glyphs {
    pub(crate) fn of(rules: &Rules) -> Glyphs {
        let [cap, tie] = rules.glyph;
        let one = |character: char| glyph(character, cap, tie);
        let mut kept = Vec::new();
        for character in ('0'..='9').chain(marking::ALPHABET) {
            kept.extend(normal(&one(character)).map(|form| (character.to_string(), form)));
        }
        for number in NUMBERS {
            let text = number.to_string();
            // side by side with a joint between them, as cells are numbered
            let joint = rules.join / 1.1;
            let mut all = Vec::new();
            let mut left = 0.0;
            for character in text.chars() {
                let pieces = one(character);
                let half = bounds(&pieces).map_or(0.0, |room| room.max().x.max(-room.min().x));
                all.extend(pieces.iter().map(|piece| {
                    moved(piece, |at| {
                        at + Coord {
                            x: left + half,
                            y: 0.0,
                        }
                    })
                }));
                left += 2.0 * half + joint;
            }
            kept.extend(normal(&all).map(|form| (text, form)));
        }
        Glyphs(kept)
    }

    fn read(&self, shapes: &[Polygon<f64>]) -> Option<String> {
        /// Of the root of a glyph's area: 0.9 mm at a cap height of 15 cm. Bows have flat
        /// sides, 0.3 mm off, whatever the height.
        const LIKE: f64 = 0.010;
        let form = normal(shapes)?;
        let found = self
            .0
            .iter()
            .find(|(_, glyph)| glyph.onto(&form, false, LIKE).is_some());
        found.map(|(text, _)| text.clone())
    }
}

/// Shapes drawn to an area of 1.
fn normal(shapes: &[Polygon<f64>]) -> Option<Form> {
    let area: f64 = shapes.iter().map(Area::unsigned_area).sum();
    let scale = 1.0 / area.sqrt();
    let inked: Vec<(Colour, Polygon<f64>)> = shapes
        .iter()
        .map(|shape| (Colour::Chalk, moved(shape, |at| at * scale)))
        .collect();
    Form::of(&inked)
}

/// What shapes of one motif show.
pub(crate) fn motif(shapes: &[Polygon<f64>], glyphs: &Glyphs, rules: &Rules) -> Motif {
    if let Some(text) = glyphs.read(shapes) {
        return Motif::Glyph(text);
    }
    let whole = closed(shapes, rules.join);
    let [shape] = whole.0.as_slice() else {
        return Motif::Shape;
    };
    let hull = shape.convex_hull();
    let convex = Polygon::new(shape.exterior().clone(), Vec::new()).unsigned_area()
        > 0.985 * hull.unsigned_area();
    // a polygon of ten sides has 0.967 of its circle by this measure, a square 0.785
    let edge = outline(&hull);
    let round = hull.unsigned_area() > 0.99 * edge * edge / (4.0 * std::f64::consts::PI);
    if !shape.interiors().is_empty() {
        return if round { Motif::Ring } else { Motif::Cell };
    }
    match shapes {
        [_] if round => Motif::Disc,
        [one] => {
            let [long, broad] = strip(one);
            if convex && is_slab(one) {
                Motif::Stroke
            } else if convex && has_flat(one) {
                Motif::HalfMoon
            } else if !convex && long > 3.0 * broad {
                Motif::Chevron
            } else {
                Motif::Shape
            }
        }
        [_, _] => Motif::Print,
        _ => Motif::Shape,
    }
}

/// Whether a shape fills its snug rectangle but for round ends.
fn is_slab(shape: &Polygon<f64>) -> bool {
    let corners: Vec<Coord<f64>> = shape.exterior().coords().copied().collect();
    crate::shape::snug(&corners).is_some_and(|(_, area)| shape.unsigned_area() > 0.88 * area)
}

/// Whether one straight side makes more than a quarter of the outline.
fn has_flat(shape: &Polygon<f64>) -> bool {
    let longest = shape
        .exterior()
        .lines()
        .map(|side| libm::hypot(side.dx(), side.dy()))
        .fold(0.0, f64::max);
    longest > 0.25 * outline(shape)
}

/// Shapes of a motif as one, for its box.
pub(crate) fn corners(shapes: &[Polygon<f64>]) -> Vec<Coord<f64>> {
    MultiPolygon(shapes.to_vec())
        .iter()
        .flat_map(|shape| shape.exterior().coords().copied().collect::<Vec<_>>())
        .collect()
}
