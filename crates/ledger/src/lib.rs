//! Every trade figure with its unit, source and standing.
//!
//! The figures lie in `figures/*.toml`, the sources in `sources.toml`; both are part of
//! the program. A project may replace any figure ([`Ledger::replace`]). Each read is
//! marked, so that a document can cite exactly what it used ([`Ledger::cited`]).
//!
//! Invariants: a [`Key`] made by [`figures!`](crate::figures) is always in the ledger (a
//! test of this room holds every room's keys against it); values are in SI units, or in
//! the unit that the figure names where it is not a length, time, mass or angle.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, Ordering};

use serde::Deserialize;

/// How far a figure can be leaned on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Seen in a published source, or derived from one by a stated rule.
    Published,
    /// Common practice or our judgement; no source.
    Practice,
    /// Recalled from the literature, not checked.
    Memory,
}

impl Standing {
    /// The words of the ledger.
    pub fn words(self) -> &'static str {
        match self {
            Standing::Published => "published",
            Standing::Practice => "common practice",
            Standing::Memory => "from memory",
        }
    }
}

/// A figure's name: `room.what`, as in `zone.stationary`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(pub &'static str);

/// One figure of the ledger.
#[derive(Debug)]
pub struct Figure {
    /// Its key.
    pub key: String,
    /// The room whose file it stands in, as `survey`.
    pub room: &'static str,
    /// One number, or one for each of 3, 4, 5 and 6 years, or a list that `what` explains.
    pub values: Vec<f64>,
    /// The unit, `1` for a pure number.
    pub unit: String,
    /// What it is, in a line.
    pub what: String,
    /// Keys of `sources.toml`, or `-`.
    pub source: String,
    /// How far it can be leaned on.
    pub standing: Standing,
    /// Whether the project has replaced it.
    pub replaced: bool,
    read: AtomicBool,
}

/// A published work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// As cited, `CPSC325`.
    pub key: String,
    /// In full.
    pub text: String,
}

/// All figures, with what the project has replaced.
#[derive(Debug)]
pub struct Ledger {
    figures: BTreeMap<String, Figure>,
    sources: BTreeMap<String, String>,
}

/// Why a figure could not be replaced.
#[derive(Clone, Debug, PartialEq)]
pub enum ReplaceFault {
    /// No such figure; the nearest names, best first.
    Unknown(Vec<String>),
    /// As many numbers as the figure has are wanted.
    Count {
        /// How many it has.
        wanted: usize,
    },
    /// Not finite, or negative where it cannot be.
    Value,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    value: Shape,
    unit: String,
    what: String,
    source: String,
    standing: Standing,
}

#[derive(Deserialize)]
#[serde(untagged)]
enum Shape {
    One(f64),
    Many(Vec<f64>),
}

/// The figures' files, by room.
const FILES: &[(&str, &str)] = &[
    ("survey", include_str!("../figures/survey.toml")),
    ("project", include_str!("../figures/project.toml")),
    ("ground", include_str!("../figures/ground.toml")),
    ("children", include_str!("../figures/children.toml")),
    ("marking", include_str!("../figures/marking.toml")),
    ("drawn", include_str!("../figures/drawn.toml")),
    ("footfall", include_str!("../figures/footfall.toml")),
    ("learning", include_str!("../figures/learning.toml")),
    ("layout", include_str!("../figures/layout.toml")),
    ("sessions", include_str!("../figures/sessions.toml")),
    ("setout", include_str!("../figures/setout.toml")),
    ("build", include_str!("../figures/build.toml")),
    ("paint", include_str!("../figures/paint.toml")),
    ("crew", include_str!("../figures/crew.toml")),
    ("document", include_str!("../figures/document.toml")),
    ("motion", include_str!("../figures/motion.toml")),
    ("games", include_str!("../figures/games.toml")),
    ("stencil", include_str!("../figures/stencil.toml")),
    ("weather", include_str!("../figures/weather.toml")),
    ("days", include_str!("../figures/days.toml")),
    ("cutfile", include_str!("../figures/cutfile.toml")),
    ("course", include_str!("../figures/course.toml")),
];

const SOURCES: &str = include_str!("../figures/sources.toml");

impl Ledger {
    /// The ledger as shipped.
    ///
    /// # Errors
    /// A sentence that names the file and the slip. Only a developer's edit of the
    /// shipped files can cause one, and the tests of this room read them all.
    pub fn shipped() -> Result<Ledger, String> {
        let mut figures = BTreeMap::new();
        for (room, text) in FILES {
            let rows: BTreeMap<String, Row> =
                toml::from_str(text).map_err(|fault| format!("figures/{room}.toml: {fault}"))?;
            for (key, row) in rows {
                let values = match row.value {
                    Shape::One(value) => vec![value],
                    Shape::Many(values) => values,
                };
                let figure = Figure {
                    key: key.clone(),
                    room,
                    values,
                    unit: row.unit,
                    what: row.what,
                    source: row.source,
                    standing: row.standing,
                    replaced: false,
                    read: AtomicBool::new(false),
                };
                if figures.insert(key.clone(), figure).is_some() {
                    return Err(format!("figures/{room}.toml: {key} stands twice"));
                }
            }
        }
        let sources =
            toml::from_str(SOURCES).map_err(|fault| format!("figures/sources.toml: {fault}"))?;
        Ok(Ledger { figures, sources })
    }

    /// A figure of one number.
    pub fn number(&self, key: Key) -> f64 {
        self.list(key).first().copied().unwrap_or(f64::NAN)
    }

