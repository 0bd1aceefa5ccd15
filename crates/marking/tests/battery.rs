//! One battery for every family: whoever is in the registry has to pass it.
#![cfg(test)]

use geo::{
    Area, BooleanOps, BoundingRect, Buffer, Contains, Distance, Euclidean, Intersects, Point,
    Polygon, Validation, Winding, coord,
};
use ledger::Ledger;
use marking::{
    Colour, Family, Fault, Figure, Ground, LaneKind, Look, Outline, Palette, Takes, families,
    family,
};

/// Square metres. Coordinates are rounded to 1e-6 m; two shapes that only touch within
/// that, along a metre, share less.
const OVERLAP: f64 = 1e-9;
/// Metres. Rounding to 1e-6 m moves each of two edges by half of that.
const ROUNDED: f64 = 2e-6;

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

fn look(ground: Ground) -> Look {
    Look::of(Palette { ground }, &ledger())
}

/// Every combination of a family's least, middle, default and greatest lengths.
fn sizes(family: &dyn Family) -> Vec<Vec<f64>> {
    let mut all = vec![Vec::new()];
    for spec in family.lengths() {
        let steps = ((spec.most - spec.least) / 2.0 / spec.step).round();
        let middle = (spec.least + steps * spec.step).min(spec.most);
        let own = [spec.least, spec.default, middle, spec.most];
        all = all
            .iter()
            .flat_map(|begun: &Vec<f64>| {
                own.iter()
                    .map(|length| begun.iter().copied().chain([*length]).collect())
            })
            .collect();
    }
    all
}

/// Every figure of every family on both grounds that lengths in range can make.
fn every(check: impl Fn(&dyn Family, &Figure, &Look)) {
    for ground in [Ground::Asphalt, Ground::Concrete] {
        let look = look(ground);
        for family in families() {
            let mut made = 0;
            for lengths in sizes(*family) {
                match family.make(&lengths, &look) {
                    Ok(figure) => {
                        made += 1;
                        check(*family, &figure, &look);
                    }
                    Err(Fault::Clash { .. }) => {}
                    Err(fault) => panic!("{} at {lengths:?}: {fault:?}", family.name()),
                }
            }
            assert!(made > 0, "{} makes nothing", family.name());
        }
    }
}

fn outline(cell: &marking::Cell) -> Polygon<f64> {
    match &cell.outline {
        Outline::Polygon(polygon) => polygon.clone(),
        // as many corners as hold an arc of 0.2 m to a tenth of a millimetre
        Outline::Disc { radius } => Polygon::new(
            (0..64)
                .map(|corner| {
                    let (sin, cos) = libm::sincos(f64::from(corner) * std::f64::consts::TAU / 64.0);
                    coord! { x: cell.centre.x + radius * cos, y: cell.centre.y + radius * sin }
                })
                .collect(),
            Vec::new(),
        ),
    }
}

fn inside(envelope: &Polygon<f64>, shape: &Polygon<f64>) -> bool {
    shape.difference(envelope).unsigned_area() < OVERLAP
}

#[test]
fn paint_is_valid_whole_and_never_over_paint() {
    every(|family, figure, _| {
        let boxes: Vec<_> = figure
            .paint
            .iter()
            .map(|paint| paint.polygon.bounding_rect().expect("paint has corners"))
            .collect();
        for (index, paint) in figure.paint.iter().enumerate() {
            assert!(
                paint.polygon.is_valid(),
                "{} {:?}",
                family.name(),
                figure.lengths
            );
            assert!(
                paint.polygon.interiors().is_empty(),
                "a stencil would drop what is in {index}"
            );
            assert!(paint.polygon.exterior().is_ccw());
            for (other, rect) in figure.paint.iter().zip(&boxes).skip(index + 1) {
                if boxes[index].intersects(rect) {
                    let shared = paint.polygon.intersection(&other.polygon).unsigned_area();
                    assert!(
                        shared <= OVERLAP,
                        "{} {:?}: {shared}",
                        family.name(),
                        figure.lengths
                    );
                }
            }
        }
        assert!(
            figure.envelope.is_valid(),
            "{} {:?}",
            family.name(),
            figure.lengths
        );
    });
}

/// The stencil's least opening and web, ledger `look.least` (common practice, no source).
#[test]
fn no_opening_and_no_web_is_narrower_than_the_stencils_least() {
    let least = ledger().number(ledger::Key("look.least"));
    for family in families() {
        for ground in [Ground::Asphalt, Ground::Concrete] {
            let figure = family
                .make(&family.defaults(), &look(ground))
                .expect("defaults make a figure");
            for (index, paint) in figure.paint.iter().enumerate() {
                opening(&paint.polygon, least);
                for other in figure.paint.iter().skip(index + 1) {
                    let web = Euclidean.distance(&paint.polygon, &other.polygon);
                    assert!(web >= least - ROUNDED, "{}: a web of {web}", family.name());
                }
            }
        }
    }
}

