//! A forecast's windows: when a job of so many hours can be painted and dry.

use std::ops::RangeInclusive;

use jiff::civil::DateTime;
use jiff::{SignedDuration, ToSpan};
use ledger::Ledger;
use note::{Note, Noted, msg};
use weather::{Air, Hour, Stamp, Way, Weather};

use crate::drying::{Drying, drying, scale};
use crate::figures;
use crate::months::{Break, Run, runs};
use crate::paint::{Judged, Limits, Rule, ground, judge};
use crate::verdict::Verdict;

/// What is to be painted in one go.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// Hours of painting for one coat of all that is to be done.
    pub hours: usize,
    /// Coats in the one window; the wait between them is added.
    pub coats: usize,
    /// Hours of the working day by the clock time of their end.
    pub clock: RangeInclusive<u8>,
}

impl Job {
    /// So many hours a coat, so many coats, in the ledger's working day.
    pub fn of(hours: usize, coats: usize, ledger: &Ledger) -> Job {
        let hour = |key| ledger.number(key).clamp(1.0, 24.0) as u8;
        Job {
            hours,
            coats,
            clock: hour(figures::FROM)..=hour(figures::UNTIL),
        }
    }
}

/// A stretch of one day in which the job can be done.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// [`Verdict::Fine`], or [`Verdict::Unknown`] where a rule of some hour has no reading:
    /// ask for one, and do not count on it.
    pub verdict: Verdict,
    /// The rules that have no reading in some hour.
    pub unknown: Vec<Rule>,
    /// Not before.
    pub start: DateTime,
    /// The last stroke is done by then.
    pub end: DateTime,
    /// Hours between them.
    pub hours: usize,
    /// Hours that the job takes, with the wait between coats.
    pub needs: usize,
    /// Times at the slowest hour of the window and of the day after it.
    pub drying: Drying,
    /// Whether each hour of that time told how fast paint dries in it.
    pub drying_known: bool,
    /// An adult may step on it, when painted until `end`.
    pub walk: DateTime,
    /// Children may play on it, when painted until `end`: not before an adult has tried it.
    pub children: DateTime,
    /// No rain for longer than demanded after every hour.
    pub dry_wanted: Verdict,
    /// Warm enough for a day after every hour.
    pub warm_after: Verdict,
}

/// Every window of a forecast, best first: those that are fine before those with something
/// unknown, then those that keep what is wanted, then the earlier.
pub fn windows(
    weather: &Weather,
    limits: &Limits,
    job: &Job,
    air: &Air,
    ledger: &Ledger,
) -> Noted<Vec<Window>> {
    let judged = judge(weather, limits, air);
    let verdicts: Vec<Verdict> = judged
        .iter()
        .map(|hour| hour.all(&Rule::DEMANDED))
        .collect();
    let working = |at: usize| job.clock.contains(&weather.rows[at].stamp.hour);
    let reading = Reading {
        weather,
        judged: &judged,
        job,
        air,
        ledger,
    };
    let found = |worst: Verdict| -> Vec<Window> {
        runs(weather, Break::Midnight, |at| {
            working(at) && verdicts[at] <= worst
        })
        .into_iter()
        .filter_map(|run| reading.window(run))
        .collect()
    };
    let mut windows = found(Verdict::Fine);
    // Where a fine window lies in a longer one with unknown hours, the fine one is told.
    let perhaps: Vec<Window> = found(Verdict::Unknown)
        .into_iter()
        .filter(|longer| {
            !windows
                .iter()
                .any(|fine| longer.start <= fine.start && fine.end <= longer.end)
        })
        .collect();
    windows.extend(perhaps);
    windows.sort_by_key(|window| {
        (
            window.verdict,
            window.dry_wanted.max(window.warm_after),
            window.start,
        )
    });
    let mut notes = Vec::new();
    if windows.is_empty() {
        notes.push(none(&judged, &working, job));
    }
    let read = |hour: &Hour| hour.surface.is_some();
    if !windows.is_empty() && limits.ground_over_air.is_some() && !weather.rows.iter().all(read) {
        notes.push(
            Note::advice(None, msg!("days-ground-by-air")).mend(msg!("days-ground-by-air-mend")),
        );
    }
    Noted {
        value: windows,
        notes,
    }
}

