//! Comma- or semicolon-separated rows that know where each cell stands.
//!
//! RFC 4180 quoting; `#` opens a comment line; blanks round a cell do not count. Written
//! here because the common readers give a record's place but not a cell's.

use std::collections::BTreeMap;

use note::{Note, Place, msg};

use crate::read::files::Source;
use crate::read::table::At;
use note::{is_slip, nearest};

/// A table of rows under a header.
pub struct Cells {
    /// Rows in the order of the file.
    pub rows: Vec<Row>,
    /// What parts the cells.
    pub mark: char,
}

/// One row: its cells by column; empty cells are left out.
pub struct Row {
    /// The whole row.
    pub at: Place,
    cells: BTreeMap<&'static str, At<String>>,
}

impl Row {
    /// A cell that is not empty.
    pub fn get(&self, column: &'static str) -> Option<&At<String>> {
        self.cells.get(column)
    }

    /// The next cell of the row that is not empty.
    pub fn after(&self, cell: &At<String>) -> Option<&At<String>> {
        let later = self
            .cells
            .values()
            .filter(|other| other.at.start > cell.at.start);
        later.min_by_key(|other| other.at.start)
    }

    /// A cell that must be there; its lack is told.
    pub fn need(&self, column: &'static str, notes: &mut Vec<Note>) -> Option<&At<String>> {
        let found = self.cells.get(column);
        if found.is_none() {
            notes.push(
                Note::error(self.at.clone(), msg!("cell-empty", column = column))
                    .mend(msg!("cell-fill", column = column)),
            );
        }
        found
    }
}

