//! A drawn figure keeps to what every family promises, and to what it is drawn as.
#![cfg(test)]

use std::sync::Arc;

use drawn::Drawn;
use geo::{Area, BooleanOps, Contains, Validation, coord};
use ledger::Ledger;
use marking::{Colour, Family, Figure, Ground, LaneKind, Look, Outline, Palette, Takes};

const CATERPILLAR: &str = include_str!("figures/caterpillar.svg");
const POND: &str = include_str!("figures/lily-pond.svg");
const WIND: &str = include_str!("figures/wind.svg");
const SHAPES: &str = include_str!("figures/shapes.svg");

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

fn look() -> Look {
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    Look::of(palette, &ledger())
}

fn read(text: &str) -> Drawn {
    let file: Arc<str> = "f.svg".into();
    let read = drawn::read("own", &file, text, Ground::Asphalt, &ledger());
    read.value.unwrap_or_else(|| panic!("{:?}", read.notes))
}

fn made(drawn: &Drawn, lengths: &[f64]) -> Figure {
    drawn.make(lengths, &look()).expect("a figure")
}

fn as_drawn(text: &str) -> Figure {
    let drawn = read(text);
    made(&drawn, &drawn.defaults())
}

/// The three examples are good drawings: nothing is to be mended in them.
#[test]
fn the_examples_are_read_without_a_note() {
    for text in [CATERPILLAR, POND, WIND] {
        let file: Arc<str> = "f.svg".into();
        let read = drawn::read("own", &file, text, Ground::Asphalt, &ledger());
        assert!(
            read.value.is_some() && read.notes.is_empty(),
            "{:?}",
            read.notes
        );
    }
}

#[test]
fn no_two_paints_overlap_and_all_lies_inside_at_every_length() {
    for text in [CATERPILLAR, POND, WIND] {
        let drawn = read(text);
        let spec = drawn.lengths()[0];
        for free in [spec.least, spec.default, spec.most] {
            let figure = made(&drawn, &[free]);
            for (index, paint) in figure.paint.iter().enumerate() {
                let valid = paint.polygon.check_validation();
                assert!(
                    valid.is_ok(),
                    "{free}: {valid:?} {:?}",
                    paint.polygon.exterior()
                );
                let out = paint.polygon.difference(&figure.envelope).unsigned_area();
                assert!(out < 1e-6, "{out}");
                for other in figure.paint.iter().skip(index + 1) {
                    let both = paint.polygon.intersection(&other.polygon).unsigned_area();
                    // rounding to 1e-6 m along edges that two paints share
                    assert!(both < 2e-6, "{both}");
                }
            }
            for cell in &figure.cells {
                assert!(figure.envelope.contains(&cell.centre));
            }
            for spot in &figure.wait {
                assert!(figure.envelope.contains(spot));
            }
        }
    }
}

#[test]
fn names_numbers_and_links_become_cells() {
    let figure = as_drawn(CATERPILLAR);
    let ids: Vec<&str> = figure.cells.iter().map(|cell| cell.id.as_str()).collect();
    assert_eq!(ids, ["start", "1", "2", "3", "4", "5", "6", "7", "head"]);
    for (at, cell) in figure.cells.iter().enumerate() {
        let last = at + 1 == figure.cells.len();
        assert_eq!(cell.next, Some(if last { vec![] } else { vec![at + 1] }));
        assert_eq!((cell.start, cell.end), (at == 0, last));
    }
    assert_eq!(figure.cells[4].takes, Takes::Both);
    assert!(
        matches!(figure.cells[1].outline, Outline::Disc { radius } if (radius - 0.1775).abs() < 2e-4)
    );
    assert!(matches!(figure.cells[4].outline, Outline::Polygon(_)));
    assert_eq!(figure.wait.len(), 3);
    let pond = as_drawn(POND);
    assert!(pond.cells.iter().all(|cell| cell.next.is_none()));
    let home = pond.cells.iter().find(|cell| cell.start).expect("a start");
    assert_eq!(home.centre, coord! { x: 0.0, y: 0.0 });
    // 560 mm at 20 degrees clockwise on the page: below the middle, y up
    let leaf = pond
        .cells
        .iter()
        .find(|cell| cell.id == "a")
        .expect("a leaf");
    let (sin, cos) = libm::sincos(20f64.to_radians());
    assert!((leaf.centre.x - 0.56 * cos).abs() < 1e-5 && (leaf.centre.y + 0.56 * sin).abs() < 1e-5);
}

