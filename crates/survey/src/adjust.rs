//! From the door to the answer: what is used, in which frame, and how sure it is.

use ledger::Ledger;
use note::{Noted, any_error};

use crate::figures;
use crate::fit::Fit;
use crate::frame::{self, Frame};
use crate::mirror::{self, Image, Settled};
use crate::model::Place;
use crate::network::{Datum, Kind, Network, PointId, Reading, Tape};
use crate::next::{self, Wants};
use crate::report;
use crate::result::Survey;
use crate::say::{self, Heard};
use crate::snoop::{self, Limits};
use crate::solve::{Pull, System};
use crate::{check, start};

/// Steps in a metre in which coordinates are handed on: 1e-7 m each.
const GRAIN: f64 = 1e7;

/// Lines that are tried in place of one that the readings leave loose.
const LINES_TRIED: usize = 24;

/// Adjusts the readings of a yard.
///
/// # Shapes and units
/// All lengths in metres, angles in radians; covariances at the stated sigmas.
///
/// # Errors
/// The value is `None` where there is nothing to adjust or a reading cannot be; a note says
/// which and why. Notes of severity error beside a value mean that the boundary is not
/// fixed, or crosses itself: the answer is there to be looked at, not to be built on.
pub fn adjust(network: &Network, ledger: &Ledger) -> Noted<Option<Survey>> {
    let faults = check::faults(network);
    if any_error(&faults) {
        return Noted {
            value: None,
            notes: faults,
        };
    }
    let limits = Limits::of(ledger);
    let weak = ledger.number(figures::WEAK_AXIS);
    let frame = Frame::of(network);
    let used: Vec<usize> = (0..network.readings.len())
        .filter(|&n| frame.uses(&network.readings[n]))
        .collect();
    let readings: Vec<&Reading> = used.iter().map(|&n| &network.readings[n]).collect();
    let mut at = start::find(network, &readings, &frame.known, &frame.fixed);
    let mut images = mirror::settle(network, &frame, &readings, &mut at, weak);
    System::new(readings.clone(), &frame.fixed).settle(&mut at, Pull::Full, usize::MAX);

    let line = frame
        .line(network)
        .map(|wanted| firm_line(network, &readings, &at, wanted));
    if let Some((origin, towards)) = line {
        frame::pose(&mut at, origin, towards);
    }
    let held = held(&frame, line, &at);
    let (found, kept, fit) = snoop::snoop(&network.readings, &used, &held, at, limits);

    let mut at = fit.at.clone();
    let mut loose = loose(&fit, &readings, &images);
    let free = line.is_some() && network.datum == Datum::Free;
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
    let held = self::held(&frame, line, &at);
    let kept_readings = kept.iter().map(|&n| &network.readings[n]).collect();
    let fit = Fit::stock(System::new(kept_readings, &held), at);
    loose = self::loose(&fit, &readings, &images);
    mirror::place_others(&fit.at, &mut images);

    let covariance = frame::covariance(&fit, inner.as_deref());
    let fixed: Vec<bool> = (0..fit.at.len())
        .map(|p| !free && held[2 * p] && held[2 * p + 1])
        .collect();
    for (loose, fixed) in loose.iter_mut().zip(&fixed) {
        *loose = *loose && !fixed;
    }
    let (boundary, area) = report::boundary(network, &fit, &loose, &covariance);
    let groups = report::groups(&fit, limits);
    let mut survey = Survey {
        datum: report::datum(network, line),
        points: report::points(network, &fit, &fixed, &loose, &covariance),
        covariance: report::covariance(&covariance, &loose),
        boundary,
        readings: report::readings(network, &fit, &kept, &found, limits),
        groups: groups
            .iter()
            .map(|group| group.iter().map(|&place| kept[place]).collect())
            .collect(),
        dof: fit.dof,
        vtpv: report::fine(fit.vtpv),
        s0: report::fine(fit.s0()),
        global_test: report::global_test(ledger, &fit),
        suspects: report::suspects(network, ledger, &fit, &found),
        area,
        next_readings: Vec::new(),
    };
    let unchecked = ledger.number(figures::UNCHECKED);
    let bare =
        |n: &usize| survey.readings[*n].r < unchecked && !network.readings[*n].kind.is_known();
    let wants = Wants {
        network,
        loose: &loose,
        images: &images,
        unchecked: kept
            .iter()
            .enumerate()
            .filter(|(_, n)| bare(n))
            .map(|(place, &n)| (n, place))
            .collect(),
        groups,
        enough: unchecked,
        alike: limits.alike,
        tape: tape(network, ledger),
        taped: next::taped(network),
    };
    survey.next_readings = next::next(&fit, &wants);
    let islands = islands(network, &readings, &frame);
    let heard = Heard {
        network,
        frame: &frame,
        images: &images,
        islands: &islands,
        survey: &survey,
        unchecked,
        weak,
    };
    let notes = say::notes(&heard);
    Noted {
        value: Some(survey),
        notes,
    }
}

