//! The demo's choice, part by part: seconds of the wall clock and of the processor.
//!
//! `cargo run --release -p layout --example demo -- <folder> [budget ...]`

use std::time::Instant;

use children::Date;
use footfall::Model;
use geo::Area;
use layout::candidates::{Kit, candidates};
use layout::cost::{Prices, cost};
use layout::programme::Question;
use layout::week::{Week, targets};
use layout::{Progress, Task, Work, curve_from, plan};
use marking::{Figure, Ground, Look, Palette};

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

struct Clock(Instant, f64);

impl Clock {
    fn start() -> Clock {
        Clock(Instant::now(), cpu())
    }
    fn tell(&mut self, what: &str) {
        println!(
            "{what:12} {:7.2} s wall {:7.2} s cpu",
            self.0.elapsed().as_secs_f64(),
            cpu() - self.1
        );
        *self = Clock::start();
    }
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let Some(folder) = arguments.next() else {
        return;
    };
    let budgets: Vec<f64> = arguments.filter_map(|word| word.parse().ok()).collect();
    let mut clock = Clock::start();
    let Some(project) = project::read(std::path::Path::new(&folder)).value else {
        return;
    };
    let ledger = &project.ledger;
    let Some(network) = &project.network else {
        return;
    };
    clock.tell("read");
    let Some(survey) = survey::adjust(network, ledger).value else {
        return;
    };
    clock.tell("survey");
    let Some(yard) = project::yard(&project, &survey).value else {
        return;
    };
    let ground = ground::ground(&yard, project.about.zones, ledger).value;
    clock.tell("ground");
    let Some(date) = project.about.date else {
        return;
    };
    let date = Date {
        year: i32::from(date.year()),
        month: date.month().unsigned_abs(),
    };
    let children = children::roster(&project.children, date, ledger).value;
    let programme = &project.programme;
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        ledger,
    );
    let model = Model::of(ledger);
    let price = |figure: &Figure| cost(figure, Ground::Asphalt, Prices::usual(ledger), ledger);
    let kit = Kit {
        families: marking::families(),
        refused: &[],
        look: &look,
        model: &model,
        price: &price,
    };
    clock.tell("children");
    let candidates = candidates(&children, &programme.weights, &kit, ledger);
    clock.tell("candidates");
    for candidate in &candidates {
        let sum: f64 = candidate.yields.iter().map(|gift| gift.e).sum();
        println!(
            "  {:24} {:6.1} m2 {:6.1} money, yields {sum:7.2}, {:?} {}",
            candidate.name,
            candidate.area,
            candidate.cost,
            candidate.figure.lengths,
            candidate.figure.envelope.exterior().0.len()
        );
    }
    let counts: Vec<u32> = children.iter().map(|child| child.count).collect();
    let week = Week {
        sessions: programme.sessions_a_week,
        minutes: programme.minutes,
        staff: programme.staff,
        yard_area: yard.boundary.unsigned_area(),
    };
    let time = week.time(counts.iter().sum(), ledger);
    let targets = targets(&children, &programme.weights, time.each, ledger);
    println!(
        "{} children, {:.1} m2 free, {time:?}",
        children.len(),
        ground.free.unsigned_area()
    );
    let usual = [project.about.budget.unwrap_or(1e9)];
    for budget in if budgets.is_empty() {
        &usual[..]
    } else {
        &budgets
    } {
        let task = Task {
            question: Question {
                counts: &counts,
                targets: &targets,
                candidates: &candidates,
                time,
                budget: *budget,
                free_area: ground.free.unsigned_area(),
            },
            week,
            yard: &yard,
            ground: &ground,
            seed: project.about.seed,
            work: Work::default(),
        };
        clock = Clock::start();
        let spent = std::sync::Mutex::new((std::collections::BTreeMap::new(), "start", cpu()));
        let hears = |progress: Progress| {
            let Ok(mut spent) = spent.lock() else {
                return true;
            };
            let now = cpu();
            let (before, since) = (spent.1, spent.2);
            *spent.0.entry(before).or_insert(0.0) += now - since;
            spent.1 = match progress {
                Progress::Bounding => "bounding",
                Progress::Laying(_) => "laying",
                Progress::Exchanging(..) => "exchanging",
                Progress::Polishing(..) => "polishing",
            };
            spent.2 = now;
            true
        };
        let Ok(plan) = plan(&task, ledger, &hears) else {
            println!("unsolved");
            return;
        };
        clock.tell(&format!("plan {budget}"));
        if let Ok(spent) = spent.lock() {
            println!("  {:?}, then {} {:.2}", spent.0, spent.1, cpu() - spent.2);
        }
        let money: f64 = plan
            .placed
            .iter()
            .map(|it| candidates[it.candidate].cost)
            .sum();
        println!(
            "  value {:.4} bound {:.4} gap {:.2} % proven {} spent {money:.1} placed {:?}",
            plan.dealt.value,
            plan.bound,
            plan.gap * 100.0,
            plan.proven,
            plan.placed
                .iter()
                .map(|it| candidates[it.candidate].name.as_str())
                .collect::<Vec<_>>()
        );
        println!(
            "  {:?}",
            plan.binds
                .iter()
                .map(|it| (it.of, it.change))
                .collect::<Vec<_>>()
        );
        clock = Clock::start();
        let budgets = [0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 1.75].map(|share| share * budget);
        if let Ok(curve) = curve_from(&plan, &task, &budgets, ledger) {
            clock.tell("curve");
            for worth in curve {
                println!("  {worth:?}");
            }
        }
        for check in plan.checks.iter().filter(|check| check.hard && !check.pass) {
            println!("  broken: {check:?}");
        }
    }
}
