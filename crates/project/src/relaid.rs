//! `layout.toml` written again: what people wrote around it stays.
//!
//! Markings keep their order, comments and spelling of numbers; a value is touched only
//! where it changed by more than the file's last decimal. What is locked is never touched
//! and never goes.

use std::f64::consts::PI;

use note::{Note, Noted, Place, msg};
use toml_edit::{Array, ArrayOfTables, DocumentMut, Item, Table, Value, value};
use unit::Units;
use unit::parse;

use crate::read::layout::Marking;

/// The text of `layout.toml` with these markings: `old` is the text that stands there, or
/// nothing. Locked markings of the old text stay as they are; of the others, those of the
/// same name are changed, those without one go, and new ones are added at the end. `None`
/// where the old text is not TOML or its `marking` no list of tables: it is not written over.
pub fn write_layout(old: &str, markings: &[Marking], units: Units) -> Noted<Option<String>> {
    match relaid(old, markings, units) {
        Some(text) => Noted::quiet(Some(text)),
        None => {
            let at = Place::whole(&"layout.toml".into());
            let note = Note::error(at, msg!("layout-unread")).mend(msg!("layout-mend-first"));
            Noted {
                value: None,
                notes: vec![note],
            }
        }
    }
}

fn relaid(old: &str, markings: &[Marking], units: Units) -> Option<String> {
    let old = old.strip_prefix('\u{feff}').unwrap_or(old);
    let mut document: DocumentMut = old.parse().ok()?;
    let before = match document.remove("marking") {
        None => ArrayOfTables::new(),
        Some(item) => item.into_array_of_tables().ok()?,
    };
    let mut after = ArrayOfTables::new();
    let mut heading = String::new();
    let mut kept: Vec<String> = Vec::new();
    for mut table in before {
        let name = table
            .get("name")
            .and_then(Item::as_str)
            .unwrap_or_default()
            .to_owned();
        let locked = table.get("locked").and_then(Item::as_bool).unwrap_or(false);
        let wanted = markings.iter().find(|marking| marking.name == name);
        if !locked && wanted.is_none() {
            heading.push_str(remarks_of_the_file(&table));
            continue;
        }
        if let Some(marking) = wanted.filter(|_| !locked) {
            change(&mut table, marking, units);
        }
        if !heading.is_empty() {
            let prefix = format!("{heading}{}", prefix(&table));
            table.decor_mut().set_prefix(prefix);
            heading.clear();
        }
        kept.push(name);
        after.push(table);
    }
    for marking in markings
        .iter()
        .filter(|marking| !kept.contains(&marking.name))
    {
        let mut table = Table::new();
        let lead = if after.is_empty() && document.is_empty() {
            heading.as_str()
        } else {
            "\n"
        };
        table.decor_mut().set_prefix(lead.to_owned());
        heading.clear();
        change(&mut table, marking, units);
        after.push(table);
    }
    if !after.is_empty() {
        document.insert("marking", Item::ArrayOfTables(after));
    } else if !heading.is_empty() {
        let end = format!(
            "{heading}{}",
            document.trailing().as_str().unwrap_or_default()
        );
        document.set_trailing(end);
    }
    Some(document.to_string())
}

fn prefix(table: &Table) -> &str {
    table
        .decor()
        .prefix()
        .and_then(|prefix| prefix.as_str())
        .unwrap_or_default()
}

/// What stands above a marking and an empty line: that is said of the file, and stays when
/// the marking goes.
fn remarks_of_the_file(table: &Table) -> &str {
    let prefix = prefix(table);
    let (mut end, mut said) = (0, 0);
    for line in prefix.split_inclusive('\n') {
        end += line.len();
        if line.trim().is_empty() && !prefix[..end].trim().is_empty() {
            said = end;
        }
    }
    &prefix[..said]
}

