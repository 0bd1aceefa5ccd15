//! TOML and CSV as we write them: remarks, quoted texts, lists.

use std::fmt::Write;

/// Widest line of a remark, characters.
const WIDTH: usize = 88;

/// A text as `#` lines. What a TOML comment may not hold becomes a blank.
pub fn remark(out: &mut String, text: &str) {
    let mut line = String::from("#");
    for word in text.split(|mark: char| mark.is_whitespace() || mark.is_control()).filter(|word| !word.is_empty()) {
        if line.chars().count() > 1 && line.chars().count() + 1 + word.chars().count() > WIDTH {
            _ = writeln!(out, "{line}");
            line = String::from("#");
        }
        line.push(' ');
        line.push_str(word);
    }
    _ = writeln!(out, "{line}");
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
