//! How long a thousand steps and the bottom-left start take, over published instances.

#[path = "../tests/common/mod.rs"]
mod common;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use nest::{Band, Budget, strip};

fn benches(c: &mut Criterion) {
    let mut group = c.benchmark_group("strip");
    group.sample_size(10);
    for name in ["fu", "dagli", "shapes0", "blaz1", "swim"] {
        let instance = common::instance(name);
        let band = Band {
            height: instance.height,
            margin: 0.0,
            gap: 0.0,
        };
        for steps in [0, 1000] {
            let budget = Budget {
                steps,
                walks: 1,
                seed: 1,
            };
            group.bench_with_input(BenchmarkId::new(name, steps), &budget, |b, budget| {
                b.iter(|| strip(&instance.parts, &band, budget));
            });
        }
    }
    group.finish();
}

criterion_group!(all, benches);
criterion_main!(all);
