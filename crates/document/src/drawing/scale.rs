//! Scales that a drawing office uses, and the bar that proves them.

use unit::{FOOT, Units};

use crate::measure;

/// Reductions for metric sheets: those on the rulers in use (1, 2, 2.5, 5 and 10 by the
/// decade as in ISO 5455 and its intermediate steps, with the 75 and 125 of a builder's
/// triangular ruler; from memory). 1:150 is on no ruler and is left out.
pub const METRIC: [u32; 17] = [
    10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 1000, 1250, 2500,
];

/// Reductions for sheets in feet: the fractions of an inch to a foot of an architect's ruler,
/// then the tens of feet to an inch of an engineer's (from memory).
pub const FEET: [u32; 15] = [
    12, 16, 24, 32, 48, 64, 96, 120, 192, 240, 360, 480, 600, 1200, 2400,
];

/// A reduction: 100 for 1:100.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scale(pub u32);

/// A scale bar laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// mm on paper of one of its four steps.
    pub step: f64,
    /// Figures at its five marks.
    pub figures: Vec<String>,
    /// Its whole length in the yard.
    pub told: String,
    /// The same on paper.
    pub paper: String,
}

impl Scale {
    /// The scales of a unit, the largest drawing first.
    pub fn all(units: Units) -> impl Iterator<Item = Scale> {
        let list: &'static [u32] = match units {
            Units::Metres => &METRIC,
            Units::Feet => &FEET,
        };
        list.iter().map(|&reduction| Scale(reduction))
    }

    /// Paper millimetres for a metre.
    pub fn mm(self) -> f64 {
        1000.0 / f64::from(self.0)
    }

    /// "1:100", and in feet also what a ruler calls it: "1:96 (1/8 in to 1 ft)".
    pub fn says(self, units: Units) -> String {
        let ratio = format!("1:{}", self.0);
        match units {
            Units::Metres => ratio,
            Units::Feet if self.0.is_multiple_of(120) => {
                format!("{ratio} (1 in = {} ft)", self.0 / 12)
            }
            Units::Feet => {
                // inches to a foot are 12 over the reduction; on these rulers sixteenths at most
                let (mut over, mut under) = (192 / self.0, 16);
                while over % 2 == 0 && under > 1 {
                    (over, under) = (over / 2, under / 2);
                }
                let inches = if under == 1 {
                    format!("{over}")
                } else {
                    format!("{over}/{under}")
                };
                format!("{ratio} ({inches} in = 1 ft)")
            }
        }
    }

    /// A bar of four steps no longer than `longest` mm.
    pub fn bar(self, longest: f64, units: Units) -> Bar {
        let (unit, steps): (f64, &[f64]) = match units {
            Units::Metres => (
                1.0,
                &[0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0, 10.0, 20.0, 25.0],
            ),
            Units::Feet => (
                FOOT,
                &[0.25, 0.5, 1.0, 2.0, 4.0, 5.0, 10.0, 20.0, 50.0, 100.0],
            ),
        };
        let each = |step: f64| step * unit * self.mm();
        let step = steps
            .iter()
            .rev()
            .copied()
            .find(|&step| 4.0 * each(step) <= longest)
            .unwrap_or(0.1);
        let figure = |number: u32| {
            let text = format!("{:.2}", step * f64::from(number));
            text.trim_end_matches('0').trim_end_matches('.').to_owned()
        };
        let told = format!("{} {}", figure(4), measure::unit(units));
        let figures = (0..4).map(figure).chain([told.clone()]).collect();
        let length = 4.0 * each(step);
        let paper = match units {
            Units::Metres => format!("{} mm", trim(length)),
            Units::Feet => format!("{} mm ({} in)", trim(length), trim(length / 25.4)),
        };
        Bar {
            step: each(step),
            figures,
            told,
            paper,
        }
    }
}

fn trim(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_say_what_a_ruler_says() {
        for (reduction, says) in [
            (12, "1:12 (1 in = 1 ft)"),
            (24, "1:24 (1/2 in = 1 ft)"),
            (64, "1:64 (3/16 in = 1 ft)"),
            (96, "1:96 (1/8 in = 1 ft)"),
            (192, "1:192 (1/16 in = 1 ft)"),
            (240, "1:240 (1 in = 20 ft)"),
        ] {
            assert_eq!(Scale(reduction).says(Units::Feet), says);
        }
        assert_eq!(Scale(100).says(Units::Metres), "1:100");
    }

    #[test]
    fn a_bar_is_true_and_tells_its_length() {
        let bar = Scale(100).bar(44.0, Units::Metres);
        assert_eq!(
            (bar.told.as_str(), bar.paper.as_str(), bar.figures.len()),
            ("4 m", "40 mm", 5)
        );
        for units in [Units::Metres, Units::Feet] {
            for scale in Scale::all(units) {
                let bar = scale.bar(44.0, units);
                assert!(
                    4.0 * bar.step <= 44.0 && 4.0 * bar.step >= 15.0,
                    "{scale:?}: {bar:?}"
                );
            }
        }
        assert_eq!(Scale(96).bar(44.0, Units::Feet).paper, "25.4 mm (1 in)");
    }
}
