//! A drawing that moves by style sheet alone: no script, still where less motion is asked for.

use std::fmt::Write;

use children::Side;
use motion::{Clip, Key, Model, Print, Role, Stand, Track};

use crate::Tongue;
use crate::aid::{HAND, pushed, rolled, shape};
use crate::face::FAMILY;
use crate::strip::{ink, lines, numbers};
use crate::svg::{aloft, escape, foot, letter, number, spot, turn};

/// A clip as an SVG that moves: feet rise off their shadows, in a loop. Where less motion is
/// asked for, numbered prints stand in their stead. Empty for a clip without prints.
///
/// - `title`: what it is, for who cannot see it
pub fn animated(clip: &Clip, title: &str, tongue: &Tongue, model: &Model) -> String {
    let Some(ground) = aloft(clip, model) else {
        return String::new();
    };
    let mm = clip.body.foot * 1000.0;
    let [width, height] = ground.size();
    let mut out = String::new();
    _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{} {} {} {}\" role=\"img\" \
         aria-labelledby=\"t d\" lang=\"{}\"><title id=\"t\">{}</title><desc id=\"d\">{}</desc><style>",
        number(ground.low[0]),
        number(ground.low[1]),
        number(width),
        number(height),
        tongue.catalogue.language().tag(),
        escape(title),
        escape(&tongue.line(clip)),
    );
    _ = write!(
        out,
        "svg{{--ink:#22262B;--panel:#FFFFFF;background:var(--panel);font-family:'{FAMILY}',sans-serif}}\
         @media(prefers-color-scheme:dark){{svg{{--ink:#ECE8DE;--panel:#272B30}}}}{}\
         .still{{display:none}}.trace{{opacity:.28}}.go{{animation:{}s linear infinite}}\
         .shade{{fill:var(--ink);stroke:none;opacity:.22}}",
        ink(mm),
        number(clip.end),
    );
    let tracks = [Side::Right, Side::Left].map(|side| Track::of(clip, side, model));
    for track in &tracks {
        let side = letter(track.side);
        if clip.aid.as_ref().is_none_or(|aid| aid.hands.is_none()) {
            frames(&mut out, &track.keys, clip.end, 0.0, &format!("g{side}"));
        }
        frames(&mut out, &track.keys, clip.end, 1.0, &format!("f{side}"));
    }
    if let Some(aid) = &clip.aid {
        frames(&mut out, &aid.keys, clip.end, 0.0, "a");
    }
    out.push_str(
        "@media(prefers-reduced-motion:reduce){.go{animation:none;display:none}\
         .still{display:inline}.trace{opacity:1}.stand{opacity:.45}}</style>",
    );
    _ = write!(
        out,
        "<g class=\"still\">{}{}</g><g class=\"trace\">",
        stands(clip, model),
        lines(clip)
    );
    prints(&mut out, clip, model);
    _ = write!(out, "</g><g class=\"still\">{}</g>", numbers(clip, mm));
    if let Some(aid) = &clip.aid {
        _ = write!(
            out,
            "<g class=\"go\" style=\"animation-name:a\">{}</g>",
            shape(aid, model.wheel, mm)
        );
    }
    let hands = clip.aid.as_ref().is_some_and(|aid| aid.hands.is_some());
    for track in tracks.iter().filter(|_| hands) {
        let side = letter(track.side);
        _ = write!(
            out,
            "<circle class=\"go hand {side}\" style=\"animation-name:f{side}\" r=\"{}\"/>",
            number(HAND / 2.0)
        );
    }
    for (name, class) in [('g', "shade"), ('f', "foot")] {
        for track in tracks.iter().filter(|_| !hands) {
            let side = letter(track.side);
            _ = write!(
                out,
                "<path class=\"go {class} {side}\" style=\"animation-name:{name}{side}\" d=\"{}\"/>",
                foot(track.side, mm)
            );
        }
    }
    out.push_str("</svg>\n");
    out
}

/// Prints as they lie; of wheels their tracks, thick where they were pushed.
pub fn prints(out: &mut String, clip: &Clip, model: &Model) {
    let mm = clip.body.foot * 1000.0;
    for path in rolled(clip) {
        _ = write!(out, "<path class=\"rolled\" d=\"{path}\"/>");
    }
    for push in pushed(clip) {
        _ = write!(out, "<path class=\"pushed\" d=\"{}\"/>", push.path);
    }
    let walks = clip.aid.as_ref().filter(|aid| aid.hands.is_none());
    for stand in walks.iter().flat_map(|aid| &aid.stands) {
        out.push_str(&standing(clip, stand, model));
    }
    if clip.aid.as_ref().is_none_or(|aid| aid.hands.is_none()) {
        for print in clip.prints.iter().filter(|print| shown(print)) {
            out.push_str(&resting(print, mm));
        }
    }
}

/// Wheels where they stand still; of a walker its prints tell that.
pub fn stands(clip: &Clip, model: &Model) -> String {
    let rolls = clip.aid.as_ref().filter(|aid| aid.hands.is_some());
    let stands = rolls.iter().flat_map(|aid| &aid.stands);
    stands
        .map(|stand| standing(clip, stand, model))
        .collect::<Vec<_>>()
        .concat()
}

fn standing(clip: &Clip, stand: &Stand, model: &Model) -> String {
    let Some(aid) = &clip.aid else {
        return String::new();
    };
    let [x, y] = spot(stand.at);
    format!(
        "<g class=\"stand\" transform=\"translate({} {})rotate({})\">{}</g>",
        number(x),
        number(y),
        number(turn(stand.toes)),
        shape(aid, model.wheel, clip.body.foot * 1000.0)
    )
}

/// Prints that are drawn: where a foot only comes to rest at the end is not part of the way.
pub fn shown(print: &Print) -> bool {
    print.role != Role::Stand
}

/// A print as it lies.
pub fn resting(print: &Print, mm: f64) -> String {
    let [x, y] = spot(print.at);
    format!(
        "<path class=\"foot {}\" transform=\"translate({} {})rotate({})\" d=\"{}\"/>",
        letter(print.side),
        number(x),
        number(y),
        number(turn(print.toes)),
        foot(print.side, mm)
    )
}

fn frames(out: &mut String, keys: &[Key], end: f64, rise: f64, name: &str) {
    _ = write!(out, "@keyframes {name}{{");
    for Key {
        time,
        at,
        toes,
        height,
    } in keys
    {
        let [x, y] = spot(*at);
        _ = write!(
            out,
            "{}%{{transform:translate({}px,{}px)rotate({}deg)}}",
            number(100.0 * time / end),
            number(x),
            number(y - rise * height * 1000.0),
            number(turn(*toes))
        );
    }
    out.push('}');
}
