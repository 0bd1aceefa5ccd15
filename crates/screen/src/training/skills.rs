//! The skills: texts, and feet for each.

use std::fmt::Write;

use children::{Side, Skill, counts};
use footfall::Gait;
use ledger::Ledger;
use motion::{Clip, Model, Path, early};
use note::msg;
use serde_json::{Value, json};

use super::{SkillText, open, skill};
use crate::Tongue;
use crate::data::{self, Choice, Chosen, Phrases, WELL, form, ground};
use crate::page;
use crate::player;
use crate::svg::escape;

/// Years of the model child that shows the skills.
const AGE: u32 = 5;

/// The clips of every skill, done well and in its early forms, by skill's word.
pub fn clips(
    texts: &[SkillText],
    phrases: &mut Phrases,
    tongue: &Tongue,
    model: &Model,
    ledger: &Ledger,
) -> Value {
    let children = counts(&[(f64::from(AGE), 1)], ledger).value;
    let mut all = serde_json::Map::new();
    for text in texts {
        let (Some(gait), Some(child)) = (Gait::named(text.skill.word()), children.first()) else {
            continue;
        };
        let mut chosen: Vec<Chosen> = Vec::new();
        for lead in leads(text.skill) {
            let path = Path::free(&gait, *lead, child, model);
            let Some(well) = path.and_then(|path| Clip::of(&path, model)) else {
                continue;
            };
            let by = |form: &str| vec![form.to_owned(), foot(*lead).to_owned()];
            for row in early(text.skill) {
                chosen.push(Chosen {
                    by: by(row.name),
                    clip: row.of(&well, model),
                    ground: None,
                });
            }
            chosen.push(Chosen {
                by: by(WELL),
                clip: well,
                ground: None,
            });
        }
        let Some(room) = ground(chosen.iter().map(|one| &one.clip), model) else {
            continue;
        };
        let clips: Vec<Value> = chosen
            .iter()
            .map(|one| data::clip(one, &room, phrases, tongue, model))
            .collect();
        all.insert(text.skill.word().to_owned(), json!(clips));
    }
    Value::Object(all)
}

/// Where left and right lead alike, one is enough.
fn leads(skill: Skill) -> &'static [Side] {
    if footfall::sided(skill) {
        &[Side::Right, Side::Left]
    } else {
        &[Side::Right]
    }
}

fn foot(side: Side) -> &'static str {
    if side == Side::Right { "R" } else { "L" }
}

pub fn section(out: &mut String, texts: &[SkillText], tongue: &Tongue) {
    open(out, "skills", "course-skills", tongue);
    _ = writeln!(out, "<p>{}</p>", escape(&tongue.word("course-skills-says")));
    for text in texts {
        one(out, text, tongue);
    }
    out.push_str("</section>\n");
}

fn one(out: &mut String, text: &SkillText, tongue: &Tongue) {
    let say = |key| escape(&tongue.word(key));
    let word = text.skill.word();
    _ = write!(
        out,
        "<details class=\"skill\" data-skill=\"{word}\"><summary><h3>{}</h3></summary>\n<div class=\"told\">\n",
        escape(&skill(text.skill, tongue))
    );
    let line = |out: &mut String, key, text: &str| {
        _ = writeln!(
            out,
            "<p><strong>{}.</strong> {}</p>",
            say(key),
            escape(text)
        );
    };
    line(out, "course-what", &text.what);
    for (key, lines) in [("course-early", &text.early), ("course-later", &text.later)] {
        _ = write!(out, "<h4>{}</h4><ul>", say(key));
        for line in lines {
            _ = write!(out, "<li>{}</li>", escape(line));
        }
        out.push_str("</ul>\n");
    }
    line(out, "course-cue", &text.cue);
    if !text.cues.is_empty() {
        _ = write!(
            out,
            "<table><thead><tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th></tr></thead><tbody>",
            say("course-seen"),
            say("course-say")
        );
        for (name, cue) in &text.cues {
            let row = early(text.skill).find(|row| row.name == *name);
            let seen = row.map_or_else(|| name.clone(), |row| tongue.word(row.says));
            _ = write!(
                out,
                "<tr><td>{}</td><td>{}</td></tr>",
                escape(&seen),
                escape(cue)
            );
        }
        out.push_str("</tbody></table>\n");
    }
    line(out, "course-easier", &text.easier);
    line(out, "course-harder", &text.harder);
    if text.figures.is_empty() {
        _ = writeln!(out, "<p>{}</p>", say("course-trains-none"));
    } else {
        let names = words::number::list(&text.figures, tongue.catalogue.language());
        line(out, "course-trains", &format!("{names}."));
    }
    out.push_str("</div>\n");
    _ = writeln!(out, "<form id=\"{word}-choices\" class=\"choices\">");
    let mut forms = Choice {
        name: "form",
        legend: tongue.word("screen-form"),
        options: Vec::new(),
    };
    forms.offer(WELL, || form(None, tongue));
    for row in early(text.skill) {
        forms.offer(row.name, || form(Some(row.name), tongue));
    }
    let mut lead = Choice {
        name: "lead",
        legend: tongue.word("screen-lead"),
        options: Vec::new(),
    };
    for side in leads(text.skill) {
        lead.offer(foot(*side), || {
            tongue.say(&msg!("screen-lead-foot", foot = foot(*side)))
        });
    }
    for choice in [&forms, &lead] {
        page::fieldset(out, choice, &format!("{word}-"));
    }
    out.push_str("</form>\n");
    player::markup(out, &format!("{word}-"), false, tongue);
    out.push_str("</details>\n");
}
