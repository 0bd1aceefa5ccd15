//! One page a marking: as painted, as used, whom it suits, what it gives.

use std::collections::BTreeMap;

use geo::BoundingRect;
use marking::Figure;
use note::{Fact, msg};
use plan::Footfall;

use crate::drawing::footprints::{self, Contact, Manner};
use crate::drawing::mark;
use crate::drawing::markings;
use crate::drawing::scene::{Colour, Path, Rect, Scene, Stroke, Text, WHITE, pen};
use crate::drawing::view::View;
use crate::measure;
use crate::plan_paper::{Told, decimal, skill_word};
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// sRGB of the ground's swatch (look, section 5).
const ASPHALT: Colour = Colour(0x595959);

/// The text's measure, mm.
const MEASURE: f64 = 175.0;

/// Writes the page of marking `number` (from 0), whose figure in its own frame is `own`.
pub(crate) fn write(paper: &mut Manuscript, told: &Told, number: usize, own: &Figure) {
    let Some(marking) = told.record.markings.iter().flatten().nth(number) else {
        return;
    };
    let sheet = told.sheet;
    paper.page_break();
    let heading = msg!(
        "paper-marking",
        number = number + 1,
        name = marking.name.as_str()
    );
    paper.heading(2, &sheet.say(heading));
    let lengths: Vec<String> = marking
        .lengths
        .iter()
        .map(|(name, metres)| format!("{name} {}", measure::length(*metres, sheet)))
        .collect();
    paper.paragraph(&sheet.say(msg!(
        "paper-lengths",
        family = marking.family.as_str(),
        lengths = lengths,
        x = Fact::Length(marking.at[0]),
        y = Fact::Length(marking.at[1]),
        turn = Fact::Number(marking.turn, 0),
    )));
    let footfall: Vec<&Footfall> = told
        .record
        .footfall
        .iter()
        .flatten()
        .filter(|one| one.marking == marking.name)
        .collect();
    let alt = sheet.say(msg!("paper-painted-alt", family = marking.family.as_str()));
    paper.figure(&painted(sheet, own), &alt);
    if let Some((scene, says)) = trodden(told, own, &footfall) {
        paper.figure(&scene, &says);
        paper.remark(&says);
    }
    suits(paper, told, &footfall);
}

/// A view that fits a figure's envelope into the measure, and how high it is.
fn fitted(own: &Figure, most: f64) -> Option<(View, f64)> {
    let bounds = own.envelope.bounding_rect()?;
    let mm = ((MEASURE - 4.0) / bounds.width()).min(most / bounds.height());
    let view = View {
        mm,
        origin: [2.0 - bounds.min().x * mm, 2.0 + bounds.max().y * mm],
    };
    Some((view, bounds.height() * mm + 4.0))
}

/// The figure on its ground, in colour, with its length and breadth.
fn painted(sheet: &Sheet, own: &Figure) -> Scene {
    let caps = sheet.caps();
    let Some((view, high)) = fitted(own, 62.0) else {
        return Scene::new(MEASURE, 10.0);
    };
    let mut scene = Scene::new(MEASURE, high + 12.0);
    let swatch = [[0.0, 0.0], [MEASURE, 0.0], [MEASURE, high], [0.0, high]];
    scene.fill(Path::ring(&swatch), ASPHALT);
    markings::figure(&mut scene, own, &view, true, 0.0);
    let spots = own.paint.iter().flat_map(|piece| {
        piece
            .polygon
            .exterior()
            .coords()
            .map(|at| view.at(*at))
            .collect::<Vec<_>>()
    });
    if let Some(bounds) = Rect::round(spots) {
        let (left, right) = (bounds.x, bounds.x + bounds.w);
        let y = high + 5.5;
        let figure = measure::length(bounds.w / view.mm, sheet);
        scene.stroke(
            Path::line(&[[left, y], [right, y]]),
            Stroke::solid(pen::THIN),
        );
        for x in [left, right] {
            scene.fill(Path::circle([x, y], 0.6), crate::drawing::scene::INK);
            scene.stroke(
                Path::line(&[[x, high + 1.5], [x, y + 1.5]]),
                Stroke::solid(pen::THIN),
            );
        }
        let text = Text::new(
            figure,
            [(left + right) / 2.0, y + caps.name + 1.6],
            caps.name,
        );
        scene.text(text.middle());
        let scale = sheet.say(msg!(
            "paper-scale",
            scale = Fact::Number(1000.0 / view.mm, 0)
        ));
        scene.text(Text::new(scale, [MEASURE, y + caps.note + 2.0], caps.note).end());
    }
    scene
}

