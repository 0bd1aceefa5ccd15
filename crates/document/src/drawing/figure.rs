//! Painted figures: in their colours, or in black and white by hatch, never by tone.

use super::hatch::{Hatch, Rings, hatch};
use super::scene::{Colour, INK, Path, Scene, Stroke, WHITE};

/// How a paint is told in black and white.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cover {
    /// Blank, outlined.
    Blank,
    /// Hatched.
    Hatched(Hatch),
    /// Solid.
    Solid,
}

/// A paint of the house (look, section 2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Paint {
    /// On a coloured sheet.
    pub colour: Colour,
    /// In black and white.
    pub cover: Cover,
}

/// The paints.
#[allow(missing_docs)]
pub mod paint {
    use super::{Colour, Cover, Hatch, Paint};

    pub const CHALK: Paint = Paint {
        colour: Colour(0xF4F0E4),
        cover: Cover::Blank,
    };
    pub const STRAW: Paint = Paint {
        colour: Colour(0xF6D964),
        cover: Cover::Hatched(Hatch::Dots),
    };
    pub const HAREBELL: Paint = Paint {
        colour: Colour(0xB4C3F0),
        cover: Cover::Hatched(Hatch::Level),
    };
    pub const SEDGE: Paint = Paint {
        colour: Colour(0x49C0AC),
        cover: Cover::Hatched(Hatch::Rising),
    };
    pub const HIP: Paint = Paint {
        colour: Colour(0xEE967A),
        cover: Cover::Hatched(Hatch::Crossed),
    };
    pub const MADDER: Paint = Paint {
        colour: Colour(0x7A2233),
        cover: Cover::Hatched(Hatch::Dense),
    };
    pub const SLOE: Paint = Paint {
        colour: Colour(0x232B5E),
        cover: Cover::Solid,
    };
}

/// Draws painted polygons in their order; `outline` is the width of their edge in mm.
pub fn painted(scene: &mut Scene, pieces: &[(Rings, Paint)], in_colour: bool, outline: f64) {
    for (rings, paint) in pieces {
        let mut path = Path::default();
        for ring in rings {
            path.add_ring(ring);
        }
        let fill = match (in_colour, paint.cover) {
            (true, _) => paint.colour,
            (false, Cover::Solid) => INK,
            (false, _) => WHITE,
        };
        scene.shape(path, fill, Stroke::solid(outline));
        if let (false, Cover::Hatched(kind)) = (in_colour, paint.cover) {
            hatch(scene, kind, std::slice::from_ref(rings), &[]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::scene::Item;
    use super::*;

    /// No two paints may look alike once printed without colour.
    #[test]
    fn every_paint_has_its_own_cover() {
        use super::paint::*;
        let all = [CHALK, STRAW, HAREBELL, SEDGE, HIP, MADDER, SLOE];
        for (number, one) in all.iter().enumerate() {
            assert!(
                all.iter()
                    .skip(number + 1)
                    .all(|other| other.cover != one.cover)
            );
        }
        let square: Rings = vec![vec![[5.0, 5.0], [25.0, 5.0], [25.0, 25.0], [5.0, 25.0]]];
        for one in all {
            let mut scene = Scene::new(30.0, 30.0);
            painted(&mut scene, &[(square.clone(), one)], false, 0.13);
            for item in &scene.items {
                let Item::Path(_, fill, stroke) = item else {
                    continue;
                };
                assert!(fill.is_none_or(|colour| colour == INK || colour == WHITE));
                assert!(stroke.is_none_or(|stroke| stroke.colour == INK));
            }
        }
    }
}
