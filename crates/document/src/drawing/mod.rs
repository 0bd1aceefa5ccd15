//! The drawing office: scenes in paper millimetres, true to scale, black-and-white safe.

pub mod block;
pub mod compose;
pub mod figure;
pub mod fixture;
pub mod hatch;
pub mod label;
pub mod mark;
pub mod scale;
pub mod scene;
pub mod svg;
pub mod taken;
pub mod view;
pub mod yard;
