//! The practice in seeing: rounds of clips, and the form in which they are marked.

use std::fmt::Write;

use children::Skill;
use course::{clips, criteria, figures};
use ledger::Ledger;
use motion::Model;
use note::msg;
use serde_json::{Value, json};

use super::{open, skill};
use crate::Tongue;
use crate::data::{self, Chosen, Phrases, ground};
use crate::player;
use crate::svg::escape;

/// The rounds, each a list of clips with the criteria, the truth, and what was done to it.
pub fn rounds(
    seed: u64,
    phrases: &mut Phrases,
    tongue: &Tongue,
    model: &Model,
    ledger: &Ledger,
) -> Value {
    let count = |key, most: f64| ledger.number(key).round().clamp(1.0, most) as usize;
    let (many, each) = (count(figures::ROUNDS, 12.0), count(figures::CLIPS, 40.0));
    let all = clips(seed, many * each, &Skill::ALL, ledger);
    let shown: Vec<Value> = all
        .iter()
        .filter_map(|shown| {
            // its early form would tell what is to be found
            let clip = motion::Clip {
                early: None,
                ..shown.clip.clone()
            };
            let room = ground([&clip].into_iter(), model)?;
            let chosen = Chosen {
                by: Vec::new(),
                clip,
                ground: None,
            };
            let mut value = data::clip(&chosen, &room, phrases, tongue, model);
            let done: Vec<String> = shown
                .faults
                .iter()
                .map(|fault| tongue.word(fault.form.says))
                .collect();
            let says = if done.is_empty() {
                tongue.word("screen-well-says")
            } else {
                done.join(" ")
            };
            if let Some(clip) = value.as_object_mut() {
                clip.insert("says".into(), json!(phrases.number(says)));
            }
            let lines: Vec<String> = criteria(shown.skill)
                .iter()
                .map(|row| tongue.word(row.says))
                .collect();
            let foot = if shown.lead == children::Side::Right {
                "R"
            } else {
                "L"
            };
            let name = skill(shown.skill, tongue);
            let name = if footfall::sided(shown.skill) {
                format!("{name}, {}", tongue.say(&msg!("course-leads", foot = foot)))
            } else {
                name
            };
            Some(json!({ "skill": name, "lines": lines, "met": shown.met, "clip": value }))
        })
        .collect();
    shown.chunks(each).map(|round| json!(round)).collect()
}

pub fn section(out: &mut String, tongue: &Tongue, ledger: &Ledger) {
    let say = |key| escape(&tongue.word(key));
    open(out, "practice", "course-practice", tongue);
    let number = |key| ledger.number(key).to_string();
    let mark = tongue.catalogue.language().mark().to_string();
    let keeping = msg!(
        "course-keeping",
        hours = number(figures::CLIPS_HOURS),
        sessions = number(figures::BESIDE),
        rounds = number(figures::IN_ROW),
        double = format!("{:.0}", 100.0 * ledger.number(figures::DOUBLE)),
        pairs = number(figures::DRIFT_PAIRS),
        kappa = format!("{:.2}", ledger.number(figures::KAPPA)).replace('.', &mark),
        away = number(figures::AWAY),
    );
    _ = write!(
        out,
        "<p>{}</p>\n<p>{}</p>\n<p>{}</p>\n<div id=\"watch\">\n<p id=\"round\"></p>\n<h3 id=\"which\" tabindex=\"-1\"></h3>\n",
        say("course-practice-says"),
        say("course-practice-words"),
        escape(&tongue.say(&keeping)),
    );
    player::markup(out, "see-", true, tongue);
    _ = write!(
        out,
        "<form id=\"marks\" class=\"asked\"></form>\n<p class=\"row\"><button type=\"button\" id=\"next\" class=\"main\">{}</button></p>\n\
         <p id=\"unmarked\" role=\"status\"></p>\n</div>\n\
         <section id=\"result\" hidden aria-labelledby=\"result-title\"><h3 id=\"result-title\" tabindex=\"-1\"></h3>\
         <div id=\"verdict\" role=\"status\"></div><div id=\"truth\"></div>\
         <p class=\"row\"><button type=\"button\" id=\"next-round\" class=\"main\">{}</button></p></section>\n</section>\n",
        say("course-next"),
        say("course-next-round"),
    );
}
