//! How long the plan of a class's weeks takes, its bound alone, and its simulation.

#[path = "../tests/common/mod.rs"]
mod common;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use ledger::Ledger;
use sessions::{Manner, plan, simulate};

fn benches(c: &mut Criterion) {
    let Ok(ledger) = Ledger::shipped() else {
        return;
    };
    let mut group = c.benchmark_group("weeks");
    group.sample_size(10);
    for (children, stations, staff) in [(16, 6, 2), (18, 7, 2), (24, 10, 3), (40, 9, 3)] {
        let case = common::Case {
            children,
            stations,
            staff,
            weeks: 8,
        };
        let mut programme = common::programme(4, &case);
        let name = format!("{children} children, {stations} stations");
        group.bench_with_input(
            BenchmarkId::new("plan", &name),
            &programme,
            |b, programme| {
                b.iter(|| plan(programme, &ledger));
            },
        );
        let Ok(planned) = plan(&programme, &ledger) else {
            return;
        };
        let manner = Manner::usual(&ledger);
        group.bench_with_input(
            BenchmarkId::new("simulate 100 times", &name),
            &programme,
            |b, programme| {
                b.iter(|| simulate(programme, &planned.value, &manner, &ledger));
            },
        );
        programme.work.exchanges = 0;
        group.bench_with_input(
            BenchmarkId::new("bound and first seats", &name),
            &programme,
            |b, programme| {
                b.iter(|| plan(programme, &ledger));
            },
        );
    }
}

criterion_group!(all, benches);
criterion_main!(all);
