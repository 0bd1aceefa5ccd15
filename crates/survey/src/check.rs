//! What cannot be, before anything is computed.

use std::f64::consts::PI;

use note::{Fact, Note, msg};
use unit::LONGEST;

use crate::network::{Datum, Kind, Network, PointId, Reading};

/// Faults that leave nothing to adjust, each once; all of them at once.
pub(crate) fn faults(network: &Network) -> Vec<Note> {
    let points = network.points.len();
    let mut notes: Vec<Note> = network
        .readings
        .iter()
        .filter_map(|r| fault(network, r))
        .collect();
    let datum = match network.datum {
        Datum::Line { origin, towards } => vec![origin, towards],
        Datum::Free => Vec::new(),
    };
    let unknown = |p: &&usize| **p >= points;
    if datum
        .iter()
        .chain(&network.boundary)
        .chain(network.start.keys())
        .any(|p| unknown(&p))
    {
        notes.push(Note::error(
            network.at.clone(),
            msg!("survey-point-unknown"),
        ));
    }
    if let [origin, towards] = *datum.as_slice()
        && origin == towards
        && origin < points
    {
        notes.push(
            Note::error(
                network.at.clone(),
                msg!("survey-line-of-one-point", point = name(network, origin)),
            )
            .mend(msg!("survey-name-two-points")),
        );
    }
    if network.start.values().flatten().any(|x| !x.is_finite()) {
        notes.push(Note::error(
            network.at.clone(),
            msg!("survey-start-not-a-number"),
        ));
    }
    let known = |p: &PointId| {
        let x = |r: &Reading| matches!(r.kind, Kind::KnownX { point } if point == *p);
        network.readings.iter().any(x)
    };
    // A drawing or a map alone will do where it has every corner.
    let drawn = !network.boundary.is_empty() && network.boundary.iter().all(known);
    if !drawn && network.readings.iter().all(|r| r.kind.is_known()) {
        notes.push(
            Note::error(network.at.clone(), msg!("survey-no-readings"))
                .mend(msg!("survey-tape-some-lengths")),
        );
    }
    notes
}

pub(crate) fn name(network: &Network, point: usize) -> String {
    network.points.get(point).cloned().unwrap_or_default()
}

/// The names a reading was called out by, in its own order.
pub(crate) fn names(network: &Network, kind: Kind) -> Vec<String> {
    kind.points().map(|p| name(network, p)).collect()
}

/// A reading's value as a fact of its kind: a length, or degrees.
pub(crate) fn shown(kind: Kind, value: f64) -> Fact {
    match kind {
        Kind::Square { .. } => Fact::Number(value.to_degrees(), 2),
        _ => Fact::Length(value),
    }
}

/// What is wrong with one reading, taken alone.
fn fault(network: &Network, reading: &Reading) -> Option<Note> {
    let Reading {
        kind,
        value,
        sigma,
        ref at,
    } = *reading;
    let points: Vec<usize> = kind.points().collect();
    if points.iter().any(|&p| p >= network.points.len()) {
        return Some(Note::error(at.clone(), msg!("survey-point-unknown")));
    }
    let names = || names(network, kind);
    let twice = points
        .iter()
        .enumerate()
        .any(|(i, p)| points[..i].contains(p));
    if twice {
        let what = msg!("survey-reading-to-itself", points = names());
        return Some(Note::error(at.clone(), what).mend(msg!("survey-name-other-point")));
    }
    let exact = kind.is_known() && sigma == 0.0;
    if !sigma.is_finite() || (sigma <= 0.0 && !exact) {
        let what = msg!("survey-sigma-impossible", points = names());
        return Some(Note::error(at.clone(), what).expected(msg!("survey-sigma-positive")));
    }
    let possible = match kind {
        Kind::Distance { .. } => value > 0.0 && value <= LONGEST,
        Kind::Along { .. } | Kind::Left { .. } => value.abs() <= LONGEST,
        Kind::Square { .. } => value > 0.0 && value < PI,
        Kind::KnownX { .. } | Kind::KnownY { .. } => value.is_finite(),
    };
    if possible {
        return None;
    }
    let what = msg!(
        "survey-reading-impossible",
        points = names(),
        reads = shown(kind, value)
    );
    let expected = match kind {
        Kind::Square { .. } => msg!("survey-angle-between"),
        _ => msg!("survey-length-between", most = Fact::Length(LONGEST)),
    };
    Some(
        Note::error(at.clone(), what)
            .expected(expected)
            .mend(msg!("survey-tape-again")),
    )
}

/// Distances longer than the way round by other readings, by more than these allow:
/// number, the way round in metres, and the point it bends at.
pub(crate) fn longer_than_round(network: &Network) -> Vec<(usize, f64, usize)> {
    /// Sigmas of the whole triangle.
    const ALLOWED: f64 = 6.0;
    let mut near = vec![Vec::new(); network.points.len()];
    for reading in &network.readings {
        if let Kind::Distance { from, to } = reading.kind {
            near[from].push((to, reading));
            near[to].push((from, reading));
        }
    }
    let mut found = Vec::new();
    for (number, reading) in network.readings.iter().enumerate() {
        let Kind::Distance { from, to } = reading.kind else {
            continue;
        };
        let mut best: Option<(f64, f64, usize)> = None;
        for (via, first) in near[from].iter().filter(|(via, _)| *via != to) {
            for (_, second) in near[*via].iter().filter(|(end, _)| *end == to) {
                let round = first.value + second.value;
                let sigma = libm::hypot(libm::hypot(first.sigma, second.sigma), reading.sigma);
                if best.is_none_or(|(shortest, ..)| round < shortest) {
                    best = Some((round, sigma, *via));
                }
            }
        }
        if let Some((round, sigma, via)) = best
            && reading.value > round + ALLOWED * sigma
        {
            found.push((number, round, via));
        }
    }
    found
}
