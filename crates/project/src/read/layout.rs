//! `layout.toml`: the markings and where they lie; written by the planner, moved by people.

use std::collections::BTreeMap;
use std::f64::consts::PI;

use drawn::Drawn;
use ledger::Ledger;
use marking::{Family, Fault, Ground, Look, Palette};
use note::{Note, Place, msg};
use toml::de::DeValue;
use unit::Units;

use crate::read::files::Source;
use crate::read::programme::is_family;
use crate::read::surveyed::{each, need, twice};
use crate::read::table::{self, At, Desk, Table};
use crate::read::tape;

/// One `[[marking]]`.
#[derive(Clone, Debug, PartialEq)]
pub struct Marking {
    /// Unique in the file.
    pub name: String,
    /// One of the house's, or the user's own figure.
    pub family: String,
    /// Where its origin lies, metres.
    pub at: [f64; 2],
    /// Radians from +x anticlockwise.
    pub turn: f64,
    /// Whether left and right are swapped, before the turn.
    pub mirrored: bool,
    /// Whether people have locked it: then it is never moved.
    pub locked: bool,
    /// The family's free lengths in its own order, metres; what the file leaves out is the
    /// family's default.
    pub lengths: Vec<(String, f64)>,
    /// Where it stands.
    pub place: Option<Place>,
}

/// What a marking can be made of.
#[derive(Clone, Copy, Debug)]
pub struct Makers<'a> {
    /// Names of the user's own figures, whether they can be used or not.
    pub figures: &'a [String],
    /// Those that can be used.
    pub drawn: &'a BTreeMap<String, Drawn>,
    /// What the yard is paved with.
    pub ground: Ground,
    /// The project's figures.
    pub ledger: &'a Ledger,
}

impl<'a> Makers<'a> {
    /// The family of a name: one of the house's, or a figure of the user's own.
    pub fn family(self, name: &str) -> Option<&'a dyn Family> {
        match marking::family(name) {
            Some(family) => Some(family),
            None => self.drawn.get(name).map(|own| own as &dyn Family),
        }
    }
}

/// The file.
#[derive(Clone, Debug)]
pub struct Layout {
    /// Markings that could be read.
    pub markings: Vec<Marking>,
    /// Every name that stands there, whether its marking could be read or not; `None` where
    /// the file could not.
    pub names: Option<Vec<String>>,
}

/// Reads the file; what cannot be read is told and left out.
pub fn layout(source: &Source, units: Units, makers: Makers, notes: &mut Vec<Note>) -> Layout {
    let (root, broken) = table::parse(source, notes);
    let mut desk = Desk {
        source,
        units,
        notes,
    };
    let table = Table::new(root.get_ref(), source.whole(), &source.name);
    let read = each(&table, "marking", &mut desk, |one, desk| {
        let name = need(one, "name", desk).and_then(|name| tape::name(&name, desk.notes));
        Some((name.clone(), marking(one, name, makers, desk)))
    });
    twice(
        read.iter().filter_map(|(name, _)| name.as_ref()),
        desk.notes,
    );
    let list = table.value("marking").is_none_or(DeValue::is_array);
    if !broken {
        table.finish(&mut desk);
    }
    let names = read
        .iter()
        .filter_map(|(name, _)| Some(name.as_ref()?.value.clone()))
        .collect();
    Layout {
        markings: read
            .into_iter()
            .filter_map(|(_, marking)| marking)
            .collect(),
        names: (list && !broken).then_some(names),
    }
}

fn marking(
    table: &Table,
    name: Option<At<String>>,
    makers: Makers,
    desk: &mut Desk,
) -> Option<Marking> {
    let before = desk.notes.len();
    let family = need(table, "family", desk);
    let at = table.pair("at", desk);
    if at.is_none() && !table.has("at") {
        table.missing("at", desk);
    }
    let turn = table
        .within("turn", (-360.0, 360.0), desk)
        .map_or(0.0, |turn| turn.value * PI / 180.0);
    let truth = |read: Option<At<bool>>| read.is_some_and(|truth| truth.value);
    let mirror = table.truth("mirrored", desk);
    let locked = truth(table.truth("locked", desk));
    let lengths = match &family {
        Some(family) if is_family(family, makers.figures, desk.notes) => {
            if let Some(mirror) = mirror.as_ref().filter(|mirror| mirror.value)
                && makers
                    .family(&family.value)
                    .is_some_and(|family| !family.can_mirror())
            {
                desk.notes.push(
                    Note::error(
                        mirror.at.clone(),
                        msg!("layout-mirrored", family = &family.value),
                    )
                    .mend(msg!("layout-mirrored-mend")),
                );
            }
            lengths(table, &family.value, makers, desk)
        }
        // Of what is not known, no length is.
        _ => {
            table.has("lengths");
            Vec::new()
        }
    };
    if desk.notes.len() > before {
        return None;
    }
    Some(Marking {
        name: name?.value,
        family: family?.value,
        at: at?.value.map(|metres| (metres * 1e6).round() / 1e6),
        turn,
        mirrored: truth(mirror),
        locked,
        lengths,
        place: Some(table.at.clone()),
    })
}