/// The figure in outline with the easiest and the hardest route that some child is well
/// pitched on, and what they are in words.
fn trodden(told: &Told, own: &Figure, footfall: &[&Footfall]) -> Option<(Scene, String)> {
    let sheet = told.sheet;
    let chosen = footfall
        .iter()
        .filter_map(|one| Some((*one, one.routes.get(one.chosen?)?)))
        .filter(|(_, route)| !route.cells.is_empty());
    let mut all: Vec<_> = chosen.collect();
    all.sort_by(|a, b| {
        b.1.pi_0
            .total_cmp(&a.1.pi_0)
            .then_with(|| (&a.0.child, &a.0.gait).cmp(&(&b.0.child, &b.0.gait)))
    });
    let (easy, hard) = (all.first()?, all.last()?);
    let (view, high) = fitted(own, 52.0)?;
    let mut scene = Scene::new(MEASURE, 2.0 * high);
    let caps = sheet.caps();
    let mut says = Vec::new();
    for (row, (one, route)) in [easy, hard].into_iter().enumerate() {
        let view = View {
            origin: [view.origin[0], view.origin[1] + row as f64 * high],
            ..view
        };
        markings::figure(&mut scene, own, &view, false, pen::HAIR);
        let contacts: Vec<Contact> = route
            .cells
            .iter()
            .zip(route.contacts.chars())
            .filter_map(|(id, foot)| {
                let cell = own.cells.iter().find(|cell| cell.id == *id)?;
                Some(Contact {
                    at: view.at(cell.centre),
                    foot,
                })
            })
            .collect();
        let foot = told
            .record
            .children
            .iter()
            .flatten()
            .find(|child| child.id == one.child)
            .map_or(0.17, |child| child.foot);
        let manner = Manner {
            foot: foot * view.mm,
            cap: caps.note,
            ahead: [1.0, 0.0],
            below: false,
        };
        footprints::draw(&mut scene, &contacts, &manner);
        let key = if row == 0 {
            "paper-easiest"
        } else {
            "paper-hardest"
        };
        let text = sheet.say(note::Message {
            key,
            facts: vec![
                ("gait", Fact::Text(skill_word(sheet, &one.gait))),
                ("child", Fact::Text(one.child.clone())),
                ("contacts", Fact::Count(route.n as u64)),
                ("share", Fact::Number(100.0 * route.pi_0, 0)),
            ],
        });
        mark::number(
            &mut scene,
            [4.0, row as f64 * high + 5.0],
            &(row + 1).to_string(),
            caps.name,
        );
        says.push(text);
    }
    Some((scene, says.join(" ")))
}

/// Whom it suits, skill by skill and age by age, and a strip an age of the skill that suits
/// most.
fn suits(paper: &mut Manuscript, told: &Told, footfall: &[&Footfall]) {
    let sheet = told.sheet;
    let children: BTreeMap<&str, (u32, f64)> = told
        .record
        .children
        .iter()
        .flatten()
        .map(|child| {
            (
                child.id.as_str(),
                (
                    child.age.floor().clamp(3.0, 5.0) as u32,
                    f64::from(child.count),
                ),
            )
        })
        .collect();
    let mut by_skill: BTreeMap<(String, String), BTreeMap<u32, Group>> = BTreeMap::new();
    for one in footfall {
        let Some((age, count)) = children.get(one.child.as_str()) else {
            continue;
        };
        let foot = one.foot.clone().unwrap_or_default();
        let group = by_skill
            .entry((one.gait.clone(), foot))
            .or_default()
            .entry(*age)
            .or_default();
        group.add(*count, one.well, one.easy, one.hard);
    }
    if by_skill.is_empty() {
        paper.paragraph(&sheet.word("paper-suits-nobody"));
        return;
    }
    let best = by_skill
        .iter()
        .max_by(|a, b| well(a.1).total_cmp(&well(b.1)))
        .map(|(key, groups)| (key.clone(), groups.clone()));
    if let Some((key, groups)) = best {
        let scene = strips(sheet, &groups);
        let says = sheet.say(msg!("paper-strips", gait = activity(sheet, &key)));
        paper.lead(&says);
        paper.figure(&scene, &says);
    }
    let ages = [3_u32, 4, 5];
    let rows: Vec<Vec<String>> = by_skill
        .iter()
        .map(|(key, groups)| {
            let mut row = vec![activity(sheet, key)];
            row.extend(ages.iter().map(|age| {
                groups
                    .get(age)
                    .map_or_else(|| sheet.word("paper-none"), |g| g.says(sheet))
            }));
            row
        })
        .collect();
    let mut columns = vec![Column::words(sheet.word("paper-column-skill"))];
    columns.extend(
        ages.map(|age| Column::words(sheet.say(msg!("paper-column-age", age = u64::from(age))))),
    );
    paper.lead(&sheet.word("paper-suits"));
    paper.table(&columns, &rows, false);
}

fn activity(sheet: &Sheet, (gait, foot): &(String, String)) -> String {
    let word = skill_word(sheet, gait);
    match foot.as_str() {
        "" => word,
        foot => sheet.say(msg!("paper-on-foot", skill = word, foot = foot)),
    }
}

