//! Ties, panels, holes and mirrored shapes, on shapes made for the purpose.
#![cfg(test)]

mod common;

use chance::Chance;
use common::{SETTING, cut, disc, house, of, painted};
use geo::{Area, BooleanOps, BoundingRect, Coord, LineString, MultiPolygon, Polygon, polygon};
use marking::Colour;
use stencil::{
    Applied, Material, Panel, Rules, Setting, Stencil, Tool, TurnOver, Weakness, Why, falls,
};

fn open(openings: &[stencil::Opening]) -> Vec<Polygon<f64>> {
    openings.iter().map(|one| one.polygon.clone()).collect()
}

fn ring(outer: Polygon<f64>, inner: &Polygon<f64>) -> Polygon<f64> {
    let (outer, _) = outer.into_inner();
    Polygon::new(outer, vec![inner.exterior().clone()])
}

/// One plate for one shape.
fn plate(shape: Polygon<f64>, setting: &Setting) -> Stencil {
    let made = cut(&[painted(vec![(Colour::Chalk, shape)])], setting).value;
    let [one] = made.stencils.try_into().expect("one plate");
    one
}

/// Rounded outlines of any form: a circle pushed in and out by slow waves.
fn blob(chance: &mut Chance, radius: f64) -> Vec<Coord<f64>> {
    let waves: Vec<[f64; 2]> = (2..5)
        .map(|_| {
            [
                0.08 * chance.share(),
                std::f64::consts::TAU * chance.share(),
            ]
        })
        .collect();
    (0..90)
        .map(|step| {
            let turn = f64::from(step) / 90.0 * std::f64::consts::TAU;
            let push: f64 = waves
                .iter()
                .zip(2..)
                .map(|([high, phase], times)| high * libm::sin(f64::from(times) * turn + phase))
                .sum();
            let (sin, cos) = libm::sincos(turn);
            Coord { x: cos, y: sin } * (radius * (1.0 + push))
        })
        .collect()
}

/// building.md, section 5 (common practice, no source): ties of the material's width and
/// five thicknesses, at most 300 mm apart along the island's edge, two at least and three
/// where its longest side passes 300 mm, not all in one line.
#[test]
fn any_island_is_tied_by_the_rules() {
    let mut chance = Chance::new(7);
    let ledger = common::ledger();
    for number in 0..60 {
        let material = Material::ALL[number % 5];
        let setting = Setting {
            material,
            tool: material.tools()[0],
            ..SETTING
        };
        let rules = Rules::of(&setting, &ledger);
        let radius = 0.06 + 0.34 * chance.share();
        let eye = blob(&mut chance, radius);
        let band = 0.04 + 0.06 * chance.share();
        let out = eye
            .iter()
            .map(|at| *at * (1.0 + band / radius))
            .collect::<Vec<_>>();
        let eye = Polygon::new(LineString(eye), Vec::new());
        let one = plate(
            ring(Polygon::new(LineString(out), Vec::new()), &eye),
            &setting,
        );
        assert!(
            falls(&one.plate, &open(&one.openings)).is_empty(),
            "{number}"
        );
        let size = eye.bounding_rect().expect("it has corners");
        let least = if size.width().max(size.height()) > 0.3 {
            3
        } else {
            2
        };
        assert!(one.ties.len() >= least, "{number}: {} ties", one.ties.len());
        for tie in &one.ties {
            assert!(tie.width >= rules.tie - 1e-6 && tie.width >= 5.0 * rules.thickness - 1e-6);
            // it leads across the band, not along it
            assert!(tie.length < 2.5 * band, "{number}: {tie:?}");
        }
        // where the ties stand along the edge, measured again on the eye itself
        let centre = size.center();
        let mut turns: Vec<f64> = one
            .ties
            .iter()
            .map(|tie| {
                let used = &one.uses[0];
                let at = common::laid_at(used, tie.at) - centre;
                libm::atan2(at.y, at.x)
            })
            .collect();
        turns.sort_by(f64::total_cmp);
        let edge = |from: f64, to: f64| -> f64 {
            let on = |at: Coord<f64>| {
                let turn = libm::atan2(at.y - centre.y, at.x - centre.x);
                let past = (turn - from).rem_euclid(std::f64::consts::TAU);
                past <= (to - from).rem_euclid(std::f64::consts::TAU)
            };
            let sides = eye.exterior().lines().filter(|side| on(side.start));
            sides.map(|side| libm::hypot(side.dx(), side.dy())).sum()
        };
        for (index, from) in turns.iter().enumerate() {
            let apart = edge(*from, turns[(index + 1) % turns.len()]);
            // a tie's middle lies across the band from its foot
            assert!(
                apart <= rules.tie_spacing + 0.04,
                "{number}: {apart} m between ties"
            );
        }
        let tied: f64 = one.ties.iter().map(|tie| tie.width).sum();
        let told = one.weak.iter().any(|weak| weak.what == Weakness::Ties);
        let outline: f64 = [
            eye.exterior(),
            &LineString(
                eye.exterior()
                    .0
                    .iter()
                    .map(|at| *at * (1.0 + band / radius))
                    .collect(),
            ),
        ]
        .iter()
        .flat_map(|ring| {
            ring.lines()
                .map(|side| libm::hypot(side.dx(), side.dy()))
                .collect::<Vec<_>>()
        })
        .sum();
        assert_eq!(told, tied > 0.1 * outline, "{number}: {tied} of {outline}");
    }
}

