//! `trials.csv`: tries on a marking, or on a figure chalked for the day: how many, how many good.

use note::{Note, Place, msg};
use unit::Units;

use crate::read::cells::{self, Row};
use crate::read::class::known;
use crate::read::files::Source;
use crate::read::layout::{Makers, Marking, at_fault, faults};
use crate::read::programme::is_family;
use crate::read::table::{At, no_length};
use note::nearest;

/// One row.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// The child's code.
    pub child: String,
    /// What it tried.
    pub on: On,
    /// A gait and its leading foot, as `hop:R`; `None` where the figure has but one.
    pub activity: Option<String>,
    /// Tries.
    pub n: u32,
    /// Good ones.
    pub good: u32,
    /// The row.
    pub place: Option<Place>,
}

/// What a child tried.
#[derive(Clone, Debug, PartialEq)]
pub enum On {
    /// A marking of the layout, by name.
    Marking(String),
    /// A family at the lengths of the day, metres, all of them.
    Figure {
        /// Its name.
        family: String,
        /// In the family's order.
        lengths: Vec<(String, f64)>,
    },
}

/// What rows may speak of.
#[derive(Clone, Copy, Debug)]
pub struct Known<'a> {
    /// Codes of children, where the class could be read.
    pub children: Option<&'a [String]>,
    /// Names of markings, where the layout could be read.
    pub named: Option<&'a [String]>,
    /// The markings that could.
    pub markings: &'a [Marking],
    /// Families.
    pub makers: Makers<'a>,
}

/// Reads the rows; those that cannot be read are told and left out.
pub fn trials(source: &Source, units: Units, of: Known, notes: &mut Vec<Note>) -> Vec<Trial> {
    let wanted = ["marking", "figure", "lengths", "activity"];
    let Some(cells) = cells::read(source, &["child", "n", "good"], &wanted, notes) else {
        return Vec::new();
    };
    cells
        .rows
        .iter()
        .filter_map(|row| trial(row, units, of, source, notes))
        .collect()
}

fn trial(
    row: &Row,
    units: Units,
    of: Known,
    source: &Source,
    notes: &mut Vec<Note>,
) -> Option<Trial> {
    let before = notes.len();
    let child = row.need("child", notes);
    if let Some(child) = child {
        known(child, of.children, notes);
    }
    let n = row
        .need("n", notes)
        .and_then(|cell| count(cell, "n", (1, MOST), notes));
    let good = row
        .need("good", notes)
        .and_then(|cell| count(cell, "good", (0, n.unwrap_or(MOST)), notes));
    let on = match (row.get("marking"), row.get("figure")) {
        (Some(marking), None) => of_layout(marking, of.named, notes),
        (None, Some(figure)) => of_day(row, figure, units, of.makers, source, notes),
        _ => {
            notes.push(
                Note::error(row.at.clone(), msg!("trial-one")).expected(msg!("trial-want-one")),
            );
            None
        }
    };
    if let (Some(lengths), None) = (row.get("lengths"), row.get("figure")) {
        notes.push(
            Note::error(lengths.at.clone(), msg!("trial-lengths-spare"))
                .mend(msg!("trial-lengths-out")),
        );
    }
    let activity = match &on {
        Some(on) => activity(row, on, of.markings, of.makers, notes),
        None => None,
    };
    if notes.len() > before {
        return None;
    }
    Some(Trial {
        child: child?.value.clone(),
        on: on?,
        activity,
        n: n?,
        good: good?,
        place: Some(row.at.clone()),
    })
}

/// Tries of one row; more is a slip.
const MOST: u32 = 1000;

fn count(
    cell: &At<String>,
    column: &'static str,
    range: (u32, u32),
    notes: &mut Vec<Note>,
) -> Option<u32> {
    match cell.value.parse::<u32>() {
        Ok(count) if (range.0..=range.1).contains(&count) => Some(count),
        _ => {
            let number = |count: u32| note::Fact::Number(f64::from(count), 0);
            notes.push(
                Note::error(
                    cell.at.clone(),
                    msg!("trial-count", column = column, found = &cell.value),
                )
                .expected(msg!(
                    "trial-want-count",
                    low = number(range.0),
                    high = number(range.1)
                )),
            );
            None
        }
    }
}

fn of_layout(marking: &At<String>, named: Option<&[String]>, notes: &mut Vec<Note>) -> Option<On> {
    let Some(named) = named.filter(|named| !named.contains(&marking.value)) else {
        return Some(On::Marking(marking.value.clone()));
    };
    let note = Note::error(
        marking.at.clone(),
        msg!("trial-marking", marking = &marking.value),
    );
    notes.push(
        match nearest(&marking.value, named.iter().map(String::as_str)) {
            Some(near) => note.mend(msg!("did-you-mean", near = near)),
            None => note.mend(msg!("trial-as-figure")),
        },
    );
    None
}