/// A round brush of the least breadth gets through the whole shape, and into all of it but
/// its corners.
fn opening(shape: &Polygon<f64>, least: f64) {
    let brush = least / 2.0 - ROUNDED;
    let core = shape.buffer(-brush);
    assert_eq!(core.0.len(), 1, "pinched: {shape:?}");
    // a corner of 45 degrees is 1.6 radii off the brush
    let painted = core.buffer(brush + 1.7 * brush);
    let missed = shape.difference(&painted).unsigned_area();
    assert!(missed < 1e-8, "{missed} m2 is out of a brush's reach");
    // nor does a notch close on a brush from outside
    assert!(
        shape
            .buffer(brush)
            .0
            .iter()
            .all(|grown| grown.interiors().is_empty())
    );
}

#[test]
fn all_lies_inside_the_envelope() {
    every(|family, figure, look| {
        let name = family.name();
        for paint in &figure.paint {
            assert!(
                inside(&figure.envelope, &paint.polygon),
                "{name} {:?}",
                figure.lengths
            );
        }
        for cell in &figure.cells {
            assert!(
                inside(&figure.envelope, &outline(cell)),
                "{name} {}",
                cell.id
            );
            assert!(
                outline(cell).contains(&Point(cell.centre)),
                "{name} {} is aimed at outside",
                cell.id
            );
        }
        let edge = figure.envelope.exterior();
        for spot in &figure.wait {
            assert!(
                figure.envelope.contains(&Point(*spot)),
                "{name} waits outside"
            );
            let off = Euclidean.distance(&Point(*spot), edge);
            assert!(
                off >= look.wait_round - ROUNDED,
                "{name}: a waiting spot {off} off the edge"
            );
        }
    });
}

/// Least run-outs inside the envelope: ledger `layout.run-out-run` (published) and
/// `layout.run-out-other` (common practice).
#[test]
fn run_out_lies_ahead_of_every_last_cell_and_lane() {
    every(|family, figure, look| {
        let ahead = |from: geo::Coord<f64>, way: geo::Coord<f64>, long: f64, half: f64| {
            let aside = coord! { x: -way.y, y: way.x } * half;
            let to = from + way * long;
            Polygon::new(
                vec![from - aside, to - aside, to + aside, from + aside].into(),
                Vec::new(),
            )
        };
        for lane in &figure.lanes {
            let corners: Vec<_> = lane.line.coords().copied().collect();
            let [.., before, end] = corners.as_slice() else {
                panic!("a lane without a line")
            };
            let way = (*end - *before) / libm::hypot(end.x - before.x, end.y - before.y);
            let strip = ahead(*end, way, look.run_out_run, lane.width / 2.0);
            assert!(
                inside(&figure.envelope, &strip),
                "{} {:?}",
                family.name(),
                figure.lengths
            );
        }
        for (before, cell) in figure.cells.iter().flat_map(|before| {
            before
                .next
                .iter()
                .flatten()
                .filter_map(|next| figure.cells.get(*next))
                .map(move |cell| (before, cell))
        }) {
            if cell.next.as_ref().is_some_and(|next| !next.is_empty()) {
                continue;
            }
            let step = cell.centre - before.centre;
            let way = step / libm::hypot(step.x, step.y);
            let strip = ahead(cell.centre, way, look.run_out_other, 0.15);
            assert!(
                inside(&figure.envelope, &strip),
                "{} {}",
                family.name(),
                cell.id
            );
        }
        for cell in figure.cells.iter().filter(|cell| cell.run_up) {
            let next = cell
                .next
                .iter()
                .flatten()
                .next()
                .and_then(|next| figure.cells.get(*next));
            let step = next.expect("a run-up leads somewhere").centre - cell.centre;
            let back = step / -libm::hypot(step.x, step.y);
            let strip = ahead(cell.centre, back, look.run_up - ROUNDED, 0.15);
            assert!(
                inside(&figure.envelope, &strip),
                "{} {}",
                family.name(),
                cell.id
            );
        }
    });
}

