//! Showing.
