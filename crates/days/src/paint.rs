//! Each hour held against the rules of painting.

use ledger::Ledger;
use weather::{Air, Hour, Way, Weather};

use crate::figures;
use crate::verdict::Verdict;

/// A rule of painting.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rule {
    /// The air is neither too cold nor too warm.
    Air,
    /// Nor is the ground.
    Surface,
    /// The ground is far enough above the dew point.
    Dew,
    /// The air is dry enough.
    Humidity,
    /// No rain in the hour.
    Rain,
    /// No rain for long enough before it.
    DryBefore,
    /// No rain for long enough after it.
    DryAfter,
    /// Not too much wind.
    Wind,
    /// Wanted, not demanded: no rain for longer after it.
    DryWanted,
    /// Wanted, not demanded: the air stays warm enough for a day after it.
    WarmAfter,
}

impl Rule {
    /// What an hour must keep.
    pub const DEMANDED: [Rule; 8] = [
        Rule::Air,
        Rule::Surface,
        Rule::Dew,
        Rule::Humidity,
        Rule::Rain,
        Rule::DryBefore,
        Rule::DryAfter,
        Rule::Wind,
    ];

    /// What makes a good hour better.
    pub const WANTED: [Rule; 2] = [Rule::DryWanted, Rule::WarmAfter];

    /// Its key in the catalogue.
    pub fn word(self) -> &'static str {
        match self {
            Rule::Air => "days-rule-air",
            Rule::Surface => "days-rule-surface",
            Rule::Dew => "days-rule-dew",
            Rule::Humidity => "days-rule-humidity",
            Rule::Rain => "days-rule-rain",
            Rule::DryBefore => "days-rule-dry-before",
            Rule::DryAfter => "days-rule-dry-after",
            Rule::Wind => "days-rule-wind",
            Rule::DryWanted => "days-rule-dry-wanted",
            Rule::WarmAfter => "days-rule-warm-after",
        }
    }
}

/// The rules' figures. The product's label wins: where it says otherwise, a project replaces
/// the figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Limits {
    /// Least and greatest temperature of the air, °C, both allowed.
    pub air: (f64, f64),
    /// Least and greatest temperature of the ground, °C, both allowed.
    pub surface: (f64, f64),
    /// The ground is at least so much above the dew point, °C.
    pub dew_margin: f64,
    /// Greatest humidity, %, allowed.
    pub humidity: f64,
    /// Wind stays below, m/s.
    pub wind: f64,
    /// Hours without rain before.
    pub dry_before: usize,
    /// Hours without rain after.
    pub dry_after: usize,
    /// Hours without rain after, wanted.
    pub dry_wanted: usize,
    /// Hours of warm enough air after, wanted.
    pub warm_after: usize,
    /// Where the file has no reading of the ground: it is taken to be so much warmer than
    /// the air, °C. `None` leaves the ground unknown. A clear night or shade makes the ground
    /// colder than the air: read the ground on the day.
    pub ground_over_air: Option<f64>,
}

impl Limits {
    /// As the ledger has them; the air stands in for the ground.
    pub fn of(ledger: &Ledger) -> Limits {
        let number = |key| ledger.number(key);
        let hours = |key| ledger.number(key).max(0.0).ceil() as usize;
        let (low, high) = (number(figures::TEMP_MIN), number(figures::TEMP_MAX));
        Limits {
            air: (low, high),
            surface: (low, high.min(number(figures::SURFACE_HOT))),
            dew_margin: number(figures::DEW_MARGIN),
            humidity: number(figures::RH_MAX),
            wind: number(figures::WIND),
            dry_before: hours(figures::DRY_BEFORE),
            dry_after: hours(figures::DRY_AFTER),
            dry_wanted: hours(figures::DRY_WANTED),
            warm_after: hours(figures::WARM_AFTER),
            ground_over_air: Some(0.0),
        }
    }
}

/// What the rules say of one hour.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    verdicts: [Verdict; 10],
}

impl Judged {
    /// Of one rule.
    pub fn of(&self, rule: Rule) -> Verdict {
        self.verdicts[rule as usize]
    }

    /// Of several.
    pub fn all(&self, rules: &[Rule]) -> Verdict {
        Verdict::all(rules.iter().map(|rule| self.of(*rule)))
    }

    /// The rules among these that have this verdict.
    pub fn which(&self, rules: &[Rule], verdict: Verdict) -> Vec<Rule> {
        let mut rules = rules.to_vec();
        rules.retain(|rule| self.of(*rule) == verdict);
        rules
    }
}

/// Every hour of a file held against every rule, in the order of its rows.
///
/// A margin is compared as the file's numbers subtract: one of exactly 3.0 in the file may
/// come out a hair below it, and the hour is then not taken. It never errs the other way.
pub fn judge(weather: &Weather, limits: &Limits, air: &Air) -> Vec<Judged> {
    (0..weather.rows.len())
        .map(|at| one(weather, at, limits, air))
        .collect()
}

fn one(weather: &Weather, at: usize, limits: &Limits, air: &Air) -> Judged {
    let hour = &weather.rows[at];
    let ground = ground(hour, limits);
    let within = |value: f64, (low, high): (f64, f64)| (low..=high).contains(&value);
    let margin = || Some(ground? - air.dew_point_of(hour)?);
    let dry = |hour: &Hour| hour.rain.map(|rain| rain <= 0.0);
    let warm = |hour: &Hour| hour.temperature.map(|warm| warm >= limits.air.0);
    let on =
        |hours, kept: &dyn Fn(&Hour) -> Option<bool>| for_hours(weather, at, Way::On, hours, kept);
    Judged {
        // In the order of `Rule`.
        verdicts: [
            Verdict::of(hour.temperature.map(|value| within(value, limits.air))),
            Verdict::of(ground.map(|value| within(value, limits.surface))),
            Verdict::of(margin().map(|margin| margin >= limits.dew_margin)),
            Verdict::of(air.humidity_of(hour).map(|value| value <= limits.humidity)),
            Verdict::of(dry(hour)),
            for_hours(weather, at, Way::Back, limits.dry_before, &dry),
            on(limits.dry_after, &dry),
            Verdict::of(hour.wind.map(|wind| wind < limits.wind)),
            on(limits.dry_wanted, &dry),
            on(limits.warm_after, &warm),
        ],
    }
}

/// The ground, °C: read, or by the air.
pub(crate) fn ground(hour: &Hour, limits: &Limits) -> Option<f64> {
    hour.surface
        .or_else(|| Some(hour.temperature? + limits.ground_over_air?))
}

/// Whether so many hours on one side all keep something; hours past the end of the file or
/// a gap are unknown.
fn for_hours(
    weather: &Weather,
    at: usize,
    way: Way,
    hours: usize,
    kept: &dyn Fn(&Hour) -> Option<bool>,
) -> Verdict {
    let mut seen = 0;
    let found = Verdict::all(
        weather
            .walk(at, way)
            .take(hours)
            .inspect(|_| seen += 1)
            .map(|hour| Verdict::of(kept(hour))),
    );
    if seen < hours {
        found.max(Verdict::Unknown)
    } else {
        found
    }
}