/// Two ties through one line let an island tip about it.
#[test]
fn ties_are_not_the_pins_of_a_hinge() {
    // a ring in two halves: its joints face each other across the eye
    let band = ring(disc([0.0, 0.0], 0.12, 60), &disc([0.0, 0.0], 0.06, 60));
    let slit = |half: f64| polygon![(x: -1.0, y: -half), (x: 1.0, y: -half), (x: 1.0, y: half), (x: -1.0, y: half)];
    let halves = band.difference(&slit(0.01));
    assert_eq!(halves.0.len(), 2);
    let figure = painted(
        halves
            .0
            .into_iter()
            .map(|one| (Colour::Chalk, one))
            .collect(),
    );
    let made = cut(&[figure], &SETTING).value;
    let [one] = made.stencils.as_slice() else {
        panic!("one motif")
    };
    assert_eq!(one.ties.len(), 1, "one more tie, out of their line");
    let tie = &one.ties[0];
    assert!(libm::sin(tie.way).abs() > 0.5, "{tie:?}");
}

#[test]
fn left_and_right_prints_share_a_plate_only_where_it_may_be_turned_over() {
    let print = |side: f64, at: f64| {
        let shape: Polygon<f64> = polygon![
            (x: 0.0, y: 0.0), (x: 0.20, y: 0.0), (x: 0.22, y: side * 0.05), (x: 0.1, y: side * 0.09), (x: 0.0, y: side * 0.06),
        ];
        (
            Colour::Chalk,
            common::moved(&shape, |one| one + Coord { x: at, y: at }),
        )
    };
    let figure = painted(vec![print(1.0, 0.0), print(-1.0, 1.0), print(1.0, 2.0)]);
    let apart = cut(std::slice::from_ref(&figure), &SETTING);
    assert_eq!(apart.value.stencils.len(), 2);
    assert!(
        apart
            .value
            .stencils
            .iter()
            .all(|one| one.uses.iter().all(|used| !used.over))
    );
    let over = Setting {
        turn_over: TurnOver::Allowed,
        ..SETTING
    };
    let shared = cut(std::slice::from_ref(&figure), &over);
    let [one] = shared.value.stencils.as_slice() else {
        panic!("one plate")
    };
    let faces: Vec<bool> = one.uses.iter().map(|used| used.over).collect();
    assert_eq!(faces, [false, true, false]);
    assert!(
        shared
            .notes
            .iter()
            .any(|note| note.what.key == "stencil-turned-over")
    );
    for (used, at) in one.uses.iter().zip(0..) {
        let laid = common::moved(&one.openings[0].polygon, |place| {
            common::laid_at(used, place)
        });
        let off = laid.difference(&figure.paint[at].polygon).unsigned_area();
        assert!(off < 1e-6, "{at}: {off}");
    }
}

