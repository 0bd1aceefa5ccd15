//! What teachers read beside the games: the weeks, the lights of the day, the pocket list, the
//! course. Reading level by the formulas of this room, whole files at once: a sentence alone
//! tells little.
#![allow(clippy::expect_used)]

use std::fs;

use games::reading::{GRADE, Tongue, grade};

/// Messages without gaps, whose keys begin with one of these, of a file of the catalogue.
fn texts(language: &str, file: &str, keys: &[&str]) -> Vec<String> {
    let path = format!(
        "{}/../words/messages/{language}/{file}.ftl",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = fs::read_to_string(path).expect("a file of the catalogue");
    let message = |line: &str| {
        let (key, says) = line.split_once(" = ")?;
        let ours = keys.iter().any(|start| key.starts_with(start));
        (ours && !says.contains('{') && says.contains(' ')).then(|| says.to_owned())
    };
    text.lines().filter_map(message).collect()
}

#[test]
fn what_teachers_read_is_at_most_grade_6() {
    for (language, tongue) in [("en", Tongue::English), ("es", Tongue::Spanish)] {
        for (file, keys) in [
            ("taught", &["weeks-", "fit-", "pocket-", "card-"][..]),
            ("days", &["days-do-"][..]),
            ("course", &["course-"][..]),
            ("office", &["office-letter-", "office-consent-"][..]),
        ] {
            let texts = texts(language, file, keys);
            assert!(texts.len() > 3, "{language} {file}: {} texts", texts.len());
            let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
            let grade = grade(&texts, tongue);
            assert!(grade <= GRADE, "{language} {file}: grade {grade:.1}");
        }
    }
}
