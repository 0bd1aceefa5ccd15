//! The player of clips: stage, rhythm, time bar and transport. Its script is `player.js`.

use std::fmt::Write;

use note::msg;
use serde_json::{Value, json};

use crate::Tongue;
use crate::svg::escape;

/// The player's parts; the prefix makes their ids a page's own. A quiet one keeps back the
/// words that tell what feet do.
pub fn markup(out: &mut String, prefix: &str, quiet: bool, tongue: &Tongue) {
    let say = |key| escape(&tongue.word(key));
    _ = write!(
        out,
        "<section class=\"show{}\">\n\
         <svg id=\"{prefix}stage\" class=\"stage\" role=\"img\" aria-label=\"{}\"></svg>\n\
         <p id=\"{prefix}state\" class=\"state\"><svg id=\"{prefix}sign\" class=\"mark\" viewBox=\"-52 -42 104 84\" aria-hidden=\"true\"></svg>\
         <strong id=\"{prefix}moment\" class=\"moment\"></strong><span id=\"{prefix}says\" class=\"says\"></span></p>\n\
         <svg id=\"{prefix}rhythm\" class=\"rhythm\" role=\"img\" aria-label=\"{}\"></svg>\n\
         <input type=\"range\" id=\"{prefix}time\" min=\"0\" value=\"0\" step=\"10\" aria-label=\"{}\" aria-describedby=\"keys\">\n",
        if quiet { " quiet" } else { "" },
        say("screen-stage"),
        say("screen-rhythm"),
        say("screen-time"),
    );
    _ = write!(
        out,
        "<div class=\"transport\">\
         <button type=\"button\" id=\"{prefix}back\" aria-label=\"{}\">{BACK}<span>{}</span></button>\
         <button type=\"button\" id=\"{prefix}play\" class=\"play main\">{PLAY}<span>{}</span></button>\
         <button type=\"button\" id=\"{prefix}on\" aria-label=\"{}\">{ON}<span>{}</span></button>\
         <button type=\"button\" id=\"{prefix}flight\" class=\"flight\">{FLIGHT}<span>{}</span></button>\
         <label class=\"switch\"><input type=\"checkbox\" id=\"{prefix}half\"><span>{}</span></label>\
         <label class=\"switch\"><input type=\"checkbox\" id=\"{prefix}sound\"><span>{}</span></label></div>\n\
         <p id=\"{prefix}order\" class=\"order\"><span class=\"hidden\">{}: </span><span id=\"{prefix}feet\"></span></p>\n\
         <p id=\"{prefix}legend\" class=\"legend\" hidden></p>\n\
         <p id=\"{prefix}status\" role=\"status\" class=\"hidden\"></p>\n\
         <p class=\"less\">{}</p>\n</section>\n",
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
}

/// The words that its script says.
pub fn words(tongue: &Tongue) -> Value {
    json!({
        "play": tongue.word("screen-play"),
        "pause": tongue.word("screen-pause"),
        "start": tongue.word("screen-start"),
        "right": tongue.word("screen-right"),
        "left": tongue.word("screen-left"),
        "air": tongue.word("screen-air"),
        "metre": tongue.word("screen-metre"),
        "noFlight": tongue.word("screen-no-flight"),
        "frame": tongue.word("screen-frame"),
        "flight": tongue.word("screen-flight"),
        "glide": tongue.word("screen-glide"),
        "startStill": tongue.word("screen-start-still"),
        "by": {
            "feet": [tongue.word("screen-stage"), tongue.word("screen-rhythm"), String::new()],
            "wheels": [
                tongue.word("screen-stage-wheels"),
                tongue.word("screen-rhythm-wheels"),
                tongue.word("screen-legend-wheels"),
            ],
            "walker": [
                tongue.word("screen-stage-walker"),
                tongue.word("screen-rhythm-walker"),
                tongue.word("screen-legend-walker"),
            ],
        },
        "ofMark": tongue.say(&msg!("screen-of-mark", count = "%1", most = "%2", landing = "%3")),
        "of": tongue.say(&msg!("screen-of", count = "%1", most = "%2", landing = "%3")),
        "playing": tongue.say(&msg!("screen-playing", feet = "%1")),
        "seconds": tongue.say(&msg!("screen-seconds", value = "%1")),
        "mark": tongue.catalogue.language().mark().to_string(),
    })
}

const BACK: &str =
    "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"M7 5v14M18 5l-8 7 8 7z\"/></svg>";
const ON: &str =
    "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path d=\"M17 5v14M6 5l8 7-8 7z\"/></svg>";
const PLAY: &str = "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path class=\"go\" d=\"M7 4l12 8-12 8z\"/>\
    <path class=\"halt\" d=\"M7 5v14M17 5v14\"/></svg>";
const FLIGHT: &str = "<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\"><path class=\"open\" d=\"M3 18C7 3 17 3 21 18M21 18l-5-2M21 18l1-5\"/></svg>";