/// The family's lengths, those that stand in the file and the defaults of the others.
fn lengths(table: &Table, family: &str, makers: Makers, desk: &mut Desk) -> Vec<(String, f64)> {
    let Some(maker) = makers.family(family) else {
        // of a drawing that cannot be used, no length is known
        table.has("lengths");
        return Vec::new();
    };
    let before = desk.notes.len();
    let written = table.table("lengths", desk);
    let specs = maker.lengths();
    let mut lengths = Vec::new();
    let mut places = Vec::new();
    for spec in specs {
        let found = written
            .as_ref()
            .and_then(|written| written.length(spec.name, desk));
        places.push(found.as_ref().map(|found| found.at.clone()));
        let metres = found.map_or(spec.default, |found| (found.value * 1e6).round() / 1e6);
        lengths.push((spec.name.to_owned(), metres));
    }
    if let Some(written) = written {
        written.finish(desk);
    }
    if desk.notes.len() == before {
        let values: Vec<f64> = lengths.iter().map(|(_, metres)| *metres).collect();
        for fault in faults(family, &values, makers) {
            let (what, expected) = fault.messages(family);
            let at = at_fault(&fault).and_then(|name| {
                let nth = specs.iter().position(|spec| spec.name == name)?;
                places.get(nth).cloned().flatten()
            });
            desk.notes
                .push(Note::error(at.unwrap_or_else(|| table.at.clone()), what).expected(expected));
        }
    }
    lengths
}

/// The length that a fault speaks of.
pub fn at_fault(fault: &Fault) -> Option<&'static str> {
    match fault {
        Fault::Count { .. } => None,
        Fault::Range { spec, .. } => Some(spec.name),
        Fault::Clash { short, .. } => Some(short),
    }
}

/// Why a family cannot be made at these lengths: each that is out of its range, or else
/// what does not go together.
pub fn faults(family: &str, lengths: &[f64], makers: Makers) -> Vec<Fault> {
    let Some(family) = makers.family(family) else {
        return Vec::new();
    };
    let out = |(spec, given): (&marking::LengthSpec, &f64)| {
        (!(spec.least..=spec.most).contains(given)).then_some(Fault::Range {
            spec: *spec,
            given: *given,
        })
    };
    let outside: Vec<Fault> = family
        .lengths()
        .iter()
        .zip(lengths)
        .filter_map(out)
        .collect();
    if !outside.is_empty() {
        return outside;
    }
    let look = Look::of(
        Palette {
            ground: makers.ground,
        },
        makers.ledger,
    );
    family.make(lengths, &look).err().into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str) -> (Vec<Marking>, Vec<(&'static str, String)>) {
        let source = Source::new("layout.toml", text);
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let figures = ["fish".to_owned()];
        let makers = Makers {
            figures: &figures,
            drawn: &BTreeMap::new(),
            ground: Ground::Asphalt,
            ledger: &ledger,
        };
        let mut notes = Vec::new();
        let markings = layout(&source, Units::Metres, makers, &mut notes).markings;
        let told = notes.iter().map(|note| {
            let at = note.at.as_ref().expect("a place");
            (note.what.key, text[at.start..at.end].to_owned())
        });
        (markings, told.collect())
    }

    #[test]
    fn markings_are_read_with_the_lengths_that_stand_there() {
        let (markings, told) = check(
            "[[marking]]\nname = \"brook1\"\nfamily = \"brook\"\nat = [7.2, \"410 cm\"]\nturn = 90\nlocked = true\n\
             [marking.lengths]\nnarrow = \"20 cm\"\n\n[[marking]]\nname = \"f\"\nfamily = \"fish\"\nat = [0, 0]\n",
        );
        assert_eq!(told, []);
        let [brook, fish] = markings.as_slice() else {
            panic!("two markings")
        };
        assert_eq!(
            (brook.at, brook.turn),
            ([7.2, 4.1], std::f64::consts::FRAC_PI_2)
        );
        assert!(brook.locked && !brook.mirrored && !fish.locked);
        let family = marking::family("brook").expect("a brook");
        let defaults = family.lengths().iter().map(|spec| {
            (
                spec.name,
                if spec.name == "narrow" {
                    0.2
                } else {
                    spec.default
                },
            )
        });
        assert!(
            brook
                .lengths
                .iter()
                .map(|(name, metres)| (name.as_str(), *metres))
                .eq(defaults)
        );
        assert!(fish.lengths.is_empty());
    }

    #[test]
    fn slips_are_told_where_they_stand() {
        let brook = |more: &str| {
            format!("[[marking]]\nname = \"b\"\nfamily = \"brook\"\nat = [1, 2]\n{more}")
        };
        for (text, key, at) in [
            (brook("colour = 3\n"), "key-unknown", "colour"),
            (brook("turn = 400\n"), "number-outside", "400"),
            (brook("[marking.lengths]\nnarow = 0.2\n"), "key-unknown", "narow"),
            (brook("[marking.lengths]\nnarrow = 20\n"), "marking-range", "20"),
            (brook("[marking.lengths]\nnarrow = 0.5\nwide = 0.5\n"), "marking-clash", "0.5"),
            (brook("\n[[marking]]\nname = \"b\"\nfamily = \"brook\"\nat = [1, 2]\n"), "name-twice", "\"b\""),
            ("[[marking]]\nname = \"b\"\nfamily = \"brok\"\nat = [1, 2]\n[marking.lengths]\nx = 1\n".into(), "family-unknown", "\"brok\""),
            ("[[marking]]\nname = \"my brook\"\nfamily = \"brook\"\nat = [1, 2]\n".into(), "name-odd", "\"my brook\""),
            ("[[marking]]\nname = \"b\"\nfamily = \"brook\"\n".into(), "key-missing", "[[marking]]"),
            ("[[marking]]\nname = \"b\"\nfamily = \"court\"\nat = [1, 2]\nmirrored = true\n".into(), "layout-mirrored", "true"),
        ] {
            assert_eq!(check(&text).1, [(key, at.to_owned())], "{text}");
        }
    }
}
