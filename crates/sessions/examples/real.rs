//! Plans on real figures: the demo project from survey to sessions, or generated classes on
//! figures that were sized for them, drawn by lot.
//!
//! `cargo run --release -p sessions --example real -- demo` or `-- classes 30`

use std::time::Instant;

use chance::Chance;
use children::{Child, Date, Entry, Skill};
use footfall::Model;
use geo::Area;
use layout::candidates::{Kit, activities, candidates};
use layout::cost::{Prices, cost};
use layout::programme::Question;
use layout::week::{Week, targets};
use layout::{Candidate, Task, Work as LayoutWork};
use ledger::Ledger;
use marking::{Figure, Ground, Look, Palette};
use sessions::*;

type Weights = std::collections::BTreeMap<Skill, f64>;

fn look(ledger: &Ledger) -> Look {
    Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        ledger,
    )
}

fn sized(children: &[Child], weights: &Weights, model: &Model, ledger: &Ledger) -> Vec<Candidate> {
    let look = look(ledger);
    let price = |figure: &Figure| cost(figure, Ground::Asphalt, Prices::usual(ledger), ledger);
    let kit = Kit {
        families: marking::families(),
        refused: &[],
        look: &look,
        model,
        price: &price,
    };
    candidates(children, weights, &kit, ledger)
}

fn stations(
    chosen: &[&Candidate],
    children: &[Child],
    weights: &Weights,
    model: &Model,
    ledger: &Ledger,
) -> Vec<Station> {
    chosen
        .iter()
        .map(|candidate| {
            let family = marking::families()
                .iter()
                .find(|it| it.name() == candidate.family);
            let acts = family.map_or(Vec::new(), |family| activities(*family, weights));
            let figure = std::slice::from_ref(&candidate.figure);
            let footfalls = footfall::class(figure, children, &acts, model);
            let rows = footfalls.first().map_or(&[][..], |rows| rows);
            let mut station = Station::of(
                &candidate.name,
                candidate.figure.tracks,
                &acts,
                rows,
                children,
                ledger,
            );
            for gait in ["jump", "hop", "leap", "gallop", "slide", "skip", "court"] {
                for level in 1..=3 {
                    station.games.push(Game {
                        name: format!("{gait}-{level}"),
                        gait: gait.to_owned(),
                        level,
                        after: Vec::new(),
                    });
                }
            }
            station
        })
        .collect()
}

fn pupils(children: &[Child]) -> Vec<Pupil> {
    children
        .iter()
        .enumerate()
        .map(|(at, child)| Pupil {
            code: format!("c{at:02}"),
            age: child.age,
            known: Skill::TAUGHT
                .into_iter()
                .filter(|skill| child.skills.get(skill).is_some_and(|it| it.can >= 0.8))
                .collect(),
        })
        .collect()
}

