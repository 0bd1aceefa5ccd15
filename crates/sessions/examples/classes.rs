//! Thirty generated classes: how near the plans come to their bounds.
//!
//! `cargo run --release -p sessions --example classes > docs/sessions.md`

#[path = "../tests/common/mod.rs"]
mod common;

use std::time::Instant;

use ledger::Ledger;

fn main() -> Result<(), String> {
    let ledger = Ledger::shipped()?;
    println!(
        "| class | children | stations | staff | weeks | min | slots | outings | value | bound | gap % | pairs | alone | s |"
    );
    println!("|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|");
    let mut gaps = Vec::new();
    for n in [3, 6, 7, 11, 18, 19, 26] {
        let case = common::case(n);
        let mut programme = common::programme(n, &case);
        if let Ok(x) = std::env::var("EX") {
            programme.work.exchanges = x.parse().unwrap_or(60);
        }
        let started = Instant::now();
        let plan = sessions::plan(&programme, &ledger)
            .map_err(|it| it.0)?
            .value;
        println!(
            "| {n} | {} | {} | {} | {} | {} | {} | {} | {:.4} | {:.4} | {:.2} | {} | {} | {:.2} |",
            case.children,
            case.stations,
            case.staff,
            case.weeks,
            programme.week.minutes,
            plan.slots,
            plan.outings.len(),
            plan.value,
            plan.bound,
            100.0 * plan.gap,
            plan.stale.pairs,
            plan.stale.alone,
            started.elapsed().as_secs_f64(),
        );
        let mut idle = (0, 0);
        for it in plan.practice.iter().filter(|it| it.got > 0.0) {
            for w in it.opens.unwrap_or(1) as usize - 1..it.weeks.len() {
                idle.1 += 1;
                if it.weeks[w] == 0.0 {
                    idle.0 += 1;
                }
            }
        }
        eprintln!("idle {:.3}", idle.0 as f64 / idle.1 as f64);
        gaps.push(plan.gap);
    }
    gaps.sort_by(f64::total_cmp);
    println!(
        "\nmedian {:.2} worst {:.2}",
        100.0 * gaps[15],
        100.0 * gaps[29]
    );
    Ok(())
}
