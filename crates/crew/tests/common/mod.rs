//! What the tests of this room share.

#![allow(dead_code, reason = "each test takes its own part")]

pub mod rules;
pub mod yard;
