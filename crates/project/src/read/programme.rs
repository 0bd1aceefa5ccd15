//! `programme.toml`: what the centre means to do with its yard, and what it pays.

use std::collections::BTreeMap;

use children::Skill;
use jiff::civil::Date;
use ledger::Ledger;
use marking::Ground;
use note::{Fact, Note, Place, msg};
use toml::Spanned;
use toml::de::DeValue;
use unit::Units;

use crate::read::building::{self, Building};
use crate::read::figures as fig;
use crate::read::files::Source;
use crate::read::package::{self, Of, Package};
use crate::read::table::{self, At, Desk, Table};
use note::nearest;

/// What `programme.toml` says; what it leaves out is as usual (the ledger's `programme.*`).
#[derive(Clone, Debug, PartialEq)]
pub struct Programme {
    /// Sessions a week.
    pub sessions_a_week: u32,
    /// Minutes of one session, warm-up and cool-down among them.
    pub minutes: f64,
    /// Weeks.
    pub weeks: u32,
    /// The first day.
    pub starts: Option<Date>,
    /// Members of staff outside.
    pub staff: u32,
    /// How much each taught skill is wanted; 1 where nobody says otherwise.
    pub weights: BTreeMap<Skill, f64>,
    /// Words of letter courts, small letters, sorted and each once.
    pub words: Vec<String>,
    /// Families that are wanted: no others are considered, where there are any.
    pub wanted: Vec<At<String>>,
    /// Families that are refused.
    pub refused: Vec<At<String>>,
    /// The ground that the paints must show on; `None`: what the yard mostly is.
    pub palette: Option<Ground>,
    /// What things cost here.
    pub prices: Prices,
    /// Who paints, when, and with what.
    pub building: Building,
    /// Children by age, where there is no roster: years and how many, as
    /// [`children::counts`] takes them. Those of three years are 3.5 in the middle.
    pub ages: Vec<(f64, u32)>,
    /// Where the ages stand.
    pub ages_at: Option<Place>,
}

/// Packages on sale and their prices in the project's currency; an empty list where
/// nothing is said.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Prices {
    /// Cans of paint, litres.
    pub paint: Vec<Package>,
    /// Cans of primer, litres.
    pub primer: Vec<Package>,
    /// Rolls of masking tape, metres.
    pub tape: Vec<Package>,
    /// Bags of grit, kilograms.
    pub grit: Vec<Package>,
    /// One stencil sheet.
    pub sheet: Option<f64>,
}

impl Programme {
    /// The usual programme.
    pub fn usual(units: Units, ledger: &Ledger) -> Programme {
        let whole = |key| ledger.number(key).round().clamp(0.0, 1e6) as u32;
        Programme {
            sessions_a_week: whole(fig::SESSIONS),
            minutes: ledger.number(fig::MINUTES),
            weeks: whole(fig::WEEKS),
            starts: None,
            staff: whole(fig::STAFF),
            weights: Skill::TAUGHT
                .into_iter()
                .map(|skill| (skill, 1.0))
                .collect(),
            words: Vec::new(),
            wanted: Vec::new(),
            refused: Vec::new(),
            palette: None,
            prices: Prices::default(),
            building: Building::usual(units, ledger),
            ages: Vec::new(),
            ages_at: None,
        }
    }
}