/// What stands in the way most often.
fn none(judged: &[Judged], working: &dyn Fn(usize) -> bool, job: &Job) -> Note {
    let count = |rule: &Rule| {
        let broken = |at: &usize| working(*at) && judged[*at].of(*rule) == Verdict::Not;
        (0..judged.len()).filter(broken).count()
    };
    let worst = Rule::DEMANDED
        .iter()
        .rev()
        .max_by_key(|rule| count(rule))
        .filter(|rule| count(rule) > 0);
    let note = Note::advice(
        None,
        msg!("days-no-window", hours = job.hours, coats = job.coats),
    );
    match worst {
        Some(rule) => note.expected(msg!(
            "days-no-window-why",
            rule = rule.word(),
            count = count(rule)
        )),
        None => note,
    }
    .mend(msg!("days-no-window-mend"))
}

struct Reading<'a> {
    weather: &'a Weather,
    judged: &'a [Judged],
    job: &'a Job,
    air: &'a Air,
    ledger: &'a Ledger,
}

impl Reading<'_> {
    /// A run as a window; `None` where the job does not fit into it.
    fn window(&self, run: Run) -> Option<Window> {
        let rows = run.first..run.first + run.hours;
        let (slowest, painted_known) = self.slowest(self.weather.rows[rows.clone()].iter());
        let wait = drying(slowest, self.ledger).recoat.1.ceil() as usize;
        let coats = self.job.coats.max(1);
        let needs = self.job.hours.max(1) * coats + wait * (coats - 1);
        if run.hours < needs {
            return None;
        }
        // The children's day may pass into a slower night.
        let mut hours = drying(slowest, self.ledger).children.ceil() as usize;
        let last = run.first + run.hours - 1;
        let after = |hours| self.weather.walk(last, Way::On).take(hours);
        let (after_slowest, _) = self.slowest(after(hours));
        let slowest = slowest.max(after_slowest);
        let drying = drying(slowest, self.ledger);
        hours = drying.children.ceil() as usize;
        let seen = after(hours).count();
        let drying_known = painted_known && self.slowest(after(hours)).1 && seen == hours;
        let end = clock_end(self.weather.rows[last].stamp)?;
        let start = end.checked_sub((run.hours as i64).hours()).ok()?;
        let of = |rule| Verdict::all(self.judged[rows.clone()].iter().map(|hour| hour.of(rule)));
        let unknown: Vec<Rule> = Rule::DEMANDED
            .into_iter()
            .filter(|rule| of(*rule) == Verdict::Unknown)
            .collect();
        Some(Window {
            verdict: match unknown.is_empty() {
                true => Verdict::Fine,
                false => Verdict::Unknown,
            },
            unknown,
            start,
            end,
            hours: run.hours,
            needs,
            walk: later(end, drying.walk)?,
            children: later(end, drying.children)?,
            drying,
            drying_known,
            dry_wanted: of(Rule::DryWanted),
            warm_after: of(Rule::WarmAfter),
        })
    }

    /// The slowest scale of drying of these hours, at least 1 where one is not known, and
    /// whether all are known.
    fn slowest<'h>(&self, hours: impl Iterator<Item = &'h Hour>) -> (f64, bool) {
        let sunny = self.ledger.number(figures::SUN);
        let (mut slowest, mut known) = (None::<f64>, true);
        for hour in hours {
            let sun = hour.sun.is_some_and(|sun| sun >= sunny);
            let one = || {
                scale(
                    hour.temperature?,
                    self.air.humidity_of(hour)?,
                    sun,
                    self.ledger,
                )
            };
            let one = one();
            known &= one.is_some();
            let one = one.unwrap_or(1.0);
            slowest = Some(slowest.map_or(one, |so_far| so_far.max(one)));
        }
        (slowest.unwrap_or(1.0), known)
    }
}

/// When an hour is over.
pub(crate) fn clock_end(stamp: Stamp) -> Option<DateTime> {
    let hours = i64::from(stamp.hour).hours();
    stamp.date.at(0, 0, 0, 0).checked_add(hours).ok()
}

/// So many hours on, to the next full hour.
fn later(time: DateTime, hours: f64) -> Option<DateTime> {
    time.checked_add(SignedDuration::from_hours(hours.ceil() as i64))
        .ok()
}

/// The margin of the ground over the dew point in each hour, °C, where it is known: for a
/// drawing.
pub fn margins(weather: &Weather, limits: &Limits, air: &Air) -> Vec<Option<f64>> {
    let margin = |hour: &Hour| Some(ground(hour, limits)? - air.dew_point_of(hour)?);
    weather.rows.iter().map(margin).collect()
}
