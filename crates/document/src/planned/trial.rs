//! Chalk first: a page to try two figures at three sizes with four children before anything
//! is painted, and a ten-minute baseline; both to be written in and typed back.

use ledger::Ledger;
use marking::{Family, Figure, Look, Palette};
use note::{Fact, msg};
use plan::Child;

use super::painter::{self, Extent};
use super::suits::years;
use super::{Planned, words};
use crate::drawing::hatch::Rings;
use crate::drawing::mark;
use crate::drawing::scale::Scale;
use crate::drawing::scene::{Path, Scene, Stroke, Text, pen};
use crate::face::{self, Weight};
use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Manuscript, string};
use unit::Units;

/// Children of the trial.
const TRIERS: usize = 4;
/// Rows of the baseline.
const BASELINE: usize = 10;
/// Tries of each child at each size.
const TRIES: u64 = 5;

/// A figure to chalk at three sizes.
struct Chalked {
    family: &'static dyn Family,
    /// Which length changes, its number among the family's.
    varied: usize,
    /// The three figures, the smallest first, with all their lengths.
    sizes: Vec<(Vec<f64>, Figure)>,
}

/// Writes both pages.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.heading(1, &sheet.say(msg!("page-trial-title", name = sheet.name)));
    paper.paragraph(&sheet.say(msg!("page-trial-why", tries = TRIES)));
    paper.care(
        &sheet.word("doc-take-care"),
        &[
            "page-trial-care-warm",
            "page-trial-care-dry",
            "page-trial-care-stop",
        ]
        .map(|key| sheet.word(key)),
    );
    let chalked = to_chalk(planned, planned.ledger);
    paper.heading(2, &sheet.word("page-trial-chalk"));
    let scene = sketches(sheet, &chalked);
    paper.figure(&scene, &sketches_told(sheet, &chalked));
    paper.heading(2, &sheet.word("page-trial-tries"));
    paper.paragraph(&sheet.say(msg!("page-trial-how", tries = TRIES)));
    tries(paper, sheet, planned, &chalked);
    words::small(paper, &typed_back(sheet, &chalked));
    paper.page_break();
    baseline(paper, sheet, planned);
}

