//! The project folder: reading, checking and writing what people write.
//!
//! [`read()`] takes the folder in, with every fault of every file told at once; [`yard()`]
//! puts what stands in the yard on the adjusted coordinates; [`mod@write`] is the only way out:
//! a run's files are staged and then moved, so that nothing is ever half-written.
//!
//! Invariants: reading never writes; unknown files in the folder are left alone; a fault
//! points at the file, the line and the column; no name of a child is ever read.

mod globe;
pub mod new;
pub mod read;
mod relaid;
mod remark;
pub mod traced;
pub mod write;
mod yard;

pub use globe::Degrees;
pub use read::about::{About, Paper};
pub use read::{Project, read};
pub use relaid::write_layout;
pub use traced::{Traced, from_outline};
pub use yard::yard;
