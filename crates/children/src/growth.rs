//! Stature by age and sex, from the published LMS table.
//!
//! Within the table L, M and S are linear in months; outside it the ends are held.

use std::sync::LazyLock;

/// Sex, where a centre chooses to record it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Sex {
    Female,
    Male,
}

/// One row of the table; the median in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lms {
    /// Box-Cox power.
    pub l: f64,
    /// Median, metres.
    pub m: f64,
    /// Coefficient of variation.
    pub s: f64,
}

/// Below this power the exponential limit is used: the power form loses its digits there.
const L_NONE: f64 = 1e-6;

/// Source: ledger `children.stature` (CDC2000); where the rows come from stands in the file.
const TABLE: &str = include_str!("../data/stature_lms_cdc2000.csv");

type Rows = Vec<(f64, Lms)>;

static ROWS: LazyLock<(Rows, Rows)> = LazyLock::new(|| (read("F"), read("M")));

fn read(sex: &str) -> Rows {
    TABLE
        .lines()
        .filter_map(|line| {
            let mut cells = line.split(',');
            if cells.next()? != sex {
                return None;
            }
            let mut next = || cells.next()?.trim().parse::<f64>().ok();
            let (months, l, m, s) = (next()?, next()?, next()?, next()?);
            Some((months, Lms { l, m: m / 100.0, s }))
        })
        .collect()
}

impl Lms {
    /// The table at an age in months.
    pub fn at(sex: Sex, months: f64) -> Lms {
        let rows = match sex {
            Sex::Female => &ROWS.0,
            Sex::Male => &ROWS.1,
        };
        let above = rows.partition_point(|(at, _)| *at <= months);
        match (
            above.checked_sub(1).and_then(|at| rows.get(at)),
            rows.get(above),
        ) {
            (Some((a, low)), Some((b, high))) => {
                let share = (months - a) / (b - a);
                let mix = |low: f64, high: f64| low + share * (high - low);
                Lms {
                    l: mix(low.l, high.l),
                    m: mix(low.m, high.m),
                    s: mix(low.s, high.s),
                }
            }
            (Some((_, row)), None) | (None, Some((_, row))) => *row,
            (None, None) => Lms {
                l: 1.0,
                m: f64::NAN,
                s: f64::NAN,
            },
        }
    }

    /// The stature at `z` standard deviations, metres.
    ///
    /// # Source
    /// Cole's LMS: M (1 + L S z)^(1/L), as CDC2000 states it.
    pub fn stature(self, z: f64) -> f64 {
        if self.l.abs() < L_NONE {
            return self.m * libm::exp(self.s * z);
        }
        // a power of nothing or less has no value: the far tail ends at the smallest child
        self.m
            * libm::pow(
                (1.0 + self.l * self.s * z).max(f64::MIN_POSITIVE),
                1.0 / self.l,
            )
    }

    /// How many standard deviations a stature in metres lies from the median.
    pub fn z(self, stature: f64) -> f64 {
        if self.l.abs() < L_NONE {
            return libm::log(stature / self.m) / self.s;
        }
        (libm::pow(stature / self.m, self.l) - 1.0) / (self.l * self.s)
    }
}

/// The stature at an age and `z`; the mean of both sexes where it is not known. Metres.
pub fn stature(sex: Option<Sex>, months: f64, z: f64) -> f64 {
    match sex {
        Some(sex) => Lms::at(sex, months).stature(z),
        None => {
            (Lms::at(Sex::Female, months).stature(z) + Lms::at(Sex::Male, months).stature(z)) / 2.0
        }
    }
}

/// How many standard deviations a stature lies from its age; the mean of both sexes where
/// it is not known.
pub fn z_of(sex: Option<Sex>, months: f64, stature: f64) -> f64 {
    match sex {
        Some(sex) => Lms::at(sex, months).z(stature),
        None => {
            (Lms::at(Sex::Female, months).z(stature) + Lms::at(Sex::Male, months).z(stature)) / 2.0
        }
    }
}