/// The rows of a file with these columns; every fault of the table is told.
pub fn read(
    source: &Source,
    needed: &[&'static str],
    wanted: &[&'static str],
    notes: &mut Vec<Note>,
) -> Option<Cells> {
    #[cfg(test)]
    crate::read::format::heard(&source.name, needed.iter().chain(wanted).copied());
    let mark = separator(&source.text);
    let mut lines = split(source, mark, notes).into_iter();
    let Some(header) = lines.next() else {
        notes.push(
            Note::error(source.whole(), msg!("table-empty", file = &source.name))
                .expected(msg!("table-header", header = needed.join(","))),
        );
        return None;
    };
    let mut columns: Vec<Option<&'static str>> = Vec::new();
    let mut sound = true;
    for cell in &header.cells {
        let name = cell.value.to_lowercase();
        let known = needed.iter().chain(wanted).find(|column| **column == name);
        match known {
            Some(column) if columns.contains(&Some(*column)) => {
                notes.push(Note::error(
                    cell.at.clone(),
                    msg!("column-twice", column = *column),
                ));
                sound = false;
                columns.push(None);
            }
            Some(column) => columns.push(Some(*column)),
            None if name.is_empty() => columns.push(None),
            None => {
                let note = Note::error(
                    cell.at.clone(),
                    msg!("column-unknown", column = &cell.value),
                );
                let all = || needed.iter().chain(wanted).copied();
                notes.push(match nearest(&name, all()) {
                    Some(near) => note.mend(msg!("did-you-mean", near = near)),
                    None => note.expected(msg!(
                        "one-of",
                        names = all().map(str::to_owned).collect::<Vec<_>>()
                    )),
                });
                sound = false;
                columns.push(None);
            }
        }
    }
    for column in needed {
        // A column that is there under a near name is told once.
        let near = header.cells.iter().any(|cell| is_slip(&cell.value, column));
        sound &= columns.contains(&Some(*column));
        if !columns.contains(&Some(*column)) && !near {
            notes.push(
                Note::error(header.at.clone(), msg!("column-missing", column = *column))
                    .expected(msg!("table-header", header = needed.join(","))),
            );
        }
    }
    if !sound {
        return None;
    }
    let rows = lines
        .filter_map(|line| row(line, &columns, mark, notes))
        .collect();
    Some(Cells { rows, mark })
}

fn row(
    line: Line,
    columns: &[Option<&'static str>],
    mark: char,
    notes: &mut Vec<Note>,
) -> Option<Row> {
    let spare = line
        .cells
        .iter()
        .skip(columns.len())
        .find(|cell| !cell.value.is_empty());
    if let Some(spare) = spare {
        let note = Note::error(
            spare.at.clone(),
            msg!(
                "row-too-long",
                cells = line.cells.len(),
                columns = columns.len()
            ),
        );
        let digits = spare.value.bytes().all(|byte| byte.is_ascii_digit());
        notes.push(match mark {
            ',' if digits => note.mend(msg!("row-decimal-comma")),
            _ => note.mend(msg!("row-quote", cell = format!("…{mark} {}", spare.value))),
        });
        return None;
    }
    let cells = line
        .cells
        .into_iter()
        .zip(columns)
        .filter_map(|(cell, column)| Some(((*column)?, cell)))
        .filter(|(_, cell)| !cell.value.is_empty())
        .collect();
    Some(Row { at: line.at, cells })
}

struct Line {
    at: Place,
    cells: Vec<At<String>>,
}

/// A semicolon where the header has one and no comma; else a comma.
fn separator(text: &str) -> char {
    let header = text
        .lines()
        .find(|line| !line.trim().is_empty() && !line.trim_start().starts_with('#'));
    match header {
        Some(header) if header.contains(';') => ';',
        Some(header) if header.contains('\t') && !header.contains(',') => '\t',
        _ => ',',
    }
}

fn split(source: &Source, mark: char, notes: &mut Vec<Note>) -> Vec<Line> {
    let text = &*source.text;
    let mut lines = Vec::new();
    let mut at = 0;
    while at < text.len() {
        let end = text[at..].find('\n').map_or(text.len(), |feed| at + feed);
        let plain = text[at..end].trim();
        // A row of nothing but marks is what a spreadsheet leaves behind.
        if plain.is_empty()
            || plain.starts_with('#')
            || plain.chars().all(|c| c == mark || c == ' ')
        {
            at = end + 1;
            continue;
        }
        let (line, next) = one(source, at, mark, notes);
        lines.push(line);
        at = next;
    }
    lines
}

/// One row from `start`; where the next one starts.
fn one(source: &Source, start: usize, mark: char, notes: &mut Vec<Note>) -> (Line, usize) {
    let text = &*source.text;
    let mut cells = Vec::new();
    let mut at = start;
    loop {
        let blank = text[at..]
            .chars()
            .take_while(|c| *c == ' ' || (*c == '\t' && mark != '\t'));
        let first = at + blank.map(char::len_utf8).sum::<usize>();
        let (value, from, to, next) = if text[first..].starts_with('"') {
            quoted(source, first, mark, notes)
        } else {
            let end = text[first..]
                .find([mark, '\n'])
                .map_or(text.len(), |stop| first + stop);
            let value = text[first..end].trim_end();
            (value.to_owned(), first, first + value.len(), end)
        };
        cells.push(At {
            value: value.trim().to_owned(),
            at: source.place(from, to),
        });
        match text[next..].chars().next() {
            Some(found) if found == mark => at = next + mark.len_utf8(),
            Some(_) => {
                let end = next;
                return (
                    Line {
                        at: source.place(start, end),
                        cells,
                    },
                    next + 1,
                );
            }
            None => {
                return (
                    Line {
                        at: source.place(start, next),
                        cells,
                    },
                    text.len(),
                );
            }
        }
    }
}

/// A quoted cell: its value, the stretch inside the quotes, and where the mark or the end
/// of the line stands.
fn quoted(
    source: &Source,
    open: usize,
    mark: char,
    notes: &mut Vec<Note>,
) -> (String, usize, usize, usize) {
    let text = &*source.text;
    let mut value = String::new();
    let mut at = open + 1;
    loop {
        let Some(quote) = text[at..].find('"').map(|quote| at + quote) else {
            // A quote that never closes swallows the file: end it with the line.
            let end = text[open..]
                .find('\n')
                .map_or(text.len(), |feed| open + feed);
            notes.push(
                Note::error(source.place(open, end), msg!("quote-open")).mend(msg!("quote-close")),
            );
            return (
                text[open + 1..end].trim_end().to_owned(),
                open + 1,
                end,
                end,
            );
        };
        value.push_str(&text[at..quote]);
        // `"17' 5 1/4""` is how people write an inch mark in quotes: with no other quote on
        // its line the second one closes the cell.
        let line = text[quote + 1..].split('\n').next().unwrap_or_default();
        if let Some(after) = line.strip_prefix('"')
            && !after.contains('"')
            && after.trim_start().starts_with([mark, '\r']) | after.trim().is_empty()
        {
            value.push('"');
            let stop = after.find(mark).unwrap_or(after.len());
            return (value, open + 1, quote + 1, quote + 2 + stop);
        }
        if text[quote + 1..].starts_with('"') {
            value.push('"');
            at = quote + 2;
            continue;
        }
        let rest = &text[quote + 1..];
        let stop = rest.find([mark, '\n']).unwrap_or(rest.len());
        if !rest[..stop].trim().is_empty() {
            let after = source.place(quote + 1, quote + 1 + stop);
            notes.push(Note::error(after, msg!("quote-more")).mend(msg!("quote-double")));
        }
        return (value, open + 1, quote, quote + 1 + stop);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rows(text: &str) -> (Vec<Vec<String>>, usize) {
        let source = Source::new("t.csv", text);
        let mut notes = Vec::new();
        let found = read(&source, &["a", "b"], &["c"], &mut notes);
        let rows = found.map_or_else(Vec::new, |cells| {
            let one = |row: &Row| {
                ["a", "b", "c"]
                    .iter()
                    .map(|c| row.get(c).map_or(String::new(), |x| x.value.clone()))
                    .collect()
            };
            cells.rows.iter().map(one).collect()
        });
        (rows, notes.len())
    }

    #[test]
    fn rows_are_read_as_spreadsheets_write_them() {
        let wanted = vec![vec!["1".to_owned(), "2, or 3\"".to_owned(), String::new()]];
        for text in [
            "a,b\n1,\"2, or 3\"\"\"\n",
            "\u{feff}a;b;c\r\n1;2, or 3\";;\r\n",
            "# taped today\n\nb , a\n \"2, or 3\"\"\" , 1\n,\n",
            "a\tb\n1\t2, or 3\"",
        ] {
            assert_eq!(rows(text), (wanted.clone(), 0), "{text:?}");
        }
    }

    #[test]
    fn a_fault_of_the_table_is_told() {
        for text in [
            "",
            "a\n1\n",
            "a,b,d\n",
            "a,b,a\n",
            "a,b\n1,2,3\n",
            "a,b\n1,\"2\n",
            "a,b\n\"1\"x,2\n",
        ] {
            assert_eq!(rows(text).1, 1, "{text:?}");
        }
    }

    #[test]
    fn each_cell_knows_its_place() {
        let source = Source::new("t.csv", "a,b\né, \"xy\" ,\n");
        let cells = read(&source, &["a", "b"], &[], &mut Vec::new()).expect("a sound table");
        let at = &cells.rows[0].get("b").expect("a cell").at;
        assert_eq!(&source.text[at.start..at.end], "xy");
    }
}
