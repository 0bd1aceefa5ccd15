//! The catalogue of one language.

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use note::{Fact, Message};
use unic_langid::{LanguageIdentifier, langid};
use unit::Units;

use crate::number;

/// A language that the house speaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Language {
    /// English.
    En,
    /// Spanish.
    Es,
}

impl Language {
    /// Both.
    pub const ALL: [Language; 2] = [Language::En, Language::Es];

    /// The tag of files and documents.
    pub fn tag(self) -> &'static str {
        match self {
            Language::En => "en",
            Language::Es => "es",
        }
    }

    fn identifier(self) -> LanguageIdentifier {
        match self {
            Language::En => langid!("en"),
            Language::Es => langid!("es"),
        }
    }

    /// The rooms' messages.
    pub(crate) fn files(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Language::En => EN,
            Language::Es => ES,
        }
    }
}

macro_rules! files {
    ($language:literal: $($room:literal)*) => {
        &[$(($room, include_str!(concat!("../messages/", $language, "/", $room, ".ftl")))),*]
    };
}

const EN: &[(&str, &str)] = files!("en": "survey" "ground" "project" "children" "marking" "drawn" "footfall" "learning" "layout" "setout" "document" "planned" "office" "day" "taught" "motion" "screen" "games" "paint" "stencil" "weather" "days" "sessions" "crew" "course" "cli");
const ES: &[(&str, &str)] = files!("es": "survey" "ground" "project" "children" "marking" "drawn" "footfall" "learning" "layout" "setout" "document" "planned" "office" "day" "taught" "motion" "screen" "games" "paint" "stencil" "weather" "days" "sessions" "crew" "course" "cli");

/// Every sentence of one language.
pub struct Catalogue {
    language: Language,
    bundle: FluentBundle<FluentResource>,
}

impl Catalogue {
    /// The catalogue of a language, read once. A message file that does not parse loses the broken
    /// message only; the tests of this room read them all.
    pub fn of(language: Language) -> &'static Catalogue {
        static EN: OnceLock<Catalogue> = OnceLock::new();
        static ES: OnceLock<Catalogue> = OnceLock::new();
        match language {
            Language::En => &EN,
            Language::Es => &ES,
        }
        .get_or_init(|| Catalogue::read(language))
    }

    fn read(language: Language) -> Catalogue {
        let mut bundle = FluentBundle::new_concurrent(vec![language.identifier()]);
        // Papers are set left to right: no marks of direction round the facts.
        bundle.set_use_isolating(false);
        // NUMBER and its kin: fails only where a bundle has them already.
        let _ = bundle.add_builtins();
        for (_, text) in language.files() {
            let resource = match FluentResource::try_new((*text).to_owned()) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            bundle.add_resource_overriding(resource);
        }
        Catalogue { language, bundle }
    }

    /// Its language.
    pub fn language(&self) -> Language {
        self.language
    }

    /// Whether there is a sentence for a key.
    pub fn has(&self, key: &str) -> bool {
        self.bundle
            .get_message(key)
            .is_some_and(|message| message.value().is_some())
    }

    /// A sentence with its facts, lengths in the user's unit. A key without a sentence is
    /// shown as it is, with its facts.
    pub fn say(&self, message: &Message, units: Units) -> String {
        let mut args = FluentArgs::new();
        for (name, fact) in &message.facts {
            args.set(*name, self.value(fact, units));
        }
        let Some(pattern) = self
            .bundle
            .get_message(message.key)
            .and_then(|found| found.value())
        else {
            return bare(message);
        };
        let mut faults = Vec::new();
        self.bundle
            .format_pattern(pattern, Some(&args), &mut faults)
            .into_owned()
    }

    /// A sentence without facts.
    pub fn word(&self, key: &'static str) -> String {
        self.say(
            &Message {
                key,
                facts: Vec::new(),
            },
            Units::Metres,
        )
    }

    fn value(&self, fact: &Fact, units: Units) -> FluentValue<'static> {
        let language = self.language;
        match fact {
            Fact::Text(text) => FluentValue::from(text.clone()),
            Fact::Count(count) => FluentValue::from(*count as f64),
            // A small whole number stays a number, so that a sentence can choose by it.
            Fact::Number(value, 0) if value.abs() < 1e4 => FluentValue::from(value.round()),
            Fact::Number(value, places) => {
                FluentValue::from(number::decimal(*value, usize::from(*places), language))
            }
            Fact::Length(metres) => FluentValue::from(number::reading(*metres, units, language)),
            Fact::Area(area) => FluentValue::from(number::area(*area, units, language)),
            Fact::Names(names) => FluentValue::from(number::list(names, language)),
        }
    }
}

fn bare(message: &Message) -> String {
    let facts: Vec<String> = message
        .facts
        .iter()
        .map(|(name, fact)| format!("{name}: {fact:?}"))
        .collect();
    if facts.is_empty() {
        message.key.to_owned()
    } else {
        format!("{} ({})", message.key, facts.join(", "))
    }
}
