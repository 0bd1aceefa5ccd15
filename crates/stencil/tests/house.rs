//! Every family of the house and every glyph, in every material: no plate falls apart, every
//! painted shape comes through one plate or is told as taped, and ties keep the rules of
//! building.md, section 5 (common practice, no source).
#![cfg(test)]

mod common;

use std::collections::BTreeMap;

use common::{SETTING, cut, house, laid_at, moved, of, painted};
use geo::{Area, BooleanOps, BoundingRect, MultiPolygon, Polygon};
use marking::{ALPHABET, Colour, Figure, glyph};
use stencil::{Material, Motif, Numerals, Setting, Stencil, Tool, Weakness, Why, falls};

/// Metres: what a shared plate may lie off, ledger `stencil.same`, and rounding.
const SAME: f64 = 0.001 + 2e-6;

fn each_material() -> impl Iterator<Item = Setting> {
    Material::ALL.into_iter().map(|material| Setting {
        material,
        tool: material.tools()[0],
        ..SETTING
    })
}

fn shapes(openings: &[stencil::Opening]) -> Vec<Polygon<f64>> {
    openings.iter().map(|one| one.polygon.clone()).collect()
}

/// Rebuilds what is left of each plate after cutting.
fn hold(stencils: &[Stencil], what: &str) {
    for one in stencils {
        assert!(
            falls(&one.plate, &shapes(&one.openings)).is_empty(),
            "{what}: {}",
            one.id
        );
        for panel in &one.panels {
            let loose = falls(&panel.plate, &shapes(&panel.openings));
            assert!(loose.is_empty(), "{what}: {} loses {loose:?}", panel.id);
        }
        let told = one.weak.iter().any(|weak| weak.what == Weakness::Falls);
        assert!(!told, "{what}: {}", one.id);
    }
}

#[test]
fn no_plate_of_the_house_falls_apart() {
    let figures = house();
    let within = Setting {
        numerals: Numerals::InCell,
        ..SETTING
    };
    for setting in each_material().chain([within]) {
        let made = cut(&figures, &setting).value;
        assert!(made.stencils.len() > 50);
        hold(&made.stencils, setting.material.word());
    }
}

#[test]
fn no_glyph_falls_apart() {
    for setting in each_material() {
        // a numeral scales with its ties; the greatest keeps the joints of cells
        for (cap, tie) in [(0.12, 0.0128), (0.15, 0.016), (0.30, 0.020)] {
            let kept = || ('0'..='9').chain(ALPHABET);
            let glyphs: Vec<Figure> = kept()
                .map(|letter| {
                    let pieces = glyph(letter, cap, tie);
                    let paint = pieces.into_iter().map(|one| (Colour::Chalk, one));
                    painted(paint.collect())
                })
                .collect();
            let made = cut(&glyphs, &setting).value;
            hold(&made.stencils, setting.material.word());
            assert_eq!(made.stencils.len(), 37, "each is one motif of its own");
            // by what share of its height it is tied is part of what a glyph is known by
            let known = made.stencils.iter().zip(kept()).filter(|_| cap < 0.2);
            for (one, letter) in known {
                assert_eq!(one.motif, Motif::Glyph(letter.to_string()), "{}", one.id);
            }
        }
    }
}

/// The plate where each use lays it shows the paint of that use, but for the ties.
#[test]
fn every_shape_is_painted_once_where_it_belongs() {
    let figures = house();
    for numerals in [Numerals::Apart, Numerals::InCell] {
        let made = cut(
            &figures,
            &Setting {
                numerals,
                ..SETTING
            },
        )
        .value;
        let mut seen: BTreeMap<(usize, usize), u32> = BTreeMap::new();
        for taped in &made.taped {
            *seen.entry((taped.marking, taped.paint)).or_default() += 1;
        }
        for one in &made.stencils {
            for used in &one.uses {
                let figure = &figures[used.marking];
                for colour in &one.colours {
                    let wanted: Vec<Polygon<f64>> = used
                        .paint
                        .iter()
                        .map(|at| &figure.paint[*at])
                        .filter(|paint| paint.colour == *colour)
                        .map(|paint| paint.polygon.clone())
                        .collect();
                    let through: Vec<Polygon<f64>> = one
                        .openings
                        .iter()
                        .filter(|one| one.colour == *colour)
                        .map(|one| moved(&one.polygon, |at| laid_at(used, at)))
                        .collect();
                    near(
                        &through,
                        &wanted,
                        one,
                        &format!("{} of {}", one.id, figure.family),
                    );
                }
                for at in &used.paint {
                    *seen.entry((used.marking, *at)).or_default() += 1;
                }
            }
        }
        for (number, figure) in figures.iter().enumerate() {
            for paint in 0..figure.paint.len() {
                assert_eq!(
                    seen.get(&(number, paint)),
                    Some(&1),
                    "{} {paint}",
                    figure.family
                );
            }
        }
    }
}

fn near(through: &[Polygon<f64>], wanted: &[Polygon<f64>], one: &Stencil, what: &str) {
    use geo::Buffer;
    let (through, wanted) = (
        MultiPolygon(through.to_vec()),
        MultiPolygon(wanted.to_vec()),
    );
    let beyond = through.difference(&wanted.buffer(SAME)).unsigned_area();
    assert!(beyond < 1e-9, "{what}: {beyond} m2 beyond the paint");
    let missed = wanted.difference(&through.buffer(SAME)).unsigned_area();
    let tied: f64 = one.ties.iter().map(|tie| tie.width * tie.length).sum();
    assert!(
        missed <= tied + 1e-9,
        "{what}: {missed} m2 missed, {tied} under ties"
    );
}

