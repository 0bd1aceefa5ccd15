//! What a class of 40 has shown in 100 tries: from the door, and of that what the fit alone
//! takes once the routes are known.

use std::hint::black_box;

use children::{Expected, Skill, counts};
use criterion::{Criterion, criterion_group, criterion_main};
use footfall::{Gait, Model, odds};
use learning::{Attempt, Case, Evidence, Fit, Pupil, Shared, Try, fit, learn};

#[allow(dead_code)]
#[path = "../examples/recovery/simulated.rs"]
mod simulated;

fn a_class(criterion: &mut Criterion) {
    let Ok(ledger) = ledger::Ledger::shipped() else {
        return;
    };
    let model = Model::of(&ledger);
    let Some(gait) = Gait::named("hop") else {
        return;
    };
    let mut pupils: Vec<Pupil> = (0..40)
        .filter_map(|at| {
            let years = 3.0 + f64::from(at % 30) / 10.0;
            let mut child = counts(&[(years, 1)], &ledger).value.pop()?;
            child.name = format!("c{at}");
            let group = Some(if at % 2 == 0 { "red" } else { "blue" }.to_owned());
            Some(Pupil::new(Expected {
                group,
                ..Expected::of(child)
            }))
        })
        .collect();
    for at in 0..100u32 {
        let pupil = &mut pupils[at as usize % 40];
        pupil.tries.push(Try {
            figure: simulated::row(3, 0.25 + 0.05 * f64::from(at % 3), 0.15),
            gait,
            foot: Some(children::Side::Right),
            n: 5,
            good: at % 6,
        });
    }
    criterion.bench_function("40 children, 100 batches of 5 tries", |bench| {
        bench.iter(|| learn(black_box(&pupils), &model, &ledger));
    });
    let cases: Vec<Case> = pupils
        .iter()
        .enumerate()
        .map(|(at, pupil)| {
            let child = &pupil.expected.child;
            let ability = &child.skills[&Skill::Hop];
            let tries = pupil.tries.iter().filter_map(|tried| {
                let odds = odds(&tried.figure, child, &tried.gait, tried.foot, &model)?;
                Some(Attempt {
                    clears: odds.clears,
                    contacts: odds.contacts,
                    n: tried.n,
                    good: tried.good,
                })
            });
            Case {
                age: Some(child.age as usize - 3),
                group: Some(at % 2),
                m: ability.m,
                tau: ability.tau,
                can: ability.can,
                steady: ability.steady,
                evidence: Evidence {
                    tries: tries.collect(),
                    ..Evidence::default()
                },
            }
        })
        .collect();
    let with = Fit {
        shared: Shared::of(&ledger),
        weight: 8.0,
        shows: 3.0,
        floor: 0.3,
    };
    criterion.bench_function("the fit of it", |bench| {
        bench.iter(|| fit(black_box(&cases), (3, 2), &with));
    });
}

criterion_group!(benches, a_class);
criterion_main!(benches);
