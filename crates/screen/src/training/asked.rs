//! Confidence and knowledge, before and after.

use std::fmt::Write;

use course::{CONFIDENCE, KNOWLEDGE};

use super::open;
use crate::Tongue;
use crate::svg::escape;

pub fn before(out: &mut String, tongue: &Tongue) {
    open(out, "before", "course-before", tongue);
    form(out, "before", false, tongue);
    _ = write!(
        out,
        "<p class=\"row\"><button type=\"button\" id=\"keep\" class=\"main\">{}</button></p>\n\
         <p id=\"kept\" role=\"status\"></p>\n</section>\n",
        escape(&tongue.word("course-keep"))
    );
}

pub fn after(out: &mut String, tongue: &Tongue) {
    open(out, "after", "course-after", tongue);
    _ = writeln!(out, "<p>{}</p>", escape(&tongue.word("course-after-says")));
    form(out, "after", true, tongue);
    _ = write!(
        out,
        "<p class=\"row\"><button type=\"button\" id=\"compare\" class=\"main\">{}</button></p>\n\
         <div id=\"compared\" role=\"status\"></div>\n</section>\n",
        escape(&tongue.word("course-compare"))
    );
}

fn form(out: &mut String, when: &str, then: bool, tongue: &Tongue) {
    let say = |key| escape(&tongue.word(key));
    _ = write!(
        out,
        "<form id=\"asked-{when}\" class=\"asked\">\n<h3>{}</h3>\n\
         <div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"{}\">\
         <table class=\"ratings\"><thead><tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th>",
        say("course-rate"),
        say("course-rate"),
        say("course-item"),
        say("course-now"),
    );
    if then {
        _ = write!(out, "<th scope=\"col\">{}</th>", say("course-then"));
    }
    out.push_str("</tr></thead><tbody>\n");
    for (at, key) in CONFIDENCE.iter().enumerate() {
        let item = say(key);
        _ = write!(out, "<tr><th scope=\"row\">{item}</th>");
        number(out, &format!("{when}-can-{at}"), &item, &say("course-now"));
        if then {
            number(out, &format!("then-can-{at}"), &item, &say("course-then"));
        }
        out.push_str("</tr>\n");
    }
    _ = write!(
        out,
        "</tbody></table></div>\n<h3>{}</h3>\n",
        say("course-questions")
    );
    for (at, item) in KNOWLEDGE.iter().enumerate() {
        _ = write!(
            out,
            "<fieldset class=\"asks\"><legend>{}</legend><div>",
            say(item.asks)
        );
        for (nth, answer) in item.answers.iter().enumerate() {
            _ = write!(
                out,
                "<label class=\"switch\"><input type=\"radio\" name=\"{when}-know-{at}\" value=\"{nth}\"><span>{}</span></label>",
                say(answer)
            );
        }
        out.push_str("</div>");
        if then {
            let right = item.answers.get(item.right).map_or("", |key| *key);
            let right = tongue.word(right);
            _ = write!(
                out,
                "<p class=\"why\" id=\"why-{at}\" hidden>{} {}</p>",
                escape(&tongue.say(&note::msg!("course-right", answer = right))),
                say(item.why)
            );
        }
        out.push_str("</fieldset>\n");
    }
    out.push_str("</form>\n");
}

/// A cell with a number from 0 to 100.
fn number(out: &mut String, name: &str, item: &str, column: &str) {
    _ = write!(
        out,
        "<td><input type=\"number\" name=\"{name}\" min=\"0\" max=\"100\" step=\"1\" inputmode=\"numeric\" autocomplete=\"off\" \
         aria-label=\"{item} {column}\"></td>"
    );
}
