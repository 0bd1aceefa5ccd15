//! A typical year by month: when there are hours for painting.

use std::ops::RangeInclusive;

use weather::{Air, Stamp, Weather};

use crate::paint::{Judged, Rule};
use crate::verdict::{Tally, Verdict};

/// Hours that follow one another and are all fine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Run {
    /// Row of the first.
    pub first: usize,
    /// How many.
    pub hours: usize,
}

/// One month.
#[derive(Clone, Debug, PartialEq)]
pub struct Month {
    /// January is 1.
    pub month: u8,
    /// Its hours within the clock hours asked.
    pub hours: Tally,
    /// All its hours by clock hour: the first is the one that ends at 1.
    pub clock: [Tally; 24],
    /// Days with at least one fine run of the hours asked, within the clock hours asked.
    pub days: usize,
}

/// A year.
#[derive(Clone, Debug, PartialEq)]
pub struct Year {
    /// January to December.
    pub months: Vec<Month>,
    /// All hours of the file, at any clock hour.
    pub hours: Tally,
    /// The longest run at any clock hour; the first of equals.
    pub longest: Option<Run>,
    /// Mean temperature where it is known, °C.
    pub temperature: Option<f64>,
    /// Mean relative humidity where it is known, %.
    pub humidity: Option<f64>,
}

impl Year {
    /// Months by their fine hours, best first; months without any are left out.
    pub fn best(&self) -> Vec<u8> {
        let mut months: Vec<&Month> = self.months.iter().filter(|m| m.hours.fine > 0).collect();
        months.sort_by_key(|month| std::cmp::Reverse(month.hours.fine));
        months.iter().map(|month| month.month).collect()
    }
}

/// Counts a year by these rules. `clock` are the hours of a working day by the clock time
/// of their end, `work` the hours that a job takes in one go.
pub fn year(
    weather: &Weather,
    judged: &[Judged],
    rules: &[Rule],
    clock: RangeInclusive<u8>,
    work: usize,
    air: &Air,
) -> Year {
    let mut months: Vec<Month> = (1..=12)
        .map(|month| Month {
            month,
            hours: Tally::default(),
            clock: [Tally::default(); 24],
            days: 0,
        })
        .collect();
    let verdicts: Vec<Verdict> = judged.iter().map(|hour| hour.all(rules)).collect();
    for (hour, verdict) in weather.rows.iter().zip(&verdicts) {
        let stamp = hour.stamp;
        let month = &mut months[usize::from(stamp.month() - 1)];
        month.clock[usize::from(stamp.hour - 1)].add(*verdict);
        if clock.contains(&stamp.hour) {
            month.hours.add(*verdict);
        }
    }
    let working =
        |at: usize| verdicts[at] == Verdict::Fine && clock.contains(&weather.rows[at].stamp.hour);
    let mut last = None;
    for run in runs(weather, Break::Midnight, working) {
        let date = weather.rows[run.first].stamp.date;
        if run.hours >= work.max(1) && last != Some(date) {
            months[usize::from(date.month().unsigned_abs() - 1)].days += 1;
            last = Some(date);
        }
    }
    let longest = runs(weather, Break::Gap, |at| verdicts[at] == Verdict::Fine)
        .into_iter()
        .rev()
        .max_by_key(|run| run.hours);
    Year {
        months,
        hours: verdicts.into_iter().collect(),
        longest,
        temperature: mean(weather.rows.iter().filter_map(|hour| hour.temperature)),
        humidity: mean(weather.rows.iter().filter_map(|hour| air.humidity_of(hour))),
    }
}

/// What ends a run besides an hour that does not pass.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Break {
    /// A gap in the hours, and the turn of the year.
    Gap,
    /// These and midnight.
    Midnight,
}

/// Every longest run of rows that pass, in order.
pub(crate) fn runs(weather: &Weather, at: Break, pass: impl Fn(usize) -> bool) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    let mut before: Option<Stamp> = None;
    for (row, hour) in weather.rows.iter().enumerate() {
        if !pass(row) {
            before = None;
            continue;
        }
        let goes_on = before.is_some_and(|before| {
            hour.stamp.follows(before, weather.span)
                && (at == Break::Gap || before.hour < hour.stamp.hour)
        });
        match runs.last_mut() {
            Some(run) if goes_on => run.hours += 1,
            _ => runs.push(Run {
                first: row,
                hours: 1,
            }),
        }
        before = Some(hour.stamp);
    }
    runs
}

fn mean(values: impl Iterator<Item = f64>) -> Option<f64> {
    let (sum, count) = values.fold((0.0, 0u32), |(sum, count), value| (sum + value, count + 1));
    (count > 0).then(|| sum / f64::from(count))
}
