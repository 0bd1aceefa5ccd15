//! When an observer is ready, and what is still missing.

use ledger::Ledger;

use crate::agreement::{Estimate, Table, ac1, agreement, kappa, pairs_needed};
use crate::figures;

/// What is asked of an observer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// Least share of marks that agree, in a round.
    pub agreement: f64,
    /// Least kappa, in a round.
    pub kappa: f64,
    /// So many rounds in a row, the last ones.
    pub in_row: usize,
    /// Kappa is known well enough when its interval reaches no further to either side.
    pub half_width: f64,
}

impl Rule {
    /// The ledger's.
    pub fn of(ledger: &Ledger) -> Rule {
        Rule {
            agreement: ledger.number(figures::AGREEMENT),
            kappa: ledger.number(figures::KAPPA),
            in_row: ledger.number(figures::IN_ROW).clamp(1.0, 100.0) as usize,
            half_width: ledger.number(figures::HALF_WIDTH),
        }
    }
}

/// A round of the practice, or a session beside a trained observer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Round {
    /// The marks.
    pub table: Table,
    /// Share that agree; `None` of no marks.
    pub agreement: Option<Estimate>,
    /// Kappa; `None` where all marks are alike.
    pub kappa: Option<Estimate>,
    /// AC1.
    pub ac1: Option<Estimate>,
    /// Whether agreement and kappa are both as asked.
    pub passed: bool,
}

/// What keeps an observer from being ready.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Missing {
    /// So many rounds more, one after the other, as the rule asks.
    Rounds(usize),
    /// The last round agreed less than asked.
    Agreement {
        /// Share that agreed.
        got: f64,
        /// Share asked.
        wanted: f64,
    },
    /// The last round's kappa is less than asked.
    Kappa {
        /// Its kappa.
        got: f64,
        /// Kappa asked.
        wanted: f64,
    },
    /// The last round had no marks, or all alike: kappa cannot be told from it.
    Alike,
}

/// Whether an observer's marks may count.
#[derive(Clone, Debug, PartialEq)]
pub struct Ready {
    /// Whether the last rounds in a row passed.
    pub ready: bool,
    /// Every round.
    pub rounds: Vec<Round>,
    /// All marks of the last rounds that the rule asks for, together.
    pub last: Table,
    /// Their kappa.
    pub kappa: Option<Estimate>,
    /// What is missing; empty when ready.
    pub missing: Vec<Missing>,
    /// So many pairs more would tell kappa as closely as the rule's `half_width`, should it stay
    /// as it is; 0 where it is known. Worth knowing; it does not keep from being ready.
    pub more_pairs: u32,
}

/// Judges rounds in the order in which they were held.
///
/// # Source
/// The rule is programme.md 3.1: agreement of at least 80 % and kappa of at least .60, two in a
/// row, before data count; common practice.
pub fn ready(rounds: &[Table], rule: &Rule) -> Ready {
    let rounds: Vec<Round> = rounds.iter().map(|table| judged(table, rule)).collect();
    let run = rounds.iter().rev().take_while(|round| round.passed).count();
    let in_row = rule.in_row.max(1);
    let last = rounds
        .iter()
        .rev()
        .take(in_row)
        .fold(Table::default(), |sum, round| sum.with(round.table));
    let mut missing = Vec::new();
    if run < in_row {
        missing.push(Missing::Rounds(in_row - run));
        if let Some(round) = rounds.last().filter(|round| !round.passed) {
            if let Some(got) = round.agreement.map(|got| got.value)
                && got < rule.agreement
            {
                let wanted = rule.agreement;
                missing.push(Missing::Agreement { got, wanted });
            }
            match round.kappa.map(|got| got.value) {
                Some(got) if got < rule.kappa => missing.push(Missing::Kappa {
                    got,
                    wanted: rule.kappa,
                }),
                Some(_) => {}
                None => missing.push(Missing::Alike),
            }
        }
    }
    let kappa = kappa(&last);
    let more_pairs = kappa.map_or(0, |kappa| more(&last, &kappa, rule.half_width));
    Ready {
        ready: run >= in_row,
        rounds,
        last,
        kappa,
        missing,
        more_pairs,
    }
}

fn judged(table: &Table, rule: &Rule) -> Round {
    let (agreement, kappa) = (agreement(table), kappa(table));
    let enough = |got: Option<Estimate>, wanted: f64| got.is_some_and(|got| got.value >= wanted);
    Round {
        table: *table,
        agreement,
        kappa,
        ac1: ac1(table),
        passed: enough(agreement, rule.agreement) && enough(kappa, rule.kappa),
    }
}

/// Pairs that are lacking to know kappa within `half`. Where all agree the variance says
/// nothing, and kappa .9 is taken: what so few marks could hide.
fn more(table: &Table, kappa: &Estimate, half: f64) -> u32 {
    const HIDDEN: f64 = 0.9;
    let likely = kappa.value.min(HIDDEN);
    let needed = pairs_needed(likely, table.yes(), half).unwrap_or(0);
    (f64::from(needed) - table.pairs()).max(0.0) as u32
}

/// Whether an observer has drifted: among the last `of` pairs of marks kappa is below the rule's.
/// `None` while there are fewer, or all marks are alike.
pub fn drifted(pairs: &[(bool, bool)], of: usize, rule: &Rule) -> Option<bool> {
    let from = pairs.len().checked_sub(of.max(1))?;
    let last = Table::of(pairs.iter().skip(from).copied());
    Some(kappa(&last)?.value < rule.kappa)
}
