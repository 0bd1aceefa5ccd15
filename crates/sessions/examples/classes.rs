//! The thirty generated classes of the tests: how near the plans come to their bounds.
//!
//! `cargo run --release -p sessions --example classes`

#[path = "../tests/common/mod.rs"]
mod common;

use std::time::Instant;

use ledger::Ledger;

fn main() -> Result<(), String> {
    let ledger = Ledger::shipped()?;
    println!(
        "| class | children | stations | staff | weeks | minutes | slots | outings | value | bound | gap % | pairs | alone | s |"
    );
    println!("|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|");
    let mut gaps = Vec::new();
    for n in 0..30 {
        let case = common::case(n);
        let programme = common::programme(n, &case);
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
        gaps.push(plan.gap);
    }
    gaps.sort_by(f64::total_cmp);
    println!(
        "\nMedian gap {:.2} %, worst {:.2} %, of {}.",
        100.0 * gaps[gaps.len() / 2],
        100.0 * gaps[gaps.len() - 1],
        gaps.len()
    );
    Ok(())
}
