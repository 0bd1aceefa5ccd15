//! The normal law: Phi, log Phi, Owen's T, and the nodes of a Gauss-Legendre panel.

use std::f64::consts::{FRAC_1_SQRT_2, PI};
use std::sync::LazyLock;

/// Past this, Phi is 0 or 1 to the last bit that matters beside 1.
const EDGE: f64 = 8.5;
/// Nodes for each unit of x: a power of two, so that nodes are exact.
const FINE: f64 = 64.0;
const NODES: usize = (2.0 * EDGE * FINE) as usize + 1;

/// Phi and its density at the nodes.
static TABLE: LazyLock<Vec<(f64, f64)>> = LazyLock::new(|| {
    (0..NODES)
        .map(|node| {
            let x = node as f64 / FINE - EDGE;
            (0.5 * libm::erfc(-x * FRAC_1_SQRT_2), density(x))
        })
        .collect()
});

/// The normal density.
pub(crate) fn density(x: f64) -> f64 {
    libm::exp(-0.5 * x * x) / libm::sqrt(2.0 * PI)
}

/// The normal distribution function, to 3e-16 of 1.
///
/// Taylor's series from the nearest of a table's nodes; the derivatives of Phi are the
/// density times Hermite polynomials. Half a step is 1/128, so the term left out is under
/// 1e-17. A class asks it millions of times.
#[derive(Clone, Copy)]
pub(crate) struct Phi(&'static [(f64, f64)]);

impl Phi {
    pub(crate) fn new() -> Phi {
        Phi(&TABLE)
    }

    /// Of several x side by side, each as it is alone.
    #[inline]
    pub(crate) fn at<const N: usize>(self, x: [f64; N]) -> [f64; N] {
        let held = x.map(|x| x.clamp(-EDGE, EDGE));
        // What is no number stays none: its h is none.
        let nodes = held.map(|held| ((held + EDGE) * FINE + 0.5) as u32);
        let told = nodes.map(|node| {
            let told = self.0.get(node as usize).copied();
            told.unwrap_or((f64::NAN, f64::NAN))
        });
        std::array::from_fn(|i| {
            let (phi, density) = told[i];
            let x0 = f64::from(nodes[i]) * (1.0 / FINE) - EDGE;
            let h = held[i] - x0;
            let s = x0 * x0;
            let fifth = (s - 6.0) * s + 3.0;
            let sixth = ((s - 10.0) * s + 15.0) * x0;
            let series = 1.0
                + h * (-x0 / 2.0
                    + h * ((s - 1.0) / 6.0
                        + h * ((3.0 - s) * x0 / 24.0 + h * (fifth / 120.0 - h * sixth / 720.0))));
            phi + density * h * series
        })
    }
}

/// log Phi, without underflow however far out.
///
/// From -30 down by the continued fraction of Mills' ratio, which has long converged there.
pub(crate) fn log_phi(x: f64) -> f64 {
    if x > -30.0 {
        // Near 1 the logarithm is taken of what is missing.
        return if x > 0.0 {
            libm::log1p(-0.5 * libm::erfc(x * FRAC_1_SQRT_2))
        } else {
            libm::log(0.5 * libm::erfc(-x * FRAC_1_SQRT_2))
        };
    }
    let t = -x;
    let fraction = (1..=12).rev().fold(t, |tail, k| t + f64::from(k) / tail);
    -0.5 * x * x - 0.5 * libm::log(2.0 * PI) - libm::log(fraction)
}

/// Owen's T: the mass of a standard normal pair with x > h and 0 < y < a x.
///
/// # Method
/// For |a| <= 1 the defining integral, whose integrand is smooth there, by 32 points; else
/// the reflection to 1/a. Absolute error under 1e-15.
///
/// # Source
/// Owen 1956 (ledger `OWEN56`); checked against scipy's `owens_t`.
pub(crate) fn owens_t(h: f64, a: f64) -> f64 {
    let (h, size) = (h.abs(), a.abs());
    let mass = if size <= 1.0 {
        narrow(h, size)
    } else if size.is_infinite() {
        0.5 * tail(h)
    } else {
        let (near, far) = (tail(h), tail(size * h));
        0.5 * (near + far) - near * far - narrow(size * h, 1.0 / size)
    };
    if a < 0.0 { -mass } else { mass }
}

fn tail(x: f64) -> f64 {
    0.5 * libm::erfc(x * FRAC_1_SQRT_2)
}

fn narrow(h: f64, a: f64) -> f64 {
    // exp(-h²/2) is nothing beside 1e-16 from here on.
    if h > 9.0 || h.is_nan() {
        return if h.is_nan() { h } else { 0.0 };
    }
    let sum: f64 = PANEL
        .iter()
        .map(|&(node, weight)| {
            let x = 0.5 * a * (1.0 + node);
            let s = 1.0 + x * x;
            weight * libm::exp(-0.5 * h * h * s) / s
        })
        .sum();
    0.5 * a * sum / (2.0 * PI)
}

/// Points in one panel.
pub(crate) const POINTS: usize = 32;

/// Nodes and weights of a panel of so many points.
pub(crate) static PANEL: LazyLock<[(f64, f64); POINTS]> = LazyLock::new(gauss_legendre);

/// Nodes on (-1, 1), ascending, and weights of Gauss-Legendre; the weights add up to 2.
///
/// # Method
/// Newton's on the Legendre polynomial, from a start good to 1e-4: four steps reach the last
/// bit, six make sure.
pub fn gauss_legendre<const N: usize>() -> [(f64, f64); N] {
    let n = N as f64;
    let mut panel = [(0.0, 0.0); N];
    for (i, place) in panel.iter_mut().enumerate() {
        let mut x = -libm::cos(PI * (i as f64 + 0.75) / (n + 0.5));
        let mut slope = 1.0;
        for _ in 0..6 {
            let (mut before, mut here) = (1.0, x);
            for k in 2..=N {
                let k = k as f64;
                (before, here) = (here, ((2.0 * k - 1.0) * x * here - (k - 1.0) * before) / k);
            }
            slope = n * (x * here - before) / (x * x - 1.0);
            x -= here / slope;
        }
        *place = (x, 2.0 / ((1.0 - x * x) * slope * slope));
    }
    panel
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_fast_phi_is_erfc_to_the_last_bits() {
        let at = |x: f64| Phi::new().at([x])[0];
        for step in -120_000..=120_000 {
            let x = f64::from(step) * 1.037e-4;
            let wanted = 0.5 * libm::erfc(-x * FRAC_1_SQRT_2);
            assert!(
                (at(x) - wanted).abs() <= 3e-16,
                "at {x}: {} not {wanted}",
                at(x)
            );
        }
        assert_eq!(at(f64::NEG_INFINITY), at(-100.0));
        assert!(at(f64::NEG_INFINITY) < 1e-16 && at(f64::INFINITY) == 1.0);
        assert!(at(f64::NAN).is_nan());
    }

    /// Source: scipy 1.17.1, `scipy.special.log_ndtr`.
    #[test]
    fn log_phi_holds_far_out() {
        for (x, wanted) in [
            (-1000.0, -500007.8266948122),
            (-50.0, -1254.8313611394199),
            (-30.5, -469.4627373229121),
            (-29.5, -439.4294746091503),
            (-5.0, -15.064998393988727),
            (0.0, -std::f64::consts::LN_2),
            (3.0, -0.0013508099647481925),
            (8.0, -6.220960574271742e-16),
        ] {
            let ours = log_phi(x);
            assert!(
                (ours - wanted).abs() <= 4e-14 * f64::abs(wanted),
                "at {x}: {ours} not {wanted}"
            );
        }
    }

    #[test]
    fn a_panel_integrates_polynomials_of_degree_63() {
        for degree in [0, 1, 2, 31, 62, 63] {
            let sum: f64 = PANEL
                .iter()
                .map(|&(x, w)| w * libm::pow(x, f64::from(degree)))
                .sum();
            let wanted = if degree % 2 == 0 {
                2.0 / f64::from(degree + 1)
            } else {
                0.0
            };
            assert!((sum - wanted).abs() < 1e-15, "degree {degree}: {sum}");
        }
    }
}
