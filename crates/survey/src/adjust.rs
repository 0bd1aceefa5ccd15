//! From the door to the answer: what is used, in which frame, and how sure it is.

use ledger::Ledger;
use note::Noted;

use crate::figures;
use crate::fit::Fit;
use crate::frame::{self, Frame};
use crate::mirror;
use crate::network::{Network, Reading};
use crate::report;
use crate::result::Survey;
use crate::snoop::{self, Limits};
use crate::solve::{Pull, System};
use crate::start;

/// Steps in a metre in which coordinates are handed on: 1e-7 m each.
const GRAIN: f64 = 1e7;

/// Adjusts the readings of a yard.
///
/// # Shapes and units
/// All lengths in metres, angles in radians; covariances at the stated sigmas.
///
/// # Errors
/// The value is `None` where there is nothing to adjust or a reading cannot be; a note says
/// which and why. Notes of severity error beside a value mean that a corner of the yard is
/// not fixed: the answer is there to be looked at, not to be built on.
pub fn adjust(network: &Network, ledger: &Ledger) -> Noted<Option<Survey>> {
    let limits = Limits::of(ledger);
    let frame = Frame::of(network);
    let used: Vec<usize> = (0..network.readings.len())
        .filter(|&n| frame.uses(&network.readings[n]))
        .collect();
    let readings: Vec<&Reading> = used.iter().map(|&n| &network.readings[n]).collect();
    let mut at = start::find(network, &readings, &frame.known, &frame.fixed);
    let weak = ledger.number(figures::WEAK_AXIS);
    let images = mirror::settle(network, &frame, &readings, &mut at, weak);
    System::new(readings, &frame.fixed).settle(&mut at, Pull::Full, usize::MAX);

    let mut held = frame.fixed.clone();
    let line = frame.line(network);
    if let Some((origin, towards)) = line {
        frame::pose(&mut at, origin, towards);
        frame::hold(&mut held, &at, origin, towards);
    }
    let (found, kept, fit) = snoop::snoop(&network.readings, &used, &held, at, limits);

    let mut at = fit.at;
    let mut loose = Fit::stock(fit.system, at.clone()).loose();
    let free = line.is_some() && network.datum == crate::network::Datum::Free;
    let inner = free.then(|| {
        frame::nearest_to_start(network, &mut at, &loose).unwrap_or_else(|| {
            (0..at.len())
                .filter(|&p| !loose[p])
                .map(|p| (p, at[p]))
                .collect()
        })
    });
    for place in &mut at {
        *place = place.map(|x| report::round(x, GRAIN));
    }
    let mut held = frame.fixed.clone();
    if let Some((origin, towards)) = line {
        frame::hold(&mut held, &at, origin, towards);
    }
    let fit = Fit::stock(
        System::new(kept.iter().map(|&n| &network.readings[n]).collect(), &held),
        at,
    );
    loose = fit.loose();
    let covariance = frame::covariance(&fit, inner.as_deref());
    let fixed: Vec<bool> = (0..fit.at.len())
        .map(|p| !free && held[2 * p] && held[2 * p + 1])
        .collect();
    let (boundary, area) = report::boundary(network, &fit, &loose, &covariance);
    let survey = Survey {
        datum: report::datum(network, line),
        points: report::points(network, &fit, &fixed, &loose, &covariance),
        covariance: report::covariance(&covariance, &loose),
        boundary,
        readings: report::readings(network, &fit, &kept, &found, limits),
        groups: report::groups(&fit, &kept, limits),
        dof: fit.dof,
        vtpv: report::fine(fit.vtpv),
        s0: report::fine(fit.s0()),
        global_test: report::global_test(ledger, &fit),
        suspects: report::suspects(network, ledger, &fit, &found),
        area,
        next_readings: Vec::new(),
    };
    Noted::quiet(Some(survey))
}
