//! A yard of our own invention: Tern Street, an L of asphalt with all kinds of things in it.

use std::collections::BTreeMap;

use geo::{Coord, LineString, Polygon};
use ground::yard::*;
use survey::network::{Datum, Kind, Network, Reading, Tape, Walked};

/// Building.md Y2: the L-shaped yard with A to D misread by a tenth, sides taped twice.
pub fn network(misread: bool) -> Network {
    let readings = [
        ("A", "B", 23.997),
        ("B", "C", 9.996),
        ("C", "D", 10.002),
        ("D", "E", 8.002),
        ("E", "F", 13.998),
        ("F", "A", 17.999),
        ("A", "C", 25.985),
        ("A", "D", if misread { 17.299 } else { 17.199 }),
        ("A", "E", 22.805),
        ("B", "D", 14.145),
        ("B", "F", 30.000),
        ("D", "F", 16.120),
    ];
    let points: Vec<String> = ["A", "B", "C", "D", "E", "F"].map(str::to_owned).to_vec();
    let id = |name: &str| points.iter().position(|point| point == name).unwrap_or(0);
    let tape = Tape {
        constant: 0.003,
        per_metre: 0.0003,
    };
    Network {
        readings: readings
            .iter()
            .map(|&(from, to, value)| Reading {
                kind: Kind::Distance {
                    from: id(from),
                    to: id(to),
                },
                value,
                sigma: tape.sigma(value),
                at: None,
            })
            .collect(),
        datum: Datum::Line {
            origin: 0,
            towards: 1,
        },
        boundary: (0..6).collect(),
        walked: Walked::Anticlockwise,
        start: BTreeMap::new(),
        at: None,
        points,
    }
}

fn at(x: f64, y: f64) -> Coord<f64> {
    Coord { x, y }
}

fn outline(places: &[(f64, f64)]) -> Polygon<f64> {
    Polygon::new(LineString::from(places.to_vec()), Vec::new())
}

fn fixture(
    name: &str,
    is: FixtureKind,
    shape: Footprint,
    height: Option<f64>,
    more: More,
) -> Fixture {
    Fixture {
        name: name.into(),
        is,
        shape,
        height,
        base: None,
        top: None,
        more,
        at: None,
    }
}

pub fn yard(survey: &survey::result::Survey) -> Yard {
    let corner: Vec<Coord<f64>> = survey
        .boundary
        .iter()
        .filter_map(|&id| survey.points.get(id))
        .map(|point| at(point.x, point.y))
        .collect();
    let kinds = [
        EdgeKind::Hedge,
        EdgeKind::Fence,
        EdgeKind::Fence,
        EdgeKind::Wall,
        EdgeKind::Kerb,
        EdgeKind::Wall,
    ];
    let edges = (0..corner.len())
        .map(|n| Edge {
            line: LineString::new(vec![corner[n], corner[(n + 1) % corner.len()]]),
            is: kinds[n % 6],
        })
        .collect();
    let rect =
        |x0: f64, y0: f64, x1: f64, y1: f64| outline(&[(x0, y0), (x1, y0), (x1, y1), (x0, y1)]);
    let surface = |outline, is| Surface {
        outline,
        is,
        age_days: Some(2600),
        condition: Some(Condition::Sound),
        at: None,
    };
    Yard {
        boundary: Polygon::new(LineString::new(corner.clone()), Vec::new()),
        edges,
        surfaces: vec![
            surface(
                Polygon::new(LineString::new(corner.clone()), Vec::new()),
                SurfaceKind::Asphalt,
            ),
            surface(rect(0.6, 9.6, 13.4, 17.6), SurfaceKind::Rubber),
        ],
        fixtures: vec![
            fixture(
                "swing",
                FixtureKind::Swing,
                Footprint::Beam(at(2.9, 13.6), at(6.1, 13.6)),
                None,
                More::Swing {
                    pivot: 1.8,
                    seat: Seat::Belt,
                    seat_top: None,
                },
            ),
            fixture(
                "slide",
                FixtureKind::Slide,
                Footprint::Outline(rect(10.4, 12.4, 11.2, 15.8)),
                Some(1.2),
                More::Slide {
                    exit: Some([at(10.4, 12.4), at(11.2, 12.4)]),
                },
            ),
            fixture(
                "climber",
                FixtureKind::Climber,
                Footprint::Outline(rect(17.4, 5.4, 19.2, 7.4)),
                Some(1.5),
                More::Nothing,
            ),
            fixture(
                "oak",
                FixtureKind::Tree,
                Footprint::Disc {
                    centre: at(21.6, 7.9),
                    radius: 0.32,
                },
                None,
                More::Nothing,
            ),
            fixture(
                "drain",
                FixtureKind::Drain,
                Footprint::Outline(rect(14.4, 3.9, 14.8, 4.3)),
                None,
                More::Nothing,
            ),
            fixture(
                "shed",
                FixtureKind::Shed,
                Footprint::Outline(rect(0.1, 5.2, 2.6, 7.2)),
                None,
                More::Nothing,
            ),
            fixture(
                "bench",
                FixtureKind::Bench,
                Footprint::Outline(rect(8.0, 8.6, 9.8, 9.0)),
                None,
                More::Nothing,
            ),
        ],
        doors: vec![
            Door {
                name: "hall".into(),
                jambs: [at(0.0, 1.2), at(0.0, 2.2)],
                hinge: Some(0),
                opens_out: true,
                at: None,
            },
            Door {
                name: "art".into(),
                jambs: [at(13.99, 12.0), at(13.99, 12.95)],
                hinge: Some(1),
                opens_out: false,
                at: None,
            },
        ],
        gates: vec![Gate {
            name: "street".into(),
            posts: [at(23.993, 1.2), at(23.993, 2.6)],
            hinge: Some(1),
            opens_in: true,
            at: None,
        }],
        routes: vec![Wanted {
            from: "hall".into(),
            to: "street".into(),
            width: 1.525,
            at: None,
        }],
        stands: vec![at(12.5, 6.5)],
        remarks: vec![Remark {
            outline: rect(5.2, 4.4, 7.6, 5.6),
            is: RemarkKind::Puddle,
            says: None,
            at: None,
        }],
    }
}
