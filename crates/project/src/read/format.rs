//! `docs/format.md` is true: its examples are read, and its tables list every key that the
//! reader knows and no other.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::fs;

const PAGE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/format.md");

thread_local! {
    static KNOWN: RefCell<BTreeMap<String, BTreeSet<String>>> = const { RefCell::new(BTreeMap::new()) };
}

/// Notes that the reader of a file knows these keys or columns.
pub fn heard<'a>(file: &str, keys: impl IntoIterator<Item = &'a str>) {
    KNOWN.with_borrow_mut(|known| {
        known
            .entry(file.to_owned())
            .or_default()
            .extend(keys.into_iter().map(str::to_owned));
    });
}

/// The part of the page about each file.
fn sections(page: &str) -> Vec<(&str, &str)> {
    let sections = page
        .split("\n## `")
        .skip(1)
        .filter_map(|section| section.split_once("`\n"));
    sections
        .map(|(file, body)| (file, body.split("\n## ").next().unwrap_or(body)))
        .collect()
}

fn example(section: &str) -> &str {
    let (_, from) = section.split_once("```").expect("an example");
    let (_, from) = from.split_once('\n').expect("its first line");
    from.split("```").next().expect("its end")
}

/// The keys in the first column of every table.
fn listed(section: &str) -> BTreeSet<String> {
    let rows = section.lines().filter(|line| line.starts_with("| `"));
    let first = rows.filter_map(|row| row.split('|').nth(1));
    let keys = first.flat_map(|cell| cell.split('`').skip(1).step_by(2));
    keys.map(str::to_owned).collect()
}

#[test]
fn every_key_stands_in_the_page_and_the_page_lists_no_other() {
    let page = fs::read_to_string(PAGE).expect("the page");
    let dir = tempfile::tempdir().expect("a folder");
    let sections = sections(&page);
    assert_eq!(sections.len(), 11, "one section a file");
    for (file, section) in &sections {
        fs::write(dir.path().join(file), example(section)).expect("a file");
    }
    KNOWN.with_borrow_mut(BTreeMap::clear);
    let read = crate::read(dir.path());
    assert!(!note::any_error(&read.notes), "{:#?}", read.notes);
    let project = read.value.expect("a project");
    assert!(project.children.len() == 2 && project.layout.len() == 1 && project.trials.len() == 2);
    assert_eq!(project.checks.len(), 2);
    // The lengths of a marking are its family's: the table of families has them.
    let of_families: BTreeSet<&str> = marking::families()
        .iter()
        .flat_map(|family| family.lengths())
        .map(|length| length.name)
        .collect();
    let known = KNOWN.take();
    for (file, section) in sections {
        let mut keys = known.get(file).cloned().unwrap_or_default();
        let mut page = listed(section);
        if file == "layout.toml" {
            keys.retain(|key| !of_families.contains(key.as_str()));
            page.retain(|key| {
                !of_families.contains(key.as_str()) && marking::family(key).is_none()
            });
        }
        assert_eq!(
            page, keys,
            "{file}: what the page lists, and what the reader knows"
        );
    }
}

#[test]
fn the_table_of_families_is_as_the_families_are() {
    let page = fs::read_to_string(PAGE).expect("the page");
    let mut table =
        String::from("\n| family | its lengths, least to most (default), m |\n|---|---|\n");
    for family in marking::families() {
        let lengths: Vec<String> = family
            .lengths()
            .iter()
            .map(|length| {
                format!(
                    "{} {} to {} ({})",
                    length.name, length.least, length.most, length.default
                )
            })
            .collect();
        _ = writeln!(table, "| `{}` | {} |", family.name(), lengths.join("; "));
    }
    let (open, close) = (
        "<!-- families: written by the test -->",
        "<!-- end of families -->",
    );
    let (before, rest) = page.split_once(open).expect("the families");
    let (_, after) = rest.split_once(close).expect("their end");
    let wanted = format!("{before}{open}\n{table}\n{close}{after}");
    if std::env::var_os("CHALKYARD_BLESS").is_some() {
        fs::write(PAGE, &wanted).expect("the page");
    } else {
        assert!(
            page == wanted,
            "run the tests of this room with CHALKYARD_BLESS=1"
        );
    }
}
