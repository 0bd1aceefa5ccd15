//! Papers: a manuscript in, a tagged PDF out.

mod manuscript;
mod press;

pub use manuscript::{Column, Manuscript};
pub use press::{Fault, press};
