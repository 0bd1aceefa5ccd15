//! Against quadrature over all children and effects at once (`oracle/learned.py`, numpy and
//! scipy).

use serde_json::Value;

use super::*;
use crate::evidence::{Attempt, Evidence};
use crate::fit::{Band, Case, fit};
use children::Reading;

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

fn count(value: &Value) -> u32 {
    value.as_u64().expect("a count") as u32
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// The page's formulas for a straight row of discs, hopped, without q.
fn clears(m: f64, tau: f64, sigma: f64, row: &[Value]) -> Vec<f64> {
    let [flights, gap, radius] = [&row[0], &row[1], &row[2]].map(number);
    let inside = 1.0 - libm::exp(-radius * radius / (2.0 * sigma * sigma));
    grid()
        .map(|z| {
            let rho = (m + tau * z).max(0.3 * m);
            let x = 1.2816 + (rho - gap) / (0.1 * rho);
            let phi = 0.5 * libm::erfc(-x / std::f64::consts::SQRT_2);
            libm::pow(phi * inside, flights)
        })
        .collect()
}

fn place(names: &[Value], name: &Value) -> Option<usize> {
    names.iter().position(|known| known == name)
}

fn case(child: &Value, class: &Value) -> Case {
    let [m, tau] = [&child["m"], &child["tau"]].map(number);
    let sigma = if number(&child["years"]) == 4.0 {
        0.06
    } else {
        0.05
    };
    let tries = list(&child["rows"]).iter().map(|row| {
        let row = list(row);
        Attempt {
            clears: clears(m, tau, sigma, row),
            contacts: number(&row[0]),
            n: count(&row[3]),
            good: count(&row[4]),
        }
    });
    let run = |run: &Value| (count(&run[0]), count(&run[1]) == 1);
    Case {
        age: place(list(&class["ages"]), &child["years"]),
        group: place(list(&class["groups"]), &child["group"]),
        m,
        tau,
        can: number(&child["can"]),
        steady: number(&child["steady"]),
        evidence: Evidence {
            tries: tries.collect(),
            checks: count(&child["checks"][0]),
            met: count(&child["checks"][1]),
            runs: list(&child["runs"]).iter().map(run).collect(),
            readings: (!child["read"].is_null())
                .then(|| Reading {
                    reach: number(&child["read"][0]),
                    sigma: number(&child["read"][1]),
                })
                .into_iter()
                .collect(),
            can: None,
        },
    }
}

/// Where ours and theirs part most, by what is held against what.
#[derive(Default)]
struct Parted(std::collections::BTreeMap<&'static str, f64>);

impl Parted {
    fn hold(&mut self, what: &'static str, ours: f64, theirs: f64) {
        let most = self.0.entry(what).or_insert(0.0);
        *most = most.max((ours - theirs).abs());
    }

    fn ends(&mut self, what: &'static str, ours: &Band, theirs: &[Value]) {
        let [low, high] = ours.nine_tenths;
        let ours = [low, ours.half[0], ours.half[1], high];
        for (ours, theirs) in ours.iter().zip(theirs) {
            self.hold(what, *ours, number(theirs));
        }
    }
}

/// z and effects in standard deviations of children of an age, the rest in probability. Alone,
/// only grids part us, most where sixty tries of one figure leave a ridge of z and q (8e-4);
/// in a class, that a child's word to the others is made normal (2e-5) and that z of a child
/// of whom nothing was seen is not cut at 4 (1.3e-3). One and a half thousandths of a
/// standard deviation are a fifth of a millimetre of jump.
#[test]
fn a_class_is_what_quadrature_over_all_at_once_has() {
    let stored: Value =
        serde_json::from_str(include_str!("../../oracle/learned.json")).expect("the figures read");
    let (mut alone, mut together) = (Parted::default(), Parted::default());
    let mut seen = 0;
    for class in list(&stored) {
        let children = list(&class["children"]);
        let cases: Vec<Case> = children.iter().map(|child| case(child, class)).collect();
        let sizes = (list(&class["ages"]).len(), list(&class["groups"]).len());
        let fitted = fit(&cases, sizes, &with());
        let parted = if children.len() == 1 {
            &mut alone
        } else {
            &mut together
        };
        for (ours, theirs) in fitted.cases.iter().zip(list(&class["answers"])) {
            seen += 1;
            let of = |key: &str| number(&theirs[key]);
            parted.hold("z", ours.z.mean, of("z"));
            parted.hold("sd of z", ours.z.sd, of("sd"));
            parted.ends("ends of z", &ours.z, list(&theirs["z_at"]));
            parted.hold("can", ours.can, of("can"));
            parted.hold("q", ours.steady.mean, of("q"));
            parted.hold("sd of q", ours.steady.sd, of("q_sd"));
            parted.ends("ends of q", &ours.steady, list(&theirs["q_at"]));
            parted.hold("form", ours.form.mean, of("form"));
            parted.ends("ends of form", &ours.form, list(&theirs["form_at"]));
        }
        for (ours, theirs) in
            std::iter::chain(&fitted.ages, &fitted.groups).zip(list(&class["effects"]))
        {
            parted.hold("effect", ours.mean, number(&theirs["mean"]));
            parted.hold("sd of effect", ours.sd, number(&theirs["sd"]));
        }
    }
    assert_eq!(seen, 15);
    assert!(alone.0.values().all(|most| *most < 1e-3), "{:?}", alone.0);
    assert!(
        together.0.values().all(|most| *most < 1.5e-3),
        "{:?}",
        together.0
    );
    let shared = ["effect", "sd of effect"].map(|what| together.0[what]);
    assert!(shared.iter().all(|most| *most < 1e-4), "{shared:?}");
}
