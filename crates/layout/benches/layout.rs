//! How long the audit of one moved marking takes, and a proof, over the size of a class.

#[path = "../tests/common/mod.rs"]
mod common;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use geo::{Area, Coord};
use layout::programme::{Limits, Programme};
use layout::{Candidate, Pose, Surroundings, audit::audit_one};
use ledger::Ledger;
use marking::{Ground, Look, Palette};

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

/// One moved marking among a dozen of our families' figures, on the demo's surveyed yard.
fn audit_of_the_demo(c: &mut Criterion) {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let Some(project) = project::read(&folder).value else {
        return;
    };
    let ledger = &project.ledger;
    let Some(survey) = project
        .network
        .as_ref()
        .and_then(|network| survey::adjust(network, ledger).value)
    else {
        return;
    };
    let Some(yard) = project::yard(&project, &survey).value else {
        return;
    };
    let ground = ground::ground(&yard, project.about.zones, ledger).value;
    let look = Look::of(
        Palette {
            ground: Ground::Asphalt,
        },
        ledger,
    );
    let candidates: Vec<Candidate> = marking::families()
        .iter()
        .filter_map(|family| Some((family, family.make(&family.defaults(), &look).ok()?)))
        .take(12)
        .map(|(family, figure)| Candidate {
            name: family.name().to_owned(),
            family: family.name().to_owned(),
            group: "all".to_owned(),
            cost: 0.0,
            area: figure.envelope.unsigned_area(),
            locked: None,
            refused: false,
            mirrors: family.can_mirror(),
            yields: Vec::new(),
            figure,
        })
        .collect();
    let around = Surroundings::new(&yard, &ground, ledger);
    let placed: Vec<(&Candidate, Pose)> = candidates
        .iter()
        .enumerate()
        .map(|(k, candidate)| {
            let at = Coord {
                x: 2.0 + 4.0 * (k % 5) as f64,
                y: 2.0 + 4.0 * (k / 5) as f64,
            };
            let pose = Pose {
                at,
                turn: 0.4 * k as f64,
                mirrored: false,
            };
            (candidate, pose)
        })
        .collect();
    c.bench_with_input(
        BenchmarkId::new("audit one of the demo's", placed.len()),
        &placed,
        |b, placed| b.iter(|| audit_one(0, placed, &around, ledger)),
    );
}

criterion_group!(layout, benches, audit_of_the_demo);
criterion_main!(layout);
