//! Core items of a session held as designed, and the induction of new staff.

use ledger::Ledger;

use crate::figures;

/// A thing that a coach sees or does not see in a session.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Core {
    /// Its name, of its own.
    pub name: &'static str,
    /// Key of its sentence; `moving` and `wait` take the fact `seconds`.
    pub says: &'static str,
}

macro_rules! core {
    ($($name:literal)*) => {
        [$(Core { name: $name, says: concat!("course-core-", $name) }),*]
    };
}

/// The eight core items (programme.md 1.2: common practice), in the order of a session.
pub const CORE: [Core; 8] =
    core!("marking" "shown" "moving" "wait" "cue" "levels" "sight" "ending");

/// What the marks of visited sessions add up to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Score {
    /// Items met.
    pub met: usize,
    /// Items asked; what could not be seen is not asked.
    pub asked: usize,
    /// Met of asked; `None` where nothing was asked.
    pub share: Option<f64>,
    /// Sessions in which every item asked was met, of those in which any was asked.
    pub whole: (usize, usize),
    /// Whether the share is good (`course.green.core`).
    pub green: bool,
    /// Whether the strict share is good (`course.green.strict`).
    pub green_strict: bool,
}

/// Scores visited sessions, a row each: met, not met, or not seen, in the order of [`CORE`].
pub fn score(sessions: &[[Option<bool>; 8]], ledger: &Ledger) -> Score {
    let marks = || sessions.iter().flatten().flatten();
    let (met, asked) = (marks().filter(|met| **met).count(), marks().count());
    let seen = |row: &&[Option<bool>; 8]| row.iter().any(Option::is_some);
    let all = |row: &&[Option<bool>; 8]| !row.contains(&Some(false));
    let visited = sessions.iter().filter(seen).count();
    let held = sessions.iter().filter(seen).filter(all).count();
    let share = (asked > 0).then(|| met as f64 / asked as f64);
    let strict = (visited > 0).then(|| held as f64 / visited as f64);
    let good = |share: Option<f64>, key| share.is_some_and(|share| share >= ledger.number(key));
    Score {
        met,
        asked,
        share,
        whole: (held, visited),
        green: good(share, figures::GREEN_CORE),
        green_strict: good(strict, figures::GREEN_STRICT),
    }
}

/// A step of the induction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Induction {
    /// Its name.
    pub name: &'static str,
    /// Key of what is done.
    pub says: &'static str,
    /// Minutes.
    pub minutes: f64,
}

/// Names and sentences of the induction's steps.
pub const INDUCTION: [(&str, &str); 5] = [
    ("walk", "course-induction-walk"),
    ("safe", "course-induction-safe"),
    ("lead", "course-induction-lead"),
    ("see", "course-induction-see"),
    ("who", "course-induction-who"),
];

/// The induction of new staff, with the minutes of the ledger.
pub fn induction(ledger: &Ledger) -> Vec<Induction> {
    let minutes = ledger.list(figures::INDUCTION);
    INDUCTION
        .iter()
        .enumerate()
        .map(|(at, (name, says))| Induction {
            name,
            says,
            minutes: minutes.get(at).copied().unwrap_or(0.0),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_induction_takes_fifteen_minutes() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let minutes: f64 = induction(&ledger).iter().map(|step| step.minutes).sum();
        assert!((minutes - 15.0).abs() < 1e-9, "{minutes}");
    }

    /// By hand: 8 + 6 + 4 of 8 + 8 + 5; one session whole of three.
    #[test]
    fn what_was_not_seen_is_not_asked() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let (yes, no, none) = (Some(true), Some(false), None);
        let all = score(
            &[
                [yes; 8],
                [yes, no, yes, yes, no, yes, yes, yes],
                [yes, yes, yes, yes, no, none, none, none],
                [none; 8],
            ],
            &ledger,
        );
        assert_eq!((all.met, all.asked, all.whole), (18, 21, (1, 3)));
        assert!(all.green && !all.green_strict);
        assert!(score(&[], &ledger).share.is_none());
        assert!(score(&[[yes; 8]], &ledger).green_strict);
    }
}
