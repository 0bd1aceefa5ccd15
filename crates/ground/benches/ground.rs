//! A yard as it is: Tern Street; and yards with 40 fixtures.

#![allow(clippy::expect_used)]

#[path = "../tests/common/mod.rs"]
mod common;

use criterion::{Criterion, criterion_group, criterion_main};
use ground::{Standard, ground};
use ledger::Ledger;

fn yards(bench: &mut Criterion) {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let street = common::tern_street();
    bench.bench_function("tern street", |b| {
        b.iter(|| ground(&street, Standard::UsHandbook, &ledger));
    });
    let mut street = common::tern_street();
    street.routes.clear();
    bench.bench_function("tern street, no routes", |b| {
        b.iter(|| ground(&street, Standard::UsHandbook, &ledger));
    });
    let mut crowded = common::cases()
        .into_iter()
        .find(|case| case.yard.fixtures.len() == 40)
        .expect("one is crowded");
    bench.bench_function("40 fixtures", |b| {
        b.iter(|| ground(&crowded.yard, crowded.standard, &ledger));
    });
    crowded.yard.routes = common::far_walk(&crowded.yard);
    bench.bench_function("40 fixtures and a walk", |b| {
        b.iter(|| ground(&crowded.yard, crowded.standard, &ledger));
    });
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(20);
    targets = yards
}
criterion_main!(benches);
