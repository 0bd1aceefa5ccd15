//! The oracle's yards, read from `oracle/yards.json`.
#![allow(dead_code)] // each test reads its own part
#![allow(clippy::expect_used, clippy::panic)] // the bench reads it too, and is no test to the linter

use geo::{Coord, LineString, Polygon};
use ground::Standard;
use ground::yard::*;
use serde::Deserialize;

/// A yard of the oracle with shapely's areas of free ground, m².
pub struct Case {
    pub yard: Yard,
    pub standard: Standard,
    /// With the room's arcs.
    pub free: f64,
    /// With true arcs.
    pub most: f64,
    /// With arcs wider by what the room allows itself.
    pub least: f64,
}

#[derive(Deserialize)]
struct Row {
    standard: String,
    outer: Vec<[f64; 2]>,
    hole: Option<Vec<[f64; 2]>>,
    edges: Vec<String>,
    fixtures: Vec<Thing>,
    openings: Vec<Opening>,
    blocked: Vec<Vec<[f64; 2]>>,
    free: f64,
    most: f64,
    least: f64,
}

#[derive(Deserialize)]
struct Thing {
    kind: String,
    ring: Vec<[f64; 2]>,
    radius: Option<f64>,
    height: Option<f64>,
    exit: Option<[[f64; 2]; 2]>,
    pivot: Option<f64>,
    seat_top: Option<f64>,
    members: Option<f64>,
    standing: Option<bool>,
}

#[derive(Deserialize)]
struct Opening {
    jambs: [[f64; 2]; 2],
    pulled: bool,
    hinge: Option<usize>,
}

/// All yards of the oracle.
pub fn cases() -> Vec<Case> {
    let text = include_str!("../../oracle/yards.json");
    let rows: Vec<Row> = serde_json::from_str(text).expect("yards.json reads");
    rows.into_iter().map(case).collect()
}

/// The demo's yard, as taped: an L with a swing, a slide and a climber.
pub fn tern_street() -> Yard {
    let corners = [
        [0.0, 0.0],
        [23.995, 0.0],
        [23.992, 9.995],
        [13.991, 10.001],
        [13.994, 18.004],
        [-0.004, 18.0],
    ];
    let outline = |x: f64, y: f64, wide: f64, high: f64| {
        polygon(&[[x, y], [x + wide, y], [x + wide, y + high], [x, y + high]])
    };
    let surface = |outline, is| Surface {
        outline,
        is,
        age_days: Some(2000),
        condition: None,
        at: None,
    };
    let fixture = |name: &str, is, shape, more, height| Fixture {
        name: name.to_owned(),
        is,
        shape,
        height,
        base: None,
        top: None,
        more,
        at: None,
    };
    let swing = More::Swing {
        pivot: 2.0,
        seat: Seat::Belt,
        seat_top: None,
    };
    let exit = Some([at([9.0, 11.0]), at([9.5, 11.0])]);
    let box_of = |x, y, w, h| Footprint::Outline(outline(x, y, w, h));
    let disc = |x, y, radius| Footprint::Disc {
        centre: at([x, y]),
        radius,
    };
    let edge = |i: usize, is| Edge {
        line: LineString(vec![at(corners[i]), at(corners[(i + 1) % 6])]),
        is,
    };
    Yard {
        boundary: polygon(&corners),
        edges: vec![
            edge(0, EdgeKind::Hedge),
            edge(1, EdgeKind::Fence),
            edge(2, EdgeKind::Wall),
            edge(3, EdgeKind::Fence),
            edge(4, EdgeKind::Fence),
            edge(5, EdgeKind::Wall),
        ],
        surfaces: vec![
            surface(polygon(&corners), SurfaceKind::Asphalt),
            surface(outline(0.6, 9.2, 12.8, 8.2), SurfaceKind::Rubber),
            surface(outline(18.7, 4.5, 4.8, 5.0), SurfaceKind::Rubber),
        ],
        fixtures: vec![
            fixture(
                "swing",
                FixtureKind::Swing,
                Footprint::Beam(at([3.0, 13.3]), at([5.5, 13.3])),
                swing,
                None,
            ),
            fixture(
                "slide",
                FixtureKind::Slide,
                box_of(9.0, 11.0, 0.5, 2.4),
                More::Slide { exit },
                Some(1.2),
            ),
            fixture(
                "climber",
                FixtureKind::Climber,
                box_of(20.6, 6.4, 1.6, 1.6),
                More::Nothing,
                Some(1.0),
            ),
            fixture(
                "shed",
                FixtureKind::Shed,
                box_of(14.3, 8.2, 1.8, 1.4),
                More::Nothing,
                Some(2.1),
            ),
            fixture(
                "bench",
                FixtureKind::Bench,
                box_of(0.1, 5.2, 0.45, 1.5),
                More::Nothing,
                None,
            ),
            fixture(
                "oak",
                FixtureKind::Tree,
                disc(1.7, 7.9, 0.25),
                More::Nothing,
                None,
            ),
            fixture(
                "drain",
                FixtureKind::Drain,
                disc(14.6, 4.4, 0.2),
                More::Nothing,
                None,
            ),
        ],
        doors: vec![
            Door {
                name: "hall".to_owned(),
                jambs: [at([0.0, 2.0]), at([0.0, 3.1])],
                hinge: Some(0),
                opens_out: true,
                at: None,
            },
            Door {
                name: "art".to_owned(),
                jambs: [at([17.9, 9.999]), at([17.0, 9.999])],
                hinge: Some(1),
                opens_out: false,
                at: None,
            },
        ],
        gates: vec![Gate {
            name: "street".to_owned(),
            posts: [at([23.994, 2.0]), at([23.994, 3.2])],
            hinge: None,
            opens_in: false,
            at: None,
        }],
        routes: vec![wanted("hall", "street"), wanted("art", "street")],
        stands: vec![at([12.6, 6.6])],
        remarks: Vec::new(),
    }
}