#[test]
fn a_lane_is_straights_and_bends_in_metres() {
    let figure = as_drawn(WIND);
    let [lane] = figure.lanes.as_slice() else {
        panic!("one lane")
    };
    assert_eq!((lane.kind, lane.width), (LaneKind::Corridor, 1.0));
    let radii: Vec<Option<f64>> = lane.pieces.iter().map(|piece| piece.radius).collect();
    assert_eq!(radii, [None, Some(1.5), Some(1.5), None]);
    let long: f64 = lane.pieces.iter().map(|piece| piece.length).sum();
    assert!((long - (1.2 + std::f64::consts::PI)).abs() < 1e-3, "{long}");
}

/// Cells move apart and keep their size; what is painted at them goes along.
#[test]
fn a_longer_flight_moves_cells_and_grows_none() {
    let drawn = read(CATERPILLAR);
    let usual = made(&drawn, &drawn.defaults());
    let spec = drawn.lengths()[0];
    let wide = made(&drawn, &[spec.most]);
    let share = spec.most / spec.default;
    for (near, far) in usual.cells.iter().zip(&wide.cells) {
        assert!((near.centre.x * share - far.centre.x).abs() < 2e-6);
        match (&near.outline, &far.outline) {
            (Outline::Disc { radius }, Outline::Disc { radius: same }) => assert_eq!(radius, same),
            (Outline::Polygon(a), Outline::Polygon(b)) => {
                assert!((a.unsigned_area() - b.unsigned_area()).abs() < 1e-5);
            }
            _ => panic!("a cell changed its kind"),
        }
    }
    // the bands are painted at cells: as much of their colour as before
    let area = |figure: &Figure, colour| {
        let all = figure.paint_area();
        all.iter()
            .find(|(own, _)| *own == colour)
            .map_or(0.0, |(_, area)| *area)
    };
    let (before, after) = (area(&usual, Colour::Sedge), area(&wide, Colour::Sedge));
    assert!((before - after).abs() < 1e-5, "{before} and {after}");
    assert!(drawn.make(&[spec.most + 0.01], &look()).is_err());
    assert!(drawn.make(&[], &look()).is_err());
}

/// A bare figure is the painted one without paint and envelope, to the bit.
#[test]
fn a_bare_look_takes_paint_and_envelope_away_and_nothing_else() {
    let bare = look().bare();
    for text in [CATERPILLAR, POND, WIND, SHAPES] {
        let drawn = read(text);
        let shares = (0..=10).map(f64::from);
        let sizes = shares.map(|tenths| {
            let specs = drawn.lengths().iter();
            let at =
                |spec: &marking::LengthSpec| spec.least + tenths / 10.0 * (spec.most - spec.least);
            specs.map(at).collect::<Vec<f64>>()
        });
        for lengths in sizes.chain([drawn.defaults()]) {
            let painted = made(&drawn, &lengths);
            assert!(!painted.paint.is_empty());
            let ways = Figure {
                paint: Vec::new(),
                envelope: geo::Polygon::new(geo::LineString(Vec::new()), Vec::new()),
                ..painted
            };
            assert_eq!(
                drawn.make(&lengths, &bare).expect("a figure"),
                ways,
                "{lengths:?}"
            );
        }
        for spec in drawn.lengths() {
            assert!(drawn.make(&[spec.most + 0.01], &bare).is_err());
        }
    }
}

