//! A course for the yard's staff, and what keeps the work alive when it is over.
//!
//! In at the door: a seed, the ledger, plain lists of markings and marks. Out: clips with a
//! known truth ([`clips`]), what agreement they show ([`kappa`], [`ac1`], [`ready`]), what the
//! course asks before and after ([`CONFIDENCE`], [`KNOWLEDGE`], [`gain`], [`mcnemar`]), and what goes
//! on afterwards: core items ([`CORE`], [`score`]), visits ([`visits`]), the order in which
//! markings are introduced ([`introduce`]), and free play ([`free_play`]).
//!
//! Invariants: what a clip shows is known by what was done to it *and* measured on its
//! footfalls, and both agree or it is not shown; criteria speak of feet only, for a clip
//! shows nothing else. The same seed gives the same clips. No person has a name here. Absent:
//! sentences (only their keys), files, clocks, pages.

mod agreement;
mod asked;
mod core;
mod criteria;
mod faults;
pub mod figures;
mod free;
mod introduce;
mod measure;
mod practice;
mod ready;
mod visits;

pub use agreement::{
    Band, Estimate, Fleiss, Table, Z95, ac1, agreement, band, fleiss, kappa, kappa_of,
    pairs_needed, wilson,
};
pub use asked::{CONFIDENCE, Gain, KNOWLEDGE, Question, gain, mcnemar};
pub use core::{CORE, Core, INDUCTION, Induction, Score, induction, score};
pub use criteria::{CRITERIA, Criterion, criteria};
pub use faults::{Fault, faults};
pub use free::{FreePlay, Stand, Unled, Why, free_play};
pub use introduce::{Introduced, NEEDS, Painted, introduce, needs};
pub use practice::{Shown, clips};
pub use ready::{Missing, Ready, Round, Rule, drifted, ready};
pub use visits::{Kind, Visit, visits};
