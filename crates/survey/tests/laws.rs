//! Laws of the trade, over random networks.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test's helpers fail loudly"
)]

mod common;
#[path = "common/random.rs"]
mod random;

use common::{Net, near, trusting};
use proptest::prelude::*;
use random::{Random, apart, points};
use survey::network::{Datum, Kind, Reading};

/// Metres: some times what rounding coordinates to 1e-7 does to a reading; an offset from a
/// short line carries its ends' rounding further.
const SAME: f64 = 1e-6;

/// Every point taped to four before it, some thin triangles among them; offsets and squares.
fn any_network() -> impl Strategy<Value = Net> {
    (any::<u64>(), 4_usize..14).prop_map(|(seed, n)| {
        let mut random = Random::new(seed);
        let truth = points(&mut random, n);
        let mut kinds = vec![Kind::Distance { from: 0, to: 1 }];
        for p in 2..n {
            let mut before: Vec<usize> = (0..p).collect();
            random.shuffle(&mut before);
            kinds.extend(
                before
                    .iter()
                    .take(4)
                    .map(|&q| Kind::Distance { from: p, to: q }),
            );
            kinds.push(Kind::Left {
                from: 0,
                to: 1,
                point: p,
            });
            let square = Kind::Square {
                at: p,
                from: p - 1,
                to: p - 2,
            };
            if (0.3..2.8).contains(&random::exact(square, &truth)) {
                kinds.push(square);
            }
        }
        random::case(&mut random, truth, kinds).net
    })
}

fn v(net: &Net) -> Vec<f64> {
    net.adjust(&trusting())
        .readings
        .iter()
        .map(|r| r.v)
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    /// The datum is our choice, the shape the yard's.
    #[test]
    fn residuals_do_not_know_the_datum(net in any_network(), a in 0_usize..4, b in 0_usize..4) {
        prop_assume!(a != b);
        let here = v(&net);
        let mut other = Net(net.0.clone());
        other.0.datum = Datum::Line { origin: a, towards: b };
        for there in [v(&other), v(&Net(net.0.clone()).free())] {
            for (x, y) in here.iter().zip(&there) {
                prop_assert!((x - y).abs() <= SAME, "{x} and {y}");
            }
        }
    }

    /// Redundancy numbers share out the degrees of freedom.
    #[test]
    fn redundancy_adds_up(net in any_network()) {
        let survey = net.adjust(&trusting());
        let sum: f64 = survey.readings.iter().map(|r| r.r).sum();
        prop_assert!((sum - survey.dof as f64).abs() < 1e-6, "{sum} of {}", survey.dof);
        prop_assert_eq!(survey.dof, survey.readings.len() - (2 * survey.points.len() - 3));
    }

    /// The order of the readings says nothing.
    #[test]
    fn order_says_nothing(net in any_network(), seed in any::<u64>()) {
        let mut other = Net(net.0.clone());
        Random::new(seed).shuffle(&mut other.0.readings);
        let (a, b) = (net.adjust(&trusting()), other.adjust(&trusting()));
        for (p, q) in a.points.iter().zip(&b.points) {
            prop_assert!(apart([p.x, p.y], [q.x, q.y]) <= 2e-7, "{p:?} and {q:?}");
        }
        prop_assert!((a.vtpv - b.vtpv).abs() < 1e-4);
    }

    /// A yard twice as large, read twice as coarsely, is the same yard.
    #[test]
    fn scale_changes_lengths_only(net in any_network()) {
        let scaled = |r: &Reading| match r.kind {
            Kind::Square { .. } => r.clone(),
            _ => Reading { value: 2.0 * r.value, sigma: 2.0 * r.sigma, ..r.clone() },
        };
        let mut other = Net(net.0.clone());
        other.0.readings = net.0.readings.iter().map(scaled).collect();
        let (a, b) = (net.adjust(&trusting()), other.adjust(&trusting()));
        for (p, q) in a.points.iter().zip(&b.points) {
            prop_assert!(apart([2.0 * p.x, 2.0 * p.y], [q.x, q.y]) <= 4e-7, "{p:?} and {q:?}");
        }
        for (x, y) in a.readings.iter().zip(&b.readings) {
            prop_assert!((x.r - y.r).abs() < 1e-6);
        }
    }
}

/// The same input gives the same answer to the last bit.
#[test]
fn the_same_twice() {
    let mut random = Random::new(7);
    let truth = points(&mut random, 12);
    let kinds = (0..12)
        .flat_map(|p| (0..p).map(move |q| Kind::Distance { from: p, to: q }))
        .collect();
    let net = random::case(&mut random, truth, kinds).net;
    assert_eq!(net.adjust(&trusting()), net.adjust(&trusting()));
}

/// A pair read twice is the pair read once at the mean, half the variance.
#[test]
fn a_repeated_pair_is_its_mean() {
    let text = "A-B 12.003 B-C 7.996 C-D 12.002 D-A 8.004 A-C 14.424 B-D 14.421";
    let twice = Net::new("A B C D")
        .distances(text, |_| 0.005)
        .distances("A-C 14.430", |_| 0.005)
        .adjust(&trusting());
    let once = Net::new("A B C D")
        .distances(&text.replace(" A-C 14.424", ""), |_| 0.005)
        .distances("A-C 14.427", |_| 0.005 / 2.0_f64.sqrt())
        .adjust(&trusting());
    for (p, q) in twice.points.iter().zip(&once.points) {
        near(apart([p.x, p.y], [q.x, q.y]), 0.0, 2e-7, &p.name);
        near(p.sx, q.sx, 1e-8, "sx");
    }
    assert_eq!((twice.dof, once.dof), (2, 1));
}
