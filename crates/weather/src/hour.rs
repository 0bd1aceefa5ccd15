//! A file of hours.

use jiff::civil::Date;

/// Where a file's weather is from; what the file does not say is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Site {
    /// What the file calls it; empty where it has no name.
    pub name: String,
    /// Degrees north.
    pub latitude: Option<f64>,
    /// Degrees east.
    pub longitude: Option<f64>,
    /// Metres above the sea.
    pub elevation: Option<f64>,
    /// Hours that the file's clock is ahead of universal time; summer time is never in it.
    pub zone: Option<f64>,
}

/// What the rows stand for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Span {
    /// A typical year: its months come from different years, so only month, day and hour
    /// count, and the first hour follows the last.
    TypicalYear,
    /// Hours with real dates, as of a forecast.
    Dated,
}

/// The hour that ends at `hour` o'clock; 24 is midnight at the end of `date`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stamp {
    /// The day; in a typical year its year is where the month was taken from.
    pub date: Date,
    /// 1 to 24.
    pub hour: u8,
}

impl Stamp {
    /// January is 1.
    pub fn month(self) -> u8 {
        self.date.month().unsigned_abs()
    }

    /// Whether `self` is the hour after `before`.
    pub fn follows(self, before: Stamp, span: Span) -> bool {
        if before.hour < 24 {
            return self.hour == before.hour + 1 && same_day(self.date, before.date, span);
        }
        let next = before.date.tomorrow();
        self.hour == 1
            && (next.is_ok_and(|next| same_day(self.date, next, span))
                // A typical year leaves 29 February out, whatever the year of its February.
                || (span == Span::TypicalYear
                    && (before.date.month(), before.date.day()) == (2, 28)
                    && (self.date.month(), self.date.day()) == (3, 1)))
    }
}

fn same_day(a: Date, b: Date, span: Span) -> bool {
    match span {
        Span::Dated => a == b,
        Span::TypicalYear => (a.month(), a.day()) == (b.month(), b.day()),
    }
}

/// One hour. What is missing in the file is `None`, and `None` is never good weather.
#[derive(Clone, Debug, PartialEq)]
pub struct Hour {
    /// Which hour.
    pub stamp: Stamp,
    /// Air, °C, at the end of the hour.
    pub temperature: Option<f64>,
    /// Dew point, °C.
    pub dew_point: Option<f64>,
    /// Relative humidity, %.
    pub humidity: Option<f64>,
    /// Wind 10 m up, m/s.
    pub wind: Option<f64>,
    /// Rain of the hour, mm.
    pub rain: Option<f64>,
    /// A reading of the ground, °C.
    pub surface: Option<f64>,
    /// Sun on level ground, W/m².
    pub sun: Option<f64>,
    /// UV index.
    pub uv: Option<f64>,
    /// Fine dust, µg/m³.
    pub pm25: Option<f64>,
    /// Air quality index, where the file has one.
    pub aqi: Option<f64>,
}

impl Hour {
    /// An hour of which nothing is known.
    pub fn unknown(stamp: Stamp) -> Hour {
        Hour {
            stamp,
            temperature: None,
            dew_point: None,
            humidity: None,
            wind: None,
            rain: None,
            surface: None,
            sun: None,
            uv: None,
            pm25: None,
            aqi: None,
        }
    }
}

/// Which way through the hours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Later.
    On,
    /// Earlier.
    Back,
}

/// A file that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Weather {
    /// Where.
    pub place: Site,
    /// What the rows stand for.
    pub span: Span,
    /// The hours in the order of the file.
    pub rows: Vec<Hour>,
}

impl Weather {
    /// The hours after row `at` (`Way::On`) or before it, nearest first, for as long as
    /// each follows the other without a gap. A typical year goes round for ever.
    pub fn walk(&self, at: usize, way: Way) -> impl Iterator<Item = &Hour> {
        let mut at = at;
        std::iter::from_fn(move || {
            let next = self.step(at, way)?;
            let (here, there) = (self.rows.get(at)?, self.rows.get(next)?);
            let (before, after) = match way {
                Way::On => (here, there),
                Way::Back => (there, here),
            };
            at = next;
            after
                .stamp
                .follows(before.stamp, self.span)
                .then_some(there)
        })
        .fuse()
    }

    fn step(&self, at: usize, way: Way) -> Option<usize> {
        let last = self.rows.len().checked_sub(1)?;
        let round = self.span == Span::TypicalYear;
        match way {
            Way::On if at < last => Some(at + 1),
            Way::On => round.then_some(0),
            Way::Back if at > 0 => Some(at - 1),
            Way::Back => round.then_some(last),
        }
    }
}