    /// A figure by age: linear between 3, 4, 5 and 6 years, the ends held outside.
    pub fn at_age(&self, key: Key, years: f64) -> f64 {
        by_age(self.list(key), years)
    }

    /// All numbers of a figure; empty only for a key that the tests would have caught.
    pub fn list(&self, key: Key) -> &[f64] {
        match self.figures.get(key.0) {
            Some(figure) => {
                figure.read.store(true, Ordering::Relaxed);
                &figure.values
            }
            None => &[],
        }
    }

    /// A figure with all that is known of it, without marking it as read.
    pub fn figure(&self, key: &str) -> Option<&Figure> {
        self.figures.get(key)
    }

    /// Every figure, by key.
    pub fn figures(&self) -> impl Iterator<Item = &Figure> {
        self.figures.values()
    }

    /// The figures that have been read since the ledger was made, by key.
    pub fn cited(&self) -> impl Iterator<Item = &Figure> {
        self.figures
            .values()
            .filter(|figure| figure.read.load(Ordering::Relaxed))
    }

    /// Marks a figure as used where its number reached the answer by another way.
    pub fn cite(&self, key: Key) {
        self.list(key);
    }

    /// A work in full, by its key.
    pub fn source(&self, key: &str) -> Option<&str> {
        self.sources.get(key).map(String::as_str)
    }

    /// Every work, by key.
    pub fn sources(&self) -> impl Iterator<Item = Source> + '_ {
        self.sources.iter().map(|(key, text)| Source {
            key: key.clone(),
            text: text.clone(),
        })
    }

    /// Replaces a figure for this project.
    ///
    /// # Errors
    /// [`ReplaceFault`]: the key is unknown, or the numbers do not fit it.
    pub fn replace(&mut self, key: &str, values: &[f64]) -> Result<(), ReplaceFault> {
        let Some(figure) = self.figures.get_mut(key) else {
            return Err(ReplaceFault::Unknown(
                self.figures.keys().cloned().collect(),
            ));
        };
        if figure.values.len() != values.len() {
            return Err(ReplaceFault::Count {
                wanted: figure.values.len(),
            });
        }
        if values.iter().any(|value| !value.is_finite()) {
            return Err(ReplaceFault::Value);
        }
        figure.values = values.to_vec();
        figure.replaced = true;
        Ok(())
    }
}

/// Linear between the values at 3, 4, 5 and 6 years, the ends held outside.
pub fn by_age(values: &[f64], years: f64) -> f64 {
    let [first, .., last] = values else {
        return values.first().copied().unwrap_or(f64::NAN);
    };
    let steps = values.len() - 1;
    let along = years - 3.0;
    if along <= 0.0 {
        return *first;
    }
    if along >= steps as f64 {
        return *last;
    }
    let left = along.floor() as usize;
    let share = along - left as f64;
    values[left] * (1.0 - share) + values[left + 1] * share
}

/// Declares the figures that a room reads: `figures! { pub ZONE = "zone.stationary"; }`
/// makes the constants and `FIGURES`, the list of all of them.
#[macro_export]
macro_rules! figures {
    ($($(#[$doc:meta])* $vis:vis $name:ident = $key:literal;)*) => {
        $($(#[$doc])* $vis const $name: $crate::Key = $crate::Key($key);)*
        /// Every figure that this room reads.
        pub const FIGURES: &[$crate::Key] = &[$($name),*];

        #[cfg(test)]
        mod in_the_ledger {
            #[test]
            fn every_figure_of_this_room_is_in_the_ledger() {
                let ledger = $crate::Ledger::shipped().expect("the shipped ledger reads");
                for key in super::FIGURES {
                    assert!(ledger.figure(key.0).is_some(), "{} is missing", key.0);
                }
            }
        }
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shipped_file_reads_and_every_source_is_known() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        for figure in ledger.figures() {
            assert!(!figure.values.is_empty(), "{} has no value", figure.key);
            for source in figure.source.split(['+', ',']).map(str::trim) {
                assert!(
                    source == "-" || ledger.source(source).is_some(),
                    "{} cites {source}, which sources.toml lacks",
                    figure.key
                );
            }
            let sourced = figure.source != "-";
            assert!(
                sourced || figure.standing != Standing::Published,
                "{} is published by nobody",
                figure.key
            );
        }
    }

    #[test]
    fn ages_are_joined_by_straight_lines_and_held_at_the_ends() {
        let values = [1.0, 2.0, 4.0, 8.0];
        for (years, wanted) in [
            (2.0, 1.0),
            (3.0, 1.0),
            (3.5, 1.5),
            (5.25, 5.0),
            (6.0, 8.0),
            (7.0, 8.0),
        ] {
            assert!(
                (by_age(&values, years) - wanted).abs() < 1e-15,
                "at {years}"
            );
        }
    }

    #[test]
    fn a_project_replaces_a_figure_but_not_its_shape() {
        let mut ledger = Ledger::shipped().expect("the shipped ledger reads");
        assert_eq!(ledger.replace("paint.coats", &[3.0]), Ok(()));
        assert_eq!(
            ledger.replace("paint.coats", &[3.0, 4.0]),
            Err(ReplaceFault::Count { wanted: 1 })
        );
        assert!(matches!(
            ledger.replace("paint.coat", &[3.0]),
            Err(ReplaceFault::Unknown(_))
        ));
        assert_eq!(
            ledger.replace("paint.coats", &[f64::NAN]),
            Err(ReplaceFault::Value)
        );
        assert!(
            ledger
                .figure("paint.coats")
                .is_some_and(|figure| figure.replaced)
        );
    }
}
