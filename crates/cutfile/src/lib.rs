//! Stencils and sheets as files for a cutter.
