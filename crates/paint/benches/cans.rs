//! How long the cheapest cans take, over what is needed.

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use paint::{Size, cheapest};

fn benches(c: &mut Criterion) {
    let shelf: Vec<Size> = [
        (0.75, 14.0),
        (1.0, 17.0),
        (2.5, 35.0),
        (5.0, 59.0),
        (10.0, 115.0),
    ]
    .into_iter()
    .map(|(litres, price)| Size {
        litres,
        price: Some(price),
    })
    .collect();
    for need in [1.472, 9.1, 60.0, 1_000.0] {
        c.bench_with_input(
            BenchmarkId::new("cans for litres", need),
            &need,
            |b, need| {
                b.iter(|| cheapest(*need, &shelf));
            },
        );
    }
}

criterion_group!(all, benches);
criterion_main!(all);
