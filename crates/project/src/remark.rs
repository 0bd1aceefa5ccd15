//! TOML and CSV as we write them: remarks, quoted texts, lists.

use std::fmt::Write;

/// Widest line of a remark, characters.
const WIDTH: usize = 88;

/// A text as `#` lines, broken between words but not within quotes. What a TOML comment
/// may not hold becomes a blank.
pub fn remark(out: &mut String, text: &str) {
    let mut line = String::from("#");
    let mut waiting = String::new();
    for word in text
        .split(|mark: char| mark.is_whitespace() || mark.is_control())
        .filter(|word| !word.is_empty())
    {
        waiting.push(' ');
        waiting.push_str(word);
        // An odd quote has not closed yet; a text without its second ends with its line.
        if waiting.matches('"').count() % 2 == 1 && waiting.chars().count() < WIDTH / 2 {
            continue;
        }
        flush(out, &mut line, &mut waiting);
    }
    flush(out, &mut line, &mut waiting);
    _ = writeln!(out, "{line}");
}

fn flush(out: &mut String, line: &mut String, waiting: &mut String) {
    if line.chars().count() > 1 && line.chars().count() + waiting.chars().count() > WIDTH {
        _ = writeln!(out, "{line}");
        line.truncate(1);
    }
    line.push_str(waiting);
    waiting.clear();
}

/// A text in quotes, as TOML reads it.
pub fn quoted(text: &str) -> String {
    toml_edit::Value::from(text).to_string()
}

/// A list of names.
pub fn list(names: &[String]) -> String {
    let quoted: Vec<String> = names.iter().map(|name| quoted(name)).collect();
    format!("[{}]", quoted.join(", "))
}
