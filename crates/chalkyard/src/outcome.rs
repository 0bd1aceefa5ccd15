//! How a run ends.

use std::process::ExitCode;

/// A run that came to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Done.
    Done,
    /// Done, and something does not hold: a test, an audit, a search without a find.
    DoesNotHold,
    /// The input is wrong; the notes have been told.
    WrongInput,
}

/// What is nobody's fault but ours, or the machine's.
#[derive(Debug)]
pub struct Fault(pub String);

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> ExitCode {
        ExitCode::from(match outcome {
            Outcome::Done => 0,
            Outcome::DoesNotHold => 1,
            Outcome::WrongInput => 2,
        })
    }
}

/// The exit status of a [`Fault`].
pub const OUR_FAULT: u8 = 3;
