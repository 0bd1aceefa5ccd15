//! What every family promises, and which there are.

use note::{Fact, Message, msg};

use crate::families::{
    balance, brook, compass, court, eight, fields, labyrinth, lane, letter_court, number_court,
    number_line, pair, prints, ring_sets, spiral, spots, star, twin,
};
use crate::figure::Figure;
use crate::look::Look;

/// A length that a family leaves free, metres; what the sizing for a class varies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LengthSpec {
    /// Its name in files.
    pub name: &'static str,
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
    /// Where nobody says otherwise.
    pub default: f64,
    /// Finest difference that is worth painting.
    pub step: f64,
    /// Key of the sentence that says what it is.
    pub says: &'static str,
}

/// Why lengths make no figure.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// As many lengths as the family has are wanted.
    Count {
        /// How many it has.
        wanted: usize,
        /// How many came.
        given: usize,
    },
    /// A length lies outside what can be painted or used.
    Range {
        /// Which.
        spec: LengthSpec,
        /// Metres.
        given: f64,
    },
    /// Two lengths do not go together.
    Clash {
        /// The one that is too small.
        short: &'static str,
        /// What it would have to be at least, beside the others; metres.
        least: f64,
    },
}

impl Fault {
    /// What is wrong, and what was expected, for a note.
    pub fn messages(&self, family: &str) -> (Message, Message) {
        match self {
            Fault::Count { wanted, given } => (
                msg!("marking-count", family = family, given = *given),
                msg!("marking-count-expected", wanted = *wanted),
            ),
            Fault::Range { spec, given } => (
                msg!(
                    "marking-range",
                    family = family,
                    length = spec.name,
                    given = Fact::Length(*given)
                ),
                msg!(
                    "marking-range-expected",
                    least = Fact::Length(spec.least),
                    most = Fact::Length(spec.most)
                ),
            ),
            Fault::Clash { short, least } => (
                msg!("marking-clash", family = family, length = *short),
                msg!(
                    "marking-clash-expected",
                    length = *short,
                    least = Fact::Length(*least)
                ),
            ),
        }
    }
}

/// A generator of figures: lengths in, a figure out, nothing else.
///
/// The figure's own frame has its origin on the middle of its (first) start line and +x
/// along the way, or along the banks.
pub trait Family: Sync {
    /// Its name in files.
    fn name(&self) -> &str;

    /// The lengths it leaves free.
    fn lengths(&self) -> &[LengthSpec];

    /// The gaits it is meant for, as files name them: a skill, or `court`.
    fn activities(&self) -> &[&'static str];

    /// Whether it may be mirrored: not where a numeral would read backwards.
    fn can_mirror(&self) -> bool;

    /// The figure at these lengths, in the order of [`Family::lengths`].
    ///
    /// # Errors
    /// [`Fault`]: the lengths are not as many, not in range, or do not go together.
    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault>;

    /// Its lengths where nobody says otherwise.
    fn defaults(&self) -> Vec<f64> {
        self.lengths().iter().map(|spec| spec.default).collect()
    }
}

/// Every family. A new one is a file in `families/` and a line here.
pub fn families() -> &'static [&'static dyn Family] {
    &[
        &court::Court,
        &brook::Brook,
        &spots::Spots,
        &pair::Pair,
        &ring_sets::RingSets,
        &star::Star,
        &number_line::NumberLine,
        &number_court::NumberCourt,
        &letter_court::LetterCourt,
        &fields::Fields,
        &compass::Compass,
        &lane::STRAIGHT_LANE,
        &lane::WAVE_LANE,
        &lane::ZIGZAG_LANE,
        &lane::STRAIGHT_LINE,
        &lane::WAVE_LINE,
        &lane::ZIGZAG_LINE,
        &spiral::Spiral,
        &eight::Eight,
        &labyrinth::Labyrinth,
        &balance::BalanceLines,
        &twin::TwinTracks,
        &prints::GALLOP_PRINTS,
        &prints::SKIP_PRINTS,
        &prints::HOP_PRINTS,
        &prints::LEAP_PRINTS,
        &prints::JUMP_PRINTS,
    ]
}

/// The family of a name.
pub fn family(name: &str) -> Option<&'static dyn Family> {
    families()
        .iter()
        .copied()
        .find(|family| family.name() == name)
}

/// The lengths, where they are as many as a family has and all in range: what every `make`
/// begins with.
///
/// # Errors
/// [`Fault::Count`] and [`Fault::Range`].
pub fn take<'a>(specs: &[LengthSpec], given: &'a [f64]) -> Result<&'a [f64], Fault> {
    /// Metres. Slack for a length that went through text and back.
    const SLACK: f64 = 1e-9;
    if specs.len() != given.len() {
        return Err(Fault::Count {
            wanted: specs.len(),
            given: given.len(),
        });
    }
    let outside = specs
        .iter()
        .zip(given)
        .find(|(spec, given)| !(spec.least - SLACK..=spec.most + SLACK).contains(*given));
    match outside {
        Some((spec, given)) => Err(Fault::Range {
            spec: *spec,
            given: *given,
        }),
        None => Ok(given),
    }
}

/// As many lengths as asked for, by [`take`].
///
/// # Errors
/// As [`take`].
pub fn take_all<const N: usize>(specs: &[LengthSpec; N], given: &[f64]) -> Result<[f64; N], Fault> {
    take(specs, given)?.try_into().map_err(|_| Fault::Count {
        wanted: N,
        given: given.len(),
    })
}

/// Lengths beside their names.
pub fn named(specs: &[LengthSpec], lengths: &[f64]) -> Vec<(String, f64)> {
    let millionth = |value: f64| (value * 1e6).round() / 1e6;
    specs
        .iter()
        .zip(lengths)
        .map(|(spec, length)| (spec.name.to_owned(), millionth(*length)))
        .collect()
}

/// `Ok` where a length is at least what the others ask for.
///
/// # Errors
/// [`Fault::Clash`].
pub fn at_least(name: &'static str, given: f64, least: f64) -> Result<(), Fault> {
    const SLACK: f64 = 1e-9;
    if given + SLACK < least {
        Err(Fault::Clash { short: name, least })
    } else {
        Ok(())
    }
}
