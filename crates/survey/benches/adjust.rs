//! How long an adjustment takes by its size: points and readings beside each time.

use std::collections::BTreeMap;
use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use survey::network::{Datum, Kind, Network, Reading, Walked};

/// A jittered square grid, every point taped to the five points nearest before it.
fn grid(points: usize) -> Network {
    let mut seed = 9_u64;
    let mut unit = || {
        seed = seed
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (seed >> 11) as f64 / (1_u64 << 53) as f64
    };
    let wide = (points as f64).sqrt().ceil() as usize;
    let at: Vec<[f64; 2]> = (0..points)
        .map(|i| {
            [
                4.0 * (i % wide) as f64 + 2.0 * unit(),
                4.0 * (i / wide) as f64 + 2.0 * unit(),
            ]
        })
        .collect();
    let apart = |a: usize, b: usize| libm::hypot(at[a][0] - at[b][0], at[a][1] - at[b][1]);
    let mut readings = Vec::new();
    for p in 1..points {
        let mut before: Vec<usize> = (0..p).collect();
        before.sort_by(|a, b| apart(*a, p).total_cmp(&apart(*b, p)));
        for &q in before.iter().take(5) {
            let sigma = libm::hypot(0.003, 0.0003 * apart(p, q));
            let value = apart(p, q) + sigma * (unit() + unit() + unit() - 1.5) * 2.0;
            readings.push(Reading {
                kind: Kind::Distance { from: q, to: p },
                value,
                sigma,
                at: None,
            });
        }
    }
    Network {
        points: (0..points).map(|i| format!("P{i}")).collect(),
        readings,
        datum: Datum::Line {
            origin: 0,
            towards: 1,
        },
        boundary: Vec::new(),
        walked: Walked::Anticlockwise,
        start: BTreeMap::new(),
        at: None,
    }
}

fn sizes(c: &mut Criterion) {
    let Ok(ledger) = ledger::Ledger::shipped() else {
        return;
    };
    let mut group = c.benchmark_group("adjust");
    group.sample_size(10);
    for points in [6, 12, 25, 50, 100, 200, 400] {
        let network = grid(points);
        let name = format!("{points} points, {} readings", network.readings.len());
        group.bench_function(BenchmarkId::from_parameter(name), |b| {
            b.iter(|| survey::adjust(black_box(&network), &ledger));
        });
    }
    group.finish();
}

criterion_group!(benches, sizes);
criterion_main!(benches);
