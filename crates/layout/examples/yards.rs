//! Thirty generated yards and classes: how near the layouts come to their bounds, and how
//! long it takes. A third is bound by ground, a third by money, a third by time.
//!
//! `cargo run --release -p layout --example yards -- [first] [count] [ground|money|time] >
//! docs/yards.md`

use std::collections::BTreeMap;
use std::time::Instant;

use children::Skill;
use footfall::Model;
use geo::{Area, Coord, LineString, Polygon};
use ground::Standard;
use ground::yard::*;
use layout::candidates::{Kit, candidates};
use layout::programme::Question;
use layout::week::{Week, targets};
use layout::{Task, Work, plan};
use ledger::Ledger;
use marking::{Figure, Ground, Look, Palette};

/// What yards are short of, in turn.
const KINDS: [&str; 3] = ["ground", "money", "time"];

/// A small source of numbers, the same everywhere.
struct Dice(u64);

impl Dice {
    fn share(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }
}

fn ring(corners: &[(f64, f64)]) -> Polygon<f64> {
    Polygon::new(LineString::from(corners.to_vec()), Vec::new())
}

/// An L, a skewed quadrilateral or a rectangle, with a tree, a slide, a swing or a house
/// where there is room for them; in a cramped yard a climber all the same.
fn yard(dice: &mut Dice, area: f64, cramped: bool) -> Yard {
    let long = dice.between(1.0, 1.9);
    let (w, h) = ((area * long).sqrt(), (area / long).sqrt());
    let corners = match (dice.share() * 3.0) as u8 {
        0 => vec![
            (0.0, 0.0),
            (w * 1.15, 0.0),
            (w * 1.15, h * 0.6),
            (w * 0.55, h * 0.6),
            (w * 0.55, h * 1.2),
            (0.0, h * 1.2),
        ],
        1 => vec![
            (0.0, 0.0),
            (w, h * 0.08),
            (w * 0.95, h * 1.05),
            (w * 0.03, h * 0.95),
        ],
        _ => vec![(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)],
    };
    let turn = dice.between(0.0, 1.5);
    let (sin, cos) = libm::sincos(turn);
    let at = |(x, y): (f64, f64)| (x * cos - y * sin, x * sin + y * cos);
    let corners: Vec<(f64, f64)> = corners.into_iter().map(at).collect();
    let kinds = [
        EdgeKind::Wall,
        EdgeKind::Fence,
        EdgeKind::Hedge,
        EdgeKind::Fence,
        EdgeKind::Wall,
        EdgeKind::Kerb,
    ];
    let edges = (0..corners.len())
        .map(|side| Edge {
            line: LineString::from(vec![corners[side], corners[(side + 1) % corners.len()]]),
            is: kinds[side],
        })
        .collect();
    let mut fixtures = Vec::new();
    let mut fixture = |name: &str, is: FixtureKind, shape: Footprint, height: Option<f64>| {
        fixtures.push(Fixture {
            name: name.to_owned(),
            is,
            shape,
            height,
            base: None,
            top: height,
            more: More::Nothing,
            at: None,
        });
    };
    let spot = |fx: f64, fy: f64| Coord::from(at((w * fx, h * fy)));
    if area > 150.0 {
        fixture(
            "tree",
            FixtureKind::Tree,
            Footprint::Disc {
                centre: spot(dice.between(0.2, 0.5), dice.between(0.2, 0.5)),
                radius: 0.3,
            },
            Some(6.0),
        );
        fixture(
            "drain",
            FixtureKind::Drain,
            Footprint::Disc {
                centre: spot(0.5, 0.3),
                radius: 0.2,
            },
            None,
        );
    }
    if area > 400.0 || cramped {
        let (a, b) = (dice.between(0.1, 0.3), dice.between(0.1, 0.3));
        let corner = |x: f64, y: f64| at((w * a + x, h * b + y));
        let shape = ring(&[
            corner(0.0, 0.0),
            corner(2.0, 0.0),
            corner(2.0, 2.0),
            corner(0.0, 2.0),
        ]);
        fixture(
            "climber",
            FixtureKind::Climber,
            Footprint::Outline(shape),
            Some(1.2),
        );
    }
    let along = |t: f64| Coord::from(at((w * 0.9 * t, 0.0)));
    let door = Door {
        name: "hall".to_owned(),
        jambs: [along(0.3), along(0.3 + 1.0 / w)],
        hinge: None,
        opens_out: true,
        at: None,
    };
    Yard {
        boundary: ring(&corners),
        edges,
        surfaces: vec![Surface {
            outline: ring(&corners),
            is: SurfaceKind::Asphalt,
            age_days: Some(2000),
            condition: Some(Condition::Sound),
            at: None,
        }],
        fixtures,
        doors: vec![door],
        gates: Vec::new(),
        routes: Vec::new(),
        stands: vec![spot(0.3, 0.1), spot(0.5, 0.5)],
        remarks: Vec::new(),
    }
}

/// Seconds of user and system that the process has spent, where the system tells.
fn cpu() -> f64 {
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    let fields: Vec<&str> = stat
        .rsplit(')')
        .next()
        .unwrap_or("")
        .split_whitespace()
        .collect();
    let ticks = |at: usize| -> f64 {
        fields
            .get(at)
            .and_then(|word| word.parse().ok())
            .unwrap_or(f64::NAN)
    };
    (ticks(11) + ticks(12)) / 100.0
}

