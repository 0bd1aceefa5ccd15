//! `children.csv`: who plays, by code and birth month, never by name.

use std::collections::BTreeMap;

use children::{Entry, Means, Sex, Side};
use note::{Note, Place, msg};
use unit::Units;

use crate::read::cells::{self, Row};
use crate::read::files::Source;
use crate::read::surveyed::twice;
use crate::read::table::{At, no_length, not_a_word};
use crate::read::tape::{above_zero, is_name, name};
use note::nearest;

const NEEDED: [&str; 2] = ["id", "born"];
const WANTED: [&str; 9] = [
    "sex",
    "group",
    "height",
    "foot",
    "jump_best",
    "hops_right",
    "hops_left",
    "less_used",
    "means",
];

/// Columns that would make a child known outside the centre.
const PERSONAL: [&str; 14] = [
    "name",
    "first_name",
    "last_name",
    "surname",
    "full_name",
    "birthday",
    "birth_date",
    "address",
    "nombre",
    "apellido",
    "apellidos",
    "nacimiento",
    "fecha_nacimiento",
    "direccion",
];

/// The file.
#[derive(Clone, Debug)]
pub struct Class {
    /// Children whose row could be read.
    pub entries: Vec<Entry>,
    /// Every code that stands there, whether its row could be read or not; `None` where the
    /// table could not, so that nothing is said of who is in it.
    pub codes: Option<Vec<String>>,
}

/// Reads the rows; those that cannot be read are told and left out.
pub fn class(source: &Source, units: Units, notes: &mut Vec<Note>) -> Class {
    let before = notes.len();
    let Some(cells) = cells::read(source, &NEEDED, &WANTED, notes) else {
        notes.iter_mut().skip(before).for_each(keep_private);
        return Class {
            entries: Vec::new(),
            codes: None,
        };
    };
    let mut ids = Vec::new();
    let mut entries = Vec::new();
    for row in &cells.rows {
        if let Some(id) = row.get("id").filter(|id| is_name(&id.value)) {
            ids.push(id.clone());
        }
        entries.extend(entry(row, units, notes));
    }
    twice(ids.iter(), notes);
    Class {
        entries,
        codes: Some(ids.into_iter().map(|id| id.value).collect()),
    }
}

/// A column of names or birthdays is refused for its reason, not for its spelling.
fn keep_private(note: &mut Note) {
    let column = note.what.facts.iter().find_map(|fact| match fact {
        ("column", note::Fact::Text(column)) => Some(column.clone()),
        _ => None,
    });
    let Some(column) = column.filter(|_| note.what.key == "column-unknown") else {
        return;
    };
    let plain = column.to_lowercase().replace([' ', '-'], "_");
    if PERSONAL.contains(&plain.as_str()) {
        note.what = msg!("child-column-personal", column = column);
        note.expected = Some(msg!("child-want-code"));
        note.mend = Some(msg!("child-column-out"));
    }
}

fn entry(row: &Row, units: Units, notes: &mut Vec<Note>) -> Option<Entry> {
    let before = notes.len();
    let id = row.need("id", notes).and_then(|cell| code(cell, notes));
    let born = row.need("born", notes).and_then(|cell| month(cell, notes));
    let sexes = [("f", Sex::Female), ("m", Sex::Male)];
    let sides = [("left", Side::Left), ("right", Side::Right)];
    let means = [
        ("feet", Means::Feet),
        ("walker", Means::Walker),
        ("wheels", Means::Wheels),
        ("held", Means::Held),
    ];
    let sex = word(row, "sex", &sexes, notes);
    let less_used = word(row, "less_used", &sides, notes);
    let means = word(row, "means", &means, notes).unwrap_or(Means::Feet);
    let mut length = |column| {
        row.get(column)
            .and_then(|cell| above_zero(cell, column, units, notes))
    };
    let (height, foot, jump_best) = (length("height"), length("foot"), length("jump_best"));
    let mut hops = |column| {
        row.get(column)
            .and_then(|cell| from_zero(cell, units, notes))
    };
    let (hops_right, hops_left) = (hops("hops_right"), hops("hops_left"));
    if notes.len() > before {
        return None;
    }
    let places = NEEDED
        .iter()
        .chain(&WANTED)
        .filter_map(|column| Some(((*column).to_owned(), row.get(column)?.at.clone())))
        .collect::<BTreeMap<String, Place>>();
    let metres = |length: Option<At<f64>>| length.map(|length| length.value);
    Some(Entry {
        sex,
        group: row.get("group").map(|group| group.value.clone()),
        height: metres(height),
        foot: metres(foot),
        jump_best: metres(jump_best),
        hops_right: metres(hops_right),
        hops_left: metres(hops_left),
        less_used,
        means,
        places,
        ..Entry::new(id?.value, born?)
    })
}