/// A ring of 1.7 m, as round a place to turn: four panels; a ring of 3 m: by string.
#[test]
fn a_large_ring_is_cut_in_panels_and_a_larger_one_is_drawn_by_string() {
    let ledger = common::ledger();
    let rules = Rules::of(&SETTING, &ledger);
    let band = |radius: f64| {
        ring(
            disc([0.0, 0.0], radius, 120),
            &disc([0.0, 0.0], radius - 0.075, 120),
        )
    };
    let one = plate(band(0.85), &SETTING);
    assert_eq!(one.panels.len(), 4);
    let whole = MultiPolygon(open(&one.openings));
    let mut through = MultiPolygon(Vec::new());
    for panel in &one.panels {
        let size = panel.plate.bounding_rect().expect("it has corners");
        assert!(size.width() <= 1.2 && size.height() <= 1.2, "{size:?}");
        assert!(
            falls(&panel.plate, &open(&panel.openings)).is_empty(),
            "{}",
            panel.id
        );
        through = through.union(&MultiPolygon(open(&panel.openings)));
    }
    let missed = whole.difference(&through).unsigned_area();
    let beyond = through.difference(&whole).unsigned_area();
    assert!(
        missed < 1e-7 && beyond < 1e-7,
        "{missed} missed, {beyond} beyond"
    );
    let rooms: Vec<_> = one
        .panels
        .iter()
        .filter_map(|panel| panel.plate.bounding_rect())
        .collect();
    assert!((rooms[0].max().x - rooms[1].min().x - rules.overlap).abs() < 2e-6);
    assert!((rooms[0].max().y - rooms[2].min().y - rules.overlap).abs() < 2e-6);
    // neighbours share a hole on their seam
    let shared =
        |a: &Panel, b: &Panel| a.holes.iter().filter(|hole| b.holes.contains(hole)).count();
    assert!(shared(&one.panels[0], &one.panels[1]) >= 1);
    assert!(shared(&one.panels[0], &one.panels[2]) >= 1);

    let made = cut(&[painted(vec![(Colour::Chalk, band(1.5))])], &SETTING).value;
    assert!(made.stencils.is_empty());
    let [taped] = made.taped.as_slice() else {
        panic!("one shape")
    };
    // drawn as a polygon of 120 sides, 1 part in 8000 shorter than the circle
    let circles = std::f64::consts::TAU * (1.5 + 1.425);
    assert!(
        (taped.outline - circles).abs() < 3e-4 * circles,
        "{}",
        taped.outline
    );
    assert_eq!(taped.why, Why::Large);
}

/// A panel laid on its face, turned in any way that its outline allows, meets other ticks.
#[test]
fn a_panel_laid_on_its_face_does_not_fit_its_holes() {
    let figures = house();
    for applied in [Applied::Roller, Applied::Brush, Applied::Spray] {
        let made = cut(&figures, &Setting { applied, ..SETTING }).value;
        let large = plate(
            ring(disc([0.0, 0.0], 0.85, 120), &disc([0.0, 0.0], 0.775, 120)),
            &Setting { applied, ..SETTING },
        );
        for one in made.stencils.iter().chain([&large]) {
            for panel in &one.panels {
                assert!(panel.holes.len() >= 3, "{}", panel.id);
                uneven(panel);
                let mut solid = geo::unary_union(&open(&panel.openings));
                solid = geo::Buffer::buffer(&solid, 0.015);
                for hole in &panel.holes {
                    let clear = !geo::Contains::contains(&solid, &geo::Point(*hole));
                    assert!(clear, "{}: a hole at {hole:?} breaks a web", panel.id);
                }
                for corner in panel.arrow.iter().chain([&panel.label]) {
                    assert!(geo::Contains::contains(&panel.plate, &geo::Point(*corner)));
                }
            }
        }
    }
}