/// Two figures of the plan that are landed on, the ones most is gained by first; the court
/// and the brook where the plan has none.
fn to_chalk(planned: &Planned, ledger: &Ledger) -> Vec<Chalked> {
    let look = Look::of(
        Palette {
            ground: planned.surface,
        },
        ledger,
    );
    let mut known: Vec<(&'static dyn Family, Vec<f64>)> = planned
        .figures
        .iter()
        .filter_map(|figure| {
            Some((
                marking::family(&figure.family)?,
                figure.lengths.iter().map(|(_, metres)| *metres).collect(),
            ))
        })
        .collect();
    known.extend(
        ["brook", "court", "spots"]
            .into_iter()
            .filter_map(marking::family)
            .map(|family| (family, family.defaults())),
    );
    let mut out: Vec<Chalked> = Vec::new();
    for (family, lengths) in known {
        if out.len() == 2 || out.iter().any(|one| one.family.name() == family.name()) {
            continue;
        }
        if let Some(one) = sizes(family, &lengths, &look) {
            out.push(one);
        }
    }
    out
}

/// The figure as planned, and a fifth shorter and longer, as far as it can be painted.
fn sizes(family: &'static dyn Family, lengths: &[f64], look: &Look) -> Option<Chalked> {
    const APART: f64 = 0.2;
    let specs = family.lengths();
    let varied = ["wide", "single", "hop", "jump"]
        .iter()
        .find_map(|name| specs.iter().position(|spec| spec.name == *name))?;
    let (spec, middle) = (specs.get(varied)?, *lengths.get(varied)?);
    let mut made: Vec<(Vec<f64>, Figure)> = Vec::new();
    for share in [1.0 - APART, 1.0, 1.0 + APART, 1.0 + 2.0 * APART] {
        let length =
            (((middle * share) / spec.step).round() * spec.step).clamp(spec.least, spec.most);
        let mut all = lengths.to_vec();
        *all.get_mut(varied)? = (length * 1e6).round() / 1e6;
        if made.iter().any(|(known, _)| *known == all) || made.len() == 3 {
            continue;
        }
        if let Ok(figure) = family.make(&all, look) {
            made.push((all, figure));
        }
    }
    (made.len() > 1).then_some(Chalked {
        family,
        varied,
        sizes: made,
    })
}

const LETTERS: [&str; 3] = ["A", "B", "C"];

impl Chalked {
    fn varied_says(&self, sheet: &Sheet) -> String {
        self.family
            .lengths()
            .get(self.varied)
            .map_or_else(String::new, |spec| sheet.word(spec.says))
    }

    fn varied_length(&self, lengths: &[f64], sheet: &Sheet) -> String {
        lengths
            .get(self.varied)
            .map_or_else(String::new, |metres| measure::length(*metres, sheet))
    }

    /// As trials.csv has it, in the unit of the sheet.
    fn cell(&self, lengths: &[f64], sheet: &Sheet) -> String {
        let one = |metres: f64| match sheet.units {
            Units::Metres => format!("{} cm", ((metres * 1000.0).round() / 10.0)),
            Units::Feet => format!("{} in", ((metres / unit::INCH * 4.0).round() / 4.0)),
        };
        let pairs: Vec<String> = self
            .family
            .lengths()
            .iter()
            .zip(lengths)
            .map(|(spec, metres)| format!("{}={}", spec.name, one(*metres)))
            .collect();
        pairs.join("; ")
    }
}

/// The first size of each figure in outline, what stays and what changes beside it.
fn sketches(sheet: &Sheet, chalked: &[Chalked]) -> Scene {
    let caps = sheet.caps();
    let grow = caps.note / 1.8;
    let wide = 175.0;
    let line = caps.note * 1.67;
    let picture = 100.0;
    let mut scene = Scene::new(wide, 0.0);
    let mut y = 0.0;
    for one in chalked {
        let Some((lengths, figure)) = one.sizes.get(1).or(one.sizes.first()) else {
            continue;
        };
        let extent = Extent::of_way(figure);
        let (scale, _): (Scale, _) = extent.fit([picture - 2.0, 29.0 * grow], [0.0; 2], sheet);
        let high = extent.size()[1] * scale.mm();
        let view = extent.at(scale, [picture / 2.0, y + 2.0 + high / 2.0]);
        let mut outline: Vec<Rings> = Vec::new();
        for (rings, _) in painter::pieces(figure, &view, false) {
            outline.push(rings);
        }
        for rings in &outline {
            for ring in rings {
                scene.stroke(Path::ring(ring), Stroke::solid(pen::HAIR));
            }
        }
        let x = picture + 6.0;
        let mut at = y + 2.0 + caps.name;
        scene.text(Text::new(words::family(sheet, one.family.name()), [x, at], caps.name).bold());
        at += 1.2;
        let says = sheet.say(msg!("page-trial-varies", what = one.varied_says(sheet)));
        for text in face::wrap(&says, caps.note, Weight::Regular, wide - x) {
            at += line;
            scene.text(Text::new(text, [x, at], caps.note));
        }
        at += 1.0;
        for ((lengths, _), letter) in one.sizes.iter().zip(LETTERS) {
            at += line * 1.25;
            mark::number(
                &mut scene,
                [x + caps.note, at - caps.note / 2.0],
                letter,
                caps.note,
            );
            scene.text(Text::new(
                one.varied_length(lengths, sheet),
                [x + 3.4 * caps.note, at],
                caps.name,
            ));
        }
        at += 1.2;
        for (number, spec) in one.family.lengths().iter().enumerate() {
            let Some(metres) = lengths.get(number).filter(|_| number != one.varied) else {
                continue;
            };
            let text = format!(
                "{} {}",
                sheet.word(spec.says),
                measure::length(*metres, sheet)
            );
            for text in face::wrap(&text, caps.note, Weight::Regular, wide - x) {
                at += line;
                scene.text(Text::new(text, [x, at], caps.note));
            }
        }
        y = (y + high + 6.0).max(at + 5.0);
    }
    scene.height = y.max(5.0);
    scene
}

fn sketches_told(sheet: &Sheet, chalked: &[Chalked]) -> String {
    let all: Vec<String> = chalked
        .iter()
        .map(|one| {
            let sizes: Vec<String> = one
                .sizes
                .iter()
                .map(|(lengths, _)| one.varied_length(lengths, sheet))
                .collect();
            sheet.say(msg!(
                "page-trial-told",
                name = words::family(sheet, one.family.name()),
                what = one.varied_says(sheet),
                sizes = sizes
            ))
        })
        .collect();
    all.join(" ")
}

/// Codes of so many children spread over the ages; a count's are left to be filled in.
fn spread(children: &[Child], many: usize) -> Vec<String> {
    let mut order: Vec<&Child> = children.iter().collect();
    order.sort_by(|a, b| a.age.total_cmp(&b.age).then(a.id.cmp(&b.id)));
    // a count stands for many children, who have no codes of their own
    let heads: Vec<&Child> = order
        .iter()
        .flat_map(|child| std::iter::repeat_n(*child, child.count as usize))
        .collect();
    let take = many.min(heads.len());
    (0..take)
        .filter_map(|at| heads.get((2 * at + 1) * heads.len() / (2 * take)))
        .map(|child| {
            if child.count == 1 {
                child.id.clone()
            } else {
                String::new()
            }
        })
        .collect()
}

/// The form: a child and a figure a row, the three sizes beside each other.
fn tries(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, chalked: &[Chalked]) {
    let who = spread(planned.children(), TRIERS);
    let mut code = String::from(
        "#table(columns: (26mm, 1fr, 36mm, 36mm, 36mm), stroke: none, column-gutter: 3mm, inset: (x: 0mm, y: 1mm * grow), align: left + horizon, table.header(repeat: true, ",
    );
    let heads = ["page-trial-child", "page-trial-figure"].map(|key| sheet.word(key));
    for head in &heads {
        code.push_str(&format!("text(weight: 700, {}), ", string(head)));
    }
    for letter in LETTERS {
        code.push_str(&format!(
            "text(weight: 700, {}), ",
            string(&sheet.say(msg!("page-trial-size", letter = letter)))
        ));
    }
    code.push_str("table.hline(stroke: 0.35mm + ink)), ");
    let boxes = "box(stack(dir: ltr, spacing: 1.1mm, ..range(5).map(_ => rect(width: 5mm, height: 5mm, stroke: 0.25mm + ink))))";
    for at in 0..TRIERS {
        for (place, one) in chalked.iter().enumerate() {
            let child = who.get(at).filter(|id| place == 0 && !id.is_empty());
            match (child, place) {
                (Some(id), _) => code.push_str(&format!("text(weight: 700, {}), ", string(id))),
                (None, 0) => code.push_str("blank(22mm), "),
                _ => code.push_str("[], "),
            }
            code.push_str(&format!(
                "{}, ",
                string(&words::family(sheet, one.family.name()))
            ));
            for size in 0..LETTERS.len() {
                code.push_str(if one.sizes.len() > size {
                    boxes
                } else {
                    "[–]"
                });
                code.push_str(", ");
            }
        }
        code.push_str("table.hline(stroke: 0.13mm + ink), ");
    }
    code.push(')');
    paper.code(&code);
}

/// How the page is typed back: two rows as they would look.
fn typed_back(sheet: &Sheet, chalked: &[Chalked]) -> String {
    let Some(one) = chalked.first() else {
        return String::new();
    };
    let lengths = one
        .sizes
        .first()
        .map_or_else(String::new, |(lengths, _)| one.cell(lengths, sheet));
    let activity = one.family.activities().first().copied().unwrap_or("jump");
    let row = format!("wren,{},{lengths},{activity},5,4", one.family.name());
    sheet.say(msg!(
        "page-trial-back",
        head = "child,figure,lengths,activity,n,good",
        row = row
    ))
}

/// The baseline: three jumps and five hops on each foot.
fn baseline(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned) {
    paper.heading(1, &sheet.say(msg!("page-base-title", name = sheet.name)));
    paper.paragraph(&sheet.word("page-base-why"));
    paper.list(
        &[
            "page-base-line",
            "page-base-jump",
            "page-base-hop",
            "page-base-cannot",
            "page-base-feet",
        ]
        .map(|key| sheet.word(key)),
        true,
    );
    paper.fields(&["doc-field-who", "doc-field-date"].map(|key| sheet.word(key)));
    let who = spread(planned.children(), BASELINE);
    let unit = sheet.word(match sheet.units {
        Units::Metres => "page-base-unit-cm",
        Units::Feet => "page-base-unit-in",
    });
    let mut code = String::from(
        "#v(row, weak: true)\n#table(columns: (1fr, 15mm, 43mm, 43mm, 43mm), stroke: none, column-gutter: 3mm, inset: (x: 0mm, y: 1.6mm), align: left + horizon, table.header(repeat: true, ",
    );
    let heads = [
        "page-trial-child",
        "page-base-height",
        "page-base-column-jump",
        "page-base-column-right",
        "page-base-column-left",
    ];
    for head in heads {
        code.push_str(&format!(
            "text(weight: 700, {}), ",
            string(&sheet.say(msg!(head, unit = unit.as_str())))
        ));
    }
    code.push_str("table.hline(stroke: 0.35mm + ink)), ");
    let three = "box(stack(dir: ltr, spacing: 1.5mm, ..range(3).map(_ => rect(width: 13mm, height: 7.5mm, stroke: 0.25mm + ink))))";
    for at in 0..BASELINE {
        match who.get(at).filter(|id| !id.is_empty()) {
            Some(id) => code.push_str(&format!("text(weight: 700, {}), ", string(id))),
            None => code.push_str("blank(100%), "),
        }
        code.push_str(&format!(
            "rect(width: 14mm, height: 7.5mm, stroke: 0.25mm + ink), {three}, {three}, {three}, "
        ));
    }
    code.push_str("table.hline(stroke: 0.18mm + ink))");
    paper.code(&code);
    let ages: Vec<u32> = planned.children().iter().map(years).collect();
    let youngest = ages.iter().min().copied().unwrap_or(3);
    words::small(
        paper,
        &sheet.say(note::Message {
            key: "page-base-back",
            facts: vec![("youngest", Fact::Count(u64::from(youngest)))],
        }),
    );
    paper.care(
        &sheet.word("doc-take-care"),
        &[
            "page-trial-care-dry",
            "page-trial-care-stop",
            "page-base-care-names",
        ]
        .map(|key| sheet.word(key)),
    );
}