/// A pseudonymous code; a name with a blank is refused for the child's sake.
fn code(cell: &At<String>, notes: &mut Vec<Note>) -> Option<At<String>> {
    if is_name(&cell.value) {
        return Some(cell.clone());
    }
    let blank = cell.value.split_whitespace().nth(1).is_some();
    let people = blank
        && cell
            .value
            .chars()
            .all(|mark| mark.is_alphabetic() || " .'-\u{2019}".contains(mark));
    if !people {
        return name(cell, notes);
    }
    notes.push(
        Note::error(cell.at.clone(), msg!("child-name"))
            .expected(msg!("child-want-code"))
            .mend(msg!("child-list-apart")),
    );
    None
}

/// Years in which a child of a preschool can be born, whenever the file is read.
const YEARS: std::ops::RangeInclusive<i32> = 1990..=2199;

/// A birth month, `2021-03`; a day is refused, since nobody needs it.
fn month(cell: &At<String>, notes: &mut Vec<Note>) -> Option<(i32, u8)> {
    let parts: Vec<&str> = cell.value.split('-').map(str::trim).collect();
    let digits = |part: &str, count: usize| {
        part.len() == count && part.bytes().all(|byte| byte.is_ascii_digit())
    };
    let (year, month) = match parts.as_slice() {
        [year, month] if digits(year, 4) && digits(month, 2) => (year, month),
        [year, month, day] if digits(year, 4) && digits(month, 2) && digits(day, 2) => {
            notes.push(
                Note::error(cell.at.clone(), msg!("child-born-day"))
                    .mend(msg!("child-born-write", month = format!("{year}-{month}"))),
            );
            return None;
        }
        _ => {
            notes.push(
                Note::error(cell.at.clone(), msg!("child-born-odd", found = &cell.value))
                    .expected(msg!("child-want-month")),
            );
            return None;
        }
    };
    match (year.parse::<i32>(), month.parse::<u8>()) {
        (Ok(year), Ok(month)) if YEARS.contains(&year) && (1..=12).contains(&month) => {
            Some((year, month))
        }
        _ => {
            notes.push(
                Note::error(cell.at.clone(), msg!("child-born-odd", found = &cell.value))
                    .expected(msg!("child-want-month")),
            );
            None
        }
    }
}

/// A word of a list, capitals or not.
fn word<T: Copy>(
    row: &Row,
    column: &'static str,
    words: &[(&str, T)],
    notes: &mut Vec<Note>,
) -> Option<T> {
    let cell = row.get(column)?;
    let lower = cell.value.to_lowercase();
    let found = words
        .iter()
        .find(|(word, _)| *word == lower)
        .map(|(_, value)| *value);
    if found.is_none() {
        notes.push(not_a_word(
            cell,
            column,
            words.iter().map(|(word, _)| *word),
        ));
    }
    found
}

/// Five hops: 0 where the child cannot yet.
fn from_zero(cell: &At<String>, units: Units, notes: &mut Vec<Note>) -> Option<At<f64>> {
    match unit::parse::length(&cell.value, units) {
        Ok(value) if value >= 0.0 => Some(At {
            value,
            at: cell.at.clone(),
        }),
        Ok(_) => {
            notes.push(
                Note::error(cell.at.clone(), msg!("child-hops-below"))
                    .expected(msg!("child-want-hops")),
            );
            None
        }
        Err(fault) => {
            notes.push(no_length(&fault, cell.at.clone()));
            None
        }
    }
}