/// A figure of the day: all its lengths stand there, for what was chalked is no default.
fn of_day(
    row: &Row,
    figure: &At<String>,
    units: Units,
    makers: Makers,
    source: &Source,
    notes: &mut Vec<Note>,
) -> Option<On> {
    if !is_family(figure, makers.figures, notes) {
        return None;
    }
    let specs = makers.family(&figure.value)?.lengths();
    let written = match row.get("lengths") {
        Some(cell) => lengths(cell, units, source, notes)?,
        None => Vec::new(),
    };
    let before = notes.len();
    let names = || specs.iter().map(|spec| spec.name);
    for (name, _) in &written {
        if !names().any(|known| known == name.value) {
            let note = Note::error(
                name.at.clone(),
                msg!(
                    "trial-length-unknown",
                    length = &name.value,
                    family = &figure.value
                ),
            );
            notes.push(match nearest(&name.value, names()) {
                Some(near) => note.mend(msg!("did-you-mean", near = near)),
                None => note.expected(msg!(
                    "one-of",
                    names = names().map(str::to_owned).collect::<Vec<_>>()
                )),
            });
        }
    }
    if notes.len() > before {
        return None;
    }
    let find = |name: &str| written.iter().find(|(written, _)| written.value == name);
    let missing: Vec<String> = names()
        .filter(|name| find(name).is_none())
        .map(str::to_owned)
        .collect();
    if !missing.is_empty() {
        let example = missing
            .iter()
            .map(|name| format!("{name}=..."))
            .collect::<Vec<_>>()
            .join("; ");
        notes.push(
            Note::error(
                row.get("lengths")
                    .map_or(&figure.at, |cell| &cell.at)
                    .clone(),
                msg!("trial-lengths-missing", names = missing),
            )
            .mend(msg!("trial-lengths-add", example = example)),
        );
        return None;
    }
    let values: Vec<f64> = names()
        .filter_map(|name| find(name).map(|(_, metres)| metres.value))
        .collect();
    for fault in faults(&figure.value, &values, makers) {
        let (what, expected) = fault.messages(&figure.value);
        let at = at_fault(&fault)
            .and_then(find)
            .map_or(&figure.at, |(_, metres)| &metres.at);
        notes.push(Note::error(at.clone(), what).expected(expected));
    }
    let lengths = names().map(str::to_owned).zip(values).collect();
    Some(On::Figure {
        family: figure.value.clone(),
        lengths,
    })
}

/// `narrow=20 cm; wide=0.75` as names and metres.
fn lengths(
    cell: &At<String>,
    units: Units,
    source: &Source,
    notes: &mut Vec<Note>,
) -> Option<Vec<(At<String>, At<f64>)>> {
    let before = notes.len();
    let mut lengths = Vec::new();
    let mut from = cell.at.start;
    for part in cell.value.split(';') {
        // A quoted cell may hold doubled quotes, as in 5'4""; then the whole cell is shown.
        let exact = source.text.get(from..from + part.len()) == Some(part);
        let at = if exact {
            source.place(from, from + part.len())
        } else {
            cell.at.clone()
        };
        from += part.len() + 1;
        if part.trim().is_empty() {
            continue;
        }
        let Some((name, metres)) = part.split_once('=') else {
            notes.push(
                Note::error(at, msg!("trial-lengths-odd", found = part.trim()))
                    .expected(msg!("trial-want-lengths")),
            );
            continue;
        };
        match unit::parse::length(metres, units) {
            Ok(value) => lengths.push((
                At {
                    value: name.trim().to_owned(),
                    at: at.clone(),
                },
                At {
                    value: (value * 1e6).round() / 1e6,
                    at,
                },
            )),
            Err(fault) => notes.push(no_length(&fault, at)),
        }
    }
    (notes.len() == before).then_some(lengths)
}

/// What was done on the figure: said, or the only thing that one does there.
fn activity(
    row: &Row,
    on: &On,
    markings: &[Marking],
    makers: Makers,
    notes: &mut Vec<Note>,
) -> Option<String> {
    let family = match on {
        On::Figure { family, .. } => family,
        On::Marking(name) => &markings.iter().find(|one| one.name == *name)?.family,
    };
    let family = makers.family(family);
    let mut all: Vec<String> = Vec::new();
    for gait in family.map_or(&[][..], |family| family.activities()) {
        all.push((*gait).to_owned());
        if SIDED.contains(gait) {
            all.extend(["R", "L"].map(|side| format!("{gait}:{side}")));
        }
    }
    let Some(cell) = row.get("activity") else {
        if family.is_some_and(|family| family.activities().len() > 1) {
            notes.push(
                Note::error(row.at.clone(), msg!("trial-activity-unsaid"))
                    .expected(msg!("one-of", names = all)),
            );
        }
        return None;
    };
    // What is done on a drawing that cannot be used is not known.
    if family.is_none() || all.contains(&cell.value) {
        return Some(cell.value.clone());
    }
    let note = Note::error(
        cell.at.clone(),
        msg!("trial-activity", activity = &cell.value),
    );
    notes.push(note.expected(msg!("one-of", names = all)));
    None
}