/// Sets what differs.
fn change(table: &mut Table, marking: &Marking, units: Units) {
    text(table, "name", &marking.name);
    text(table, "family", &marking.family);
    let same_place = table.get("at").and_then(Item::as_array).is_some_and(|at| {
        at.len() == 2
            && at
                .iter()
                .zip(marking.at)
                .all(|(old, new)| same(metres(old, units), new))
    });
    if !same_place {
        let numbers = marking
            .at
            .iter()
            .map(|metres| decimal(in_units(*metres, units), places(units)));
        set(table, "at", Value::Array(numbers.collect::<Array>()));
    }
    let turn = marking.turn * 180.0 / PI;
    if !table
        .get("turn")
        .and_then(Item::as_value)
        .is_some_and(|old| same(number(old), turn))
    {
        set(table, "turn", decimal(turn, 6));
    }
    truth(table, "mirrored", marking.mirrored);
    truth(table, "locked", marking.locked);
    if marking.lengths.is_empty() {
        return;
    }
    let lengths = table
        .entry("lengths")
        .or_insert_with(|| Item::Table(Table::new()));
    if lengths.as_table_like().is_none() {
        *lengths = Item::Table(Table::new());
    }
    let Some(lengths) = lengths.as_table_like_mut() else {
        return;
    };
    let gone: Vec<String> = lengths
        .iter()
        .map(|(key, _)| key.to_owned())
        .filter(|key| marking.lengths.iter().all(|(name, _)| name != key))
        .collect();
    for key in gone {
        lengths.remove(&key);
    }
    for (name, new) in &marking.lengths {
        let old = lengths
            .get(name)
            .and_then(Item::as_value)
            .and_then(|old| metres(old, units));
        if !same(old, *new) {
            set(lengths, name, decimal(in_units(*new, units), places(units)));
        }
    }
}

/// Puts a value where another stood, with the comment beside it, or at the end.
fn set(table: &mut dyn toml_edit::TableLike, key: &str, mut new: Value) {
    match table.get_mut(key).and_then(Item::as_value_mut) {
        Some(old) => {
            *new.decor_mut() = old.decor().clone();
            *old = new;
        }
        None => _ = table.insert(key, value(new)),
    }
}

fn text(table: &mut Table, key: &str, new: &str) {
    if table.get(key).and_then(Item::as_str) != Some(new) {
        set(table, key, new.into());
    }
}

/// `false` is not written where nothing stands.
fn truth(table: &mut Table, key: &str, new: bool) {
    let old = table.get(key).and_then(Item::as_bool);
    if old.unwrap_or(false) != new {
        set(table, key, new.into());
    }
}

/// Metres or degrees: half the last decimal that we write.
const SAME: f64 = 5e-7;

fn same(old: Option<f64>, new: f64) -> bool {
    old.is_some_and(|old| (old - new).abs() <= SAME)
}

fn number(old: &Value) -> Option<f64> {
    old.as_float()
        .or_else(|| old.as_integer().map(|whole| whole as f64))
}

fn metres(old: &Value, units: Units) -> Option<f64> {
    match old.as_str() {
        Some(text) => parse::length(text, units).ok(),
        None => number(old).map(|number| number * one(units)),
    }
}

/// Metres in one of the project's unit.
fn one(units: Units) -> f64 {
    match units {
        Units::Metres => 1.0,
        Units::Feet => unit::FOOT,
    }
}

fn in_units(metres: f64, units: Units) -> f64 {
    metres / one(units)
}

/// A foot needs one more, so that a micrometre comes back.
fn places(units: Units) -> i32 {
    match units {
        Units::Metres => 6,
        Units::Feet => 7,
    }
}

/// The shortest number that is right to so many decimals; a whole one without a point.
fn decimal(number: f64, places: i32) -> Value {
    let scale = libm::pow(10.0, f64::from(places));
    let rounded = (number * scale).round() / scale + 0.0;
    if rounded.fract() == 0.0 && rounded.abs() < 1e9 {
        Value::from(rounded as i64)
    } else {
        Value::from(rounded)
    }
}

