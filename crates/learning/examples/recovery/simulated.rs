//! Classes drawn from the model itself, with what their children would show. Invented: no
//! child stands behind a number.

use std::collections::BTreeMap;

use chance::Chance;
use children::{Child, Expected, Means, Reading, Side, Skill, counts};
use footfall::{Gait, Model, odds};
use geo::{Coord, LineString, Polygon};
use learning::{Check, Pupil, Run, Shared, Try};
use ledger::Ledger;
use marking::{Cell, Figure, Outline, Takes};

/// A stream of numbers from a seed.
pub struct Dice(Chance);

impl Dice {
    pub fn new(seed: u64) -> Dice {
        Dice(Chance::new(seed))
    }

    /// Uniform, above 0 and at most 1.
    pub fn share(&mut self) -> f64 {
        self.0.above_zero()
    }

    /// One of so many.
    pub fn below(&mut self, n: u32) -> u32 {
        ((self.share() * f64::from(n)) as u32).min(n - 1)
    }

    /// Standard normal.
    pub fn normal(&mut self) -> f64 {
        self.0.normal()
    }

    /// Marsaglia and Tsang 2000.
    fn gamma(&mut self, shape: f64) -> f64 {
        if shape < 1.0 {
            let more = self.gamma(shape + 1.0);
            return more * libm::pow(self.share(), 1.0 / shape);
        }
        let d = shape - 1.0 / 3.0;
        let c = 1.0 / libm::sqrt(9.0 * d);
        loop {
            let x = self.normal();
            let v = libm::pow(1.0 + c * x, 3.0);
            if v > 0.0 && libm::log(self.share()) < 0.5 * x * x + d - d * v + d * libm::log(v) {
                return d * v;
            }
        }
    }

    pub fn beta(&mut self, a: f64, b: f64) -> f64 {
        if a <= 0.0 || b <= 0.0 {
            return if b <= 0.0 { 1.0 } else { 0.0 };
        }
        let (a, b) = (self.gamma(a), self.gamma(b));
        a / (a + b)
    }

    fn binomial(&mut self, n: u32, p: f64) -> u32 {
        (0..n).map(|_| u32::from(self.share() < p)).sum()
    }
}

/// What a child is in truth.
#[derive(Clone, Copy, Debug)]
pub struct Truth {
    /// Reach, metres.
    pub reach: f64,
    /// Steadiness.
    pub steady: f64,
    /// Rate at which criteria are met.
    pub form: f64,
    /// Whether the child can.
    pub can: bool,
}

/// A straight row of discs; the last is the end.
pub fn row(flights: u32, gap: f64, radius: f64) -> Figure {
    let cell = |number: u32| Cell {
        id: number.to_string(),
        outline: Outline::Disc { radius },
        centre: Coord {
            x: gap * f64::from(number),
            y: 0.0,
        },
        takes: Takes::Either,
        start: number == 0,
        end: number == flights,
        next: Some(if number == flights {
            Vec::new()
        } else {
            vec![number as usize + 1]
        }),
        run_up: false,
    };
    Figure {
        family: "drawn".into(),
        lengths: Vec::new(),
        paint: Vec::new(),
        cells: (0..=flights).map(cell).collect(),
        facing: None,
        lanes: Vec::new(),
        tracks: 1,
        wait: Vec::new(),
        envelope: Polygon::new(LineString::new(Vec::new()), Vec::new()),
    }
}

