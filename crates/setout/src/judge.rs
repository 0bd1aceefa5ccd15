//! What check readings say: what is off, and which point to redo.

use std::collections::BTreeSet;

use geo::Coord;
use ledger::Ledger;
use note::{Fact, Note, Noted, Place, msg};

use crate::cause::Cause;
use crate::figures::HOOKS;
use crate::finder::{Check, spread};
use crate::hints::stepped;
use crate::keys::between;
use crate::millionth;
use crate::normal::Weight;
use crate::result::SetOut;
use crate::spread::{Ray, Spread};

/// A length read after the marks were chalked, between any two key points or surveyed points.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Name of one end.
    pub from: String,
    /// Name of the other.
    pub to: String,
    /// Metres.
    pub value: f64,
    /// Where it stands in the user's file.
    pub at: Option<Place>,
}

/// What the readings say.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// Readings that could be used, in the order given.
    pub readings: Vec<JudgedReading>,
    /// One for each key point, in the order of the set-out.
    pub points: Vec<Verdict>,
    /// Numbers of bases that several readings speak against.
    pub bases: Vec<usize>,
}

/// One reading against what it should be. Metres.
#[derive(Clone, Debug, PartialEq)]
pub struct JudgedReading {
    /// Its number among those given.
    pub number: usize,
    /// What it should read: as printed.
    pub should: f64,
    /// `read - should`.
    pub off: f64,
    /// Its predicted standard deviation.
    pub sigma: f64,
    /// Farther off than this is too far.
    pub limit: f64,
    /// Whether it is within.
    pub holds: bool,
}

/// What to do about a key point.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// No reading tells.
    Unchecked,
    /// All its readings hold.
    Holds,
    /// One reading is off that the others do not bear out: take it again; if it reads the
    /// same, redo the point.
    MeasureAgain {
        /// Number of the reading among those given.
        reading: usize,
        /// What would explain it if the point is wrong.
        causes: Vec<Cause>,
    },
    /// The point is wrong.
    Redo {
        /// What explains all its readings.
        causes: Vec<Cause>,
    },
    /// It, or all that checks it, hangs on a base that several readings speak against: look
    /// there first.
    Base(usize),
}

/// What could be wrong, the likelier first where they explain the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Fault {
    Reading(usize),
    Point(usize),
    Base(usize),
}

/// One end of a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum End {
    Base(usize),
    Point(usize),
}

/// A reading that could be used.
pub(crate) struct Line {
    pub(crate) ends: [End; 2],
    pub(crate) value: f64,
}

/// A fault must explain so much more of the sum of squares for each reading that it sets
/// aside: twice what chance takes off with one.
const PRICE: f64 = 2.0;

/// A graver charge needs more besides. Leaving out three good readings more takes off
/// what a base pays over a point in fewer than one case of a hundred.
const GRAVE: [f64; 3] = [0.0, 6.0, 12.0];

/// Judges check readings.
///
/// A reading is off when it strays past its limit (ledger: `setout.check_times`,
/// `setout.check_min`). Where one is, that fault is named which explains most of all
/// readings together for the number of readings that it makes worthless: the reading itself,
/// one of its key points, or a base. So one tape of many that is off is first taken again; a
/// point against which two readings speak is redone; a base against which many points speak
/// has moved, or was mistaken for another.
pub fn judge(setout: &SetOut, readings: &[Reading], ledger: &Ledger) -> Noted<Judged> {
    let mut notes = Vec::new();
    let court = Court::new(setout, ledger);
    let mut lines = Vec::new();
    let mut judged = Vec::new();
    for (number, reading) in readings.iter().enumerate() {
        if let Some(line) = court.line(reading, &mut notes) {
            lines.push(line);
            judged.push(number);
        }
    }
    let mut covariance: Vec<Vec<f64>> = lines
        .iter()
        .map(|one| lines.iter().map(|other| court.common(one, other)).collect())
        .collect();
    let judged: Vec<JudgedReading> = judged
        .into_iter()
        .zip(&lines)
        .enumerate()
        .map(|(at, (number, line))| {
            covariance[at][at] += court.noise(line);
            let sigma = covariance[at][at].sqrt();
            let (should, limit) = (court.should(line), court.check.limit(sigma));
            let off = millionth(line.value - should);
            JudgedReading {
                number,
                should,
                off,
                sigma: millionth(sigma),
                limit: millionth(limit),
                holds: off.abs() <= millionth(limit),
            }
        })
        .collect();
    let faults = court.faults(&lines, &judged, &covariance);
    let points = (0..setout.points.len())
        .map(|point| court.verdict(point, &lines, &judged, &faults))
        .collect();
    let bases = faults
        .iter()
        .filter_map(|fault| match fault {
            Fault::Base(base) => Some(*base),
            _ => None,
        })
        .collect();
    let value = Judged {
        readings: judged,
        points,
        bases,
    };
    crate::say::judged(setout, readings, &value, &mut notes);
    Noted { value, notes }
}

