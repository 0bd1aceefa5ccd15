//! What the class has shown: prior, data and posterior of each child, and of ages and groups.

use note::{Fact, msg};
use plan::{Effect, Learned, Told};

use super::{Planned, suits, words};
use crate::drawing::scene::{Dash, INK, Path, Rect, Scene, Stroke, Text, WHITE, pen};
use crate::face::{self, Weight};
use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// The text's measure, mm.
const MEASURE: f64 = 175.0;

/// Half the width of a normal law's 90 % interval, standard deviations (scipy 1.17
/// `norm.ppf(0.95)`).
const NINE_TENTHS: f64 = 1.644_854;

/// Rows of a chart that a page holds.
const ROWS: usize = 30;

/// Writes the pages; none where nothing was seen.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    let Some(learned) = &planned.record.learned else {
        return;
    };
    paper.page_break();
    paper.heading(2, &sheet.word("page-learned"));
    paper.paragraph(&sheet.word("page-learned-how"));
    for skill in super::director::SKILLS {
        let told: Vec<&Told> = learned
            .told
            .iter()
            .filter(|one| one.skill == skill)
            .collect();
        if told.is_empty() {
            continue;
        }
        paper.heading(3, &suits::gait_words(sheet, skill));
        // one measure for all of a skill's strips
        let most = told.iter().map(|one| reach_end(one)).fold(0.1, f64::max);
        for part in told.chunks(ROWS) {
            paper.figure(&chart(sheet, part, most), &said(sheet, part));
        }
        shared(paper, sheet, learned, skill);
    }
    words::small(paper, &sheet.word("page-learned-never"));
}

fn reach_end(one: &Told) -> f64 {
    (one.prior[0] + NINE_TENTHS * one.prior[1]).max(one.reach.nine_tenths[1])
}

/// What was seen of a child, in short.
fn seen(sheet: &Sheet, one: &Told) -> String {
    let mut all = Vec::new();
    if one.measured > 0 {
        all.push(sheet.say(msg!(
            "page-learned-measured",
            count = u64::from(one.measured)
        )));
    }
    if one.tries > 0 {
        all.push(sheet.say(msg!(
            "page-learned-tries",
            n = u64::from(one.tries),
            good = u64::from(one.good)
        )));
    }
    if one.checks > 0 {
        all.push(sheet.say(msg!(
            "page-learned-checks",
            n = u64::from(one.checks),
            met = u64::from(one.met)
        )));
    }
    if all.is_empty() {
        all.push(sheet.word("page-learned-others"));
    }
    all.join(", ")
}

