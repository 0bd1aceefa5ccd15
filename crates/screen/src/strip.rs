//! A still strip for paper: prints, the line of each foot, contacts numbered, the rhythm below.

use std::fmt::Write;

use children::Side;
use motion::{Clip, Model, Role};

use crate::Tongue;
use crate::aid::{self, rings};
use crate::animated::{prints, stands};
use crate::face::FAMILY;
use crate::svg::{escape, extent, hops, letter, number, quad, ring};

/// Millimetres of paper: the height of a bar of the rhythm, and what lies round it.
const BAR: f64 = 4.0;
const ROW: f64 = 6.0;
const GAP: f64 = 5.0;
/// Cap height of figures on paper, millimetres (look, section 3), and over em.
const CAP: f64 = 1.8;
const CAP_OF_EM: f64 = 0.668;

/// A clip as a still drawing, `width` millimetres of paper wide: feet true to scale. Empty
/// for a clip without prints.
pub fn strip(clip: &Clip, width: f64, title: &str, tongue: &Tongue, model: &Model) -> String {
    let Some(ground) = extent(clip) else {
        return String::new();
    };
    let mm = clip.body.foot * 1000.0;
    let [w, h] = ground.size();
    let scale = width / w;
    let text = CAP / CAP_OF_EM;
    let label = 14.0_f64.max(width * 0.085);
    let top = h * scale + GAP;
    let walker = aid::means(clip) == "walker";
    let rows = if walker { 3.0 } else { 2.0 };
    let height = top + rows * ROW + 5.0;
    let mut out = String::new();
    _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 {0} {1}\" \
         role=\"img\" aria-labelledby=\"t d\" lang=\"{2}\"><title id=\"t\">{3}</title>\
         <desc id=\"d\">{4}</desc><style>svg{{--ink:#22262B;--panel:#fff;font-family:'{FAMILY}',sans-serif}}\
         {5}.bar{{stroke:var(--ink);stroke-width:.25}}.air{{fill:none;stroke:var(--ink);stroke-width:.18}}\
         .stand{{opacity:.45}}.say{{font-size:{6}px;fill:var(--ink)}}</style>",
        number(width),
        number(height),
        tongue.catalogue.language().tag(),
        escape(title),
        escape(&tongue.line(clip)),
        ink(mm),
        number(text),
    );
    _ = write!(
        out,
        "<g transform=\"scale({})translate({} {})\">{}",
        scale_of(scale),
        number(-ground.low[0]),
        number(-ground.low[1]),
        lines(clip)
    );
    out.push_str(&stands(clip, model));
    prints(&mut out, clip, model);
    _ = write!(out, "{}</g>", numbers(clip, mm));
    rhythm(&mut out, clip, [label, top], width - label, tongue);
    out.push_str("</svg>\n");
    out
}

fn scale_of(scale: f64) -> String {
    format!("{scale:.6}")
}

/// A row a foot: a bar while it is down; where no foot is, a slanted line crosses both rows.
fn rhythm(out: &mut String, clip: &Clip, [left, top]: [f64; 2], width: f64, tongue: &Tongue) {
    let x = |time: f64| left + width * time / clip.end;
    // a walker's frame stands above the feet
    let frame = clip.aid.as_ref().filter(|aid| aid.hands.is_none());
    let feet = if frame.is_some() { top + ROW } else { top };
    let row = |side: Side| {
        if side == Side::Left { feet } else { feet + ROW }
    };
    let label = |out: &mut String, y: f64, key: &'static str| {
        _ = write!(
            out,
            "<text class=\"say\" x=\"0\" y=\"{}\">{}</text>",
            number(y + BAR / 2.0 + CAP / 2.0),
            escape(&tongue.word(key))
        );
    };
    for (side, key) in [(Side::Left, "screen-left"), (Side::Right, "screen-right")] {
        label(out, row(side), key);
    }
    if let Some(frame) = frame {
        label(out, top, "screen-frame");
        for stand in &frame.stands {
            _ = write!(
                out,
                "<rect class=\"bar\" fill=\"var(--panel)\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\".6\"/>",
                number(x(stand.lands)),
                number(top),
                number(x(stand.lifts.unwrap_or(clip.end)) - x(stand.lands)),
                number(BAR)
            );
        }
    }
    for print in clip.prints.iter().filter(|print| print.role != Role::Still) {
        let lifts = print.lifts.unwrap_or(clip.end);
        let fill = if print.side == Side::Right {
            "var(--ink)"
        } else {
            "var(--panel)"
        };
        _ = write!(
            out,
            "<rect class=\"bar {}\" fill=\"{fill}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\".6\"/>",
            letter(print.side),
            number(x(print.lands)),
            number(row(print.side)),
            number(x(lifts) - x(print.lands)),
            number(BAR)
        );
    }
    for (from, to) in clip.flights() {
        _ = write!(
            out,
            "<path class=\"air\" d=\"M{} {}L{} {}\"/>",
            number(x(from)),
            number(feet + ROW + BAR),
            number(x(to)),
            number(feet)
        );
    }
    let mut second = 0.0;
    while second <= clip.end {
        let text = words::number::decimal(second, 0, tongue.catalogue.language());
        _ = write!(
            out,
            "<text class=\"say\" text-anchor=\"middle\" x=\"{}\" y=\"{}\">{}</text>",
            number(x(second).min(left + width - 4.0)),
            number(feet + 2.0 * ROW + 2.6),
            escape(&if second == 0.0 {
                tongue.say(&note::msg!("screen-seconds", value = text))
            } else {
                text
            })
        );
        second += 1.0;
    }
}

/// How feet, lines and numbers are drawn, for feet of this length in user units.
pub fn ink(mm: f64) -> String {
    format!(
        ".foot{{stroke:var(--ink);stroke-width:{0};stroke-linejoin:round;paint-order:stroke}}\
         .foot.R{{fill:var(--ink)}}.foot.L{{fill:var(--panel)}}\
         .fly,.step{{fill:none;stroke:var(--ink);stroke-width:{0};stroke-linecap:round}}\
         .step{{stroke-dasharray:0 {1}}}\
         .count circle{{fill:var(--panel);stroke:var(--ink);stroke-width:{2}}}\
         .count text{{fill:var(--ink);font-size:{3}px;font-weight:700;text-anchor:middle}}{4}",
        number(mm * 0.045),
        number(mm * 0.12),
        number(mm * 0.03),
        number(mm * 0.34),
        aid::ink(mm * 0.045)
    )
}

/// The line of each foot.
pub fn lines(clip: &Clip) -> String {
    let mut out = String::new();
    for hop in hops(clip) {
        let class = if hop.flies { "fly" } else { "step" };
        _ = write!(out, "<path class=\"{class}\" d=\"{}\"/>", quad(&hop.curve));
    }
    out
}

/// Contacts numbered in rings.
pub fn numbers(clip: &Clip, mm: f64) -> String {
    let mut out = String::new();
    let feet = clip.prints.iter();
    let own = feet.filter_map(|print| Some((print.count, ring(clip, print)?)));
    let marks = rings(clip).into_iter().map(|(count, at, _)| (count, at));
    for (count, [x, y]) in own.chain(marks) {
        _ = write!(
            out,
            "<g class=\"count\"><circle cx=\"{0}\" cy=\"{1}\" r=\"{2}\"/><text x=\"{0}\" y=\"{3}\">{4}</text></g>",
            number(x),
            number(y),
            number(mm * 0.25),
            number(y + mm * 0.115),
            count
        );
    }
    out
}