/// The set-out with what moves its points.
pub(crate) struct Court<'a> {
    pub(crate) setout: &'a SetOut,
    check: Check,
    pub(crate) hooks: &'a [f64],
    points: Vec<Spread>,
    bases: Vec<Spread>,
    rounding: f64,
}

impl<'a> Court<'a> {
    fn new(setout: &'a SetOut, ledger: &'a Ledger) -> Court<'a> {
        let sigma = |length: f64| setout.tape.sigma(length);
        Court {
            setout,
            check: Check::of(ledger),
            hooks: ledger.list(HOOKS),
            points: setout
                .points
                .iter()
                .enumerate()
                .map(|(number, point)| {
                    spread(&setout.bases, number, point, |crossing| {
                        crossing.lengths.map(sigma)
                    })
                })
                .collect(),
            bases: (0..setout.bases.len()).map(Spread::base).collect(),
            rounding: 2.0 * setout.step * setout.step / 12.0,
        }
    }

    fn end(&self, name: &str) -> Option<End> {
        let points = self
            .setout
            .points
            .iter()
            .position(|point| point.name == name);
        let base = || self.setout.bases.names.iter().position(|base| base == name);
        points.map(End::Point).or_else(|| base().map(End::Base))
    }

    fn line(&self, reading: &Reading, notes: &mut Vec<Note>) -> Option<Line> {
        let names = [&reading.from, &reading.to];
        let ends = names.map(|name| self.end(name));
        for (name, end) in names.iter().zip(ends) {
            if end.is_none() {
                notes.push(
                    Note::error(
                        reading.at.clone(),
                        msg!("setout-name-unknown", name = name.as_str()),
                    )
                    .mend(msg!("setout-name-as-printed")),
                );
            }
        }
        let [Some(from), Some(to)] = ends else {
            return None;
        };
        if from == to {
            notes.push(
                Note::error(
                    reading.at.clone(),
                    msg!("setout-to-itself", name = reading.from.as_str()),
                )
                .mend(msg!("setout-name-other-end")),
            );
            return None;
        }
        if !(reading.value > 0.0 && reading.value <= unit::LONGEST) {
            notes.push(
                Note::error(
                    reading.at.clone(),
                    msg!(
                        "setout-reading-impossible",
                        points = format!("{}-{}", reading.from, reading.to),
                        reads = Fact::Length(reading.value)
                    ),
                )
                .mend(msg!("setout-measure-again")),
            );
            return None;
        }
        Some(Line {
            ends: [from, to],
            value: reading.value,
        })
    }

    pub(crate) fn place(&self, end: End) -> Coord<f64> {
        match end {
            End::Base(base) => self.setout.bases.at[base],
            End::Point(point) => self.setout.points[point].lands,
        }
    }

    fn long(&self, line: &Line) -> f64 {
        let [a, b] = line.ends.map(|end| self.place(end));
        between(a, b)
    }

    fn should(&self, line: &Line) -> f64 {
        stepped(self.long(line), self.setout.step)
    }

    /// Variance of the reading itself, m².
    fn noise(&self, line: &Line) -> f64 {
        // metres: nothing is read better than this; it keeps the covariance definite
        const FLOOR: f64 = 1e-6;
        let sigma = self.setout.tape.sigma(self.long(line)).max(FLOOR);
        sigma * sigma + self.rounding
    }

    fn ray(&self, line: &Line) -> Ray<'_> {
        let [a, b] = line.ends.map(|end| self.place(end));
        Ray {
            ends: line.ends.map(|end| match end {
                End::Base(base) => &self.bases[base],
                End::Point(point) => &self.points[point],
            }),
            way: (b - a) / between(a, b).max(f64::MIN_POSITIVE),
        }
    }

    /// Covariance of two readings from what moves their ends, m².
    fn common(&self, one: &Line, other: &Line) -> f64 {
        self.ray(one).with(&self.ray(other), &self.setout.bases)
    }

    /// Whether a fault makes a reading worthless.
    fn touches(&self, fault: Fault, number: usize, line: &Line) -> bool {
        line.ends.iter().any(|&end| match (fault, end) {
            (Fault::Reading(reading), _) => reading == number,
            (Fault::Point(point), End::Point(mine)) => point == mine,
            (Fault::Base(base), End::Base(mine)) => base == mine,
            (Fault::Base(base), End::Point(mine)) => self.hangs(mine, base),
            (Fault::Point(_), End::Base(_)) => false,
        })
    }

    fn hangs(&self, point: usize, base: usize) -> bool {
        self.setout.points[point]
            .tapes
            .iter()
            .any(|held| held.base == base)
    }

    /// What could explain that a reading is off.
    fn suspects(&self, number: usize, line: &Line, into: &mut BTreeSet<Fault>) {
        into.insert(Fault::Reading(number));
        for end in line.ends {
            match end {
                End::Base(base) => {
                    into.insert(Fault::Base(base));
                }
                End::Point(point) => {
                    into.insert(Fault::Point(point));
                    into.extend(
                        self.setout.points[point]
                            .tapes
                            .map(|held| Fault::Base(held.base)),
                    );
                }
            }
        }
    }

    /// Faults until no reading is off that none of them touches.
    fn faults(
        &self,
        lines: &[Line],
        judged: &[JudgedReading],
        covariance: &[Vec<f64>],
    ) -> Vec<Fault> {
        let mut left: Vec<usize> = (0..lines.len()).collect();
        let mut faults = Vec::new();
        loop {
            let mut suspects = BTreeSet::new();
            for &number in left.iter().filter(|&&number| !judged[number].holds) {
                self.suspects(number, &lines[number], &mut suspects);
            }
            if suspects.is_empty() {
                return faults;
            }
            let block: Vec<Vec<f64>> = left
                .iter()
                .map(|&i| left.iter().map(|&j| covariance[i][j]).collect())
                .collect();
            let errors: Vec<f64> = left.iter().map(|&number| judged[number].off).collect();
            let weight = Weight::of(&block, &errors);
            let mut best: Option<(Fault, f64)> = None;
            for fault in suspects {
                let out: Vec<usize> = (0..left.len())
                    .filter(|&at| self.touches(fault, left[at], &lines[left[at]]))
                    .collect();
                let explained = weight.as_ref().map_or(0.0, |weight| weight.explained(&out));
                let grave = match fault {
                    Fault::Reading(_) => GRAVE[0],
                    Fault::Point(_) => GRAVE[1],
                    Fault::Base(_) => GRAVE[2],
                };
                let gain = explained - PRICE * out.len() as f64 - grave;
                // of the sum of squares: a tie goes to the likelier fault
                if best.is_none_or(|(_, most)| gain > most + 1e-6) {
                    best = Some((fault, gain));
                }
            }
            let Some((fault, _)) = best else {
                return faults;
            };
            left.retain(|&number| !self.touches(fault, number, &lines[number]));
            faults.push(fault);
        }
    }

    fn verdict(
        &self,
        point: usize,
        lines: &[Line],
        judged: &[JudgedReading],
        faults: &[Fault],
    ) -> Verdict {
        let mine: Vec<usize> = (0..lines.len())
            .filter(|&number| lines[number].ends.contains(&End::Point(point)))
            .collect();
        let base = faults.iter().find_map(|fault| match fault {
            Fault::Base(base) if self.hangs(point, *base) => Some(*base),
            _ => None,
        });
        if let Some(base) = base {
            return Verdict::Base(base);
        }
        // readings that another fault made worthless tell nothing of this point
        let telling: Vec<usize> = mine
            .iter()
            .copied()
            .filter(|&number| {
                !faults.iter().any(|&fault| match fault {
                    Fault::Point(other) if other == point => false,
                    Fault::Reading(_) => false,
                    other => self.touches(other, number, &lines[number]),
                })
            })
            .collect();
        if faults.contains(&Fault::Point(point)) {
            return Verdict::Redo {
                causes: self.causes(point, &telling, lines, judged),
            };
        }
        let again = telling
            .iter()
            .find(|&&number| faults.contains(&Fault::Reading(number)));
        match again {
            Some(&number) => Verdict::MeasureAgain {
                reading: judged[number].number,
                causes: self.causes(point, &telling, lines, judged),
            },
            None if telling.is_empty() => faults
                .iter()
                .find_map(|&fault| match fault {
                    Fault::Base(base)
                        if mine
                            .iter()
                            .any(|&number| self.touches(fault, number, &lines[number])) =>
                    {
                        Some(Verdict::Base(base))
                    }
                    _ => None,
                })
                .unwrap_or(Verdict::Unchecked),
            None => Verdict::Holds,
        }
    }
}
