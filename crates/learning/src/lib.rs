//! What children have shown, and what it tells of them and their class.
//!
//! In at the door: [`Pupil`]s, each a child as age and body have it with its measured bests,
//! tries on figures of known size, checks met and counted contacts. Out: [`Learned`]: the
//! children moved, what was known before and after with its intervals, what the ages and
//! groups share, and what changed because of what. [`calibration`] holds predictions against
//! what came off.
//!
//! # The model
//! For each skill, child i of age a and group g:
//! - reach m_i + tau_i z_i, never under the ledger's share of m_i; z_i = A_a + G_g + own, all
//!   normal, with variances that add up to 1: the page's tau is the whole spread of children
//!   of an age, and what age and group share is part of it. The shared part is 1/(1 + 8), so
//!   that n children measured exactly move an unmeasured one by n/(n + 8), as the roster has it
//!   (`site.shrink`); half of it is the group's (`learning.group-share`).
//! - steadiness q ~ Beta(8 q0, 8 (1 - q0)); form f ~ Beta(8 c0, 8 (1 - c0)), the rate at which
//!   criteria are met; the child can do the skill with probability f, or cannot.
//! - k of n tries: Binomial(n, pi(z, q)) where the child can, none where it cannot. Checks:
//!   Binomial(n, f). A count of contacts: q^x (1 - q), q^x where the observer stopped it; who
//!   cannot breaks before the third. A measured best: a normal reading of reach that by
//!   itself moves a child as the roster does.
//!
//! # Method
//! z on the grid of the footfall model, q and f on Gauss-Legendre nodes, the can-or-cannot
//! summed out; the shared effects by expectation propagation (Minka 2001), each child's
//! likelihood being exact on the grid and only what it tells the others made normal.
//! `oracle/` holds it against quadrature over all effects at once.
//!
//! Invariants: no data, no change, to the last bit; the answer does not depend on the number
//! of threads; reach and steadiness are told given that the child can. Absent: files, words,
//! clocks.

mod calibration;
mod changes;
mod effects;
mod evidence;
mod figures;
mod fit;
mod learn;
mod legendre;
mod rate;

pub use calibration::{Bin, Calibration, Line, calibration};
pub use changes::{Because, Change, What, changes};
pub use effects::Shared;
pub use evidence::{Attempt, Evidence};
pub use figures::FIGURES;
pub use fit::{Band, Case, Fit, Fitted, Posterior, fit};
pub use learn::{Check, Effect, Learned, Of, Pupil, Run, Seen, Told, Try, learn};

#[cfg(test)]
mod tests;
