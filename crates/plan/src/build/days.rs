//! `build.days`: when the weather lets paint dry.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What one weather file says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Days {
    /// The file.
    pub file: String,
    /// The place that it names.
    pub place: String,
    /// A typical year by month; empty for a forecast.
    pub months: Vec<Month>,
    /// Windows of a forecast, the best first; empty for a typical year.
    pub windows: Vec<Window>,
}

/// Hours of a month in which paint may go down by every rule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Month {
    /// 1 to 12.
    pub month: u8,
    /// Hours in which every rule is kept.
    pub fine: usize,
    /// Hours of which some reading is missing and no other rule is broken: never counted as fine.
    pub unknown: usize,
    /// Hours in which a rule is broken.
    pub not: usize,
}

/// A stretch of one day in which the job can be done. Times are the file's own clock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Window {
    /// `fine`, or `unknown` where some reading is missing.
    pub verdict: String,
    /// ISO 8601, not before.
    pub start: String,
    /// ISO 8601, the last stroke.
    pub end: String,
    /// ISO 8601, from when children may play.
    pub children: String,
}

impl Days {
    /// Copies what the days stage said of a file.
    pub fn of(
        file: &str,
        place: &str,
        year: Option<&days::Year>,
        windows: &[days::Window],
    ) -> Days {
        Days {
            file: file.to_owned(),
            place: place.to_owned(),
            months: year
                .into_iter()
                .flat_map(|year| &year.months)
                .map(|month| Month {
                    month: month.month,
                    fine: month.hours.fine,
                    unknown: month.hours.unknown,
                    not: month.hours.not,
                })
                .collect(),
            windows: windows
                .iter()
                .map(|window| Window {
                    verdict: match window.verdict {
                        days::Verdict::Fine => "fine",
                        days::Verdict::Unknown => "unknown",
                        days::Verdict::Not => "not",
                    }
                    .to_owned(),
                    start: window.start.to_string(),
                    end: window.end.to_string(),
                    children: window.children.to_string(),
                })
                .collect(),
        }
    }
}
