//! How many decimals leave the house.

/// `value` to `decimals` places; a negative zero becomes zero, so that it has one text.
pub fn round_to(value: f64, decimals: u8) -> f64 {
    let scale = [
        1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13,
    ][usize::from(decimals.min(13))];
    (value * scale).round() / scale + 0.0
}

/// To 1e-7: survey coordinates in metres and what belongs to them.
pub fn tenth_of_a_micron(value: f64) -> f64 {
    round_to(value, 7)
}

/// To 1e-6: every other length in metres, and probabilities.
pub fn millionth(value: f64) -> f64 {
    round_to(value, 6)
}
