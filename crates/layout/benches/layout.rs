//! How long the audit of one moved marking takes, and a proof, over the size of a class.

#[path = "../tests/common/mod.rs"]
mod common;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use layout::programme::{Limits, Programme};
use layout::{Surroundings, audit::audit_one};
use ledger::Ledger;

fn benches(c: &mut Criterion) {
    let Ok(ledger) = Ledger::shipped() else {
        return;
    };
    for (scale, sizes) in common::cases() {
        let world = common::world(common::STILL, scale, &sizes);
        let plan = world.plan(&ledger);
        let around = Surroundings::new(&world.yard, &world.ground, &ledger);
        let placed: Vec<_> = plan
            .placed
            .iter()
            .map(|placed| (&world.candidates[placed.candidate], placed.pose))
            .collect();
        c.bench_with_input(
            BenchmarkId::new("audit one of", placed.len()),
            &placed,
            |b, placed| {
                b.iter(|| audit_one(0, placed, &around, &ledger));
            },
        );
        let question = world.question(&ledger);
        c.bench_with_input(
            BenchmarkId::new("prove", sizes.len()),
            &question,
            |b, question| {
                b.iter(|| {
                    Programme::new(question, &ledger).choose(&Limits::default(), 1000, &|| true)
                });
            },
        );
    }
}

criterion_group!(layout, benches);
criterion_main!(layout);
