//! The shell of a page: choices, stage, rhythm, transport, and the script that moves them.

use std::fmt::Write;

use ledger::{Ledger, Standing};
use motion::Model;
use note::msg;
use serde_json::{Value, json};

use crate::Tongue;
use crate::data::{self, Choice, Chosen, Phrases};
use crate::face;
use crate::player;
use crate::svg::{Extent, escape};

const STYLE: &str = include_str!("page.css");
/// Where a page's own script wants the player's.
const PLAYER: &str = "//PLAYER";

/// What a page shows.
pub struct Page<'a> {
    pub title: &'a str,
    pub choices: Vec<Choice>,
    /// The value of each choice when the page opens.
    pub opens: Vec<String>,
    /// Clips, and the ground shown of each.
    pub clips: Vec<(Chosen, Extent)>,
    /// Painted figures, as SVG.
    pub grounds: Vec<String>,
}

/// The page as text.
pub fn page(page: &Page, tongue: &Tongue, ledger: &Ledger, model: &Model) -> String {
    let say = |key| escape(&tongue.word(key));
    let mut phrases = Phrases::default();
    let clips: Vec<Value> = page
        .clips
        .iter()
        .map(|(chosen, room)| data::clip(chosen, room, &mut phrases, tongue, model))
        .collect();
    let data = json!({
        "clips": clips,
        "phrases": phrases.value(),
        "moments": data::moments(tongue),
        "opens": page.opens,
        "choices": page.choices.iter().map(|choice| choice.name).collect::<Vec<_>>(),
        "grounds": page.grounds,
        "feet": data::feet(),
        "shapes": data::shapes(page.clips.iter().map(|(chosen, _)| &chosen.clip), model),
        "words": player::words(tongue),
    });
    let mut out = String::new();
    head(&mut out, page.title, "", tongue);
    out.push_str("<form id=\"choices\">\n");
    for choice in &page.choices {
        fieldset(&mut out, choice, "");
    }
    out.push_str("</form>\n");
    player::markup(&mut out, "", false, tongue);
    _ = write!(
        out,
        "</main>\n<footer>\n<p>{}</p>\n<p>{}</p>\n<p id=\"keys\">{}</p>\n",
        say("screen-model"),
        say("screen-height"),
        say("screen-keys")
    );
    figures(
        &mut out,
        tongue,
        ledger,
        &["motion.", "footfall.rate.", "push."],
    );
    foot(&mut out, &data, include_str!("page.js"));
    out
}

/// From the first line to the opened `main`; `style` comes after the style of all pages.
pub fn head(out: &mut String, title: &str, style: &str, tongue: &Tongue) {
    _ = write!(
        out,
        "<!doctype html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{title}</title>\n<style>\n/* The face: Atkinson Hyperlegible Next, SIL Open Font License 1.1 */\n{}{STYLE}{style}</style>\n\
         </head>\n<body>\n<header><svg class=\"sign\" viewBox=\"-50 -50 100 100\" aria-hidden=\"true\">{SIGN}</svg>\
         <h1>{title}</h1><label class=\"switch\"><input type=\"checkbox\" id=\"dark\"><span>{}</span></label></header>\n<main>\n",
        tongue.catalogue.language().tag(),
        face::rules(),
        escape(&tongue.word("screen-dark")),
        title = escape(title),
    );
}

/// From the closing footer to the last line; `script` names where it wants the player's.
pub fn foot(out: &mut String, data: &Value, script: &str) {
    // nothing in the data can end the script's element
    let data = data.to_string().replace('<', "\\u003c");
    let script = script.replace(PLAYER, include_str!("player.js"));
    _ = write!(
        out,
        "</footer>\n<script type=\"application/json\" id=\"data\">{data}</script>\n<script>\n{script}</script>\n</body>\n</html>\n"
    );
}

/// The sign: a cell with its three joints (look, section 1).
const SIGN: &str = "<circle r=\"32\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"24\"/>\
    <path stroke=\"var(--ground)\" stroke-width=\"7\" d=\"M0-50V-18M-14 50V10M14 50V10\"/>";
/// A group of alternatives, as radio buttons.
pub fn fieldset(out: &mut String, choice: &Choice, prefix: &str) {
    _ = write!(
        out,
        "<fieldset id=\"{prefix}choice-{}\"><legend>{}</legend><div>",
        choice.name,
        escape(&choice.legend)
    );
    for (value, label) in &choice.options {
        _ = write!(
            out,
            "<label class=\"switch\"><input type=\"radio\" name=\"{prefix}{}\" value=\"{}\"><span>{}</span></label>",
            choice.name,
            escape(value),
            escape(&capital(label))
        );
    }
    out.push_str("</div></fieldset>\n");
}

/// A label begins with a capital.
pub fn capital(label: &str) -> String {
    let mut letters = label.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => String::new(),
    }
}

/// The figures of the ledger that the page rests on, with their standing.
pub fn figures(out: &mut String, tongue: &Tongue, ledger: &Ledger, rooms: &[&str]) {
    _ = write!(
        out,
        "<details><summary>{}</summary><table><thead><tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th>\
         <th scope=\"col\">{}</th></tr></thead><tbody>",
        escape(&tongue.word("screen-figures")),
        escape(&tongue.word("screen-figure")),
        escape(&tongue.word("screen-value")),
        escape(&tongue.word("screen-standing")),
    );
    let cited = ledger
        .cited()
        .filter(|figure| rooms.iter().any(|room| figure.key.starts_with(room)));
    for figure in cited {
        let mark = tongue.catalogue.language().mark().to_string();
        let values: Vec<String> = figure
            .values
            .iter()
            .map(|value| value.to_string().replace('.', &mark))
            .collect();
        let unit = if figure.unit == "1" {
            String::new()
        } else {
            format!(" {}", figure.unit)
        };
        let standing = match figure.standing {
            Standing::Published => "published",
            Standing::Practice => "practice",
            Standing::Memory => "memory",
        };
        let source = if figure.source == "-" {
            String::new()
        } else {
            format!(", {}", figure.source)
        };
        _ = write!(
            out,
            "<tr><td lang=\"en\">{}</td><td>{}{}</td><td>{}{}</td></tr>",
            escape(&figure.what),
            escape(&values.join("; ")),
            escape(&unit),
            escape(&tongue.say(&msg!("screen-standing-of", standing = standing))),
            escape(&source),
        );
    }
    out.push_str("</tbody></table></details>\n");
}
