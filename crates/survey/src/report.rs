//! The answer, written down from the final fit.

use ledger::Ledger;

use crate::figures;
use crate::fit::{Fit, Verdict};
use crate::limits::global_limit;
use crate::model::value;
use crate::network::{Datum, Kind, Network, PointId, Reading, Walked};
use crate::result::{Adjusted, Covariance, Ellipse, GlobalTest, Measured, Point, Suspect};
use crate::shape;
use crate::slip;
use crate::snoop::{Found, Limits};

/// Sigmas of the difference within which a slip must explain it.
const SLIP_SIGMAS: f64 = 3.0;

/// Rounds to whole steps.
pub(crate) fn round(value: f64, steps_in_one: f64) -> f64 {
    (value * steps_in_one).round() / steps_in_one + 0.0
}

/// To 1e-9: radians, tests and sums of squares.
pub(crate) fn fine(value: f64) -> f64 {
    round(value, 1e9)
}

pub(crate) fn points(
    network: &Network,
    fit: &Fit,
    fixed: &[bool],
    loose: &[bool],
    c: &[f64],
) -> Vec<Point> {
    let n = 2 * fit.at.len();
    let names = network.points.iter().zip(&fit.at).enumerate();
    names
        .map(|(p, (name, at))| {
            let (x, y) = (2 * p, 2 * p + 1);
            let (xx, xy, yy) = (c[x * n + x].max(0.0), c[x * n + y], c[y * n + y].max(0.0));
            let (fixed, loose) = (fixed[p], loose[p]);
            let known = !fixed && !loose;
            let sigma = |variance: f64| if known { fine(variance.sqrt()) } else { 0.0 };
            Point {
                name: name.clone(),
                x: at[0],
                y: at[1],
                sx: sigma(xx),
                sy: sigma(yy),
                fixed,
                loose,
                ellipse: known.then(|| ellipse(xx, xy, yy)),
            }
        })
        .collect()
}

/// The ellipse of a covariance, m²: half-axes of one standard deviation from its eigenvalues,
/// the long one's way from +x.
pub fn axes(xx: f64, xy: f64, yy: f64) -> Ellipse {
    let (middle, half) = (0.5 * (xx + yy), libm::hypot(0.5 * (xx - yy), xy));
    let theta = libm::atan2(2.0 * xy, xx - yy).to_degrees() / 2.0;
    Ellipse {
        a: (middle + half).max(0.0).sqrt(),
        b: (middle - half).max(0.0).sqrt(),
        theta_deg: if theta < 0.0 { theta + 180.0 } else { theta },
    }
}

/// As it is handed on.
pub(crate) fn ellipse(xx: f64, xy: f64, yy: f64) -> Ellipse {
    let exact = axes(xx, xy, yy);
    let theta = round(exact.theta_deg, 1e6);
    Ellipse {
        a: fine(exact.a),
        b: fine(exact.b),
        theta_deg: if theta >= 180.0 { 0.0 } else { theta },
    }
}

/// The covariance of all points that are not loose.
pub(crate) fn covariance(c: &[f64], loose: &[bool]) -> Covariance {
    let n = 2 * loose.len();
    let order: Vec<PointId> = (0..loose.len()).filter(|&p| !loose[p]).collect();
    let coordinates: Vec<usize> = order.iter().flat_map(|&p| [2 * p, 2 * p + 1]).collect();
    let values = coordinates
        .iter()
        .flat_map(|&a| coordinates.iter().map(move |&b| round(c[a * n + b], 1e15)));
    Covariance {
        values: values.collect(),
        order,
    }
}

