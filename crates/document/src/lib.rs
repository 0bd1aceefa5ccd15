//! The drawing office: drawings true to scale and papers that a printer, a screen reader
//! and a person in the yard can all use.
//!
//! In at the door come a [`sheet::Sheet`] (name, language, units, paper, type) and the
//! values of the stages; out go bytes: SVG by [`drawing::svg`], tagged PDF by
//! [`survey_report::survey_report`] and [`tape_sheet::tape_sheet`].
//!
//! Promises: drawings are true to scale and read in black and white; labels never lie on
//! each other; papers are PDF/UA-1 with language, heads and words for every figure; the
//! same values give the same bytes. Never here: files, clocks, the network, a sentence
//! that is not in the catalogue, a rule of the trade.

pub mod drawing;
pub mod face;
pub mod gallery;
pub mod measure;
pub mod plan_sheet;
pub mod planned;
pub mod sheet;
pub mod survey_report;
pub mod tape_sheet;
pub mod typeset;
