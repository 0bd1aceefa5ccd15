//! A manuscript: headings, paragraphs, lists, tables, figures and cautions in their order,
//! written for the typesetter. Words of the user's go in as strings, never as code.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::press::{Fault, press};
use crate::drawing::scene::Scene;
use crate::drawing::svg;
use crate::face;
use crate::sheet::Sheet;
use unit::Units;

const LOOK: &str = include_str!("look.typ");

/// A column of a table: its head, its width, which side it keeps to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    head: String,
    share: Option<u8>,
    right: bool,
    english: bool,
}

impl Column {
    /// Words, as wide as they need.
    pub fn words(head: impl Into<String>) -> Column {
        Column {
            head: head.into(),
            share: None,
            right: false,
            english: false,
        }
    }

    /// Words that share what width is left, so many parts of it.
    pub fn prose(head: impl Into<String>, share: u8) -> Column {
        Column {
            head: head.into(),
            share: Some(share),
            right: false,
            english: false,
        }
    }

    /// The same, told to be English whatever the paper's language is.
    pub fn english(self) -> Column {
        Column {
            english: true,
            ..self
        }
    }

    /// Figures of equal decimals, on the point.
    pub fn figures(head: impl Into<String>) -> Column {
        Column {
            head: head.into(),
            share: None,
            right: true,
            english: false,
        }
    }
}

/// A paper being written.
pub struct Manuscript {
    text: String,
    figures: BTreeMap<String, String>,
    ident: String,
    date: String,
}

impl Manuscript {
    /// An empty paper in the look of the house.
    pub fn new(sheet: &Sheet, kind: &str, title: &str, of_pages: &str) -> Manuscript {
        let [w, h] = sheet.paper.upright();
        let [left, right] = sheet.paper.margins();
        let text = format!(
            "#let tongue = {}\n#let title = {}\n#let of-pages = {}\n#let paper = ({w}mm, {h}mm)\n\
             #let left-rim = {left}mm\n#let grow = {}\n{}",
            string(sheet.language.tag()),
            string(title),
            string(of_pages),
            if sheet.large { "1.4" } else { "1" },
            LOOK.replace(
                "left: left, right: right",
                &format!("left: {left}mm, right: {right}mm")
            ),
        );
        Manuscript {
            text,
            figures: BTreeMap::new(),
            ident: format!("chalkyard {kind} {}", sheet.name),
            date: sheet.date.to_owned(),
        }
    }

    /// A heading; level 1 once, then 2.
    pub fn heading(&mut self, level: u8, words: &str) {
        let _ = writeln!(self.text, "#heading(level: {level}, {})", string(words));
    }

    /// A paragraph.
    pub fn paragraph(&mut self, words: &str) {
        if !words.is_empty() {
            let _ = writeln!(self.text, "#par(text({}))", string(words));
        }
    }

    /// A paragraph that stays with the table after it.
    pub fn lead(&mut self, words: &str) {
        let _ = writeln!(
            self.text,
            "#block(sticky: true, below: row, par(text({})))",
            string(words)
        );
    }

    /// A small paragraph.
    pub fn remark(&mut self, words: &str) {
        if !words.is_empty() {
            let _ = writeln!(self.text, "#par(text(size: em(note), {}))", string(words));
        }
    }

    /// A list; numbered where the order matters.
    pub fn list(&mut self, items: &[String], numbered: bool) {
        if items.is_empty() {
            return;
        }
        let _ = writeln!(
            self.text,
            "#{}({})",
            if numbered { "enum" } else { "list" },
            strings(items)
        );
    }

    /// What to take care of, each an act.
    pub fn care(&mut self, word: &str, acts: &[String]) {
        if !acts.is_empty() {
            let _ = writeln!(self.text, "#care({}, ({}))", string(word), strings(acts));
        }
    }

    /// A table; `small` sets it as notes are.
    pub fn table(&mut self, columns: &[Column], rows: &[Vec<String>], small: bool) {
        self.tab(columns, rows, if small { ", size: note" } else { "" });
    }

    /// A table whose cells hold sentences: its rows stand apart.
    pub fn sentences(&mut self, columns: &[Column], rows: &[Vec<String>]) {
        self.tab(columns, rows, ", gap: 0.3 * row");
    }

    /// The same as small as notes are, for many columns.
    pub fn dense(&mut self, columns: &[Column], rows: &[Vec<String>]) {
        self.tab(columns, rows, ", size: note, gap: 0.3 * row");
    }