pub(crate) fn readings(
    network: &Network,
    fit: &Fit,
    kept: &[usize],
    found: &[Found],
    limits: Limits,
) -> Vec<Adjusted> {
    let mut verdicts = vec![Verdict::default(); network.readings.len()];
    for &number in kept {
        verdicts[number] = fit.judge(&network.readings[number], limits.shift);
    }
    for found in found.iter().filter(|f| f.set_aside) {
        verdicts[found.readings[0]] = found.verdict;
    }
    let aside = |number: usize| found.iter().any(|f| f.set_aside && f.readings[0] == number);
    network
        .readings
        .iter()
        .enumerate()
        .map(|(number, reading)| {
            let adjusted = fine(value(reading.kind, &fit.at));
            let verdict = verdicts[number];
            Adjusted {
                kind: reading.kind,
                reading: reading.value,
                sigma: reading.sigma,
                adjusted,
                v: fine(adjusted - reading.value),
                r: fine(verdict.r),
                w: verdict.w.map(fine),
                tau: verdict.tau.map(fine),
                mdb: verdict.mdb.map(fine),
                set_aside: aside(number),
            }
        })
        .collect()
}

/// Readings (by place in the fit) that the tests cannot tell apart, each in one group.
pub(crate) fn groups(fit: &Fit, limits: Limits) -> Vec<Vec<usize>> {
    let alike = fit.alike(limits.alike);
    let mut grouped = vec![false; alike.len()];
    let mut groups = Vec::new();
    for start in 0..alike.len() {
        if grouped[start] || alike[start].is_empty() {
            continue;
        }
        let mut group = vec![start];
        grouped[start] = true;
        let mut next = 0;
        while let Some(&member) = group.get(next) {
            next += 1;
            for &other in &alike[member] {
                if !grouped[other] {
                    grouped[other] = true;
                    group.push(other);
                }
            }
        }
        group.sort_unstable();
        groups.push(group);
    }
    groups
}

pub(crate) fn global_test(ledger: &Ledger, fit: &Fit) -> GlobalTest {
    let alpha = ledger.number(figures::GLOBAL_ALPHA);
    let limit = fine(global_limit(alpha, fit.dof));
    GlobalTest {
        alpha,
        limit,
        passed: fit.dof == 0 || fine(fit.vtpv) <= limit,
    }
}

pub(crate) fn suspects(
    network: &Network,
    ledger: &Ledger,
    fit: &Fit,
    found: &[Found],
) -> Vec<Suspect> {
    let hooks = ledger.list(figures::HOOKS);
    found
        .iter()
        .map(|found| {
            let reading: &Reading = &network.readings[found.readings[0]];
            // Of a reading set aside the final points say best what it should be.
            let (should, sigma) = if found.set_aside {
                let sure = (1.0 + fit.leverage(reading)).sqrt();
                (value(reading.kind, &fit.at), reading.sigma * sure)
            } else {
                (found.should_read, reading.sigma / found.verdict.r.sqrt())
            };
            let taped = !matches!(
                reading.kind,
                Kind::Square { .. } | Kind::KnownX { .. } | Kind::KnownY { .. }
            );
            let guess = slip::guess(reading.value, should, SLIP_SIGMAS * sigma, hooks);
            Suspect {
                readings: found.readings.clone(),
                should_read: fine(should),
                guess: guess.filter(|_| taped),
                set_aside: found.set_aside,
            }
        })
        .collect()
}

/// The boundary anticlockwise, and its area unless it is loose or no polygon.
pub(crate) fn boundary(
    network: &Network,
    fit: &Fit,
    loose: &[bool],
    c: &[f64],
) -> (Vec<PointId>, Option<Measured>) {
    let n = 2 * fit.at.len();
    let mut boundary = network.boundary.clone();
    if network.walked == Walked::Clockwise {
        boundary.reverse();
    }
    let ring: Vec<_> = boundary.iter().map(|&p| fit.at[p]).collect();
    if shape::signed_area(&ring) < 0.0 && shape::crossings(&ring).is_empty() {
        boundary.reverse();
    }
    let measurable = boundary.len() >= 3 && boundary.iter().all(|&p| !loose[p]);
    let area = measurable.then(|| {
        let area = shape::area(&fit.at, &boundary, |a, b| c[a * n + b]);
        Measured {
            value: round(area.value, 1e6),
            sigma: round(area.sigma, 1e6),
        }
    });
    (boundary, area)
}

/// The datum as it was used.
pub(crate) fn datum(network: &Network, line: Option<(PointId, PointId)>) -> Datum {
    match (network.datum, line) {
        (Datum::Line { .. }, Some((origin, towards))) => Datum::Line { origin, towards },
        (datum, _) => datum,
    }
}
