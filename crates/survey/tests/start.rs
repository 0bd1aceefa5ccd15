//! Places are found from readings in any order, without a start.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test's helpers fail loudly"
)]

mod common;
#[path = "common/random.rs"]
mod random;

use random::{Case, Random, apart, case, framed, points};
use survey::network::{Kind, PointId};

/// Each point taped to three or four of the nearest before it, no two of them in line.
fn grown(random: &mut Random, n: usize) -> Case {
    let truth = points(random, n);
    let mut kinds = vec![Kind::Distance { from: 0, to: 1 }];
    for p in 2..n {
        let mut near: Vec<PointId> = (0..p).collect();
        near.sort_by(|a, b| apart(truth[*a], truth[p]).total_cmp(&apart(truth[*b], truth[p])));
        let mut taken: Vec<PointId> = Vec::new();
        let wanted = p.min(3 + random.below(2));
        for &q in near.iter().chain(&near) {
            let well = |a: PointId, b: PointId, c: PointId| {
                let d =
                    |i: PointId, j: PointId| [truth[j][0] - truth[i][0], truth[j][1] - truth[i][1]];
                let (u, v) = (d(a, b), d(a, c));
                (u[0] * v[1] - u[1] * v[0]).abs()
                    > 0.25 * apart(truth[a], truth[b]) * apart(truth[a], truth[c])
            };
            let fits = match taken.as_slice() {
                [] => true,
                [a] => well(p, *a, q),
                [a, b, ..] => well(p, *a, q) && well(p, *b, q) && well(*a, *b, q),
            };
            if taken.len() < wanted && !taken.contains(&q) && fits {
                taken.push(q);
            }
        }
        for &q in &near {
            if taken.len() < wanted && !taken.contains(&q) {
                taken.push(q);
            }
        }
        kinds.extend(taken.into_iter().map(|q| Kind::Distance { from: p, to: q }));
    }
    case(random, truth, kinds)
}

/// Marks and corners, taped only from every mark to every corner: no triangle anywhere.
/// Three by four and more are rigid in one way (Bolker and Roth; Connelly).
fn rays(random: &mut Random, marks: usize, corners: usize) -> Case {
    // Marks almost in line see each corner's image as well as the corner.
    let truth = loop {
        let truth = points(random, marks + corners);
        let d = |a: usize, b: usize| [truth[b][0] - truth[a][0], truth[b][1] - truth[a][1]];
        let (u, v) = (d(0, 1), d(0, 2));
        if (u[0] * v[1] - u[1] * v[0]).abs() > 25.0 {
            break truth;
        }
    };
    let kinds = (0..marks)
        .flat_map(|m| (marks..marks + corners).map(move |c| Kind::Distance { from: m, to: c }))
        .collect();
    case(random, truth, kinds)
}

/// Two parts that each grow by themselves, joined by five tapes between ten points.
fn bridged(random: &mut Random, n: usize) -> Case {
    let (a, b) = (grown(random, n), grown(random, n));
    let wide = a.truth.iter().map(|p| p[0]).fold(0.0, f64::max);
    let mut truth = a.truth;
    truth.extend(b.truth.iter().map(|p| [p[0] + wide + 1.0, p[1] + 0.7]));
    let mut kinds: Vec<Kind> = a.net.0.readings.iter().map(|r| r.kind).collect();
    kinds.extend(b.net.0.readings.iter().map(|r| match r.kind {
        Kind::Distance { from, to } => Kind::Distance {
            from: from + n,
            to: to + n,
        },
        other => other,
    }));
    let (mut left, mut right): (Vec<usize>, Vec<usize>) = ((0..n).collect(), (n..2 * n).collect());
    random.shuffle(&mut left);
    random.shuffle(&mut right);
    kinds.extend((0..5).map(|i| Kind::Distance {
        from: left[i],
        to: right[i],
    }));
    case(random, truth, kinds)
}

/// A base line with offsets, marks on it, and squares off it.
fn offsets(random: &mut Random, n: usize) -> Case {
    let truth = points(random, n);
    let mut kinds = vec![Kind::Distance { from: 0, to: 1 }];
    for p in 2..n {
        kinds.push(Kind::Along {
            from: 0,
            to: 1,
            point: p,
        });
        kinds.push(Kind::Left {
            from: 0,
            to: 1,
            point: p,
        });
        if p > 2 {
            kinds.push(Kind::Distance {
                from: p,
                to: random.below(p),
            });
            let square = Kind::Square {
                at: p,
                from: p - 1,
                to: random.below(p - 1),
            };
            if (0.2..2.9).contains(&random::exact(square, &truth)) {
                kinds.push(square);
            }
        }
    }
    case(random, truth, kinds)
}

