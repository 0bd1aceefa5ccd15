//! `sources`: the ledger, printed and searched.

use ledger::{Figure, Ledger};
use serde_json::json;

use crate::command::{Manner, Sources};
use crate::outcome::{Fault, Outcome};
use crate::tell::{print, tell_without_project};

/// Prints the figures in which every word stands.
pub fn sources(asked: &Sources, manner: Manner) -> Result<Outcome, Fault> {
    let ledger = match &asked.project {
        None => crate::shipped()?,
        Some(dir) => {
            let read = project::read(dir);
            match read.value {
                Some(project) if !note::any_error(&read.notes) => project.ledger,
                _ => {
                    tell_without_project(manner, &read.notes);
                    return Ok(Outcome::WrongInput);
                }
            }
        }
    };
    let ledger = &ledger;
    let words: Vec<String> = asked.words.iter().map(|word| word.to_lowercase()).collect();
    let found: Vec<&Figure> = ledger
        .figures()
        .filter(|figure| words.iter().all(|word| has(figure, ledger, word)))
        .collect();
    if manner.json {
        let rows: Vec<_> = found.iter().map(|figure| row(figure, ledger)).collect();
        print(&format!("{:#}", json!(rows)));
    } else {
        let width = found
            .iter()
            .map(|figure| figure.key.len())
            .max()
            .unwrap_or(0);
        let values: Vec<String> = found.iter().map(|figure| value(figure)).collect();
        let span = values.iter().map(String::len).max().unwrap_or(0);
        for (figure, value) in found.iter().zip(&values) {
            print(&format!(
                "{:width$}  {value:span$}  {}",
                figure.key,
                standing(figure)
            ));
            print(&format!("{:width$}  {}", "", figure.what));
            for key in cited(figure) {
                let source = ledger.source(key).unwrap_or_default();
                print(&format!("{:width$}  {key}: {source}", ""));
            }
        }
        print(&counted(found.len()));
    }
    Ok(if found.is_empty() {
        Outcome::DoesNotHold
    } else {
        Outcome::Done
    })
}

fn counted(found: usize) -> String {
    match found {
        0 => "No figure has all of these words.".to_owned(),
        1 => "1 figure.".to_owned(),
        more => format!("{more} figures."),
    }
}

fn has(figure: &Figure, ledger: &Ledger, word: &str) -> bool {
    let texts = [
        figure.key.as_str(),
        &figure.what,
        &figure.source,
        &figure.unit,
        standing(figure),
    ];
    texts.iter().any(|text| text.to_lowercase().contains(word))
        || cited(figure).any(|key| {
            ledger
                .source(key)
                .is_some_and(|text| text.to_lowercase().contains(word))
        })
}

fn cited(figure: &Figure) -> impl Iterator<Item = &str> {
    figure
        .source
        .split(['+', ','])
        .map(str::trim)
        .filter(|key| *key != "-")
}

fn standing(figure: &Figure) -> &'static str {
    if figure.replaced {
        "replaced by the project"
    } else {
        figure.standing.words()
    }
}

fn value(figure: &Figure) -> String {
    let numbers: Vec<String> = figure.values.iter().map(f64::to_string).collect();
    let unit = if figure.unit == "1" { "" } else { &figure.unit };
    format!("{} {unit}", numbers.join(", "))
        .trim_end()
        .to_owned()
}

fn row(figure: &Figure, ledger: &Ledger) -> serde_json::Value {
    let works: Vec<_> = cited(figure)
        .map(|key| json!({ "key": key, "text": ledger.source(key).unwrap_or_default() }))
        .collect();
    json!({
        "key": figure.key,
        "value": figure.values,
        "unit": figure.unit,
        "what": figure.what,
        "standing": standing(figure),
        "sources": works,
    })
}