fn well(groups: &BTreeMap<u32, Group>) -> f64 {
    groups.values().map(|group| group.well).sum()
}

/// Children of one age on one activity.
#[derive(Clone, Debug, Default, PartialEq)]
struct Group {
    count: f64,
    well: f64,
    easy: f64,
    hard: f64,
    /// Of the count well pitched: each child is well pitched or not, by its own share.
    variance: f64,
}

impl Group {
    fn add(&mut self, count: f64, well: f64, easy: f64, hard: f64) {
        self.count += count;
        self.well += count * well;
        self.easy += count * easy;
        self.hard += count * hard;
        self.variance += count * well * (1.0 - well);
    }

    /// The 90 % interval of the children well pitched: the normal limit of a
    /// Poisson-binomial count, rounded outwards and held within 0 and all.
    fn interval(&self) -> (f64, f64) {
        /// Standard normal quantile of .95.
        const Z: f64 = 1.644_854;
        let half = Z * libm::sqrt(self.variance);
        let low = libm::floor(self.well - half + 1e-9).max(0.0);
        let high = libm::ceil(self.well + half - 1e-9).min(self.count);
        (low, high)
    }

    fn says(&self, sheet: &Sheet) -> String {
        let (low, high) = self.interval();
        sheet.say(msg!(
            "paper-of",
            well = Fact::Text(decimal(sheet, self.well, 1)),
            count = Fact::Number(self.count, 0),
            low = Fact::Number(low, 0),
            high = Fact::Number(high, 0),
        ))
    }
}

/// One strip an age: well pitched solid, too easy dotted, out of reach hatched, and at the
/// solid's end a dot and bracket for the 90 % interval.
fn strips(sheet: &Sheet, groups: &BTreeMap<u32, Group>) -> Scene {
    use crate::drawing::hatch::{Hatch, hatch};
    use crate::drawing::scene::INK;
    const HIGH: f64 = 6.0;
    const LEFT: f64 = 22.0;
    let caps = sheet.caps();
    let wide = 96.0;
    let row = HIGH + 3.0;
    let mut scene = Scene::new(MEASURE, row * groups.len() as f64 + 2.0 + caps.note * 2.0);
    for (at, (age, group)) in groups.iter().enumerate() {
        let y = at as f64 * row + 1.0;
        let name = sheet.say(msg!("paper-column-age", age = u64::from(*age)));
        scene.text(Text::new(
            name,
            [0.0, y + HIGH / 2.0 + caps.name / 2.0],
            caps.name,
        ));
        let share = |value: f64| LEFT + wide * (value / group.count.max(1e-9)).clamp(0.0, 1.0);
        let (a, b) = (share(group.well), share(group.well + group.easy));
        let rect = |x0: f64, x1: f64| vec![[x0, y], [x1, y], [x1, y + HIGH], [x0, y + HIGH]];
        scene.shape(
            Path::ring(&rect(LEFT, LEFT + wide)),
            WHITE,
            Stroke::solid(pen::THIN),
        );
        if a - LEFT > 0.05 {
            scene.fill(Path::ring(&rect(LEFT, a)), INK);
        }
        if b - a > 0.3 {
            hatch(&mut scene, Hatch::Dots, &[vec![rect(a, b)]], &[]);
        }
        if LEFT + wide - b > 0.3 {
            hatch(
                &mut scene,
                Hatch::Rising,
                &[vec![rect(b, LEFT + wide)]],
                &[],
            );
        }
        let (low, high) = group.interval();
        let (low, high) = (share(low), share(high));
        let middle = y + HIGH / 2.0;
        let halo = Stroke {
            colour: WHITE,
            ..Stroke::solid(1.6)
        };
        for stroke in [halo, Stroke::solid(pen::FIXTURE)] {
            scene.stroke(Path::line(&[[low, middle], [high, middle]]), stroke);
            for x in [low, high] {
                scene.stroke(Path::line(&[[x, middle - 1.3], [x, middle + 1.3]]), stroke);
            }
        }
        scene.shape(
            Path::circle([a, middle], 1.1),
            WHITE,
            Stroke::solid(pen::FIXTURE),
        );
        let words = sheet.say(msg!(
            "paper-strip",
            well = Fact::Text(decimal(sheet, group.well, 1)),
            count = Fact::Number(group.count, 0),
        ));
        scene.text(Text::new(
            words,
            [LEFT + wide + 3.0, y + HIGH / 2.0 + caps.name / 2.0],
            caps.name,
        ));
    }
    let y = row * groups.len() as f64 + 1.0 + caps.note;
    scene.text(Text::new(
        sheet.word("paper-strip-key"),
        [LEFT, y],
        caps.note,
    ));
    scene
}
