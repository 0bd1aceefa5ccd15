//! A fresh folder as people see it: `new/en` in feet, `new/es` in metres. `CHALKYARD_BLESS=1`
//! writes what the house makes now: read it before it is kept.

#![allow(clippy::expect_used)]

use std::fs;

use ledger::Ledger;
use project::Paper;
use project::new::{Answers, new_folder};
use unit::Units;
use words::Language;

const NEW: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/new");

#[test]
fn a_fresh_folder_is_as_somebody_read_it_last() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let answers = |name: &str, language, units, paper, currency: &str, corners| Answers {
        name: name.to_owned(),
        units,
        language,
        paper,
        currency: currency.to_owned(),
        date: Some(jiff::civil::date(2026, 9, 1)),
        corners,
        traced: None,
    };
    for answers in [
        answers(
            "Wren Lane",
            Language::En,
            Units::Feet,
            Paper::Letter,
            "USD",
            4,
        ),
        answers(
            "Patio de la Garza",
            Language::Es,
            Units::Metres,
            Paper::A4,
            "EUR",
            7,
        ),
    ] {
        let outputs = new_folder(&answers, &ledger)
            .value
            .expect("a folder's files");
        assert_eq!(outputs.len(), 5);
        for output in outputs {
            let path = format!("{NEW}/{}/{}", answers.language.tag(), output.path);
            let now = String::from_utf8(output.bytes).expect("UTF-8");
            if std::env::var_os("CHALKYARD_BLESS").is_some() {
                fs::create_dir_all(format!("{NEW}/{}", answers.language.tag())).expect("a folder");
                fs::write(&path, &now).expect("a file");
            }
            let kept = fs::read_to_string(&path).unwrap_or_default();
            assert!(now == kept, "{path}: the house makes\n{now}");
        }
    }
}