fn uneven(panel: &Panel) {
    let size = panel.plate.bounding_rect().expect("it has corners");
    let about: Vec<Coord<f64>> = panel
        .holes
        .iter()
        .map(|hole| *hole - size.center())
        .collect();
    let square = (size.width() - size.height()).abs() < 0.02;
    let quarters = if square { 4 } else { 2 };
    for quarter in 0..quarters {
        let turn = std::f64::consts::TAU * f64::from(quarter) / f64::from(quarters);
        let (sin, cos) = libm::sincos(turn);
        let flipped = about.iter().map(|at| {
            let (x, y) = (at.x, -at.y);
            Coord {
                x: x * cos - y * sin,
                y: x * sin + y * cos,
            }
        });
        let worst = flipped
            .map(|at| {
                let gaps = about
                    .iter()
                    .map(|hole| libm::hypot(hole.x - at.x, hole.y - at.y));
                gaps.fold(f64::INFINITY, f64::min)
            })
            .fold(0.0, f64::max);
        // farther off than a hole is wide
        assert!(worst > 0.006, "{}: {worst} at {turn}", panel.id);
    }
}

/// building.md, section 5: offset by half the kerf to the waste side.
#[test]
fn the_tool_runs_half_a_kerf_inside_the_waste() {
    for (material, tool, kerf) in [
        (Material::Film, Tool::Laser, 0.0002),
        (Material::SolidPe, Tool::Router, 0.006),
        (Material::Hardboard, Tool::Jigsaw, 0.0015),
        (Material::Card, Tool::Knife, 0.0),
    ] {
        let square =
            polygon![(x: 0.0, y: 0.0), (x: 0.2, y: 0.0), (x: 0.2, y: 0.1), (x: 0.0, y: 0.1)];
        let one = plate(
            square,
            &Setting {
                material,
                tool,
                ..SETTING
            },
        );
        let panel = &one.panels[0];
        let size = |ring: &LineString<f64>| {
            let size = ring.bounding_rect().expect("it has corners");
            [size.width(), size.height()]
        };
        let near = |ours: [f64; 2], wanted: [f64; 2]| {
            ours.iter()
                .zip(wanted)
                .all(|(ours, wanted)| (ours - wanted).abs() < 2e-6)
        };
        let first = size(&panel.cuts[0]);
        assert!(near(first, [0.2 - kerf, 0.1 - kerf]), "{tool:?}: {first:?}");
        let last = size(panel.cuts.last().expect("the edge"));
        assert!(near(last, [0.4 + kerf, 0.3 + kerf]), "{tool:?}: {last:?}");
        let holes = panel
            .cuts
            .iter()
            .filter(|ring| size(ring)[0] < 0.01)
            .count();
        assert_eq!(holes, if kerf < 0.006 { 3 } else { 0 }, "{tool:?}");
    }
}

/// A plate too weak somewhere says so.
#[test]
fn weak_places_are_told() {
    let bar = |x: f64, y: f64, w: f64, h: f64| -> (Colour, Polygon<f64>) {
        (
            Colour::Chalk,
            polygon![(x: x, y: y), (x: x + w, y: y), (x: x + w, y: y + h), (x: x, y: y + h)],
        )
    };
    let told = |paint: Vec<(Colour, Polygon<f64>)>, setting: &Setting| -> Vec<Weakness> {
        let made = cut(&[painted(paint)], setting).value;
        let mut what: Vec<Weakness> = made
            .stencils
            .iter()
            .flat_map(|one| one.weak.iter().map(|weak| weak.what))
            .collect();
        what.sort_unstable();
        what.dedup();
        what
    };
    let film = Setting {
        material: Material::Film,
        ..SETTING
    };
    assert_eq!(told(vec![bar(0.0, 0.0, 0.2, 0.1)], &SETTING), []);
    assert_eq!(
        told(vec![bar(0.0, 0.0, 0.2, 0.014)], &SETTING),
        [Weakness::Opening]
    );
    assert_eq!(told(vec![bar(0.0, 0.0, 0.2, 0.016)], &SETTING), []);
    // a web of 14 mm between two bars 60 mm long; 16 mm hold
    assert_eq!(
        told(
            vec![bar(0.0, 0.0, 0.06, 0.1), bar(0.0, 0.114, 0.06, 0.1)],
            &film
        ),
        [Weakness::Web]
    );
    assert_eq!(
        told(
            vec![bar(0.0, 0.0, 0.06, 0.1), bar(0.0, 0.116, 0.06, 0.1)],
            &film
        ),
        []
    );
    let fluted = Setting {
        material: Material::Fluted,
        ..SETTING
    };
    assert_eq!(
        told(
            vec![bar(0.0, 0.0, 0.06, 0.1), bar(0.0, 0.116, 0.06, 0.1)],
            &fluted
        ),
        [Weakness::Thin]
    );
    // tongues of a comb, 20 mm broad: 5 times as long hold in film, 9 times in neither
    let comb = |long: f64| -> Polygon<f64> {
        let teeth = [
            (0.0, 0.0),
            (0.12, 0.0),
            (0.12, long + 0.05),
            (0.07, long + 0.05),
            (0.07, 0.05),
            (0.05, 0.05),
            (0.05, long + 0.05),
            (0.0, long + 0.05),
        ];
        Polygon::new(
            teeth.map(|(x, y)| Coord { x, y }).to_vec().into(),
            Vec::new(),
        )
    };
    for (long, setting, wanted) in [
        (0.08, &film, vec![]),
        (0.13, &film, vec![Weakness::Tongue]),
        (0.13, &SETTING, vec![]),
        (0.19, &SETTING, vec![Weakness::Tongue]),
    ] {
        assert_eq!(
            told(vec![(Colour::Chalk, comb(long))], setting),
            wanted,
            "{long}"
        );
    }
    let router = Setting {
        tool: Tool::Router,
        ..SETTING
    };
    assert_eq!(
        told(vec![bar(0.0, 0.0, 0.2, 0.005)], &router),
        [Weakness::Opening, Weakness::Kerf]
    );
}

