//! 24 children on 12 markings in 8 skills: a class in one go. The counterpart in plain
//! numpy is `oracle/times.py`.

use criterion::{Criterion, criterion_group, criterion_main};
use footfall::{Activity, Gait, Model, class};

#[path = "../src/tests/stored.rs"]
mod stored;

fn a_class(criterion: &mut Criterion) {
    let (Some(stored), Ok(ledger)) = (stored::StoredClass::read(), ledger::Ledger::shipped())
    else {
        return;
    };
    let model = Model::of(&ledger);
    let figures: Vec<_> = stored
        .figures
        .iter()
        .map(stored::StoredFigure::figure)
        .collect();
    let children = stored.children();
    let activities: Vec<_> = stored
        .activities
        .iter()
        .filter_map(|(gait, foot)| {
            Some(Activity {
                gait: Gait::named(gait)?,
                foot: stored::side(foot.as_deref()),
            })
        })
        .collect();
    let mut group = criterion.benchmark_group("24 children, 12 markings, 8 skills");
    group.sample_size(10);
    group.bench_function("class", |bench| {
        bench.iter(|| class(&figures, &children, &activities, &model));
    });
    for (number, figure) in figures.iter().enumerate() {
        let one = std::slice::from_ref(figure);
        group.bench_function(format!("figure {number}"), |bench| {
            bench.iter(|| class(one, &children, &activities, &model));
        });
    }
}

criterion_group!(benches, a_class);
criterion_main!(benches);
