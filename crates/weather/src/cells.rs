//! The cells of one line, each with its place in the file.

use std::ops::Range;

/// A cell: its text and the bytes where that stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Cell<'t> {
    pub text: &'t str,
    pub start: usize,
}

impl Cell<'_> {
    pub(crate) fn bytes(&self) -> Range<usize> {
        self.start..self.start + self.text.len()
    }
}

/// A line that is neither empty nor a comment, and where it starts.
pub(crate) fn lines(text: &str, comments: bool) -> impl Iterator<Item = (usize, &str)> {
    let mut at = 0;
    text.split_inclusive('\n')
        .map(move |line| {
            let start = at;
            at += line.len();
            (start, line.trim_end())
        })
        .filter(move |(_, line)| {
            let line = line.trim_start();
            !(line.is_empty() || comments && line.starts_with('#'))
        })
}

/// Splits a line at `mark`, which a cell may hold between double quotes. Weather files
/// quote names of places, never a quote: a doubled one stays as it stands.
pub(crate) fn split(line: &str, start: usize, mark: char) -> Vec<Cell<'_>> {
    let mut quoted = false;
    let ends = line
        .char_indices()
        .filter(|(_, c)| {
            quoted ^= *c == '"';
            *c == mark && !quoted
        })
        .map(|(at, _)| at)
        .collect::<Vec<_>>();
    let mut from = 0;
    ends.into_iter()
        .chain([line.len()])
        .map(|end| {
            let raw = &line[from..end];
            let text = raw.trim().trim_matches('"').trim();
            let cell = Cell {
                text,
                start: start + from + offset(raw, text),
            };
            from = (end + mark.len_utf8()).min(line.len());
            cell
        })
        .collect()
}

/// Bytes of `whole` before `part`, which is a stretch of it.
fn offset(whole: &str, part: &str) -> usize {
    whole.find(part).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_know_their_bytes_and_quotes_hold_marks_together() {
        let text = "x\n7, \"A, B\" ,é,\r\n# no\n\n8\n";
        let found: Vec<Vec<(&str, &str)>> = lines(text, true)
            .map(|(at, line)| {
                let cells = split(line, at, ',');
                cells.iter().map(|c| (c.text, &text[c.bytes()])).collect()
            })
            .collect();
        assert_eq!(
            found,
            [
                vec![("x", "x")],
                vec![("7", "7"), ("A, B", "A, B"), ("é", "é"), ("", "")],
                vec![("8", "8")]
            ]
        );
    }
}
