//! Tape readings become coordinates with their uncertainty.

pub mod network;
pub mod result;
