//! A probability that is not known: Beta(a, b), times what tries tell of it.

use crate::fit::Band;
use crate::legendre::{N, RULE, Running};

/// Nodes and weights of Beta(a, b).
///
/// # Method
/// Gauss-Legendre in w, where the probability, or what it lacks to 1, is w^k. At an end
/// whose parameter is under 4 the density is no polynomial, and k = 4/parameter makes it
/// w^3 times a smooth function. One end at most is such where a + b is 8 or more; else the
/// other costs digits, and quantiles hold to 5e-4. The panel covers what is not under 1e-16
/// of the mass.
#[derive(Clone, Debug)]
pub struct Rate {
    /// Values of the probability, in the order of the nodes.
    pub values: Vec<f64>,
    /// Their weights; they add up to 1.
    pub weights: Vec<f64>,
    /// Whether w^k is what the probability lacks to 1.
    flipped: bool,
    /// The exponent.
    k: f64,
    /// The panel in w.
    panel: (f64, f64),
}

impl Rate {
    /// A parameter of 0 or less leaves nothing unsure: the probability is 0 or 1.
    pub fn beta(a: f64, b: f64) -> Rate {
        let sure = |value: f64| Rate {
            values: vec![value],
            weights: vec![1.0],
            flipped: false,
            k: 1.0,
            panel: (value, value),
        };
        if b.is_nan() || a.is_nan() || b <= 0.0 {
            return sure(1.0);
        }
        if a <= 0.0 {
            return sure(0.0);
        }
        let flipped = b < a;
        let (small, big) = if flipped { (b, a) } else { (a, b) };
        let k = if small < 4.0 { 4.0 / small } else { 1.0 };
        let whole = small + big;
        let mean = small / whole;
        let sd = libm::sqrt(mean * (1.0 - mean) / (whole + 1.0));
        let up = (mean + 12.0 * sd + 40.0 / whole).min(1.0);
        let down = if k > 1.0 {
            0.0
        } else {
            (mean - 12.0 * sd).max(0.0)
        };
        let panel = (down, libm::pow(up, 1.0 / k));
        let half = (panel.1 - panel.0) / 2.0;
        let mut rate = Rate {
            values: Vec::with_capacity(N),
            weights: Vec::with_capacity(N),
            flipped,
            k,
            panel,
        };
        let mut logs = Vec::with_capacity(N);
        for (x, weight) in RULE.nodes.iter().zip(&RULE.weights) {
            let w = panel.0 + half * (1.0 + x);
            let p = libm::pow(w, k);
            rate.values.push(if flipped { 1.0 - p } else { p });
            let log = (k * small - 1.0) * libm::log(w) + (big - 1.0) * libm::log1p(-p);
            logs.push((log, *weight));
        }
        let most = logs
            .iter()
            .fold(f64::NEG_INFINITY, |most, (log, _)| most.max(*log));
        rate.weights.extend(
            logs.iter()
                .map(|(log, weight)| weight * libm::exp(log - most)),
        );
        let sum: f64 = rate.weights.iter().sum();
        rate.weights.iter_mut().for_each(|weight| *weight /= sum);
        rate
    }

    /// What is known of it once each value weighs so many times more.
    pub fn told(&self, factor: &[f64]) -> Band {
        let masses: Vec<f64> = self
            .weights
            .iter()
            .zip(factor)
            .map(|(w, f)| w * f)
            .collect();
        let sum: f64 = masses.iter().sum();
        let moment = |of: &dyn Fn(f64) -> f64| -> f64 {
            let terms = masses.iter().zip(&self.values);
            terms.map(|(mass, value)| mass * of(*value)).sum::<f64>() / sum
        };
        let mean = moment(&|value| value);
        let sd = libm::sqrt(moment(&|value| (value - mean) * (value - mean)));
        let Ok(values) = <[f64; N]>::try_from(masses) else {
            return Band::sure(mean);
        };
        let mut values = values;
        for (value, weight) in values.iter_mut().zip(&RULE.weights) {
            *value /= weight;
        }
        let running = Running::of(&values);
        Band::of(mean, sd, |share| {
            let share = if self.flipped { 1.0 - share } else { share };
            let half = (self.panel.1 - self.panel.0) / 2.0;
            let w = self.panel.0 + half * (1.0 + running.quantile(share));
            let p = libm::pow(w, self.k);
            if self.flipped { 1.0 - p } else { p }
        })
    }
}

/// log of the Beta function.
pub fn log_beta(a: f64, b: f64) -> f64 {
    libm::lgamma(a) + libm::lgamma(b) - libm::lgamma(a + b)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: scipy 1.17.1, `scipy.stats.beta.ppf` at .05, .25, .75, .95, from `oracle/beta.py`.
    #[test]
    fn quantiles_of_beta_are_scipys() {
        let stored: serde_json::Value =
            serde_json::from_str(include_str!("../oracle/beta.json")).expect("the figures read");
        let cases = stored.as_array().expect("cases");
        assert!(cases.len() > 20);
        for case in cases {
            let of = |at: usize| case[at].as_f64().expect("a number");
            let rate = Rate::beta(of(0), of(1));
            let band = rate.told(&vec![1.0; rate.values.len()]);
            let ours = [
                band.nine_tenths[0],
                band.half[0],
                band.half[1],
                band.nine_tenths[1],
            ];
            // A handful of observations leave both ends of the density rough: half a thousandth;
            // nearly all of the mass at one end, three millionths.
            let most = if of(0) + of(1) < 8.0 { 5e-4 } else { 1e-5 };
            for (at, ours) in ours.iter().enumerate() {
                assert!((ours - of(at + 2)).abs() < most, "{case} {ours}");
            }
            assert!((band.mean - of(0) / (of(0) + of(1))).abs() < most);
        }
    }
}