    fn tab(&mut self, columns: &[Column], rows: &[Vec<String>], manner: &str) {
        let widths: Vec<String> = columns
            .iter()
            .map(|column| {
                column
                    .share
                    .map_or("auto".to_owned(), |share| format!("{share}fr"))
            })
            .collect();
        let sides: Vec<&str> = columns
            .iter()
            .map(|column| if column.right { "true" } else { "false" })
            .collect();
        let heads: Vec<String> = columns.iter().map(|column| column.head.clone()).collect();
        let _ = write!(
            self.text,
            "#tab(({},), ({},), ({}), (",
            widths.join(", "),
            sides.join(", "),
            strings(&heads)
        );
        for row in rows {
            let cells: String = row
                .iter()
                .zip(columns)
                .map(|(cell, column)| match column.english {
                    true => format!("text(lang: \"en\", {}), ", string(cell)),
                    false => format!("{}, ", string(cell)),
                })
                .collect();
            let _ = write!(self.text, "({cells}), ");
        }
        let _ = writeln!(self.text, "){manner})");
    }

    /// A form: the first columns filled in, then boxes for a length, then a line for a remark.
    pub fn form(&mut self, heads: &[String], rows: &[Vec<String>], units: Units) {
        let boxes = match units {
            Units::Metres => "metric",
            Units::Feet => "imperial",
        };
        let filled = heads.len().saturating_sub(2);
        let widths = "18mm * grow, ".repeat(filled);
        let _ = write!(
            self.text,
            "#form(({widths}auto, 1fr), ({}), (",
            strings(heads)
        );
        for row in rows {
            let cells: String = row
                .iter()
                .map(|cell| {
                    if cell.is_empty() {
                        "blank(100%), ".to_owned()
                    } else {
                        format!("{}, ", string(cell))
                    }
                })
                .collect();
            let _ = write!(self.text, "({cells}{boxes}, blank(100%)), ");
        }
        self.text.push_str("))\n");
    }

    /// A table of lines to write on under the heads of its columns.
    pub fn ruled(&mut self, columns: &[Column], rows: usize) {
        let share = |column: &Column| format!("{}fr", column.share.unwrap_or(1));
        let widths: Vec<String> = columns.iter().map(share).collect();
        let heads: Vec<String> = columns.iter().map(|column| column.head.clone()).collect();
        let row = format!("({}), ", "ruled, ".repeat(columns.len()));
        let _ = writeln!(
            self.text,
            "#form(({},), ({}), ({}))",
            widths.join(", "),
            strings(&heads),
            row.repeat(rows)
        );
    }

    /// Names with a line after each to write on.
    pub fn fields(&mut self, names: &[String]) {
        let _ = writeln!(self.text, "#fields(({}))", strings(names));
    }

    /// A drawing on a sheet of its own size, to the edge.
    pub fn plate(&mut self, scene: &Scene, alt: &str) {
        let name = self.keep(scene);
        let _ = writeln!(
            self.text,
            "#page(width: {w}mm, height: {h}mm, margin: 0mm, footer: none)[#image({}, width: {w}mm, height: {h}mm, alt: {})]",
            string(&name),
            string(alt),
            w = scene.width,
            h = scene.height,
        );
    }

    /// A drawing in the text, true to size.
    pub fn figure(&mut self, scene: &Scene, alt: &str) {
        let name = self.keep(scene);
        let _ = writeln!(
            self.text,
            "#block(breakable: false, above: row, below: row, image({}, width: {}mm, height: {}mm, alt: {}))",
            string(&name),
            scene.width,
            scene.height,
            string(alt),
        );
    }

    /// Begins a new page.
    pub fn page_break(&mut self) {
        self.text.push_str("#pagebreak(weak: true)\n");
    }

    /// The typesetter's own words, for what no other part says; the user's go through
    /// [`string`] first.
    pub(crate) fn code(&mut self, code: &str) {
        self.text.push_str(code);
        self.text.push('\n');
    }

    /// Keeps a drawing; its name in the typesetter's language.
    pub(crate) fn keep(&mut self, scene: &Scene) -> String {
        let name = format!("figure-{}.svg", self.figures.len() + 1);
        self.figures.insert(name.clone(), svg::figure(scene));
        name
    }

    /// The finished paper.
    ///
    /// # Errors
    /// [`Fault`]: ours, never the user's.
    pub fn press(self) -> Result<Vec<u8>, Fault> {
        press(self.text, self.figures, &self.ident, &self.date)
    }
}

/// Words as a string of the typesetter's language.
pub fn string(words: &str) -> String {
    let mut out = String::with_capacity(words.len() + 2);
    out.push('"');
    for letter in face::printable(words).chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            letter => out.push(letter),
        }
    }
    out.push('"');
    out
}

/// A list's insides, with the comma that makes one string a list too.
fn strings(items: &[String]) -> String {
    items
        .iter()
        .map(|item| format!("{}, ", string(item)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::string;

    #[test]
    fn words_are_never_code() {
        assert_eq!(string("a \"b\" \\ #c\n"), "\"a \\\"b\\\" \\\\ #c\\n\"");
    }
}
