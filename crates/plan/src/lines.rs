//! JSON that a person can read and a version control system can compare: an array of
//! numbers, or of pairs of numbers, stands on one line.

use serde_json::Value;

/// The text of `value`, indented by two blanks.
pub fn pretty(value: &Value) -> String {
    let mut out = String::new();
    write(value, 0, &mut out);
    out
}

/// Past this many characters an array is broken over lines.
const WIDTH: usize = 100;

fn write(value: &Value, depth: usize, out: &mut String) {
    match value {
        Value::Array(items) if !items.is_empty() => {
            let short = value.to_string();
            let flat = items.iter().all(|item| !item.is_object())
                && (short.len() <= WIDTH || items.iter().all(Value::is_number));
            if flat {
                out.push_str(&short);
                return;
            }
            out.push('[');
            for (at, item) in items.iter().enumerate() {
                next_line(at, depth + 1, out);
                write(item, depth + 1, out);
            }
            end_line(depth, out);
            out.push(']');
        }
        Value::Object(fields) if !fields.is_empty() => {
            let short = value.to_string();
            if short.len() <= WIDTH && fields.values().all(|field| !field.is_object()) {
                out.push_str(&short);
                return;
            }
            out.push('{');
            for (at, (key, field)) in fields.iter().enumerate() {
                next_line(at, depth + 1, out);
                out.push_str(&Value::String(key.clone()).to_string());
                out.push_str(": ");
                write(field, depth + 1, out);
            }
            end_line(depth, out);
            out.push('}');
        }
        other => out.push_str(&other.to_string()),
    }
}

fn next_line(at: usize, depth: usize, out: &mut String) {
    out.push_str(if at == 0 { "\n" } else { ",\n" });
    out.extend(std::iter::repeat_n("  ", depth));
}

fn end_line(depth: usize, out: &mut String) {
    out.push('\n');
    out.extend(std::iter::repeat_n("  ", depth));
}
