//! A typical year's hours that are fit for play, and what that makes of a plan.

use std::ops::RangeInclusive;

use weather::{Air, Hour, Weather};

use crate::lights::{Bands, Light, Lights, Measure};
use crate::verdict::{Tally, Verdict};

/// A month's hours at the clock hours asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FitMonth {
    /// January is 1.
    pub month: u8,
    /// Hours by light of heat: green, yellow, orange, red.
    pub heat: [usize; 4],
    /// Hours by light of cold.
    pub chill: [usize; 4],
    /// Hours whose light of heat or cold is not known.
    pub light_unknown: usize,
    /// Hours with rain.
    pub wet: usize,
    /// Hours whose rain is not known.
    pub rain_unknown: usize,
    /// Hours that are fit: no rain, and a light at which children go out.
    pub fit: Tally,
}

/// Whether an hour is fit for play: no rain, and heat and cold allow it. Air quality and UV
/// count where the file has them; typical years do not.
pub fn fit(hour: &Hour, bands: &Bands, air: &Air) -> Verdict {
    let light = Lights::of(hour, bands, air).overall(&[Measure::Heat, Measure::Chill]);
    Verdict::all([
        Verdict::of(hour.rain.map(|rain| rain <= 0.0)),
        Verdict::of(light.map(|light| light <= bands.worst_out())),
    ])
}

/// January to December, at these clock hours, each named by its end. The file's clock never
/// has summer time: a session from 10 to 11 on the wall is in summer the hour that ends at 10.
pub fn fit_hours(weather: &Weather, clock: &[u8], bands: &Bands, air: &Air) -> Vec<FitMonth> {
    let mut months: Vec<FitMonth> = (1..=12)
        .map(|month| FitMonth {
            month,
            heat: [0; 4],
            chill: [0; 4],
            light_unknown: 0,
            wet: 0,
            rain_unknown: 0,
            fit: Tally::default(),
        })
        .collect();
    for hour in &weather.rows {
        if !clock.contains(&hour.stamp.hour) {
            continue;
        }
        let month = &mut months[usize::from(hour.stamp.month() - 1)];
        let lights = Lights::of(hour, bands, air);
        let (heat, chill) = (lights.by(Measure::Heat), lights.by(Measure::Chill));
        if let Some(heat) = heat {
            month.heat[heat as usize] += 1;
        }
        if let Some(chill) = chill {
            month.chill[chill as usize] += 1;
        }
        month.light_unknown += usize::from(heat.is_none() || chill.is_none());
        month.wet += usize::from(hour.rain.is_some_and(|rain| rain > 0.0));
        month.rain_unknown += usize::from(hour.rain.is_none());
        month.fit.add(fit(hour, bands, air));
    }
    months
}

impl FitMonth {
    /// Hours at this light of heat or a worse one.
    pub fn heat_from(&self, light: Light) -> usize {
        self.heat[light as usize..].iter().sum()
    }

    /// Hours at this light of cold or a worse one.
    pub fn chill_from(&self, light: Light) -> usize {
        self.chill[light as usize..].iter().sum()
    }
}

/// What the weather leaves of a plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sessions {
    /// Sessions planned.
    pub planned: f64,
    /// Planned times the share of hours that are fit.
    pub expected: f64,
    /// More to plan, so that as many as planned are to be expected; `None` where no hour of
    /// some planned month is fit.
    pub spare: Option<u32>,
}

/// Sessions by month, each with its planned number. A month of which the file has no hour
/// counts as unfit.
pub fn sessions(planned: &[(u8, f64)], months: &[FitMonth]) -> Sessions {
    let mut sum = Sessions {
        planned: 0.0,
        expected: 0.0,
        spare: Some(0),
    };
    for (month, planned) in planned {
        let found = months.iter().find(|found| found.month == *month);
        let share = found.and_then(|found| found.fit.share()).unwrap_or(0.0);
        sum.planned += planned;
        sum.expected += planned * share;
        let spare = (share > 0.0 || *planned <= 0.0)
            .then(|| (planned * (1.0 - share) / share.max(f64::MIN_POSITIVE)).ceil() as u32);
        sum.spare = sum.spare.zip(spare).map(|(sum, more)| sum + more);
    }
    sum
}

/// A time of day for a session.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slot {
    /// Its first hour, by the clock time of that hour's end.
    pub first: u8,
    /// Hours of the months asked.
    pub fit: Tally,
}

/// Every start of a session of so many hours within these clock hours, by the share of its
/// hours that are fit in these months: best first, then the earlier.
pub fn slots(
    weather: &Weather,
    months: &[u8],
    clock: RangeInclusive<u8>,
    hours: u8,
    bands: &Bands,
    air: &Air,
) -> Vec<Slot> {
    let mut by_clock = [Tally::default(); 25];
    for hour in &weather.rows {
        if months.contains(&hour.stamp.month()) {
            by_clock[usize::from(hour.stamp.hour)].add(fit(hour, bands, air));
        }
    }
    let hours = hours.clamp(1, 24);
    let last = clock.end().min(&24).saturating_sub(hours - 1);
    let mut slots: Vec<Slot> = ((*clock.start()).max(1)..=last)
        .map(|first| {
            let mut fit = Tally::default();
            for one in &by_clock[usize::from(first)..usize::from(first + hours)] {
                fit.fine += one.fine;
                fit.unknown += one.unknown;
                fit.not += one.not;
            }
            Slot { first, fit }
        })
        .collect();
    // Shares as fractions, compared without rounding.
    slots.sort_by(|a, b| {
        let left = b.fit.fine * a.fit.hours();
        let right = a.fit.fine * b.fit.hours();
        left.cmp(&right).then(a.first.cmp(&b.first))
    });
    slots
}
