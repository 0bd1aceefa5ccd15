//! Gauss-Legendre nodes on (-1, 1), and the running integral of what is known at them.

use std::sync::LazyLock;

/// Nodes.
pub const N: usize = 48;

/// The rule.
pub struct Rule {
    /// Nodes, ascending.
    pub nodes: [f64; N],
    /// Weights; they add up to 2.
    pub weights: [f64; N],
}

/// The rule of so many nodes.
pub static RULE: LazyLock<Rule> = LazyLock::new(|| {
    let points = footfall::gauss_legendre::<N>();
    Rule {
        nodes: points.map(|(node, _)| node),
        weights: points.map(|(_, weight)| weight),
    }
});

/// P_0 to P_N at x.
fn polynomials(x: f64) -> [f64; N + 1] {
    let mut p = [1.0; N + 1];
    p[1] = x;
    for k in 2..=N {
        let of = k as f64;
        p[k] = ((2.0 * of - 1.0) * x * p[k - 1] - (of - 1.0) * p[k - 2]) / of;
    }
    p
}

/// The integral from -1 to x of the polynomial through values at the nodes.
pub struct Running([f64; N]);

impl Running {
    /// `values` at the nodes.
    pub fn of(values: &[f64; N]) -> Running {
        let mut series = [0.0; N];
        for ((x, weight), value) in RULE.nodes.iter().zip(&RULE.weights).zip(values) {
            let p = polynomials(*x);
            for (k, (term, p)) in series.iter_mut().zip(p).enumerate() {
                *term += (k as f64 + 0.5) * weight * value * p;
            }
        }
        Running(series)
    }

    /// The integral up to x, by P_k's own: (P_(k+1) - P_(k-1)) / (2k + 1).
    pub fn up_to(&self, x: f64) -> f64 {
        let p = polynomials(x);
        let first = self.0[0] * (x + 1.0);
        let rest = (1..N).map(|k| self.0[k] * (p[k + 1] - p[k - 1]) / (2.0 * k as f64 + 1.0));
        first + rest.sum::<f64>()
    }

    /// Where the integral reaches a share of the whole.
    pub fn quantile(&self, share: f64) -> f64 {
        let wanted = share * self.up_to(1.0);
        let (mut low, mut high) = (-1.0, 1.0);
        for _ in 0..52 {
            let middle = (low + high) / 2.0;
            if self.up_to(middle) < wanted {
                low = middle;
            } else {
                high = middle;
            }
        }
        (low + high) / 2.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn powers_are_integrated_and_run_up() {
        for degree in [0, 1, 2, 17, 40, 47] {
            let power = |x: f64| libm::pow(x, f64::from(degree));
            let values = RULE.nodes.map(power);
            let sum: f64 = values.iter().zip(&RULE.weights).map(|(v, w)| v * w).sum();
            let up_to = |x: f64| {
                let of = f64::from(degree + 1);
                (libm::pow(x, of) - libm::pow(-1.0, of)) / of
            };
            assert!((sum - up_to(1.0)).abs() < 1e-14, "degree {degree}");
            let running = Running::of(&values);
            for x in [-0.9, -0.3, 0.0, 0.5, 1.0] {
                assert!(
                    (running.up_to(x) - up_to(x)).abs() < 1e-13,
                    "degree {degree} at {x}"
                );
            }
        }
    }
}
