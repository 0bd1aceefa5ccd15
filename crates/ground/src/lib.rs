//! The yard minus all that must not be painted, each patch with its reason.

pub mod result;
pub mod yard;