/// A walk of 60 in.
pub fn wanted(from: &str, to: &str) -> Wanted {
    Wanted {
        from: from.to_owned(),
        to: to.to_owned(),
        width: 1.525,
        at: None,
    }
}

pub fn at([x, y]: [f64; 2]) -> Coord<f64> {
    Coord { x, y }
}

pub fn polygon(ring: &[[f64; 2]]) -> Polygon<f64> {
    Polygon::new(
        LineString(ring.iter().copied().map(at).collect()),
        Vec::new(),
    )
}

fn case(row: Row) -> Case {
    let outer = polygon(&row.outer).into_inner().0;
    let holes = row.hole.map(|hole| polygon(&hole).into_inner().0);
    let edges = row.edges.iter().enumerate().map(|(i, kind)| {
        let next = row.outer[(i + 1) % row.outer.len()];
        Edge {
            line: LineString(vec![at(row.outer[i]), at(next)]),
            is: edge_kind(kind),
        }
    });
    let openings = row.openings.iter().enumerate();
    let (doors, gates): (Vec<_>, Vec<_>) = openings.partition(|(i, _)| i % 2 == 0);
    let doors = doors.into_iter().map(|(i, o)| Door {
        name: format!("door{i}"),
        jambs: o.jambs.map(at),
        hinge: o.hinge,
        opens_out: o.pulled,
        at: None,
    });
    let gates = gates.into_iter().map(|(i, o)| Gate {
        name: format!("gate{i}"),
        posts: o.jambs.map(at),
        hinge: o.hinge,
        opens_in: o.pulled,
        at: None,
    });
    let surfaces = row.blocked.iter().map(|outline| Surface {
        outline: polygon(outline),
        is: SurfaceKind::Grass,
        age_days: None,
        condition: None,
        at: None,
    });
    let yard = Yard {
        boundary: Polygon::new(outer, holes.into_iter().collect()),
        edges: edges.collect(),
        surfaces: surfaces.collect(),
        fixtures: row
            .fixtures
            .iter()
            .enumerate()
            .map(|(i, thing)| fixture(i, thing))
            .collect(),
        doors: doors.collect(),
        gates: gates.collect(),
        routes: Vec::new(),
        stands: Vec::new(),
        remarks: Vec::new(),
    };
    let standard = match row.standard.as_str() {
        "us" => Standard::UsHandbook,
        _ => Standard::EuropeanNorm,
    };
    Case {
        yard,
        standard,
        free: row.free,
        most: row.most,
        least: row.least,
    }
}