/// Reads the file; `figures` are the user's own figures, which count as families.
pub fn programme(
    source: &Source,
    units: Units,
    ledger: &Ledger,
    figures: &[String],
    notes: &mut Vec<Note>,
) -> Programme {
    let (root, broken) = table::parse(source, notes);
    let mut desk = Desk {
        source,
        units,
        notes,
    };
    let desk = &mut desk;
    let table = Table::new(root.get_ref(), source.whole(), &source.name);
    let mut programme = Programme::usual(units, ledger);
    if let Some(sessions) = table.count("sessions_a_week", (1, 14), desk) {
        programme.sessions_a_week = sessions.value;
    }
    if let Some(minutes) = table.within("minutes", (5.0, 240.0), desk) {
        programme.minutes = minutes.value;
    }
    if let Some(weeks) = table.count("weeks", (1, 104), desk) {
        programme.weeks = weeks.value;
    }
    programme.starts = table.date("starts", desk).map(|date| date.value);
    if let Some(staff) = table.count("staff", (1, 100), desk) {
        programme.staff = staff.value;
    }
    if let Some(weights) = table.table("weights", desk) {
        for skill in Skill::TAUGHT {
            if let Some(weight) = weights.within(skill.word(), (0.0, 100.0), desk) {
                programme.weights.insert(skill, weight.value);
            }
        }
        if programme.weights.values().all(|weight| *weight == 0.0) {
            desk.notes.push(
                Note::error(weights.at.clone(), msg!("weights-none")).mend(msg!("weights-some")),
            );
        }
        weights.finish(desk);
    }
    programme.words = words(&table, desk);
    if let Some(families) = table.table("families", desk) {
        programme.wanted = chosen(&families, "wanted", figures, desk);
        programme.refused = chosen(&families, "refused", figures, desk);
        for family in &programme.refused {
            if let Some(wanted) = programme
                .wanted
                .iter()
                .find(|wanted| wanted.value == family.value)
            {
                let note = Note::error(
                    family.at.clone(),
                    msg!("family-both", family = &family.value),
                );
                desk.notes.push(note.also(wanted.at.clone()));
            }
        }
        families.finish(desk);
    }
    let grounds = [("asphalt", Ground::Asphalt), ("concrete", Ground::Concrete)];
    programme.palette = table
        .word("palette", &grounds, desk)
        .map(|ground| ground.value);
    if let Some(prices) = table.table("prices", desk) {
        programme.prices = Prices {
            paint: package::packages(&prices, "paint", Of::Volume, desk),
            primer: package::packages(&prices, "primer", Of::Volume, desk),
            tape: package::packages(&prices, "tape", Of::Length, desk),
            grit: package::packages(&prices, "grit", Of::Mass, desk),
            sheet: prices
                .within("sheet", (0.0, package::DEAREST), desk)
                .map(|price| price.value),
        };
        prices.finish(desk);
    }
    if let Some(build) = table.table("build", desk) {
        programme.building = building::building(build, units, ledger, desk);
    }
    if let Some(ages) = table.table("ages", desk) {
        programme.ages_at = Some(ages.at.clone());
        for (age, value) in ages.all(desk) {
            programme.ages.extend(so_many(&age, value, desk));
        }
    }
    if !broken {
        table.finish(desk);
    }
    programme
}

/// Letters of a word that children can jump, as a court has them: shorter is no way, longer
/// no court.
const LETTERS: std::ops::RangeInclusive<usize> = 2..=12;

fn words(table: &Table, desk: &mut Desk) -> Vec<String> {
    let Some(read) = table.names("words", desk) else {
        return Vec::new();
    };
    let mut words = Vec::new();
    for word in read.value {
        let small = word.value.trim().to_lowercase();
        let letters = marking::letters(&small).map_or(0, |letters| letters.len());
        if LETTERS.contains(&letters) && !small.contains(char::is_whitespace) {
            words.push(small);
        } else {
            let note = Note::error(word.at, msg!("word-odd", word = word.value));
            desk.notes.push(note.expected(msg!(
                "word-want",
                least = *LETTERS.start(),
                most = *LETTERS.end()
            )));
        }
    }
    words.sort();
    words.dedup();
    words
}

fn chosen(
    table: &Table,
    key: &'static str,
    figures: &[String],
    desk: &mut Desk,
) -> Vec<At<String>> {
    let Some(read) = table.names(key, desk) else {
        return Vec::new();
    };
    read.value
        .into_iter()
        .filter(|family| is_family(family, figures, desk.notes))
        .collect()
}