#[cfg(test)]
mod tests {
    use ledger::Ledger;
    use note::Note;
    use proptest::prelude::*;

    use super::*;
    use crate::read::files::Source;
    use crate::read::layout::{Makers, layout};

    fn read(text: &str, units: Units) -> (Vec<Marking>, Vec<Note>) {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let makers = Makers {
            figures: &[],
            drawn: &std::collections::BTreeMap::new(),
            ground: marking::Ground::Asphalt,
            ledger: &ledger,
        };
        let mut notes = Vec::new();
        let mut markings =
            layout(&Source::new("layout.toml", text), units, makers, &mut notes).markings;
        markings.iter_mut().for_each(|marking| marking.place = None);
        (markings, notes)
    }

    fn brook(name: &str, at: [f64; 2], degrees: f64, locked: bool) -> Marking {
        let family = marking::family("brook").expect("a brook");
        Marking {
            name: name.into(),
            family: "brook".into(),
            at,
            turn: degrees * PI / 180.0,
            mirrored: false,
            locked,
            lengths: family
                .lengths()
                .iter()
                .map(|spec| (spec.name.to_owned(), spec.default))
                .collect(),
            place: None,
        }
    }

    const OLD: &str = "# Where things lie. Ask Ms T. before you move the first one.\n\n\
        # by the door\n[[marking]]\nname = \"brook1\"   # the old one\nfamily = \"brook\"\nat = [\"7 m 20 cm\", 4.10] # square to the wall\n\
        turn = 30\nlocked = true\n[marking.lengths]\nnarrow = \"20 cm\"\n\n\
        # to go\n[[marking]]\nname = \"brook2\"\nfamily = \"brook\"\nat = [1, 1]\n\n\
        # the long one\n[[marking]]\nname = \"brook3\"\nfamily = \"brook\"\nat = [12, 2.50] # near the gate\nturn = 90.0\n\
        lengths = { narrow = 0.30, length = \"250 cm\" } # measured\n\n# the end\n";

    #[test]
    fn what_people_wrote_stays() {
        let mut third = brook("brook3", [12.0, 3.25], 90.0, false);
        let length = third
            .lengths
            .iter_mut()
            .find(|(name, _)| name == "length")
            .expect("a length");
        length.1 = 2.5;
        let moved = [
            brook("brook1", [0.0, 0.0], 0.0, false),
            third,
            brook("new", [5.123_456_7, -1.0], 45.0, false),
        ];
        let text = write_layout(OLD, &moved, Units::Metres)
            .value
            .expect("TOML");
        for kept in [
            "# Where things lie. Ask Ms T. before you move the first one.\n\n# by the door\n[[marking]]\n",
            "name = \"brook1\"   # the old one\n",
            "at = [\"7 m 20 cm\", 4.10] # square to the wall\nturn = 30\nlocked = true\n",
            "[marking.lengths]\nnarrow = \"20 cm\"\n",
            "# the long one\n[[marking]]\nname = \"brook3\"\n",
            "at = [12, 3.25] # near the gate\nturn = 90.0\n",
            "length = \"250 cm\"",
            "} # measured\n",
            "name = \"new\"\nfamily = \"brook\"\nat = [5.123457, -1]\nturn = 45\n",
            "# the end\n",
        ] {
            assert!(text.contains(kept), "{kept:?} is not in\n{text}");
        }
        assert!(
            !text.contains("brook2") && !text.contains("# to go"),
            "{text}"
        );
        let order =
            ["brook1", "brook3", "new"].map(|name| text.find(&format!("name = \"{name}\"")));
        assert!(order.is_sorted() && order[0].is_some(), "{text}");
        // Written again, it is the same text.
        assert_eq!(
            write_layout(&text, &moved, Units::Metres)
                .value
                .expect("TOML"),
            text
        );
    }

