//! A practice of four rounds, all skills: every clip that may be shown is made and measured.
#![allow(clippy::expect_used, missing_docs)]

use children::Skill;
use criterion::{Criterion, criterion_group, criterion_main};
use ledger::Ledger;

fn practice(c: &mut Criterion) {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    c.bench_function("48 clips of all skills", |b| {
        b.iter(|| course::clips(1, 48, &Skill::ALL, &ledger));
    });
}

criterion_group!(benches, practice);
criterion_main!(benches);