/// Whether a family is one of ours or the user's; one that is not is told.
pub fn is_family(family: &At<String>, figures: &[String], notes: &mut Vec<Note>) -> bool {
    let ours = || {
        marking::families()
            .iter()
            .map(|family| family.name())
            .chain(figures.iter().map(String::as_str))
    };
    let found = ours().any(|name| name == family.value);
    if !found {
        let note = Note::error(
            family.at.clone(),
            msg!("family-unknown", family = &family.value),
        );
        let note = match nearest(&family.value, ours()) {
            Some(near) => note.mend(msg!("did-you-mean", near = near)),
            None => note.mend(msg!("family-draw", family = &family.value)),
        };
        notes.push(note.expected(msg!(
            "one-of",
            names = ours().map(str::to_owned).collect::<Vec<_>>()
        )));
    }
    found
}

/// Most children of one age that one yard can hold.
const MOST: f64 = 1000.0;

/// `3 = 8` is eight children of three years, 3.5 in the middle; `"3.25" = 2` is exact.
fn so_many(age: &At<String>, value: &Spanned<DeValue>, desk: &mut Desk) -> Option<(f64, u32)> {
    let at = table::place(desk.source, value.span());
    let years = match age.value.trim().parse::<f64>() {
        Ok(years) if (0.0..=18.0).contains(&years) => years,
        _ => {
            desk.notes.push(
                Note::error(age.at.clone(), msg!("age-odd", age = &age.value))
                    .expected(msg!("age-want")),
            );
            return None;
        }
    };
    if let DeValue::Table(_) = value.get_ref() {
        // A bare 3.5 is a key within a key.
        desk.notes
            .push(Note::error(age.at.clone(), msg!("age-bare")).mend(msg!("age-quote")));
        return None;
    }
    match table::number(value.get_ref()) {
        Some(count) if (0.0..=MOST).contains(&count) && count.fract() == 0.0 => {
            let middle = if age.value.contains('.') {
                years
            } else {
                years + 0.5
            };
            Some((middle, count as u32))
        }
        _ => {
            let expected = msg!(
                "want-between",
                low = Fact::Number(0.0, 0),
                high = Fact::Number(MOST, 0)
            );
            desk.notes
                .push(Note::error(at, msg!("age-count", age = &age.value)).expected(expected));
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str) -> (Programme, Vec<(&'static str, String)>) {
        let source = Source::new("programme.toml", text);
        let mut notes = Vec::new();
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let read = programme(
            &source,
            Units::Feet,
            &ledger,
            &["fish".to_owned()],
            &mut notes,
        );
        let told = notes.iter().map(|note| {
            let at = note.at.as_ref().expect("a place");
            (note.what.key, text[at.start..at.end].to_owned())
        });
        (read, told.collect())
    }

    #[test]
    fn all_that_a_centre_may_say_is_read() {
        let (read, told) = check(
            "sessions_a_week = 4\nminutes = 35\nweeks = 12\nstarts = 2026-09-14\nstaff = 3\npalette = \"concrete\"\n\
             words = [\"Sun\", \"cat\", \"sun\", \"niño\"]\nages = { 3 = 8, \"4.25\" = 2, 5 = 0 }\n\
             [weights]\nhop = 2\nslide = 0\n[families]\nwanted = [\"brook\", \"fish\"]\nrefused = [\"court\"]\n\
             [prices]\npaint = { \"1 gal\" = 46, \"1 qt\" = 18 }\nprimer = { \"2.5 L\" = 30 }\n\
             tape = { \"150 ft\" = 6 }\ngrit = { \"5 lb\" = 9.5 }\nsheet = 8\n",
        );
        assert_eq!(told, []);
        assert_eq!(
            (read.sessions_a_week, read.minutes, read.weeks, read.staff),
            (4, 35.0, 12, 3)
        );
        assert_eq!(read.starts, Some(jiff::civil::date(2026, 9, 14)));
        assert_eq!(
            (
                read.weights[&Skill::Hop],
                read.weights[&Skill::Slide],
                read.weights[&Skill::Jump]
            ),
            (2.0, 0.0, 1.0)
        );
        assert_eq!(read.words, ["cat", "niño", "sun"]);
        assert_eq!(read.ages, [(3.5, 8), (4.25, 2), (5.5, 0)]);
        assert_eq!(read.palette, Some(Ground::Concrete));
        let names =
            |families: &[At<String>]| families.iter().map(|f| f.value.clone()).collect::<Vec<_>>();
        assert_eq!(
            (names(&read.wanted), names(&read.refused)),
            (vec!["brook".into(), "fish".into()], vec!["court".into()])
        );
        // By size; a gallon is 231 cubic inches, an inch 25.4 mm.
        let sizes: Vec<f64> = read.prices.paint.iter().map(|can| can.size).collect();
        assert_eq!(sizes, [0.946_352_946, 3.785_411_784]);
        assert_eq!(
            read.prices.tape,
            [Package {
                size: 45.72,
                price: 6.0
            }]
        );
        assert_eq!(
            read.prices.grit,
            [Package {
                size: 2.267_962,
                price: 9.5
            }]
        );
        assert_eq!(
            (read.prices.primer[0].size, read.prices.sheet),
            (2.5, Some(8.0))
        );
    }

    #[test]
    fn slips_are_told_where_they_stand() {
        for (text, key, at) in [
            ("sessions_a_week = 0\n", "number-outside", "0"),
            ("minutes = 3\n", "number-outside", "3"),
            ("staff = 2.5\n", "number-not-whole", "2.5"),
            (
                "starts = 2026-09-14T09:00:00\n",
                "value-type",
                "2026-09-14T09:00:00",
            ),
            ("[weights]\nhopp = 1\n", "key-unknown", "hopp"),
            ("[weights]\nrun = 1\n", "key-unknown", "run"),
            ("words = [\"cat 1\"]\n", "word-odd", "\"cat 1\""),
            ("words = [\"кот\"]\n", "word-odd", "\"кот\""),
            ("words = [\"a\"]\n", "word-odd", "\"a\""),
            ("palette = \"grass\"\n", "word-unknown", "\"grass\""),
            (
                "[families]\nwanted = [\"brok\"]\n",
                "family-unknown",
                "\"brok\"",
            ),
            (
                "[families]\nwanted = [\"brook\"]\nrefused = [\"brook\"]\n",
                "family-both",
                "\"brook\"",
            ),
            ("ages = { 3.5 = 2 }\n", "age-bare", "3"),
            ("ages = { three = 2 }\n", "age-odd", "three"),
            ("ages = { 3 = 2.5 }\n", "age-count", "2.5"),
            ("[prices]\npaint = { big = 46 }\n", "package-size", "big"),
            (
                "[prices]\npaint = { \"1 kg\" = 46 }\n",
                "package-size",
                "\"1 kg\"",
            ),
            (
                "[prices]\npaint = { \"1 L\" = \"9\" }\n",
                "package-price",
                "\"9\"",
            ),
        ] {
            assert_eq!(check(text).1, [(key, at.to_owned())], "{text}");
        }
        let none: String = Skill::TAUGHT
            .iter()
            .map(|skill| format!("{} = 0\n", skill.word()))
            .collect();
        assert_eq!(check(&format!("[weights]\n{none}")).1[0].0, "weights-none");
    }

    #[test]
    fn nothing_said_is_as_usual() {
        let (read, told) = check("");
        assert_eq!(told, []);
        assert_eq!(
            (read.sessions_a_week, read.minutes, read.weeks, read.staff),
            (3, 30.0, 8, 2)
        );
        assert!(read.weights.values().all(|weight| *weight == 1.0) && read.weights.len() == 6);
    }
}
