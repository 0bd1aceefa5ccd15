//! Fine, not, or unknown; and counts of each.

/// What is said of an hour under a rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// The rule is kept.
    Fine,
    /// Something that the rule asks of is not known. Never fine.
    Unknown,
    /// The rule is broken.
    Not,
}

impl Verdict {
    /// `None` is unknown.
    pub fn of(kept: Option<bool>) -> Verdict {
        match kept {
            Some(true) => Verdict::Fine,
            Some(false) => Verdict::Not,
            None => Verdict::Unknown,
        }
    }

    /// All of them: one broken rule is enough to say no, one unknown is enough not to say yes.
    pub fn all(verdicts: impl IntoIterator<Item = Verdict>) -> Verdict {
        verdicts.into_iter().max().unwrap_or(Verdict::Fine)
    }
}

/// Hours by verdict.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Hours that are fine.
    pub fine: usize,
    /// Hours that may or may not be.
    pub unknown: usize,
    /// Hours that are not.
    pub not: usize,
}

impl Tally {
    /// Counts one more.
    pub fn add(&mut self, verdict: Verdict) {
        *match verdict {
            Verdict::Fine => &mut self.fine,
            Verdict::Unknown => &mut self.unknown,
            Verdict::Not => &mut self.not,
        } += 1;
    }

    /// All hours.
    pub fn hours(&self) -> usize {
        self.fine + self.unknown + self.not
    }

    /// Share of the hours that are fine; `None` of no hours. Unknown ones are not fine.
    pub fn share(&self) -> Option<f64> {
        (self.hours() > 0).then(|| self.fine as f64 / self.hours() as f64)
    }
}

impl FromIterator<Verdict> for Tally {
    fn from_iter<I: IntoIterator<Item = Verdict>>(verdicts: I) -> Tally {
        let mut tally = Tally::default();
        verdicts.into_iter().for_each(|verdict| tally.add(verdict));
        tally
    }
}
