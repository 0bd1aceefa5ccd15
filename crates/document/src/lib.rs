//! Drawings and papers