fn main() {
    let arguments: Vec<usize> = std::env::args()
        .skip(1)
        .filter_map(|word| word.parse().ok())
        .collect();
    let first = arguments.first().copied().unwrap_or(0);
    let count = arguments.get(1).copied().unwrap_or(30);
    let only = std::env::args().find(|word| KINDS.contains(&word.as_str()));
    let Ok(ledger) = Ledger::shipped() else {
        return;
    };
    let model = Model::of(&ledger);
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        &ledger,
    );
    println!(
        "# Thirty generated yards\n\n\
         Made by `cargo run --release -p layout --example yards > docs/yards.md`. Yards, classes \
         and prices are invented by the program from fixed seeds; a third is short of ground, \
         a third of money, a third of time. *Gap* is (bound - value) / bound: first with the \
         programme's own bound, which knows ground only by its area; then with the bound by \
         shape, which has a row more for each set of figures that is proven to have no place \
         together (*rows*; sought only where the best set would fill the ground). Seconds \
         are of the wall clock, then of the processor (user and system), for sizing and \
         search together.\n\n\
         | yard | short of | children | free m2 | budget | candidates | placed | value | bound | gap % | by shape | gap % | rows | s wall | s cpu | hard rules |\n\
         |--:|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|---|"
    );
    let mut gaps: BTreeMap<(&str, &str), Vec<f64>> = BTreeMap::new();
    for case in first..first + count {
        let mut dice = Dice(0x5EED + 7919 * case as u64);
        dice.share();
        let kind = KINDS[case % 3];
        if only.as_ref().is_some_and(|only| only != kind) {
            continue;
        }
        let area = if kind == "ground" {
            dice.between(80.0, 140.0)
        } else {
            dice.between(240.0, 900.0)
        };
        let yard = yard(&mut dice, area, kind == "ground");
        let ground = ground::ground(&yard, Standard::UsHandbook, &ledger).value;
        let many = dice.between(10.0, 40.99) as u32;
        let rows: Vec<(f64, u32)> = (0..many)
            .map(|_| ((dice.between(3.0, 6.0) * 12.0).floor() / 12.0, 1))
            .collect();
        let children = children::counts(&rows, &ledger).value;
        let weights: BTreeMap<Skill, f64> = Skill::TAUGHT
            .into_iter()
            .map(|skill| (skill, 1.0))
            .collect();
        let (started, spent) = (Instant::now(), cpu());
        let price = |figure: &Figure| {
            let painted: f64 = figure.paint_area().iter().map(|(_, area)| area).sum();
            12.0 + painted * 2.0 / 5.0 * 28.0 + figure.outline_length() * 0.15
        };
        let kit = Kit {
            families: marking::families(),
            refused: &[],
            look: &look,
            model: &model,
            price: &price,
        };
        let candidates = candidates(&children, &weights, &kit, &ledger);
        let (minutes, sessions) = if kind == "time" { (18.0, 2) } else { (30.0, 3) };
        let week = Week {
            sessions,
            minutes,
            staff: 2,
            yard_area: yard.boundary.unsigned_area(),
        };
        let counts: Vec<u32> = children.iter().map(|child| child.count).collect();
        let time = week.time(counts.iter().sum(), &ledger);
        let targets = targets(&children, &weights, time.each, &ledger);
        let free_area = ground.free.unsigned_area();
        let budget = if kind == "money" { 110.0 } else { 5000.0 };
        let question = Question {
            counts: &counts,
            targets: &targets,
            candidates: &candidates,
            time,
            budget,
            free_area,
        };
        let task = Task {
            question,
            week,
            yard: &yard,
            ground: &ground,
            seed: 1,
            work: Work::default(),
        };
        let plan = match plan(&task, &ledger, &|_| true) {
            Ok(plan) => plan,
            Err(fault) => {
                println!("{case:4} {kind:7} {fault:?}");
                continue;
            }
        };
        for (which, gap) in [("by area", plan.gap), ("by shape", plan.shape.gap)] {
            for kind in [kind, "all"] {
                gaps.entry((kind, which)).or_default().push(gap * 100.0);
            }
        }
        let broken: Vec<_> = plan
            .checks
            .iter()
            .filter(|check| check.hard && !check.pass)
            .map(|check| (check.rule, check.marking.clone(), check.actual))
            .collect();
        println!(
            "| {case} | {kind} | {many} | {free_area:.1} | {budget:.0} | {} | {} | {:.4} | {:.4} | {:.2} | {:.4} | {:.2} | {} | {:.1} | {:.1} | {} |",
            candidates.len(),
            plan.placed.len(),
            plan.dealt.value,
            plan.bound,
            plan.gap * 100.0,
            plan.shape.bound,
            plan.shape.gap * 100.0,
            plan.shape.apart.len(),
            started.elapsed().as_secs_f64(),
            cpu() - spent,
            if broken.is_empty() {
                "hold".to_owned()
            } else {
                format!("{broken:?}")
            }
        );
    }
    println!();
    for ((kind, which), mut list) in gaps {
        list.sort_by(f64::total_cmp);
        let worst = list.last().copied().unwrap_or_default();
        let half = list.len() / 2;
        let median = if list.len().is_multiple_of(2) {
            (list[half - 1] + list[half]) / 2.0
        } else {
            list[half]
        };
        println!(
            "- {kind}, {which}: median gap {median:.2} %, worst {worst:.2} %, of {}",
            list.len()
        );
    }
}