fn fixture(i: usize, thing: &Thing) -> Fixture {
    let is = kind(&thing.kind);
    let shape = match thing.ring.as_slice() {
        [centre] => Footprint::Disc {
            centre: at(*centre),
            radius: thing.radius.unwrap_or(0.0),
        },
        [a, b] => Footprint::Beam(at(*a), at(*b)),
        ring => Footprint::Outline(polygon(ring)),
    };
    let more = match (is, thing.pivot, thing.members) {
        (FixtureKind::Swing, Some(pivot), _) => {
            let seat = if thing.seat_top.is_some() {
                Seat::Bucket
            } else {
                Seat::Belt
            };
            More::Swing {
                pivot,
                seat,
                seat_top: thing.seat_top,
            }
        }
        (FixtureKind::TyreSwing, _, Some(members)) => More::TyreSwing { members },
        (FixtureKind::Slide, ..) => More::Slide {
            exit: thing.exit.map(|exit| exit.map(at)),
        },
        (FixtureKind::Rocker, ..) => More::Rocker {
            standing: thing.standing.unwrap_or(false),
        },
        _ => More::Nothing,
    };
    let name = format!("{}{i}", thing.kind);
    Fixture {
        name,
        is,
        shape,
        height: thing.height,
        base: None,
        top: None,
        more,
        at: None,
    }
}

fn edge_kind(word: &str) -> EdgeKind {
    match word {
        "wall" => EdgeKind::Wall,
        "fence" => EdgeKind::Fence,
        "hedge" => EdgeKind::Hedge,
        "kerb" => EdgeKind::Kerb,
        "drop" => EdgeKind::Drop,
        "open" => EdgeKind::Open,
        other => panic!("no edge is {other}"),
    }
}

fn kind(word: &str) -> FixtureKind {
    use FixtureKind::*;
    let kinds = [
        ("slide", Slide),
        ("swing", Swing),
        ("tyre-swing", TyreSwing),
        ("climber", Climber),
        ("seesaw", Seesaw),
        ("rocker", Rocker),
        ("roundabout", Roundabout),
        ("house", House),
        ("tree", Tree),
        ("post", Post),
        ("lamp", Lamp),
        ("bench", Bench),
        ("table", Table),
        ("shed", Shed),
        ("building", Building),
        ("planter", Planter),
        ("sandpit", Sandpit),
        ("drain", Drain),
        ("cover", Cover),
        ("hydrant", Hydrant),
        ("other", Other),
    ];
    let found = kinds.into_iter().find(|(name, _)| *name == word);
    found.unwrap_or_else(|| panic!("no fixture is {word}")).1
}

/// A narrow walk between the two fixtures that lie farthest apart.
pub fn far_walk(yard: &Yard) -> Vec<Wanted> {
    let middle = |fixture: &Fixture| match &fixture.shape {
        Footprint::Outline(outline) => outline.exterior().0[0],
        Footprint::Disc { centre, .. } => *centre,
        Footprint::Beam(a, _) => *a,
    };
    let mut far = (0.0, None);
    for one in &yard.fixtures {
        for other in &yard.fixtures {
            let way = middle(one) - middle(other);
            let apart = way.x * way.x + way.y * way.y;
            if apart > far.0 {
                far = (apart, Some((&one.name, &other.name)));
            }
        }
    }
    let walk = |(from, to): (&String, &String)| Wanted {
        width: 0.3,
        ..wanted(from, to)
    };
    far.1.map(walk).into_iter().collect()
}
