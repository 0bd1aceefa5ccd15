//! Both languages say everything, with the same facts, and every key that the rooms use
//! has its sentence.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

const MESSAGES: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/messages");
const CRATES: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/..");

/// Keys with the facts that their sentences use.
fn said(language: &str) -> BTreeMap<String, BTreeSet<String>> {
    let mut said = BTreeMap::new();
    let mut files: Vec<PathBuf> = std::fs::read_dir(format!("{MESSAGES}/{language}"))
        .expect("the folder of a language")
        .map(|entry| entry.expect("a file").path())
        .collect();
    files.sort();
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a message file");
        let resource = fluent_bundle::FluentResource::try_new(text.clone());
        assert!(
            resource.is_ok(),
            "{} does not parse: {:?}",
            file.display(),
            resource.err().map(|f| f.1)
        );
        let mut key = None;
        for line in text.lines() {
            let head = line
                .split_once('=')
                .filter(|_| line.starts_with(|c: char| c.is_ascii_lowercase()));
            if let Some((name, _)) = head {
                let name = name.trim().to_owned();
                assert!(
                    said.insert(name.clone(), BTreeSet::new()).is_none(),
                    "{name} is said twice in {language}"
                );
                key = Some(name);
            }
            if line.starts_with('#') {
                continue;
            }
            if let Some(facts) = key.as_ref().and_then(|key| said.get_mut(key)) {
                for gap in line.split('$').skip(1) {
                    let end = gap.find(|c: char| !(c.is_alphanumeric() || c == '_' || c == '-'));
                    facts.insert(gap[..end.unwrap_or(gap.len())].to_owned());
                }
            }
        }
    }
    said
}

#[test]
fn both_languages_say_the_same_with_the_same_facts() {
    let (en, es) = (said("en"), said("es"));
    for (key, facts) in &en {
        assert_eq!(Some(facts), es.get(key), "{key} in Spanish");
    }
    for key in es.keys() {
        assert!(en.contains_key(key), "{key} is said in Spanish only");
    }
}

fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).expect("a folder of sources") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            sources(&path, into);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            into.push(path);
        }
    }
}

#[test]
fn every_key_that_the_rooms_use_has_its_sentence() {
    let en = said("en");
    let mut files = Vec::new();
    for room in std::fs::read_dir(CRATES).expect("the rooms") {
        let src = room.expect("a room").path().join("src");
        if src.is_dir() && !src.starts_with(concat!(env!("CARGO_MANIFEST_DIR"), "/src")) {
            sources(&src, &mut files);
        }
    }
    let mut missing = BTreeSet::new();
    let mut used = 0;
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a source");
        let room = file.strip_prefix(CRATES).expect("a room's file");
        if room.starts_with("words") || room.starts_with("note") {
            continue;
        }
        for call in text.split("msg!(").skip(1) {
            let call = call.trim_start();
            if let Some(key) = call
                .strip_prefix('"')
                .and_then(|rest| rest.split('"').next())
            {
                used += 1;
                if !en.contains_key(key) {
                    missing.insert(format!("{key} ({})", room.display()));
                }
            }
        }
    }
    assert!(used > 20, "the scan found only {used} messages");
    assert!(missing.is_empty(), "without a sentence: {missing:#?}");
}
