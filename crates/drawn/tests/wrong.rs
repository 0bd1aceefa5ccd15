//! Slips that artists make, and what they are told: one file a slip in `wrong/`.
//!
//! A file says in its first lines what somebody did, then holds the drawing, then what the
//! house says. `CHALKYARD_BLESS=1` writes what the house says now: read it before it is kept.
#![cfg(test)]
#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

use std::fmt::Write;
use std::fs;
use std::sync::Arc;

use ledger::Ledger;
use marking::Ground;
use note::any_error;
use unit::Units;
use words::{Catalogue, Language, Sheaf, render};

const WRONG: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/wrong");

fn says(svg: &str, language: Language) -> String {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let file: Arc<str> = "figures/fish.svg".into();
    let read = drawn::read("fish", &file, svg, Ground::Asphalt, &ledger);
    assert_eq!(read.value.is_none(), any_error(&read.notes));
    let files = Sheaf::from([(file, Arc::from(svg))]);
    let mut out = String::new();
    for note in &read.notes {
        let catalogue = Catalogue::of(language);
        let _ = write!(
            out,
            "{}",
            render(note, &files, catalogue, Units::Metres, false)
        );
    }
    out
}

#[test]
fn each_slip_is_told_as_its_page_says() {
    let bless = std::env::var_os("CHALKYARD_BLESS").is_some();
    let mut pages: Vec<_> = fs::read_dir(WRONG)
        .expect("the pages")
        .map(|entry| entry.expect("a page").path())
        .collect();
    pages.sort();
    assert!(pages.len() > 20);
    let mut off = Vec::new();
    for page in pages {
        let text = fs::read_to_string(&page).expect("text");
        let (story, rest) = text.split_once("\n== svg\n").expect("a story");
        let (svg, kept) = rest.split_once("\n== says\n").expect("a drawing");
        let now = says(&format!("{svg}\n"), Language::En);
        // the other language has every sentence too, with the same places
        let spanish = says(&format!("{svg}\n"), Language::Es);
        let marks = |text: &str| text.matches("figures/fish.svg:").count();
        assert_eq!(marks(&now), marks(&spanish), "{}", page.display());
        assert!(
            !now.contains("drawn-") && !spanish.contains("drawn-"),
            "{now}{spanish}"
        );
        if bless {
            fs::write(&page, format!("{story}\n== svg\n{svg}\n== says\n{now}")).expect("written");
        } else if now != kept {
            off.push(format!("{}:\n{now}", page.display()));
        }
    }
    assert!(off.is_empty(), "{}", off.join("\n"));
}
