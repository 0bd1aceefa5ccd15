//! The project folder: reading, checking and writing what people write
