//! The message catalogue: every sentence in English and Spanish.
//!
//! `messages/en` and `messages/es` hold one file a room; a test keeps their keys and gaps
//! the same. [`Catalogue::say`] fills a sentence with its facts, lengths in the user's
//! unit and numbers in the manner of the language. [`render`] sets a note
//! beside the line that it points at.
//!
//! Invariants: words decide nothing; a message without a sentence shows its key, so that
//! a slip of ours never hides a fault of the files.

mod catalogue;
pub mod number;
mod show;

pub use catalogue::{Catalogue, Language};
pub use show::{Sheaf, render};