/// Waiting spots stand off the way: ledger `layout.wait-clear` (common practice).
#[test]
fn children_wait_off_the_way_and_off_one_another() {
    every(|family, figure, look| {
        assert!(
            !figure.wait.is_empty(),
            "{}: nowhere to wait",
            family.name()
        );
        let mut ways: Vec<geo::LineString<f64>> =
            figure.lanes.iter().map(|lane| lane.line.clone()).collect();
        for cell in &figure.cells {
            for next in cell
                .next
                .iter()
                .flatten()
                .filter_map(|next| figure.cells.get(*next))
            {
                ways.push(vec![cell.centre, next.centre].into());
            }
        }
        for (index, spot) in figure.wait.iter().enumerate() {
            for way in &ways {
                let off = Euclidean.distance(&Point(*spot), way);
                assert!(
                    off >= look.wait_clear,
                    "{} {:?}: {off}",
                    family.name(),
                    figure.lengths
                );
            }
            for other in figure.wait.iter().skip(index + 1) {
                assert!(Euclidean.distance(&Point(*spot), &Point(*other)) >= 0.40);
            }
        }
    });
}

#[test]
fn every_cell_is_on_a_way_from_a_start_to_an_end() {
    every(|family, figure, _| {
        assert!(
            !figure.cells.is_empty() || !figure.lanes.is_empty(),
            "{} asks nothing",
            family.name()
        );
        let mut reached: Vec<bool> = figure.cells.iter().map(|cell| cell.start).collect();
        for _ in &figure.cells {
            for (index, cell) in figure.cells.iter().enumerate() {
                for next in cell.next.iter().flatten() {
                    assert!(*next < reached.len() && *next != index);
                    reached[*next] |= reached[index];
                }
            }
        }
        for (cell, reached) in figure.cells.iter().zip(reached) {
            assert!(reached, "{} {} is never reached", family.name(), cell.id);
            let goes_on = cell.next.as_ref().is_some_and(|next| !next.is_empty());
            assert!(
                cell.end || goes_on,
                "{} {} is a trap",
                family.name(),
                cell.id
            );
        }
        let mut ids: Vec<&str> = figure.cells.iter().map(|cell| cell.id.as_str()).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(
            ids.len(),
            figure.cells.len(),
            "{} names two cells alike",
            family.name()
        );
    });
}

/// Feet meet grit, not film (ledger `look.eye`): an eye is bare, or at most half of it lies
/// under a numeral. Two squares or rings have an eye each; a brook's spots have no band.
#[test]
fn eyes_are_bare() {
    let eye = ledger().number(ledger::Key("look.eye"));
    every(|family, figure, look| {
        let named = |names: &[&str]| names.contains(&family.name());
        let court = named(&["court"]);
        let numbered = named(&["number-line", "number-court", "letter-court"]);
        for cell in figure
            .cells
            .iter()
            .filter(|cell| !cell.start && family.name() != "brook")
        {
            let length = |number: usize| (figure.lengths[number].1 + look.gap) / 2.0;
            let eyes = match cell.takes {
                Takes::Both if court && cell.id != "home" => vec![-length(0), length(0)],
                Takes::Both if named(&["ring-sets"]) => vec![-length(2), length(2)],
                _ => vec![0.0],
            };
            for aside in eyes {
                let disc = outline(&marking::Cell {
                    centre: coord! { x: cell.centre.x, y: cell.centre.y + aside },
                    outline: Outline::Disc { radius: eye / 2.0 },
                    ..cell.clone()
                });
                let film: f64 = figure
                    .paint
                    .iter()
                    .map(|paint| paint.polygon.intersection(&disc).unsigned_area())
                    .sum();
                let share = film / disc.unsigned_area();
                // an eye's polygon lies inside its arc by as much as arcs are flattened
                let flattened = 4.0 * look.flat / eye;
                // where only one foot may land, its print stands in the eye
                let most = if family.name().ends_with("-prints") {
                    0.75
                } else if numbered || court && cell.id != "home" {
                    0.5
                } else {
                    flattened
                };
                assert!(share <= most, "{} {}: {share:.2}", family.name(), cell.id);
            }
        }
    });
}

