//! What probably happened when a tape was misread.

use unit::{FOOT, INCH};

use crate::result::Slip;

/// Whole units of a slip: nobody misreads by more.
const MOST: i32 = 5;

/// Guesses the slip behind `reads` where the others say `should`, both metres and
/// `should` known to `within`. The plainest slip that explains the difference wins: whole
/// metres, whole feet, swapped digits, tenths, foot for inch, hook.
pub fn guess(reads: f64, should: f64, within: f64, hooks: &[f64]) -> Option<Slip> {
    let off = reads - should;
    let near = |wanted: f64| (off - wanted).abs() <= within;
    if within >= off.abs() {
        return None;
    }
    let whole = |unit: f64| {
        let count = (off / unit).round();
        (count != 0.0 && count.abs() <= f64::from(MOST) && near(count * unit))
            .then_some(count as i32)
    };
    whole(1.0)
        .map(Slip::WholeMetres)
        .or_else(|| whole(FOOT).map(Slip::WholeFeet))
        .or_else(|| swapped(reads, should, within))
        .or_else(|| {
            whole(0.1)
                .filter(|count| count.abs() < 10)
                .map(Slip::Tenths)
        })
        .or_else(|| foot_for_inch(reads, should, within))
        .or_else(|| {
            hooks
                .iter()
                .flat_map(|h| [*h, -*h])
                .find(|h| near(*h))
                .map(Slip::Hook)
        })
}

/// Two neighbouring digits of the reading in whole millimetres, swapped back.
fn swapped(reads: f64, should: f64, within: f64) -> Option<Slip> {
    let mut best: Option<f64> = None;
    let millimetres = (reads * 1000.0).round() as i64;
    let mut place = 1;
    while place * 10 <= millimetres {
        let (low, high) = (
            (millimetres / place) % 10,
            (millimetres / (place * 10)) % 10,
        );
        let other = (millimetres + (low - high) * place * 9) as f64 / 1000.0;
        let nearer = |old: f64| (other - should).abs() < (old - should).abs();
        if low != high && (other - should).abs() <= within && best.is_none_or(nearer) {
            best = Some(other);
        }
        place *= 10;
    }
    best.map(Slip::SwappedDigits)
}

/// Some of the feet were inches, or some of the inches feet.
fn foot_for_inch(reads: f64, should: f64, within: f64) -> Option<Slip> {
    (1..12)
        .flat_map(|count| [f64::from(count), -f64::from(count)])
        .map(|count| reads - count * (FOOT - INCH))
        .find(|other| (other - should).abs() <= within)
        .map(Slip::FootForInch)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_slip_is_known_by_its_size() {
        let hooks = [0.02, 0.05, 0.1];
        for (reads, should, wanted) in [
            (31.000, 29.9995, Some(Slip::WholeMetres(1))),
            (17.299, 17.195, Some(Slip::Tenths(1))),
            (12.0, 12.6096, Some(Slip::WholeFeet(-2))),
            (14.26, 14.623, Some(Slip::SwappedDigits(14.62))),
            (3.6576, 3.3782, Some(Slip::FootForInch(3.6576 - 0.2794))),
            (8.000, 8.0495, Some(Slip::Hook(-0.05))),
            (8.000, 8.004, None),
            (8.000, 8.271, None),
        ] {
            let ours = guess(reads, should, 0.008, &hooks);
            let same = match (ours, wanted) {
                (Some(Slip::FootForInch(a)), Some(Slip::FootForInch(b))) => (a - b).abs() < 1e-9,
                (a, b) => a == b,
            };
            assert!(same, "{reads} for {should}: {ours:?}, not {wanted:?}");
        }
    }
}
