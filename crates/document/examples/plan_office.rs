//! Plans a yard and a class of our own invention by hand and sets its papers, to be looked
//! at.
//!
//! `cargo run --release -p document --example plan_office -- OUT`

use std::collections::BTreeMap;
use std::path::PathBuf;

use children::Skill;
use document::drawing::svg;
use document::drawing::yard::Plan;
use document::planned::{AtBudget, Planned, plan_drawing, plan_papers, trial_papers};
use document::sheet::{Paper, Sheet};
use geo::{Area, Coord};
use layout::candidates::{Kit, activities, candidates};
use layout::cost::{Prices, cost};
use layout::programme::Question;
use layout::week::{Week, targets};
use layout::{Pose, Task, Work};
use ledger::Ledger;
use marking::{Figure, Ground, Look, Palette};
use unit::Units;
use words::Language;

#[path = "../tests/common/mod.rs"]
mod common;

/// Candidates by family and group, and where they lie: metres and degrees.
const LAID: [(&str, f64, f64, f64); 4] = [
    ("court", 5.2, 7.9, 0.0),
    ("brook", 4.6, 3.4, 0.0),
    ("wave-lane", 3.0, 8.0, 0.0),
    ("spots", 12.0, 3.2, 0.0),
];

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let out = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "out".into()));
    std::fs::create_dir_all(&out)?;
    let ledger = Ledger::shipped()?;
    let survey = survey::adjust(&common::network(false), &ledger)
        .value
        .ok_or("no survey")?;
    let yard = common::yard(&survey);
    let ground = ground::ground(&yard, ground::Standard::UsHandbook, &ledger).value;
    let ages = [(3.0, 8), (4.0, 10), (5.0, 6)];
    let class = children::counts(&ages, &ledger).value;
    let counts: Vec<u32> = class.iter().map(|child| child.count).collect();
    let weights: BTreeMap<Skill, f64> = Skill::TAUGHT
        .into_iter()
        .map(|skill| (skill, 1.0))
        .collect();
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        &ledger,
    );
    let model = footfall::Model::of(&ledger);
    let price = |figure: &Figure| cost(figure, Ground::Asphalt, Prices::usual(&ledger), &ledger);
    let kit = Kit {
        families: marking::families(),
        refused: &[],
        look: &look,
        model: &model,
        price: &price,
    };
    let mut could = candidates(&class, &weights, &kit, &ledger);
    let week = Week {
        sessions: 3,
        minutes: 30.0,
        staff: 2,
        yard_area: yard.boundary.unsigned_area(),
    };
    let time = week.time(counts.iter().sum(), &ledger);
    let wanted = targets(&class, &weights, time.each, &ledger);
    // laid by hand, as people would: locked candidates are never moved
    for (family, x, y, turn) in LAID {
        if let Some(one) = could.iter_mut().find(|one| one.family == family) {
            one.locked = Some(Pose {
                at: Coord { x, y },
                turn: f64::to_radians(turn),
                mirrored: false,
            });
        }
    }
    let by_hand = std::env::args().nth(2).is_some_and(|word| word == "hand");
    if !by_hand {
        could.iter_mut().for_each(|one| one.locked = None);
    }
    let task = Task {
        question: Question {
            counts: &counts,
            targets: &wanted,
            candidates: &could,
            time,
            budget: 400.0,
            free_area: ground.free.unsigned_area(),
        },
        week,
        yard: &yard,
        ground: &ground,
        seed: 7,
        work: Work::default(),
    };
    let laid = layout::plan(&task, &ledger, &|_| true).map_err(|why| why.0)?;
    let mut record = plan::Plan::new("Tern Street", 7);
    record.children = Some(class.iter().map(plan::Child::of).collect());
    let mut own = Vec::new();
    let (mut markings, mut footfall) = (Vec::new(), Vec::new());
    for placed in &laid.placed {
        let Some(one) = could.get(placed.candidate) else {
            continue;
        };
        let pose = placed.pose;
        let figure = one.figure.placed(pose.at, pose.turn, pose.mirrored);
        let told = plan::Laid {
            name: &one.name,
            candidate: Some(&one.name),
            at: [pose.at.x, pose.at.y],
            turn: pose.turn.to_degrees(),
            mirrored: pose.mirrored,
            locked: false,
            words: None,
        };
        markings.push(plan::Marking::of(&told, &figure));
        let gaits = marking::family(&one.family)
            .map_or_else(Vec::new, |family| activities(family, &weights));
        for rows in footfall::class(std::slice::from_ref(&one.figure), &class, &gaits, &model)
            .into_iter()
            .flatten()
        {
            for (child, row) in class.iter().zip(&rows) {
                if !row.routes.is_empty() {
                    footfall.push(plan::Footfall::of(&one.name, &figure, &child.name, row));
                }
            }
        }
        own.push(one.figure.clone());
    }
    record.markings = Some(markings);
    record.footfall = Some(footfall);
    record.layout = Some(plan::Layout::of(
        8,
        &weights,
        &class,
        &task,
        &laid,
        &[],
        &ledger,
    ));
    record.audit = Some(laid.checks.iter().map(plan::Check::of).collect());
    let curve: Vec<AtBudget> = [
        (100.0, 0.55, 0.62),
        (200.0, 0.8, 0.86),
        (300.0, 0.9, 0.94),
        (400.0, 1.0, 1.0),
        (600.0, 1.02, 1.04),
    ]
    .map(|(budget, value, bound)| AtBudget {
        budget,
        value: value * laid.dealt.value,
        bound: bound * laid.bound,
    })
    .to_vec();
    let planned = Planned {
        yard: Plan {
            yard: &yard,
            ground: &ground,
            survey: Some(&survey),
        },
        record: &record,
        figures: &own,
        surface: Ground::Asphalt,
        money: "EUR",
        budget: Some(400.0),
        sessions: (3, 30.0),
        curve: &curve,
        in_colour: true,
        ledger: &ledger,
    };
    for (language, units, paper, large) in [
        (Language::En, Units::Metres, Paper::A4, false),
        (Language::Es, Units::Metres, Paper::A4, false),
        (Language::En, Units::Feet, Paper::Letter, false),
        (Language::Es, Units::Feet, Paper::Letter, true),
    ] {
        let sheet = Sheet {
            name: "Tern Street",
            language,
            units,
            paper,
            date: "2026-09-01",
            large,
            north: Some(38.0),
            credit: None,
            assumed: &[],
        };
        let tag = format!(
            "{}-{}-{}",
            language.tag(),
            paper.name().to_lowercase(),
            if large { "large" } else { "plain" }
        );
        let drawn = plan_drawing(&sheet, &planned);
        std::fs::write(
            out.join(format!("plan-{tag}.svg")),
            svg::alone(&drawn.scene, &drawn.told),
        )?;
        std::fs::write(
            out.join(format!("plan-{tag}.pdf")),
            plan_papers(&sheet, &planned, &drawn)?,
        )?;
        std::fs::write(
            out.join(format!("trial-{tag}.pdf")),
            trial_papers(&sheet, &planned)?,
        )?;
        println!(
            "{tag}: {:?} {:?} inset {:?}",
            drawn.layout.scale, drawn.layout.size, drawn.layout.inset
        );
    }
    Ok(())
}