fn tell(name: &str, programme: &Programme, layout_value: Option<f64>, ledger: &Ledger) -> f64 {
    let started = Instant::now();
    let noted = match plan(programme, ledger) {
        Ok(noted) => noted,
        Err(fault) => {
            println!("{name}: unsolved: {}", fault.0);
            return 1.0;
        }
    };
    let (plan, planned) = (noted.value, started.elapsed().as_secs_f64());
    let started = Instant::now();
    let as_planned = simulate(programme, &plan, &Manner::as_planned(20), ledger);
    let usual = simulate(programme, &plan, &Manner::usual(ledger), ledger);
    let simulated = started.elapsed().as_secs_f64();
    let sum = |of: &dyn Fn(&sessions::simulate::Expected) -> f64, told: &Forecast| {
        told.children.iter().map(of).sum::<f64>()
    };
    let contacts = sum(&|it| it.contacts.mean, &as_planned);
    let closed = sum(&|it| it.contacts_closed, &as_planned);
    let layout = sum(&|it| it.contacts_layout, &as_planned);
    let longest = usual
        .stations
        .iter()
        .map(|it| it.longest)
        .fold(0.0, f64::max);
    let turns: u64 = usual.stations.iter().map(|it| it.turns).sum();
    let over: f64 = usual
        .stations
        .iter()
        .map(|it| it.over * it.turns as f64)
        .sum();
    let mean: f64 = usual
        .stations
        .iter()
        .map(|it| it.mean * it.turns as f64)
        .sum();
    println!(
        "| {name} | {} | {} | {} | {} | {} | {} | {:.4} | {:.4} | {:.2} | {} | {} | {:.1} | {:.1} | {:.1} | {:.1} | {:.2} | {planned:.2} | {simulated:.2} |",
        programme.children.len(),
        programme.stations.len(),
        programme.week.staff,
        programme.weeks,
        plan.slots,
        plan.outings.len(),
        plan.value,
        plan.bound,
        100.0 * plan.gap,
        plan.stale.pairs,
        plan.stale.alone,
        100.0 * (contacts / closed - 1.0),
        100.0 * (contacts / layout - 1.0),
        mean / turns.max(1) as f64,
        longest,
        100.0 * over / turns.max(1) as f64,
    );
    if let Some(value) = layout_value {
        for failing in [
            sessions::turn::Failing::GoOn,
            sessions::turn::Failing::Retry,
            sessions::turn::Failing::GoBack,
        ] {
            let manner = Manner {
                failing,
                ..Manner::usual(ledger)
            };
            let told = simulate(programme, &plan, &manner, ledger);
            let many = programme.children.len() as f64;
            let turns: u64 = told.stations.iter().map(|it| it.turns).sum();
            let over: f64 = told
                .stations
                .iter()
                .map(|it| it.over * it.turns as f64)
                .sum();
            let mean: f64 = told
                .stations
                .iter()
                .map(|it| it.mean * it.turns as f64)
                .sum();
            println!(
                "\n{failing:?}: contacts {:.0} (sd {:.0}), active {:.1} min (sd {:.1}), walking {:.1}, in line {:.1} (sd {:.1}); mean wait {:.1} s, longest {:.1} s, over 15 s {:.2} %",
                sum(&|it| it.contacts.mean, &told) / many,
                sum(&|it| it.contacts.sd, &told) / many,
                sum(&|it| it.active.mean, &told) / many,
                sum(&|it| it.active.sd, &told) / many,
                sum(&|it| it.walking.mean, &told) / many,
                sum(&|it| it.waiting.mean, &told) / many,
                sum(&|it| it.waiting.sd, &told) / many,
                mean / turns.max(1) as f64,
                told.stations
                    .iter()
                    .map(|it| it.longest)
                    .fold(0.0, f64::max),
                100.0 * over / turns.max(1) as f64,
            );
        }
        println!("\nlayout value {value:.4}");
        let catalogue = words::Catalogue::of(words::Language::En);
        for note in &noted.notes {
            println!(
                "  {}",
                words::render(
                    note,
                    &Default::default(),
                    catalogue,
                    unit::Units::Metres,
                    false
                )
            );
        }
        let first = plan.sessions.iter().take(2);
        for session in first {
            println!("{:?} outing {}", session.when, session.outing);
            for (slot, groups) in session.slots.iter().enumerate() {
                for group in groups {
                    let codes: Vec<&str> = group
                        .seats
                        .iter()
                        .map(|seat| programme.children[seat.child].code.as_str())
                        .collect();
                    println!(
                        "  {slot} {} {} {codes:?}",
                        programme.stations[group.station].name, group.gait
                    );
                }
            }
        }
    }
    plan.gap
}

const HEAD: &str = "| class | children | stations | staff | weeks | slots | outings | value | bound | gap % | pairs | alone | simulated to closed % | to layout % | mean wait s | longest s | over 15 s % | plan s | simulate s |\n|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|";

