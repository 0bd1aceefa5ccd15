//! The shell of a page: choices, stage, rhythm, transport, and the script that moves them.

use std::fmt::Write;

use ledger::{Ledger, Standing};
use motion::Model;
use note::msg;
use serde_json::{Value, json};

use crate::Tongue;
use crate::data::{self, Choice, Chosen, Phrases};
use crate::face;
use crate::svg::{Extent, escape, foot};
use children::Side;

const STYLE: &str = include_str!("page.css");
const SCRIPT: &str = include_str!("page.js");

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
        "feet": { "R": foot(Side::Right, 1000.0), "L": foot(Side::Left, 1000.0) },
        "words": {
            "play": tongue.word("screen-play"),
            "pause": tongue.word("screen-pause"),
            "start": tongue.word("screen-start"),
            "right": tongue.word("screen-right"),
            "left": tongue.word("screen-left"),
            "air": tongue.word("screen-air"),
            "metre": tongue.word("screen-metre"),
            "noFlight": tongue.word("screen-no-flight"),
            "of": tongue.say(&msg!("screen-of", count = "%1", most = "%2", landing = "%3")),
            "playing": tongue.say(&msg!("screen-playing", feet = "%1")),
            "seconds": tongue.say(&msg!("screen-seconds", value = "%1")),
            "mark": tongue.catalogue.language().mark().to_string(),
        },
    });
    // nothing in the data can end the script's element
    let data = data.to_string().replace('<', "\\u003c");
    let mut out = String::new();
    _ = write!(
        out,
        "<!doctype html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{title}</title>\n<style>\n/* The face: Atkinson Hyperlegible Next, SIL Open Font License 1.1 */\n{}{STYLE}</style>\n\
         </head>\n<body>\n<header><svg class=\"sign\" viewBox=\"-50 -50 100 100\" aria-hidden=\"true\">{SIGN}</svg>\
         <h1>{title}</h1><label class=\"switch\"><input type=\"checkbox\" id=\"dark\"><span>{}</span></label></header>\n<main>\n",
        tongue.catalogue.language().tag(),
        face::rules(),
        say("screen-dark"),
        title = escape(page.title),
    );
    out.push_str("<form id=\"choices\">\n");
    for choice in &page.choices {
        fieldset(&mut out, choice);
    }
    _ = write!(
        out,
        "</form>\n<section class=\"show\">\n\
         <svg id=\"stage\" role=\"img\" aria-label=\"{}\"></svg>\n\
         <p id=\"state\"><svg id=\"sign\" viewBox=\"-52 -42 104 84\" aria-hidden=\"true\"></svg><strong id=\"moment\"></strong>\
         <span id=\"says\"></span></p>\n\
         <svg id=\"rhythm\" role=\"img\" aria-label=\"{}\"></svg>\n\
         <input type=\"range\" id=\"time\" min=\"0\" value=\"0\" step=\"10\" aria-label=\"{}\" aria-describedby=\"keys\">\n\
         <div class=\"transport\">\
         <button type=\"button\" id=\"back\" aria-label=\"{}\">{BACK}<span>{}</span></button>\
         <button type=\"button\" id=\"play\" class=\"main\">{PLAY}<span>{}</span></button>\
         <button type=\"button\" id=\"on\" aria-label=\"{}\">{ON}<span>{}</span></button>\
         <button type=\"button\" id=\"flight\">{FLIGHT}<span>{}</span></button>\
         <label class=\"switch\"><input type=\"checkbox\" id=\"half\"><span>{}</span></label>\
         <label class=\"switch\"><input type=\"checkbox\" id=\"sound\"><span>{}</span></label></div>\n\
         <p id=\"order\"><span class=\"hidden\">{}: </span><span id=\"feet\"></span></p>\n\
         <p id=\"status\" role=\"status\" class=\"hidden\"></p>\n\
         <p class=\"less\">{}</p>\n</section>\n",
        say("screen-stage"),
        say("screen-rhythm"),
        say("screen-time"),
        say("screen-back-long"),
        say("screen-back"),
        say("screen-play"),
        say("screen-on-long"),
        say("screen-on"),
        say("screen-flight"),
        say("screen-half"),
        say("screen-sound"),
        say("screen-order"),
        say("screen-still"),
    );
    _ = write!(
        out,
        "</main>\n<footer>\n<p>{}</p>\n<p>{}</p>\n<p id=\"keys\">{}</p>\n",
        say("screen-model"),
        say("screen-height"),
        say("screen-keys")
    );
    figures(&mut out, tongue, ledger);
    _ = write!(
        out,
        "</footer>\n<script type=\"application/json\" id=\"data\">{data}</script>\n<script>\n{SCRIPT}</script>\n</body>\n</html>\n"
    );
    out
}

/// The sign: a cell with its three joints (look, section 1).
const SIGN: &str = "<circle r=\"32\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"24\"/>\
    <path stroke=\"var(--ground)\" stroke-width=\"7\" d=\"M0-50V-18M-14 50V10M14 50V10\"/>";
const BACK: &str =
    "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"M7 5v14M18 5l-8 7 8 7z\"/></svg>";
const ON: &str =
    "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"M17 5v14M6 5l8 7-8 7z\"/></svg>";
const PLAY: &str = "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path class=\"go\" d=\"M7 4l12 8-12 8z\"/>\
    <path class=\"halt\" d=\"M7 5v14M17 5v14\"/></svg>";
const FLIGHT: &str = "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path class=\"open\" d=\"M3 18C7 3 17 3 21 18M21 18l-5-2M21 18l1-5\"/></svg>";

fn fieldset(out: &mut String, choice: &Choice) {
    _ = write!(
        out,
        "<fieldset id=\"choice-{}\"><legend>{}</legend><div>",
        choice.name,
        escape(&choice.legend)
    );
    for (value, label) in &choice.options {
        _ = write!(
            out,
            "<label class=\"switch\"><input type=\"radio\" name=\"{}\" value=\"{}\"><span>{}</span></label>",
            choice.name,
            escape(value),
            escape(&capital(label))
        );
    }
    out.push_str("</div></fieldset>\n");
}

/// A label begins with a capital.
fn capital(label: &str) -> String {
    let mut letters = label.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => String::new(),
    }
}

/// The figures of the ledger that the page rests on, with their standing.
fn figures(out: &mut String, tongue: &Tongue, ledger: &Ledger) {
    _ = write!(
        out,
        "<details><summary>{}</summary><table><thead><tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th>\
         <th scope=\"col\">{}</th></tr></thead><tbody>",
        escape(&tongue.word("screen-figures")),
        escape(&tongue.word("screen-figure")),
        escape(&tongue.word("screen-value")),
        escape(&tongue.word("screen-standing")),
    );
    let cited = ledger.cited().filter(|figure| {
        figure.key.starts_with("motion.") || figure.key.starts_with("footfall.rate.")
    });
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