/// The look's restraint: Chalk and two more colours, crumbs under a tenth of the paint and
/// off the landings.
#[test]
fn figures_show_restraint() {
    let ripple = ledger().list(ledger::Key("look.ripple")).to_vec();
    let crumb_at_most = ripple[0] * ripple[2];
    let share = ledger().number(ledger::Key("look.crumbs"));
    every(|family, figure, _| {
        let colours = figure.paint_area();
        let beside_chalk = colours
            .iter()
            .filter(|(colour, _)| *colour != Colour::Chalk)
            .count();
        assert!(beside_chalk <= 2, "{}: {colours:?}", family.name());
        let landings: Vec<Polygon<f64>> = figure.cells.iter().map(outline).collect();
        // what is small and in no painted cell is a crumb
        let own_band = family.name() != "brook";
        // footprint trails have no crumbs but their pebbles: small are soles and heels
        let prints = family.name().ends_with("-prints");
        let crumbs: Vec<_> = figure
            .paint
            .iter()
            .filter(|paint| !prints && paint.polygon.unsigned_area() <= crumb_at_most)
            .filter(|paint| {
                !(own_band && landings.iter().any(|cell| cell.intersects(&paint.polygon)))
            })
            .collect();
        let small: f64 = crumbs
            .iter()
            .map(|paint| paint.polygon.unsigned_area())
            .sum();
        let all: f64 = colours.iter().map(|(_, area)| area).sum();
        assert!(
            small < share * all,
            "{} {:?}: {:.3}",
            family.name(),
            figure.lengths,
            small / all
        );
        for crumb in &crumbs {
            for landing in &landings {
                assert!(
                    landing.intersection(&crumb.polygon).unsigned_area() < OVERLAP,
                    "{}",
                    family.name()
                );
            }
        }
    });
}

#[test]
fn cells_that_follow_one_another_do_not_overlap() {
    every(|family, figure, _| {
        for cell in &figure.cells {
            for next in cell
                .next
                .iter()
                .flatten()
                .filter_map(|next| figure.cells.get(*next))
            {
                let apart = Euclidean.distance(&outline(cell), &outline(next));
                let shared = outline(cell).intersection(&outline(next)).unsigned_area();
                assert!(
                    apart > 0.0 && shared == 0.0,
                    "{} {}",
                    family.name(),
                    cell.id
                );
            }
        }
    });
}

#[test]
fn lanes_are_as_long_as_their_pieces_and_bend_no_tighter_than_a_string_draws() {
    every(|family, figure, look| {
        for lane in &figure.lanes {
            let pieces: f64 = lane.pieces.iter().map(|piece| piece.length).sum();
            let line: f64 = lane
                .line
                .lines()
                .map(|side| libm::hypot(side.dx(), side.dy()))
                .sum();
            // a polygon is shorter than its arc, by under one in a thousand at this flatness
            assert!(
                line <= pieces + ROUNDED && line > pieces * 0.999,
                "{}: {line} of {pieces}",
                family.name()
            );
            // a labyrinth turns about the ends of its walls, by half a pitch
            let least = match family.name() {
                "labyrinth-lane" => (lane.width + look.stroke) / 2.0,
                _ => 1.25,
            };
            for radius in lane.pieces.iter().filter_map(|piece| piece.radius) {
                let steps = radius * if radius < 1.25 { 8.0 } else { 4.0 };
                assert!(
                    radius >= least - ROUNDED && (steps - steps.round()).abs() < 1e-9,
                    "{} {:?}: {radius}",
                    family.name(),
                    figure.lengths
                );
            }
            let least = match lane.kind {
                LaneKind::Corridor => 0.9,
                LaneKind::Line => look.stroke,
            };
            assert!(lane.width >= least - ROUNDED);
        }
    });
}

/// Turning, moving and mirroring change no area, no length and no distance.
#[test]
fn a_placed_figure_is_the_same_figure() {
    let look = look(Ground::Asphalt);
    for family in families() {
        let figure = family
            .make(&family.defaults(), &look)
            .expect("defaults make a figure");
        for mirrored in [false, true] {
            let placed = figure.placed(coord! { x: 7.2, y: -4.1 }, 0.7, mirrored);
            let near = |a: f64, b: f64| (a - b).abs() <= 1e-4 * a.abs();
            assert!(
                near(figure.outline_length(), placed.outline_length()),
                "{}",
                family.name()
            );
            for ((colour, area), (same, now)) in
                figure.paint_area().into_iter().zip(placed.paint_area())
            {
                assert!(
                    colour == same && near(area, now),
                    "{}: {area} and {now}",
                    family.name()
                );
            }
            assert!(
                placed
                    .paint
                    .iter()
                    .all(|paint| paint.polygon.exterior().is_ccw())
            );
            for (cell, now) in figure.cells.iter().zip(&placed.cells) {
                let from = coord! { x: cell.centre.x, y: if mirrored { -cell.centre.y } else { cell.centre.y } };
                let (sin, cos) = libm::sincos(0.7);
                let there = coord! { x: 7.2 + from.x * cos - from.y * sin, y: -4.1 + from.x * sin + from.y * cos };
                assert!(libm::hypot(there.x - now.centre.x, there.y - now.centre.y) <= ROUNDED);
            }
        }
    }
}

