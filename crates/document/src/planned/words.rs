//! Words that several of the papers share.

use note::{Fact, msg};
use plan::{Candidate, Marking};

use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Manuscript, string};

/// A family's name.
pub fn family(sheet: &Sheet, family: &str) -> String {
    sheet.say(msg!("page-family", family = family))
}

/// The part of the class that a marking is sized for.
pub fn group(sheet: &Sheet, group: &str) -> String {
    sheet.say(msg!("page-group", group = group))
}

/// A marking's name: its family, and for whom where a planner sized it.
pub fn marking(sheet: &Sheet, marking: &Marking, candidate: Option<&Candidate>) -> String {
    let known = marking::family(&marking.family).is_some();
    match candidate {
        Some(one) if one.name == format!("{}-{}", one.family, one.group) && one.group != "all" => {
            sheet.say(msg!(
                "page-name-group",
                name = family(sheet, &marking.family),
                group = group(sheet, &one.group)
            ))
        }
        Some(one) if one.name == format!("{}-{}", one.family, one.group) => {
            family(sheet, &marking.family)
        }
        _ if known && marking.name != marking.family => sheet.say(msg!(
            "page-name-own",
            family = family(sheet, &marking.family),
            name = marking.name.as_str()
        )),
        _ if known => family(sheet, &marking.family),
        _ => marking.name.clone(),
    }
}

/// A candidate's name.
pub fn candidate(sheet: &Sheet, one: &Candidate) -> String {
    if one.name != format!("{}-{}", one.family, one.group) {
        return one.name.clone();
    }
    match one.group.as_str() {
        "all" => family(sheet, &one.family),
        other => sheet.say(msg!(
            "page-name-group",
            name = family(sheet, &one.family),
            group = group(sheet, other)
        )),
    }
}

/// A skill, with its foot where it has one.
pub fn skill(sheet: &Sheet, skill: &str, foot: Option<&str>) -> String {
    let word = super::suits::gait_words(sheet, skill);
    match foot {
        Some(foot) => sheet.say(msg!("page-on-foot", skill = word, foot = foot)),
        None => word,
    }
}

/// The sentence of a word of the record among some keys, each a prefix and the word.
fn of_word(keys: &[&'static str], prefix: &str, word: &str) -> Option<&'static str> {
    keys.iter()
        .copied()
        .find(|key| key.strip_prefix(prefix) == Some(word))
}

/// A rule of a layout.
pub fn rule(sheet: &Sheet, rule: &str) -> String {
    rule_key(rule).map_or_else(|| rule.to_owned(), |key| sheet.word(key))
}

/// The key of a rule's sentence.
pub fn rule_key(rule: &str) -> Option<&'static str> {
    of_word(&RULES, "rule-", rule)
}

/// Why a candidate is not there.
pub fn reason(sheet: &Sheet, why: &str, by: &str) -> String {
    of_word(&REASONS, "left-out-", why)
        .map_or_else(|| why.to_owned(), |key| sheet.say(msg!(key, name = by)))
}

const RULES: [&str; 18] = [
    "rule-paint-on-ground",
    "rule-envelope-on-ground",
    "rule-envelopes-apart",
    "rule-run-out-inside",
    "rule-lane-width",
    "rule-run-out-wanted",
    "rule-waiting-off-lanes",
    "rule-in-sight",
    "rule-square-to-walls",
    "rule-quiet-from-fast",
    "rule-lane-from-edges",
    "rule-landing-from-edges",
    "rule-landing-from-drains",
    "rule-waiting-off-ways-out",
    "rule-lanes-crossed",
    "rule-contrast",
    "rule-wheeled-way",
    "rule-balance",
];

const REASONS: [&str; 7] = [
    "left-out-refused",
    "left-out-no-gain",
    "left-out-same-family",
    "left-out-money",
    "left-out-ground",
    "left-out-no-place",
    "left-out-outdone",
];

/// An amount of money.
pub fn money(sheet: &Sheet, amount: f64, code: &str) -> String {
    format!("{}\u{A0}{code}", measure::plain(amount, 0, sheet))
        .trim_end()
        .to_owned()
}

/// A share in per cent, for a sentence.
pub fn percent(share: f64) -> Fact {
    Fact::Number(100.0 * share, 0)
}

/// A length in a sentence, in the manner of a drawing.
pub fn length(sheet: &Sheet, metres: f64) -> String {
    measure::length(metres, sheet)
}

/// Names and values under each other.
pub fn facts(paper: &mut Manuscript, items: &[(String, String)]) {
    paper.code(&format!("#{}", facts_code(items)));
}

/// The same, to stand inside something.
pub fn facts_code(items: &[(String, String)]) -> String {
    let rows: String = items
        .iter()
        .map(|(name, value)| format!("({}, {}), ", string(name), string(value)))
        .collect();
    format!("facts(({rows}))")
}

/// Boxes to tick.
pub fn ticks(paper: &mut Manuscript, items: &[String]) {
    let items: String = items
        .iter()
        .map(|item| format!("{}, ", string(item)))
        .collect();
    paper.code(&format!("#ticks(({items}))"));
}

/// A paragraph as small as notes are.
pub fn small(paper: &mut Manuscript, words: &str) {
    paper.code(&format!("#small({})", string(words)));
}

#[cfg(test)]
mod tests {
    use note::msg;
    use words::{Catalogue, Language};

    #[test]
    fn every_family_has_a_name_in_both_languages() {
        for family in marking::families() {
            for language in [Language::En, Language::Es] {
                let said = Catalogue::of(language).say(
                    &msg!("page-family", family = family.name()),
                    unit::Units::Metres,
                );
                assert_ne!(said, family.name());
            }
        }
    }
}
