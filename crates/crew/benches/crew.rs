//! How long a plan takes, over the people who come, and what it comes to.

#[path = "../tests/common/mod.rs"]
mod common;

use crew::crew;
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use ledger::Ledger;

fn benches(c: &mut Criterion) {
    let Ok(ledger) = Ledger::shipped() else {
        return;
    };
    let mut group = c.benchmark_group("plan of a yard");
    group.sample_size(10);
    for people in [2, 4, 6, 8] {
        let job = common::yard::yard(people);
        if let Some(plan) = crew(&job, &ledger).value {
            println!(
                "{people} people, {} tasks: done after {:.2} h, bound {:.2} h, {} orders, {} partial plans",
                plan.tasks.len(),
                (plan.end_s - job.windows[0].from_s) as f64 / 3600.0,
                (plan.bound_s - job.windows[0].from_s) as f64 / 3600.0,
                plan.tries,
                plan.nodes,
            );
        }
        group.bench_with_input(BenchmarkId::from_parameter(people), &job, |b, job| {
            b.iter(|| crew(job, &ledger));
        });
    }
    group.finish();
}

criterion_group!(all, benches);
criterion_main!(all);
