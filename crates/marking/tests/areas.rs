//! Paint areas against another reckoning (`oracle/areas.py`: shapely, fontTools).
#![cfg(test)]

use geo::Area;
use ledger::Ledger;
use marking::{Ground, Look, Palette, family, glyph};
use serde_json::Value;

/// Share of an area. A polygon whose corners lie on an arc of radius r, 0.5 mm flat at most,
/// misses up to 0.5 mm x 4/3 / r of a disc: 1.5 % of a teller, 0.6 % of a pebble; a brook's
/// Chalk is all pebbles, tellers and ripples, other colours miss less.
const FLATTENED: f64 = 0.009;

fn oracle() -> Value {
    serde_json::from_str(include_str!("../oracle/areas.json")).expect("the oracle reads")
}

#[test]
fn colours_cover_what_shapely_says() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        &ledger,
    );
    let oracle = oracle();
    let families = oracle["families"].as_object().expect("families");
    assert_eq!(families.len(), 5);
    for (name, wanted) in families {
        let family = family(name).expect("a family");
        let figure = family
            .make(&family.defaults(), &look)
            .expect("defaults make a figure");
        let ours = figure.paint_area();
        let wanted = wanted.as_object().expect("colours");
        assert_eq!(ours.len(), wanted.len(), "{name}");
        for (colour, area) in ours {
            let theirs = wanted[colour.word()].as_f64().expect("an area");
            assert!(
                (area / theirs - 1.0).abs() < FLATTENED,
                "{name} {colour:?}: {area:.5}, not {theirs:.5}"
            );
            assert!(
                area < theirs * 1.001,
                "{name} {colour:?}: a polygon inside its arcs is no larger"
            );
        }
    }
}

/// The whole glyph: what is painted and what the ties took. Curves are flattened to 0.3 mm.
#[test]
fn glyphs_cover_what_the_font_says() {
    let oracle = oracle();
    let glyphs = oracle["glyphs"].as_object().expect("glyphs");
    assert_eq!(glyphs.len(), 36);
    for (character, wanted) in glyphs {
        let character = character.chars().next().expect("a character");
        // ties of next to nothing take next to nothing
        let ours: f64 = glyph(character, 0.15, 1e-7)
            .iter()
            .map(Area::unsigned_area)
            .sum();
        let theirs = wanted.as_f64().expect("an area");
        assert!(
            (ours / theirs - 1.0).abs() < 0.004,
            "{character}: {ours}, not {theirs}"
        );
    }
}
