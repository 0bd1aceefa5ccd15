//! Every key that this room names has its sentence in both languages.
#![allow(clippy::expect_used)]

use std::collections::BTreeSet;

use children::Skill;
use course::{CONFIDENCE, CORE, CRITERIA, INDUCTION, KNOWLEDGE, faults};
use words::{Catalogue, Language};

#[test]
fn every_sentence_is_there_in_both_languages() {
    let mut keys: Vec<&str> = CONFIDENCE.to_vec();
    keys.extend(CRITERIA.iter().map(|row| row.says));
    keys.extend(CORE.iter().map(|row| row.says));
    keys.extend(INDUCTION.iter().map(|(_, says)| *says));
    for item in KNOWLEDGE {
        keys.extend([item.asks, item.why]);
        keys.extend(item.answers);
    }
    for skill in Skill::ALL {
        keys.extend(faults(skill).iter().map(|fault| fault.form.says));
    }
    for language in Language::ALL {
        for key in &keys {
            assert!(
                Catalogue::of(language).has(key),
                "{key} in {}",
                language.tag()
            );
        }
    }
    assert!(keys.len() > 100);
}

/// A question has one right answer, and right answers do not all stand in one place.
#[test]
fn questions_are_sound() {
    let names: BTreeSet<&str> = KNOWLEDGE.iter().map(|item| item.name).collect();
    assert_eq!(names.len(), KNOWLEDGE.len());
    assert!((8..=10).contains(&KNOWLEDGE.len()));
    for place in 0..3 {
        let many = KNOWLEDGE.iter().filter(|item| item.right == place).count();
        assert!((2..=4).contains(&many), "{many} right answers at {place}");
    }
    for language in Language::ALL {
        for item in KNOWLEDGE {
            let said: BTreeSet<String> = item
                .answers
                .iter()
                .map(|key| Catalogue::of(language).word(key))
                .collect();
            assert_eq!(said.len(), 3, "{}", item.name);
        }
    }
}
