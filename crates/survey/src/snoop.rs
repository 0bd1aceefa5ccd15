//! The search for slips: one reading a round, and back in at the end if it fits after all.

use crate::fit::{Fit, Verdict};
use crate::limits;
use crate::model::Place;
use crate::network::Reading;

/// A reading, or a group of them, that the others speak against.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    /// Numbers, the worst first.
    pub(crate) readings: Vec<usize>,
    /// Of the first, as it stood.
    pub(crate) verdict: Verdict,
    /// What the first should read by the fit that found it.
    pub(crate) should_read: f64,
    pub(crate) set_aside: bool,
}

/// The limits of the search.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Limits {
    /// |w| of a good reading.
    pub(crate) w: f64,
    /// δ0.
    pub(crate) shift: f64,
    /// Correlation of w past which readings are one group.
    pub(crate) alike: f64,
}

impl Limits {
    pub(crate) fn of(ledger: &ledger::Ledger) -> Limits {
        let alpha = ledger.number(crate::figures::W_ALPHA);
        Limits {
            w: limits::w_limit(alpha),
            shift: limits::shift(alpha, ledger.number(crate::figures::POWER)),
            alike: ledger.number(crate::figures::ALIKE),
        }
    }
}

/// Searches `readings` (those in use by number) from the fitted places `at`. Gives what was
/// found and the last fit, over all readings that were not set aside.
pub(crate) fn snoop<'a>(
    all: &'a [Reading],
    used: &[usize],
    held: &[bool],
    at: Vec<Place>,
    limits: Limits,
) -> (Vec<Found>, Vec<usize>, Fit<'a>) {
    let fit_of = |numbers: &[usize], at: Vec<Place>| {
        Fit::new(numbers.iter().map(|&n| &all[n]).collect(), held, at)
    };
    let mut found: Vec<Found> = Vec::new();
    let mut in_search = used.to_vec();
    let mut fit = fit_of(&in_search, at);
    while let Some((place, verdict)) = worst(&fit, limits) {
        let number = in_search[place];
        let reading = &all[number];
        let mut readings = vec![number];
        readings.extend(
            fit.alike(limits.alike)[place]
                .iter()
                .map(|&other| in_search[other]),
        );
        let should_read = reading.value + fit.z(reading) * reading.sigma / verdict.r;
        let set_aside = readings.len() == 1;
        found.push(Found {
            readings,
            verdict,
            should_read,
            set_aside,
        });
        in_search.remove(place);
        fit = fit_of(&in_search, fit.at);
    }
    if found.is_empty() {
        return (found, in_search, fit);
    }
    // A group is named, not located: all of it stays in. And a reading that an earlier
    // round took for wrong may fit now that the others are out.
    let mut kept: Vec<usize> = used.to_vec();
    kept.retain(|n| !found.iter().any(|f| f.set_aside && f.readings[0] == *n));
    fit = fit_of(&kept, fit.at);
    for slot in (0..found.len())
        .rev()
        .filter(|&s| found[s].set_aside)
        .collect::<Vec<_>>()
    {
        let number = found[slot].readings[0];
        let predicted = fit.z(&all[number]) / (1.0 + fit.leverage(&all[number])).sqrt();
        if predicted.abs() <= limits.w {
            found.remove(slot);
            kept.push(number);
            kept.sort_unstable();
            fit = fit_of(&kept, fit.at);
        }
    }
    found.sort_by(|a, b| {
        let size = |f: &Found| f.verdict.w.unwrap_or(0.0).abs();
        size(b).total_cmp(&size(a))
    });
    (found, kept, fit)
}

/// The reading of the largest |w| past the limit, by its place in the fit.
fn worst(fit: &Fit, limits: Limits) -> Option<(usize, Verdict)> {
    fit.system
        .readings()
        .iter()
        .map(|reading| fit.judge(reading, limits.shift))
        .enumerate()
        .filter(|(_, verdict)| verdict.w.is_some_and(|w| w.abs() > limits.w))
        .fold(
            None,
            |most: Option<(usize, Verdict)>, (place, verdict)| match most {
                Some((_, old)) if old.w.unwrap_or(0.0).abs() >= verdict.w.unwrap_or(0.0).abs() => {
                    most
                }
                _ => Some((place, verdict)),
            },
        )
}