/// Tells where a file speaks of a child that is in no other; of codes that could not be
/// read nothing is said.
pub fn known(child: &At<String>, codes: Option<&[String]>, notes: &mut Vec<Note>) {
    let Some(codes) = codes.filter(|codes| !codes.contains(&child.value)) else {
        return;
    };
    let note = Note::error(child.at.clone(), msg!("child-nobody", child = &child.value));
    notes.push(
        match nearest(&child.value, codes.iter().map(String::as_str)) {
            Some(near) => note.mend(msg!("did-you-mean", near = near)),
            None if codes.is_empty() => note.mend(msg!("child-write-class")),
            None => note.expected(msg!("child-want-known")),
        },
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str) -> (Vec<Entry>, Vec<(&'static str, String)>) {
        let source = Source::new("children.csv", text);
        let mut notes = Vec::new();
        let entries = class(&source, Units::Metres, &mut notes).entries;
        let told = notes.iter().map(|note| {
            let at = note.at.as_ref().expect("a place");
            (note.what.key, text[at.start..at.end].to_owned())
        });
        (entries, told.collect())
    }

    #[test]
    fn a_row_is_read_in_any_order_of_columns() {
        let text = "Born,id,hops_left,hops_right,jump_best,less_used,means,sex,group,foot\n\
                    2022-06, stint ,0,98 cm,\"0,71 m\",LEFT,wheels,m,middle,165 mm\n2021-12,knot\n";
        let (entries, told) = check(text);
        assert_eq!(told, []);
        let [stint, knot] = entries.as_slice() else {
            panic!("two children")
        };
        assert_eq!((stint.id.as_str(), stint.born), ("stint", (2022, 6)));
        assert_eq!(
            (stint.hops_left, stint.hops_right, stint.jump_best),
            (Some(0.0), Some(0.98), Some(0.71))
        );
        assert_eq!(
            (stint.less_used, stint.means, stint.sex),
            (Some(Side::Left), Means::Wheels, Some(Sex::Male))
        );
        assert_eq!(
            (stint.foot, stint.height, stint.group.as_deref()),
            (Some(0.165), None, Some("middle"))
        );
        let at = stint.place("jump_best").expect("a place");
        assert_eq!(&text[at.start..at.end], "0,71 m");
        assert_eq!(
            *knot,
            Entry {
                places: knot.places.clone(),
                ..Entry::new("knot", (2021, 12))
            }
        );
    }

    #[test]
    fn nobody_is_named_and_nobody_has_a_birthday() {
        for (text, key, at) in [
            (
                "id,born\nAda Lovelace,2021-03\n",
                "child-name",
                "Ada Lovelace",
            ),
            (
                "id,born\nMaría-José O\u{2019}Neill,2021-03\n",
                "child-name",
                "María-José O\u{2019}Neill",
            ),
            ("id,born\n7,2021-03\n", "name-odd", "7"),
            ("id,born\nwren,2021-03-14\n", "child-born-day", "2021-03-14"),
            ("id,born\nwren,14/3/2021\n", "child-born-odd", "14/3/2021"),
            ("id,born\nwren,2021-13\n", "child-born-odd", "2021-13"),
            (
                "id,born,name\nwren,2021-03,Ada\n",
                "child-column-personal",
                "name",
            ),
            (
                "id,born,Birth date\nwren,2021-03,x\n",
                "child-column-personal",
                "Birth date",
            ),
            (
                "id,born\nwren,2021-03\nwren,2021-04\n",
                "name-twice",
                "wren",
            ),
            (
                "id,born,means\nwren,2021-03,weels\n",
                "word-unknown",
                "weels",
            ),
            (
                "id,born,hops_left\nwren,2021-03,-1\n",
                "child-hops-below",
                "-1",
            ),
        ] {
            assert_eq!(check(text).1, [(key, at.to_owned())], "{text}");
        }
    }
}
