//! Syllables and school years against `oracle/reading.py`: the pronouncing dictionary of
//! Carnegie Mellon University, silabea, textstat.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use games::SHIPPED;
use games::reading::{self, Counts, Tongue};
use serde_json::Value;

fn stored() -> Value {
    serde_json::from_str(include_str!("../oracle/reading.json")).expect("the stored answers")
}

fn count(value: &Value) -> u32 {
    value
        .as_u64()
        .and_then(|n| n.try_into().ok())
        .expect("a count")
}

/// Words of which ours and theirs differ, and how many there were.
fn misses(rows: &Value, tongue: Tongue) -> (Vec<String>, usize) {
    let rows = rows.as_array().expect("rows");
    let missed = rows.iter().filter_map(|row| {
        let word = row[0].as_str().expect("a word");
        let theirs: Vec<u32> = match &row[1] {
            Value::Array(ways) => ways.iter().map(count).collect(),
            one => vec![count(one)],
        };
        let ours = reading::syllables(word, tongue);
        (!theirs.contains(&ours)).then(|| format!("{word} {ours} {theirs:?}"))
    });
    (missed.collect(), rows.len())
}

/// Whether a word stands in a game.
fn played(word: &str) -> bool {
    SHIPPED.iter().any(|(_, text)| {
        text.to_lowercase()
            .split(|c: char| !c.is_alphanumeric() && c != '\'')
            .any(|token| token == word)
    })
}

/// Words of the games and of the whole catalogue, `project` and `boundary` among them: the
/// rules miss at most one in a hundred, and none that a game says.
#[test]
fn english_syllables_are_the_pronouncing_dictionarys() {
    let (missed, all) = misses(&stored()["english"], Tongue::English);
    assert!(all > 1_000);
    assert!(
        missed.len() * 100 <= all,
        "{} of {all}: {missed:#?}",
        missed.len()
    );
    let said: Vec<&String> = missed
        .iter()
        .filter(|miss| miss.split(' ').next().is_some_and(played))
        .collect();
    assert!(said.is_empty(), "said in a game: {said:#?}");
}

/// Words of the house's papers and room headers, on which the rules and their list were not made.
#[test]
fn english_syllables_of_other_words_are_mostly_the_dictionarys() {
    let (missed, all) = misses(&stored()["held_out"], Tongue::English);
    assert!(all > 300, "{all}");
    println!("{} of {all} missed: {missed:?}", missed.len());
    assert!(
        missed.len() * 20 <= all,
        "{} of {all}: {missed:#?}",
        missed.len()
    );
}

/// The rules of the orthography leave no room: all but the words of other languages agree.
#[test]
fn spanish_syllables_are_silabeas() {
    let (missed, all) = misses(&stored()["spanish"], Tongue::Spanish);
    assert!(all > 1_500);
    assert!(missed.is_empty(), "{} of {all}: {missed:#?}", missed.len());
}

/// The formulas from the same counts, and the counts themselves. Spanish syllables of
/// textstat are breaks of a hyphenation, which are fewer: they go into the formula only.
#[test]
fn passages_read_as_textstat_reads_them() {
    /// Rounding of printed decimals.
    const SAME: f64 = 1e-9;
    /// Syllables in a hundred: where a word is said in two ways, as `our`, they take the first.
    const WAYS: u32 = 2;
    /// Grades: so many syllables by the formula.
    const BY_WAYS: f64 = 11.8 * WAYS as f64 / 100.0;
    for row in stored()["passages"].as_array().expect("passages") {
        let text = row["text"].as_str().expect("a text");
        let theirs = Counts {
            sentences: count(&row["sentences"]),
            words: count(&row["words"]),
            syllables: count(&row["syllables"]),
        };
        let near = |ours: f64, theirs: &Value| {
            let theirs = theirs.as_f64().expect("a number");
            assert!(
                (ours - theirs).abs() <= SAME,
                "{ours}, not {theirs}: {text}"
            );
        };
        if row["language"] == "en" {
            let ours = reading::counts(&[text], Tongue::English);
            assert_eq!(
                (ours.sentences, ours.words),
                (theirs.sentences, theirs.words)
            );
            let apart = ours.syllables.abs_diff(theirs.syllables);
            assert!(
                apart * 100 <= WAYS * ours.words,
                "{ours:?}, not {theirs:?}: {text}"
            );
            near(reading::kincaid(theirs), &row["kincaid"]);
            let off = reading::kincaid(ours) - reading::kincaid(theirs);
            assert!(off.abs() <= BY_WAYS, "{off} grades: {text}");
        } else {
            let ours = reading::counts(&[text], Tongue::Spanish);
            assert_eq!(
                (ours.sentences, ours.words),
                (theirs.sentences, theirs.words)
            );
            assert!(ours.syllables >= theirs.syllables, "{text}");
            near(reading::crawford(theirs), &row["crawford"]);
            near(reading::fernandez_huerta(theirs), &row["huerta"]);
        }
    }
}

#[test]
fn a_text_without_a_word_has_no_grade_and_a_text_ends_a_sentence() {
    assert!(reading::grade(&["", " … !"], Tongue::English).abs() < f64::EPSILON);
    let counts = reading::counts(
        &["Two feet", "Stop. \"Go!\" (Now?)", "1.5 m"],
        Tongue::English,
    );
    assert_eq!((counts.sentences, counts.words), (5, 7));
}
