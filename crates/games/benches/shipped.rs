//! Reading every shipped game, as the program does once a run.

use criterion::{Criterion, criterion_group, criterion_main};
use games::{SHIPPED, read};

fn shipped(c: &mut Criterion) {
    c.bench_function("read every shipped game", |b| {
        b.iter(|| {
            SHIPPED
                .iter()
                .filter(|(name, text)| read(text, name, &[]).value.is_some())
                .count()
        });
    });
}

criterion_group!(benches, shipped);
criterion_main!(benches);