/// Coordinates (2 · point + axis) that the frame holds.
fn held(frame: &Frame, line: Option<(PointId, PointId)>, at: &[Place]) -> Vec<bool> {
    let mut held = frame.fixed.clone();
    if let Some((origin, towards)) = line {
        frame::hold(&mut held, at, origin, towards);
    }
    held
}

/// Points that can move, that have two places, or that no reading mentions.
fn loose(fit: &Fit, readings: &[&Reading], images: &[Image]) -> Vec<bool> {
    let mut loose = fit.loose();
    let mut read = vec![false; loose.len()];
    for p in readings.iter().flat_map(|r| r.kind.points()) {
        read[p] = true;
    }
    for (loose, read) in loose.iter_mut().zip(read) {
        *loose |= !read;
    }
    for image in images.iter().filter(|i| i.settled == Settled::Open) {
        for &p in &image.part {
            loose[p] = true;
        }
    }
    loose
}

/// The wanted line, or where most of the network swings about it, the first side or reading
/// that most of the network is firm about.
fn firm_line(
    network: &Network,
    readings: &[&Reading],
    at: &[Place],
    wanted: (PointId, PointId),
) -> (PointId, PointId) {
    let loose_about = |(origin, towards): (PointId, PointId)| {
        let mut held = vec![false; 2 * at.len()];
        frame::hold(&mut held, at, origin, towards);
        let fit = Fit::rank_only(System::new(readings.to_vec(), &held), at.to_vec());
        let mut loose = fit.loose();
        loose[origin] = false;
        loose.iter().filter(|l| **l).count()
    };
    let mut best = (loose_about(wanted), wanted);
    if 2 * best.0 <= at.len() {
        return wanted;
    }
    let b = &network.boundary;
    let sides = (0..b.len()).map(|i| (b[i], b[(i + 1) % b.len()]));
    let taped = readings.iter().filter_map(|r| match r.kind {
        Kind::Distance { from, to } => Some((from, to)),
        _ => None,
    });
    for line in sides.chain(taped).filter(|(a, b)| a != b).take(LINES_TRIED) {
        let count = loose_about(line);
        if count < best.0 {
            best = (count, line);
        }
    }
    best.1
}

/// The tape that these readings look taken with: the ledger's, coarser or finer by what
/// the readings' sigmas are to it in the middle.
fn tape(network: &Network, ledger: &Ledger) -> Tape {
    let plain = Tape {
        constant: ledger.number(figures::TAPE_CONSTANT),
        per_metre: ledger.number(figures::TAPE_PER_METRE),
    };
    let mut ratios: Vec<f64> = network
        .readings
        .iter()
        .filter(|r| matches!(r.kind, Kind::Distance { .. }))
        .map(|r| r.sigma / plain.sigma(r.value))
        .collect();
    ratios.sort_by(f64::total_cmp);
    let ratio = ratios.get(ratios.len() / 2).copied().unwrap_or(1.0);
    Tape {
        constant: ratio * plain.constant,
        per_metre: ratio * plain.per_metre,
    }
}

/// Parts that no reading joins to the largest one, each in order.
fn islands(network: &Network, readings: &[&Reading], frame: &Frame) -> Vec<Vec<PointId>> {
    let mut part: Vec<usize> = (0..network.points.len()).collect();
    fn root(part: &mut [usize], mut p: usize) -> usize {
        while part[p] != p {
            part[p] = part[part[p]];
            p = part[p];
        }
        p
    }
    let mut join = |a: usize, b: usize| {
        let (a, b) = (root(&mut part, a), root(&mut part, b));
        part[a.max(b)] = a.min(b);
    };
    for reading in readings {
        let points: Vec<PointId> = reading.kind.points().collect();
        points.windows(2).for_each(|pair| join(pair[0], pair[1]));
    }
    let known: Vec<PointId> = (0..network.points.len())
        .filter(|&p| frame.known[p].is_some())
        .collect();
    known.windows(2).for_each(|pair| join(pair[0], pair[1]));
    let mut parts: Vec<Vec<PointId>> = vec![Vec::new(); network.points.len()];
    for p in 0..network.points.len() {
        let root = root(&mut part, p);
        parts[root].push(p);
    }
    parts.retain(|part| !part.is_empty());
    let main = (0..parts.len()).rev().max_by_key(|&i| parts[i].len());
    if let Some(main) = main {
        parts.remove(main);
    }
    parts
}
