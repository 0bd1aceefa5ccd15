//! Taped rows and odd readings become one network.

use std::collections::BTreeMap;

use ledger::Ledger;
use note::{Note, msg};
use survey::network::{Datum, Kind, Network, PointId, Reading};

use crate::read::figures as fig;
use crate::read::surveyed::{Named, Odd, Surveyed};
use crate::read::tape::{Tape, Taped, is_name};

/// The points of a network by name, numbered in the order of their first mention.
#[derive(Default)]
struct Points {
    names: Vec<String>,
    numbers: BTreeMap<String, PointId>,
}

impl Points {
    fn number(&mut self, name: &Named) -> PointId {
        if let Some(number) = self.numbers.get(&name.value) {
            return *number;
        }
        let number = self.names.len();
        self.names.push(name.value.clone());
        self.numbers.insert(name.value.clone(), number);
        number
    }

    /// A point of a reading; one that is in none is told where names are checked.
    fn find(&self, name: &Named) -> Option<PointId> {
        self.numbers.get(&name.value).copied()
    }
}

/// The network; `None` where the frame cannot be made out. Points of pairs that are still to
/// be taped are in it, loose.
pub fn network(
    tape: &Tape,
    surveyed: &Surveyed,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> Option<Network> {
    let mut points = Points::default();
    let mut readings = Vec::new();
    for row in &tape.rows {
        let kind = Kind::Distance {
            from: points.number(&row.from),
            to: points.number(&row.to),
        };
        let value = row.reading.value;
        let sigma = row.sigma.unwrap_or_else(|| surveyed.tape.sigma(value));
        readings.push(Reading {
            kind,
            value,
            sigma,
            at: Some(row.reading.at.clone()),
        });
    }
    for name in tape.blank.iter().flatten() {
        points.number(name);
    }
    compare_repeats(&tape.rows, &readings, notes);
    for odd in &surveyed.readings {
        push(odd, surveyed, ledger, &mut points, &mut readings, notes);
    }
    let boundary: Vec<PointId> = surveyed
        .boundary
        .iter()
        .filter_map(|name| points.find(name))
        .collect();
    let mut start = BTreeMap::new();
    for (name, at) in &surveyed.start {
        if let Some(point) = points.find(name) {
            start.insert(point, *at);
        }
    }
    let datum = if surveyed.free {
        Datum::Free
    } else {
        let end = |named: &Option<Named>, place: usize| match named {
            Some(name) => points.find(name),
            None => boundary.get(place).copied(),
        };
        Datum::Line {
            origin: end(&surveyed.origin, 0)?,
            towards: end(&surveyed.towards, 1)?,
        }
    };
    if let Datum::Line { origin, towards } = datum
        && origin == towards
    {
        let at = surveyed
            .towards
            .as_ref()
            .or(surveyed.origin.as_ref())
            .map(|name| name.at.clone());
        notes.push(Note::error(at, msg!("frame-one-point")).mend(msg!("frame-two-points")));
        return None;
    }
    Some(Network {
        points: points.names,
        readings,
        datum,
        boundary,
        walked: surveyed.walked,
        start,
        at: surveyed.boundary_at.clone(),
    })
}

fn push(
    odd: &Odd,
    surveyed: &Surveyed,
    ledger: &Ledger,
    points: &mut Points,
    readings: &mut Vec<Reading>,
    notes: &mut Vec<Note>,
) {
    let names: Vec<&Named> = match odd {
        Odd::Offset {
            line: [from, to],
            point,
            ..
        } => vec![from, to, point],
        Odd::Square {
            corner, from, to, ..
        } => vec![corner, from, to],
        Odd::Straight {
            from, to, point, ..
        } => vec![from, to, point],
        Odd::Known { point, .. } => vec![point],
    };
    let mut sound = true;
    for (at, name) in names.iter().enumerate() {
        if !is_name(&name.value) {
            notes.push(
                Note::error(name.at.clone(), msg!("name-odd", name = &name.value))
                    .expected(msg!("want-name")),
            );
            sound = false;
        } else if names[..at].iter().any(|before| before.value == name.value) {
            notes.push(Note::error(
                name.at.clone(),
                msg!("reading-same-points", point = &name.value),
            ));
            sound = false;
        }
    }
    if !sound {
        return;
    }
    let ids: Vec<PointId> = names.into_iter().map(|name| points.number(name)).collect();
    let radians = std::f64::consts::PI / 180.0;
    match (odd, ids.as_slice()) {
        (Odd::Offset { along, left, .. }, &[from, to, point]) => {
            // The foot of an offset moves with the error of its right angle: the longer the
            // offset, the less it says along the line.
            let angle = libm::tan(ledger.number(fig::OFFSET_ANGLE) * radians);
            let slide = left.value.abs() * angle;
            let sigma = libm::hypot(surveyed.tape.sigma(along.value.abs()), slide);
            readings.push(Reading {
                kind: Kind::Along { from, to, point },
                value: along.value,
                sigma,
                at: Some(along.at.clone()),
            });
            readings.push(Reading {
                kind: Kind::Left { from, to, point },
                value: left.value,
                sigma: surveyed.tape.sigma(left.value.abs()),
                at: Some(left.at.clone()),
            });
        }
        (Odd::Square { at, .. }, &[corner, from, to]) => readings.push(Reading {
            kind: Kind::Square {
                at: corner,
                from,
                to,
            },
            value: std::f64::consts::FRAC_PI_2,
            sigma: ledger.number(fig::SQUARE) * radians,
            at: Some(at.clone()),
        }),
        (Odd::Straight { at, .. }, &[from, to, point]) => readings.push(Reading {
            kind: Kind::Left { from, to, point },
            value: 0.0,
            sigma: ledger.number(fig::STRAIGHT),
            at: Some(at.clone()),
        }),
        (Odd::Known { x, y, sigma, .. }, &[point]) => {
            let known = |kind, value: f64, at: &note::Place| Reading {
                kind,
                value,
                sigma: *sigma,
                at: Some(at.clone()),
            };
            readings.push(known(Kind::KnownX { point }, x.value, &x.at));
            readings.push(known(Kind::KnownY { point }, y.value, &y.at));
        }
        _ => {}
    }
}

/// How many standard deviations of their difference two readings of one pair may part by
/// before both places are shown: once in a thousand good pairs.
const PARTED: f64 = 3.290_527;

fn compare_repeats(taped: &[Taped], readings: &[Reading], notes: &mut Vec<Note>) {
    let mut first: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    for (at, row) in taped.iter().enumerate() {
        let (one, other) = (row.from.value.as_str(), row.to.value.as_str());
        let pair = if one < other {
            (one, other)
        } else {
            (other, one)
        };
        let before = *first.entry(pair).or_insert(at);
        if before == at {
            continue;
        }
        let (earlier, here) = (&readings[before], &readings[at]);
        let allowed = PARTED * libm::hypot(earlier.sigma, here.sigma);
        if (earlier.value - here.value).abs() <= allowed {
            continue;
        }
        let length = note::Fact::Length;
        notes.push(
            Note::warning(
                row.reading.at.clone(),
                msg!(
                    "readings-disagree",
                    from = one,
                    to = other,
                    here = length(here.value),
                    before = length(earlier.value),
                ),
            )
            .also(taped[before].reading.at.clone())
            .expected(msg!("readings-within", allowed = length(allowed)))
            .mend(msg!("readings-again", from = one, to = other)),
        );
    }
}
