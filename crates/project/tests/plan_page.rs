//! `docs/plan.md` lists every key of plan.json, as the schema in the repository has it.
//! `CHALKYARD_BLESS=1` writes the tables again: read them before they are kept.

#![allow(clippy::expect_used)]

use std::collections::BTreeSet;
use std::fmt::Write;
use std::fs;

use serde_json::Value;

const PAGE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/plan.md");
const SCHEMA: &str = include_str!("../../../schema/plan.schema.json");
const MARKS: [&str; 2] = [
    "<!-- keys: written by the test -->\n",
    "<!-- end of keys -->",
];

/// The tables: the whole plan's, then each that it refers to, in the order met.
fn tables(schema: &Value) -> String {
    let mut out = String::new();
    let mut met: Vec<String> = Vec::new();
    table(schema, "The whole plan", &mut met, &mut out);
    let mut next = 0;
    while let Some(name) = met.get(next).cloned() {
        table(&schema["$defs"][&name], &name, &mut met, &mut out);
        next += 1;
    }
    out
}

fn table(of: &Value, name: &str, met: &mut Vec<String>, out: &mut String) {
    _ = writeln!(out, "\n## {name}\n");
    if let (Some(says), true) = (of["description"].as_str(), name != "The whole plan") {
        _ = writeln!(out, "{}\n", line(says));
    }
    let Some(keys) = of["properties"].as_object() else {
        _ = writeln!(out, "{}", kind(of, met));
        return;
    };
    let required: BTreeSet<&str> = of["required"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(Value::as_str)
        .collect();
    out.push_str("| key | holds | what |\n|---|---|---|\n");
    for (key, value) in keys {
        let mut holds = kind(value, met);
        if !required.contains(key.as_str()) && !holds.ends_with("or none") {
            holds += " or none";
        }
        _ = writeln!(
            out,
            "| `{key}` | {holds} | {} |",
            line(value["description"].as_str().unwrap_or(""))
        );
    }
}

/// One line, safe in a table's cell.
fn line(text: &str) -> String {
    text.split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .replace('|', "\\|")
}

/// What a value is, in words; tables that it refers to are remembered.
fn kind(value: &Value, met: &mut Vec<String>) -> String {
    if let Some(name) = value["$ref"]
        .as_str()
        .and_then(|path| path.rsplit('/').next())
    {
        if !met.iter().any(|known| known == name) {
            met.push(name.to_owned());
        }
        return format!("[{name}](#{})", name.to_lowercase());
    }
    if let Some(choices) = value["anyOf"].as_array().or(value["oneOf"].as_array()) {
        let kinds: Vec<String> = choices
            .iter()
            .filter(|one| one["type"] != "null")
            .map(|one| kind(one, met))
            .collect();
        let none = if kinds.len() < choices.len() {
            " or none"
        } else {
            ""
        };
        return kinds.join(" or ") + none;
    }
    if let Some(words) = value["enum"].as_array() {
        return words
            .iter()
            .map(|word| format!("`{word}`"))
            .collect::<Vec<_>>()
            .join(", ");
    }
    if let Some(word) = value.get("const") {
        return format!("`{word}`");
    }
    let types: Vec<&str> = match &value["type"] {
        Value::String(one) => vec![one],
        Value::Array(all) => all.iter().filter_map(Value::as_str).collect(),
        _ => Vec::new(),
    };
    let mut kinds = Vec::new();
    for one in types.iter().filter(|one| **one != "null") {
        kinds.push(match *one {
            "array" => {
                let items = kind(&value["items"], met);
                match value["maxItems"]
                    .as_u64()
                    .filter(|most| value["minItems"].as_u64() == Some(*most))
                {
                    Some(count) => format!("{count} of ({items})"),
                    None => format!("list of {items}"),
                }
            }
            "object" if value["additionalProperties"].is_object() => {
                format!("by name, {}", kind(&value["additionalProperties"], met))
            }
            "string" => "text".to_owned(),
            "integer" => "whole number".to_owned(),
            "boolean" => "true or false".to_owned(),
            other => other.to_owned(),
        });
    }
    let none = if types.contains(&"null") {
        " or none"
    } else {
        ""
    };
    // A list of positions is a ring, a list of rings a polygon.
    let plain = kinds.join(" or ");
    let plain = plain
        .replace("2 of (number)", "[x, y]")
        .replace("list of list of [x, y]", "polygon")
        .replace("list of polygon", "list of polygons");
    if plain.is_empty() {
        "anything".to_owned()
    } else {
        plain + none
    }
}

#[test]
fn every_key_of_the_plan_stands_in_its_page() {
    let schema: Value = serde_json::from_str(SCHEMA).expect("the schema is JSON");
    let tables = tables(&schema);
    for name in schema["$defs"].as_object().expect("tables").keys() {
        assert!(
            tables.contains(&format!("\n## {name}\n")),
            "{name} is met nowhere"
        );
    }
    let page = fs::read_to_string(PAGE).expect("the page");
    let (before, rest) = page.split_once(MARKS[0]).expect("where the tables begin");
    let (kept, after) = rest.split_once(MARKS[1]).expect("where the tables end");
    if std::env::var_os("CHALKYARD_BLESS").is_some() {
        fs::write(
            PAGE,
            format!("{before}{}{tables}\n{}{after}", MARKS[0], MARKS[1]),
        )
        .expect("the page");
    } else {
        assert!(
            kept.trim() == tables.trim(),
            "docs/plan.md has drifted; its tables are now\n{tables}"
        );
    }
}

/// A key that says nothing of itself would leave its unit to guessing.
#[test]
fn every_key_says_what_it_is() {
    let schema: Value = serde_json::from_str(SCHEMA).expect("the schema is JSON");
    let mut silent = Vec::new();
    let mut seen = 0;
    let tables = schema["$defs"].as_object().expect("tables");
    for (name, table) in tables
        .iter()
        .map(|(name, table)| (name.as_str(), table))
        .chain([("Plan", &schema)])
    {
        for (key, value) in table["properties"].as_object().into_iter().flatten() {
            seen += 1;
            if value["description"]
                .as_str()
                .is_none_or(|says| says.trim().is_empty())
            {
                silent.push(format!("{name}.{key}"));
            }
        }
    }
    assert!(seen > 100, "only {seen} keys");
    assert!(silent.is_empty(), "{silent:?}");
}