fn demo() -> Option<()> {
    let project = project::read(std::path::Path::new("demo")).value?;
    let ledger = &project.ledger;
    let survey = survey::adjust(project.network.as_ref()?, ledger).value?;
    let yard = project::yard(&project, &survey).value?;
    let ground = ground::ground(&yard, project.about.zones, ledger).value;
    let date = project.about.date?;
    let date = Date {
        year: i32::from(date.year()),
        month: date.month().unsigned_abs(),
    };
    let children = children::roster(&project.children, date, ledger).value;
    let model = Model::of(ledger);
    let about = &project.programme;
    let candidates = sized(&children, &about.weights, &model, ledger);
    let week = Week {
        sessions: about.sessions_a_week,
        minutes: about.minutes,
        staff: about.staff,
        yard_area: yard.boundary.unsigned_area(),
    };
    let counts: Vec<u32> = children.iter().map(|child| child.count).collect();
    let time = week.time(counts.iter().sum(), ledger);
    let targets = targets(&children, &about.weights, time.each, ledger);
    let task = Task {
        question: Question {
            counts: &counts,
            targets: &targets,
            candidates: &candidates,
            time,
            budget: project.about.budget.unwrap_or(1e9),
            free_area: ground.free.unsigned_area(),
        },
        week,
        yard: &yard,
        ground: &ground,
        seed: project.about.seed,
        work: LayoutWork::default(),
    };
    let layout = layout::plan(&task, ledger, &|_| true).ok()?;
    let chosen: Vec<&Candidate> = layout
        .placed
        .iter()
        .map(|it| &candidates[it.candidate])
        .collect();
    let programme = Programme {
        weeks: about.weeks,
        week,
        children: pupils(&children),
        targets,
        stations: stations(&chosen, &children, &about.weights, &model, ledger),
        order: usual_order(),
        seed: project.about.seed,
        work: Work::default(),
    };
    println!("{HEAD}");
    tell("demo", &programme, Some(layout.dealt.value), ledger);
    Some(())
}

fn classes(many: u64) -> Result<(), String> {
    let ledger = Ledger::shipped()?;
    let model = Model::of(&ledger);
    let weights: Weights = Skill::TAUGHT
        .into_iter()
        .map(|skill| (skill, 1.0))
        .collect();
    println!("{HEAD}");
    let mut gaps = Vec::new();
    let first = std::env::args()
        .nth(3)
        .and_then(|it| it.parse().ok())
        .unwrap_or(0);
    for n in first..first + many {
        let mut dice = Chance::stream(31, n);
        let entries: Vec<Entry> = (0..10 + dice.below(31))
            .map(|at| {
                let months = 36 + dice.below(36) as i32;
                let born = 2026 * 12 + 8 - months;
                Entry::new(format!("c{at:02}"), (born / 12, (born % 12 + 1) as u8))
            })
            .collect();
        let date = Date {
            year: 2026,
            month: 9,
        };
        let children = children::roster(&entries, date, &ledger).value;
        let week = Week {
            sessions: 3,
            minutes: [26.0, 30.0, 34.0, 40.0][dice.below(4)],
            staff: 2 + dice.below(2) as u32,
            yard_area: 300.0,
        };
        let targets = targets(
            &children,
            &weights,
            f64::from(week.sessions) * (week.minutes - 8.0),
            &ledger,
        );
        let all = sized(&children, &weights, &model, &ledger);
        let mut chosen: Vec<&Candidate> = Vec::new();
        let wanted = 3 + n as usize % 7;
        for _ in 0..1000 {
            let Some(some) = all.get(dice.below(all.len())) else {
                break;
            };
            if chosen.len() < wanted && chosen.iter().all(|it| it.family != some.family) {
                chosen.push(some);
            }
        }
        let programme = Programme {
            weeks: 6 + dice.below(5) as u32,
            week,
            children: pupils(&children),
            targets,
            stations: stations(&chosen, &children, &weights, &model, &ledger),
            order: usual_order(),
            seed: n,
            work: Work::default(),
        };
        gaps.push(tell(&n.to_string(), &programme, None, &ledger));
    }
    gaps.sort_by(f64::total_cmp);
    if let (Some(middle), Some(worst)) = (gaps.get(gaps.len() / 2), gaps.last()) {
        println!(
            "\nMedian gap {:.2} %, worst {:.2} %, of {}.",
            100.0 * middle,
            100.0 * worst,
            gaps.len()
        );
    }
    Ok(())
}

fn main() -> Result<(), String> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match words.first().map(String::as_str) {
        Some("demo") => demo().ok_or("the demo cannot be planned".to_owned()),
        _ => classes(words.get(1).and_then(|it| it.parse().ok()).unwrap_or(30)),
    }
}
