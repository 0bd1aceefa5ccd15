//! `project.toml`: what the project is called and how it wants to be spoken to.

use ground::Standard;
use jiff::civil::Date;
use ledger::{Ledger, ReplaceFault};
use note::{Note, msg};
use toml::de::DeValue;
use unit::Units;
use words::Language;

use crate::read::files::Source;
use crate::read::table::{self, Desk, Table};
use note::nearest;

/// Paper in the printer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm.
    A4,
    /// 8.5 by 11 in.
    Letter,
}

/// What `project.toml` says.
#[derive(Clone, Debug, PartialEq)]
pub struct About {
    /// The centre's or the project's name.
    pub name: String,
    /// Of bare numbers, and of papers.
    pub units: Units,
    /// Of papers and messages.
    pub language: Language,
    /// Of papers.
    pub paper: Paper,
    /// Of clear zones.
    pub zones: Standard,
    /// An ISO 4217 code.
    pub currency: String,
    /// In the currency; `None` where nothing is said.
    pub budget: Option<f64>,
    /// Of every random choice.
    pub seed: u64,
    /// The day that ages are reckoned on; `None` where nothing is said.
    pub date: Option<Date>,
}

impl Default for About {
    fn default() -> About {
        About {
            name: String::new(),
            units: Units::Metres,
            language: Language::En,
            paper: Paper::A4,
            zones: Standard::UsHandbook,
            currency: "USD".to_owned(),
            budget: None,
            seed: 1,
            date: None,
        }
    }
}

/// The words of `clear_zones`.
pub const STANDARDS: [(&str, Standard); 2] = [
    ("us-handbook", Standard::UsHandbook),
    ("european-norm", Standard::EuropeanNorm),
];

/// Reads the file; what cannot be read keeps its default, and is told.
pub fn about(source: &Source, ledger: &mut Ledger, notes: &mut Vec<Note>) -> About {
    let (root, broken) = table::parse(source, notes);
    let mut about = About::default();
    let mut desk = Desk {
        source,
        units: Units::Metres,
        notes,
    };
    let table = Table::new(root.get_ref(), source.whole(), &source.name);
    if let Some(units) = table.word(
        "units",
        &[("m", Units::Metres), ("ft", Units::Feet)],
        &mut desk,
    ) {
        about.units = units.value;
    }
    desk.units = about.units;
    match table.text("name", &mut desk) {
        Some(name) if name.value.trim().is_empty() => {
            desk.notes.push(Note::error(name.at, msg!("name-empty")));
        }
        Some(name) => about.name = name.value,
        None if table.has("name") || broken => {}
        None => table.missing("name", &mut desk),
    }
    if let Some(language) = table.word(
        "language",
        &[("en", Language::En), ("es", Language::Es)],
        &mut desk,
    ) {
        about.language = language.value;
    }
    if let Some(paper) = table.word(
        "paper",
        &[("a4", Paper::A4), ("letter", Paper::Letter)],
        &mut desk,
    ) {
        about.paper = paper.value;
    }
    if let Some(zones) = table.word("clear_zones", &STANDARDS, &mut desk) {
        about.zones = zones.value;
    }
    if let Some(currency) = table.text("currency", &mut desk) {
        if currency.value.len() == 3 && currency.value.bytes().all(|byte| byte.is_ascii_uppercase())
        {
            about.currency = currency.value;
        } else {
            desk.notes.push(
                Note::error(
                    currency.at,
                    msg!("currency-unknown", found = &currency.value),
                )
                .expected(msg!("want-currency")),
            );
        }
    }
    about.budget = table
        .within("budget", (0.0, 1e9), &mut desk)
        .map(|budget| budget.value);
    if let Some(seed) = table.count("seed", (0, u32::MAX), &mut desk) {
        about.seed = u64::from(seed.value);
    }
    about.date = table.date("date", &mut desk).map(|date| date.value);
    if let Some(figures) = table.table("figures", &mut desk) {
        replace(&figures, ledger, &mut desk);
    }
    if !broken {
        table.finish(&mut desk);
    }
    about
}

/// Replaces figures of the ledger; a length may carry its own unit.
fn replace(figures: &Table, ledger: &mut Ledger, desk: &mut Desk) {
    for (key, value) in figures.all(desk) {
        let unit = ledger.figure(&key.value).map(|figure| figure.unit.clone());
        let items: Vec<_> = match value.get_ref() {
            DeValue::Array(items) => items.iter().collect(),
            _ => vec![value],
        };
        let before = desk.notes.len();
        let values: Vec<f64> = items
            .into_iter()
            .filter_map(|item| match item.get_ref() {
                DeValue::String(_) if unit.as_deref() == Some("m") => {
                    table::length(item, &key.value, desk).map(|length| length.value)
                }
                other => {
                    let number = table::number(other).filter(|number| number.is_finite());
                    if number.is_none() {
                        desk.notes.push(
                            Note::error(
                                table::place(desk.source, item.span()),
                                msg!("figure-no-number", key = &key.value),
                            )
                            .expected(msg!("want-number")),
                        );
                    }
                    number
                }
            })
            .collect();
        if desk.notes.len() > before {
            continue;
        }
        let note = match ledger.replace(&key.value, &values) {
            Ok(()) => continue,
            Err(ReplaceFault::Unknown(known)) => {
                let note = Note::error(key.at, msg!("figure-unknown", key = &key.value));
                match nearest(&key.value, known.iter().map(String::as_str)) {
                    Some(near) => note.mend(msg!("did-you-mean", near = near)),
                    None => note.mend(msg!("figure-search")),
                }
            }
            Err(ReplaceFault::Count { wanted }) => Note::error(
                key.at,
                msg!(
                    "figure-count",
                    key = &key.value,
                    wanted = wanted,
                    found = values.len()
                ),
            ),
            Err(ReplaceFault::Value) => {
                Note::error(key.at, msg!("figure-no-number", key = &key.value))
            }
        };
        desk.notes.push(note);
    }
}