/// Gaits with a leading foot.
const SIDED: [&str; 4] = ["hop", "leap", "gallop", "slide"];

#[cfg(test)]
mod tests {
    use ledger::Ledger;

    use super::*;
    use crate::read::layout::layout;

    fn check(rows: &str) -> (Vec<Trial>, Vec<(&'static str, String)>) {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let makers = Makers {
            figures: &[],
            drawn: &std::collections::BTreeMap::new(),
            ground: marking::Ground::Asphalt,
            ledger: &ledger,
        };
        let text = "[[marking]]\nname = \"b\"\nfamily = \"brook\"\nat = [0, 0]\n[[marking]]\nname = \"p\"\nfamily = \"pair\"\nat = [5, 0]\n";
        let mut notes = Vec::new();
        let laid = layout(
            &Source::new("layout.toml", text),
            Units::Metres,
            makers,
            &mut notes,
        );
        assert!(notes.is_empty() && laid.markings.len() == 2);
        let text = format!("child,marking,figure,lengths,activity,n,good\n{rows}\n");
        let source = Source::new("trials.csv", &text);
        let children = ["wren".to_owned(), "lark".to_owned()];
        let of = Known {
            children: Some(&children),
            named: laid.names.as_deref(),
            markings: &laid.markings,
            makers,
        };
        let read = trials(&source, Units::Metres, of, &mut notes);
        let told = notes.iter().map(|note| {
            let at = note.at.as_ref().expect("a place");
            (note.what.key, text[at.start..at.end].to_owned())
        });
        (read, told.collect())
    }

    #[test]
    fn tries_on_a_marking_and_on_a_figure_of_the_day() {
        let (read, told) = check(
            "wren,b,,,leap:R,5,3\nlark,p,,,,4,0\nwren,,brook,narrow=20 cm; wide=0.75 ;length=3,jump,10,10",
        );
        assert_eq!(told, []);
        assert_eq!(read.len(), 3);
        assert_eq!(
            (read[0].on.clone(), read[0].activity.as_deref()),
            (On::Marking("b".into()), Some("leap:R"))
        );
        assert_eq!(
            (read[0].n, read[0].good, read[1].activity.clone()),
            (5, 3, None)
        );
        let lengths = vec![
            ("narrow".to_owned(), 0.2),
            ("wide".to_owned(), 0.75),
            ("length".to_owned(), 3.0),
        ];
        assert_eq!(
            read[2].on,
            On::Figure {
                family: "brook".into(),
                lengths
            }
        );
    }

    #[test]
    fn slips_are_told_where_they_stand() {
        for (row, key, at) in [
            ("wrem,p,,,,4,0", "child-nobody", "wrem"),
            ("wren,q,,,,4,0", "trial-marking", "q"),
            ("wren,p,,,,4,5", "trial-count", "5"),
            ("wren,p,,,,0,0", "trial-count", "0"),
            ("wren,,,,,4,0", "trial-one", "wren,,,,,4,0"),
            ("wren,p,brook,,,4,0", "trial-one", "wren,p,brook,,,4,0"),
            ("wren,p,,wide=1,,4,0", "trial-lengths-spare", "wide=1"),
            ("wren,b,,,,4,0", "trial-activity-unsaid", "wren,b,,,,4,0"),
            ("wren,b,,,skip,4,0", "trial-activity", "skip"),
            (
                "wren,,brook,narrow=0.2;wide=0.7,jump,4,0",
                "trial-lengths-missing",
                "narrow=0.2;wide=0.7",
            ),
            (
                "wren,,brook,narrow=0.2;wde=0.7;length=3,jump,4,0",
                "trial-length-unknown",
                "wde=0.7",
            ),
            (
                "wren,,brook,narrow=0.2;wide 0.7;length=3,jump,4,0",
                "trial-lengths-odd",
                "wide 0.7",
            ),
            (
                "wren,,brook,narrow=0.2;wide=7 kg;length=3,jump,4,0",
                "length-unit",
                "wide=7 kg",
            ),
            (
                "wren,,brook,narrow=0.2;wide=70;length=3,jump,4,0",
                "marking-range",
                "wide=70",
            ),
        ] {
            assert_eq!(check(row).1, [(key, at.to_owned())], "{row}");
        }
    }
}
