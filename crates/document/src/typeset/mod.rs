//! Papers: a manuscript in, a tagged PDF out.

mod manuscript;
mod press;

pub(crate) use manuscript::string;
pub use manuscript::{Column, Manuscript};
pub use press::{Fault, press};
