//! What the course asks before and after, and what may be claimed from it.

/// Statements that a person rates from 0 (cannot at all) to 100 (surely can): keys of our own
/// six items, on what a leader of a station does (programme.md 1.4 names number and scale).
pub const CONFIDENCE: [&str; 6] = [
    "course-can-show",
    "course-can-see",
    "course-can-cue",
    "course-can-level",
    "course-can-wait",
    "course-can-include",
];

/// A question with one right answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Question {
    /// Its name, of its own.
    pub name: &'static str,
    /// Key of what is asked.
    pub asks: &'static str,
    /// Keys of the answers.
    pub answers: [&'static str; 3],
    /// Number of the right one, from 0.
    pub right: usize,
    /// Key of why.
    pub why: &'static str,
}

macro_rules! questions {
    ($($name:literal $right:literal;)*) => {
        &[$(Question {
            name: $name,
            asks: concat!("course-know-", $name),
            answers: [
                concat!("course-know-", $name, "-a"),
                concat!("course-know-", $name, "-b"),
                concat!("course-know-", $name, "-c"),
            ],
            right: $right,
            why: concat!("course-know-", $name, "-why"),
        }),*]
    };
}

/// Nine questions of our own. Right answers rest on children.md and programme.md.
pub const KNOWLEDGE: &[Question] = questions! {
    "paint" 1;
    "gallop" 0;
    "skip" 2;
    "hop" 1;
    "cue" 0;
    "fit" 2;
    "runout" 1;
    "unwilling" 2;
    "record" 0;
};

/// What a person's rating gained.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gain {
    /// After less before.
    pub plain: f64,
    /// After less what one says afterwards of how it was before ("then"), where it was asked.
    pub then: Option<f64>,
    /// What may be claimed: the smaller.
    pub claim: f64,
}

/// The gain of ratings, each a mean of its items or a single one.
///
/// # Source
/// "Then" ratings mend the drift of self-ratings, but are pulled down and inflate gains
/// (programme.md 1.4, `TAY09`): ask both, claim the smaller.
pub fn gain(before: f64, after: f64, then: Option<f64>) -> Gain {
    let plain = after - before;
    let then = then.map(|then| after - then);
    Gain {
        plain,
        then,
        claim: then.map_or(plain, |then| then.min(plain)),
    }
}

/// Exact two-sided p of McNemar's test: of those who changed, as many the one way as the
/// other? Those who stayed the same tell nothing. 1 where nobody changed.
///
/// # Source
/// Binomial(n, ½), twice the smaller tail (check of programme.md 1.4: 9 and 2 give 0.065430).
pub fn mcnemar(improved: u32, worsened: u32) -> f64 {
    let (few, all) = (improved.min(worsened), improved.saturating_add(worsened));
    // log of the term k of the binomial, by steps from k = 0
    let mut term = -f64::from(all) * std::f64::consts::LN_2;
    let mut tail = libm::exp(term);
    for k in 1..=few {
        term += libm::log(f64::from(all - k + 1)) - libm::log(f64::from(k));
        tail += libm::exp(term);
    }
    (2.0 * tail).min(1.0)
}
