//! The message catalogue: every sentence in English and Spanish