/// A strip a child: what its age says, open and dashed; what is known now, solid.
fn chart(sheet: &Sheet, told: &[&Told], most: f64) -> Scene {
    let caps = sheet.caps();
    let grow = caps.note / 1.8;
    let row = 5.0 * grow;
    let head = 7.0 * grow;
    let mut scene = Scene::new(MEASURE, head + row * told.len() as f64 + 7.0 * grow);
    // code, age, seen, strip, reach before and now
    let at = [0.0, 30.0 * grow, 40.0 * grow];
    let strip = [at[2] + 46.0 * grow, MEASURE - 34.0 * grow];
    let x = |metres: f64| strip[0] + (metres.max(0.0) / most) * (strip[1] - strip[0]);
    let base = head + row * told.len() as f64;
    let heads = [
        (at[0], "page-learned-child"),
        (at[1], "page-learned-years"),
        (at[2], "page-learned-seen"),
        (strip[0], "page-learned-reach"),
    ];
    for (x, key) in heads {
        scene.text(Text::new(sheet.word(key), [x, caps.note], caps.note).bold());
    }
    let before = sheet.say(msg!(
        "page-learned-before-now",
        unit = measure::unit(sheet.units)
    ));
    scene.text(
        Text::new(before, [MEASURE, caps.note], caps.note)
            .bold()
            .end(),
    );
    scene.stroke(
        Path::line(&[[0.0, head - 2.5 * grow], [MEASURE, head - 2.5 * grow]]),
        Stroke::solid(pen::ELLIPSE),
    );
    let step = [0.1, 0.2, 0.25, 0.5, 1.0]
        .into_iter()
        .find(|step| most / step <= 6.0)
        .unwrap_or(1.0);
    for number in 0..=((most / step).floor() as usize) {
        let metres = number as f64 * step;
        scene.stroke(
            Path::line(&[[x(metres), head - 2.5 * grow], [x(metres), base]]),
            Stroke::solid(pen::HAIR),
        );
        let figure = measure::length(metres, sheet);
        scene.text(Text::new(figure, [x(metres), base + 4.0 * grow], caps.note).middle());
    }
    for (number, one) in told.iter().enumerate() {
        let y = head + row * number as f64 + 0.3 * grow;
        let line = y + caps.note / 2.0;
        scene.text(
            Text::new(
                face::fit(&one.child, caps.note, Weight::Bold, at[1] - 2.0),
                [at[0], line],
                caps.note,
            )
            .bold(),
        );
        scene.text(Text::new(one.years.to_string(), [at[1], line], caps.note));
        let seen = face::fit(
            &seen(sheet, one),
            caps.note,
            Weight::Regular,
            strip[0] - at[2] - 3.0,
        );
        scene.text(Text::new(seen, [at[2], line], caps.note));
        let [m, tau] = one.prior;
        let ends = [m - NINE_TENTHS * tau, m + NINE_TENTHS * tau];
        let above = y - 0.9 * grow;
        scene.stroke(
            Path::line(&[[x(ends[0]), above], [x(ends[1]), above]]),
            Stroke::dashed(pen::ZONE, Dash::Short),
        );
        scene.shape(
            Path::circle([x(m), above], 0.7 * grow),
            WHITE,
            Stroke::solid(pen::ZONE),
        );
        let below = y + 0.9 * grow;
        let [low, high] = one.reach.nine_tenths;
        scene.stroke(
            Path::line(&[[x(low), below], [x(high), below]]),
            Stroke::solid(pen::ELLIPSE),
        );
        let [low, high] = one.reach.half;
        let slab = Rect {
            x: x(low),
            y: below - 0.55 * grow,
            w: x(high) - x(low),
            h: 1.1 * grow,
        };
        scene.fill(Path::plate(slab, 0.0), INK);
        scene.shape(
            Path::circle([x(one.reach.mean), below], 0.75 * grow),
            WHITE,
            Stroke::solid(pen::ELLIPSE),
        );
        let figures = format!(
            "{} / {}",
            measure::dimension(m, sheet),
            measure::dimension(one.reach.mean, sheet)
        );
        scene.text(Text::new(figures, [MEASURE, line], caps.note).end());
    }
    scene
}

/// The chart in words.
fn said(sheet: &Sheet, told: &[&Told]) -> String {
    let rows: Vec<String> = told
        .iter()
        .map(|one| {
            sheet.say(msg!(
                "page-learned-told",
                child = one.child.as_str(),
                seen = seen(sheet, one),
                before = words::length(sheet, one.prior[0]),
                now = words::length(sheet, one.reach.mean),
                low = words::length(sheet, one.reach.nine_tenths[0]),
                high = words::length(sheet, one.reach.nine_tenths[1])
            ))
        })
        .collect();
    rows.join(" ")
}

/// What ages and groups have in common.
fn shared(paper: &mut Manuscript, sheet: &Sheet, learned: &Learned, skill: &str) {
    let whose = |effect: &Effect| match (&effect.age, &effect.group) {
        (Some(age), _) => sheet.say(msg!("page-learned-age", age = u64::from(*age))),
        (None, Some(group)) if !group.is_empty() => {
            sheet.say(msg!("page-learned-group", group = group.as_str()))
        }
        _ => sheet.word("page-learned-class"),
    };
    let signed = |metres: f64| {
        let sign = if metres < 0.0 { "−" } else { "+" };
        format!("{sign}{}", measure::small(metres.abs(), sheet))
    };
    let rows: Vec<Vec<String>> = learned
        .effects
        .iter()
        .filter(|effect| effect.skill == skill && effect.told_by > 0)
        .map(|effect| {
            vec![
                whose(effect),
                sheet.say(msg!(
                    "page-learned-told-by",
                    told = u64::from(effect.told_by),
                    of = u64::from(effect.children),
                    tries = u64::from(effect.tries)
                )),
                format!("± {}", measure::small(effect.prior_sd, sheet)),
                signed(effect.now.mean),
                format!(
                    "{} … {}",
                    signed(effect.now.nine_tenths[0]),
                    signed(effect.now.nine_tenths[1])
                ),
            ]
        })
        .collect();
    if rows.is_empty() {
        return;
    }
    let unit = Fact::Text(measure::small_unit(sheet.units).to_owned());
    paper.table(
        &[
            Column::words(sheet.word("page-learned-shared")),
            Column::prose(sheet.word("page-learned-data"), 1),
            Column::figures(sheet.say(msg!("page-learned-prior", unit = unit.clone()))),
            Column::figures(sheet.say(msg!("page-learned-now", unit = unit))),
            Column::figures(sheet.word("page-learned-interval")),
        ],
        &rows,
        true,
    );
}