/// A class of 24 in two groups: three, four and five years old, eight each. One child in
/// four shows nothing.
pub fn class(skill: Skill, seed: u64, model: &Model, ledger: &Ledger) -> (Vec<Pupil>, Vec<Truth>) {
    let mut dice = Dice::new(seed.wrapping_mul(0x2545_f491_4f6c_dd1d));
    let shared = Shared::of(ledger);
    let mut draw = |n: usize, variance: f64| -> Vec<f64> {
        (0..n)
            .map(|_| libm::sqrt(variance) * dice.normal())
            .collect()
    };
    let (ages, groups) = (draw(3, shared.age), draw(2, shared.group));
    let own = 1.0 - shared.age - shared.group;
    let Some(gait) = Gait::named(skill.word()) else {
        return (Vec::new(), Vec::new());
    };
    (0..24)
        .map(|number| {
            let (age, group) = (number % 3, (number / 3) % 2);
            let years = 3.5 + age as f64;
            let child: Child = Child {
                name: format!("c{number}"),
                means: Means::Feet,
                ..counts(&[(years, 1)], ledger).value.remove(0)
            };
            let ability = child.skills[&skill].clone();
            let z = ages[age] + groups[group] + libm::sqrt(own) * dice.normal();
            let beta = |dice: &mut Dice, p: f64| dice.beta(8.0 * p, 8.0 * (1.0 - p));
            let form = beta(&mut dice, ability.can);
            let truth = Truth {
                reach: ability.m + ability.tau * z,
                steady: beta(&mut dice, ability.steady),
                form,
                can: dice.share() < form,
            };
            let group = if group == 0 { "red" } else { "blue" };
            let expected = Expected {
                group: Some(group.into()),
                ..Expected::of(child)
            };
            let mut pupil = Pupil::new(expected);
            if dice.below(4) > 0 {
                show(&mut pupil, skill, &gait, (z, truth), &mut dice, model);
            }
            (pupil, truth)
        })
        .unzip()
}

/// What a child would show: tries on one to three rows, and some of checks, counts and a
/// measured best.
fn show(
    pupil: &mut Pupil,
    skill: Skill,
    gait: &Gait,
    (z, truth): (f64, Truth),
    dice: &mut Dice,
    model: &Model,
) {
    let child = pupil.expected.child.clone();
    let ability = &child.skills[&skill];
    for _ in 0..=dice.below(3) {
        // graded gaps, as a teacher would chalk them, from short to long for the age
        let gap = (ability.m * (0.7 + 0.2 * f64::from(dice.below(4))) * 20.0).round() / 20.0;
        let figure = row(
            2 + dice.below(3),
            gap,
            if skill == Skill::Jump { 0.2 } else { 0.15 },
        );
        let foot = (skill == Skill::Hop).then_some(Side::Right);
        let Some(odds) = odds(&figure, &child, gait, foot, model) else {
            continue;
        };
        // between two places of the grid the chance is as good as straight
        let at = (z.clamp(-4.0, 4.0) + 4.0) / 0.02;
        let (low, high) = (libm::floor(at), libm::ceil(at));
        let near = |place: f64| odds.pi(place as usize, truth.steady);
        let pi = near(low) + (at - low) * (near(high) - near(low));
        let n = 3 + dice.below(6);
        let good = if truth.can { dice.binomial(n, pi) } else { 0 };
        pupil.tries.push(Try {
            figure,
            gait: *gait,
            foot,
            n,
            good,
        });
    }
    if dice.below(2) == 0 {
        let n = 5 * (1 + dice.below(3));
        let met = dice.binomial(n, truth.form);
        pupil.checks.push(Check { skill, n, met });
    }
    if dice.below(2) == 0 {
        let (mut contacts, mut broke) = (0, !truth.can);
        if truth.can {
            // an observer stops at twenty
            while contacts < 20 && !broke {
                broke = dice.share() >= truth.steady;
                contacts += u32::from(!broke);
            }
        } else {
            contacts = dice.below(3);
        }
        pupil.runs.push(Run {
            skill,
            contacts,
            broke,
        });
    }
    if skill == Skill::Jump && dice.below(2) == 0 {
        // who cannot has a best of nothing
        pupil.expected.cans = BTreeMap::from([(skill, truth.can)]);
        let sigma = 0.08;
        let reading = Reading {
            reach: truth.reach.max(model.floor * ability.m) + sigma * dice.normal(),
            sigma,
        };
        if truth.can {
            pupil.expected.readings = BTreeMap::from([(skill, reading)]);
        }
    }
}