/// Which shapes get a plate.
#[test]
fn strokes_and_big_solids_are_left_to_tape() {
    let figures = house();
    let made = cut(&figures, &SETTING).value;
    for taped in &made.taped {
        let shape = &figures[taped.marking].paint[taped.paint].polygon;
        let size = shape.bounding_rect().expect("it has corners");
        let long = libm::hypot(size.width(), size.height());
        match taped.why {
            // a labyrinth's bend comes back on itself: its box is shorter than it
            Why::Stroke => assert!(taped.outline > 1.2 && long > 0.3, "{taped:?}"),
            Why::Solid | Why::Large => panic!("the house has none: {taped:?}"),
        }
    }
    for (family, stencilled, strokes) in [
        ("court", 42, 0),
        ("brook", 18, 6),
        ("letter-court", 74, 0),
        ("spiral-lane", 11, 23),
    ] {
        let figure = of(family);
        let made = cut(std::slice::from_ref(&figure), &SETTING).value;
        let through: usize = made
            .stencils
            .iter()
            .flat_map(|one| &one.uses)
            .map(|used| used.paint.len())
            .sum();
        assert_eq!(
            [through, made.taped.len()],
            [stencilled, strokes],
            "{family}"
        );
    }
}

/// A court's cells share plates by colour and numerals have their own; in their cells each
/// takes a plate.
#[test]
fn cells_share_a_plate() {
    let court = of("court");
    let apart = cut(std::slice::from_ref(&court), &SETTING).value;
    let uses = |motif: &str| -> Vec<usize> {
        let own = apart
            .stencils
            .iter()
            .filter(|one| one.motif.word() == motif);
        own.map(|one| one.uses.len()).collect()
    };
    assert_eq!(uses("cell"), [4, 4, 1], "four plain, four bright, one home");
    assert_eq!(uses("glyph"), [1; 8], "1 to 8");
    assert_eq!(uses("disc"), [3]);
    let within = Setting {
        numerals: Numerals::InCell,
        ..SETTING
    };
    let within = cut(std::slice::from_ref(&court), &within).value;
    let glyphs = within
        .stencils
        .iter()
        .filter(|one| matches!(one.motif, Motif::Glyph(_)));
    assert_eq!(glyphs.count(), 0);
    assert!(
        within
            .stencils
            .iter()
            .filter(|one| one.uses.len() == 1)
            .count()
            >= 8
    );
}

#[test]
fn motifs_are_told_by_their_outline() {
    for (family, motifs) in [
        (
            "brook",
            vec!["half-moon", "disc", "stroke", "stroke", "disc"],
        ),
        (
            "leap-prints",
            vec!["half-moon", "chevron", "ring", "print", "print", "disc"],
        ),
        ("spiral-lane", vec!["half-moon", "chevron", "disc", "disc"]),
    ] {
        let made = cut(&[of(family)], &SETTING).value;
        let ours: Vec<&str> = made.stencils.iter().map(|one| one.motif.word()).collect();
        let wanted: Vec<&str> = motifs;
        assert_eq!(ours, wanted, "{family}");
    }
    let made = cut(&[of("number-line")], &SETTING).value;
    let glyphs = made.stencils.iter().map(|one| one.motif.slug());
    let glyphs: Vec<String> = glyphs.filter(|one| one.starts_with("glyph")).collect();
    assert!(
        glyphs.contains(&"glyph-10".to_owned()) || glyphs.len() >= 10,
        "{glyphs:?}"
    );
}

/// Where figures lie and how they are turned changes no plate.
#[test]
fn turned_figures_share_the_same_plates() {
    use geo::Coord;
    let figures = house();
    let still = cut(&figures, &SETTING).value;
    let placed: Vec<(Figure, f64)> = figures
        .iter()
        .enumerate()
        .map(|(number, figure)| {
            let turn = 0.7 * number as f64 - 3.0;
            let at = Coord {
                x: number as f64,
                y: 2.5,
            };
            (figure.placed(at, turn, false), turn)
        })
        .collect();
    let laid: Vec<stencil::Laid> = placed
        .iter()
        .map(|(figure, turn)| stencil::Laid {
            figure,
            turn: *turn,
        })
        .collect();
    let turned = stencil::stencils(&laid, &SETTING, &common::ledger()).value;
    assert_eq!(turned.stencils.len(), still.stencils.len());
    for (a, b) in turned.stencils.iter().zip(&still.stencils) {
        assert_eq!(
            (&a.id, &a.motif, &a.colours, a.uses.len()),
            (&b.id, &b.motif, &b.colours, b.uses.len())
        );
        let area = |one: &Stencil| -> f64 {
            one.openings
                .iter()
                .map(|one| one.polygon.unsigned_area())
                .sum()
        };
        // a tie may stand a step off where both places are as good
        assert!(
            (area(a) - area(b)).abs() < 2e-4,
            "{}: {} and {}",
            a.id,
            area(a),
            area(b)
        );
    }
    assert_eq!(turned.taped.len(), still.taped.len());
}

/// The same figures give the same plates to the last bit.
#[test]
fn the_same_question_has_the_same_answer() {
    let figures = house();
    assert_eq!(cut(&figures, &SETTING), cut(&figures, &SETTING));
}

#[test]
fn a_tool_that_does_not_suit_is_told() {
    let odd = Setting {
        material: Material::Fluted,
        tool: Tool::Laser,
        ..SETTING
    };
    let notes = cut(&[of("brook")], &odd).notes;
    assert!(
        notes
            .iter()
            .any(|note| note.what.key == "stencil-tool-unfit")
    );
    assert!(cut(&[of("brook")], &SETTING).notes.is_empty());
    // ties of 12 mm are what solid polyethylene wants
    assert!(cut(&[of("court")], &SETTING).notes.is_empty());
}