/// Whether the answer is the truth: within six of its own sigmas and 1 mm, either mirror
/// where no reading tells.
fn recovered(case: &Case) -> Result<(), String> {
    let noted = survey::adjust(&case.net.0, &common::trusting());
    let Some(survey) = noted.value else {
        return Err(format!("{:?}", noted.notes));
    };
    let fits = |mirrored: bool| {
        let truth = framed(&case.truth, mirrored);
        survey
            .points
            .iter()
            .zip(&truth)
            .try_for_each(|(point, truth)| {
                let far = apart([point.x, point.y], *truth);
                let may = 6.0 * libm::hypot(point.sx, point.sy) + 1e-3;
                if point.loose || far > may {
                    return Err(format!(
                        "{} is {far:.3} m off, loose {}, vtpv {}, dof {}",
                        point.name, point.loose, survey.vtpv, survey.dof
                    ));
                }
                Ok(())
            })
    };
    let sided = case
        .net
        .0
        .readings
        .iter()
        .any(|r| matches!(r.kind, Kind::Left { .. }));
    match fits(false) {
        Err(_) if !sided => fits(true),
        other => other,
    }
}

fn check(count: usize, mut make: impl FnMut(&mut Random, usize) -> Case, what: &str) {
    let mut random = Random::new(what.len() as u64);
    let mut lost = Vec::new();
    for i in 0..count {
        let case = make(&mut random, i);
        if let Err(why) = recovered(&case) {
            lost.push(format!("{i} ({} points): {why}", case.truth.len()));
        }
    }
    assert!(
        lost.is_empty(),
        "{what}: {} of {count} lost:\n{}",
        lost.len(),
        lost.join("\n")
    );
}

#[test]
fn grown_networks_are_found() {
    check(200, |random, i| grown(random, 4 + i % 57), "grown");
}

#[test]
fn offsets_and_squares_are_found() {
    check(40, |random, i| offsets(random, 4 + i % 12), "offsets");
}

#[test]
fn networks_without_a_triangle_are_found() {
    check(30, |random, i| rays(random, 3 + i % 3, 5 + i % 6), "rays");
}

#[test]
fn parts_that_hang_together_as_a_whole_are_found() {
    check(30, |random, i| bridged(random, 5 + i % 10), "bridged");
}

/// The largest that is promised.
#[test]
fn four_hundred_points_are_found() {
    check(1, |random, _| grown(random, 400), "four hundred");
}

/// Each point taped to its few nearest: sparse, lopsided, sometimes loose, sometimes with two
/// answers. Ours must fit as well as the one that a start at the truth leads to, or at least
/// pass the global test. A known limit: of these forty three do not (30 points and more, with
/// three readings a point); the global test then fails aloud, and rough places help.
#[test]
fn sparse_networks_fit_no_worse_than_the_truth() {
    let mut random = Random::new(77);
    let mut worse = Vec::new();
    for i in 0..40 {
        let n = 5 + i % 40;
        let truth = points(&mut random, n);
        let wanted = 3 + i % 3;
        let mut kinds = Vec::new();
        for p in 0..n {
            let mut near: Vec<PointId> = (0..n).filter(|&q| q != p).collect();
            near.sort_by(|a, b| apart(truth[*a], truth[p]).total_cmp(&apart(truth[*b], truth[p])));
            kinds.extend(near.iter().take(wanted).map(|&q| (p.min(q), p.max(q))));
        }
        kinds.sort_unstable();
        kinds.dedup();
        let kinds = kinds
            .into_iter()
            .map(|(from, to)| Kind::Distance { from, to })
            .collect();
        let mut case = case(&mut random, truth, kinds);
        let ours = survey::adjust(&case.net.0, &common::trusting())
            .value
            .expect("an answer");
        case.net.0.start = case.truth.iter().copied().enumerate().collect();
        let told = survey::adjust(&case.net.0, &common::trusting())
            .value
            .expect("an answer");
        if !ours.global_test.passed && ours.vtpv > told.vtpv + 1e-3 * (1.0 + told.vtpv) {
            worse.push(format!(
                "{i}: {n} points, dof {}: {} for {}",
                ours.dof, ours.vtpv, told.vtpv
            ));
        }
    }
    assert!(
        worse.len() <= 3,
        "{} of 40 fit worse than the truth:\n{}",
        worse.len(),
        worse.join("\n")
    );
}

/// One tape misread by a metre must not choose the places.
#[test]
fn a_misread_tape_does_not_spoil_the_start() {
    let mut random = Random::new(5);
    let mut lost = Vec::new();
    for i in 0..60 {
        let n = 6 + i % 20;
        let truth = points(&mut random, n);
        let kinds = (0..n)
            .flat_map(|p| (0..p).map(move |q| (p, q)))
            .filter(|&(p, q)| p - q <= 5)
            .map(|(from, to)| Kind::Distance { from, to })
            .collect();
        let mut case = case(&mut random, truth, kinds);
        let wrong = random.below(case.net.0.readings.len());
        let reading = &mut case.net.0.readings[wrong];
        reading.value += if reading.value > 2.0 && random.unit() < 0.5 {
            -1.0
        } else {
            1.0
        };
        let survey = survey::adjust(&case.net.0, &common::ledger())
            .value
            .expect("an answer");
        let named = survey
            .suspects
            .first()
            .is_some_and(|s| s.readings.contains(&wrong));
        if !named || !survey.global_test.passed && survey.suspects.iter().all(|s| s.set_aside) {
            lost.push(format!(
                "{i}: {n} points, {:?}, vtpv {}",
                survey.suspects.len(),
                survey.vtpv
            ));
        }
    }
    assert!(
        lost.is_empty(),
        "{} of 60 not found:\n{}",
        lost.len(),
        lost.join("\n")
    );
}
