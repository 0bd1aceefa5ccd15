//! `overrides.toml`: any figure of a child, set by people who know it better.
//!
//! ```toml
//! [wren]
//! foot = "15.5 cm"
//! [wren.hop]
//! m = "32 cm"
//! can = 0.9
//! ```

use children::{Override, Skill, Trait};
use note::{Note, msg};
use toml::de::DeValue;
use unit::Units;

use crate::read::class::known;
use crate::read::files::Source;
use crate::read::table::{self, At, Desk, Table};

/// Keys of a child, and of one of its skills, with what each sets.
const BODY: [(&str, Trait); 5] = [
    ("height", Trait::Stature),
    ("foot", Trait::Foot),
    ("scatter", Trait::Scatter),
    ("walk_speed", Trait::WalkSpeed),
    ("run_speed", Trait::RunSpeed),
];

fn of_skill(skill: Skill) -> [(&'static str, Trait); 4] {
    [
        ("m", Trait::Reach(skill)),
        ("tau", Trait::Tau(skill)),
        ("can", Trait::Can(skill)),
        ("steady", Trait::Steady(skill)),
    ]
}

/// Reads the file; `codes` are those that may stand there, where that is known.
pub fn overrides(
    source: &Source,
    units: Units,
    codes: Option<&[String]>,
    notes: &mut Vec<Note>,
) -> Vec<Override> {
    let (root, broken) = table::parse(source, notes);
    let mut desk = Desk {
        source,
        units,
        notes,
    };
    let mut all = Vec::new();
    let children = Table::new(root.get_ref(), source.whole(), &source.name);
    for (child, value) in children.all(&desk) {
        let DeValue::Table(entries) = value.get_ref() else {
            let note = Note::error(
                child.at.clone(),
                msg!("override-no-child", key = &child.value),
            );
            desk.notes.push(note.expected(msg!("override-want-child")));
            continue;
        };
        known(&child, codes, desk.notes);
        let at = table::place(source, value.span());
        of_child(
            &child,
            Table::new(entries, at, &child.value),
            &mut all,
            &mut desk,
        );
    }
    if broken { Vec::new() } else { all }
}

fn of_child(child: &At<String>, table: Table, all: &mut Vec<Override>, desk: &mut Desk) {
    for (key, what) in BODY {
        all.extend(set(child, &table, key, what, desk));
    }
    for skill in Skill::ALL {
        let Some(own) = table.table(skill.word(), desk) else {
            continue;
        };
        for (key, what) in of_skill(skill) {
            all.extend(set(child, &own, key, what, desk));
        }
        own.finish(desk);
    }
    table.finish(desk);
}

fn set(
    child: &At<String>,
    table: &Table,
    key: &'static str,
    what: Trait,
    desk: &mut Desk,
) -> Option<Override> {
    let read = match what {
        Trait::Can(_) | Trait::Steady(_) => table.within(key, (0.0, 1.0), desk)?,
        Trait::WalkSpeed | Trait::RunSpeed => table.number(key, desk)?,
        _ => table.length(key, desk)?,
    };
    if what.admits(read.value) {
        return Some(Override {
            child: child.value.clone(),
            what,
            value: read.value,
            at: Some(read.at),
        });
    }
    let expected = match what {
        Trait::WalkSpeed | Trait::RunSpeed => msg!("override-want-speed"),
        _ => msg!("override-want-length"),
    };
    desk.notes
        .push(Note::error(read.at, msg!("override-outside", key = key)).expected(expected));
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    type Set = (String, Trait, f64);

    fn check(text: &str) -> (Vec<Set>, Vec<(&'static str, String)>) {
        let source = Source::new("overrides.toml", text);
        let mut notes = Vec::new();
        let codes = ["wren".to_owned(), "age-3.5".to_owned()];
        let all = overrides(&source, Units::Feet, Some(&codes), &mut notes);
        let told = notes.iter().map(|note| {
            let at = note.at.as_ref().expect("a place");
            (note.what.key, text[at.start..at.end].to_owned())
        });
        (
            all.into_iter()
                .map(|set| (set.child, set.what, set.value))
                .collect(),
            told.collect(),
        )
    }

    #[test]
    fn every_figure_of_a_child_can_be_set() {
        let (all, told) = check(
            "[wren]\nheight = 3\nfoot = \"15.5 cm\"\nscatter = \"5 cm\"\nwalk_speed = 1.1\nrun_speed = 2\n\
             [wren.hop]\nm = \"32 cm\"\ntau = \"8 cm\"\ncan = 0.9\nsteady = 1\n[\"age-3.5\"]\nslide.can = 0\n",
        );
        assert_eq!(told, []);
        let wren = |what, value| ("wren".to_owned(), what, value);
        assert_eq!(
            all,
            [
                wren(Trait::Stature, 3.0 * unit::FOOT),
                wren(Trait::Foot, 0.155),
                wren(Trait::Scatter, 0.05),
                wren(Trait::WalkSpeed, 1.1),
                wren(Trait::RunSpeed, 2.0),
                wren(Trait::Reach(Skill::Hop), 0.32),
                wren(Trait::Tau(Skill::Hop), 0.08),
                wren(Trait::Can(Skill::Hop), 0.9),
                wren(Trait::Steady(Skill::Hop), 1.0),
                ("age-3.5".to_owned(), Trait::Can(Skill::Slide), 0.0),
            ]
        );
    }

    #[test]
    fn slips_are_told_where_they_stand() {
        for (text, key, at) in [
            ("[wrem]\nfoot = 0.5\n", "child-nobody", "wrem"),
            ("foot = 0.5\n", "override-no-child", "foot"),
            ("[wren]\nhop = 0.5\n", "value-type", "0.5"),
            ("[wren.hop]\ncan = 90\n", "number-outside", "90"),
            ("[wren]\nrun_speed = -2\n", "override-outside", "-2"),
            ("[wren]\nfoot = 0\n", "override-outside", "0"),
            ("[wren]\nfeet = 0.5\n", "key-unknown", "feet"),
            ("[wren.hopp]\nm = 1\n", "key-unknown", "hopp"),
        ] {
            assert_eq!(check(text).1, [(key, at.to_owned())], "{text}");
        }
    }
}
