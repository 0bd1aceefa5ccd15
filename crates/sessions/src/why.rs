//! Why a target is not met: by ceilings that hold whatever is planned.

use crate::bound::Bound;
use crate::frame::{Frame, NEVER};
use crate::schedule::{State, Why};

/// Minutes. Less is not missed: a thousandth of a slot.
pub(crate) const MISSED: f64 = 0.01;

pub(crate) fn why(frame: &Frame, kid: usize, target: usize, bound: &Bound) -> Why {
    let want = &frame.kids[kid].targets[target];
    let gifts = || frame.kids[kid].gifts.iter().enumerate();
    let serving = || {
        gifts()
            .filter(|(_, gifts)| gifts.iter().any(|gift| gift.0 == target))
            .map(|(act, _)| frame.acts[act].station)
    };
    if frame.slots == 0 || !frame.outings.iter().any(|outing| outing.contains(&kid)) {
        return Why::NoTime;
    }
    if serving().next().is_none() {
        return Why::NoStation;
    }
    if want.opens == NEVER {
        return Why::NeverOpens;
    }
    let least = want.minutes - MISSED;
    if ceiling(frame, kid, target, true, false) < least {
        return if ceiling(frame, kid, target, false, false) >= least {
            Why::OpensLate
        } else if ceiling(frame, kid, target, true, true) >= least {
            Why::Lost
        } else {
            Why::Stations
        };
    }
    if bound.sight_priced || serving().any(|station| bound.priced[station]) {
        Why::Full
    } else {
        Why::Time
    }
}

/// Practice that the child would have if it did nothing else and no station were ever full.
///
/// - `waits`: whether skills wait until they open
/// - `whole`: whether sessions that are lost and stations that are broken count as if not
fn ceiling(frame: &Frame, kid: usize, target: usize, waits: bool, whole: bool) -> f64 {
    let it = &frame.kids[kid];
    let per_week = frame.sittings.len() / frame.weeks.max(1);
    let mut sum = 0.0;
    for (week, sittings) in frame.sittings.chunks(per_week.max(1)).enumerate() {
        let takes = sittings
            .iter()
            .filter(|at| whole || at.state != State::Lost);
        let mut left = takes.clone().count() as f64 * frame.slot * frame.slots as f64;
        // Each station's best minute for the target, fresh and stale.
        let mut rates: Vec<f64> = Vec::new();
        for station in 0..frame.forms_of.len() {
            if !takes.clone().any(|at| whole || at.usable[station]) {
                continue;
            }
            let best = (0..frame.acts.len())
                .filter(|act| frame.acts[*act].station == station)
                .filter(|act| !waits || it.opens[*act] as usize <= week + 1)
                .flat_map(|act| &it.gifts[act])
                .filter(|gift| gift.0 == target)
                .map(|gift| gift.1)
                .fold(0.0, f64::max);
            rates.extend([best, best * frame.stale_worth]);
        }
        rates.sort_by(|a, b| b.total_cmp(a));
        for rate in rates {
            let minutes = frame.stale.min(left);
            sum += rate * minutes;
            left -= minutes;
        }
    }
    sum
}
