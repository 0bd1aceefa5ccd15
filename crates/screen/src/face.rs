//! The text face of pages: the same WOFF2 files that the papers have.
//!
//! Atkinson Hyperlegible Next 400 and 700, SIL OFL 1.1 (the licence lies beside the files).

use std::sync::OnceLock;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

/// The family's name in style sheets.
pub const FAMILY: &str = "Atkinson Hyperlegible Next";

const FILES: [(u32, &[u8]); 2] = [
    (
        400,
        include_bytes!("../../document/fonts/AtkinsonHyperlegibleNext-Regular.woff2"),
    ),
    (
        700,
        include_bytes!("../../document/fonts/AtkinsonHyperlegibleNext-Bold.woff2"),
    ),
];

/// The face as rules of a style sheet, its files within.
pub fn rules() -> &'static str {
    static RULES: OnceLock<String> = OnceLock::new();
    RULES.get_or_init(|| {
        FILES
            .map(|(weight, bytes)| {
                format!(
                    "@font-face{{font-family:'{FAMILY}';font-weight:{weight};\
                     src:url(data:font/woff2;base64,{}) format('woff2')}}\n",
                    STANDARD.encode(bytes)
                )
            })
            .concat()
    })
}