#[test]
fn lengths_that_cannot_be_are_said_and_nothing_is_made() {
    let look = look(Ground::Asphalt);
    for family in families() {
        let defaults = family.defaults();
        assert!(family.make(&defaults, &look).is_ok(), "{}", family.name());
        assert_eq!(
            family.make(&defaults[1..], &look),
            Err(Fault::Count {
                wanted: defaults.len(),
                given: defaults.len() - 1
            })
        );
        for (index, spec) in family.lengths().iter().enumerate() {
            assert!(spec.least <= spec.default && spec.default <= spec.most && spec.step > 0.0);
            for wrong in [spec.least - 0.01, spec.most + 0.01, f64::NAN, f64::INFINITY] {
                let mut lengths = defaults.clone();
                lengths[index] = wrong;
                let fault = family.make(&lengths, &look).expect_err("out of range");
                assert!(matches!(fault, Fault::Range { spec: said, .. } if said.name == spec.name));
            }
        }
        assert_eq!(
            marking::family(family.name()).map(Family::name),
            Some(family.name())
        );
    }
    assert!(family("nothing").is_none());
}

/// The distances that a court and spots are asked for are those between their aim points.
#[test]
fn cells_stand_as_far_apart_as_was_asked() {
    let look = look(Ground::Asphalt);
    let flights = |name: &str, lengths: &[f64]| -> Vec<f64> {
        let figure = family(name)
            .expect("a family")
            .make(lengths, &look)
            .expect("a figure");
        let cells = &figure.cells;
        cells
            .iter()
            .flat_map(|cell| {
                cell.next
                    .iter()
                    .flatten()
                    .map(move |next| (cell, &cells[*next]))
            })
            .map(|(from, to)| libm::hypot(to.centre.x - from.centre.x, to.centre.y - from.centre.y))
            .collect()
    };
    let near = |ours: &[f64], asked: &[f64]| {
        assert_eq!(ours.len(), asked.len());
        for (ours, asked) in ours.iter().zip(asked) {
            assert!((ours - asked).abs() <= ROUNDED, "{ours}, not {asked}");
        }
    };
    near(
        &flights("spots", &[0.33, 0.41, 0.52]),
        &[0.41, 0.41, 0.41, 0.52, 0.52, 0.52, 0.41, 0.52],
    );
    near(&flights("pair", &[0.6, 0.36, 1.3]), &[0.6; 4]);
    near(
        &flights("court", &[0.35, 0.42, 0.47])[..6],
        &[0.42, 0.42, 0.47, 0.47, 0.47, 0.47],
    );
    // a brook is crossed at its clear width, half a foot behind it and 13.5 cm past it
    let brook = flights("brook", &[0.20, 0.80, 3.6]);
    assert!(
        (brook[0] - (0.20 + 0.6 * 0.2 / 3.6 + 0.22)).abs() <= ROUNDED,
        "{}",
        brook[0]
    );
}

/// A bare figure is trodden as the painted one: its cells, lanes, facing, tracks and waiting
/// spots, to the bit, and the same lengths make none.
#[test]
fn a_bare_look_takes_paint_and_envelope_away_and_nothing_else() {
    let full = look(Ground::Asphalt);
    let bare = full.clone().bare();
    let mut chance = chance::Chance::new(3);
    for family in families() {
        let (mut made, mut clashes) = (0, 0);
        for _ in 0..60 {
            let specs = family.lengths().iter();
            let lengths: Vec<f64> = specs
                .map(|spec| spec.least + chance.share() * (spec.most - spec.least))
                .collect();
            match (family.make(&lengths, &full), family.make(&lengths, &bare)) {
                (Ok(painted), Ok(bare)) => {
                    made += 1;
                    assert!(!painted.paint.is_empty() && painted.envelope.unsigned_area() > 1.0);
                    let ways = Figure {
                        paint: Vec::new(),
                        envelope: Polygon::new(geo::LineString(Vec::new()), Vec::new()),
                        ..painted
                    };
                    assert_eq!(bare, ways, "{} {lengths:?}", family.name());
                }
                (Err(painted), Err(bare)) => {
                    clashes += 1;
                    assert_eq!(painted, bare, "{} {lengths:?}", family.name());
                }
                (painted, bare) => panic!("{} {lengths:?}: {painted:?}, {bare:?}", family.name()),
            }
        }
        assert!(
            made > 5,
            "{}: {made} made, {clashes} clashes",
            family.name()
        );
    }
}
