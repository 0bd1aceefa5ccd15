//! Who will play: sizes, reach, and how sure we are.
//!
//! [`roster`] makes a [`Child`] of every row that a centre wrote, [`counts`] of bare
//! numbers by age. What was measured updates the child and, shrunk toward the age's
//! figures, its whole class (children.md 2.7); [`expected`] leaves that to learning and hands
//! the measurements on.
//!
//! Invariants: no name, no day of birth; every default carries the ledger keys it rests
//! on; all that is handed on is rounded to 1e-6.

mod checks;
mod child;
mod entry;
mod expected;
mod figures;
mod growth;
mod means;
mod overrides;
mod roster;
mod site;

pub use child::{Ability, Child, Means, Side, Skill, Speeds};
pub use entry::{Date, Entry, Override, Trait};
pub use expected::{Expected, Reading};
pub use figures::FIGURES;
pub use growth::{Lms, Sex, stature, z_of};
pub use means::turning_radius;
pub use overrides::overridden;
pub use roster::{counts, expected, roster};
