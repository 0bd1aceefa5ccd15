//! Drawings and papers
#![allow(missing_docs)]
pub mod drawing;
pub mod face;
pub mod measure;
pub mod plan_sheet;
pub mod sheet;
pub mod survey_report;
pub mod tape_sheet;
pub mod typeset;
