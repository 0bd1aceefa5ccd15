//! How often intervals hold the truth.

use std::fmt::Write;

use children::Skill;
use learning::{Band, Learned, Pupil, Told};

use crate::simulated::Truth;

/// Truths inside the middle half and the middle nine tenths.
#[derive(Clone, Copy, Debug, Default)]
pub struct Covered {
    pub of: u32,
    pub half: u32,
    pub nine_tenths: u32,
}

impl Covered {
    fn hold(&mut self, band: &Band, truth: f64) {
        let inside = |ends: [f64; 2]| u32::from((ends[0]..=ends[1]).contains(&truth));
        self.of += 1;
        self.half += inside(band.half);
        self.nine_tenths += inside(band.nine_tenths);
    }

    /// Per cent.
    pub fn shares(&self) -> [f64; 2] {
        [self.half, self.nine_tenths].map(|held| 100.0 * f64::from(held) / f64::from(self.of))
    }
}

#[derive(Debug, Default)]
pub struct Recovered {
    /// Reach of those who showed something.
    pub shown: Covered,
    /// Reach of those of whom only others tell.
    pub unseen: Covered,
    pub steady: Covered,
    pub form: Covered,
    /// By tenth of the probability that a child can: children, those who can, sum of the
    /// probability.
    pub can: [(u32, u32, f64); 10],
    /// Squared error of reach before and after, m², of those who showed something and can.
    pub error: [f64; 2],
    /// Squared error of the unseen, likewise.
    pub error_unseen: [f64; 2],
}

impl Recovered {
    /// Reach and steadiness are told given that a child can: those who cannot have none.
    pub fn hold(&mut self, skill: Skill, pupils: &[Pupil], truths: &[Truth], learned: &Learned) {
        for (pupil, truth) in pupils.iter().zip(truths) {
            let name = &pupil.expected.child.name;
            let of = |told: &&Told| told.child == *name && told.skill == skill;
            let Some(told) = learned.told.iter().find(of) else {
                continue;
            };
            let shown = told.seen != learning::Seen::default();
            if truth.can {
                let off = |m: f64| (m - truth.reach) * (m - truth.reach);
                let errors = [off(told.prior.m), off(told.reach.mean)];
                let (covered, sums) = if shown {
                    (&mut self.shown, &mut self.error)
                } else {
                    (&mut self.unseen, &mut self.error_unseen)
                };
                covered.hold(&told.reach, truth.reach);
                std::iter::zip(sums, errors).for_each(|(sum, error)| *sum += error);
                if shown {
                    self.steady.hold(&told.steady, truth.steady);
                }
            }
            if shown {
                self.form.hold(&told.form, truth.form);
                let can = told.posterior.can;
                let tenth = ((can * 10.0) as usize).min(9);
                let (of, yes, sum) = &mut self.can[tenth];
                *of += 1;
                *yes += u32::from(truth.can);
                *sum += can;
            }
        }
    }

    /// Share of the error of reach that is left, of the shown and the unseen.
    pub fn left(&self) -> [f64; 2] {
        [self.error, self.error_unseen].map(|[before, after]| libm::sqrt(after / before))
    }

    pub fn table(&self, what: &str) -> String {
        let mut table = format!(
            "## {what}\n\n| what | children | in the middle half, % | in the middle nine tenths, % |\n|---|--:|--:|--:|\n"
        );
        for (name, covered) in [
            ("reach m, has shown something", &self.shown),
            ("reach m, only others have", &self.unseen),
            ("steadiness q", &self.steady),
            ("form (checks met)", &self.form),
        ] {
            let [half, nine] = covered.shares();
            let _ = writeln!(table, "| {name} | {} | {half:.1} | {nine:.1} |", covered.of);
        }
        let [shown, unseen] = self.left();
        let _ = writeln!(
            table,
            "\nRoot mean square error of reach over that of the age's figure: {shown:.3} for those who have shown something, {unseen:.3} for the others.\n\n| probability that the child can | children | mean of it, % | can in truth, % |\n|---|--:|--:|--:|"
        );
        for (tenth, (of, yes, sum)) in self.can.iter().enumerate() {
            if *of > 0 {
                let per_cent = 100.0 / f64::from(*of);
                let _ = writeln!(
                    table,
                    "| {:.1} to {:.1} | {of} | {:.1} | {:.1} |",
                    tenth as f64 / 10.0,
                    (tenth + 1) as f64 / 10.0,
                    sum * per_cent,
                    f64::from(*yes) * per_cent
                );
            }
        }
        table
    }
}