/// Its length goes by whole centimetres: the drawn one is among them where it is one.
#[test]
fn a_length_goes_by_whole_steps_about_the_drawn_one() {
    let whole = |length: f64, step: f64| {
        let steps = length / step;
        (steps - steps.round()).abs() < 1e-6
    };
    for text in [CATERPILLAR, POND, WIND, SHAPES] {
        for spec in read(text).lengths() {
            let [least, drawn, most] = [spec.least, spec.default, spec.most];
            assert!(whole(least, spec.step) || least == drawn, "{spec:?}");
            assert!(whole(most, spec.step) || most == drawn, "{spec:?}");
            let on = whole(drawn - least, spec.step);
            assert!(on || !whole(drawn, spec.step), "{spec:?}");
        }
    }
}

/// Millimetres, centimetres, inches and a stated scale are one size on the ground.
#[test]
fn the_size_on_paper_decides() {
    let of = |width: &str, height: &str, more: &str| {
        let head = format!("width=\"{width}\" height=\"{height}\" {more}");
        as_drawn(&POND.replace("width=\"360cm\" height=\"300cm\"", &head))
    };
    let usual = as_drawn(POND);
    for figure in [
        of("3600mm", "3000mm", ""),
        of("3600", "3000", ""),
        of("100%", "100%", ""),
        of("36cm", "30cm", "data-scale=\"1:10\""),
        of("3600mm", "9000mm", ""),
    ] {
        for (a, b) in figure.cells.iter().zip(&usual.cells) {
            assert!(
                (a.centre.x - b.centre.x).abs() < 2e-6 && (a.centre.y - b.centre.y).abs() < 2e-6
            );
        }
    }
    let inches = of("36in", "30in", "");
    assert!((inches.cells[1].centre.x / usual.cells[1].centre.x - 0.254).abs() < 1e-5);
}

/// Areas by colour as shapely 2 and svgelements 1.9 find them (`oracle/areas.py`), within
/// the flattening: the outline's length times `look.flat`.
#[test]
fn areas_are_those_of_another_library() {
    let kept: serde_json::Value =
        serde_json::from_str(include_str!("../oracle/areas.json")).expect("figures");
    let flat = ledger().number(ledger::Key("look.flat"));
    for (name, text) in [
        ("shapes", SHAPES),
        ("caterpillar", CATERPILLAR),
        ("lily-pond", POND),
        ("wind", WIND),
    ] {
        let figure = as_drawn(text);
        let areas = figure.paint_area();
        let known = kept[name].as_object().expect("a figure");
        assert_eq!(areas.len(), known.len(), "{name}: {areas:?}");
        for (colour, area) in areas {
            let long: f64 = figure
                .paint
                .iter()
                .filter(|paint| paint.colour == colour)
                .map(|paint| {
                    use geo::{Euclidean, Length};
                    let holes = paint.polygon.interiors().iter();
                    Euclidean.length(paint.polygon.exterior())
                        + holes.map(|hole| Euclidean.length(hole)).sum::<f64>()
                })
                .sum();
            let theirs = known[colour.word()].as_f64().expect("an area");
            assert!(
                (area - theirs).abs() <= flat / 2.0 * long,
                "{name} {}: {area} and {theirs}, edge {long}",
                colour.word()
            );
        }
    }
}

/// The
/// look, section 2, prints CIEDE2000 of the nearest paints, by package colour-science, to a
/// whole number.
#[test]
fn differences_are_those_of_the_look() {
    for (a, b, printed) in [
        (Colour::Chalk, Colour::Straw, 22.0),
        (Colour::Chalk, Colour::Harebell, 25.0),
        (Colour::Chalk, Colour::Hip, 28.0),
        (Colour::Sloe, Colour::Madder, 29.0),
    ] {
        let ours = drawn::difference(a.srgb(), b.srgb());
        assert!(
            (ours - printed).abs() <= 0.55,
            "{a:?} {b:?}: {ours}, not {printed}"
        );
    }
}
