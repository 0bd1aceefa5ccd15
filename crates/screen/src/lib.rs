//! Pages for screens.
