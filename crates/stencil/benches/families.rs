//! The stencils of each family that take longest, of all 27 at once, and of one large yard.

#![allow(clippy::expect_used, missing_docs)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use ledger::Ledger;
use marking::{Figure, Ground, Look, Palette, families};
use stencil::{Applied, Laid, Material, Numerals, Setting, Tool, TurnOver, stencils};

const SETTING: Setting = Setting {
    material: Material::SolidPe,
    tool: Tool::Knife,
    applied: Applied::Roller,
    turn_over: TurnOver::Never,
    numerals: Numerals::Apart,
};

fn plates(bench: &mut Criterion) {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let ground = Ground::Asphalt;
    let look = Look::of(Palette { ground }, &ledger);
    let figures: Vec<Figure> = families()
        .iter()
        .map(|family| {
            let lengths: Vec<f64> = family.lengths().iter().map(|one| one.default).collect();
            family.make(&lengths, &look).expect("defaults fit")
        })
        .collect();
    let laid = |figures: &[Figure]| {
        let laid: Vec<Laid> = figures
            .iter()
            .map(|figure| Laid { figure, turn: 0.0 })
            .collect();
        stencils(&laid, &SETTING, &ledger)
    };
    let mut group = bench.benchmark_group("stencils");
    group.sample_size(10);
    for figure in &figures {
        if ["court", "letter-court", "star", "wave-lane"].contains(&figure.family.as_str()) {
            group.bench_function(figure.family.as_str(), |b| {
                b.iter(|| black_box(laid(std::slice::from_ref(figure))));
            });
        }
    }
    group.bench_function("all families", |b| b.iter(|| black_box(laid(&figures))));
    // ten times as many shapes, all of which share the same plates
    let many: Vec<Figure> = (0..10).flat_map(|_| figures.clone()).collect();
    group.bench_function("all families, ten times", |b| {
        b.iter(|| black_box(laid(&many)));
    });
    group.finish();
}

criterion_group!(benches, plates);
criterion_main!(benches);
