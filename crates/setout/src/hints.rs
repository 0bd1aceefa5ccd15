//! Chalk line, offsets from it, and a right angle on it.

use geo::Coord;
use ledger::Ledger;
use unit::Units;

use crate::figures::{SQUARE_FEET, SQUARE_METRIC};
use crate::keys::{Spot, against, between};
use crate::question::Question;
use crate::result::{Chalk, Offset, RightAngle};

/// To a whole step. The quotient by a binary fraction's neighbour is rounded first, the
/// product to 1e-6, so that 2.405 m stays 2.405.
pub(crate) fn stepped(metres: f64, step: f64) -> f64 {
    crate::millionth((metres / step).round() * step)
}

/// The line from origin to direction and what is found from it.
pub(crate) fn chalk(origin: Coord<f64>, direction: Coord<f64>, rest: &[Spot], step: f64) -> Chalk {
    let mut offsets: Vec<Offset> = rest
        .iter()
        .map(|spot| {
            let [along, left] = against(origin, direction, spot.at).map(|by| stepped(by, step));
            Offset {
                feature: spot.feature.clone(),
                along,
                left,
            }
        })
        .collect();
    offsets.sort_by(|a, b| a.along.total_cmp(&b.along).then(a.left.total_cmp(&b.left)));
    Chalk {
        length: stepped(between(origin, direction), step),
        offsets,
    }
}

/// The largest 3-4-5 triangle on the chalk line that the figure's own ground beside it
/// holds: either leg may lie along. `None` where even the smallest does not fit.
///
/// # Source
/// Standard deviation of the angle: sigma c √2 / (a b), for three lengths of one sigma (the
/// law of cosines at a right angle).
pub(crate) fn square(
    question: &Question,
    line: [Coord<f64>; 2],
    places: &[Coord<f64>],
    ledger: &Ledger,
) -> Option<RightAngle> {
    let unit = ledger.number(match question.units {
        Units::Metres => SQUARE_METRIC,
        Units::Feet => SQUARE_FEET,
    });
    let [origin, direction] = line;
    let long = between(origin, direction);
    let sides = places.iter().map(|at| against(origin, direction, *at)[1]);
    let (left, right) = sides.fold((0.0, 0.0), |(left, right): (f64, f64), off| {
        (left.max(off), right.max(-off))
    });
    let (aside, is_left) = if left >= right {
        (left, true)
    } else {
        (right, false)
    };
    let fits = |along: f64, up: f64| (long / along).min(aside / up).floor();
    let (four, three) = (fits(4.0 * unit, 3.0 * unit), fits(3.0 * unit, 4.0 * unit));
    let (times, along, up) = if four >= three {
        (four, 4.0, 3.0)
    } else {
        (three, 3.0, 4.0)
    };
    if !(times >= 1.0 && times.is_finite()) {
        return None;
    }
    let [along, aside, across] = [along, up, 5.0].map(|side| crate::millionth(side * times * unit));
    let sigma = question.tape.sigma(across);
    Some(RightAngle {
        along,
        aside,
        across,
        left: is_left,
        sigma_deg: crate::millionth(square_sigma(sigma, along, aside).to_degrees()),
    })
}

/// Standard deviation in radians of a right angle laid with legs a and b and the third side,
/// each of standard deviation `sigma`.
pub(crate) fn square_sigma(sigma: f64, a: f64, b: f64) -> f64 {
    sigma * libm::hypot(a, b) * std::f64::consts::SQRT_2 / (a * b)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The reference page's table (derived): sigma 3 mm.
    #[test]
    fn right_angles_are_as_true_as_the_reference_says() {
        for (a, b, degrees, at_ten) in [
            (0.9, 1.2, 0.33762, 0.0589),
            (3.0, 4.0, 0.10129, 0.0177),
            (6.0, 8.0, 0.05064, 0.0088),
            (9.0, 12.0, 0.03376, 0.0059),
        ] {
            let ours = square_sigma(0.003, a, b);
            assert!((ours.to_degrees() - degrees).abs() <= 5.1e-6, "{a}: {ours}");
            assert!((10.0 * ours - at_ten).abs() <= 5.1e-5, "{a}: {ours}");
        }
    }
}