    #[test]
    fn what_is_said_of_the_file_outlives_its_first_marking() {
        let old = "# Of the file.\n\n# Of the brook.\n[[marking]]\nname = \"a\"\nfamily = \"brook\"\nat = [1, 1]\n";
        for left in [&[][..], &[brook("b", [1.0, 2.0], 0.0, false)]] {
            let text = write_layout(old, left, Units::Metres).value.expect("TOML");
            assert!(
                text.starts_with("# Of the file.\n") && !text.contains("Of the brook"),
                "{text}"
            );
            assert_eq!(read(&text, Units::Metres), (left.to_vec(), Vec::new()));
            let windows = write_layout(&old.replace('\n', "\r\n"), left, Units::Metres)
                .value
                .expect("TOML");
            assert!(
                windows.contains("# Of the file.") && !windows.contains("Of the brook"),
                "{windows}"
            );
        }
    }

    #[test]
    fn an_odd_file_is_refused_and_not_lost() {
        for odd in ["[[marking]\n", "marking = 3\n"] {
            let noted = write_layout(odd, &[], Units::Metres);
            assert_eq!(
                (noted.value, noted.notes[0].what.key),
                (None, "layout-unread"),
                "{odd}"
            );
        }
    }

    proptest! {
        /// Whatever stands in the file, the answer is TOML that says the same when written
        /// again, or a refusal.
        #[test]
        fn any_file_is_written_again_or_refused(at in 0..OLD.len(), end in 0..OLD.len(), with in "[\\[\\]{}=\"'#.a-z0-9\n ]{0,6}") {
            let (at, end) = (at.min(end), at.max(end));
            prop_assume!(OLD.is_char_boundary(at) && OLD.is_char_boundary(end));
            let odd = format!("{}{with}{}", &OLD[..at], &OLD[end..]);
            let markings = [brook("brook1", [1.0, 2.0], 0.0, false), brook("brook3", [3.0, 4.0], 10.0, true)];
            if let Some(text) = write_layout(&odd, &markings, Units::Metres).value {
                prop_assert!(text.parse::<DocumentMut>().is_ok(), "{odd}\nbecame\n{text}");
                let again = write_layout(&text, &markings, Units::Metres).value;
                prop_assert_eq!(again, Some(text));
            }
        }

        /// What is written is read as it was meant, to the micrometre and microdegree, in
        /// either unit and over any older file.
        #[test]
        fn what_is_written_comes_back(
            all in prop::collection::vec((-100.0..100.0_f64, -100.0..100.0_f64, 0.0..360.0_f64, any::<bool>(), any::<bool>()), 0..6),
            feet in any::<bool>(),
            over in any::<bool>(),
        ) {
            let units = if feet { Units::Feet } else { Units::Metres };
            let micro = |value: f64| (value * 1e6).round() / 1e6;
            let markings: Vec<Marking> = all.iter().enumerate().map(|(nth, (x, y, turn, mirrored, locked))| Marking {
                mirrored: *mirrored,
                ..brook(&format!("b{nth}"), [micro(*x), micro(*y)], micro(*turn), *locked)
            }).collect();
            let old = if over { "[[marking]]\nname = \"b1\"\nfamily = \"brook\"\nat = [3, 3]\nmirrored = false\n" } else { "" };
            let text = write_layout(old, &markings, units).value.expect("TOML");
            let (back, notes) = read(&text, units);
            prop_assert!(notes.is_empty(), "{notes:?}\n{text}");
            prop_assert_eq!(back.len(), markings.len());
            for meant in &markings {
                let back = back.iter().find(|back| back.name == meant.name).expect("by name");
                let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
                prop_assert!(near(back.at[0], meant.at[0]) && near(back.at[1], meant.at[1]), "{text}");
                prop_assert!(near(back.turn, meant.turn));
                prop_assert_eq!((back.mirrored, back.locked), (meant.mirrored, meant.locked));
                prop_assert!(back.lengths.iter().zip(&meant.lengths).all(|(a, b)| a.0 == b.0 && near(a.1, b.1)));
            }
        }
    }
}
