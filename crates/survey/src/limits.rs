//! Limits of the tests: how far good readings may stray.

use statrs::distribution::{ChiSquared, ContinuousCDF, Normal, StudentsT};

/// vTPv of `dof` degrees of freedom stays under this in a share `1 - alpha` of good
/// surveys; 0 where `dof` is 0.
///
/// # Source
/// Chi-square quantile.
pub fn global_limit(alpha: f64, dof: usize) -> f64 {
    ChiSquared::new(dof as f64).map_or(0.0, |chi| chi.inverse_cdf(1.0 - alpha))
}

/// |w| of a good reading stays under this in a share `1 - alpha` of readings (two-sided).
pub fn w_limit(alpha: f64) -> f64 {
    Normal::standard().inverse_cdf(1.0 - alpha / 2.0)
}

/// By how many of its own sigmas w must be shifted to be found in a share `power` of
/// cases: δ0 of the smallest blunder found, δ0 · sigma / √r.
pub fn shift(alpha: f64, power: f64) -> f64 {
    w_limit(alpha) + Normal::standard().inverse_cdf(power)
}

/// Pope's limit of |tau| for the worst of `n` readings; `None` below two degrees of
/// freedom, where tau is ±1 whatever was read.
///
/// # Source
/// Pope 1976 as in the reference page: a0 = 1 - (1 - alpha)^(1/n), t the Student quantile
/// of 1 - a0/2 at dof - 1, tau = t √dof / √(dof - 1 + t²).
pub fn tau_limit(alpha: f64, n: usize, dof: usize) -> Option<f64> {
    if dof < 2 || n == 0 {
        return None;
    }
    let each = 1.0 - libm::pow(1.0 - alpha, 1.0 / n as f64);
    let rest = dof as f64 - 1.0;
    let t = StudentsT::new(0.0, 1.0, rest)
        .ok()?
        .inverse_cdf(1.0 - each / 2.0);
    Some(t * (dof as f64).sqrt() / (rest + t * t).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed with scipy 1.17.1; tolerance half the last printed digit.
    #[test]
    fn chi_square_limits_are_those_of_the_tables() {
        let freedoms = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 30];
        let table: [(f64, [f64; 12]); 4] = [
            (
                0.975,
                [
                    0.0010, 0.0506, 0.2158, 0.4844, 0.8312, 1.2373, 2.1797, 3.2470, 4.4038, 6.2621,
                    9.5908, 16.7908,
                ],
            ),
            (
                0.05,
                [
                    3.8415, 5.9915, 7.8147, 9.4877, 11.0705, 12.5916, 15.5073, 18.3070, 21.0261,
                    24.9958, 31.4104, 43.7730,
                ],
            ),
            (
                0.025,
                [
                    5.0239, 7.3778, 9.3484, 11.1433, 12.8325, 14.4494, 17.5345, 20.4832, 23.3367,
                    27.4884, 34.1696, 46.9792,
                ],
            ),
            (
                0.001,
                [
                    10.8276, 13.8155, 16.2662, 18.4668, 20.5150, 22.4577, 26.1245, 29.5883,
                    32.9095, 37.6973, 45.3147, 59.7031,
                ],
            ),
        ];
        for (alpha, printed) in table {
            for (dof, printed) in freedoms.into_iter().zip(printed) {
                let ours = global_limit(alpha, dof);
                assert!(
                    (ours - printed).abs() <= 0.000_051,
                    "{alpha}, {dof}: {ours}, not {printed}"
                );
            }
        }
        assert_eq!(global_limit(0.05, 0), 0.0);
    }

    /// Computed with scipy 1.17.1.
    #[test]
    fn limits_of_w_and_tau_are_those_of_the_tables() {
        for (ours, printed) in [
            (w_limit(0.05), 1.959964),
            (w_limit(0.01), 2.575829),
            (w_limit(0.001), 3.290527),
            (shift(0.001, 0.8), 4.132148),
            (shift(0.05, 0.8), 2.801585),
            (tau_limit(0.05, 27, 14).unwrap(), 2.740791),
            (tau_limit(0.05, 24, 14).unwrap(), 2.720207),
            (tau_limit(0.05, 12, 3).unwrap(), 1.724663),
        ] {
            assert!(
                (ours - printed).abs() <= 0.000_000_6,
                "{ours}, not {printed}"
            );
        }
        assert_eq!(tau_limit(0.05, 6, 1), None);
    }
}