/// What the rules of a stranger do not know is told, and nothing panics.
#[test]
fn odd_shapes_come_to_no_harm() {
    let line: Polygon<f64> = polygon![(x: 0.0, y: 0.0), (x: 1.0, y: 0.0), (x: 0.5, y: 0.0)];
    let figure = painted(vec![(Colour::Chalk, line), (Colour::Chalk, polygon![])]);
    assert!(cut(&[figure], &SETTING).value.stencils.is_empty());
    assert!(cut(&[], &SETTING).value.stencils.is_empty());
    let speck = disc([0.0, 0.0], 0.001, 12);
    let made = cut(&[painted(vec![(Colour::Sloe, speck)])], &SETTING);
    assert!(
        made.notes
            .iter()
            .any(|note| note.what.key == "stencil-opening")
    );
    assert_eq!(cut(&[of("court")], &SETTING).value.stencils[0].id, "S01");
}

/// building.md, section 5: a sheet of 1219.2 x 2438.4 mm trimmed by 10 mm a side, parts a
/// kerf and 5 mm apart, a jigsaw that wanders 1.5 mm (common practice, no source).
#[test]
fn a_sheet_is_trimmed_and_a_jigsaw_wants_broader_webs() {
    let ledger = common::ledger();
    let rules = |material, tool| {
        let setting = Setting {
            material,
            tool,
            ..SETTING
        };
        Rules::of(&setting, &ledger)
    };
    let router = rules(Material::SolidPe, Tool::Router);
    let near = |ours: f64, wanted: f64| (ours - wanted).abs() < 1e-12;
    assert!(near(router.sheet[0], 1.1992) && near(router.sheet[1], 2.4184));
    assert!(near(router.longest, 1.1992) && near(router.part_gap, 0.011));
    assert!(near(router.web, 0.015));
    let jigsaw = rules(Material::Hardboard, Tool::Jigsaw);
    assert!(near(jigsaw.web, 0.018) && near(jigsaw.tie, 0.015));
    // five thicknesses bind where they are more than the material's own tie
    for (material, tie) in [
        (Material::Card, 0.010),
        (Material::Film, 0.008),
        (Material::Fluted, 0.020),
        (Material::SolidPe, 0.012),
    ] {
        assert!(near(rules(material, Tool::Knife).tie, tie), "{material:?}");
    }
    let mut ledger = common::ledger();
    let thick = ledger.replace("stencil.solid-pe-thickness", &[0.0032]);
    assert_eq!(thick, Ok(()));
    assert!(near(Rules::of(&SETTING, &ledger).tie, 0.016));
}
